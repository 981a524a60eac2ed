"""Tensile strength of spring wire by its diameter, from the standards' tables (sourcing/tables/wire_strength.csv)."""

from __future__ import annotations

from functools import cache

from sourcing.materials.model import Material
from sourcing.materials.names import find
from sourcing.tables import rows

# A diameter worked out from others (9.6 - 8.8) is that listed size still, though its last digits differ.
_ALLOWANCE = 1e-6

# What wire sold or salvaged under a catalogue word may be, weakest first.
_MAY_BE = {"music-wire": ("EN 10270-1 SL", "EN 10270-1 SM")}


def tensile_strength_mpa(material: Material, wire_diameter_mm: float) -> float | None:
    """Least tensile strength of the material's wire at a diameter, MPa; None where its table does not reach.

    EN 10270-1 lists diameters, and between two of them the next larger one governs; below the smallest and above the
    largest nothing is known. EN 10270-3 lists bands, over .. up to and including, the first of them from 0.

    >>> from sourcing.materials import find
    >>> tensile_strength_mpa(find("music-wire"), 0.9)
    2270.0
    >>> tensile_strength_mpa(find("music-wire"), 0.87)
    2270.0
    >>> tensile_strength_mpa(find("music-wire"), 25.0) is None
    True

    Source: EN 10270-1:2011 and EN 10270-3:2011, tables of tensile strength; which rows are from memory stands in the
    table. Power laws are not used: the usual textbook's for music wire lies 0.9 to 6.6 % above ASTM A228's own least.
    """
    listed, floor_mm = _strengths(material.standard, material.grade)
    if wire_diameter_mm < floor_mm * (1.0 - _ALLOWANCE):
        return None
    reaching = (strength for diameter, strength in listed if wire_diameter_mm <= diameter * (1.0 + _ALLOWANCE))
    return next(reaching, None)


def nominal_wire_diameters_mm(material: Material) -> tuple[float, ...]:
    """The diameters that the material's table of strength lists, smallest first (EN 10270-3: the ends of its bands).

    >>> from sourcing.materials import find
    >>> nominal_wire_diameters_mm(find("EN 10270-1 SL"))[:3]
    (1.0, 1.05, 1.1)
    """
    listed, _ = _strengths(material.standard, material.grade)
    return tuple(diameter for diameter, _ in listed)


def weakest_grade(material: Material, wire_diameter_mm: float) -> Material | None:
    """The weakest wire that may pass for the material where nobody named a grade; None where a grade is named.

    Music wire of unknown grade is EN 10270-1 SL where that comes in the diameter, else SM.

    >>> from sourcing.materials import find
    >>> weakest_grade(find("music-wire"), 1.0).grade, weakest_grade(find("music-wire"), 0.9).grade
    ('SL', 'SM')
    >>> weakest_grade(find("EN 10270-1 SH"), 1.0) is None
    True
    """
    weaker = map(find, _MAY_BE.get(material.name, ()))
    return next((it for it in weaker if it is not None and tensile_strength_mpa(it, wire_diameter_mm)), None)


@cache
def _strengths(standard: str, grade: str) -> tuple[tuple[tuple[float, float], ...], float]:
    """The listed diameters with their least strength, and the diameter below which the table says nothing."""
    found = [row for row in rows("wire_strength") if row["standard"] == standard and row["grade"] == grade]
    listed = tuple((float(row["wire_diameter_mm"]), float(row["tensile_min_mpa"])) for row in found)
    return listed, float(found[0]["wire_diameter_over_mm"] or listed[0][0])
