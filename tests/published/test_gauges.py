"""Wire gauges: every number of the four systems that the program knows, row by row.

The rows stand in gauges.csv with the source beside each. AWG follows from a formula, of which the inches here are as
much a rounding as the program's mm; the formula itself is checked in tests/quantities/test_gauges.py.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from sourcing.quantities import wire_diameter_mm
from sourcing.quantities.gauges import diameters_mm

from .checks import Check, Source, check, inches

COUNT = {"MWG": 63, "WM": 57, "SWG": 57, "AWG": 56}


def read_rows() -> list[dict[str, str]]:
    with (Path(__file__).parent / "gauges.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


ROWS = read_rows()


def checked(row: dict[str, str]) -> Check:
    gauge = f"{row['system']} {row['gauge']}"
    source = Source(row["source"], gauge, row["read"])
    return check("wire_diameter_mm", inches(row["inch"]), source, lambda: wire_diameter_mm(gauge))


CHECKS = [checked(row) for row in ROWS if row["system"] != "AWG"]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_a_gauge_number_is_the_printed_diameter(check: Check) -> None:
    check.must_agree()


@pytest.mark.parametrize("system", COUNT)
def test_every_number_of_a_gauge_is_here_and_no_other_is_known(system: str) -> None:
    listed = [row["gauge"] for row in ROWS if row["system"] == system]
    assert len(listed) == COUNT[system]
    assert set(listed) == set(diameters_mm()[system])


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['system']} {row['gauge']}")
def test_a_gauge_number_is_in_mm_what_it_is_in_inches(row: dict[str, str]) -> None:
    """AWG is printed to 0.00001 in, which is 0.00013 mm either way; the others are exact in inches."""
    rounding_mm = 0.00018 if row["system"] == "AWG" else 0.0000501
    diameter_mm = wire_diameter_mm(f"{row['system']} {row['gauge']}")
    assert diameter_mm == pytest.approx(float(row["inch"]) * 25.4, abs=rounding_mm)
