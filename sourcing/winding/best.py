"""All wires of a catalogue, and wire to buy, for one need: which of them to wind from."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from sourcing.materials import find
from sourcing.materials.model import Material
from sourcing.materials.strength import nominal_wire_diameters_mm
from sourcing.need.model import Need
from sourcing.quantities import show_diameter
from sourcing.springs.model import Spring
from sourcing.stock.model import Bench, Spool
from sourcing.winding.by_hand import HAND_LIMIT, refused_by_size, wants_caution
from sourcing.winding.model import Refusal, WindingPlan, Wire, wire_of
from sourcing.winding.plan import no_wire_serves, plan_winding, quick_design

THINNEST_TO_BUY_MM = 0.2
"""Thinner wire is hard to get and to hold (common practice, no source)."""

PLANNED_SIZES = 3
"""How many sizes of wire to buy are planned in full, of those that stand highest in a quick search."""


REASONS_TOLD = 3
"""How many wires' own reasons a common refusal tells."""

_FIRST_TOLD = frozenset({"wire-too-short", "no-diameter-serves"})


@dataclass(frozen=True, slots=True)
class SpoolResult:
    """What one wire can do for the need: a plan, or the reason why there is none."""

    wire: Wire
    result: WindingPlan | Refusal


@dataclass(frozen=True, slots=True)
class Winding:
    """The answer of all wires, `plans` best first. `best` is None where each is refused; `refusal` says why then."""

    best: WindingPlan | None
    refusal: Refusal | None
    results: tuple[SpoolResult, ...]

    plans: tuple[WindingPlan, ...] = ()


PREFERRED_INDEX = (7.0, 10.0)
"""The spring index that winds most easily by hand (a spring maker's glossary)."""


def unease(spring: Spring, bench: Bench) -> tuple[bool, float]:
    """What makes one wire harder to wind by hand than another, least first: caution, and how far the index is off."""
    least, greatest = PREFERRED_INDEX
    off = max(0.0, least - spring.spring_index, spring.spring_index - greatest)
    wire = Wire(spring.material, spring.wire_diameter_mm)
    return wants_caution(wire, bench.hand_winding), round(off)


def order(plan: WindingPlan, bench: Bench) -> tuple[object, ...]:
    """The sort key of plans, best first.

    Fits, no trial that leaves its springback open or refutes its label, score, wire that is here, chance by the second
    try, then at the first, a rod on hand, ease of winding, and then the lower stress.
    """
    score, chances = 100 if plan.fit.score is None else plan.fit.score, (plan.tries.by_second, plan.tries.first)
    by_second, first = (round(each, 1) for each in chances)
    turned = plan.mandrel.kind != "rod"
    ease = unease(plan.wanted, bench)
    return (
        plan.fit.fits != "yes",
        plan.unsettled or plan.label_refuted,
        -score,
        plan.wire is None,
        -by_second,
        -first,
        turned,
        ease,
        plan.stress_in_use_mpa,
    )


def best_plan(
    need: Need, spools: Sequence[Spool], bench: Bench, mandrel_mm: float | None = None, may_buy: bool = True
) -> Winding:
    """The best plan from the spools, each spool's own answer, and where none serves the plan from wire to buy."""
    results = [SpoolResult(wire, plan_winding(need, wire, bench, mandrel_mm)) for wire in map(wire_of, spools)]
    served = any(isinstance(each.result, WindingPlan) and each.result.fit.fits == "yes" for each in results)
    if may_buy and not served:
        results += [SpoolResult(wire, plan_winding(need, wire, bench, mandrel_mm)) for wire in _to_buy(need, bench)]
    plans = [each.result for each in results if isinstance(each.result, WindingPlan)]
    plans.sort(key=lambda plan: order(plan, bench))
    if plans:
        return Winding(_surest(plans, bench), None, tuple(results), tuple(plans))
    thick = _thick_wire(need, bench) if may_buy and len(results) == len(spools) else None
    return Winding(None, thick or _refusal(results, need, bench), tuple(results))


def _thick_wire(need: Need, bench: Bench) -> Refusal | None:
    """The refusal where only wire too thick for the hand would serve."""
    stopped = ((wire, refused_by_size(wire, bench)) for wire in _listed(need))
    for wire, limit in stopped:
        if limit is not None and limit.rule == HAND_LIMIT and _serves(need, wire, bench):
            return Refusal(limit.rule, f"only thicker wire than is wound by hand would serve: {limit.why}")
    return None


def _surest(plans: Sequence[WindingPlan], bench: Bench) -> WindingPlan:
    """The first plan that fits with the least chance wanted, else the first of all."""
    settled = (plan for plan in plans if plan.fit.fits == "yes" and not plan.unsettled)
    sure = (plan for plan in settled if plan.tries.by_second >= bench.least_chance)
    return next(sure, plans[0])


def _refusal(results: Sequence[SpoolResult], need: Need, bench: Bench) -> Refusal:
    """One refusal for all: what they share, or the nearest wires' own reasons."""
    refusals = [(each.wire, each.result) for each in results if isinstance(each.result, Refusal)]
    if len({refusal.why for _, refusal in refusals}) == 1:
        return refusals[0][1]
    if not refusals:
        why = "there is no wire here, and no size that could be bought would serve"
        return no_wire_serves(need, bench) or Refusal("no-wire-serves", why)
    refusals.sort(key=lambda each: each[1].rule not in _FIRST_TOLD)
    told = [f"{wire.id or show_diameter(wire.wire_diameter_mm, bench.units)}: {why.why}" for wire, why in refusals]
    more = f"; and {len(told) - REASONS_TOLD} more" if len(told) > REASONS_TOLD else ""
    return Refusal("no-wire-serves", "; ".join(told[:REASONS_TOLD]) + more)


def _to_buy(need: Need, bench: Bench) -> tuple[Wire, ...]:
    """The sizes of wire to buy that serve, those that stand highest in a quick search and wind most easily."""
    thick_enough = (wire for wire in _listed(need) if wire.wire_diameter_mm >= THINNEST_TO_BUY_MM)
    wound = (wire for wire in thick_enough if refused_by_size(wire, bench) is None)
    quick = ((wire, quick_design(need, wire, bench)) for wire in wound)
    serving = [(wire, best) for wire, best in quick if best is not None and best.fit.fits == "yes"]
    serving.sort(key=lambda each: (each[1].standing, unease(each[1].spring, bench), each[1].stress_mpa))
    return tuple(wire for wire, _ in serving[:PLANNED_SIZES])


def _serves(need: Need, wire: Wire, bench: Bench) -> bool:
    best = quick_design(need, wire, bench)
    return best is not None and best.fit.fits == "yes"


def _listed(need: Need) -> Iterable[Wire]:
    """The sizes of wire that are listed, thinnest first; where the need wishes a size, those within its wish."""
    material, wish = material_to_buy(need), need.wire_diameter_mm
    for size_mm in nominal_wire_diameters_mm(material):
        wished = wish is None or (wish.smallest or 0.0) <= size_mm <= (wish.largest or size_mm)
        if wished:
            yield Wire(material, size_mm)


def material_to_buy(need: Need) -> Material:
    """The need's wish, else music wire, else stainless where surroundings or temperature exclude music wire."""
    music, stainless = find("music-wire"), find("stainless-1.4310")
    assert music is not None
    assert stainless is not None
    if need.material is not None:
        return need.material
    rusts = any(music.corrosion.get(where, 3) < 2 for where in need.surroundings)
    hottest_c = music.service_high_c
    too_hot = need.temperature_c is not None and hottest_c is not None and need.temperature_c > hottest_c
    return stainless if rusts or too_hot else music
