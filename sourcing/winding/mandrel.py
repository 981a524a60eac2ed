"""The mandrel: a rod on hand with the diameter that it will really give, or one to turn."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from math import hypot, inf

from sourcing.fit.model import Spread
from sourcing.springs import pressed
from sourcing.springs.model import Spring
from sourcing.winding.heat import change_of_diameter
from sourcing.winding.model import Mandrel
from sourcing.winding.search import Design, Task, unspread
from sourcing.winding.trials import Knowledge

TURNED_STEP_MM = 0.05
"""Springback is not known finely enough for a mandrel to be given finer."""

PITCH_DOUBT = 0.02
"""The free length of a spring laid by hand and trimmed, one standard deviation over its travel to solid (assumed)."""

RATE_DOUBT = 0.03
"""The rate of wire of its nominal diameter within its tolerance, one standard deviation (assumed)."""

COILS_DOUBT = 0.07
"""Turns counted to an eighth, read as a rectangle, in coils."""

DIAMETER_POWER = 3.0
"""The rate falls with the cube of a diameter that was not planned."""

TRIED_AT = 7
"""How many diameters of those that stand equal are compared by chance."""


@dataclass(frozen=True, slots=True)
class Wound:
    """A design on the mandrel that gives it."""

    mandrel: Mandrel
    design: Design

    @property
    def diameter_mm(self) -> float:
        """The mandrel's diameter."""
        assert self.mandrel.diameter_mm is not None
        return self.mandrel.diameter_mm


def diameter_sd_mm(task: Task, known: Knowledge, mandrel_mm: float) -> float:
    """The standard deviation of the final mean diameter: springback, and heat where it is given."""
    change, doubt = change_of_diameter(task.wire.material, task.bench)
    mean_mm = known.finished_mean_mm(mandrel_mm)
    return (1 + change) * hypot(known.finished_mean_sd_mm(mandrel_mm), mean_mm * doubt)


def free_length_sd_mm(spring: Spring) -> float:
    """The standard deviation of the free length of a spring wound by hand (assumed)."""
    return PITCH_DOUBT * max(0.0, spring.free_length_mm - pressed.solid_length_mm(spring))


def rate_sd(spring: Spring) -> float:
    """The relative standard deviation of the rate at a known diameter: wire, and coils counted (assumed)."""
    return hypot(RATE_DOUBT, COILS_DOUBT / spring.active_coils)


def spread_on(task: Task, known: Knowledge, mandrel_mm: float) -> Callable[[Spring], Spread]:
    """How far a spring wound on this mandrel may come from its figures."""
    sd_mm = diameter_sd_mm(task, known, mandrel_mm)
    return lambda spring: Spread(
        diameter_sd_mm=sd_mm,
        free_length_sd_mm=free_length_sd_mm(spring),
        rate_sd=rate_sd(spring),
        rate_on_diameter=DIAMETER_POWER,
    )


def final_mean_mm(task: Task, known: Knowledge, mandrel_mm: float) -> float:
    """The mean diameter that a mandrel gives in the end, after heat where it is given; infinite: opens fully."""
    change, _ = change_of_diameter(task.wire.material, task.bench)
    return known.finished_mean_mm(mandrel_mm) * (1 + change)


def mandrel_for_mm(task: Task, known: Knowledge, final_mean_diameter_mm: float) -> float:
    """The mandrel that gives a final mean diameter."""
    change, _ = change_of_diameter(task.wire.material, task.bench)
    return known.mandrel_mm(final_mean_diameter_mm / (1 + change))


def wound_on(task: Task, known: Knowledge, mandrel: Mandrel) -> Wound | None:
    """What a mandrel gives, the coils chosen so that the rate is restored; None where the wire would open fully."""
    assert mandrel.diameter_mm is not None
    mean_mm = final_mean_mm(task, known, mandrel.diameter_mm)
    if mean_mm == inf:
        return None
    return Wound(mandrel, task.best_at(mean_mm, spread_on(task, known, mandrel.diameter_mm)))


def choose(task: Task, known: Knowledge, designs: Sequence[Design]) -> Wound | None:
    """The mandrel that serves best: a rod on hand that gives a yes with the least chance wanted, else one to turn.

    None where neither can be laid on a mandrel of at least one wire diameter.
    """
    rod = min(_rods(task, known, designs), key=_order, default=None)
    if rod is not None and rod.design.fit.fits == "yes" and rod.design.fit.chance >= task.bench.least_chance:
        return rod
    turned = _turned(task, known, designs)
    if rod is None or turned is None:
        return rod or turned
    return min(rod, turned, key=_order)


def _order(wound: Wound) -> tuple[int, int, bool, float, float]:
    return wound.design.order


def _rods(task: Task, known: Knowledge, designs: Sequence[Design]) -> Iterable[Wound]:
    """The rods on hand whose springs stand best, with their chances."""
    low, high = designs[0].spring.mean_diameter_mm, designs[-1].spring.mean_diameter_mm
    rods = [rod for rod in task.bench.rods_mm if rod >= task.wire.wire_diameter_mm]
    means = {rod: final_mean_mm(task, known, rod) for rod in rods}
    standing = {rod: task.best_at(mean, unspread).standing[0] for rod, mean in means.items() if low <= mean <= high}
    best = min(standing.values(), default=0)
    wound = (wound_on(task, known, Mandrel("rod", rod)) for rod, each in standing.items() if each == best)
    return (each for each in wound if each is not None)


def _turned(task: Task, known: Knowledge, designs: Sequence[Design]) -> Wound | None:
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
