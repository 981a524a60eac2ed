"""Wire gauge numbers: MWG (music wire), WM (Washburn and Moen), SWG (imperial standard), AWG (American).

The table, with the source of each row, is sourcing/tables/gauges.csv; it is read when the first gauge number is.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache

SYSTEMS = ("MWG", "WM", "SWG", "AWG")

_WRITTEN = re.compile(r"(MWG|WM|SWG|AWG) ?([0-9./]+(?: 1/2)?)")


@cache
def diameters_mm() -> Mapping[str, Mapping[str, float]]:
    """Wire diameter in mm by system and gauge number, thickest or thinnest first as the system counts.

    >>> diameters_mm()["MWG"]["20"]
    1.143
    """
    import csv
    from importlib import resources

    table: dict[str, dict[str, float]] = {system: {} for system in SYSTEMS}
    with resources.files("sourcing.tables").joinpath("gauges.csv").open(encoding="utf-8") as lines:
        for row in csv.DictReader(lines):
            table[row["system"]][row["gauge"]] = float(row["mm"])
    return table


def gauge_mm(text: str) -> float | None:
    """The wire diameter of a gauge number in mm; None where the text is none, or the system lacks that number.

    >>> gauge_mm("SWG 00") == gauge_mm("SWG 2/0") == 8.8392
    True
    >>> gauge_mm("MWG 12 1/2")
    0.762
    """
    written = _WRITTEN.fullmatch(text)
    return diameters_mm()[written[1]].get(_plain_number(written[2])) if written else None


def nearest_gauge(system: str, number: str) -> str | None:
    """The gauge number of a system that comes nearest to a number it lacks; None where that is no number.

    >>> nearest_gauge("MWG", "60"), nearest_gauge("AWG", "20.5"), nearest_gauge("SWG", "x")
    ('45', '20', None)
    """
    wanted = _position(_plain_number(number))
    if wanted is None:
        return None
    return min(diameters_mm()[system], key=lambda gauge: abs((_position(gauge) or 0.0) - wanted))


def span(system: str) -> tuple[str, str]:
    """The first and the last gauge number of a system.

    >>> span("MWG")
    ('10/0', '45')
    """
    numbers = tuple(diameters_mm()[system])
    return numbers[0], numbers[-1]


def _plain_number(number: str) -> str:
    """The number as the table has it: "0" is "1/0", "000" is "3/0", "12 1/2" is "12.5"."""
    if number and not number.strip("0"):
        return f"{len(number)}/0"
    return number.replace(" 1/2", ".5")


def _position(number: str) -> float | None:
    """Where a gauge number stands in the count: 1/0 is 0, 2/0 is -1, and so on."""
    zeros = re.fullmatch(r"([0-9]{1,9})/0", number)
    if zeros:
        return 1.0 - int(zeros[1])
    return float(number) if re.fullmatch(r"[0-9]{1,9}(\.[0-9]{1,9})?", number) else None
