"""Values made into records: the only room that knows pydantic's errors, and turns them into findings.

A record's fields are text in the file and figures in the program; every field is `... | None`, where None means not
there, or told of already. So a record with mistakes can still be read a second time without them, and whoever checks
its figures against each other checks what is left: one reading tells all mistakes.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar, Generic, TypeVar, get_args

from pydantic import BaseModel, ConfigDict, ValidationError
from pydantic_core import ErrorDetails

from sourcing.files.document import Document, Value
from sourcing.files.findings import Finding, Place, quoted, shortened
from sourcing.files.nearest import nearest

Path = tuple[str | int, ...]


class Record(BaseModel):
    """A mapping in a file. `called` names it in messages; `elsewhere` has keys of other kinds, and whose they are."""

    model_config = ConfigDict(extra="forbid", frozen=True, arbitrary_types_allowed=True)
    called: ClassVar[str]
    elsewhere: ClassVar[Mapping[str, str]] = {}


R = TypeVar("R", bound=Record)

NOTHING_SETTLED: Mapping[str, object] = {}


@dataclass(frozen=True, slots=True)
class Read(Generic[R]):
    """A record together with what stands in the file, so that a check can point at it and repeat it."""

    record: R
    raw: dict[str, Value]
    start: Place
    document: Document

    def place(self, *path: str | int) -> Place:
        """Where a value of the record stands; without a path, where the record begins."""
        return self.document.place_of(self.raw, path) if path else self.start

    def key_place(self, key: str) -> Place:
        """Where a key of the record stands."""
        return self.document.key_place(self.raw, key)

    def inner(self, *path: str | int) -> dict[str, Value]:
        """A mapping within the record as it is written."""
        return _at(self.raw, path)

    def text(self, *path: str | int) -> str:
        """A scalar of the record as it is written."""
        return shortened(str(_at(self.raw, path)))


def read_record(
    model: type[R], value: Value, place: Place, document: Document, settled: Mapping[str, object] = NOTHING_SETTLED
) -> tuple[Read[R] | None, list[Finding]]:
    """A mapping of the document as a record, less what is wrong with it, and what that is.

    `settled` is what other files settled, for the fields that look at it: the currency of a bare price, and such.
    """
    if value is None:
        return None, []
    if not isinstance(value, dict):
        return None, [Finding(place, stands_here(value), _keys_of(model))]
    try:
        return Read(model.model_validate(value, context=settled), value, place, document), []
    except ValidationError as error:
        errors = error.errors(include_url=False)
    lacking: dict[Path, list[str]] = {}
    findings: list[Finding] = []
    for wrong in errors:
        if wrong["type"] == "missing":
            lacking.setdefault(wrong["loc"][:-1], []).append(str(wrong["loc"][-1]))
        else:
            findings.append(_finding(wrong, model, value, document))
    findings += [
        _missing(keys, _record_at(model, path), document.place_of(value, path) if path else place)
        for path, keys in lacking.items()
    ]
    mended: Any = _copied(value)
    for wrong in errors:
        _blank(mended, wrong["loc"], wrong["type"] == "extra_forbidden")
    return Read(model.model_validate(mended, context=settled), value, place, document), findings


def _finding(wrong: ErrorDetails, model: type[Record], raw: dict[str, Value], document: Document) -> Finding:
    path = wrong["loc"]
    owner = _record_at(model, path[:-1])
    place = document.place_of(raw, path)
    match wrong["type"]:
        case "refused":
            context: dict[str, Any] = wrong.get("ctx", {})
            return Finding(place, context["found"], context["expected"], tuple(map(_typed, context["suggestions"])))
        case "extra_forbidden":
            return _unknown_key(str(path[-1]), owner, _key_place(raw, path, document))
        case "model_type" | "model_attributes_type":
            return Finding(place, stands_here(wrong["input"]), _keys_of(_record_at(model, path)))
        case _:
            return Finding(place, stands_here(wrong["input"]), _described(owner, path))


def _typed(suggestion: str) -> str:
    """The suggestion as it is typed: a text that begins with > needs quotes."""
    return f'"{suggestion}"' if suggestion.startswith(">") else suggestion


def _missing(keys: Sequence[str], owner: type[Record], place: Place) -> Finding:
    if len(keys) == 1:
        return Finding(place, f"no {keys[0]}", f"the key {keys[0]} with {_described(owner, keys)}")
    return Finding(place, f"no {', '.join(keys[:-1])} or {keys[-1]}", f"all of these keys in {owner.called}")


def _unknown_key(key: str, owner: type[Record], place: Place) -> Finding:
    if key in owner.elsewhere:
        return Finding(
            place, f"{key} belongs to {owner.elsewhere[key]}", "a key of this kind of spring, or another kind"
        )
    near = nearest(key, owner.model_fields)
    expected = "one of its keys" if near else _keys_of(owner)
    return Finding(place, f"{quoted(key)} is no key of {owner.called}", expected, near)


def _key_place(raw: dict[str, Value], path: Path, document: Document) -> Place:
    return document.key_place(_at(raw, path[:-1]), str(path[-1]))


def _at(value: Any, path: Path) -> Any:
    for step in path:
        value = value[step]
    return value


def _record_at(model: type[Record], path: Path) -> type[Record]:
    """The model of the record that a path leads to, or of the last one on the way."""
    for step in path:
        if isinstance(step, str) and step in model.model_fields:
            model = _record_in(model.model_fields[step].annotation) or model
    return model


def _record_in(annotation: Any) -> type[Record] | None:
    if isinstance(annotation, type) and issubclass(annotation, Record):
        return annotation
    return next((found for part in get_args(annotation) if (found := _record_in(part))), None)


def _described(owner: type[Record], path: Sequence[str | int]) -> str:
    key = next((step for step in reversed(path) if isinstance(step, str) and step in owner.model_fields), None)
    return (owner.model_fields[key].description if key else None) or f"a value of {owner.called}"


def _keys_of(model: type[Record]) -> str:
    """The keys of a record for a message, those that it must have first."""
    keys = sorted(model.model_fields, key=lambda key: not model.model_fields[key].is_required())
    return f"the keys of {model.called} with their values: {', '.join(keys)}"


def stands_here(value: object) -> str:
    """What a message says of a value that should be of another shape."""
    match value:
        case list():
            return "a list stands here"
        case dict():
            return "keys and values stand here"
        case _:
            return f"{quoted(str(value))} stands here"


def _blank(container: Any, path: Path, unknown: bool) -> None:
    """Put None where the path leads, or as far as it leads; take a key out that nobody knows."""
    step, rest = path[0], path[1:]
    if rest and isinstance(container[step], (dict, list)):
        _blank(container[step], rest, unknown)
    elif unknown:
        del container[step]
    else:
        container[step] = None


def _copied(value: Value) -> Value:
    match value:
        case dict():
            return {key: _copied(inner) for key, inner in value.items()}
        case list():
            return [_copied(inner) for inner in value]
        case _:
            return value
