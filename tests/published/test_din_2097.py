"""DIN 2097, tolerances of cold coiled extension springs: every row of the free length at hand.

Grade 2 was read whole; grades 1 and 3 were not to be had up to 400 mm, and are from memory above. The coil diameter has
EN 15800's table (test_en_15800.py), the force its form (from memory).
"""

from __future__ import annotations

import csv
from math import nan
from pathlib import Path

import pytest

from sourcing.springs.extension_tolerances import extension_force_tolerance_n, extension_free_length_tolerance_mm
from sourcing.springs.tolerances import force_tolerance_n

from .checks import Check, Source, check

JUST_OVER = 1.001
BEYOND_MM = 1000.0


def read_rows() -> list[dict[str, str]]:
    with (Path(__file__).parent / "free_length_din_2097.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


ROWS = read_rows()


def tolerance_mm(length_mm: float, index: float, grade: str) -> float:
    found = extension_free_length_tolerance_mm(length_mm, index, int(grade))
    return nan if found is None else found


def checked(row: dict[str, str]) -> Check:
    place = f"grade {row['grade']}, L0 over {row['over_mm']} mm, index to {row['index']}"
    source = Source("DIN 2097", place, row["read"])
    index = float(row["index"])
    if row["percent"]:
        return check(
            "free length tolerance, %",
            row["percent"],
            source,
            lambda: 100.0 * tolerance_mm(BEYOND_MM, index, row["grade"]) / BEYOND_MM,
        )
    return check(
        "free length tolerance, mm",
        row["tolerance_mm"],
        source,
        lambda: tolerance_mm(float(row["to_mm"]), index, row["grade"]),
    )


CHECKS = [checked(row) for row in ROWS]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_the_tolerance_is_the_standards(check: Check) -> None:
    check.must_agree()


@pytest.mark.parametrize(
    "row", [row for row in ROWS if not row["percent"]], ids=lambda row: f"{row['over_mm']}-{row['index']}"
)
def test_a_band_begins_just_over_its_lower_edge(row: dict[str, str]) -> None:
    length, index = float(row["over_mm"]) * JUST_OVER or 0.01, float(row["index_over"]) * JUST_OVER
    assert tolerance_mm(length, index, row["grade"]) == float(row["tolerance_mm"])


def test_grades_1_and_3_are_not_known_up_to_400_mm() -> None:
    assert extension_free_length_tolerance_mm(400.0, 9.0, 1) is None
    assert extension_free_length_tolerance_mm(400.0, 9.0, 3) is None


def test_outside_an_index_of_4_to_20_nothing_is_known() -> None:
    assert extension_free_length_tolerance_mm(30.0, 3.9, 2) is None
    assert extension_free_length_tolerance_mm(30.0, 20.1, 2) is None
    assert extension_free_length_tolerance_mm(30.0, 4.0, 2) == 0.8


def test_the_force_has_the_form_of_a_compression_springs_and_wants_3_coils() -> None:
    for grade in (1, 2, 3):
        assert extension_force_tolerance_n(14.7, 1.0, 12.0, 6.0, grade) == force_tolerance_n(
            14.7, 1.0, 12.0, 6.0, grade
        )
    assert extension_force_tolerance_n(14.7, 1.0, 12.0, 2.9, 2) is None
    assert extension_force_tolerance_n(14.7, 1.0, 12.0, 3.0, 2) is not None
