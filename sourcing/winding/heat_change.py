"""What stress relief does to the diameter of a coil, and the doubt it leaves."""

from __future__ import annotations

from math import hypot

from sourcing.figures import formula
from sourcing.materials.model import Material


def as_wound(mean_mm: float, heated: bool, material: Material) -> tuple[float, float]:
    """The mean diameter before heat of a coil measured at `mean_mm`, and the relative doubt that heat left in it."""
    if not heated:
        return mean_mm, 0.0
    change, doubt = heat_change(material)
    return mean_mm / (1 + change), doubt


def heat_change(material: Material) -> tuple[float, float]:
    """Relative change of the coil diameter in stress relief: the middle of the material's range, half of it as 2 sd."""
    low, high = material.heat_change_low, material.heat_change_high
    return (low + high) / 2, (high - low) / 4


@formula(
    "D_h = D (1 + h)",
    where={"h": "heat_change"},
    source="the middle of the range that is common practice for the material, no source",
)
def heated_mean_mm(mean_diameter_mm: float, heat_change: float) -> float:
    """The mean diameter after stress relief.

    >>> round(heated_mean_mm(9.6, -0.0125), 3)
    9.48
    """
    return mean_diameter_mm * (1 + heat_change)


@formula(
    "u_h = (1 + h) √(u² + (D q)²)",
    where={"h": "heat_change", "u": "mean_sd_mm", "q": "heat_doubt"},
    source="derived: the doubts of springback and of heat, independent of each other",
)
def heated_sd_mm(mean_diameter_mm: float, mean_sd_mm: float, heat_change: float, heat_doubt: float) -> float:
    """The standard deviation of the mean diameter after stress relief."""
    return (1 + heat_change) * hypot(mean_sd_mm, mean_diameter_mm * heat_doubt)
