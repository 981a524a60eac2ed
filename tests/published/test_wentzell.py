"""T. H. Wentzell, Machine Design, example 8.2: read in a worked copy, two decimals in inch units."""

from __future__ import annotations

import pytest

from sourcing.springs.compression import active_coils_for_rate, rate_n_per_mm
from sourcing.springs.geometry import dead_coils
from sourcing.springs.model import Ends

from .checks import INCH_MM, KPSI_MPA, POUND_N, Book, Check, pounds_per_inch

BOOK = Book("T. H. Wentzell, Machine Design", "a worked copy of the solution")


@BOOK.example("wentzell 8.2", "example 8.2, p. 163", rate_n_per_mm=pounds_per_inch("70"), total_coils="12.79")
def example_8_2() -> dict[str, float]:
    wire, mean, modulus = 0.105 * INCH_MM, 0.62 * INCH_MM, 11_850 * KPSI_MPA
    wanted_rate = 35 * POUND_N / (0.5 * INCH_MM)
    coils = active_coils_for_rate(wire, mean, wanted_rate, modulus)
    return {
        "rate_n_per_mm": rate_n_per_mm(wire, mean, 12.79 - 2, modulus),
        "total_coils": coils + dead_coils(Ends.CLOSED_GROUND),
    }


CHECKS = BOOK.checks()


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_comes_to_wentzells_figure(check: Check) -> None:
    check.must_agree()
