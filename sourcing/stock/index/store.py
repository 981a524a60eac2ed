"""What one index holds: the springs of a catalogue file by file, their figures to be asked for by ranges, and the rest.

whole    name, value                            what is kept as one: the tables, the rest, the files
file     number, name, ids, warnings            each file of springs; the name as JSON, for it may be no UTF-8
spring   file, number, value                    each spring as it was read
figure   kind, the columns, file, number        what ranges are asked of, in the order of their rates
"""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterator, Sequence
from typing import Any, cast

from sourcing.files.findings import Place
from sourcing.stock.index.columns import COLUMNS, figures
from sourcing.stock.index.plain import Plain, with_tables
from sourcing.stock.index.ranges import Ranges
from sourcing.stock.model import StockSpring
from sourcing.stock.springs_file import SpringsFile

FEW = 200
"""So many springs of a kind are all judged; of more, those in the ranges of a need, and at least the nearest."""

NEAREST = 20
"""So many are judged in any case, where there are so many."""

_COLUMNS = ", ".join(COLUMNS)
_TABLES = f"""
CREATE TABLE whole (name TEXT PRIMARY KEY, value TEXT) WITHOUT ROWID;
CREATE TABLE file (number INTEGER PRIMARY KEY, name TEXT, ids TEXT, warnings TEXT);
CREATE TABLE spring (file INTEGER, number INTEGER, value TEXT, PRIMARY KEY (file, number)) WITHOUT ROWID;
CREATE TABLE figure (kind TEXT, {", ".join(f"{column} REAL" for column in COLUMNS)}, file INTEGER, number INTEGER,
    PRIMARY KEY (kind, rate, file, number)) WITHOUT ROWID;
"""

At = tuple[int, int]
"""A spring by the number of its file and its own in it."""


def create(connection: sqlite3.Connection) -> None:
    """The empty tables."""
    connection.executescript(_TABLES)


def fill(connection: sqlite3.Connection, plain: Plain, files: Sequence[SpringsFile]) -> None:
    """Write the springs of all files; those of a file that is kept are taken over from the database `kept`."""
    for number, read in enumerate(files):
        if read.kept:
            _take_over(connection, read.file, number)
        else:
            _write(connection, plain, number, read)


def _write(connection: sqlite3.Connection, plain: Plain, number: int, read: SpringsFile) -> None:
    ids = json.dumps([(name, place.line, place.column) for name, place in read.ids], ensure_ascii=False)
    warnings = json.dumps([plain.of(each) for each in read.warnings])
    connection.execute("INSERT INTO file VALUES (?, ?, ?, ?)", (number, json.dumps(read.file), ids, warnings))
    connection.executemany("INSERT INTO spring VALUES (?, ?, ?)", _values(plain, number, read.springs))
    marks = ", ".join("?" * (3 + len(COLUMNS)))
    rows = [(stock.spring.kind, *figures(stock), number, at) for at, stock in enumerate(read.springs)]
    connection.executemany(f"INSERT INTO figure VALUES ({marks})", rows)


def _values(plain: Plain, number: int, springs: Sequence[StockSpring]) -> Iterator[tuple[int, int, str]]:
    encode = json.JSONEncoder(ensure_ascii=False, separators=(",", ":")).encode
    return ((number, at, encode(plain.of(stock))) for at, stock in enumerate(springs))


def _take_over(connection: sqlite3.Connection, file: str, number: int) -> None:
    ((old,),) = connection.execute("SELECT number FROM kept.file WHERE name = ?", (json.dumps(file),))
    for table, at, columns in (
        ("file", "number", "name, ids, warnings"),
        ("spring", "file", "number, value"),
        ("figure", "file", f"kind, {_COLUMNS}, number"),
    ):
        taken = f"SELECT ?, {columns} FROM kept.{table} WHERE {at} = ?"
        connection.execute(f"INSERT INTO {table} ({at}, {columns}) {taken}", (number, old))


def put(connection: sqlite3.Connection, name: str, value: object) -> None:
    """Keep something as one, as JSON."""
    connection.execute("INSERT INTO whole VALUES (?, ?)", (name, json.dumps(value)))


def whole(connection: sqlite3.Connection, name: str) -> Any:
    """A part that is kept as one."""
    ((value,),) = connection.execute("SELECT value FROM whole WHERE name = ?", (name,))
    return json.loads(value)


def plain_of(connection: sqlite3.Connection) -> Plain:
    """What makes the values of an index again."""
    return with_tables(whole(connection, "tables"))


def files_read(connection: sqlite3.Connection, plain: Plain) -> Iterator[SpringsFile]:
    """Each file of springs, in their order: all that other files must agree with, without the springs themselves."""
    for name_of_file, ids, warnings in connection.execute("SELECT name, ids, warnings FROM file ORDER BY number"):
        file: str = json.loads(name_of_file)
        named = [(name, Place(file, line, column)) for name, line, column in json.loads(ids)]
        yield SpringsFile(file, ids=named, warnings=[plain.back(each) for each in json.loads(warnings)], kept=True)


def at(connection: sqlite3.Connection, ranges: Ranges) -> tuple[list[At], int]:
    """The springs to judge, in the order of the files, and how many of the kind are left out.

    Where the ranges hold fewer than the nearest that are judged in any case, the nearest of the others come with them.
    """
    ((count,),) = connection.execute("SELECT count(*) FROM figure WHERE kind = ?", (ranges.kind,))
    if count <= FEW:
        found = _asked(connection, ranges, "1")
    else:
        found = _asked(connection, ranges, ranges.condition())
        if (missing := NEAREST - len(found)) > 0:
            beyond = f"NOT ({ranges.condition()}) ORDER BY {ranges.distance()}, file, number LIMIT {missing}"
            found += _asked(connection, ranges, beyond)
    return sorted(found), count - len(found)


def inside(connection: sqlite3.Connection, ranges: Ranges) -> list[At]:
    """The springs that lie in the ranges."""
    return _asked(connection, ranges, ranges.condition())


def _asked(connection: sqlite3.Connection, ranges: Ranges, condition: str) -> list[At]:
    ask = f"SELECT file, number FROM figure WHERE kind = ? AND {condition}"
    return cast("list[At]", connection.execute(ask, (ranges.kind,)).fetchall())


def springs_at(connection: sqlite3.Connection, plain: Plain, places: Sequence[At]) -> tuple[StockSpring, ...]:
    """The springs at these places."""
    ask = "SELECT value FROM spring WHERE file = ? AND number = ?"
    return tuple(plain.back(json.loads(connection.execute(ask, place).fetchone()[0])) for place in places)


def all_springs(connection: sqlite3.Connection, plain: Plain) -> tuple[StockSpring, ...]:
    """Every spring, in the order of the files."""
    rows = connection.execute("SELECT value FROM spring ORDER BY file, number")
    return tuple(plain.back(json.loads(value)) for (value,) in rows)
