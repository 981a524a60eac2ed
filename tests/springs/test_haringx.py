"""Buckling against Haringx's column, solved numerically.

A spring as a column that bends, shears and shortens (J. A. Haringx, On highly compressible helical springs and rubber
rods, 1948): a bending stiffness from half bending and half torsion of the wire, a shear stiffness from bending of the
wire, both falling with the compressed length. EN 13906-1 9.14 solves it in closed form.
"""

from __future__ import annotations

from itertools import pairwise
from math import pi

import numpy as np
import pytest
from scipy.linalg import expm
from scipy.optimize import brentq

from sourcing.springs.compression import rate_n_per_mm
from sourcing.springs.stability import buckling_length_mm

WIRE_MM, MEAN_MM, COILS = 1.0, 12.0, 10.0

# What is nothing at each end, of: shift across, tilt, moment, force across.
SHIFT, TILT, MOMENT, FORCE = range(4)
FLAT, HINGED, FLAT_BUT_SHIFTING, FREE = (SHIFT, TILT), (SHIFT, MOMENT), (TILT, FORCE), (MOMENT, FORCE)


def straightness(
    travel_mm: float, free_mm: float, shear_mpa: float, elastic_mpa: float, upper: tuple[int, int]
) -> float:
    """0 where a bowed shape is in equilibrium. The lower end is flat, or hinged where the upper one is."""
    length = free_mm - travel_mm
    bending = pi * WIRE_MM**4 / 64
    turn_in_bending = pi * MEAN_MM * COILS / 2 * (1 / (elastic_mpa * bending) + 1 / (shear_mpa * 2 * bending))
    stiffness = length / turn_in_bending
    shear = length * elastic_mpa * WIRE_MM**4 / (8 * MEAN_MM**3 * COILS)
    force = rate_n_per_mm(WIRE_MM, MEAN_MM, COILS, shear_mpa) * travel_mm
    column = np.array(
        [
            [0, 1 + force / shear, 0, 1 / shear],
            [0, 0, 1 / stiffness, 0],
            [0, -force * (1 + force / shear), 0, -1 - force / shear],
            [0, 0, 0, 0],
        ]
    )
    lower = HINGED if upper == HINGED else FLAT
    unknown = [row for row in range(4) if row not in lower]
    return float(np.linalg.det(expm(column * length)[np.ix_(upper, unknown)]))


def first_buckling_length_mm(
    free_mm: float, shear_mpa: float, elastic_mpa: float, upper: tuple[int, int]
) -> float | None:
    def bowed(travel: float) -> float:
        return straightness(travel, free_mm, shear_mpa, elastic_mpa, upper)

    travels = np.linspace(0.002, 0.82, 200) * free_mm
    for shorter, longer in pairwise(travels):
        if bowed(shorter) * bowed(longer) < 0:
            return free_mm - float(brentq(bowed, shorter, longer))
    return None


@pytest.mark.parametrize("moduli", [(81_500.0, 206_000.0), (73_000.0, 185_000.0), (42_000.0, 115_000.0)])
@pytest.mark.parametrize(
    ("upper", "seating"), [(FLAT, 0.5), (HINGED, 1.0), (FLAT_BUT_SHIFTING, 1.0), (FREE, 2.0)], ids=str
)
@pytest.mark.parametrize("slenderness", [5.6, 8.0])
def test_the_buckling_length_is_that_of_haringx_column(
    moduli: tuple[float, float], upper: tuple[int, int], seating: float, slenderness: float
) -> None:
    free = slenderness * MEAN_MM
    assert buckling_length_mm(free, MEAN_MM, *moduli, seating) == pytest.approx(
        first_buckling_length_mm(free, *moduli, upper), rel=1e-4
    )


def test_a_short_spring_between_plates_never_buckles() -> None:
    """Steel below a free length of 5.2 D, both ends flat and guided square (EN 13906-1 9.14)."""
    assert buckling_length_mm(5.1 * MEAN_MM, MEAN_MM, 81_500.0, 206_000.0) is None
    assert first_buckling_length_mm(5.1 * MEAN_MM, 81_500.0, 206_000.0, FLAT) is None
    assert buckling_length_mm(5.3 * MEAN_MM, MEAN_MM, 81_500.0, 206_000.0) is not None
