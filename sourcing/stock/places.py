"""Where each key of a record stands: from a figure back to the line that its keeper wrote."""

from __future__ import annotations

import os
from functools import lru_cache

from sourcing.files.document import Document, Value
from sourcing.files.findings import Mistakes, Place


def places_of(place: Place) -> dict[str, Place]:
    """The places of the values in the record that begins here, by key; none where the file can be read no more."""
    found = _record_at(place)
    return {} if found is None else _places_in(*found)


def place_of_inner(place: Place, key: str, number: int) -> Place:
    """The place of one entry of the list under a key of the record that begins here; the record's where it is gone."""
    found = _record_at(place)
    entries = found[1].get(key) if found is not None and isinstance(found[1], dict) else None
    if found is None or not isinstance(entries, list) or number >= len(entries):
        return place
    return found[0].place(entries, number)


def _record_at(place: Place) -> tuple[Document, Value] | None:
    """The record that begins here, in its file; None where the file can be read no more."""
    document = None if place.file is None else _as_it_stands(place.file)
    if document is None or not isinstance(document.value, dict):
        return None
    if document.start() == place:
        return document, document.value
    for records in document.value.values():
        for number, record in enumerate(records if isinstance(records, list) else ()):
            if isinstance(records, list) and document.place(records, number) == place:
                return document, record
    return None


def told(places: dict[str, Place]) -> dict[str, str]:
    """Places as they are printed.

    >>> told({"rate": Place("drawer.yaml", 5, 20)})
    {'rate': 'drawer.yaml:5:20'}
    """
    return {key: f"{place.file}:{place.line}:{place.column}" for key, place in places.items()}


def _places_in(document: Document, record: Value) -> dict[str, Place]:
    return {key: document.place(record, key) for key in record} if isinstance(record, dict) else {}


def _as_it_stands(file: str) -> Document | None:
    try:
        stands = os.stat(file)
    except OSError:
        return None
    return _loaded(file, (stands.st_dev, stands.st_ino, stands.st_size, stands.st_mtime_ns))


@lru_cache(8)
def _loaded(file: str, _stands: tuple[int, ...]) -> Document | None:
    """A file, read once for as long as it stays the same."""
    from sourcing.files.events import load

    try:
        return load(file)[0]
    except Mistakes:
        return None
