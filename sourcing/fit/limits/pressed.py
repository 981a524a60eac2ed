"""Limits of a compression spring of any shape: room in its pocket, travel before solid, static stress, ends."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.case import Case
from sourcing.fit.model import Limit
from sourcing.quantities import Wanted, show_stress
from sourcing.springs import strength

BORE, ROD = "bore clearance", "rod clearance"
"""How the limits of room on the diameter begin; a cone's go on with the end they are about."""

_LAST_DIGITS_MM = 1e-9


def bore(case: Case) -> Iterator[Limit]:
    """Outside diameter with its tolerance, growth and clearance must go into the bore."""
    tolerance_mm, clearance_mm = case.spread.diameter_tolerance_mm, case.bench.clearance.bore_mm
    for seat in case.seats:
        if seat.bore_mm is None or seat.bore_mm.smallest is None:
            continue
        wants_mm = seat.outside_mm + seat.growth_mm + tolerance_mm + clearance_mm
        why = (
            f"outside {case.size(seat.outside_mm)} + growth {case.size(seat.growth_mm)}"
            + (f" + tolerance {case.size(tolerance_mm)}" if tolerance_mm else "")
            + f" + clearance {case.size(clearance_mm)} = {case.size(wants_mm)}; "
            + f"the bore is {case.size(seat.bore_mm.smallest)}"
        )
        yield _within(BORE + seat.where, wants_mm, seat.bore_mm.smallest, why)


def rod(case: Case) -> Iterator[Limit]:
    """Inside diameter less its tolerance and clearance must pass over the rod."""
    tolerance_mm, clearance_mm = case.spread.diameter_tolerance_mm, case.bench.clearance.rod_mm
    for seat in case.seats:
        if seat.rod_mm is None or seat.rod_mm.largest is None:
            continue
        leaves_mm = seat.inside_mm - tolerance_mm - clearance_mm
        why = (
            f"inside {case.size(seat.inside_mm)}"
            + (f" - tolerance {case.size(tolerance_mm)}" if tolerance_mm else "")
            + f" - clearance {case.size(clearance_mm)} = {case.size(leaves_mm)}; "
            + f"the rod is {case.size(seat.rod_mm.largest)}"
        )
        yield _within(ROD + seat.where, seat.rod_mm.largest, leaves_mm, why)


def _within(name: str, wants: float, has: float, why: str) -> Limit:
    """A hard limit of size: what is wanted must not be more than there is."""
    return Limit(name, wants <= has + _LAST_DIGITS_MM, True, why, max(0.0, wants - has) / wants)


def depth(case: Case) -> Iterator[Limit]:
    """Pressed solid, the spring must be shorter than the pocket is deep, or the cover cannot close over it."""
    deep = case.need.pocket.depth_mm
    if deep is None or deep.smallest is None:
        return
    why = f"solid at {case.size(case.solid_length_mm)}; the pocket is {case.size(deep.smallest)} deep"
    solid_mm = case.solid_length_mm
    yield Limit("depth", solid_mm < deep.smallest, True, why, max(0.0, solid_mm / deep.smallest - 1.0))


def reaches(case: Case) -> Iterator[Limit]:
    """The spring must be longer than the lengths it works at: never pressed at all is a refusal, loose once is not."""
    if case.shortest_mm is None:
        return
    free_mm = case.spring.free_length_mm
    longest_mm = max(point.at_mm for point in case.need.working)
    if free_mm <= case.shortest_mm:
        why = f"free length {case.length(free_mm)}: never pressed, even at {case.length(case.shortest_mm)}"
        yield Limit("reach", False, True, why)
        return
    holds = free_mm > longest_mm
    why = f"free length {case.length(free_mm)}, longest working length {case.length(longest_mm)}"
    yield Limit("reach", holds, False, why if holds else why + ": loose there")


def solid(case: Case) -> Iterator[Limit]:
    """Travel must end before the spring is solid."""
    if case.shortest_mm is None:
        return
    why = f"solid at {case.size(case.solid_length_mm)}; the shortest working length is {case.length(case.shortest_mm)}"
    solid_mm = case.solid_length_mm
    yield Limit("solid length", solid_mm < case.shortest_mm, True, why, max(0.0, solid_mm / case.shortest_mm - 1.0))


def stress_at_shortest(case: Case) -> Iterator[Limit]:
    """Static stress at the shortest working length, uncorrected."""
    if case.shortest_mm is None:
        return
    tensile_mpa = case.spring.tensile_strength_mpa
    permissible = None if tensile_mpa is None else strength.permissible_stress_mpa(tensile_mpa)
    where = f"at {case.length(case.shortest_mm)}"
    yield _stress("stress at the shortest length", case.stress_mpa(case.shortest_mm), permissible, where, case)


def stress_at_solid(case: Case) -> Iterator[Limit]:
    """Static stress when pressed solid, uncorrected."""
    tensile_mpa = case.spring.tensile_strength_mpa
    permissible = None if tensile_mpa is None else strength.permissible_solid_stress_mpa(tensile_mpa)
    yield _stress("stress at solid", case.stress_mpa(0.0), permissible, "pressed solid", case)


def _stress(name: str, stress_mpa: float, permissible_mpa: float | None, where: str, case: Case) -> Limit:
    if permissible_mpa is None:
        return Limit(
            name,
            False,
            False,
            f"the strength table of {case.spring.material.name} does not reach "
            f"{case.length(case.spring.wire_diameter_mm)} wire: the stress cannot be judged",
        )
    units, holds = case.bench.units, stress_mpa <= permissible_mpa
    stress, permissible = show_stress(stress_mpa, units), show_stress(permissible_mpa, units)
    why = f"{stress} {where}; {permissible} is the static limit (EN 13906-1)"
    past = max(0.0, stress_mpa / permissible_mpa - 1.0)
    return Limit(name, holds, True, why if holds else why + ": it will take a set", past)


def ends(case: Case) -> Iterator[Limit]:
    """The kind of ends is a wish."""
    if case.need.ends is None:
        return
    why = f"{case.spring.ends} ends; {case.need.ends} wanted"
    yield Limit("ends", case.spring.ends == case.need.ends, False, why)


GUIDING_GAP = 0.5
"""A bore or a rod further from the coils than this share of the mean diameter, on the diameter, guides nothing.

Common practice, no source.
"""


def guides(case: Case) -> str:
    """What keeps the spring from bowing out, as in "bore and rod"; empty where nothing is near enough."""
    gap_mm = GUIDING_GAP * case.spring.mean_diameter_mm
    bored = any(_near(seat.bore_mm, seat.outside_mm, gap_mm) for seat in case.seats)
    over_rod = any(_near(seat.rod_mm, seat.inside_mm, gap_mm) for seat in case.seats)
    return " and ".join(name for name, guiding in (("bore", bored), ("rod", over_rod)) if guiding)


def _near(size: Wanted | None, diameter_mm: float, gap_mm: float) -> bool:
    bounds = () if size is None else (size.nominal, size.smallest, size.largest)
    known_mm = next((bound for bound in bounds if bound is not None), None)
    return known_mm is not None and abs(known_mm - diameter_mm) <= gap_mm
