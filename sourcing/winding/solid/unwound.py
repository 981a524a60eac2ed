"""Whether a cone that has unwound, its end still in the slot, clears the walls of its treads.

As it unwinds, each turn moves round to where the tread is another one's. Where the walls are high and the coil opened
little, turns stand against them until the cone has moved towards its small end.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import ceil, pi, sqrt

from sourcing.springs.model import Hand
from sourcing.winding.solid.coil import START_RAD, LaidCoil, Station
from sourcing.winding.solid.release import Release
from sourcing.winding.solid.surface import profile_at

STEPS_A_TURN = 24
"""So many places of a turn are looked at."""

ACROSS = (-0.9, -0.6, -0.3, 0.0, 0.3, 0.6, 0.9)
"""Places of the wire's underside, in its radius from its middle."""


def steepest_climb_mm(coil: LaidCoil) -> float:
    """The most that the seat climbs in a turn: moved on by that, a cone is clear at whatever angle it stands."""
    return max((after.height_mm - here.height_mm) / (after.turn - here.turn) for here, after in pairwise(coil.stations))


def room_at_rest_mm(coil: LaidCoil, release: Release, moved_mm: float = 0.0) -> float:
    """The least room of the coil that opens least, unwound from the slot on and moved so far; negative: it holds."""
    half_mm = coil.wire_mm / 2
    rooms = (
        at.least_released_mm - sqrt(1 - place**2) * half_mm - profile(at.height_mm + moved_mm + place * half_mm)
        for at, angle_rad in _unwound(coil)
        for profile in (profile_at(coil, release, angle_rad),)
        for place in ACROSS
    )
    return min(rooms)


def _unwound(coil: LaidCoil) -> Iterator[tuple[Station, float]]:
    """Places of the wire, and the angles at which they stand once it has opened: the arc is as long as it was."""
    way = 1.0 if coil.hand is Hand.RIGHT else -1.0
    steps, turned = ceil(coil.turns * STEPS_A_TURN), 0.0
    for step in range(steps + 1):
        at = coil.at(coil.turns * step / steps)
        yield at, START_RAD + way * 2 * pi * turned
        turned += coil.turns / steps * at.radius_mm / at.released_mm
