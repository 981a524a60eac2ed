"""The rings of a mandrel's surface, from its foot up; of a sleeve, down its bore again.

A step, a slot and the letters are rings and points that lie close together.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from math import asin, ceil, pi, sin

from sourcing.winding.solid.coil import START_RAD
from sourcing.winding.solid.mesh import Mesh, Ring, sewn
from sourcing.winding.solid.shape import (
    DOT_MM,
    EDGE_MM,
    ENGRAVED_MM,
    MARK_DEEP_MM,
    MARK_MM,
    Collar,
    MandrelSolid,
    Shank,
)
from sourcing.winding.solid.sleeve import Bore
from sourcing.winding.solid.surface import Profile, profile_at

Outline = Callable[[float], float]
"""From the angle to the radius, mm."""

Section = tuple[float, Outline, Sequence[float]]
"""Height, outline, and the angles at which it has points."""

LEAST_COLUMNS, COLUMN_STEP = 60, 12
FLATNESS_MM = 0.01
"""How far the facets of the body may lie inside its round."""

ROWS_PER_WIRE, MOST_ROWS = 16, 2500

APART_RAD = 1e-4
"""Points nearer than this would be one point to whoever reads the file."""

CUT_STEPS = 20
"""So many that the angle of a cut is exact where the outline is even."""


def mesh_of(solid: MandrelSolid) -> Mesh:
    """A whole mandrel on its axis."""
    return piece_of(solid, solid.foot_mm, solid.end_mm)


def piece_of(solid: MandrelSolid, low_mm: float, high_mm: float) -> Mesh:
    """A mandrel between two heights, the lower its foot or in its body, on its axis."""
    return sewn(tuple(_ring(*each) for each in _sections(solid, low_mm, high_mm)), isinstance(solid.held, Bore))


def half_of(solid: MandrelSolid, half: int) -> Mesh:
    """One half (1 or -1) of a split mandrel, on the axis of the whole."""
    cut_mm, sections = solid.release.strip_mm / 2, _sections(solid, solid.foot_mm, solid.end_mm)
    return sewn(tuple(_half_ring(*each, cut_mm, half) for each in sections))


def _apart(angles: Iterable[float]) -> list[float]:
    """The angles within one turn, in order, less those whose points would fall on the one before."""
    kept: list[float] = []
    for angle in sorted(each % (2 * pi) for each in angles):
        if not kept or angle - kept[-1] > APART_RAD:
            kept.append(angle)
    return kept


def _ring(height_mm: float, outline: Outline, angles: Sequence[float]) -> Ring:
    turned = _apart(angles)
    return Ring(height_mm, tuple(turned), tuple(map(outline, turned)))


def _half_ring(height_mm: float, outline: Outline, angles: Sequence[float], cut_mm: float, half: int) -> Ring:
    """The part of a ring above y = cut_mm, or below -cut_mm; the chord closes it."""
    begin = 0.0 if half > 0 else pi
    first = begin + _cut_rad(outline, cut_mm, begin, 1)
    last = begin + pi + _cut_rad(outline, cut_mm, begin + pi, -1)
    within = [angle for angle in _apart(angles) if first + APART_RAD < angle < last - APART_RAD]
    first_mm, last_mm = (cut_mm / abs(sin(angle)) for angle in (first, last))
    return Ring(height_mm, (first, *within, last), (first_mm, *map(outline, within), last_mm))


def _cut_rad(outline: Outline, cut_mm: float, begin_rad: float, way: int) -> float:
    """How far from an end of the x axis the outline is cut_mm away from it; beside a step, one side of it."""
    angle = 0.0
    for _ in range(CUT_STEPS):
        angle = way * asin(cut_mm / outline(begin_rad + angle))
    return angle


def _sections(solid: MandrelSolid, low_mm: float, high_mm: float) -> Iterator[Section]:
    """From the lower end to the upper one; of a sleeve, its bore's two ends as well."""
    bore = solid.held if isinstance(solid.held, Bore) else None
    columns = (*_columns(solid), *(bore.corners_rad if bore else ()), *_mark_angles(solid))
    around = (*columns, *_collar_angles(solid.collar)) if low_mm < solid.face_mm else columns
    if low_mm < solid.face_mm:
        yield from _held_sections(solid, around)
    profiles: dict[float, Profile] = {}
    first_mm, *heights_mm = _body_heights(solid, max(low_mm, solid.face_mm + EDGE_MM), high_mm)
    yield first_mm, _body_outline(solid, profiles, first_mm), around
    for height_mm in heights_mm:
        yield height_mm, _body_outline(solid, profiles, height_mm), columns
    if bore:
        yield high_mm, bore.radius_mm, columns
        yield low_mm, bore.radius_mm, around


def _held_sections(solid: MandrelSolid, around: Sequence[float]) -> Iterator[Section]:
    """Of the shank, where there is one, and the collar."""
    if isinstance(solid.held, Shank):
        gripped = (*around, *solid.held.corners_rad)
        for height_mm in (solid.foot_mm, solid.foot_mm + solid.held.length_mm):
            yield height_mm, solid.held.radius_mm, gripped
    for height_mm in _collar_heights(solid):
        yield height_mm, _collar_outline(solid, height_mm), around


def _columns(solid: MandrelSolid) -> tuple[float, ...]:
    wanted = pi / (2 * FLATNESS_MM / solid.coil.seat_mm) ** 0.5
    count = max(LEAST_COLUMNS, ceil(wanted / COLUMN_STEP) * COLUMN_STEP)
    return tuple(at * 2 * pi / count for at in range(count))


def _body_heights(solid: MandrelSolid, first_mm: float, last_mm: float) -> Iterator[float]:
    length_mm = last_mm - first_mm
    rows = 1 if solid.release.way == "slide" and not solid.release.groove_depth_mm else _rows(solid, length_mm)
    evenly = (first_mm + length_mm * at / rows for at in range(rows + 1))
    edges = _both_sides((solid.middle_mm - MARK_MM / 2, solid.middle_mm + MARK_MM / 2), EDGE_MM)
    mark = (edge for edge in edges if solid.coil.loop_mm and first_mm < edge < last_mm)
    yield from sorted((*evenly, *mark))


def _rows(solid: MandrelSolid, length_mm: float) -> int:
    return min(MOST_ROWS, ceil(length_mm / solid.coil.wire_mm * ROWS_PER_WIRE))


def _body_outline(solid: MandrelSolid, profiles: dict[float, Profile], height_mm: float) -> Outline:
    """The body's outline at a height; `profiles` are those that were worked out already."""

    def outline(angle_rad: float) -> float:
        if angle_rad not in profiles:
            profiles[angle_rad] = profile_at(solid.coil, solid.release, angle_rad)
        return profiles[angle_rad](height_mm)

    def marked(angle_rad: float) -> float:
        return outline(angle_rad) - (MARK_DEEP_MM if abs(angle_rad - START_RAD) < _mark_half_rad(solid) else 0.0)

    at_mark = solid.coil.loop_mm and abs(height_mm - solid.middle_mm) < MARK_MM / 2
    return marked if at_mark else outline


def _mark_half_rad(solid: MandrelSolid) -> float:
    return MARK_MM / 2 / solid.coil.seat_mm


def _mark_angles(solid: MandrelSolid) -> Iterator[float]:
    """Both sides of each edge of the mark for the pin of a loop."""
    if solid.coil.loop_mm:
        half = _mark_half_rad(solid)
        yield from _both_sides((START_RAD - half, START_RAD + half), EDGE_MM / solid.coil.seat_mm)


def _both_sides(edges: Iterable[float], by: float) -> Iterator[float]:
    for edge in edges:
        yield from (edge - by, edge + by)


def _collar_angles(collar: Collar) -> Iterator[float]:
    """Both sides of each edge of the slot and of each column of dots."""
    side = EDGE_MM / collar.radius_mm
    yield from _both_sides((START_RAD - collar.slot_half_rad, START_RAD + collar.slot_half_rad), side)
    edges = (collar.first_dot_rad + at * DOT_MM / collar.radius_mm for at in range(collar.columns + 1))
    yield from _both_sides(edges, side)


def _collar_heights(solid: MandrelSolid) -> list[float]:
    """From the collar's lower edge to its upper face, both sides of each row of dots."""
    rows = max(row for _, row in solid.collar.dots) + 1
    top_mm = solid.face_mm - DOT_MM
    edges = _both_sides((top_mm - at * DOT_MM for at in range(rows + 1)), EDGE_MM)
    return sorted({solid.underside_mm, *edges, solid.face_mm})


def _collar_outline(solid: MandrelSolid, height_mm: float) -> Outline:
    collar, top_mm = solid.collar, solid.face_mm - DOT_MM
    dots, row = collar.dots, int((top_mm - height_mm) // DOT_MM)

    def outline(angle_rad: float) -> float:
        from_slot = (angle_rad - START_RAD + pi) % (2 * pi) - pi
        if abs(from_slot) < collar.slot_half_rad:
            return collar.slot_floor_mm
        column = int((angle_rad - collar.first_dot_rad) % (2 * pi) * collar.radius_mm // DOT_MM)
        return collar.radius_mm - (ENGRAVED_MM if (column, row) in dots else 0.0)

    return outline
