"""How forces are weighed at the bench: in what, up to where, at which length between."""

from __future__ import annotations

from sourcing.quantities import show_force, show_mass
from sourcing.quantities.kinds import MASS, MM_PER_INCH, STANDARD_GRAVITY

KITCHEN_SCALE_N = 5 * STANDARD_GRAVITY
"""A kitchen scale ends at 5 kg (common practice, no source)."""

STOP_STEPS_MM = {"mm": 0.5, "inch": MM_PER_INCH / 16}
"""To what a stop is cut that may be of any length, by the bench's units."""

_WEIGHT_OFF_G = {"mm": 100.0, "inch": 4 * MASS.factors["oz"]}


def grams(force_n: float | None) -> float | None:
    """The mass that a scale shows under a force, at standard gravity; None of an open bound."""
    return None if force_n is None else force_n / STANDARD_GRAVITY * 1000


def weight_off(units: str) -> tuple[float, str]:
    """A force that may be off, in N, as a scale shows it: the advice says by how much length it is made up.

    >>> weight_off("mm"), weight_off("inch")[1]
    ((0.980665, '100 g'), '4.0 oz')
    """
    mass_g = _WEIGHT_OFF_G[units]
    return mass_g * STANDARD_GRAVITY / 1000, show_mass(mass_g, units)


def kitchen_scale_ends(units: str) -> str:
    """Where a kitchen scale ends.

    >>> kitchen_scale_ends("mm"), kitchen_scale_ends("inch")
    ('5 kg (49 N)', '11 lb (11.0 lbf)')
    """
    if units == "inch":
        return f"11 lb ({show_force(KITCHEN_SCALE_N, units)})"
    return f"5 kg ({KITCHEN_SCALE_N:.0f} N)"


def stop_between_mm(one_mm: float, other_mm: float, units: str) -> float:
    """A stop about midway between two lengths, at a length that is easily cut where there is room for one.

    >>> stop_between_mm(24.0, 31.0, "mm"), stop_between_mm(24.0, 31.0, "inch"), stop_between_mm(24.0, 24.5, "inch")
    (27.5, 26.9875, 24.25)
    """
    step_mm, middle_mm = STOP_STEPS_MM[units], (one_mm + other_mm) / 2
    stop_mm = round(round(middle_mm / step_mm) * step_mm, 6)
    return stop_mm if min(one_mm, other_mm) < stop_mm < max(one_mm, other_mm) else middle_mm
