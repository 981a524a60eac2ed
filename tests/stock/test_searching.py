"""Springs and spools are listed by closed ranges and parts of texts, and in an order."""

from math import inf
from pathlib import Path

import pytest

from sourcing.quantities import Wanted, wanted_length_mm
from sourcing.stock.model import Bench, Catalogue
from sourcing.stock.reading import read_catalogue
from sourcing.stock.searching import (
    Asked,
    Range,
    closed_range,
    running_low,
    sorted_spools,
    sorted_springs,
    spools_asked,
    springs_asked,
)
from tests.files.told import written

SPRINGS = """
    springs:
      - {id: A, kind: compression, wire_diameter: 0.9, outside_diameter: 9.6, free_length: 31, total_coils: 9.75,
         ends: closed-ground, material: music-wire, place: drawer B4, on_hand: 1, least: 2}
      - {id: b, kind: compression, wire_diameter: 0.8, inside_diameter: 8, free_length: 20, total_coils: 9.75,
         ends: closed-ground, material: stainless-1.4310, rate: 1 N/mm, seller: Alder Row, price: 0.5, least: 0}
      - {id: C, kind: compression, wire_diameter: 1.0, mean_diameter: 9, free_length: 40, total_coils: 9.75,
         ends: closed-ground, material: music-wire, place: drawer B5, on_hand: 2, least: 2}
"""
SPOOLS = """
    spools:
      - {id: W, material: music-wire, wire_diameter: 0.8, place: rack 2}
      - {id: V, material: stainless-1.4310, wire_diameter: 0.9, length_left: 2 m}
"""


@pytest.fixture
def catalogue(tmp_path: Path) -> Catalogue:
    written(tmp_path, SPRINGS, "springs/a.yaml")
    written(tmp_path, SPOOLS, "spools/a.yaml")
    return read_catalogue(tmp_path)


def ids(catalogue: Catalogue, kind: str | None = None, words: dict[str, str] | None = None, **ranges: Range) -> str:
    asked = Asked(kind, ranges, words or {})
    return "".join(item.id for item in (*springs_asked(catalogue, asked), *spools_asked(catalogue, asked)))


def test_nothing_asked_for_is_all_there_is(catalogue: Catalogue) -> None:
    assert ids(catalogue) == "AbCWV"


def test_a_range_holds_both_its_ends(catalogue: Catalogue) -> None:
    assert ids(catalogue, outside=(9.6, 10.0)) == "AbC"
    assert ids(catalogue, outside=(9.61, 10.0)) == "C"
    assert ids(catalogue, outside=(9.61, 9.99)) == ""
    assert ids(catalogue, inside=(8.0, 8.0)) == "bC"
    assert ids(catalogue, length=(31.0, inf)) == "AC"


def test_the_rate_is_the_stated_one_where_there_is_one(catalogue: Catalogue) -> None:
    assert ids(catalogue, rate=(1.0, 1.0)) == "b"
    assert ids(catalogue, rate=(1.3, 1.32)) == "A"


def test_a_wire_and_a_material_are_asked_of_spools_too_and_what_springs_alone_have_is_not(catalogue: Catalogue) -> None:
    assert ids(catalogue, wire=(0.8, 0.8)) == "bW"
    assert ids(catalogue, wire=(0.8, 0.8), length=(0.0, inf)) == "b"
    assert ids(catalogue, words={"material": "STAINLESS"}) == "bV"
    assert ids(catalogue, words={"place": "b4"}) == "A"
    assert ids(catalogue, words={"place": "2"}) == "W"
    assert ids(catalogue, words={"seller": "alder"}) == "b"


def test_a_kind_is_asked_for(catalogue: Catalogue) -> None:
    assert (ids(catalogue, "compression"), ids(catalogue, "spool"), ids(catalogue, "torsion")) == ("AbC", "WV", "")


@pytest.mark.parametrize(
    ("order", "falling", "expected"),
    [
        ("id", False, "AbC"),
        ("id", True, "CbA"),
        ("wire", False, "bAC"),
        ("outside", False, "AbC"),
        ("inside", True, "bCA"),
        ("rate", False, "bAC"),
        ("on-hand", True, "CAb"),
        ("place", True, "CAb"),
        ("price", True, "bAC"),
        ("seller", False, "bAC"),
        ("material", False, "ACb"),
    ],
)
def test_springs_are_sorted_and_those_without_the_figure_come_last(
    catalogue: Catalogue, order: str, falling: bool, expected: str
) -> None:
    assert "".join(stock.id for stock in sorted_springs(catalogue.springs, order, falling)) == expected


def test_spools_are_sorted_by_what_they_have_and_else_stay(catalogue: Catalogue) -> None:
    assert [spool.id for spool in sorted_spools(catalogue.spools, "length", False)] == ["V", "W"]
    assert [spool.id for spool in sorted_spools(catalogue.spools, "rate", False)] == ["W", "V"]


def test_low_is_below_the_least_that_is_wanted_and_not_on_it(catalogue: Catalogue) -> None:
    assert [stock.id for stock in running_low(catalogue)] == ["A"]


def test_a_figure_without_a_tolerance_has_that_of_the_house_and_a_wire_its_own() -> None:
    bench = Bench()
    assert closed_range("length", Wanted(31.0), bench) == (30.0, 32.0)
    assert closed_range("outside", Wanted(9.6), bench) == pytest.approx((9.3, 9.9))
    assert closed_range("rate", Wanted(2.0), bench) == pytest.approx((1.7, 2.3))
    assert closed_range("wire", Wanted(0.9), bench) == pytest.approx((0.895, 0.905))


@pytest.mark.parametrize(
    ("text", "expected"),
    [("31 mm ± 2 mm", (29, 33)), ("8..10 mm", (8, 10)), (">= 5", (5, inf)), ("<= 5", (-inf, 5)), ("31 ± 0", (31, 31))],
)
def test_a_tolerance_a_range_and_a_bound_are_taken_as_they_are_written(text: str, expected: Range) -> None:
    assert closed_range("length", wanted_length_mm(text), Bench()) == expected
