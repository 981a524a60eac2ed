"""What every text sheet is built from: lines made safe to print, wrapped to 80 columns, and tables.

`line`, `wrapped` and `table` pass what they are given through `shown`, so that a name from a file can move no cursor
and hide no text.
"""

from __future__ import annotations

import os
import sys
import textwrap
from collections.abc import Iterable, Sequence

from sourcing.files.findings import Finding, shown

WIDTH = 80


def on_terminal() -> bool:
    """Whether standard output is a terminal that may be given bold text and ruled tables."""
    return sys.stdout.isatty() and "NO_COLOR" not in os.environ and os.environ.get("TERM") != "dumb"


def line(text: str) -> str:
    """One line, with what could act on a terminal made visible."""
    return shown(text)


def strong(text: str) -> str:
    """A safe line in bold on a terminal, plain elsewhere."""
    return f"\033[1m{shown(text)}\033[0m" if on_terminal() else shown(text)


def wrapped(text: str, indent: str = "", first: str | None = None) -> list[str]:
    """Safe lines of at most 80 columns; `first` opens the first line in place of `indent`."""
    return textwrap.wrap(
        shown(text),
        WIDTH,
        initial_indent=indent if first is None else first,
        subsequent_indent=indent,
        break_long_words=True,
        break_on_hyphens=False,
    ) or [""]


def bullets(texts: Iterable[str], mark: str = "-") -> list[str]:
    """One wrapped paragraph a text, hung on a mark."""
    return [each for text in texts for each in wrapped(text, "    ", f"  {mark} ")]


def numbered(texts: Iterable[str]) -> list[str]:
    """One wrapped paragraph a text, numbered from 1."""
    return [each for number, text in enumerate(texts, 1) for each in wrapped(text, "      ", f"  {number:>2}. ")]


def table(
    headers: Sequence[str], rows: Iterable[Sequence[str]], widths: Sequence[int | None] | None = None
) -> list[str]:
    """A table of safe cells, ruled on a terminal and plain elsewhere, indented by two.

    Two blanks part the columns; the two more that tabulate puts into heads take their room from narrow terminals.
    """
    import tabulate

    tabulate.MIN_PADDING = 0
    cells = [[shown(cell) for cell in row] for row in rows]
    text = tabulate.tabulate(
        cells,
        headers=list(headers) or (),
        tablefmt="simple" if on_terminal() else "plain",
        disable_numparse=True,
        maxcolwidths=None if widths is None else list(widths),
    )
    return ["  " + row.rstrip() for row in text.split("\n")]


def heading(text: str) -> list[str]:
    """A heading with an empty line before it."""
    return ["", strong(text)]


def finding_line(finding: Finding) -> str:
    """A mistake in one line: place first, what stands there, what was expected, what may have been meant."""
    place = ":".join(
        str(part) for part in (finding.place.file, finding.place.line, finding.place.column) if part is not None
    )
    says = finding.found + (f"; expected {finding.expected}" if finding.expected else "")
    if finding.suggestions:
        says += f"; did you mean {' or '.join(finding.suggestions)}?"
    return shown(f"{place}: {says}" if place else says)
