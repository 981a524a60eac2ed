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

_LINE = 32


def mark(line: int, column: int) -> int:
    """A line and a column, both counted from 0, in one number."""
    return line << _LINE | column


@dataclass(frozen=True, slots=True)
class Document:
    """What a file holds. `value` is None where the file holds nothing but comments.

    `marks` has, under the identity of each list, one mark an entry; of each mapping, two marks a key: its own and its
    value's.
    """

    file: str
    value: Value
    marks: dict[int, array[int]]

    def place(self, container: Container, key: str | int) -> Place:
        """Where a value stands: of a mapping under its key, of a list under its number."""
        marks = self.marks[id(container)]
        return self._place(marks[key] if isinstance(key, int) else marks[2 * list(container).index(key) + 1])

    def key_place(self, mapping: dict[str, Value], key: str) -> Place:
        """Where a key stands."""
        return self._place(self.marks[id(mapping)][2 * list(mapping).index(key)])

    def start(self, container: Container) -> Place:
        """Where a list or a mapping begins: at its first entry or key."""
        marks = self.marks[id(container)]
        return self._place(marks[0]) if marks else Place(self.file, 1, 1)

    def place_of(self, container: Container, path: Iterable[str | int]) -> Place:
        """Where the value stands that a path leads to, or the last one on the way that is there."""
        place = self.start(container)
        at: Value = container
        for step in path:
            if isinstance(at, dict) and isinstance(step, str) and step in at:
                place, at = self.place(at, step), at[step]
            elif isinstance(at, list) and isinstance(step, int) and step < len(at):
                place, at = self.place(at, step), at[step]
            else:
                break
        return place

    def _place(self, at: int) -> Place:
        return Place(self.file, (at >> _LINE) + 1, (at & 0xFFFFFFFF) + 1)
