"""Laws of whole torsion springs, turned to an angle, whatever the numbers."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from sourcing.springs import torsion, turned
from sourcing.springs.model import LegShape, TorsionSpring
from tests.figures.springs import torsion_springs

from .test_compression_laws import close

angles = st.floats(-200.0, 1000.0)
wound = st.floats(0.1, 1000.0)
factors = st.floats(1.01, 10.0)


class TestOneSpring:
    @given(torsion_springs(), wound)
    def test_the_torque_is_the_rate_times_the_angle_and_the_stresses_follow(
        self, spring: TorsionSpring, angle: float
    ) -> None:
        at, rate = turned.at_angle(spring, angle), turned.rate_n_mm_per_deg(spring)
        assume(at.torque_n_mm is not None)
        assert at.torque_n_mm == close(torsion.torque_n_mm(rate, angle)) == close(rate * angle)
        assert at.bending_stress_mpa == close(turned.stress_mpa(spring, rate * angle))
        assert at.corrected_stress_mpa == close(turned.q_of(spring) * turned.stress_mpa(spring, rate * angle))
        assert at.rod_at_most_mm == close(torsion.rod_at_most_mm(turned.inside_diameter_mm(spring, angle)))

    @given(torsion_springs(), wound)
    def test_the_stress_is_the_same_whichever_way_it_is_turned(self, spring: TorsionSpring, torque: float) -> None:
        assert turned.stress_mpa(spring, -torque) == turned.stress_mpa(spring, torque)
        assert turned.corrected_stress_mpa(spring, -torque) == turned.corrected_stress_mpa(spring, torque)

    @given(torsion_springs(), angles)
    def test_a_spring_that_can_turn_so_far_has_room_inside(self, spring: TorsionSpring, angle: float) -> None:
        at = turned.at_angle(spring, angle)
        if turned.can_turn_to(spring, angle):
            assert at.inside_diameter_mm is not None
            assert at.inside_diameter_mm > 0.0
        else:
            assert at.torque_n_mm is at.inside_diameter_mm is at.body_length_mm is None

    @given(torsion_springs())
    def test_wound_up_to_what_it_bears_it_is_stressed_as_much_as_it_may_be(self, spring: TorsionSpring) -> None:
        rate = turned.rate_n_mm_per_deg(spring)
        most, unwound = turned.permissible_angle_deg(spring, rate), turned.permissible_unwinding_deg(spring, rate)
        tensile = spring.tensile_strength_mpa
        if tensile is None:
            assert most is unwound is None
            return
        assert most is not None
        assert unwound is not None
        bears = turned.permissible_stress_mpa(spring)
        assert bears is not None
        assert turned.stress_mpa(spring, rate * most) == close(bears)
        assert turned.corrected_stress_mpa(spring, rate * unwound) == close(
            torsion.permissible_unwinding_stress_mpa(bears)
        )
        assert unwound < most

    @given(torsion_springs(), wound, wound)
    def test_wound_up_further_the_body_is_never_shorter(self, spring: TorsionSpring, one: float, other: float) -> None:
        less, more = (turned.body_length_mm(spring, angle) for angle in sorted((one, other)))
        assert turned.stated_body_mm(spring) <= less <= more

    @given(torsion_springs(), st.floats(0.0, 60.0))
    def test_a_longer_leg_takes_as_much_more_wire(self, spring: TorsionSpring, longer: float) -> None:
        assume(spring.leg_1 is not None)
        assert spring.leg_1 is not None
        other = replace(spring, leg_1=replace(spring.leg_1, length_mm=spring.leg_1.length_mm + longer))
        assert turned.legs_wire_mm(other) == pytest.approx(turned.legs_wire_mm(spring) + longer)
        straight = replace(spring, leg_1=replace(spring.leg_1, shape=LegShape.STRAIGHT))
        assert turned.legs_wire_mm(straight) <= turned.legs_wire_mm(spring)

    @given(torsion_springs())
    def test_two_bodies_are_twice_as_stiff_and_as_stressed_under_twice_the_torque(self, spring: TorsionSpring) -> None:
        one, two = (replace(spring, bodies=bodies, body_length_mm=None) for bodies in (1, 2))
        assert turned.rate_n_mm_per_deg(two) == close(2.0 * turned.rate_n_mm_per_deg(one))
        assert turned.stress_mpa(two, 200.0) == close(turned.stress_mpa(one, 100.0))


class TestLegs:
    @given(st.floats(1.0, 60.0), st.floats(0.0, 359.9))
    def test_the_coils_near_a_number_set_the_legs_at_the_angle(self, n: float, angle: float) -> None:
        near = turned.coils_near(n, angle)
        off = (turned.leg_angle_deg(near) - angle) % 360.0
        assert min(off, 360.0 - off) == pytest.approx(0.0, abs=1e-6)
        assert abs(near - n) <= 0.5 + 1e-9

    @given(st.floats(1.0, 60.0))
    def test_a_whole_coil_more_leaves_the_legs_as_they_stand(self, n: float) -> None:
        turn = abs(turned.leg_angle_deg(n + 1.0) - turned.leg_angle_deg(n))
        assert min(turn, 360.0 - turn) == pytest.approx(0.0, abs=1e-6)


class TestWire:
    @given(st.floats(1.0, 100.0), st.floats(0.5, 60.0), st.floats(0.1, 20.0), factors)
    def test_the_wire_of_a_body_grows_as_its_coils(self, mean: float, n: float, pitch: float, factor: float) -> None:
        one = torsion.body_wire_length_mm(mean, n, pitch)
        assert torsion.body_wire_length_mm(mean, factor * n, pitch) == close(factor * one)
        assert torsion.body_wire_length_mm(factor * mean, n, factor * pitch) == close(factor * one)

    @given(st.floats(0.1, 100.0))
    def test_a_rod_leaves_a_tenth_of_the_inside(self, inside: float) -> None:
        assert torsion.rod_at_most_mm(inside) == close(0.9 * inside)
