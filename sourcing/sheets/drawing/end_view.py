"""A torsion spring seen along its axis: the coil, and both legs at the angle between them."""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, radians, sin

from sourcing.sheets.drawing.svg import LINE_MM, Picture, Point, circle, stroke
from sourcing.springs.model import Hand, Leg, TorsionSpring

MARGIN_MM = 2.0
SHOWN_LEG_MM = 10.0
"""A leg of unknown length is drawn so long."""


def legs_of(spring: TorsionSpring) -> tuple[tuple[Point, Point], tuple[Point, Point]]:
    """Where each leg leaves the coil and where it ends, the coil's middle at nothing, x to the right and y up.

    It is seen from the end that the first leg is at, which runs to the right. From there a right-hand coil turns
    clockwise as it runs away; the second leg stands at the free angle, counted that way, and winding up adds to it.
    """
    turning = 1.0 if spring.hand is Hand.LEFT else -1.0
    radius_mm, angle_deg = spring.mean_diameter_mm / 2.0, spring.free_angle_deg or 0.0
    first = _leg(radius_mm, 180.0 - turning * 90.0, 0.0, spring.leg_1)
    second = _leg(radius_mm, turning * (angle_deg - 90.0), turning * angle_deg, spring.leg_2)
    return first, second


def _leg(radius_mm: float, at_deg: float, towards_deg: float, leg: Leg | None) -> tuple[Point, Point]:
    length_mm = SHOWN_LEG_MM if leg is None else leg.length_mm
    start = (radius_mm * cos(radians(at_deg)), radius_mm * sin(radians(at_deg)))
    end = (start[0] + length_mm * cos(radians(towards_deg)), start[1] + length_mm * sin(radians(towards_deg)))
    return start, end


def end_view(spring: TorsionSpring, room_mm: tuple[float, float]) -> Picture | None:
    """The spring in its true size from the end; None where the room does not hold it, or its angle is unknown."""
    if spring.free_angle_deg is None:
        return None
    legs, outer = legs_of(spring), spring.outside_diameter_mm / 2.0
    points = [point for leg in legs for point in leg]
    left = min(-outer, *(x for x, _ in points)) - MARGIN_MM
    right = max(outer, *(x for x, _ in points)) + MARGIN_MM
    low, high = min(-outer, *(y for _, y in points)) - MARGIN_MM, max(outer, *(y for _, y in points)) + MARGIN_MM
    if right - left > room_mm[0] or high - low > room_mm[1]:
        return None

    def on_paper(point: Point) -> Point:
        return point[0] - left, high - point[1]

    parts = (
        *(part for leg in legs for part in _bar(tuple(map(on_paper, leg)), spring.wire_diameter_mm)),
        circle(on_paper((0.0, 0.0)), outer, "white"),
        circle(on_paper((0.0, 0.0)), spring.inside_diameter_mm / 2.0, "white"),
    )
    said = f"the coil from its end, with the legs at {spring.free_angle_deg:g} degrees"
    return Picture(right - left, high - low, "The finished spring from its end, one to one", said, parts)


def _bar(points: tuple[Point, ...], wire_mm: float) -> Iterator[str]:
    yield stroke(points, wire_mm, square=True)
    yield stroke(points, max(wire_mm - 2.0 * LINE_MM, 0.1), "white", square=True)
