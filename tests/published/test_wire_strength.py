"""EN 10270-1, EN 10270-2, EN 10270-3 and EN 12166: the least tensile strength of wire, every row that the program uses.

The rows stand in wire_strength.csv, an independent copy with the source beside each; more than half of them are from
memory. The greatest strength is not the program's, and serves the check of the rows among themselves.
"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from itertools import pairwise
from math import isnan, nan
from pathlib import Path

import pytest

from sourcing import materials
from sourcing.materials.model import Material
from sourcing.materials.strength import nominal_wire_diameters_mm, tensile_strength_mpa

from .checks import Check, Source, check

NEXT_SIZE_BEGINS = 1.0001
"""A wire this much above a listed diameter belongs to the next one."""


@dataclass(frozen=True)
class Row:
    """One listed diameter, or one band, of a grade."""

    grade: str
    over_mm: float | None
    diameter_mm: float
    least: str
    greatest_mpa: float
    source: Source

    @property
    def least_mpa(self) -> float:
        return float(self.least)


def read_rows() -> list[Row]:
    with (Path(__file__).parent / "wire_strength.csv").open(encoding="utf-8", newline="") as lines:
        return [
            Row(
                f"{each['standard']} {each['grade']}",
                float(each["over_mm"]) if each["over_mm"] else None,
                float(each["diameter_mm"]),
                each["least_mpa"],
                float(each["greatest_mpa"] or nan),
                Source(each["source"], f"{each['grade']}, {each['diameter_mm']} mm", each["read"]),
            )
            for each in csv.DictReader(line for line in lines if not line.startswith("#"))
        ]


ROWS = read_rows()
BY_GRADE = {grade: [row for row in ROWS if row.grade == grade] for grade in dict.fromkeys(row.grade for row in ROWS)}
LEAST = {(row.grade, row.diameter_mm): row.least_mpa for row in ROWS}
GREATEST = {(row.grade, row.diameter_mm): row.greatest_mpa for row in ROWS}


def wire(grade: str) -> Material:
    material = materials.find(grade)
    assert material is not None, grade
    return material


def strength_mpa(grade: str, wire_diameter_mm: float) -> float:
    found = tensile_strength_mpa(wire(grade), wire_diameter_mm)
    return nan if found is None else found


def checked(row: Row) -> Check:
    return check("tensile_strength_mpa", row.least, row.source, lambda: strength_mpa(row.grade, row.diameter_mm))


CHECKS = [checked(row) for row in ROWS]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_a_listed_diameter_has_the_strength_of_its_row(check: Check) -> None:
    check.must_agree()


def test_all_rows_of_fifteen_grades_are_here() -> None:
    assert {grade: len(rows) for grade, rows in BY_GRADE.items()} == {
        "EN 10270-1 SL": 41,
        "EN 10270-1 SM": 77,
        "EN 10270-1 DM": 68,
        "EN 10270-1 SH": 68,
        "EN 10270-1 DH": 84,
        "EN 10270-3 1.4310 NS": 20,
        "EN 10270-3 1.4310 HS": 20,
        "EN 10270-3 1.4568 as drawn": 20,
        "EN 10270-3 1.4568 precipitation hardened": 20,
        "EN 12166 CuSn6": 4,
        "EN 12166 CuZn37": 3,
        "EN 10270-2 FDC": 25,
        "EN 10270-2 FDSiCr": 25,
        "EN 10270-2 VDSiCr": 18,
        "EN 10270-3 1.4401": 20,
    }


@pytest.mark.parametrize("grade", BY_GRADE)
def test_between_two_listed_diameters_the_next_larger_one_governs(grade: str) -> None:
    for smaller, larger in pairwise(BY_GRADE[grade]):
        just_above = smaller.diameter_mm * NEXT_SIZE_BEGINS
        halfway = (smaller.diameter_mm + larger.diameter_mm) / 2
        just_below = larger.diameter_mm / NEXT_SIZE_BEGINS
        for diameter in (just_above, halfway, just_below):
            assert strength_mpa(grade, diameter) == larger.least_mpa, diameter


@pytest.mark.parametrize("grade", BY_GRADE)
def test_outside_its_table_a_grade_has_no_strength(grade: str) -> None:
    smallest, largest = BY_GRADE[grade][0], BY_GRADE[grade][-1]
    assert isnan(strength_mpa(grade, largest.diameter_mm * NEXT_SIZE_BEGINS))
    if smallest.over_mm is None:
        assert isnan(strength_mpa(grade, smallest.diameter_mm / NEXT_SIZE_BEGINS))
    else:
        assert strength_mpa(grade, (smallest.over_mm + smallest.diameter_mm) / 2) == smallest.least_mpa


@pytest.mark.parametrize("grade", BY_GRADE)
def test_every_size_that_the_program_lists_stands_in_the_standards_table(grade: str) -> None:
    assert set(nominal_wire_diameters_mm(wire(grade))) <= {row.diameter_mm for row in BY_GRADE[grade]}


def stepped(upper: str, lower: str) -> list[tuple[float, float, float]]:
    """Least of the upper grade, greatest of the lower one, at each diameter that both list."""
    shared = [row for row in BY_GRADE[upper] if (lower, row.diameter_mm) in GREATEST]
    return [(row.diameter_mm, row.least_mpa, GREATEST[lower, row.diameter_mm]) for row in shared]


@pytest.mark.parametrize(
    ("upper", "lower", "shared"),
    [
        ("EN 10270-1 SH", "EN 10270-1 SM", 68),
        ("EN 10270-1 DH", "EN 10270-1 DM", 68),
        ("EN 10270-1 SM", "EN 10270-1 SL", 41),
    ],
)
def test_the_least_of_a_grade_is_ten_mpa_above_the_greatest_of_the_grade_below(
    upper: str, lower: str, shared: int
) -> None:
    """The standard's step, which holds on every row: read rows of SM vouch for recalled ones of SL, SH and DH."""
    steps = stepped(upper, lower)
    assert len(steps) == shared
    for diameter, least, greatest in steps:
        assert least == greatest + 10, diameter
        assert strength_mpa(upper, diameter) == greatest + 10, diameter


@pytest.mark.parametrize(("dynamic", "static", "shared"), [("DM", "SM", 68), ("DH", "SH", 68)])
def test_a_grade_for_dynamic_duty_is_as_strong_as_its_fellow_for_static_duty(
    dynamic: str, static: str, shared: int
) -> None:
    """On every diameter that both list: so DM, recalled, follows SM, which was read."""
    both = [row for row in BY_GRADE[f"EN 10270-1 {static}"] if (f"EN 10270-1 {dynamic}", row.diameter_mm) in LEAST]
    assert len(both) == shared
    for row in both:
        assert strength_mpa(f"EN 10270-1 {dynamic}", row.diameter_mm) == row.least_mpa, row.diameter_mm


def power_law_above_percent(grade: str) -> dict[float, float]:
    """How far the textbook's strength of music wire lies above the standard's least, by listed diameter.

    Shigley, Mechanical Engineering Design, 7th ed. and later, table 10-4 (constants read in solutions): 2211/d^0.145
    MPa for 0.10 to 6.5 mm. It is made for ASTM A228, above whose own least values it lies by 0.9 to 6.6 %.
    """
    listed = [row for row in BY_GRADE[grade] if row.diameter_mm <= 6.5]
    return {
        row.diameter_mm: 100 * (2211 / row.diameter_mm**0.145 / strength_mpa(grade, row.diameter_mm) - 1)
        for row in listed
    }


def test_the_power_law_of_the_textbook_promises_up_to_8_percent_more_than_the_standards_table() -> None:
    above = power_law_above_percent("EN 10270-1 SH")
    assert all(percent > 0 for diameter, percent in above.items() if diameter >= 1.6)
    assert min(above.values()) == pytest.approx(-1.5, abs=0.1)
    assert max(above.values()) == pytest.approx(8.0, abs=0.1)


def test_for_the_weaker_grade_the_power_law_promises_at_least_a_tenth_too_much() -> None:
    above = power_law_above_percent("EN 10270-1 SM")
    assert min(above.values()) > 10
