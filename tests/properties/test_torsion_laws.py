"""Laws that the mechanics of torsion springs obey whatever the numbers."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.springs import torsion

E_MPA = 206_000.0

wires = st.floats(0.05, 20.0)
indices = st.floats(2.0, 40.0)
coils = st.floats(0.5, 200.0)
angles = st.floats(0.1, 3000.0)
lengths = st.floats(0.0, 500.0)
factors = st.floats(1.01, 10.0)
strengths = st.floats(200.0, 3500.0)


def close(value: float) -> object:
    return pytest.approx(value, rel=1e-9)


class TestRate:
    @given(wires, indices, coils, factors)
    def test_it_grows_with_the_fourth_power_of_the_wire(self, d: float, index: float, n: float, factor: float) -> None:
        mean = d * index
        thick = torsion.rate_n_mm_per_deg(factor * d, mean, n, E_MPA)
        assert thick == close(factor**4 * torsion.rate_n_mm_per_deg(d, mean, n, E_MPA))

    @given(wires, indices, coils, factors)
    def test_it_falls_as_diameter_and_coils_grow(self, d: float, index: float, n: float, factor: float) -> None:
        mean, rate = d * index, torsion.rate_n_mm_per_deg(d, d * index, n, E_MPA)
        assert torsion.rate_n_mm_per_deg(d, factor * mean, n, E_MPA) == close(rate / factor)
        assert torsion.rate_n_mm_per_deg(d, mean, factor * n, E_MPA) == close(rate / factor)

    @given(wires, indices, coils)
    def test_with_friction_it_is_six_per_cent_less(self, d: float, index: float, n: float) -> None:
        with_friction = torsion.rate_with_friction_n_mm_per_deg(d, d * index, n, E_MPA)
        assert with_friction == close(3667 / 3888 * torsion.rate_n_mm_per_deg(d, d * index, n, E_MPA))

    @given(wires, indices, coils, lengths, lengths)
    def test_the_coils_for_a_rate_give_that_rate_with_the_legs(
        self, d: float, index: float, n: float, leg_1: float, leg_2: float
    ) -> None:
        legs = torsion.coils_of_legs(leg_1, leg_2, d * index)
        rate = torsion.rate_n_mm_per_deg(d, d * index, n + legs, E_MPA)
        assert torsion.active_coils_for_rate(d, d * index, rate, E_MPA, legs) == pytest.approx(n, rel=1e-6, abs=1e-6)


class TestStress:
    @given(wires, st.floats(0.01, 1e6))
    def test_the_torque_for_a_stress_gives_that_stress(self, d: float, torque: float) -> None:
        stress = torsion.bending_stress_mpa(torque, d)
        assert torsion.torque_for_stress_n_mm(stress, d) == close(torque)

    @given(indices)
    def test_both_factors_are_above_one_and_ens_is_the_larger(self, index: float) -> None:
        assert 1.0 < torsion.inner_curvature_factor(index) < torsion.curvature_factor(index)

    @given(indices, factors)
    def test_the_factors_fall_as_the_index_grows(self, index: float, factor: float) -> None:
        for of in (torsion.curvature_factor, torsion.inner_curvature_factor):
            assert of(factor * index) < of(index)

    @given(strengths)
    def test_unwound_less_is_allowed_than_wound_up(self, strength: float) -> None:
        assert torsion.permissible_unwinding_stress_mpa(strength) < strength


class TestWoundUp:
    @given(wires, indices, coils, angles)
    def test_the_wire_of_the_body_stays_as_long_as_it_is(self, d: float, index: float, n: float, angle: float) -> None:
        mean = torsion.wound_mean_diameter_mm(d * index, n, angle)
        assert mean * (n + angle / 360) == close(d * index * n)

    @given(wires, indices, coils, angles)
    def test_the_body_closes_as_it_is_wound_up(self, d: float, index: float, n: float, angle: float) -> None:
        assert torsion.wound_mean_diameter_mm(d * index, n, angle) < d * index
        assert torsion.wound_mean_diameter_mm(d * index, n, 0.0) == close(d * index)

    @given(wires, coils, angles)
    def test_touching_coils_make_it_a_wire_longer_a_turn(self, d: float, n: float, angle: float) -> None:
        grown = torsion.wound_body_length_mm(d, n, angle + 360) - torsion.wound_body_length_mm(d, n, angle)
        assert grown == pytest.approx(d, rel=1e-6)


@given(wires, indices, coils, factors)
def test_the_natural_frequency_scales_as_one_over_length(d: float, index: float, n: float, factor: float) -> None:
    """A spring of the same shape, so many times larger, rings so many times lower."""
    small = torsion.natural_frequency_hz(d, d * index, n, E_MPA, 7850.0)
    assert torsion.natural_frequency_hz(factor * d, factor * d * index, n, E_MPA, 7850.0) == close(small / factor)
