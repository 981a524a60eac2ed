"""Springback: how far a coil wound cold on a mandrel opens when it is let go, and so what mandrel a spring wants.

Wire of diameter d is bent to the mean diameter D_m = mandrel + d; let go, it opens to D_f. Everything here is in the
index C = D/d and the flow strain s = sigma/E, the stress at which the wire yields over its modulus of elasticity.

1. Bending strain is linear over the section. With x = 1/(s C_m), the strain at the surface over the strain at first
   yield, a round section that yields at sigma and does not harden carries the moment M = sigma r^3 m(x), where
   m = (x/2) asin(1/x) + sqrt(1 - 1/x^2) (5 - 2/x^2)/6 for x >= 1, and m = pi x/4 for x <= 1.
2. g = 4 m/pi is that moment over the moment at first yield: 1 at x = 1, 16/(3 pi) = 1.698 fully plastic.
3. Letting go takes the moment away elastically: 1/C_f = 1/C_m - s g(x).
4. Backwards, with x_f = 1/(s C_f), the mandrel is the one root of x - g(x) = x_f; since 1 <= g <= 1.698 it lies
   between x_f + 1 and x_f + 1.698.

Derived for this project and checked numerically (section integrated by quadrature; round trips). It holds for wire
that does not harden; what hardening, residual stress and the pull at the hand add is in the flow stress, which trial
coils correct (trials.py). Turns, pitch and the energy let go are in turns.py.
"""

from __future__ import annotations

from collections.abc import Callable
from math import asin, cos, inf, pi, sin, sqrt

FULLY_PLASTIC = 16 / (3 * pi)
"""The moment of a fully plastic round section over its moment at first yield."""


def moment_ratio(surface_strain: float) -> float:
    """Bending moment over the moment at first yield, of a round section that yields without hardening.

    g(x) = (4/pi) [(x/2) asin(1/x) + sqrt(1 - 1/x^2) (5 - 2/x^2)/6] for x >= 1, and x below.

    `surface_strain`: x, the strain at the surface over the strain at first yield.
    Source: derived, see the head of this module; checked by quadrature over the section.

    >>> moment_ratio(1.0)
    1.0
    >>> round(moment_ratio(1e6), 4)
    1.6977
    """
    x = surface_strain
    if x <= 1:
        return x
    return 4 / pi * (x / 2 * asin(1 / x) + sqrt(1 - 1 / x**2) * (5 - 2 / x**2) / 6)


def moment_ratio_slope(surface_strain: float) -> float:
    """How `moment_ratio` rises with x: g'(x) = (2/pi) [asin(1/x) - (1/x) sqrt(1 - 1/x^2) (1 - 2/x^2)], 1 below x = 1.

    Source: derived, see the head of this module; checked against differences.

    >>> round(moment_ratio_slope(1.0), 3), round(moment_ratio_slope(8.0), 4)
    (1.0, 0.0033)
    """
    x = surface_strain
    if x <= 1:
        return 1.0
    return 2 / pi * (asin(1 / x) - sqrt(1 - 1 / x**2) * (1 - 2 / x**2) / x)


def surface_strain(index_on_mandrel: float, flow_strain: float) -> float:
    """The strain at the surface of the wire on the mandrel over the strain at first yield: x = 1/(s C_m)."""
    return 1 / (flow_strain * index_on_mandrel)


def released_index(index_on_mandrel: float, flow_strain: float, moment_kept: float = 1.0) -> float:
    """The index to which a coil opens when it is let go: 1/C_f = 1/C_m - s b g(1/(s C_m)).

    `index_on_mandrel`: C_m = (mandrel + d)/d. `flow_strain`: s = sigma/E. `moment_kept`: b, what the pull of the hand
    leaves of the bending moment. Infinite where the wire has not yielded and opens fully (C_m >= 1/s, b = 1).
    Source: derived, see the head of this module.

    >>> round(released_index((6.917 + 0.8) / 0.8, 0.012055) * 0.8, 2)
    9.6
    """
    curvature = released_curvature(index_on_mandrel, flow_strain, moment_kept)
    return 1 / curvature if curvature > 1e-12 else inf


def released_curvature(index_on_mandrel: float, flow_strain: float, moment_kept: float = 1.0) -> float:
    """One over the index after release, d/D_f: 0 where the wire opens fully."""
    x = surface_strain(index_on_mandrel, flow_strain)
    return 1 / index_on_mandrel - flow_strain * moment_kept * moment_ratio(x)


def mandrel_index(index_released: float, flow_strain: float, moment_kept: float = 1.0) -> float:
    """The index on the mandrel from which a coil opens to the wanted one: the root of x - b g(x) = x_f, C_m = 1/(s x).

    The inverse of `released_index`. x - b g(x) is convex, so Newton's steps from the upper end of the bracket come
    down to the root and never leave it.
    Source: derived, see the head of this module.

    >>> round(mandrel_index(9.6 / 0.8, 0.012055) * 0.8 - 0.8, 2)
    6.92
    """
    wanted = 1 / (flow_strain * index_released)
    x = _root_from_above(
        lambda x: x - moment_kept * moment_ratio(x) - wanted,
        lambda x: 1 - moment_kept * moment_ratio_slope(x),
        wanted + moment_kept * FULLY_PLASTIC,
    )
    return 1 / (flow_strain * x)


def flow_strain_shown(index_on_mandrel: float, index_released: float) -> float:
    """The flow strain that one coil shows: what s makes C_m open to C_f, the root of (1 - C_m/C_f) x = g(x).

    Raises ValueError where the coil is not larger than it was on the mandrel: no flow strain makes it so.
    Source: derived, see the head of this module.

    >>> round(flow_strain_shown(6.8 / 0.8, 8.1 / 0.8) * 206000)
    2302
    """
    opened = 1 - index_on_mandrel / index_released
    if opened <= 0:
        raise ValueError(f"a coil of index {index_released:g} has not opened from {index_on_mandrel:g}")
    x = _root_from_above(
        lambda x: opened * x - moment_ratio(x), lambda x: opened - moment_ratio_slope(x), FULLY_PLASTIC / opened
    )
    return 1 / (index_on_mandrel * x)


def stress_sensitivity(index_on_mandrel: float, flow_strain: float) -> float:
    """Relative change of the finished diameter by relative change of the flow stress: s C_f (g - x g').

    Source: derived, see the head of this module; checked against differences.

    >>> round(stress_sensitivity(9.646, 0.012055), 3)
    0.241
    """
    return released_index(index_on_mandrel, flow_strain) * curvature_fall(index_on_mandrel, flow_strain)


def curvature_fall(index_on_mandrel: float, flow_strain: float) -> float:
    """By how much d/D_f falls as ln(sigma) rises: s (g - x g'); 0 while the wire is elastic."""
    x = surface_strain(index_on_mandrel, flow_strain)
    return flow_strain * (moment_ratio(x) - x * moment_ratio_slope(x))


def mandrel_sensitivity(index_on_mandrel: float, flow_strain: float) -> float:
    """Relative change of the finished by relative change of the wound mean diameter: (C_f/C_m) (1 - g').

    Source: derived, see the head of this module; checked against differences.

    >>> round(mandrel_sensitivity(9.646, 0.012055), 3)
    1.241
    """
    slope = moment_ratio_slope(surface_strain(index_on_mandrel, flow_strain))
    return released_index(index_on_mandrel, flow_strain) / index_on_mandrel * (1 - slope)


def moment_kept(pull_fraction: float) -> float:
    """What is left of the fully plastic moment of round wire that is pulled while it is wound: cos^3(phi).

    phi, where sin(phi) is how far the neutral axis has moved over the radius, solves phi + sin(phi) cos(phi) = pi c/2.
    `pull_fraction`: c, the pull over the force at which the wire yields, 0 to 1.
    Source: derived (areas of the round section in tension and compression, both yielding).

    >>> [round(moment_kept(c), 3) for c in (0.05, 0.1, 0.2, 0.3)]
    [0.998, 0.991, 0.963, 0.916]
    """
    if not 0 <= pull_fraction < 1:
        raise ValueError(f"a pull of {pull_fraction:g} times the yield force is not between 0 and 1")
    phi = pi * pull_fraction / 4
    for _ in range(50):
        step = (phi + sin(phi) * cos(phi) - pi * pull_fraction / 2) / (2 * cos(phi) ** 2)
        phi -= step
        if abs(step) < 1e-15:
            break
    return cos(phi) ** 3


def plastic_moment_n_mm(flow_stress_mpa: float, wire_diameter_mm: float) -> float:
    """The moment that bends the wire round the mandrel, and so the moment at the crank: sigma d^3/6.

    Source: derived, the fully plastic round section (4/3) sigma r^3.

    >>> round(plastic_moment_n_mm(1.08 * 2299, 0.8))
    212
    """
    return flow_stress_mpa * wire_diameter_mm**3 / 6


def _root_from_above(value: Callable[[float], float], slope: Callable[[float], float], start: float) -> float:
    """Newton's method on a convex, rising function from a start above its root: every step is downwards."""
    x = start
    for _ in range(60):
        steepness = slope(x)
        if steepness <= 0:
            return x
        step = value(x) / steepness
        x -= step
        if abs(step) <= 1e-15 * x:
            return x
    return x
