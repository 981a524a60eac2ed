"""The mandrel with the wire as it is laid on it, upright beside the finished spring; the held end is below."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_diameter, show_length
from sourcing.sheets.drawing.springs import (
    AXIS_DASH,
    MOST_ENLARGED,
    POINTS_A_TURN,
    ROOM_MM,
    Helix,
    halves,
)
from sourcing.sheets.drawing.svg import SMALL_MM, THIN_MM, Picture, Point, dimension, line, shape, text, wire
from sourcing.springs.model import Hand
from sourcing.winding.solid.coil import LaidCoil

ABOVE_MM, BELOW_MM, ASIDE_MM = 11.0, 12.0, 22.5
"""Room for the dimensions above, below and to the right."""

BARE_MM = 4.0
"""How much of the mandrel is drawn beyond the wire at either end, on the paper."""


def laid_helix(coil: LaidCoil) -> Helix:
    """The wire on the mandrel, from the held end."""
    count = max(2, round(coil.turns * POINTS_A_TURN))
    stations = [coil.at(coil.turns * at / count) for at in range(count + 1)]
    radii, heights = zip(*((each.radius_mm, each.height_mm) for each in stations), strict=True)
    return Helix(coil.wire_mm, tuple(each.turn for each in stations), radii, heights, coil.hand is Hand.LEFT)


def wound_picture(coil: LaidCoil, units: str, room_mm: tuple[float, float] = ROOM_MM) -> Picture:
    """Where the wire is laid, with the mandrel's diameter under it and the length that it covers."""
    helix = laid_helix(coil)
    scale = min(
        (room_mm[0] - 2.0 * ASIDE_MM) / helix.widest_mm,
        (room_mm[1] - ABOVE_MM - BELOW_MM - BARE_MM) / helix.long_mm,
        MOST_ENLARGED,
    )
    middle, foot = room_mm[0] / 2.0, ABOVE_MM + helix.long_mm * scale
    right, thin, thick = (middle + each * scale for each in (helix.widest_mm / 2.0, coil.thinnest_mm, coil.seat_mm))
    back, front = halves(helix, scale, (middle, foot))
    chuck = foot + BARE_MM
    at_top, at_foot = (show_diameter(2.0 * each, units) for each in (coil.thinnest_mm, coil.seat_mm))
    words = f"{coil.turns:.2f} turns, {coil.hand}-hand"
    parts = [
        *(part for half in back for part in wire(half, coil.wire_mm * scale, scaled=True)),
        shape(_outline(coil, scale, (middle, foot)), "white"),
        *(part for half in front for part in wire(half, coil.wire_mm * scale, scaled=True)),
        line((middle, ABOVE_MM - BARE_MM - 2.0), (middle, chuck + 2.0), THIN_MM, AXIS_DASH),
        *dimension((2.0 * middle - thin, ABOVE_MM - BARE_MM), (thin, ABOVE_MM - BARE_MM), at_top, -3.0),
        *dimension((right, ABOVE_MM), (right, foot), show_length(helix.long_mm, units), 7.0),
        *(dimension((2.0 * middle - thick, chuck), (thick, chuck), at_foot, 4.0) if coil.tapered else ()),
        text((middle, chuck + 10.0), words, size_mm=SMALL_MM),
    ]
    sizes = " to ".join(dict.fromkeys((at_top, at_foot)))
    said = f"mandrel {sizes}, {words} over {show_length(helix.long_mm, units)}"
    return Picture(room_mm[0], chuck + BELOW_MM, "The wire on its mandrel", said, tuple(parts))


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
