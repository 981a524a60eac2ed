"""A spring from the side: the helix of its wire, each half turn in front drawn over those behind."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, pi, sin

from sourcing.quantities import show_diameter, show_length, show_wire
from sourcing.sheets.drawing.svg import LINE_MM, SMALL_MM, THIN_MM, Picture, Point, dimension, line, text, wire
from sourcing.springs import geometry
from sourcing.springs.conical_lengths import pitch_of
from sourcing.springs.model import CompressionSpring, ConicalSpring, Hand, PressedSpring

POINTS_A_TURN = 36
MARGIN_MM = 2.0
ASIDE_MM, BELOW_MM, ABOVE_MM = 22.5, 19.5, 8.0
"""Room for the dimensions beside, below and above a spring."""

ROOM_MM = (58.0, 52.0)
"""What a dimensioned drawing may fill: a third of a page's width."""

MOST_ENLARGED = 5.0
AXIS_DASH = "4 1 1 1"


@dataclass(frozen=True, slots=True)
class Helix:
    """The middle of a wire: radius, height and turns at points along it; the hand it climbs in."""

    wire_diameter_mm: float
    turns: tuple[float, ...]
    radii_mm: tuple[float, ...]
    heights_mm: tuple[float, ...]
    left_hand: bool

    @property
    def widest_mm(self) -> float:
        """The outside diameter at the widest."""
        return 2.0 * max(self.radii_mm) + self.wire_diameter_mm

    @property
    def long_mm(self) -> float:
        """The length over the wire at both ends."""
        return max(self.heights_mm) - min(self.heights_mm) + self.wire_diameter_mm


def helix_of(spring: PressedSpring) -> Helix:
    """The wire of a spring at rest: its dead coils lie close at the ends, the others at the pitch.

    The small end of a cone is on top. Ground ends are drawn unground, squeezed to the free length; of a torsion spring
    it is the body, without its legs.
    """
    wire_mm, total = spring.wire_diameter_mm, spring.total_coils
    dead = (total - spring.active_coils) / 2.0
    count = max(2, round(total * POINTS_A_TURN))
    turns = tuple(total * at / count for at in range(count + 1))
    pitch_mm = _pitch_mm(spring)
    heights = [_height_mm(turn, total, dead, wire_mm, pitch_mm) for turn in turns]
    stretch = (spring.free_length_mm - wire_mm) / (heights[-1] or 1.0)
    radii = [_radius_mm(spring, min(max(turn - dead, 0.0), spring.active_coils)) for turn in turns]
    return Helix(wire_mm, turns, tuple(radii), tuple(height * stretch for height in heights), spring.hand is Hand.LEFT)


def _pitch_mm(spring: PressedSpring) -> float:
    match spring:
        case CompressionSpring():
            return geometry.pitch_mm(
                spring.wire_diameter_mm, spring.free_length_mm, spring.active_coils, spring.total_coils, spring.ends
            )
        case ConicalSpring():
            return pitch_of(spring)


def _radius_mm(spring: PressedSpring, active_turn: float) -> float:
    match spring:
        case CompressionSpring():
            return spring.mean_diameter_mm / 2.0
        case ConicalSpring():
            large, small = spring.mean_diameter_large_mm, spring.mean_diameter_small_mm
            return (large + (small - large) * active_turn / spring.active_coils) / 2.0


def _height_mm(turn: float, total: float, dead: float, wire_mm: float, pitch_mm: float) -> float:
    """How far up the wire's middle is after so many turns."""
    close = min(turn, dead) + max(0.0, turn - (total - dead))
    return close * wire_mm + max(0.0, min(turn, total - dead) - dead) * pitch_mm


def side_view(helix: Helix, scale: float, origin: Point) -> Iterator[str]:
    """The helix seen from the side, its axis upright; `origin` is the middle of its lower end."""
    back, front = halves(helix, scale, origin)
    for half in (*back, *front):
        yield from wire(half, helix.wire_diameter_mm * scale, scaled=scale != 1.0)


def halves(helix: Helix, scale: float, origin: Point) -> tuple[list[list[Point]], list[list[Point]]]:
    """Each half turn as points on the paper: those behind, and those in front.

    Upright, the front wires of a right-hand spring climb to the right.
    """
    sides: tuple[list[list[Point]], list[list[Point]]] = ([], [])
    last: tuple[int, int] | None = None
    for turn, radius, height in zip(helix.turns, helix.radii_mm, helix.heights_mm, strict=True):
        angle = 2.0 * pi * turn
        x = -radius * cos(angle) * scale * (-1.0 if helix.left_hand else 1.0)
        at = (origin[0] + x, origin[1] - (height + helix.wire_diameter_mm / 2.0) * scale)
        half = int(2.0 * turn + 1e-9)
        in_front = sin(angle + 1e-9) >= 0.0
        if last != (half, in_front):
            joined = [sides[last[1]][-1][-1]] if last is not None else []
            sides[in_front].append(joined)
            last = (half, int(in_front))
        sides[in_front][-1].append(at)
    return sides


def dimensioned(spring: PressedSpring, units: str, room_mm: tuple[float, float] = ROOM_MM) -> Picture:
    """The finished spring with its dimensions, as large as the room allows, at most five times its size."""
    helix = helix_of(spring)
    scale = min(
        (room_mm[0] - 2.0 * ASIDE_MM) / helix.widest_mm,
        (room_mm[1] - BELOW_MM - ABOVE_MM) / helix.long_mm,
        MOST_ENLARGED,
    )
    height, middle = helix.long_mm * scale, room_mm[0] / 2.0
    foot = ABOVE_MM + height
    right = middle + helix.widest_mm * scale / 2.0
    words = (
        f"{show_wire(spring.wire_diameter_mm, units)} wire, {spring.total_coils:.2f} coils,",
        f"{spring.active_coils:.2f} active, ends {spring.ends}".replace("-", ", "),
    )
    parts = [
        *side_view(helix, scale, (middle, foot)),
        line((middle, ABOVE_MM - 2.0), (middle, foot + 2.0), THIN_MM, AXIS_DASH),
        *_across(spring, scale, (middle, foot), units),
        *dimension((right, ABOVE_MM), (right, foot), show_length(spring.free_length_mm, units), 7.0),
        *(text((middle, foot + 13.5 + 4.0 * row), each, size_mm=SMALL_MM) for row, each in enumerate(words)),
    ]
    said = " ".join(
        (f"outside {_outsides(spring, units)}, free length {show_length(spring.free_length_mm, units)},", *words)
    )
    return Picture(room_mm[0], foot + BELOW_MM, "The finished spring with its dimensions", said, tuple(parts))


def _outsides(spring: PressedSpring, units: str) -> str:
    match spring:
        case CompressionSpring():
            return show_diameter(spring.outside_diameter_mm, units)
        case ConicalSpring():
            large, small = spring.outside_diameter_large_mm, spring.outside_diameter_small_mm
            return f"{show_diameter(large, units)} at the large end, {show_diameter(small, units)} at the small one"


def _across(spring: PressedSpring, scale: float, foot: Point, units: str) -> Iterator[str]:
    """The outside diameter below; of a cone the large end's, and the small end's above."""
    match spring:
        case CompressionSpring():
            ends = ((spring.outside_diameter_mm, foot[1], 7.0),)
        case ConicalSpring():
            large, small = spring.outside_diameter_large_mm, spring.outside_diameter_small_mm
            ends = ((large, foot[1], 7.0), (small, ABOVE_MM, -4.0))
    for outside_mm, y, off_mm in ends:
        half = outside_mm * scale / 2.0
        yield from dimension((foot[0] - half, y), (foot[0] + half, y), show_diameter(outside_mm, units), off_mm)


def one_to_one(spring: PressedSpring, room_mm: tuple[float, float]) -> Picture | None:
    """The finished spring in its true size, to lay it on; None where the room does not hold it."""
    helix = helix_of(spring)
    width, height = helix.widest_mm + 2.0 * MARGIN_MM, helix.long_mm + 2.0 * MARGIN_MM
    parts = tuple(side_view(helix, 1.0, (width / 2.0, height - MARGIN_MM)))
    picture = Picture(
        width, height, "The finished spring, one to one", "an outline to lay the finished spring on", parts
    )
    return lying_if_long(picture).within(room_mm)


LONG_MM = 60.0
"""A taller outline lies on its side, so that it leaves room on the page."""


def lying_if_long(picture: Picture) -> Picture:
    """The outline upright, or on its side where it is long."""
    return picture if picture.height_mm <= LONG_MM else picture.turned_right()


def check_line(length_mm: float = 100.0) -> Picture:
    """A line of a known length, which tells whether the page was printed in its true size."""
    ticks: Sequence[str] = [
        line((2.0 + at, 3.0 if at % 10 else 1.5), (2.0 + at, 6.0), THIN_MM if at % 10 else LINE_MM)
        for at in range(0, int(length_mm) + 1, 5)
    ]
    words = text((2.0 + length_mm / 2.0, 10.5), f"this line is {length_mm:g} mm long")
    whole = line((2.0, 6.0), (2.0 + length_mm, 6.0))
    return Picture(length_mm + 4.0, 12.0, "Check line", f"a line of {length_mm:g} mm", (*ticks, whole, words))
