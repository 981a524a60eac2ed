"""Lengths of a compression spring: ends, pitch, solid length, gaps, growth of the diameter, wire and mass.

d is the nominal wire throughout. EN 13906-1 takes the largest the wire may be (d_max) for the solid length; the wire's
tolerance is 1 to 2 % of it.
"""

from __future__ import annotations

from math import hypot, pi

from sourcing.springs.model import Ends

_DEAD_COILS = {Ends.OPEN: 0.0, Ends.OPEN_GROUND: 1.0, Ends.CLOSED: 2.0, Ends.CLOSED_GROUND: 2.0}

# Wire thicknesses that the solid length has beyond one for each coil.
_SOLID_EXTRA = {Ends.OPEN: 1.0, Ends.OPEN_GROUND: 0.0, Ends.CLOSED: 1.5, Ends.CLOSED_GROUND: 0.0}


def dead_coils(ends: Ends) -> float:
    """Coils at both ends together that do not act: open 0, open and ground 1, closed 2, closed and ground 2.

    >>> dead_coils(Ends.CLOSED_GROUND)
    2.0

    Source: Machinery's Handbook, 31st ed., springs, table 3; EN 13906-1:2013 clause 9 for closed ends (nt = n + 2).
    """
    return _DEAD_COILS[ends]


def solid_length_mm(wire_diameter_mm: float, total_coils: float, ends: Ends) -> float:
    """Length with every coil touching its neighbour.

    Closed and ground L_c = n_t d; closed L_c = (n_t + 1.5) d; open L_c = (n_t + 1) d; open and ground L_c = n_t d

    Parameters: wire diameter d in mm, total coils n_t, ends. Returns the solid length L_c in mm.
    Sources differ for closed ends left unground: JIS B 2704-1 and Shigley have (n_t + 1) d; EN's larger one is taken.

    >>> round(solid_length_mm(0.9, 9.75, Ends.CLOSED_GROUND), 3)
    8.775

    Source: EN 13906-1:2013 clause 9 for closed ends (with d_max for d); Shigley, Mechanical Engineering Design,
    table 10-1 for open ones, which EN does not give.
    """
    return (total_coils + _SOLID_EXTRA[ends]) * wire_diameter_mm


def pitch_mm(
    wire_diameter_mm: float, free_length_mm: float, active_coils: float, total_coils: float, ends: Ends
) -> float:
    """Pitch of the active coils at rest, from wire centre to wire centre.

    p = (L₀ − e) / n, with e the length that belongs to no active coil, n_d = n_t − n the dead coils:
    closed and ground e = n_d d; closed and open e = (n_d + 1) d; but open and ground p = L₀ / n_t

    Parameters: wire diameter d and free length L₀ in mm, active coils n, total coils n_t, ends.
    Returns the pitch p in mm.
    With the usual dead coils this is the handbooks' table: (L₀ − d)/n open, L₀/(n + 1) open and ground, (L₀ − 3d)/n
    closed, (L₀ − 2d)/n closed and ground.
    EN 13906-1 has (L₀ − d)/n for closed and ground ends, in its growth of the diameter only; it is not used here.

    >>> pitch_mm(1.0, 32.0, 6.0, 8.0, Ends.CLOSED_GROUND)
    5.0

    Source: Machinery's Handbook, 31st ed., springs, table 3; Shigley, Mechanical Engineering Design, table 10-1.
    """
    if ends is Ends.OPEN_GROUND:
        return free_length_mm / total_coils
    return (free_length_mm - _end_length_mm(wire_diameter_mm, total_coils - active_coils, ends)) / active_coils


def free_length_from_pitch_mm(
    wire_diameter_mm: float, pitch_mm: float, active_coils: float, total_coils: float, ends: Ends
) -> float:
    """Free length that a pitch gives, the inverse of `pitch_mm`.

    L₀ = p n + e; open and ground L₀ = p n_t

    Parameters: wire diameter d and pitch p in mm, active coils n, total coils n_t, ends. Returns the length in mm.

    >>> free_length_from_pitch_mm(1.0, 4.5, 6.0, 8.0, Ends.CLOSED)
    30.0

    Source: as `pitch_mm`.
    """
    if ends is Ends.OPEN_GROUND:
        return pitch_mm * total_coils
    return pitch_mm * active_coils + _end_length_mm(wire_diameter_mm, total_coils - active_coils, ends)


def _end_length_mm(wire_diameter_mm: float, dead: float, ends: Ends) -> float:
    ground = ends is Ends.CLOSED_GROUND
    return (dead if ground else dead + 1.0) * wire_diameter_mm


def minimum_gaps_mm(wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float) -> float:
    """Sum of the gaps that should stay between the active coils at the shortest working length, static duty.

    S_a = n (0.0015 D²/d + 0.1 d)

    Parameters: wire diameter d and mean coil diameter D in mm, active coils n. Returns the sum of gaps S_a in mm.
    Holds for cold coiled springs. Half as much again for dynamic duty. Inside it the coils begin to touch one by one:
    the rate rises and is no longer even.

    >>> round(minimum_gaps_mm(1.0, 12.0, 6.0), 3)
    1.896

    Source: EN 13906-1:2013 clause 9.
    """
    return active_coils * (0.0015 * mean_diameter_mm**2 / wire_diameter_mm + 0.1 * wire_diameter_mm)


def growth_at_solid_mm(wire_diameter_mm: float, mean_diameter_mm: float, pitch_mm: float) -> float:
    """Growth of the coil diameter from free to solid, its ends free to turn; 0 where the formula falls below it.

    ΔD = 0.1 (m² − 0.8 m d − 0.2 d²) / D

    Parameters: wire diameter d, mean coil diameter D, pitch at rest m in mm. Returns the growth ΔD in mm.
    The pitch is that of `pitch_mm`; EN puts in (L₀ − d)/n for closed and ground ends, which gives a little more.
    Ends kept from turning give about 0.6 of it (a US handbook, from memory): the larger one is taken.

    >>> round(growth_at_solid_mm(1.0, 12.0, 4.67), 3)
    0.149

    Source: EN 13906-1:2013 clause 9.
    """
    d, m = wire_diameter_mm, pitch_mm
    return max(0.0, 0.1 * (m**2 - 0.8 * m * d - 0.2 * d**2) / mean_diameter_mm)


def turn_length_mm(mean_diameter_mm: float, pitch_mm: float) -> float:
    """Wire in one turn of a helix, along its arc.

    l = √((π D)² + p²)

    Parameters: mean coil diameter D and pitch p in mm. Returns the length l in mm.

    >>> round(turn_length_mm(12.0, 4.0), 2)
    37.91

    Source: geometry.
    """
    return hypot(pi * mean_diameter_mm, pitch_mm)


def wire_length_mm(
    wire_diameter_mm: float, mean_diameter_mm: float, pitch_mm: float, active_coils: float, total_coils: float
) -> float:
    """Wire in the whole spring along its arc: active turns at the free pitch, dead turns at the pitch of touching wire.

    l = n √((π D)² + p²) + (n_t − n) √((π D)² + d²)

    Parameters: wire diameter d, mean coil diameter D, pitch p in mm, active coils n, total coils n_t.
    Returns the length l in mm, without anything to hold by.

    >>> round(wire_length_mm(1.0, 12.0, 5.0, 6.0, 8.0), 1)
    303.6

    Source: geometry.
    """
    active = active_coils * turn_length_mm(mean_diameter_mm, pitch_mm)
    return active + (total_coils - active_coils) * turn_length_mm(mean_diameter_mm, wire_diameter_mm)


def mass_g(wire_diameter_mm: float, wire_length_mm: float, density_kg_per_m3: float) -> float:
    """Mass of a length of wire.

    m = ρ π d² l / 4

    Parameters: wire diameter d and length l in mm, density ρ in kg/m³. Returns the mass m in g.

    >>> round(mass_g(1.0, 303.0, 7850.0), 3)
    1.868

    Source: geometry.
    """
    return density_kg_per_m3 * 1e-6 * pi * wire_diameter_mm**2 / 4.0 * wire_length_mm
