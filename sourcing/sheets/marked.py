"""Findings with the line of the file that each is about, and marks under its characters."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from unicodedata import combining, east_asian_width

from sourcing.files.disk import read_text
from sourcing.files.findings import Finding, Mistakes, Place, shown
from sourcing.sheets.text import WIDTH, finding_line

_LINE_BREAK = re.compile("\r\n|\r|\n")
_MARKED = re.compile(r"""'(?:[^']|'')*'|"(?:[^"\\]|\\.)*"|[^\s,{}\[\]]+(?: (?!#)[^\s,{}\[\]]+)*|.""")
_INDENT = "    "
_LONGEST_BEFORE = 40


def marked_lines(findings: Iterable[Finding]) -> Iterator[str]:
    """Each finding in a line, and under it the user's line with marks where it has one."""
    lines_of = lru_cache(1)(_lines_of)
    for finding in findings:
        yield finding_line(finding)
        if finding.place.file:
            yield from _line_and_marks(finding.place, lines_of(finding.place.file))


def _line_and_marks(place: Place, lines: Sequence[str]) -> Iterator[str]:
    if place.line is None or place.column is None or place.line > len(lines):
        return
    whole, at = lines[place.line - 1], place.column - 1
    begin = max(0, at - _LONGEST_BEFORE) if len(whole) > WIDTH else 0
    before, rest = whole[begin:at], whole[at : begin + WIDTH]
    marked = found[0] if (found := _MARKED.match(rest)) else ""
    yield f"{_INDENT}{shown(before + rest).rstrip()}"
    yield f"{_INDENT}{' ' * _width(shown(before))}{'^' * max(1, _width(shown(marked)))}"


def _lines_of(file: str) -> tuple[str, ...]:
    try:
        return tuple(_LINE_BREAK.split(read_text(file)))
    except Mistakes:
        return ()


def _width(text: str) -> int:
    """How many columns of a terminal a text takes.

    >>> _width("é"), _width("弹簧"), _width("e\\u0301")
    (1, 4, 1)
    """
    return sum(0 if combining(c) else 2 if east_asian_width(c) in "WF" else 1 for c in text)
