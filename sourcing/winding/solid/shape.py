"""The whole mandrel: shank or bore, collar with the job's name and the slot for the wire's end, body.

Heights count from the first turn's axis along the mandrel; the collar and the shank lie below it. A sleeve has a bore
from end to end and no shank: its rod is held.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import acos, asin, ceil, cos, floor, pi, sqrt
from typing import Literal

from sourcing.quantities import show_diameter
from sourcing.springs.model import Hand
from sourcing.stock.model import Bench
from sourcing.winding.solid.coil import START_RAD, LaidCoil
from sourcing.winding.solid.lettering import ADVANCE, LINE, dots, lines_of
from sourcing.winding.solid.release import Release
from sourcing.winding.solid.sleeve import Bore, flat_depth_mm, from_nearest_rad

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

MARK_MM, MARK_DEEP_MM = 1.5, 0.5
"""The mark at which the hole for the loop's pin is drilled: its width and depth, less than a sleeve's wall."""

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
            return self.across_mm / 2 / cos(from_nearest_rad(angle_rad, _flats_rad(6)))
        if self.kind == "drill":
            flat_mm = self.across_mm / 2 * (1 - 2 * FLATS_DEPTH_SHARE)
            return min(self.across_mm / 2, flat_mm / cos(from_nearest_rad(angle_rad, _flats_rad(3))))
        return self.across_mm / 2


def _flats_rad(flats: int) -> tuple[float, ...]:
    return tuple(pi / flats + at * 2 * pi / flats for at in range(flats))


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
    held: Shank | Bore
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
    def middle_mm(self) -> float:
        """The middle between two bodies, where the loop's pin goes through."""
        return self.coil.length_mm / 2

    @property
    def underside_mm(self) -> float:
        """The collar's lower edge."""
        return self.face_mm - self.collar.height_mm

    @property
    def taper_mm(self) -> float:
        """The height of the cone from the shank to the collar: 45 degrees, printed without support."""
        return self.collar.radius_mm - self.held.greatest_radius_mm if isinstance(self.held, Shank) else 0.0

    @property
    def foot_mm(self) -> float:
        """The end that is held: of the shank, or the underside of a sleeve's collar."""
        shank_mm = self.held.length_mm if isinstance(self.held, Shank) else 0.0
        return self.underside_mm - self.taper_mm - shank_mm

    @property
    def length_mm(self) -> float:
        """From end to end."""
        return self.end_mm - self.foot_mm

    @property
    def width_mm(self) -> float:
        """Across the collar, the strip of a split mandrel included."""
        return 2 * self.collar.radius_mm

    @property
    def core_mm(self) -> float:
        """The diameter at its thinnest, shank included: what the crank twists. Of a sleeve, its rod across the flat."""
        if isinstance(self.held, Bore):
            return self.held.rod_mm - flat_depth_mm(self.held.rod_mm)
        return min(2 * self.coil.thinnest_mm, self.held.across_mm)


def solid_of(coil: LaidCoil, release: Release, name: str, held: ShankKind | Bore, units: str = "mm") -> MandrelSolid:
    """The mandrel for a coil: a shank as thick as the body up to what chucks take, or a sleeve's bore; a collar that
    bears the name.
    """
    grip = held if isinstance(held, Bore) else Shank(held, shank_across_mm(2 * coil.seat_mm, held))
    figures = figures_of(coil, units)
    slot_half_rad = asin(SLOT_SHARE * coil.wire_mm / 2 / coil.stations[0].radius_mm)
    free_rad = 2 * (pi - slot_half_rad)
    radius_mm = max(
        LEAST_COLLAR_RADIUS_MM,
        coil.seat_mm + coil.wire_mm + COLLAR_EDGE_MM,
        COLLAR_EDGE_MM + (grip.greatest_radius_mm if isinstance(grip, Shank) else 0.0),
        (len(figures) * ADVANCE + 2) * DOT_MM / free_rad + EDGE_MM,
    )
    letters = floor((radius_mm * free_rad / DOT_MM - 2) / ADVANCE)
    lines = lines_of(name, figures, letters, MOST_NAME_LINES)
    height_mm = max(LEAST_COLLAR_HEIGHT_MM, ceil((len(lines) * LINE + 1) * DOT_MM))
    return MandrelSolid(coil, release, grip, Collar(radius_mm, height_mm, slot_half_rad, coil.seat_mm, lines))


def shank_for(bench: Bench, drill_serves: bool = True) -> ShankKind:
    """The shank for what turns the mandrel at this bench, where a drill is strong enough for it or not."""
    if "lathe" in bench.tools:
        return "round"
    return "drill" if drill_serves and not {"hand-drill", "bench-drill"}.isdisjoint(bench.tools) else "hex"


def figures_of(coil: LaidCoil, units: str = "mm") -> str:
    """What stands below the name: the diameter where the wire lies, of a cone at both ends, and the hand's letter.

    Two bodies have both.
    """
    ends = (coil.thinnest_mm, coil.seat_mm) if coil.tapered else (coil.seat_mm,)
    sizes = "-".join(show_diameter(2 * each, units).split()[0] for each in ends)
    hand = "R+L" if coil.loop_mm else "R" if coil.hand is Hand.RIGHT else "L"
    return f"⌀{sizes} {hand}"


def shank_across_mm(body_mm: float, kind: ShankKind) -> float:
    """The next size that is not thinner than the body, as far as a spanner or a chuck goes.

    >>> shank_across_mm(5.5, "hex"), shank_across_mm(20.0, "drill")
    (6.0, 10.0)
    """
    sizes = [size for size in SHANK_SIZES_MM if kind != "drill" or size <= DRILL_CHUCK_MM]
    return next((size for size in sizes if size >= body_mm), sizes[-1])
