"""Both ends of a cone as they came out, whether the wire alone puts them off so, and what the list takes of each."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import permutations

from sourcing.stock.model import Trial
from sourcing.winding.conical.room import End
from sourcing.winding.heat import change_of_diameter
from sourcing.winding.saving.coil import Coil, refuse_senseless
from sourcing.winding.trials import Knowledge

ENDS: tuple[End, End] = ("large", "small")

ANY_WIRE_SD = 0.5
"""Of a flow stress of which nothing is believed before: one end alone then tells it, and the other must agree."""

_HAIR_MM = 1e-6


@dataclass(frozen=True, slots=True)
class CameOut:
    """Both ends as they came out: outside as measured, and the mean diameter in the end; `told` were measured.

    `agree`: one wire on the mandrel as it is listed puts both ends off so.
    """

    outside_mm: Mapping[End, float]
    mean_mm: Mapping[End, float]
    told: tuple[End, ...]
    known: Knowledge
    trial: Trial
    agree: bool


def ends_of(coil: Coil, measured_mm: Mapping[End, float]) -> CameOut:
    """Both ends, one that was not measured by what the other taught of the wire."""
    profile = coil.plan.mandrel.profile
    on_mm: Mapping[End, float] = {"large": profile[-1].diameter_mm, "small": profile[0].diameter_mm}
    for end, outside_mm in measured_mm.items():
        refuse_senseless(coil, "outside" if end == "large" else "outside_small", outside_mm, on_mm[end])
    trials: dict[End, Trial] = {end: coil.trial(on_mm[end], outside_mm) for end, outside_mm in measured_mm.items()}
    first = next(iter(trials.values()))
    known = coil.known_then(first)
    agree = all(_agree(coil, one, other) for one, other in permutations(trials.values(), 2))
    outside = dict(measured_mm)
    mean: dict[End, float] = {end: coil.final_mean_mm(mm) for end, mm in measured_mm.items()}
    change, _ = change_of_diameter(coil.wire.material, coil.bench)
    for end in ENDS:
        if end not in outside:
            mean[end] = known.finished_mean_mm(on_mm[end]) * (1.0 + change)
            outside[end] = mean[end] / (1.0 + coil.change_to_come) + coil.wire_mm
    return CameOut(outside, mean, tuple(trials), known, first, agree)


def listed_mm(coil: Coil, end: End) -> tuple[float, float]:
    """Between which diameters the list of what to accept takes an end, outside, as the coil in hand measures."""
    (row,) = [row for row in coil.plan.accept if row.figure == f"outside_diameter_{end}_mm"]
    assert row.low is not None
    assert row.high is not None
    low_mm, high_mm = ((mm - coil.wire_mm) / (1.0 + coil.change_to_come) + coil.wire_mm for mm in (row.low, row.high))
    return low_mm, high_mm


def is_listed(coil: Coil, end: End, outside_mm: float) -> bool:
    """Whether the list takes an end that measures so much outside."""
    low_mm, high_mm = listed_mm(coil, end)
    return low_mm - _HAIR_MM <= outside_mm <= high_mm + _HAIR_MM


def _agree(coil: Coil, one: Trial, other: Trial) -> bool:
    """Whether one end alone, of a wire of which nothing is believed, lets the other be as it is."""
    taught = replace(coil.known_then(), flow_ratio_sd=ANY_WIRE_SD, trend=None).after(one, coil.wire.material)
    return not taught.after(other, coil.wire.material).lessons[-1].surprising
