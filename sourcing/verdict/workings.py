"""The workings of a verdict: those of the option that was chosen, its spring, its fit, and how it is wound."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.figures.working import Working, given
from sourcing.fit.workings import workings as of_fit
from sourcing.need.model import Need
from sourcing.springs.describe import describe
from sourcing.springs.workings import workings as of_spring
from sourcing.springs.workings.inputs import Stated
from sourcing.stock.model import Catalogue, StockSpring
from sourcing.stock.places import places_of, told
from sourcing.verdict.options import Option
from sourcing.verdict.verdict import Verdict
from sourcing.winding.model import WindingPlan
from sourcing.winding.workings import workings as of_plan


def workings(verdict: Verdict, catalogue: Catalogue) -> tuple[Working, ...]:
    """The workings of the chosen option; none where nothing is recommended, or a spring maker makes it."""
    chosen = verdict.chosen
    if chosen is None:
        return ()
    stock = () if chosen.stock is None else _of_stock(*_as_it_becomes(chosen, chosen.stock), verdict.need)
    plan = () if chosen.plan is None else plan_workings(chosen.plan, catalogue, verdict.need.quantity)
    fit = () if chosen.fit is None else of_fit(chosen.fit, verdict.need)
    return (*stock, *plan, *fit)


def plan_workings(plan: WindingPlan, catalogue: Catalogue, quantity: int) -> tuple[Working, ...]:
    """The workings of a plan, its spool's figures led back to their lines."""
    spool = next((spool for spool in catalogue.spools if spool.id == plan.wire), None)
    stated = {} if spool is None else told(places_of(spool.place))
    return of_plan(plan, spool, catalogue.bench, quantity, stated)


def _as_it_becomes(chosen: Option, stock: StockSpring) -> tuple[StockSpring, Stated]:
    """A stock spring, mended or shortened where that was chosen, and where its figures stand."""
    stated, made = told(places_of(stock.place)), chosen.adapted
    if made is None:
        return stock, stated
    changed = ("active_coils", "total_coils", "free_length", "rate")
    taken = f"{made.coils_taken:g} coils taken off, see {stock.id}"
    return made.stock, {**stated, **dict.fromkeys(changed, taken)}


def _of_stock(stock: StockSpring, stated: Stated, need: Need) -> Iterator[Working]:
    """A spring of the catalogue at the lengths or angles at which it works, and the rate that its seller states."""
    if stock.stated_rate is not None:
        unit = "n_mm_per_deg" if stock.spring.kind == "torsion" else "n_per_mm"
        yield given(f"rate_{unit}", stock.stated_rate, stated.get("rate", "as stated")).at("as stated")
    at_mm, at_deg = [point.at_mm for point in need.working], [point.at_deg for point in need.turned]
    yield from of_spring(stock.spring, describe(stock.spring, at_mm, at_deg), stated)
