"""The page of checks: each published figure, what the program gives, and the difference."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from sourcing.figures.symbols import words_of_name
from sourcing.sheets.text import strong, wrapped
from sourcing.tables import rows

_LABEL, _PUBLISHED, _OURS, _DIFFERENCE = 37, 13, 9, 7
"""Columns of the page; with blanks between and the word memory they are eighty."""

Check = Mapping[str, str]


def check_lines() -> Iterator[str]:
    """Every check under its source, and a count of them before."""
    every = list(rows("checks"))
    yield ""
    yield from wrapped(_counted(every))
    yield from ("", _columns("", "published", "ours", "% off", ""))
    for source, group in groupby(sorted(every, key=_source), _source):
        yield ""
        yield from map(strong, wrapped(source[0].upper() + source[1:]))
        for where, checks in groupby(group, _where):
            yield from _of_one_place(where, list(checks))


def is_from_memory(check: Check) -> bool:
    """Whether the published figure was recalled."""
    return check["read"].startswith("memory")


def is_derived(check: Check) -> bool:
    """Whether the figure was worked out for this project, not published."""
    return check["read"].startswith("derived")


def _source(check: Check) -> str:
    return check["source"]


def _where(check: Check) -> str:
    return check["where"]


def _counted(every: Sequence[Check]) -> str:
    derived, recalled = (sum(map(kind, every)) for kind in (is_derived, is_from_memory))
    sources = Counter(map(_source, every))
    return (
        f"{len(every)} figures from {len(sources)} sources: {len(every) - derived - recalled} read, {recalled} "
        f"recalled (memory), {derived} derived for this project. Each must come within half a unit of the source's "
        "last digit; where a wider tolerance is allowed, for another factor or a rounding on the way, it is 1 % at "
        "most and has its reason in the tests."
    )


def _of_one_place(where: str, checks: Sequence[Check]) -> Iterator[str]:
    """The checks of one page, clause or example: on a line where there is one and it is short."""
    only = f"{where}: {_figure(checks[0])}"
    if len(checks) == 1 and len(only) + 2 <= _LABEL:
        yield from _row(only, checks[0], "  ")
        return
    yield from wrapped(where, "    ", "  ")
    for check in checks:
        yield from _row(_figure(check), check, "    ")


def _row(words: str, check: Check, indent: str) -> Iterator[str]:
    label = wrapped(words, indent + "  ", indent)
    published = f"{check['published']} {check['unit']}".strip()
    memory = "memory" if is_from_memory(check) else "derived" if is_derived(check) else ""
    numbers = (published, check["ours"], check["difference_percent"], memory)
    if len(label[-1]) > _LABEL:
        yield from label
        label = [""]
    yield from label[:-1]
    yield _columns(label[-1], *numbers)


def _figure(check: Check) -> str:
    return words_of_name(check["figure"])


def _columns(label: str, published: str, ours: str, difference: str, memory: str) -> str:
    numbers = f"{published:>{_PUBLISHED}} {ours:>{_OURS}} {difference:>{_DIFFERENCE}} {memory}"
    return f"{label:<{_LABEL}} {numbers}".rstrip()
