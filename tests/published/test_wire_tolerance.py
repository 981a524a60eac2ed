"""Tolerances of the diameter of spring wire: every row of EN 10270-1 and of four ASTM standards at hand."""

from __future__ import annotations

import csv
from math import nan
from pathlib import Path

import pytest

from sourcing.springs.wire_tolerances import wire_diameter_tolerance_mm

from .checks import INCH_MM, Check, Published, Source, check


def read_rows() -> list[dict[str, str]]:
    with (Path(__file__).parent / "wire_tolerance.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


ROWS = read_rows()
MM = {"mm": 1.0, "in": INCH_MM}


def tolerance_mm(standard: str, wire_mm: float) -> float:
    found = wire_diameter_tolerance_mm(standard, wire_mm)
    return nan if found is None else found


def checked(row: dict[str, str]) -> Check:
    source = Source(row["standard"], f"wire {row['from']} to {row['to']} {row['unit']}", row["read"])
    unit = "in" if row["unit"] == "in" else ""
    largest = float(row["to"]) * MM[row["unit"]]
    printed = Published("", row["tolerance"], unit)
    return check("wire diameter tolerance", printed, source, lambda: tolerance_mm(row["standard"], largest))


CHECKS = [checked(row) for row in ROWS]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_the_tolerance_is_the_standards(check: Check) -> None:
    check.must_agree()


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['standard']}-{row['from']}")
def test_a_band_begins_at_its_first_size(row: dict[str, str]) -> None:
    first = float(row["from"]) * MM[row["unit"]] * (1.001 if row["unit"] == "in" else 1.0)
    assert tolerance_mm(row["standard"], first) == pytest.approx(float(row["tolerance"]) * MM[row["unit"]], rel=1e-4)


def test_the_other_parts_of_en_10270_go_by_the_steps_of_part_1() -> None:
    assert wire_diameter_tolerance_mm("EN 10270-3", 0.9) == wire_diameter_tolerance_mm("EN 10270-1", 0.9) == 0.015


def test_class_t4_recalled_from_en_10218_2_reproduces_the_steps_from_0_8_mm_up() -> None:
    """0.015 times the root of the diameter, rounded up to the class's step (from memory), at each step's last size."""
    for row in ROWS:
        if row["standard"] == "EN 10270-1" and 0.8 <= float(row["to"]) <= 11.0:
            assert 0.015 * float(row["to"]) ** 0.5 == pytest.approx(float(row["tolerance"]), abs=0.0026)


def test_without_a_row_nothing_is_known() -> None:
    assert wire_diameter_tolerance_mm("EN 12166", 1.0) is None
    assert wire_diameter_tolerance_mm("EN 10270-1", 20.1) is None
    assert wire_diameter_tolerance_mm("ASTM A228", 0.1) is None
