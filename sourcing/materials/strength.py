"""Tensile strength of spring wire by its diameter, from the standards' tables (sourcing/tables/wire_strength.csv)."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from math import log

from sourcing.figures import formula
from sourcing.materials.model import Material
from sourcing.materials.names import UNKNOWN_GRADE, find
from sourcing.tables import rows

# A diameter worked out from others (9.6 - 8.8) is that listed size still, though its last digits differ.
ALLOWANCE = 1e-6

# What wire sold or salvaged under a catalogue word may be, weakest first.
_WEAKEST = ("EN 10270-1 SL", "EN 10270-1 SM")
_MAY_BE = {"music-wire": _WEAKEST, "unknown-steel": _WEAKEST}


@formula(
    "R_m = R₁ (R₂ / R₁)^(ln(d / d₁) / ln(d₂ / d₁))",
    where={"d₁": "thinner_mm", "R₁": "stronger_mpa", "d₂": "thicker_mm", "R₂": "weaker_mpa"},
    source="ASTM A227, A228 and A229 let listed strengths be interpolated; on logarithms, as the power laws run",
)
def interpolated_strength_mpa(
    wire_diameter_mm: float, thinner_mm: float, stronger_mpa: float, thicker_mm: float, weaker_mpa: float
) -> float:
    """Tensile strength between two listed diameters.

    >>> round(interpolated_strength_mpa(0.94, 0.914, 2213.0, 1.016, 2172.0), 1)
    2202.1
    """
    share = log(wire_diameter_mm / thinner_mm) / log(thicker_mm / thinner_mm)
    return stronger_mpa * (weaker_mpa / stronger_mpa) ** share


@formula(
    "R_m = the least of the standard's table: that of the next larger listed diameter, or of the band",
    closed=False,
    source="EN 10270-1:2011, EN 10270-3:2011, EN 12166, ASTM A227, A228, A229, A313 and B159, tables of tensile "
    "strength; which rows are from memory stands in the table",
)
def tensile_strength_mpa(material: Material, wire_diameter_mm: float) -> float | None:
    """Least tensile strength of the material's wire at a diameter, MPa; None where its table does not reach.

    EN 10270-1 lists diameters, and between two of them the next larger one governs; below the smallest and above the
    largest nothing is known. ASTM A227, A228 and A229 list diameters too, and between two of them the strength is
    interpolated on logarithms. The others list bands, over .. up to and including, most of them from 0. Steel of an
    unknown grade is as strong as the weakest (`weakest_grade`). A keeper's own material is read as bands from 0.

    >>> from sourcing.materials import find
    >>> tensile_strength_mpa(find("music-wire"), 0.9)
    2270.0
    >>> tensile_strength_mpa(find("music-wire"), 0.87)
    2270.0
    >>> round(tensile_strength_mpa(find("ASTM A228"), 0.94), 1)
    2202.8
    >>> tensile_strength_mpa(find("music-wire"), 25.0) is None
    True

    Power laws are not used: the usual textbook's for music wire lies 0.9 to 6.6 % above ASTM A228's own least.
    """
    if material.grade == UNKNOWN_GRADE:
        weakest = weakest_grade(material, wire_diameter_mm)
        return None if weakest is None else tensile_strength_mpa(weakest, wire_diameter_mm)
    return _strengths_of(material).at(wire_diameter_mm)


def nominal_wire_diameters_mm(material: Material) -> tuple[float, ...]:
    """The diameters that the material's table of strength lists, smallest first (of bands: where they end).

    >>> from sourcing.materials import find
    >>> nominal_wire_diameters_mm(find("EN 10270-1 SL"))[:3]
    (1.0, 1.05, 1.1)
    """
    return tuple(diameter for diameter, _ in _strengths_of(material).listed)


def weakest_grade(material: Material, wire_diameter_mm: float) -> Material | None:
    """The weakest wire that may pass for the material where nobody named a grade; None where a grade is named.

    Music wire and steel of unknown grade are EN 10270-1 SL where that comes in the diameter, else SM.

    >>> from sourcing.materials import find
    >>> weakest_grade(find("music-wire"), 1.0).grade, weakest_grade(find("music-wire"), 0.9).grade
    ('SL', 'SM')
    >>> weakest_grade(find("EN 10270-1 SH"), 1.0) is None
    True
    """
    weaker = map(find, _MAY_BE.get(material.name, ()))
    return next((it for it in weaker if it is not None and tensile_strength_mpa(it, wire_diameter_mm)), None)


@dataclass(frozen=True, slots=True)
class _Strengths:
    """Listed diameters with their least strength, the diameter below which nothing is known, and the rule between."""

    listed: tuple[tuple[float, float], ...]
    floor_mm: float
    interpolated: bool = False

    def at(self, wire_mm: float) -> float | None:
        """The least strength of a wire; None below the floor and beyond the last row."""
        reaching = (place for place, (mm, _) in enumerate(self.listed) if wire_mm <= mm * (1.0 + ALLOWANCE))
        place = next(reaching, None)
        if place is None or wire_mm < self.floor_mm * (1.0 - ALLOWANCE):
            return None
        listed_mm, strength = self.listed[place]
        if not self.interpolated or wire_mm >= listed_mm * (1.0 - ALLOWANCE):
            return strength
        thinner_mm, stronger = self.listed[place - 1]
        return interpolated_strength_mpa(wire_mm, thinner_mm, stronger, listed_mm, strength)


def _strengths_of(material: Material) -> _Strengths:
    if not material.standard:
        return _Strengths(material.own_strengths, 0.0)
    return _tables().get((material.standard, material.grade), _Strengths((), 0.0))


@cache
def _tables() -> dict[tuple[str, str], _Strengths]:
    """The strengths by standard and grade; ASTM lets those at listed diameters be interpolated, but no bands."""
    listed: dict[tuple[str, str], list[tuple[float, float]]] = {}
    over: dict[tuple[str, str], str] = {}
    for row in rows("wire_strength"):
        grade = row["standard"], row["grade"]
        over.setdefault(grade, row["wire_diameter_over_mm"])
        listed.setdefault(grade, []).append((float(row["wire_diameter_mm"]), float(row["tensile_min_mpa"])))
    return {
        grade: _Strengths(
            tuple(sizes), float(over[grade] or sizes[0][0]), grade[0].startswith("ASTM") and not over[grade]
        )
        for grade, sizes in listed.items()
    }
