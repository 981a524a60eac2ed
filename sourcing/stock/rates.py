"""The rate of a stock spring, in the unit of its kind: as its seller states it, and as its dimensions give it."""

from __future__ import annotations

from sourcing.quantities import show_angular_rate, show_rate
from sourcing.springs.model import Spring, TorsionSpring
from sourcing.springs.rates import rate_of
from sourcing.stock.model import StockSpring

RATES_APART = 0.15
"""Further apart than this, the stated rate and that of the dimensions cannot both be right."""


def believed_rate(stock: StockSpring) -> float:
    """The stated rate, or that of the dimensions where none is stated."""
    return stock.stated_rate or rate_of(stock.spring)


def disagree(stated: float | None, spring: Spring) -> bool:
    """Whether a rate is stated and is further than 15 % from the one that the dimensions give."""
    return stated is not None and abs(stated / rate_of(spring) - 1.0) > RATES_APART


def show_rate_of(spring: Spring, rate: float, units: str = "mm") -> str:
    """A rate of a spring for people, in the unit of its kind."""
    return show_angular_rate(rate, units) if isinstance(spring, TorsionSpring) else show_rate(rate, units)
