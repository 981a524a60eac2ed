"""A catalogue that can be asked: from its index where that may be believed, from its files where not."""

from __future__ import annotations

import os
import sqlite3
import time
from contextlib import suppress
from dataclasses import dataclass, replace
from hashlib import blake2b
from pathlib import Path
from typing import Any

from sourcing.files.findings import Finding
from sourcing.stock.index import store
from sourcing.stock.index.plain import Plain
from sourcing.stock.index.ranges import Ranges
from sourcing.stock.index.state import FileState, program_key, state_of, unchanged
from sourcing.stock.model import Catalogue


@dataclass(frozen=True, slots=True)
class Shelf:
    """A catalogue without its springs, which are asked for."""

    catalogue: Catalogue
    connection: sqlite3.Connection
    plain: Plain

    def springs_for(self, ranges: Ranges) -> Catalogue:
        """The catalogue with the springs that are worth judging, and how many of the kind are further off."""
        places, further_off = store.numbers(self.connection, ranges)
        springs = store.springs_at(self.connection, self.plain, places)
        return replace(self.catalogue, springs=springs, further_off=further_off)


def open_shelf(path: str | os.PathLike[str]) -> tuple[Shelf, tuple[Finding, ...]]:
    """The catalogue at a path, ready to be asked, and every mistake in it; one with mistakes is not indexed."""
    name = os.fspath(path)
    folder, key = store.cache_folder(), _key(name)
    if folder is not None and (kept := _believed(folder, key, name)) is not None:
        return kept, ()
    return _read_anew(folder, key, name)


def _key(name: str) -> str:
    """Which catalogue it is, as it is named and from where, and which program reads it."""
    text = "\0".join((os.path.abspath(name), name, program_key()))
    return blake2b(text.encode("utf-8", "surrogateescape"), digest_size=12).hexdigest()


def _believed(folder: Path, key: str, name: str) -> Shelf | None:
    for connection in store.open_kept(folder, key):
        with suppress(OSError, sqlite3.Error, ValueError, TypeError, KeyError, IndexError):
            state = [_file_state(each) for each in store.whole(connection, "state")]
            same_names = [file for file, _, _ in state] == [file for file, _, _ in state_of(name, with_digests=False)]
            if same_names and unchanged(state, store.whole(connection, "built_ns")):
                plain = store.materials_of(connection)
                return Shelf(plain.back(store.whole(connection, "rest")), connection, plain)
        connection.close()
    return None


def _file_state(plain: Any) -> FileState:
    file, stat, digest = plain
    return file, None if stat is None else tuple(stat), digest


def _read_anew(folder: Path | None, key: str, name: str) -> tuple[Shelf, tuple[Finding, ...]]:
    from sourcing.stock.reading import inspect_catalogue

    built_ns = time.time_ns()
    before = _state(name)
    catalogue, mistakes = inspect_catalogue(name)
    connection = sqlite3.connect(":memory:")
    store.fill(connection, catalogue, before or [], built_ns)
    if folder is not None and before and not mistakes and before == _state(name):
        store.keep(connection, folder, key)
    return Shelf(replace(catalogue, springs=()), connection, store.materials_of(connection)), mistakes


def _state(name: str) -> list[FileState] | None:
    try:
        return state_of(name, with_digests=True)
    except OSError:
        return None
