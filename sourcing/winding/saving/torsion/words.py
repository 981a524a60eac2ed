"""What is said of a torsion spring that came out otherwise."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.model import Fit
from sourcing.quantities import show_angle, show_diameter
from sourcing.springs.model import TorsionSpring
from sourcing.winding.in_hand import keeps
from sourcing.winding.leg_reading import WHOLE_TURN_DEG
from sourcing.winding.mandrel import CLEARLY_SURER
from sourcing.winding.saving.coil import HARDLY_CHANCE, Coil, Way
from sourcing.winding.saving.next_coil import next_one
from sourcing.winding.saving.torsion.body import Came, legs_meant_deg, wanted_of
from sourcing.winding.saving.torsion.heat_to_come import heat_decides, turned_by_heat_said
from sourcing.winding.saving.verdict_words import came_out_at, keep_it, save_it
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


def said_of_legs(coil: Coil, came: Came) -> Iterator[str]:
    """Where the legs of a coil should stand of which the diameter alone was measured."""
    meant_deg = legs_meant_deg(coil)
    if came.legs_measured or meant_deg is None or abs(came.off_deg) < LEGS_SET_DEG:
        return
    stand, meant = show_angle((meant_deg + came.off_deg) % WHOLE_TURN_DEG), show_angle(meant_deg)
    before = " before heat" if coil.change_to_come else ""
    yield f"By its diameter its legs should stand at {stand}{before} instead of {meant}: that is worked out."


def verdict(coil: Coil, way: Way[TorsionSpring]) -> str:
    """Whether it is kept, can be saved, or is wound again."""
    if way.answer == "keep":
        return keep_it(coil, way)
    return save_it(coil, way) if way.answer == "change" else "wind it again; bending its legs does not save it"


def measured_first(coil: Coil, came: Came, bent: Way[TorsionSpring]) -> str:
    """The one step that comes before a verdict; empty where all that decides was measured."""
    if heat_decides(coil, came):
        return (
            "heat it first, as the sheet has it; then measure its outside and its legs, and ask again with --came-out, "
            "--came-out-angle and --heated yes"
        )
    if came.legs_measured or wanted_of(coil).free_angle_deg is None:
        return ""
    diameter = "serves" if keeps(bent.fit, coil.plan.fit) else "makes a near fit, for where what is off does not matter"
    return f"its diameter {diameter}; measure its legs, and ask again with --came-out-angle beside it"


def hangs_on(coil: Coil, came: Came) -> Iterator[str]:
    """What hangs on where the legs stand that are measured first."""
    then = ""
    if heat_decides(coil, came):
        yield f"What becomes of it hangs on where its legs stand then: {turned_by_heat_said(coil, came)}."
        then = " then"
    yield (
        f"It is kept as it is if its legs{then} stand at {_angles_kept(coil)}. Further off they are bent, by "
        f"{BENT_AT_MOST_DEG:g} deg at most (assumed); beyond that it is wound again."
    )


def _angles_kept(coil: Coil) -> str:
    """The angles that the sheet's list takes."""
    (row,) = (row for row in coil.plan.accept if row.figure == "free_angle_deg")
    low, high = ("" if deg is None else show_angle(deg) for deg in (row.low, row.high))
    if low and high:
        return f"{low} to {high}"
    return f"{low} or more" if low else f"{high} or less"


def surer_bent(came: Came, way: Way[TorsionSpring], bent: Fit) -> Iterator[str]:
    """How much surer one that is kept would be with its legs at the angle that was meant."""
    if way.answer == "keep" and bent.fits == "yes" and bent.chance > way.fit.chance + CLEARLY_SURER:
        yield f"Surer with its legs bent {_back(came.off_deg)}: a chance of {bent.chance:.2f}."


def said_of_deed(coil: Coil, came: Came, way: Way[TorsionSpring]) -> Iterator[str]:
    """How its legs are bent and what rate it has, or why bending them does not do."""
    now, meant = (coil.shown(spring.active_coils) for spring in (came.spring, wanted_of(coil)))
    coils = f"{now} coils" + ("" if now == meant else f" instead of {meant}")
    kept = f"All its wire is in the body still, so its rate is the one that was meant: {coils}{coil.counted}."
    if way.answer in ("keep", "measure first"):
        yield kept
    elif way.answer == "change":
        yield f"Bend its legs {_back(came.off_deg)} where they leave the coil. {kept}"
    elif came.legs_measured and wanted_of(coil).free_angle_deg is not None and abs(came.off_deg) > BENT_AT_MOST_DEG:
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


def said_of_stop(came: Came, later_deg: float, next_stop_deg: float | None) -> str:
    """Where to stop next: turns that are laid more become fewer coils as the coil opens, so by more than it was off."""
    if next_stop_deg is None or abs(later_deg) < LEGS_SET_DEG:
        return ""
    late = "later" if later_deg > 0.0 else "sooner"
    return (
        f"{next_one(came.surprising)}, on the same mandrel: stop the crank {show_angle(abs(later_deg))} {late}, at "
        f"{show_angle(next_stop_deg)}, from leg 1 on to leg 2 the way you wind."
    )


def measure_too(coil: Coil) -> Iterator[str]:
    """That a coil of which the angle alone was measured is no trial yet."""
    if coil.wire.spool is not None:
        yield "Measure it outside too (--came-out), so that it can be written down as a trial."
