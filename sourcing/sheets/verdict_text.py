"""The verdict as text: one sentence first, then why, the options, and what would change the answer."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from sourcing.adapt.rehook import rehook_steps
from sourcing.fit.model import Deviation, Fit
from sourcing.fit.rank import rank
from sourcing.need.model import Need
from sourcing.quantities import (
    Wanted,
    show_angle,
    show_diameter,
    show_force,
    show_length,
    show_money,
    show_torque,
    show_wanted,
)
from sourcing.sheets.hands import hand_matters, pair_lines
from sourcing.sheets.text import bullets, heading, numbered, strong, table, wrapped
from sourcing.sheets.winding_text import OPEN, plan_lines
from sourcing.springs.end_pieces import said
from sourcing.verdict.options import Option
from sourcing.verdict.verdict import Verdict
from sourcing.verdict.would_change import figure_name, shower

if TYPE_CHECKING:
    from sourcing.figures.working import Working

OPTIONS_SHOWN = 6
EXCLUDED_SHOWN = 3


def verdict_lines(verdict: Verdict, workings: Sequence[Working] | None = None) -> Iterator[str]:
    """The whole sheet of one need, with its workings where they were asked for."""
    need = verdict.need
    yield from wrapped(need.job + (f": {need.what}" if need.what else ""))
    yield from wrapped("; ".join(wanted_words(need, verdict.bench.units)), "  ")
    yield ""
    yield from map(strong, wrapped(verdict.sentence))
    yield from heading("Why")
    yield from bullets(f"{because.rule}: {because.why}" for because in verdict.because)
    if verdict.cautions:
        yield from heading("Mind")
        yield from bullets(verdict.cautions, "!")
    if verdict.options:
        yield from _options(verdict)
    if verdict.chosen is not None and verdict.chosen.adapted is not None:
        yield from heading("How to adapt it")
        yield from numbered(rehook_steps(verdict.chosen.adapted, verdict.bench.units))
    if verdict.chosen is not None and verdict.chosen.fit is not None:
        yield from _fit(verdict, verdict.chosen, verdict.chosen.fit)
    if verdict.options and hand_matters(need):
        yield from heading("How to see the hand")
        yield from pair_lines()
    if verdict.would_change:
        yield from heading("What would change it")
        yield from bullets(verdict.would_change)
    if notes := tuple(verdict.notes):
        yield from heading("Not judged, and assumed")
        yield from bullets(notes)
    if verdict.plan is not None:
        yield ""
        yield from plan_lines(verdict.plan)
    if workings is not None:
        from sourcing.sheets.workings import workings_lines

        yield from workings_lines(workings)
    yield ""


def wanted_words(need: Need, units: str) -> Iterator[str]:
    """The need as it was understood, so that a slip of the pen is seen."""

    def size(wanted: Wanted) -> str:
        return show_wanted(wanted, lambda mm: show_diameter(mm, units))

    pocket = need.pocket
    for where, end in (("", pocket), (" at the large end", pocket.large_end), (" at the small end", pocket.small_end)):
        sizes = (("bore", end.bore_mm), ("rod", end.rod_mm)) if end is not None else ()
        yield from (f"{name}{where} {size(wanted)}" for name, wanted in sizes if wanted is not None)
    if pocket.depth_mm is not None:
        yield f"depth {size(pocket.depth_mm)}"
    for point in need.working:
        force = "" if point.force_n is None else f" {show_wanted(point.force_n, lambda n: show_force(n, units))}"
        yield f"at {size(point.length_mm)}{force}"
    yield from _turned(need, units)
    if need.free_length_mm is not None:
        yield f"free length {size(need.free_length_mm)}"
    for name, end in (("end 1", need.end_1), ("end 2", need.end_2)):
        if end is not None:
            yield f"{name} {said(end.piece, show_wanted(end.length_mm, lambda mm: show_length(mm, units)))}"
    if need.hooks is not None:
        yield f"{need.hooks} hooks"
    if need.initial_tension_n is not None:
        yield f"initial tension {show_wanted(need.initial_tension_n, lambda n: show_force(n, units))}"
    if need.pull_to_fit_mm is not None:
        yield f"pulled to {size(Wanted(nominal=need.pull_to_fit_mm))} to go in"
    if need.quantity > 1:
        yield f"{need.quantity} of them"


def _turned(need: Need, units: str) -> Iterator[str]:
    """What a need of a torsion spring has of its own."""
    if need.pocket.width_mm is not None:
        yield f"width {show_wanted(need.pocket.width_mm, lambda mm: show_diameter(mm, units))}"
    for point in need.turned:
        torque = point.torque_n_mm
        wanted = "" if torque is None else f" {show_wanted(torque, lambda n_mm: show_torque(n_mm, units))}"
        yield f"wound up by {show_wanted(point.angle_deg, show_angle)}{wanted}"
    for name, leg in (("leg 1", need.leg_1), ("leg 2", need.leg_2)):
        if leg is not None:
            shape = f" {leg.shape}" if leg.shape else ""
            yield f"{name} {show_wanted(leg.length_mm, lambda mm: show_length(mm, units))}{shape}"
    if need.free_angle_deg is not None:
        yield f"legs at {show_wanted(need.free_angle_deg, show_angle)} to each other"
    if need.bodies == 2:
        yield "two bodies"
    elif need.kind == "torsion":
        yield f"{need.hand}-hand" if need.hand else "hand not said"


OPTION_HEADERS = ("option", "id", "fits", "score", "chance", "cost", "days", "hours")
FIT_HEADERS = ("figure", "wanted", "got", "tolerance", "tolerances off")


def _options(verdict: Verdict) -> Iterator[str]:
    serving, excluded = serving_options(verdict), excluded_options(verdict)
    if serving:
        yield from heading("Options" if verdict.chosen is None else "Options, the chosen one first")
        yield from table(OPTION_HEADERS, [option_row(option) for option in serving[:OPTIONS_SHOWN]])
        yield from bullets(f"{option.id or option.option}: {option.how}" for option in serving[:OPTIONS_SHOWN])
        if len(serving) > OPTIONS_SHOWN:
            yield f"  ... and {len(serving) - OPTIONS_SHOWN} more that fit less well"
    if excluded:
        yield from heading(excluded_heading(verdict))
        yield from bullets(f"{option.option} {option.id}: {why}" for option, why in excluded[:EXCLUDED_SHOWN])
    if verdict.wires_refused:
        yield from heading("Wire that does not serve")
        yield from bullets(refused_wires(verdict))


def serving_options(verdict: Verdict) -> list[Option]:
    """The options that serve, the chosen one first."""
    serving = [option for option in verdict.options if option.fits != "no"]
    return sorted(serving, key=lambda option: option is not verdict.chosen)


def excluded_options(verdict: Verdict) -> list[tuple[Option, str]]:
    """The options that do not serve, the nearest first, each with what is against it."""
    judged = [(option, option.fit) for option in verdict.options if option.fits == "no" and option.fit is not None]
    judged.sort(key=lambda each: rank(each[1]))
    return [(option, _against(option, verdict.bench.units)) for option, _ in judged]


def excluded_heading(verdict: Verdict) -> str:
    """How many were excluded."""
    further = f" and {verdict.further_off} springs further off" if verdict.further_off else ""
    return f"Excluded ({len(excluded_options(verdict))}{further}), the nearest"


def refused_wires(verdict: Verdict) -> list[str]:
    """Why wire does not serve, said once for all that share the reason."""
    by_reason: dict[str, list[str]] = {}
    for wire, refusal in verdict.wires_refused:
        by_reason.setdefault(refusal.why, []).append(wire)
    return [f"{', '.join(wires)}: {why}" for why, wires in by_reason.items()]


def option_row(option: Option) -> tuple[str, ...]:
    """The row of an option; what is not known is a question mark."""
    unknown = "?"
    return (
        option.option,
        option.id or "-",
        option.fits,
        "-" if option.fit is None or option.fit.score is None else str(option.fit.score),
        OPEN if option.unsettled else f"{option.chance:.2f}",
        unknown if option.cost is None else show_money(option.cost),
        unknown if option.days is None else f"{option.days:g}",
        unknown if option.hours is None else f"{option.hours:.1f}",
    )


def _against(option: Option, units: str) -> str:
    if option.fit is None:
        return option.how
    hard = [limit.why for limit in option.fit.limits if limit.hard and not limit.holds]
    far = [
        f"{figure_name(row, units)} is {shower(row.unit, units)(row.got)}"
        for row in option.fit.deviations
        if row.deviation_over_tolerance > 2.0
    ]
    return "; ".join((*hard, *far))


def _deviation_row(row: Deviation, units: str) -> tuple[str, ...]:
    show = shower(row.unit, units)
    return (
        figure_name(row, units),
        show_wanted(row.wanted, show),
        show(row.got),
        f"± {show(row.tolerance)}",
        f"{row.deviation_over_tolerance:.2f}",
    )


def fit_rows(verdict: Verdict, fit: Fit) -> list[tuple[str, ...]]:
    """Each wanted figure beside what an option has."""
    return [_deviation_row(row, verdict.bench.units) for row in fit.deviations]


def fit_heading(chosen: Option) -> str:
    """What stands above them."""
    return "How it fits" if chosen.id is None else f"How {chosen.id} fits"


def _fit(verdict: Verdict, chosen: Option, fit: Fit) -> Iterator[str]:
    yield from heading(fit_heading(chosen))
    if rows := fit_rows(verdict, fit):
        yield from table(FIT_HEADERS, rows)
    yield from bullets((f"{limit.limit}: {limit.why}" for limit in fit.broken), "!")
    yield from bullets(f"{limit.limit}: {limit.why}" for limit in fit.limits if limit.holds)
