"""The starter catalogue holds together: its figures follow from one another, worked out here by arithmetic of its own.

The data are invented, so nothing here checks the program: it checks the data, with formulas written out again and
units converted by hand, and asks the program only for its table of tensile strength and for its reader.
"""

from __future__ import annotations

import re
from math import floor, log10, pi
from pathlib import Path

import pytest
import yaml

from sourcing import materials
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.springs.model import CompressionSpring
from sourcing.stock.reading import read_catalogue

CATALOG = Path(__file__).parents[2] / "catalog"
STARTER = Path(__file__).parents[2] / "sourcing" / "starter" / "catalog"

MM_PER_INCH = 25.4
N_PER_MM_PER_LBF_PER_IN = 4.4482216152605 / 25.4  # the international pound and standard gravity
SHEAR_MODULUS_MPA = {"music-wire": 81_500, "EN 10270-1 SM": 81_500, "stainless-1.4310": 73_000}
"""EN 13906-1, table of moduli; stainless as a spring maker's materials page has it, after heat treatment."""
MUSIC_WIRE_INCH = {6: 0.016, 8: 0.020, 10: 0.024, 13: 0.031, 17: 0.039, 20: 0.045, 22: 0.049, 26: 0.063}
"""Music wire gauge, as the wire tables of Shigley and Machinery's Handbook give it."""
DEAD_COILS = {"open": 0, "open-ground": 1, "closed": 2, "closed-ground": 2}
SOLID_COILS_MORE = {"open": 1.5, "open-ground": 0.0, "closed": 1.5, "closed-ground": 0.0}
"""Coils' thicknesses that the solid length has beyond the total coils: EN 13906-1 clause 9, ground and not ground."""
STATIC_LIMIT_AT_SOLID = 0.56
"""EN 13906-1: uncorrected shear stress at solid over the least tensile strength, cold-coiled springs."""


def entries(folder: Path, room: str, key: str) -> list[dict[str, str]]:
    """Every entry of every file of a folder, each value as the text that stands there."""
    found: list[dict[str, str]] = []
    for path in sorted((folder / room).glob("*.yaml")):
        found += yaml.load(path.read_text("utf-8"), yaml.BaseLoader)[key]
    return found


EVERYTHING = entries(CATALOG, "springs", "springs")
SPRINGS = [spring for spring in EVERYTHING if spring["kind"] == "compression"]
SPOOLS = entries(CATALOG, "spools", "spools")
STATED = [spring for spring in SPRINGS if "rate" in spring]
EVERY_SPRING = pytest.mark.parametrize("spring", SPRINGS, ids=[spring["id"] for spring in SPRINGS])

EVERY_STATED_RATE = pytest.mark.parametrize("spring", STATED, ids=[spring["id"] for spring in STATED])


def millimetres(text: str) -> float:
    """A length of these files in mm: a bare number, inches in decimals or fractions, or a music wire gauge."""
    if gauge := re.fullmatch(r"MWG (\d+)", text):
        return MUSIC_WIRE_INCH[int(gauge[1])] * MM_PER_INCH
    if not text.endswith(" in"):
        return float(text)
    parts = (part.split("/") for part in text.removesuffix(" in").split())
    return MM_PER_INCH * sum(float(part[0]) / (float(part[1]) if len(part) > 1 else 1.0) for part in parts)


def mean_diameter_mm(spring: dict[str, str]) -> float:
    wire = millimetres(spring["wire_diameter"])
    given = {"outside_diameter": -wire, "mean_diameter": 0.0, "inside_diameter": wire}
    (key,) = given.keys() & spring.keys()
    return millimetres(spring[key]) + given[key]


def coils(spring: dict[str, str]) -> tuple[float, float]:
    """Active and total coils."""
    dead = DEAD_COILS[spring["ends"]]
    active = float(spring["active_coils"]) if "active_coils" in spring else float(spring["total_coils"]) - dead
    total = float(spring["total_coils"]) if "total_coils" in spring else float(spring["active_coils"]) + dead
    return active, total


def solid_length_mm(spring: dict[str, str]) -> float:
    return (coils(spring)[1] + SOLID_COILS_MORE[spring["ends"]]) * millimetres(spring["wire_diameter"])


def rate_n_per_mm(spring: dict[str, str]) -> float:
    """One over the deflection of the wire in torsion under one newton: s = 8 F D^3 n / (G d^4)."""
    wire, mean, (active, _) = millimetres(spring["wire_diameter"]), mean_diameter_mm(spring), coils(spring)
    return SHEAR_MODULUS_MPA[spring["material"]] * wire**4 / (8.0 * mean**3 * active)


def solid_stress_over_strength(spring: dict[str, str]) -> float:
    """Torque over the wire's section modulus, as a share of the least tensile strength."""
    wire = millimetres(spring["wire_diameter"])
    force_n = rate_n_per_mm(spring) * (millimetres(spring["free_length"]) - solid_length_mm(spring))
    stress_mpa = force_n * mean_diameter_mm(spring) / 2.0 / (pi * wire**3 / 16.0)
    material = materials.find(spring["material"])
    assert material is not None
    strength_mpa = tensile_strength_mpa(material, wire)
    assert strength_mpa is not None
    return stress_mpa / strength_mpa


def half_a_last_digit(text: str) -> float:
    """Half a unit of the last digit written: "0.556" -> 0.0005."""
    decimals = len(text.partition(".")[2])
    return 0.5 * 10.0**-decimals


# --- how much there is, and of what


def test_the_catalogue_has_at_least_44_springs_from_two_lists_and_a_drawer() -> None:
    assert len(SPRINGS) >= 44
    assert {spring["seller"] for spring in SPRINGS if "seller" in spring} == {
        "Alder Row stock list",
        "Kettle Lane list",
    }
    assert sum(1 for spring in SPRINGS if int(spring.get("on_hand", 0)) > 0) >= 12


def test_the_springs_span_wires_indices_ends_and_materials() -> None:
    wires = [millimetres(spring["wire_diameter"]) for spring in SPRINGS]
    indices = [mean_diameter_mm(spring) / millimetres(spring["wire_diameter"]) for spring in SPRINGS]
    assert (min(wires), max(wires)) == (0.3, 2.5)
    assert (min(indices), max(indices)) == (pytest.approx(4.0), pytest.approx(20.0))
    assert {spring["ends"] for spring in SPRINGS} == set(DEAD_COILS)
    assert {"music-wire", "stainless-1.4310"} <= {spring["material"] for spring in SPRINGS}


def test_inches_fractions_gauges_and_each_of_the_three_diameters_are_shown() -> None:
    texts = [text for spring in SPRINGS for text in spring.values()]
    for shown in (r"MWG \d+", r"\d+/\d+ in", r"\d+ \d+/\d+ in", r"[\d.]+ lbf/in", r"[\d.]+ N/mm"):
        assert any(re.fullmatch(shown, text) for text in texts), shown
    assert {"outside_diameter", "mean_diameter", "inside_diameter"} <= {key for spring in SPRINGS for key in spring}


def test_there_are_eight_spools_and_one_of_them_is_nearly_empty() -> None:
    wires = sorted((spool["material"], spool["wire_diameter"]) for spool in SPOOLS)
    assert wires == [
        *(("music-wire", wire) for wire in ("0.4", "0.5", "0.6", "0.8", "0.9", "1.0", "1.2")),
        ("stainless-1.4310", "1.0"),
    ]
    assert [spool["id"] for spool in SPOOLS if float(spool["length_left"].removesuffix(" m")) < 1.0] == ["W05"]


def test_the_spool_of_the_worked_trial_carries_that_trial() -> None:
    (tried,) = (spool for spool in SPOOLS if "trials" in spool)
    (trial,) = tried["trials"]
    assert tried["id"] == "W08"
    assert (trial["mandrel"], trial["outside_diameter"]) == ("6.0", "8.9")


def test_ids_are_unique_over_springs_and_spools() -> None:
    ids = [entry["id"] for entry in (*EVERYTHING, *SPOOLS)]
    assert len(ids) == len(set(ids))


# --- each spring in itself


@EVERY_STATED_RATE
def test_the_stated_rate_is_that_of_the_dimensions_within_its_rounding(spring: dict[str, str]) -> None:
    figure, unit = spring["rate"].split()
    scale = {"N/mm": 1.0, "lbf/in": N_PER_MM_PER_LBF_PER_IN}[unit]
    assert abs(float(figure) - rate_n_per_mm(spring) / scale) <= half_a_last_digit(figure) * 1.000001


@EVERY_STATED_RATE
def test_a_rate_is_stated_to_three_figures(spring: dict[str, str]) -> None:
    figure = spring["rate"].split()[0]
    assert len(figure.partition(".")[2]) == 2 - floor(log10(float(figure)))


@EVERY_SPRING
def test_a_spring_is_longer_free_than_solid_and_wider_than_two_wires(spring: dict[str, str]) -> None:
    assert millimetres(spring["free_length"]) > solid_length_mm(spring)
    assert mean_diameter_mm(spring) > millimetres(spring["wire_diameter"])


@EVERY_SPRING
def test_active_coils_are_at_least_two_and_no_more_than_there_are(spring: dict[str, str]) -> None:
    active, total = coils(spring)
    assert 2.0 <= active <= total


@EVERY_SPRING
def test_a_spring_can_be_pressed_solid_unless_its_note_says_not_to(spring: dict[str, str]) -> None:
    warned = "do not press it solid" in spring.get("note", "")
    assert (solid_stress_over_strength(spring) > STATIC_LIMIT_AT_SOLID) == warned


@EVERY_SPRING
def test_a_spring_lies_in_a_place_or_has_a_seller_with_a_price(spring: dict[str, str]) -> None:
    if "seller" in spring:
        assert re.fullmatch(r"\d+\.\d\d EUR", spring["price"])
    else:
        assert int(spring["on_hand"]) > 0
    assert ("place" in spring) == ("on_hand" in spring)


def test_the_bench_knows_the_postage_of_every_seller() -> None:
    sellers = yaml.load((CATALOG / "bench.yaml").read_text("utf-8"), yaml.BaseLoader)["sellers"]
    assert {spring["seller"] for spring in SPRINGS if "seller" in spring} == set(sellers)
    assert all("postage" in seller and "lead_days" in seller for seller in sellers.values())


# --- as the reader sees it


@pytest.mark.parametrize("catalog", [CATALOG, STARTER], ids=["catalog", "starter"])
def test_the_reader_finds_neither_a_mistake_nor_a_doubt(catalog: Path) -> None:
    read = read_catalogue(catalog)
    assert read.warnings == ()
    assert [spring.id for spring in read.springs] == [spring["id"] for spring in entries(catalog, "springs", "springs")]
    assert [spool.id for spool in read.spools] == [spool["id"] for spool in entries(catalog, "spools", "spools")]


def test_the_reader_sees_the_dimensions_that_the_arithmetic_here_sees() -> None:
    cylinders = [read.spring for read in read_catalogue(CATALOG).springs if isinstance(read.spring, CompressionSpring)]
    for seen, spring in zip(cylinders, SPRINGS, strict=True):
        active, total = coils(spring)
        assert seen.wire_diameter_mm == pytest.approx(millimetres(spring["wire_diameter"]), abs=1e-9)
        assert seen.mean_diameter_mm == pytest.approx(mean_diameter_mm(spring), abs=1e-9)
        assert seen.free_length_mm == pytest.approx(millimetres(spring["free_length"]), abs=1e-9)
        assert (seen.active_coils, seen.total_coils) == (active, total)
        assert seen.shear_modulus_mpa == SHEAR_MODULUS_MPA[spring["material"]]


def test_both_benches_show_every_key_of_a_bench_set_or_commented_out() -> None:
    keys = {
        *("currency", "units", "hour_value", "rods", "tools", "printer_bed", "oven", "sellers", "spring_maker"),
        *("tolerances", "clearance", "hand_winding", "prefer"),
    }
    for catalog in (CATALOG, STARTER):
        text = (catalog / "bench.yaml").read_text("utf-8")
        assert set(re.findall(r"^(?:# )?([a-z_]+):", text, re.MULTILINE)) == keys
