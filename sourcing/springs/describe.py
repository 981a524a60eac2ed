"""All that follows from a spring's dimensions, in one value; its fields are the keys of `describe --json`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import overload

from sourcing.springs.compression import force_n, rate_n_per_mm, shear_stress_mpa
from sourcing.springs.describe_conical import ConicalDescription, describe_cone
from sourcing.springs.describe_extension import ExtensionDescription, describe_extension
from sourcing.springs.describe_torsion import TorsionDescription, describe_torsion
from sourcing.springs.end_pieces import wire_of_ends_mm, wire_with_ends_mm
from sourcing.springs.endurance import PressedEndurance, of_pressed
from sourcing.springs.geometry import (
    growth_at_solid_mm,
    mass_g,
    minimum_gaps_mm,
    pitch_mm,
    solid_length_mm,
    wire_length_mm,
)
from sourcing.springs.life import Making
from sourcing.springs.model import CompressionSpring, ConicalSpring, EndPiece, ExtensionSpring, Spring, TorsionSpring
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
from sourcing.springs.pressed import AtLength, at_length
from sourcing.springs.stability import GUIDED_SQUARE, TILTING_OR_SHIFTING, buckling_length_mm, natural_frequency_hz


@dataclass(frozen=True, slots=True)
class Description:
    """What a compression spring is and does. The rate is worked out from the dimensions, never a seller's.

    `buckling_length_mm` is None where the spring cannot buckle before it is solid, both ends flat and guided square.
    `natural_frequency_hz` is that of the active coils with both ends fixed. `notes` are whole sentences.
    """

    kind: str
    material: str
    wire_diameter_mm: float
    mean_diameter_mm: float
    outside_diameter_mm: float
    inside_diameter_mm: float
    spring_index: float
    active_coils: float
    total_coils: float
    free_length_mm: float
    solid_length_mm: float
    pitch_mm: float
    minimum_gaps_mm: float
    diameter_growth_mm: float
    rate_n_per_mm: float
    force_at_solid_n: float
    shear_stress_at_solid_mpa: float
    tensile_strength_mpa: float | None
    wire_length_mm: float
    mass_g: float
    natural_frequency_hz: float
    buckling_length_mm: float | None
    end_1: EndPiece | None
    end_2: EndPiece | None
    endurance: PressedEndurance
    at: tuple[AtLength, ...]
    notes: tuple[str, ...]


AnyDescription = Description | ConicalDescription | ExtensionDescription | TorsionDescription
"""The description of a spring of any kind."""


@overload
def describe(
    spring: CompressionSpring,
    at_mm: Sequence[float] = (),
    at_deg: Sequence[float] = (),
    making: Making = Making.UNKNOWN,
) -> Description: ...
@overload
def describe(
    spring: ConicalSpring, at_mm: Sequence[float] = (), at_deg: Sequence[float] = (), making: Making = Making.UNKNOWN
) -> ConicalDescription: ...
@overload
def describe(
    spring: ExtensionSpring, at_mm: Sequence[float] = (), at_deg: Sequence[float] = (), making: Making = Making.UNKNOWN
) -> ExtensionDescription: ...
@overload
def describe(
    spring: TorsionSpring, at_mm: Sequence[float] = (), at_deg: Sequence[float] = (), making: Making = Making.UNKNOWN
) -> TorsionDescription: ...
@overload
def describe(
    spring: Spring, at_mm: Sequence[float] = (), at_deg: Sequence[float] = (), making: Making = Making.UNKNOWN
) -> AnyDescription: ...
def describe(
    spring: Spring, at_mm: Sequence[float] = (), at_deg: Sequence[float] = (), making: Making = Making.UNKNOWN
) -> AnyDescription:
    """All figures of a spring, and what it does at each of the lengths `at_mm`, or of the angles `at_deg`.

    `making`: who made it, which decides the class of its life.

    Longer than free: the force is 0. Shorter than solid: the force is None. Either is said in a note, as is all that
    makes a figure unsure.

    >>> from sourcing.materials import find
    >>> from sourcing.springs.model import Ends
    >>> wire = find("music-wire")
    >>> spring = CompressionSpring(0.9, 8.7, 32.0, 7.75, 9.75, Ends.CLOSED_GROUND, wire,
    ...     wire.shear_modulus_mpa, wire.elastic_modulus_mpa, 2270.0)
    >>> described = describe(spring, at_mm=[24.0])
    >>> round(described.rate_n_per_mm, 3), round(described.at[0].force_n, 2)
    (1.31, 10.48)

    Source of each figure: the function that it is worked out with.
    """
    match spring:
        case CompressionSpring():
            return _describe_cylinder(spring, at_mm, making)
        case ConicalSpring():
            return describe_cone(spring, at_mm, making)
        case ExtensionSpring():
            return describe_extension(spring, at_mm, making)
        case TorsionSpring():
            return describe_torsion(spring, at_deg, making)


def _describe_cylinder(spring: CompressionSpring, at_mm: Sequence[float], making: Making) -> Description:
    d, mean, coils = spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils
    pitch = pitch_mm(d, spring.free_length_mm, coils, spring.total_coils, spring.ends)
    wire_length = wire_with_ends_mm(wire_length_mm(d, mean, pitch, coils, spring.total_coils), wire_of_ends_mm(spring))
    rate = rate_n_per_mm(d, mean, coils, spring.shear_modulus_mpa)
    solid = solid_length_mm(d, spring.total_coils, spring.ends)
    force_at_solid = force_n(rate, spring.free_length_mm, solid)
    figures = Description(
        kind=spring.kind,
        material=spring.material.name,
        wire_diameter_mm=d,
        mean_diameter_mm=mean,
        outside_diameter_mm=spring.outside_diameter_mm,
        inside_diameter_mm=spring.inside_diameter_mm,
        spring_index=spring.spring_index,
        active_coils=coils,
        total_coils=spring.total_coils,
        free_length_mm=spring.free_length_mm,
        solid_length_mm=solid,
        pitch_mm=pitch,
        minimum_gaps_mm=minimum_gaps_mm(d, mean, coils),
        diameter_growth_mm=growth_at_solid_mm(d, mean, pitch),
        rate_n_per_mm=rate,
        force_at_solid_n=force_at_solid,
        shear_stress_at_solid_mpa=shear_stress_mpa(force_at_solid, d, mean),
        tensile_strength_mpa=spring.tensile_strength_mpa,
        wire_length_mm=wire_length,
        mass_g=mass_g(d, wire_length, spring.material.density_kg_per_m3),
        natural_frequency_hz=natural_frequency_hz(
            d, mean, coils, spring.shear_modulus_mpa, spring.material.density_kg_per_m3
        ),
        buckling_length_mm=_buckling_length_mm(spring, solid, GUIDED_SQUARE),
        end_1=spring.end_1,
        end_2=spring.end_2,
        endurance=of_pressed(spring, at_mm, making),
        at=tuple(at_length(spring, length) for length in at_mm),
        notes=(),
    )
    return replace(figures, notes=tuple(_notes(spring, figures)))


def _buckling_length_mm(spring: CompressionSpring, solid_mm: float, seating: float) -> float | None:
    """The length at which it buckles, None where it is solid by then."""
    length = buckling_length_mm(
        spring.free_length_mm, spring.mean_diameter_mm, spring.shear_modulus_mpa, spring.elastic_modulus_mpa, seating
    )
    return None if length is None or length <= solid_mm else length


def _notes(spring: CompressionSpring, figures: Description) -> Iterator[str]:
    free, solid = figures.free_length_mm, figures.solid_length_mm
    yield from index_note(figures.spring_index)
    yield from coils_note(figures.active_coils)
    yield from steep_note(figures.pitch_mm, figures.mean_diameter_mm)
    yield from cannot_be_pressed_note(free, solid)
    yield from stress_note(
        figures.material, figures.wire_diameter_mm, figures.tensile_strength_mpa, figures.shear_stress_at_solid_mpa
    )
    yield from _buckling_notes(spring, figures)
    yield from material_note(spring.material)
    for at in figures.at:
        yield from length_note(at, free, solid)


def _buckling_notes(spring: CompressionSpring, figures: Description) -> Iterator[str]:
    if figures.buckling_length_mm is not None:
        yield (
            f"With no bore or rod to guide it, it may buckle below {mm(figures.buckling_length_mm)} with both ends "
            "flat and guided square (assumed), and sooner where an end can tilt or shift sideways."
        )
        return
    tilting = _buckling_length_mm(spring, figures.solid_length_mm, TILTING_OR_SHIFTING)
    if tilting is not None:
        yield (
            "With both ends flat and guided square (assumed) it does not buckle; with no bore or rod to guide it and "
            f"an end that can shift sideways, or both free to tilt, it may below {mm(tilting)}."
        )
