"""Closed ranges on what the index knows of a spring, and the SQL that asks for them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

FAR = 1e300
LIMIT_TENTH = 0.1
"""A bound overstepped by a tenth counts like a figure one tolerance off, where springs are put in order."""

Range = tuple[float | None, float | None]


@dataclass(frozen=True, slots=True)
class ForceRange:
    """The force at a length, between two bounds; None: open."""

    length_mm: float
    low_n: float | None
    high_n: float | None

    @property
    def figure(self) -> str:
        """The force of a spring that is pressed to the length, in SQL."""
        return f"rate * max(free - {self.length_mm!r}, 0.0)"


@dataclass(frozen=True, slots=True)
class PullRange:
    """The force of an extension spring pulled to a length, between two bounds; None: open."""

    length_mm: float
    low_n: float | None
    high_n: float | None

    @property
    def figure(self) -> str:
        """Its force in SQL: none where it is loose, else the initial tension and what it is pulled by."""
        at = repr(self.length_mm)
        return f"(CASE WHEN {at} > free THEN tension + rate * ({at} - free) ELSE 0.0 END)"


@dataclass(frozen=True, slots=True)
class Ranges:
    """What a spring of a kind must lie in to be worth judging; columns by name, as in `columns.COLUMNS`.

    `if_here`: one that is on hand may also lie in these, for it can be made into one that lies in the others.
    """

    kind: str
    columns: Mapping[str, Range] = field(default_factory=dict[str, Range])
    forces: tuple[ForceRange | PullRange, ...] = ()
    if_here: Mapping[str, Range] | None = None

    def condition(self) -> str:
        """The ranges as an SQL condition, the kind left out."""
        as_it_is = _all_between(self._figures())
        if self.if_here is None:
            return as_it_is
        figures = ((column, low, high) for column, (low, high) in self.if_here.items())
        return f"({as_it_is} OR here > 0 AND {_all_between(figures)})"

    def distance(self) -> str:
        """How far outside the ranges a spring is, in tolerances, as an SQL expression."""
        return (
            " + ".join(
                f"max({_number(low, -FAR)} - {figure}, {figure} - {_number(high, FAR)}, 0.0)"
                f" / {_tolerance(low, high)!r}"
                for figure, low, high in self._figures()
            )
            or "0.0"
        )

    def _figures(self) -> Iterator[tuple[str, float | None, float | None]]:
        for column, (low, high) in self.columns.items():
            yield column, low, high
        for force in self.forces:
            yield force.figure, force.low_n, force.high_n


def _all_between(figures: Iterable[tuple[str, float | None, float | None]]) -> str:
    return (
        " AND ".join(f"{figure} BETWEEN {_number(low, -FAR)} AND {_number(high, FAR)}" for figure, low, high in figures)
        or "1"
    )


def _number(bound: float | None, otherwise: float) -> str:
    return repr(float(otherwise if bound is None else bound))


def _tolerance(low: float | None, high: float | None) -> float:
    """What counts as one tolerance: a quarter of a closed range, which is two to each side; a tenth of a bound."""
    if low is not None and high is not None:
        return max((high - low) / 4.0, 1e-6)
    return max(LIMIT_TENTH * abs((low if low is not None else high) or 0.0), 1e-6)
