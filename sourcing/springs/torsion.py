"""A torsion spring of round wire: rate, bending stress and its limits, and how body and inside change as it is wound.

Angles are wound up from free, in degrees: the way that closes the coils. A negative one unwinds the spring.
"""

from __future__ import annotations

from math import hypot, pi, sqrt

from sourcing.figures import Holds, formula
from sourcing.springs.compression import INDEX, LEAST_ACTIVE_COILS

ACTIVE_COILS = Holds("active coils", "n", LEAST_ACTIVE_COILS)
"""DIN 2194 begins with 2 coils (from memory). Of EN 13906-3 a summary names 3, printed under extension springs."""

UNWINDING_SHARE = 0.75
"""What a load that unwinds leaves of the permissible stress (assumed).

Coiling leaves a stress in the wire that helps against winding up and adds to unwinding. A spring institute's handbook
(from memory) allows 100 % of the tensile strength where it helps and 80 % where heat has taken it away: as much less
where it adds are 60 %, three quarters of 80.
"""

ROD_SHARE = 0.90
"""A rod of at most nine tenths of the inside when wound up: two stockists' guides (a US handbook's example: 0.913)."""

BEND_INSIDE_RADIUS = 1.0
"""The least inside radius of a bend in a leg, in wire diameters (DIN 2194, as a spring maker prints it)."""


@formula(
    "R_M = E d⁴ / (3667 D n)",
    holds=(INDEX, ACTIVE_COILS),
    source="EN 13906-3:2014",
    from_memory=True,
)
def rate_n_mm_per_deg(
    wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float, elastic_modulus_mpa: float
) -> float:
    """Rate of the body of a torsion spring, in torque a degree, without friction.

    Against a three-dimensional beam model, legs included, it is within 0.5 % for n >= 2 and an index of 4 to 16.
    It is pure bending of the wire, 64·180/π = 3667; legs that bend count as coils, see `coils_of_legs`. US practice in
    inches allows for rubbing with a larger constant, see `rate_with_friction_n_mm_per_deg`.

    >>> round(rate_n_mm_per_deg(1.5, 12.0, 5.0, 206000.0), 2)
    4.74
    """
    return elastic_modulus_mpa * wire_diameter_mm**4 / (3667.0 * mean_diameter_mm * active_coils)


@formula(
    "R_M = E d⁴ / (10.8 · 360 D n)",
    holds=(INDEX, ACTIVE_COILS),
    source="Shigley, Mechanical Engineering Design, eq. 10-51",
    from_memory=True,
)
def rate_with_friction_n_mm_per_deg(
    wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float, elastic_modulus_mpa: float
) -> float:
    """Rate as US practice has it, where coils rub on each other and on the rod: 6 % below the theory.

    The theory's constant a turn is 10.19 (64/(2π)); tests gave 10.8. Machinery's Handbook, 31st ed., table 13, has 4000
    a degree (11.1 a turn) for the same reason. Friction takes this much while winding up and gives less still on the
    way back; well oiled on a loose rod a spring comes near the theory.

    >>> round(rate_with_friction_n_mm_per_deg(1.5, 12.0, 5.0, 206000.0), 2)
    4.47
    """
    return elastic_modulus_mpa * wire_diameter_mm**4 / (10.8 * 360.0 * mean_diameter_mm * active_coils)


@formula(
    "n_a = (a₁ + a₂) / (3 π D)",
    source="Shigley, Mechanical Engineering Design, eq. 10-48; JIS B 2704-1",
    from_memory=True,
)
def coils_of_legs(leg_1_mm: float, leg_2_mm: float, mean_diameter_mm: float) -> float:
    """The coils that would give as much as the legs bend: a third of the wire in straight, tangential legs.

    A leg counts from where it leaves the coil to where it is loaded, square to it; 0 for one that is held all along.
    EN 13906-3's angle of a tangential leg, 97.4 F (4 R² − D²)/(E d⁴), is the same. Left out below 9 % of the wire in
    the body by JIS; here they always count.

    >>> round(coils_of_legs(30.0, 30.0, 12.0), 4)
    0.5305
    """
    return (leg_1_mm + leg_2_mm) / (3.0 * pi * mean_diameter_mm)


@formula(
    "n = E d⁴ / (3667 D R_M) − n_a",
    where={"n_a": "coils_of_legs"},
    holds=(INDEX,),
    source="EN 13906-3:2014",
    from_memory=True,
)
def active_coils_for_rate(
    wire_diameter_mm: float,
    mean_diameter_mm: float,
    rate_n_mm_per_deg: float,
    elastic_modulus_mpa: float,
    coils_of_legs: float = 0.0,
) -> float:
    """Coils of the body that give a wanted rate together with the legs, the inverse of `rate_n_mm_per_deg`.

    It is nothing or less where the legs alone are softer.

    >>> round(active_coils_for_rate(1.5, 12.0, 4.2867, 206000.0, 0.5305), 2)
    5.0
    """
    return elastic_modulus_mpa * wire_diameter_mm**4 / (3667.0 * mean_diameter_mm * rate_n_mm_per_deg) - coils_of_legs


@formula("M = R_M θ", source="EN 13906-3:2014", from_memory=True)
def torque_n_mm(rate_n_mm_per_deg: float, wound_deg: float) -> float:
    """Torque of a torsion spring wound up by an angle.

    >>> torque_n_mm(4.75, 60.0)
    285.0
    """
    return rate_n_mm_per_deg * wound_deg


@formula("σ = 32 M / (π d³)", source="EN 13906-3:2014", from_memory=True)
def bending_stress_mpa(torque_n_mm: float, wire_diameter_mm: float) -> float:
    """Bending stress in the wire, not corrected for its curvature: what static duty that winds up is judged by.

    >>> round(bending_stress_mpa(284.4, 1.5))
    858
    """
    return 32.0 * torque_n_mm / (pi * wire_diameter_mm**3)


@formula("M = σ π d³ / 32", source="EN 13906-3:2014", from_memory=True)
def torque_for_stress_n_mm(bending_stress_mpa: float, wire_diameter_mm: float) -> float:
    """The torque that gives an uncorrected bending stress, the inverse of `bending_stress_mpa`.

    >>> round(torque_for_stress_n_mm(858.4, 1.5), 1)
    284.4
    """
    return bending_stress_mpa * pi * wire_diameter_mm**3 / 32.0


@formula("q = (w + 0.07) / (w − 0.75)", holds=(INDEX,), source="EN 13906-3:2014", from_memory=True)
def curvature_factor(spring_index: float) -> float:
    """EN's factor for the curvature of the wire in bending: the stress at the inside of the coil over the plain one.

    It may be left out in static duty that closes the coils.

    >>> round(curvature_factor(8.0), 3)
    1.113
    """
    return (spring_index + 0.07) / (spring_index - 0.75)


@formula(
    "K_i = (4 w² − w − 1) / (4 w (w − 1))",
    holds=(INDEX,),
    source="Shigley, Mechanical Engineering Design, eq. 10-43",
    from_memory=True,
)
def inner_curvature_factor(spring_index: float) -> float:
    """Wahl's factor for bending at the inside of the coil, which US practice uses; about 1 % below EN's.

    >>> round(inner_curvature_factor(8.0), 3)
    1.103
    """
    return (4.0 * spring_index**2 - spring_index - 1.0) / (4.0 * spring_index * (spring_index - 1.0))


@formula("σ_auf = 0.75 σ_zul", where={"σ_zul": "wound_up_mpa"}, source="assumed, see the share that unwinding leaves")
def permissible_unwinding_stress_mpa(wound_up_mpa: float) -> float:
    """Greatest corrected bending stress in static duty that unwinds a spring, by what it bears wound up.

    The 0.75 is assumed, see `UNWINDING_SHARE`.

    >>> permissible_unwinding_stress_mpa(1330.0)
    997.5
    """
    return UNWINDING_SHARE * wound_up_mpa


@formula(
    "D_θ = D n / (n + θ / 360)",
    source="EN 13906-3:2014; Shigley, Mechanical Engineering Design, eq. 10-54",
    from_memory=True,
)
def wound_mean_diameter_mm(mean_diameter_mm: float, active_coils: float, wound_deg: float) -> float:
    """Mean diameter of the body when it is wound up: the same wire makes more coils.

    Exact with the angle that the body itself turns (Shigley); with the whole angle, which EN puts in, it errs on the
    safe side where legs bend too. Machinery's Handbook, table 13, reduces the inside diameter instead, which leaves a
    little more.

    >>> round(wound_mean_diameter_mm(12.0, 5.0, 60.0) - 1.5, 2)
    10.11
    """
    return mean_diameter_mm * active_coils / (active_coils + wound_deg / 360.0)


@formula("D_rod = 0.90 D_i", source="two spring stockists' guides (a US handbook's example: 0.913)")
def rod_at_most_mm(inside_diameter_mm: float) -> float:
    """The thickest rod that guides advise for an inside when wound up; a thicker one that is cleared still turns.

    >>> rod_at_most_mm(10.0)
    9.0
    """
    return ROD_SHARE * inside_diameter_mm


@formula("L_θ = (n + 1 + θ / 360) d", source="Machinery's Handbook, 31st ed., p. 336")
def wound_body_length_mm(wire_diameter_mm: float, active_coils: float, wound_deg: float) -> float:
    """Length of a body whose coils touch, wound up by an angle: one wire more a turn.

    EN 13906-3 is recalled with n + 1.5 and the largest the wire may be; geometry gives n + 1.

    >>> round(wound_body_length_mm(1.5, 5.0, 60.0), 2)
    9.25
    """
    return (active_coils + 1.0 + wound_deg / 360.0) * wire_diameter_mm


@formula(
    "f = 10^6 d / (4 π n D²) √(E / ρ)",
    holds=(INDEX, ACTIVE_COILS),
    source="derived as EN 13906-1's for compression springs is, and held against coils as a chain of turning masses; "
    "no standard's was read",
)
def natural_frequency_hz(
    wire_diameter_mm: float,
    mean_diameter_mm: float,
    active_coils: float,
    elastic_modulus_mpa: float,
    density_kg_per_m3: float,
) -> float:
    """First natural frequency of the body turning about its axis, both ends held.

    It is ½ √(R/J), with R the rate a radian and J the coils' moment of inertia about the axis; 10⁶ is for mm and MPa.

    >>> round(natural_frequency_hz(1.5, 12.0, 5.0, 206000.0, 7850.0))
    849
    """
    per_mm_and_mpa = 1e6  # mm⁻¹ to m⁻¹ gives 1000, √MPa to √Pa another 1000
    wave = sqrt(elastic_modulus_mpa / density_kg_per_m3)
    return per_mm_and_mpa * wire_diameter_mm / (4.0 * pi * active_coils * mean_diameter_mm**2) * wave


@formula("l = n √((π D)² + p²)", source="geometry")
def body_wire_length_mm(mean_diameter_mm: float, active_coils: float, pitch_mm: float) -> float:
    """Wire in the body along its arc.

    >>> round(body_wire_length_mm(12.0, 5.0, 1.5), 1)
    188.6
    """
    return active_coils * hypot(pi * mean_diameter_mm, pitch_mm)
