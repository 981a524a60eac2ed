"""Which springs and spools somebody means who asks for a wire, a diameter, a place: closed ranges and words.

Nothing here knows what limits mean: ranges come from who asks.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import inf
from typing import TypeVar

from sourcing.quantities import Wanted
from sourcing.stock.figures import spring_figure
from sourcing.stock.model import Bench, Catalogue, Spool, StockSpring
from sourcing.stock.rates import believed_rate

Range = tuple[float, float]
T = TypeVar("T")

WIRE_TOLERANCE_MM = 0.005
"""A wire diameter that is asked for without a tolerance is meant to 0.01 mm."""

_ALLOWANCE = 1e-9


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked for; None is not. `ranges` has closed ranges by the names of figures, `words` parts of texts.

    Figures: wire, outside, inside, length, rate, angular rate. Texts: material, place, seller.
    """

    kind: str | None
    ranges: dict[str, Range]
    words: dict[str, str]


def closed_range(figure: str, wanted: Wanted, bench: Bench) -> Range:
    """The range that a wanted figure stands for; a plain one has the tolerance of the house, a wire 0.005 mm."""
    if wanted.nominal is not None and wanted.minus is None:
        tolerance = _house_tolerance(figure, wanted.nominal, bench)
        return wanted.nominal - tolerance, wanted.nominal + tolerance
    low, high = wanted.smallest, wanted.largest
    return -inf if low is None else low, inf if high is None else high


def _house_tolerance(figure: str, nominal: float, bench: Bench) -> float:
    house = bench.tolerances
    match figure:
        case "wire":
            return WIRE_TOLERANCE_MM
        case "rate" | "angular rate":
            return house.rate * nominal
        case "length":
            return house.length_mm
        case _:
            return house.diameter_mm


def spring_text(stock: StockSpring, text: str) -> str | None:
    """One of a spring's texts by its name: material, place, seller."""
    return {"material": stock.spring.material.name, "place": stock.shelf, "seller": stock.seller}[text]


def springs_asked(catalogue: Catalogue, asked: Asked) -> tuple[StockSpring, ...]:
    """The springs that are all that is asked for, in the order of the files."""
    return tuple(
        stock
        for stock in catalogue.springs
        if asked.kind in (None, stock.spring.kind)
        and all(_within(spring_figure(stock, figure), bounds) for figure, bounds in asked.ranges.items())
        and all(_holds(spring_text(stock, text), word) for text, word in asked.words.items())
    )


def spools_asked(catalogue: Catalogue, asked: Asked) -> tuple[Spool, ...]:
    """The spools that are all that is asked for; none where a spring's own figure, kind or seller is asked for."""
    if asked.kind not in (None, "spool") or not (asked.ranges.keys() <= {"wire"} and "seller" not in asked.words):
        return ()
    return tuple(
        spool
        for spool in catalogue.spools
        if all(_within(spool.wire_diameter_mm, bounds) for bounds in asked.ranges.values())
        and all(
            _holds(spool.material.name if text == "material" else spool.shelf, word)
            for text, word in asked.words.items()
        )
    )


def _within(value: float | None, bounds: Range) -> bool:
    return value is not None and bounds[0] * (1 - _ALLOWANCE) <= value <= bounds[1] * (1 + _ALLOWANCE)


def _holds(text: str | None, word: str) -> bool:
    return text is not None and word.casefold() in text.casefold()


SPRING_ORDERS: dict[str, Callable[[StockSpring], str | float | None]] = {
    "id": lambda stock: stock.id.casefold(),
    "kind": lambda stock: stock.spring.kind,
    "wire": lambda stock: spring_figure(stock, "wire"),
    "outside": lambda stock: spring_figure(stock, "outside"),
    "inside": lambda stock: spring_figure(stock, "inside"),
    "length": lambda stock: spring_figure(stock, "length"),
    "rate": believed_rate,
    "material": lambda stock: stock.spring.material.name,
    "place": lambda stock: stock.shelf,
    "seller": lambda stock: stock.seller,
    "on-hand": lambda stock: stock.on_hand,
    "price": lambda stock: None if stock.price is None else stock.price.amount,
}
"""By what springs can be sorted."""

_SPOOL_ORDERS: dict[str, Callable[[Spool], str | float | None]] = {
    "id": lambda spool: spool.id.casefold(),
    "wire": lambda spool: spool.wire_diameter_mm,
    "length": lambda spool: spool.length_left_mm,
    "material": lambda spool: spool.material.name,
    "place": lambda spool: spool.shelf,
    "price": lambda spool: None if spool.price_per_metre is None else spool.price_per_metre.amount,
}


def sorted_springs(springs: tuple[StockSpring, ...], order: str, falling: bool) -> tuple[StockSpring, ...]:
    """The springs in that order; those that lack the figure come last."""
    return _in_order(springs, SPRING_ORDERS[order], falling)


def sorted_spools(spools: tuple[Spool, ...], order: str, falling: bool) -> tuple[Spool, ...]:
    """The spools in that order, as they are where it is one of springs alone."""
    return _in_order(spools, _SPOOL_ORDERS[order], falling) if order in _SPOOL_ORDERS else spools


def _in_order(items: tuple[T, ...], of: Callable[[T], str | float | None], falling: bool) -> tuple[T, ...]:
    known = [(value, number) for number, item in enumerate(items) if (value := of(item)) is not None]
    known.sort(key=lambda pair: pair[0], reverse=falling)
    placed = {number for _, number in known}
    rest = [item for number, item in enumerate(items) if number not in placed]
    return (*(items[number] for _, number in known), *rest)


def running_low(catalogue: Catalogue) -> tuple[StockSpring, ...]:
    """The springs of which fewer are on hand than the least that is wanted."""
    return tuple(stock for stock in catalogue.springs if stock.least is not None and stock.on_hand < stock.least)
