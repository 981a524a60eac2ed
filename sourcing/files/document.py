"""What a file holds: plain values, and where each of them stands.

The values are dict, list and str: each scalar's own text, never YAML's guess at a type. None stands for a value that
has been told of already (an alias, an empty place): whoever meets it says nothing more.

The marks are kept apart from the values, two numbers packed in one, an array for each list or mapping, so that plain
values stay plain and a mark costs eight bytes.
"""

from __future__ import annotations

from array import array
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias

from sourcing.files.findings import Place

Value: TypeAlias = "str | dict[str, Value] | list[Value] | None"
Container: TypeAlias = "dict[str, Value] | list[Value]"

LINE = 32
_COLUMN = (1 << LINE) - 1


def mark(line: int, column: int) -> int:
    """A line and a column, both counted from 0, in one number."""
    return line << LINE | column


def place_at_mark(at: int, file: str) -> Place:
    """The place that a mark stands for.

    >>> place_at_mark(mark(2, 0), "need.yaml")
    Place(file='need.yaml', line=3, column=1)
    """
    return Place(file, (at >> LINE) + 1, (at & _COLUMN) + 1)


@dataclass(frozen=True, slots=True)
class Document:
    """What a file holds. `value` is None where the file holds nothing but comments.

    `marks` has, under the identity of each list, one mark an entry; of each mapping, two marks a key: its own and its
    value's. `begins` is the mark of the whole.
    """

    file: str
    value: Value
    marks: dict[int, array[int]]
    begins: int = 0

    def place(self, container: Container, key: str | int) -> Place:
        """Where a value stands: of a mapping under its key, of a list under its number."""
        marks = self.marks[id(container)]
        at = marks[key] if isinstance(key, int) else marks[2 * list(container).index(key) + 1]
        return place_at_mark(at, self.file)

    def key_place(self, mapping: dict[str, Value], key: str) -> Place:
        """Where a key stands."""
        return place_at_mark(self.marks[id(mapping)][2 * list(mapping).index(key)], self.file)

    def start(self) -> Place:
        """Where what the file holds begins."""
        return place_at_mark(self.begins, self.file)

    def place_of(self, container: Container, path: Iterable[str | int]) -> Place:
        """Where the value stands that a path leads to from a container, or the last one on the way that is there."""
        place = self.start()
        at: Value = container
        for step in path:
            inner = _step(at, step)
            if inner is None or not isinstance(at, (dict, list)):
                break
            place, at = self.place(at, step), inner[0]
        return place


def _step(value: Value, step: str | int) -> tuple[Value] | None:
    """What a step leads to, in a tuple; None where it leads nowhere."""
    if isinstance(value, dict):
        return (value[step],) if isinstance(step, str) and step in value else None
    if isinstance(value, list):
        return (value[step],) if isinstance(step, int) and step < len(value) else None
    return None
