"""Whether to wind a trial coil before the spring: what it costs, and what it is worth.

The first spring teaches as much as a trial coil of its size; so a trial comes first only where the springs that it
saves cost more time, or where the spool holds no second spring.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, pi

from sourcing.quantities import show_length
from sourcing.winding.model import WindingPlan
from sourcing.winding.serving_words import but_for
from sourcing.winding.tries import HEAT_HOURS, TRY_HOURS
from sourcing.winding.turns import TAILS_MM

LEAST_CHANCE = 0.3
"""Below this chance a plan is told as a poor one (assumed)."""

NEARLY_SURE = 0.95
"""From this chance on nobody counts the wire of more tries than a second (assumed)."""

TRIAL_TURNS, TRIAL_MINUTES = 4.0, 15.0
"""A trial coil of four turns, and the minutes that it takes (assumed)."""


@dataclass(frozen=True, slots=True)
class TrialFirst:
    """A trial coil before the spring: its wire and minutes, the chance of the first spring without and with it."""

    wire_mm: float
    minutes: float
    chance_without: float
    chance_with: float
    worth_it: bool
    said: str


def trial_wire_mm(mandrel_mm: float, wire_diameter_mm: float, turns: float = TRIAL_TURNS) -> float:
    """The wire of a trial coil, tails included: π (mandrel + d) n + tails.

    >>> round(trial_wire_mm(6.0, 0.8))
    285
    """
    return turns * pi * (mandrel_mm + wire_diameter_mm) + TAILS_MM


def trial_first(plan: WindingPlan) -> TrialFirst:
    """Whether a trial coil should be wound before the spring of a plan."""
    wire_mm = trial_wire_mm(_mandrel_mm(plan), plan.wire_diameter_mm)
    without, with_it = plan.tries.first, plan.tries.after_a_trial
    spring_minutes = 60.0 * (TRY_HOURS + (HEAT_HOURS if plan.after_heat is not None else 0.0))
    holds_trial = plan.wire_left_mm is None or plan.wire_left_mm >= wire_mm
    saves_time = holds_trial and (with_it - without) * spring_minutes > TRIAL_MINUTES
    one_spring_left = holds_trial and not plan.holds_second_try and with_it > without + 0.01
    worth_it = saves_time or one_spring_left
    costs = f"A trial takes {show_length(wire_mm, plan.units)} of wire and about {TRIAL_MINUTES:.0f} minutes (assumed)"
    if plan.unsettled:
        which = "a second" if plan.numbers.known.undecided == 1 else "one more"
        said = f"Before all else wind {which} trial coil. {costs}; then make this sheet anew."
        return TrialFirst(wire_mm, TRIAL_MINUTES, without, with_it, True, said)
    right = f"right, {but}," if (but := but_for(plan)) else "right"
    chances = (
        f"The first spring comes out {right} with a chance of {without:.2f}, after one trial coil of {with_it:.2f}"
    )
    if one_spring_left:
        advice = "it makes the only spring surer: wind it first"
    elif saves_time:
        advice = "that is less than the springs it saves: wind it first"
    elif not holds_trial:
        advice = "the spool holds no wire for both: wind the spring at once, and measure it as a trial"
    elif without < LEAST_CHANCE:
        tries = f"count on about {plan.tries_expected:.1f} tries, or " if plan.holds_second_try else ""
        advice = f"a poor chance: {tries}take another mandrel or another wire"
    else:
        advice = "the first spring teaches as much: wind the spring at once, and measure it as a trial"
    return TrialFirst(wire_mm, TRIAL_MINUTES, without, with_it, worth_it, f"{chances}. {costs}; {advice}.{_held(plan)}")


def _held(plan: WindingPlan) -> str:
    """For how many more tries there is wire, where it may run out: a sentence after a blank, or nothing."""
    if plan.wire_left_mm is None:
        return ""
    more = int(plan.wire_left_mm // plan.cut_length_mm)
    if not plan.holds_second_try:
        return " The spool holds wire for no second try."
    if plan.tries.first >= NEARLY_SURE or more >= ceil(plan.tries_expected - 1.0):
        return ""
    return f" The spool holds wire for {more} more {'try' if more == 1 else 'tries'}."


def _mandrel_mm(plan: WindingPlan) -> float:
    """The mandrel's diameter, that of a cone halfway."""
    if plan.mandrel.diameter_mm is not None:
        return plan.mandrel.diameter_mm
    profile = plan.mandrel.profile
    return (profile[0].diameter_mm + profile[-1].diameter_mm) / 2.0
