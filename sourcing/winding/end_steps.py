"""How ends that hook into a part are bent: sentences for the winding sheet."""

from __future__ import annotations

from collections.abc import Iterable

from sourcing.quantities import show_diameter, show_length
from sourcing.springs.end_pieces import said, wire_of_piece_mm
from sourcing.springs.model import ConicalSpring, EndPiece, EndShape, PressedSpring
from sourcing.springs.torsion import BEND_INSIDE_RADIUS
from sourcing.stock.model import Bench

_TOWARDS = {
    EndShape.TANG_IN: "towards the axis",
    EndShape.TANG_OUT: "away from the axis",
    EndShape.ACROSS: "across the middle of the coil",
    EndShape.LEG: "out of the run of the coil",
}


def left_over(spring: PressedSpring, bench: Bench) -> str:
    """What is left beyond the coils where an end piece is bent; empty where both ends are plain."""
    left = [
        f"{show_length(wire_of_piece_mm(piece, spring.wire_diameter_mm), bench.units)} at {name}"
        for name, piece in _named(spring)
    ]
    return f", and leave {' and '.join(left)} beyond them, and some to grip" if left else ""


def bend_ends(spring: PressedSpring, bench: Bench) -> Iterable[str]:
    """The bending of each end piece, before heat."""
    wire_mm = spring.wire_diameter_mm
    pin = show_diameter(2.0 * BEND_INSIDE_RADIUS * wire_mm, bench.units)
    for name, piece in _named(spring):
        told = said(piece, show_length(piece.length_mm, bench.units))
        if not piece.angle_deg:
            yield f"Make {name} {told}: straighten the wire where it leaves the coil, between smooth jaws."
            continue
        yield (
            f"Make {name} {told}: grip the last coil between smooth jaws and bend the wire {_TOWARDS[piece.shape]} "
            f"round a pin of {pin} or more, slowly and once: a tighter or a second bend cracks it. It springs back, so "
            "bend past the angle. Measure from the corner at the coil to the tip, and cut it there, both sides held."
        )


def _named(spring: PressedSpring) -> tuple[tuple[str, EndPiece], ...]:
    """The end pieces that are there, each with the name of its end."""
    cone = isinstance(spring, ConicalSpring)
    names = ("the large end", "the small end") if cone else ("end 1", "end 2")
    pairs = zip(names, (spring.end_1, spring.end_2), strict=True)
    return tuple((name, piece) for name, piece in pairs if piece is not None)
