"""The workings of the chances that a coil comes out right, and of the hours."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.figures.working import Working, given, work
from sourcing.stock.model import Bench
from sourcing.winding import tries
from sourcing.winding.model import WindingPlan

INTEGRATED = "derived: the doubts of diameter, free length and rate, integrated over what need and pocket allow"


def chances(plan: WindingPlan, bench: Bench, quantity: int) -> Iterator[Working]:
    """At the first try, by the second; the tries expected, and the hours."""
    first, after = plan.tries.first, plan.tries.after_a_trial
    yield given("chance_first_try", first, INTEGRATED)
    yield given("chance_after_a_trial", after, INTEGRATED + ", once a coil has been measured")
    if plan.holds_second_try:
        yield work(tries.chance_by_second_try, first, after)
        yield work(tries.tries_expected, first, after)
    heat = tries.heat_hours(plan.finished.spring.material, bench)
    yield work(tries.hours, plan.tries.expected, quantity, heat)
