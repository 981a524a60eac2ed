"""The ends of a compression spring in a catalogue that hook into a part: `end_1: {shape: tang-in, length: 4 mm}`."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeVar

from sourcing.files.fields import Length
from sourcing.files.findings import Finding
from sourcing.files.records import Read, Record
from sourcing.need.kinds import BendField, EndShapeField
from sourcing.quantities import show_length
from sourcing.springs.end_pieces import USUAL_ANGLE_DEG, least_length_mm, room_mm
from sourcing.springs.model import EndPiece

R = TypeVar("R", bound=Record)

_LAST_DIGITS_MM = 1e-9


class EndRecord(Record):
    """An end that hooks into a part."""

    called = "an end"

    shape: EndShapeField
    length: Length
    angle: BendField = None


def piece_of(record: EndRecord | None) -> EndPiece | None:
    """The end piece that a record describes, bent as its shape usually is where no angle is given."""
    if record is None or record.shape is None or record.length is None:
        return None
    angle = USUAL_ANGLE_DEG[record.shape] if record.angle is None else record.angle
    return EndPiece(record.shape, record.length, angle)


def end_findings(
    read: Read[R], key: str, piece: EndPiece | None, wire_mm: float | None, inside_mm: float | None
) -> Iterator[Finding]:
    """That a piece is longer than its bend, and one that points inwards as long as its coil leaves room for."""
    if piece is None or wire_mm is None:
        return
    place, long = read.place(key, "length"), show_length(piece.length_mm)
    least_mm = least_length_mm(piece.angle_deg, wire_mm)
    if piece.length_mm < least_mm:
        found = f"{long} is shorter than the bend itself"
        yield Finding(place, found, f"{show_length(least_mm)} or more, from the corner at the coil to the tip")
    if inside_mm is None:
        return
    low_mm, high_mm = room_mm(piece.shape, inside_mm, wire_mm)
    if piece.length_mm < low_mm - _LAST_DIGITS_MM:
        found = f"{long} does not reach across the coil"
        yield Finding(place, found, f"at least the inside diameter, {show_length(low_mm)}")
    if piece.length_mm > high_mm + _LAST_DIGITS_MM:
        yield Finding(place, f"{long} is more than the coil has room for", f"{show_length(high_mm)} or less")
