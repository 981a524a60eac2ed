"""A torsion spring measured before its heat: whether where its legs stand decides anything yet."""

from __future__ import annotations

from dataclasses import replace

from sourcing.figures import formula
from sourcing.quantities import show_angle
from sourcing.springs.model import TorsionSpring
from sourcing.winding.in_hand import keeps
from sourcing.winding.leg_reading import WHOLE_TURN_DEG
from sourcing.winding.saving.coil import Coil
from sourcing.winding.saving.torsion.body import Came, judged, wanted_of
from sourcing.winding.torsion.task import BENT_AT_MOST_DEG


@formula(
    "θ = 360 n (1 / (1 + c) − 1)",
    where={"n": "coils", "c": "change"},
    source="derived: the wire of the body keeps its length, so that n D does, and heat changes D by c",
)
def turned_by_heat_deg(coils: float, change: float) -> float:
    """By how much heat turns the legs on, the way the spring is wound up; `change`: of the diameter, relative.

    >>> [round(turned_by_heat_deg(12.75, change)) for change in (-0.005, -0.02)]
    [23, 94]
    """
    return WHOLE_TURN_DEG * coils * (1.0 / (1.0 + change) - 1.0)


def heat_decides(coil: Coil, came: Came) -> bool:
    """Whether it is heated and measured before its legs decide.

    Measured legs decide before it where they serve after the least and the most that heat changes, or are further off
    than legs are bent after both.
    """
    if not coil.change_to_come or wanted_of(coil).free_angle_deg is None:
        return False
    if not came.legs_measured:
        return True
    expected_deg = turned_by_heat_deg(_coils_now(coil, came), coil.change_to_come)
    least, most = (came.off_deg + turn - expected_deg for turn in _turns_deg(coil, came))
    if all(_serves(coil, came.spring, off_deg) for off_deg in (least, most)):
        return False
    return least <= BENT_AT_MOST_DEG and most >= -BENT_AT_MOST_DEG


def turned_by_heat_said(coil: Coil, came: Came) -> str:
    """By how much heat is to turn its legs."""
    low, high = (show_angle(turn) for turn in _turns_deg(coil, came))
    return f"heat turns them on by {low} to {high}, the way it is wound up (common practice, no source)"


def _turns_deg(coil: Coil, came: Came) -> tuple[float, float]:
    """The least and the most that heat turns its legs."""
    material, now = coil.wire.material, _coils_now(coil, came)
    low, high = (turned_by_heat_deg(now, change) for change in (material.heat_change_low, material.heat_change_high))
    return min(low, high), max(low, high)


def _coils_now(coil: Coil, came: Came) -> float:
    return came.spring.active_coils * (1.0 + coil.change_to_come)


def _serves(coil: Coil, spring: TorsionSpring, off_deg: float) -> bool:
    """Whether it serves with its legs so much further on than meant."""
    angle_deg = ((wanted_of(coil).free_angle_deg or 0.0) + off_deg) % WHOLE_TURN_DEG
    return keeps(judged(coil, replace(spring, free_angle_deg=angle_deg)), coil.plan.fit)
