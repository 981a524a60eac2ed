"""The description of a torsion spring as rows."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_angle, show_angular_rate, show_length, show_stress, show_torque
from sourcing.sheets.description_pressed import Row, lasting, optional, serving
from sourcing.sheets.text import table
from sourcing.springs.describe_torsion import TorsionDescription
from sourcing.springs.model import LegShape


def tables(one: TorsionDescription, units: str) -> Iterator[list[str]]:
    """The tables of a torsion spring: its figures, and what it does at the angles asked for."""
    yield table(("figure", "value"), _figures(one, units))
    if one.at:
        yield _at(one, units)


def _figures(one: TorsionDescription, units: str) -> list[Row]:
    """Every figure with its name."""

    def length(value_mm: float) -> str:
        return show_length(value_mm, units)

    diameters = (one.outside_diameter_mm, one.mean_diameter_mm, one.inside_diameter_mm)
    tensile, stress = one.tensile_strength_mpa, one.permissible_stress_mpa
    angle, torque = one.permissible_angle_deg, one.permissible_torque_n_mm
    hand = "both, a body of each" if one.bodies > 1 else one.hand or "unknown"
    return [
        ("material", one.material),
        ("wire", length(one.wire_diameter_mm)),
        ("outside, mean, inside", " / ".join(map(length, diameters))),
        ("spring index", f"{one.spring_index:.2f}"),
        ("coils, all active", f"{one.active_coils:g}" + (" in each of two bodies" if one.bodies > 1 else "")),
        ("hand", hand),
        ("leg 1", _leg(one.leg_1_mm, one.leg_1_shape, units)),
        ("leg 2", _leg(one.leg_2_mm, one.leg_2_shape, units)),
        ("legs bend like", f"{one.coils_of_legs:.2f} coils"),
        ("angle between the legs", optional(one.free_angle_deg, show_angle(one.free_angle_deg or 0.0))),
        ("body length", length(one.body_length_mm)),
        ("rate", show_angular_rate(one.rate_n_mm_per_deg, units)),
        ("rate where it rubs", show_angular_rate(one.rate_with_friction_n_mm_per_deg, units)),
        ("least tensile strength", optional(tensile, show_stress(tensile or 0.0, units))),
        ("permissible stress, static", optional(stress, show_stress(stress or 0.0, units))),
        ("may be wound up by", optional(angle, show_angle(angle or 0.0))),
        ("torque there", optional(torque, show_torque(torque or 0.0, units))),
        *_endured(one, units),
        ("natural frequency", f"{one.natural_frequency_hz:.0f} Hz"),
        ("wire length", length(one.wire_length_mm)),
        ("mass", f"{one.mass_g:.2f} g"),
    ]


def _endured(one: TorsionDescription, units: str) -> list[Row]:
    """How long it lasts, where an angle was asked for, and where it is warm."""
    bears, life = one.endurance, list[Row]()
    if bears.lasts_from_deg is not None and bears.lasts_to_deg is not None:
        life = lasting(bears.lasts, f", {bears.lasts_from_deg:g} to {show_angle(bears.lasts_to_deg)}")
    return [*life, *serving(bears.service, units)]


def _leg(length_mm: float | None, shape: LegShape | None, units: str) -> str:
    return "none given" if length_mm is None else f"{show_length(length_mm, units)}, {shape}"


def _at(one: TorsionDescription, units: str) -> list[str]:
    rows = [
        (
            show_angle(at.angle_deg),
            optional(at.torque_n_mm, show_torque(at.torque_n_mm or 0.0, units)),
            optional(at.bending_stress_mpa, show_stress(at.bending_stress_mpa or 0.0, units)),
            optional(at.corrected_stress_mpa, show_stress(at.corrected_stress_mpa or 0.0, units)),
            optional(at.inside_diameter_mm, show_length(at.inside_diameter_mm or 0.0, units)),
            optional(at.rod_at_most_mm, f"to {show_length(at.rod_at_most_mm or 0.0, units)}"),
            optional(at.body_length_mm, show_length(at.body_length_mm or 0.0, units)),
        )
        for at in one.at
    ]
    return table(("at", "torque", "stress", "corrected", "inside", "rod advised", "body"), rows)
