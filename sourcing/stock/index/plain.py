"""The values of a catalogue and of a need as JSON and back, exactly; nothing but these kinds of value can come of it.

A value is a list that begins with the number of its kind; materials and names of files are kept once, in a table, and
meant by their place in it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, fields
from enum import StrEnum
from operator import attrgetter
from typing import Any, cast

from sourcing.files.findings import Finding, Place
from sourcing.materials.model import Group, Magnet, Material
from sourcing.need import model as need
from sourcing.quantities import Money, Wanted
from sourcing.springs import model as springs
from sourcing.stock import model as stock

_DATACLASSES: tuple[type, ...] = (
    *(Finding, Money, Wanted, springs.CompressionSpring, springs.ConicalSpring),
    *(springs.ExtensionSpring, springs.TorsionSpring, springs.Leg, springs.EndPiece),
    *(stock.StockSpring, stock.Trial, stock.Spool, stock.Bench, stock.HouseTolerances),
    *(stock.Clearance, stock.HandWinding, stock.Seller, stock.SpringMaker, stock.Catalogue),
    *(need.Need, need.Pocket, need.PocketEnd, need.WorkingPoint, need.TurnedPoint, need.WantedLeg, need.WantedEnd),
)
_ENUMS: tuple[type[StrEnum], ...] = (
    *(springs.Ends, springs.Hand, springs.Hooks, springs.LegShape, springs.EndShape, Group, Magnet),
)
_MATERIAL, _PLACE, _TUPLE, _FROZENSET, _DICT = range(5)
_MADE: tuple[Callable[..., Any], ...] = (*_DATACLASSES, *_ENUMS)
_FIRST = 5
_CODES: Mapping[type, int] = {each: code for code, each in enumerate((*_DATACLASSES, *_ENUMS), _FIRST)}
_PARTS: Mapping[type, Callable[[Any], tuple[Any, ...]]] = {
    each: attrgetter(*(field.name for field in fields(each))) for each in _DATACLASSES
}


@dataclass(slots=True)
class Plain:
    """Makes values plain and back, with the tables of what is kept once."""

    materials: list[Material] = field(default_factory=list[Material])
    files: list[str | None] = field(default_factory=list["str | None"])
    _numbers: dict[int, int] = field(default_factory=dict[int, int])

    def of(self, value: Any) -> object:
        """What JSON can hold of a value. Raises TypeError where it is of no kind that is known."""
        kind = cast("type", type(value))  # pyright: ignore[reportUnnecessaryCast] (Any has an unknown type)
        if value is None or kind in (bool, int, float, str):
            return cast("object", value)
        if parts := _PARTS.get(kind):
            return [_CODES[kind], *map(self.of, parts(value))]
        if kind is Place:
            return [_PLACE, _number(self.files, value.file), value.line, value.column]
        if kind is Material:
            return [_MATERIAL, self._material(value)]
        if kind in _CODES:
            return [_CODES[kind], str(value)]
        return self._collection(value)

    def _collection(self, value: Any) -> object:
        if isinstance(value, (tuple, frozenset)):
            code = _FROZENSET if isinstance(value, frozenset) else _TUPLE
            return [code, *map(self.of, cast("Iterable[object]", value))]
        if isinstance(value, Mapping):
            pairs = cast("Mapping[object, object]", value).items()
            return [_DICT, *([self.of(key), self.of(each)] for key, each in pairs)]
        raise TypeError(f"a catalogue holds no {type(value).__name__}")

    def back(self, plain: Any) -> Any:
        """The value that was made plain."""
        if not isinstance(plain, list):
            return cast("object", plain)
        whole = cast("list[Any]", plain)
        code: int = whole[0]
        parts: list[Any] = whole[1:]
        if code == _DICT:
            return {self.back(key): self.back(value) for key, value in parts}
        if code == _MATERIAL:
            material: int = parts[0]
            return self.materials[material]
        if code == _PLACE:
            file: int = parts[0]
            return Place(self.files[file], parts[1], parts[2])
        values: list[Any] = [self.back(part) if isinstance(part, list) else part for part in parts]
        if code >= _FIRST:
            return _MADE[code - _FIRST](*values)
        return tuple(values) if code == _TUPLE else frozenset(values)

    def tables(self) -> object:
        """The tables as JSON can hold them, for `with_tables`."""
        names = attrgetter(*(field.name for field in fields(Material)))
        return [[[self.of(part) for part in names(material)] for material in self.materials], self.files]

    def _material(self, material: Material) -> int:
        number = self._numbers.get(id(material))
        if number is None:
            number = self._numbers[id(material)] = _number(self.materials, material)
        return number


def with_tables(tables: Any) -> Plain:
    """What makes the values back that were made plain with these tables, and others plain beside them."""
    plain = Plain(files=list(tables[1]))
    plain.materials += [Material(*map(plain.back, material)) for material in tables[0]]
    return plain


def _number(table: list[Any], value: object) -> int:
    """The place of a value in a table, where it is put unless it is there."""
    if value not in table:
        table.append(value)
    return table.index(value)
