"""What is said of a torsion spring that came out otherwise."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_angle, show_diameter
from sourcing.springs.model import TorsionSpring
from sourcing.winding.leg_reading import WHOLE_TURN_DEG
from sourcing.winding.saving.coil import HARDLY_CHANCE, Coil, Way, came_out_at, keep_it, save_it
from sourcing.winding.saving.torsion.body import Came, legs_meant_deg, wanted_of
from sourcing.winding.torsion.task import BENT_AT_MOST_DEG, LEGS_SET_DEG

TWO_COILS = (
    "Diameter and angle do not belong to one coil: measure both again, and count the turns, before you go by either."
)
"""What is said of a diameter and an angle that no one coil has."""


def diameter_came(coil: Coil, outside_mm: float) -> str:
    """The diameter that was measured beside the one meant."""
    assert isinstance(coil.meant, TorsionSpring)
    return came_out_at(*(show_diameter(mm, coil.units) for mm in (outside_mm, coil.meant.outside_diameter_mm)))


def legs_came(coil: Coil, angle_deg: float) -> str:
    """The angle that was measured beside the one meant."""
    came, meant = show_angle(angle_deg), show_angle(legs_meant_deg(coil) or 0.0)
    return f"legs came out at {came}" + (", as meant" if came == meant else f" instead of {meant}")


def said_of_legs(coil: Coil, off_deg: float) -> Iterator[str]:
    """Where the legs of a coil should stand of which the diameter alone was measured."""
    meant_deg = legs_meant_deg(coil)
    if meant_deg is None or abs(off_deg) < LEGS_SET_DEG:
        return
    stand, meant = show_angle((meant_deg + off_deg) % WHOLE_TURN_DEG), show_angle(meant_deg)
    yield (
        f"Its legs should then stand at {stand} instead of {meant}. That is worked out from the diameter: measure "
        "them, and ask again with --came-out-angle beside it."
    )


def verdict(coil: Coil, way: Way[TorsionSpring]) -> str:
    """Whether it is kept, can be saved, or is wound again."""
    if way.answer == "keep":
        return keep_it(coil, way)
    return save_it(coil, way) if way.answer == "change" else "wind it again; bending its legs does not save it"


def legs_first(came: Came, bends: bool) -> str:
    """That its legs are measured before it is wound again for them; empty where they were, or can be bent."""
    if bends or came.trial is None or came.trial.leg_angle_deg is not None or came.spring.free_angle_deg is None:
        return ""
    return "its diameter serves; measure its legs before you go by where they should stand"


def said_of_deed(coil: Coil, came: Came, way: Way[TorsionSpring]) -> Iterator[str]:
    """How its legs are bent and what rate it has, or why bending them does not do."""
    now, meant = (coil.shown(spring.active_coils) for spring in (came.spring, wanted_of(coil)))
    coils = f"{now} coils" + ("" if now == meant else f" instead of {meant}")
    kept = f"All its wire is in the body still, so its rate is the one that was meant: {coils}{coil.counted}."
    if way.answer in ("keep", "measure first"):
        yield kept
    elif way.answer == "change":
        yield f"Bend its legs {_back(came.off_deg)} where they leave the coil. {kept}"
    elif wanted_of(coil).free_angle_deg is not None and abs(came.off_deg) > BENT_AT_MOST_DEG:
        off = show_angle(abs(came.off_deg))
        yield f"Its legs are {off} off, and are bent by {BENT_AT_MOST_DEG:g} deg at most (assumed)."
    if came.trial is None and abs(came.off_deg) >= 1.0:
        outside_mm = came.spring.mean_diameter_mm / (1.0 + coil.change_to_come) + coil.wire_mm
        yield f"If the turns were counted right, it is {show_diameter(outside_mm, coil.units)} outside."


def _back(off_deg: float) -> str:
    """The way in which legs are bent that stand too far on, or not far enough."""
    way = "back, against the way it is wound up," if off_deg > 0.0 else "on, the way it is wound up,"
    return f"{way} by {show_angle(abs(off_deg))} between them"


def said_of_surprise(came: Came) -> Iterator[str]:
    """That it is too far off to be chance; of an angle alone, turns that were counted wrongly come first."""
    if not came.surprising:
        return
    if came.trial is None:
        yield "Count its turns again first: a quarter of a turn counted wrongly is 90 deg between its legs."
    yield HARDLY_CHANCE


def said_of_stop(came: Came, later_deg: float, next_stop_deg: float | None) -> Iterator[str]:
    """Where to stop next: turns that are laid more become fewer coils as the coil opens, so by more than it was off."""
    if next_stop_deg is None or abs(later_deg) < LEGS_SET_DEG:
        return
    late = "later" if later_deg > 0.0 else "sooner"
    begins = "If that agrees, on the same mandrel" if came.surprising else "On the same mandrel,"
    yield (
        f"{begins} stop the crank {show_angle(abs(later_deg))} {late} next time: at "
        f"{show_angle(next_stop_deg)}, from leg 1 on to leg 2 the way you wind."
    )


def measure_too(coil: Coil) -> Iterator[str]:
    """That a coil of which the angle alone was measured is no trial yet."""
    if coil.wire.spool is not None:
        yield "Measure it outside too (--came-out), so that it can be written down as a trial."
