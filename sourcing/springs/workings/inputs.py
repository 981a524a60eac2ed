"""The numbers that a spring is worked out from: those that stand in a file, and those that the tables of wire give."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from sourcing.figures.working import Working, given, work
from sourcing.materials.facts import facts
from sourcing.materials.governing import governing_strength
from sourcing.springs import diameters, geometry
from sourcing.springs.model import CompressionSpring, ConicalSpring, ExtensionSpring, Spring, TorsionSpring

Stated = Mapping[str, str]
"""Where each key of a spring's record stands, as in "drawer.yaml:5:20"."""

NOT_STATED: Stated = {}
GIVEN = "given"
"""The source of a figure that stands in no file."""

_FACTS = {
    "shear_modulus_mpa": "shear modulus",
    "elastic_modulus_mpa": "elastic modulus",
    "density_kg_per_m3": "density",
}
"""Figures that the table of materials holds, by their names there."""


def input_of(figure: str, value: float, stated: Stated) -> Working:
    """A figure that was put in, with where it stands."""
    return given(figure, value, stated.get(key_of(figure), GIVEN))


def key_of(figure: str) -> str:
    """The key of a file that a figure is written under.

    >>> key_of("wire_diameter_mm"), key_of("total_coils")
    ('wire_diameter', 'total_coils')
    """
    return figure.removesuffix("_mm").removesuffix("_mpa").removesuffix("_deg").removesuffix("_n")


def wire_figures(spring: Spring, stated: Stated, *names: str) -> Iterator[Working]:
    """Moduli and density: as stated beside the spring, else from the table of materials."""
    figures = {"density_kg_per_m3": spring.material.density_kg_per_m3}
    known = {fact.figure: fact for fact in facts(spring.material)}
    for name in names:
        value = figures[name] if name in figures else getattr(spring, name)
        fact = known.get(_FACTS[name])
        if fact is None or key_of(name) in stated or float(fact.value) != value:
            yield input_of(name, value, stated)
        else:
            yield given(name, value, fact.source, fact.from_memory)


def strength(spring: Spring, stated: Stated) -> Iterator[Working]:
    """The least tensile strength: as stated, or the row of its table; nothing where it is not known."""
    value = spring.tensile_strength_mpa
    if value is None:
        return
    row = governing_strength(spring.material, spring.wire_diameter_mm)
    if row is None or "tensile_strength" in stated:
        yield input_of("tensile_strength_mpa", value, stated)
    else:
        yield given("tensile_strength_mpa", value, row.source, row.from_memory)


def wire_and_diameters(
    spring: CompressionSpring | ExtensionSpring | TorsionSpring, stated: Stated, end: str = ""
) -> Iterator[Working]:
    """The wire, and the three diameters and the index of a coil that is as wide at both ends."""
    wire, mean = spring.wire_diameter_mm, spring.mean_diameter_mm
    yield input_of("wire_diameter_mm", wire, stated)
    yield from three_diameters(wire, mean, stated, end)
    yield work(diameters.spring_index, mean, wire)


def three_diameters(wire_mm: float, mean_mm: float, stated: Stated, end: str = "") -> Iterator[Working]:
    """Mean, outside and inside diameter; the one that was measured first. `end` is "_small" or "_large" in a cone."""
    mean, outside, inside = (f"{name}_diameter{end}" for name in ("mean", "outside", "inside"))
    outside_mm, inside_mm = mean_mm + wire_mm, mean_mm - wire_mm
    if outside in stated:
        yield input_of(f"{outside}_mm", outside_mm, stated)
        yield work(diameters.mean_from_outside_mm, outside_mm, wire_mm, figure=f"{mean}_mm")
    elif inside in stated:
        yield input_of(f"{inside}_mm", inside_mm, stated)
        yield work(diameters.mean_from_inside_mm, inside_mm, wire_mm, figure=f"{mean}_mm")
    else:
        yield input_of(f"{mean}_mm", mean_mm, stated)
    if outside not in stated:
        yield work(diameters.outside_diameter_mm, mean_mm, wire_mm, figure=f"{outside}_mm")
    if inside not in stated:
        yield work(diameters.inside_diameter_mm, mean_mm, wire_mm, figure=f"{inside}_mm")


def coils(spring: CompressionSpring | ConicalSpring, stated: Stated) -> Iterator[Working]:
    """Active and total coils: what was counted, and the other from the dead coils of the ends."""
    active, total, ends = spring.active_coils, spring.total_coils, spring.ends
    if "total_coils" in stated and "active_coils" not in stated:
        yield input_of("total_coils", total, stated)
        yield work(geometry.active_coils, total, ends)
    elif "active_coils" in stated and "total_coils" not in stated:
        yield input_of("active_coils", active, stated)
        yield work(geometry.total_coils, active, ends)
    else:
        yield input_of("active_coils", active, stated)
        yield input_of("total_coils", total, stated)
