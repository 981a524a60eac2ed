"""An extension spring in a catalogue: its record, whether its figures agree, and the spring it makes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, ClassVar

from pydantic import Field

from sourcing.files.fields import Force, Length, one_of, read_by
from sourcing.files.findings import Finding
from sourcing.files.records import Read
from sourcing.need.kinds import HooksField, keys_of_others
from sourcing.quantities import show_force, show_length
from sourcing.springs.extension import body_length_mm
from sourcing.springs.initial_tension import tension_of
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.stock.coiled import (
    OF_CONES,
    CoiledRecord,
    mean_diameter_mm,
    one_diameter,
    rate_warnings,
    room_inside,
    some_coils,
    strength_mpa,
)

MOST_COILS_OF_HOOKS = 1.0
"""Two hooks bend like at most one coil (Machinery's Handbook, 31st ed., p. 328)."""

TornHooks = Annotated[
    int | None, read_by(one_of({"0": 0, "1": 1, "2": 2}, "number of torn hooks")), Field(description="0, 1 or 2")
]


class ExtensionRecord(CoiledRecord):
    """An extension spring as it is written."""

    called = "an extension spring"
    elsewhere: ClassVar[Mapping[str, str]] = {
        **keys_of_others("extension"),
        **OF_CONES,
        "pull_to_fit": "the need of an extension spring",
    }

    outside_diameter: Length = None
    mean_diameter: Length = None
    inside_diameter: Length = None
    free_length: Length
    hooks: HooksField
    initial_tension: Force = None
    torn_hooks: TornHooks = None


ExtensionRead = Read[ExtensionRecord]


def findings(read: ExtensionRead) -> list[Finding]:
    """All that does not agree in a record."""
    checks = (one_diameter, room_inside, some_coils, _active_coils, _longer_than_body, _hooks_to_tear)
    return [finding for check in checks for finding in check(read)]


def warnings(read: ExtensionRead, spring: ExtensionSpring) -> list[Finding]:
    """Doubt about the rate, and an initial tension that its coils cannot hold."""
    tension = tension_of(spring)
    found = rate_warnings(read, spring)
    if tension.stated and tension.most_n is not None and tension.likely_n > tension.most_n:
        expected = (
            f"at most the {show_force(tension.most_n)} that coils of index {spring.spring_index:.3g} can hold "
            "(the greatest of the sources); the tension or a dimension may be wrong"
        )
        stated = f"an initial tension of {show_force(tension.likely_n)}"
        found.append(Finding(read.place("initial_tension"), stated, expected))
    return found


def made(record: ExtensionRecord) -> ExtensionSpring | None:
    """The spring that a record describes; None where a figure it takes is missing."""
    wire, free_length, material = record.wire_diameter, record.free_length, record.material
    mean, both, hooks = mean_diameter_mm(record), _active_and_total_coils(record), record.hooks
    if wire is None or mean is None or free_length is None or both is None or hooks is None or material is None:
        return None
    return ExtensionSpring(
        wire_diameter_mm=wire,
        mean_diameter_mm=mean,
        free_length_mm=free_length,
        active_coils=both[0],
        total_coils=both[1],
        hooks=hooks,
        material=material,
        shear_modulus_mpa=record.shear_modulus or material.shear_modulus_mpa,
        elastic_modulus_mpa=record.elastic_modulus or material.elastic_modulus_mpa,
        tensile_strength_mpa=strength_mpa(record),
        initial_tension_n=record.initial_tension,
        torn_hooks=record.torn_hooks or 0,
        hand=record.hand,
    )


def _active_and_total_coils(record: ExtensionRecord) -> tuple[float, float] | None:
    """Both counts; where one is written it is both, for all coils of the body act (EN 13906-2)."""
    coils = [count for count in (record.active_coils, record.total_coils) if count is not None]
    return (coils[0], coils[-1]) if coils else None


def _active_coils(read: ExtensionRead) -> Iterator[Finding]:
    active, total = read.record.active_coils, read.record.total_coils
    if active is not None and total is not None and active > total + MOST_COILS_OF_HOOKS:
        found = f"{read.text('active_coils')} active coils of {read.text('total_coils')} in the body"
        expected = f"at most {total + MOST_COILS_OF_HOOKS:g}: the hooks bend like one coil more at most"
        yield Finding(read.place("active_coils"), found, expected)


def _longer_than_body(read: ExtensionRead) -> Iterator[Finding]:
    record, both = read.record, _active_and_total_coils(read.record)
    if record.wire_diameter is None or record.free_length is None or both is None:
        return
    body_mm = body_length_mm(both[1], record.wire_diameter)
    if record.free_length <= body_mm and record.hooks is not Hooks.THREADED_PLUG:
        found = f"{read.text('free_length')} is no longer than the body with its coils closed"
        expected = f"the length between the insides of the hooks, more than {show_length(body_mm)}"
        yield Finding(read.place("free_length"), found, expected)


def _hooks_to_tear(read: ExtensionRead) -> Iterator[Finding]:
    if read.record.torn_hooks and read.record.hooks is Hooks.THREADED_PLUG:
        found = f"{read.text('torn_hooks')} torn hooks of a spring with threaded plugs"
        yield Finding(read.place("torn_hooks"), found, "hooks that are bent from its wire, or no torn_hooks")
