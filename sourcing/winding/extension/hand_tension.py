"""The initial tension that a spring wound tight by hand keeps: anything from none to what a mandrel can give.

Wire laid close with a lean back on the last turn stays close. How hard it then presses hangs on the hand, and heat
takes part of it away, so it is a band from zero and never a promise.
"""

from __future__ import annotations

from sourcing.figures import formula
from sourcing.springs.extension import initial_tension_n
from sourcing.springs.initial_tension import initial_stress_wound_mpa
from sourcing.winding.model import Band

LOST_IN_HEAT = (0.25, 0.50)
"""The share of it that stress relief takes, least and most (a US trade institute handbook, from memory, unsure)."""

TENSION_DOUBTED = 1.2
"""An initial tension of so many times the most that a hand gives is doubted (assumed)."""

AIMED_AT = 0.5
"""The share of the most that can be had by which a coil without a wanted tension is planned (assumed)."""


@formula(
    "F = 0.75 F₀",
    source="a US trade institute handbook, unsure: heat takes a quarter to a half, here the quarter",
    from_memory=True,
)
def most_left_after_heat_n(initial_tension_n: float) -> float:
    """The most of an initial tension that stress relief leaves: it takes `LOST_IN_HEAT`.

    >>> most_left_after_heat_n(4.0)
    3.0
    """
    return initial_tension_n * (1.0 - LOST_IN_HEAT[0])


def hand_tension_n(wire_diameter_mm: float, mean_diameter_mm: float, tensile_strength_mpa: float, heated: bool) -> Band:
    """Between what the initial tension of a spring wound by hand lies.

    From 0 to that of τ₀ = 0.45 R_m (0.135 − 0.00625 w), less the quarter that heat takes at least.

    Parameters: wire diameter d and mean coil diameter D in mm, tensile strength R_m in MPa, whether heat is given.
    Returns the band in N.

    >>> band = hand_tension_n(1.2, 12.0, 2060.0, heated=False)
    >>> band.low, round(band.high, 2)
    (0.0, 3.8)

    Source: EN 13906-2:2013 clause 9 (from memory) for the most; the least, and what heat takes: common practice.
    """
    stress_mpa = max(0.0, initial_stress_wound_mpa(mean_diameter_mm / wire_diameter_mm, tensile_strength_mpa))
    most_n = initial_tension_n(stress_mpa, wire_diameter_mm, mean_diameter_mm)
    return Band(0.0, most_left_after_heat_n(most_n) if heated else most_n)


def tension_as_wound_n(after_heat_n: float, lost: float) -> float:
    """The initial tension to wind for so much to be left after heat: F₀ / (1 − lost).

    Parameters: what is to be left in N, the share that heat takes.

    >>> round(tension_as_wound_n(3.0, LOST_IN_HEAT[0]), 2), tension_as_wound_n(3.0, LOST_IN_HEAT[1])
    (4.0, 6.0)

    Source: `LOST_IN_HEAT`.
    """
    return after_heat_n / (1.0 - lost)
