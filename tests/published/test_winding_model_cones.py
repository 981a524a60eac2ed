"""Conical springs: what the winding model of this project says beside ours, and the check values of its formulas.

Derived for this project, not read anywhere: the rate was held against three-dimensional beams, the rest worked out by
hand, twice and independently. No published worked example of a conical spring with its numbers was found.
"""

from __future__ import annotations

from math import pi

import pytest

from sourcing.springs import compression
from sourcing.springs.compression import shear_stress_mpa
from sourcing.springs.conical import Cone, closing_force_n, rate_n_per_mm, series_rate_n_per_mm
from sourcing.springs.conical_lengths import radius_step_mm, solid_pitch_mm, spiral_length_mm

from .checks import Check, Source, check

G_MPA = 81_500.0


def derived(where: str, read: str = "derived for this project and checked numerically") -> Source:
    return Source("Conical springs", where, read)


def cylinder_errs_percent(small_mm: float, large_mm: float) -> float:
    """How much stiffer a cylinder of the mean diameter is."""
    cylinder = compression.rate_n_per_mm(1.0, (small_mm + large_mm) / 2, 5.0, G_MPA)
    return 100 * (cylinder / rate_n_per_mm(1.0, small_mm, large_mm, 5.0, G_MPA) - 1)


def shorter_by_percent() -> float:
    """How much pi n times the mean diameter falls short of the developed length."""
    length = spiral_length_mm(7.0, 17.0, 5.0, 14.0 / 5.0)
    return 100 * (1 - pi * 5.0 * 12.0 / length)


HALF = Cone(1.0, 8.0, 16.0, 5.0, 1.0, G_MPA)
CONE = derived("mean diameters 7 to 17, n 5, height 14, d 0.9")
CYLINDER = derived("a cylinder at the mean diameter", "derived for this project and checked by beams")
BARREL = derived("hand-checked case 7: barrel 8-16-8, d 1, 5 + 5 coils", "derived for this project twice")
FORMULAS = derived("formulas: d 2, mean diameters 8 and 20, n 5, G 81 500 MPa", "derived for this project")

CHECKS = [
    check("rate, N/mm", "0.659", CONE, lambda: rate_n_per_mm(0.9, 7.0, 17.0, 5.0, G_MPA)),
    check("developed length beyond pi n D, %", "0.3", CONE, shorter_by_percent),
    *(
        check(
            f"stiffer than a cone of {small:g} and {large:g}, %",
            printed,
            CYLINDER,
            lambda small=small, large=large: cylinder_errs_percent(small, large),
        )
        for small, large, printed in ((8.0, 12.0, "4"), (7.0, 14.0, "11"), (7.0, 17.0, "17"), (6.0, 20.0, "29"))
    ),
    check("rate of one half, N/mm", "1.061", BARREL, lambda: series_rate_n_per_mm([HALF])),
    check("rate of the whole, N/mm", "0.531", BARREL, lambda: series_rate_n_per_mm([HALF, HALF])),
    check("a cylinder of D 12, N/mm", "0.590", BARREL, lambda: compression.rate_n_per_mm(1.0, 12.0, 10.0, G_MPA)),
    check("rate, N/mm", "10.0369", FORMULAS, lambda: rate_n_per_mm(2.0, 8.0, 20.0, 5.0, G_MPA)),
    check("solid pitch, mm", "1.6", FORMULAS, lambda: solid_pitch_mm(2.0, radius_step_mm(8.0, 20.0, 5.0))),
    check("closing force of D 20, pitch 4.6, N", "61.125", FORMULAS, lambda: closing_force_n(2.0, 20.0, 3.0, G_MPA)),
    check("stress at 20 N, factor 1.14, MPa", "145.149", FORMULAS, lambda: 1.14 * shear_stress_mpa(20.0, 2.0, 20.0)),
]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_is_the_known_answer(check: Check) -> None:
    check.must_agree()
