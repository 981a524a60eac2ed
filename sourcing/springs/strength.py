"""What a spring bears in steady duty: the share of its wire's least tensile strength, by place and group of wire."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from sourcing.figures import formula
from sourcing.materials.model import Group, Material
from sourcing.tables import rows


class Place(StrEnum):
    """Where in a spring a stress is; the tables of permissible stresses and of fatigue go by it."""

    LENGTH = "compression at a length"
    SOLID = "compression at solid"
    BODY = "extension body"
    HOOK_TORSION = "extension hook torsion"
    HOOK_BENDING = "extension hook bending"
    WOUND_UP = "torsion wound up"

    @property
    def in_shear(self) -> bool:
        """Whether the wire is twisted there; else it is bent."""
        return self not in (Place.HOOK_BENDING, Place.WOUND_UP)


class Presetting(StrEnum):
    """What was done about the set that a spring takes when it is first pressed solid."""

    AS_IT_IS = "as it is"
    NOT_AT_ALL = "not at all"
    REMOVED = "removed"


class Factor(StrEnum):
    """Of which stress a share is meant."""

    UNCORRECTED = "uncorrected"
    CORRECTED = "corrected"
    DIRECT = "direct"


@dataclass(frozen=True, slots=True)
class Permissible:
    """A permissible stress as a share of the least tensile strength, the stress that it bounds, and its source."""

    share: float
    factor: Factor
    source: str
    from_memory: bool

    @property
    def book(self) -> str:
        """The first of its sources by its name alone.

        >>> Permissible(0.5, Factor.UNCORRECTED, "EN 13906-1, as a page gives it; agrees with a book", False).book
        'EN 13906-1'
        """
        return self.source.split(";")[0].split(",")[0].split(" table")[0]


def permissible(place: Place, material: Material, presetting: Presetting = Presetting.AS_IT_IS) -> Permissible:
    """The row of sourcing/tables/permissible.csv for a place, the material's group, and what was done about its set.

    A keeper's own material, whose group nobody said, is taken as the standards take every cold coiled wire: as drawn.
    Raises KeyError where there is no such row: a set is spoken of at solid alone.

    >>> from sourcing.materials import find
    >>> permissible(Place.LENGTH, find("music-wire")).share, permissible(Place.LENGTH, find("brass")).share
    (0.5, 0.4)
    >>> permissible(Place.SOLID, find("stainless-1.4310"), Presetting.NOT_AT_ALL).factor
    <Factor.CORRECTED: 'corrected'>
    """
    return _permissible()[place, material.group or Group.DRAWN, presetting]


@formula(
    "τ_zul = s R_m",
    where={"s": "share"},
    source="the row of the table of permissible stresses (EN 13906, Shigley, and a textbook's)",
)
def permissible_stress_mpa(share: float, tensile_strength_mpa: float) -> float:
    """Greatest stress in steady duty, by the share of the least tensile strength that a place allows.

    >>> permissible_stress_mpa(0.50, 2270.0)
    1135.0
    """
    return share * tensile_strength_mpa


def permissible_at_mpa(place: Place, material: Material, tensile_strength_mpa: float) -> float:
    """Greatest stress of a material's wire at a place in steady duty; of which stress, `permissible` tells.

    >>> from sourcing.materials import find
    >>> permissible_at_mpa(Place.LENGTH, find("music-wire"), 2270.0)
    1135.0
    """
    return permissible_stress_mpa(permissible(place, material).share, tensile_strength_mpa)


@formula("τ_c,zul = 0.56 R_m", source="EN 13906-1:2013 clause 10, as a spring maker's design page gives it")
def permissible_solid_stress_mpa(tensile_strength_mpa: float) -> float:
    """Greatest uncorrected shear stress at the solid length: above it the spring takes a set when pressed solid.

    The same for every cold coiled wire.

    >>> round(permissible_solid_stress_mpa(1980.0), 1)
    1108.8
    """
    return 0.56 * tensile_strength_mpa


@cache
def _permissible() -> dict[tuple[Place, Group, Presetting], Permissible]:
    return {
        (Place(row["place"]), Group(row["group"]), Presetting(row["set"])): Permissible(
            float(row["share"]), Factor(row["factor"]), row["source"], row["via"] == "memory"
        )
        for row in rows("permissible")
    }
