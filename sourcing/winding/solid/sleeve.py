"""A printed sleeve on a steel rod: which rod, its bore with a flat, and what rod and flat stand.

The bore has a flat all along it, and the rod one filed to match: so the crank's torque goes into the steel, and pieces
pushed on one after the other stand as they should. Where the coil would not come off, the bore has break lines: with
the rod drawn out, the shell between them gives way inwards.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import acos, cos, pi, tau

from sourcing.figures import formula

BORE_ROOM_MM = 0.2
"""The bore over the rod, on the diameter (assumed)."""

LEAST_WALL_MM = 0.8
"""Two lines of a nozzle of 0.4 mm (common practice, no source); the rod holds it up from within."""

FLAT_SHARE = 0.15
"""How deep the flat is, over the rod's diameter (assumed)."""

FLAT_RAD = 3 * pi / 2
"""Where round the mandrel the flat lies: opposite the slot for the wire's end."""

BREAK_SKIN_MM, BREAK_WIDTH_MM = 0.4, 1.0
"""What a break line leaves of the wall, one line of the nozzle, and how wide it is (assumed)."""

BREAKS_RAD = (0.0, pi / 2, pi)
"""Where the break lines run, clear of the flat."""

EDGE_SHARE = 0.04
"""A break line's sides are drawn over this much of its width."""

ROD_STRENGTH_MPA = 150.0
"""Shear at which mild steel gives way (assumed); drill shanks are harder."""

CRUSHES_MPA = 40.0
"""Pressure at which printed plastic gives way under the flat (assumed)."""


@dataclass(frozen=True, slots=True)
class Bore:
    """The bore of a sleeve, for a rod of some diameter; `breaks_mm`: how far from the axis break lines reach, 0: none.

    Its wall is what the thinnest place of the mandrel leaves.
    """

    rod_mm: float
    wall_mm: float
    breaks_mm: float = 0.0

    @property
    def round_mm(self) -> float:
        """The radius of its round part."""
        return (self.rod_mm + BORE_ROOM_MM) / 2

    @property
    def flat_mm(self) -> float:
        """From its axis to its flat."""
        return self.round_mm - flat_depth_mm(self.rod_mm)

    @property
    def corners_rad(self) -> tuple[float, ...]:
        """The angles at which its outline has corners: the flat's two, and both sides of each edge of a break line."""
        half = acos(self.flat_mm / self.round_mm)
        return FLAT_RAD - half, FLAT_RAD + half, *(self._edges_rad() if self.breaks_mm else ())

    def radius_mm(self, angle_rad: float) -> float:
        """Its outline."""
        if self.breaks_mm and from_nearest_rad(angle_rad, BREAKS_RAD) < self._break_rad:
            return self.breaks_mm
        across = cos(angle_rad - FLAT_RAD)
        return self.round_mm if across * self.round_mm <= self.flat_mm else self.flat_mm / across

    @property
    def _break_rad(self) -> float:
        """From the middle of a break line to its edge."""
        return BREAK_WIDTH_MM / 2 / self.breaks_mm

    def _edges_rad(self) -> Iterator[float]:
        half, side = self._break_rad, self._break_rad * EDGE_SHARE
        for middle in BREAKS_RAD:
            yield from ((middle + edge) % tau for edge in (-half - side, side - half, half - side, half + side))


def from_nearest_rad(angle_rad: float, middles_rad: Sequence[float]) -> float:
    """How far an angle is from the nearest of some.

    >>> from_nearest_rad(6.0, (0.5, 3.0)) < 0.79
    True
    """
    return min(abs((angle_rad - middle + pi) % tau - pi) for middle in middles_rad)


@formula("t = 0.15 D_r", where={"D_r": "rod_mm"}, source="assumed: deep enough to drive a printed sleeve")
def flat_depth_mm(rod_mm: float) -> float:
    """How deep the flat is filed into a rod.

    >>> flat_depth_mm(5.0)
    0.75
    """
    return FLAT_SHARE * rod_mm


@formula(
    "t = (D_o − D_r − 0.2) / 2",
    where={"D_o": "outside_mm", "D_r": "rod_mm"},
    source="geometry; 0.2 mm of room on the rod assumed",
)
def sleeve_wall_mm(outside_mm: float, rod_mm: float) -> float:
    """The wall that a sleeve on a rod has where it is thinnest; negative where the rod is too thick.

    >>> round(sleeve_wall_mm(7.0, 4.0), 2)
    1.4
    """
    return (outside_mm - rod_mm - BORE_ROOM_MM) / 2


def sleeve_rod_mm(outside_mm: float, rods_mm: Sequence[float]) -> float | None:
    """The thickest rod that leaves a sleeve its least wall; None where none is thin enough.

    >>> sleeve_rod_mm(7.0, (3.0, 4.0, 5.0, 6.0)), sleeve_rod_mm(4.0, (3.0, 4.0))
    (5.0, None)
    """
    fitting = (rod for rod in rods_mm if sleeve_wall_mm(outside_mm, rod) >= LEAST_WALL_MM - 1e-9)
    return max(fitting, default=None)


def bore_for(outside_mm: float, rods_mm: Sequence[float], breaks: bool = False) -> Bore | None:
    """The bore of a sleeve that is so thick where it is thinnest, for the thickest rod that serves; None: none does."""
    rod_mm = sleeve_rod_mm(outside_mm, rods_mm)
    if rod_mm is None:
        return None
    return Bore(rod_mm, sleeve_wall_mm(outside_mm, rod_mm), outside_mm / 2 - BREAK_SKIN_MM if breaks else 0.0)


@formula(
    "S = p_c t (D_r − t) L / (3 T)",
    where={"p_c": "crushes_mpa", "L": "gripped_mm", "T": "torque_n_mm", "t": "flat_depth_mm", "D_r": "rod_mm"},
    source="derived: on half of the flat the pressure rises evenly from its middle to its edge",
)
def safety_of_flat(
    crushes_mpa: float, gripped_mm: float, torque_n_mm: float, flat_depth_mm: float, rod_mm: float
) -> float:
    """What the plastic on a rod's flat stands over the torque that the flat passes on.

    >>> round(safety_of_flat(40.0, 40.0, 600.0, 0.75, 5.0), 2)
    2.83
    """
    return crushes_mpa * flat_depth_mm * (rod_mm - flat_depth_mm) * gripped_mm / (3 * torque_n_mm)
