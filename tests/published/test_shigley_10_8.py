"""Shigley's Mechanical Engineering Design, ch. 10: Example 10-8, the torsion spring of stock wire on a pin.

From memory, three or four digits in inch units. The rate is the one with friction, 10.8 a turn. The book's greatest
torque, as it is remembered, does not follow from its own data, and is left out.
"""

from __future__ import annotations

import pytest

from sourcing.springs import torsion

from .checks import INCH_MM, KPSI_MPA, Book, Check, Published, carried, inches

BOOK = Book("Budynas and Nisbett, Shigley's Mechanical Engineering Design, ch. 10", "memory")


@BOOK.example(
    "shigley example 10-8",
    "Example 10-8",
    rate_n_mm_per_turn=Published("", "25.95", "lbf*in"),
    loaded_mean_diameter_mm=inches("0.558"),
    diametral_clearance_mm=carried("0.086", 0.5, "the mean diameter is carried on with three decimals", "in"),
)
def example_10_8() -> dict[str, float]:
    wire, mean, coils, pin = 0.072 * INCH_MM, 0.593 * INCH_MM, 4.25, 0.4 * INCH_MM
    active = coils + torsion.coils_of_legs(INCH_MM, INCH_MM, mean)
    loaded = torsion.wound_mean_diameter_mm(mean, coils, 360 * 0.268)
    return {
        "rate_n_mm_per_turn": 360 * torsion.rate_with_friction_n_mm_per_deg(wire, mean, active, 28_500 * KPSI_MPA),
        "loaded_mean_diameter_mm": loaded,
        "diametral_clearance_mm": loaded - wire - pin,
    }


CHECKS = BOOK.checks()


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_comes_to_shigleys_figure(check: Check) -> None:
    check.must_agree()
