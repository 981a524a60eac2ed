"""The hand of a helix, and which turn of a load winds it up: what the sheets say, held against the curve itself."""

from __future__ import annotations

from itertools import pairwise
from math import atan2, cos, degrees, pi, sin

import pytest

from sourcing.springs.hands import HOW_TO_SEE, SEEN, WHICH_IS_WANTED
from sourcing.springs.model import Hand

CLIMB = {Hand.RIGHT: 1.0, Hand.LEFT: -1.0}


def point(hand: Hand, turns: float, turned_deg: float = 0.0) -> tuple[float, float, float]:
    """A point of an upright helix of four coils; its upper end is turned, the lower one held. x right, z up, y away."""
    angle = CLIMB[hand] * 2 * pi * turns + turned_deg / 360 * 2 * pi * turns / 4
    return cos(angle), sin(angle), turns


@pytest.mark.parametrize(("hand", "side"), [(Hand.RIGHT, 1), (Hand.LEFT, -1)])
def test_the_front_wires_of_a_right_hand_spring_climb_to_the_right(hand: Hand, side: int) -> None:
    front = next(n / 1000 for n in range(1000) if point(hand, n / 1000)[1] < -0.99999)
    (x, _, z), (x_above, _, z_above) = point(hand, front), point(hand, front + 0.01)
    assert z_above > z
    assert (x_above - x) * side > 0
    assert "climb to the right" in HOW_TO_SEE
    assert "climb to the right" in SEEN


@pytest.mark.parametrize(("hand", "anticlockwise_deg"), [(Hand.RIGHT, 30.0), (Hand.LEFT, -30.0)])
def test_turned_anticlockwise_at_its_near_end_a_right_hand_spring_gets_more_coils(
    hand: Hand, anticlockwise_deg: float
) -> None:
    """Looked at from above, x to the right and y up, a growing angle goes round anticlockwise."""

    def turns(turned_deg: float) -> float:
        steps = [point(hand, 4 * n / 400, turned_deg) for n in range(401)]
        angles = [degrees(atan2(y, x)) for x, y, _ in steps]
        return abs(sum((b - a + 180) % 360 - 180 for a, b in pairwise(angles)) / 360)

    assert turns(anticlockwise_deg) == pytest.approx(turns(0.0) + 30 / 360)
    assert turns(-anticlockwise_deg) == pytest.approx(turns(0.0) - 30 / 360)
    assert "anticlockwise winds up a right-hand spring" in WHICH_IS_WANTED
