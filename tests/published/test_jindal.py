"""U. C. Jindal, Machine Design, ch. 8: its worked examples of compression, extension and torsion springs.

Read in a worked copy of the solutions, digits as shown, unrounded arithmetic; the book rounds more coarsely. Stress
with the factor for direct shear alone. Where the book's strength comes from a power law, A/d^m, the allowable stress
is data here: the program takes strength from the standard's table.
"""

from __future__ import annotations

from math import pi

import pytest

from sourcing.springs import extension, hooks, torsion
from sourcing.springs.compression import active_coils_for_rate, direct_shear_factor, shear_stress_mpa

from .checks import Book, Check, carried
from .worked import Coil, solved

BOOK = Book("U. C. Jindal, Machine Design, ch. 8", "a worked copy of the solution")


def stress_mpa(force_n: float, wire_diameter_mm: float, mean_diameter_mm: float) -> float:
    factor = direct_shear_factor(mean_diameter_mm / wire_diameter_mm)
    return factor * shear_stress_mpa(force_n, wire_diameter_mm, mean_diameter_mm)


@BOOK.example(
    "jindal 8-2",
    "example 8-2, p. 224 (a spring balance)",
    wire_diameter_mm=carried("2.314", 0.01, "the worked copy drops the digits after the third"),
    mean_diameter_mm="18.516",
    active_coils="11.117",
)
def example_8_2() -> dict[str, float]:
    force, modulus = 196.2, 77_200.0

    def spare_mpa(wire_mm: float) -> float:
        return 0.5 * 1855 / wire_mm**0.187 - stress_mpa(force, wire_mm, 8 * wire_mm)

    wire = solved(spare_mpa, 0, 1, 10)
    coils = solved(lambda coils: extension.rate_n_per_mm(wire, 8 * wire, coils, modulus), force / 50, 1, 100)
    return {"wire_diameter_mm": wire, "mean_diameter_mm": 8 * wire, "active_coils": coils}


@BOOK.example("jindal 8-3", "example 8-3, p. 225 (a hook fails)", sut_mpa="2060.5", hook_failure_force_n="211.3")
def example_8_3() -> dict[str, float]:
    """The book's factor for curvature is mean over inside radius, and it leaves the pull out: ours without it."""
    wire, radius = 1.626, 3.0
    factor, strength = radius / (radius - wire / 2), 2211 / wire**0.145

    def bending_mpa(force: float) -> float:
        pull = 4 * force / (pi * wire**2)
        return hooks.bending_stress_mpa(force, wire, 2 * radius, factor) - pull

    # For so tight a loop the book's factor is 9 % above ours, which is Wahl's.
    assert factor / hooks.loop_factor(2 * radius / wire) == pytest.approx(1.09, abs=0.005)
    return {"hook_failure_force_n": solved(bending_mpa, strength, 1, 1000)}


@BOOK.example("jindal 8-4", "example 8-4, p. 226", solid_length_mm="26.18", free_length_mm="83.68")
def example_8_4() -> dict[str, float]:
    coil = Coil(2.337, 22.2, active_coils_for_rate(2.337, 22.2, 150 / 50, 81_000), 81_000)
    return {
        "solid_length_mm": coil.solid_length_mm,
        "free_length_mm": coil.free_length_closing_at(1.15 * 150),
    }


@BOOK.example(
    "jindal 8-6",
    "example 8-6, p. 228",
    ssy_mpa="686.9",
    force_at_yield_n="41.1",
    deflection_mm="30.457",
    solid_length_mm="15.2375",
    free_length_mm="50.26",
)
def example_8_6() -> dict[str, float]:
    yield_mpa = 0.4 * 1783 / 1.219**0.19
    force = solved(lambda force: stress_mpa(force, 1.219, 11.281), yield_mpa, 1, 1000)
    # The book stacks 12.5 of the 13.5 coils, where EN stacks all: one wire less than ours.
    stacked = Coil(1.219, 11.281, 11.5, 80_700, total_coils_stated=12.5)
    assert Coil(1.219, 11.281, 11.5).solid_length_mm - stacked.solid_length_mm == pytest.approx(1.219)
    return {
        "force_at_yield_n": force,
        "deflection_mm": force / stacked.rate_n_per_mm,
        "solid_length_mm": stacked.solid_length_mm,
        "free_length_mm": stacked.free_length_closing_at(1.15 * force),
    }


@BOOK.example("jindal 8-8", "example 8-8, p. 229", allowable_force_n="77.5")
def example_8_8() -> dict[str, float]:
    allowable_mpa = 0.45 * 1783 / 2**0.19 / 1.5
    return {"allowable_force_n": solved(lambda force: stress_mpa(force, 2, 18), allowable_mpa, 1, 1000)}


@BOOK.example("jindal 8-13", "example 8-13, p. 233 (mean stress)", mean_shear_stress_mpa="169.77")
def example_8_13() -> dict[str, float]:
    return {"mean_shear_stress_mpa": stress_mpa(80, 3, 21)}


@BOOK.example(
    "jindal 8-14",
    "example 8-14, p. 234 (mean stress)",
    mean_shear_stress_mpa=carried("186.64", 0.05, "the book carries its factor on as 1.083"),
)
def example_8_14() -> dict[str, float]:
    return {"mean_shear_stress_mpa": stress_mpa(45.119, 2, 12)}


@BOOK.example(
    "jindal 8-9",
    "example 8-9, p. 230 (torsion spring; the constant of the rate with friction, 10.8 a turn)",
    max_torque_n_mm="497.25",
    body_deflection_turns="0.327",
    leg_equivalent_coils="0.293",
    leg_rate_n_mm_per_turn="22089.3",
    leg_deflection_turns="0.0225",
    loaded_mean_diameter_mm="13.46",
    initial_radial_clearance_mm="0.75",
    final_radial_clearance_mm="0.23",
)
def example_8_9() -> dict[str, float]:
    wire, mean, coils, modulus, rod = 1.5, 16 - 1.5, 4.25, 200_000.0, 11.5
    yield_mpa = 0.78 * 2211 / wire**0.145
    torque = torsion.torque_for_stress_n_mm(yield_mpa / torsion.inner_curvature_factor(mean / wire), wire)
    legs = torsion.coils_of_legs(20, 20, mean)
    body_rate, leg_rate = (
        360 * torsion.rate_with_friction_n_mm_per_deg(wire, mean, each, modulus) for each in (coils, legs)
    )
    loaded = torsion.wound_mean_diameter_mm(mean, coils, 360 * torque / body_rate)
    return {
        "max_torque_n_mm": torque,
        "body_deflection_turns": torque / body_rate,
        "leg_equivalent_coils": legs,
        "leg_rate_n_mm_per_turn": leg_rate,
        "leg_deflection_turns": torque / leg_rate,
        "loaded_mean_diameter_mm": loaded,
        "initial_radial_clearance_mm": (mean - wire - rod) / 2,
        "final_radial_clearance_mm": (loaded - wire - rod) / 2,
    }


CHECKS = BOOK.checks()


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_comes_to_jindals_figure(check: Check) -> None:
    check.must_agree()
