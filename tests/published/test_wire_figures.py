"""Moduli, densities, temperatures and stress relief of spring wire, as seven books and a dozen makers print them.

The rows stand in wire_figures.csv with the source beside each. The sources disagree, and the program takes one of
them: a row that prints another figure says why it is not the one, and must lie in the spread that the program tells.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Mapping
from pathlib import Path

import pytest

from sourcing import materials
from sourcing.materials.facts import facts
from sourcing.materials.model import Material

from .checks import Check, Published, Source, check
from .not_yet import OTHERWISE

Row = Mapping[str, str]


def read_rows() -> list[Row]:
    with (Path(__file__).parent / "wire_figures.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def wire(row: Row) -> Material:
    material = materials.find(row["wire"])
    assert material is not None, row["wire"]
    return material


def ours(row: Row) -> float:
    name, _, surroundings = row["figure"].partition(" ")
    if name == "modulus_fall":
        return wire(row).modulus_fall[0]
    return wire(row).corrosion[surroundings] if surroundings else getattr(wire(row), name)


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


@pytest.mark.parametrize("row", [row for row in DIFFERENT if not row["figure"].startswith("stress_relief")], ids=str)
def test_what_another_source_prints_lies_in_the_spread_that_the_program_tells(row: Row) -> None:
    """Between the bounds that stand beside the figure taken (sourcing/tables/materials.csv), or within 0.1 % of it."""
    told = spread(row)
    if told is None:
        assert checked(row).difference_percent == pytest.approx(0.0, abs=0.1)
        return
    low, high = checked(row).published.band
    assert told[0] <= high
    assert low <= told[1]


def spread(row: Row) -> tuple[float, float] | None:
    """What is told of the disagreement, where it is."""
    words = re.sub("_(mpa|kg_per_m3|c)$", "", row["figure"]).replace("_", " ")
    fact = [fact for fact in facts(wire(row)) if fact.figure == words][-1]
    return None if fact.low is None or fact.high is None else (fact.low, fact.high)
