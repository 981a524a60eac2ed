"""Cones whose pitch changes from turn to turn: force over travel by adding up thin slices, one rate and one gap each.

Constant pitch, the law of a spring described by its free length alone, has closed forms both ways (conical.py). Here a
law is the gap of a turn over its mean diameter; that of a constant helix angle is `constant_angle_gap_mm`.
"""

from __future__ import annotations

from collections.abc import Callable
from math import pi, tan

from sourcing.figures import formula

SLICES = 2000
"""So many that the travel is within 1e-5 of the closed form for constant pitch."""

_LAST_DIGITS = 1e-12


@formula("a = max(0, π D tan(α) − p_s)", where={"α": "helix_angle_rad"}, source="geometry")
def constant_angle_gap_mm(mean_diameter_mm: float, helix_angle_rad: float, solid_pitch_mm: float) -> float:
    """Gap of a turn where the wire climbs at the same angle everywhere, so that large turns climb more.

    >>> round(constant_angle_gap_mm(10.0, 0.1, 1.0), 3)
    2.152
    """
    return max(0.0, pi * mean_diameter_mm * tan(helix_angle_rad) - solid_pitch_mm)


@formula(
    "s = the sum of min(8 F D³/(G d⁴), gap(D)) n/N over N slices", closed=False, source="derived, see winding_model"
)
def travel_mm(
    wire_diameter_mm: float,
    mean_diameters_mm: tuple[float, float],
    active_coils: float,
    gap_mm: Callable[[float], float],
    shear_modulus_mpa: float,
    force_n: float,
) -> float:
    """Travel of a cone under a force, whatever its pitch: each slice gives by its rate until its gap is closed.

    The mean diameters are those of the small and the large end; the gap is that of a turn by its mean diameter.

    >>> round(travel_mm(2.0, (8.0, 20.0), 5.0, lambda _: 3.0, 81500.0, 200.0), 3)
    11.847
    """
    slices = _slices(wire_diameter_mm, mean_diameters_mm, active_coils, gap_mm, shear_modulus_mpa)
    return sum(min(force_n * flexibility, gap) for flexibility, gap in slices)


def force_n(
    wire_diameter_mm: float,
    mean_diameters_mm: tuple[float, float],
    active_coils: float,
    gap_mm: Callable[[float], float],
    shear_modulus_mpa: float,
    travel_mm: float,
) -> float:
    """Force of a cone at a travel, whatever its pitch: the inverse of `travel_mm`.

    Parameters: as `travel_mm`, with the travel s in mm. Returns the force F in N; that at solid for a travel beyond it.
    Each step presses on by what is missing, times the rate of the slices that are open: since they only grow fewer, it
    never goes too far.

    >>> law = lambda mean: constant_angle_gap_mm(mean, 0.1, 1.6)
    >>> round(force_n(2.0, (8.0, 20.0), 5.0, law, 81500.0, 9.0), 2)
    90.33

    Source: derived for this project.
    """
    slices = _slices(wire_diameter_mm, mean_diameters_mm, active_coils, gap_mm, shear_modulus_mpa)
    solid_n = max(gap / flexibility for flexibility, gap in slices)
    force = 0.0
    while force < solid_n:
        missing_mm = travel_mm - sum(min(force * flexibility, gap) for flexibility, gap in slices)
        if missing_mm <= _LAST_DIGITS * travel_mm:
            return force
        force += missing_mm / sum(flexibility for flexibility, gap in slices if force * flexibility < gap)
    return solid_n


def _slices(
    wire_diameter_mm: float,
    mean_diameters_mm: tuple[float, float],
    active_coils: float,
    gap_mm: Callable[[float], float],
    shear_modulus_mpa: float,
) -> list[tuple[float, float]]:
    """The flexibility in mm/N and the gap in mm of each slice."""
    small, large = mean_diameters_mm
    turns = active_coils / SLICES
    per_newton = 8.0 * turns / (shear_modulus_mpa * wire_diameter_mm**4)
    middles = (small + (large - small) * (slice_ + 0.5) / SLICES for slice_ in range(SLICES))
    return [(per_newton * mean**3, turns * gap_mm(mean)) for mean in middles]
