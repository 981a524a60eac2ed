"""Budynas and Nisbett, Shigley's Mechanical Engineering Design, 11th edition, ch. 10: the instructors' solutions.

Read in a stored copy; three figures carried on. Stress with Bergsträsser's factor, which is EN's; the yield stress
that the source prints is data here.
"""

from __future__ import annotations

import pytest

from sourcing.springs.compression import curvature_factor
from sourcing.springs.geometry import dead_coils
from sourcing.springs.model import Ends

from .checks import INCH_MM, KPSI_MPA, Book, Check, carried, kpsi, pounds
from .worked import Coil, corrected_stress_mpa, force_for_stress_n, yield_mpa

BOOK = Book(
    "Budynas and Nisbett, Shigley's Mechanical Engineering Design, 11th ed., ch. 10",
    "a stored copy of the instructors' solutions",
)


@BOOK.example(
    "shigley 11th 10-4",
    "problem 10-4",
    clash_fraction="0.29",
    shear_stress_1_mpa=carried("674", 0.05, "the factor for curvature is carried on with three decimals"),
    safety_1="1.29",
    solid_stress_mpa="870.5",
    ssy_over_solid_stress="1",
)
def problem_10_4() -> dict[str, float]:
    coil, allowed_mpa = Coil(2.5, 28.5, 13), 871.2
    stress_1 = corrected_stress_mpa(130, 2.5, 28.5)
    return {
        "clash_fraction": force_for_stress_n(allowed_mpa, coil) / 130 - 1,
        "shear_stress_1_mpa": stress_1,
        "safety_1": allowed_mpa / stress_1,
    }


@BOOK.example(
    "shigley 11th 10-5",
    "problem 10-5 (closed ends, not ground)",
    factor_bergstraesser="1.135",
    solid_force_n=pounds("67.2"),
    solid_stress_mpa=kpsi("48.56"),
    ssy_mpa=kpsi("99.3"),
    safety_solid="2.04",
)
def problem_10_5() -> dict[str, float]:
    wire, mean = 0.2 * INCH_MM, 2 * INCH_MM
    coil = Coil(wire, mean, 12 - dead_coils(Ends.CLOSED), 11_200 * KPSI_MPA, Ends.CLOSED)
    # The book's solid length is (nt + 1) d; EN and ours have half a wire more and touch that much sooner.
    to_the_books_solid_length = 5 * INCH_MM - (coil.solid_length_mm - wire / 2)
    force = coil.rate_n_per_mm * to_the_books_solid_length
    stress = corrected_stress_mpa(force, wire, mean)
    return {
        "factor_bergstraesser": curvature_factor(mean / wire),
        "solid_force_n": force,
        "solid_stress_mpa": stress,
        "safety_solid": 99.3 * KPSI_MPA / stress,
        "ssy_mpa": yield_mpa("ASTM A229", 147 / 0.2**0.187 * KPSI_MPA),
    }


CHECKS = BOOK.checks()


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_comes_to_the_11th_editions_figure(check: Check) -> None:
    check.must_agree()
