"""Which symbol means which parameter (EN 13906's letters, where it has one), and the unit that a name ends in."""

from __future__ import annotations

from collections.abc import Mapping

SYMBOLS: Mapping[str, str] = {
    "d": "wire_diameter_mm",
    "D": "mean_diameter_mm",
    "D_e": "outside_diameter_mm",
    "D_i": "inside_diameter_mm",
    "D₁": "mean_diameter_small_mm",
    "D₂": "mean_diameter_large_mm",
    "n": "active_coils",
    "n_t": "total_coils",
    "w": "spring_index",
    "G": "shear_modulus_mpa",
    "E": "elastic_modulus_mpa",
    "R": "rate_n_per_mm",
    "F": "force_n",
    "F₀": "initial_tension_n",
    "M": "torque_n_mm",
    "L": "length_mm",
    "L₀": "free_length_mm",
    "L_c": "solid_length_mm",
    "l": "wire_length_mm",
    "p": "pitch_mm",
    "p_s": "solid_pitch_mm",
    "a": "gap_mm",
    "s": "travel_mm",
    "R_m": "tensile_strength_mpa",
    "ρ": "density_kg_per_m3",
    "τ": "shear_stress_mpa",
    "σ": "bending_stress_mpa",
    "θ": "wound_deg",
    "a₁": "leg_1_mm",
    "a₂": "leg_2_mm",
    "R_M": "rate_n_mm_per_deg",
    "Δr": "radius_step_mm",
    "ν": "seating",
    "ε": "flow_strain",
    "x": "surface_strain",
    "C_m": "index_on_mandrel",
    "C_f": "index_released",
    "b": "moment_kept",
    "c": "pull_fraction",
    "σ_f": "flow_stress_mpa",
    "τ₀": "initial_stress_mpa",
    "L_K": "body_length_mm",
    "L_H": "hook_length_mm",
    "C_1": "loop_index",
    "C_2": "bend_index",
    "K_A": "loop_factor",
    "K_B": "bend_factor",
}

SYMBOL_OF: Mapping[str, str] = {name: symbol for symbol, name in SYMBOLS.items()}

UNITS: Mapping[str, str] = {
    "_n_mm_per_deg": "N·mm/deg",
    "_n_mm_per_rad": "N·mm/rad",
    "_kg_per_m3": "kg/m³",
    "_mm_per_n": "mm/N",
    "_n_per_mm": "N/mm",
    "_n_mm": "N·mm",
    "_mpa": "MPa",
    "_deg": "deg",
    "_rad": "rad",
    "_mm": "mm",
    "_hz": "Hz",
    "_n": "N",
    "_g": "g",
    "_c": "degC",
}
"""Longer endings first, so that the first that fits is the unit."""


def unit_of(name: str) -> str:
    """The unit that a name ends in; empty for a bare number.

    >>> unit_of("rate_n_per_mm"), unit_of("spring_index")
    ('N/mm', '')
    """
    return UNITS.get(_ending(_without_bound(name)[0]), "")


def words_of_name(name: str) -> str:
    """A name in words, without its unit.

    >>> words_of_name("wire_diameter_mm"), words_of_name("free_length_mm_low")
    ('wire diameter', 'free length, low')
    """
    plain, bound = _without_bound(name)
    return plain.removesuffix(_ending(plain)).replace("_", " ") + (f", {bound}" if bound else "")


def described(name: str, symbol: str | None = None) -> str:
    """A name in words with its symbol and its unit.

    >>> described("wire_diameter_mm", "d"), described("ends")
    ('wire diameter d in mm', 'ends')
    """
    ending = _ending(name)
    words = name.removesuffix(ending).replace("_", " ")
    return words + (f" {symbol}" if symbol else "") + (f" in {UNITS[ending]}" if ending else "")


def _without_bound(name: str) -> tuple[str, str]:
    """A name without the `_low` or `_high` that it ends in, and which."""
    plain, _, bound = name.rpartition("_")
    return (plain, bound) if bound in ("low", "high") else (name, "")


def _ending(name: str) -> str:
    """The unit's ending of a name, empty where it has none."""
    for ending in UNITS:
        if name.endswith(ending):
            return ending
    return ""
