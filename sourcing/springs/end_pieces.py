"""Ends of a compression spring that hook into a part: the wire in them, and how they are told.

A piece is measured from the corner where it leaves the coil, wire centre to wire centre, to its tip. Its bend has an
inside radius of one wire diameter, as the bends of legs and hooks.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import inf, pi, tan

from sourcing.figures import formula
from sourcing.springs.model import EndPiece, EndShape, PressedSpring
from sourcing.springs.torsion import BEND_INSIDE_RADIUS

USUAL_ANGLE_DEG: Mapping[EndShape, float] = {
    EndShape.TANG_IN: 90.0,
    EndShape.TANG_OUT: 90.0,
    EndShape.ACROSS: 90.0,
    EndShape.LEG: 0.0,
}
"""How far each is bent out of the run of the coil, where nothing else is said."""

MOST_BENT_DEG = 150.0
"""The sharpest bend that is worked out."""

_CALLED = {
    EndShape.TANG_IN: "a tang in",
    EndShape.TANG_OUT: "a tang out",
    EndShape.ACROSS: "a piece straight across the coil",
    EndShape.LEG: "a straight leg",
}

_WHERE = {"a": "length_mm", "r": "inside_radius_mm", "α": "angle_deg"}


@formula("l = a + (r + d/2) (α π/180 − 2 tan(α π/360))", where=_WHERE, source="derived for this project; geometry")
def bent_wire_mm(length_mm: float, inside_radius_mm: float, angle_deg: float, wire_diameter_mm: float) -> float:
    """The wire that an end piece takes beyond its coil, its bend counted along the centre of the wire.

    >>> round(bent_wire_mm(4.0, 1.0, 90.0, 1.0), 3)
    3.356
    """
    centre, turn = inside_radius_mm + wire_diameter_mm / 2.0, angle_deg * pi / 180.0
    return length_mm + centre * (turn - 2.0 * tan(turn / 2.0))


@formula(
    "a = (r + d/2) tan(α π/360)",
    where={"r": "inside_radius_mm", "α": "angle_deg"},
    source="derived for this project; geometry",
)
def bend_reaches_mm(inside_radius_mm: float, angle_deg: float, wire_diameter_mm: float) -> float:
    """How far the bend itself reaches from its corner: no end piece is shorter.

    >>> round(bend_reaches_mm(1.0, 90.0, 1.0), 3)
    1.5
    """
    return (inside_radius_mm + wire_diameter_mm / 2.0) * tan(angle_deg * pi / 360.0)


def wire_of_piece_mm(piece: EndPiece, wire_diameter_mm: float) -> float:
    """The wire in an end piece, in mm.

    >>> round(wire_of_piece_mm(EndPiece(EndShape.LEG, 10.0, 0.0), 1.0), 3)
    10.0
    """
    radius = BEND_INSIDE_RADIUS * wire_diameter_mm
    return bent_wire_mm(piece.length_mm, radius, piece.angle_deg, wire_diameter_mm)


@formula(
    "l = l_c + l_e",
    where={"l_c": "coil_wire_mm", "l_e": "end_wire_mm"},
    source="geometry",
)
def wire_with_ends_mm(coil_wire_mm: float, end_wire_mm: float) -> float:
    """The wire in the whole spring: that of its coils, and that of the pieces at its ends.

    >>> wire_with_ends_mm(273.0, 16.0)
    289.0
    """
    return coil_wire_mm + end_wire_mm


def least_length_mm(angle_deg: float, wire_diameter_mm: float) -> float:
    """The least length of an end piece of this wire: its bend alone, in mm."""
    return bend_reaches_mm(BEND_INSIDE_RADIUS * wire_diameter_mm, angle_deg, wire_diameter_mm)


def room_mm(shape: EndShape, inside_diameter_mm: float, wire_diameter_mm: float) -> tuple[float, float]:
    """The least and the greatest length that the coil leaves an end piece of a shape, in mm.

    A tang in ends before the coil across from it, D_i + d/2 from its corner at most; a piece across reaches from inside
    to inside at least, D_i, and no further than the outside, D_i + 2 d. Others have all the room there is.

    >>> room_mm(EndShape.TANG_IN, 8.0, 1.0), room_mm(EndShape.ACROSS, 8.0, 1.0), room_mm(EndShape.LEG, 8.0, 1.0)
    ((0.0, 8.5), (8.0, 10.0), (0.0, inf))
    """
    if shape is EndShape.TANG_IN:
        return 0.0, inside_diameter_mm + wire_diameter_mm / 2.0
    if shape is EndShape.ACROSS:
        return inside_diameter_mm, inside_diameter_mm + 2.0 * wire_diameter_mm
    return 0.0, inf


def wire_of_ends_mm(spring: PressedSpring) -> float:
    """The wire in both end pieces of a spring, in mm; 0 where its ends are plain."""
    return sum(wire_of_piece_mm(piece, spring.wire_diameter_mm) for piece in spring.end_pieces)


def said(piece: EndPiece, length: str) -> str:
    """An end piece in words, with its length as it is shown at the bench.

    >>> said(EndPiece(EndShape.TANG_IN, 4.0, 90.0), "4 mm"), said(EndPiece(EndShape.LEG, 12.5, 0.0), "12.5 mm")
    ('a tang in, 4 mm long, bent by 90 deg', 'a straight leg, 12.5 mm long')
    """
    bent = f", bent by {piece.angle_deg:g} deg" if piece.angle_deg else ""
    return f"{_CALLED[piece.shape]}, {length} long{bent}"
