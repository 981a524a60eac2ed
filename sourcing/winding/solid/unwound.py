"""Whether a coil that has opened clears the seat that it was wound on.

A cone has unwound with its end still in the slot, and each turn has moved round to where the tread is another one's.
Where the walls are high and the coil opened little, turns stand against them until the cone has moved towards its small
end. A cylinder that is unscrewed has opened in its pitch too: over many turns it is longer than its groove, and binds
there unless it is pressed together.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import ceil, pi, sqrt

from sourcing.figures import formula
from sourcing.springs.geometry import turn_length_mm
from sourcing.springs.model import Hand
from sourcing.winding.solid.coil import START_RAD, LaidCoil, Station
from sourcing.winding.solid.release import Release
from sourcing.winding.solid.surface import lip_mm, profile_at
from sourcing.winding.turns import turns_from

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


@formula(
    "s = √(h (d − h)) − √(k (d − k)), k = max(0, h − a)",
    where={"h": "lip_mm", "d": "wire_mm", "a": "opening_mm"},
    closed=False,
    source="derived: half the width of the groove at its lips, less half of the wire's chord there",
)
def play_in_groove_mm(wire_mm: float, lip_mm: float, opening_mm: float) -> float:
    """How far a wire whose coil has opened may lie beside the middle of its groove before it meets a lip.

    >>> round(play_in_groove_mm(1.0, 0.3, 0.1), 3), round(play_in_groove_mm(1.0, 0.3, 0.3), 3)
    (0.058, 0.458)
    """
    still_in_mm = max(0.0, lip_mm - opening_mm)
    return sqrt(lip_mm * (wire_mm - lip_mm)) - sqrt(still_in_mm * (wire_mm - still_in_mm))


def binds_by_mm(coil: LaidCoil, release: Release) -> float:
    """How much longer an opened cylinder of one pitch is than its groove; 0 where it turns in it all the same.

    Its middle stands in the middle of the groove, and its ends are off by half of that.
    """
    if coil.released_pitch_mm is None:
        return 0.0
    first, second = coil.stations[:2]
    turns, climb_mm = second.turn, (second.height_mm - first.height_mm) / second.turn
    arcs_mm = (
        turn_length_mm(2 * first.radius_mm, climb_mm),
        turn_length_mm(2 * first.released_mm, coil.released_pitch_mm),
    )
    longer_mm = turns_from(turns, *arcs_mm) * (coil.released_pitch_mm - climb_mm)
    lip = lip_mm(release.groove_depth_mm, climb_mm, coil.wire_mm)
    play_mm = play_in_groove_mm(coil.wire_mm, lip, first.released_mm - first.radius_mm)
    return longer_mm if longer_mm / 2 > play_mm else 0.0
