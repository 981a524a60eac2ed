"""The torsion springs of the starter catalogue hold together, by arithmetic of their own.

The data are invented, so nothing here checks the program. What holds for every spring stands in test_catalogue.py.
"""

from __future__ import annotations

from math import degrees, pi

import pytest
import yaml

from tests.catalogue.test_catalogue import EVERYTHING, half_a_last_digit, millimetres

TORSION = [spring for spring in EVERYTHING if spring["kind"] == "torsion"]
EVERY_SPRING = pytest.mark.parametrize("spring", TORSION, ids=[spring["id"] for spring in TORSION])
ELASTIC_MODULUS_MPA = {"music-wire": 206_000, "EN 10270-1 SM": 206_000, "stainless-1.4310": 185_000}
"""EN 13906-1, table of moduli; stainless after EN 10270-3."""


def mean_diameter_mm(spring: dict[str, str]) -> float:
    wire = millimetres(spring["wire_diameter"])
    given = {"outside_diameter": -wire, "mean_diameter": 0.0, "inside_diameter": wire}
    (key,) = given.keys() & spring.keys()
    return millimetres(spring[key]) + given[key]


def coils(spring: dict[str, str]) -> float:
    return float(spring.get("total_coils") or spring["active_coils"])


def leg_mm(spring: dict[str, object], key: str) -> float:
    leg = spring[key]
    return millimetres(str(leg["length"] if isinstance(leg, dict) else leg))


def rate_n_mm_per_deg(spring: dict[str, str]) -> float:
    """One over the angle that the wire of the body and a third of the legs bends through under one N·mm."""
    wire = millimetres(spring["wire_diameter"])
    length = pi * mean_diameter_mm(spring) * coils(spring) + (leg_mm(spring, "leg_1") + leg_mm(spring, "leg_2")) / 3
    bends = degrees(length / (ELASTIC_MODULUS_MPA[spring["material"]] * pi * wire**4 / 64))
    return int(spring.get("bodies", 1)) / bends


def test_there_are_both_hands_a_double_spring_hooks_offsets_and_one_whose_hand_nobody_noted() -> None:
    assert {spring.get("hand") for spring in TORSION} == {"right", "left", None}
    assert any(spring.get("bodies") == "2" for spring in TORSION)
    shapes = {leg["shape"] for spring in TORSION for leg in spring.values() if isinstance(leg, dict)}
    assert shapes == {"hooked", "offset"}


@EVERY_SPRING
def test_a_stated_rate_is_that_of_the_dimensions(spring: dict[str, str]) -> None:
    if "rate" not in spring:
        return
    number, unit = spring["rate"].split(" ")
    assert unit == "N*mm/deg"
    measured = 0.05 * float(number) if "seller" not in spring else 0.0
    assert rate_n_mm_per_deg(spring) == pytest.approx(float(number), abs=half_a_last_digit(number) + measured)


@EVERY_SPRING
def test_the_angle_between_the_legs_is_the_one_that_the_coils_give(spring: dict[str, str]) -> None:
    """Legs that run straight off after whole coils lie in one line; each part of a coil turns them on."""
    if "free_angle" in spring:
        angle = float(spring["free_angle"].removesuffix(" deg"))
        assert (180 + 360 * coils(spring) - angle) % 360 == pytest.approx(0.0)


@EVERY_SPRING
def test_the_index_is_in_the_standards_range(spring: dict[str, str]) -> None:
    assert 4 <= mean_diameter_mm(spring) / millimetres(spring["wire_diameter"]) <= 20


def test_each_spring_that_is_sold_comes_in_both_hands() -> None:
    sold = [{**spring, "id": spring["id"][:-1], "hand": ""} for spring in TORSION if "seller" in spring]
    texts = sorted(yaml.dump(each) for each in sold)
    assert texts[::2] == texts[1::2]
