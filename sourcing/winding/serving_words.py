"""What a wire can do for a need, in words: wholly, between which diameters, or as a near fit only, and what is off."""

from __future__ import annotations

from sourcing.quantities import show_diameter
from sourcing.springs.model import ConicalSpring
from sourcing.winding.model import Serves, WindingPlan
from sourcing.winding.search import stops

NEAR = "a near fit only"
"""What is said of a mandrel whose spring does not serve wholly."""

_GAP_MM = 0.1
"""Two ranges of a cone's end no further apart are one: the search is no finer."""


def what_is_off(plan: WindingPlan) -> tuple[str, ...]:
    """By name, each limit that a plan does not hold and each figure outside its tolerance; nothing of one that serves
    wholly."""
    return tuple(name for name, _ in stops(plan.fit, plan.units))


def but_for(plan: WindingPlan) -> str:
    """Stands beside the chance of a right coil: which limits that chance leaves out; empty where none is broken.

    The chance is of the clearances and of the figures that are wanted, each within its tolerance.
    """
    broken = left_out(plan)
    if not broken:
        return ""
    return f"but for {'that' if len(broken) == len(what_is_off(plan)) else ' and '.join(broken)}"


def left_out(plan: WindingPlan) -> tuple[str, ...]:
    """The limits that a plan does not hold, by name: its chance does not count them."""
    return tuple(limit.limit for limit in plan.fit.broken)


def near_only(plan: WindingPlan) -> str:
    """That a mandrel gives a near fit only, with its chance where that leaves limits out, and which."""
    broken = left_out(plan)
    if not broken or plan.unsettled:
        return NEAR
    return f"{NEAR} ({plan.tries.first:.2f} but for {' and '.join(broken)})"


def what_serves(plan: WindingPlan) -> str:
    """What its wire can do for the need: yes, or only between which diameters; before it why a near fit is one."""
    if plan.fit.fits == "yes":
        return _window(plan, "Yes, ", "Only ")
    why = "; ".join(why for _, why in stops(plan.fit, plan.units))
    if not plan.serves:
        return f"Only a near fit: {why}."
    gives = show_diameter(plan.wanted.mean_diameter_mm, plan.units)
    window = _window(plan, "It serves wholly ", "It serves wholly only ")
    return f"This mandrel gives a mean diameter of {gives}, and so a near fit only: {why}. {window}"


def _window(plan: WindingPlan, everywhere: str, only: str) -> str:
    """Where the wire serves wholly, with what bounds it where more than the pocket and the index does."""
    if isinstance(plan.wanted, ConicalSpring):
        return _as_cone(plan, plan.wanted, everywhere, only)
    between = " or ".join(
        f"{show_diameter(each.low_mm, plan.units)} and {show_diameter(each.high_mm, plan.units)}"
        for each in plan.serves
    )
    if not plan.only:
        return f"{everywhere}at every mean diameter between {between}."
    return f"{only}between mean diameters {between}. " + " ".join(_edges(each, plan.units) for each in plan.serves)


def _as_cone(plan: WindingPlan, cone: ConicalSpring, everywhere: str, only: str) -> str:
    """The ranges of both ends round the ones chosen, and what bounds them; not every one goes with every other."""
    chosen = {"large": cone.mean_diameter_large_mm, "small": cone.mean_diameter_small_mm}
    (at_large, edges_large), (at_small, edges_small) = (_round(plan, end, mm) for end, mm in chosen.items())
    large, small = (show_diameter(each, plan.units) for each in chosen.values())
    more = f", though not each with each; here {large} and {small}" if (large, small) != (at_large, at_small) else ""
    ranges = f"as a cone of mean diameters {at_large} at the large end and {at_small} at the small one{more}."
    if not plan.only:
        return f"{everywhere}{ranges}"
    return " ".join(filter(None, (f"{only}{ranges}", edges_large, edges_small)))


def _round(plan: WindingPlan, end: str, chosen_mm: float) -> tuple[str, str]:
    """From where to where an end serves round the diameter chosen, with what bounds it; its other ranges unsaid."""
    of_end = (each for each in plan.serves if each.end == end)
    around = [each for each in of_end if each.low_mm - _GAP_MM <= chosen_mm <= each.high_mm + _GAP_MM]
    if not around:
        return show_diameter(chosen_mm, plan.units), ""
    first, last = around[0], around[-1]
    low, high = (show_diameter(each, plan.units) for each in (first.low_mm, last.high_mm))
    sides = (("below", low, first.below), ("above", high, last.above))
    said = [f"{end.capitalize()} end {way} {at}: {why}." for way, at, why in sides if why]
    return low if low == high else f"{low} to {high}", " ".join(said)


def _edges(serves: Serves, units: str) -> str:
    """What stops the diameters below and above one range."""
    sides = (("Below", serves.low_mm, serves.below), ("Above", serves.high_mm, serves.above))
    return " ".join(f"{way} {show_diameter(at_mm, units)}: {why}." for way, at_mm, why in sides if why)
