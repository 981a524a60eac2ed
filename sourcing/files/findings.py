"""Mistakes as values: what stands where, what was expected, what may have been meant. Rendered in sheets/."""

from __future__ import annotations

from dataclasses import dataclass


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
