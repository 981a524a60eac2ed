"""The record of a formula, and how a function gets it: its docstring is filled up from the record."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import FunctionType
from typing import Any, TypeVar, cast

from sourcing.figures.notation import symbols_in
from sourcing.figures.symbols import SYMBOLS, unit_of, words_of_name

Worked = TypeVar("Worked", bound=Callable[..., Any])
_FORMULAS: dict[Callable[..., Any], Formula] = {}


@dataclass(frozen=True, slots=True)
class Holds:
    """Where a formula holds: an expression in its symbols between two bounds, either of which may be open.

    `w` may stand for D/d where a function is given both.
    """

    what: str
    expression: str
    low: float | None = None
    high: float | None = None

    def __str__(self) -> str:
        if self.low is None:
            return f"{self.what} up to {self.high:g}"
        return (
            f"{self.what} of {self.low:g} or more"
            if self.high is None
            else f"{self.what} {self.low:g} to {self.high:g}"
        )


@dataclass(frozen=True, slots=True)
class Formula:
    """One formula of one function. `expression` None: not closed, `says` tells in words what is done.

    `where` gives the parameter of each symbol. `from_memory`: the source is recalled, not checked against its page.
    """

    function: Callable[..., Any]
    symbol: str
    expression: str | None
    says: str
    where: Mapping[str, str]
    holds: tuple[Holds, ...]
    source: str
    from_memory: bool

    @property
    def name(self) -> str:
        """What is worked out, in words."""
        return words_of_name(self.function.__name__)

    @property
    def unit(self) -> str:
        """The unit of what is worked out; empty for a bare number."""
        return unit_of(self.function.__name__)

    @property
    def written(self) -> str:
        """The formula as it is written: symbol = expression."""
        return f"{self.symbol} = {self.says}"

    @property
    def cited(self) -> str:
        """The source, with the word 'memory' where it is recalled."""
        return self.source + (" (from memory)" if self.from_memory else "")


def formula(
    written: str,
    *,
    source: str,
    holds: tuple[Holds, ...] = (),
    where: Mapping[str, str] | None = None,
    closed: bool = True,
    from_memory: bool = False,
) -> Callable[[Worked], Worked]:
    """Give a function its formula, "R = G d⁴ / (8 D³ n)", and its docstring the lines that follow from it.

    Symbols mean what `symbols.SYMBOLS` says, unless `where` says otherwise. `closed` False: what stands right of the
    sign is not a formula to be worked out but says in words what the function does.
    Raises ValueError where a symbol is no parameter of the function.
    """
    symbol, _, says = (part.strip() for part in written.partition(" = "))

    def give(function: Worked) -> Worked:
        code = cast("FunctionType", function).__code__
        parameters = code.co_varnames[: code.co_argcount + code.co_kwonlyargcount]
        named = {**{each: name for each, name in SYMBOLS.items() if name in parameters}, **(where or {})}
        if closed and (unknown := [each for each in symbols_in(says) if named.get(each) not in parameters]):
            raise ValueError(f"{function.__name__}: {', '.join(unknown)} in {written!r} is no parameter")
        record = Formula(function, symbol, says if closed else None, says, named, holds, source, from_memory)
        _FORMULAS[function] = record
        function.__doc__ = documented(record)
        return function

    return give


def documented(record: Formula) -> str:
    """The docstring of a function: its first sentence, the formula, its symbols, the rest, its range, the source."""
    sentence, _, rest = (record.function.__doc__ or "").strip().partition("\n\n")
    given = ", ".join(
        f"{words_of_name(name)} {symbol}{f' in {unit}' if (unit := unit_of(name)) else ''}"
        for symbol, name in record.where.items()
    )
    returned = f"Returns {record.symbol}" + (f" in {record.unit}." if record.unit else ", a bare number.")
    parts = [sentence, record.written, *([f"Parameters: {given}."] if given else []), returned]
    parts += [rest.strip()] if rest.strip() else []
    parts += [f"Holds for {' and '.join(map(str, record.holds))}."] if record.holds else []
    return "\n\n    ".join([*parts, f"Source: {record.cited}."]) + "\n    "


def formula_of(function: Callable[..., Any]) -> Formula:
    """The formula of a function. Raises KeyError where it has none."""
    return _FORMULAS[function]


def formulas() -> tuple[Formula, ...]:
    """The formulas of all rooms that have been imported, in the order in which they were."""
    return tuple(_FORMULAS.values())
