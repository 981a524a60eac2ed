"""Lengths of a conical compression spring: pitch, solid pitch, solid length, growth of the diameter, length of wire.

What the ends add is as in a cylinder (geometry.py). Where each coil is so much smaller than the next that it goes
inside it, the cone telescopes: pressed solid it is a flat spiral as high as the wire is thick, its end coils too.
"""

from __future__ import annotations

from math import asinh, hypot, pi, sqrt

from sourcing.springs import geometry
from sourcing.springs.conical import Cone
from sourcing.springs.model import ConicalSpring, Ends

SURE_STEP = 1.1
"""Radius step over wire diameter from which turns go inside each other for sure (common practice, no source)."""


def radius_step_mm(mean_diameter_small_mm: float, mean_diameter_large_mm: float, active_coils: float) -> float:
    """How much the radius changes from one turn to the next.

    Δr = (D₂ − D₁) / (2n)

    Parameters: mean diameters D₁ and D₂ of the small and the large end in mm, active coils n. Returns Δr in mm.

    >>> radius_step_mm(8.0, 20.0, 5.0)
    1.2

    Source: geometry.
    """
    return (mean_diameter_large_mm - mean_diameter_small_mm) / (2.0 * active_coils)


def telescopes(wire_diameter_mm: float, radius_step_mm: float) -> bool:
    """Whether each coil goes inside the next one: Δr >= d.

    >>> telescopes(1.0, 1.0), telescopes(1.0, 0.9)
    (True, False)
    """
    return radius_step_mm >= wire_diameter_mm


def solid_pitch_mm(wire_diameter_mm: float, radius_step_mm: float) -> float:
    """Height from one turn to the next where they lie against each other.

    p_s = √(d² − Δr²), and 0 where the cone telescopes

    Parameters: wire diameter d and radius step Δr in mm. Returns the solid pitch p_s in mm.

    >>> solid_pitch_mm(2.0, 1.2)
    1.6

    Source: geometry.
    """
    if telescopes(wire_diameter_mm, radius_step_mm):
        return 0.0
    return sqrt(wire_diameter_mm**2 - radius_step_mm**2)


def solid_length_mm(
    wire_diameter_mm: float, radius_step_mm: float, active_coils: float, total_coils: float, ends: Ends
) -> float:
    """Length with every coil touching its neighbour.

    L_c = n p_s + the ends' share; d where the cone telescopes

    Parameters: wire diameter d and radius step Δr in mm, active coils n, total coils n_t, ends. Returns L_c in mm.
    The ends' share is what (n_t − n) coils of a cylinder are high when solid: with Δr = 0 it is the cylinder's length.

    >>> round(solid_length_mm(2.0, 1.2, 5.0, 7.0, Ends.CLOSED_GROUND), 3)
    12.0
    >>> solid_length_mm(1.0, 1.2, 5.0, 7.0, Ends.CLOSED_GROUND)
    1.0

    Source: geometry, with the ends of `geometry.solid_length_mm`.
    """
    if telescopes(wire_diameter_mm, radius_step_mm):
        return wire_diameter_mm
    at_ends = geometry.solid_length_mm(wire_diameter_mm, total_coils - active_coils, ends)
    return active_coils * solid_pitch_mm(wire_diameter_mm, radius_step_mm) + at_ends


def pitch_mm(
    wire_diameter_mm: float,
    radius_step_mm: float,
    free_length_mm: float,
    active_coils: float,
    total_coils: float,
    ends: Ends,
) -> float:
    """Pitch at rest, the same for every active turn: as a cylinder's; (L₀ − d)/n where the cone telescopes.

    Parameters: wire diameter d, radius step, free length L₀ in mm, active coils n, total coils, ends. Returns it in mm.

    >>> pitch_mm(0.9, 1.0, 14.9, 5.0, 7.0, Ends.CLOSED)
    2.8

    Source: `geometry.pitch_mm`; geometry.
    """
    if telescopes(wire_diameter_mm, radius_step_mm):
        return (free_length_mm - wire_diameter_mm) / active_coils
    return geometry.pitch_mm(wire_diameter_mm, free_length_mm, active_coils, total_coils, ends)


def growth_at_solid_mm(solid_pitch_mm: float, mean_diameter_mm: float, pitch_mm: float) -> float:
    """Growth of a coil's diameter from free to solid, the ends free to turn.

    ΔD = 0.1 (m − p_s)(m + 0.2 p_s) / D

    Parameters: solid pitch p_s, mean diameter D of that coil, pitch at rest m in mm. Returns the growth ΔD in mm.
    It is the standard's formula for a cylinder, whose solid pitch is d, with the pitch that this coil has when solid.

    >>> round(growth_at_solid_mm(1.0, 12.0, 4.67), 3)
    0.149

    Source: EN 13906-1:2013 clause 9, read for coils that lie inside each other.
    """
    return geometry.growth_at_solid_mm(solid_pitch_mm, mean_diameter_mm, pitch_mm)


def spiral_length_mm(
    mean_diameter_small_mm: float, mean_diameter_large_mm: float, active_coils: float, pitch_mm: float
) -> float:
    """Wire in the active coils along its arc: a conical helix of constant pitch.

    L = [P(R₂) − P(R₁)]/a, P(R) = ½ (R √(R² + q²) + q² asinh(R/q)), a = (R₂ − R₁)/(2πn), q² = a² + (p/2π)²

    Parameters: mean diameters of the ends in mm (R their halves), active coils n, pitch p in mm. Returns L in mm.
    n π times the mean diameter is 0.3 % short for 7 and 17 mm, 5 coils, 14 mm high.

    >>> round(spiral_length_mm(7.0, 17.0, 5.0, 2.8), 1)
    189.1

    Source: derived for this project; geometry.
    """
    small, large = mean_diameter_small_mm / 2.0, mean_diameter_large_mm / 2.0
    if small == large:
        return active_coils * geometry.turn_length_mm(mean_diameter_large_mm, pitch_mm)
    growth = (large - small) / (2.0 * pi * active_coils)
    q = hypot(growth, pitch_mm / (2.0 * pi))

    def primitive(radius: float) -> float:
        return (radius * hypot(radius, q) + q**2 * asinh(radius / q)) / 2.0

    return (primitive(large) - primitive(small)) / growth


def step_of(spring: ConicalSpring) -> float:
    """The radius step of a spring in mm."""
    return radius_step_mm(spring.mean_diameter_small_mm, spring.mean_diameter_large_mm, spring.active_coils)


def solid_length_of(spring: ConicalSpring) -> float:
    """The solid length of a spring in mm."""
    return solid_length_mm(
        spring.wire_diameter_mm, step_of(spring), spring.active_coils, spring.total_coils, spring.ends
    )


def pitch_of(spring: ConicalSpring) -> float:
    """The pitch of a spring at rest, in mm."""
    return pitch_mm(
        spring.wire_diameter_mm,
        step_of(spring),
        spring.free_length_mm,
        spring.active_coils,
        spring.total_coils,
        spring.ends,
    )


def cone_of(spring: ConicalSpring) -> Cone:
    """The active coils of a spring; each turn's gap is an equal share of the travel from free to solid."""
    gap_mm = max(0.0, spring.free_length_mm - solid_length_of(spring)) / spring.active_coils
    return Cone(
        spring.wire_diameter_mm,
        spring.mean_diameter_small_mm,
        spring.mean_diameter_large_mm,
        spring.active_coils,
        gap_mm,
        spring.shear_modulus_mpa,
    )


def wire_length_of(spring: ConicalSpring) -> float:
    """Wire in the whole spring in mm: the active coils as a conical helix, half of the dead ones at each end."""
    active = spiral_length_mm(
        spring.mean_diameter_small_mm, spring.mean_diameter_large_mm, spring.active_coils, pitch_of(spring)
    )
    dead_at_each = (spring.total_coils - spring.active_coils) / 2.0
    one_at_each = (
        geometry.turn_length_mm(mean_mm, spring.wire_diameter_mm)
        for mean_mm in (spring.mean_diameter_small_mm, spring.mean_diameter_large_mm)
    )
    return active + dead_at_each * sum(one_at_each)


def growth_at_ends_mm(spring: ConicalSpring) -> tuple[float, float]:
    """Growth of the small and of the large end's diameter, pressed solid, in mm."""
    solid = solid_pitch_mm(spring.wire_diameter_mm, step_of(spring))
    pitch = pitch_of(spring)
    return (
        growth_at_solid_mm(solid, spring.mean_diameter_small_mm, pitch),
        growth_at_solid_mm(solid, spring.mean_diameter_large_mm, pitch),
    )
