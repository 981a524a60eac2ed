"""What the YAML parser complains of, in our words."""

from __future__ import annotations

from dataclasses import dataclass

from yaml.error import MarkedYAMLError

from sourcing.files.findings import Finding, Place, shortened

DEEPEST = 20
TOO_DEEP = (
    f"more than {DEEPEST} lists or mappings one within the other",
    "keys and values that are not so deeply nested",
)
_ONE_LINE = "a key, a colon, a space and a value, as in  kind: compression"
_TAB = ("a tab", "spaces: a line is indented with spaces only")


@dataclass(frozen=True, slots=True)
class _Complaint:
    """A piece of the parser's words, and ours for it. `at_opening`: the place is where the thing begins, not ends."""

    words: str
    found: str
    expected: str
    at_opening: bool = False


_COMPLAINTS = (
    _Complaint("violates indentation", *_TAB),
    _Complaint("where an indentation space is expected", *_TAB),
    _Complaint("mapping values are not allowed", "a colon too many", "one key a line; a text with a colon in quotes"),
    _Complaint("could not find expected ':'", "a line without a colon", _ONE_LINE, at_opening=True),
    _Complaint("block sequence entries are not", "a - after a key", "the list's first - on a line of its own"),
    _Complaint("expected '-' indicator", "a line outside the list above it", "the indent of the list's other lines"),
    _Complaint("expected ',' or ']'", "a [ that is not closed", "a ] at the end of the list", at_opening=True),
    _Complaint("expected ',' or '}'", "a { that is not closed", "a } at the end of it", at_opening=True),
    _Complaint("escape", "a backslash in double quotes", "single quotes, or two backslashes"),
    _Complaint("hexdecimal", "a backslash in double quotes", "single quotes, or two backslashes"),
    _Complaint("unexpected ':'", "a key with nothing after its colon", "a space and a value after the colon"),
    _Complaint("found unexpected", "a text whose quotes are not closed", "a second quotation mark", at_opening=True),
    _Complaint("<document start>", "more after the end of the document", "one document in a file"),
    _Complaint("YAML document", "a line that begins with %", _ONE_LINE),
    _Complaint("directive", "a line that begins with %", _ONE_LINE),
    _Complaint("scanning an anchor", "a text that begins with &", "quotes round it", at_opening=True),
    _Complaint("scanning an alias", "a text that begins with *", "quotes round it", at_opening=True),
    _Complaint("a tag", "a text that begins with !", "quotes round it", at_opening=True),
    _Complaint("tag handle", "a text that begins with !", "quotes round it"),
    _Complaint("nesting depth", *TOO_DEEP),
    _Complaint("expected key", "a line with another indent", "a key right under the first letter of those above it"),
)
_UNKNOWN = _Complaint("", "a line that makes no sense here", _ONE_LINE)
_AFTER_QUOTES = _Complaint(
    "", "text after a closing quotation mark", "nothing after it, or other quotes round the whole"
)
_NO_COMMA = _Complaint("", "two keys without a comma between them", "a comma after each value in { }")
_ENDS_EARLY = _Complaint("", "the end of the file within a list or a mapping", "a closing ] or }")
_READING_ON = _Complaint(
    "", "a line that reads on from the one above", "a colon and a space after each key, and one indent for all keys"
)


def syntax_finding(error: MarkedYAMLError, text: str, file: str) -> Finding:
    """The mistake that stopped the parser."""
    lines = text.splitlines()
    line, column = _position(error.problem_mark)
    complaint, quoted = _complaint(error, lines[line] if line < len(lines) else "", column)
    if complaint.at_opening and error.context_mark is not None:
        line, column = _position(error.context_mark)
    return Finding(Place(file, line + 1, column + 1), complaint.found, complaint.expected, quoted)


def _position(mark: object) -> tuple[int, int]:
    return getattr(mark, "line", 0), getattr(mark, "column", 0)


def _complaint(error: MarkedYAMLError, line: str, column: int) -> tuple[_Complaint, tuple[str, ...]]:
    """Our words for what the parser says about a line, with the text in quotes where only they are missing."""
    before, rest = line[:column], line[column:]
    said = f"{error.problem} {error.context}"
    if rest.startswith("\t"):
        return _Complaint("", *_TAB), ()
    if "cannot start any token" in said:
        return _Complaint("", f"a text that begins with {rest[:1]}", "quotes round it"), _in_quotes(rest)
    if "comment or line break" in said:
        sign = before.rstrip()[-1:]
        blank = " " if before.endswith(" ") else ""
        return _Complaint("", f"a text that begins with {sign}", "quotes round it", True), _in_quotes(
            sign + blank + rest
        )
    if "node content" in said:
        return (_Complaint("", f"{rest[0]} where a value belongs", "a value") if rest else _ENDS_EARLY), ()
    on_one_line = _position(error.context_mark)[0] == _position(error.problem_mark)[0]
    if "expected ','" in said and rest.startswith(":") and on_one_line:
        return _NO_COMMA, ()
    if "expected key" in said and before.rstrip().endswith(('"', "'")):
        return _AFTER_QUOTES, ()
    if "mapping values" in said and ": " not in before:
        return _READING_ON, ()
    return next((known for known in _COMPLAINTS if known.words in said), _UNKNOWN), ()


def _in_quotes(rest: str) -> tuple[str, ...]:
    """The value that begins a line's rest, in quotes; as far as a reader would say that it goes."""
    value = rest.split(" #")[0].split(",")[0].split("}")[0].strip()
    return (f'"{shortened(value)}"',) if value and '"' not in value else ()
