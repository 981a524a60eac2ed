"""JIS B 2704-2, tolerances of cold coiled springs: every row at hand, at both edges of its band.

The rows stand in jis_tolerance.csv, an independent copy. They stand in for what the European tables at hand lack: the
rate, the initial tension, and torsion springs, for DIN 2194's tables were not to be had.
"""

from __future__ import annotations

import csv
from math import nan
from pathlib import Path

import pytest

from sourcing.springs.jis_tolerances import HANDBOOK_TORQUE, jis_tolerance, torsion_torque_tolerance_n_mm
from sourcing.springs.tolerances import out_of_square_mm

from .checks import Check, Source, check

JUST_OVER = 1.001
LARGE = 1e6
"""A figure of which the share is always more than the least."""


def read_rows() -> list[dict[str, str]]:
    with (Path(__file__).parent / "jis_tolerance.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


ROWS = read_rows()


def place(row: dict[str, str]) -> str:
    return f"{row['kind']}, grade {row['grade']}, {row['by']} over {row['over']}"


def ours(row: dict[str, str], value: float, by: float | None = None) -> float:
    inside = float(row["to"] or 100.0) if by is None else by
    tolerance = jis_tolerance(row["figure"], row["kind"], inside, value, int(row["grade"]))
    return nan if tolerance is None else tolerance


def checks_of(row: dict[str, str]) -> list[Check]:
    source = Source("JIS B 2704-2", place(row), row["read"])
    found = []
    if row["percent"]:
        found.append(check(f"{row['figure']}, %", row["percent"], source, lambda: 100.0 * ours(row, LARGE) / LARGE))
    if row["least"]:
        found.append(check(f"{row['figure']}, least", row["least"], source, lambda: ours(row, 0.0)))
    return found


HANDBOOK = Source("Machinery's Handbook, 31st ed.", "p. 343, torque at a stated angle", "a stored page")
LEANING = Source("JIS B 2704-2", "leaning of a compression spring, grade 2", "a spring maker's page")
CHECKS = [
    *(each for row in ROWS for each in checks_of(row)),
    check("torque of a torsion spring, %", "10", HANDBOOK, lambda: 100.0 * HANDBOOK_TORQUE),
    check("out_of_square_mm over L0", "0.05", LEANING, lambda: out_of_square_mm(100.0) / 100.0),
]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_the_tolerance_is_the_standards(check: Check) -> None:
    check.must_agree()


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['figure']} {place(row)}")
def test_a_band_begins_just_over_its_lower_edge(row: dict[str, str]) -> None:
    just_over = float(row["over"]) * JUST_OVER or 0.001
    assert ours(row, LARGE, just_over) == pytest.approx(ours(row, LARGE))


def test_the_lowest_edges_themselves_belong_to_the_first_bands() -> None:
    assert jis_tolerance("coil diameter", "torsion", 4.0, 0.0, 2) == 0.2
    assert jis_tolerance("rate", "extension", 3.0, 1.0, 2) == 0.10
    assert jis_tolerance("coil diameter", "torsion", 3.99, 0.0, 2) is None


def test_outside_the_rows_nothing_is_known() -> None:
    assert jis_tolerance("coil diameter", "extension", 22.1, 10.0, 2) is None
    assert jis_tolerance("free angle", "torsion", 30.1, 90.0, 2) is None
    assert jis_tolerance("leg length", "torsion", 0.8, 20.0, 2) is None
    assert torsion_torque_tolerance_n_mm(90.0, 1.0, 30.1, 2) is None
    assert torsion_torque_tolerance_n_mm(90.0, 1.0, 2.9, 2) is None


def test_a_torque_may_be_off_by_a_share_of_the_angle_and_by_some_degrees_more() -> None:
    """Grade 2, 6 coils: 5 % of 90 deg and 10 deg, at 2 N·mm/deg; the sense of turning does not matter."""
    assert torsion_torque_tolerance_n_mm(90.0, 2.0, 6.0, 2) == pytest.approx((0.05 * 90 + 10) * 2)
    assert torsion_torque_tolerance_n_mm(-90.0, 2.0, 6.0, 2) == torsion_torque_tolerance_n_mm(90.0, 2.0, 6.0, 2)


def test_the_coil_diameter_is_that_of_every_kind_and_the_degrees_of_a_torque_that_of_every_grade() -> None:
    for kind in ("compression", "extension", "torsion"):
        assert jis_tolerance("coil diameter", kind, 9.0, 10.0, 2) == 0.3
    assert {jis_tolerance("torque angle", "torsion", 6.0, 1.0, grade) for grade in (1, 2, 3)} == {10.0}


def test_no_row_stands_twice() -> None:
    keys = {(row["figure"], row["kind"], row["grade"], row["over"]) for row in ROWS}
    assert len(keys) == len(ROWS)
