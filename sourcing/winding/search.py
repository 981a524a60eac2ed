"""Which mean diameters serve a need with one wire, of any kind of spring that follows from its mean diameter."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from math import ceil
from typing import Any

from sourcing.fit.judge import grade
from sourcing.fit.limits.room import BORE, ROD
from sourcing.fit.model import Deviation, Fit
from sourcing.need.model import Need
from sourcing.quantities import Wanted, show_diameter, show_force, show_length, show_torque, show_wanted
from sourcing.springs.compression import INDEX_RANGE
from sourcing.stock.model import Bench
from sourcing.winding.model import Refusal, Serves
from sourcing.winding.task import ByDiameter, Design, S, unspread

LEAST_INDEX, GREATEST_INDEX = INDEX_RANGE

REFUSED_FROM = 2.0
"""A figure that is further off than so many tolerances makes a no."""

COMES_OUT = " that comes out: "
"""Stands before the reason why a diameter that was not chosen does not serve."""

TOLD_FIRST = ("stress at the shortest length", "solid length", "stress at solid")
"""Which of several reasons that exclude as many diameters is told."""

EASED_BY_SIZE = frozenset({"solid length", "depth", "rod clearance"})
"""Limits that the largest diameter comes nearest to; the others are eased by the smallest."""


_SHOWERS: Mapping[str, Callable[[float, str], str]] = {"N": show_force, "mm": show_length, "N·mm": show_torque}

MOST_STEPS, QUICK_STEPS = 80, 24
"""How many diameters a search looks at, and a quick one."""


def diameters_mm(need: Need, bench: Bench, wire_diameter_mm: float) -> tuple[float, float] | Refusal:
    """The mean diameters that bore, rod and a spring index of 4 to 20 leave, before growth in compression."""
    bore, rod = need.pocket.bore_mm, need.pocket.rod_mm
    low, high = LEAST_INDEX * wire_diameter_mm, GREATEST_INDEX * wire_diameter_mm
    if rod is not None and rod.largest is not None:
        low = max(low, rod.largest + bench.clearance.rod_mm + wire_diameter_mm)
    if bore is not None and bore.smallest is not None:
        high = min(high, bore.smallest - bench.clearance.bore_mm - wire_diameter_mm)
    if low <= high:
        return low, high
    wire, least, most = (show_diameter(each, bench.units) for each in (wire_diameter_mm, low, high))
    why = (
        f"with wire of {wire} the mean diameter would have to be at least {least} (rod, clearance and wire, or "
        f"{LEAST_INDEX:g} wires) and at most {most} (bore, clearance and wire, or {GREATEST_INDEX:g} wires)"
    )
    return Refusal("no-room-for-wire", why)


def scan(task: ByDiameter[S], low_mm: float, high_mm: float, most_steps: int = MOST_STEPS) -> tuple[Design[S], ...]:
    """The best spring at each of a row of mean diameters, 0.1 mm apart or finer, coarser over a wide range."""
    steps = min(max(ceil((high_mm - low_mm) / 0.1), 16), most_steps)
    return tuple(task.best_at(low_mm + (high_mm - low_mm) * step / steps, unspread) for step in range(steps + 1))


def serving(task: ByDiameter[S], designs: Sequence[Design[S]]) -> tuple[tuple[Serves, ...], bool]:
    """The intervals of mean diameters that serve, and whether anything but the pocket and the index bounds them."""
    runs: list[list[int]] = []
    for at, design in enumerate(designs):
        if design.fit.fits == "yes":
            if runs and runs[-1][-1] == at - 1:
                runs[-1].append(at)
            else:
                runs.append([at])
    intervals: list[Serves] = []
    inner = False
    for run in runs:
        low, below = _edge(task, designs, run[0], -1)
        high, above = _edge(task, designs, run[-1], +1)
        inner = inner or not all(is_of_the_pocket(name) for name, _ in (*below, *above))
        intervals.append(Serves(low, high, _words(below), _words(above)))
    return tuple(intervals), inner


def _edge(
    task: ByDiameter[S], designs: Sequence[Design[S]], at: int, way: int
) -> tuple[float, tuple[tuple[str, str], ...]]:
    """Where a serving interval ends, by bisection, and what stops it there; nothing at the end of the range."""
    good = designs[at].spring.mean_diameter_mm
    if not 0 <= at + way < len(designs):
        return good, ()
    bad = designs[at + way].spring.mean_diameter_mm
    while abs(good - bad) > 0.005:
        middle = (good + bad) / 2
        if task.best_at(middle, unspread).fit.fits == "yes":
            good = middle
        else:
            bad = middle
    return good, tuple(stops(designs[at + way].fit, task.bench.units))


def is_of_the_pocket(limit: str) -> bool:
    """Whether a limit is one of room; a cone's go on with the end that they are about."""
    return limit.startswith((BORE, ROD))


def stops(fit: Fit, units: str) -> Iterable[tuple[str, str]]:
    """What keeps a fit from a yes, by name: limits that do not hold, then figures outside their tolerance."""
    for limit in fit.broken:
        yield limit.limit, limit.why
    for row in fit.deviations:
        if grade(row) > 0:
            yield f"{row.figure}{_at(row, units)}", f"{missed(row, units)}, outside its tolerance"


def missed(row: Deviation, units: str) -> str:
    """A figure that is off, with the length at which it is wanted: "force 8.0 N at 7 mm (wanted: 5 N ± 20 %)"."""
    show = _SHOWERS.get(row.unit)

    def text(value: float) -> str:
        return f"{value:.2f} {row.unit}" if show is None else show(value, units)

    return f"{row.figure} {text(row.got)}{_at(row, units)} (wanted: {show_wanted(row.wanted, text)})"


def _at(row: Deviation, units: str) -> str:
    """The length or the angle at which a figure is wanted, after a blank; empty of any other figure."""
    if row.at is None:
        return ""
    show = _SHOWERS.get(row.at_unit)
    if show is None:
        return f" at {row.at:g} {row.at_unit}"
    return f" at {show_wanted(Wanted(nominal=row.at), lambda each: show(each, units))}"


def _words(stops: Sequence[tuple[str, str]]) -> str:
    return stops[0][1] if stops else ""


def why_none(designs: Sequence[Design[Any]], units: str) -> Refusal:
    """The refusal where no diameter serves, in the words of what excluded most of them, at the best of those."""
    if len(designs) == 1:
        at = show_diameter(designs[0].spring.mean_diameter_mm, units)
        why = refusal_of(designs[0].fit, units)
        return Refusal("no-diameter-serves", f"at the mean diameter of {at}{COMES_OUT}{why}")
    counted = Counter(name for design in designs for name, _ in _refusing(design.fit, units))
    told = sorted(counted, key=lambda name: (-counted[name], name not in TOLD_FIRST))[0]
    excluded = [design for design in designs if told in dict(_refusing(design.fit, units))]
    fewest = min(len(tuple(_refusing(design.fit, units))) for design in excluded)
    nearest = [design for design in excluded if len(tuple(_refusing(design.fit, units))) == fewest]
    design = nearest[-1 if told in EASED_BY_SIZE else 0]
    low, high, at = (show_diameter(each.spring.mean_diameter_mm, units) for each in (designs[0], designs[-1], design))
    why = dict(_refusing(design.fit, units))[told]
    if all(dict(_refusing(each.fit, units)).get(told) == why for each in designs):
        return Refusal("no-diameter-serves", why)
    return Refusal("no-diameter-serves", f"no mean diameter between {low} and {high} serves: at {at}, {why}")


def refusal_of(fit: Fit, units: str) -> str:
    """All that makes a fit a no, in words."""
    return "; ".join(why for _, why in _refusing(fit, units))


def _refusing(fit: Fit, units: str) -> Iterable[tuple[str, str]]:
    """What makes a fit a no: hard limits that do not hold, figures beyond two tolerances."""
    for limit in fit.broken:
        if limit.hard:
            yield limit.limit, limit.why
    for row in fit.deviations:
        if row.deviation_over_tolerance > REFUSED_FROM:
            yield row.figure, f"{missed(row, units)}, more than two tolerances off"
