"""What lies in the drawer and on the spools, counted in the user's own file when something is taken or put back."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sourcing import quantities as q
from sourcing.files.disk import read_raw
from sourcing.files.findings import Finding, Mistakes, Place, WrongWords
from sourcing.files.replacing import change_file
from sourcing.quantities import QuantityError
from sourcing.quantities.kinds import LENGTH
from sourcing.stock.model import Catalogue, Spool, StockSpring
from sourcing.stock.naming import spring_or_spool

if TYPE_CHECKING:
    from sourcing.files.splicing import Source

_FINEST_MM = 0.1
_NOISE = 1e-9


@dataclass(frozen=True, slots=True)
class Count:
    """What there is of a spring (pieces) or a spool (mm of wire) after a change, and where it is written.

    `was` and `now` are the texts in the file, `changed` its lines as they now read, `raw` is the whole of it.
    """

    item: StockSpring | Spool
    left: float
    was: str
    now: str
    line: int
    changed: tuple[str, ...]
    raw: bytes


def take(catalogue: Catalogue, name: str, amount: str, dry_run: bool = False) -> Count:
    """Take springs or wire: fewer are on hand. `dry_run` leaves the file as it is.

    Raises `WrongWords` where nothing has that id or the amount is none, `Mistakes` where there is less than is to be
    taken or the file cannot be changed.
    """
    return _counted(catalogue, name, amount, -1, dry_run)


def put(catalogue: Catalogue, name: str, amount: str, dry_run: bool = False) -> Count:
    """Put springs or wire back: more are on hand. Raises as `take` does."""
    return _counted(catalogue, name, amount, 1, dry_run)


_SURE_MM = 50.0
"""So little wire is nobody's length to take: a bare number below it was meant in another unit."""


@dataclass(frozen=True, slots=True)
class _Way:
    """How a thing is counted: under which key of which list, how its text is read and written, a bare number's unit."""

    top: str
    key: str
    read: Callable[[str], float]
    written: Callable[[str, float], str]
    unit: str
    none: str | None


def _counted(catalogue: Catalogue, name: str, amount: str, sign: int, dry_run: bool) -> Count:
    item = spring_or_spool(catalogue, name, spool_meant=bool(re.search("[^0-9 ]", amount)))
    way = _WIRE if isinstance(item, Spool) else _PIECES
    moved = sign * _amount(item, amount, way)
    file = item.place.file or ""

    def change(raw: bytes) -> Count:
        from sourcing.files.splicing import source_of

        return _change(source_of(raw, file), item, way, moved, amount)

    return change(read_raw(file)) if dry_run else change_file(file, change)


def _amount(item: StockSpring | Spool, text: str, way: _Way) -> float:
    what = "a length of wire" if isinstance(item, Spool) else "a whole number of springs"
    try:
        amount = q.above_zero(way.read(text), text, what)
        if isinstance(item, Spool) and text.strip()[-1].isdigit() and amount < _SURE_MM:
            raise QuantityError(f"{text.strip()} may be metres or millimetres", "a length with its unit, as in 0.3m")
        if isinstance(item, Spool) and amount < _FINEST_MM:
            raise QuantityError(f"{text.strip()} is less than is counted", "0.1 mm of wire or more")
        return amount
    except QuantityError as error:
        raise WrongWords((Finding(Place(None), error.found, error.expected, error.suggestions),)) from None


def _change(source: Source, item: StockSpring | Spool, way: _Way, moved: float, amount: str) -> Count:
    """The count in the file as it stands now, which may be another than was read before, moved by so much."""
    from sourcing.files.splicing import with_value

    records = source.records(way.top)
    number = source.number_of(way.top, item.id)
    record = records[number]
    assert isinstance(record, dict)
    place = source.document.place_of(records, (number, way.key))
    old_text = record.get(way.key, way.none)
    if not isinstance(old_text, str):
        expected = f"its {way.key}: measure what is left and write it down"
        raise Mistakes((Finding(place, f"{item.id} does not say how much is left", expected),))
    before = _read(way.read, old_text, place)
    if before + moved < -_NOISE * before:
        has, taken = (text + (way.unit if text[-1].isdigit() else "") for text in (old_text, amount.strip()))
        found = f"{item.id} has {has}, less than the {taken} to be taken"
        raise Mistakes((Finding(place, found, "no more than there is, or the right count written down first"),))
    new_text = way.written(old_text, max(0.0, before + moved))
    left = _read(way.read, new_text, place)
    edited = with_value(source, way.top, number, way.key, new_text)
    return Count(item, left, old_text, new_text, edited.line, edited.changed, edited.raw)


def _read(read: Callable[[str], float], text: str, place: Place) -> float:
    try:
        return q.at_least_zero(read(text), text, "a count")
    except QuantityError as error:
        raise Mistakes((Finding(place, error.found, error.expected, error.suggestions),)) from None


def length_like(old: str, length_mm: float) -> str:
    """A length in the unit that an older text has, to 0.1 mm.

    >>> length_like("6.2 m", 5900.0), length_like("20ft", 5791.2), length_like("1 1/4 in", 25.4)
    ('5.9 m', '19ft', '1 in')
    """
    unit = re.search(r"\s*[A-Za-z]*\s*$", old)
    factor = LENGTH.factors[unit[0].strip() if unit else ""]
    decimals = max(0, math.ceil(math.log10(factor / _FINEST_MM)))
    number = f"{length_mm / factor:.{decimals}f}"
    return (number.rstrip("0").rstrip(".") if decimals else number) + (unit[0].rstrip() if unit else "")


_PIECES = _Way("springs", "on_hand", q.whole_number, lambda _, count: f"{count:.0f}", "", "0")
_WIRE = _Way("spools", "length_left", q.length_mm, length_like, " mm", None)
