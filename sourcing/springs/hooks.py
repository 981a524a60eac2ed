"""The hooks of an extension spring: how high they stand, what wire they take, and their two stresses.

A hook is bent twice: in the plane of the loop, where the wire furthest from the line of the load bends most (point A),
and where the loop turns out of the body, where the wire twists (point B).
"""

from __future__ import annotations

from collections.abc import Mapping
from math import pi

from sourcing.figures import Holds, formula
from sourcing.springs.compression import INDEX, shear_stress_mpa
from sourcing.springs.model import Hooks

BEND_RADIUS_WIRES = 2.0
"""Mean radius of the bend where a hook leaves the body, over the wire: assumed where nobody measured it.

DIN 2097 wants at least one wire; a spring guide 1.5 for a long life.
"""

LEAST_BEND_RADIUS_WIRES = 1.0
"""DIN 2097, as a spring maker's page gives it."""

LOOP_HEIGHTS: Mapping[Hooks, tuple[float, float | None] | None] = {
    Hooks.FULL_LOOP: (0.8, 1.1),
    Hooks.CENTRE_LOOP: (0.8, 1.1),
    Hooks.HALF_LOOP: (0.55, 0.8),
    Hooks.SIDE_HOOK: (0.8, 1.1),
    Hooks.EXTENDED_HOOK: (1.1, None),
    Hooks.THREADED_PLUG: None,
}
"""From the body to the inside of the hook, over the inside diameter of the coil: least and greatest (None: open).

DIN 2097 and EN 13906-2, from memory; Machinery's Handbook (31st ed., p. 328) has 0.75 to 0.85 for a loop. A plug has
no height of its own.
"""

LOOPS = frozenset({Hooks.FULL_LOOP, Hooks.CENTRE_LOOP, Hooks.HALF_LOOP, Hooks.SIDE_HOOK})
"""The hooks that are bent up out of the last coil."""

COILS_OF_HOOK: Mapping[Hooks, float] = {
    Hooks.FULL_LOOP: 1.0,
    Hooks.CENTRE_LOOP: 1.0,
    Hooks.HALF_LOOP: 0.5,
    Hooks.SIDE_HOOK: 1.0,
    Hooks.EXTENDED_HOOK: 0.75,
    Hooks.THREADED_PLUG: 0.0,
}
"""How many coils of wire one hook takes, its shank apart (geometry)."""

BODY_LOAD_ARM: Mapping[Hooks, float] = {**dict.fromkeys(Hooks, 1.0), Hooks.SIDE_HOOK: 2.0}
"""The greatest arm of the load on the body's wire, over the coil's radius.

Beside the axis, as from side hooks, the load twists the wire by F R (1 - cos a) as it goes round: by up to twice F R.
Derived: statics of one coil. It does not ask how far the body bows towards the line of the load, which eases it.
"""


def measured_inside(hooks: Hooks) -> str:
    """Between what the length of a spring with such ends is measured.

    >>> measured_inside(Hooks.FULL_LOOP), measured_inside(Hooks.THREADED_PLUG)
    ('inside the hooks', 'between the eyes')
    """
    return "between the eyes" if hooks is Hooks.THREADED_PLUG else "inside the hooks"


def load_arm(hooks: Hooks) -> float:
    """The greatest arm of the load on the body's wire, over the coil's radius."""
    return BODY_LOAD_ARM[hooks]


@formula(
    "τ = 8 u F D / (π d³)",
    where={"u": load_arm},
    holds=(INDEX,),
    source="EN 13906-2:2013; the arm u of a load beside the axis: statics of one coil",
    from_memory=True,
)
def body_stress_mpa(force_n: float, wire_diameter_mm: float, mean_diameter_mm: float, hooks: Hooks) -> float:
    """Greatest shear stress in the wire of the body, not corrected for its curvature.

    >>> round(body_stress_mpa(14.7, 1.0, 12.0, Hooks.FULL_LOOP), 1)
    449.2
    """
    return load_arm(hooks) * shear_stress_mpa(force_n, wire_diameter_mm, mean_diameter_mm)


LOOP_INDEX = Holds("index of the loop", "C_1", 2.0)
BEND_INDEX = Holds("index of the bend", "C_2", 2.0)


@formula(
    "K_A = (4 C_1² − C_1 − 1) / (4 C_1 (C_1 − 1))",
    holds=(LOOP_INDEX,),
    source="Shigley, Mechanical Engineering Design, eq. 10-35",
    from_memory=True,
)
def loop_factor(loop_index: float) -> float:
    """Stress at the inside of a bent wire over that of a straight one; `loop_index` = 2 r₁/d, r₁ its mean radius.

    Against curved-beam theory integrated over the round section it is within 0.05 % for an index of 4 to 20.

    >>> round(loop_factor(12.0), 4)
    1.0663
    """
    return (4.0 * loop_index**2 - loop_index - 1.0) / (4.0 * loop_index * (loop_index - 1.0))


@formula(
    "σ = F (16 K_A D / (π d³) + 4 / (π d²))",
    holds=(),
    source="Shigley, Mechanical Engineering Design, eq. 10-34",
    from_memory=True,
)
def bending_stress_mpa(force_n: float, wire_diameter_mm: float, mean_diameter_mm: float, loop_factor: float) -> float:
    """Greatest stress at point A, where the loop's wire is furthest from the line of the load: bending and tension.

    >>> round(bending_stress_mpa(14.7, 1.0, 12.0, 1.07), 1)
    980.0
    """
    arm = 16.0 * loop_factor * mean_diameter_mm / (pi * wire_diameter_mm**3)
    return force_n * (arm + 4.0 / (pi * wire_diameter_mm**2))


@formula(
    "K_B = (4 C_2 − 1) / (4 C_2 − 4)",
    holds=(BEND_INDEX,),
    source="Shigley, Mechanical Engineering Design, eq. 10-37, which wants C₂ over 4",
    from_memory=True,
)
def bend_factor(bend_index: float) -> float:
    """Torsion at the inside of the bend over that in a straight wire; `bend_index` = 2 r₂/d, r₂ its mean radius.

    >>> bend_factor(4.0)
    1.25
    """
    return (4.0 * bend_index - 1.0) / (4.0 * bend_index - 4.0)


@formula(
    "τ = 8 K_B F D / (π d³)",
    source="Shigley, Mechanical Engineering Design, eq. 10-36",
    from_memory=True,
)
def torsion_stress_mpa(force_n: float, wire_diameter_mm: float, mean_diameter_mm: float, bend_factor: float) -> float:
    """Greatest torsion at point B, the bend where the hook leaves the body.

    >>> round(torsion_stress_mpa(14.7, 1.0, 12.0, 1.15), 1)
    516.6
    """
    return 8.0 * bend_factor * force_n * mean_diameter_mm / (pi * wire_diameter_mm**3)


def coils_of_hook(hooks: Hooks) -> float:
    """How many coils of wire one hook takes, its shank apart."""
    return COILS_OF_HOOK[hooks]


def shanks_of_hook(hooks: Hooks) -> float:
    """One where the hook stands on a straight shank, none where it is bent up out of the last coil."""
    return 1.0 if hooks is Hooks.EXTENDED_HOOK else 0.0


@formula(
    "l_H = k π D + z max(0, L_H − D / 2)",
    where={"k": coils_of_hook, "z": shanks_of_hook},
    source="geometry",
)
def hook_wire_mm(hooks: Hooks, mean_diameter_mm: float, hook_length_mm: float) -> float:
    """Wire in one hook: its share of a coil, and an extended hook's shank.

    >>> round(hook_wire_mm(Hooks.FULL_LOOP, 12.0, 10.0), 1)
    37.7
    """
    shank_mm = max(0.0, hook_length_mm - mean_diameter_mm / 2.0)
    return coils_of_hook(hooks) * pi * mean_diameter_mm + shanks_of_hook(hooks) * shank_mm
