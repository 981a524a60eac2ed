"""How a mandrel lies in the printer, and its meshes as they lie there.

One with a shank is printed whole, standing on it or lying; the halves of a split one lie on their flat faces. A sleeve
may be cut across, for its pieces are held by the rod.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import ceil

from sourcing.winding.solid.mesh import Mesh, Vertex
from sourcing.winding.solid.rings import half_of, piece_of
from sourcing.winding.solid.shape import MandrelSolid
from sourcing.winding.solid.sleeve import Bore

BED_EDGE_MM = 2.0
"""Left free at each side of the bed."""

APART_MM = 5.0
"""Between parts that lie side by side."""

MOST_PIECES = 9

LEAST_BODY_MM = 5.0
"""The piece with the collar has at least so much of the body."""

Bed = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class OnBed:
    """How the pieces of a mandrel lie: standing or lying along x (turned: along y), so many beside each other."""

    standing: bool = True
    turned: bool = False
    pieces: int = 1
    in_a_row: int = 1


STANDING = OnBed()
"""Whole, on its foot: where no bed is known."""


def on_bed(solid: MandrelSolid, bed_mm: Bed) -> OnBed | None:
    """How it lies on a bed, in as few pieces as may be, standing where there is room for that; None: it has none."""
    most = MOST_PIECES if isinstance(solid.held, Bore) else 1
    return next((lies for pieces in range(1, most + 1) if (lies := _laid(solid, bed_mm, pieces))), None)


def _laid(solid: MandrelSolid, bed_mm: Bed, pieces: int) -> OnBed | None:
    x_mm, y_mm, z_mm = (each - 2 * BED_EDGE_MM for each in bed_mm)
    split = solid.release.way == "split"
    long_mm, wide_mm = longest_mm(solid, pieces), solid.width_mm
    parts = 2 if split else pieces
    in_a_row = min(parts, _beside(wide_mm, x_mm))
    if not split and long_mm <= z_mm and in_a_row and ceil(parts / in_a_row) <= _beside(wide_mm, y_mm):
        return OnBed(True, False, pieces, in_a_row)
    if wide_mm > z_mm:
        return None
    for turned, along_mm, across_mm in ((False, x_mm, y_mm), (True, y_mm, x_mm)):
        if long_mm <= along_mm and parts <= _beside(wide_mm, across_mm):
            return OnBed(False, turned, pieces)
    return None


def _beside(wide_mm: float, room_mm: float) -> int:
    """How many so wide have room beside each other."""
    return max(0, int((room_mm + APART_MM) / (wide_mm + APART_MM)))


def cuts_mm(solid: MandrelSolid, pieces: int) -> tuple[float, ...]:
    """The heights between which the pieces are, from the foot to the end: alike, but for a collar that needs more."""
    if pieces == 1:
        return solid.foot_mm, solid.end_mm
    first_mm = max(solid.length_mm / pieces, solid.face_mm - solid.foot_mm + LEAST_BODY_MM)
    others_mm = (solid.length_mm - first_mm) / (pieces - 1)
    return solid.foot_mm, *(solid.end_mm - left * others_mm for left in reversed(range(pieces)))


def longest_mm(solid: MandrelSolid, pieces: int) -> float:
    """The length of the longest piece."""
    return max(high - low for low, high in pairwise(cuts_mm(solid, pieces)))


def driven_mm(solid: MandrelSolid, bed_mm: Bed | None) -> float:
    """The length of the piece that has the collar, cut as a bed wants it."""
    lies = None if bed_mm is None else on_bed(solid, bed_mm)
    foot_mm, first_mm = cuts_mm(solid, 1 if lies is None else lies.pieces)[:2]
    return first_mm - foot_mm


def meshes_of(solid: MandrelSolid, lies: OnBed = STANDING) -> tuple[Mesh, ...]:
    """The pieces as they lie on the bed; the halves of a split one on their flat faces."""
    if solid.release.way == "split":
        halves = half_of(solid, 1), half_of(solid, -1).turned(lambda p: (-p[0], -p[1], p[2]))
        return _placed(tuple(each.turned(_laid_down) for each in halves), lies)
    parts = (piece_of(solid, low, high) for low, high in pairwise(cuts_mm(solid, lies.pieces)))
    return _placed(tuple(part if lies.standing else part.turned(_laid_down) for part in parts), lies)


def _placed(parts: tuple[Mesh, ...], lies: OnBed) -> tuple[Mesh, ...]:
    """Side by side from the corner of the bed, as far apart as the widest, which is the first, needs."""
    turned = tuple(part.turned(_quarter) for part in parts) if lies.turned else parts
    x_mm, y_mm, _ = (size + APART_MM for size in turned[0].size_mm)
    beside = len(parts) if lies.turned else lies.in_a_row
    return tuple(
        part.at_corner(BED_EDGE_MM + at % beside * x_mm, BED_EDGE_MM + at // beside * y_mm)
        for at, part in enumerate(turned)
    )


def _laid_down(point: Vertex) -> Vertex:
    """The axis along x; what looked along y looks up."""
    x, y, z = point
    return z, x, y


def _quarter(point: Vertex) -> Vertex:
    x, y, z = point
    return -y, x, z
