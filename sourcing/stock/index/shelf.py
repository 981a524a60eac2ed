"""A catalogue that can be asked: from its index where that may be believed, from its files where not."""

from __future__ import annotations

import os
import sqlite3
import time
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, replace
from hashlib import blake2b
from pathlib import Path

from sourcing.files.findings import Finding
from sourcing.stock.index import kept, store
from sourcing.stock.index.plain import Plain
from sourcing.stock.index.ranges import Ranges
from sourcing.stock.index.state import FileState, program_key, state_of, unchanged
from sourcing.stock.model import Catalogue
from sourcing.stock.springs_file import SpringsFile


@dataclass(frozen=True, slots=True)
class Shelf:
    """A catalogue without its springs, which are asked for."""

    catalogue: Catalogue
    connection: sqlite3.Connection
    plain: Plain

    def springs_for(self, ranges: Ranges) -> Catalogue:
        """The catalogue with the springs that are worth judging, and how many of the kind are further off."""
        places, further_off = store.at(self.connection, ranges)
        springs = store.springs_at(self.connection, self.plain, places)
        return replace(self.catalogue, springs=springs, further_off=further_off)

    def whole(self) -> Catalogue:
        """The catalogue with all of its springs."""
        return replace(self.catalogue, springs=store.all_springs(self.connection, self.plain))


def open_shelf(path: str | os.PathLike[str]) -> tuple[Shelf, tuple[Finding, ...]]:
    """The catalogue at a path, ready to be asked, and every mistake in it; one with mistakes is not indexed.

    Of an index that has grown old, the files of springs that did not change are taken over.
    """
    name = os.fspath(path)
    folder, key = kept.cache_folder(), _key(name)
    for connection in kept.open_kept(folder, key) if folder is not None else ():
        with suppress(OSError, sqlite3.Error, ValueError, TypeError, KeyError, IndexError):
            index = _index_in(connection)
            if index.is_as_the_files(name):
                rest = index.plain.back(store.whole(connection, "rest"))
                return Shelf(rest, connection, index.plain), ()
            return _read_anew(folder, key, name, index)
        connection.close()
    return _read_anew(folder, key, name, None)


def _key(name: str) -> str:
    """Which catalogue it is, as it is named and from where, and which program reads it."""
    text = "\0".join((os.path.abspath(name), name, program_key()))
    return blake2b(text.encode("utf-8", "surrogateescape"), digest_size=12).hexdigest()


@dataclass(frozen=True, slots=True)
class _Index:
    """A kept index: the files that it was made from as they stood, and when it was begun."""

    connection: sqlite3.Connection
    plain: Plain
    state: list[FileState]
    built_ns: int

    def is_as_the_files(self, name: str) -> bool:
        """Whether the catalogue has the same files as it had, and none of them changed."""
        files = [file for file, _, _ in state_of(name, with_digests=False)]
        return files == [file for file, _, _ in self.state] and unchanged(self.state, self.built_ns)

    def still_good(self, name: str, now: list[FileState]) -> Mapping[str, SpringsFile]:
        """The files of springs whose bytes are as they were, and so are those of what settles their meaning."""
        as_then = {(file, digest) for file, _, digest in self.state}
        same = {file for file, _, digest in now if (file, digest) in as_then}
        settling = {str(Path(name, part)) for part in ("bench.yaml", "materials.yaml")}
        if not os.path.isdir(name) or not same >= settling:
            return {}
        return {read.file: read for read in store.files_read(self.connection, self.plain) if read.file in same}


def _index_in(connection: sqlite3.Connection) -> _Index:
    state = [(file, stat and tuple(stat), digest) for file, stat, digest in store.whole(connection, "state")]
    return _Index(connection, store.plain_of(connection), state, store.whole(connection, "built_ns"))


def _read_anew(folder: Path | None, key: str, name: str, old: _Index | None) -> tuple[Shelf, tuple[Finding, ...]]:
    from sourcing.files.events import collector_off

    built_ns, before = time.time_ns(), _state(name)
    connection = sqlite3.connect(":memory:", uri=True)
    plain = Plain() if old is None else old.plain
    with collector_off():
        rest, mistakes = _fill(connection, plain, name, old, before)
    for part, value in (("rest", plain.of(rest)), ("state", before), ("built_ns", built_ns)):
        store.put(connection, part, value)
    store.put(connection, "tables", plain.tables())
    connection.commit()
    if folder is not None and before and not mistakes and before == _state(name):
        kept.keep_index(connection, folder, key)
    return Shelf(rest, connection, plain), mistakes


def _fill(
    connection: sqlite3.Connection, plain: Plain, name: str, old: _Index | None, now: list[FileState]
) -> tuple[Catalogue, tuple[Finding, ...]]:
    """Put all springs into a new index. Returns the rest of the catalogue, and every mistake in its files."""
    from sourcing.stock.reading import gathered

    store.create(connection)
    if old is None:
        read = gathered(name)
        store.fill(connection, plain, read.files)
    else:
        read = gathered(name, old.still_good(name, now))
        kept.attach(connection, old.connection)
        store.fill(connection, plain, read.files)
    return replace(read.catalogue(), springs=()), read.mistakes()


def _state(name: str) -> list[FileState]:
    """The files as they stand, with their digests; none where that cannot be told."""
    try:
        return state_of(name, with_digests=True)
    except OSError:
        return []
