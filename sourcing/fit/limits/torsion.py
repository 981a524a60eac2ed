"""Limits of a torsion spring, and all of them in their order."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from sourcing.fit.limits import any_kind, room
from sourcing.fit.limits.pressed import GUIDING_GAP
from sourcing.fit.limits.room import ROD, within
from sourcing.fit.model import Limit
from sourcing.fit.turned import TurnedCase
from sourcing.need.model import WantedLeg
from sourcing.quantities import show_angle, show_stress
from sourcing.springs import torsion, turned
from sourcing.springs.compression import LEAST_ACTIVE_COILS
from sourcing.springs.hands import SEEN
from sourcing.springs.model import Leg, LegShape
from sourcing.springs.strength import permissible_stress_mpa

HAND = "hand"
_LAST_DIGITS_MM = 1e-9


def hand(case: TurnedCase) -> Iterator[Limit]:
    """A load must wind the spring up: the wrong hand and an unknown one are refused."""
    has, wanted = case.spring.hand, case.need.hand
    if case.spring.bodies > 1:
        yield Limit(HAND, True, True, "two bodies of opposite hand: turned round, it serves either way")
    elif has is None:
        yield Limit(HAND, False, True, f"its hand is not known, and the wrong one would be unwound; {SEEN}")
    elif wanted is None:
        why = f"{has}-hand; which hand is wanted is not said, and the wrong one would be unwound; {SEEN}"
        yield Limit(HAND, False, False, why)
    elif has is wanted:
        yield Limit(HAND, True, True, f"{has}-hand, as wanted: the load winds it up")
    else:
        why = f"{has}-hand, where {wanted}-hand is wanted ({SEEN}): the load would unwind it{_unwound(case)}"
        yield Limit(HAND, False, True, why)


def _unwound(case: TurnedCase) -> str:
    """How much less it stands when it is loaded against its hand."""
    against = turned.permissible_unwinding_deg(case.spring, case.rate_in_place)
    wound = turned.permissible_angle_deg(case.spring, case.rate_in_place)
    if against is None or wound is None:
        return ""
    return f", where it stands {show_angle(against)} instead of {show_angle(wound)} (derated, assumed)"


def bodies(case: TurnedCase) -> Iterator[Limit]:
    """A double torsion spring goes where one is wanted; where nobody said, it is near."""
    has, wanted = case.spring.bodies, case.need.bodies
    if wanted is not None:
        words = {1: "one body", 2: "two bodies"}
        why = f"{words[has]}; {words[wanted]} wanted"
        yield Limit("bodies", has == wanted, True, why)
    elif has > 1:
        yield Limit("bodies", False, False, "two bodies with a loop between them; one was not asked for (bodies: 2)")


def rod(case: TurnedCase) -> Iterator[Limit]:
    """Inside diameter at the largest angle, less its tolerance and clearance, must pass over the rod.

    A rod that clears so, thicker than guides advise, is said and holds.
    """
    wanted = case.need.pocket.rod_mm
    if wanted is None or wanted.largest is None:
        return
    tolerance_mm, clearance_mm = case.spread.diameter_tolerance_mm, case.bench.clearance.rod_mm
    leaves_mm, angle = case.wound_inside_mm - tolerance_mm - clearance_mm, case.largest_deg
    wound = "" if angle is None else f" wound up by {show_angle(angle)}"
    why = (
        f"inside {case.size(case.wound_inside_mm)}{wound}"
        + (f" ({case.size(case.spring.inside_diameter_mm)} at rest)" if angle is not None else "")
        + (f" - tolerance {case.size(tolerance_mm)}" if tolerance_mm else "")
        + f" - clearance {case.size(clearance_mm)} = {case.size(leaves_mm)}; the rod is {case.size(wanted.largest)}"
    )
    advised_mm = torsion.rod_at_most_mm(case.wound_inside_mm)
    if advised_mm < wanted.largest <= leaves_mm:
        why += f", more than the {case.size(advised_mm)} that guides advise"
    yield within(ROD, wanted.largest, leaves_mm, why)


def guided(case: TurnedCase) -> Iterator[Limit]:
    """A rod, or else a bore, must be near enough to keep the coils from leaning over as they are wound up."""
    rods, bores, gap_mm = case.need.pocket.rod_mm, case.need.pocket.bore_mm, GUIDING_GAP * case.spring.mean_diameter_mm
    if rods is None or rods.largest is None:
        return
    loose_mm = case.wound_inside_mm - rods.largest
    near_bore = bores is not None and (bores.smallest or 0.0) - case.spring.outside_diameter_mm <= gap_mm
    if loose_mm > gap_mm and not near_bore:
        why = (
            f"{case.size(loose_mm)} of room round the rod even when wound up: nothing keeps its coils from leaning over"
        )
        yield Limit("guidance", False, False, why)


def width(case: TurnedCase) -> Iterator[Limit]:
    """The body, longer by a wire for each turn that it is wound up, must go between its cheeks."""
    wide = case.need.pocket.width_mm
    if wide is None or wide.smallest is None:
        return
    angle = case.largest_deg or 0.0
    wants_mm = turned.body_length_mm(case.spring, angle)
    body, pocket = case.size(wants_mm), case.size(wide.smallest)
    why = f"body {body} long wound up by {show_angle(angle)}; the pocket is {pocket} wide"
    yield within("width", wants_mm, wide.smallest, why)
    if case.spring.bodies > 1 and wants_mm <= wide.smallest:
        left_mm = wide.smallest - wants_mm
        holds = left_mm >= 2.0 * case.spring.wire_diameter_mm
        why = f"{case.size(left_mm)} left beside both bodies for the loop between them; two wires are wanted at least"
        yield Limit("width of the loop", holds, False, why)


def legs(case: TurnedCase) -> Iterator[Limit]:
    """Legs must reach where they are loaded; longer ones are cut, other shapes are bent."""
    for name, wish, leg in case.legs:
        if wish is not None:
            yield _leg(case, name, wish, leg)
        elif leg is not None:
            yield from _in_the_bore(case, name, leg)


def _leg(case: TurnedCase, name: str, wish: WantedLeg, leg: Leg | None) -> Limit:
    wanted = case.length(case.loaded_at_mm(wish))
    if leg is None:
        return Limit(name, False, True, f"no {name} is listed; {wanted} wanted")
    low_mm, high_mm = case.leg_bounds_mm(wish)
    why = f"{name} is {case.length(leg.length_mm)} long; {wanted} wanted"
    if leg.length_mm < low_mm - _LAST_DIGITS_MM:
        past = low_mm / leg.length_mm - 1.0
        return Limit(name, False, True, why + ": too short to reach where it is loaded", past)
    if wish.shape not in (None, leg.shape):
        return Limit(
            name, False, False, f"{name} is {leg.shape}; {wish.shape} wanted: bend it, not tighter than its own wire"
        )
    if leg.length_mm > high_mm + _LAST_DIGITS_MM and leg.shape is LegShape.HOOKED:
        return Limit(name, False, False, f"{why}: bend a new hook there, and cut the old one off")
    if leg.length_mm > high_mm + _LAST_DIGITS_MM:
        cut = f"cut {case.length(leg.length_mm - case.loaded_at_mm(wish))} off"
        return Limit(name, True, False, f"{why}: {cut}", do=f"{cut} {name}")
    return Limit(name, True, True, why)


def _in_the_bore(case: TurnedCase, name: str, leg: Leg) -> Iterator[Limit]:
    """A leg that nobody asked for must go into the bore too."""
    bore = case.need.pocket.bore_mm
    if bore is None or bore.smallest is None:
        return
    reach_mm = hypot(leg.length_mm, case.spring.mean_diameter_mm / 2.0)
    wall_mm = bore.smallest / 2.0
    holds = reach_mm <= wall_mm
    why = f"{name} reaches {case.size(reach_mm)} from the axis; the wall of the bore is at {case.size(wall_mm)}"
    yield Limit(name, holds, False, why if holds else why + ": longer than the pocket, cut it or lead it out of a slot")


def closes(case: TurnedCase) -> Iterator[Limit]:
    """The coils must not close on themselves before the largest angle."""
    if case.largest_deg is not None and not turned.can_turn_to(case.spring, case.largest_deg):
        why = f"wound up by {show_angle(case.largest_deg)} its inside would be closed"
        yield Limit("closing", False, True, why)


def stress(case: TurnedCase) -> Iterator[Limit]:
    """Static bending stress at the largest angle, uncorrected, for a load that winds up."""
    angle, tensile_mpa = case.largest_deg, case.spring.tensile_strength_mpa
    if angle is None:
        return
    name, units = "stress at the largest angle", case.bench.units
    if tensile_mpa is None:
        wire = case.length(case.spring.wire_diameter_mm)
        why = f"the strength table of {case.spring.material.name} does not reach {wire} wire: it cannot be judged"
        yield Limit(name, False, False, why)
        return
    bears, stress_mpa = turned.bears_wound_up(case.spring), case.stress_mpa(angle)
    permissible_mpa = permissible_stress_mpa(bears.share, tensile_mpa)
    holds = stress_mpa <= permissible_mpa
    why = (
        f"{show_stress(stress_mpa, units)} at {show_angle(angle)}; {show_stress(permissible_mpa, units)} is the static "
        f"limit ({bears.book})"
    )
    past = max(0.0, stress_mpa / permissible_mpa - 1.0)
    yield Limit(name, holds, True, why if holds else why + ": it will take a set", past)


def free_angle(case: TurnedCase) -> Iterator[Limit]:
    """Where an angle between the legs is wanted and the spring's is not known, it must be measured."""
    wish = case.need.free_angle_deg
    if wish is not None and case.spring.free_angle_deg is None:
        yield Limit("free angle", False, False, "the angle between its legs is not known: measure it, or bend them")


def active_coils(case: TurnedCase) -> Iterator[Limit]:
    """Fewer than two coils are outside the standard."""
    return any_kind.coils_covered(case, LEAST_ACTIVE_COILS, "DIN 2194")


def spring_index(case: TurnedCase) -> Iterator[Limit]:
    """The index should be in the standard's range."""
    return any_kind.index_covered(case, "EN 13906-3")


LIMITS = (
    hand,
    bodies,
    room.bore,
    rod,
    guided,
    width,
    legs,
    closes,
    stress,
    free_angle,
    any_kind.temperature,
    spring_index,
    active_coils,
    any_kind.material,
)

STRESS = (stress,)
"""The limits that hang on the strength of the wire."""
