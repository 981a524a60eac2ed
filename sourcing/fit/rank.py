"""The order of candidates, best first."""

from __future__ import annotations

from sourcing.fit.model import Fit

_ORDER = {"yes": 0, "near": 1, "no": 2}


LIMITS_WEIGH = 10.0
"""A limit overstepped by a tenth counts like a figure one tolerance off, where excluded springs are put in order."""


def rank(fit: Fit) -> tuple[int, int, int, float, float]:
    """A sort key, best first: fits, then hard limits broken, then score, then how far it is off, then chance.

    Chance and score are compared in whole per cents, so that a hair of chance never outweighs a better score.
    """
    broken = [limit for limit in fit.limits if limit.hard and not limit.holds]
    off = sum(row.deviation_over_tolerance for row in fit.deviations)
    off += LIMITS_WEIGH * sum(limit.past for limit in broken)
    return (_ORDER[fit.fits], len(broken), -(100 if fit.score is None else fit.score), off, -round(fit.chance, 2))
