"""Mistakes as values: what stands where, what was expected, what may have been meant. Rendered in sheets/."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

_LONGEST_FOUND = 60


@dataclass(frozen=True, slots=True)
class Place:
    """Where something was written; line and column count from 1, and are None where the file as a whole is meant."""

    file: str | None
    line: int | None = None
    column: int | None = None


@dataclass(frozen=True, slots=True)
class Finding:
    """One mistake, or (in a list of warnings) one doubt.

    `found` says what stands there, `expected` what should, in the user's words; `suggestions` are nearest first.
    """

    place: Place
    found: str
    expected: str
    suggestions: tuple[str, ...] = ()


class Mistakes(Exception):
    """Carries every mistake of every file that was read. Never empty."""

    def __init__(self, findings: tuple[Finding, ...]) -> None:
        super().__init__(f"{len(findings)} mistakes")
        self.findings = findings


class WrongWords(Mistakes):
    """Mistakes in the words of a command line, not in a file."""


def in_order(*groups: Iterable[Finding]) -> tuple[Finding, ...]:
    """All the findings of the groups, each once: by file, then line, then column; the file as a whole comes first.

    >>> [f.found for f in in_order([Finding(Place("b.yaml", 2, 1), "y", "")], [Finding(Place("a.yaml"), "x", "")])]
    ['x', 'y']
    """
    merged = dict.fromkeys(finding for group in groups for finding in group)
    return tuple(sorted(merged, key=lambda found: _position(found.place)))


def _position(place: Place) -> tuple[str, int, int]:
    return place.file or "", place.line or 0, place.column or 0


def shown(text: str) -> str:
    r"""The text with every character that a terminal would obey or hide written as an escape.

    Control characters, escape codes, line breaks, marks that turn the direction of writing, characters without
    width, and halves of characters are escaped; letters, figures and signs of every script stay.

    >>> print(shown("drawer\n\x1b[31mB4"))
    drawer\n\x1b[31mB4
    >>> print(shown("Fächer 5 µm"))
    Fächer 5 µm
    """
    if text.isprintable():
        return text
    return "".join(c if c.isprintable() else c.encode("unicode_escape").decode("ascii") for c in text)


def quoted(text: str) -> str:
    """A word of the user's as a message repeats it: shortened, in quotation marks."""
    return f"“{shortened(text)}”"


def shortened(text: str) -> str:
    """The text on one line and not too long for a message: what follows the first 60 characters is an ellipsis.

    >>> shortened("a  note\\nof two lines")
    'a note of two lines'
    """
    line = " ".join(text.split())
    return line if len(line) <= _LONGEST_FOUND else line[: _LONGEST_FOUND - 1] + "…"
