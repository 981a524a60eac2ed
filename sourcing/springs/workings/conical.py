"""The workings of a conical spring, from its progressive curve."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.figures.working import Working, work
from sourcing.springs import compression, conical, conical_lengths, diameters, geometry, pressed, stability
from sourcing.springs.describe_conical import ConicalDescription, length_under_mm
from sourcing.springs.model import ConicalSpring
from sourcing.springs.pressed import AtLength
from sourcing.springs.workings import endurance
from sourcing.springs.workings.end_pieces import wire_length
from sourcing.springs.workings.inputs import Stated, coils, input_of, strength, three_diameters, wire_figures


def workings(spring: ConicalSpring, figures: ConicalDescription, stated: Stated) -> Iterator[Working]:
    """Every figure of its description."""
    yield from _dimensions(spring, stated)
    yield from wire_figures(spring, stated, "shear_modulus_mpa", "elastic_modulus_mpa", "density_kg_per_m3")
    yield from strength(spring, stated)
    yield from _lengths(spring, figures)
    yield from _forces(spring, figures)
    yield from _wire(spring, figures)
    if figures.buckling_length_mm is not None:
        yield work(stability.cone_buckling_length_mm, spring, figures.solid_length_mm, figure="buckling_length_mm")
    for at in figures.at:
        yield from _at_length(spring, at)
    yield from endurance.of_pressed(spring, figures.endurance)


def _dimensions(spring: ConicalSpring, stated: Stated) -> Iterator[Working]:
    wire, small, large = spring.wire_diameter_mm, spring.mean_diameter_small_mm, spring.mean_diameter_large_mm
    yield input_of("wire_diameter_mm", wire, stated)
    yield from three_diameters(wire, small, stated, "_small")
    yield from three_diameters(wire, large, stated, "_large")
    yield work(diameters.halfway_mean_mm, small, large, figure="mean_diameter_mm")
    yield work(diameters.spring_index, spring.mean_diameter_mm, wire)
    yield from coils(spring, stated)
    yield input_of("free_length_mm", spring.free_length_mm, stated)
    yield work(conical_lengths.radius_step_mm, small, large, spring.active_coils)


def _lengths(spring: ConicalSpring, figures: ConicalDescription) -> Iterator[Working]:
    wire, step = spring.wire_diameter_mm, conical_lengths.step_of(spring)
    ends = (spring.active_coils, spring.total_coils, spring.ends)
    yield work(conical_lengths.solid_length_mm, wire, step, *ends)
    yield work(conical_lengths.pitch_mm, wire, step, spring.free_length_mm, *ends)
    solid_pitch = work(conical_lengths.solid_pitch_mm, wire, step)
    yield solid_pitch
    for end, mean in (("small", spring.mean_diameter_small_mm), ("large", spring.mean_diameter_large_mm)):
        name = f"diameter_growth_{end}_mm"
        yield work(conical_lengths.growth_at_solid_mm, solid_pitch.value, mean, figures.pitch_mm, figure=name)


def _forces(spring: ConicalSpring, figures: ConicalDescription) -> Iterator[Working]:
    wire, small, large = spring.wire_diameter_mm, spring.mean_diameter_small_mm, spring.mean_diameter_large_mm
    cone, shear = conical_lengths.cone_of(spring), spring.shear_modulus_mpa
    yield work(conical.rate_n_per_mm, wire, small, large, spring.active_coils, shear)
    yield work(conical.gap_mm, spring.free_length_mm, figures.solid_length_mm, spring.active_coils)
    first = work(conical.closing_force_n, wire, large, cone.gap_mm, shear, figure="first_closing_force_n")
    yield first
    yield work(length_under_mm, spring, first.value, figure="even_down_to_mm")
    for closing in figures.closing:
        where, mean = f"of coil {closing.coil}", conical.coil_diameter_mm(cone, closing.coil)
        yield work(conical.coil_diameter_mm, cone, closing.coil, figure="mean_diameter_mm").at(where)
        yield work(conical.closing_force_n, wire, mean, cone.gap_mm, shear, figure="force_n").at(where)
        yield work(length_under_mm, spring, closing.force_n, figure="length_mm").at(where)
    yield work(conical.closing_force_n, wire, small, cone.gap_mm, shear, figure="force_at_solid_n")
    name = "shear_stress_at_solid_mpa"
    yield work(compression.shear_stress_mpa, figures.force_at_solid_n, wire, small, figure=name)


def _wire(spring: ConicalSpring, figures: ConicalDescription) -> Iterator[Working]:
    yield from wire_length(spring, work(conical_lengths.wire_length_of, spring, figure="wire_length_mm"))
    density = spring.material.density_kg_per_m3
    yield work(geometry.mass_g, spring.wire_diameter_mm, figures.wire_length_mm, density)
    yield work(stability.cone_natural_frequency_hz, spring, figure="natural_frequency_hz")


def _at_length(spring: ConicalSpring, at: AtLength) -> Iterator[Working]:
    """Force, and stresses in the largest coil that is open; nothing where it cannot be pressed so far."""
    if at.force_n is None or at.shear_stress_mpa is None:
        return
    where, wire = f"at {at.length_mm:g} mm", spring.wire_diameter_mm
    yield work(pressed.cone_force_n, spring, at.length_mm, figure="force_n").at(where)
    open_mm = work(conical.largest_open_diameter_mm, conical_lengths.cone_of(spring), at.force_n)
    yield open_mm.at(where)
    yield work(compression.shear_stress_mpa, at.force_n, wire, open_mm.value).at(where)
    yield work(compression.corrected_stress_mpa, at.shear_stress_mpa, open_mm.value / wire).at(where)
