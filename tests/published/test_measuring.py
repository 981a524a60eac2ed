"""What measuring an unknown spring gives: the examples beside the ways of measuring it.

Worked out by another hand than ours, from the formulas of mass and rate.
"""

from __future__ import annotations

from math import pi

import pytest

from sourcing.springs.compression import active_coils_for_rate, rate_n_per_mm
from sourcing.springs.geometry import mass_g

from .checks import Check, Source, check
from .worked import solved

WEIGHED = Source("Weighing a spring", "8 coils of a mean diameter of 12 mm, steel of 7.85 kg/dm3", "derived")
MEASURED = Source("Measuring a spring", "a wire of 2.5 mm read as 2.6", "derived; a guide says over 15 %")
SOLVED = Source("Measuring a spring", "the least known size from the rate: d 1, D 12, n 6, G 81 500", "derived")

WIRE_MM = 8.0 * pi * 12.0


def rate(wire_mm: float) -> float:
    return rate_n_per_mm(wire_mm, 12.0, 6.0, 81_500.0)


CHECKS = [
    check("mass of a wire of 1 mm, g", "1.859", WEIGHED, lambda: mass_g(1.0, WIRE_MM, 7850.0)),
    check(
        "wire from 1.859 g, mm",
        "1.000",
        WEIGHED,
        lambda: solved(lambda wire: mass_g(wire, WIRE_MM, 7850.0), 1.859, 0.1, 10.0),
    ),
    check("rate too high by, %", "17.0", MEASURED, lambda: 100.0 * (rate(2.6) / rate(2.5) - 1.0)),
    check("wire, mm", "1.00000", SOLVED, lambda: solved(rate, 0.982591, 0.1, 10.0)),
    check("active coils", "6.00000", SOLVED, lambda: active_coils_for_rate(1.0, 12.0, 0.982591, 81_500.0)),
]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_is_the_examples_figure(check: Check) -> None:
    check.must_agree()
