"""Whether the figures of a need of an extension spring agree with each other."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from sourcing.files.findings import Finding
from sourcing.files.records import Read
from sourcing.need.checks_common import empty_pocket, is_above, says_something
from sourcing.need.checks_lengths import force_at, lengths_differ, with_lengths
from sourcing.need.records import ExtensionNeed
from sourcing.quantities import show_length

NeedRead = Read[ExtensionNeed]


def findings(need: NeedRead) -> list[Finding]:
    """All that does not agree in a need."""
    checks = (
        _says_something,
        _pocket,
        _above_free_length,
        lengths_differ,
        _forces_rise,
        _forces_above_initial_tension,
        _pulled_far_enough,
    )
    return [finding for check in checks for finding in check(need)]


def _says_something(need: NeedRead) -> Iterator[Finding]:
    yield from says_something(need, ("working", "pocket", "free_length"), "{length: 52 mm, force: 9 N}")


def _pocket(need: NeedRead) -> Iterator[Finding]:
    yield from empty_pocket(need, "bore")


def _above_free_length(need: NeedRead) -> Iterator[Finding]:
    free = need.record.free_length and need.record.free_length.smallest
    for number, _, length in with_lengths(need):
        if free is not None and length < free:
            yield Finding(
                need.place("working", number, "length"),
                f"{need.text('working', number, 'length')} is shorter than the free length",
                f"a working length of {show_length(free)} or more, for an extension spring only pulls "
                f"(free_length: {need.text('free_length')})",
            )


def _forces_rise(need: NeedRead) -> Iterator[Finding]:
    for (shorter, one, _), (longer, other, _) in combinations(with_lengths(need), 2):
        if one.force and other.force and is_above(one.force, other.force):
            yield Finding(
                need.place("working", longer, "force"),
                f"{force_at(need, longer)}, but {force_at(need, shorter)}",
                "a force that rises as an extension spring gets longer",
            )


def _forces_above_initial_tension(need: NeedRead) -> Iterator[Finding]:
    """Below its initial tension a spring does not open: no force that is wanted can be less."""
    tension = need.record.initial_tension
    for number, point, _ in with_lengths(need):
        if tension is not None and point.force is not None and is_above(tension, point.force):
            yield Finding(
                need.place("working", number, "force"),
                f"{force_at(need, number)}, less than the initial tension of {need.text('initial_tension')}",
                "a force above the initial tension: below it the coils stay closed",
            )


def _pulled_far_enough(need: NeedRead) -> Iterator[Finding]:
    """What it is pulled to when it goes in is no shorter than the shortest length that it works at."""
    pulled, points = need.record.pull_to_fit, with_lengths(need)
    if pulled is not None and points and pulled < points[0][2]:
        yield Finding(
            need.place("pull_to_fit"),
            f"pulled to {need.text('pull_to_fit')} to go in, and never shorter than {show_length(points[0][2])} in use",
            "the length it must be pulled to when it is hooked in, at least its shortest working length",
        )
