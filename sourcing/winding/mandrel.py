"""The mandrel: a rod on hand with the diameter that it will really give, or one to turn."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import inf
from typing import Any, Generic

from sourcing.quantities import show_diameter
from sourcing.stock.model import Bench
from sourcing.winding.doubts import final_mean_mm, mandrel_for_mm
from sourcing.winding.in_hand import keeps
from sourcing.winding.model import Mandrel, Refusal
from sourcing.winding.search import why_none
from sourcing.winding.task import ByDiameter, Design, S
from sourcing.winding.trials import Knowledge

TURNED_STEP_MM = 0.05
"""Springback is not known finely enough for a mandrel to be given finer."""

DOES_NOT_SERVE, EXPECTED = " does not serve: ", "; expected "
"""Between which the reason stands why a mandrel that was asked for is refused."""

SAME_ROD_MM = 0.001
"""A mandrel that is asked for in inches is the rod that differs from it by their last digit only."""

CLEARLY_SURER = 0.1
"""By how much the chance of a rod must be greater for its spring to be taken before one nearer to what is wanted."""

TRIED_AT = 7
"""How many diameters of those that stand equal are compared by chance."""


@dataclass(frozen=True, slots=True)
class Wound(Generic[S]):
    """A design on the mandrel that gives it."""

    mandrel: Mandrel
    design: Design[S]

    @property
    def diameter_mm(self) -> float:
        """The mandrel's diameter."""
        assert self.mandrel.diameter_mm is not None
        return self.mandrel.diameter_mm


def mandrel_of(diameter_mm: float, bench: Bench) -> Mandrel:
    """The mandrel that somebody names: the rod on hand of that size, else one to turn."""
    rod_mm = next((rod for rod in bench.rods_mm if abs(rod - diameter_mm) < SAME_ROD_MM), None)
    return Mandrel("turned", diameter_mm) if rod_mm is None else Mandrel("rod", rod_mm)


def wound_on(task: ByDiameter[S], known: Knowledge, mandrel: Mandrel) -> Wound[S] | None:
    """What a mandrel gives, the coils chosen so that the rate is restored; None where the wire would open fully."""
    assert mandrel.diameter_mm is not None
    mean_mm = final_mean_mm(task, known, mandrel.diameter_mm)
    if mean_mm == inf:
        return None
    return Wound(mandrel, task.best_at(mean_mm, task.spread_on(known, mandrel.diameter_mm)))


def wound_for(
    task: ByDiameter[S], known: Knowledge, designs: Sequence[Design[S]], mandrel_mm: float | None
) -> Wound[S] | Refusal:
    """The mandrel, the best or the one given, and what it gives."""
    if mandrel_mm is not None:
        return _given(task, known, designs, mandrel_mm)
    if all(design.fit.fits == "no" for design in designs):
        return why_none(designs, task.bench.units)
    wound = choose(task, known, designs)
    if wound is None:
        why = "the mandrel would be thinner than the wire: so tight a coil is not wound by hand"
        return Refusal("no-diameter-serves", why)
    return why_none([wound.design], task.bench.units) if wound.design.fit.fits == "no" else wound


def _given(
    task: ByDiameter[S], known: Knowledge, designs: Sequence[Design[S]], mandrel_mm: float
) -> Wound[S] | Refusal:
    """What a mandrel gives, or why it does not serve."""
    size = show_diameter(mandrel_mm, task.bench.units)
    if mandrel_mm < task.wire.wire_diameter_mm:
        wire = show_diameter(task.wire.wire_diameter_mm, task.bench.units)
        why = f"a mandrel of {size} is thinner than the wire of {wire}{_expected(task, known, designs)}"
        return Refusal("mandrel-too-thin", why)
    wound = wound_on(task, known, mandrel_of(mandrel_mm, task.bench))
    if wound is not None and wound.design.fit.fits != "no":
        return wound
    if refusal := _no_room(task, known, designs, mandrel_mm):
        return refusal
    if wound is None:
        return Refusal("mandrel-too-large", f"on a mandrel of {size} this wire does not yield: it would open fully")
    why = why_none([wound.design], task.bench.units).why
    return Refusal("no-diameter-serves", f"the mandrel of {size}{DOES_NOT_SERVE}{why}")


def _no_room(task: ByDiameter[S], known: Knowledge, designs: Sequence[Design[S]], mandrel_mm: float) -> Refusal | None:
    """The refusal of a mandrel that gives a coil for which pocket and index leave no room."""
    wire_mm, units, expected = task.wire.wire_diameter_mm, task.bench.units, _expected(task, known, designs)
    least_mm, most_mm = designs[0].spring.mean_diameter_mm, designs[-1].spring.mean_diameter_mm
    inside_mm, mean_mm = most_mm - wire_mm, final_mean_mm(task, known, mandrel_mm)
    size, wire, inside = (show_diameter(each, units) for each in (mandrel_mm, wire_mm, inside_mm))
    does_not = f"the mandrel of {size}{DOES_NOT_SERVE}"
    if mandrel_mm >= inside_mm:
        why = f"it is larger than the inside of any spring here, {inside} at most with wire of {wire}"
        return Refusal("mandrel-too-large", f"{does_not}{why}{expected}")
    if least_mm <= mean_mm <= most_mm:
        return None
    mean, least, most = (show_diameter(each, units) for each in (mean_mm, least_mm, most_mm))
    why = f"on it wire of {wire} comes out with a mean diameter of {mean}; {least} to {most} have room"
    return Refusal("no-diameter-serves", f"{does_not}{why}{expected}")


def _expected(task: ByDiameter[S], known: Knowledge, designs: Sequence[Design[S]]) -> str:
    """The mandrels for whose coils pocket and index leave room."""
    means_mm = designs[0].spring.mean_diameter_mm, designs[-1].spring.mean_diameter_mm
    mandrels_mm = (max(task.wire.wire_diameter_mm, mandrel_for_mm(task, known, mean_mm)) for mean_mm in means_mm)
    low, high = (show_diameter(each, task.bench.units) for each in mandrels_mm)
    return f"{EXPECTED}{low} to {high}, for which pocket and index leave room"


def choose(task: ByDiameter[S], known: Knowledge, designs: Sequence[Design[S]]) -> Wound[S] | None:
    """The mandrel that serves best: a rod on hand whose spring serves, with the least chance wanted, else one to turn.

    It serves wholly, or no worse than on a mandrel turned to size: what its wire lacks is no fault of a rod. One that
    is clearly surer than either is taken though its spring is further from the figures that are wanted: each try costs
    wire and an hour, and all that is wanted holds. None where nothing can be laid on a mandrel of at least one wire
    diameter.
    """
    rods = tuple(_rods(task, known, designs))
    best = min((rod.design.standing[0] for rod in rods), default=0)
    rod = min((rod for rod in rods if rod.design.standing[0] == best), key=_order, default=None)
    sure = rod is not None and _chance(rod) >= task.bench.least_chance
    if rod is not None and rod.design.fit.fits == "yes" and sure:
        return rod
    first = min((each for each in (rod, _turned(task, known, designs)) if each is not None), key=_order, default=None)
    if rod is None or first is None:
        return first
    serving = [each for each in rods if each.design.fit.fits == "yes" or keeps(each.design.fit, first.design.fit)]
    if rod in serving and sure:
        return rod
    surest = max(serving, key=_chance, default=first)
    return surest if _chance(surest) >= _chance(first) + CLEARLY_SURER else first


def _chance(wound: Wound[Any]) -> float:
    return wound.design.fit.chance


def _order(wound: Wound[Any]) -> tuple[float, ...]:
    return wound.design.order


def _rods(task: ByDiameter[S], known: Knowledge, designs: Sequence[Design[S]]) -> Iterable[Wound[S]]:
    """The rods on hand whose springs have room, with what they give."""
    low, high = designs[0].spring.mean_diameter_mm, designs[-1].spring.mean_diameter_mm
    for rod in task.bench.rods_mm:
        if rod >= task.wire.wire_diameter_mm and low <= final_mean_mm(task, known, rod) <= high:
            wound = wound_on(task, known, Mandrel("rod", rod))
            if wound is not None:
                yield wound


def _turned(task: ByDiameter[S], known: Knowledge, designs: Sequence[Design[S]]) -> Wound[S] | None:
    """The best of the diameters that stand highest, on a mandrel turned for it."""
    best = min(design.standing for design in designs)
    leading = [design for design in designs if design.standing == best]
    picked = (
        leading
        if len(leading) <= TRIED_AT
        else [leading[round(at * (len(leading) - 1) / (TRIED_AT - 1))] for at in range(TRIED_AT)]
    )
    sizes = (mandrel_for_mm(task, known, design.spring.mean_diameter_mm) for design in picked)
    rounded = {round(round(size / TURNED_STEP_MM) * TURNED_STEP_MM, 2) for size in sizes}
    wound = (
        wound_on(task, known, Mandrel("turned", size)) for size in sorted(rounded) if size >= task.wire.wire_diameter_mm
    )
    return min((each for each in wound if each is not None), key=_order, default=None)
