"""Sentences about what makes a figure of a compression spring unsure; every shape shares them."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.materials.model import Material
from sourcing.springs.compression import INDEX_RANGE, LEAST_ACTIVE_COILS, index_is_covered
from sourcing.springs.pressed import AtLength
from sourcing.springs.strength import permissible_solid_stress_mpa

GREATEST_PITCH = 0.5
"""The largest pitch over the mean diameter (JIS B 2704-1; a spring maker has 0.7 of the inside diameter)."""


def mm(length_mm: float) -> str:
    """A length for a sentence, without noughts at its end.

    >>> mm(8.775), mm(32.0)
    ('8.78 mm', '32 mm')
    """
    return f"{length_mm:.2f}".rstrip("0").rstrip(".") + " mm"


def counted(number: float, what: str) -> str:
    """A number of things as the subject of a sentence, with its verb.

    >>> counted(1.0, "coil"), counted(1.5, "active coil")
    ('1 coil is', '1.5 active coils are')
    """
    return f"{number:.3g} {what} is" if number == 1.0 else f"{number:.3g} {what}s are"


def index_note(spring_index: float, where: str = "") -> Iterator[str]:
    """That the index is outside the standard; `where` opens with a blank, as in " of the small end"."""
    if not index_is_covered(spring_index):
        least, greatest = INDEX_RANGE
        yield (
            f"The spring index {spring_index:.3g}{where} is outside the {least:g} to {greatest:g} of EN 13906-1: "
            "rate and stress are less sure."
        )


def coils_note(active_coils: float) -> Iterator[str]:
    """That there are fewer active coils than the standard covers."""
    if active_coils < LEAST_ACTIVE_COILS:
        yield (
            f"{counted(active_coils, 'active coil')} fewer than the {LEAST_ACTIVE_COILS:g} of EN 13906-1: "
            "rate and stress are less sure."
        )


def steep_note(pitch_mm: float, mean_diameter_mm: float) -> Iterator[str]:
    """That the coils climb more steeply than the formulas of rate, stress and growth are for."""
    if pitch_mm > GREATEST_PITCH * mean_diameter_mm:
        yield (
            f"Its pitch of {mm(pitch_mm)} is more than half the mean diameter of {mm(mean_diameter_mm)} "
            "(JIS B 2704-1): rate, stress and growth of the diameter are less sure."
        )


def cannot_be_pressed_note(free_length_mm: float, solid_length_mm: float) -> Iterator[str]:
    """That the spring is solid at rest."""
    if free_length_mm <= solid_length_mm:
        yield (
            f"It cannot be pressed: {mm(free_length_mm)} long at rest, "
            f"it would be solid at {mm(solid_length_mm)} already."
        )


def stress_note(
    material: str, wire_diameter_mm: float, tensile_strength_mpa: float | None, stress_at_solid_mpa: float
) -> Iterator[str]:
    """That the strength is not known, or that the spring takes a set when it is pressed solid."""
    if tensile_strength_mpa is None:
        yield (
            f"The strength of {material} is not listed for a wire of {mm(wire_diameter_mm)}: "
            "what stress it stands is not known."
        )
        return
    limit = permissible_solid_stress_mpa(tensile_strength_mpa)
    if stress_at_solid_mpa > limit:
        yield (
            f"Pressed solid it will take a set: the stress there is {stress_at_solid_mpa:.0f} MPa, "
            f"and EN 13906-1 allows {limit:.0f} MPa (0.56 of the wire's least strength)."
        )


def material_note(material: Material) -> Iterator[str]:
    """What is said of a material wherever its figures are used: that its grade is not known, and such."""
    if material.remark is not None:
        yield f"{material.name}: {material.remark}"


def length_note(at: AtLength, free_length_mm: float, solid_length_mm: float) -> Iterator[str]:
    """That a length asked for is longer than free, or shorter than solid."""
    if at.length_mm > free_length_mm:
        yield f"At {mm(at.length_mm)} it is loose: it is {mm(free_length_mm)} long at rest."
    elif at.force_n is None:
        yield f"It cannot be pressed to {mm(at.length_mm)}: it is solid at {mm(solid_length_mm)}."
