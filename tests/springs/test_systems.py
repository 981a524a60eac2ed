"""Springs that work together, against statics done by hand and against the parts themselves."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.materials import find
from sourcing.springs import pressed
from sourcing.springs.model import CompressionSpring, ConicalSpring, Ends
from sourcing.springs.systems import (
    Change,
    Happening,
    Parallel,
    Part,
    Seated,
    Series,
    Single,
    changes,
    cup,
    force_at_solid_n,
    force_n,
    free_length_mm,
    length_mm,
    limited_by,
    rate_n_per_mm,
    solid_length_mm,
    travel_mm,
    washer,
)

WIRE = find("music-wire")
assert WIRE is not None


def cylinder(rate: float, free: float, solid: float) -> Single:
    """A spring with a rate, a free length and a solid length in whole figures, for sums that can be done by hand."""
    spring = CompressionSpring(
        wire_diameter_mm=1.0,
        mean_diameter_mm=12.0,
        free_length_mm=free,
        active_coils=solid - 2.0,
        total_coils=solid,
        ends=Ends.CLOSED_GROUND,
        material=WIRE,
        shear_modulus_mpa=81_500.0,
        elastic_modulus_mpa=206_000.0,
        tensile_strength_mpa=None,
    )
    return Single(spring, rate)


def cone(free: float = 15.8) -> Single:
    return Single(ConicalSpring(0.9, 7.0, 17.0, free, 5.0, 7.0, Ends.CLOSED_GROUND, WIRE, 81_500.0, 206_000.0, None))


SOFT = cylinder(1.0, 30.0, 10.0)
STIFF = cylinder(2.0, 20.0, 8.0)


class TestSeries:
    def test_each_carries_the_whole_force_and_the_travels_add(self) -> None:
        both = Series((SOFT, STIFF))
        assert free_length_mm(both) == 50.0
        assert solid_length_mm(both) == 18.0
        assert rate_n_per_mm(both) == pytest.approx(2 / 3)
        assert force_n(both, 35.0) == pytest.approx(10.0)  # 10 mm of the soft one, 5 of the stiff one
        assert length_mm(both, 10.0) == pytest.approx(35.0)

    def test_when_one_is_solid_the_other_goes_on_alone(self) -> None:
        """The soft one is solid at 20 N, 30 mm down; from there on the rate is that of the stiff one."""
        both = Series((SOFT, STIFF))
        assert [force_n(both, length) for length in (20.0, 19.0, 18.0)] == pytest.approx([20.0, 22.0, 24.0])
        assert changes(both) == (
            Change(0, Happening.SOLID, pytest.approx(20.0), pytest.approx(20.0)),
            Change(1, Happening.SOLID, pytest.approx(18.0), pytest.approx(24.0)),
        )
        assert limited_by(both) == 1

    def test_a_cone_goes_solid_at_last_where_its_smallest_coil_is_stiffer_than_the_cylinder(self) -> None:
        both = Series((cone(), SOFT))
        assert force_at_solid_n(both) == pytest.approx(max(force_at_solid_n(cone()), 20.0))
        force = 9.0
        by_hand = length_mm(cone(), force) + 30.0 - 9.0
        assert length_mm(both, force) == pytest.approx(by_hand)
        assert force_n(both, by_hand) == pytest.approx(force)


class TestParallel:
    def test_the_shorter_one_is_reached_on_the_way_down(self) -> None:
        both = Parallel((SOFT, STIFF))
        assert free_length_mm(both) == 30.0
        assert rate_n_per_mm(both) == 3.0
        assert [force_n(both, length) for length in (30.0, 25.0, 20.0, 15.0)] == pytest.approx([0.0, 5.0, 10.0, 25.0])
        assert length_mm(both, 25.0) == pytest.approx(15.0)

    def test_the_first_to_go_solid_stops_both(self) -> None:
        both = Parallel((SOFT, STIFF))
        assert solid_length_mm(both) == 10.0
        assert limited_by(both) == 0
        assert force_n(both, 9.9) is None
        assert changes(both) == (
            Change(1, Happening.REACHED, 20.0, pytest.approx(10.0)),
            Change(0, Happening.SOLID, 10.0, pytest.approx(40.0)),
        )

    def test_one_that_is_never_reached_adds_nothing(self) -> None:
        both = Parallel((SOFT, cylinder(5.0, 9.0, 4.0)))
        assert force_at_solid_n(both) == pytest.approx(20.0)
        assert changes(both) == (Change(0, Happening.SOLID, 10.0, pytest.approx(20.0)),)

    def test_two_and_three_newtons_a_millimetre_make_five_side_by_side_and_1_2_end_to_end(self) -> None:
        pair = (cylinder(2.0, 30.0, 10.0), cylinder(3.0, 30.0, 10.0))
        assert rate_n_per_mm(Parallel(pair)) == pytest.approx(5.0)
        assert rate_n_per_mm(Series(pair)) == pytest.approx(1.2)


class TestSeats:
    def test_a_washer_takes_its_thickness_from_the_room_of_the_spring(self) -> None:
        raised = Seated(SOFT, washer(2.0))
        assert (free_length_mm(raised), solid_length_mm(raised)) == (32.0, 12.0)
        assert force_n(raised, 22.0) == force_n(SOFT, 20.0) == pytest.approx(10.0)
        assert length_mm(raised, 10.0) == pytest.approx(22.0)

    def test_a_cup_that_hangs_in_a_hole_gives_the_spring_more_room(self) -> None:
        sunk = Seated(SOFT, cup(floor_mm=1.0, depth_mm=5.0, inside_diameter_mm=14.0, hung_mm=6.0))
        assert free_length_mm(sunk) == 25.0
        assert force_n(sunk, 20.0) == pytest.approx(5.0)

    def test_the_rim_of_a_deep_cup_stops_the_plate_before_the_spring_is_solid(self) -> None:
        deep = Seated(SOFT, cup(floor_mm=1.0, depth_mm=14.0, inside_diameter_mm=14.0))
        assert solid_length_mm(deep) == 15.0
        assert force_at_solid_n(deep) == pytest.approx(16.0)
        assert length_mm(deep, 18.0) == 15.0
        assert force_n(deep, 14.9) is None

    def test_a_spring_below_the_rim_of_its_cup_is_never_pressed(self) -> None:
        lost = Seated(SOFT, cup(floor_mm=1.0, depth_mm=40.0, inside_diameter_mm=14.0))
        assert free_length_mm(lost) == solid_length_mm(lost) == 41.0
        assert travel_mm(lost) == force_at_solid_n(lost) == 0.0

    def test_a_washer_between_two_springs_lengthens_them_both(self) -> None:
        both = Series((SOFT, Seated(STIFF, washer(1.5))))
        assert free_length_mm(both) == 51.5
        assert force_n(both, 36.5) == pytest.approx(10.0)


def test_a_spring_that_is_solid_at_rest_is_a_block() -> None:
    block = cylinder(1.0, 9.0, 10.0)
    assert solid_length_mm(block) == 9.0
    assert force_n(Series((SOFT, block)), 29.0) == pytest.approx(10.0)


def test_a_single_spring_of_the_dimensions_is_the_spring_itself() -> None:
    for part in (Single(SOFT.spring), cone()):
        rate = pressed.rate_n_per_mm(part.spring)
        at = free_length_mm(part) - 0.6 * travel_mm(part)
        assert rate_n_per_mm(part) == rate
        assert force_n(part, at) == pressed.force_n(part.spring, at, rate)
        assert changes(part) == (Change(0, Happening.SOLID, solid_length_mm(part), force_at_solid_n(part)),)


def test_a_cone_that_somebody_measured_keeps_its_curve() -> None:
    stiffer = Single(cone().spring, 2 * pressed.rate_n_per_mm(cone().spring))
    assert length_mm(stiffer, 8.0) == pytest.approx(length_mm(cone(), 4.0))
    assert force_n(stiffer, 8.0) == pytest.approx(2 * (force_n(cone(), 8.0) or 0.0))


singles = st.one_of(
    st.builds(
        lambda rate, solid, travel: cylinder(rate, solid + travel, solid),
        st.floats(0.05, 20.0),
        st.floats(4.0, 40.0),
        st.floats(1.0, 60.0),
    ),
    st.builds(cone, st.floats(8.0, 40.0)),
)
parts: st.SearchStrategy[Part] = st.recursive(
    singles,
    lambda inner: st.one_of(
        st.lists(inner, min_size=1, max_size=3).map(lambda some: Series(tuple(some))),
        st.lists(inner, min_size=1, max_size=3).map(lambda some: Parallel(tuple(some))),
        st.builds(lambda part, raised: Seated(part, washer(raised)), inner, st.floats(-3.0, 5.0)),
    ),
    max_leaves=5,
)
shares = st.floats(0.0, 1.0)
steady = settings(deadline=None, derandomize=True)


class TestLaws:
    @steady
    @given(parts, shares)
    def test_the_length_under_the_force_at_a_length_is_that_length(self, part: Part, share: float) -> None:
        at = free_length_mm(part) - share * travel_mm(part)
        force = force_n(part, at)
        assert force is not None
        assert length_mm(part, force) == pytest.approx(at, rel=1e-7, abs=1e-6)

    @steady
    @given(parts)
    def test_the_force_rises_all_the_way_down_from_nothing_to_that_at_solid(self, part: Part) -> None:
        free, travel = free_length_mm(part), travel_mm(part)
        forces = [force_n(part, free - travel * step / 12) for step in range(13)]
        assert None not in forces
        assert forces[0] == 0.0
        assert forces[-1] == pytest.approx(force_at_solid_n(part), rel=1e-6, abs=1e-9)
        assert all(one <= other + 1e-9 for one, other in pairwise(forces))  # type: ignore[operator]

    @steady
    @given(parts)
    def test_the_changes_come_in_the_order_in_which_they_are_met_and_end_at_solid(self, part: Part) -> None:
        found = changes(part)
        assert all(one.length_mm >= other.length_mm for one, other in pairwise(found))
        assert found[-1].length_mm == pytest.approx(solid_length_mm(part), rel=1e-9)
        assert found[-1].happening is Happening.SOLID

    @steady
    @given(st.lists(singles, min_size=1, max_size=4))
    def test_in_series_softer_than_the_softest_in_parallel_stiffer_than_the_stiffest(self, some: list[Part]) -> None:
        rates = [rate_n_per_mm(each) for each in some]
        assert rate_n_per_mm(Series(tuple(some))) <= min(rates) * (1 + 1e-12)
        assert rate_n_per_mm(Parallel(tuple(some))) >= max(rates) * (1 - 1e-12)
