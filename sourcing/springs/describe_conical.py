"""All that follows from the dimensions of a conical spring; the fields are the keys of `describe --json`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil

from sourcing.figures import formula
from sourcing.springs import pressed
from sourcing.springs.compression import shear_stress_mpa
from sourcing.springs.conical import DERIVED, Cone, closing_force_n, coil_diameter_mm, force_at_solid_n, travel_mm
from sourcing.springs.conical_lengths import (
    OF_CONE,
    SURE_STEP,
    cone_of,
    growth_at_ends_mm,
    pitch_of,
    step_of,
    telescopes,
    wire_length_of,
)
from sourcing.springs.end_pieces import wire_of_ends_mm, wire_with_ends_mm
from sourcing.springs.endurance import PressedEndurance, of_pressed
from sourcing.springs.geometry import mass_g
from sourcing.springs.life import Making
from sourcing.springs.model import ConicalSpring, EndPiece
from sourcing.springs.notes import (
    cannot_be_pressed_note,
    coils_note,
    index_note,
    length_note,
    material_note,
    mm,
    steep_note,
    stress_note,
)
from sourcing.springs.pressed import AtLength
from sourcing.springs.stability import cone_buckling_length_mm, cone_natural_frequency_hz


@dataclass(frozen=True, slots=True)
class Closing:
    """When one active coil has closed; coils count from 1 at the large end, the last may be part of one."""

    coil: int
    force_n: float
    length_mm: float


@dataclass(frozen=True, slots=True)
class ConicalDescription:
    """What a conical spring is and does, its gap the same at every turn.

    `rate_n_per_mm` is the initial one, which holds down to `even_down_to_mm`, where the largest coil begins to close.
    `spring_index` is that of the coil halfway. `buckling_length_mm` is that of a cylinder as slim as the small end, or
    None where it could not buckle. `notes` are whole sentences. All else as in `Description`.
    """

    kind: str
    material: str
    wire_diameter_mm: float
    mean_diameter_small_mm: float
    mean_diameter_large_mm: float
    outside_diameter_small_mm: float
    outside_diameter_large_mm: float
    inside_diameter_small_mm: float
    inside_diameter_large_mm: float
    spring_index: float
    active_coils: float
    total_coils: float
    free_length_mm: float
    solid_length_mm: float
    pitch_mm: float
    telescopes: bool
    diameter_growth_small_mm: float
    diameter_growth_large_mm: float
    rate_n_per_mm: float
    even_down_to_mm: float
    force_at_solid_n: float
    shear_stress_at_solid_mpa: float
    tensile_strength_mpa: float | None
    wire_length_mm: float
    mass_g: float
    natural_frequency_hz: float
    buckling_length_mm: float | None
    end_1: EndPiece | None
    end_2: EndPiece | None
    closing: tuple[Closing, ...]
    endurance: PressedEndurance
    at: tuple[AtLength, ...]
    notes: tuple[str, ...]


def describe_cone(
    spring: ConicalSpring, at_mm: Sequence[float] = (), making: Making = Making.UNKNOWN
) -> ConicalDescription:
    """All figures of a conical spring, and what it does at each of the lengths `at_mm`, from its progressive curve.

    >>> from sourcing.materials import find
    >>> from sourcing.springs.model import Ends
    >>> wire = find("music-wire")
    >>> spring = ConicalSpring(0.9, 7.0, 17.0, 15.8, 5.0, 7.0, Ends.CLOSED_GROUND, wire,
    ...     wire.shear_modulus_mpa, wire.elastic_modulus_mpa, 2270.0)
    >>> described = describe_cone(spring, at_mm=[12.0, 4.0])
    >>> round(described.rate_n_per_mm, 3), [round(at.force_n, 2) for at in described.at]
    (0.659, [2.5, 12.78])

    Source of each figure: the function that it is worked out with.
    """
    d, cone, solid = spring.wire_diameter_mm, cone_of(spring), pressed.solid_length_mm(spring)
    wire_length = wire_with_ends_mm(wire_length_of(spring), wire_of_ends_mm(spring))
    density = spring.material.density_kg_per_m3
    growth_small, growth_large = growth_at_ends_mm(spring)
    at_solid_n = force_at_solid_n((cone,))
    figures = ConicalDescription(
        kind=spring.kind,
        material=spring.material.name,
        wire_diameter_mm=d,
        mean_diameter_small_mm=spring.mean_diameter_small_mm,
        mean_diameter_large_mm=spring.mean_diameter_large_mm,
        outside_diameter_small_mm=spring.outside_diameter_small_mm,
        outside_diameter_large_mm=spring.outside_diameter_large_mm,
        inside_diameter_small_mm=spring.inside_diameter_small_mm,
        inside_diameter_large_mm=spring.inside_diameter_large_mm,
        spring_index=spring.spring_index,
        active_coils=spring.active_coils,
        total_coils=spring.total_coils,
        free_length_mm=spring.free_length_mm,
        solid_length_mm=solid,
        pitch_mm=pitch_of(spring),
        telescopes=telescopes(d, step_of(spring)),
        diameter_growth_small_mm=growth_small,
        diameter_growth_large_mm=growth_large,
        rate_n_per_mm=pressed.rate_n_per_mm(spring),
        even_down_to_mm=_closed_at(spring, cone, 0.0).length_mm,
        force_at_solid_n=at_solid_n,
        shear_stress_at_solid_mpa=shear_stress_mpa(at_solid_n, d, spring.mean_diameter_small_mm),
        tensile_strength_mpa=spring.tensile_strength_mpa,
        wire_length_mm=wire_length,
        mass_g=mass_g(d, wire_length, density),
        natural_frequency_hz=cone_natural_frequency_hz(spring),
        buckling_length_mm=cone_buckling_length_mm(spring, solid),
        end_1=spring.end_1,
        end_2=spring.end_2,
        closing=closing_order(spring),
        endurance=of_pressed(spring, at_mm, making),
        at=tuple(pressed.at_length(spring, length) for length in at_mm),
        notes=(),
    )
    return replace(figures, notes=tuple(_notes(spring, figures)))


def closing_order(spring: ConicalSpring) -> tuple[Closing, ...]:
    """Each active coil with the force and the length at which it has closed, the largest first."""
    cone = cone_of(spring)
    return tuple(_closed_at(spring, cone, coil) for coil in range(1, ceil(spring.active_coils) + 1))


@formula("L = L₀ − s(F), s the travel of all coils under F", where=OF_CONE, closed=False, source=DERIVED)
def length_under_mm(spring: ConicalSpring, force_n: float) -> float:
    """The length to which a force presses a cone."""
    return spring.free_length_mm - travel_mm((cone_of(spring),), force_n)


def _closed_at(spring: ConicalSpring, cone: Cone, turns: float) -> Closing:
    """When so many turns from the large end have closed."""
    diameter = coil_diameter_mm(cone, turns)
    force = closing_force_n(cone.wire_diameter_mm, diameter, cone.gap_mm, cone.shear_modulus_mpa)
    return Closing(round(turns), force, length_under_mm(spring, force))


def _notes(spring: ConicalSpring, figures: ConicalDescription) -> Iterator[str]:
    free, solid, wire = figures.free_length_mm, figures.solid_length_mm, figures.wire_diameter_mm
    yield from index_note(figures.mean_diameter_small_mm / wire, " of the small end")
    yield from index_note(figures.mean_diameter_large_mm / wire, " of the large end")
    yield from coils_note(figures.active_coils)
    yield from steep_note(figures.pitch_mm, figures.mean_diameter_small_mm)
    yield from cannot_be_pressed_note(free, solid)
    yield from _closing_notes(spring, figures)
    yield from stress_note(figures.material, wire, figures.tensile_strength_mpa, figures.shear_stress_at_solid_mpa)
    if figures.buckling_length_mm is not None:
        yield (
            "With no bore or rod to guide it, a cylinder as slim as its small end would buckle below "
            f"{mm(figures.buckling_length_mm)}; the cone is steadier, by how much is not known."
        )
    yield from material_note(spring.material)
    for at in figures.at:
        yield from length_note(at, free, solid)


def _closing_notes(spring: ConicalSpring, figures: ConicalDescription) -> Iterator[str]:
    if figures.telescopes and spring.total_coils > spring.active_coils:
        yield (
            f"Pressed solid it is taken to lie flat, {mm(figures.solid_length_mm)} high; an end coil that stands on "
            "the next one instead makes it a wire higher."
        )
    if figures.even_down_to_mm > figures.solid_length_mm:
        yield (
            f"The rate holds down to {mm(figures.even_down_to_mm)}; below, the coils close one by one, the largest "
            "first, and it stiffens."
        )
    step = step_of(spring)
    if figures.telescopes and step < SURE_STEP * spring.wire_diameter_mm:
        yield (
            f"Each turn is only {mm(step)} smaller in radius than the next: pressed flat, turns may ride up on each "
            f"other and jam ({SURE_STEP:g} wire diameters are wanted; common practice, no source)."
        )
