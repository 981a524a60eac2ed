"""Findings as a test writes them: line, column, what stands there, what was expected, what may have been meant."""

from collections.abc import Callable, Iterable
from pathlib import Path
from textwrap import dedent

import pytest

from sourcing.files.findings import Finding, Mistakes


def told(findings: Iterable[Finding]) -> list[str]:
    """Each finding in a line, without its file."""
    return [_line(finding) for finding in findings]


def mistakes_of(read: Callable[[Path], object], path: Path) -> tuple[Finding, ...]:
    """What a reader says is wrong; that it says something is part of every test that asks."""
    with pytest.raises(Mistakes) as raised:
        read(path)
    return raised.value.findings


def written(folder: Path, text: str, name: str = "file.yaml") -> Path:
    """A file with this text, its indent taken off."""
    path = folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(dedent(text).lstrip("\n").encode())
    return path


def _line(finding: Finding) -> str:
    place = f"{finding.place.line}:{finding.place.column}: " if finding.place.line else ""
    meant = f"; did you mean {' or '.join(finding.suggestions)}?" if finding.suggestions else ""
    return f"{place}{finding.found}; expected {finding.expected}{meant}"
