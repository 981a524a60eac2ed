"""The answers of `stock` as text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sourcing.files.findings import Finding, shown
from sourcing.quantities import show_diameter, show_length
from sourcing.sheets.marked import marked_lines
from sourcing.sheets.text import heading, line, table
from sourcing.springs.model import TorsionSpring
from sourcing.stock.adding import Added
from sourcing.stock.counting import Count
from sourcing.stock.figures import spring_figure
from sourcing.stock.model import Spool, StockSpring
from sourcing.stock.rates import believed_rate, show_rate_of

_LONGEST_CELL = 22
_METRE_MM = 1000.0
_MEASURED = {"wire", "outside", "length", "rate"}
_HEADS = {
    kind: ("id", "wire", "outside", third, "rate", "on hand", "place or seller")
    for kind, third in (("compression", "length"), ("conical", "length"), ("extension", "length"), ("torsion", "hand"))
}


def stock_lines(springs: Sequence[StockSpring], spools: Sequence[Spool], units: str = "mm") -> Iterator[str]:
    """Springs and spools as tables; one line where there are none of either."""
    if not springs and not spools:
        yield "Nothing in the catalogue is that."
    for kind in dict.fromkeys(stock.spring.kind for stock in springs):
        these = [stock for stock in springs if stock.spring.kind == kind]
        yield from heading(_counted(len(these), f"{kind} spring"))
        yield from _bare_table(_HEADS[kind], [_spring_row(stock, units) for stock in these])
    if spools:
        yield from heading(_counted(len(spools), "spool"))
        headers = ("id", "material", "wire", "left", "place")
        yield from table(headers, [_spool_row(spool, units) for spool in spools])


def low_lines(springs: Sequence[StockSpring]) -> Iterator[str]:
    """The springs that run low, with how many are wanted and where they are bought."""
    if not springs:
        yield "Nothing is below the least that is wanted."
        return
    yield from heading(f"{_counted(len(springs), 'spring')} below the least wanted")
    rows = [
        (_cell(stock.id), str(stock.on_hand), str(stock.least), _cell(stock.shelf), _cell(stock.seller))
        for stock in springs
    ]
    yield from table(("id", "on hand", "least", "place", "seller"), rows)


def count_lines(count: Count, dry_run: bool) -> Iterator[str]:
    """What was counted, in one line; a dry run shows the line that would change."""
    item = count.item
    unit = "left" if isinstance(item, Spool) else "on hand"
    place = f", {item.shelf}" if item.shelf else ""
    least = item.least if isinstance(item, StockSpring) else None
    few = f"; fewer than the {least} wanted" if least is not None and count.left < least else ""
    where = f"{item.place.file}:{count.line}"
    would = "would be " if dry_run else ""
    yield line(f"{item.id}: {count.was} -> {would}{count.now} {unit}{place}{few} ({where})")
    if dry_run:
        yield from map(line, count.changed)


def added_lines(added: Added, dry_run: bool) -> Iterator[str]:
    """What was added, in one line; a dry run shows the lines of the record."""
    yield line(f"{added.item.id}: {'would be ' if dry_run else ''}added ({added.file}:{added.line})")
    if dry_run:
        yield from map(line, added.changed)


def check_lines(mistakes: Sequence[Finding], doubts: Sequence[Finding]) -> Iterator[str]:
    """Every mistake and every doubt, each with the line of the file that it is about, and how many there are."""
    yield from marked_lines(mistakes)
    if mistakes and doubts:
        yield ""
    yield from marked_lines(Finding(d.place, f"doubt: {d.found}", d.expected, d.suggestions) for d in doubts)
    yield f"{_counted(len(mistakes), 'mistake')}, {_counted(len(doubts), 'doubt')}."


def _counted(number: int, thing: str) -> str:
    return f"{number} {thing}{'' if number == 1 else 's'}"


def _spring_row(stock: StockSpring, units: str) -> tuple[str, ...]:
    wire = spring_figure(stock, "wire")
    return (
        _cell(stock.id),
        "" if wire is None else show_diameter(wire, units),
        _outside(stock, units),
        _hand(stock.spring) if isinstance(stock.spring, TorsionSpring) else _length(stock, units),
        show_rate_of(stock.spring, believed_rate(stock), units),
        str(stock.on_hand),
        _cell(stock.shelf or stock.seller),
    )


def _bare_table(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> Iterator[str]:
    """A table whose units stand below its heads, wherever a column has one unit throughout."""
    columns = list(zip(*rows, strict=True))
    units = [_common_unit(column) if head in _MEASURED else "" for head, column in zip(heads, columns, strict=True)]
    headed = [f"{head}\n{unit}" if unit else head for head, unit in zip(heads, units, strict=True)]
    bare = [[cell.removesuffix(f" {unit}") for cell, unit in zip(row, units, strict=True)] for row in rows]
    yield from table(headed, bare)


def _common_unit(column: Sequence[str]) -> str:
    """The unit of all cells that have something in them; empty where they have not one and the same."""
    units = {cell.rpartition(" ")[2] for cell in column if cell}
    return units.pop() if len(units) == 1 else ""


def _length(stock: StockSpring, units: str) -> str:
    length = spring_figure(stock, "length")
    return "" if length is None else show_length(length, units)


def _hand(spring: TorsionSpring) -> str:
    return "both" if spring.bodies > 1 else spring.hand or "unknown"


def _outside(stock: StockSpring, units: str) -> str:
    """The outside diameter; of a cone, the small end's and the large end's."""
    outside, small = spring_figure(stock, "outside"), getattr(stock.spring, "outside_diameter_small_mm", None)
    if outside is None:
        return ""
    both = "" if small is None else f"{show_diameter(small, units).split(' ')[0]} to "
    return both + show_diameter(outside, units)


def _spool_row(spool: Spool, units: str) -> tuple[str, ...]:
    left = spool.length_left_mm
    metres = "not said" if left is None else f"{left / _METRE_MM:.2f} m" if units == "mm" else show_length(left, units)
    return (
        _cell(spool.id), spool.material.name, show_diameter(spool.wire_diameter_mm, units), metres, _cell(spool.shelf)
    )  # fmt: skip


def _cell(text: str | None) -> str:
    """A text of the user's, cut to the width of a column once what could act on a terminal is made visible."""
    safe = shown(text or "")
    return safe if len(safe) <= _LONGEST_CELL else safe[: _LONGEST_CELL - 1] + "…"
