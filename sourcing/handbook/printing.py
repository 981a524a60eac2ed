"""A page of Markdown as lines for a terminal: headings, paragraphs, lists, and what is indented as it stands."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import groupby

from sourcing.sheets.text import bullets, heading, wrapped

_MARKS = re.compile(r"`|(?<![\w/])\*(?=\w)|(?<=\w)\*(?!\w)")


def printed(text: str) -> list[str]:
    """The body of a page; sentences that stand on lines of their own run on as a paragraph.

    >>> printed("## Wire\\n\\nMeasure *it*.\\nTwice, with `calipers`.\\n\\n- once\\n\\n    d: 1")
    ['', 'Wire', '', 'Measure it. Twice, with calipers.', '', '  - once', '', '    d: 1']
    """
    lines: list[str] = []
    for kind, block in groupby(text.split("\n"), _kind):
        lines += _block(kind, list(block))
    return lines


def _kind(line: str) -> str:
    if not line.strip():
        return "nothing"
    return next((mark for mark in ("## ", "- ", "    ") if line.startswith(mark)), "text")


def _block(kind: str, lines: list[str]) -> Iterable[str]:
    match kind:
        case "nothing":
            return ()
        case "## ":
            return heading(lines[0].removeprefix("## "))
        case "- ":
            return ("", *bullets(_plain(line.removeprefix("- ")) for line in lines))
        case "    ":
            return ("", *lines)
        case _:
            return ("", *wrapped(_plain(" ".join(lines))))


def _plain(text: str) -> str:
    return _MARKS.sub("", text)
