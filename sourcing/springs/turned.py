"""A torsion spring turned to an angle: each question asked of the whole spring, its legs and both its bodies counted.

The rate is handed in: that of the dimensions, or one that somebody measured. Angles are wound up from free, in degrees.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from sourcing.figures import Holds, formula
from sourcing.springs import torsion
from sourcing.springs.compression import INDEX_RANGE, LEAST_ACTIVE_COILS
from sourcing.springs.model import LegShape, TorsionSpring
from sourcing.springs.strength import Permissible, Place, permissible, permissible_at_mpa

HOOK_WIRES, OFFSET_WIRES = 7.0, 2.5
"""Wire beyond a leg's length, in wire diameters (assumed): half a turn round a pin of two wires and two wires more for
a hook; a bend at the coil for an offset."""


@dataclass(frozen=True, slots=True)
class AtAngle:
    """A torsion spring turned to an angle; a negative one unwinds it.

    `bending_stress_mpa` is not corrected for the curvature of the wire, `corrected_stress_mpa` is, by EN's factor; both
    have no sign. `rod_at_most_mm` is the thickest rod that guides advise for the closed inside. All are None where the
    coils cannot go so far: wound closed on themselves, or straightened out.
    """

    angle_deg: float
    torque_n_mm: float | None
    bending_stress_mpa: float | None
    corrected_stress_mpa: float | None
    inside_diameter_mm: float | None
    rod_at_most_mm: float | None
    body_length_mm: float | None


def coils_of_legs(spring: TorsionSpring) -> float:
    """What the legs' bending counts for, in coils."""
    one, two = (0.0 if leg is None else leg.length_mm for leg in (spring.leg_1, spring.leg_2))
    return torsion.coils_of_legs(one, two, spring.mean_diameter_mm)


_OF = {
    "B": "spring.bodies",
    "d": "spring.wire_diameter_mm",
    "D": "spring.mean_diameter_mm",
    "n": "spring.active_coils",
    "E": "spring.elastic_modulus_mpa",
}
"""What the symbols mean in a formula of a whole spring, B its bodies."""

_HOLDS = (Holds("spring index", "D / d", *INDEX_RANGE), Holds("coils", "n", LEAST_ACTIVE_COILS))


def stated_body_mm(spring: TorsionSpring) -> float:
    """The length of the bodies as stated; 0 where the coils touch."""
    return 0.0 if spring.body_length_mm is None else spring.body_length_mm


@formula(
    "R_M = B E d⁴ / (3667 D (n + n_a))",
    where={**_OF, "n_a": coils_of_legs},
    holds=_HOLDS,
    source="EN 13906-3:2014, the legs counted as coils; two bodies add",
    from_memory=True,
)
def rate_n_mm_per_deg(spring: TorsionSpring) -> float:
    """The rate that the dimensions give, without friction: legs count as coils, and two bodies give twice one."""
    coils = spring.active_coils + coils_of_legs(spring)
    wire, mean = spring.wire_diameter_mm, spring.mean_diameter_mm
    return spring.bodies * torsion.rate_n_mm_per_deg(wire, mean, coils, spring.elastic_modulus_mpa)


@formula(
    "R_M = B E d⁴ / (10.8 · 360 D (n + n_a))",
    where={**_OF, "n_a": coils_of_legs},
    holds=_HOLDS,
    source="Shigley, Mechanical Engineering Design, eq. 10-51, the legs counted as coils; two bodies add",
    from_memory=True,
)
def rate_with_friction_n_mm_per_deg(spring: TorsionSpring) -> float:
    """The rate where coils rub, as US practice has it."""
    coils = spring.active_coils + coils_of_legs(spring)
    wire, mean = spring.wire_diameter_mm, spring.mean_diameter_mm
    return spring.bodies * torsion.rate_with_friction_n_mm_per_deg(wire, mean, coils, spring.elastic_modulus_mpa)


@formula("σ = 32 abs(M) / (B π d³)", where=_OF, holds=_HOLDS[:1], source="EN 13906-3:2014", from_memory=True)
def stress_mpa(spring: TorsionSpring, torque_n_mm: float) -> float:
    """The uncorrected bending stress under a torque that its bodies share; it has no sign."""
    return torsion.bending_stress_mpa(abs(torque_n_mm) / spring.bodies, spring.wire_diameter_mm)


def q_of(spring: TorsionSpring) -> float:
    """EN's factor for the curvature of the wire in bending."""
    return torsion.curvature_factor(spring.spring_index)


@formula(
    "σ_q = q · 32 abs(M) / (B π d³)",
    where={**_OF, "q": q_of},
    holds=_HOLDS[:1],
    source="EN 13906-3:2014",
    from_memory=True,
)
def corrected_stress_mpa(spring: TorsionSpring, torque_n_mm: float) -> float:
    """`stress_mpa` with EN's factor for the curvature of the wire."""
    return q_of(spring) * stress_mpa(spring, torque_n_mm)


def bears_wound_up(spring: TorsionSpring) -> Permissible:
    """The share of its wire's strength that static duty which winds it up may take, with its source."""
    return permissible(Place.WOUND_UP, spring.material)


def share_wound_up(spring: TorsionSpring) -> float:
    """That share alone."""
    return bears_wound_up(spring).share


def permissible_stress_mpa(spring: TorsionSpring) -> float | None:
    """Greatest uncorrected bending stress in static duty that winds it up; None where the strength is not known."""
    if spring.tensile_strength_mpa is None:
        return None
    return permissible_at_mpa(Place.WOUND_UP, spring.material, spring.tensile_strength_mpa)


@formula(
    "θ_zul = B s R_m π d³ / (32 R_M)",
    where={**_OF, "s": share_wound_up, "R_m": "spring.tensile_strength_mpa"},
    holds=_HOLDS[:1],
    source="EN 13906-3:2014",
    from_memory=True,
)
def permissible_angle_deg(spring: TorsionSpring, rate_n_mm_per_deg: float) -> float | None:
    """The angle to which it may be wound up in static duty; None where the strength of its wire is not known."""
    stress = permissible_stress_mpa(spring)
    if stress is None:
        return None
    torque = spring.bodies * torsion.torque_for_stress_n_mm(stress, spring.wire_diameter_mm)
    return torque / rate_n_mm_per_deg


def permissible_unwinding_deg(spring: TorsionSpring, rate_n_mm_per_deg: float) -> float | None:
    """The angle by which it may be unwound in static duty, derated; None where the strength is not known."""
    wound_up = permissible_stress_mpa(spring)
    if wound_up is None:
        return None
    plain = torsion.permissible_unwinding_stress_mpa(wound_up) / torsion.curvature_factor(spring.spring_index)
    return spring.bodies * torsion.torque_for_stress_n_mm(plain, spring.wire_diameter_mm) / rate_n_mm_per_deg


def can_turn_to(spring: TorsionSpring, wound_deg: float) -> bool:
    """Whether the coils can go so far: short of closing on themselves, and of straightening out."""
    if spring.active_coils + wound_deg / 360.0 <= 0.0:
        return False
    return inside_diameter_mm(spring, wound_deg) > 0.0


@formula(
    "D_i = D n / (n + θ / 360) − d",
    where=_OF,
    source="EN 13906-3:2014; Shigley, Mechanical Engineering Design, eq. 10-54",
    from_memory=True,
)
def inside_diameter_mm(spring: TorsionSpring, wound_deg: float) -> float:
    """The inside diameter of the body when wound up; larger than at rest when unwound."""
    mean = torsion.wound_mean_diameter_mm(spring.mean_diameter_mm, spring.active_coils, wound_deg)
    return mean - spring.wire_diameter_mm


def outside_diameter_mm(spring: TorsionSpring, wound_deg: float) -> float:
    """The outside diameter of the body when wound up; larger than at rest when unwound."""
    mean = torsion.wound_mean_diameter_mm(spring.mean_diameter_mm, spring.active_coils, wound_deg)
    return mean + spring.wire_diameter_mm


@formula(
    "L_K = max(B (n + 1 + θ / 360) d, L_s)",
    where={**_OF, "L_s": stated_body_mm},
    source="Machinery's Handbook, 31st ed., p. 336",
)
def body_length_mm(spring: TorsionSpring, wound_deg: float = 0.0) -> float:
    """The length of the bodies when wound up, the loop between two of them left out.

    Coils that touch make it one wire longer a turn. Coils that stand apart only come nearer each other, for wire and
    pitch angle stay as they are: such a body keeps its length until they touch.
    """
    touching = torsion.wound_body_length_mm(spring.wire_diameter_mm, spring.active_coils, wound_deg)
    return max(spring.bodies * touching, stated_body_mm(spring))


def pitch_mm(spring: TorsionSpring) -> float:
    """The pitch of the coils at rest; one wire where they touch."""
    if spring.body_length_mm is None:
        return spring.wire_diameter_mm
    return (spring.body_length_mm / spring.bodies - spring.wire_diameter_mm) / spring.active_coils


@formula(
    "l = B times the turns of a body, its legs and what their shapes take; and the loop between two bodies",
    where=_OF,
    closed=False,
    source="geometry; the wire in hooks, offsets and the loop is assumed",
)
def wire_length_mm(spring: TorsionSpring) -> float:
    """The wire in the whole spring: bodies, legs, and what their shapes take beyond their length."""
    body = torsion.body_wire_length_mm(spring.mean_diameter_mm, spring.active_coils, pitch_mm(spring))
    return spring.bodies * (body + legs_wire_mm(spring)) + _across_mm(spring)


def legs_wire_mm(spring: TorsionSpring) -> float:
    """The wire in the legs of one body."""
    beyond = {LegShape.STRAIGHT: 0.0, LegShape.HOOKED: HOOK_WIRES, LegShape.OFFSET: OFFSET_WIRES}
    return sum(leg.length_mm + beyond[leg.shape] * spring.wire_diameter_mm for leg in spring.legs)


def _across_mm(spring: TorsionSpring) -> float:
    """The wire that joins the two sides of the loop between two bodies: half a turn of a mean radius of two wires."""
    return 2.0 * pi * spring.wire_diameter_mm if spring.bodies > 1 else 0.0


def leg_angle_deg(active_coils: float) -> float:
    """The angle between two straight, tangential legs, from leg 1 on to leg 2 the way the spring is wound up.

    α = 180 + 360 n, whole turns left out: after whole coils the legs run on in opposite directions, and winding up by
    an angle adds it.

    >>> leg_angle_deg(5.0), leg_angle_deg(5.25), leg_angle_deg(4.5)
    (180.0, 270.0, 0.0)

    Source: geometry.
    """
    return (180.0 + 360.0 * active_coils) % 360.0


def coils_near(active_coils: float, leg_angle_deg: float) -> float:
    """The number of coils nearest to a wanted one whose legs stand at an angle to each other.

    >>> coils_near(5.1, 270.0), coils_near(5.9, 270.0)
    (5.25, 6.25)

    Source: geometry.
    """
    part = ((leg_angle_deg - 180.0) / 360.0) % 1.0
    return part + round(active_coils - part)


def at_angle(spring: TorsionSpring, wound_deg: float) -> AtAngle:
    """Torque, stresses, inside and body length at an angle by the dimensions."""
    if not can_turn_to(spring, wound_deg):
        return AtAngle(wound_deg, None, None, None, None, None, None)
    torque = torsion.torque_n_mm(rate_n_mm_per_deg(spring), wound_deg)
    inside = inside_diameter_mm(spring, wound_deg)
    return AtAngle(
        angle_deg=wound_deg,
        torque_n_mm=torque,
        bending_stress_mpa=stress_mpa(spring, torque),
        corrected_stress_mpa=corrected_stress_mpa(spring, torque),
        inside_diameter_mm=inside,
        rod_at_most_mm=torsion.rod_at_most_mm(inside),
        body_length_mm=body_length_mm(spring, wound_deg),
    )
