"""The workings of a torsion spring."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.figures.working import Working, work
from sourcing.springs import geometry, torsion, turned
from sourcing.springs.describe_torsion import TorsionDescription
from sourcing.springs.model import TorsionSpring
from sourcing.springs.strength import permissible_stress_mpa
from sourcing.springs.turned import AtAngle
from sourcing.springs.workings import endurance
from sourcing.springs.workings.inputs import Stated, input_of, strength, wire_and_diameters, wire_figures


def workings(spring: TorsionSpring, figures: TorsionDescription, stated: Stated) -> Iterator[Working]:
    """Every figure of its description."""
    yield from wire_and_diameters(spring, stated)
    yield from _dimensions(figures, stated)
    yield from wire_figures(spring, stated, "elastic_modulus_mpa", "density_kg_per_m3")
    yield from strength(spring, stated)
    legs = (figures.leg_1_mm or 0.0, figures.leg_2_mm or 0.0)
    yield work(torsion.coils_of_legs, *legs, spring.mean_diameter_mm)
    yield work(turned.body_length_mm, spring)
    yield work(turned.rate_n_mm_per_deg, spring)
    yield work(turned.rate_with_friction_n_mm_per_deg, spring)
    yield from _permissible(spring, figures)
    yield from _wire(spring, figures)
    for at in figures.at:
        yield from _at_angle(spring, figures, at)
    yield from endurance.of_turned(spring, figures.endurance)


def _dimensions(figures: TorsionDescription, stated: Stated) -> Iterator[Working]:
    """Coils, bodies, legs and their angle at rest, as they are written."""
    counted = "active_coils" if "active_coils" in stated else "total_coils"
    for name in ("active_coils", "total_coils"):
        yield input_of(name, getattr(figures, name), {name: stated[counted]} if counted in stated else {})
    for name in ("bodies", "leg_1_mm", "leg_2_mm", "free_angle_deg"):
        if (value := getattr(figures, name)) is not None:
            yield input_of(name, value, stated)


def _permissible(spring: TorsionSpring, figures: TorsionDescription) -> Iterator[Working]:
    angle, rate, bears = figures.permissible_angle_deg, figures.rate_n_mm_per_deg, turned.bears_wound_up(spring)
    if spring.tensile_strength_mpa is None or angle is None:
        return
    worked = work(permissible_stress_mpa, bears.share, spring.tensile_strength_mpa)
    yield replace(worked, source=bears.source, from_memory=bears.from_memory)
    yield work(turned.permissible_angle_deg, spring, rate)
    yield work(torsion.torque_n_mm, rate, angle, figure="permissible_torque_n_mm")


def _wire(spring: TorsionSpring, figures: TorsionDescription) -> Iterator[Working]:
    wire, density = spring.wire_diameter_mm, spring.material.density_kg_per_m3
    yield work(turned.wire_length_mm, spring)
    yield work(geometry.mass_g, wire, figures.wire_length_mm, density)
    modulus = spring.elastic_modulus_mpa
    yield work(torsion.natural_frequency_hz, wire, spring.mean_diameter_mm, spring.active_coils, modulus, density)


def _at_angle(spring: TorsionSpring, figures: TorsionDescription, at: AtAngle) -> Iterator[Working]:
    """Torque, stresses, inside, rod and body at an angle; nothing where the coils cannot go so far."""
    if at.torque_n_mm is None or at.inside_diameter_mm is None:
        return
    where, angle = f"at {at.angle_deg:g} deg", at.angle_deg
    yield work(torsion.torque_n_mm, figures.rate_n_mm_per_deg, angle).at(where)
    yield work(turned.stress_mpa, spring, at.torque_n_mm, figure="bending_stress_mpa").at(where)
    yield work(turned.corrected_stress_mpa, spring, at.torque_n_mm).at(where)
    yield work(turned.inside_diameter_mm, spring, angle).at(where)
    yield work(torsion.rod_at_most_mm, at.inside_diameter_mm).at(where)
    yield work(turned.body_length_mm, spring, angle).at(where)
