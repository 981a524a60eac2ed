"""What every command shares: its answer as text or JSON, mistakes and warnings, and the exit statuses."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import TypeVar

import typer

from sourcing.files.findings import Finding, Mistakes

NOTHING_RECOMMENDED = 3
SHOWN_MISTAKES = 7

T = TypeVar("T")


class Collector:
    """Gathers the mistakes of several readers, so that all of all files are told at once."""

    def __init__(self) -> None:
        self._findings: list[Finding] = []

    def attempt(self, read: Callable[[], T]) -> T | None:
        """What `read` gives, or None after its mistakes were noted."""
        try:
            return read()
        except Mistakes as mistakes:
            self._findings += mistakes.findings
            return None

    def note(self, findings: Iterable[Finding]) -> None:
        """Add mistakes that a reader gave back instead of raising them."""
        self._findings += findings

    def close(self) -> None:
        """Raise Mistakes where any reader met some."""
        if self._findings:
            raise Mistakes(tuple(self._findings))


def print_json(document: Mapping[str, object]) -> None:
    """One JSON document on standard output."""
    print(json.dumps(document, indent=2, allow_nan=False))


def print_text(lines: Iterable[str]) -> None:
    """The lines of a sheet on standard output."""
    print("\n".join(lines))


def finish(recommended: bool) -> None:
    """End with status 3 where nothing can be recommended."""
    if not recommended:
        raise typer.Exit(NOTHING_RECOMMENDED)


def tell_warnings(warnings: Iterable[Finding]) -> None:
    """Doubts that do not stop the answer, on standard error."""
    from sourcing.sheets.text import finding_line

    for warning in warnings:
        print(f"warning: {finding_line(warning)}", file=sys.stderr)


def tell_mistakes(findings: Sequence[Finding], as_json: bool) -> None:
    """Every mistake as JSON, or the first seven as lines on standard error with the rest counted."""
    from sourcing.sheets.data import mistakes_document
    from sourcing.sheets.text import finding_line

    if as_json:
        print_json(mistakes_document(findings))
        return
    for finding in findings[:SHOWN_MISTAKES]:
        print(finding_line(finding), file=sys.stderr)
    if len(findings) > SHOWN_MISTAKES:
        print(f"... and {len(findings) - SHOWN_MISTAKES} more; --json tells all", file=sys.stderr)


def tell_usage(words: Sequence[str]) -> None:
    """A wrong command line as JSON; the words about it have gone to standard error already."""
    from sourcing.files.findings import Place
    from sourcing.sheets.data import mistakes_document

    found = " ".join(("springwright", *words))
    print_json(mistakes_document((Finding(Place(None), found, "a command line as --help shows it"),)))
