"""A coil in hand: how it is judged, whether it is kept as it is, and between which diameters one is.

The list of what to accept and the answer to a coil that came out otherwise both ask here.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import ceil, floor

from sourcing.fit.judge import grade, judge, verdict
from sourcing.fit.limits.any_kind import INDEX
from sourcing.fit.model import Fit, Spread
from sourcing.need.model import Need
from sourcing.quantities.kinds import MM_PER_INCH
from sourcing.springs.model import Spring
from sourcing.stock.model import Bench
from sourcing.winding.heat import making

REACH = 0.15
"""No coil is accepted that is further off its diameter or its length than this share of it (assumed)."""

HALVINGS = 9
"""The edge of what is kept is then known to within a caliper's step, for coils of up to 30 mm."""

CALIPER_STEPS_MM = {"mm": 0.01, "inch": 0.001 * MM_PER_INCH}
"""To what a diameter is read, by the bench's units."""

RULE_STEPS_MM = {"mm": 0.1, "inch": 0.01 * MM_PER_INCH}
"""To what a length is shown, by the bench's units."""

_HAIR = 1e-6


def judged(spring: Spring, need: Need, bench: Bench, spread: Spread) -> Fit:
    """A coil against the need, its index apart: that says how well a coil can be wound, and this one is."""
    fit = judge(spring, need, bench, spread)
    limits = tuple(each for each in fit.limits if each.limit != INDEX)
    return replace(fit, fits=verdict(limits, fit.deviations), limits=limits)


def finished(spring: Spring, need: Need, bench: Bench) -> Fit:
    """A spring that measures just so against the need, finished as this bench can."""
    return judged(spring, need, bench, Spread(making=making(spring.material, bench)))


def keeps(fit: Fit, planned: Fit) -> bool:
    """Whether a coil is kept as it is: it serves as its plan does, no limit broken and no figure graded worse."""
    broken = {each.limit for each in planned.limits if not each.holds}
    pairs = zip(fit.deviations, planned.deviations, strict=True)
    return (
        fit.fits != "no"
        and all(each.holds or each.limit in broken for each in fit.limits)
        and all(grade(row) <= grade(meant) for row, meant in pairs)
    )


def kept_outside_mm(spring: Spring, kept: Callable[[float], bool], units: str) -> tuple[float, float]:
    """The least and the greatest outside diameter, as a caliper reads it, of a mean diameter that is kept."""
    low_mm, high_mm = (mean_mm + spring.wire_diameter_mm for mean_mm in kept_between_mm(spring.mean_diameter_mm, kept))
    return as_read_mm(low_mm, high_mm, CALIPER_STEPS_MM[units])


def kept_between_mm(planned_mm: float, kept: Callable[[float], bool]) -> tuple[float, float]:
    """The least and the greatest diameter or length that is kept, beside the one that was planned.

    >>> low, high = kept_between_mm(10.0, lambda mm: 9.5 < mm < 12.0)
    >>> round(low, 1), high
    (9.5, 11.5)
    """

    def at(share: float) -> float:
        return planned_mm * (1.0 + REACH * share)

    return at(-most_kept(lambda share: kept(at(-share)))), at(most_kept(lambda share: kept(at(share))))


def most_kept(kept: Callable[[float], bool]) -> float:
    """The greatest share, from nothing to all of a way, at which a coil is kept still; it is at nothing."""
    if kept(1.0):
        return 1.0
    good, bad = 0.0, 1.0
    for _ in range(HALVINGS):
        middle = (good + bad) / 2.0
        good, bad = (middle, bad) if kept(middle) else (good, middle)
    return good


def as_read_mm(low_mm: float, high_mm: float, step_mm: float) -> tuple[float, float]:
    """Bounds on the steps of what reads them, so that what is read at one is within them; as they are where none is.

    >>> as_read_mm(9.504, 10.499, 0.01), as_read_mm(9.504, 9.506, 0.01)
    ((9.51, 10.49), (9.504, 9.506))
    """
    low, high = ceil(low_mm / step_mm - _HAIR), floor(high_mm / step_mm + _HAIR)
    if low > high:
        return low_mm, high_mm
    return round(low * step_mm, 6), round(high * step_mm, 6)
