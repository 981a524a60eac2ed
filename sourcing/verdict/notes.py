"""What the verdict does not rest on: figures nobody gave, figures not judged yet, and defaults that mattered."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sourcing.need.model import Need
from sourcing.quantities import show_cycles, show_diameter, show_length, show_temperature
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
_OF_KIND: Mapping[str, _Words] = {"compression": _PRESSED, "conical": _PRESSED}


def not_judged(need: Need) -> Iterator[str]:
    """What the need leaves open, or asks that this version does not judge."""
    words = _OF_KIND[need.kind]
    if not need.pocket.bores_mm and not need.pocket.rods_mm:
        yield words.no_room
    if not any(point.force_n is not None for point in need.working):
        yield words.no_force
    if not need.working:
        yield words.no_working
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


def assumed(need: Need, bench: Bench, winds: bool) -> Iterator[str]:
    """The defaults that mattered because bench.yaml does not state them."""
    if "clearance" not in bench.stated and (need.pocket.bores_mm or need.pocket.rods_mm):
        bore, rod = (show_diameter(mm, bench.units) for mm in (bench.clearance.bore_mm, bench.clearance.rod_mm))
        yield f"clearance of {bore} in a bore and {rod} over a rod"
    if "tolerances" not in bench.stated and _house_tolerance_used(need):
        length = show_length(bench.tolerances.length_mm, bench.units)
        yield f"± {100 * bench.tolerances.force:g} % of a force and ± {length} of a length where the need gives none"
    if winds and "oven" not in bench.stated and bench.oven_c is not None:
        yield f"an oven that reaches {show_temperature(bench.oven_c, bench.units)}"
    if winds and "rods" not in bench.stated:
        yield "a common set of rods and drill shanks for mandrels"


def _house_tolerance_used(need: Need) -> bool:
    wanted = [need.free_length_mm, *(point.force_n for point in need.working)]
    return any(each is not None and each.minus is None for each in wanted)


def notes(need: Need, bench: Bench, winds: bool) -> tuple[str, ...]:
    """All of it, a sentence each."""
    taken = list(assumed(need, bench, winds))
    said = [f"Assumed, as bench.yaml does not say: {'; '.join(taken)}."] if taken else []
    return (*not_judged(need), *said)
