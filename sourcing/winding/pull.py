"""The pull on the wire while it is wound: how much, what it leaves of springback, how it is made."""

from __future__ import annotations

from math import pi

from sourcing.figures import formula
from sourcing.quantities import show_force
from sourcing.quantities.kinds import G_PER_POUND, STANDARD_GRAVITY
from sourcing.winding import springback

HAND_PULL_N = 40.0
"""What a hand pulls steadily, in the middle of its range."""

HAND_RANGE_N = (20.0, 60.0)
"""Between these a hand keeps a pull even (common practice, no source)."""

PULL_SHARE, GREATEST_PULL_SHARE = 0.05, 0.10
"""Pull over the yield force of the wire: what to aim at (common practice, no source), and the most, so that springback
is lowered by less than one per cent (`springback.moment_kept`)."""


@formula("F_y = σ_f π d² / 4", source="derived, see winding_model: the flow stress over the section")
def yield_force_n(flow_stress_mpa: float, wire_diameter_mm: float) -> float:
    """The pull at which the wire yields.

    >>> round(yield_force_n(2398.0, 1.0))
    1883
    """
    return flow_stress_mpa * pi / 4 * wire_diameter_mm**2


@formula(
    "T = min(0.05 F_y, 40)",
    where={"F_y": "yield_n"},
    source="common practice, no source; 40 N is what a hand pulls steadily",
)
def pull_n(yield_n: float) -> float:
    """A steady pull: a twentieth of the wire's yield force, and no more than a hand holds.

    >>> pull_n(500.0), pull_n(1883.0)
    (25.0, 40.0)
    """
    return min(PULL_SHARE * yield_n, HAND_PULL_N)


@formula("c = T / F_y", where={"T": "pull_n", "F_y": "yield_n"}, source="definition")
def pull_fraction(pull_n: float, yield_n: float) -> float:
    """A pull over the force at which the wire yields.

    >>> pull_fraction(40.0, 800.0)
    0.05
    """
    return pull_n / yield_n


def how_made(pull_n: float, units: str) -> str:
    """How a pull is made: by hand where a hand keeps it even, else with a friction block or a weight.

    >>> how_made(40.0, "mm")[:31]
    'A hand with pliers keeps that ('
    """
    low, high = HAND_RANGE_N
    weight, practice = weight_shown(pull_n, units), f"{_range_shown(units)}, common practice, no source"
    block = (
        f"two blocks of hard wood or brass, squeezed until the wire just slips with {weight} hung on it, or with that "
        "weight hung on it over a pulley"
    )
    if low <= pull_n <= high:
        return f"A hand with pliers keeps that ({practice}); steadier, through {block}."
    return f"No hand keeps that even ({practice}): draw it through {block}."


def _range_shown(units: str) -> str:
    low, high = HAND_RANGE_N
    return f"{show_force(low, units)} to {show_force(high, units)}" if units == "inch" else f"{low:g} to {high:g} N"


def weight_shown(force_n: float, units: str) -> str:
    """The weight that pulls so.

    >>> weight_shown(40.0, "mm"), weight_shown(6.2, "mm"), weight_shown(40.0, "inch")
    ('4.1 kg', '630 g', '9.0 lb')
    """
    grams = 1000.0 * force_n / STANDARD_GRAVITY
    if units == "inch":
        return f"{grams / G_PER_POUND:.1f} lb"
    return f"{grams / 1000.0:.1f} kg" if grams >= 1000.0 else f"{round(grams, -1):.0f} g"


def smaller_mm(mandrel_mm: float, wire_diameter_mm: float, flow_strain: float, pulls: tuple[float, float]) -> float:
    """By how much a coil comes out smaller if it is pulled with the second of two shares of the yield force.

    >>> round(smaller_mm(6.917, 0.8, 0.012055, (0.0, 0.10)), 3)
    0.022
    """
    index = springback.index_on_mandrel(mandrel_mm, wire_diameter_mm)
    slack, tight = (springback.released_index(index, flow_strain, springback.moment_kept(each)) for each in pulls)
    return springback.mean_diameter_mm(slack - tight, wire_diameter_mm)
