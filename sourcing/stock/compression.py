"""A cylindrical compression spring in a catalogue: its record, whether its figures agree, and the spring it makes.

Another kind has a file like this one, and its line in springs.py.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import ClassVar

from sourcing.files.fields import Length
from sourcing.files.findings import Finding
from sourcing.files.records import Read
from sourcing.quantities import show_length
from sourcing.springs.geometry import solid_length_mm
from sourcing.springs.model import CompressionSpring
from sourcing.stock.coiled import OF_CONES, mean_diameter_mm, one_diameter, room_inside, strength_mpa
from sourcing.stock.end_pieces import end_findings, piece_of
from sourcing.stock.pressed import PressedRecord, active_and_total_coils, coils


class CompressionRecord(PressedRecord):
    """A cylindrical compression spring as it is written."""

    called = "a compression spring"
    elsewhere: ClassVar[Mapping[str, str]] = {
        **PressedRecord.elsewhere,
        **OF_CONES,
    }

    outside_diameter: Length = None
    mean_diameter: Length = None
    inside_diameter: Length = None


CompressionRead = Read[CompressionRecord]


def findings(read: CompressionRead) -> list[Finding]:
    """All that does not agree in a record."""
    checks = (one_diameter, room_inside, coils, _longer_than_solid, _end_pieces)
    return [finding for check in checks for finding in check(read)]


def made(record: CompressionRecord) -> CompressionSpring | None:
    """The spring that a record describes; None where a figure it takes is missing."""
    wire, free_length, ends, material = record.wire_diameter, record.free_length, record.ends, record.material
    mean, both = mean_diameter_mm(record), active_and_total_coils(record)
    if wire is None or mean is None or free_length is None or both is None or ends is None or material is None:
        return None
    return CompressionSpring(
        wire_diameter_mm=wire,
        mean_diameter_mm=mean,
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


def _longer_than_solid(read: CompressionRead) -> Iterator[Finding]:
    record, both = read.record, active_and_total_coils(read.record)
    if record.wire_diameter is None or record.free_length is None or record.ends is None or both is None:
        return
    solid = solid_length_mm(record.wire_diameter, both[1], record.ends)
    if both[0] > 0 and record.free_length <= solid:
        found = f"{read.text('free_length')} is no longer than the spring pressed solid"
        yield Finding(read.place("free_length"), found, f"a free length above the solid length, {show_length(solid)}")


def _end_pieces(read: CompressionRead) -> Iterator[Finding]:
    record, mean = read.record, mean_diameter_mm(read.record)
    inside = None if mean is None or record.wire_diameter is None else mean - record.wire_diameter
    for key, end in (("end_1", record.end_1), ("end_2", record.end_2)):
        yield from end_findings(read, key, piece_of(end), record.wire_diameter, inside)
