"""A need as it is written: one record a kind that this version works out. Checks of several keys: checks.py."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, ClassVar, Generic, TypeVar

from pydantic import BeforeValidator, Field

from sourcing import quantities as q
from sourcing.files.fields import (
    CountFromOne,
    Days,
    Length,
    Temperature,
    Text,
    WantedDirection,
    WantedForce,
    WantedLength,
    WantedTorque,
    WantedWireDiameter,
    one_of,
    read_by,
)
from sourcing.files.records import Record
from sourcing.need.kinds import (
    BendField,
    BodiesField,
    EndsField,
    EndShapeField,
    HandField,
    HooksField,
    KindField,
    LegShapeField,
    MaterialField,
    end_alone,
    keys_of_others,
    length_alone,
)
from sourcing.quantities import QuantityError, Wanted

SURROUNDINGS = ("indoor-dry", "damp", "wet", "salt", "food")
DUTIES = ("ordinary", "guarded")


def _working_length(text: str) -> Wanted:
    wanted = q.wanted_length_mm(text)
    if wanted.nominal is None:
        raise QuantityError(f"{text} is no one length", "the length at which the force is wanted, as in 24 mm ± 0.5 mm")
    return wanted


def _end_length(text: str) -> Wanted:
    wanted = q.wanted_length_mm(text)
    if wanted.nominal is None:
        raise QuantityError(f"{text} is no one length", "the length from the coil to the tip, as in 4 mm ± 0.5 mm")
    return wanted


def _bore(text: str) -> Wanted:
    wanted = q.wanted_length_mm(text)
    if wanted.smallest is None:
        raise QuantityError(
            f"{text} says nothing of how narrow the bore can be",
            "the bore, or the narrowest it can be: that is what the spring must go into",
            (text.replace("<=", ">="),),
        )
    return wanted


def _rod(text: str) -> Wanted:
    wanted = q.wanted_length_mm(text)
    if wanted.largest is None:
        raise QuantityError(
            f"{text} says nothing of how thick the rod can be",
            "the rod, or the thickest it can be: that is what the spring must go over",
            (text.replace(">=", "<="),),
        )
    return wanted


def _width(text: str) -> Wanted:
    wanted = q.wanted_length_mm(text)
    if wanted.smallest is None:
        raise QuantityError(
            f"{text} says nothing of how narrow the room can be",
            "the width, or the least it can be: that is what the body must go into, wound up",
            (text.replace("<=", ">="),),
        )
    return wanted


def _working_angle(text: str) -> Wanted:
    if text.lstrip().startswith(("-", "−")):
        raise QuantityError(
            f"{text} would unwind the spring, loaded against its hand",
            "an angle wound up from free, above zero; what turns the other way wants a spring of the other hand",
        )
    wanted = q.wanted_angle_deg(text)
    if wanted.nominal is None:
        raise QuantityError(f"{text} is no one angle", "the angle at which the torque is wanted, as in 60 deg ± 3 deg")
    return wanted


def _cycles(text: str) -> float:
    cycles = q.above_zero(q.number(text), text, "a number of cycles")
    if not cycles.is_integer():
        raise QuantityError(f"{text} is not whole", "a whole number of cycles, as in 20000")
    return cycles


def _as_list(value: object) -> object:
    return [value] if isinstance(value, str) else value


Bore = Annotated[Wanted | None, read_by(_bore), Field(description="a length, as in 11 mm")]
Rod = Annotated[Wanted | None, read_by(_rod), Field(description="a length, as in 6 mm")]
Surrounding = Annotated[str | None, read_by(one_of({word: word for word in SURROUNDINGS}, "word for surroundings"))]


class PocketRecord(Record):
    """The space the spring lives in."""

    called = "a pocket"
    elsewhere: ClassVar[Mapping[str, str]] = {
        "large_end": "a conical spring",
        "small_end": "a conical spring",
        "width": "a torsion spring",
    }

    bore: Bore = None
    rod: Rod = None
    depth: WantedLength = None


class PocketEndRecord(Record):
    """Where one end of a conical spring sits."""

    called = "an end of a pocket"

    bore: Bore = None
    rod: Rod = None


class ConicalPocketRecord(PocketRecord):
    """The space a conical spring lives in: straight past both of its ends, or each end's own."""

    elsewhere: ClassVar[Mapping[str, str]] = {"width": "a torsion spring"}

    large_end: PocketEndRecord | None = None
    small_end: PocketEndRecord | None = None


PocketT = TypeVar("PocketT", bound=Record)
PressedPocketT = TypeVar("PressedPocketT", bound=PocketRecord)


class WorkingRecord(Record):
    """A working point of a compression spring."""

    called = "a working point"
    elsewhere: ClassVar[Mapping[str, str]] = {"angle": "a torsion spring", "torque": "a torsion spring"}

    length: Annotated[Wanted | None, read_by(_working_length), Field(description="a length, as in 24 mm")]
    force: WantedForce = None


class AnyKindNeed(Record, Generic[PocketT]):
    """What a need of any kind of spring has."""

    called = "a need"

    job: Text
    kind: KindField
    what: Text = None
    duty: Annotated[
        str | None,
        read_by(one_of({duty: duty for duty in DUTIES}, "kind of duty")),
        Field(description="ordinary or guarded"),
    ] = None
    pocket: PocketT | None = None
    hand: HandField = None
    cycles: Annotated[float | None, read_by(_cycles), Field(description="a number of cycles, as in 20000")] = None
    surroundings: Annotated[
        list[Surrounding] | None,
        BeforeValidator(_as_list),
        Field(description="a list of words, as in [indoor-dry]"),
    ] = None
    temperature: Temperature = None
    quantity: CountFromOne = None
    needed_within: Days = None
    material: MaterialField = None
    wire_diameter: WantedWireDiameter = None
    note: Text = None


class WantedEndRecord(Record):
    """An end that is wanted to hook into a part."""

    called = "an end"

    shape: EndShapeField
    length: Annotated[Wanted | None, read_by(_end_length), Field(description="a length, as in 4 mm")]
    angle: BendField = None


class PressedNeed(AnyKindNeed[PressedPocketT], Generic[PressedPocketT]):
    """A need of a compression spring of any shape."""

    elsewhere: ClassVar[Mapping[str, str]] = keys_of_others("compression")

    working: Annotated[
        list[WorkingRecord | None] | None,
        Field(description="a list of working points, as in  - {length: 24 mm, force: 9 N}"),
    ] = None
    free_length: WantedLength = None
    ends: EndsField = None
    end_1: Annotated[WantedEndRecord | None, BeforeValidator(end_alone)] = None
    end_2: Annotated[WantedEndRecord | None, BeforeValidator(end_alone)] = None


class CompressionNeed(PressedNeed[PocketRecord]):
    """A need of a cylindrical compression spring."""


class ConicalNeed(PressedNeed[ConicalPocketRecord]):
    """A need of a conical compression spring."""


class PulledPocketRecord(Record):
    """The space an extension spring lives in: a bore round its body."""

    called = "a pocket"
    elsewhere: ClassVar[Mapping[str, str]] = {
        "rod": "a compression or a torsion spring",
        "depth": "a compression spring",
        "large_end": "a conical spring",
        "small_end": "a conical spring",
        "width": "a torsion spring",
    }

    bore: Bore = None


class PulledRecord(WorkingRecord):
    """A working point of an extension spring: a length between the insides of the hooks."""


class ExtensionNeed(AnyKindNeed[PulledPocketRecord]):
    """A need of an extension spring; lengths are between the insides of the hooks."""

    elsewhere: ClassVar[Mapping[str, str]] = {**keys_of_others("extension"), "torn_hooks": "a spring in a catalogue"}

    working: Annotated[
        list[PulledRecord | None] | None,
        Field(description="a list of working points, as in  - {length: 52 mm, force: 9 N}"),
    ] = None
    free_length: WantedLength = None
    hooks: HooksField = None
    initial_tension: WantedForce = None
    pull_to_fit: Length = None


class TorsionPocketRecord(Record):
    """The space a torsion spring lives in."""

    called = "a pocket"
    elsewhere: ClassVar[Mapping[str, str]] = {
        "depth": "a compression spring",
        "large_end": "a conical spring",
        "small_end": "a conical spring",
    }

    rod: Rod = None
    bore: Bore = None
    width: Annotated[Wanted | None, read_by(_width), Field(description="a length, as in 12 mm")] = None


class TurnedRecord(Record):
    """A working point of a torsion spring."""

    called = "a working point"
    elsewhere: ClassVar[Mapping[str, str]] = {"length": "a compression spring", "force": "a compression spring"}

    angle: Annotated[Wanted | None, read_by(_working_angle), Field(description="an angle, as in 60 deg")]
    torque: WantedTorque = None


class WantedLegRecord(Record):
    """A leg that is wanted."""

    called = "a leg"

    length: WantedLength
    shape: LegShapeField = None


class TorsionNeed(AnyKindNeed[TorsionPocketRecord]):
    """A need of a torsion spring."""

    elsewhere: ClassVar[Mapping[str, str]] = {**keys_of_others("torsion"), "free_length": "a compression spring"}

    working: Annotated[
        list[TurnedRecord | None] | None,
        Field(description="a list of working points, as in  - {angle: 60 deg, torque: 280 N*mm}"),
    ] = None
    leg_1: Annotated[WantedLegRecord | None, BeforeValidator(length_alone)] = None
    leg_2: Annotated[WantedLegRecord | None, BeforeValidator(length_alone)] = None
    free_angle: WantedDirection = None
    bodies: BodiesField = None


AnyPressedNeed = CompressionNeed | ConicalNeed
AnyNeed = AnyPressedNeed | ExtensionNeed | TorsionNeed
RECORD_OF: Mapping[str | None, type[AnyNeed]] = {
    "conical": ConicalNeed,
    "extension": ExtensionNeed,
    "torsion": TorsionNeed,
}
"""The record of a kind; of any other, `CompressionNeed`."""
