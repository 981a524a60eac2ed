"""A torsion spring in hand: the wire of its body stays in it, and other coils leave its legs elsewhere."""

from __future__ import annotations

from dataclasses import replace

from sourcing.figures import formula
from sourcing.springs.model import TorsionSpring
from sourcing.winding.leg_reading import WHOLE_TURN_DEG


def as_it_came(wanted: TorsionSpring, mean_mm: float) -> TorsionSpring:
    """The spring with another diameter: the same wire makes n' = n D / D' coils."""
    return with_coils(wanted, mean_mm, wanted.active_coils * wanted.mean_diameter_mm / mean_mm)


def with_coils(wanted: TorsionSpring, mean_mm: float, coils: float) -> TorsionSpring:
    """The spring with another diameter and coils, its legs where those leave them."""
    off_deg, angle = WHOLE_TURN_DEG * (coils - wanted.active_coils), wanted.free_angle_deg
    return replace(
        wanted,
        mean_diameter_mm=mean_mm,
        active_coils=coils,
        free_angle_deg=None if angle is None else (angle + off_deg) % WHOLE_TURN_DEG,
    )


@formula(
    "θ = 360 (n' − n)",
    where={"n": "wanted.active_coils", "n'": "came.active_coils"},
    closed=False,
    source="geometry",
)
def turned_on_deg(wanted: TorsionSpring, came: TorsionSpring) -> float:
    """By how much the legs stand further on than meant, the way the spring is wound up."""
    return WHOLE_TURN_DEG * (came.active_coils - wanted.active_coils)
