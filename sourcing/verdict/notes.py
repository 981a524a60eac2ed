"""What the verdict does not rest on: figures nobody gave, figures not judged yet, and defaults that mattered."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sourcing.need.model import Need
from sourcing.quantities import show_angle, show_cycles, show_diameter, show_length, show_temperature
from sourcing.stock.model import Bench


@dataclass(frozen=True, slots=True)
class _Words:
    """What of a kind is not judged where the need does not say it."""

    no_room: str
    no_force: str
    no_working: str


_PRESSED = _Words(
    "No bore and no rod are given: clearances were not judged, and nothing guides the spring.",
    "No force is asked for: how hard a spring pushes was not judged.",
    "No working length is given: travel, stress in use and buckling were not judged.",
)
_TORSION = _Words(
    "No bore and no rod are given: clearances were not judged, and nothing guides the spring.",
    "No torque is asked for: how hard a spring turns was not judged.",
    "No working angle is given: stress in use, and how far it closes on its rod, were not judged.",
)
_PULLED = _Words(
    "No bore is given: whether its body has room was not judged.",
    "No force is asked for: how hard a spring pulls was not judged.",
    "No working length is given: how far it is pulled, and the stress in its body and hooks, were not judged.",
)
_OF_KIND: Mapping[str, _Words] = {
    "compression": _PRESSED,
    "conical": _PRESSED,
    "extension": _PULLED,
    "torsion": _TORSION,
}


def not_judged(need: Need, units: str) -> Iterator[str]:
    """What the need leaves open, or asks that this version does not judge."""
    words = _OF_KIND[need.kind]
    if not need.pocket.bores_mm and not need.pocket.rods_mm:
        yield words.no_room
    forces = [point.force_n for point in need.working] + [point.torque_n_mm for point in need.turned]
    if not any(forces):
        yield words.no_force
    if not forces:
        yield words.no_working
    yield from _legs_past_the_pocket(need, units)
    if need.kind == "extension":
        yield from _pulled_not_judged(need)
    works = need.working or need.turned
    if need.cycles is not None and not works:
        yield f"{show_cycles(need.cycles)} cycles are asked for, not between what: how long it lasts was not judged."
    said = {
        "cycles": need.cycles is not None or not works,
        "temperature": need.temperature_c is not None,
        "surroundings": bool(need.surroundings),
    }
    unknown = [name for name, given in said.items() if not given]
    if unknown:
        yield "Unknown, so not judged: " + ", ".join(unknown) + "."


def _legs_past_the_pocket(need: Need, units: str) -> Iterator[str]:
    """Legs that reach further from the axis than the wall of the bore."""
    bore = need.pocket.bore_mm
    if bore is None or bore.smallest is None:
        return
    wall_mm = bore.smallest / 2.0
    legs = (("Leg 1", need.leg_1), ("Leg 2", need.leg_2))
    past = [name for name, leg in legs if leg is not None and (leg.length_mm.smallest or 0.0) > wall_mm]
    if past:
        longer = "is wanted longer" if len(past) == 1 else "are wanted longer"
        slot = "It must come out through a slot" if len(past) == 1 else "They must come out through slots"
        named = " and ".join(past).replace("and Leg", "and leg")
        yield (
            f"{named} {longer} than the pocket, whose wall is {show_diameter(wall_mm, units)} from the axis. {slot}: "
            "whether there is one was not judged."
        )


def _pulled_not_judged(need: Need) -> Iterator[str]:
    """What of hooks and hooking in the need leaves open."""
    if need.hooks is None:
        yield "No hooks are given: whether those of a spring go round what they must hold was not judged."
    if need.pull_to_fit_mm is None:
        yield "pull_to_fit is not given: whether it can be hooked in without pulling it too far was not judged."


def assumed(need: Need, bench: Bench, winds: bool) -> Iterator[str]:
    """The defaults that mattered because bench.yaml does not state them."""
    if "clearance" not in bench.stated and (need.pocket.bores_mm or need.pocket.rods_mm):
        bore, rod = (show_diameter(mm, bench.units) for mm in (bench.clearance.bore_mm, bench.clearance.rod_mm))
        yield f"clearance of {bore} in a bore and {rod} over a rod"
    if "tolerances" not in bench.stated and _house_tolerance_used(need):
        share, length = f"± {100 * bench.tolerances.force:g} %", show_length(bench.tolerances.length_mm, bench.units)
        said = f"{share} of a force and ± {length} of a length"
        if need.kind == "torsion":
            angle = show_angle(bench.tolerances.angle_deg)
            said = f"{share} of a torque, ± {angle} of the angle between the legs and ± {length} of a leg"
        yield f"{said} where the need gives none"
    if winds and "oven" not in bench.stated and bench.oven_c is not None:
        yield f"an oven that reaches {show_temperature(bench.oven_c, bench.units)}"
    if winds and "rods" not in bench.stated:
        yield "a common set of rods and drill shanks for mandrels"


def _house_tolerance_used(need: Need) -> bool:
    wanted = [need.free_length_mm, *(point.force_n for point in need.working)]
    wanted += [need.free_angle_deg, *(point.torque_n_mm for point in need.turned)]
    wanted += [leg and leg.length_mm for leg in (need.leg_1, need.leg_2)]
    return any(each is not None and each.minus is None for each in wanted)


def notes(need: Need, bench: Bench, winds: bool) -> tuple[str, ...]:
    """All of it, a sentence each."""
    taken = list(assumed(need, bench, winds))
    said = [f"Assumed, as bench.yaml does not say: {'; '.join(taken)}."] if taken else []
    return (*not_judged(need, bench.units), *said)
