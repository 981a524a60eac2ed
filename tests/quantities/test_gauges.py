"""Gauge numbers lead to the diameters that the tables print.

AWG has a formula (ASTM B258); for the others each value stands beside where it was read. Values marked (memory) were
recalled and not checked against the page.
"""

from __future__ import annotations

import csv
from importlib import resources

import pytest

from sourcing.quantities import QuantityError, length_mm, wanted_wire_diameter_mm, wire_diameter_mm
from sourcing.quantities.gauges import SYSTEMS, diameters_mm

MACHINERY = "Machinery's Handbook, 31st ed., table 14"
SHIGLEY = "Shigley, Mechanical Engineering Design, table A-28"
SHIGLEY_MEMORY = f"{SHIGLEY} (memory)"
PIANO_WIRE = "encyclopedia entry, piano wire"
WIRE_GAUGE = "encyclopedia entry, wire gauge"
BUILDING = "imperial standard wire gauge, a building construction handbook"
MUSIC_LIST = "music wire gauge list"

PUBLISHED_INCH: list[tuple[str, float, str]] = [
    ("MWG 6/0", 0.004, SHIGLEY_MEMORY),
    ("MWG 1/0", 0.009, SHIGLEY_MEMORY),
    ("MWG 1", 0.010, SHIGLEY_MEMORY),
    ("MWG 8", 0.020, SHIGLEY_MEMORY),
    ("MWG 12", 0.029, PIANO_WIRE),
    ("MWG 12.5", 0.030, PIANO_WIRE),
    ("MWG 17.5", 0.040, PIANO_WIRE),
    ("MWG 18", 0.041, PIANO_WIRE),
    ("MWG 20", 0.045, PIANO_WIRE),
    ("MWG 24", 0.055, MACHINERY),
    ("MWG 27", 0.067, SHIGLEY),
    ("MWG 30", 0.080, MACHINERY),
    ("MWG 37", 0.118, MACHINERY),
    ("MWG 38", 0.125, MUSIC_LIST),  # an older table has 0.124
    ("MWG 45", 0.180, MUSIC_LIST),
    ("WM 7/0", 0.490, WIRE_GAUGE),
    ("WM 4/0", 0.3938, SHIGLEY_MEMORY),
    ("WM 1/0", 0.3065, WIRE_GAUGE),
    ("WM 1", 0.283, SHIGLEY_MEMORY),
    ("WM 3", 0.2437, MACHINERY),
    ("WM 4", 0.2253, MACHINERY),
    ("WM 5", 0.207, MACHINERY),
    ("WM 6", 0.192, MACHINERY),
    ("WM 7", 0.177, MACHINERY),
    ("WM 8", 0.162, MACHINERY),
    ("WM 9", 0.1483, MACHINERY),
    ("WM 10", 0.135, MACHINERY),
    ("WM 16", 0.0625, SHIGLEY_MEMORY),
    ("SWG 7/0", 0.500, BUILDING),
    ("SWG 4/0", 0.400, BUILDING),
    ("SWG 1/0", 0.324, BUILDING),
    ("SWG 1", 0.300, BUILDING),
    ("SWG 6", 0.192, BUILDING),  # one sheet prints 4.48 mm, a misprint of 4.88
    ("SWG 8", 0.160, BUILDING),
    ("SWG 10", 0.128, BUILDING),
    ("SWG 14", 0.080, BUILDING),
    ("SWG 16", 0.064, BUILDING),
    ("SWG 20", 0.036, BUILDING),
    ("SWG 22", 0.028, BUILDING),
    ("SWG 30", 0.0124, BUILDING),
    ("SWG 40", 0.0048, BUILDING),
    ("SWG 50", 0.001, BUILDING),
]

HALF_A_TENTH_OF_A_MICROMETRE = 0.00005
"""The table's mm are rounded to 0.0001 mm."""


@pytest.mark.parametrize(("gauge", "inch", "source"), PUBLISHED_INCH)
def test_a_gauge_number_is_the_published_diameter(gauge: str, inch: float, source: str) -> None:
    assert wire_diameter_mm(gauge) == pytest.approx(inch * 25.4, abs=HALF_A_TENTH_OF_A_MICROMETRE * 1.001), source


@pytest.mark.parametrize("number", range(-5, 51))
def test_every_american_gauge_agrees_with_the_formula_of_astm_b258(number: int) -> None:
    """ASTM B258: diameter = 0.127 mm × 92 ^ ((36 - n) / 39), with n = 0 for 1/0, -1 for 2/0."""
    gauge = f"{1 - number}/0" if number < 1 else str(number)
    by_formula_mm = 0.127 * 92 ** ((36 - number) / 39)
    assert wire_diameter_mm(f"AWG {gauge}") == pytest.approx(by_formula_mm, abs=HALF_A_TENTH_OF_A_MICROMETRE * 1.001)


def test_music_wire_gauge_20_is_exactly_1_143_mm() -> None:
    assert wire_diameter_mm("MWG 20") == 1.143


@pytest.mark.parametrize("system", SYSTEMS)
def test_diameters_run_one_way_along_a_gauge(system: str) -> None:
    """The music wire gauge grows with its number, the others shrink."""
    diameters = list(diameters_mm()[system].values())
    assert diameters == sorted(diameters, reverse=system != "MWG")
    assert len(set(diameters)) == len(diameters)


def test_every_row_of_the_table_names_its_source_and_its_two_units_agree() -> None:
    """AWG inches are rounded to 0.00001 in, which is 0.00013 mm either way; the others are exact in inches."""
    with resources.files("sourcing.tables").joinpath("gauges.csv").open(encoding="utf-8") as lines:
        rows = list(csv.DictReader(lines))
    assert len(rows) == 233
    for row in rows:
        assert row["source"], row
        rounding_mm = 0.00018 if row["system"] == "AWG" else HALF_A_TENTH_OF_A_MICROMETRE * 1.001
        assert float(row["mm"]) == pytest.approx(float(row["inch"]) * 25.4, abs=rounding_mm), row


def test_a_row_known_from_memory_alone_says_so() -> None:
    with resources.files("sourcing.tables").joinpath("gauges.csv").open(encoding="utf-8") as lines:
        rows = list(csv.DictReader(lines))
    recalled = [row for row in rows if "(memory)" in row["source"] and not row["agrees_with"]]
    assert recalled
    assert {row["flag"] for row in recalled} == {"memory"}


@pytest.mark.parametrize(
    ("written", "same_as"),
    [
        ("SWG 0", "SWG 1/0"),
        ("SWG 00", "SWG 2/0"),
        ("WM 000", "WM 3/0"),
        ("AWG 0000", "AWG 4/0"),
        ("SWG 0000000", "SWG 7/0"),
        ("MWG 12 1/2", "MWG 12.5"),
        ("MWG20", "MWG 20"),
        ("MWG\u00a020", "MWG 20"),
    ],
)
def test_a_gauge_number_may_be_written_in_these_ways(written: str, same_as: str) -> None:
    assert wire_diameter_mm(written) == wire_diameter_mm(same_as)


def test_a_bare_number_is_never_a_gauge() -> None:
    assert wire_diameter_mm("20") == 20.0


def test_a_wanted_wire_may_be_a_gauge_with_a_tolerance_or_a_range_of_gauges() -> None:
    assert wanted_wire_diameter_mm("MWG 20").nominal == 1.143
    assert wanted_wire_diameter_mm("MWG 20 ± 0.02 mm").smallest == pytest.approx(1.123)
    assert wanted_wire_diameter_mm("MWG 18..MWG 20").low == pytest.approx(1.0414)


def test_a_gauge_number_in_another_length_is_refused() -> None:
    with pytest.raises(QuantityError) as refused:
        length_mm("MWG 20")
    assert refused.value.found == "MWG 20 is a gauge number, and a gauge number is a wire diameter"
    assert refused.value.suggestions == ("1.143 mm",)
