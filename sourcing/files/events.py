"""The event loop: one pass over the events of PyYAML's C parser makes plain values and keeps their marks.

Building YAML's nodes first, or an object for each scalar, would cost three to seven times as much. What plain files
of a person have no use for, and what would be read otherwise than it looks, is refused here: a key that stands twice,
anchors, aliases, tags, several documents, keys that are lists, and an empty place where a value belongs.
"""

from __future__ import annotations

import gc
from array import array
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from sourcing.files.disk import read_text
from sourcing.files.document import Container, Document, Value, mark
from sourcing.files.findings import Finding, Mistakes, Place, shortened
from sourcing.files.syntax import syntax_finding

if TYPE_CHECKING:
    from yaml.events import AliasEvent, CollectionStartEvent, Event, ScalarEvent

DEEPEST = 20
_DROPPED = ""  # the key of a value that is not kept; an empty key has been refused


def load(file: str) -> tuple[Document | None, list[Finding]]:
    """What a file holds, and what is wrong with it as plain YAML; None where nothing could be made of it."""
    try:
        text = read_text(file)
    except Mistakes as mistakes:
        return None, list(mistakes.findings)
    return parse(text, file)


def parse(text: str, file: str) -> tuple[Document | None, list[Finding]]:
    """What a text holds, and what is wrong with it as plain YAML; None after a mistake that stops the parser."""
    from yaml.error import MarkedYAMLError, YAMLError

    building = _Building(text, file)
    try:
        with collector_off():
            building.run()
    except MarkedYAMLError as error:
        return None, [*building.findings, syntax_finding(error, text, file)]
    except _Refused:
        return None, building.findings
    except YAMLError:
        return None, [*building.findings, Finding(Place(file), "a text that is not YAML", "keys and values")]
    if not building.top and not text.strip():
        return None, [Finding(Place(file), "an empty file", "keys and values")]
    return Document(file, building.top[0] if building.top else None, building.marks), building.findings


@contextmanager
def collector_off() -> Iterator[None]:
    """Nothing is thrown away while a file is read, so looking for it is time lost: half of a large reading."""
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
    def __init__(self, text: str, file: str) -> None:
        self.text = text
        self.file = file
        self.findings: list[Finding] = []
        self.marks: dict[int, array[int]] = {}
        self.top: list[Value] = []
        self.open = _Open(self.top)
        self.around: list[_Open] = []

    def run(self) -> None:
        from yaml import events

        scalar = events.ScalarEvent
        handlers = {
            events.MappingStartEvent: self.begin,
            events.SequenceStartEvent: self.begin,
            events.MappingEndEvent: self.end,
            events.SequenceEndEvent: self.end,
            events.AliasEvent: self.refuse_alias,
            events.DocumentStartEvent: self.begin_document,
        }
        for event in iter(_parser(self.text), None):
            kind = event.__class__
            if kind is not scalar:
                if handler := handlers.get(kind):
                    handler(event)
                continue
            start = event.start_mark
            at = start.line << 32 | start.column
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

    def checked_scalar(self, event: ScalarEvent, at: int) -> str | None:
        text = event.value
        if event.anchor is not None or event.tag is not None:
            self.refuse_decoration(event)
        return text if text or not event.implicit[0] else self.nothing(at)

    def put(self, value: Value, at: int) -> None:
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
        if value is None:
            return _DROPPED
        if not isinstance(value, str):
            self.find(at, "a list or a mapping as a key", "a word")
            return _DROPPED
        if not value:
            self.find(at, "no key", "a word before the colon")
            return _DROPPED
        content = self.open.content
        if value in content:
            first = self.open.marks[2 * list(content).index(value)] >> 32
            self.find(at, f"{shortened(value)}, which stands on line {first + 1} already", "each key once")
            return _DROPPED
        return value

    def nothing(self, at: int) -> str | None:
        key = self.open.key
        if isinstance(self.open.content, dict) and key is None:
            return ""
        line, column = at >> 32, at & 0xFFFFFFFF
        rest = self.text.splitlines()[line : line + 1]
        comment = rest[0][column:].strip() if rest else ""
        after = f"nothing after {shortened(key)}:" if key else "nothing"
        if comment.startswith("#") and not comment.startswith("# "):
            self.find(at, f"{after} but a comment", f'a value; a text that begins with # in quotes: "{comment}"')
        else:
            self.find(at, after, "a value, or the line left out")
        return None

    def begin(self, event: CollectionStartEvent) -> None:
        if event.anchor is not None or event.tag is not None:
            self.refuse_decoration(event)
        at = mark(event.start_mark.line, event.start_mark.column)
        if len(self.around) == DEEPEST:
            self.find(at, f"more than {DEEPEST} lists or mappings, one in the other", "a flat file")
            raise _Refused
        content: Container = {} if event.__class__.__name__ == "MappingStartEvent" else []
        self.put(content, at)
        self.around.append(self.open)
        self.open = _Open(content)

    def end(self, _event: Event) -> None:
        self.marks[id(self.open.content)] = array("Q", self.open.marks)
        self.open = self.around.pop()

    def begin_document(self, event: Event) -> None:
        if self.top:
            at = mark(event.start_mark.line, event.start_mark.column)
            self.find(at, "a second document", "one document in a file")
            raise _Refused

    def refuse_alias(self, event: AliasEvent) -> None:
        at = mark(event.start_mark.line, event.start_mark.column)
        self.find(at, f"a reference (*{event.anchor})", "the value itself, or quotes round a text that begins with *")
        self.put(None, at)

    def refuse_decoration(self, event: ScalarEvent | CollectionStartEvent) -> None:
        at = mark(event.start_mark.line, event.start_mark.column)
        if event.anchor is not None:
            self.find(at, f"an anchor (&{event.anchor})", "the value alone, or quotes round a text that begins with &")
        if event.tag is not None:
            tag = event.tag.replace("tag:yaml.org,2002:", "!!")
            self.find(at, f"a tag ({tag})", "the value alone, or quotes round a text that begins with !")

    def find(self, at: int, found: str, expected: str) -> None:
        place = Place(self.file, (at >> 32) + 1, (at & 0xFFFFFFFF) + 1)
        self.findings.append(Finding(place, found, expected))


def _parser(text: str):
    try:
        from yaml.cyaml import CParser

        return CParser(text).get_event
    except ImportError:
        from yaml import SafeLoader

        return SafeLoader(text).get_event
