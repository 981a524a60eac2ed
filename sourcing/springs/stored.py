"""The energy that a spring under load holds, and lets go all at once where nothing holds it."""

from __future__ import annotations

from math import pi

from sourcing.figures import formula
from sourcing.springs import pressed, pulled, turned
from sourcing.springs.model import CompressionSpring, ConicalSpring, ExtensionSpring, PressedSpring, TorsionSpring

_SLICES = 200
"""Into so many slices the travel of a cone is cut; its force rises the more steeply the more coils lie down."""


@formula("W = F₀ s + R s² / 2", source="statics: the work of a force that rises evenly from the initial tension")
def energy_n_mm(rate_n_per_mm: float, travel_mm: float, initial_tension_n: float = 0.0) -> float:
    """What a spring of one rate holds, pressed or pulled by a travel.

    >>> energy_n_mm(1.3, 10.0), energy_n_mm(0.5, 20.0, 2.0)
    (65.0, 140.0)
    """
    return initial_tension_n * travel_mm + rate_n_per_mm * travel_mm**2 / 2.0


@formula("W = π R_M θ² / 360", source="statics: half the torque times the angle in radians")
def turned_energy_n_mm(rate_n_mm_per_deg: float, wound_deg: float) -> float:
    """What a torsion spring wound up by an angle holds.

    >>> round(turned_energy_n_mm(3.76, 65.0), 1)
    138.6
    """
    return pi * rate_n_mm_per_deg * wound_deg**2 / 360.0


@formula(
    "W = the force summed over the travel from L₀ to L, in 200 slices",
    where={"L₀": "spring.free_length_mm", "L": "length_mm"},
    closed=False,
    source="statics: the work of a force over its travel",
)
def pressed_energy_n_mm(spring: PressedSpring, length_mm: float) -> float:
    """What a compression spring pressed to a length holds; nothing where that is no shorter than free."""
    travel_mm, rate = max(0.0, spring.free_length_mm - length_mm), pressed.rate_n_per_mm(spring)
    if isinstance(spring, CompressionSpring):
        return energy_n_mm(rate, travel_mm)
    slice_mm = travel_mm / _SLICES
    middles = (length_mm + (place + 0.5) * slice_mm for place in range(_SLICES))
    return slice_mm * sum(pressed.force_n(spring, each, rate) for each in middles)


def stored_energy_n_mm(spring: PressedSpring | ExtensionSpring | TorsionSpring, at: float) -> float:
    """What a spring holds at a length, or a torsion spring wound up by an angle from free; never less than nothing."""
    match spring:
        case CompressionSpring() | ConicalSpring():
            return pressed_energy_n_mm(spring, at)
        case ExtensionSpring():
            travel_mm = max(0.0, at - spring.free_length_mm)
            return energy_n_mm(pulled.rate_n_per_mm(spring), travel_mm, spring.initial_tension_n or 0.0)
        case TorsionSpring():
            return turned_energy_n_mm(turned.rate_n_mm_per_deg(spring), at)
