"""The event loop: one pass over the events of PyYAML's C parser makes plain values and keeps their marks.

Building YAML's nodes first, or an object for each scalar, would cost three to seven times as much. What plain files
of a person have no use for, and what would be read otherwise than it looks, is refused here: a key that stands twice,
anchors, aliases, tags, several documents, keys that are lists, and an empty place where a value belongs.
"""

from __future__ import annotations

import gc
import re
from array import array
from collections.abc import Callable, Generator
from contextlib import contextmanager
from typing import Any

import yaml
from yaml.error import MarkedYAMLError, YAMLError
from yaml.events import (
    AliasEvent,
    CollectionEndEvent,
    CollectionStartEvent,
    DocumentStartEvent,
    Event,
    MappingStartEvent,
    ScalarEvent,
    SequenceStartEvent,
)

from sourcing.files.disk import read_text
from sourcing.files.document import LINE, Container, Document, Value, mark, place_at_mark
from sourcing.files.findings import Finding, Mistakes, Place, quoted, shortened
from sourcing.files.syntax import DEEPEST, TOO_DEEP, syntax_finding

_DROPPED = ""  # the key of a value that is not kept; an empty key in a file is refused
_COMMA_AS_POINT = re.compile(r"[0-9],[0-9]")


def load(file: str) -> tuple[Document | None, list[Finding]]:
    """What a file holds, and what is wrong with it as plain YAML; None where nothing could be made of it."""
    try:
        text = read_text(file)
    except Mistakes as mistakes:
        return None, list(mistakes.findings)
    return parse(text, file)


def parse(text: str, file: str) -> tuple[Document | None, list[Finding]]:
    """What a text holds, and what is wrong with it as plain YAML; None after a mistake that stops the parser."""
    building = _Building(text, file)
    try:
        with collector_off():
            building.run()
    except MarkedYAMLError as error:
        return None, [*building.findings, syntax_finding(error, text, file)]
    except YAMLError:
        return None, [*building.findings, Finding(Place(file), "a text that is not YAML", "keys and values")]
    except _Refused:
        return None, building.findings
    if not building.top and not text.strip():
        return None, [Finding(Place(file), "an empty file", "keys and values")]
    if not building.top:
        return Document(file, None, {}), building.findings
    return Document(file, building.top[0], building.marks, building.open.marks[0]), building.findings


def end_of_value(text: str, begin: int, column: int, at: int) -> int:
    """Where a value ends that begins at an offset of the text, within the record that begins at `begin`.

    The record alone is read, as if nothing but spaces stood before its column. Raises `ValueError` where no value
    begins there.
    """
    shift = begin - column
    depth = 0
    for event in iter(_events_of(" " * column + text[begin:]), None):
        start, end = event.start_mark, event.end_mark
        assert start is not None
        assert end is not None
        if depth == 0 and start.index + shift < at:
            continue
        depth += isinstance(event, CollectionStartEvent) - isinstance(event, CollectionEndEvent)
        if depth <= 0 and isinstance(event, (ScalarEvent, CollectionEndEvent)):
            return end.index + shift
    raise ValueError(at)


@contextmanager
def collector_off() -> Generator[None]:
    """Nothing is thrown away while a file is read, so looking for what could be costs up to half the time."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


class _Refused(Exception):
    """What has been found leaves no sense in reading on."""


class _Open:
    """A list or a mapping that is being filled.

    `key` waits for its value; None: a key comes next; empty: what comes next is an entry of a list, or is dropped.
    """

    __slots__ = ("content", "key", "key_mark", "mapping", "marks")

    def __init__(self, content: Container) -> None:
        self.content = content
        self.mapping: dict[str, Value] = content if isinstance(content, dict) else {}
        self.marks: list[int] = []
        self.key: str | None = None if isinstance(content, dict) else _DROPPED
        self.key_mark = 0


class _Building:
    """The values made so far. `around` has the lists and mappings that are open around the innermost, `open`."""

    def __init__(self, text: str, file: str) -> None:
        self.text = text
        self.file = file
        self.findings: list[Finding] = []
        self.marks: dict[int, array[int]] = {}
        self.top: list[Value] = []
        self.open = _Open(self.top)
        self.around: list[_Open] = []

    def run(self) -> None:
        """Take all events. Plain keys and their plain values, nearly everything in a file, are taken right here."""
        for event in iter(_events_of(self.text), None):
            if not isinstance(event, ScalarEvent):
                self.take_other(event)
                continue
            start = event.start_mark
            assert start is not None
            at = start.line << LINE | start.column  # as mark() does, without the call
            text = event.value
            into = self.open
            if not text or event.anchor is not None or event.tag is not None:
                self.put(self.checked_scalar(event, at), at)
            elif into.key:
                into.mapping[into.key] = text
                into.marks += (into.key_mark, at)
                into.key = None
            elif into.key is None and text not in into.mapping:
                into.key = text
                into.key_mark = at
            else:
                self.put(text, at)

    def take_other(self, event: Event) -> None:
        """Every event but a scalar."""
        match event:
            case MappingStartEvent():
                self.begin({}, event)
            case SequenceStartEvent():
                self.begin([], event)
            case CollectionEndEvent():
                self.marks[id(self.open.content)] = array("Q", self.open.marks)
                self.open = self.around.pop()
            case AliasEvent():
                expected = "the value itself, or quotes round a text that begins with *"
                self.find(_start(event), f"a reference (*{event.anchor})", expected)
                self.put(None, _start(event))
            case DocumentStartEvent() if self.top:
                self.find(_start(event), "a second document", "one document in a file")
                raise _Refused
            case _:
                pass

    def begin(self, content: Container, event: CollectionStartEvent) -> None:
        """Put a list or a mapping where it stands, and go on inside it."""
        at = _start(event)
        self.refuse_decoration(event, at)
        if len(self.around) == DEEPEST:
            self.find(at, *TOO_DEEP)
            raise _Refused
        self.put(content, at)
        self.around.append(self.open)
        self.open = _Open(content)

    def put(self, value: Value, at: int) -> None:
        """Put a value in the open list, or take it for the open mapping's next key or value."""
        into = self.open
        if isinstance(into.content, list):
            into.content.append(value)
            into.marks.append(at)
        elif into.key is None:
            into.key, into.key_mark = self.checked_key(value, at), at
        else:
            if into.key != _DROPPED:
                into.mapping[into.key] = value
                into.marks += (into.key_mark, at)
            into.key = None

    def checked_key(self, value: Value, at: int) -> str:
        """The key, or a mark that it and its value are dropped, with the finding that says why."""
        if value is None:
            return _DROPPED
        if not isinstance(value, str):
            self.find(at, "a list or a mapping as a key", "a word")
            return _DROPPED
        if not value:
            self.find(at, "no key", "a word before the colon")
            return _DROPPED
        if value in self.open.mapping:
            first = self.open.marks[2 * list(self.open.mapping).index(value)]
            line = place_at_mark(first, self.file).line
            self.find(at, f"{quoted(value)} stands on line {line} already", "each key once")
            return _DROPPED
        return value

    def checked_scalar(self, event: ScalarEvent, at: int) -> str | None:
        self.refuse_decoration(event, at)
        if event.value or not event.implicit[0] or self.open.key is None:
            return event.value
        dropped = self.open.key == _DROPPED and isinstance(self.open.content, dict)
        return None if dropped else self.nothing(at)

    def nothing(self, at: int) -> None:
        """Tell that a value is missing; where a comma or a colon that looks harmless is the reason, tell that."""
        key = self.open.key or ""
        before, _ = self.line_round(self.open.key_mark)
        comment = self.line_round(at)[1].strip()
        if self.open.mapping and _COMMA_AS_POINT.fullmatch(before[-2:] + key[:1]):
            self.comma_as_point(key)
        elif ":" in key:
            self.find(self.open.key_mark, shortened(key), "a space after the colon", (key.replace(":", ": ", 1),))
            self.open.key = _DROPPED
        elif comment.startswith("#") and not comment.startswith("# "):
            expected = "quotes round a text that begins with #"
            self.find(at, f"{_after(key)} but a comment", expected, (f'"{comment}"',))
        else:
            self.find(at, _after(key), "a value, or the line left out")

    def comma_as_point(self, key: str) -> None:
        """{length: 1,5 mm} holds a length of 1 and a key "5 mm"."""
        last = next(reversed(self.open.mapping))
        whole = self.open.mapping[last]
        found = f"{whole},{shortened(key)} has a comma as decimal sign"
        self.find(self.open.marks[-1], found, "a decimal point", (f"{whole}.{key}",))
        self.open.mapping[last] = None
        self.open.key = _DROPPED

    def refuse_decoration(self, event: ScalarEvent | CollectionStartEvent, at: int) -> None:
        if event.anchor is not None:
            self.find(at, f"an anchor (&{event.anchor})", "the value alone, or quotes round a text that begins with &")
        if event.tag is not None:
            tag = event.tag.replace("tag:yaml.org,2002:", "!!")
            self.find(at, f"a tag ({tag})", "the value alone, or quotes round a text that begins with !")

    def line_round(self, at: int) -> tuple[str, str]:
        """The user's line at a mark: what stands before it and what from there on."""
        place = place_at_mark(at, self.file)
        line, column = (place.line or 1) - 1, (place.column or 1) - 1
        lines = self.text.splitlines()
        whole = lines[line] if line < len(lines) else ""
        return whole[:column], whole[column:]

    def find(self, at: int, found: str, expected: str, suggestions: tuple[str, ...] = ()) -> None:
        self.findings.append(Finding(place_at_mark(at, self.file), found, expected, suggestions))


def _after(key: str) -> str:
    return f"nothing after {shortened(key)}:" if key else "nothing"


def _start(event: Event) -> int:
    start = event.start_mark
    assert start is not None
    return mark(start.line, start.column)


def _events_of(text: str) -> Callable[[], Event | None]:
    """What gives the next event; the parser in Python serves where the one in C is missing, ten times as slowly."""
    loader: type[Any] = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    return loader(text).get_event
