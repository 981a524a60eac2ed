"""The mandrel with the wire as it is laid on it, upright beside the finished spring; the held end is below.

Two bodies lie on either side of the loop between them, which goes over a pin through the middle of the mandrel.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import copysign, cos, pi, sin

from sourcing.quantities import show_diameter, show_length
from sourcing.sheets.drawing.springs import (
    AXIS_DASH,
    MOST_ENLARGED,
    POINTS_A_TURN,
    ROOM_MM,
    Helix,
    halves,
)
from sourcing.sheets.drawing.svg import SMALL_MM, THIN_MM, Picture, Point, circle, dimension, line, shape, text, wire
from sourcing.springs.model import Hand
from sourcing.winding.solid.coil import LaidCoil

ABOVE_MM, BELOW_MM, ASIDE_MM = 11.0, 12.0, 22.5
"""Room for the dimensions above, below and to the right."""

BARE_MM = 4.0
"""How much of the mandrel is drawn beyond the wire at either end, on the paper."""


def laid_helix(coil: LaidCoil) -> Helix:
    """The wire on the mandrel, from the held end; of two bodies the upper one, from the loop on."""
    half = bool(coil.loop_mm)
    turns, from_turn, from_mm = (coil.turns / 2.0, 0.5, coil.loop_mm / 2.0) if half else (coil.turns, 0.0, 0.0)
    count = max(2, round(turns * POINTS_A_TURN))
    stations = [coil.at(turns * at / count) for at in range(count + 1)]
    return Helix(
        coil.wire_mm,
        tuple(each.turn + from_turn for each in stations),
        tuple(each.radius_mm for each in stations),
        tuple(each.height_mm + from_mm for each in stations),
        coil.hand is Hand.LEFT,
    )


def wound_picture(coil: LaidCoil, units: str, room_mm: tuple[float, float] = ROOM_MM) -> Picture:
    """Where the wire is laid, with the mandrel's diameter under it and the length that it covers."""
    helix, long_mm = laid_helix(coil), coil.length_mm + coil.wire_mm
    scale = min(
        (room_mm[0] - 2.0 * ASIDE_MM) / helix.widest_mm,
        (room_mm[1] - ABOVE_MM - BELOW_MM - BARE_MM) / long_mm,
        MOST_ENLARGED,
    )
    middle, foot = room_mm[0] / 2.0, ABOVE_MM + long_mm * scale
    right, thin, thick = (middle + each * scale for each in (helix.widest_mm / 2.0, coil.thinnest_mm, coil.seat_mm))
    back, front = _bodies(coil, helix, scale, (middle, foot)) if coil.loop_mm else halves(helix, scale, (middle, foot))
    chuck = foot + BARE_MM
    at_top, at_foot = (show_diameter(2.0 * each, units) for each in (coil.thinnest_mm, coil.seat_mm))
    words, long = _words(coil), show_length(long_mm, units)
    parts = [
        *(part for half in back for part in wire(half, coil.wire_mm * scale, scaled=True)),
        shape(_outline(coil, scale, (middle, foot)), "white"),
        *(part for half in front for part in wire(half, coil.wire_mm * scale, scaled=True)),
        *(_pin(coil, scale, (middle, foot), units) if coil.loop_mm else ()),
        line((middle, ABOVE_MM - BARE_MM - 2.0), (middle, chuck + 2.0), THIN_MM, AXIS_DASH),
        *dimension((2.0 * middle - thin, ABOVE_MM - BARE_MM), (thin, ABOVE_MM - BARE_MM), at_top, -3.0),
        *dimension((right, ABOVE_MM), (right, foot), long, 7.0),
        *(dimension((2.0 * middle - thick, chuck), (thick, chuck), at_foot, 4.0) if coil.tapered else ()),
        text((middle, chuck + 10.0), words, size_mm=SMALL_MM),
    ]
    sizes = " to ".join(dict.fromkeys((at_top, at_foot)))
    loop = f", {show_length(coil.loop_mm, units)} left for the loop over its pin" if coil.loop_mm else ""
    said = f"mandrel {sizes}, {words} over {long}{loop}"
    return Picture(room_mm[0], chuck + BELOW_MM, "The wire on its mandrel", said, tuple(parts))


def _words(coil: LaidCoil) -> str:
    if coil.loop_mm:
        return f"{coil.turns / 2.0:.2f} turns each side of the pin"
    return f"{coil.turns:.2f} turns, {coil.hand}-hand"


Halves = tuple[list[list[Point]], list[list[Point]]]
"""Half turns as points on the paper: those behind the mandrel, and those in front."""


def _bodies(coil: LaidCoil, helix: Helix, scale: float, foot: Point) -> Halves:
    """Both bodies, the lower one the upper in the mirror, and in front the loop that joins them round its pin."""
    middle_y = _loop_middle(coil, scale, foot)
    back, front = halves(helix, scale, (foot[0], middle_y + coil.wire_mm / 2.0 * scale))

    def mirrored(parts: list[list[Point]]) -> list[list[Point]]:
        return [[(x, 2.0 * middle_y - y) for x, y in part] for part in parts]

    return [*back, *mirrored(back)], [*front, *mirrored(front), _loop(coil, helix, scale, (foot[0], middle_y))]


def _loop_middle(coil: LaidCoil, scale: float, foot: Point) -> float:
    return foot[1] - (coil.length_mm + coil.wire_mm) / 2.0 * scale


def _loop(coil: LaidCoil, helix: Helix, scale: float, middle: Point) -> list[Point]:
    """From where the upper body begins, round the pin, to where the lower one begins."""
    up = coil.loop_mm / 2.0 * scale
    side = helix.radii_mm[0] * scale * (-1.0 if helix.left_hand else 1.0)
    bend = [pi * at / POINTS_A_TURN for at in range(POINTS_A_TURN + 1)]
    round_pin = [(middle[0] - copysign(up * sin(angle), side), middle[1] - up * cos(angle)) for angle in bend]
    return [(middle[0] + side, middle[1] - up), *round_pin, (middle[0] + side, middle[1] + up)]


def _pin(coil: LaidCoil, scale: float, foot: Point, units: str) -> Iterator[str]:
    """The pin seen from its end, within the loop, and the room that is left between the bodies."""
    middle, up = _loop_middle(coil, scale, foot), coil.loop_mm / 2.0 * scale
    yield circle((foot[0], middle), up - coil.wire_mm / 2.0 * scale, "white")
    left = foot[0] - (coil.seat_mm + coil.wire_mm) * scale
    yield from dimension((left, middle - up), (left, middle + up), show_length(coil.loop_mm, units), -4.0)


def _outline(coil: LaidCoil, scale: float, foot: Point) -> list[Point]:
    """The mandrel's edge round its axis, bare at both ends."""
    wire_mm = coil.wire_mm
    side = [(coil.seat_mm * scale, -BARE_MM)]
    side += [
        ((each.radius_mm - wire_mm / 2.0) * scale, (each.height_mm + wire_mm / 2.0) * scale) for each in coil.stations
    ]
    side += [(coil.thinnest_mm * scale, (coil.length_mm + wire_mm) * scale + BARE_MM)]
    right = [(foot[0] + x, foot[1] - y) for x, y in side]
    return [*right, *((2.0 * foot[0] - x, y) for x, y in reversed(right))]


def both_hands() -> Picture:
    """A right-hand and a left-hand spring, upright, by which somebody sees the hand of one."""
    parts = [part for x, left in ((14.0, False), (44.0, True)) for part in _shown_hand(x, left)]
    said = "two springs upright: the front wires of the right-hand one climb to the right"
    return Picture(ROOM_MM[0], 27.0, "A right-hand and a left-hand spring", said, tuple(parts))


def _shown_hand(x: float, left_hand: bool) -> Iterator[str]:
    count = 4 * POINTS_A_TURN
    turns = tuple(at / POINTS_A_TURN for at in range(count + 1))
    helix = Helix(1.5, turns, (5.0,) * len(turns), tuple(4.5 * turn for turn in turns), left_hand)
    back, front = halves(helix, 1.0, (x, 21.0))
    yield from (part for half in (*back, *front) for part in wire(half, helix.wire_diameter_mm))
    yield text((x, 25.5), "left-hand" if left_hand else "right-hand")
