"""What files of springs and files of spools share: one list under one key, and ids that stand once."""

from __future__ import annotations

from collections.abc import Iterable

from sourcing.files.document import Document, Value
from sourcing.files.findings import Finding, Place, quoted
from sourcing.files.nearest import nearest
from sourcing.files.records import stands_here

KEYS = ("springs", "spools")


def listed(key: str, document: Document) -> tuple[list[Value], list[Finding]]:
    """The list that is all a file has, under its key; empty where it is not there, with what is wrong."""
    wanted = f"{key}: and under it a list of {key}"
    value = document.value
    if value is None:
        return [], [Finding(Place(document.file), "nothing but comments", wanted)]
    if not isinstance(value, dict):
        return [], [Finding(document.start(), stands_here(value), wanted)]
    findings = [
        Finding(document.key_place(value, other), f"the key {quoted(other)}", wanted, nearest(other, [key]))
        for other in value
        if other != key
    ]
    if key not in value:
        return [], findings or [Finding(document.start(), "no keys", wanted)]
    records = value[key]
    if isinstance(records, list) or records is None:
        return records or [], findings
    return [], [*findings, Finding(document.place(value, key), stands_here(records), f"a list of {key}")]


def told_twice(ids: Iterable[tuple[str, Place]], called: str, key: str = "id") -> list[Finding]:
    """That an id, or what serves as one, stands at two places, told at the second of them."""
    first: dict[str, Place] = {}
    findings: list[Finding] = []
    for name, place in ids:
        if name in first:
            other = first[name]
            found = f"{quoted(name)} is the {key} of another {called}, at {other.file}:{other.line}:{other.column}"
            findings.append(Finding(place, found, f"{'an id' if key == 'id' else f'a {key}'} of its own"))
        else:
            first[name] = place
    return findings
