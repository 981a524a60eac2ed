"""The description of an extension spring as rows."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_force, show_length, show_rate, show_stress
from sourcing.sheets.description_pressed import Row, lasting, lengths_between, optional, serving
from sourcing.sheets.text import table
from sourcing.springs.describe_extension import ExtensionDescription
from sourcing.springs.hooks import measured_inside
from sourcing.springs.model import Hooks


def tables(one: ExtensionDescription, units: str) -> Iterator[list[str]]:
    """The figures, and what it does at the lengths asked for."""
    yield table(("figure", "value"), _figures(one, units))
    if one.at:
        yield _at_lengths(one, units)


def _figures(one: ExtensionDescription, units: str) -> list[Row]:
    def length(value_mm: float | None) -> str:
        return optional(value_mm, show_length(value_mm or 0.0, units))

    diameters = (one.outside_diameter_mm, one.mean_diameter_mm, one.inside_diameter_mm)
    plugged = one.hooks is Hooks.THREADED_PLUG
    tensile, force = one.tensile_strength_mpa, one.largest_safe_force_n
    return [
        ("material", one.material),
        ("wire", length(one.wire_diameter_mm)),
        ("outside, mean, inside", " / ".join(map(length, diameters))),
        ("spring index", f"{one.spring_index:.2f}"),
        ("coils, active of the body's", f"{one.active_coils:g} of {one.total_coils:g}"),
        (f"free length {measured_inside(one.hooks)}", length(one.free_length_mm)),
        ("body, coils closed", length(one.body_length_mm)),
        _ends(one, length(one.hook_length_mm)),
        ("rate", show_rate(one.rate_n_per_mm, units)),
        ("initial tension", _tension(one, units)),
        ("stress at rest, uncorrected", show_stress(one.initial_stress_mpa, units)),
        ("what breaks first", one.breaks_first),
        ("largest safe force", optional(force, show_force(force or 0.0, units))),
        ("largest safe length", _safe_length(one, units)),
        ("least tensile strength", optional(tensile, show_stress(tensile or 0.0, units))),
        *_endured(one, units),
        ("natural frequency", f"{one.natural_frequency_hz:.0f} Hz"),
        ("wire length" if plugged else "wire length with hooks", length(one.wire_length_mm)),
        ("mass", f"{one.mass_g:.2f} g"),
    ]


def _endured(one: ExtensionDescription, units: str) -> list[Row]:
    """How long it lasts, at which part it gives way, and where it is warm."""
    bears = one.endurance
    between = lengths_between(bears.lasts_from_mm, bears.lasts_to_mm, units)
    first = [("gives way first", bears.gives_way_first)] if bears.gives_way_first else []
    return [*lasting(bears.lasts, between), *first, *serving(bears.service, units)]


def _ends(one: ExtensionDescription, high: str) -> Row:
    """What kind of ends it has, and how far they stand beyond the body."""
    if one.hooks is Hooks.THREADED_PLUG:
        return "ends", f"{one.hooks}, their eyes {high} beyond the body each"
    return "hooks", f"{one.hooks}, {high} high each{_torn(one.torn_hooks)}"


def _torn(hooks: int) -> str:
    return f"; {('', 'one is', 'both are')[hooks]} torn off" if hooks else ""


def _tension(one: ExtensionDescription, units: str) -> str:
    likely, low, high = (
        show_force(n, units) for n in (one.initial_tension_n, one.initial_tension_n_low, one.initial_tension_n_high)
    )
    return f"{likely} ({'stated' if one.initial_tension_stated else 'not stated'}; {low} to {high})"


def _safe_length(one: ExtensionDescription, units: str) -> str:
    if one.largest_safe_length_mm is None or one.largest_safe_extension_mm is None:
        return "unknown"
    pulled, by = (show_length(mm, units) for mm in (one.largest_safe_length_mm, one.largest_safe_extension_mm))
    return f"{pulled}, {by} more than free"


def _at_lengths(one: ExtensionDescription, units: str) -> list[str]:
    def stress(value_mpa: float | None) -> str:
        return "-" if value_mpa is None else show_stress(value_mpa, units)

    rows = [
        (
            show_length(point.length_mm, units),
            show_force(point.force_n, units),
            stress(point.shear_stress_mpa),
            stress(point.corrected_stress_mpa),
            stress(point.hook_bending_stress_mpa),
            stress(point.hook_torsion_stress_mpa),
        )
        for point in one.at
    ]
    return table(("at", "force", "body", "corrected", "hook bends", "hook twists"), rows)
