"""Limits of a spring of any kind: temperature, surroundings, material, and what its standard covers."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.case import AnyCase
from sourcing.fit.model import Limit
from sourcing.materials.model import Material
from sourcing.need.model import Need
from sourcing.quantities import show_temperature
from sourcing.springs.compression import INDEX_RANGE, index_is_covered

INDEX = "spring index"
"""The limit of a spring index, of any kind."""

_RATINGS = ("unsuitable", "stands it for a short time, or coated", "suitable with care", "suitable")


def temperature(case: AnyCase) -> Iterator[Limit]:
    """The material must stand the temperature."""
    return stands_temperature(case.spring.material, case.need, case.bench.units)


def stands_temperature(material: Material, need: Need, units: str) -> Iterator[Limit]:
    """Whether a material stands the temperature of the need; nothing where the need names none."""
    at_c = need.temperature_c
    if at_c is None:
        return
    at, low_c, high_c = show_temperature(at_c, units), material.service_low_c, material.service_high_c
    if low_c is None or high_c is None:
        yield Limit("temperature", False, False, f"{at}; what temperatures {material.name} serves at is not known")
        return
    low, high = (show_temperature(c, units) for c in (low_c, high_c))
    yield Limit("temperature", low_c <= at_c <= high_c, True, f"{at}; {material.name} serves from {low} to {high}")


def surroundings(case: AnyCase) -> Iterator[Limit]:
    """The material must stand each of the surroundings; one that stands it for a short time is near, an unrated too."""
    return stands_surroundings(case.spring.material, case.need)


def stands_surroundings(material: Material, need: Need) -> Iterator[Limit]:
    """Whether a material stands each of the surroundings of the need."""
    for where in need.surroundings:
        rating = material.corrosion.get(where)
        how = "how it stands them is not known" if rating is None else _RATINGS[rating]
        why = f"{material.name} in {where} surroundings: {how}"
        yield Limit(f"surroundings: {where}", rating is not None and rating >= 2, rating in (0, 2, 3), why)


def coils_covered(case: AnyCase, least: float, standard: str) -> Iterator[Limit]:
    """Fewer active coils than the standard of the kind covers."""
    coils = case.spring.active_coils
    yield Limit("active coils", coils >= least, False, f"{coils:.4g} active coils; {standard} wants at least {least:g}")


def index_covered(case: AnyCase, standard: str) -> Iterator[Limit]:
    """A spring index outside the range of the standard of the kind, the same in all of them."""
    index, (low, high) = case.spring.spring_index, INDEX_RANGE
    why = f"index {index:.1f}; {standard} covers {low:g} to {high:g}"
    yield Limit(INDEX, index_is_covered(index), False, why)


def material(case: AnyCase) -> Iterator[Limit]:
    """The material is a wish."""
    wish = case.need.material
    if wish is None:
        return
    has = case.spring.material
    same = (has.standard, has.grade) == (wish.standard, wish.grade)
    yield Limit("material", same, False, f"{has.name}; {wish.name} wanted")
