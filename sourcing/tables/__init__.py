"""Reference tables as text that a person reads, one source a row, and the one function that reads them."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from pathlib import Path


def rows(name: str) -> Iterator[dict[str, str]]:
    """The rows of the table `name` (a file NAME.csv beside this one) as texts by column name.

    Lines that begin with # are comments. Raises FileNotFoundError where there is no such table.
    """
    with (Path(__file__).parent / f"{name}.csv").open(encoding="utf-8", newline="") as lines:
        yield from csv.DictReader(line for line in lines if not line.startswith("#"))
