"""The workings of a fit: each deviation with the figure that was wanted and where it stands, the score, the chance."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.figures.working import Working, given, show_number, work
from sourcing.files.findings import Place
from sourcing.fit.model import Deviation, Fit
from sourcing.fit.score import above_by, below_by, desirability, off_by
from sourcing.need.model import Need

INTEGRATED = "derived: the spread of diameter, free length and rate, integrated over what need and pocket allow"
SCORED = "Derringer and Suich, Journal of Quality Technology 12 (1980) 214"


def workings(fit: Fit, need: Need) -> Iterator[Working]:
    """Every figure of a fit, in the order in which the sheet has them."""
    parts: list[float] = []
    for row in fit.deviations:
        where = f"of {row.figure}" + ("" if row.at is None else f" at {row.at:g} {row.at_unit}")
        yield from (replace(each, unit=row.unit).at(where) for each in _wanted(row, need))
        deviation = _deviation(row)
        yield deviation.at(where)
        parts.append(desirability(deviation.value))
        yield work(desirability, deviation.value).at(where)
    if fit.score is not None:
        numbers = f"100 ({' · '.join(map(show_number, parts))})^(1/{len(parts)}), rounded"
        formula = "S = 100 (δ₁ δ₂ ..)^(1/k), rounded, over the k desirabilities"
        yield Working("score", fit.score, "", SCORED, formula=formula, numbers=numbers)
    yield given("chance", fit.chance, INTEGRATED)


def _wanted(row: Deviation, need: Need) -> Iterator[Working]:
    """What the need wants, where it stands, and the tolerance that counts."""
    place = _place(row, need)
    source = "the need" if place is None else f"{place.file}:{place.line}:{place.column}"
    bounds = (("wanted", row.wanted.nominal), ("wanted_low", row.wanted.low), ("wanted_high", row.wanted.high))
    for name, value in bounds:
        if value is not None and (name == "wanted" or row.wanted.nominal is None):
            yield given(name, value, source)
    own = row.tolerance in (row.wanted.minus, row.wanted.plus)
    yield given("tolerance", row.tolerance, source if own else "the bench's, where a need gives none: bench.yaml")


def _place(row: Deviation, need: Need) -> Place | None:
    key = row.figure.replace(" ", "_")
    if row.at is None:
        return need.places.get(key)
    points = need.turned or need.working
    spots = [getattr(point, "at_mm", None) or getattr(point, "at_deg", None) for point in points]
    return need.places.get(f"working.{spots.index(row.at)}.{key}") if row.at in spots else None


def _deviation(row: Deviation) -> Working:
    """By the formula that counts here; the figure itself where it is capped, or within the last digits."""
    wanted, got, tolerance = row.wanted, row.got, row.tolerance
    name = "deviation_over_tolerance"
    if tolerance > 0.0:
        if wanted.nominal is not None:
            worked = work(off_by, got, wanted.nominal, tolerance, figure=name)
        elif wanted.low is not None and got < wanted.low:
            worked = work(below_by, got, wanted.low, tolerance, figure=name)
        elif wanted.high is not None:
            worked = work(above_by, got, wanted.high, tolerance, figure=name)
        else:
            return given(name, row.deviation_over_tolerance, "on the right side of what is wanted")
        if abs(worked.value - row.deviation_over_tolerance) < 1e-9:
            return worked
    return given(name, row.deviation_over_tolerance, "capped at 99, and nothing within the last digits")
