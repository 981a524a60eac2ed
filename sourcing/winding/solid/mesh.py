"""The surface of a mandrel as triangles: a stack of closed rings, each sewn to the next, with a fan at either end.

Watertight at any resolution, and every triangle counts its corners anticlockwise seen from outside: each edge is used
once each way. Where rings have different numbers of points the sewing goes on at whichever has the nearer next angle.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import asin, ceil, cos, pi, sin

from sourcing.winding.solid.coil import START_RAD
from sourcing.winding.solid.shape import DOT_MM, EDGE_MM, ENGRAVED_MM, Collar, MandrelSolid
from sourcing.winding.solid.surface import Profile, profile_at

Vertex = tuple[float, float, float]
Triangle = tuple[int, int, int]
Outline = Callable[[float], float]
"""From the angle to the radius, mm."""

LEAST_COLUMNS, COLUMN_STEP = 60, 12
FLATNESS_MM = 0.01
"""How far the facets of the body may lie inside its round."""

ROWS_PER_WIRE, MOST_ROWS = 16, 2500

APART_RAD = 1e-4
"""Points nearer than this would be one point to whoever reads the file."""

CUT_STEPS = 20
"""So many that the angle of a cut is exact where the outline is even."""

HALVES_APART_MM = 5.0
"""Between the halves of a split mandrel as they lie to be printed."""


@dataclass(frozen=True, slots=True)
class Mesh:
    """Points in mm, and triangles of them that look outwards."""

    vertices: tuple[Vertex, ...]
    triangles: tuple[Triangle, ...]

    @property
    def size_mm(self) -> Vertex:
        """The edges of the box around it."""
        x, y, z = (max(values) - min(values) for values in zip(*self.vertices, strict=True))
        return x, y, z

    @property
    def volume_mm3(self) -> float:
        """What it encloses: the sum of the tetrahedra from the origin to each triangle."""
        return sum(_triple(*(self.vertices[at] for at in triangle)) for triangle in self.triangles) / 6

    def turned(self, turn: Callable[[Vertex], Vertex]) -> Mesh:
        """The same, every point turned."""
        return Mesh(tuple(map(turn, self.vertices)), self.triangles)

    def at_corner(self, x_mm: float = 0.0) -> Mesh:
        """The same, moved so that its box begins at this x and at no y and z."""
        dx, dy, dz = (min(values) for values in zip(*self.vertices, strict=True))
        return self.turned(lambda point: (point[0] - dx + x_mm, point[1] - dy, point[2] - dz))


def _triple(a: Vertex, b: Vertex, c: Vertex) -> float:
    return a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0])


@dataclass(frozen=True, slots=True)
class Ring:
    """One turn of the surface at a height: radii at rising angles."""

    height_mm: float
    angles_rad: tuple[float, ...]
    radii_mm: tuple[float, ...]

    def points(self) -> Iterator[Vertex]:
        """Its points in order."""
        for angle, radius_mm in zip(self.angles_rad, self.radii_mm, strict=True):
            yield radius_mm * cos(angle), radius_mm * sin(angle), self.height_mm


def meshes_of(solid: MandrelSolid, lying: bool = False) -> tuple[Mesh, ...]:
    """The mandrel standing on its shank, or lying; a split one as two halves on their flat faces, side by side."""
    if solid.release.way != "split":
        whole = sewn(rings_of(solid))
        return ((whole.turned(_laid_down) if lying else whole).at_corner(),)
    first = sewn(rings_of(solid, 1)).turned(_laid_down).at_corner()
    second = sewn(rings_of(solid, -1)).turned(lambda p: _laid_down((-p[0], -p[1], p[2])))
    return first, _moved_in_y(second.at_corner(), first.size_mm[1] + HALVES_APART_MM)


def _laid_down(point: Vertex) -> Vertex:
    """The axis along x; what looked along y looks up."""
    x, y, z = point
    return z, x, y


def _moved_in_y(mesh: Mesh, by_mm: float) -> Mesh:
    return mesh.turned(lambda point: (point[0], point[1] + by_mm, point[2]))


def rings_of(solid: MandrelSolid, half: int = 0) -> tuple[Ring, ...]:
    """The rings from the shank's end up. `half`: 0 the whole, 1 and -1 the halves of a split one."""
    cut_mm = solid.release.strip_mm / 2

    def ring(height_mm: float, outline: Outline, angles: Iterable[float]) -> Ring:
        turned = _apart(angles)
        return _ring(height_mm, outline, turned) if half == 0 else _half_ring(height_mm, outline, turned, cut_mm, half)

    return tuple(ring(*each) for each in _outlines(solid))


def _apart(angles: Iterable[float]) -> list[float]:
    """The angles within one turn, in order, less those whose points would fall on the one before."""
    kept: list[float] = []
    for angle in sorted(each % (2 * pi) for each in angles):
        if not kept or angle - kept[-1] > APART_RAD:
            kept.append(angle)
    return kept


def _ring(height_mm: float, outline: Outline, angles: Sequence[float]) -> Ring:
    return Ring(height_mm, tuple(angles), tuple(map(outline, angles)))


def _half_ring(height_mm: float, outline: Outline, angles: Sequence[float], cut_mm: float, half: int) -> Ring:
    """The part of a ring above y = cut_mm, or below -cut_mm; the chord closes it."""
    begin = 0.0 if half > 0 else pi
    first = begin + _cut_rad(outline, cut_mm, begin, 1)
    last = begin + pi + _cut_rad(outline, cut_mm, begin + pi, -1)
    within = [angle for angle in angles if first + APART_RAD < angle < last - APART_RAD]
    first_mm, last_mm = (cut_mm / abs(sin(angle)) for angle in (first, last))
    return Ring(height_mm, (first, *within, last), (first_mm, *map(outline, within), last_mm))


def _cut_rad(outline: Outline, cut_mm: float, begin_rad: float, way: int) -> float:
    """How far from an end of the x axis the outline is cut_mm away from it; beside a step, one side of it."""
    angle = 0.0
    for _ in range(CUT_STEPS):
        angle = way * asin(cut_mm / outline(begin_rad + angle))
    return angle


def _outlines(solid: MandrelSolid) -> Iterator[tuple[float, Outline, Sequence[float]]]:
    """Height, outline and angles of each ring, from the shank's end up."""
    columns = _columns(solid)
    collar, face_mm = solid.collar, solid.face_mm
    around = (*columns, *_collar_angles(collar))
    gripped = (*around, *solid.shank.corners_rad)
    shank_top_mm = face_mm - collar.height_mm - solid.taper_mm
    for height_mm in (shank_top_mm - solid.shank.length_mm, shank_top_mm):
        yield height_mm, solid.shank.radius_mm, gripped
    for height_mm in _collar_heights(solid):
        yield height_mm, _collar_outline(solid, height_mm), around
    profiles: dict[float, Profile] = {}
    first_mm, *heights_mm = _body_heights(solid)
    yield first_mm, _body_outline(solid, profiles, first_mm), around
    for height_mm in heights_mm:
        yield height_mm, _body_outline(solid, profiles, height_mm), columns


def _columns(solid: MandrelSolid) -> tuple[float, ...]:
    wanted = pi / (2 * FLATNESS_MM / solid.coil.seat_mm) ** 0.5
    count = max(LEAST_COLUMNS, ceil(wanted / COLUMN_STEP) * COLUMN_STEP)
    return tuple(at * 2 * pi / count for at in range(count))


def _body_heights(solid: MandrelSolid) -> Iterator[float]:
    first_mm, length_mm = solid.face_mm + EDGE_MM, solid.end_mm - solid.face_mm - EDGE_MM
    rows = 1 if solid.release.way == "slide" and not solid.release.groove_depth_mm else _rows(solid, length_mm)
    yield from (first_mm + length_mm * at / rows for at in range(rows + 1))


def _rows(solid: MandrelSolid, length_mm: float) -> int:
    return min(MOST_ROWS, ceil(length_mm / solid.coil.wire_mm * ROWS_PER_WIRE))


def _body_outline(solid: MandrelSolid, profiles: dict[float, Profile], height_mm: float) -> Outline:
    """The body's outline at a height; `profiles` are those that were worked out already."""

    def outline(angle_rad: float) -> float:
        if angle_rad not in profiles:
            profiles[angle_rad] = profile_at(solid.coil, solid.release, angle_rad)
        return profiles[angle_rad](height_mm)

    return outline


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
    return sorted({solid.face_mm - solid.collar.height_mm, *edges, solid.face_mm})


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


def sewn(rings: Sequence[Ring]) -> Mesh:
    """Rings from the bottom up made into one closed surface."""
    vertices: list[Vertex] = []
    triangles: list[Triangle] = []
    starts: list[int] = []
    for ring in rings:
        starts.append(len(vertices))
        vertices += ring.points()
    for below, above, first, second in zip(rings, rings[1:], starts, starts[1:], strict=False):
        triangles += _band(below, above, first, second)
    for ring, start, up in ((rings[0], starts[0], False), (rings[-1], starts[-1], True)):
        vertices.append(_middle(ring))
        triangles += _fan(len(ring.angles_rad), start, len(vertices) - 1, up)
    return Mesh(tuple(vertices), tuple(triangles))


def _band(below: Ring, above: Ring, first: int, second: int) -> Iterator[Triangle]:
    """The triangles between two rings whose points are numbered from `first` and from `second` on."""
    lower, upper = below.angles_rad, above.angles_rad
    m, n = len(lower), len(upper)
    if lower == upper:
        for at in range(n):
            a, b = first + at, first + (at + 1) % n
            c, d = second + at, second + (at + 1) % n
            yield a, b, c
            yield b, d, c
        return
    i = j = 0
    while i < m or j < n:
        a, c = first + i % m, second + j % n
        if j >= n or (i < m and _next(lower, i) <= _next(upper, j)):
            yield a, first + (i + 1) % m, c
            i += 1
        else:
            yield a, second + (j + 1) % n, c
            j += 1


def _next(angles: Sequence[float], at: int) -> float:
    return angles[at + 1] if at + 1 < len(angles) else angles[0] + 2 * pi


def _middle(ring: Ring) -> Vertex:
    points, count = list(ring.points()), len(ring.angles_rad)
    return sum(point[0] for point in points) / count, sum(point[1] for point in points) / count, ring.height_mm


def _fan(count: int, start: int, middle: int, up: bool) -> Iterator[Triangle]:
    for at in range(count):
        a, b = start + at, start + (at + 1) % count
        yield (middle, a, b) if up else (middle, b, a)
