"""Tolerance scoring: deviations over their tolerances, made into one whole number from 0 to 100."""

from __future__ import annotations

from collections.abc import Iterable
from math import prod

from sourcing.figures import formula
from sourcing.fit.model import Deviation, WantedFigure
from sourcing.quantities import Wanted
from sourcing.stock.model import HouseTolerances

LAST_DIGITS = 1e-9
"""A relative distance of less than this is what arithmetic leaves, not a deviation."""

LARGEST_SHOWN = 99.0
"""A deviation is capped here, so that a tolerance of nothing gives a number."""


def allowed(wanted: Wanted, house: float) -> tuple[float | None, float | None]:
    """The least and the greatest value within one tolerance (None: open). `house` serves where the need gives none.

    >>> allowed(Wanted(nominal=10.0, minus=1.0, plus=2.0), house=5.0)
    (9.0, 12.0)
    >>> allowed(Wanted(low=20.0), house=1.0)
    (19.0, None)
    """
    if wanted.nominal is not None:
        minus = house if wanted.minus is None else wanted.minus
        plus = house if wanted.plus is None else wanted.plus
        return wanted.nominal - minus, wanted.nominal + plus
    return (
        None if wanted.low is None else wanted.low - house,
        None if wanted.high is None else wanted.high + house,
    )


def deviation_over_tolerance(wanted: Wanted, got: float, house: float) -> tuple[float, float]:
    """How many tolerances `got` is off, and the tolerance that counted.

    A nominal counts from itself, each side with its own tolerance; inside a range or on a bound's right side the
    deviation is 0, outside it counts from the bound, over the house tolerance.

    >>> deviation_over_tolerance(Wanted(nominal=9.0, minus=1.5, plus=1.5), 10.5, house=2.0)
    (1.0, 1.5)
    >>> deviation_over_tolerance(Wanted(low=20.0, high=24.0), 25.0, house=2.0)
    (0.5, 2.0)
    """
    if wanted.nominal is not None:
        side = wanted.plus if got > wanted.nominal else wanted.minus
        tolerance = house if side is None else side
        distance = abs(got - wanted.nominal)
    else:
        tolerance = house
        below = 0.0 if wanted.low is None else wanted.low - got
        above = 0.0 if wanted.high is None else got - wanted.high
        distance = max(below, above, 0.0)
    if distance <= LAST_DIGITS * abs(got):
        return 0.0, tolerance
    return (min(distance / tolerance, LARGEST_SHOWN) if tolerance > 0.0 else LARGEST_SHOWN), tolerance


@formula("x = abs(y − y₀) / t", where={"y": "got", "y₀": "wanted", "t": "tolerance"}, source="by definition")
def off_by(got: float, wanted: float, tolerance: float) -> float:
    """How many tolerances a figure is off."""
    return abs(got - wanted) / tolerance


@formula("x = max(0, y₀ − y) / t", where={"y": "got", "y₀": "least", "t": "tolerance"}, source="by definition")
def below_by(got: float, least: float, tolerance: float) -> float:
    """How many tolerances a figure is below the least that is wanted."""
    return max(0.0, least - got) / tolerance


@formula("x = max(0, y − y₀) / t", where={"y": "got", "y₀": "greatest", "t": "tolerance"}, source="by definition")
def above_by(got: float, greatest: float, tolerance: float) -> float:
    """How many tolerances a figure is above the greatest that is wanted."""
    return max(0.0, got - greatest) / tolerance


@formula(
    "δ = max(0, 1 − x / 2)",
    where={"x": "deviation"},
    source="one-sided linear desirability, Derringer and Suich, Journal of Quality Technology 12 (1980) 214",
)
def desirability(deviation: float) -> float:
    """1 where nothing deviates, 0.5 at one tolerance, 0 at two and beyond, linear between.

    >>> desirability(0.5)
    0.75
    """
    return max(0.0, 1.0 - deviation / 2.0)


def score(deviations: Iterable[Deviation]) -> int | None:
    """The equally weighted geometric mean of the desirabilities (Derringer and Suich, 1980), 0..100.

    None where there is nothing to score.
    """
    parts = [desirability(each.deviation_over_tolerance) for each in deviations]
    return round(100.0 * prod(parts) ** (1.0 / len(parts))) if parts else None


def force_house_tolerance_n(wanted: Wanted, house: HouseTolerances) -> float:
    """The house tolerance of a force in newtons: a share of the nominal, or of the bound that is given."""
    base = wanted.nominal if wanted.nominal is not None else wanted.high if wanted.high is not None else wanted.low
    return house.force * (base or 0.0)


def torque_house_tolerance_n_mm(wanted: Wanted, house: HouseTolerances) -> float:
    """The house tolerance of a torque in N·mm, the same share as of a force."""
    return force_house_tolerance_n(wanted, house)


def deviations(wanted: Iterable[WantedFigure]) -> tuple[Deviation, ...]:
    """Every wanted figure against what the spring gives, in the same order."""
    return tuple(_deviation(each) for each in wanted)


def _deviation(each: WantedFigure) -> Deviation:
    ratio, tolerance = deviation_over_tolerance(each.wanted, each.got, each.house)
    return Deviation(each.figure, each.at, each.at_unit, each.unit, each.wanted, each.got, tolerance, ratio)
