"""The workings of the wire in a compression spring whose ends hook into a part."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.figures.working import Working, work
from sourcing.springs.end_pieces import bent_wire_mm, wire_with_ends_mm
from sourcing.springs.model import PressedSpring
from sourcing.springs.torsion import BEND_INSIDE_RADIUS


def wire_length(spring: PressedSpring, of_coils: Working) -> Iterator[Working]:
    """The wire of the coils; with end pieces, that of each, and that of the whole."""
    if not spring.end_pieces:
        yield of_coils
        return
    yield of_coils.at("of its coils")
    wire_mm, ends_mm = spring.wire_diameter_mm, 0.0
    for name, piece in (("end 1", spring.end_1), ("end 2", spring.end_2)):
        if piece is not None:
            bent = (piece.length_mm, BEND_INSIDE_RADIUS * wire_mm, piece.angle_deg, wire_mm)
            end = work(bent_wire_mm, *bent, figure="wire_length_mm").at(f"of {name}")
            ends_mm += end.value
            yield end
    yield work(wire_with_ends_mm, of_coils.value, ends_mm, figure="wire_length_mm")
