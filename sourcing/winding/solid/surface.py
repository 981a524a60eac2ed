"""The surface of the mandrel's body: its radius by angle and height, the lower of the wire's seat and the land.

The seat is the arc of the wire about its compensated axis. Round a cylinder the land stands above the bottom of the
seat by the depth of the groove, where the turns leave room between them; where they touch there is none. On a cone
each turn lies on a flat tread with its arc against the wall to the next larger one.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable
from math import sin, sqrt

from sourcing.winding.solid.coil import CLOSE, LaidCoil, Station, heights_mm
from sourcing.winding.solid.release import LIPS_WITHIN, Release

Profile = Callable[[float], float]
"""From the height along the mandrel to its radius, mm."""

LIP_GROWS_OVER = 0.15
"""From touching turns on, a lip grows to its full height while they part by so many wires."""


def profile_at(coil: LaidCoil, release: Release, angle_rad: float) -> Profile:
    """The body's radius along one side, from the first turn's axis."""
    crossings = coil.crossings(angle_rad)
    if release.way == "ledge":
        return _ledge(coil, crossings)
    return _groove(coil, crossings, release.groove_depth_mm * _lip_share(release, angle_rad))


def _arc_mm(station: Station, wire_radius_mm: float, height_mm: float) -> float:
    """The wire's underside; its axis where it is passed at the side or beyond."""
    return station.radius_mm - sqrt(max(0.0, wire_radius_mm**2 - (height_mm - station.height_mm) ** 2))


def _groove(coil: LaidCoil, crossings: tuple[Station, ...], depth_mm: float) -> Profile:
    heights, wire_mm, seat_mm = heights_mm(crossings), coil.wire_mm, coil.seat_mm

    def radius_mm(height_mm: float) -> float:
        above = bisect_right(heights, height_mm)
        if not 0 < above < len(heights):
            return seat_mm
        room_mm = heights[above] - heights[above - 1]
        neighbours = crossings[above - 1 : above + 1]
        return min(
            seat_mm + lip_mm(depth_mm, room_mm, wire_mm),
            *(_arc_mm(each, wire_mm / 2, height_mm) for each in neighbours),
        )

    return radius_mm


def lip_mm(depth_mm: float, pitch_mm: float, wire_mm: float) -> float:
    """How far the land stands over the bottom of a groove of some depth, where the next turn is so far off.

    >>> lip_mm(0.3, 1.04, 1.0), lip_mm(0.3, 2.0, 1.0)
    (0.0, 0.3)
    """
    return depth_mm * min(1.0, max(0.0, (pitch_mm / wire_mm - CLOSE) / LIP_GROWS_OVER))


def _ledge(coil: LaidCoil, crossings: tuple[Station, ...]) -> Profile:
    heights, half_mm = heights_mm(crossings), coil.wire_mm / 2

    def radius_mm(height_mm: float) -> float:
        above = bisect_right(heights, height_mm)
        lowest_mm = crossings[above - 1].radius_mm - half_mm if above else coil.seat_mm
        for station in crossings[above:]:
            if station.height_mm - height_mm >= half_mm:
                break
            lowest_mm = min(lowest_mm, _arc_mm(station, half_mm, height_mm))
        return lowest_mm

    return radius_mm


def _lip_share(release: Release, angle_rad: float) -> float:
    """What is left of the lips: all of them, but on a split mandrel none beside the split, which lies along the x axis.

    There the halves move along the surface and not off it.
    """
    if release.way != "split":
        return 1.0
    return 1.0 if abs(sin(angle_rad)) >= LIPS_WITHIN else 0.0
