"""What the program knows of a material."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum


class Group(StrEnum):
    """What wires share that are allowed the same share of their strength."""

    DRAWN = "drawn"
    TEMPERED = "tempered"
    STAINLESS = "stainless"
    COPPER = "copper"


class Magnet(StrEnum):
    """Whether a magnet holds a wire."""

    NOT = "not at all"
    WEAKLY = "weakly"
    HOLDS = "a magnet holds it"


@dataclass(frozen=True, slots=True)
class Material:
    """A spring wire by its catalogue word or its standard's name, with the figures that do not depend on diameter.

    `corrosion` rates each of the surroundings: 0 unsuitable, 1 short exposure or coated, 2 suitable with care,
    3 suitable. `flow_ratio` and `flow_ratio_sd` are the prior of the flow stress in winding over the least tensile
    strength, and the relative standard deviation of that prior. `heat_change_low`, `heat_change_high` bound the
    relative change of coil diameter in stress relief. `remark` is a sentence for every sheet that names the material.
    `modulus_fall` holds the least and the greatest share by which sources have both moduli fall for each degree above
    20. `zinc_plated` rates the surroundings as `corrosion` does, for wire plated with zinc; empty where nobody does it.

    A keeper's own material has no standard, its name for a grade, and its `own_strengths`: wire diameters, smallest
    first, with the least tensile strength up to each. None, or no rating, is what its keeper did not say.
    """

    name: str
    standard: str
    grade: str
    shear_modulus_mpa: float
    elastic_modulus_mpa: float
    density_kg_per_m3: float
    service_low_c: float | None
    service_high_c: float | None
    corrosion: Mapping[str, int]
    flow_ratio: float
    flow_ratio_sd: float
    stress_relief_low_c: float | None
    stress_relief_high_c: float | None
    stress_relief_minutes: float | None
    heat_change_low: float
    heat_change_high: float
    remark: str | None = None
    own_strengths: tuple[tuple[float, float], ...] = ()
    group: Group | None = None
    magnet: Magnet | None = None
    modulus_fall: tuple[float, float] | None = None
    zinc_plated: Mapping[str, int] = field(default_factory=dict[str, int])

    @property
    def valve_quality(self) -> bool:
        """Whether it is made without the seams and flaws at which wire begins to crack (EN 10270-2, grades VD)."""
        return self.grade.startswith("VD")


OwnMaterials = Mapping[str, Material | None]
"""A keeper's own materials by folded name; None for one with mistakes, which are told where it stands."""

NO_MATERIALS: OwnMaterials = {}
