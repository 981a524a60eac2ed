"""The cones of the starter catalogue hold together, by arithmetic of its own: coils added up in thin slices.

The data are invented, so nothing here checks the program. What holds for every spring stands in test_catalogue.py.
"""

from __future__ import annotations

from math import pi, sqrt

import pytest

from sourcing import materials
from sourcing.materials.strength import tensile_strength_mpa
from tests.catalogue.test_catalogue import (
    EVERYTHING,
    SHEAR_MODULUS_MPA,
    SOLID_COILS_MORE,
    STATIC_LIMIT_AT_SOLID,
    coils,
    half_a_last_digit,
    millimetres,
)

CONES = [spring for spring in EVERYTHING if spring["kind"] == "conical"]
EVERY_CONE = pytest.mark.parametrize("cone", CONES, ids=[cone["id"] for cone in CONES])
SLICES = 1000


def mean_diameters_mm(cone: dict[str, str]) -> tuple[float, float]:
    wire = millimetres(cone["wire_diameter"])
    more = {"outside": -wire, "mean": 0.0, "inside": wire}
    small, large = (
        next(millimetres(cone[f"{key}_diameter_{end}"]) + more[key] for key in more if f"{key}_diameter_{end}" in cone)
        for end in ("small", "large")
    )
    return small, large


def step_mm(cone: dict[str, str]) -> float:
    """How much smaller in radius each active turn is than the next."""
    small, large = mean_diameters_mm(cone)
    return (large - small) / (2 * coils(cone)[0])


def solid_length_mm(cone: dict[str, str]) -> float:
    wire, (active, total) = millimetres(cone["wire_diameter"]), coils(cone)
    if step_mm(cone) >= wire:
        return wire
    return active * sqrt(wire**2 - step_mm(cone) ** 2) + (total - active + SOLID_COILS_MORE[cone["ends"]]) * wire


def rate_n_per_mm(cone: dict[str, str]) -> float:
    """One over the twist of every slice of wire under one newton."""
    small, large = mean_diameters_mm(cone)
    middles = (small + (large - small) * (slice_ + 0.5) / SLICES for slice_ in range(SLICES))
    twisted = sum(8.0 * mean**3 for mean in middles) * coils(cone)[0] / SLICES
    return shear_modulus_mpa(cone) * millimetres(cone["wire_diameter"]) ** 4 / twisted


def shear_modulus_mpa(cone: dict[str, str]) -> float:
    return SHEAR_MODULUS_MPA[cone["material"]]


def test_cones_that_telescope_and_cones_that_stack_are_shown_with_two_ways_to_measure_them() -> None:
    assert {step_mm(cone) >= millimetres(cone["wire_diameter"]) for cone in CONES} == {True, False}
    assert {"outside_diameter_large", "inside_diameter_large"} <= {key for cone in CONES for key in cone}


@EVERY_CONE
def test_turns_that_go_inside_each_other_do_so_with_a_tenth_of_a_wire_to_spare(cone: dict[str, str]) -> None:
    wire = millimetres(cone["wire_diameter"])
    assert step_mm(cone) < wire or step_mm(cone) >= 1.1 * wire


@EVERY_CONE
def test_a_cone_is_longer_free_than_solid_and_both_its_ends_are_within_the_standards_index(
    cone: dict[str, str],
) -> None:
    wire, (small, large) = millimetres(cone["wire_diameter"]), mean_diameters_mm(cone)
    assert millimetres(cone["free_length"]) > solid_length_mm(cone)
    assert 4.0 * wire <= small < large <= 20.0 * wire


@EVERY_CONE
def test_a_stated_rate_is_the_initial_one_of_the_dimensions_within_its_rounding(cone: dict[str, str]) -> None:
    if "rate" in cone:
        figure = cone["rate"].split()[0]
        assert abs(float(figure) - rate_n_per_mm(cone)) <= half_a_last_digit(figure)


@EVERY_CONE
def test_the_smallest_coil_can_be_pressed_flat(cone: dict[str, str]) -> None:
    """Its gap p twists it by tau = p G d / (pi D^2), the torque on the wire over its section modulus."""
    wire, (small, _), (active, _) = millimetres(cone["wire_diameter"]), mean_diameters_mm(cone), coils(cone)
    gap = (millimetres(cone["free_length"]) - solid_length_mm(cone)) / active
    stress = gap * shear_modulus_mpa(cone) * wire / (pi * small**2)
    material = materials.find(cone["material"])
    assert material is not None
    strength = tensile_strength_mpa(material, wire)
    assert strength is not None
    assert stress <= STATIC_LIMIT_AT_SOLID * strength


@EVERY_CONE
def test_a_cone_lies_in_a_place(cone: dict[str, str]) -> None:
    assert int(cone["on_hand"]) > 0
    assert cone["place"]
