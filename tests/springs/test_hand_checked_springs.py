"""Springs worked out by hand, twice and independently (the winding model's hand-checked cases 1, 4, 8 and 9).

G 81.5 GPa. Each value is held to half a unit of its last digit as the case prints it.
"""

from __future__ import annotations

import pytest

from sourcing.springs.compression import active_coils_for_rate, rate_n_per_mm, shear_stress_mpa
from sourcing.springs.geometry import (
    free_length_from_pitch_mm,
    growth_at_solid_mm,
    minimum_gaps_mm,
    pitch_mm,
    solid_length_mm,
)
from sourcing.springs.model import Ends
from sourcing.springs.systems import parallel_rate_n_per_mm, series_rate_n_per_mm

G_MPA = 81_500.0
GRAM_N = 9.80665e-3


def printed(value: float, digits: int) -> object:
    return pytest.approx(value, abs=0.5001 * 10.0**-digits)


class TestCase1:
    """d 0.9, outside 9.6, 9.75 coils in all, closed and ground, free 32."""

    d, mean, coils, total, free = 0.9, 9.6 - 0.9, 9.75 - 2.0, 9.75, 32.0

    def rate(self) -> float:
        return rate_n_per_mm(self.d, self.mean, self.coils, G_MPA)

    def test_the_rate(self) -> None:
        assert self.rate() == printed(1.310, 3)

    def test_the_solid_length_is_a_wire_for_each_coil(self) -> None:
        assert solid_length_mm(self.d, self.total, Ends.CLOSED_GROUND) == printed(8.775, 3)

    def test_the_minimum_gaps(self) -> None:
        assert minimum_gaps_mm(self.d, self.mean, self.coils) == printed(1.675, 3)

    @pytest.mark.parametrize(("length", "newtons", "grams"), [(24.0, 10.48, 1068), (14.0, 23.57, 2404)])
    def test_the_forces_at_two_lengths(self, length: float, newtons: float, grams: int) -> None:
        force = self.rate() * (self.free - length)
        assert force == printed(newtons, 2)
        assert force / GRAM_N == printed(grams, 0)

    @pytest.mark.parametrize(("length", "stress"), [(14.0, 716), (8.775, 924)])
    def test_the_stress_at_the_shortest_length_and_solid(self, length: float, stress: int) -> None:
        assert shear_stress_mpa(self.rate() * (self.free - length), self.d, self.mean) == printed(stress, 0)

    def test_the_growth_of_the_diameter(self) -> None:
        pitch = pitch_mm(self.d, self.free, self.coils, self.total, Ends.CLOSED_GROUND)
        assert growth_at_solid_mm(self.d, self.mean, pitch) == printed(0.14, 2)


class TestCase4:
    """A wanted rate of 1.30 N/mm in a bore of 11 over a rod of 6, shortest length 14, with the wire there is."""

    def test_thick_wire_of_a_small_diameter_wants_many_coils_and_is_solid_before_the_shortest_length(self) -> None:
        active = active_coils_for_rate(1.0, 9.6 - 1.0, 1.30, G_MPA)
        assert active == printed(12.3, 1)
        assert solid_length_mm(1.0, active + 2.0, Ends.CLOSED_GROUND) == printed(14.3, 1)

    def test_thick_wire_of_a_larger_diameter_wants_fewer_coils_and_is_short_enough(self) -> None:
        active = active_coils_for_rate(1.0, 9.5, 1.30, G_MPA)
        assert active == printed(9.14, 2)
        assert solid_length_mm(1.0, active + 2.0, Ends.CLOSED_GROUND) == printed(11.1, 1)

    def test_thin_wire_wants_few_coils_and_is_stressed_more(self) -> None:
        assert active_coils_for_rate(0.8, 8.8, 1.30, G_MPA) == printed(4.71, 2)
        assert shear_stress_mpa(22.0, 0.8, 8.8) == printed(963, 0)


class TestCase8:
    """3 of 12 coils cut off: d 1, D 10, 10 active, closed and ground, free 50; the end is closed and ground anew."""

    pitch = pitch_mm(1.0, 50.0, 10.0, 12.0, Ends.CLOSED_GROUND)

    def rate(self, active: float) -> float:
        return rate_n_per_mm(1.0, 10.0, active, G_MPA)

    def free(self) -> float:
        return free_length_from_pitch_mm(1.0, self.pitch, 7.0, 9.0, Ends.CLOSED_GROUND)

    def test_it_is_stiffer_and_shorter(self) -> None:
        assert (self.rate(10.0), self.rate(7.0)) == (printed(1.019, 3), printed(1.455, 3))
        assert self.free() == printed(35.6, 1)
        assert solid_length_mm(1.0, 9.0, Ends.CLOSED_GROUND) == printed(9.0, 0)

    def test_and_yet_weaker_where_it_works(self) -> None:
        assert self.rate(10.0) * (50.0 - 30.0) == printed(20.4, 1)
        assert self.rate(7.0) * (self.free() - 30.0) == printed(8.15, 2)


def test_case_9_two_springs_in_series_and_nested() -> None:
    assert series_rate_n_per_mm([2.0, 3.0]) == printed(1.2, 1)
    assert parallel_rate_n_per_mm([2.0, 3.0]) == printed(5.0, 0)
