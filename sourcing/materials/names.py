"""The materials by name: a catalogue word ("music-wire") or a standard's own name ("EN 10270-1 DH")."""

from __future__ import annotations

from functools import cache

from sourcing.materials.model import Material
from sourcing.tables import rows

_STANDARD_AND_GRADE = {
    "music-wire": ("EN 10270-1", "SH"),
    "stainless-1.4310": ("EN 10270-3", "1.4310 NS"),
    "EN 10270-1 SL": ("EN 10270-1", "SL"),
    "EN 10270-1 SM": ("EN 10270-1", "SM"),
    "EN 10270-1 SH": ("EN 10270-1", "SH"),
    "EN 10270-1 DM": ("EN 10270-1", "DM"),
    "EN 10270-1 DH": ("EN 10270-1", "DH"),
    "EN 10270-3 1.4310": ("EN 10270-3", "1.4310 NS"),
    "EN 10270-3 1.4310 NS": ("EN 10270-3", "1.4310 NS"),
    "EN 10270-3 1.4310 HS": ("EN 10270-3", "1.4310 HS"),
}


def names() -> tuple[str, ...]:
    """Every name that `find` knows, the catalogue words first."""
    return tuple(_STANDARD_AND_GRADE)


def find(name: str) -> Material | None:
    """The material of that name, None where there is none. Case and doubled spaces are overlooked, nothing else.

    >>> find("en 10270-1  dh").name
    'EN 10270-1 DH'
    >>> find("music-wire").grade
    'SH'
    >>> find("music wire") is None
    True
    """
    wanted = " ".join(name.split()).casefold()
    known = next((known for known in _STANDARD_AND_GRADE if known.casefold() == wanted), None)
    return None if known is None else _material(known)


@cache
def _material(name: str) -> Material:
    standard, grade = _STANDARD_AND_GRADE[name]
    figures = {
        row["figure"]: float(row["value"])
        for row in rows("materials")
        if row["standard"] == standard and grade.startswith(row["grade"])
    }
    return Material(
        name=name,
        standard=standard,
        grade=grade,
        shear_modulus_mpa=figures["shear_modulus"],
        elastic_modulus_mpa=figures["elastic_modulus"],
        density_kg_per_m3=figures["density"],
        service_low_c=figures["service_low"],
        service_high_c=figures["service_high"],
        corrosion={
            figure.removeprefix("corrosion "): int(value)
            for figure, value in figures.items()
            if figure.startswith("corrosion ")
        },
        flow_ratio=figures["flow_ratio"],
        flow_ratio_sd=figures["flow_ratio_sd"],
        stress_relief_low_c=figures["stress_relief_low"],
        stress_relief_high_c=figures["stress_relief_high"],
        stress_relief_minutes=figures["stress_relief_minutes"],
        heat_change_low=figures["heat_change_low"],
        heat_change_high=figures["heat_change_high"],
    )
