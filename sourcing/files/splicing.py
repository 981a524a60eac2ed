"""A file of the user's with one thing changed in it: all characters but those that change stay as they are.

A change is cut into the text at the marks of what it changes, in the way of writing that stands there (block or flow,
quoted or plain, the file's own line breaks). What comes out is read again: it must hold the change, all else that it
held, and nothing more. The disk is touched in replacing.py.
"""

from __future__ import annotations

import re
from codecs import BOM_UTF8
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import islice

from yaml.error import YAMLError

from sourcing.files.comments import comments
from sourcing.files.disk import text_of
from sourcing.files.document import Document, Value
from sourcing.files.events import end_of_value, parse
from sourcing.files.findings import Finding, Mistakes, Place, quoted

_LINE_BREAK = re.compile("\r\n|\r|\n")
_PLAIN = re.compile(r"[^\W_](?:[\w./±%+*()§µ°-]| (?! |$))*")
_ONE_LINE = re.compile(r"[^\r\n|>][^\r\n]*")


@dataclass(frozen=True, slots=True)
class Source:
    """A file as it stands: its bytes, the text that they are, and what that text holds."""

    file: str
    raw: bytes
    text: str
    document: Document

    def records(self, top: str) -> list[Value]:
        """The list under the file's one key; empty where there is none."""
        value = self.document.value
        records = value.get(top) if isinstance(value, dict) else None
        return records if isinstance(records, list) else []

    def number_of(self, top: str, name: str) -> int:
        """The number of the record with that id in the list. Raises `Mistakes` where it stands there no longer."""
        for number, record in enumerate(self.records(top)):
            if isinstance(record, dict) and record.get("id") == name:
                return number
        found = f"{quoted(name)} stands here no longer"
        raise Mistakes((Finding(Place(self.file), found, "a second try; nothing was changed"),))

    def offset(self, place: Place) -> int:
        """How many characters of the text stand before a place."""
        line, column = (place.line or 1) - 1, (place.column or 1) - 1
        before = next(islice(_LINE_BREAK.finditer(self.text), line - 1, None)).end() if line else 0
        return before + column


@dataclass(frozen=True, slots=True)
class Edited:
    """A file's bytes after a change; `line`, from 1, is where it stands, `changed` are its lines as they now read."""

    raw: bytes
    line: int
    changed: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Cut:
    """What takes the place of the characters from one offset of the text to another."""

    start: int
    end: int
    new: str


@dataclass(frozen=True, slots=True)
class _Written:
    """A record as it is written: where it begins, and where its keys and values stand."""

    source: Source
    record: dict[str, Value]
    place: Place

    @property
    def begin(self) -> int:
        return self.source.offset(self.place)

    def first_key(self) -> Place:
        return self.source.document.key_place(self.record, next(iter(self.record)))

    def quote(self) -> str:
        """The quotation mark that stands round the first key; none where it is plain."""
        sign = self.source.text[self.source.offset(self.first_key())]
        return sign if sign in "'\"" else ""

    def extent(self, key: str) -> tuple[int, int]:
        """Where the value under a key begins and ends."""
        start = self.source.offset(self.source.document.place(self.record, key))
        return start, end_of_value(self.source.text, self.begin, (self.place.column or 1) - 1, start)


def source_of(raw: bytes, file: str) -> Source:
    """What a file's bytes hold. Raises `Mistakes` where they are no plain YAML."""
    text = text_of(raw, file)
    document, findings = parse(text, file)
    if document is None or findings:
        raise Mistakes(tuple(findings))
    return Source(file, raw, text, document)


def with_value(source: Source, top: str, number: int, key: str, text: str) -> Edited:
    """The file with another figure under a key of one of its records: that of this number in the list under `top`.

    The figure is written as it is given. A key that the record has not yet comes after its last one that stands on one
    line. Raises `Mistakes` where the record is written so that this cannot be done safely.
    """
    records = source.records(top)
    record, place = records[number], source.document.place(records, number)
    assert isinstance(record, dict)
    written = _Written(source, record, place)
    try:
        cut = _replacement(written, key, text) if key in record else _insertion(written, key, text)
    except (ValueError, YAMLError):
        raise _unsure(place) from None
    return _read_back(source, cut, top, [*records[:number], {**record, key: text}, *records[number + 1 :]], place)


def with_entry(source: Source, top: str, record: Mapping[str, str]) -> Edited:
    """The file with one more record at the end of the list under `top`, written as the last one is.

    Raises `Mistakes` where the file is written so that this cannot be done safely.
    """
    records, value = source.records(top), source.document.value
    assert isinstance(value, dict)
    place = source.document.place(value, top)
    in_brackets = source.text[source.offset(place)] == "["
    try:
        cut = (_entry_in_brackets if in_brackets else _entry_at_the_end)(source, records, place, record)
    except (ValueError, YAMLError):
        raise _unsure(place) from None
    return _read_back(source, cut, top, [*records, dict(record)], place)


def with_inner_entry(source: Source, top: str, number: int, key: str, entry: Mapping[str, str]) -> Edited:
    """The file with one more entry at the end of the list under a key of one of its records, in braces on one line.

    A key that the record has not yet comes as `with_value` puts it. Raises `Mistakes` as that does.
    """
    records = source.records(top)
    record, place = records[number], source.document.place(records, number)
    assert isinstance(record, dict)
    old = record.get(key, [])
    inner: list[Value] = old if isinstance(old, list) else []
    try:
        cut = _inner_entry(_Written(source, record, place), key, inner, entry)
    except (ValueError, YAMLError):
        raise _unsure(place) from None
    entries: list[Value] = [*inner, dict(entry)]
    changed: dict[str, Value] = {**record, key: entries}
    return _read_back(source, cut, top, [*records[:number], changed, *records[number + 1 :]], place)


def without_last_entry(source: Source, top: str, number: int, key: str) -> Edited:
    """The file without the last entry of the list under a key of one of its records; with its only one the key goes.

    Every comment stays. `line` and `changed` of what is returned are those that are gone, in brackets the entry alone.
    Raises `Mistakes` as `with_value` does.
    """
    records = source.records(top)
    record, place = records[number], source.document.place(records, number)
    assert isinstance(record, dict)
    inner = record[key]
    assert isinstance(inner, list)
    others = {name: value for name, value in record.items() if name != key}
    left: dict[str, Value] = {**record, key: inner[:-1]} if len(inner) > 1 else others
    try:
        cut = _removal(_Written(source, record, place), key, inner)
    except (ValueError, YAMLError):
        raise _unsure(place) from None
    edited = _read_back(source, cut, top, [*records[:number], left, *records[number + 1 :]], place)
    if _comments_of(text_of(edited.raw, source.file)) != _comments_of(source.text):
        raise _unsure(place)
    begin, gone = cut.start, source.text[cut.start : cut.end]
    if gone.lstrip().startswith(","):
        begin = source.offset(source.document.place(inner, len(inner) - 1))
        gone = source.text[begin : end_of_value(source.text, begin, 0, begin)]
    begin += len(gone) - len(gone.lstrip("\r\n"))
    lines = tuple(_LINE_BREAK.split(gone.strip("\r\n")))
    return Edited(edited.raw, len(_LINE_BREAK.findall(source.text, 0, begin)) + 1, lines)


def _comments_of(text: str) -> list[str]:
    return [text[begin:end] for begin, end in comments(text)]


def as_scalar(text: str) -> str:
    r"""A text as it is written in YAML: plain where that is read as itself everywhere, else in quotes.

    >>> print(as_scalar("drawer B4"), as_scalar("a: b"), as_scalar("it's #1"), as_scalar("T\n\x1b"))
    drawer B4 'a: b' 'it''s #1' "T\u000A\u001B"
    """
    if _PLAIN.fullmatch(text):
        return text
    if text.isprintable():
        return "'" + text.replace("'", "''") + "'"
    return '"' + "".join(map(_escaped, text)) + '"'


def _escaped(character: str) -> str:
    if character in '"\\':
        return "\\" + character
    code = ord(character)
    return character if character.isprintable() else f"\\u{code:04X}" if code <= 0xFFFF else f"\\U{code:08X}"


def _replacement(written: _Written, key: str, text: str) -> _Cut:
    """The value's own characters; quotes round it, and the line breaks that end a text over several lines, stay."""
    start, end = written.extent(key)
    old = written.source.text[start:end]
    return _Cut(start + 1, end - 1, text) if old[0] in "'\"" else _Cut(start, start + len(old.rstrip()), text)


def _insertion(written: _Written, key: str, text: str) -> _Cut:
    quote = written.quote()
    entry = f"{quote}{key}{quote}: {text}"
    if written.source.text[written.begin] == "{":
        _, end = written.extent(next(reversed(written.record)))
        return _Cut(end, end, f", {entry}")
    end = _end_of_line(written.source.text, _last_on_one_line(written))
    indent = " " * ((written.first_key().column or 1) - 1)
    return _Cut(end, end, _line_break(written.source.text, end) + indent + entry)


def _inner_entry(written: _Written, key: str, inner: list[Value], entry: Mapping[str, str]) -> _Cut:
    source, text = written.source, written.source.text
    if key not in written.record:
        in_braces = text[written.begin] == "{"
        end = _insertion(written, key, "").start
        indent = " " * ((written.first_key().column or 1) - 1)
        brk = _line_break(text, end)
        block = f"{brk}{indent}{key}:{brk}{indent}  - {_flow(entry)}"
        return _Cut(end, end, f", {key}: [{_flow(entry)}]" if in_braces else block)
    place = source.document.place(written.record, key)
    if text[source.offset(place)] == "[":
        return _entry_in_brackets(source, inner, place, entry)
    last = source.offset(source.document.place(inner, len(inner) - 1))
    dash = text.rfind("-", 0, last)
    indent = text[_start_of_line(text, dash) : dash]
    if indent.strip():
        raise ValueError(indent)
    end = _end_of_line(text, _end_of_entry(source, inner, dash, len(indent)))
    return _Cut(end, end, f"{_line_break(text, end)}{indent}- {_flow(entry)}")


def _removal(written: _Written, key: str, inner: list[Value]) -> _Cut:
    source, text = written.source, written.source.text
    start, end = written.extent(key)
    whole = source.offset(source.document.key_place(written.record, key))
    if text[start] != "[":
        dash = text.rfind("-", 0, source.offset(source.document.place(inner, len(inner) - 1)))
        end = _end_of_entry(source, inner, dash, dash - _start_of_line(text, dash))
        return _lines_removed(text, whole if len(inner) == 1 else dash, end)
    if len(inner) > 1:
        column = (source.document.place(written.record, key).column or 1) - 1
        places = (source.document.place(inner, len(inner) - back) for back in (2, 1))
        before, last = (end_of_value(text, start, column, source.offset(place)) for place in places)
        return _Cut(before, last, "")
    if text[written.begin] != "{":
        return _lines_removed(text, whole, end)
    names = list(written.record)
    if names[0] == key:
        raise ValueError(key)
    return _Cut(written.extent(names[names.index(key) - 1])[1], end, "")


def _lines_removed(text: str, start: int, end: int) -> _Cut:
    """The whole lines from one offset to another, of which nothing stays but the comments."""
    begin, stop = _start_of_line(text, start), _end_of_line(text, end)
    indent = text[begin:start]
    if indent.strip():
        raise ValueError(indent)
    kept = [text[at:to] for at, to in comments(text) if begin <= at < stop]
    if kept:
        return _Cut(begin, stop, _line_break(text, stop).join(indent + comment for comment in kept))
    if ended := _LINE_BREAK.match(text, stop):
        return _Cut(begin, ended.end(), "")
    *_, before = _LINE_BREAK.finditer(text, 0, begin)
    return _Cut(before.start(), stop, "")


def _end_of_entry(source: Source, inner: list[Value], dash: int, column: int) -> int:
    """Where the last entry of a list ends; in block style, where its last value on one line does."""
    place, entry = source.document.place(inner, len(inner) - 1), inner[-1]
    begin = source.offset(place)
    if isinstance(entry, dict) and source.text[begin] != "{":
        return _last_on_one_line(_Written(source, entry, place))
    return end_of_value(source.text, dash, column, begin)


def _last_on_one_line(written: _Written) -> int:
    """Where the last value ends that stands on one line. Raises `ValueError` where there is none."""
    for key in reversed(written.record):
        start, end = written.extent(key)
        if isinstance(written.record[key], str) and _ONE_LINE.fullmatch(written.source.text, start, end):
            return end
    raise ValueError(written.record)


def _entry_in_brackets(source: Source, records: list[Value], place: Place, record: Mapping[str, str]) -> _Cut:
    start = source.offset(place)
    if not records:
        return _Cut(start + 1, start + 1, _flow(record))
    last = source.offset(source.document.place(records, len(records) - 1))
    end = end_of_value(source.text, start, (place.column or 1) - 1, last)
    return _Cut(end, end, f", {_flow(record)}")


def _entry_at_the_end(source: Source, records: list[Value], place: Place, record: Mapping[str, str]) -> _Cut:
    """The file's one list reaches to its end: the record stands there, after comments that close the file."""
    text = source.text
    last = source.document.place(records, len(records) - 1)
    column, begin = (last.column or 1) - 1, source.offset(last)
    dash = f"{' ' * ((place.column or 1) - 1)}-".ljust(column)
    brk = _line_break(text, begin)
    if text[begin] == "{":
        lines = [dash + _flow(record)]
    else:
        pairs = [f"{key}: {as_scalar(value)}" for key, value in record.items()]
        lines = [dash + pairs[0], *(" " * column + pair for pair in pairs[1:])]
    ended = text.endswith(("\n", "\r"))
    apart = len(records) > 1 and _after_an_empty_line(text, begin)
    return _Cut(len(text), len(text), ("" if ended else brk) + brk * apart + brk.join(lines) + brk * ended)


def _after_an_empty_line(text: str, offset: int) -> bool:
    """Whether the line before the one of an offset is empty."""
    before = text[: _start_of_line(text, offset)].removesuffix("\n").removesuffix("\r")
    return not before[_start_of_line(before, len(before)) :].strip()


def _flow(record: Mapping[str, str]) -> str:
    return "{" + ", ".join(f"{key}: {as_scalar(value)}" for key, value in record.items()) + "}"


def _start_of_line(text: str, offset: int) -> int:
    return max(text.rfind("\n", 0, offset), text.rfind("\r", 0, offset)) + 1


def _end_of_line(text: str, offset: int) -> int:
    found = _LINE_BREAK.search(text, offset)
    return found.start() if found else len(text)


def _line_break(text: str, offset: int) -> str:
    """The line break that comes next, else the file's first."""
    found = _LINE_BREAK.search(text, offset) or _LINE_BREAK.search(text)
    return found[0] if found else "\n"


def _read_back(source: Source, cut: _Cut, top: str, records: list[Value], place: Place) -> Edited:
    """The text after the cut, if it holds these records and all else that the file held."""
    value = source.document.value
    assert isinstance(value, dict)
    text = source.text[: cut.start] + cut.new + source.text[cut.end :]
    document, findings = parse(text, source.file)
    if findings or document is None or document.value != {**value, top: records}:
        raise _unsure(place)
    first = cut.start + len(cut.new) - len(cut.new.lstrip("\r\n"))
    line = len(_LINE_BREAK.findall(text, 0, first)) + 1
    end = _end_of_line(text, cut.start + len(cut.new.rstrip("\r\n")))
    begin = _start_of_line(text, first)
    mark = BOM_UTF8 if source.raw.startswith(BOM_UTF8) else b""
    return Edited(mark + text.encode(), line, tuple(_LINE_BREAK.split(text[begin:end])))


def _unsure(place: Place) -> Mistakes:
    found = "a way of writing that a program cannot change safely"
    return Mistakes((Finding(place, found, "the change by hand, in an editor; nothing was changed"),))
