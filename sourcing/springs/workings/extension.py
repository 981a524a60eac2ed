"""The workings of an extension spring."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

from sourcing.figures.working import Working, given, work
from sourcing.springs import compression, extension, geometry, hooks, initial_tension, pulled, stability
from sourcing.springs.describe_extension import ExtensionDescription, wire_length_mm
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.pulled import AtPull
from sourcing.springs.workings import endurance
from sourcing.springs.workings.inputs import Stated, input_of, strength, wire_and_diameters, wire_figures


def workings(spring: ExtensionSpring, figures: ExtensionDescription, stated: Stated) -> Iterator[Working]:
    """Every figure of its description."""
    yield from wire_and_diameters(spring, stated)
    yield from _coils(figures, stated)
    yield given("torn_hooks", spring.torn_hooks, stated.get("torn_hooks", "none is said to be torn off"))
    yield given("pitch_mm", figures.pitch_mm, "the wire's diameter: its coils touch")
    yield input_of("free_length_mm", spring.free_length_mm, stated)
    yield from wire_figures(spring, stated, "shear_modulus_mpa", "elastic_modulus_mpa", "density_kg_per_m3")
    yield from strength(spring, stated)
    yield work(extension.body_length_mm, spring.total_coils, spring.wire_diameter_mm)
    yield work(extension.hook_length_mm, spring.free_length_mm, figures.body_length_mm)
    yield from _forces(spring, figures, stated)
    yield from _safe(spring, figures)
    hook_mm = figures.hook_length_mm
    yield work(hooks.hook_wire_mm, spring.hooks, spring.mean_diameter_mm, hook_mm, figure="wire_of_a_hook_mm")
    yield work(wire_length_mm, spring)
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
    d, mean, tension_n = spring.wire_diameter_mm, spring.mean_diameter_mm, figures.initial_tension_n
    yield work(extension.rate_n_per_mm, d, mean, spring.active_coils, spring.shear_modulus_mpa)
    if spring.initial_tension_n is None:
        yield from _usual_tension(spring, figures)
    else:
        yield input_of("initial_tension_n", tension_n, stated)
        yield work(initial_tension.least_of_stated_n, tension_n, figure="initial_tension_n_low")
        yield work(initial_tension.most_of_stated_n, tension_n, figure="initial_tension_n_high")
    yield work(extension.initial_stress_mpa, tension_n, d, mean)


def _usual_tension(spring: ExtensionSpring, figures: ExtensionDescription) -> Iterator[Working]:
    """From the stresses that the sources have for the index to the force between them."""
    d, mean, sources = spring.wire_diameter_mm, spring.mean_diameter_mm, figures.initial_tension_ranges
    for each in sources:
        least, greatest = _USUAL_STRESSES[each.source](spring)
        yield from (*least, *greatest)
        for stress, where in ((least[-1], "least"), (greatest[-1], "most")):
            yield work(extension.initial_tension_n, max(0.0, stress.value), d, mean).at(f"at {where} ({each.source})")
    none = "not stated, and no source covers such a spring: taken as none"
    yield given("initial_tension_n_low", figures.initial_tension_n_low, "the least of these" if sources else none)
    yield given("initial_tension_n_high", figures.initial_tension_n_high, "the greatest of these" if sources else none)
    middle = "not stated: the middle between these two"
    yield given("initial_tension_n", figures.initial_tension_n, middle if sources else none)


_Steps = tuple[Working, ...]
"""Workings that lead to the last of them."""


def _coiled_to_wound(spring: ExtensionSpring) -> tuple[_Steps, _Steps]:
    """The least and the greatest initial stress of EN 13906-2."""
    assert spring.tensile_strength_mpa is not None
    known = (spring.spring_index, spring.tensile_strength_mpa)
    coiled, wound = initial_tension.initial_stress_coiled_mpa, initial_tension.initial_stress_wound_mpa
    return (work(coiled, *known),), (work(wound, *known),)


def _preferred(spring: ExtensionSpring) -> tuple[_Steps, _Steps]:
    """The least and the greatest initial stress that US makers prefer."""
    middle = work(initial_tension.initial_stress_preferred_mpa, spring.spring_index)
    half = work(initial_tension.initial_stress_either_side_mpa, spring.spring_index)
    known = (initial_tension.share_of_carbon_steel(spring.material), middle.value, half.value)
    least = work(initial_tension.least_initial_stress_preferred_mpa, *known)
    return (middle, half, least), (work(initial_tension.greatest_initial_stress_preferred_mpa, *known),)


_USUAL_STRESSES: Mapping[str, Callable[[ExtensionSpring], tuple[_Steps, _Steps]]] = {
    initial_tension.COILED_TO_WOUND: _coiled_to_wound,
    initial_tension.PREFERRED: _preferred,
}
"""How each source comes to its least and its greatest stress."""


def _safe(spring: ExtensionSpring, figures: ExtensionDescription) -> Iterator[Working]:
    """The stress of each part under one newton, and how far the weakest lets it be pulled."""
    stress, per_newton = "stress_under_one_newton_mpa", _stresses(spring, 1.0)
    for part, each in zip(pulled.parts(spring), per_newton, strict=True):
        yield from each.factor
        yield replace(each.stress, figure=stress).at(f"in {part.words}")
    if figures.largest_safe_force_n is None:
        return
    yield work(pulled.largest_safe_force_n, spring)
    known = (figures.largest_safe_force_n, figures.initial_tension_n, figures.rate_n_per_mm)
    extended = work(pulled.largest_safe_extension_mm, *known)
    yield extended
    yield work(extension.pulled_length_mm, spring.free_length_mm, extended.value, figure="largest_safe_length_mm")


@dataclass(frozen=True, slots=True)
class _Stress:
    """The stress in a part under a force, and the factor that it is worked out with."""

    stress: Working
    factor: tuple[Working, ...] = ()


def _stresses(spring: ExtensionSpring, force_n: float) -> Iterator[_Stress]:
    """Of the body, and of a bent hook its loop and its bend, in the order of `pulled.parts`."""
    on = (force_n, spring.wire_diameter_mm, spring.mean_diameter_mm)
    yield _Stress(work(hooks.body_stress_mpa, *on, spring.hooks, figure="shear_stress_mpa"))
    if spring.hooks is Hooks.THREADED_PLUG:
        return
    loop = work(hooks.loop_factor, spring.spring_index)
    yield _Stress(work(hooks.bending_stress_mpa, *on, loop.value, figure="hook_bending_stress_mpa"), (loop,))
    bend = work(hooks.bend_factor, 2.0 * hooks.BEND_RADIUS_WIRES)
    yield _Stress(work(hooks.torsion_stress_mpa, *on, bend.value, figure="hook_torsion_stress_mpa"), (bend,))


def _at_length(spring: ExtensionSpring, figures: ExtensionDescription, at: AtPull) -> Iterator[Working]:
    """Force and stresses at a length; where it is loose there are none."""
    pulled_mm, where = at.length_mm - spring.free_length_mm, f"at {at.length_mm:g} mm"
    if pulled_mm > 0.0:
        yield work(extension.force_n, figures.initial_tension_n, figures.rate_n_per_mm, pulled_mm).at(where)
    else:
        yield given("force_n", at.force_n, "loose: no longer than it is at rest").at(where)
    yield from (each.stress.at(where) for each in _stresses(spring, at.force_n))
    yield work(compression.corrected_stress_mpa, at.shear_stress_mpa, spring.spring_index).at(where)
