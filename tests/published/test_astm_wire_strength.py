"""ASTM A227, A228, A229, A231, A313, A401 and B159: the least strength of wire, every row that the program uses.

The rows stand in astm_wire_strength.csv as they are printed, in inches and ksi, with the source beside each; those of
A313 above 0.080 in and of A401 are from memory. The standards for
listed diameters let values between them be interpolated.
"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from itertools import pairwise
from math import isnan, nan, sqrt
from pathlib import Path

import pytest

from sourcing import materials
from sourcing.materials.strength import nominal_wire_diameters_mm, tensile_strength_mpa

from .checks import INCH_MM, KPSI_MPA, Check, Source, check, kpsi


@dataclass(frozen=True)
class Row:
    """One listed diameter, or one band, of a grade, as printed."""

    grade: str
    over_in: str
    diameter_in: str
    least_ksi: str
    greatest_ksi: float
    source: Source

    @property
    def diameter_mm(self) -> float:
        return float(self.diameter_in) * INCH_MM

    @property
    def least_mpa(self) -> float:
        return float(self.least_ksi) * KPSI_MPA


NAMES = {
    ("ASTM A228", "music"): "ASTM A228",
    ("ASTM A231", "chromium-vanadium"): "ASTM A231",
    ("ASTM A401", "chromium-silicon"): "ASTM A401",
    ("ASTM A313", "302"): "ASTM A313 302",
    ("ASTM B159", "C51000 H08"): "ASTM B159",
}


def read_rows() -> list[Row]:
    with (Path(__file__).parent / "astm_wire_strength.csv").open(encoding="utf-8", newline="") as lines:
        return [
            Row(
                NAMES.get((each["standard"], each["grade"]), f"{each['standard']} {each['grade']}"),
                each["over_in"],
                each["diameter_in"],
                each["least_ksi"],
                float(each["greatest_ksi"] or nan),
                Source(each["source"], f"{each['grade']}, {each['diameter_in']} in", each["read"]),
            )
            for each in csv.DictReader(line for line in lines if not line.startswith("#"))
        ]


ROWS = read_rows()
BY_GRADE = {grade: [row for row in ROWS if row.grade == grade] for grade in dict.fromkeys(row.grade for row in ROWS)}
LISTED = [grade for grade, rows in BY_GRADE.items() if not rows[0].over_in]
BANDED = [grade for grade in BY_GRADE if grade not in LISTED]


def strength_mpa(grade: str, wire_diameter_mm: float) -> float:
    material = materials.find(grade)
    assert material is not None, grade
    found = tensile_strength_mpa(material, wire_diameter_mm)
    return nan if found is None else found


def checked(row: Row) -> Check:
    return check(
        "tensile_strength_mpa", kpsi(row.least_ksi), row.source, lambda: strength_mpa(row.grade, row.diameter_mm)
    )


CHECKS = [checked(row) for row in ROWS]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_a_listed_diameter_has_the_strength_of_its_row(check: Check) -> None:
    check.must_agree()


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row.grade} {row.diameter_in} in")
def test_a_row_is_the_printed_one_to_a_mega_pascal(row: Row) -> None:
    assert strength_mpa(row.grade, row.diameter_mm) == pytest.approx(row.least_mpa, abs=0.51)


def test_all_rows_of_nine_grades_are_here() -> None:
    assert {grade: len(rows) for grade, rows in BY_GRADE.items()} == {
        "ASTM A227 class I": 29,
        "ASTM A227 class II": 29,
        "ASTM A228": 58,
        "ASTM A229 class I": 30,
        "ASTM A229 class II": 30,
        "ASTM A313 302": 48,
        "ASTM B159": 6,
        "ASTM A231": 16,
        "ASTM A401": 18,
    }
    assert BANDED == ["ASTM A313 302", "ASTM B159"]


@pytest.mark.parametrize("grade", BY_GRADE)
def test_the_program_lists_the_same_diameters(grade: str) -> None:
    material = materials.find(grade)
    assert material is not None
    assert nominal_wire_diameters_mm(material) == pytest.approx([row.diameter_mm for row in BY_GRADE[grade]], abs=1e-4)


@pytest.mark.parametrize("grade", LISTED)
def test_between_two_listed_diameters_the_strength_is_interpolated_on_logarithms(grade: str) -> None:
    """So halfway by ratio of diameters lies the geometric mean of the two strengths."""
    for thin, thick in pairwise(BY_GRADE[grade]):
        halfway_mm = sqrt(thin.diameter_mm * thick.diameter_mm)
        expected = sqrt(thin.least_mpa * thick.least_mpa)
        assert strength_mpa(grade, halfway_mm) == pytest.approx(expected, abs=0.6), thick.diameter_in


@pytest.mark.parametrize("grade", BANDED)
def test_within_a_band_the_strength_is_one(grade: str) -> None:
    for thin, thick in pairwise(BY_GRADE[grade]):
        assert thick.over_in == thin.diameter_in
        for diameter_mm in (thin.diameter_mm * 1.0001, (thin.diameter_mm + thick.diameter_mm) / 2):
            assert strength_mpa(grade, diameter_mm) == strength_mpa(grade, thick.diameter_mm), thick.diameter_in


@pytest.mark.parametrize("grade", BY_GRADE)
def test_outside_its_table_a_grade_has_no_strength(grade: str) -> None:
    smallest, largest = BY_GRADE[grade][0], BY_GRADE[grade][-1]
    assert isnan(strength_mpa(grade, largest.diameter_mm * 1.0001))
    if grade in LISTED:
        assert isnan(strength_mpa(grade, smallest.diameter_mm / 1.0001))
    else:
        assert strength_mpa(grade, smallest.diameter_mm / 2) == strength_mpa(grade, smallest.diameter_mm)


@pytest.mark.parametrize("standard", ["ASTM A227", "ASTM A229"])
def test_class_i_is_the_weaker_on_every_diameter(standard: str) -> None:
    """So a word that leaves the class open is class I."""
    first, second = (BY_GRADE[f"{standard} class {number}"] for number in ("I", "II"))
    assert [row.diameter_in for row in first] == [row.diameter_in for row in second]
    for one, two in zip(first, second, strict=True):
        assert one.least_mpa < two.least_mpa, one.diameter_in
        assert strength_mpa(standard, one.diameter_mm) == strength_mpa(f"{standard} class I", one.diameter_mm)


def test_no_greatest_strength_is_below_the_least_of_its_row() -> None:
    """Misprints of 255, 294 and 324 ksi were found so."""
    for row in ROWS:
        assert isnan(row.greatest_ksi) or float(row.least_ksi) + 18 <= row.greatest_ksi <= float(row.least_ksi) + 50, (
            row
        )


def test_phosphor_bronze_by_en_12166_is_weaker_than_by_astm_b159_on_every_diameter() -> None:
    """The word phosphor-bronze rests on the weaker of the two, whose rows are recalled; those of B159 were read."""
    diameters_mm = [0.1 * step for step in range(2, 81)]
    ratios = [strength_mpa("phosphor-bronze", mm) / strength_mpa("ASTM B159", mm) for mm in diameters_mm]
    assert min(ratios) > 0.89
    assert max(ratios) < 1.0
