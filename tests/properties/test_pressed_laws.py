"""Laws of compression springs of any shape, pressed, nested and hooked, whatever the numbers."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from sourcing.springs import conical_lengths, pressed
from sourcing.springs.compression import corrected_stress_mpa, curvature_factor, index_is_covered
from sourcing.springs.conical import Cone, coil_diameter_mm
from sourcing.springs.describe_conical import closing_order, length_under_mm
from sourcing.springs.end_pieces import least_length_mm, wire_of_ends_mm, wire_of_piece_mm, wire_with_ends_mm
from sourcing.springs.model import CompressionSpring, ConicalSpring, EndPiece, EndShape, PressedSpring
from sourcing.springs.nesting import (
    Nested,
    clearance_of,
    growth_of,
    nested_clearance_mm,
    nested_index_of_equal_stress,
    nested_notes,
    touches,
    usual_nested_clearance_mm,
)
from sourcing.springs.notes import coils_note, counted, index_note, steep_note
from sourcing.springs.stability import cone_buckling_length_mm, cone_natural_frequency_hz, natural_frequency_hz
from sourcing.springs.systems import Parallel, Seat, Seated, Series, Single, cup, limited_by, parallel_rate_n_per_mm
from tests.figures.springs import cones, cylinders

from .test_compression_laws import close

shares = st.floats(0.0, 1.0)
sizes = st.floats(0.1, 100.0)
factors = st.floats(1.01, 10.0)
angles = st.floats(0.0, 150.0)


def pressable(spring: PressedSpring) -> bool:
    return spring.free_length_mm > 1.01 * pressed.solid_length_mm(spring)


def at_share(spring: PressedSpring, share: float) -> float:
    """A length between free and solid."""
    return spring.free_length_mm - share * (spring.free_length_mm - pressed.solid_length_mm(spring))


class TestPressed:
    @given((cylinders() | cones()).filter(pressable), shares, factors)
    def test_a_spring_that_is_stiffer_by_measure_pushes_harder_by_as_much_everywhere(
        self, spring: PressedSpring, share: float, factor: float
    ) -> None:
        rate, at = pressed.rate_n_per_mm(spring), at_share(spring, share)
        assert pressed.force_n(spring, at, factor * rate) == pytest.approx(
            factor * pressed.force_n(spring, at, rate), rel=1e-9, abs=1e-12
        )

    @given((cylinders() | cones()).filter(pressable), shares)
    def test_what_is_said_of_a_length_is_its_force_and_its_stress(self, spring: PressedSpring, share: float) -> None:
        rate, at = pressed.rate_n_per_mm(spring), at_share(spring, share)
        said = pressed.at_length(spring, at)
        assert said.force_n == pytest.approx(pressed.force_n(spring, at, rate), rel=1e-9, abs=1e-9)
        assert said.shear_stress_mpa == pytest.approx(pressed.stress_mpa(spring, at, rate), rel=1e-9, abs=1e-9)
        assert said.corrected_stress_mpa is not None
        assert said.shear_stress_mpa is not None
        assert said.corrected_stress_mpa >= said.shear_stress_mpa

    @given((cylinders() | cones()).filter(pressable), st.floats(0.01, 0.99))
    def test_it_cannot_be_pressed_shorter_than_solid(self, spring: PressedSpring, share: float) -> None:
        assert pressed.at_length(spring, pressed.solid_length_mm(spring) * share).force_n is None

    @given((cylinders() | cones()).filter(pressable), shares, shares)
    def test_pressed_shorter_it_is_never_stressed_less(self, spring: PressedSpring, one: float, other: float) -> None:
        rate = pressed.rate_n_per_mm(spring)
        less, more = (pressed.stress_mpa(spring, at_share(spring, share), rate) for share in sorted((one, other)))
        assert less <= more * (1 + 1e-9) + 1e-9

    @given((cylinders() | cones()).filter(pressable), st.floats(0.0, 3.0), shares)
    def test_one_that_came_out_longer_pushes_harder_at_the_same_length(
        self, spring: PressedSpring, longer: float, share: float
    ) -> None:
        rate, at, free = pressed.rate_n_per_mm(spring), at_share(spring, share), spring.free_length_mm
        as_it_is = pressed.force_from_n(spring, free, at, rate)
        assert as_it_is == pressed.force_n(spring, at, rate)
        assert pressed.force_from_n(spring, free + longer, at, rate) >= as_it_is * (1 - 1e-9)

    @given((cylinders() | cones()).filter(pressable), shares, shares)
    def test_a_cycle_has_the_stresses_of_its_two_forces(self, spring: PressedSpring, one: float, other: float) -> None:
        rate = pressed.rate_n_per_mm(spring)
        longest, shortest = (at_share(spring, share) for share in sorted((one, other)))
        low, high = pressed.corrected_range_mpa(spring, longest, shortest, rate)
        light, heavy = (pressed.force_n(spring, at, rate) for at in (longest, shortest))
        assert 0.0 <= low <= high * (1 + 1e-9)
        assert low * heavy == pytest.approx(high * light, rel=1e-9, abs=1e-9)

    @given(cylinders() | cones(), st.floats(0.0, 5.0))
    def test_a_wider_spring_is_wider_at_its_tightest_coil_too(self, spring: PressedSpring, off: float) -> None:
        wider = pressed.wider_by(spring, off)
        assert pressed.tightest_mean_mm(wider) == close(pressed.tightest_mean_mm(spring) + off)
        assert wider.mean_diameter_mm == close(spring.mean_diameter_mm + off)
        assert wider.free_length_mm == spring.free_length_mm

    @given(sizes, st.floats(1.0, 40.0))
    def test_the_corrected_stress_is_the_plain_one_times_the_factor(self, stress: float, index: float) -> None:
        assert corrected_stress_mpa(stress, index) == close(curvature_factor(index) * stress)


class TestCones:
    @given(cones().filter(pressable))
    def test_coils_close_from_the_large_end_under_rising_forces_at_falling_lengths(self, spring: ConicalSpring) -> None:
        order = closing_order(spring)
        assert [each.coil for each in order] == list(range(1, len(order) + 1))
        assert len(order) - 1 < spring.active_coils <= len(order)
        assert all(one.force_n <= other.force_n * (1 + 1e-12) for one, other in pairwise(order))
        assert all(one.length_mm >= other.length_mm - 1e-9 for one, other in pairwise(order))
        assert order[-1].length_mm == pytest.approx(pressed.solid_length_mm(spring), rel=1e-9)

    @given(cones().filter(pressable), shares)
    def test_the_length_under_the_force_at_a_length_is_that_length(self, spring: ConicalSpring, share: float) -> None:
        at = at_share(spring, share)
        assert length_under_mm(spring, pressed.cone_force_n(spring, at)) == pytest.approx(at, rel=1e-9)

    @given(sizes, factors, st.floats(1.0, 20.0), shares)
    def test_a_coil_is_as_large_as_its_share_of_the_way_from_end_to_end(
        self, small: float, wider: float, n: float, share: float
    ) -> None:
        cone = Cone(1.0, small, small * wider, n, 1.0, 81_500.0)
        assert coil_diameter_mm(cone, share * n) == close(small * wider - share * small * (wider - 1.0))
        assert coil_diameter_mm(cone, n + share) == close(small)

    @given(cones())
    def test_what_is_asked_of_a_whole_cone_follows_from_its_figures(self, spring: ConicalSpring) -> None:
        small, large, n = spring.mean_diameter_small_mm, spring.mean_diameter_large_mm, spring.active_coils
        step = conical_lengths.radius_step_mm(small, large, n)
        assert 2.0 * n * step == pytest.approx(large - small, abs=1e-9)
        assert conical_lengths.step_of(spring) == step
        assert conical_lengths.telescopes(spring.wire_diameter_mm, step) is (step >= spring.wire_diameter_mm)
        cone = conical_lengths.cone_of(spring)
        travel = max(0.0, spring.free_length_mm - conical_lengths.solid_length_of(spring))
        assert cone.travel_to_solid_mm == pytest.approx(travel, rel=1e-9, abs=1e-9)
        growth_small, growth_large = conical_lengths.growth_at_ends_mm(spring)
        assert growth_small >= growth_large >= 0.0

    @given(cones())
    def test_a_cone_rings_and_buckles_no_other_than_between_the_cylinders_of_its_ends(
        self, spring: ConicalSpring
    ) -> None:
        figures = (spring.active_coils, spring.shear_modulus_mpa, spring.material.density_kg_per_m3)
        small, large = (
            natural_frequency_hz(spring.wire_diameter_mm, mean, *figures)
            for mean in (spring.mean_diameter_small_mm, spring.mean_diameter_large_mm)
        )
        assert large * (1 - 1e-3) <= cone_natural_frequency_hz(spring) <= small * (1 + 1e-3)
        buckles = cone_buckling_length_mm(spring, 0.0)
        assert buckles is None or 0.0 < buckles < spring.free_length_mm


class TestNested:
    @given(sizes, sizes, shares, shares, shares)
    def test_the_room_is_what_both_diameters_leave_less_all_that_is_unsure(
        self, inside: float, outside: float, growth: float, one: float, other: float
    ) -> None:
        room = nested_clearance_mm(inside, outside, growth, one, other)
        assert room == pytest.approx(inside - outside - growth - one - other, abs=1e-9)

    @given(cylinders(), cylinders(), shares)
    def test_two_that_touch_are_always_spoken_of(
        self, outer: CompressionSpring, inner: CompressionSpring, wanted: float
    ) -> None:
        pair = Nested(outer, inner)
        growth = growth_of(inner)
        room = outer.inside_diameter_mm - inner.outside_diameter_mm - growth
        assert growth >= 0.0
        assert clearance_of(pair) == pytest.approx(room, abs=1e-9)
        assert touches(pair) is (clearance_of(pair) <= 0.0)
        said = [note for note in nested_notes(pair, 1.0, 1.0, wanted) if note.startswith("The two springs touch")]
        assert bool(said) is touches(pair)

    @given(sizes, factors)
    def test_equal_index_and_the_usual_room_go_together(self, inner_wire: float, factor: float) -> None:
        """Both of index w, the outer one's inside less the inner one's outside is d₁ − d₂."""
        outer_wire = factor * inner_wire
        index = nested_index_of_equal_stress(outer_wire, inner_wire)
        room = (index - 1.0) * outer_wire - (index + 1.0) * inner_wire
        assert room == pytest.approx(usual_nested_clearance_mm(outer_wire, inner_wire), rel=1e-6)


class TestSystems:
    @given(st.lists(sizes, min_size=1, max_size=5), sizes)
    def test_one_more_beside_the_others_adds_its_rate(self, rates: list[float], more: float) -> None:
        assert parallel_rate_n_per_mm([*rates, more]) == close(parallel_rate_n_per_mm(rates) + more)

    @given(sizes, sizes, sizes, sizes)
    def test_a_cup_raises_by_its_floor_and_its_rim_stands_above_it_by_its_depth(
        self, floor: float, depth: float, inside: float, hung: float
    ) -> None:
        seat = cup(floor, depth, inside, hung)
        assert isinstance(seat, Seat)
        assert seat.raised_mm == pytest.approx(floor - hung)
        assert seat.rim_mm - seat.raised_mm == pytest.approx(depth)
        assert seat.bore_mm == inside

    @given(st.lists(cylinders().filter(pressable), min_size=2, max_size=4))
    def test_in_parallel_the_one_with_the_greatest_solid_length_stops_all(
        self, springs: list[CompressionSpring]
    ) -> None:
        parts = tuple(map(Single, springs))
        solid = [pressed.solid_length_mm(spring) for spring in springs]
        assert solid[limited_by(Parallel(parts))] == max(solid)
        assert limited_by(Seated(Series(parts), Seat(1.0))) == 0


class TestEndPieces:
    @given(st.sampled_from(EndShape), angles, st.floats(0.1, 5.0), sizes, factors)
    def test_an_end_scales_with_its_wire(
        self, shape: EndShape, angle: float, wire: float, beyond: float, factor: float
    ) -> None:
        length = least_length_mm(angle, wire) + beyond
        one = wire_of_piece_mm(EndPiece(shape, length, angle), wire)
        larger = EndPiece(shape, factor * length, angle)
        assert wire_of_piece_mm(larger, factor * wire) == close(factor * one)
        assert least_length_mm(angle, factor * wire) == pytest.approx(factor * least_length_mm(angle, wire))

    @given(cylinders(), st.floats(5.0, 60.0), st.floats(5.0, 60.0), sizes)
    def test_both_ends_add_up(self, spring: CompressionSpring, one: float, other: float, coil: float) -> None:
        pieces = EndPiece(EndShape.LEG, one, 0.0), EndPiece(EndShape.LEG, other, 0.0)
        hooked = replace(spring, end_1=pieces[0], end_2=pieces[1])
        assert wire_of_ends_mm(hooked) == close(one + other)
        assert wire_with_ends_mm(coil, wire_of_ends_mm(hooked)) == close(coil + one + other)
        assert wire_of_ends_mm(spring) == 0.0


class TestNotes:
    @given(st.floats(1.0, 60.0))
    def test_an_index_is_spoken_of_outside_the_standard_alone(self, index: float) -> None:
        assume(min(abs(index - 4.0), abs(index - 20.0)) > 1e-4)
        assert index_is_covered(index) is (4.0 < index < 20.0)
        assert len(list(index_note(index))) == (0 if 4.0 < index < 20.0 else 1)

    @given(st.floats(0.1, 30.0), sizes, sizes)
    def test_few_coils_and_a_steep_pitch_are_spoken_of(self, n: float, pitch: float, mean: float) -> None:
        assert len(list(coils_note(n))) == (1 if n < 2.0 else 0)
        assert len(list(steep_note(pitch, mean))) == (1 if pitch > mean / 2.0 else 0)

    @given(st.floats(0.1, 30.0))
    def test_one_is_one_and_anything_else_is_many(self, number: float) -> None:
        assert counted(number, "coil").endswith(" coil is" if number == 1.0 else " coils are")
