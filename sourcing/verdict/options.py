"""The ways to come by the spring, each with its fit, money, days and hours at the bench."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import ceil, hypot
from typing import Literal

from sourcing.adapt.rehook import Rehooked, rehooked
from sourcing.fit.cases import case_of
from sourcing.fit.judge import ROUNDING, judge
from sourcing.fit.limits import stress_limits
from sourcing.fit.model import Fit, Limit, Spread
from sourcing.fit.rank import rank
from sourcing.fit.score import deviations
from sourcing.fit.spread import spread_of
from sourcing.materials.strength import tensile_strength_mpa, weakest_grade
from sourcing.need.model import Need
from sourcing.quantities import Money, show_length, show_money
from sourcing.springs.initial_tension import tension_of
from sourcing.springs.pulled import largest_safe_length_mm
from sourcing.springs.rates import rate_of
from sourcing.stock.model import Bench, Catalogue, Seller, StockSpring
from sourcing.stock.rates import believed_rate, disagree, show_rate_of
from sourcing.winding.best import Winding
from sourcing.winding.model import Refusal, WindingPlan
from sourcing.winding.no_room import NO_ROOM_BETWEEN

OptionName = Literal["drawer", "bought", "adapted", "wound", "ordered", "none"]

HOURS_TO_FETCH = 0.1
"""Hours to find, check on the scale and fit a spring that exists (assumed)."""

ORDERED_CHANCE = 0.95
"""The chance that a spring maker's spring serves (assumed)."""


@dataclass(frozen=True, slots=True)
class Option:
    """One way to come by the spring. None in `cost`, `days` or `hours`: not known.

    `how` says what the figures are made of; `currency` is the bench's; `stock` or `plan` is what the option rests on.
    """

    option: OptionName
    id: str | None
    fits: Literal["yes", "near", "no"]
    chance: float
    fit: Fit | None
    cost: Money | None
    currency: str
    days: float | None
    hours: float | None
    how: str
    stock: StockSpring | None = None
    plan: WindingPlan | None = None
    adapted: Rehooked | None = None

    @property
    def wire_to_buy(self) -> bool:
        """Whether it would be wound from wire that is on no spool here."""
        return self.plan is not None and self.plan.wire is None

    @property
    def unsettled(self) -> bool:
        """Whether it would be wound of wire of which a trial coil leaves springback, and so the chance, open."""
        return self.plan is not None and self.plan.unsettled

    def in_time(self, need: Need) -> bool:
        """Whether it comes within the days that the need allows; what takes unknown time does not."""
        if need.needed_within_days is None:
            return True
        return self.days is not None and self.days <= need.needed_within_days


def _rate_agrees(stock: StockSpring, units: str) -> Limit | None:
    if stock.stated_rate is None:
        return None
    rates = (stock.stated_rate, rate_of(stock.spring))
    stated, worked_out = (show_rate_of(stock.spring, rate, units) for rate in rates)
    why = f"{stated} stated; the dimensions give {worked_out}"
    holds = not disagree(stock.stated_rate, stock.spring)
    return Limit("stated rate", holds, False, why if holds else why + ": measure it before you trust either")


def _unknown_grade(stock: StockSpring, need: Need, bench: Bench, rate: float) -> Limit | None:
    """Wire that no seller vouches for and no grade names may be the weakest: its stress is judged so too."""
    spring = stock.spring
    weakest = weakest_grade(spring.material, spring.wire_diameter_mm)
    named = spring.tensile_strength_mpa != tensile_strength_mpa(spring.material, spring.wire_diameter_mm)
    if stock.seller is not None or weakest is None or named:
        return None
    weak = replace(spring, tensile_strength_mpa=tensile_strength_mpa(weakest, spring.wire_diameter_mm))
    stresses = stress_limits(case_of(weak, need, bench, Spread(), rate))
    broken = [limit.why for limit in stresses if not limit.holds]
    why = f"nobody names the grade of its wire; were it {weakest.name}, the weakest: "
    return Limit("unknown grade", not broken, False, why + ("; ".join(broken) or "its limits hold too"))


def judge_stock(stock: StockSpring, need: Need, bench: Bench, length_doubt_mm: float = 0.0) -> Fit:
    """The fit of a stock spring, with the doubts about its rate and its wire as two more soft limits.

    `length_doubt_mm` is a standard deviation that the free length has beside that of the stock spring.
    """
    rate = believed_rate(stock)
    spread = spread_of(stock, rate)
    spread = replace(spread, free_length_sd_mm=hypot(spread.free_length_sd_mm, length_doubt_mm))
    fit = judge(stock.spring, need, bench, spread, rate)
    for doubt in (_rate_agrees(stock, bench.units), _unknown_grade(stock, need, bench, rate)):
        fit = fit if doubt is None else with_limit(fit, doubt)
    return fit


def with_limit(fit: Fit, limit: Limit) -> Fit:
    """The fit with one more limit taken into account."""
    if limit.holds:
        return replace(fit, limits=(*fit.limits, limit))
    fits = "no" if limit.hard or fit.fits == "no" else "near"
    return replace(fit, fits=fits, limits=(*fit.limits, limit))


def drawer_option(stock: StockSpring, need: Need, bench: Bench, fit: Fit) -> Option:
    """A spring that is here, or would be if there were enough of it."""
    if stock.on_hand < need.quantity:
        why = f"{stock.on_hand} on hand; {need.quantity} wanted"
        fit = replace(with_limit(fit, Limit("on hand", False, True, why)), chance=0.0)
    how = f"{stock.on_hand} on hand" + (f", {stock.shelf}" if stock.shelf else "")
    nothing = Money(0.0, bench.currency)
    return Option(
        "drawer", stock.id, fit.fits, fit.chance, fit, nothing, bench.currency, 0.0, HOURS_TO_FETCH, how, stock
    )


def adapted_option(stock: StockSpring, need: Need, bench: Bench, as_it_is: Fit) -> Option | None:
    """A spring that is here made into one that fits better than it does, where it can be; nothing that does not fit."""
    if as_it_is.fits == "yes":
        return None
    promising = (made for made in rehooked(stock) if _figures_come_near(made.stock, need, bench))
    judged = ((made, judge_stock(made.stock, need, bench, made.length_doubt_mm)) for made in promising)
    best = min(((made, fit) for made, fit in judged if fit.fits != "no"), key=lambda each: rank(each[1]), default=None)
    if best is None or rank(best[1]) >= rank(as_it_is):
        return None
    made, fit = best
    hours, nothing = need.quantity * made.minutes / 60.0, Money(0.0, bench.currency)
    how = _how_adapted(made, bench.units)
    return Option(
        "adapted", stock.id, fit.fits, fit.chance, fit, nothing, bench.currency, 0.0, hours, how, stock, adapted=made
    )


def _figures_come_near(stock: StockSpring, need: Need, bench: Bench) -> bool:
    """Whether every wanted figure is within two tolerances: what is not is not worth judging in full."""
    case = case_of(stock.spring, need, bench, Spread(), believed_rate(stock))
    return all(row.deviation_over_tolerance <= 2.0 + ROUNDING for row in deviations(case.wanted()))


def _how_adapted(made: Rehooked, units: str) -> str:
    """What is done, and what comes of it."""
    spring, rate = made.spring, believed_rate(made.stock)
    safe_mm = largest_safe_length_mm(spring, rate, tension_of(spring).likely_n)
    loop = ("a new loop bent further in", "its torn hook bent anew", "both torn hooks bent anew")[made.was.torn_hooks]
    coils = f"{made.coils_taken:g} coil{'' if made.coils_taken == 1 else 's'} pulled out"
    longest = "" if safe_mm is None else f", to be pulled to {show_length(safe_mm, units)} at most"
    becomes = (
        f"{show_rate_of(spring, rate, units)}, {show_length(spring.free_length_mm, units)} inside the hooks{longest}"
    )
    return f"{coils} and {loop}: {becomes}; about {made.minutes:.0f} minutes (assumed)"


def _price(stock: StockSpring, pieces: int, postage: Money | None) -> tuple[Money | None, str]:
    """What `pieces` cost with postage, as far as both are known and in one currency, and how that is made up."""
    if stock.price is None:
        return None, f"{pieces} pieces, price not known"
    amount = pieces * stock.price.amount
    made_up = f"{pieces} x {show_money(stock.price)}" + (f" (packs of {stock.pack})" if stock.pack > 1 else "")
    if postage is None:
        made_up += ", postage not known"
    elif postage.currency == stock.price.currency:
        amount += postage.amount
        made_up += f" + {show_money(postage)} postage"
    else:
        made_up += f", postage of {show_money(postage)} not added"
    return Money(round(amount, 2), stock.price.currency), made_up


def bought_option(stock: StockSpring, need: Need, bench: Bench, fit: Fit) -> Option:
    """A spring from a seller's list: whole packs, and postage where the bench knows it."""
    seller = bench.sellers.get(stock.seller or "", Seller())
    pieces = ceil(need.quantity / stock.pack) * stock.pack
    cost, how = _price(stock, pieces, seller.postage)
    days = seller.lead_days if stock.lead_days is None else stock.lead_days
    return Option("bought", stock.id, fit.fits, fit.chance, fit, cost, bench.currency, days, HOURS_TO_FETCH, how, stock)


def stock_options(catalogue: Catalogue, need: Need) -> Iterable[Option]:
    """Every spring of the catalogue of the kind wanted as what it can be: in the drawer, bought, or both."""
    for stock in catalogue.springs:
        if stock.spring.kind != need.kind:
            continue
        fit = judge_stock(stock, need, catalogue.bench)
        if stock.on_hand > 0 or stock.seller is None:
            yield drawer_option(stock, need, catalogue.bench, fit)
        if stock.on_hand >= need.quantity and (adapted := adapted_option(stock, need, catalogue.bench, fit)):
            yield adapted
        if stock.seller is not None:
            yield bought_option(stock, need, catalogue.bench, fit)


def wound_how(plan: WindingPlan) -> str:
    """From what and on what it is wound; the mandrel of wire that a trial coil leaves open is not told."""
    return f"{plan.from_wire} on a mandrel yet to be told" if plan.unsettled else plan.summary


def wound_option(plan: WindingPlan, bench: Bench) -> Option:
    """A spring wound here. Its chance is that of coming out right by the second try; its hours are assumed."""
    days = 0.0 if plan.wire is not None else None
    tries = f"about {plan.tries.expected:.1f} tries (chance: by the second; hours assumed)"
    if not plan.holds_second_try:
        tries = "with wire for one try only (hours assumed)"
    if plan.unsettled:
        tries = "for a trial coil of this wire was too far off to be chance: wind another trial coil first"
    how = f"{wound_how(plan)}, {tries}"
    if plan.label_refuted:
        how += f"; its trial coils agree that {plan.wire} is another wire than its label says: measure it first"
    if plan.wire is None:
        how += "; the wire's price and days are not known"
    chance, hours = plan.tries.by_second, plan.tries.hours
    return Option(
        "wound", plan.wire, plan.fit.fits, chance, plan.fit, plan.cost, bench.currency, days, hours, how, plan=plan
    )


NO_SUCH_SPRING = frozenset({"no-rising-force", "no-rising-torque", NO_ROOM_BETWEEN})
"""Refusals of winding because no spring whatever has such forces or such room: a slip of the pen, as often as not."""

FOR_NOBODY = NO_SUCH_SPRING | {"no-room-for-wire"}
"""Refusals of winding that hold for a spring maker as well: no wire fits the pocket, or no spring has such forces."""


def ordered_option(bench: Bench, refusal: Refusal | None) -> Option | None:
    """A spring made to order, where the bench names a spring maker and what is wanted can be made at all."""
    maker = bench.spring_maker
    if maker is None or (refusal is not None and refusal.rule in FOR_NOBODY):
        return None
    how = f"made to the need by {maker.name} (chance assumed)"
    return Option(
        "ordered", None, "yes", ORDERED_CHANCE, None, maker.price, bench.currency, maker.lead_days, HOURS_TO_FETCH, how
    )


def all_options(catalogue: Catalogue, need: Need, winding: Winding) -> tuple[Option, ...]:
    """Every way to come by the spring, best first."""
    wound = (wound_option(plan, catalogue.bench) for plan in winding.plans)
    ordered = ordered_option(catalogue.bench, winding.refusal)
    return best_first((*stock_options(catalogue, need), *wound, *([] if ordered is None else [ordered])))


def best_first(options: Iterable[Option]) -> tuple[Option, ...]:
    """Options best first: those that fit, then near ones, then the rest; winding plans keep the order they come in."""
    kinds = {"drawer": 0, "adapted": 1, "bought": 2, "wound": 3, "ordered": 4}
    order = {"yes": 0, "near": 1, "no": 2}

    def key(option: Option) -> tuple[object, ...]:
        ranked = option.fit is not None and option.plan is None
        return order[option.fits], kinds[option.option], rank(option.fit) if ranked and option.fit is not None else ()

    return tuple(sorted(options, key=key))
