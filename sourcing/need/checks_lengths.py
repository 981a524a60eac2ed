"""Checks of working points that are lengths with forces, of a spring that is pressed or pulled."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import Any

from sourcing.files.findings import Finding
from sourcing.files.records import Read
from sourcing.need.records import WorkingRecord


def lengths_differ(need: Read[Any]) -> Iterator[Finding]:
    """That each working point has a length of its own."""
    for (first, one), (second, other) in combinations(points_of(need), 2):
        if one.length and other.length and one.length.nominal == other.length.nominal:
            line = need.place("working", first, "length").line
            found = f"{need.text('working', second, 'length')} is the length of the working point on line {line}"
            yield Finding(need.place("working", second, "length"), found, "another length at each working point")


def force_at(need: Read[Any], number: int) -> str:
    """A wanted force with its length, as they are written."""
    return f"{need.text('working', number, 'force')} at {need.text('working', number, 'length')}"


def points_of(need: Read[Any]) -> list[tuple[int, WorkingRecord]]:
    """The working points with their numbers in the file."""
    return [(number, point) for number, point in enumerate(need.record.working or ()) if point is not None]


def with_lengths(need: Read[Any]) -> list[tuple[int, WorkingRecord, float]]:
    """The working points that have a length, with it, the shortest first."""
    points = [
        (number, point, point.length.nominal)
        for number, point in points_of(need)
        if point.length is not None and point.length.nominal is not None
    ]
    return sorted(points, key=lambda each: each[2])
