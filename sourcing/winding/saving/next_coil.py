"""The coil after one that came out otherwise: the mandrel for the spring that was meant, and what the sheet plans."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from sourcing.quantities import show_diameter, show_wire_length
from sourcing.springs.model import Spring
from sourcing.stock.model import Trial
from sourcing.winding.in_hand import keeps
from sourcing.winding.mandrel import CLEARLY_SURER, TURNED_STEP_MM
from sourcing.winding.model import Refusal, WindingPlan
from sourcing.winding.plan import plan_winding
from sourcing.winding.saving.coil import Coil
from sourcing.winding.saving.printed import plan_on_printed

SAME_SPRING = 0.02
"""A spring whose mean diameter is within this share of the one that was meant is still that one (assumed)."""


@dataclass(frozen=True, slots=True)
class NextCoil:
    """The plan to go by, and the one that the sheet makes instead where that is of another spring."""

    plan: WindingPlan
    another: WindingPlan | None = None


def next_coil(coil: Coil, trial: Trial) -> NextCoil | None:
    """What is wound next, once this coil is counted among the trials; None where nothing serves.

    A spring that was meant and did not serve is not wound again.
    """
    best, for_meant_mm = _planned(coil, trial), _mandrel_for_meant_mm(coil, trial)
    if best is None:
        return None
    if coil.plan.fit.fits == "no" or _same_mandrel(coil, best) or _as_meant(coil, best, for_meant_mm):
        return NextCoil(best)
    meant = _planned(coil, trial, for_meant_mm)
    return NextCoil(best) if meant is None else NextCoil(meant, best)


def _planned(coil: Coil, trial: Trial, mandrel_mm: float | None = None) -> WindingPlan | None:
    """The best plan, or the one on a mandrel; on that of this coil where that is no worse and hardly another."""
    then = _planned_on(coil, trial, mandrel_mm)
    if then is None or then.mandrel.kind == "rod" or _apart_mm(coil, then) > TURNED_STEP_MM + 1e-6:
        return then
    same = _planned_on(coil, trial, _mandrel_mm(coil.plan))
    if same is None or not keeps(same.fit, then.fit):
        return then
    return same if same.tries.first > then.tries.first - CLEARLY_SURER else then


def _planned_on(coil: Coil, trial: Trial, mandrel_mm: float | None) -> WindingPlan | None:
    taught = replace(coil.spool, trials=(*coil.spool.trials, trial), length_left_mm=None)
    planned = plan_on_printed if coil.wound_on == "printed" else plan_winding
    then = planned(coil.need, taught, coil.bench, mandrel_mm)
    return None if isinstance(then, Refusal) else then


def _apart_mm(coil: Coil, then: WindingPlan) -> float:
    return abs(_mandrel_mm(then) - _mandrel_mm(coil.plan))


def _same_mandrel(coil: Coil, then: WindingPlan) -> bool:
    return _mandrel_mm(then) == _mandrel_mm(coil.plan)


def _as_meant(coil: Coil, then: WindingPlan, for_meant_mm: float) -> bool:
    """Whether a plan is of the spring that was meant, and its mandrel not the other way."""
    mandrel_mm, was_mm = _mandrel_mm(then), _mandrel_mm(coil.plan)
    the_other_way = (mandrel_mm - was_mm) * (for_meant_mm - was_mm) < 0.0
    meant_mm = coil.plan.wanted.mean_diameter_mm
    return not the_other_way and abs(then.wanted.mean_diameter_mm - meant_mm) <= SAME_SPRING * meant_mm


def _mandrel_mm(plan: WindingPlan) -> float:
    assert plan.mandrel.diameter_mm is not None
    return plan.mandrel.diameter_mm


def _mandrel_for_meant_mm(coil: Coil, trial: Trial) -> float:
    """The mandrel that gives the diameter that was meant, by what this coil taught too; no finer than one is turned."""
    exact_mm = coil.known_then(trial).mandrel_mm(coil.plan.finished.spring.mean_diameter_mm)
    return round(round(exact_mm / TURNED_STEP_MM) * TURNED_STEP_MM, 2)


def said_of_next(coil: Coil, then: NextCoil | None, begins: str = "") -> Iterator[str]:
    """The mandrel to take next and its wire; after it the spring that the sheet would rather wind, if it is another.

    `begins`: how the first sentence does, where this is not the first that is said of the next one.
    """
    if then is None:
        return
    yield f"{begins or next_one(then.plan.unsettled)}: {_on_its_mandrel(coil, then.plan)}."
    yield from _wire(coil, then.plan.cut_length_mm)
    if then.another is not None:
        outside, meant = (show_diameter(_outside_mm(coil, plan), coil.units) for plan in (then.another, coil.plan))
        yield (
            f"Or another spring, which the sheet would rather plan by then, {outside} outside instead of {meant}: "
            f"{_on_its_mandrel(coil, then.another)}."
        )


def _wire(coil: Coil, cut_mm: float) -> Iterator[str]:
    """The wire that the next coil wants, and whether its spool holds it, with this coil's counted off or not."""
    spool = coil.wire.spool
    if spool is None or spool.length_left_mm is None:
        return
    cut, left, this = (
        show_wire_length(mm, coil.units) for mm in (cut_mm, spool.length_left_mm, coil.plan.cut_length_mm)
    )
    if spool.length_left_mm < cut_mm:
        enough = ", too little"
    elif spool.length_left_mm < cut_mm + coil.plan.cut_length_mm:
        enough = f", too little if this coil's {this} are not counted off yet"
    else:
        enough = ""
    yield f"It wants {cut} of wire; {spool.id} has {left} by its record{enough}."


def next_one(unsettled: bool) -> str:
    """What is said of the next coil begins so; only if a trial coil agrees, where this one was a surprise."""
    return "The next one, if that agrees" if unsettled else "The next one"


def _on_its_mandrel(coil: Coil, then: WindingPlan) -> str:
    """The mandrel beside that of this coil, its turns, and the chance that the coil comes out right."""
    size, was = (show_diameter(_mandrel_mm(plan), coil.units) for plan in (then, coil.plan))
    laid, before = (f"{plan.turns_to_wind:.2f}" for plan in (then, coil.plan))
    if _same_mandrel(coil, then):
        turns = "" if laid == before else f": lay {laid} turns instead of {before}"
        return f"the same mandrel, {size}, and it will come out so again{turns}"
    kind = "rod of" if then.mandrel.kind == "rod" else f"mandrel {then.mandrel.kind} to"
    chance = "" if then.unsettled else f", chance {then.tries.first:.2f}"
    turns = "" if laid == before else f", {laid} turns instead of {before}"
    return f"a {kind} {size} instead of {was}{turns}{chance}"


def _outside_mm(coil: Coil, plan: WindingPlan) -> float:
    """The diameter outside that a plan means, in the state in which the coil was measured."""
    spring: Spring = plan.wanted if coil.heated else plan.finished.spring
    return spring.mean_diameter_mm + plan.wire_diameter_mm
