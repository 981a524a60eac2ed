"""One catalogue in SQLite: made from what was read, kept under a name that proves its bytes, asked by ranges."""

from __future__ import annotations

import json
import os
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from typing import Any, cast

from sourcing.stock.index.columns import COLUMNS, figures
from sourcing.stock.index.plain import Plain
from sourcing.stock.index.ranges import Ranges
from sourcing.stock.index.state import FileState, digest_of
from sourcing.stock.model import Catalogue, StockSpring

FEW = 200
"""So many springs of a kind are all judged; of more, those in the ranges of a need and the nearest of the rest."""

NEAREST = 20
KEPT = 8
"""So many indexes are kept; each new one lets go of the oldest."""

_SUFFIX = ".sqlite"


def fill(connection: sqlite3.Connection, catalogue: Catalogue, state: list[FileState], built_ns: int) -> None:
    """Write a catalogue that was read without a mistake into an empty database."""
    plain = Plain()
    connection.execute("CREATE TABLE whole (name TEXT PRIMARY KEY, value TEXT)")
    connection.execute(
        "CREATE TABLE spring (number INTEGER PRIMARY KEY, id TEXT, line INTEGER, on_hand INTEGER, kind TEXT, "
        f"{', '.join(f'{column} REAL' for column in COLUMNS)}, value TEXT)"
    )
    marks = ", ".join("?" * (6 + len(COLUMNS)))
    connection.executemany(f"INSERT INTO spring VALUES ({marks})", _rows(catalogue, plain))
    connection.execute(f"CREATE INDEX by_figures ON spring (kind, {', '.join(COLUMNS)})")
    whole = {
        "rest": plain.of(replace(catalogue, springs=())),
        "state": state,
        "built_ns": built_ns,
        "materials": [plain.whole(material) for material in plain.materials],
    }
    connection.executemany("INSERT INTO whole VALUES (?, ?)", [(key, json.dumps(each)) for key, each in whole.items()])
    connection.commit()


def _rows(catalogue: Catalogue, plain: Plain) -> Iterator[tuple[object, ...]]:
    for number, stock in enumerate(catalogue.springs):
        line, value = stock.place.line, json.dumps(plain.of(stock), ensure_ascii=False)
        yield number, stock.id, line, stock.on_hand, stock.spring.kind, *figures(stock), value


def whole(connection: sqlite3.Connection, name: str) -> Any:
    """A part that is kept as one."""
    ((value,),) = connection.execute("SELECT value FROM whole WHERE name = ?", (name,))
    return json.loads(value)


def materials_of(connection: sqlite3.Connection) -> Plain:
    """What makes the values of an index again."""
    plain = Plain()
    plain.materials += [plain.back(material) for material in whole(connection, "materials")]
    return plain


def numbers(connection: sqlite3.Connection, ranges: Ranges) -> tuple[list[int], int]:
    """The springs to judge, by their place in the catalogue, and how many of the kind are left out."""
    ((count,),) = connection.execute("SELECT count(*) FROM spring WHERE kind = ?", (ranges.kind,))
    kind, condition = (ranges.kind,), ranges.condition()
    if count <= FEW:
        found = connection.execute("SELECT number FROM spring WHERE kind = ?", kind).fetchall()
    else:
        found = connection.execute(f"SELECT number FROM spring WHERE kind = ? AND {condition}", kind).fetchall()
        nearest = f"SELECT number FROM spring WHERE kind = ? AND NOT ({condition}) ORDER BY {ranges.distance()}, number"
        found += connection.execute(f"{nearest} LIMIT {NEAREST}", kind).fetchall()
    return sorted(cast("int", number) for (number,) in found), count - len(found)


def springs_at(connection: sqlite3.Connection, plain: Plain, places: list[int]) -> tuple[StockSpring, ...]:
    """The springs at these places of the catalogue."""
    ask = "SELECT value FROM spring WHERE number = ?"
    return tuple(plain.back(json.loads(connection.execute(ask, (number,)).fetchone()[0])) for number in places)


def cache_folder() -> Path | None:
    """The program's folder in the user's cache: $XDG_CACHE_HOME, else ~/.cache; None where there is no home."""
    named = os.environ.get("XDG_CACHE_HOME", "")
    if os.path.isabs(named):
        return Path(named, "springwright")
    home = os.environ.get("HOME", "")
    return Path(home, ".cache", "springwright") if os.path.isabs(home) else None


def open_kept(folder: Path, key: str) -> Iterator[sqlite3.Connection]:
    """The whole indexes of that key, each proved by its digest; what else bears such a name is passed over."""
    with suppress(OSError):
        for name in sorted(os.listdir(folder)):
            path = folder / name
            if name.startswith(f"{key}-") and name.endswith(_SUFFIX) and not path.is_symlink():
                with suppress(OSError, sqlite3.Error):
                    if digest_of(str(path)) == name.removeprefix(f"{key}-").removesuffix(_SUFFIX):
                        yield sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro&immutable=1", uri=True)


def keep(connection: sqlite3.Connection, folder: Path, key: str) -> None:
    """Write an index to the disk and let go of those it replaces. Nothing is said where the folder is closed to us."""
    with suppress(OSError, sqlite3.Error):
        folder.mkdir(parents=True, exist_ok=True, mode=0o700)
        handle, scratch = tempfile.mkstemp(suffix=".part", dir=folder)
        os.close(handle)
        try:
            with sqlite3.connect(scratch) as target:
                target.execute("PRAGMA journal_mode = OFF")
                connection.backup(target)
            target.close()
            name = f"{key}-{digest_of(scratch)}{_SUFFIX}"
            os.replace(scratch, folder / name)
            _prune(folder, key, name)
        finally:
            with suppress(FileNotFoundError):
                os.unlink(scratch)


def _prune(folder: Path, key: str, kept: str) -> None:
    others = [path for path in folder.glob(f"*{_SUFFIX}") if path.name != kept]
    others.sort(key=lambda path: path.stat().st_mtime_ns, reverse=True)
    same = [path for path in others if path.name.startswith(f"{key}-")]
    for path in (*same, *[path for path in others if path not in same][KEPT - 1 :]):
        path.unlink(missing_ok=True)
