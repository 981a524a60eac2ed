"""One spring judged against one need."""

from __future__ import annotations

from collections.abc import Sequence

from sourcing.fit.cases import case_of
from sourcing.fit.chance import chance
from sourcing.fit.limits import limits
from sourcing.fit.limits.room import BORE, ROD
from sourcing.fit.model import Deviation, Fit, Limit, Spread, Verdict
from sourcing.fit.score import deviations, score
from sourcing.need.model import Need
from sourcing.springs.model import Spring
from sourcing.stock.model import Bench

MENDED_BY_SPREAD = (BORE, ROD)
"""How hard limits begin whose chance is integrated; a broken one of the others leaves no chance."""

ROUNDING = 1e-9
"""A figure that stands exactly on its tolerance is within it, whatever the last digit of the arithmetic says."""


def judge(spring: Spring, need: Need, bench: Bench, spread: Spread, rate: float | None = None) -> Fit:
    """Limits, deviations, score and chance of `spring` in `need`.

    *yes*: every limit holds and every deviation is at most one tolerance; *near*: a deviation up to two tolerances or
    a soft limit broken; *no*: a hard limit broken or a deviation beyond two. `rate` is the rate to believe (a seller's,
    say), in the unit of the spring's kind; None takes the one that the dimensions give.
    """
    case = case_of(spring, need, bench, spread, rate)
    all_limits, rows = limits(case), deviations(case.wanted())
    hard_broken = [limit.limit for limit in all_limits if limit.hard and not limit.holds]
    hopeless = any(not name.startswith(MENDED_BY_SPREAD) for name in hard_broken)
    works = 0.0 if hopeless else chance(case)
    return Fit(verdict(all_limits, rows), score(rows), works, all_limits, rows)


def verdict(limits: Sequence[Limit], rows: Sequence[Deviation]) -> Verdict:
    """What limits and deviations make of a fit."""
    worst = max((grade(row) for row in rows), default=0)
    if worst > 1 or any(limit.hard and not limit.holds for limit in limits):
        return "no"
    return "yes" if worst == 0 and all(limit.holds for limit in limits) else "near"


def grade(row: Deviation) -> int:
    """0 within one tolerance, 1 within two, 2 beyond."""
    return sum(row.deviation_over_tolerance > tolerances + ROUNDING for tolerances in (1.0, 2.0))
