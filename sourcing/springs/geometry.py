"""Lengths of a compression spring: ends, pitch, solid length, gaps, growth of the diameter, wire and mass.

d is the nominal wire throughout. EN 13906-1 takes the largest the wire may be (d_max) for the solid length; the wire's
tolerance is 1 to 2 % of it.
"""

from __future__ import annotations

from math import hypot, pi

from sourcing.figures import formula
from sourcing.springs.compression import ACTIVE_COILS, INDEX
from sourcing.springs.model import Ends

_DEAD_COILS = {Ends.OPEN: 0.0, Ends.OPEN_GROUND: 1.0, Ends.CLOSED: 2.0, Ends.CLOSED_GROUND: 2.0}

# Wire thicknesses that the solid length has beyond one for each coil.
_SOLID_EXTRA = {Ends.OPEN: 1.0, Ends.OPEN_GROUND: 0.0, Ends.CLOSED: 1.5, Ends.CLOSED_GROUND: 0.0}


@formula(
    "n_d = 0 for open ends, 1 for open and ground ones, 2 for closed ones, ground or not",
    closed=False,
    source="Machinery's Handbook, 31st ed., springs, table 3; EN 13906-1:2013 clause 9 for closed ends (nt = n + 2)",
)
def dead_coils(ends: Ends) -> float:
    """Coils at both ends together that do not act.

    >>> dead_coils(Ends.CLOSED_GROUND)
    2.0
    """
    return _DEAD_COILS[ends]


@formula("n = n_t − n_d", where={"n_d": dead_coils}, source="the ends' dead coils")
def active_coils(total_coils: float, ends: Ends) -> float:
    """Active coils where all of them were counted.

    >>> active_coils(9.75, Ends.CLOSED_GROUND)
    7.75
    """
    return total_coils - dead_coils(ends)


@formula("n_t = n + n_d", where={"n_d": dead_coils}, source="the ends' dead coils")
def total_coils(active_coils: float, ends: Ends) -> float:
    """All coils where those that act are known.

    >>> total_coils(7.75, Ends.CLOSED_GROUND)
    9.75
    """
    return active_coils + dead_coils(ends)


def wires_over(ends: Ends) -> float:
    """The wires by which a solid spring is higher than its coils: ground 0, closed 1.5, open 1."""
    return _SOLID_EXTRA[ends]


@formula(
    "L_c = (n_t + e) d",
    where={"e": wires_over},
    source="EN 13906-1:2013 clause 9 for closed ends (with d_max for d); Shigley, Mechanical Engineering Design, table "
    "10-1 for open ones, which EN does not give",
)
def solid_length_mm(wire_diameter_mm: float, total_coils: float, ends: Ends) -> float:
    """Length with every coil touching its neighbour.

    Ground ends e = 0, closed ones left unground e = 1.5, open ones e = 1.
    Sources differ for closed ends left unground: JIS B 2704-1 and Shigley have e = 1; EN's larger one is taken.

    >>> round(solid_length_mm(0.9, 9.75, Ends.CLOSED_GROUND), 3)
    8.775
    """
    return (total_coils + wires_over(ends)) * wire_diameter_mm


def end_length_mm(wire_diameter_mm: float, active_coils: float, total_coils: float, ends: Ends) -> float:
    """The length that no pitch is of: a wire a dead coil, one more where ends are not ground; open and ground 0."""
    if ends is Ends.OPEN_GROUND:
        return 0.0
    wires = total_coils - active_coils + (0.0 if ends is Ends.CLOSED_GROUND else 1.0)
    return wires * wire_diameter_mm


def pitches(active_coils: float, total_coils: float, ends: Ends) -> float:
    """The pitches that the rest of the length is made of: one an active coil; one a coil where open and ground."""
    return total_coils if ends is Ends.OPEN_GROUND else active_coils


@formula(
    "p = (L₀ − e) / N",
    where={"e": end_length_mm, "N": pitches},
    source="Machinery's Handbook, 31st ed., springs, table 3; Shigley, Mechanical Engineering Design, table 10-1",
)
def pitch_mm(
    wire_diameter_mm: float, free_length_mm: float, active_coils: float, total_coils: float, ends: Ends
) -> float:
    """Pitch of the active coils at rest, from wire centre to wire centre.

    With n_d = n_t − n dead coils: closed and ground e = n_d d, closed and open e = (n_d + 1) d, both with N = n; open
    and ground e = 0, N = n_t.
    With the usual dead coils this is the handbooks' table: (L₀ − d)/n open, L₀/(n + 1) open and ground, (L₀ − 3d)/n
    closed, (L₀ − 2d)/n closed and ground.
    EN 13906-1 has (L₀ − d)/n for closed and ground ends, in its growth of the diameter only; it is not used here.

    >>> pitch_mm(1.0, 32.0, 6.0, 8.0, Ends.CLOSED_GROUND)
    5.0
    """
    ends_mm = end_length_mm(wire_diameter_mm, active_coils, total_coils, ends)
    return (free_length_mm - ends_mm) / pitches(active_coils, total_coils, ends)


@formula("L₀ = p N + e", where={"e": end_length_mm, "N": pitches}, source="as the pitch at rest, solved for L₀")
def free_length_from_pitch_mm(
    wire_diameter_mm: float, pitch_mm: float, active_coils: float, total_coils: float, ends: Ends
) -> float:
    """Free length that a pitch gives, the inverse of `pitch_mm`.

    >>> free_length_from_pitch_mm(1.0, 4.5, 6.0, 8.0, Ends.CLOSED)
    30.0
    """
    ends_mm = end_length_mm(wire_diameter_mm, active_coils, total_coils, ends)
    return pitch_mm * pitches(active_coils, total_coils, ends) + ends_mm


@formula("S_a = n (0.0015 D² / d + 0.1 d)", holds=(INDEX, ACTIVE_COILS), source="EN 13906-1:2013 clause 9, cold coiled")
def minimum_gaps_mm(wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float) -> float:
    """Sum of the gaps that should stay between the active coils at the shortest working length, static duty.

    Half as much again for dynamic duty. Inside it the coils begin to touch one by one: the rate rises and is no longer
    even.

    >>> round(minimum_gaps_mm(1.0, 12.0, 6.0), 3)
    1.896
    """
    return active_coils * (0.0015 * mean_diameter_mm**2 / wire_diameter_mm + 0.1 * wire_diameter_mm)


@formula(
    "ΔD = max(0, 0.1 (p² − 0.8 p d − 0.2 d²) / D)",
    holds=(INDEX,),
    source="EN 13906-1:2013 clause 9, ends free to turn",
)
def growth_at_solid_mm(wire_diameter_mm: float, mean_diameter_mm: float, pitch_mm: float) -> float:
    """Growth of the coil diameter from free to solid.

    The pitch is that of `pitch_mm`; EN puts in (L₀ − d)/n for closed and ground ends, which gives a little more.
    Ends kept from turning give about 0.6 of it (a US handbook, from memory): the larger one is taken.

    >>> round(growth_at_solid_mm(1.0, 12.0, 4.67), 3)
    0.149
    """
    d, m = wire_diameter_mm, pitch_mm
    return max(0.0, 0.1 * (m**2 - 0.8 * m * d - 0.2 * d**2) / mean_diameter_mm)


@formula("l = √((π D)² + p²)", source="geometry")
def turn_length_mm(mean_diameter_mm: float, pitch_mm: float) -> float:
    """Wire in one turn of a helix, along its arc.

    >>> round(turn_length_mm(12.0, 4.0), 2)
    37.91
    """
    return hypot(pi * mean_diameter_mm, pitch_mm)


@formula("l = n √((π D)² + p²) + (n_t − n) √((π D)² + d²)", source="geometry")
def wire_length_mm(
    wire_diameter_mm: float, mean_diameter_mm: float, pitch_mm: float, active_coils: float, total_coils: float
) -> float:
    """Wire in the whole spring along its arc: active turns at the free pitch, dead turns at the pitch of touching wire.

    Nothing to hold by is in it.

    >>> round(wire_length_mm(1.0, 12.0, 5.0, 6.0, 8.0), 1)
    303.6
    """
    active = active_coils * turn_length_mm(mean_diameter_mm, pitch_mm)
    return active + (total_coils - active_coils) * turn_length_mm(mean_diameter_mm, wire_diameter_mm)


@formula("m = 10^(-6) ρ π d² l / 4", source="geometry")
def mass_g(wire_diameter_mm: float, wire_length_mm: float, density_kg_per_m3: float) -> float:
    """Mass of a length of wire.

    >>> round(mass_g(1.0, 303.0, 7850.0), 3)
    1.868
    """
    return density_kg_per_m3 * 1e-6 * pi * wire_diameter_mm**2 / 4.0 * wire_length_mm
