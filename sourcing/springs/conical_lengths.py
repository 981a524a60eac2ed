"""Lengths of a conical compression spring: pitch, solid pitch, solid length, growth of the diameter, length of wire.

What the ends add is as in a cylinder (geometry.py). Where each coil is so much smaller than the next that it goes
inside it, the cone telescopes: pressed solid it is a flat spiral as high as the wire is thick, its end coils too.
"""

from __future__ import annotations

from math import asinh, hypot, pi, sqrt

from sourcing.figures import formula
from sourcing.springs import geometry
from sourcing.springs.conical import Cone, gap_mm
from sourcing.springs.model import ConicalSpring, Ends

OF_CONE = {
    "d": "spring.wire_diameter_mm",
    "D₁": "spring.mean_diameter_small_mm",
    "D₂": "spring.mean_diameter_large_mm",
    "n": "spring.active_coils",
    "n_t": "spring.total_coils",
    "L₀": "spring.free_length_mm",
}
"""What the symbols mean in a formula of a whole cone."""

SURE_STEP = 1.1
"""Radius step over wire diameter from which turns go inside each other for sure (common practice, no source)."""


@formula("Δr = (D₂ − D₁) / (2 n)", source="geometry")
def radius_step_mm(mean_diameter_small_mm: float, mean_diameter_large_mm: float, active_coils: float) -> float:
    """How much the radius changes from one turn to the next.

    >>> radius_step_mm(8.0, 20.0, 5.0)
    1.2
    """
    return (mean_diameter_large_mm - mean_diameter_small_mm) / (2.0 * active_coils)


def telescopes(wire_diameter_mm: float, radius_step_mm: float) -> bool:
    """Whether each coil goes inside the next one: Δr >= d.

    >>> telescopes(1.0, 1.0), telescopes(1.0, 0.9)
    (True, False)
    """
    return radius_step_mm >= wire_diameter_mm


@formula("p_s = √(max(0, d² − Δr²))", source="geometry")
def solid_pitch_mm(wire_diameter_mm: float, radius_step_mm: float) -> float:
    """Height from one turn to the next where they lie against each other; none where the cone telescopes.

    >>> solid_pitch_mm(2.0, 1.2)
    1.6
    """
    if telescopes(wire_diameter_mm, radius_step_mm):
        return 0.0
    return sqrt(wire_diameter_mm**2 - radius_step_mm**2)


def dead_solid_length_mm(wire_diameter_mm: float, active_coils: float, total_coils: float, ends: Ends) -> float:
    """The height of the dead coils of a cylinder when solid."""
    return geometry.solid_length_mm(wire_diameter_mm, total_coils - active_coils, ends)


@formula(
    "L_c = d for Δr ≥ d; n √(d² − Δr²) + L_d otherwise",
    where={"L_d": dead_solid_length_mm},
    source="geometry, with the ends of a cylinder",
)
def solid_length_mm(
    wire_diameter_mm: float, radius_step_mm: float, active_coils: float, total_coils: float, ends: Ends
) -> float:
    """Length with every coil touching its neighbour.

    It is d where the cone telescopes, and with Δr = 0 the cylinder's length.

    >>> round(solid_length_mm(2.0, 1.2, 5.0, 7.0, Ends.CLOSED_GROUND), 3)
    12.0
    >>> solid_length_mm(1.0, 1.2, 5.0, 7.0, Ends.CLOSED_GROUND)
    1.0
    """
    if telescopes(wire_diameter_mm, radius_step_mm):
        return wire_diameter_mm
    at_ends = dead_solid_length_mm(wire_diameter_mm, active_coils, total_coils, ends)
    return active_coils * solid_pitch_mm(wire_diameter_mm, radius_step_mm) + at_ends


@formula(
    "p = (L₀ − d) / n for Δr ≥ d; (L₀ − e) / N otherwise",
    where={"e": geometry.end_length_mm, "N": geometry.pitches},
    source="geometry, and as a cylinder's: Machinery's Handbook, 31st ed., springs, table 3",
)
def pitch_mm(
    wire_diameter_mm: float,
    radius_step_mm: float,
    free_length_mm: float,
    active_coils: float,
    total_coils: float,
    ends: Ends,
) -> float:
    """Pitch at rest, the same for every active turn: as a cylinder's, unless the cone telescopes.

    >>> pitch_mm(0.9, 1.0, 14.9, 5.0, 7.0, Ends.CLOSED)
    2.8
    """
    if telescopes(wire_diameter_mm, radius_step_mm):
        return (free_length_mm - wire_diameter_mm) / active_coils
    return geometry.pitch_mm(wire_diameter_mm, free_length_mm, active_coils, total_coils, ends)


@formula(
    "ΔD = max(0, 0.1 (p² − 0.8 p p_s − 0.2 p_s²) / D)",
    source="EN 13906-1:2013 clause 9, ends free to turn, read for coils that lie inside each other",
)
def growth_at_solid_mm(solid_pitch_mm: float, mean_diameter_mm: float, pitch_mm: float) -> float:
    """Growth of a coil's diameter from free to solid.

    It is the standard's formula for a cylinder, whose solid pitch is d, with the pitch that this coil has when solid.

    >>> round(growth_at_solid_mm(1.0, 12.0, 4.67), 3)
    0.149
    """
    return geometry.growth_at_solid_mm(solid_pitch_mm, mean_diameter_mm, pitch_mm)


@formula(
    "l = (P(R₂) − P(R₁))/g, P(r) = ½ (r √(r² + q²) + q² asinh(r/q)), g = (R₂ − R₁)/(2πn), q² = g² + (p/2π)², R = D/2",
    closed=False,
    source="derived, see winding_model",
)
def spiral_length_mm(
    mean_diameter_small_mm: float, mean_diameter_large_mm: float, active_coils: float, pitch_mm: float
) -> float:
    """Wire in the active coils along its arc: a conical helix of constant pitch.

    n π times the mean diameter is 0.3 % short for 7 and 17 mm, 5 coils, 14 mm high.

    >>> round(spiral_length_mm(7.0, 17.0, 5.0, 2.8), 1)
    189.1
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
    return Cone(
        spring.wire_diameter_mm,
        spring.mean_diameter_small_mm,
        spring.mean_diameter_large_mm,
        spring.active_coils,
        gap_mm(spring.free_length_mm, solid_length_of(spring), spring.active_coils),
        spring.shear_modulus_mpa,
    )


@formula(
    "l = the spiral of the active coils and half of the dead turns at each end",
    where=OF_CONE,
    closed=False,
    source="derived, see winding_model",
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
