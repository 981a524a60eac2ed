"""A new spring or spool: its record checked as the readers will, its id, and the file that it goes to."""

from __future__ import annotations

import os
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from sourcing.files.disk import read_raw
from sourcing.files.findings import Finding, Mistakes, Place, WrongWords, quoted
from sourcing.files.replacing import change_file
from sourcing.materials.model import NO_MATERIALS, OwnMaterials
from sourcing.stock.model import Catalogue, Spool, StockSpring

SPOOL = "spool"
_OF_A_LINE = re.compile(" on line [0-9]+")
_FIRST = ("S-", "0")
_COIL = ("free_length", "total_coils", "ends", "material")

ASKED: Mapping[str, tuple[str, ...]] = {
    "compression": ("wire_diameter", "outside_diameter", *_COIL),
    "conical": ("wire_diameter", "outside_diameter_large", "outside_diameter_small", *_COIL),
    "torsion": ("wire_diameter", "outside_diameter", "total_coils", "material"),
    "extension": (*("wire_diameter", "outside_diameter", "free_length", "total_coils", "hooks", "material"),),
    SPOOL: ("material", "wire_diameter", "length_left"),
}
"""By kind, the keys that are asked for where they are not given."""

ASKED_LAST: Mapping[str, tuple[str, ...]] = {
    "extension": ("initial_tension", "on_hand", "place"),
    "torsion": ("hand", "leg_1", "leg_2", "free_angle", "on_hand", "place"),
    SPOOL: ("place",),
}
"""By kind, the keys that may be left empty."""

_MAY_BE_EMPTY = ("on_hand", "place")
_INSTEAD = {"outside": ("mean", "inside"), "total": ("active",)}


@dataclass(frozen=True, slots=True)
class Added:
    """What was added; `line` is where its record begins, `changed` are the record's lines, `raw` is the whole file."""

    item: StockSpring | Spool
    file: str
    line: int
    changed: tuple[str, ...]
    raw: bytes


def keys_to_ask(given: Mapping[str, str]) -> list[str]:
    """The keys that a record of this kind needs and lacks; empty where its kind is not known.

    >>> keys_to_ask({"kind": "compression", "wire_diameter": "0.9", "inside_diameter": "8", "ends": "open"})
    ['free_length', 'total_coils', 'material']
    """
    return [key for key in ASKED.get(given.get("kind", ""), ()) if not given.keys() & {key, *_instead_of(key)}]


def keys_to_offer(given: Mapping[str, str]) -> list[str]:
    """The keys that are asked for too, but may be left empty."""
    offered = ASKED_LAST.get(given.get("kind", ""), _MAY_BE_EMPTY)
    return [key for key in offered if key not in given]


def _instead_of(key: str) -> list[str]:
    first, _, rest = key.partition("_")
    return [f"{other}_{rest}" for other in _INSTEAD.get(first, ())]


def as_read(
    record: Mapping[str, str], currency: str, own: OwnMaterials = NO_MATERIALS
) -> tuple[StockSpring | Spool | None, dict[str, list[Finding]]]:
    """What the readers make of a record, and what they say is wrong with it, by key; "" for the whole."""
    from sourcing.files.events import parse
    from sourcing.files.splicing import as_scalar
    from sourcing.need.kinds import settled
    from sourcing.stock.spools import spools_in
    from sourcing.stock.springs import springs_in

    top, inner = _as_in_a_file(record)
    lines = [f"{top}:", "  -", *(f"    {key}: {as_scalar(value)}" for key, value in inner.items())]
    document, findings = parse("\n".join(lines), "")
    items: Sequence[StockSpring | Spool] = ()
    if document is not None and top == "spools":
        spools = spools_in(document, settled(own, currency))
        items, findings = spools.spools, [*findings, *spools.findings]
    elif document is not None:
        springs = springs_in(document, settled(own, currency))
        items, findings = springs.springs, [*findings, *springs.findings]
    by_key: dict[str, list[Finding]] = {}
    for finding in findings:
        told = replace(finding, place=Place(None), found=_OF_A_LINE.sub("", finding.found))
        by_key.setdefault(_key_at(finding.place, list(inner)), []).append(told)
    return (items[0] if items else None), by_key


def _key_at(place: Place, keys: Sequence[str]) -> str:
    """The key on whose line a place is, one line a key from the third on; "" where the record begins."""
    line, column = place.line or 0, place.column or 0
    return "" if line < 3 or (line, column) == (3, 5) else keys[min(line - 3, len(keys) - 1)]


def _as_in_a_file(record: Mapping[str, str]) -> tuple[str, dict[str, str]]:
    """The list that a record goes to, and its keys there, the id first."""
    is_spool = record.get("kind") == SPOOL
    inner = {key: value for key, value in record.items() if key != "kind" or not is_spool}
    return ("spools" if is_spool else "springs"), {"id": record.get("id", "".join(_FIRST)), **inner}


def next_free_id(catalogue: Catalogue, is_spool: bool, shelf: str | None, file: str) -> str:
    """The id after those of the things at the same place, else of those in the same file: the number at its end raised.

    >>> next_free_id(Catalogue(), False, None, "drawer.yaml")
    'S-1'
    """
    items = catalogue.spools if is_spool else catalogue.springs
    beside = [item.id for item in items if shelf and item.shelf == shelf]
    in_file = [item.id for item in items if item.place.file == file]
    stem, number = next(filter(None, map(_stem_and_number, beside[::-1] + in_file[::-1])), _FIRST)
    taken = [int(pair[1]) for pair in map(_stem_and_number, (item.id for item in items)) if pair and pair[0] == stem]
    return f"{stem}{str(max(taken, default=0) + 1).zfill(len(number))}"


def _stem_and_number(name: str) -> tuple[str, str] | None:
    """The parts of an id that ends with a number.

    >>> _stem_and_number("B2-07"), _stem_and_number("long one")
    (('B2-', '07'), None)
    """
    match = re.fullmatch(r"(.*?)([0-9]{1,9})", name, re.DOTALL)
    return (match[1], match[2]) if match else None


def file_for(catalogue: Catalogue, record: Mapping[str, str], named: str | None) -> str:
    """The file of the catalogue that a record goes to: the one named, else the first with its place or its seller.

    Failing these, the first of all. Raises `WrongWords` where the one named is not of the catalogue, or there is none.
    """
    is_spool = record.get("kind") == SPOOL
    items = catalogue.spools if is_spool else catalogue.springs
    files = list(dict.fromkeys(item.place.file or "" for item in items))
    if named is not None:
        return _file_named(named, files)
    shelf, seller = record.get("place"), record.get("seller")
    for item in items:
        if (shelf and item.shelf == shelf) or (seller and isinstance(item, StockSpring) and item.seller == seller):
            return item.place.file or ""
    if not files:
        what = "spools" if is_spool else "springs"
        expected = f"a file {what}/*.yaml with a first one in it; `springwright init` makes one"
        raise WrongWords((Finding(Place(None), f"the catalogue has no {what}", expected),))
    return files[0]


def _file_named(named: str, files: Sequence[str]) -> str:
    from sourcing.files.nearest import nearest

    for file in files:
        if named in (file, Path(file).name, Path(file).stem) or os.path.realpath(named) == os.path.realpath(file):
            return file
    near = nearest(named, [Path(file).name for file in files])
    raise WrongWords((Finding(Place(None), f"{quoted(named)} is no file of the catalogue", "one of its files", near),))


def add(catalogue: Catalogue, given: Mapping[str, str], to: str | None = None, dry_run: bool = False) -> Added:
    """Write a record, as keys and texts, at the end of a file; `dry_run` leaves the file as it is.

    Raises `WrongWords` with all that is wrong with the record, `Mistakes` where the file cannot be changed.
    """
    file = file_for(catalogue, given, to)
    is_spool = given.get("kind") == SPOOL
    name = given.get("id") or next_free_id(catalogue, is_spool, given.get("place"), file)
    item, wrong = as_read({**given, "id": name}, catalogue.bench.currency, catalogue.materials)
    findings = [*_named(wrong), *_not_free(catalogue, name, is_spool)]
    if item is None or findings:
        raise WrongWords(tuple(findings))
    top, inner = _as_in_a_file({**given, "id": name})

    def change(raw: bytes) -> Added:
        from sourcing.files.splicing import source_of, with_entry

        source = source_of(raw, file)
        if any(isinstance(record, dict) and record.get("id") == name for record in source.records(top)):
            found = f"{quoted(name)} stands here by now"
            raise Mistakes((Finding(Place(file), found, "a second try; nothing was changed"),))
        edited = with_entry(source, top, inner)
        return Added(item, file, edited.line, edited.changed, edited.raw)

    return change(read_raw(file)) if dry_run else change_file(file, change)


def _named(wrong: Mapping[str, Sequence[Finding]]) -> Iterator[Finding]:
    """The findings, each with the option that it is about."""
    for key, findings in wrong.items():
        for finding in findings:
            yield replace(finding, found=f"{option_of(key)}: {finding.found}") if key else finding


def option_of(key: str) -> str:
    """The option that gives a key.

    >>> option_of("wire_diameter")
    '--wire-diameter'
    """
    return "--" + key.replace("_", "-")


def _not_free(catalogue: Catalogue, name: str, is_spool: bool) -> Iterator[Finding]:
    for item in catalogue.spools if is_spool else catalogue.springs:
        if item.id == name:
            found = f"{quoted(name)} is the id of another, at {item.place.file}:{item.place.line}"
            yield Finding(Place(None), found, "an id of its own")
