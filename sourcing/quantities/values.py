"""The values this room hands out, and the error it raises. No parsing here."""

from __future__ import annotations

from dataclasses import dataclass, field

LONGEST_ECHO = 60


@dataclass(frozen=True, slots=True)
class Wanted:
    """A figure that is asked for: one value with or without a tolerance, a range, or a bound.

    Either `nominal` is set (`minus` and `plus` are then both set or both None), or at least one of `low`, `high` is.
    All in the unit of the figure; `minus` and `plus` are distances, never negative. `percent` remembers that the
    tolerance was written as a percentage, so that it is shown so; it has no part in comparisons.
    """

    nominal: float | None = None
    minus: float | None = None
    plus: float | None = None
    low: float | None = None
    high: float | None = None
    percent: bool = field(default=False, compare=False)

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


class QuantityError(Exception):
    """A text that is not the figure it should be.

    `found` says what stands there and can stand alone ("5 N is a force"); `expected` is a noun phrase that can follow
    the word "expected" ("a length (mm, cm, m, in, ft, thou)"); `suggestions` are whole texts that would be read,
    nearest first.
    """

    def __init__(self, found: str, expected: str, suggestions: tuple[str, ...] = ()) -> None:
        super().__init__(f"{found}; expected {expected}")
        self.found = found
        self.expected = expected
        self.suggestions = suggestions


def echo(text: str) -> str:
    """The text as a message repeats it, cut to 60 characters.

    >>> echo("9" * 100) == "9" * 57 + "..."
    True
    """
    return text if len(text) <= LONGEST_ECHO else text[: LONGEST_ECHO - 3] + "..."


def quoted(text: str) -> str:
    """The text as a message repeats it where it is no figure, in quotation marks."""
    return f"“{echo(text)}”"


def above_zero(value: float, text: str, what: str) -> float:
    """The value, if it is above zero; else `QuantityError` with the text it was read from.

    `what` is a noun phrase with its article.

    >>> above_zero(0.9, "0.9 mm", "a wire diameter")
    0.9
    >>> above_zero(0.0, "0 mm", "a wire diameter")
    Traceback (most recent call last):
    sourcing.quantities.values.QuantityError: 0 mm is zero; expected a wire diameter above zero
    """
    if value > 0:
        return value
    raise QuantityError(f"{echo(text)} is {'negative' if value < 0 else 'zero'}", f"{what} above zero")


def at_least_zero(value: float, text: str, what: str) -> float:
    """The value, if it is zero or above; else `QuantityError` with the text it was read from."""
    if value >= 0:
        return value
    raise QuantityError(f"{echo(text)} is negative", f"{what} of zero or above")
