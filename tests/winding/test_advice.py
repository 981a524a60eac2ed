"""Before any wire is cut the plan says what a trial coil costs, what it is worth, and whether to wind it first."""

from dataclasses import replace

import pytest

from sourcing.winding.advice import TrialFirst, trial_first
from sourcing.winding.model import WindingPlan

from . import cases


def advised(plan: WindingPlan, first: float, taught: float, left_mm: float | None, heat: bool = True) -> TrialFirst:
    tries = replace(plan.tries, first=first, after_a_trial=taught)
    after_heat = plan.after_heat or plan.finished if heat else None
    return trial_first(replace(plan, tries=tries, wire_left_mm=left_mm, after_heat=after_heat, cut_length_mm=600.0))


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
    assert "no second spring" in advised(plan, 0.8, 0.9, 400.0).said
    assert not advised(plan, 0.8, 0.9, 100.0).worth_it
    assert not advised(plan, 0.8, 0.9, None).worth_it
    assert not advised(plan, 0.9, 0.9, 400.0).worth_it


def test_both_chances_wire_and_minutes_are_said(plan: WindingPlan) -> None:
    advice = advised(plan, 0.81, 0.93, 9000.0)
    for word in ("0.81", "0.93", "15 minutes", "mm of wire"):
        assert word in advice.said


def test_what_hardly_ever_comes_right_is_not_advised(plan: WindingPlan) -> None:
    assert "no plan" in advised(plan, 0.0, 0.01, 9000.0).said
    assert "wind the spring at once" not in advised(plan, 0.0, 0.01, 9000.0).said
