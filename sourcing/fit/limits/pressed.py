"""Limits of a compression spring of any shape: depth of its pocket, travel before solid, static stress, ends."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.limits import any_kind
from sourcing.fit.model import Limit
from sourcing.fit.pressed import PressedCase
from sourcing.quantities import Wanted, show_stress
from sourcing.springs.compression import LEAST_ACTIVE_COILS
from sourcing.springs.life import Making, Word
from sourcing.springs.strength import Place, permissible, permissible_stress_mpa

WIRE_READ_TO_MM = 0.01
"""What a micrometer tells of a wire that is wound here, coil by coil (assumed)."""


def depth(case: PressedCase) -> Iterator[Limit]:
    """Pressed solid, the spring must be shorter than the pocket is deep, or the cover cannot close over it."""
    deep = case.need.pocket.depth_mm
    if deep is None or deep.smallest is None:
        return
    why = f"solid at {case.size(case.solid_length_mm)}; the pocket is {case.size(deep.smallest)} deep"
    solid_mm = case.solid_length_mm
    yield Limit("depth", solid_mm < deep.smallest, True, why, max(0.0, solid_mm / deep.smallest - 1.0))


def reaches(case: PressedCase) -> Iterator[Limit]:
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


def solid(case: PressedCase) -> Iterator[Limit]:
    """Travel must end before the spring is solid; of one wound here its wire may be thicker than it was read."""
    if case.shortest_mm is None:
        return
    solid_mm, thicker = case.solid_length_mm, ""
    if case.spread.making in (Making.WOUND, Making.WOUND_UNHEATED) and solid_mm < case.shortest_mm:
        solid_mm += WIRE_READ_TO_MM * case.spring.total_coils
        if solid_mm >= case.shortest_mm:
            thicker = f", at {case.size(solid_mm)} where its wire is {case.size(WIRE_READ_TO_MM)} thicker than it reads"
    why = (
        f"solid at {case.size(case.solid_length_mm)}{thicker}; the shortest working length is "
        f"{case.length(case.shortest_mm)}"
    )
    yield Limit("solid length", solid_mm < case.shortest_mm, True, why, max(0.0, solid_mm / case.shortest_mm - 1.0))


def stress_at_shortest(case: PressedCase) -> Iterator[Limit]:
    """Static stress at the shortest working length, uncorrected."""
    if case.shortest_mm is not None:
        where = f"at {case.length(case.shortest_mm)}"
        stress_mpa = case.stress_mpa(case.shortest_mm)
        yield _stress("stress at the shortest length", Place.LENGTH, stress_mpa, where, case)


def stress_at_solid(case: PressedCase) -> Iterator[Limit]:
    """Static stress when pressed solid, uncorrected."""
    yield _stress("stress at solid", Place.SOLID, case.stress_mpa(0.0), "pressed solid", case)


def _stress(name: str, place: Place, stress_mpa: float, where: str, case: PressedCase) -> Limit:
    tensile_mpa, units = case.spring.tensile_strength_mpa, case.bench.units
    if tensile_mpa is None:
        return Limit(
            name,
            False,
            False,
            f"the strength table of {case.spring.material.name} does not reach "
            f"{case.length(case.spring.wire_diameter_mm)} wire: the stress cannot be judged",
        )
    allowed = permissible(place, case.spring.material)
    allowed_mpa = permissible_stress_mpa(allowed.share, tensile_mpa)
    holds = stress_mpa <= allowed_mpa
    why = f"{show_stress(stress_mpa, units)} {where}; {show_stress(allowed_mpa, units)} is the static limit"
    why += f" ({allowed.book})"
    past = max(0.0, stress_mpa / allowed_mpa - 1.0)
    return Limit(name, holds, True, why if holds else f"{why}: it {Word.WILL_SET}", past)


def ends(case: PressedCase) -> Iterator[Limit]:
    """The kind of ends is a wish."""
    if case.need.ends is None:
        return
    why = f"{case.spring.ends} ends; {case.need.ends} wanted"
    yield Limit("ends", case.spring.ends == case.need.ends, False, why)


def active_coils(case: PressedCase) -> Iterator[Limit]:
    """Fewer than two active coils are outside the standard."""
    return any_kind.coils_covered(case, LEAST_ACTIVE_COILS, "EN 13906-1")


STRESS = (stress_at_shortest, stress_at_solid)
"""The limits that hang on the strength of the wire."""

GUIDING_GAP = 0.5
"""A bore or a rod further from the coils than this share of the mean diameter, on the diameter, guides nothing.

Common practice, no source.
"""


def guides(case: PressedCase) -> str:
    """What keeps the spring from bowing out, as in "bore and rod"; empty where nothing is near enough."""
    gap_mm = GUIDING_GAP * case.spring.mean_diameter_mm
    bored = any(_near(seat.bore_mm, seat.outside_mm, gap_mm) for seat in case.seats)
    over_rod = any(_near(seat.rod_mm, seat.inside_mm, gap_mm) for seat in case.seats)
    return " and ".join(name for name, guiding in (("bore", bored), ("rod", over_rod)) if guiding)


def _near(size: Wanted | None, diameter_mm: float, gap_mm: float) -> bool:
    bounds = () if size is None else (size.nominal, size.smallest, size.largest)
    known_mm = next((bound for bound in bounds if bound is not None), None)
    return known_mm is not None and abs(known_mm - diameter_mm) <= gap_mm
