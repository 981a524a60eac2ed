"""The values of a catalogue as JSON and back, exactly; nothing but these kinds of value can come of it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import fields, is_dataclass
from enum import StrEnum
from typing import Any, cast

from sourcing.files.findings import Finding, Place
from sourcing.materials.model import Material
from sourcing.quantities import Money
from sourcing.springs.model import CompressionSpring, ConicalSpring, Ends, Hand
from sourcing.stock import model

_DATACLASSES: tuple[type, ...] = (
    *(Finding, Place, Material, Money, CompressionSpring, ConicalSpring),
    *(model.StockSpring, model.Trial, model.Spool, model.Bench, model.HouseTolerances),
    *(model.Clearance, model.HandWinding, model.Seller, model.SpringMaker, model.Catalogue),
)
_KINDS: Mapping[str, Callable[..., Any]] = {each.__name__: each for each in (*_DATACLASSES, Ends, Hand)}
_MATERIAL = "a material"


class Plain:
    """Makes values plain and back; a material is kept once, and meant by its number."""

    def __init__(self, materials: list[Material] | None = None) -> None:
        self.materials: list[Material] = [] if materials is None else materials
        self._numbers: dict[int, int] = {}

    def of(self, value: object) -> object:
        """What JSON can hold of a value. Raises TypeError where it is of no kind that is known."""
        if value is None or type(value) in (bool, int, float, str):
            return value
        if isinstance(value, Material):
            return [_MATERIAL, self._number(value)]
        return self.whole(value)

    def whole(self, value: object) -> object:
        """A value with its parts, a material too."""
        if isinstance(value, StrEnum):
            return [type(value).__name__, str(value)]
        if isinstance(value, (tuple, frozenset)):
            kind = "frozenset" if isinstance(value, frozenset) else "tuple"
            return [kind, *map(self.of, cast("Iterable[object]", value))]
        if isinstance(value, Mapping):
            pairs = cast("Mapping[object, object]", value).items()
            return ["dict", *([self.of(key), self.of(each)] for key, each in pairs)]
        if is_dataclass(value) and type(value).__name__ in _KINDS:
            return [type(value).__name__, *(self.of(getattr(value, field.name)) for field in fields(value))]
        raise TypeError(f"a catalogue holds no {type(value).__name__}")

    def back(self, plain: Any) -> Any:
        """The value that was made plain."""
        if not isinstance(plain, list):
            return cast("object", plain)
        whole: list[Any] = cast("list[Any]", plain)
        kind, parts = whole[0], whole[1:]
        if kind == _MATERIAL:
            number: int = parts[0]
            return self.materials[number]
        if kind == "dict":
            return {self.back(key): self.back(value) for key, value in parts}
        values: list[Any] = [self.back(part) for part in parts]
        if kind in ("tuple", "frozenset"):
            return tuple(values) if kind == "tuple" else frozenset(values)
        return _KINDS[kind](*values)

    def _number(self, material: Material) -> int:
        number = self._numbers.get(id(material))
        if number is None:
            number = self._numbers[id(material)] = len(self.materials)
            self.materials.append(material)
        return number
