"""The page of formulas, made from the records that stand beside their functions."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Iterator
from itertools import groupby

import sourcing
from sourcing.figures.record import Formula, formulas
from sourcing.sheets.text import heading, wrapped

_WITHOUT = ("sourcing.cli", "sourcing.handbook", "sourcing.sheets", "sourcing.__main__")
"""Rooms that work nothing out."""

_INDENT = "      "


def formula_lines() -> Iterator[str]:
    """Every formula of every room."""
    every = all_formulas()
    yield ""
    yield from wrapped(
        f"{len(every)} formulas, grouped by the part of the program that they stand in. --workings on describe, "
        "source and wind shows them with your numbers put in; a test evaluates each as it is written here."
    )
    for room, group in groupby(every, _room):
        yield from heading(room)
        for record in group:
            yield from _lines_of(record)


def all_formulas() -> list[Formula]:
    """The formulas of all rooms, each room's in the order in which they stand."""
    for module in pkgutil.walk_packages(sourcing.__path__, "sourcing."):
        if not module.name.startswith(_WITHOUT):
            importlib.import_module(module.name)
    return sorted(formulas(), key=_room)


def _room(record: Formula) -> str:
    _, room, *part = record.function.__module__.split(".")
    return f"{room}: {' '.join(part).replace('_', ' ')}"


def _lines_of(record: Formula) -> Iterator[str]:
    unit = f" in {record.unit}" if record.unit else ""
    yield from wrapped(f"{record.name}{unit}", "    ", "  ")
    yield from wrapped(record.written, _INDENT + "  ", _INDENT)
    if record.meanings:
        meant = ", ".join(f"{symbol} {words}" for symbol, words in record.meanings.items())
        yield from wrapped(meant, _INDENT, _INDENT)
    yield from wrapped(f"for {record.range}", _INDENT, _INDENT)
    yield from wrapped(record.cited, _INDENT, _INDENT)
