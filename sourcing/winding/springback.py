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

from sourcing.figures import Holds, formula

_DERIVED = "derived, see winding_model"
_MANDREL = (Holds("index on the mandrel", "C_m", 2.0),)
_PULL = (Holds("pull over the yield force", "c", 0.0, 1.0),)

FULLY_PLASTIC = 16 / (3 * pi)
"""The moment of a fully plastic round section over its moment at first yield."""


@formula("g = x for x ≤ 1; (4/π) ((x/2) asin(1/x) + √(1 − 1/x²) (5 − 2/x²) / 6) otherwise", source=_DERIVED)
def moment_ratio(surface_strain: float) -> float:
    """Bending moment over the moment at first yield, of a round section that yields without hardening.

    x is the strain at the surface over the strain at first yield. Checked by quadrature over the section.

    >>> moment_ratio(1.0)
    1.0
    >>> round(moment_ratio(1e6), 4)
    1.6977
    """
    x = surface_strain
    if x <= 1:
        return x
    return 4 / pi * (x / 2 * asin(1 / x) + sqrt(1 - 1 / x**2) * (5 - 2 / x**2) / 6)


@formula("g' = 1 for x ≤ 1; (2/π) (asin(1/x) − √(1 − 1/x²) (1 − 2/x²) / x) otherwise", source=_DERIVED)
def moment_ratio_slope(surface_strain: float) -> float:
    """How `moment_ratio` rises with x; checked against differences.

    >>> round(moment_ratio_slope(1.0), 3), round(moment_ratio_slope(8.0), 4)
    (1.0, 0.0033)
    """
    x = surface_strain
    if x <= 1:
        return 1.0
    return 2 / pi * (asin(1 / x) - sqrt(1 - 1 / x**2) * (1 - 2 / x**2) / x)


@formula("x = 1 / (ε C_m)", source=_DERIVED)
def surface_strain(index_on_mandrel: float, flow_strain: float) -> float:
    """The strain at the surface of the wire on the mandrel over the strain at first yield."""
    return 1 / (flow_strain * index_on_mandrel)


@formula("σ_f = r R_m", where={"r": "flow_ratio"}, source="derived, see winding_model: the prior, then trial coils")
def flow_stress_mpa(flow_ratio: float, tensile_strength_mpa: float) -> float:
    """The stress at which the wire yields in winding, a share of its least tensile strength.

    >>> flow_stress_mpa(1.08, 2230.0)
    2408.4
    """
    return flow_ratio * tensile_strength_mpa


@formula("ε = σ_f / E", source=_DERIVED)
def flow_strain(flow_stress_mpa: float, elastic_modulus_mpa: float) -> float:
    """The strain at first yield.

    >>> round(flow_strain(2408.4, 206000.0), 5)
    0.01169
    """
    return flow_stress_mpa / elastic_modulus_mpa


@formula("C_m = (m + d) / d", where={"m": "mandrel_mm"}, source="geometry")
def index_on_mandrel(mandrel_mm: float, wire_diameter_mm: float) -> float:
    """The index of a coil that lies on a mandrel.

    >>> index_on_mandrel(7.0, 1.0)
    8.0
    """
    return (mandrel_mm + wire_diameter_mm) / wire_diameter_mm


@formula("m = (C_m − 1) d", source="geometry")
def mandrel_mm(index_on_mandrel: float, wire_diameter_mm: float) -> float:
    """The mandrel on which a coil has that index.

    >>> mandrel_mm(8.0, 1.0)
    7.0
    """
    return (index_on_mandrel - 1) * wire_diameter_mm


@formula("D = C_f d", source="geometry")
def mean_diameter_mm(index_released: float, wire_diameter_mm: float) -> float:
    """The mean diameter of a coil of that index.

    >>> mean_diameter_mm(12.0, 1.5)
    18.0
    """
    return index_released * wire_diameter_mm


def moment_ratio_on(index_on_mandrel: float, flow_strain: float) -> float:
    """The moment ratio g at x = 1/(ε C_m)."""
    return moment_ratio(surface_strain(index_on_mandrel, flow_strain))


@formula("C_f = 1 / (1/C_m − ε b g)", where={"g": moment_ratio_on}, holds=_MANDREL, source=_DERIVED)
def released_index(index_on_mandrel: float, flow_strain: float, moment_kept: float = 1.0) -> float:
    """The index to which a coil opens when it is let go.

    C_m = (mandrel + d)/d, ε = σ_f/E, b is what the pull of the hand leaves of the bending moment. Infinite where the
    wire has not yielded and opens fully (C_m ≥ 1/ε, b = 1).

    >>> round(released_index((6.917 + 0.8) / 0.8, 0.012055) * 0.8, 2)
    9.6
    """
    curvature = released_curvature(index_on_mandrel, flow_strain, moment_kept)
    return 1 / curvature if curvature > 1e-12 else inf


@formula("1/C_f = 1/C_m − ε b g", where={"g": moment_ratio_on}, holds=_MANDREL, source=_DERIVED)
def released_curvature(index_on_mandrel: float, flow_strain: float, moment_kept: float = 1.0) -> float:
    """One over the index after release, d/D_f: 0 where the wire opens fully."""
    return 1 / index_on_mandrel - flow_strain * moment_kept * moment_ratio_on(index_on_mandrel, flow_strain)


@formula("C_m = 1/(ε x), with x the root of x − b g(x) = 1/(ε C_f)", closed=False, source=_DERIVED)
def mandrel_index(index_released: float, flow_strain: float, moment_kept: float = 1.0) -> float:
    """The index on the mandrel from which a coil opens to the wanted one, the inverse of `released_index`.

    x − b g(x) is convex, so Newton's steps from the upper end of the bracket come down to the root and never leave it.

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


@formula("ε = 1/(C_m x), with x the root of (1 − C_m/C_f) x = g(x)", closed=False, source=_DERIVED)
def flow_strain_shown(index_on_mandrel: float, index_released: float) -> float:
    """The flow strain that one coil shows: what makes C_m open to C_f.

    Raises ValueError where the coil is not larger than it was on the mandrel: no flow strain makes it so.

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


def plastic_share(index_on_mandrel: float, flow_strain: float) -> float:
    """What is plastic of the bending moment, g − x g': 0 while the wire is elastic."""
    x = surface_strain(index_on_mandrel, flow_strain)
    return moment_ratio(x) - x * moment_ratio_slope(x)


@formula("f = ε h", where={"h": plastic_share}, holds=_MANDREL, source=_DERIVED)
def curvature_fall(index_on_mandrel: float, flow_strain: float) -> float:
    """By how much d/D_f falls as ln σ_f rises; 0 while the wire is elastic."""
    return flow_strain * plastic_share(index_on_mandrel, flow_strain)


def index_released(index_on_mandrel: float, flow_strain: float) -> float:
    """The index after release without pull."""
    return released_index(index_on_mandrel, flow_strain)


def slope_on(index_on_mandrel: float, flow_strain: float) -> float:
    """The slope g' at x = 1/(ε C_m)."""
    return moment_ratio_slope(surface_strain(index_on_mandrel, flow_strain))


@formula("S_σ = f C_f", where={"f": curvature_fall, "C_f": index_released}, holds=_MANDREL, source=_DERIVED)
def stress_sensitivity(index_on_mandrel: float, flow_strain: float) -> float:
    """Relative change of the finished diameter by relative change of the flow stress; checked against differences.

    >>> round(stress_sensitivity(9.646, 0.012055), 3)
    0.241
    """
    return index_released(index_on_mandrel, flow_strain) * curvature_fall(index_on_mandrel, flow_strain)


@formula("S_m = C_f / C_m (1 − g')", where={"C_f": index_released, "g'": slope_on}, holds=_MANDREL, source=_DERIVED)
def mandrel_sensitivity(index_on_mandrel: float, flow_strain: float) -> float:
    """Relative change of the finished by relative change of the wound mean diameter; checked against differences.

    >>> round(mandrel_sensitivity(9.646, 0.012055), 3)
    1.241
    """
    opening = index_released(index_on_mandrel, flow_strain) / index_on_mandrel
    return opening * (1 - slope_on(index_on_mandrel, flow_strain))


@formula("b = cos³(φ), with φ the root of φ + sin(φ) cos(φ) = π c/2", closed=False, holds=_PULL, source=_DERIVED)
def moment_kept(pull_fraction: float) -> float:
    """What is left of the fully plastic moment of round wire that is pulled while it is wound.

    sin(φ) is how far the neutral axis has moved over the radius; c is the pull over the force at which the wire
    yields, 0 to 1. It follows from the areas of the round section in tension and compression, both yielding.

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


@formula("M = σ_f d³ / 6", source="derived, see winding_model: the fully plastic round section, 4/3 σ_f r³")
def plastic_moment_n_mm(flow_stress_mpa: float, wire_diameter_mm: float) -> float:
    """The moment that bends the wire round the mandrel, and so the moment at the crank.

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
