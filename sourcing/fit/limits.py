"""The limits of a compression spring in its place, each one function from a case to a sentence.

A limit that the need says nothing about is left out: what is unknown is neither judged nor assumed.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from sourcing.fit.model import Limit, Spread
from sourcing.need.model import Need
from sourcing.quantities import Wanted, show_diameter, show_length, show_stress, show_temperature, show_wanted
from sourcing.springs import compression, geometry, stability, strength
from sourcing.springs.model import CompressionSpring
from sourcing.stock.model import Bench

LEAST_INDEX, GREATEST_INDEX = 4.0, 20.0
"""EN 13906-1 clause 1: the range of spring index it covers for cold-coiled springs."""

LEAST_ACTIVE_COILS = 2.0
"""EN 13906-1 clause 1."""


@dataclass(frozen=True, slots=True)
class Case:
    """A spring in a need at a bench, with the figures that several limits ask for."""

    spring: CompressionSpring
    need: Need
    bench: Bench
    spread: Spread
    rate_n_per_mm: float

    @property
    def shortest_mm(self) -> float | None:
        """The shortest working length, or None."""
        return min((point.at_mm for point in self.need.working), default=None)

    @property
    def solid_length_mm(self) -> float:
        """Solid length (EN 13906-1)."""
        return geometry.solid_length_mm(self.spring.wire_diameter_mm, self.spring.total_coils, self.spring.ends)

    @property
    def growth_mm(self) -> float:
        """How much the outside diameter grows when the spring is pressed solid."""
        spring = self.spring
        pitch_mm = geometry.pitch_mm(
            spring.wire_diameter_mm, spring.free_length_mm, spring.active_coils, spring.total_coils, spring.ends
        )
        return geometry.growth_at_solid_mm(spring.wire_diameter_mm, spring.mean_diameter_mm, pitch_mm)

    def size(self, length_mm: float) -> str:
        """A size in the bench's units, as calipers read it."""
        return show_diameter(length_mm, self.bench.units)

    def length(self, length_mm: float) -> str:
        """A length in the bench's units, to three figures and no noise."""
        return show_wanted(Wanted(nominal=length_mm), lambda mm: show_length(mm, self.bench.units))

    def force_n(self, length_mm: float) -> float:
        """The force at a length, that at solid where the length is shorter."""
        return self.rate_n_per_mm * max(0.0, self.spring.free_length_mm - max(length_mm, self.solid_length_mm))

    def stress_mpa(self, length_mm: float) -> float:
        """The uncorrected shear stress at a length."""
        spring = self.spring
        return compression.shear_stress_mpa(self.force_n(length_mm), spring.wire_diameter_mm, spring.mean_diameter_mm)


def bore(case: Case) -> Limit | None:
    """Outside diameter with its tolerance, growth and clearance must go into the bore."""
    room = case.need.pocket.bore_mm
    if room is None or room.smallest is None:
        return None
    tolerance_mm, clearance_mm = case.spread.diameter_tolerance_mm, case.bench.clearance.bore_mm
    wants_mm = case.spring.outside_diameter_mm + case.growth_mm + tolerance_mm + clearance_mm
    why = (
        f"outside {case.size(case.spring.outside_diameter_mm)} + growth {case.size(case.growth_mm)}"
        + (f" + tolerance {case.size(tolerance_mm)}" if tolerance_mm else "")
        + f" + clearance {case.size(clearance_mm)} = {case.size(wants_mm)}; the bore is {case.size(room.smallest)}"
    )
    return Limit("bore clearance", wants_mm <= room.smallest + 1e-9, True, why)


def rod(case: Case) -> Limit | None:
    """Inside diameter less its tolerance and clearance must pass over the rod."""
    inner = case.need.pocket.rod_mm
    if inner is None or inner.largest is None:
        return None
    tolerance_mm, clearance_mm = case.spread.diameter_tolerance_mm, case.bench.clearance.rod_mm
    leaves_mm = case.spring.inside_diameter_mm - tolerance_mm - clearance_mm
    why = (
        f"inside {case.size(case.spring.inside_diameter_mm)}"
        + (f" - tolerance {case.size(tolerance_mm)}" if tolerance_mm else "")
        + f" - clearance {case.size(clearance_mm)} = {case.size(leaves_mm)}; the rod is {case.size(inner.largest)}"
    )
    return Limit("rod clearance", leaves_mm >= inner.largest - 1e-9, True, why)


def depth(case: Case) -> Limit | None:
    """Pressed solid, the spring must be shorter than the pocket is deep, or the cover cannot close over it."""
    deep = case.need.pocket.depth_mm
    if deep is None or deep.smallest is None:
        return None
    why = f"solid at {case.size(case.solid_length_mm)}; the pocket is {case.size(deep.smallest)} deep"
    return Limit("depth", case.solid_length_mm < deep.smallest, True, why)


def solid(case: Case) -> Limit | None:
    """Travel must end before the spring is solid."""
    if case.shortest_mm is None:
        return None
    why = f"solid at {case.size(case.solid_length_mm)}; the shortest working length is {case.length(case.shortest_mm)}"
    return Limit("solid length", case.solid_length_mm < case.shortest_mm, True, why)


def minimum_gaps(case: Case) -> Limit | None:
    """At the shortest length the coils should still be apart by Sa in all (EN 13906-1)."""
    if case.shortest_mm is None or case.solid_length_mm >= case.shortest_mm:
        return None
    spring = case.spring
    gaps_mm = geometry.minimum_gaps_mm(spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils)
    left_mm = case.shortest_mm - case.solid_length_mm
    holds = left_mm >= gaps_mm
    why = f"{case.size(left_mm)} left before solid; EN 13906-1 wants {case.size(gaps_mm)}"
    return Limit(
        "minimum gaps", holds, False, why if holds else why + ": coils may touch, with noise and an uneven rate"
    )


def reaches(case: Case) -> Limit | None:
    """The spring must be longer than the lengths it works at: never pressed at all is a refusal, loose once is not."""
    if case.shortest_mm is None:
        return None
    free_mm = case.spring.free_length_mm
    longest_mm = max(point.at_mm for point in case.need.working)
    if free_mm <= case.shortest_mm:
        return Limit(
            "reach",
            False,
            True,
            f"free length {case.length(free_mm)}: never pressed, even at {case.length(case.shortest_mm)}",
        )
    holds = free_mm > longest_mm
    why = f"free length {case.length(free_mm)}, longest working length {case.length(longest_mm)}"
    return Limit("reach", holds, False, why if holds else why + ": loose there")


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
    return Limit(name, holds, True, why if holds else why + ": it will take a set")


def stress_at_shortest(case: Case) -> Limit | None:
    """Static stress at the shortest working length, uncorrected."""
    if case.shortest_mm is None:
        return None
    tensile_mpa = case.spring.tensile_strength_mpa
    permissible = None if tensile_mpa is None else strength.permissible_stress_mpa(tensile_mpa)
    where = f"at {case.length(case.shortest_mm)}"
    return _stress("stress at the shortest length", case.stress_mpa(case.shortest_mm), permissible, where, case)


def stress_at_solid(case: Case) -> Limit | None:
    """Static stress when pressed solid, uncorrected."""
    tensile_mpa = case.spring.tensile_strength_mpa
    permissible = None if tensile_mpa is None else strength.permissible_solid_stress_mpa(tensile_mpa)
    return _stress("stress at solid", case.stress_mpa(0.0), permissible, "pressed solid", case)


def buckling(case: Case) -> Limit | None:
    """A slender spring bows out: a refusal unless a bore or a rod guides it."""
    if case.shortest_mm is None:
        return None
    spring, pocket = case.spring, case.need.pocket
    buckles_mm = stability.buckling_length_mm(
        spring.free_length_mm, spring.mean_diameter_mm, spring.shear_modulus_mpa, spring.elastic_modulus_mpa
    )
    if buckles_mm is None or buckles_mm <= case.shortest_mm:
        return Limit("buckling", True, True, "does not buckle between its working lengths with both ends seated flat")
    why = f"buckles below {case.length(buckles_mm)} with both ends seated flat"
    guided = " and ".join(name for name, size in (("bore", pocket.bore_mm), ("rod", pocket.rod_mm)) if size is not None)
    if guided:
        return Limit("buckling", False, False, f"{why}: the {guided} must guide it, and it will rub")
    return Limit("buckling", False, True, f"{why}, and nothing guides it")


def temperature(case: Case) -> Limit | None:
    """The material must stand the temperature."""
    at_c, material = case.need.temperature_c, case.spring.material
    if at_c is None:
        return None
    low, high = (show_temperature(c, case.bench.units) for c in (material.service_low_c, material.service_high_c))
    why = f"{show_temperature(at_c, case.bench.units)}; {material.name} serves from {low} to {high}"
    return Limit("temperature", material.service_low_c <= at_c <= material.service_high_c, True, why)


_RATINGS = ("unsuitable", "stands it for a short time, or coated", "suitable with care", "suitable")


def surroundings(case: Case) -> Iterator[Limit]:
    """The material must stand each of the surroundings; one that stands it for a short time is near."""
    for where in case.need.surroundings:
        rating = case.spring.material.corrosion[where]
        why = f"{case.spring.material.name} in {where} surroundings: {_RATINGS[rating]}"
        yield Limit(f"surroundings: {where}", rating >= 2, rating != 1, why)


def spring_index(case: Case) -> Limit:
    """The index should be in the standard's range."""
    index = case.spring.spring_index
    holds = LEAST_INDEX <= index <= GREATEST_INDEX
    why = f"index {index:.1f}; EN 13906-1 covers {LEAST_INDEX:g} to {GREATEST_INDEX:g}"
    return Limit("spring index", holds, False, why)


def active_coils(case: Case) -> Limit:
    """Fewer than two active coils are outside the standard."""
    coils = case.spring.active_coils
    why = f"{coils:.4g} active coils; EN 13906-1 wants at least {LEAST_ACTIVE_COILS:g}"
    return Limit("active coils", coils >= LEAST_ACTIVE_COILS, False, why)


def ends(case: Case) -> Limit | None:
    """The kind of ends is a wish."""
    if case.need.ends is None:
        return None
    why = f"{case.spring.ends} ends; {case.need.ends} wanted"
    return Limit("ends", case.spring.ends == case.need.ends, False, why)


def material(case: Case) -> Limit | None:
    """The material is a wish."""
    wish = case.need.material
    if wish is None:
        return None
    has = case.spring.material
    same = (has.standard, has.grade) == (wish.standard, wish.grade)
    return Limit("material", same, False, f"{has.name}; {wish.name} wanted")


SINGLE: tuple[Callable[[Case], Limit | None], ...] = (
    bore,
    rod,
    depth,
    reaches,
    solid,
    minimum_gaps,
    stress_at_shortest,
    stress_at_solid,
    buckling,
    temperature,
    spring_index,
    active_coils,
    ends,
    material,
)
"""Every limit that is one sentence, in the order in which the sheet tells them."""


def limits(case: Case) -> tuple[Limit, ...]:
    """All limits that the need and the spring give cause to judge."""
    single = (check(case) for check in SINGLE)
    return (*(limit for limit in single if limit is not None), *surroundings(case))
