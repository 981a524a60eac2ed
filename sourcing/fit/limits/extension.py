"""Limits of an extension spring, and all of them in their order."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.limits import any_kind, room
from sourcing.fit.model import Limit
from sourcing.fit.pulled import PulledCase
from sourcing.fit.score import allowed, force_house_tolerance_n
from sourcing.need.model import WorkingPoint
from sourcing.quantities import show_force, show_stress
from sourcing.springs import pulled
from sourcing.springs.extension import LEAST_ACTIVE_COILS
from sourcing.springs.hooks import measured_inside
from sourcing.springs.life import steady
from sourcing.springs.model import Hooks
from sourcing.springs.pulled import Part
from sourcing.springs.strength import Place, permissible

_LAST_DIGITS = 1e-9


def hooks_whole(case: PulledCase) -> Iterator[Limit]:
    """A spring with a torn hook serves nobody as it is."""
    if torn := case.spring.torn_hooks:
        why = "one of its hooks is torn off" if torn == 1 else "both of its hooks are torn off"
        yield Limit("hooks whole", False, True, why)


def reaches(case: PulledCase) -> Iterator[Limit]:
    """The spring must be shorter than the lengths it works at: never pulled at all is a refusal, loose once is not."""
    longest_mm, shortest_mm, free_mm = case.longest_mm, case.shortest_mm, case.spring.free_length_mm
    if longest_mm is None or shortest_mm is None:
        return
    inside = measured_inside(case.spring.hooks)
    if free_mm >= longest_mm:
        why = f"free length {case.length(free_mm)} {inside}: never pulled, even at {case.length(longest_mm)}"
        yield Limit("reach", False, True, why)
        return
    holds = free_mm <= shortest_mm
    why = f"free length {case.length(free_mm)} {inside}, shortest working length {case.length(shortest_mm)}"
    yield Limit("reach", holds, False, why if holds else why + ": loose there")


def initial_tension(case: PulledCase) -> Iterator[Limit]:
    """What it takes to open the spring at all must not be more than is wanted at the shortest length."""
    point = _shortest_with_force(case)
    if point is None or point.force_n is None:
        return
    tension_n, units = case.tension.likely_n, case.bench.units
    _, most_n = allowed(point.force_n, force_house_tolerance_n(point.force_n, case.bench.tolerances))
    if most_n is None:
        return
    holds = tension_n <= most_n
    why = f"it opens at {show_force(tension_n, units)}; at {case.length(point.at_mm)} at most "
    why += f"{show_force(most_n, units)} is wanted"
    yield Limit("initial tension", holds, False, why if holds else why + ": it holds harder before it gives at all")


def tension_known(case: PulledCase) -> Iterator[Limit]:
    """A stated tension that its coils can hold; one that nobody states where either end of what is usual serves."""
    tension, units = case.tension, case.bench.units
    low, likely, high = (show_force(n, units) for n in (tension.low_n, tension.likely_n, tension.high_n))
    if tension.stated:
        if tension.most_n is not None and tension.likely_n > tension.most_n:
            why = f"{likely} stated; a spring of its index can hold {show_force(tension.most_n, units)}: measure it"
            yield Limit("stated initial tension", False, False, why)
        return
    if not any(point.force_n is not None for point in case.need.working):
        return
    holds = _forces_met(case, tension.low_n) and _forces_met(case, tension.high_n)
    why = f"nobody states it; usual for its index is {low} to {high}, and {likely} is taken"
    yield Limit("initial tension unknown", holds, False, why if holds else why + ": measure it before you rely on it")


def _forces_met(case: PulledCase, initial_tension_n: float) -> bool:
    """Whether every wanted force is within its tolerance with this initial tension."""
    for point in case.need.working:
        if point.force_n is None:
            continue
        low, high = allowed(point.force_n, force_house_tolerance_n(point.force_n, case.bench.tolerances))
        force_n = case.force_n(point.at_mm, initial_tension_n)
        if (low is not None and force_n < low - _LAST_DIGITS) or (high is not None and force_n > high + _LAST_DIGITS):
            return False
    return True


def _shortest_with_force(case: PulledCase) -> WorkingPoint | None:
    """The shortest working point at which the spring is pulled and a force is wanted."""
    points = [point for point in case.need.working if point.force_n and point.at_mm > case.spring.free_length_mm]
    return min(points, key=lambda point: point.at_mm, default=None)


def stress_at_longest(case: PulledCase) -> Iterator[Limit]:
    """Static stress at the longest working length, part by part."""
    longest_mm = case.longest_mm
    if longest_mm is not None:
        force_n, where = case.force_n(longest_mm), f"at {case.length(longest_mm)}"
        yield from (_stress(case, part, force_n, where) for part in pulled.parts(case.spring))


_NAMES = {
    Place.BODY: "stress in the body",
    Place.HOOK_BENDING: "stress in the hook's loop",
    Place.HOOK_TORSION: "stress at the hook's bend",
}


def _stress(case: PulledCase, part: Part, force_n: float, where: str) -> Limit:
    name, tensile_mpa, units = _NAMES[part.place], case.spring.tensile_strength_mpa, case.bench.units
    if tensile_mpa is None:
        wire = case.length(case.spring.wire_diameter_mm)
        why = f"the strength table of {case.spring.material.name} does not reach {wire} wire: it cannot be judged"
        return Limit(name, False, False, why)
    stress_mpa, permissible_mpa = force_n * part.mpa_per_n, part.share * tensile_mpa
    book = permissible(part.place, case.spring.material).book
    why = (
        f"{show_stress(stress_mpa, units)} {where}; {show_stress(permissible_mpa, units)} is the static limit ({book})"
    )
    if part.place == pulled.breaks_first(case.spring).place:
        why += "; this is what breaks first"
    holds = stress_mpa <= permissible_mpa
    past = max(0.0, stress_mpa / permissible_mpa - 1.0)
    word = steady(part.place, case.spring.material, tensile_mpa, stress_mpa)
    return Limit(name, holds, True, why if holds else f"{why}: it {word} there", past)


def fitting(case: PulledCase) -> Iterator[Limit]:
    """Hooking it in must not pull it longer than it stands."""
    pulled_mm, safe_mm = case.need.pull_to_fit_mm, case.largest_safe_mm
    if pulled_mm is None:
        return
    if safe_mm is None:
        yield Limit(
            "hooking it in", False, False, "how far it may be pulled is not known, for its wire's strength is not"
        )
        return
    why = f"pulled to {case.length(pulled_mm)} to go in; {case.length(safe_mm)} is the longest it stands"
    holds = pulled_mm <= safe_mm
    past = max(0.0, pulled_mm / safe_mm - 1.0)
    first = pulled.breaks_first(case.spring).words
    yield Limit("hooking it in", holds, True, why if holds else f"{why}: what gives is {first}", past)


def spring_index(case: PulledCase) -> Iterator[Limit]:
    """The index should be in the standard's range."""
    return any_kind.index_covered(case, "EN 13906-2")


def active_coils(case: PulledCase) -> Iterator[Limit]:
    """Fewer than three active coils are outside the standard."""
    return any_kind.coils_covered(case, LEAST_ACTIVE_COILS, "EN 13906-2")


def hooks(case: PulledCase) -> Iterator[Limit]:
    """The kind of hooks is a wish; plugs hold only where a screw or a plug is at hand, which a need has to say."""
    has, wanted = case.spring.hooks, case.need.hooks
    if wanted is not None:
        yield Limit("hooks", has == wanted, False, f"{has} hooks; {wanted} wanted")
    elif has is Hooks.THREADED_PLUG:
        why = "a threaded plug at each end; the need does not say that plugs hold there (hooks: threaded-plug)"
        yield Limit("hooks", False, False, why)


STRESS = (stress_at_longest, fitting)
"""The limits that hang on the strength of the wire."""

LIMITS = (
    room.bore,
    hooks_whole,
    reaches,
    initial_tension,
    tension_known,
    stress_at_longest,
    fitting,
    any_kind.temperature,
    spring_index,
    active_coils,
    hooks,
    any_kind.material,
)
