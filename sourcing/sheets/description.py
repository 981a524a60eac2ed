"""The answer of `describe`, as JSON and as text."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from sourcing.sheets import description_extension, description_pressed, description_torsion
from sourcing.sheets.banded import band_keys, band_lines
from sourcing.sheets.data import workings_key
from sourcing.sheets.text import bullets, heading
from sourcing.springs.describe import AnyDescription
from sourcing.springs.rates import rate_of
from sourcing.stock.model import StockSpring
from sourcing.stock.rates import disagree, show_rate_of

if TYPE_CHECKING:
    from sourcing.figures.working import Working

Entry = tuple[StockSpring, AnyDescription]

OF_KIND: Mapping[str, Callable[[Any, str], Iterator[list[str]]]] = {
    "compression": description_pressed.tables,
    "conical": description_pressed.tables,
    "torsion": description_torsion.tables,
    "extension": description_extension.tables,
}
"""The tables of each kind."""


def description_document(
    entries: Iterable[Entry], grade: int | None = None, with_workings: bool = False
) -> dict[str, object]:
    """The JSON document: field names are the keys; a grade of tolerance adds bounds to the figures."""
    return {
        "springs": [
            {
                "id": stock.id,
                **asdict(description),
                **({} if grade is None else band_keys(stock.spring, description, grade)),
                "notes": notes(stock, description),
                **workings_key(_workings(stock, description) if with_workings else None),
            }
            for stock, description in entries
        ]
    }


def _workings(stock: StockSpring, description: AnyDescription) -> tuple[Working, ...]:
    from sourcing.springs.workings import workings
    from sourcing.stock.places import places_of, told

    return workings(stock.spring, description, told(places_of(stock.place)))


def notes(stock: StockSpring, description: AnyDescription) -> list[str]:
    """The description's notes, and one more where the stated rate does not go with the dimensions."""
    stated, spring = stock.stated_rate, stock.spring
    if stated is None or not disagree(stated, spring):
        return list(description.notes)
    doubt = (
        f"The stated rate of {show_rate_of(spring, stated)} and the {show_rate_of(spring, rate_of(spring))} of the "
        "dimensions cannot both be right: the seller's figure may be right and a dimension wrong."
    )
    return [*description.notes, doubt]


def description_lines(
    entries: Iterable[Entry], units: str = "mm", grade: int | None = None, with_workings: bool = False
) -> Iterable[str]:
    """Each spring under its id, its forces at the lengths asked for, its notes, the bands of a grade, its workings."""
    for stock, one in entries:
        yield from heading(stock.id)
        for number, rows in enumerate(OF_KIND[one.kind](one, units)):
            yield from ["", *rows] if number else rows
        yield from bullets(notes(stock, one))
        if grade is not None:
            yield from ["", *band_lines(stock.spring, one, grade, units)]
        if with_workings:
            from sourcing.sheets.workings import workings_lines

            yield from workings_lines(_workings(stock, one))
