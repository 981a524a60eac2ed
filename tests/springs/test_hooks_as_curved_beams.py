"""The stress of a hook against curved-beam theory, its section integrated numerically.

A curved wire's fibres at the inside of the bend are shorter than those outside, so that plane sections load them more
(Winkler and Bach): the neutral axis lies at A/∫dA/r, nearer the inside, and the stress falls off as 1/r across the
section. Wahl's factor for bending comes to the same, in closed form.
"""

from __future__ import annotations

from math import pi, sin, sqrt
from random import Random

import numpy as np
import pytest
from scipy.integrate import quad

from sourcing.springs import hooks
from sourcing.springs.torsion import curvature_factor, inner_curvature_factor

WAHL_ERROR, EN_ERROR = 0.0005, 0.02


def stress_inside_mpa(moment_n_mm: float, pull_n: float, wire_mm: float, radius_mm: float) -> float:
    """Stress at the inside of a round wire bent to a mean radius, under a moment that opens it and a pull."""
    half = wire_mm / 2

    def chord(out: float) -> float:
        return 2 * sqrt(max(0.0, half**2 - out**2))

    area = quad(chord, -half, half)[0]
    neutral = area / quad(lambda out: chord(out) / (radius_mm + out), -half, half)[0]
    inside = radius_mm - half
    bending = moment_n_mm * (neutral - inside) / (area * (radius_mm - neutral) * inside)
    return bending + pull_n / area


def stress_of_loop_mpa(force_n: float, wire_mm: float, radius_mm: float) -> float:
    """The greatest stress in a full loop whose load runs through its middle, wherever along it that is."""
    around = np.linspace(0.0, pi / 2, 91)
    pulls = [force_n * sin(angle) for angle in around]
    return max(stress_inside_mpa(pull * radius_mm, pull, wire_mm, radius_mm) for pull in pulls)


def factor(index: float) -> float:
    """Stress at the inside of a bent wire over that of a straight one."""
    return stress_inside_mpa(1.0, 0.0, 1.0, index / 2) / (32 / pi)


def some_loops(count: int, seed: int) -> list[tuple[float, float, float]]:
    """Force, wire and mean diameter of loops as large as their coils, index 4 to 20."""
    random = Random(seed)
    drawn = ((random.uniform(1.0, 200.0), random.uniform(0.3, 4.0), random.uniform(4.0, 20.0)) for _ in range(count))
    return [(force, wire, index * wire) for force, wire, index in drawn]


@pytest.mark.parametrize(("force", "wire", "mean"), some_loops(20, seed=6))
def test_the_stress_of_a_full_loop_is_that_of_a_curved_beam(force: float, wire: float, mean: float) -> None:
    ours = hooks.bending_stress_mpa(force, wire, mean, hooks.loop_factor(mean / wire))
    assert ours == pytest.approx(stress_of_loop_mpa(force, wire, mean / 2), rel=WAHL_ERROR)


@pytest.mark.parametrize("index", [4.0, 5.0, 6.5, 8.0, 12.0, 20.0])
def test_wahls_factor_for_bending_is_that_of_a_curved_beam(index: float) -> None:
    """The same factor stands for a loop and for the coils of a torsion spring."""
    assert hooks.loop_factor(index) == pytest.approx(factor(index), rel=WAHL_ERROR)
    assert inner_curvature_factor(index) == hooks.loop_factor(index)


@pytest.mark.parametrize("index", [4.0, 5.0, 6.5, 8.0, 12.0, 20.0])
def test_ens_factor_for_bending_lies_on_the_safe_side_of_a_curved_beam(index: float) -> None:
    assert factor(index) < curvature_factor(index) == pytest.approx(factor(index), rel=EN_ERROR)


def test_down_to_an_index_of_2_wahls_factor_for_bending_is_within_0_6_per_cent() -> None:
    """The tightest bend that is asked about."""
    assert hooks.loop_factor(2.0) == pytest.approx(factor(2.0), rel=0.006)
