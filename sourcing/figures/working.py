"""One figure before the reader's eyes: the formula, its numbers put in, its source, and whether it holds.

A figure that nothing was worked out for (it stands in a file or in a table) has a working too: its source alone.
"""

from __future__ import annotations

import inspect
import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from decimal import Decimal
from typing import Any, cast

from sourcing.figures import Holds
from sourcing.figures.notation import evaluate, piece_that_holds, symbols_in, with_numbers
from sourcing.figures.record import Formula, formula_of, parameters_of
from sourcing.figures.symbols import unit_of, words_of_name


@dataclass(frozen=True, slots=True)
class Validity:
    """A range of a formula with the value at hand; `inside` says whether it lies in it."""

    says: str
    value: float
    inside: bool


@dataclass(frozen=True, slots=True)
class Working:
    """A figure by its name (with the unit at its end), and where it comes from.

    `where` opens with a blank (" at 24 mm") or is empty. `formula` and `numbers` are None for a figure that is not
    worked out. `meanings` has each symbol of the formula in words.
    """

    figure: str
    value: float
    unit: str
    source: str
    from_memory: bool = False
    formula: str | None = None
    numbers: str | None = None
    valid: tuple[Validity, ...] = ()
    meanings: Mapping[str, str] = field(default_factory=dict[str, str])
    where: str = ""

    @property
    def name(self) -> str:
        """The figure in words, with where it holds."""
        return words_of_name(self.figure) + self.where

    @property
    def inside(self) -> bool:
        """Whether every range of the formula is kept."""
        return all(each.inside for each in self.valid)

    def at(self, where: str) -> Working:
        """The same figure at a length, of a coil, ..."""
        return replace(self, where=f" {where}")


def given(figure: str, value: float, source: str, from_memory: bool = False) -> Working:
    """A figure that stands somewhere, in a file or in a table."""
    return Working(figure, value, unit_of(figure), source, from_memory)


def work(function: Callable[..., float | None], *values: object, figure: str | None = None, **named: object) -> Working:
    """Work a figure out with the function that has the formula. `figure` names it where the function's name does not.

    Raises KeyError where the function has no formula, ValueError where it gives no figure.
    """
    value = function(*values, **named)
    if value is None:
        raise ValueError(f"{function.__name__} gives no figure for {values}")
    record, bound = formula_of(function), inspect.signature(function).bind(*values, **named)
    bound.apply_defaults()
    symbols = symbol_values(record, bound.arguments)
    name = figure or function.__name__.lstrip("_")
    return Working(
        figure=name,
        value=value,
        unit=unit_of(name),
        source=record.source,
        from_memory=record.from_memory,
        formula=record.written,
        numbers=_numbers(record, symbols),
        valid=tuple(_validity(symbols, holds) for holds in record.holds),
        meanings=record.meanings,
    )


def symbol_values(record: Formula, arguments: Mapping[str, object]) -> dict[str, float]:
    """The value of each symbol of a formula, from the arguments of its function by name."""
    values: dict[str, float] = {}
    for symbol, meaning in record.where.items():
        if not isinstance(meaning, str):
            values[symbol] = meaning(**{name: arguments[name] for name in parameters_of(meaning)})
        elif isinstance(found := _followed(meaning, arguments), int | float):
            values[symbol] = found
    return values


def unknown_symbols(record: Formula) -> tuple[str, ...]:
    """The symbols of a formula that mean nothing to its function: a mistake of whoever wrote it."""
    used = [symbol for holds in record.holds for symbol in symbols_in(holds.expression)]
    used += symbols_in(record.says) if record.closed else ()
    known = {**record.where, **({"w": ""} if {"D", "d"} <= record.where.keys() else {})}
    parameters = parameters_of(record.function)
    strange = [s for s, meaning in record.where.items() if not set(_needed(meaning)) <= set(parameters)]
    return tuple(dict.fromkeys([*(symbol for symbol in used if symbol not in known), *strange]))


def show_number(value: float) -> str:
    """A number to five figures, as one reads it beside a formula.

    >>> show_number(81500.0), show_number(0.98259), show_number(1.0), show_number(0.0000123)
    ('81500', '0.98259', '1', '0.0000123')
    """
    if not math.isfinite(value):
        return "infinite"
    return f"{value:.0f}" if abs(value) >= 1e5 else format(Decimal(f"{value:.5g}"), "f")


def _numbers(record: Formula, symbols: Mapping[str, float]) -> str | None:
    """The formula with its numbers put in; of one that is not closed the numbers that went in."""
    shown = {symbol: show_number(value) for symbol, value in symbols.items()}
    if record.closed:
        return with_numbers(piece_that_holds(record.says, symbols), shown)
    return ", ".join(f"{symbol} = {number}" for symbol, number in shown.items()) or None


def _needed(meaning: str | Callable[..., float]) -> tuple[str, ...]:
    return (meaning.partition(".")[0],) if isinstance(meaning, str) else parameters_of(meaning)


def _followed(path: str, arguments: Mapping[str, object]) -> object:
    """The value that a path leads to: a parameter, or an attribute or entry of one."""
    name, *steps = path.split(".")
    value: Any = arguments[name]
    for step in steps:
        value = value[int(step)] if step.isdigit() else getattr(value, step)
    return cast("object", value)


def _validity(symbols: Mapping[str, float], holds: Holds) -> Validity:
    values = dict(symbols)
    if "w" not in values and "D" in values and "d" in values:
        values["w"] = values["D"] / values["d"]
    value = evaluate(holds.expression, values)
    hair = 1e-6 * abs(value)
    above = holds.low is None or holds.low <= value + hair
    return Validity(str(holds), value, above and (holds.high is None or value <= holds.high + hair))
