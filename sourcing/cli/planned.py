"""The winding plan that `wind` is asked for, by its need and by the wire and the mandrel that are named."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sourcing.cli.words import spool_option, wire_size_option

if TYPE_CHECKING:
    from sourcing.need.model import Need
    from sourcing.stock.model import Catalogue, Spool
    from sourcing.winding.model import Refusal, WindingPlan, Wire


def plan(need: Need, catalogue: Catalogue, wire: str | None, mandrel_mm: float | None) -> WindingPlan | Refusal:
    """The winding plan of a need, or why there is none: from one spool, from wire of one size to buy, or from the wire
    that `source` would choose.

    Raises WrongWords where there is no such spool.
    """
    from sourcing.verdict.verdict import decide, guard_of, guarded_refusal
    from sourcing.winding.best import best_plan
    from sourcing.winding.plan import plan_winding

    named = None if wire is None else _named_wire(wire, need, catalogue)
    if (guard := guard_of(need)) is not None:
        return guarded_refusal(guard)
    if named is not None:
        return plan_winding(need, named, catalogue.bench, mandrel_mm)
    if mandrel_mm is not None:
        chosen, winding = None, best_plan(need, catalogue.spools, catalogue.bench, mandrel_mm)
    else:
        verdict = decide(need, catalogue)
        chosen, winding = verdict.plan, verdict.winding
    assert winding is not None
    answer = chosen or winding.best or winding.refusal
    assert answer is not None
    return answer


def _named_wire(text: str, need: Need, catalogue: Catalogue) -> Wire | Spool:
    """The spool of that id, or wire of that size to buy, of the need's material or the one that its place asks for."""
    from sourcing.winding.best import material_to_buy
    from sourcing.winding.model import Wire

    of_id = any(spool.id == text for spool in catalogue.spools)
    size_mm = None if of_id else wire_size_option(text)
    if size_mm is not None:
        return Wire(material_to_buy(need), size_mm)
    return spool_option(
        "--wire", text, catalogue.spools, or_else=", or a size with its unit, as in 1.4 mm, for wire to buy"
    )


def on_printed(answer: WindingPlan | Refusal, need: Need, catalogue: Catalogue) -> WindingPlan | Refusal:
    """The same plan on a mandrel of its size that is printed."""
    from sourcing.winding.model import Refusal
    from sourcing.winding.plan import plan_winding

    if isinstance(answer, Refusal):
        return answer
    wire = wire_of_plan(answer, catalogue)
    return plan_winding(need, wire, catalogue.bench, answer.mandrel.diameter_mm, printed=True)


def wire_of_plan(made: WindingPlan, catalogue: Catalogue) -> Wire:
    """The wire of a plan, with its spool where it has one."""
    from sourcing.winding.model import Wire

    spool = next((spool for spool in catalogue.spools if spool.id == made.wire), None)
    return Wire(made.wanted.material, made.wire_diameter_mm, spool)


def with_mandrels(made: WindingPlan, need: Need, catalogue: Catalogue) -> WindingPlan:
    """A plan with the mandrels to choose among."""
    from sourcing.winding.choices import with_choices

    return with_choices(made, need, wire_of_plan(made, catalogue), catalogue.bench)
