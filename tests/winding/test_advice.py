"""Before any wire is cut the plan says what a trial coil costs, what it is worth, and whether to wind it first."""

from dataclasses import replace

import pytest

from sourcing.sheets.winding_text import summary
from sourcing.verdict.options import wound_option
from sourcing.winding.advice import TrialFirst, trial_first
from sourcing.winding.model import WindingPlan

from . import cases


def advised(
    plan: WindingPlan, first: float, taught: float, left_mm: float | None, heat: bool = True, tries: float = 1.3
) -> TrialFirst:
    chances = replace(plan.tries, first=first, after_a_trial=taught, expected=tries)
    after_heat = plan.after_heat or plan.finished if heat else None
    return trial_first(replace(plan, tries=chances, wire_left_mm=left_mm, after_heat=after_heat, cut_length_mm=600.0))


@pytest.fixture(scope="module")
def plan() -> WindingPlan:
    return cases.plan()


def test_a_trial_comes_first_where_the_springs_it_saves_take_longer_than_it_does(plan: WindingPlan) -> None:
    """An hour for a spring with its heat, a quarter of an hour for a trial: worth it from a quarter of a spring on."""
    assert advised(plan, 0.5, 0.76, 9000.0).worth_it
    assert not advised(plan, 0.5, 0.74, 9000.0).worth_it
    assert not advised(plan, 0.1, 0.9, 9000.0, heat=False).worth_it


def test_a_trial_comes_first_where_the_spool_holds_no_second_spring_but_a_trial(plan: WindingPlan) -> None:
    assert advised(plan, 0.8, 0.9, 400.0).worth_it
    assert advised(plan, 0.8, 0.9, 400.0).said.endswith("wind it first. The spool holds wire for no second try.")
    assert not advised(plan, 0.8, 0.9, 100.0).worth_it
    assert not advised(plan, 0.8, 0.9, None).worth_it
    assert not advised(plan, 0.9, 0.9, 400.0).worth_it


def test_both_chances_wire_and_minutes_are_said(plan: WindingPlan) -> None:
    advice = advised(plan, 0.81, 0.93, 9000.0)
    for word in ("0.81", "0.93", "15 minutes", "mm of wire"):
        assert word in advice.said


def test_what_hardly_ever_comes_right_is_told_as_a_poor_chance(plan: WindingPlan) -> None:
    said = advised(plan, 0.14, 0.16, 9000.0, tries=7.1).said
    assert "a poor chance: count on about 7.1 tries, or take another mandrel or another wire." in said
    assert "wind the spring at once" not in said


@pytest.mark.parametrize(
    ("first", "left_mm", "said"),
    [
        (0.14, 1900.0, "The spool holds wire for 3 more tries."),
        (0.14, 650.0, "The spool holds wire for 1 more try."),
        (0.8, 100.0, "The spool holds wire for no second try."),
        (0.14, 4300.0, ""),
        (0.97, 100.0, "The spool holds wire for no second try."),
        (1.0, 54.0, "The spool holds wire for no second try."),
        (0.97, 650.0, ""),
        (0.14, None, ""),
    ],
)
def test_it_is_said_for_how_many_tries_the_spool_holds_wire_where_it_may_run_out(
    plan: WindingPlan, first: float, left_mm: float | None, said: str
) -> None:
    """Of 600 mm each; at a chance of 0.14 about 7.1 are to be expected, seven with the next whole one."""
    advice = advised(plan, first, first + 0.02, left_mm, tries=1.0 / first).said
    assert advice.endswith(said) if said else "The spool holds" not in advice


def test_a_trial_that_would_take_the_wire_of_the_only_spring_is_not_wound_first(plan: WindingPlan) -> None:
    advice = advised(plan, 0.4, 0.95, 100.0)
    assert not advice.worth_it
    assert "the spool holds no wire for both: wind the spring at once, and measure it as a trial." in advice.said


@pytest.mark.parametrize(("length_left_mm", "tries"), [(2000.0, "by the second try "), (900.0, "for one try only")])
def test_a_spool_that_holds_one_spring_gives_no_chance_by_a_second_try(length_left_mm: float, tries: str) -> None:
    made = cases.plan(cases.spool(1.0, length_left_mm=length_left_mm))
    second = length_left_mm >= 2 * made.cut_length_mm
    assert made.holds_second_try is second
    assert (made.tries.by_second > made.tries.first) is second
    assert (made.tries.expected > 1.0) is second
    assert tries in summary(made, "mm")
    assert ("with wire for one try only" in wound_option(made, cases.BENCH).how) is not second
    assert wound_option(made, cases.BENCH).chance == made.tries.by_second
