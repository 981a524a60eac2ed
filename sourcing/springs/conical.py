"""Conical compression springs of round wire: rate, force over travel, stress, the order in which the coils close.

The radius of the active coils changes evenly, turn by turn, and every turn has the same gap to close (constant pitch;
other pitch laws: pitch_laws.py). A piece of coil of mean diameter D is closed at the force that takes up its gap, the
largest first, and gives no more from there on: the curve of force over length is straight down to that force, and
stiffens below. Cones in series make barrels and hourglasses. Lengths at rest and solid: conical_lengths.py.

Sources: Wahl, Mechanical Springs (from memory) for the rate; the progressive curve follows from the rate of each piece,
and is held in the tests against coils summed one by one and against three-dimensional beams.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sourcing.figures import Holds, formula
from sourcing.springs.compression import INDEX, INDEX_RANGE

_LAST_DIGITS = 1e-13
_MOST_STEPS = 100


@dataclass(frozen=True, slots=True)
class Cone:
    """The active coils of a cone: what its force over travel depends on.

    `gap_mm` is what each turn can close, its pitch at rest less that when solid (p − p_s).
    """

    wire_diameter_mm: float
    mean_diameter_small_mm: float
    mean_diameter_large_mm: float
    active_coils: float
    gap_mm: float
    shear_modulus_mpa: float

    @property
    def travel_to_solid_mm(self) -> float:
        """What all turns together can close."""
        return self.active_coils * self.gap_mm


CONE = {
    "d": "cone.wire_diameter_mm",
    "D₁": "cone.mean_diameter_small_mm",
    "D₂": "cone.mean_diameter_large_mm",
    "n": "cone.active_coils",
    "a": "cone.gap_mm",
    "G": "cone.shear_modulus_mpa",
}
DERIVED = "derived, see winding_model, and held against coils summed one by one (see the tests)"


@formula("1/R = 2 n (D₁ + D₂) (D₁² + D₂²) / (G d⁴)", source="Wahl, Mechanical Springs; winding_model", from_memory=True)
def flexibility_mm_per_n(
    wire_diameter_mm: float,
    mean_diameter_small_mm: float,
    mean_diameter_large_mm: float,
    active_coils: float,
    shear_modulus_mpa: float,
) -> float:
    """Travel of a cone for each newton while all its coils are open: the sum of 8 D³/(G d⁴) over its turns.

    It is 0 for no coils.

    >>> round(flexibility_mm_per_n(2.0, 8.0, 20.0, 5.0, 81500.0), 5)
    0.09963
    """
    small, large = mean_diameter_small_mm, mean_diameter_large_mm
    return 2.0 * active_coils * (small + large) * (small**2 + large**2) / (shear_modulus_mpa * wire_diameter_mm**4)


@formula(
    "R = G d⁴ / (2 n (D₁ + D₂) (D₁² + D₂²))",
    holds=(
        Holds("index of the small end", "D₁ / d", *INDEX_RANGE),
        Holds("index of the large end", "D₂ / d", *INDEX_RANGE),
    ),
    source="Wahl, Mechanical Springs; winding_model",
    from_memory=True,
)
def rate_n_per_mm(
    wire_diameter_mm: float,
    mean_diameter_small_mm: float,
    mean_diameter_large_mm: float,
    active_coils: float,
    shear_modulus_mpa: float,
) -> float:
    """Initial rate of a conical compression spring: it holds until the largest coil begins to close.

    For D₁ = D₂ it is that of the cylinder; a cylinder of the mean diameter is stiffer, by 4 % for 8 and 12 mm, by 29 %
    for 6 and 20 mm. Against a three-dimensional beam model it is within 1.5 %.

    >>> round(rate_n_per_mm(0.9, 7.0, 17.0, 5.0, 81500.0), 3)
    0.659
    """
    return 1.0 / flexibility_mm_per_n(
        wire_diameter_mm, mean_diameter_small_mm, mean_diameter_large_mm, active_coils, shear_modulus_mpa
    )


@formula("a = max(0, L₀ − L_c) / n", source="the travel to solid in equal shares, a constant pitch")
def gap_mm(free_length_mm: float, solid_length_mm: float, active_coils: float) -> float:
    """What each turn can close.

    >>> gap_mm(27.0, 12.0, 5.0)
    3.0
    """
    return max(0.0, free_length_mm - solid_length_mm) / active_coils


@formula("F = a G d⁴ / (8 D³)", holds=(INDEX,), source="the travel of one turn, EN 13906-1:2013 clause 9 with n = 1")
def closing_force_n(wire_diameter_mm: float, mean_diameter_mm: float, gap_mm: float, shear_modulus_mpa: float) -> float:
    """Force at which a piece of coil lies against its neighbour.

    D is the mean diameter of that piece; its gap is the pitch at rest less that when solid, p − p_s.

    >>> round(closing_force_n(2.0, 20.0, 3.0, 81500.0), 3)
    61.125
    """
    return gap_mm * shear_modulus_mpa * wire_diameter_mm**4 / (8.0 * mean_diameter_mm**3)


@formula(
    "F_c = the closing force of the smallest coil, the largest of all cones in series", closed=False, source=DERIVED
)
def force_at_solid_n(cones: Sequence[Cone]) -> float:
    """Force that closes the last coil of one cone, or of several in series: its smallest.

    >>> round(force_at_solid_n([Cone(2.0, 8.0, 20.0, 5.0, 3.0, 81500.0)]), 1)
    955.1
    """
    return max(
        closing_force_n(cone.wire_diameter_mm, cone.mean_diameter_small_mm, cone.gap_mm, cone.shear_modulus_mpa)
        for cone in cones
    )


@formula(
    "D* = (a G d⁴ / (8 F))^(1/3), and no less than D₁, no more than D₂",
    where=CONE,
    closed=False,
    source="the closing force solved for D",
)
def largest_open_diameter_mm(cone: Cone, force_n: float) -> float:
    """Mean diameter of the largest coil that a force leaves open; the smallest coil where it closes all.

    The wire is stressed most there, τ = 8 F D*/(π d³): a coil that has closed carries no more than what closed it.

    >>> largest_open_diameter_mm(Cone(2.0, 8.0, 20.0, 5.0, 3.0, 81500.0), 61.0)
    20.0
    """
    small, large = cone.mean_diameter_small_mm, cone.mean_diameter_large_mm
    return large if force_n <= 0.0 else min(max(_closing_diameter_mm(cone, force_n), small), large)


@formula(
    "s = F/R* + (n − n*) a, with n* the coils still open, from D₁ to D*, and R* their rate; summed over the cones",
    closed=False,
    source=DERIVED,
)
def travel_mm(cones: Sequence[Cone], force_n: float) -> float:
    """Travel of one cone, or of several in series: what is open gives by its rate, what is closed gave its gap.

    It is at most that to solid. D* is `largest_open_diameter_mm`.
    It is s(F) = n/(R₂−R₁) · [64 F (R*⁴−R₁⁴)/(4 G d⁴) + (p−p_s)(R₂−R*)] in radii, written so that it holds for D₁ = D₂.

    >>> cone = Cone(2.0, 8.0, 20.0, 5.0, 3.0, 81500.0)
    >>> [round(travel_mm([cone], force), 3) for force in (61.125, 200.0, 2000.0)]
    [6.09, 11.847, 15.0]
    """
    return sum(_travel_of_one_mm(cone, force_n) for cone in cones)


@formula("F = the force whose travel is s, found step by step", closed=False, source=DERIVED)
def force_n(cones: Sequence[Cone], travel_mm: float) -> float:
    """Force of one cone, or of several in series, at a travel: the inverse of the function `travel_mm`.

    For a travel beyond that to solid it is the force at solid.
    Each step presses on by what is missing, times the rate of the coils that are open: since they only grow fewer, it
    never goes too far.

    >>> cone = Cone(2.0, 8.0, 20.0, 5.0, 3.0, 81500.0)
    >>> round(force_n([cone], 11.847), 1), round(force_n([cone], 15.0), 1)
    (200.0, 955.1)
    """
    if travel_mm <= 0.0:
        return 0.0
    solid_n = force_at_solid_n(cones)
    if travel_mm >= sum(cone.travel_to_solid_mm for cone in cones):
        return solid_n
    force = 0.0
    for _ in range(_MOST_STEPS):
        missing_mm = travel_mm - sum(_travel_of_one_mm(cone, force) for cone in cones)
        if missing_mm <= _LAST_DIGITS * travel_mm:
            break
        force = min(force + missing_mm / sum(_open_flexibility_mm_per_n(cone, force) for cone in cones), solid_n)
    return force


@formula("R = 1 over the sum of 1/R of the cones", closed=False, source="statics")
def series_rate_n_per_mm(cones: Sequence[Cone]) -> float:
    """Initial rate of cones in series, as the two halves of a barrel or an hourglass are.

    >>> half = Cone(1.0, 8.0, 16.0, 5.0, 2.0, 81500.0)
    >>> round(series_rate_n_per_mm([half, half]), 3)
    0.531
    """
    return 1.0 / sum(_open_flexibility_mm_per_n(cone, 0.0) for cone in cones)


@formula("D = D₂ − (D₂ − D₁) min(u / n, 1)", where={**CONE, "u": "turns_from_large_end"}, source="geometry")
def coil_diameter_mm(cone: Cone, turns_from_large_end: float) -> float:
    """Mean diameter so many active turns from the large end; the small end's beyond them.

    >>> coil_diameter_mm(Cone(2.0, 8.0, 20.0, 5.0, 3.0, 81500.0), 2.5)
    14.0
    """
    small, large = cone.mean_diameter_small_mm, cone.mean_diameter_large_mm
    return large - (large - small) * min(turns_from_large_end / cone.active_coils, 1.0)


def _closing_diameter_mm(cone: Cone, force_n: float) -> float:
    """The diameter of a coil that would just close under this force."""
    stiffness = cone.shear_modulus_mpa * cone.wire_diameter_mm**4
    return (cone.gap_mm * stiffness / (8.0 * force_n)) ** (1.0 / 3.0)


def _open_coils(cone: Cone, force_n: float) -> float:
    """Coils that a force leaves open."""
    small, large = cone.mean_diameter_small_mm, cone.mean_diameter_large_mm
    if force_n <= 0.0 or (closing := _closing_diameter_mm(cone, force_n)) >= large:
        return cone.active_coils
    return 0.0 if closing <= small else cone.active_coils * (closing - small) / (large - small)


def _open_flexibility_mm_per_n(cone: Cone, force_n: float) -> float:
    return flexibility_mm_per_n(
        cone.wire_diameter_mm,
        cone.mean_diameter_small_mm,
        largest_open_diameter_mm(cone, force_n),
        _open_coils(cone, force_n),
        cone.shear_modulus_mpa,
    )


def _travel_of_one_mm(cone: Cone, force_n: float) -> float:
    closed = cone.active_coils - _open_coils(cone, force_n)
    return force_n * _open_flexibility_mm_per_n(cone, force_n) + closed * cone.gap_mm
