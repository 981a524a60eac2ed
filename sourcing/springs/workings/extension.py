"""The workings of an extension spring."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.figures.working import Working, given, work
from sourcing.springs import compression, extension, geometry, hooks, initial_tension, stability
from sourcing.springs.describe_extension import ExtensionDescription
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.pulled import AtPull
from sourcing.springs.workings import endurance
from sourcing.springs.workings.inputs import Stated, input_of, strength, wire_and_diameters, wire_figures


def workings(spring: ExtensionSpring, figures: ExtensionDescription, stated: Stated) -> Iterator[Working]:
    """Every figure of its description."""
    yield from wire_and_diameters(spring, stated)
    yield from _coils(figures, stated)
    yield input_of("free_length_mm", spring.free_length_mm, stated)
    yield from wire_figures(spring, stated, "shear_modulus_mpa", "elastic_modulus_mpa", "density_kg_per_m3")
    yield from strength(spring, stated)
    yield work(extension.body_length_mm, spring.total_coils, spring.wire_diameter_mm)
    yield work(extension.hook_length_mm, spring.free_length_mm, figures.body_length_mm)
    yield from _forces(spring, figures, stated)
    if spring.hooks is not Hooks.THREADED_PLUG:
        yield work(hooks.loop_factor, spring.spring_index)
        yield work(hooks.bend_factor, 2.0 * hooks.BEND_RADIUS_WIRES)
    yield work(geometry.mass_g, spring.wire_diameter_mm, figures.wire_length_mm, spring.material.density_kg_per_m3)
    yield work(
        stability.natural_frequency_hz,
        spring.wire_diameter_mm,
        spring.mean_diameter_mm,
        spring.active_coils,
        spring.shear_modulus_mpa,
        spring.material.density_kg_per_m3,
    )
    for at in figures.at:
        yield from _at_length(spring, figures, at)
    yield from endurance.of_pulled(spring, figures.endurance)


def _coils(figures: ExtensionDescription, stated: Stated) -> Iterator[Working]:
    """Coils as they are written; where one count is, it is both."""
    counted = "total_coils" if "total_coils" in stated else "active_coils"
    for name in ("active_coils", "total_coils"):
        place = stated.get(name) or stated.get(counted)
        yield input_of(name, getattr(figures, name), {} if place is None else {name: place})


def _forces(spring: ExtensionSpring, figures: ExtensionDescription, stated: Stated) -> Iterator[Working]:
    """The rate, and the initial tension as it is stated, or what each source has for the index."""
    d, mean, index = spring.wire_diameter_mm, spring.mean_diameter_mm, spring.spring_index
    yield work(extension.rate_n_per_mm, d, mean, spring.active_coils, spring.shear_modulus_mpa)
    if spring.initial_tension_n is not None:
        yield input_of("initial_tension_n", spring.initial_tension_n, stated)
        yield work(extension.initial_stress_mpa, spring.initial_tension_n, d, mean)
        return
    if spring.tensile_strength_mpa is not None:
        yield work(initial_tension.initial_stress_coiled_mpa, index, spring.tensile_strength_mpa)
        yield work(initial_tension.initial_stress_wound_mpa, index, spring.tensile_strength_mpa)
    yield work(initial_tension.initial_stress_preferred_mpa, index)
    yield work(initial_tension.initial_stress_either_side_mpa, index)
    middle = "not stated: the middle of what these stresses make for such a spring"
    yield given("initial_tension_n", figures.initial_tension_n, middle)
    yield work(extension.initial_stress_mpa, figures.initial_tension_n, d, mean)


def _at_length(spring: ExtensionSpring, figures: ExtensionDescription, at: AtPull) -> Iterator[Working]:
    """Force and stresses at a length; nothing where it is loose."""
    pulled_mm = at.length_mm - spring.free_length_mm
    if pulled_mm <= 0.0:
        return
    where, d, mean = f"at {at.length_mm:g} mm", spring.wire_diameter_mm, spring.mean_diameter_mm
    yield work(extension.force_n, figures.initial_tension_n, figures.rate_n_per_mm, pulled_mm).at(where)
    if hooks.BODY_LOAD_ARM[spring.hooks] == 1.0:
        yield work(compression.shear_stress_mpa, at.force_n, d, mean).at(where)
        yield work(compression.corrected_stress_mpa, at.shear_stress_mpa, spring.spring_index).at(where)
    if spring.hooks is Hooks.THREADED_PLUG:
        return
    loop, bend = hooks.loop_factor(spring.spring_index), hooks.bend_factor(2.0 * hooks.BEND_RADIUS_WIRES)
    bends, twists = "hook_bending_stress_mpa", "hook_torsion_stress_mpa"
    yield work(hooks.bending_stress_mpa, at.force_n, d, mean, loop, figure=bends).at(where)
    yield work(hooks.torsion_stress_mpa, at.force_n, d, mean, bend, figure=twists).at(where)
