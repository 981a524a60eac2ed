"""What the records of compression springs of any shape share: their free length, their ends, their coils."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, ClassVar, TypeVar

from pydantic import BeforeValidator

from sourcing.files.fields import Length
from sourcing.files.findings import Finding
from sourcing.files.records import Read
from sourcing.need.kinds import EndsField, end_alone, keys_of_others
from sourcing.springs import geometry
from sourcing.stock.coiled import CoiledRecord, some_coils
from sourcing.stock.end_pieces import EndRecord


class PressedRecord(CoiledRecord):
    """A compression spring of any shape as it is written, but for its diameters."""

    elsewhere: ClassVar[Mapping[str, str]] = keys_of_others("compression")

    free_length: Length
    ends: EndsField
    end_1: Annotated[EndRecord | None, BeforeValidator(end_alone)] = None
    end_2: Annotated[EndRecord | None, BeforeValidator(end_alone)] = None


P = TypeVar("P", bound=PressedRecord)


def active_and_total_coils(record: PressedRecord) -> tuple[float, float] | None:
    """Both counts; where one is written, the other follows from the dead coils of the ends."""
    active, total, ends = record.active_coils, record.total_coils, record.ends
    if active is not None and total is not None:
        return active, total
    if ends is None:
        return None
    if active is not None:
        return active, geometry.total_coils(active, ends)
    return None if total is None else (geometry.active_coils(total, ends), total)


def coils(read: Read[P]) -> Iterator[Finding]:
    """That the counts of coils go with each other and with the ends."""
    record = read.record
    yield from some_coils(read)
    if (both := active_and_total_coils(record)) is None:
        return
    active, total = both
    if active > total:
        found = f"{read.text('active_coils')} active coils of {read.text('total_coils')} in all"
        yield Finding(read.place("active_coils"), found, "no more active coils than there are in all")
    elif active <= 0 and record.ends is not None:
        dead = geometry.dead_coils(record.ends)
        found = f"{read.text('total_coils')} coils, of which {dead:g} at {record.ends} ends do not act"
        yield Finding(read.place("total_coils"), found, f"more than {dead:g} coils")
