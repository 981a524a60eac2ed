"""What would change the answer: money, days, and the tolerance or limit that excluded the best excluded option."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from sourcing.fit.model import Deviation
from sourcing.quantities import Wanted, show_force, show_length, show_money, show_wanted
from sourcing.verdict.options import Option
from sourcing.verdict.rules import Choices


def named(option: Option) -> str:
    """An option in two or three words."""
    match option.option:
        case "drawer":
            return f"{option.id} from the drawer"
        case "bought":
            return f"buying {option.id}"
        case "wound":
            return f"winding it from {option.id}" if option.id else "winding it from wire bought for it"
        case _:
            return "having it made"


def money(choices: Choices, chosen: Option | None) -> str:
    """Which price, or value of an hour, would turn the choice between paying and working."""
    if chosen is not None and chosen.option == "drawer":
        return "Money: nothing; the drawer costs none."
    rivals = [o for o in choices.of("bought", "wound", fits="yes") if o is not chosen and choices.sure(o)]
    known = [o for o in rivals if choices.total_cost(o) < float("inf")]
    if chosen is None or choices.total_cost(chosen) == float("inf") or not known:
        maker = choices.of("ordered", fits="yes")
        if maker and maker[0] is not chosen and maker[0].cost is not None:
            return f"Money: {show_money(maker[0].cost)} would have it made by a spring maker."
        return "Money: nothing; there is no second option that fits and has a price."
    rival = min(known, key=choices.total_cost)
    assert chosen.cost is not None
    assert rival.cost is not None
    more_hours = (chosen.hours or 0.0) - (rival.hours or 0.0)
    dearer = rival.cost.amount - chosen.cost.amount
    if more_hours > 0.0 and dearer > 0.0:
        hourly = dearer / more_hours
        return (
            f"Money: {named(rival)} costs {show_money(rival.cost)}; it would be chosen if an hour at the bench "
            f"were worth more than {hourly:.2f} {choices.bench.currency} (hour_value is "
            f"{choices.bench.hour_value.amount:.2f})."
        )
    apart = choices.total_cost(rival) - choices.total_cost(chosen)
    return f"Money: {named(rival)} would be chosen if it cost {apart:.2f} {choices.bench.currency} less."


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
    return f"Days: nothing; no other option that fits takes longer than the {within:g} days allowed."


def figure_name(row: Deviation, units: str) -> str:
    """A wanted figure by name, a force with the length at which it is wanted."""
    if row.at_mm is None:
        return row.figure
    return f"{row.figure} at {show_wanted(Wanted(nominal=row.at_mm), shower('mm', units))}"


def shower(unit: str, units: str) -> Callable[[float], str]:
    """What shows a figure of this unit to people, in the bench's units."""
    return (lambda value: show_force(value, units)) if unit == "N" else (lambda value: show_length(value, units))


def _widened(row: Deviation, units: str) -> str:
    show = shower(row.unit, units)
    might = f"the {figure_name(row, units)} might be {show(row.got)}"
    if row.wanted.nominal is None:
        return might
    return f"{might}: ± {show(row.tolerance * row.deviation_over_tolerance)} instead of ± {show(row.tolerance)}"


def tolerance(choices: Choices, chosen: Option | None) -> str:
    """The tolerance, or else the limit, that excluded the best option among those that do not fit."""
    out = next((o for o in choices.options if o.fits != "yes" and o is not chosen and o.fit is not None), None)
    if out is None or out.fit is None:
        return "Tolerance: nothing was excluded by a tolerance or a limit."
    worst = max(out.fit.deviations, key=lambda row: row.deviation_over_tolerance, default=None)
    parts = [f"{limit.limit} ({limit.why})" for limit in out.fit.broken]
    if worst is not None and worst.deviation_over_tolerance > 1.0:
        parts.insert(0, _widened(worst, choices.bench.units))
        return f"Tolerance: {named(out)} would fit if {_and(parts)}."
    return f"Tolerance: {named(out)} is excluded by its {_and(parts)}."


def _and(parts: Iterable[str]) -> str:
    return ", and but for its ".join(parts)


def would_change(choices: Choices, chosen: Option | None) -> tuple[str, ...]:
    """Money, days and tolerance, one sentence each."""
    return money(choices, chosen), days(choices, chosen), tolerance(choices, chosen)
