"""The rate of a stock spring: as its seller states it, and as its dimensions give it."""

from __future__ import annotations

from sourcing.springs.model import Spring
from sourcing.springs.pressed import rate_n_per_mm
from sourcing.stock.model import StockSpring

RATES_APART = 0.15
"""Further apart than this, the stated rate and that of the dimensions cannot both be right."""


def worked_out_n_per_mm(spring: Spring) -> float:
    """The rate that the dimensions give; a cone's initial one."""
    return rate_n_per_mm(spring)


def believed_n_per_mm(stock: StockSpring) -> float:
    """The stated rate, or that of the dimensions where none is stated."""
    return stock.stated_rate_n_per_mm or worked_out_n_per_mm(stock.spring)


def disagree(stated_n_per_mm: float | None, spring: Spring) -> bool:
    """Whether a rate is stated and is further than 15 % from the one that the dimensions give."""
    return stated_n_per_mm is not None and abs(stated_n_per_mm / worked_out_n_per_mm(spring) - 1.0) > RATES_APART
