"""The four kinds of ends: dead coils, solid length, pitch.

Machinery's Handbook, 31st ed., springs, table 3, and Shigley, Mechanical Engineering Design, table 10-1, for dead
coils and pitch; EN 13906-1:2013 clause 9 for the solid length of closed ends.
"""

from __future__ import annotations

import pytest

from sourcing.springs.geometry import dead_coils, free_length_from_pitch_mm, pitch_mm, solid_length_mm
from sourcing.springs.model import Ends

D_MM, FREE_MM, ACTIVE = 1.0, 32.0, 6.0


@pytest.mark.parametrize(
    ("ends", "dead", "pitch", "solid"),
    [
        (Ends.OPEN, 0, (FREE_MM - D_MM) / ACTIVE, D_MM * (ACTIVE + 1)),
        (Ends.OPEN_GROUND, 1, FREE_MM / (ACTIVE + 1), D_MM * (ACTIVE + 1)),
        (Ends.CLOSED, 2, (FREE_MM - 3 * D_MM) / ACTIVE, D_MM * (ACTIVE + 2 + 1.5)),
        (Ends.CLOSED_GROUND, 2, (FREE_MM - 2 * D_MM) / ACTIVE, D_MM * (ACTIVE + 2)),
    ],
)
def test_ends_fix_the_dead_coils_the_pitch_and_the_solid_length(
    ends: Ends, dead: float, pitch: float, solid: float
) -> None:
    total = ACTIVE + dead
    assert dead_coils(ends) == dead
    assert pitch_mm(D_MM, FREE_MM, ACTIVE, total, ends) == pytest.approx(pitch)
    assert solid_length_mm(D_MM, total, ends) == pytest.approx(solid)


@pytest.mark.parametrize("ends", Ends)
def test_a_spring_without_gaps_is_as_long_free_as_solid(ends: Ends) -> None:
    """At a pitch of one wire. EN's solid length of closed ends is half a wire over the handbooks' (n_t + 1) d."""
    total = ACTIVE + dead_coils(ends)
    free = free_length_from_pitch_mm(D_MM, D_MM, ACTIVE, total, ends)
    allowed = 0.5 * D_MM if ends is Ends.CLOSED else 0.0
    assert solid_length_mm(D_MM, total, ends) - free == pytest.approx(allowed)


def test_odd_dead_coils_take_their_own_length() -> None:
    """Half a coil more of closed end takes half a wire more of the free length."""
    usual = free_length_from_pitch_mm(D_MM, 4.0, ACTIVE, ACTIVE + 2.0, Ends.CLOSED_GROUND)
    odd = free_length_from_pitch_mm(D_MM, 4.0, ACTIVE, ACTIVE + 2.5, Ends.CLOSED_GROUND)
    assert odd - usual == pytest.approx(0.5 * D_MM)
