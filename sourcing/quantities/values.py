"""Figures as people write them ("1/32 in", "9 N ± 15 %", "MWG 20") made into numbers, and numbers made into text.

Inside the program every number is in mm, N, N/mm, MPa, degC, g or days; this room is the only one that knows other
units. It knows nothing of files: a figure that cannot be read raises `QuantityError`, and the reader adds the place.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Wanted:
    """A figure that is asked for: one value with or without a tolerance, a range, or a bound.

    Either `nominal` is set (`minus` and `plus` are then both set or both None), or at least one of `low`, `high` is.
    All in the unit of the figure; `minus` and `plus` are distances, never negative.
    """

    nominal: float | None = None
    minus: float | None = None
    plus: float | None = None
    low: float | None = None
    high: float | None = None

    @property
    def smallest(self) -> float | None:
        """The least value allowed or possible: nominal less its tolerance, or the lower bound; None if open.

        >>> Wanted(nominal=31.0, minus=2.0, plus=2.0).smallest
        29.0
        """
        return self.low if self.nominal is None else self.nominal - (self.minus or 0.0)

    @property
    def largest(self) -> float | None:
        """The greatest value allowed or possible: nominal plus its tolerance, or the upper bound; None if open."""
        return self.high if self.nominal is None else self.nominal + (self.plus or 0.0)


@dataclass(frozen=True, slots=True)
class Money:
    """An amount in a currency named by three letters."""

    amount: float
    currency: str
