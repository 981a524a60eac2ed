"""The limits of how long a spring lasts: cycles by who made it, and its force where it is warm."""

from dataclasses import replace

import pytest

from sourcing.fit.judge import judge
from sourcing.fit.model import Fit, Limit, Spread
from sourcing.need.model import WorkingPoint
from sourcing.quantities import Wanted
from sourcing.springs.life import Making
from sourcing.springs.model import CompressionSpring
from sourcing.stock.model import Bench
from tests.fit.cases import make_cone, make_conical_need, make_need, make_spring

MAKER = Making.SPRING_MAKER
HOME = (Making.WOUND, Making.WOUND_UNHEATED)


def judged(making: Making = MAKER, spring: CompressionSpring | None = None, **wanted: object) -> Fit:
    return judge(spring or make_spring(), make_need(**wanted), Bench(), Spread(making=making))


def limit(fit: Fit, name: str) -> Limit:
    return next(each for each in fit.limits if each.limit == name)


def working(*lengths_mm: float) -> tuple[WorkingPoint, ...]:
    return tuple(WorkingPoint(Wanted(nominal=length)) for length in lengths_mm)


HARD_WORKED = make_spring(free_length_mm=40.0)
"""The punch's spring nine millimetres longer: pressed from 38 mm to 12 mm its stress is half of its strength."""


class TestCycles:
    def test_cycles_that_nobody_asked_for_are_not_judged(self) -> None:
        assert "life" not in [each.limit for each in judged().limits]

    def test_without_a_working_length_they_are_not_judged_either(self) -> None:
        fit = judged(cycles=20_000.0, working=())
        assert "life" not in [each.limit for each in fit.limits]

    def test_a_few_presses_are_a_steady_load(self) -> None:
        life = limit(judged(cycles=50.0), "life")
        assert life.holds
        assert life.why == "well within its limits: 50 cycles are few enough to count as a steady load"

    def test_a_spring_maker_s_spring_is_believed_to_a_factor_of_three(self) -> None:
        life = limit(judged(cycles=20_000.0), "life")
        assert life.holds
        assert life.why == "millions of cycles, give or take a factor of three (from a spring maker); 20000 wanted"

    @pytest.mark.parametrize("making", [Making.UNKNOWN, Making.WOUND])
    def test_two_million_are_near_where_nobody_can_vouch_for_a_factor_less_than_ten(self, making: Making) -> None:
        fit = judged(making, cycles=2e6)
        assert fit.fits == "near"
        life = limit(fit, "life")
        assert not life.holds
        assert not life.hard
        assert life.why == (
            f"millions of cycles, give or take a factor of ten ({making}); 2 million wanted: it may break before, keep "
            "a second one ready"
        )

    def test_and_are_borne_by_a_spring_makers(self) -> None:
        assert limit(judged(cycles=2e6), "life").holds

    def test_a_spring_worked_hard_breaks(self) -> None:
        fit = judged(spring=HARD_WORKED, cycles=1e6, working=working(38.0, 12.0), free_length_mm=None)
        life = limit(fit, "life")
        assert life.hard
        assert not life.holds
        assert life.why == (
            "thousands of cycles, give or take a factor of three (from a spring maker); 1 million wanted: it will break"
        )
        assert fit.fits == "no"
        assert fit.chance == 0.0

    def test_wound_without_heat_it_lasts_a_class_less(self) -> None:
        worked = {"cycles": 2_000.0, "working": working(38.0, 20.0), "free_length_mm": None}
        heated, cold = (limit(judged(each, HARD_WORKED, **worked), "life").why for each in HOME)
        assert heated.startswith("tens of thousands of cycles,")
        assert cold.startswith("thousands of cycles,")

    def test_one_working_length_counts_from_rest(self) -> None:
        """From nothing to a stress harms more than between two."""
        between, from_rest = (
            limit(judged(spring=HARD_WORKED, cycles=2_000.0, working=each, free_length_mm=None), "life").why
            for each in (working(28.0, 18.0), working(18.0))
        )
        assert between.startswith("millions")
        assert from_rest.startswith("tens of thousands")

    def test_beyond_ten_million_nobody_has_tested(self) -> None:
        life = limit(judged(cycles=1e12), "life")
        assert not life.holds
        assert not life.hard
        assert life.why.endswith(
            "1000000 million wanted: tests in print end at ten million, and what comes after is not known"
        )

    def test_what_takes_a_set_at_once_counts_no_cycles(self) -> None:
        fit = judged(
            spring=make_spring(free_length_mm=80.0), cycles=20_000.0, working=working(10.0), free_length_mm=None
        )
        assert limit(fit, "life").why == "will take a set at once: no cycles to be counted"
        assert limit(fit, "life").hard

    def test_where_the_strength_of_the_wire_is_not_known_only_the_stress_says_so(self) -> None:
        fit = judged(spring=replace(make_spring(), tensile_strength_mpa=None), cycles=20_000.0)
        assert "life" not in [each.limit for each in fit.limits]
        assert not limit(fit, "stress at solid").holds

    def test_a_cone_is_judged_by_the_coil_that_is_stressed_most(self) -> None:
        fit = judge(make_cone(), make_conical_need(cycles=20_000.0), Bench(), Spread(making=MAKER))
        assert limit(fit, "life").holds


class TestWhereItIsWarm:
    def test_at_room_temperature_nothing_is_said(self) -> None:
        assert "force when warm" not in [each.limit for each in judged(temperature_c=20.0).limits]

    def test_what_is_left_is_told(self) -> None:
        warm = limit(judged(temperature_c=80.0), "force when warm")
        assert warm.holds
        assert warm.why == (
            "at 80 °C it keeps 94 to 98 % of its force (the wire is softer, and gives way in the first hundred hours)"
        )

    def test_a_force_that_heat_takes_out_of_its_tolerance_makes_a_near_fit(self) -> None:
        tight = WorkingPoint(Wanted(nominal=14.0), Wanted(nominal=22.3, minus=0.5, plus=3.3))
        fit = judged(temperature_c=80.0, working=(tight,))
        warm = limit(fit, "force when warm")
        assert fit.fits == "near"
        assert not warm.hard
        assert warm.why.endswith(": 21.0 N to 21.9 N at 14 mm, where 21.8 N is the least")

    def test_a_force_that_is_too_small_when_cold_is_not_blamed_on_the_heat(self) -> None:
        weak = WorkingPoint(Wanted(nominal=14.0), Wanted(nominal=26.0, minus=3.0, plus=3.0))
        assert limit(judged(temperature_c=80.0, working=(weak,)), "force when warm").holds

    def test_above_what_the_wire_serves_at_only_the_temperature_is_told(self) -> None:
        fit = judged(temperature_c=150.0)
        assert limit(fit, "temperature").hard
        assert not limit(fit, "temperature").holds
        assert "force when warm" not in [each.limit for each in fit.limits]
