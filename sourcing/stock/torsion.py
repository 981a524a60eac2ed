"""A torsion spring in a catalogue: its record, whether its figures agree, and the spring it makes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, ClassVar

from pydantic import BeforeValidator

from sourcing.files.fields import AngleFromZero, AngularRate, Length
from sourcing.files.findings import Finding
from sourcing.files.records import Read, Record
from sourcing.need.kinds import BodiesField, LegShapeField, keys_of_others, length_alone
from sourcing.quantities import show_length
from sourcing.springs.model import Leg, LegShape, TorsionSpring
from sourcing.springs.torsion import wound_body_length_mm
from sourcing.stock.coiled import (
    OF_CONES,
    CoiledRecord,
    mean_diameter_mm,
    one_diameter,
    room_inside,
    some_coils,
    strength_mpa,
)

SHORTEST_BODY = 0.97
"""A body measured this much shorter than its coils touching is still within caliper and wire."""


class LegRecord(Record):
    """A leg as it is written: from where it leaves the coil to where it is loaded."""

    called = "a leg"

    length: Length
    shape: LegShapeField = None


class TorsionRecord(CoiledRecord):
    """A torsion spring as it is written."""

    called = "a torsion spring"
    elsewhere: ClassVar[Mapping[str, str]] = {
        **keys_of_others("torsion"),
        **OF_CONES,
        "free_length": "a compression spring",
    }

    rate: AngularRate = None
    outside_diameter: Length = None
    mean_diameter: Length = None
    inside_diameter: Length = None
    leg_1: Annotated[LegRecord | None, BeforeValidator(length_alone)] = None
    leg_2: Annotated[LegRecord | None, BeforeValidator(length_alone)] = None
    free_angle: AngleFromZero = None
    bodies: BodiesField = None
    body_length: Length = None


TorsionRead = Read[TorsionRecord]


def findings(read: TorsionRead) -> list[Finding]:
    """All that does not agree in a record."""
    checks = (one_diameter, room_inside, some_coils, _coils_agree, _hand_of_a_double, _body_holds_its_coils)
    return [finding for check in checks for finding in check(read)]


def made(record: TorsionRecord) -> TorsionSpring | None:
    """The spring that a record describes; None where a figure it takes is missing."""
    wire, mean, coils, material = record.wire_diameter, mean_diameter_mm(record), _coils(record), record.material
    if wire is None or mean is None or coils is None or material is None:
        return None
    return TorsionSpring(
        wire_diameter_mm=wire,
        mean_diameter_mm=mean,
        active_coils=coils,
        material=material,
        elastic_modulus_mpa=record.elastic_modulus or material.elastic_modulus_mpa,
        tensile_strength_mpa=strength_mpa(record),
        leg_1=_leg(record.leg_1),
        leg_2=_leg(record.leg_2),
        free_angle_deg=record.free_angle,
        hand=record.hand,
        bodies=record.bodies or 1,
        body_length_mm=record.body_length,
    )


def _coils(record: TorsionRecord) -> float | None:
    return record.active_coils if record.total_coils is None else record.total_coils


def _leg(record: LegRecord | None) -> Leg | None:
    if record is None or record.length is None:
        return None
    return Leg(record.length, record.shape or LegShape.STRAIGHT)


def _coils_agree(read: TorsionRead) -> Iterator[Finding]:
    active, total = read.record.active_coils, read.record.total_coils
    if active is not None and total is not None and active != total:
        found = f"{read.text('active_coils')} active coils of {read.text('total_coils')} in all"
        expected = "one number of coils: all of a body's act, and the legs are counted by their lengths"
        yield Finding(read.place("active_coils"), found, expected)


def _hand_of_a_double(read: TorsionRead) -> Iterator[Finding]:
    if read.record.bodies == 2 and read.record.hand is not None:
        found = f"hand: {read.text('hand')} of a double torsion spring"
        yield Finding(read.place("hand"), found, "no hand: its two bodies have both")


def _body_holds_its_coils(read: TorsionRead) -> Iterator[Finding]:
    record, coils = read.record, _coils(read.record)
    if record.body_length is None or record.wire_diameter is None or coils is None:
        return
    touching = (record.bodies or 1) * wound_body_length_mm(record.wire_diameter, coils, 0.0)
    if record.body_length < SHORTEST_BODY * touching:
        found = f"{read.text('body_length')} is shorter than its coils touching each other"
        yield Finding(read.place("body_length"), found, f"a body of {show_length(touching)} or longer")
