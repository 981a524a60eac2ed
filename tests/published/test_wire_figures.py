"""Moduli, densities, temperatures and stress relief of spring wire, as seven books and a dozen makers print them.

The rows stand in wire_figures.csv with the source beside each. The sources disagree, and the program takes one of
them: a row that prints another figure says why it is not the one, and how far ours may lie from it is held here.
"""

from __future__ import annotations

import csv
from collections.abc import Mapping
from pathlib import Path

import pytest

from sourcing import materials

from .checks import Check, Published, Source, check
from .not_yet import OTHERWISE

Row = Mapping[str, str]

APART_PERCENT = {"steel": 8.0, "copper": 20.0, "density": 7.0}
"""How far two sources of one figure lie apart at most: moduli of steel and of copper alloys, densities."""


def read_rows() -> list[Row]:
    with (Path(__file__).parent / "wire_figures.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def ours(row: Row) -> float:
    material = materials.find(row["wire"])
    assert material is not None, row["wire"]
    name, _, surroundings = row["figure"].partition(" ")
    return material.corrosion[surroundings] if surroundings else getattr(material, name)


def checked(row: Row) -> Check:
    where = f"{row['where']}, our {row['wire']}" if row["figure"].startswith("corrosion") else row["where"]
    source = Source(row["source"], where, row["read"])
    return check(row["figure"], Published("", row["printed"], row["unit"]), source, lambda: ours(row))


ROWS = read_rows()
CHECKS = [checked(row) for row in ROWS if not row["otherwise"]]
DIFFERENT = [row for row in ROWS if row["wire"] and row["otherwise"]]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_a_figure_of_a_wire_is_the_printed_one(check: Check) -> None:
    check.must_agree()


def test_a_row_that_is_not_checked_says_why() -> None:
    assert {row["otherwise"] for row in ROWS} - {""} == set(OTHERWISE)
    assert all(bool(row["wire"]) == (row["otherwise"] != "absent") for row in ROWS)


def test_a_figure_that_agrees_is_never_set_aside() -> None:
    """Else a row would be left out of the checks without need."""
    low_high = [(checked(row).published.band, ours(row), row["where"]) for row in DIFFERENT]
    assert [where for (low, high), value, where in low_high if low <= value <= high] == []


@pytest.mark.parametrize("row", [row for row in DIFFERENT if row["figure"] == "service_high_c"], ids=str)
def test_where_sources_disagree_on_the_greatest_temperature_the_strictest_is_taken(row: Row) -> None:
    assert row["otherwise"] == "strictest"
    assert ours(row) < float(row["printed"])


@pytest.mark.parametrize("row", [row for row in DIFFERENT if "modulus" in row["figure"]], ids=str)
def test_where_sources_disagree_on_a_modulus_ours_is_near_each_of_them(row: Row) -> None:
    metal = "copper" if row["wire"].startswith("EN 12166") else "steel"
    assert abs(checked(row).difference_percent) <= APART_PERCENT[metal]


@pytest.mark.parametrize("row", [row for row in DIFFERENT if row["figure"].startswith("density")], ids=str)
def test_where_sources_disagree_on_a_density_ours_is_near_each_of_them(row: Row) -> None:
    assert abs(checked(row).difference_percent) <= APART_PERCENT["density"]
