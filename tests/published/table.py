"""The table of all published checks as the handbook prints it: `python -m tests.published.table` writes it anew."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import sourcing.tables
from sourcing.figures.symbols import unit_of

from .checks import UNITS, Check, files_of_checks

FILE = Path(sourcing.tables.__file__).with_name("checks.csv")
HEAD = (
    "# Every published figure that the program is checked against, beside what it makes of it.\n"
    "# Written by `python -m tests.published.table` from tests/published, and held against it by a test there.\n"
    "# ours is in the unit of the source; difference_percent is empty where the published figure is 0.\n"
    "# read: how the figure was come by; memory where it was recalled and not checked against a page.\n"
)
COLUMNS = ("source", "where", "figure", "published", "unit", "ours", "difference_percent", "tolerance", "read")


def row(check: Check) -> tuple[str, ...]:
    """One check as a row."""
    published, ours = check.published, check.ours()
    source = published.source
    assert source is not None
    difference = "" if published.value == 0.0 else f"{check.difference_percent:+.3f}".replace("-0.000", "+0.000")
    return (
        source.name,
        source.where,
        published.figure,
        published.printed,
        published.unit or unit_of(published.figure),
        f"{ours / UNITS[published.unit]:.6g}",
        difference,
        published.tolerance,
        source.read,
    )


def text() -> str:
    """The whole table, its rows in the order of the files and of the checks in them."""
    written = io.StringIO()
    writer = csv.writer(written, lineterminator="\n")
    writer.writerow(COLUMNS)
    writer.writerows(row(check) for module in files_of_checks() for check in module.CHECKS)
    return HEAD + written.getvalue()


if __name__ == "__main__":
    FILE.write_text(text(), "utf-8")
