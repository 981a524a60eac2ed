"""The materials by name: a catalogue word ("music-wire") or a standard's own name ("EN 10270-1 DH")."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from sourcing.materials.model import Group, Magnet, Material
from sourcing.tables import rows

UNKNOWN_GRADE = "unknown"
"""The grade of steel wire that nobody can name: sourcing/materials/strength.py says what it is taken for."""

_STANDARD_AND_GRADE = {
    "music-wire": ("EN 10270-1", "SH"),
    "hard-drawn": ("ASTM A227", "class I"),
    "oil-tempered": ("ASTM A229", "class I"),
    "stainless-1.4310": ("EN 10270-3", "1.4310 NS"),
    "stainless-1.4568": ("EN 10270-3", "1.4568 as drawn"),
    "phosphor-bronze": ("EN 12166", "CuSn6"),
    "brass": ("EN 12166", "CuZn37"),
    "beryllium-copper": ("EN 12166", "CuBe2"),
    "unknown-steel": ("EN 10270-1", UNKNOWN_GRADE),
    "EN 10270-1 SL": ("EN 10270-1", "SL"),
    "EN 10270-1 SM": ("EN 10270-1", "SM"),
    "EN 10270-1 SH": ("EN 10270-1", "SH"),
    "EN 10270-1 DM": ("EN 10270-1", "DM"),
    "EN 10270-1 DH": ("EN 10270-1", "DH"),
    "EN 10270-2 FDC": ("EN 10270-2", "FDC"),
    "EN 10270-2 FDSiCr": ("EN 10270-2", "FDSiCr"),
    "EN 10270-2 VDSiCr": ("EN 10270-2", "VDSiCr"),
    "EN 10270-3 1.4310": ("EN 10270-3", "1.4310 NS"),
    "EN 10270-3 1.4310 NS": ("EN 10270-3", "1.4310 NS"),
    "EN 10270-3 1.4310 HS": ("EN 10270-3", "1.4310 HS"),
    "EN 10270-3 1.4401": ("EN 10270-3", "1.4401 NS"),
    "EN 10270-3 1.4568": ("EN 10270-3", "1.4568 as drawn"),
    "EN 10270-3 1.4568 as drawn": ("EN 10270-3", "1.4568 as drawn"),
    "EN 10270-3 1.4568 precipitation hardened": ("EN 10270-3", "1.4568 precipitation hardened"),
    "EN 12166 CuSn6": ("EN 12166", "CuSn6"),
    "EN 12166 CuZn37": ("EN 12166", "CuZn37"),
    "EN 12166 CuBe2": ("EN 12166", "CuBe2"),
    "ASTM A227": ("ASTM A227", "class I"),
    "ASTM A227 class I": ("ASTM A227", "class I"),
    "ASTM A227 class II": ("ASTM A227", "class II"),
    "ASTM A228": ("ASTM A228", "music"),
    "ASTM A229": ("ASTM A229", "class I"),
    "ASTM A229 class I": ("ASTM A229", "class I"),
    "ASTM A229 class II": ("ASTM A229", "class II"),
    "ASTM A231": ("ASTM A231", "chromium-vanadium"),
    "ASTM A401": ("ASTM A401", "chromium-silicon"),
    "ASTM A313 302": ("ASTM A313", "302"),
    "ASTM A313-302": ("ASTM A313", "302"),
    "ASTM B159": ("ASTM B159", "C51000 H08"),
    "ASTM B159 C51000": ("ASTM B159", "C51000 H08"),
}
"""A word that leaves the grade open means the weaker one: class I of A227 and A229, 1.4568 as drawn, and for phosphor
bronze EN 12166, not ASTM B159. Music wire is SH by contract; strength.weakest_grade bounds it."""

_REMARKS = {
    ("EN 10270-1", UNKNOWN_GRADE): (
        "Nobody knows the grade of this steel: its stress is judged as that of the weakest spring wire (EN 10270-1 SL, "
        "below 1 mm SM), and its springback may be that of any grade up to SH. Wire that a magnet does not hold is "
        "none of these."
    ),
    ("EN 10270-3", "1.4568 as drawn"): (
        "Figures of 1.4568 as drawn; hardened at 480 degC for an hour it is 7 % stiffer and bears more, and then it is "
        "named EN 10270-3 1.4568 precipitation hardened."
    ),
    ("EN 12166", "CuBe2"): (
        "The strength of beryllium copper hangs on its temper and hardening and is not listed: where you know it, "
        "state the spring's tensile_strength, or a material of your own in materials.yaml."
    ),
}


def names() -> tuple[str, ...]:
    """Every name that `find` knows, the catalogue words first."""
    return tuple(_STANDARD_AND_GRADE)


def words() -> tuple[str, ...]:
    """The catalogue words alone.

    >>> words()[:2]
    ('music-wire', 'hard-drawn')
    """
    return tuple(name for name in _STANDARD_AND_GRADE if " " not in name)


def find(name: str) -> Material | None:
    """The material of that name, None where there is none. Case and doubled spaces are overlooked, nothing else.

    >>> find("en 10270-1  dh").name
    'EN 10270-1 DH'
    >>> find("music-wire").grade
    'SH'
    >>> find("music wire") is None
    True
    """
    known = _BY_FOLDED_NAME.get(folded(name))
    return None if known is None else _material(known)


def folded(name: str) -> str:
    """A name as `find` compares it.

    >>> folded(" EN  12166 CuSn6")
    'en 12166 cusn6'
    """
    return " ".join(name.split()).casefold()


_BY_FOLDED_NAME = {folded(name): name for name in _STANDARD_AND_GRADE}


@cache
def _material(name: str) -> Material:
    standard, grade = _STANDARD_AND_GRADE[name]
    by_figure = {
        row["figure"]: row
        for row in rows("materials")
        if row["standard"] == standard and grade.startswith(row["grade"])
    }
    figures = {figure: float(row["value"]) for figure, row in by_figure.items() if figure != "group"}
    fall = by_figure["modulus_fall"]
    return Material(
        name=name,
        standard=standard,
        grade=grade,
        shear_modulus_mpa=figures["shear_modulus"],
        elastic_modulus_mpa=figures["elastic_modulus"],
        density_kg_per_m3=figures["density"],
        service_low_c=figures["service_low"],
        service_high_c=figures["service_high"],
        corrosion=_ratings(figures, "corrosion "),
        flow_ratio=figures["flow_ratio"],
        flow_ratio_sd=figures["flow_ratio_sd"],
        stress_relief_low_c=figures["stress_relief_low"],
        stress_relief_high_c=figures["stress_relief_high"],
        stress_relief_minutes=figures["stress_relief_minutes"],
        heat_change_low=figures["heat_change_low"],
        heat_change_high=figures["heat_change_high"],
        remark=_REMARKS.get((standard, grade)),
        group=Group(by_figure["group"]["value"]),
        magnet=tuple(Magnet)[int(figures["magnetic"])],
        modulus_fall=(float(fall["low"]), float(fall["high"])),
        zinc_plated=_ratings(figures, "zinc-plated "),
    )


def _ratings(figures: Mapping[str, float], opening: str) -> dict[str, int]:
    return {name.removeprefix(opening): int(value) for name, value in figures.items() if name.startswith(opening)}
