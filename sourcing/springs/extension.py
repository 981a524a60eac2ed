"""Rate, force, lengths and stress of the body of an extension spring of round wire, its coils wound tight.

Hooks are in hooks.py, the tension that the coils hold at rest in initial_tension.py, the whole spring in pulled.py.
"""

from __future__ import annotations

from math import pi

from sourcing.figures import Holds, formula
from sourcing.springs.compression import INDEX

LEAST_ACTIVE_COILS = 3.0
ACTIVE_COILS = Holds("active coils", "n", LEAST_ACTIVE_COILS)


@formula(
    "R = G d⁴ / (8 D³ n)",
    holds=(INDEX, ACTIVE_COILS),
    source="EN 13906-2:2013",
    from_memory=True,
)
def rate_n_per_mm(
    wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float, shear_modulus_mpa: float
) -> float:
    """Rate of an extension spring; with bent loops all coils of the body are active.

    US practice adds the hooks' own bending, see `active_coils_with_hooks`.

    >>> round(rate_n_per_mm(1.2, 12.0, 20.0, 81500.0), 3)
    0.611
    """
    return shear_modulus_mpa * wire_diameter_mm**4 / (8.0 * mean_diameter_mm**3 * active_coils)


@formula(
    "n = n_b + G / E",
    where={"n_b": "body_coils"},
    source="Shigley, Mechanical Engineering Design, eq. 10-40",
    from_memory=True,
)
def active_coils_with_hooks(body_coils: float, shear_modulus_mpa: float, elastic_modulus_mpa: float) -> float:
    """Active coils where the bending of two full loops is counted: four tenths of a coil in steel.

    Machinery's Handbook (31st ed., p. 328) counts two hooks as one coil; EN 13906-2 counts none. EN's is used here.

    >>> round(active_coils_with_hooks(20.0, 81500.0, 206000.0), 3)
    20.396
    """
    return body_coils + shear_modulus_mpa / elastic_modulus_mpa


@formula("F = F₀ + R s", where={"s": "extension_mm"}, source="EN 13906-2:2013", from_memory=True)
def force_n(initial_tension_n: float, rate_n_per_mm: float, extension_mm: float) -> float:
    """Force of a spring pulled longer than free; up to the initial tension it does not open at all.

    >>> round(force_n(6.0, 0.611, 20.0), 2)
    18.22
    """
    return initial_tension_n + rate_n_per_mm * extension_mm


@formula("s = (F − F₀) / R", source="EN 13906-2:2013, turned round", from_memory=True)
def extension_mm(force_n: float, initial_tension_n: float, rate_n_per_mm: float) -> float:
    """How far a force pulls a spring, the inverse of `force_n`.

    >>> round(extension_mm(18.22, 6.0, 0.611), 1)
    20.0
    """
    return (force_n - initial_tension_n) / rate_n_per_mm


@formula("L = L₀ + s", where={"s": "extension_mm"}, source="EN 13906-2:2013", from_memory=True)
def pulled_length_mm(free_length_mm: float, extension_mm: float) -> float:
    """Length between the insides of the hooks of a spring pulled longer than free.

    >>> pulled_length_mm(44.6, 20.0)
    64.6
    """
    return free_length_mm + extension_mm


@formula("τ₀ = 8 F₀ D / (π d³)", source="EN 13906-2:2013", from_memory=True)
def initial_stress_mpa(initial_tension_n: float, wire_diameter_mm: float, mean_diameter_mm: float) -> float:
    """Shear stress in the wire at rest, not corrected for its curvature, that presses the coils together.

    >>> round(initial_stress_mpa(3.0, 1.0, 12.0), 2)
    91.67
    """
    return 8.0 * initial_tension_n * mean_diameter_mm / (pi * wire_diameter_mm**3)


@formula("F₀ = τ₀ π d³ / (8 D)", source="EN 13906-2:2013, turned round", from_memory=True)
def initial_tension_n(initial_stress_mpa: float, wire_diameter_mm: float, mean_diameter_mm: float) -> float:
    """Force below which the coils stay closed, the inverse of `initial_stress_mpa`.

    >>> round(initial_tension_n(91.67, 1.0, 12.0), 2)
    3.0
    """
    return initial_stress_mpa * pi * wire_diameter_mm**3 / (8.0 * mean_diameter_mm)


@formula("L_K = (n_t + 1) d", source="EN 13906-2:2013, with the largest the wire may be for d", from_memory=True)
def body_length_mm(total_coils: float, wire_diameter_mm: float) -> float:
    """Length of the body at rest, its coils touching.

    >>> round(body_length_mm(20.0, 1.2), 2)
    25.2
    """
    return (total_coils + 1.0) * wire_diameter_mm


@formula("L₀ = L_K + 2 L_H", source="EN 13906-2:2013", from_memory=True)
def free_length_mm(body_length_mm: float, hook_length_mm: float) -> float:
    """Length at rest between the insides of two hooks that are alike, `hook_length_mm` from body to inside.

    >>> round(free_length_mm(25.2, 9.7), 2)
    44.6
    """
    return body_length_mm + 2.0 * hook_length_mm


@formula("L_H = (L₀ − L_K) / 2", source="EN 13906-2:2013, turned round", from_memory=True)
def hook_length_mm(free_length_mm: float, body_length_mm: float) -> float:
    """How far the inside of each hook stands from the body, the inverse of `free_length_mm`.

    >>> round(hook_length_mm(44.6, 25.2), 2)
    9.7
    """
    return (free_length_mm - body_length_mm) / 2.0
