"""Conical springs: the progressive curve against coils summed one by one, and the laws that it obeys."""

from __future__ import annotations

from math import hypot, pi, sqrt
from random import Random

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.linalg import eigh_tridiagonal

from sourcing.materials import find
from sourcing.springs import compression, geometry, pitch_laws
from sourcing.springs.conical import (
    Cone,
    closing_force_n,
    coil_diameter_mm,
    flexibility_mm_per_n,
    force_at_solid_n,
    force_n,
    largest_open_diameter_mm,
    rate_n_per_mm,
    series_rate_n_per_mm,
    travel_mm,
)
from sourcing.springs.conical_lengths import cone_of, solid_length_mm, solid_pitch_mm, spiral_length_mm, telescopes
from sourcing.springs.model import ConicalSpring, Ends
from sourcing.springs.stability import cone_natural_frequency_hz

G_MPA = 81_500.0
WIRE = find("music-wire")
assert WIRE is not None

cones = st.builds(
    lambda d, index, widening, n, gap: Cone(d, d * index, d * index * widening, n, d * gap, G_MPA),
    st.floats(0.2, 3.0),
    st.floats(3.0, 15.0),
    st.floats(1.0, 4.0),
    st.floats(1.5, 12.0),
    st.floats(0.05, 5.0),
)
shares = st.floats(0.0, 0.999)


def summed_travel_mm(cone: Cone, force: float, slices: int = 20_000) -> float:
    """Each slice of coil twists freely under the force until it lies on the next one: contact, piece by piece."""
    small, large = cone.mean_diameter_small_mm, cone.mean_diameter_large_mm
    mean = small + (large - small) * (np.arange(slices) + 0.5) / slices
    twist_mm = 8.0 * force * mean**3 / (cone.shear_modulus_mpa * cone.wire_diameter_mm**4)
    return float(np.minimum(twist_mm, cone.gap_mm).sum()) * cone.active_coils / slices


def some_cones(count: int, seed: int) -> list[Cone]:
    random = Random(seed)
    return [
        Cone(1.0, small := random.uniform(4.0, 10.0), small * random.uniform(1.1, 3.0), random.uniform(2.0, 10.0),
             random.uniform(0.2, 4.0), G_MPA)
        for _ in range(count)
    ]  # fmt: skip


@pytest.mark.parametrize("cone", some_cones(12, seed=4), ids=str)
@pytest.mark.parametrize("share", [0.05, 0.2, 0.5, 0.8, 1.0])
def test_the_progressive_curve_agrees_with_coils_summed_one_by_one(cone: Cone, share: float) -> None:
    """To 5e-7 mm, from the first coil that closes to the last."""
    first, last = (
        closing_force_n(1.0, mean, cone.gap_mm, G_MPA)
        for mean in (cone.mean_diameter_large_mm, cone.mean_diameter_small_mm)
    )
    force = first + share * (last - first)
    assert travel_mm([cone], force) == pytest.approx(summed_travel_mm(cone, force), abs=5e-7)


def test_the_formula_in_radii_gives_the_same() -> None:
    """s(F) = n/(R2-R1) [64F(R*^4-R1^4)/(4Gd^4) + (p-ps)(R2-R*)], as the winding model writes it."""
    cone, force = Cone(2.0, 8.0, 20.0, 5.0, 3.0, G_MPA), 200.0
    stiffness = G_MPA * 2.0**4
    edge = (3.0 * stiffness / (64 * force)) ** (1 / 3)
    open_part = 64 * force * (edge**4 - 4.0**4) / (4 * stiffness)
    assert travel_mm([cone], force) == pytest.approx(5.0 / 6.0 * (open_part + 3.0 * (10.0 - edge)), rel=1e-12)


class TestLaws:
    @given(cones, shares)
    def test_force_and_travel_are_inverse(self, cone: Cone, share: float) -> None:
        travel = share * cone.travel_to_solid_mm
        assert travel_mm([cone], force_n([cone], travel)) == pytest.approx(travel, rel=1e-9)

    @given(cones, st.floats(0.0, 0.98), st.floats(0.001, 0.01))
    def test_it_never_softens_and_never_falls(self, cone: Cone, share: float, step: float) -> None:
        a, b, c = (force_n([cone], (share + k * step) * cone.travel_to_solid_mm) for k in (0, 1, 2))
        assert c - b >= (b - a) * (1 - 1e-6) > 0.0

    @given(cones)
    def test_down_to_the_first_coil_that_closes_the_initial_rate_holds(self, cone: Cone) -> None:
        force = closing_force_n(cone.wire_diameter_mm, cone.mean_diameter_large_mm, cone.gap_mm, G_MPA)
        rate = rate_n_per_mm(
            cone.wire_diameter_mm, cone.mean_diameter_small_mm, cone.mean_diameter_large_mm, cone.active_coils, G_MPA
        )
        assert travel_mm([cone], 0.999 * force) == pytest.approx(0.999 * force / rate, rel=1e-9)

    @given(cones)
    def test_at_the_force_that_closes_the_last_coil_it_is_solid(self, cone: Cone) -> None:
        solid = force_at_solid_n([cone])
        assert travel_mm([cone], solid * (1 + 1e-9)) == pytest.approx(cone.travel_to_solid_mm)
        assert force_n([cone], cone.travel_to_solid_mm) == force_n([cone], 2 * cone.travel_to_solid_mm) == solid

    @given(cones, st.floats(0.0, 0.999))
    def test_as_the_ends_meet_it_becomes_a_cylinder(self, cone: Cone, share: float) -> None:
        d, mean, n = cone.wire_diameter_mm, cone.mean_diameter_small_mm, cone.active_coils
        rate = compression.rate_n_per_mm(d, mean, n, G_MPA)
        for large in (mean, mean * (1 + 1e-9)):
            near = Cone(d, mean, large, n, cone.gap_mm, G_MPA)
            travel = share * near.travel_to_solid_mm
            assert force_n([near], travel) == pytest.approx(rate * travel, rel=1e-6)
            assert spiral_length_mm(mean, large, n, d) == pytest.approx(n * geometry.turn_length_mm(mean, d), rel=1e-5)

    @given(cones, st.floats(0.1, 1.0))
    def test_the_stress_rises_with_the_force_though_the_coil_that_bears_it_gets_smaller(
        self, cone: Cone, share: float
    ) -> None:
        force = share * force_at_solid_n([cone])
        torques = [each * largest_open_diameter_mm(cone, each) for each in (0.9 * force, force)]
        assert torques[1] > torques[0]

    @given(cones)
    def test_coils_in_pieces_are_as_flexible_as_in_one(self, cone: Cone) -> None:
        small, large, n = cone.mean_diameter_small_mm, cone.mean_diameter_large_mm, cone.active_coils
        middle, d = (small + large) / 2, cone.wire_diameter_mm
        halves = flexibility_mm_per_n(d, small, middle, n / 2, G_MPA) + flexibility_mm_per_n(
            d, middle, large, n / 2, G_MPA
        )
        assert flexibility_mm_per_n(d, small, large, n, G_MPA) == pytest.approx(halves)


class TestInSeries:
    HALF = Cone(1.0, 8.0, 16.0, 5.0, 1.5, G_MPA)

    @given(cones, shares)
    def test_a_barrel_of_two_equal_halves_travels_twice_as_far_at_the_same_force(
        self, cone: Cone, share: float
    ) -> None:
        travel = share * cone.travel_to_solid_mm
        assert force_n([cone, cone], 2 * travel) == pytest.approx(force_n([cone], travel), rel=1e-6)

    def test_an_hourglass_of_unlike_halves_carries_one_force_through_both(self) -> None:
        other = Cone(1.0, 6.0, 12.0, 4.0, 2.0, G_MPA)
        for travel in (1.0, 5.0, 10.0, 14.0):
            force = force_n([self.HALF, other], travel)
            assert summed_travel_mm(self.HALF, force) + summed_travel_mm(other, force) == pytest.approx(
                travel, abs=1e-5
            )

    def test_the_rate_of_a_barrel_is_not_that_of_a_cylinder_of_its_mean_diameter(self) -> None:
        """Hand-checked case 7: 0.531 against 0.590 N/mm."""
        assert series_rate_n_per_mm([self.HALF, self.HALF]) == pytest.approx(0.531, abs=0.0005)
        assert compression.rate_n_per_mm(1.0, 12.0, 10.0, G_MPA) == pytest.approx(0.590, abs=0.0005)


class TestPitchLaws:
    def test_slices_of_constant_pitch_give_the_closed_form(self) -> None:
        for cone in some_cones(6, seed=5):
            ends = (cone.mean_diameter_small_mm, cone.mean_diameter_large_mm)
            for force in (0.3, 0.6, 0.9):
                force *= force_at_solid_n([cone])
                sliced = pitch_laws.travel_mm(1.0, ends, cone.active_coils, lambda _, c=cone: c.gap_mm, G_MPA, force)
                assert sliced == pytest.approx(travel_mm([cone], force), rel=1e-5)

    def test_at_a_constant_angle_the_turns_climb_as_high_as_the_cone(self) -> None:
        """Gaps and solid pitches of 5 turns, 7 to 17 mm, at 0.1 rad: 5 x pi x 12 x tan 0.1 = 18.9 mm."""
        risen = pitch_laws.travel_mm(
            0.9, (7.0, 17.0), 5.0, lambda mean: pitch_laws.constant_angle_gap_mm(mean, 0.1, 0.4), G_MPA, 1e9
        )
        assert risen + 5.0 * 0.4 == pytest.approx(5.0 * pi * 12.0 * np.tan(0.1), rel=1e-5)

    def test_at_a_constant_angle_the_large_coils_have_more_to_close_and_stay_open_longer(self) -> None:
        """Against constant pitch with the same rise: less has closed, so it is softer halfway."""
        mean_gap = pitch_laws.constant_angle_gap_mm(12.0, 0.1, 0.0)
        force = 1.5 * closing_force_n(0.9, 17.0, mean_gap, G_MPA)
        steady = travel_mm([Cone(0.9, 7.0, 17.0, 5.0, mean_gap, G_MPA)], force)
        angled = pitch_laws.travel_mm(
            0.9, (7.0, 17.0), 5.0, lambda mean: pitch_laws.constant_angle_gap_mm(mean, 0.1, 0.0), G_MPA, force
        )
        assert angled > steady

    @pytest.mark.parametrize("share", [0.0, 0.1, 0.4, 0.7, 0.95, 1.0])
    def test_at_constant_pitch_the_force_of_slices_is_that_of_the_closed_form(self, share: float) -> None:
        for cone in some_cones(4, seed=6):
            ends, travel = (cone.mean_diameter_small_mm, cone.mean_diameter_large_mm), share * cone.travel_to_solid_mm
            sliced = pitch_laws.force_n(1.0, ends, cone.active_coils, lambda _, c=cone: c.gap_mm, G_MPA, travel)
            assert sliced == pytest.approx(force_n([cone], travel), rel=2e-3)

    @pytest.mark.parametrize("angle", [0.03, 0.06, 0.1, 0.2])
    @pytest.mark.parametrize("share", [0.05, 0.3, 0.6, 0.9, 0.99])
    def test_at_a_constant_angle_the_force_is_the_one_under_which_slices_with_contact_travel_so_far(
        self, angle: float, share: float
    ) -> None:
        """The slices of this test are its own, ten times as thin; p_s 0.4 mm, so that at 0.03 rad large coils gape."""
        mean = 7.0 + 10.0 * (np.arange(20_000) + 0.5) / 20_000
        gaps = np.maximum(pi * mean * np.tan(angle) - 0.4, 0.0)

        def law(mean_mm: float) -> float:
            return pitch_laws.constant_angle_gap_mm(mean_mm, angle, 0.4)

        travel = share * float(gaps.sum()) * 5.0 / 20_000
        force = pitch_laws.force_n(0.9, (7.0, 17.0), 5.0, law, G_MPA, travel)
        twist_mm = 8.0 * force * mean**3 / (G_MPA * 0.9**4)
        assert float(np.minimum(twist_mm, gaps).sum()) * 5.0 / 20_000 == pytest.approx(travel, rel=1e-5)

    @given(cones, shares, st.floats(0.02, 0.3))
    @settings(max_examples=20)
    def test_force_and_travel_are_inverse_at_a_constant_angle(self, cone: Cone, share: float, angle: float) -> None:
        def law(mean_mm: float) -> float:
            return pitch_laws.constant_angle_gap_mm(mean_mm, angle, 0.2 * cone.wire_diameter_mm)

        of = (
            cone.wire_diameter_mm,
            (cone.mean_diameter_small_mm, cone.mean_diameter_large_mm),
            cone.active_coils,
            law,
            G_MPA,
        )
        travel = share * pitch_laws.travel_mm(*of, 1e12)
        assert pitch_laws.travel_mm(*of, pitch_laws.force_n(*of, travel)) == pytest.approx(travel, rel=1e-9)

    def test_pressed_past_solid_the_force_is_that_of_the_last_slice(self) -> None:
        solid = pitch_laws.force_n(2.0, (8.0, 20.0), 5.0, lambda _: 3.0, G_MPA, 99.0)
        assert solid == pytest.approx(closing_force_n(2.0, 8.0, 3.0, G_MPA), rel=2e-3)

    def test_a_law_that_leaves_no_gap_leaves_no_travel(self) -> None:
        assert pitch_laws.force_n(2.0, (8.0, 20.0), 5.0, lambda _: 0.0, G_MPA, 1.0) == 0.0


class TestLengths:
    @given(st.floats(4.0, 12.0), st.floats(1.0, 4.0), st.floats(1.5, 12.0), st.floats(0.0, 6.0))
    def test_the_wire_is_as_long_as_its_arc(self, small: float, widening: float, n: float, pitch: float) -> None:
        """The arc length of r = R1 + a t, z = p t / 2 pi, integrated."""
        large = small * widening
        turn = (large - small) / (2 * n)

        def speed(turns: float) -> float:
            return hypot(2 * pi * (small / 2 + turn * turns), turn, pitch)

        if widening == 1.0 or widening > 1.001:
            assert spiral_length_mm(small, large, n, pitch) == pytest.approx(quad(speed, 0.0, n)[0], rel=1e-7)

    @given(st.floats(0.3, 2.0), st.floats(0.0, 0.999))
    def test_coils_against_each_other_are_a_wire_apart(self, d: float, share: float) -> None:
        assert hypot(solid_pitch_mm(d, share * d), share * d) == pytest.approx(d)

    @pytest.mark.parametrize("ends", Ends)
    def test_with_no_step_the_solid_length_is_the_cylinders(self, ends: Ends) -> None:
        total = 6.0 + geometry.dead_coils(ends)
        assert solid_length_mm(0.9, 0.0, 6.0, total, ends) == pytest.approx(geometry.solid_length_mm(0.9, total, ends))

    @pytest.mark.parametrize("ends", Ends)
    def test_a_telescoping_cone_is_solid_at_one_wire(self, ends: Ends) -> None:
        assert telescopes(0.9, 0.9)
        assert solid_length_mm(0.9, 0.9, 6.0, 8.0, ends) == 0.9

    @pytest.mark.parametrize("ends", Ends)
    def test_the_gaps_take_it_from_free_to_solid(self, ends: Ends) -> None:
        spring = ConicalSpring(0.9, 8.0, 14.0, 25.0, 6.0, 8.0, ends, WIRE, G_MPA, 206_000.0, None)
        solid = solid_length_mm(0.9, 0.5, 6.0, 8.0, ends)
        assert 25.0 - cone_of(spring).travel_to_solid_mm == pytest.approx(solid)

    def test_the_first_turn_is_at_the_large_end(self) -> None:
        cone = Cone(1.0, 8.0, 16.0, 5.5, 1.0, G_MPA)
        assert [coil_diameter_mm(cone, turns) for turns in (0.0, 5.5, 6.0)] == [16.0, 8.0, 8.0]


def frequency_of_a_chain_hz(spring: ConicalSpring, links: int = 2000) -> float:
    """The first natural frequency of the coils as a chain of masses between springs, both ends held."""
    small, large, n = spring.mean_diameter_small_mm, spring.mean_diameter_large_mm, spring.active_coils
    mean = small + (large - small) * (np.arange(links) + 0.5) / links
    stiffness = 1000.0 * spring.shear_modulus_mpa * spring.wire_diameter_mm**4 / (8.0 * mean**3 * n / links)
    between = small + (large - small) * np.arange(1, links) / links
    wire_kg_per_mm = spring.material.density_kg_per_m3 * 1e-9 * pi * spring.wire_diameter_mm**2 / 4
    masses = wire_kg_per_mm * pi * between * n / links
    diagonal = (stiffness[:-1] + stiffness[1:]) / masses
    beside = -stiffness[1:-1] / np.sqrt(masses[:-1] * masses[1:])
    (lowest,) = eigh_tridiagonal(diagonal, beside, select="i", select_range=(0, 0))[0]
    return sqrt(lowest) / (2 * pi)


@pytest.mark.parametrize(
    ("small", "large", "low"), [(10.0, 10.0, 0.0), (8.0, 12.0, 0.013), (7.0, 14.0, 0.031), (6.0, 20.0, 0.056)]
)
def test_the_natural_frequency_is_a_few_per_cent_below_that_of_a_chain_of_coils(
    small: float, large: float, low: float
) -> None:
    spring = ConicalSpring(1.0, small, large, 30.0, 5.0, 7.0, Ends.CLOSED, WIRE, G_MPA, 206_000.0, None)
    shortfall = 1.0 - cone_natural_frequency_hz(spring) / frequency_of_a_chain_hz(spring)
    assert shortfall == pytest.approx(low, abs=0.001)
