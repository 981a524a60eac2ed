"""The order of candidates, best first."""

from __future__ import annotations

from sourcing.fit.model import Fit

_ORDER = {"yes": 0, "near": 1, "no": 2}


def rank(fit: Fit) -> tuple[int, int, int, float, float]:
    """A sort key, best first: fits, then hard limits broken, then score, then the sum of deviations, then chance.

    Chance and score are compared in whole per cents, so that a hair of chance never outweighs a better score.
    """
    broken = sum(1 for limit in fit.limits if limit.hard and not limit.holds)
    off = sum(row.deviation_over_tolerance for row in fit.deviations)
    return (_ORDER[fit.fits], broken, -(100 if fit.score is None else fit.score), off, -round(fit.chance, 2))
