"""Faires, Design of Machine Elements, problem 271 (spring of a solenoid brake).

Read in a stored copy of worked solutions; US units, 3 to 4 figures. Stress with Wahl's factor, 1.3 for the trial wire.
"""

from __future__ import annotations

import pytest

from sourcing.springs.compression import active_coils_for_rate, shear_stress_mpa, wahl_factor

from .checks import INCH_MM, KPSI_MPA, POUND_N, Book, Check, inches, kpsi
from .worked import Coil, solved

BOOK = Book("Faires, Design of Machine Elements, section 4", "a stored copy of worked solutions")


@BOOK.example(
    "faires 271",
    "problem 271, worked solutions p. 1-2",
    trial_wire_mm=inches("1.015"),
    trial_mean_diameter_mm=inches("5.72"),
    wahl_factor="1.3105",
    active_coils="11.05",
    deflection_mm=inches("3.12"),
    free_length_mm=inches("18.12"),
    shear_stress_mpa=kpsi("47.55"),
)
def problem_271() -> dict[str, float]:
    force, outside, allowable = 2850 * POUND_N, 7 * INCH_MM, 54 * KPSI_MPA
    wire, mean, modulus = 1 * INCH_MM, 5 * INCH_MM, 10_500 * KPSI_MPA
    factor = wahl_factor(mean / wire)
    chosen = Coil(wire, mean, 11.5, modulus)
    return {
        "trial_wire_mm": solved(lambda d: 1.3 * shear_stress_mpa(force, d, outside - d), allowable, 10, 60),
        "trial_mean_diameter_mm": solved(lambda mean: 1.3 * shear_stress_mpa(force, wire, mean), allowable, 50, 300),
        "wahl_factor": factor,
        "active_coils": active_coils_for_rate(wire, mean, force / (3 * INCH_MM), modulus),
        "deflection_mm": force / chosen.rate_n_per_mm,
        "free_length_mm": chosen.free_length_carrying(force, 15 * INCH_MM),
        "shear_stress_mpa": factor * shear_stress_mpa(force, wire, mean),
    }


CHECKS = BOOK.checks()


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_comes_to_fairess_figure(check: Check) -> None:
    check.must_agree()
