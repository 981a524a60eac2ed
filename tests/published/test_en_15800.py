"""EN 15800, tolerances of cold coiled compression springs: every row of the coil diameter, and a worked spring.

The rows stand in coil_diameter_tolerance.csv, an independent copy with the source beside each. Force and free length
rest on coefficients recalled from memory; JIS B 2704-2 and a US table stand beside them for comparison.
"""

from __future__ import annotations

import csv
from math import nan
from pathlib import Path

import pytest

from sourcing.springs.tolerances import coil_diameter_tolerance_mm, force_tolerance_n, free_length_tolerance_mm

from .checks import Check, Source, check

JUST_OVER = 1.001


def read_rows() -> list[dict[str, str]]:
    with (Path(__file__).parent / "coil_diameter_tolerance.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


ROWS = read_rows()


def tolerance_mm(mean_diameter_mm: float, spring_index: float, grade: str) -> float:
    found = coil_diameter_tolerance_mm(mean_diameter_mm, spring_index, int(grade))
    return nan if found is None else found


def checked(row: dict[str, str]) -> Check:
    place = f"grade {row['grade']}, D to {row['diameter_mm']} mm, index to {row['index']}"
    source = Source(row["source"], place, row["read"])
    diameter, index = float(row["diameter_mm"]), float(row["index"])
    return check(
        "coil_diameter_tolerance_mm",
        row["tolerance_mm"],
        source,
        lambda: tolerance_mm(diameter, index, row["grade"]),
    )


DIAMETER_CHECKS = [checked(row) for row in ROWS]

RECALLED = Source("EN 15800", "force and free length, coefficients aF and kF", "memory")
WORKED = Source("EN 15800", "worked out for d 1, D 12, n 6, L0 32, grade 2, 14.7 N", "memory")
RATE = 0.982591
AF_N = 1.4525


def k_f(active_coils: float) -> float:
    """kF, as our tolerance of the free length shows it at a rate of 1 N/mm."""
    scatter = free_length_tolerance_mm(1.0, 1.0, 12.0, active_coils, 2)
    assert scatter is not None
    return scatter / AF_N


def force_percent() -> float:
    tolerance = force_tolerance_n(14.7, 1.0, 12.0, 6.0, 2)
    assert tolerance is not None
    return 100 * tolerance / 14.7


def length_mm(grade: int) -> float:
    tolerance = free_length_tolerance_mm(RATE, 1.0, 12.0, 6.0, grade)
    assert tolerance is not None
    return tolerance


CHECKS = [
    *DIAMETER_CHECKS,
    check("force tolerance, %", "12.0", WORKED, force_percent),
    check("free length tolerance, mm", "1.57", WORKED, lambda: length_mm(2)),
    check("coil diameter tolerance, mm", "0.35", WORKED, lambda: tolerance_mm(12.0, 12.0, "2")),
    check("kF, n 2", "1.52", RECALLED, lambda: k_f(2)),
    check("kF, n 5", "1.11", RECALLED, lambda: k_f(5)),
    check("kF, n 10", "0.96", RECALLED, lambda: k_f(10)),
    check("kF, n 20", "0.88", RECALLED, lambda: k_f(20)),
    check("Q, grade 1", "0.63", RECALLED, lambda: length_mm(1) / length_mm(2)),
    check("Q, grade 3", "1.6", RECALLED, lambda: length_mm(3) / length_mm(2)),
]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_the_tolerance_is_the_standards(check: Check) -> None:
    check.must_agree()


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['grade']}-{row['diameter_mm']}-{row['index']}")
def test_a_band_begins_just_over_its_lower_edge(row: dict[str, str]) -> None:
    diameter, index = float(row["over_mm"]) * JUST_OVER, float(row["index_over"]) * JUST_OVER
    assert tolerance_mm(diameter, index, row["grade"]) == float(row["tolerance_mm"])


def test_all_rows_of_three_grades_are_here() -> None:
    """17 diameters, 3 indices, 3 grades."""
    assert len({(row["grade"], row["diameter_mm"], row["index"]) for row in ROWS}) == len(ROWS) == 17 * 3 * 3


def test_an_index_of_4_itself_belongs_to_the_first_band() -> None:
    for row in ROWS:
        if row["index_over"] == "4":
            assert tolerance_mm(float(row["diameter_mm"]), 4.0, row["grade"]) == float(row["tolerance_mm"])


def test_outside_the_table_no_tolerance_is_known() -> None:
    largest = max(float(row["diameter_mm"]) for row in ROWS)
    smallest = min(float(row["over_mm"]) for row in ROWS)
    assert coil_diameter_tolerance_mm(largest * JUST_OVER, 10.0, 2) is None
    assert coil_diameter_tolerance_mm(smallest / JUST_OVER, 10.0, 2) is None
    assert coil_diameter_tolerance_mm(12.0, 20.0 * JUST_OVER, 2) is None
    assert coil_diameter_tolerance_mm(12.0, 4.0 / JUST_OVER, 2) is None


# The same spring by JIS B 2704-2, grade 2, and by a US handbook's table (one grade), as read on makers' pages.
@pytest.mark.parametrize(
    ("figure", "en", "jis", "us"),
    [
        ("force, %", force_percent(), 10.0, None),
        ("free length, mm", length_mm(2), 0.96, 0.79),
        ("coil diameter, mm", tolerance_mm(12.0, 12.0, "2"), 0.30, 0.25),
    ],
)
def test_en_allows_more_than_jis_and_us_practice(figure: str, en: float, jis: float, us: float | None) -> None:
    assert en > jis, figure
    if us is not None:
        assert jis > us, figure
