"""What would change the answer: money, days, and the tolerance or limit that excluded the best excluded option."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from sourcing.fit.model import Deviation
from sourcing.quantities import Wanted, show_angle, show_force, show_length, show_money, show_torque, show_wanted
from sourcing.verdict.options import Option
from sourcing.verdict.rules import Choices


def named(option: Option) -> str:
    """An option in two or three words."""
    match option.option:
        case "drawer":
            return f"{option.id} from the drawer"
        case "adapted":
            return f"adapting {option.id}"
        case "bought":
            return f"buying {option.id}"
        case "wound":
            return f"winding it from {option.id}" if option.id else "winding it from wire bought for it"
        case _:
            return "having it made"


def money(choices: Choices, chosen: Option | None) -> str:
    """Which price, or value of an hour, would turn the choice between paying and working."""
    if chosen is not None and chosen.option == "drawer":
        return "Money: no price would change this; the spring from the drawer costs nothing."
    known = [o for o in _rivals(choices, chosen) if choices.total_cost(o) < float("inf")]
    if chosen is None or choices.total_cost(chosen) == float("inf") or not known:
        maker = choices.of("ordered", fits="yes")
        if maker and maker[0] is not chosen and maker[0].cost is not None:
            return f"Money: {show_money(maker[0].cost)} would have it made by a spring maker."
        if chosen is None and not maker:
            return "Money: a spring maker with a price, named in bench.yaml, would make it an order."
        return _nothing_to_compare(chosen)
    rival = min(known, key=choices.total_cost)
    assert chosen.cost is not None
    assert rival.cost is not None
    return f"Money: {_traded(choices, chosen, rival)}"


def _nothing_to_compare(chosen: Option | None) -> str:
    aside = "; other wire to wind it from is left aside" if chosen is not None and chosen.option == "wound" else ""
    return (
        "Money: no price would change this; nothing else that is sure to fit and comes in time has a price to compare"
        f"{aside}."
    )


def _rivals(choices: Choices, chosen: Option | None) -> list[Option]:
    """What money could turn the choice to: what else fits surely and in time, and no other wire where one is wound."""
    wound = chosen is not None and chosen.option == "wound"
    names = ("adapted", "bought") if wound else ("adapted", "bought", "wound")
    fitting = choices.of(*names, fits="yes")
    return [o for o in fitting if o is not chosen and choices.sure(o) and o.in_time(choices.need)]


def _traded(choices: Choices, chosen: Option, rival: Option) -> str:
    """What price or what value of an hour would turn the choice from one priced option to the other."""
    assert chosen.cost is not None
    assert rival.cost is not None
    dearer = rival.cost.amount - chosen.cost.amount
    more_hours = (rival.hours or 0.0) - (chosen.hours or 0.0)
    if dearer * more_hours < 0.0:
        side = "more" if dearer > 0.0 else "less"
        return (
            f"{named(rival)} costs {show_money(rival.cost)}; it would be chosen if an hour at the bench were worth "
            f"{side} than {abs(dearer / more_hours):.2f} {choices.bench.currency} "
            f"(hour_value is {choices.bench.hour_value.amount:.2f})."
        )
    apart = choices.total_cost(rival) - choices.total_cost(chosen)
    if apart <= rival.cost.amount:
        return f"{named(rival)} would be chosen if it cost {apart:.2f} {choices.bench.currency} less."
    return (
        f"no price would change this; {named(rival)}, the next cheapest, takes too many hours even if it cost nothing."
    )


def days(choices: Choices, chosen: Option | None) -> str:
    """What more or less time would bring in or shut out."""
    within = choices.need.needed_within_days
    fitting = [o for o in choices.options if o.fits == "yes" and o is not chosen and not o.wire_to_buy]
    if within is None:
        slow = f"; {named(chosen)} takes {chosen.days:g} days" if chosen is not None and chosen.days else ""
        return f"Days: nothing was said of when it is needed{slow}."
    late = [o for o in fitting if o.days is not None and o.days > within]
    if chosen is not None and chosen.days is not None and chosen.days > within:
        return f"Days: it takes {chosen.days:g} days, {chosen.days - within:g} more than wanted."
    if late:
        first = min(late, key=lambda o: o.days or 0.0)
        return f"Days: waiting {first.days:g} days instead of {within:g} would bring in {named(first)}."
    return (
        "Days: more time would change nothing; no other option that fits takes longer than the "
        f"{within:g} days allowed."
    )


def figure_name(row: Deviation, units: str) -> str:
    """A wanted figure by name, a force with the length at which it is wanted."""
    if row.at is None:
        return row.figure
    return f"{row.figure} at {show_wanted(Wanted(nominal=row.at), shower(row.at_unit, units))}"


_SHOWERS: Mapping[str, Callable[[float, str], str]] = {
    "N": show_force,
    "mm": show_length,
    "N·mm": show_torque,
    "deg": lambda angle, _: show_angle(angle if angle >= 0.0 else angle + 360.0),
}


def shower(unit: str, units: str) -> Callable[[float], str]:
    """What shows a figure of this unit to people, in the bench's units."""
    show = _SHOWERS[unit]
    return lambda value: show(value, units)


FAR = 5.0
"""A figure further off than this many tolerances is not brought in by widening one."""


def _badness(option: Option) -> tuple[int, float]:
    """How far from fitting: hard limits broken, then the worst deviation."""
    assert option.fit is not None
    hard = sum(limit.hard for limit in option.fit.broken)
    return hard, max((row.deviation_over_tolerance for row in option.fit.deviations), default=0.0)


def _by_tolerance_alone(option: Option) -> bool:
    """Whether tolerances not too far away exclude it, and nothing else: a spring that pushes at all."""
    hard, worst = _badness(option)
    assert option.fit is not None
    return hard == 0 and 1.0 < worst <= FAR and all(row.got > 0.0 for row in option.fit.deviations)


def _widened(row: Deviation, units: str) -> str:
    show = shower(row.unit, units)
    might = f"the {figure_name(row, units)} might be {show(row.got)}"
    if row.wanted.nominal is None:
        return f"{might} (wanted: {show_wanted(row.wanted, show)})"
    return f"{might} (± {show(row.tolerance * row.deviation_over_tolerance)} instead of ± {show(row.tolerance)})"


def _far_off(row: Deviation, units: str) -> str:
    show = shower(row.unit, units)
    return f"{figure_name(row, units)} {show(row.got)} where {show_wanted(row.wanted, show)} is wanted"


def tolerance(choices: Choices, chosen: Option | None) -> str:
    """The tolerance, or else the limit, that excluded the best option among those that do not fit."""
    excluded = [o for o in choices.options if o.fits != "yes" and o is not chosen and o.fit is not None]
    if not excluded:
        return "Tolerance: nothing was excluded by a tolerance or a limit."
    by_tolerance = [o for o in excluded if _by_tolerance_alone(o) and o.in_time(choices.need)]
    out, units = min(by_tolerance or excluded, key=_badness), choices.bench.units
    assert out.fit is not None
    off = [row for row in out.fit.deviations if row.deviation_over_tolerance > 1.0]
    limits = "; ".join(f"{limit.limit}: {limit.why}" for limit in out.fit.broken)
    if any(row.deviation_over_tolerance > FAR or row.got <= 0.0 for row in off):
        far = "; ".join(_far_off(row, units) for row in off)
        return f"Tolerance: no small change would do; the best that was excluded is {named(out)}: {far}."
    if not off:
        kept_out = "is near, but for a limit" if out.fits == "near" else "is excluded by a limit"
        return f"Tolerance: no figure keeps the next best out; {named(out)} {kept_out} ({limits})."
    wider = " and ".join(_widened(row, units) for row in off)
    return f"Tolerance: {named(out)} would come in if {wider}" + (f", but for {limits}." if limits else ".")


def would_change(choices: Choices, chosen: Option | None) -> tuple[str, ...]:
    """Money, days and tolerance, one sentence each."""
    return money(choices, chosen), days(choices, chosen), tolerance(choices, chosen)
