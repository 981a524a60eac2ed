"""The mandrels that a plan may be wound on, best first, each with what speaks for or against it.

1. The one of the plan.
2. The rods on hand next to the right size, and one turned or bought to size: each is planned for itself.
3. Where there is a printer, the right size printed, and printed as a sleeve on a rod on hand: the solids of the plan.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_force, show_stress
from sourcing.stock.model import Bench
from sourcing.winding.choice_words import for_or_against, how_sure, how_well, joined
from sourcing.winding.mandrel import DOES_NOT_SERVE, EXPECTED
from sourcing.winding.model import MandrelChoice, Refusal, WindingPlan, Wire
from sourcing.winding.plan import plan_winding
from sourcing.winding.search import COMES_OUT
from sourcing.winding.serving_words import NEAR
from sourcing.winding.solid.coil import coil_of
from sourcing.winding.solid.made import has_room, no_room_said, sleeve_of, with_shank
from sourcing.winding.solid.printed import PRINTED_STRENGTH_MPA, SAFE, greatest_pull_n, safety_at
from sourcing.winding.solid.printed_words import times
from sourcing.winding.solid.shape import MandrelSolid
from sourcing.winding.solid.sleeve import LEAST_WALL_MM, Bore
from sourcing.winding.task import ORDER

_EASE = ("rod", "turned", "printed", "sleeve")
"""Of mandrels that serve equally well, the one with the least work comes first."""


@dataclass(frozen=True, slots=True)
class _Case:
    """The plan that is shown with what it was made from, and the plan on a mandrel of the right size."""

    shown: WindingPlan
    right: WindingPlan
    need: Need
    wire: Wire
    bench: Bench

    def shows(self, kind: str, size_mm: float | None) -> bool:
        """Whether the plan shown is wound on a mandrel of that kind and size."""
        mandrel = self.shown.mandrel
        return (mandrel.made_as, mandrel.diameter_mm) == (kind, size_mm)


def with_choices(plan: WindingPlan, need: Need, wire: Wire, bench: Bench) -> WindingPlan:
    """The plan with the mandrels to choose among."""
    return replace(plan, choices=mandrel_choices(plan, need, wire, bench))


def mandrel_choices(plan: WindingPlan, need: Need, wire: Wire, bench: Bench) -> tuple[MandrelChoice, ...]:
    """The mandrels that a plan may be wound on: its own first, then those that serve wholly, then near fits, and of
    either the surest first."""
    cone = plan.mandrel.diameter_mm is None
    without_rods, is_printed = replace(bench, rods_mm=()), plan.mandrel.kind == "printed"
    right = plan if cone and not is_printed else plan_winding(need, wire, without_rods)
    others: list[MandrelChoice] = []
    if isinstance(right, WindingPlan):
        case = _Case(plan, replace(right, pull_n=plan.pull_n), need, wire, bench)
        others = [*(() if cone else _rods(case)), *_turned(case)]
    if "printer" in bench.tools:
        right = plan if cone and is_printed else plan_winding(need, wire, without_rods, printed=True)
        if isinstance(right, WindingPlan):
            others += _printed(_Case(plan, replace(right, pull_n=plan.pull_n), need, wire, bench))
    others.sort(key=lambda each: (ORDER[each.fits], -round(each.chance or 0.0, 2), _EASE.index(each.kind)))
    return (_chosen(plan), *others)


def _chosen(plan: WindingPlan) -> MandrelChoice:
    mandrel = plan.mandrel
    said = {"rod": "on hand", "turned": "to turn, file or buy", "printed": "printed, as made here"}[mandrel.kind]
    near = "" if plan.fit.fits == "yes" else f"; {NEAR}"
    return MandrelChoice(
        mandrel.made_as,
        mandrel.diameter_mm,
        plan.tries.first,
        plan.fit.fits,
        True,
        f"this sheet: {said}{near}",
        rod_mm=mandrel.rod_mm,
    )


def _rods(case: _Case) -> Iterator[MandrelChoice]:
    """The rods on hand next to the right size that the plan is not wound on."""
    right_mm = case.right.mandrel.thickest_mm
    for rod_mm in _next_to(right_mm, case.bench.rods_mm):
        if case.shows("rod", rod_mm) or rod_mm < case.shown.wire_diameter_mm:
            continue
        made = plan_winding(case.need, case.wire, case.bench, rod_mm)
        if isinstance(made, Refusal):
            yield MandrelChoice("rod", rod_mm, None, "no", False, f"on hand; no: {_why(made)}")
        else:
            said = joined("on hand", for_or_against(made, case.shown), how_well(made, case.shown))
            yield MandrelChoice("rod", rod_mm, made.tries.first, made.fit.fits, False, said)


def _why(refusal: Refusal) -> str:
    """The bare reason of a refusal, without the mandrel that it is about and those that it expects."""
    return refusal.why.rpartition(DOES_NOT_SERVE)[2].rpartition(COMES_OUT)[2].partition(EXPECTED)[0]


def _next_to(size_mm: float, rods_mm: Iterable[float]) -> Iterator[float]:
    """The rod below a size, one of the very size, and the one above."""
    rods = sorted(rods_mm)
    yield from [rod for rod in rods if rod < size_mm][-1:]
    yield from [rod for rod in rods if rod >= size_mm][: 2 if size_mm in rods else 1]


def _turned(case: _Case) -> Iterator[MandrelChoice]:
    """One made to size, where the plan is wound on another."""
    if case.shows("turned", case.right.mandrel.diameter_mm):
        return
    made = case.right
    sure = how_sure(made, case.shown)
    work = f"{sure}, for more work" if sure else "more work"
    said = joined("to turn, file or buy", work, how_well(made, case.shown))
    yield MandrelChoice("turned", made.mandrel.diameter_mm, made.tries.first, made.fit.fits, False, said)


def _printed(case: _Case) -> Iterator[MandrelChoice]:
    """One printed to size, and a sleeve printed to size for a steel rod."""
    size_mm = case.right.mandrel.diameter_mm
    if not case.shows("printed", size_mm):
        yield _whole(case, with_shank(case.right, case.need.job, case.bench))
    if not case.shows("sleeve", size_mm):
        yield _sleeve(case, sleeve_of(coil_of(case.right), case.need.job, case.bench))


def _whole(case: _Case, solid: MandrelSolid) -> MandrelChoice:
    """Whether a printed mandrel stands the crank's torque, and up to which pull."""
    plan, units = case.right, case.bench.units
    said = (
        f"stands {times(safety_at(plan, solid, case.bench))} the crank's torque with the pull of "
        f"{show_force(plan.pull_n, units)} ({SAFE:g} wanted; {show_stress(PRINTED_STRENGTH_MPA, units)} in shear, "
        "assumed; layers part first)"
    )
    return _made(case, solid, said)


def _sleeve(case: _Case, solid: MandrelSolid | Refusal) -> MandrelChoice:
    """Whether a printed sleeve finds a steel rod on hand that stands the crank's torque."""
    plan, units = case.right, case.bench.units
    if isinstance(solid, Refusal) or not isinstance(solid.held, Bore):
        why = f"no: {solid.why}" if isinstance(solid, Refusal) else "no"
        return MandrelChoice("sleeve", plan.mandrel.diameter_mm, None, "no", False, why)
    bore = solid.held
    rod, wall, least = (show_diameter(each, units) for each in (bore.rod_mm, bore.wall_mm, LEAST_WALL_MM))
    said = (
        f"on the rod of {rod}, which takes the torque by a flat ({times(safety_at(plan, solid, case.bench))}, {SAFE:g} "
        f"wanted); wall {wall} (least {least}, assumed)"
    )
    return replace(_made(case, solid, said), kind="sleeve", rod_mm=bore.rod_mm, wall_mm=bore.wall_mm)


def _made(case: _Case, solid: MandrelSolid, said: str) -> MandrelChoice:
    """A choice of what is printed: whether it has room in the printer, serves with the plan's pull, and with which."""
    if not has_room(solid, case.bench.printer_bed_mm):
        why = f"no: {no_room_said(solid, case.bench.units)}"
        return MandrelChoice("printed", case.right.mandrel.diameter_mm, None, "no", False, why)
    plan, units, word = case.right, case.bench.units, " --shank sleeve;" if isinstance(solid.held, Bore) else ""
    safety, most_n = safety_at(plan, solid, case.bench), greatest_pull_n(plan, solid, case.bench)
    most = show_force(most_n, units)
    if safety >= SAFE:
        said = joined(f"{said};{word} pull {most} at most", how_well(plan, case.shown))
    elif most_n > 0:
        said = f"no: {said}; it would serve with a pull of {most} at most, too little here"
    else:
        said = f"no: {said}; too little with no pull either"
    size_mm, chance = plan.mandrel.diameter_mm, plan.tries.first
    fits = plan.fit.fits if safety >= SAFE else "no"
    return MandrelChoice("printed", size_mm, chance, fits, False, said, safety, most_n)
