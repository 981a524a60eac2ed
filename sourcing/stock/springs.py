"""A file of springs made into stock springs."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from sourcing.files.document import Document, Value
from sourcing.files.findings import Finding, Place
from sourcing.files.records import Read, read_record
from sourcing.need.kinds import kind_meant
from sourcing.need.other_springs import refused_kind
from sourcing.springs.model import Spring
from sourcing.stock import compression, conical, extension, torsion
from sourcing.stock.coiled import rate_warnings
from sourcing.stock.lists import listed
from sourcing.stock.model import StockSpring
from sourcing.stock.shelf import ShelfRecord
from sourcing.stock.springs_file import SpringsFile


@dataclass(frozen=True, slots=True)
class _Kind:
    """How a kind of spring is read: its record, what must agree in it, what gives doubt, what it makes."""

    record: type[ShelfRecord]
    findings: Callable[[Read[Any]], list[Finding]]
    warnings: Callable[[Read[Any], Any], list[Finding]]
    made: Callable[[Any], Spring | None]


_KINDS = {
    "compression": _Kind(compression.CompressionRecord, compression.findings, rate_warnings, compression.made),
    "extension": _Kind(extension.ExtensionRecord, extension.findings, extension.warnings, extension.made),
    "conical": _Kind(conical.ConicalRecord, conical.findings, rate_warnings, conical.made),
    "torsion": _Kind(torsion.TorsionRecord, torsion.findings, rate_warnings, torsion.made),
}


def springs_in(document: Document, settled: Mapping[str, object]) -> SpringsFile:
    """All that a file of springs holds, and all that is wrong with it."""
    read = SpringsFile(document.file)
    records, read.findings = listed("springs", document)
    for number, value in enumerate(records):
        _add_record(read, value, document.place(records, number), document, settled)
    return read


def _add_record(
    read: SpringsFile, value: Value, place: Place, document: Document, settled: Mapping[str, object]
) -> None:
    if other := _other_build(value, document):
        read.findings.append(other)
        return
    kind = _KINDS[(kind_meant(value.get("kind")) if isinstance(value, dict) else None) or "compression"]
    record, wrong = read_record(kind.record, value, place, document, settled)
    read.findings += wrong
    if record is None:
        return
    if record.record.id is not None:
        read.ids.append((record.record.id, record.place("id")))
    more = kind.findings(record)
    read.findings += more
    if wrong or more:
        return
    if spring := kind.made(record.record):
        read.warnings += kind.warnings(record, spring)
        read.springs.append(_stock_spring(record.record, spring, place))


def _other_build(value: Value, document: Document) -> Finding | None:
    """That a record's kind names a spring which is no coil spring of round wire."""
    kind = value.get("kind") if isinstance(value, dict) else None
    refused = refused_kind(kind) if isinstance(kind, str) else None
    return Finding(document.place(value, "kind"), *refused) if isinstance(value, dict) and refused else None


def _stock_spring(record: ShelfRecord, spring: Spring, place: Place) -> StockSpring:
    return StockSpring(
        id=record.id or "",
        spring=spring,
        stated_rate=record.rate,
        grade=record.grade,
        on_hand=record.on_hand or 0,
        least=record.least,
        shelf=record.place,
        seller=record.seller,
        price=record.price,
        pack=record.pack or 1,
        lead_days=record.lead_days,
        note=record.note,
        place=place,
    )
