"""The JSON documents of design section 9, rendered from the same values as the text."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import asdict
from typing import TYPE_CHECKING

from sourcing.adapt.rehook import Rehooked, rehook_steps
from sourcing.files.findings import Finding
from sourcing.fit.model import Deviation, Limit
from sourcing.need.model import Need, WantedEnd, WantedLeg
from sourcing.quantities import Money, Wanted
from sourcing.springs.describe import describe
from sourcing.verdict.options import Option
from sourcing.verdict.verdict import Verdict

if TYPE_CHECKING:
    from sourcing.figures.working import Working

Document = dict[str, object]


def mistakes_document(findings: Iterable[Finding]) -> Document:
    """Every mistake with its place."""
    return {
        "mistakes": [
            {
                "file": finding.place.file,
                "line": finding.place.line,
                "column": finding.place.column,
                "found": finding.found,
                "expected": finding.expected,
                "suggestions": list(finding.suggestions),
            }
            for finding in findings
        ]
    }


def source_document(
    verdicts: Sequence[Verdict], workings: Iterable[Sequence[Working] | None] | None = None
) -> Document:
    """One verdict as it stands; several as jobs, with the shopping list that a later version fills.

    `workings` are those of each verdict, None where they were not asked for.
    """
    shown = [None] * len(verdicts) if workings is None else workings
    documents = [
        {**verdict_document(verdict), **workings_key(worked)} for verdict, worked in zip(verdicts, shown, strict=True)
    ]
    return documents[0] if len(documents) == 1 else {"jobs": documents, "shopping": None}


def workings_key(shown: Sequence[Working] | None) -> Document:
    """The key `workings` for a document; nothing where they were not asked for."""
    if shown is None:
        return {}
    from sourcing.sheets.workings import workings_document

    return {"workings": workings_document(shown)}


def verdict_document(verdict: Verdict) -> Document:
    """A verdict with its need, options and winding."""
    from sourcing.sheets.winding_data import plan_document

    chosen = verdict.chosen
    plan = verdict.plan
    return {
        "need": need_document(verdict.need),
        "verdict": {
            "option": verdict.option,
            "id": None if chosen is None else chosen.id,
            "sentence": verdict.sentence,
            "because": [asdict(because) for because in verdict.because],
            "would_change": list(verdict.would_change),
        },
        "options": [option_document(option) for option in verdict.options],
        "winding": None if plan is None else plan_document(plan),
        "cautions": list(verdict.cautions),
        "notes": list(verdict.notes),
        "further_off": verdict.further_off,
        "wires_refused": [{"wire": wire, "rule": why.rule, "why": why.why} for wire, why in verdict.wires_refused],
    }


def wanted_value(wanted: Wanted | None) -> object:
    """A bare number for a nominal without a tolerance; else what is known of the figure, by name."""
    if wanted is None:
        return None
    if wanted.nominal is not None:
        return wanted.nominal
    return {"low": wanted.low, "high": wanted.high}


def _bounded(name: str, wanted: Wanted | None) -> Document:
    """A wanted figure under its name, with `_low` and `_high` where it has bounds."""
    if wanted is None:
        return {name: None}
    bounds: Document = {}
    if wanted.minus is not None or wanted.nominal is None:
        bounds = {f"{name}_low": wanted.smallest, f"{name}_high": wanted.largest}
    return {name: wanted.nominal, **bounds}


def need_document(need: Need) -> Document:
    """The need as it was understood."""
    return {
        "job": need.job,
        "kind": need.kind,
        "what": need.what,
        "duty": need.duty,
        "pocket": _pocket_document(need),
        **_DOCUMENTS.get(need.kind, _pressed_document)(need),
        "cycles": need.cycles,
        "surroundings": list(need.surroundings),
        "temperature_c": need.temperature_c,
        "quantity": need.quantity,
        "needed_within_days": need.needed_within_days,
        "material": None if need.material is None else need.material.name,
        **_bounded("wire_diameter_mm", need.wire_diameter_mm),
    }


def _pressed_document(need: Need) -> Document:
    """What a need of a compression spring has of its own."""
    return {
        "working": [
            {**_bounded("length_mm", point.length_mm), **_bounded("force_n", point.force_n)} for point in need.working
        ],
        **_bounded("free_length_mm", need.free_length_mm),
        "ends": need.ends,
        "end_1": _end_document(need.end_1),
        "end_2": _end_document(need.end_2),
    }


def _end_document(end: WantedEnd | None) -> Document | None:
    if end is None:
        return None
    return {"shape": end.shape, **_bounded("length_mm", end.length_mm), "angle_deg": end.angle_deg}


def _turned_document(need: Need) -> Document:
    """What a need of a torsion spring has of its own."""
    return {
        "working": [
            {**_bounded("angle_deg", point.angle_deg), **_bounded("torque_n_mm", point.torque_n_mm)}
            for point in need.turned
        ],
        "hand": need.hand,
        "leg_1": _leg_document(need.leg_1),
        "leg_2": _leg_document(need.leg_2),
        **_bounded("free_angle_deg", need.free_angle_deg),
        "bodies": need.bodies,
    }


def _leg_document(leg: WantedLeg | None) -> Document | None:
    return None if leg is None else {**_bounded("length_mm", leg.length_mm), "shape": leg.shape}


def _pulled_document(need: Need) -> Document:
    """What a need of an extension spring has of its own."""
    tension = _bounded("initial_tension_n", need.initial_tension_n)
    return {**_pressed_document(need), "hooks": need.hooks, **tension, "pull_to_fit_mm": need.pull_to_fit_mm}


_DOCUMENTS: Mapping[str, Callable[[Need], Document]] = {"extension": _pulled_document, "torsion": _turned_document}
"""What a need of a kind has of its own; of any other, `_pressed_document`."""


def _pocket_document(need: Need) -> Document:
    """The pocket; with its ends, null where nothing is known of them, where the spring is a cone."""
    pocket = need.pocket
    if need.kind == "torsion":
        return {
            **_bounded("rod_mm", pocket.rod_mm),
            **_bounded("bore_mm", pocket.bore_mm),
            **_bounded("width_mm", pocket.width_mm),
        }
    ends = {"large_end": pocket.large_end, "small_end": pocket.small_end} if need.kind == "conical" else {}
    return {
        **_bounded("bore_mm", pocket.bore_mm),
        **_bounded("rod_mm", pocket.rod_mm),
        **_bounded("depth_mm", pocket.depth_mm),
        **{
            name: None if end is None else {**_bounded("bore_mm", end.bore_mm), **_bounded("rod_mm", end.rod_mm)}
            for name, end in ends.items()
        },
    }


def money_document(money: Money | None, currency: str) -> Document:
    """An amount with its currency; the amount is null where it is not known."""
    return {
        "amount": None if money is None else round(money.amount, 2),
        "currency": currency if money is None else money.currency,
    }


def limit_document(limit: Limit) -> Document:
    """One limit."""
    return {"limit": limit.limit, "holds": limit.holds, "hard": limit.hard, "why": limit.why}


def deviation_document(row: Deviation) -> Document:
    """One row of the table that made the score."""
    return {
        "figure": row.figure if row.at is None else f"{row.figure} at {row.at:g} {row.at_unit}",
        "unit": row.unit,
        "wanted": wanted_value(row.wanted),
        "got": row.got,
        "tolerance": row.tolerance,
        "deviation_over_tolerance": row.deviation_over_tolerance,
    }


def adapted_document(made: Rehooked) -> Document:
    """What a spring is made into, and how."""
    figures: Document = asdict(describe(made.spring))
    del figures["at"]
    return {
        "coils_taken": made.coils_taken,
        "loops_bent": made.loops,
        "minutes": made.minutes,
        "becomes": figures,
        "steps": list(rehook_steps(made, "mm")),
    }


def option_document(option: Option) -> Document:
    """One option with its limits and deviations."""
    fit = option.fit
    return {
        "option": option.option,
        "id": option.id,
        "fits": option.fits,
        "score": None if fit is None else fit.score,
        "chance": option.chance,
        "unsettled": option.unsettled,
        "cost": money_document(option.cost, option.currency),
        "days": option.days,
        "hours": option.hours,
        "how": option.how,
        "adapted": None if option.adapted is None else adapted_document(option.adapted),
        "limits": [] if fit is None else [limit_document(limit) for limit in fit.limits],
        "deviations": [] if fit is None else [deviation_document(row) for row in fit.deviations],
    }
