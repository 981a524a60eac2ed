"""A need file made into a `Need`. Nothing slow is imported before a file is read."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, TypedDict

from sourcing.files.findings import Finding, Mistakes, Place, in_order, quoted
from sourcing.materials.model import NO_MATERIALS, OwnMaterials

if TYPE_CHECKING:
    from sourcing.files.document import Document, Value
    from sourcing.files.records import Read
    from sourcing.need.model import Need, Pocket, PocketEnd, TurnedPoint, WantedEnd, WantedLeg, WorkingPoint
    from sourcing.need.records import (
        AnyNeed,
        AnyPressedNeed,
        ExtensionNeed,
        PocketEndRecord,
        PocketRecord,
        TorsionNeed,
        WantedEndRecord,
        WantedLegRecord,
        WorkingRecord,
    )
    from sourcing.quantities import Wanted
    from sourcing.springs.model import Ends, Hooks


def read_need(path: str | os.PathLike[str], own: OwnMaterials = NO_MATERIALS) -> Need:
    """The need that a file holds; it may name one of the keeper's `own` materials. Raises `Mistakes` with all wrong."""
    from sourcing.files.events import load

    document, findings = load(os.fspath(path))
    if document is None:
        raise Mistakes(in_order(findings))
    need, more = _need_in(document, own)
    if need is None or findings or more:
        raise Mistakes(in_order(findings, more))
    return need


def _need_in(document: Document, own: OwnMaterials) -> tuple[Need | None, list[Finding]]:
    from sourcing.files.records import read_record
    from sourcing.need.checks import need_findings
    from sourcing.need.kinds import kind_meant, settled
    from sourcing.need.records import RECORD_OF, CompressionNeed

    if refusal := _no_need(document):
        need = _guarded(document)
        return need, [] if need else [refusal]
    kind = kind_meant(document.value.get("kind")) if isinstance(document.value, dict) else None
    record = RECORD_OF.get(kind, CompressionNeed)
    read, findings = read_record(record, document.value, document.start(), document, settled(own))
    if read is None:
        return None, findings
    findings += need_findings(read)
    return (None if findings else _made(read)), findings


def _no_need(document: Document) -> Finding | None:
    """That the file is no need at all, or one of a spring of another build."""
    value = document.value
    if value is None:
        return Finding(Place(document.file), "nothing but comments", "a need, with job and kind first")
    if not isinstance(value, dict):
        return None
    if other := next((key for key in ("springs", "spools") if key in value), None):
        return Finding(document.key_place(value, other), f"a list of {other}", "a need, with job and kind first")
    return _other_build(document, value)


def _other_build(document: Document, value: dict[str, Value]) -> Finding | None:
    """That the need wants a spring which is no coil spring of round wire: its kind says so, or plainly its words."""
    from sourcing.need.other_springs import COIL_SPRINGS_ONLY, other_thing, refused_kind

    kind, what = value.get("kind"), value.get("what")
    if isinstance(kind, str) and (refused := refused_kind(kind)):
        return Finding(document.place(value, "kind"), *refused)
    if isinstance(what, str) and (called := other_thing(what)):
        return Finding(document.place(value, "what"), f"{quoted(what)} is {called}", COIL_SPRINGS_ONLY)
    return None


def _guarded(document: Document) -> Need | None:
    """The words alone of a need whose duty is guarded: it has its answer, whatever kind of spring it wants."""
    from sourcing.need.model import Need
    from sourcing.safety import guarded

    value = document.value
    if not isinstance(value, dict):
        return None
    job, kind, what, note, duty = (
        text if isinstance(text := value.get(key), str) else None for key in ("job", "kind", "what", "note", "duty")
    )
    guard = guarded([text for text in (job, what, note) if text], duty)
    if guard is None or guard.asks or job is None or kind is None:
        return None
    return Need(job=job, kind=kind, what=what, note=note, duty=duty, place=document.start())


def _made(read: Read[AnyNeed]) -> Need:
    from sourcing.need.model import Need
    from sourcing.need.records import ExtensionNeed, TorsionNeed

    record = read.record
    assert record.job is not None
    assert record.kind is not None
    match record:
        case TorsionNeed():
            own, order = _turned(record)
        case ExtensionNeed():
            own, order = _pulled(record)
        case _:
            own, order = _pressed(record)
    return Need(
        job=record.job,
        kind=record.kind,
        what=record.what,
        duty=record.duty,
        hand=record.hand,
        cycles=record.cycles,
        surroundings=tuple(dict.fromkeys(word for word in record.surroundings or () if word)),
        temperature_c=record.temperature,
        quantity=record.quantity or 1,
        needed_within_days=record.needed_within,
        material=record.material,
        wire_diameter_mm=record.wire_diameter,
        note=record.note,
        place=read.place(),
        places=dict(_places(read, order)),
        **own,
    )


class _OfKind(TypedDict, total=False):
    """What a need of one kind has beside what every need has."""

    pocket: Pocket
    working: tuple[WorkingPoint, ...]
    free_length_mm: Wanted | None
    ends: Ends | None
    hooks: Hooks | None
    initial_tension_n: Wanted | None
    pull_to_fit_mm: float | None
    turned: tuple[TurnedPoint, ...]
    leg_1: WantedLeg | None
    leg_2: WantedLeg | None
    free_angle_deg: Wanted | None
    bodies: int | None
    end_1: WantedEnd | None
    end_2: WantedEnd | None


def _pressed(record: AnyPressedNeed) -> tuple[_OfKind, list[int]]:
    """What a need of a compression spring has, and its working points' numbers in the file, longest length first."""
    working, order = _working(record.working or ())
    pocket = _pocket(record.pocket)
    own = _OfKind(
        pocket=pocket,
        working=working,
        free_length_mm=record.free_length,
        ends=record.ends,
        end_1=_end(record.end_1),
        end_2=_end(record.end_2),
    )
    return own, order


def _pulled(record: ExtensionNeed) -> tuple[_OfKind, list[int]]:
    """What a need of an extension spring has, and its working points' numbers in the file, longest length first."""
    from sourcing.need.model import Pocket

    working, order = _working(record.working or ())
    own = _OfKind(
        pocket=Pocket() if record.pocket is None else Pocket(record.pocket.bore),
        working=working,
        free_length_mm=record.free_length,
        hooks=record.hooks,
        initial_tension_n=record.initial_tension,
        pull_to_fit_mm=record.pull_to_fit,
    )
    return own, order


def _working(points: Sequence[WorkingRecord | None]) -> tuple[tuple[WorkingPoint, ...], list[int]]:
    """The working points from the longest length to the shortest, and their numbers in the file."""
    from sourcing.need.model import WorkingPoint

    numbered = [
        (number, WorkingPoint(point.length, point.force))
        for number, point in enumerate(points)
        if point is not None and point.length is not None
    ]
    numbered.sort(key=lambda one: -one[1].at_mm)
    return tuple(point for _, point in numbered), [number for number, _ in numbered]


def _turned(record: TorsionNeed) -> tuple[_OfKind, list[int]]:
    """What a need of a torsion spring has, and its working points' numbers in the file, smallest angle first."""
    from sourcing.need.model import Pocket, TurnedPoint

    numbered = [
        (number, TurnedPoint(point.angle, point.torque))
        for number, point in enumerate(record.working or ())
        if point is not None and point.angle is not None
    ]
    numbered.sort(key=lambda one: one[1].at_deg)
    pocket = record.pocket
    own = _OfKind(
        pocket=Pocket() if pocket is None else Pocket(pocket.bore, pocket.rod, width_mm=pocket.width),
        turned=tuple(point for _, point in numbered),
        leg_1=_leg(record.leg_1),
        leg_2=_leg(record.leg_2),
        free_angle_deg=record.free_angle,
        bodies=record.bodies,
    )
    return own, [number for number, _ in numbered]


def _leg(record: WantedLegRecord | None) -> WantedLeg | None:
    from sourcing.need.model import WantedLeg

    return None if record is None or record.length is None else WantedLeg(record.length, record.shape)


def _end(record: WantedEndRecord | None) -> WantedEnd | None:
    from sourcing.need.model import WantedEnd
    from sourcing.springs.end_pieces import USUAL_ANGLE_DEG

    if record is None or record.shape is None or record.length is None:
        return None
    angle = USUAL_ANGLE_DEG[record.shape] if record.angle is None else record.angle
    return WantedEnd(record.shape, record.length, angle)


def _pocket(record: PocketRecord | None) -> Pocket:
    from sourcing.need.model import Pocket
    from sourcing.need.records import ConicalPocketRecord

    if record is None:
        return Pocket()
    cone = isinstance(record, ConicalPocketRecord)
    large, small = (record.large_end, record.small_end) if cone else (None, None)
    return Pocket(record.bore, record.rod, record.depth, _pocket_end(large), _pocket_end(small))


def _pocket_end(record: PocketEndRecord | None) -> PocketEnd | None:
    from sourcing.need.model import PocketEnd

    return None if record is None else PocketEnd(record.bore, record.rod)


def _places(read: Read[AnyNeed], order: Sequence[int]) -> Iterator[tuple[str, Place]]:
    """Where each key stands; working points are numbered as in the need, not as in the file."""
    for path in _paths(read.raw):
        match path:
            case "working", int() as number, *rest:
                key = ("working", order.index(number), *rest)
            case _:
                key = path
        yield ".".join(str(step) for step in key), read.place(*path)


def _paths(value: Value, path: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    if path:
        yield path
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from _paths(inner, (*path, key))
    elif isinstance(value, list):
        for number, inner in enumerate(value):
            yield from _paths(inner, (*path, number))
