"""The record of a formula, and the docstring that is made from it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import FunctionType
from typing import Any, cast

from sourcing.figures import WRITTEN, Holds, Meaning
from sourcing.figures.symbols import SYMBOL_OF, described, unit_of, words_of_name

ANY_SIZE = "any size"


@dataclass(frozen=True, slots=True)
class Formula:
    """One formula of one function: what stands left and right of its sign.

    `where` gives what each symbol means. `closed` False: what stands right of the sign is no formula but tells what is
    done.
    `from_memory`: the source is recalled, not checked against its page.
    """

    function: Callable[..., Any]
    symbol: str
    says: str
    where: Mapping[str, Meaning]
    holds: tuple[Holds, ...]
    source: str
    from_memory: bool
    closed: bool

    @property
    def name(self) -> str:
        """What is worked out, in words."""
        return words_of_name(self.function.__name__.lstrip("_"))

    @property
    def unit(self) -> str:
        """The unit of what is worked out; empty for a bare number."""
        return unit_of(self.function.__name__)

    @property
    def written(self) -> str:
        """The formula as it is written: symbol = expression."""
        return f"{self.symbol} = {self.says}"

    @property
    def range(self) -> str:
        """Where it holds, in words; geometry, statics and definitions know no bounds."""
        return " and ".join(map(str, self.holds)) or ANY_SIZE

    @property
    def cited(self) -> str:
        """The source, with the word 'memory' where it is recalled."""
        return self.source + (" (from memory)" if self.from_memory else "")

    @property
    def meanings(self) -> dict[str, str]:
        """Each symbol in words, with its unit."""
        return {symbol: described(_name_of(meaning)) for symbol, meaning in self.where.items()}


def documented(record: Formula) -> str:
    """The docstring of a function: its first sentence, the formula, its symbols, the rest, its range, the source."""
    sentence, _, rest = (record.function.__doc__ or "").partition("\n\n")
    symbols = {meaning: symbol for symbol, meaning in record.where.items() if isinstance(meaning, str)}
    given = [described(name, symbols.get(name)) for name in parameters_of(record.function)]
    inside = [f"{symbol} the {described(_name_of(m))}" for symbol, m in record.where.items() if not isinstance(m, str)]
    returned = f"Returns {record.symbol}" + (f" in {record.unit}." if record.unit else ", a bare number.")
    parts = [
        sentence.strip(),
        record.written,
        f"Parameters: {', '.join(given)}.{' With ' + ', '.join(inside) + '.' if inside else ''} {returned}",
    ]
    if rest and not rest.isspace():
        parts.append(rest.strip())
    parts.append(f"Holds for {record.range}.")
    parts.append(f"Source: {record.cited}.\n    ")
    return "\n\n    ".join(parts)


def parameters_of(function: Callable[..., Any]) -> tuple[str, ...]:
    """The names of a function's parameters, in their order."""
    code = cast("FunctionType", function).__code__
    return code.co_varnames[: code.co_argcount + code.co_kwonlyargcount]


def formula_of(function: Callable[..., Any]) -> Formula:
    """The formula of a function. Raises KeyError where it has none."""
    written, source, holds, where, closed, from_memory = WRITTEN[function]
    symbol, _, says = written.partition(" = ")
    meant, named = dict(where), set(where.values())
    for parameter in parameters_of(function):
        if parameter in SYMBOL_OF and parameter not in named:
            meant.setdefault(SYMBOL_OF[parameter], parameter)
    return Formula(function, symbol, says, meant, holds, source, from_memory, closed)


def formulas() -> tuple[Formula, ...]:
    """The formulas of all rooms that have been imported, in the order in which they were."""
    return tuple(map(formula_of, WRITTEN))


def _name_of(meaning: Meaning) -> str:
    """The name of what a symbol means, as a parameter would have it."""
    return meaning.rpartition(".")[2] if isinstance(meaning, str) else meaning.__name__.lstrip("_")
