"""Closed rings sewn to a surface of triangles: each to the next, with a fan at either end, or the last to the first.

Watertight at any resolution, and every triangle counts its corners anticlockwise seen from outside: each edge is used
once each way. Where rings have different numbers of points the sewing goes on at whichever has the nearer next angle.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, pi, sin

Vertex = tuple[float, float, float]
Triangle = tuple[int, int, int]


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

    def at_corner(self, x_mm: float = 0.0, y_mm: float = 0.0) -> Mesh:
        """The same, moved so that its box begins at this x and y, and lies on the bed."""
        dx, dy, dz = (min(values) for values in zip(*self.vertices, strict=True))
        return self.turned(lambda point: (point[0] - dx + x_mm, point[1] - dy + y_mm, point[2] - dz))


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


def sewn(rings: Sequence[Ring], through: bool = False) -> Mesh:
    """Rings made into one closed surface: from the bottom up, or `through` a bore, down it and back to the first."""
    vertices: list[Vertex] = []
    triangles: list[Triangle] = []
    starts: list[int] = []
    for ring in rings:
        starts.append(len(vertices))
        vertices += ring.points()
    for (below, first), (above, second) in pairwise(zip(rings, starts, strict=True)):
        triangles += _band(below, above, first, second)
    if through:
        triangles += _band(rings[-1], rings[0], starts[-1], starts[0])
        return Mesh(tuple(vertices), tuple(triangles))
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
