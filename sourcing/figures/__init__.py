"""Where a figure comes from: each formula as one record, from which docstring, workings and handbook are made.

notation.py   a formula as a person writes it: worked out, and shown with its numbers put in
symbols.py    which symbol means which parameter, and the unit that a name ends in
record.py     the record of a formula, and the docstring that is made from it
working.py    one figure worked out before the reader's eyes

What stands in this file is paid by every start of the program, so it writes down and works nothing out.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, NamedTuple, TypeVar

Worked = TypeVar("Worked", bound=Callable[..., Any])
Meaning = str | Callable[..., float]
"""What a symbol stands for: a parameter by name, a path into one ("cone.gap_mm", "finished.0"), or a function of some
of the parameters."""


class Holds(NamedTuple):
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


Written = tuple[str, str, tuple[Holds, ...], Mapping[str, Meaning], bool, bool]
"""What was written beside a function: the formula, its source, where it holds, what its symbols mean, whether it is
closed, whether its source is from memory."""

WRITTEN: dict[Callable[..., Any], Written] = {}
"""The formulas of all rooms that have been imported, in the order in which they were."""

_documenting = True


def formula(
    written: str,
    *,
    source: str,
    holds: tuple[Holds, ...] = (),
    where: Mapping[str, Meaning] | None = None,
    closed: bool = True,
    from_memory: bool = False,
) -> Callable[[Worked], Worked]:
    """Give a function its formula, "R = G d⁴ / (8 D³ n)", and its docstring the lines that follow from it.

    Symbols mean what `symbols.SYMBOLS` says, unless `where` says otherwise. `closed` False: what stands right of the
    sign is no formula but says in words what the function does.
    """

    def give(function: Worked) -> Worked:
        WRITTEN[function] = written, source, holds, where or {}, closed, from_memory
        if _documenting:
            from sourcing.figures.record import documented, formula_of

            function.__doc__ = documented(formula_of(function))
        return function

    return give


def leave_docstrings() -> None:
    """Have no docstrings made from now on: the command line shows none, and starts a millisecond sooner."""
    global _documenting
    _documenting = False
