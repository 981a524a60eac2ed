"""A cylindrical compression spring in a catalogue: its record, whether its figures agree, and the spring it makes.

Another kind has a file like this one, and its line in springs.py.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import ClassVar

from sourcing.files.fields import Length, NumberAboveZero, WireDiameter
from sourcing.files.findings import Finding
from sourcing.files.records import Read
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.need.kinds import EndsField, MaterialField
from sourcing.quantities import show_length, show_rate
from sourcing.springs.geometry import dead_coils, solid_length_mm
from sourcing.springs.model import CompressionSpring
from sourcing.stock.rates import disagree, worked_out_n_per_mm
from sourcing.stock.shelf import ShelfRecord

DIAMETERS = ("outside_diameter", "mean_diameter", "inside_diameter")
_EXTENSION, _TORSION, _CONICAL = "an extension spring", "a torsion spring", "a conical spring"


class CompressionRecord(ShelfRecord):
    """A cylindrical compression spring as it is written."""

    called = "a compression spring"
    elsewhere: ClassVar[Mapping[str, str]] = {
        "hooks": _EXTENSION,
        "initial_tension": _EXTENSION,
        "leg_1": _TORSION,
        "leg_2": _TORSION,
        "free_angle": _TORSION,
        **{f"{diameter}_{end}": _CONICAL for diameter in DIAMETERS for end in ("small", "large")},
    }

    wire_diameter: WireDiameter
    outside_diameter: Length = None
    mean_diameter: Length = None
    inside_diameter: Length = None
    free_length: Length
    total_coils: NumberAboveZero = None
    active_coils: NumberAboveZero = None
    ends: EndsField
    material: MaterialField


CompressionRead = Read[CompressionRecord]


def findings(read: CompressionRead) -> list[Finding]:
    """All that does not agree in a record."""
    checks = (_one_diameter, _room_inside, _coils, _longer_than_solid)
    return [finding for check in checks for finding in check(read)]


def warnings(read: CompressionRead, spring: CompressionSpring) -> list[Finding]:
    """That the rate which the seller states is far from the one that follows from the dimensions."""
    stated = read.record.rate
    if stated is None or not disagree(stated, spring):
        return []
    expected = (
        f"about the {show_rate(worked_out_n_per_mm(spring))} that follows from the dimensions; "
        "the seller's figure may be right and a dimension wrong"
    )
    return [Finding(read.place("rate"), f"a stated rate of {show_rate(stated)}", expected)]


def made(record: CompressionRecord) -> CompressionSpring | None:
    """The spring that a record describes; None where a figure it takes is missing."""
    wire, free_length, ends, material = record.wire_diameter, record.free_length, record.ends, record.material
    mean, coils = _mean_diameter_mm(record), _active_and_total_coils(record)
    if wire is None or mean is None or free_length is None or coils is None or ends is None or material is None:
        return None
    return CompressionSpring(
        wire_diameter_mm=wire,
        mean_diameter_mm=mean,
        free_length_mm=free_length,
        active_coils=coils[0],
        total_coils=coils[1],
        ends=ends,
        material=material,
        shear_modulus_mpa=record.shear_modulus or material.shear_modulus_mpa,
        elastic_modulus_mpa=record.elastic_modulus or material.elastic_modulus_mpa,
        tensile_strength_mpa=record.tensile_strength or tensile_strength_mpa(material, wire),
        hand=record.hand,
    )


def _mean_diameter_mm(record: CompressionRecord) -> float | None:
    wire = record.wire_diameter
    if record.mean_diameter is not None or wire is None:
        return record.mean_diameter
    if record.outside_diameter is not None:
        return record.outside_diameter - wire
    return None if record.inside_diameter is None else record.inside_diameter + wire


def _active_and_total_coils(record: CompressionRecord) -> tuple[float, float] | None:
    """Both counts; where one is written, the other follows from the dead coils of the ends."""
    active, total, ends = record.active_coils, record.total_coils, record.ends
    if active is not None and total is not None:
        return active, total
    if ends is None:
        return None
    if active is not None:
        return active, active + dead_coils(ends)
    return None if total is None else (total - dead_coils(ends), total)


def _one_diameter(read: CompressionRead) -> Iterator[Finding]:
    given = [diameter for diameter in DIAMETERS if diameter in read.raw]
    if not given:
        yield Finding(read.place(), "no diameter of the coil", f"exactly one of {', '.join(DIAMETERS)}")
    given.sort(key=list(read.raw).index)
    for diameter in given[1:]:
        line = read.key_place(given[0]).line
        found = f"{diameter}, where {given[0]} stands on line {line} already"
        yield Finding(read.key_place(diameter), found, "one diameter only: the others follow from it and the wire")


def _room_inside(read: CompressionRead) -> Iterator[Finding]:
    record, wire = read.record, read.record.wire_diameter
    if wire is None:
        return
    for key, least, why in (
        ("outside_diameter", 2 * wire, "twice the wire diameter"),
        ("mean_diameter", wire, "the wire diameter"),
    ):
        diameter = getattr(record, key)
        if diameter is not None and diameter <= least:
            found = f"{read.text(key)} leaves no room inside the coil"
            yield Finding(read.place(key), found, f"more than {why}, {show_length(least)}")


def _coils(read: CompressionRead) -> Iterator[Finding]:
    record = read.record
    if not {"total_coils", "active_coils"} & read.raw.keys():
        yield Finding(read.place(), "no number of coils", "total_coils or active_coils, or both where the ends are odd")
    if (coils := _active_and_total_coils(record)) is None:
        return
    active, total = coils
    if active > total:
        found = f"{read.text('active_coils')} active coils of {read.text('total_coils')} in all"
        yield Finding(read.place("active_coils"), found, "no more active coils than there are in all")
    elif active <= 0 and record.ends is not None:
        dead = dead_coils(record.ends)
        found = f"{read.text('total_coils')} coils, of which {dead:g} at {record.ends} ends do not act"
        yield Finding(read.place("total_coils"), found, f"more than {dead:g} coils")


def _longer_than_solid(read: CompressionRead) -> Iterator[Finding]:
    record, coils = read.record, _active_and_total_coils(read.record)
    if record.wire_diameter is None or record.free_length is None or record.ends is None or coils is None:
        return
    solid = solid_length_mm(record.wire_diameter, coils[1], record.ends)
    if coils[0] > 0 and record.free_length <= solid:
        found = f"{read.text('free_length')} is no longer than the spring pressed solid"
        yield Finding(read.place("free_length"), found, f"a free length above the solid length, {show_length(solid)}")
