"""Which row of the table of strengths a wire's least tensile strength was taken from."""

from __future__ import annotations

from sourcing.materials.facts import Fact
from sourcing.materials.model import Material
from sourcing.materials.names import UNKNOWN_GRADE
from sourcing.materials.strength import ALLOWANCE, tensile_strength_mpa, weakest_grade
from sourcing.tables import rows


def governing_strength(material: Material, wire_diameter_mm: float) -> Fact | None:
    """The strength of a wire with the row that governs it; None where no table reaches, or its keeper wrote it down.

    >>> from sourcing.materials import find
    >>> row = governing_strength(find("music-wire"), 0.87)
    >>> row.value, row.source
    ('2270', 'EN 10270-1 table of tensile strength, SH, 0.9 mm')
    """
    if material.grade == UNKNOWN_GRADE:
        weakest = weakest_grade(material, wire_diameter_mm)
        return None if weakest is None else governing_strength(weakest, wire_diameter_mm)
    strength = tensile_strength_mpa(material, wire_diameter_mm)
    row = next((each for each in _rows_of(material) if _reaches(each, wire_diameter_mm)), None)
    if row is None or strength is None:
        return None
    listed, band = row["wire_diameter_mm"], row["wire_diameter_over_mm"]
    size = f"over {band} to {listed} mm" if band else f"{listed} mm"
    between = "" if f"{strength:g}" == row["tensile_min_mpa"] else "interpolated up to "
    source = f"{row['source']}, {row['grade']}, {between}{size}"
    return Fact(material.name, "tensile strength", f"{strength:g}", "MPa", source, row["via"] == "memory")


def _rows_of(material: Material) -> list[dict[str, str]]:
    return [
        row for row in rows("wire_strength") if (row["standard"], row["grade"]) == (material.standard, material.grade)
    ]


def _reaches(row: dict[str, str], wire_diameter_mm: float) -> bool:
    return wire_diameter_mm <= float(row["wire_diameter_mm"]) * (1.0 + ALLOWANCE)
