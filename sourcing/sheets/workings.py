"""Workings as text and as JSON: formula, numbers put in, value, source, and whether this case is inside its range."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from sourcing.figures.working import Working, show_number
from sourcing.sheets.text import heading, wrapped

_INDENT = "      "


def workings_document(shown: Iterable[Working]) -> list[dict[str, object]]:
    """The value of the key `workings`."""
    return [
        {
            "figure": each.figure + each.where,
            "formula": each.formula,
            "numbers": each.numbers,
            "value": each.value,
            "unit": each.unit,
            "source": each.source,
            "from_memory": each.from_memory,
            "holds": [{"range": one.says, "value": one.value, "inside": one.inside} for one in each.valid],
        }
        for each in shown
    ]


def workings_lines(shown: Sequence[Working]) -> Iterator[str]:
    """Each figure with its working, and what the symbols mean once at the end."""
    yield from heading("Workings, in mm, N and MPa")
    for each in shown:
        yield from _given(each) if each.formula is None else _worked(each)
    meanings = {f"{symbol} {words}" for each in shown for symbol, words in each.meanings.items()}
    if meanings:
        yield from heading("Symbols")
        yield from wrapped("; ".join(sorted(meanings, key=str.casefold)) + ".", "  ")


def _given(each: Working) -> Iterator[str]:
    yield from wrapped(f"{each.name}: {_value(each)} ({_source(each)})", _INDENT, "  ")


def _worked(each: Working) -> Iterator[str]:
    yield from wrapped(f"{each.name}: {_value(each)}", _INDENT, "  ")
    yield from wrapped(each.formula or "", _INDENT + "  ", _INDENT)
    if each.numbers is not None:
        opening = "= " if "=" not in each.numbers else "with "
        yield from wrapped(opening + each.numbers, _INDENT + "  ", _INDENT)
    yield from wrapped(_source(each) + ("" if each.valid else "; for any size"), _INDENT, _INDENT)
    for one in each.valid:
        mark = "inside its range" if one.inside else "OUTSIDE its range"
        yield from wrapped(f"{mark}: {one.says} (here {show_number(one.value)})", _INDENT, _INDENT)


def _value(each: Working) -> str:
    return show_number(each.value) + (f" {each.unit}" if each.unit else "")


def _source(each: Working) -> str:
    return each.source + (", from memory" if each.from_memory else "")
