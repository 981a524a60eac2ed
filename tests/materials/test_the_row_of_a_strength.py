"""Which row a strength comes from is told: listed size, band, or interpolated; and whether it was read."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.materials import find
from sourcing.materials.facts import Fact
from sourcing.materials.governing import governing_strength
from sourcing.materials.model import Magnet, Material
from sourcing.materials.plating import HYDROGEN, better_plated
from sourcing.materials.strength import tensile_strength_mpa


def wire(name: str) -> Material:
    found = find(name)
    assert found is not None
    return found


def row(name: str, diameter_mm: float) -> Fact:
    found = governing_strength(wire(name), diameter_mm)
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("name", "diameter_mm", "value", "ends"),
    [
        ("music-wire", 0.9, "2270", "SH, 0.9 mm"),
        ("music-wire", 0.87, "2270", "SH, 0.9 mm"),
        ("music-wire", 0.9 * (1 + 1e-9), "2270", "SH, 0.9 mm"),
        ("ASTM A228", 0.94, "2202.76", "music, interpolated up to 0.9652 mm"),
        ("EN 12166 CuSn6", 1.2, "900", "CuSn6, over 0.5 to 1.5 mm"),
        ("unknown-steel", 0.5, "2200", "SM, 0.5 mm"),
        ("unknown-steel", 2.0, "1520", "SL, 2 mm"),
    ],
)
def test_a_strength_is_told_with_its_row(name: str, diameter_mm: float, value: str, ends: str) -> None:
    found = row(name, diameter_mm)
    assert (found.figure, found.value, found.unit) == ("tensile strength", value, "MPa")
    assert found.source.endswith(f", {ends}")


def test_a_recalled_row_is_told_from_a_read_one() -> None:
    assert row("EN 10270-1 SL", 2.0).from_memory
    assert not row("EN 10270-1 SM", 2.0).from_memory


@pytest.mark.parametrize(
    ("name", "diameter_mm"),
    [("music-wire", 30.0), ("music-wire", 0.01), ("unknown-steel", 30.0), ("beryllium-copper", 1.0)],
)
def test_where_no_table_reaches_there_is_no_row(name: str, diameter_mm: float) -> None:
    assert governing_strength(wire(name), diameter_mm) is None


def test_what_a_keeper_wrote_down_has_no_row_of_ours_and_reaches_down_to_the_thinnest_wire() -> None:
    own = replace(wire("brass"), name="Telegraph bronze", standard="", own_strengths=((2.0, 1600.0),))
    assert tensile_strength_mpa(own, 0.2) == 1600.0
    assert tensile_strength_mpa(own, 2.1) is None
    assert governing_strength(own, 0.2) is None


@pytest.mark.parametrize("short", ["EN 10270-3 1.4310", "stainless-1.4310"])
def test_1_4310_without_a_word_is_of_normal_strength(short: str) -> None:
    assert replace(wire(short), name="") == replace(wire("EN 10270-3 1.4310 NS"), name="")


@pytest.mark.parametrize(
    ("bare", "plated", "better"), [(1, 2, True), (1, 1, False), (2, 2, False), (2, 3, False), (1, 3, True)]
)
def test_zinc_is_better_where_it_makes_a_wire_fit_for_what_it_was_not(bare: int, plated: int, better: bool) -> None:
    steel = replace(wire("music-wire"), corrosion={"damp": bare}, zinc_plated={"damp": plated})
    assert better_plated(steel, "damp") is better


def test_zinc_that_nobody_rated_and_surroundings_that_nobody_rated_for_bare_wire() -> None:
    assert not better_plated(replace(wire("music-wire"), corrosion={}, zinc_plated={}), "damp")
    assert better_plated(replace(wire("music-wire"), corrosion={}, zinc_plated={"damp": 2}), "damp")


def test_what_plating_costs_and_what_a_magnet_does_are_told_in_words() -> None:
    assert HYDROGEN.startswith("Plated by a bath, spring wire takes up hydrogen and may crack under load")
    assert HYDROGEN.endswith("or plate a hard spring at the bench.")
    assert [str(magnet) for magnet in Magnet] == ["not at all", "weakly", "a magnet holds it"]
