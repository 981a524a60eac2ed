"""Laws that the mechanics of compression springs obey whatever the numbers."""

from __future__ import annotations

from dataclasses import fields
from math import isfinite, pi, sqrt

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from sourcing.materials import find, names
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.springs.compression import (
    active_coils_for_rate,
    curvature_factor,
    direct_shear_factor,
    rate_n_per_mm,
    shear_stress_mpa,
    wahl_factor,
)
from sourcing.springs.describe import Description, describe
from sourcing.springs.geometry import (
    dead_coils,
    free_length_from_pitch_mm,
    growth_at_solid_mm,
    mass_g,
    minimum_gaps_mm,
    pitch_mm,
    solid_length_mm,
    turn_length_mm,
    wire_length_mm,
)
from sourcing.springs.model import CompressionSpring, Ends
from sourcing.springs.stability import buckling_length_mm, natural_frequency_hz
from sourcing.springs.tolerances import coil_diameter_tolerance_mm, force_tolerance_n, free_length_tolerance_mm

G_MPA, E_MPA, DENSITY = 81_500.0, 206_000.0, 7850.0

wires = st.floats(0.05, 20.0)
indices = st.floats(1.5, 40.0)
covered_indices = st.floats(4.0, 20.0)
coils = st.floats(0.5, 200.0)
enough_coils = st.floats(2.0, 200.0)
lengths = st.floats(0.5, 2000.0)
forces = st.floats(0.001, 50_000.0)
factors = st.floats(1.01, 10.0)
all_ends = st.sampled_from(Ends)
grades = st.sampled_from([1, 2, 3])


def close(value: float) -> object:
    return pytest.approx(value, rel=1e-9)


class TestRate:
    @given(wires, indices, coils, factors)
    def test_it_grows_with_the_fourth_power_of_the_wire(self, d: float, index: float, n: float, factor: float) -> None:
        mean = d * index
        assert rate_n_per_mm(factor * d, mean, n, G_MPA) == close(factor**4 * rate_n_per_mm(d, mean, n, G_MPA))

    @given(wires, indices, coils, factors)
    def test_it_falls_with_the_third_power_of_the_mean_diameter(
        self, d: float, index: float, n: float, factor: float
    ) -> None:
        mean = d * index
        assert rate_n_per_mm(d, factor * mean, n, G_MPA) == close(rate_n_per_mm(d, mean, n, G_MPA) / factor**3)

    @given(wires, indices, coils, factors)
    def test_it_falls_as_the_coils_grow_in_number(self, d: float, index: float, n: float, factor: float) -> None:
        mean = d * index
        assert rate_n_per_mm(d, mean, factor * n, G_MPA) == close(rate_n_per_mm(d, mean, n, G_MPA) / factor)

    @given(wires, indices, coils)
    def test_the_coils_for_a_rate_give_that_rate(self, d: float, index: float, n: float) -> None:
        rate = rate_n_per_mm(d, d * index, n, G_MPA)
        assert active_coils_for_rate(d, d * index, rate, G_MPA) == close(n)


class TestStress:
    @given(forces, wires, indices, factors)
    def test_more_force_is_more_stress_in_proportion(self, force: float, d: float, index: float, factor: float) -> None:
        once = shear_stress_mpa(force, d, d * index)
        assert shear_stress_mpa(factor * force, d, d * index) == close(factor * once)

    @given(forces, wires, indices, factors)
    def test_a_spring_as_large_again_in_all_its_lengths_is_stressed_by_the_square_less(
        self, force: float, d: float, index: float, factor: float
    ) -> None:
        once = shear_stress_mpa(force, d, d * index)
        assert shear_stress_mpa(force, factor * d, factor * d * index) == close(once / factor**2)

    @given(covered_indices)
    def test_the_factors_stand_in_order_and_near_each_other(self, index: float) -> None:
        """Direct shear alone is the least; Wahl's lies 0.5 to 1.4 % above EN's for an index of 4 to 20."""
        assert 1.0 < direct_shear_factor(index) < curvature_factor(index)
        assert 1.004 < wahl_factor(index) / curvature_factor(index) < 1.014

    @given(covered_indices, factors)
    def test_a_larger_coil_is_corrected_less(self, index: float, factor: float) -> None:
        for correction in (curvature_factor, wahl_factor, direct_shear_factor):
            assert correction(factor * index) < correction(index)


class TestLengths:
    @given(wires, lengths, enough_coils, st.floats(0.0, 4.0), all_ends)
    def test_pitch_and_free_length_are_inverse(
        self, d: float, free: float, active: float, dead: float, ends: Ends
    ) -> None:
        pitch = pitch_mm(d, free, active, active + dead, ends)
        assert free_length_from_pitch_mm(d, pitch, active, active + dead, ends) == close(free)

    @given(wires, lengths, enough_coils, factors, all_ends)
    def test_a_longer_spring_has_a_longer_pitch(
        self, d: float, free: float, n: float, factor: float, ends: Ends
    ) -> None:
        total = n + dead_coils(ends)
        assert pitch_mm(d, factor * free, n, total, ends) > pitch_mm(d, free, n, total, ends)

    @given(wires, enough_coils, st.floats(0.25, 10.0), all_ends)
    def test_each_coil_more_is_one_wire_more_when_solid(self, d: float, total: float, more: float, ends: Ends) -> None:
        grown = solid_length_mm(d, total + more, ends) - solid_length_mm(d, total, ends)
        assert grown == pytest.approx(more * d, rel=1e-6)

    @given(wires, indices, enough_coils, factors)
    def test_the_gaps_grow_with_diameter_and_coils(self, d: float, index: float, n: float, factor: float) -> None:
        gaps = minimum_gaps_mm(d, d * index, n)
        assert minimum_gaps_mm(d, factor * d * index, n) > gaps > 0.0
        assert minimum_gaps_mm(d, d * index, factor * n) == close(factor * gaps)

    @given(wires, indices, st.floats(1.0, 20.0), factors)
    def test_a_steeper_spring_grows_more_in_diameter_and_none_shrinks(
        self, d: float, index: float, pitch_over_wire: float, factor: float
    ) -> None:
        pitch = d * pitch_over_wire
        growth = growth_at_solid_mm(d, d * index, pitch)
        assert growth >= 0.0
        assert growth_at_solid_mm(d, d * index, factor * pitch) > growth

    @given(wires, indices, st.floats(0.0, 1.0))
    def test_coils_that_touch_already_do_not_grow(self, d: float, index: float, pitch_over_wire: float) -> None:
        assert growth_at_solid_mm(d, d * index, d * pitch_over_wire) == pytest.approx(0.0, abs=1e-9)

    @given(wires, indices, enough_coils, st.floats(1.0, 20.0), factors)
    def test_more_pitch_is_more_wire_and_more_wire_is_more_mass(
        self, d: float, index: float, n: float, pitch_over_wire: float, factor: float
    ) -> None:
        pitch = d * pitch_over_wire
        short = wire_length_mm(d, d * index, pitch, n, n + 2.0)
        long = wire_length_mm(d, d * index, factor * pitch, n, n + 2.0)
        assert long > short > n * turn_length_mm(d * index, 0.0)
        assert mass_g(d, long, DENSITY) > mass_g(d, short, DENSITY) > 0.0


class TestStability:
    @given(wires, indices, lengths, st.sampled_from([(0.5, 0.7), (0.7, 1.0), (1.0, 2.0)]))
    def test_a_looser_seat_buckles_no_later(
        self, d: float, index: float, free: float, seatings: tuple[float, float]
    ) -> None:
        tight, loose = (buckling_length_mm(free, d * index, G_MPA, E_MPA, seating) for seating in seatings)
        assert tight is None or (loose is not None and loose > tight)

    @given(wires, indices, lengths, st.floats(0.2, 0.6), st.sampled_from([0.5, 0.7, 1.0, 2.0]))
    def test_it_buckles_between_nothing_and_its_free_length(
        self, d: float, index: float, free: float, modulus_ratio: float, seating: float
    ) -> None:
        length = buckling_length_mm(free, d * index, modulus_ratio * E_MPA, E_MPA, seating)
        assert length is None or 0.0 < length <= free

    @given(st.floats(0.2, 0.6), lengths, st.floats(0.5, 20.0))
    def test_the_formula_as_the_standard_prints_it_gives_the_same(
        self, ratio: float, free: float, slenderness: float
    ) -> None:
        mean = free / slenderness
        root = 1.0 - (1.0 - ratio) / (0.5 + ratio) * (pi * mean / (0.5 * free)) ** 2
        assume(abs(root) > 1e-9)
        length = buckling_length_mm(free, mean, ratio * E_MPA, E_MPA)
        if root < 0.0:
            assert length is None
        else:
            assert length == pytest.approx(free - free * 0.5 / (1.0 - ratio) * (1.0 - sqrt(root)), rel=1e-9)

    @given(wires, indices, enough_coils)
    def test_the_frequency_is_half_the_root_of_rate_over_active_mass(self, d: float, index: float, n: float) -> None:
        """Shigley, Mechanical Engineering Design, eq. 10-25 (from memory), rate in N/m and mass in kg."""
        mean = d * index
        mass_kg = mass_g(d, n * turn_length_mm(mean, 0.0), DENSITY) / 1000.0
        rate_n_per_m = 1000.0 * rate_n_per_mm(d, mean, n, G_MPA)
        assert natural_frequency_hz(d, mean, n, G_MPA, DENSITY) == close(0.5 * sqrt(rate_n_per_m / mass_kg))


class TestTolerances:
    @given(st.floats(0.6301, 200.0), covered_indices)
    def test_inside_its_range_the_table_of_diameters_has_no_holes_and_a_coarser_grade_allows_more(
        self, mean: float, index: float
    ) -> None:
        fine, usual, coarse = (coil_diameter_tolerance_mm(mean, index, grade) for grade in (1, 2, 3))
        assert fine is not None
        assert usual is not None
        assert coarse is not None
        assert 0.0 < fine <= usual < coarse

    @given(st.floats(0.6301, 200.0), covered_indices, factors, grades)
    def test_a_larger_coil_or_index_is_never_held_closer(
        self, mean: float, index: float, factor: float, grade: int
    ) -> None:
        tolerance = coil_diameter_tolerance_mm(mean, index, grade)
        for other in (
            coil_diameter_tolerance_mm(factor * mean, index, grade),
            coil_diameter_tolerance_mm(mean, factor * index, grade),
        ):
            assert tolerance is not None
            assert other is None or other >= tolerance

    @pytest.mark.parametrize(("mean", "index"), [(0.5, 8.0), (250.0, 8.0), (10.0, 3.9), (10.0, 20.1)])
    def test_outside_its_range_nothing_is_known(self, mean: float, index: float) -> None:
        assert coil_diameter_tolerance_mm(mean, index, 2) is None

    def test_the_edge_of_a_band_belongs_to_it(self) -> None:
        """EN 15800: over 6.3 up to and including 10; an index over 8 up to and including 14."""
        assert coil_diameter_tolerance_mm(10.0, 8.0, 2) == coil_diameter_tolerance_mm(6.31, 4.0, 2) == 0.25
        assert coil_diameter_tolerance_mm(10.0 + 1e-9, 8.0 + 1e-9, 2) == 0.25
        assert coil_diameter_tolerance_mm(10.0, 8.01, 2) == 0.3
        assert coil_diameter_tolerance_mm(10.01, 8.0, 2) == 0.3

    @given(wires, covered_indices, enough_coils, forces, grades)
    def test_the_force_is_held_closer_the_smaller_it_is_and_the_finer_the_grade(
        self, d: float, index: float, n: float, force: float, grade: int
    ) -> None:
        tolerance = force_tolerance_n(force, d, d * index, n, grade)
        at_nothing = force_tolerance_n(0.0, d, d * index, n, grade)
        coarsest = force_tolerance_n(force, d, d * index, n, 3)
        assert tolerance is not None
        assert at_nothing is not None
        assert coarsest is not None
        assert 0.0 < at_nothing < tolerance <= coarsest

    @given(wires, covered_indices, enough_coils, grades)
    def test_the_free_length_is_held_as_close_as_the_rate_turns_the_force_into_length(
        self, d: float, index: float, n: float, grade: int
    ) -> None:
        rate = rate_n_per_mm(d, d * index, n, G_MPA)
        length = free_length_tolerance_mm(rate, d, d * index, n, grade)
        force = force_tolerance_n(0.0, d, d * index, n, grade)
        assert length is not None
        assert length * rate == close(force or 0.0)

    @pytest.mark.parametrize(("mean", "active"), [(3.9, 6.0), (20.1, 6.0), (10.0, 1.9)])
    def test_outside_the_standard_no_force_or_length_is_promised(self, mean: float, active: float) -> None:
        assert force_tolerance_n(10.0, 1.0, mean, active, 2) is None
        assert free_length_tolerance_mm(1.0, 1.0, mean, active, 2) is None


def numbers(described: Description) -> dict[str, float]:
    values = {field.name: getattr(described, field.name) for field in fields(described)}
    return {name: value for name, value in values.items() if isinstance(value, float)}


@given(
    wires, indices, lengths, coils, st.floats(0.0, 4.0), all_ends, st.sampled_from(names()), st.floats(-10.0, 3000.0)
)
def test_a_description_is_never_nan_and_every_gap_in_it_is_explained(
    d: float, index: float, free: float, active: float, dead: float, ends: Ends, name: str, at: float
) -> None:
    material = find(name)
    assert material is not None
    strength = tensile_strength_mpa(material, d)
    spring = CompressionSpring(
        d, d * index, free, active, active + dead, ends, material, material.shear_modulus_mpa,
        material.elastic_modulus_mpa, strength,
    )  # fmt: skip
    described = describe(spring, [at])
    assert all(isfinite(number) for number in numbers(described).values())
    assert described.rate_n_per_mm > 0.0
    assert described.force_at_solid_n >= 0.0
    (point,) = described.at
    assert (strength is None) == any("strength of" in note for note in described.notes)
    assert (point.force_n is None) == any("cannot be pressed to" in note for note in described.notes)
    if point.force_n is not None:
        assert 0.0 <= point.force_n <= described.force_at_solid_n * (1.0 + 1e-9) + 1e-9
