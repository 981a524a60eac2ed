"""What the YAML parser complains of, in our words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sourcing.files.findings import Finding, Place, shortened

if TYPE_CHECKING:
    from yaml.error import MarkedYAMLError

_ONE_LINE = "a key, a colon, a space and a value on each line, as in  kind: compression"

# A word of the parser's complaint; what stands there; what should. {character} and {rest} come from the user's line.
_COMPLAINTS: tuple[tuple[str, str, str], ...] = (
    ("violates indentation", "a tab", "spaces: a line is indented with spaces only"),
    ("tab character where", "a tab", "spaces: a line is indented with spaces only"),
    ("mapping values are not allowed", "a colon too many", "one key and value a line; a text with a colon in quotes"),
    ("could not find expected ':'", "a line without a colon", _ONE_LINE),
    ("block sequence entries are not allowed", "a '-' after a key", "a list's first '-' on a line of its own"),
    (
        "expected '-' indicator",
        "a line outside the list above it",
        "'- ' and the same indent as the list's other lines",
    ),
    ("expected ',' or ']'", "a [ that is not closed", "a ] at the end of the list"),
    ("expected ',' or '}'", "a { that is not closed", "a } at the end"),
    ("unexpected end of stream", "a quotation mark that is not closed", "a second one at the end of the text"),
    ("unexpected document indicator", "a quotation mark that is not closed", "a second one at the end of the text"),
    ("escape", "a backslash in double quotes", "single quotes, or two backslashes"),
    ("hexdecimal", "a backslash in double quotes", "single quotes, or two backslashes"),
    ("expected <document start>", "more after the end of the document", "one document in a file"),
    ("YAML document", "a line that begins with %", _ONE_LINE),
    ("directive", "a line that begins with %", _ONE_LINE),
    ("comment or line break", "a text that begins with {character}", 'quotes round it, as in  "{rest}"'),
    ("cannot start any token", "a text that begins with {character}", 'quotes round it, as in  "{rest}"'),
    ("node content", "{character} where a value belongs", "a value"),
    (
        "expected key",
        "{rest}",
        "a key, with the same indent as the keys above it; a text with quotes in it needs others",
    ),
)
_WHERE_IT_OPENS = ("a [", "a {", "a quotation", "a text that begins with", "a line without")


def syntax_finding(error: MarkedYAMLError, text: str, file: str) -> Finding:
    """The mistake that stopped the parser: at the opening mark where something is not closed, else where it stopped."""
    line, column = _stopped_at(error)
    lines = text.splitlines()
    rest = lines[line][column:] if line < len(lines) else ""
    found, expected = _words(error, rest)
    opened = error.context_mark
    if opened is not None and found.startswith(_WHERE_IT_OPENS):
        line, column = opened.line, opened.column
        rest = lines[line][column:] if line < len(lines) else ""
    character, rest = rest[:1] or "the end of the file", _value(rest)
    return Finding(
        Place(file, line + 1, column + 1),
        found.format(character=character, rest=rest),
        expected.format(character=character, rest=rest),
    )


def _stopped_at(error: MarkedYAMLError) -> tuple[int, int]:
    mark = error.problem_mark
    return (mark.line, mark.column) if mark is not None else (0, 0)


def _words(error: MarkedYAMLError, rest: str) -> tuple[str, str]:
    if rest.startswith("\t"):
        return _COMPLAINTS[0][1:]
    problem = f"{error.problem} {error.context}"
    for complaint, found, expected in _COMPLAINTS:
        if complaint in problem:
            return found, expected
    return "{rest}", _ONE_LINE


def _value(rest: str) -> str:
    """The text up to where a reader of the line would say that the value ends."""
    return shortened(rest.split(" #")[0].split(",")[0].split("}")[0].strip().replace('"', "'")) or "the end of the file"
