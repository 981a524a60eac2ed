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


def heat_first(coil: Coil, came: Came) -> str:
    """That it is heated and measured before its legs decide; empty where they do already.

    They do where they serve after the least and the most that heat changes, or are further off than legs are bent after
    both; and where no heat is to come.
    """
    if not coil.change_to_come or wanted_of(coil).free_angle_deg is None:
        return ""
    material, now = coil.wire.material, came.spring.active_coils * (1.0 + coil.change_to_come)
    turns = sorted(turned_by_heat_deg(now, change) for change in (material.heat_change_low, material.heat_change_high))
    expected_deg = turned_by_heat_deg(now, coil.change_to_come)
    least, most = (came.off_deg + turn - expected_deg for turn in turns)
    if all(_serves(coil, came.spring, off_deg) for off_deg in (least, most)):
        return ""
    if least > BENT_AT_MOST_DEG or most < -BENT_AT_MOST_DEG:
        return ""
    low, high = (show_angle(turn) for turn in turns)
    return (
        f"heat it first: its legs turn on by {low} to {high} as its diameter changes, the way it is wound up (common "
        "practice, no source). Measure them then, and ask again with --heated yes"
    )


def _serves(coil: Coil, spring: TorsionSpring, off_deg: float) -> bool:
    """Whether it serves with its legs so much further on than meant."""
    angle_deg = ((wanted_of(coil).free_angle_deg or 0.0) + off_deg) % WHOLE_TURN_DEG
    return keeps(judged(coil, replace(spring, free_angle_deg=angle_deg)), coil.plan.fit)
