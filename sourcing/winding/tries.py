"""How many coils until one is right, and how long that takes."""

from __future__ import annotations

from dataclasses import replace

from sourcing.figures import formula
from sourcing.materials.model import Material
from sourcing.stock.model import Bench, Trial
from sourcing.winding.heat import oven_reaches
from sourcing.winding.mandrel import Wound
from sourcing.winding.model import Tries
from sourcing.winding.task import ByDiameter, S, Task
from sourcing.winding.trials import Knowledge

SETTING_UP_HOURS, TRY_HOURS, HEAT_HOURS = 0.5, 0.3, 0.7
"""Hours at the bench (assumed)."""

LEAST_CHANCE = 0.1
"""The chance of a coil is not taken to be lower than this, for the tries expected to stay a number to plan with."""


@formula(
    "t = 1 + (1 − p₁) / max(p₂, 0.1)",
    where={"p₁": "first", "p₂": "after_a_trial"},
    source="derived: the first coil, and where it fails as many as it takes with the doubt that it left",
)
def tries_expected(first: float, after_a_trial: float) -> float:
    """How many coils until one is right, on the average.

    >>> round(tries_expected(0.8, 0.9), 2)
    1.22
    """
    return 1 + (1 - first) / max(after_a_trial, LEAST_CHANCE)


@formula(
    "P = 1 − (1 − p₁) (1 − p₂)",
    where={"p₁": "first", "p₂": "after_a_trial"},
    source="derived: that not both coils fail",
)
def chance_by_second_try(first: float, after_a_trial: float) -> float:
    """The chance that one of two coils is right.

    >>> round(chance_by_second_try(0.8, 0.9), 2)
    0.98
    """
    return 1 - (1 - first) * (1 - after_a_trial)


@formula(
    "t_h = 0.5 + 0.3 (t + q − 1) + h",
    where={"t": "expected", "q": "quantity", "h": "heat_hours"},
    source="assumed: to set up, each coil, the heat",
)
def hours(expected: float, quantity: float, heat_hours: float) -> float:
    """Hours at the bench for so many good springs.

    >>> round(hours(1.2, 2, 0.7), 2)
    1.86
    """
    return SETTING_UP_HOURS + TRY_HOURS * (expected + quantity - 1) + heat_hours


def heat_hours(material: Material, bench: Bench) -> float:
    """Hours of the heat; none where no heat is given."""
    return HEAT_HOURS if oven_reaches(material, bench) else 0.0


def only_try(known: Tries, quantity: int, heat_hours: float) -> Tries:
    """The tries where the spool holds wire for the first alone: no second makes that surer."""
    return replace(known, by_second=known.first, expected=1.0, hours=hours(1.0, quantity, heat_hours))


def tries(task: ByDiameter[S], known: Knowledge, wound: Wound[S]) -> Tries:
    """The chance at the first try, once a coil has been measured, and by the second; the tries expected."""
    taught = taught_by_one(task, known, wound.diameter_mm)
    design = task.judged(wound.design.spring, task.spread_on(taught, wound.diameter_mm))
    return tries_from(task, wound.design.fit.chance, design.fit.chance)


def taught_by_one(task: Task, known: Knowledge, mandrel_mm: float) -> Knowledge:
    """What would be known after a coil on this mandrel that comes out as expected."""
    coil = Trial(mandrel_mm, known.finished_mean_mm(mandrel_mm) + known.wire_diameter_mm, on=known.wound_on)
    return known.after(coil, task.wire.material)


def tries_from(task: Task, first: float, taught: float) -> Tries:
    """The tries that follow from the chance of the first coil, and of one once that has been measured."""
    second = max(taught, first)
    expected = tries_expected(first, second)
    return Tries(
        first=first,
        after_a_trial=second,
        by_second=chance_by_second_try(first, second),
        expected=expected,
        hours=hours(expected, task.need.quantity, heat_hours(task.wire.material, task.bench)),
    )
