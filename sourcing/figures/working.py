"""One figure worked out before the reader's eyes: the formula, its numbers put in, its source, and whether it holds."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from sourcing.figures.formula import Formula, formula_of
from sourcing.figures.notation import evaluate, with_numbers


@dataclass(frozen=True, slots=True)
class Validity:
    """A range of a formula with the value at hand; `inside` says whether it lies in it."""

    says: str
    value: float
    inside: bool


@dataclass(frozen=True, slots=True)
class Working:
    """A figure with its formula and the numbers that went into it, by symbol. `numbers` is None for one not closed."""

    figure: str
    formula: Formula
    given: Mapping[str, float]
    value: float
    numbers: str | None
    valid: tuple[Validity, ...]


def work(function: Callable[..., float | None], *values: float, figure: str | None = None) -> Working:
    """Work a figure out with the function that has the formula. `figure` names it where the function's name does not.

    Raises KeyError where the function has no formula, ValueError where it gives no figure.
    """
    record = formula_of(function)
    by_parameter = dict(zip(_parameters(function), values, strict=False))
    given = {symbol: by_parameter[name] for symbol, name in record.where.items() if name in by_parameter}
    value = function(*values)
    if value is None:
        raise ValueError(f"{function.__name__} gives no figure for {given}")
    numbers = None
    if record.expression is not None:
        numbers = with_numbers(record.expression, {symbol: show_number(each) for symbol, each in given.items()})
    valid = tuple(_validity(given, holds.expression, str(holds), holds.low, holds.high) for holds in record.holds)
    return Working(figure or record.name, record, given, value, numbers, valid)


def show_number(value: float) -> str:
    """A number to five figures, as one reads it beside a formula.

    >>> show_number(81500.0), show_number(0.98259), show_number(1.0)
    ('81500', '0.98259', '1')
    """
    return f"{value:.5g}" if abs(value) < 1e5 or not math.isfinite(value) else f"{value:.0f}"


def _parameters(function: Callable[..., float | None]) -> tuple[str, ...]:
    code = function.__code__  # type: ignore[attr-defined]
    return code.co_varnames[: code.co_argcount]


def _validity(
    given: Mapping[str, float], expression: str, says: str, low: float | None, high: float | None
) -> Validity:
    values = dict(given)
    if "w" not in values and "D" in values and "d" in values:
        values["w"] = values["D"] / values["d"]
    value = evaluate(expression, values)
    hair = 1e-6 * abs(value)
    return Validity(says, value, (low is None or low <= value + hair) and (high is None or value <= high + hair))
