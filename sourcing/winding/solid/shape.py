"""The whole mandrel: shank, collar with the job's name and the slot for the wire's end, body.

Heights count from the first turn's axis along the mandrel; the collar and the shank lie below it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import acos, asin, ceil, cos, floor, pi, sqrt
from typing import Literal

from sourcing.quantities import show_diameter
from sourcing.springs.model import Hand
from sourcing.stock.model import Bench
from sourcing.winding.solid.coil import START_RAD, LaidCoil
from sourcing.winding.solid.lettering import ADVANCE, LINE, dots, lines_of
from sourcing.winding.solid.release import Release

ShankKind = Literal["hex", "round", "drill"]
"""Hexagonal for a spanner or crank, round for a collet or lathe chuck, round with three flats for a drill chuck."""

SHANK_SIZES_MM = (3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 13.0, 17.0, 19.0, 24.0)
"""Across flats of a hexagon (spanners of ISO 272's series, from memory), else the diameter."""

DRILL_CHUCK_MM = 10.0
"""What the chuck of a common hand drill takes at most (common practice, no source)."""

SHANK_LENGTH_MM = 25.0
FLATS_DEPTH_SHARE = 0.05
"""How deep the flats for a drill chuck are, over the shank's diameter."""

LEAST_COLLAR_RADIUS_MM, LEAST_COLLAR_HEIGHT_MM = 8.0, 8.0
COLLAR_EDGE_MM = 1.5
"""The collar stands so much over the wire in its slot, and over the shank."""

SLOT_SHARE = 1.3
"""The width of the slot where the wire lies in it, in wires; it widens outwards, its walls being radial."""

DOT_MM, ENGRAVED_MM = 0.6, 0.5
"""A dot of the lettering: as wide as a nozzle of 0.4 mm leaves clear, and so deep."""

MOST_NAME_LINES = 2

EDGE_MM = 0.02
"""A step is drawn over this much, so that no two points of neighbouring rings fall on each other."""

END_MM = 2.0
"""The body goes on so far past the last turn."""


@dataclass(frozen=True, slots=True)
class Shank:
    """What the chuck or the crank grips."""

    kind: ShankKind
    across_mm: float
    length_mm: float = SHANK_LENGTH_MM

    @property
    def greatest_radius_mm(self) -> float:
        """To a corner of the hexagon, else half of the diameter."""
        return self.across_mm / sqrt(3) if self.kind == "hex" else self.across_mm / 2

    @property
    def corners_rad(self) -> tuple[float, ...]:
        """The angles at which its outline has corners."""
        if self.kind == "round":
            return ()
        if self.kind == "hex":
            return tuple(at * pi / 3 for at in range(6))
        half = acos(1 - 2 * FLATS_DEPTH_SHARE)
        return tuple((middle + side) % (2 * pi) for middle in _flats_rad(3) for side in (-half, half))

    def radius_mm(self, angle_rad: float) -> float:
        """Its outline."""
        if self.kind == "hex":
            return self.across_mm / 2 / cos(_from_nearest(angle_rad, _flats_rad(6)))
        if self.kind == "drill":
            flat_mm = self.across_mm / 2 * (1 - 2 * FLATS_DEPTH_SHARE)
            return min(self.across_mm / 2, flat_mm / cos(_from_nearest(angle_rad, _flats_rad(3))))
        return self.across_mm / 2


def _flats_rad(flats: int) -> tuple[float, ...]:
    return tuple(pi / flats + at * 2 * pi / flats for at in range(flats))


def _from_nearest(angle_rad: float, middles_rad: Sequence[float]) -> float:
    return min(abs((angle_rad - middle + pi) % (2 * pi) - pi) for middle in middles_rad)


@dataclass(frozen=True, slots=True)
class Collar:
    """What the wire starts from: its size, the slot all along it, and the lines cut into it.

    The slot's floor goes on the body's surface; `slot_half_rad` is from its middle to a wall.
    """

    radius_mm: float
    height_mm: float
    slot_half_rad: float
    slot_floor_mm: float
    lines: tuple[str, ...]

    @property
    def dots(self) -> frozenset[tuple[int, int]]:
        """The dots of all lines, as column after the slot and row from the top."""
        return frozenset(
            (column, row + place * LINE) for place, text in enumerate(self.lines) for column, row in dots(text)
        )

    @property
    def first_dot_rad(self) -> float:
        """Where the lettering begins, after the slot."""
        return START_RAD + self.slot_half_rad + DOT_MM / self.radius_mm

    @property
    def columns(self) -> int:
        """The dots of the longest line."""
        return max(map(len, self.lines)) * ADVANCE


@dataclass(frozen=True, slots=True)
class MandrelSolid:
    """A mandrel as a solid; see the head of this file for where its heights count from."""

    coil: LaidCoil
    release: Release
    shank: Shank
    collar: Collar

    @property
    def face_mm(self) -> float:
        """The collar's upper face, on which the first turn lies."""
        return -self.coil.wire_mm / 2

    @property
    def end_mm(self) -> float:
        """The free end."""
        return self.coil.length_mm + self.coil.wire_mm / 2 + END_MM

    @property
    def taper_mm(self) -> float:
        """The height of the cone from the shank to the collar: 45 degrees, printed without support."""
        return self.collar.radius_mm - self.shank.greatest_radius_mm

    @property
    def length_mm(self) -> float:
        """From end to end."""
        return self.end_mm - self.face_mm + self.collar.height_mm + self.taper_mm + self.shank.length_mm

    @property
    def width_mm(self) -> float:
        """Across the collar, the strip of a split mandrel included."""
        return 2 * self.collar.radius_mm

    @property
    def core_mm(self) -> float:
        """The diameter at its thinnest, shank included: what the crank twists."""
        return min(2 * self.coil.thinnest_mm, self.shank.across_mm)


def solid_of(coil: LaidCoil, release: Release, name: str, shank_kind: ShankKind, units: str = "mm") -> MandrelSolid:
    """The mandrel for a coil: a shank as thick as the body up to what chucks take, a collar that bears the name."""
    shank = Shank(shank_kind, shank_across_mm(2 * coil.seat_mm, shank_kind))
    figures = figures_of(coil, units)
    slot_half_rad = asin(SLOT_SHARE * coil.wire_mm / 2 / coil.stations[0].radius_mm)
    free_rad = 2 * (pi - slot_half_rad)
    radius_mm = max(
        LEAST_COLLAR_RADIUS_MM,
        coil.seat_mm + coil.wire_mm + COLLAR_EDGE_MM,
        shank.greatest_radius_mm + COLLAR_EDGE_MM,
        (len(figures) * ADVANCE + 2) * DOT_MM / free_rad + EDGE_MM,
    )
    letters = floor((radius_mm * free_rad / DOT_MM - 2) / ADVANCE)
    lines = lines_of(name, figures, letters, MOST_NAME_LINES)
    height_mm = max(LEAST_COLLAR_HEIGHT_MM, ceil((len(lines) * LINE + 1) * DOT_MM))
    return MandrelSolid(coil, release, shank, Collar(radius_mm, height_mm, slot_half_rad, coil.seat_mm, lines))


def shank_for(bench: Bench) -> ShankKind:
    """The shank for what turns the mandrel at this bench."""
    if "lathe" in bench.tools:
        return "round"
    return "hex" if {"hand-drill", "bench-drill"}.isdisjoint(bench.tools) else "drill"


def figures_of(coil: LaidCoil, units: str = "mm") -> str:
    """What stands below the name: the diameter where the wire lies, of a cone at both ends, and the hand's letter."""
    ends = (coil.thinnest_mm, coil.seat_mm) if coil.tapered else (coil.seat_mm,)
    sizes = "-".join(show_diameter(2 * each, units).split()[0] for each in ends)
    return f"⌀{sizes} {'R' if coil.hand is Hand.RIGHT else 'L'}"


def shank_across_mm(body_mm: float, kind: ShankKind) -> float:
    """The next size that is not thinner than the body, as far as a spanner or a chuck goes.

    >>> shank_across_mm(5.5, "hex"), shank_across_mm(20.0, "drill")
    (6.0, 10.0)
    """
    sizes = [size for size in SHANK_SIZES_MM if kind != "drill" or size <= DRILL_CHUCK_MM]
    return next((size for size in sizes if size >= body_mm), sizes[-1])
