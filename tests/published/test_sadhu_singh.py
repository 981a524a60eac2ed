"""Sadhu Singh, Machine Design-I, ch. 8: its worked examples of compression and extension springs.

Read in a worked copy of the solutions; digits as printed there. Stress with Wahl's factor; ends closed and ground;
free length = solid length + 1.15 times the greatest deflection; pitch L0/(nt - 1), see `Coil.pitch_over_all_coils`.
"""

from __future__ import annotations

import pytest

from sourcing.springs import extension
from sourcing.springs.compression import (
    active_coils_for_rate,
    direct_shear_factor,
    rate_n_per_mm,
    shear_stress_mpa,
    wahl_factor,
)

from .checks import Book, Check, rounded_up
from .worked import Coil, mean_diameter_with, pulsating_safety, solved

BOOK = Book("Sadhu Singh, Machine Design-I, ch. 8", "a worked copy of the solution")

COILS_UP = "the book rounds the coils up to whole ones"


@BOOK.example(
    "sadhu singh 8.1",
    "example 8.1, p. 227",
    wahl_factor="1.184",
    required_wire_mm="4.15",
    active_coils="14",
    total_coils="16",
    free_length_mm="123.0",
    pitch_mm="8.3",
    slenderness="3.647",
    buckling_load_hinged_n="170.5",
    buckling_load_fixed_n="480.5",
)
def example_8_1() -> dict[str, float]:
    # The coils are carried on unrounded, the free length as 124 mm.
    wanted_rate = (300 - 250) / 8
    factor = wahl_factor(8)
    coil = Coil(4.25, 34, active_coils_for_rate(4.25, 34, wanted_rate, 84_000), 84_000)
    return {
        "wahl_factor": factor,
        "required_wire_mm": solved(lambda wire: factor * shear_stress_mpa(300, wire, 8 * wire), 420, 1, 20),
        "active_coils": coil.active_coils,
        "total_coils": coil.total_coils,
        "free_length_mm": coil.free_length_closing_at(1.15 * 300),
        "pitch_mm": coil.pitch_over_all_coils(124),
    }


@BOOK.example("sadhu singh 8.2", "example 8.2, p. 228 (fatigue)", safety_factor="1.44")
def example_8_2() -> dict[str, float]:
    return {"safety_factor": pulsating_safety(60, 140, 3, 18, 0.22 * 1430, 0.45 * 1430)}


@BOOK.example(
    "sadhu singh 8.4",
    "example 8.4, p. 230 (fatigue)",
    required_wire_mm="8.48",
    mean_diameter_mm="54",
    active_coils=rounded_up("9", 1, COILS_UP),
    free_length_mm="127.75",
)
def example_8_4() -> dict[str, float]:
    mean = mean_diameter_with("spring_index", 6, 9)
    coils = active_coils_for_rate(9, mean, 1200 / 25, 82_000)
    return {
        "required_wire_mm": solved(lambda wire: pulsating_safety(500, 1200, wire, 6 * wire, 350, 760), 1.5, 1, 50),
        "mean_diameter_mm": mean,
        "active_coils": coils,
        # The book keeps the deflection of the unrounded coils beside the solid length of the rounded ones.
        "free_length_mm": Coil(9, mean, coils, 82_000, total_coils_stated=11).free_length_closing_at(1.15 * 1200),
    }


@BOOK.example(
    "sadhu singh 8.5",
    "example 8.5, p. 231 (valve)",
    max_force_n="5301.4",
    required_wire_mm="13",
    mean_diameter_mm="78",
    active_coils=rounded_up("8", 1, COILS_UP),
    total_coils="10",
    free_length_mm="199",
    pitch_mm="22.1",
)
def example_8_5() -> dict[str, float]:
    wanted_rate = 3534.3 / 40
    factor = wahl_factor(6)
    force = wanted_rate * (40 + 20)
    wire = solved(lambda wire: factor * shear_stress_mpa(force, wire, 6 * wire), 600, 1, 50)
    mean = mean_diameter_with("spring_index", 6, wire)
    coils = active_coils_for_rate(wire, mean, wanted_rate, 85_000)
    coil = Coil(wire, mean, coils, 85_000, total_coils_stated=10)
    free_length = coil.free_length_closing_at(wanted_rate * 1.15 * 60)
    return {
        "max_force_n": coil.force_n(free_length, free_length - 60),
        "required_wire_mm": wire,
        "mean_diameter_mm": mean,
        "active_coils": coils,
        "total_coils": Coil(wire, mean, 8).total_coils,
        "free_length_mm": free_length,
        "pitch_mm": coil.pitch_over_all_coils(free_length),
    }


@BOOK.example(
    "sadhu singh 8.7",
    "example 8.7, p. 232 (the spring of a lever-loaded valve)",
    rate_check_n_per_mm="61.85",
    wahl_factor="1.2525",
    required_wire_mm="7.54",
    active_coils_unrounded="6.29",
)
def example_8_7() -> dict[str, float]:
    force, pulled_mm = 1484.4, 24
    rate = solved(lambda rate: extension.force_n(0, rate, pulled_mm), force, 1, 1000)
    factor = wahl_factor(6)
    return {
        "rate_check_n_per_mm": rate,
        "wahl_factor": factor,
        "required_wire_mm": solved(lambda wire: factor * shear_stress_mpa(force, wire, 6 * wire), 500, 1, 50),
        "active_coils_unrounded": active_coils_for_rate(8, 6 * 8, rate, 84_000),
    }


@BOOK.example(
    "sadhu singh 8.12",
    "example 8.12, p. 236 (corrected in the worked copy)",
    force_direct_factor_n="412.3",
    deflection_per_coil_direct_mm="9.954",
    force_wahl_n="382.5",
    deflection_per_coil_wahl_mm="9.234",
)
def example_8_12() -> dict[str, float]:
    def force_n(factor: float) -> float:
        return solved(lambda force: factor * shear_stress_mpa(force, 6, 69), 350, 1, 1000)

    one_coil = rate_n_per_mm(6, 69, 1, 84_000)
    direct, wahl = force_n(direct_shear_factor(69 / 6)), force_n(wahl_factor(69 / 6))
    return {
        "force_direct_factor_n": direct,
        "deflection_per_coil_direct_mm": direct / one_coil,
        "force_wahl_n": wahl,
        "deflection_per_coil_wahl_mm": wahl / one_coil,
    }


CHECKS = BOOK.checks()


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_comes_to_sadhu_singhs_figure(check: Check) -> None:
    check.must_agree()
