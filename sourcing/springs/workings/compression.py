"""The workings of a cylindrical compression spring."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.figures.working import Working, work
from sourcing.springs import compression, geometry, stability
from sourcing.springs.describe import Description
from sourcing.springs.model import CompressionSpring
from sourcing.springs.pressed import AtLength
from sourcing.springs.workings import endurance
from sourcing.springs.workings.end_pieces import wire_length
from sourcing.springs.workings.inputs import Stated, coils, input_of, strength, wire_and_diameters, wire_figures


def workings(spring: CompressionSpring, figures: Description, stated: Stated) -> Iterator[Working]:
    """Every figure of its description."""
    yield from wire_and_diameters(spring, stated)
    yield from coils(spring, stated)
    yield input_of("free_length_mm", spring.free_length_mm, stated)
    yield from wire_figures(spring, stated, "shear_modulus_mpa", "elastic_modulus_mpa", "density_kg_per_m3")
    yield from strength(spring, stated)
    yield from _lengths(spring, figures)
    yield from _forces(spring, figures)
    yield from _wire(spring, figures)
    if figures.buckling_length_mm is not None:
        moduli = (spring.shear_modulus_mpa, spring.elastic_modulus_mpa)
        yield work(stability.buckling_length_mm, spring.free_length_mm, spring.mean_diameter_mm, *moduli)
    for at in figures.at:
        yield from at_length(spring, figures.rate_n_per_mm, at)
    yield from endurance.of_pressed(spring, figures.endurance)


def _lengths(spring: CompressionSpring, figures: Description) -> Iterator[Working]:
    wire, mean = spring.wire_diameter_mm, spring.mean_diameter_mm
    active, total, ends = spring.active_coils, spring.total_coils, spring.ends
    yield work(geometry.solid_length_mm, wire, total, ends)
    yield work(geometry.pitch_mm, wire, spring.free_length_mm, active, total, ends)
    yield work(geometry.minimum_gaps_mm, wire, mean, active)
    yield work(geometry.growth_at_solid_mm, wire, mean, figures.pitch_mm, figure="diameter_growth_mm")


def _forces(spring: CompressionSpring, figures: Description) -> Iterator[Working]:
    wire, mean, rate = spring.wire_diameter_mm, spring.mean_diameter_mm, figures.rate_n_per_mm
    yield work(compression.rate_n_per_mm, wire, mean, spring.active_coils, spring.shear_modulus_mpa)
    lengths = (spring.free_length_mm, figures.solid_length_mm)
    yield work(compression.force_n, rate, *lengths, figure="force_at_solid_n")
    stress = "shear_stress_at_solid_mpa"
    yield work(compression.shear_stress_mpa, figures.force_at_solid_n, wire, mean, figure=stress)


def _wire(spring: CompressionSpring, figures: Description) -> Iterator[Working]:
    wire, mean, active = spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils
    density = spring.material.density_kg_per_m3
    of_coils = work(geometry.wire_length_mm, wire, mean, figures.pitch_mm, active, spring.total_coils)
    yield from wire_length(spring, of_coils)
    yield work(geometry.mass_g, wire, figures.wire_length_mm, density)
    yield work(stability.natural_frequency_hz, wire, mean, active, spring.shear_modulus_mpa, density)


def at_length(spring: CompressionSpring, rate_n_per_mm: float, at: AtLength) -> Iterator[Working]:
    """Force and stresses at a length; nothing where it cannot be pressed so far."""
    if at.force_n is None or at.shear_stress_mpa is None:
        return
    where, wire, mean = f"at {at.length_mm:g} mm", spring.wire_diameter_mm, spring.mean_diameter_mm
    yield work(compression.force_n, rate_n_per_mm, spring.free_length_mm, at.length_mm).at(where)
    yield work(compression.shear_stress_mpa, at.force_n, wire, mean).at(where)
    yield work(compression.corrected_stress_mpa, at.shear_stress_mpa, spring.spring_index).at(where)
