"""Cones whose pitch changes from turn to turn: force over travel by adding up thin slices, one rate and one gap each.

Constant pitch, the law of a spring described by its free length alone, has closed forms (conical.py).
"""

from __future__ import annotations

from collections.abc import Callable
from math import pi, tan

SLICES = 2000
"""So many that the travel is within 1e-5 of the closed form for constant pitch."""


def constant_angle_gap_mm(mean_diameter_mm: float, helix_angle_rad: float, solid_pitch_mm: float) -> float:
    """Gap of a turn where the wire climbs at the same angle everywhere, so that large turns climb more.

    p − p_s = π D tan α − p_s, and no less than 0

    Parameters: mean diameter D of the turn in mm, helix angle α in radians, solid pitch p_s in mm. Returns it in mm.

    >>> round(constant_angle_gap_mm(10.0, 0.1, 1.0), 3)
    2.152

    Source: geometry.
    """
    return max(0.0, pi * mean_diameter_mm * tan(helix_angle_rad) - solid_pitch_mm)


def travel_mm(
    wire_diameter_mm: float,
    mean_diameters_mm: tuple[float, float],
    active_coils: float,
    gap_mm: Callable[[float], float],
    shear_modulus_mpa: float,
    force_n: float,
) -> float:
    """Travel of a cone under a force, whatever its pitch: each slice gives by its rate until its gap is closed.

    s = Σ min(8 F D³/(G d⁴), gap(D)) · n/N over N slices

    Parameters: wire diameter d, mean diameters of the small and the large end in mm, active coils n, the gap of a turn
    of mean diameter D, shear modulus G in MPa, force F in N. Returns the travel s in mm.

    >>> round(travel_mm(2.0, (8.0, 20.0), 5.0, lambda _: 3.0, 81500.0, 200.0), 3)
    11.847

    Source: derived for this project.
    """
    small, large = mean_diameters_mm
    per_newton = 8.0 / (shear_modulus_mpa * wire_diameter_mm**4)
    middles = (small + (large - small) * (slice_ + 0.5) / SLICES for slice_ in range(SLICES))
    return sum(min(force_n * per_newton * mean**3, gap_mm(mean)) for mean in middles) * active_coils / SLICES
