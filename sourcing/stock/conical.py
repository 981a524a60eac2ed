"""A conical compression spring in a catalogue: its record, whether its figures agree, and the spring it makes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import ClassVar

from sourcing.files.fields import Length
from sourcing.files.findings import Finding
from sourcing.files.records import Read
from sourcing.quantities import show_length
from sourcing.springs.conical_lengths import solid_length_of, step_of, telescopes
from sourcing.springs.model import ConicalSpring
from sourcing.stock.coiled import DIAMETERS, measured_mean_mm, one_diameter, room_inside, strength_mpa
from sourcing.stock.end_pieces import end_findings, piece_of
from sourcing.stock.pressed import PressedRecord, active_and_total_coils, coils

SMALL, LARGE = "_small", "_large"


class ConicalRecord(PressedRecord):
    """A conical compression spring as it is written: one diameter of each end."""

    called = "a conical spring"
    elsewhere: ClassVar[Mapping[str, str]] = {
        **PressedRecord.elsewhere,
        **dict.fromkeys(DIAMETERS, "a compression spring"),
    }

    outside_diameter_small: Length = None
    outside_diameter_large: Length = None
    mean_diameter_small: Length = None
    mean_diameter_large: Length = None
    inside_diameter_small: Length = None
    inside_diameter_large: Length = None


ConicalRead = Read[ConicalRecord]


def findings(read: ConicalRead) -> list[Finding]:
    """All that does not agree in a record."""
    checks = (_a_diameter_of_each_end, _room_inside, _large_end_larger, coils, _longer_than_solid, _end_pieces)
    return [finding for check in checks for finding in check(read)]


def made(record: ConicalRecord) -> ConicalSpring | None:
    """The spring that a record describes; None where a figure it takes is missing."""
    wire, free_length, ends, material = record.wire_diameter, record.free_length, record.ends, record.material
    small, large, both = _mean_mm(record, SMALL), _mean_mm(record, LARGE), active_and_total_coils(record)
    if wire is None or free_length is None or ends is None or material is None:
        return None
    if small is None or large is None or both is None:
        return None
    return ConicalSpring(
        wire_diameter_mm=wire,
        mean_diameter_small_mm=small,
        mean_diameter_large_mm=large,
        free_length_mm=free_length,
        active_coils=both[0],
        total_coils=both[1],
        ends=ends,
        material=material,
        shear_modulus_mpa=record.shear_modulus or material.shear_modulus_mpa,
        elastic_modulus_mpa=record.elastic_modulus or material.elastic_modulus_mpa,
        tensile_strength_mpa=strength_mpa(record),
        hand=record.hand,
        end_1=piece_of(record.end_1),
        end_2=piece_of(record.end_2),
    )


def _key(read: ConicalRead, end: str) -> str | None:
    """The key of an end's diameter that stands in the record."""
    return next((measure + end for measure in DIAMETERS if getattr(read.record, measure + end) is not None), None)


def _mean_mm(record: ConicalRecord, end: str) -> float | None:
    for measure in DIAMETERS:
        diameter: float | None = getattr(record, measure + end)
        if diameter is not None and record.wire_diameter is not None:
            return measured_mean_mm(measure, diameter, record.wire_diameter)
    return None


def _a_diameter_of_each_end(read: ConicalRead) -> Iterator[Finding]:
    yield from one_diameter(read, SMALL, "the small end")
    yield from one_diameter(read, LARGE, "the large end")


def _room_inside(read: ConicalRead) -> Iterator[Finding]:
    yield from room_inside(read, SMALL)
    yield from room_inside(read, LARGE)


def _large_end_larger(read: ConicalRead) -> Iterator[Finding]:
    small, large = _mean_mm(read.record, SMALL), _mean_mm(read.record, LARGE)
    small_key, large_key = _key(read, SMALL), _key(read, LARGE)
    if small is None or large is None or small_key is None or large_key is None or large > small:
        return
    line = read.place(small_key).line
    if large == small:
        found = f"a large end of {read.text(large_key)}, and a small end as large on line {line}"
        yield Finding(read.place(large_key), found, "a large end that is larger, or kind: compression")
    else:
        found = f"a large end of {read.text(large_key)}, and a small end of {read.text(small_key)} on line {line}"
        yield Finding(read.place(large_key), found, "a large end that is larger than the small one")


def _longer_than_solid(read: ConicalRead) -> Iterator[Finding]:
    """Coils overlap at rest where the spring is no longer than with its coils against, or inside, each other."""
    spring = made(read.record)
    if spring is None or spring.active_coils <= 0 or spring.mean_diameter_large_mm <= spring.mean_diameter_small_mm:
        return
    solid, step = solid_length_of(spring), step_of(spring)
    if spring.free_length_mm > solid:
        return
    expected = f"a free length above the solid length, {show_length(solid)}"
    if telescopes(spring.wire_diameter_mm, step):
        found = f"a free length of {read.text('free_length')} is no longer than the spring pressed flat"
    else:
        found = (
            f"its coils would overlap at a free length of {read.text('free_length')}: each is {show_length(step)} "
            f"smaller in radius than the next, and wire of {show_length(spring.wire_diameter_mm)} does not go inside it"
        )
    yield Finding(read.place("free_length"), found, expected)


def _end_pieces(read: ConicalRead) -> Iterator[Finding]:
    """The first end is the large one."""
    record, wire = read.record, read.record.wire_diameter
    for key, end, of_end in (("end_1", record.end_1, LARGE), ("end_2", record.end_2, SMALL)):
        mean = _mean_mm(record, of_end)
        inside = None if mean is None or wire is None else mean - wire
        yield from end_findings(read, key, piece_of(end), wire, inside)
