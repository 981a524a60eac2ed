"""Whether the figures of a need of a compression spring agree with each other."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from sourcing.files.findings import Finding
from sourcing.files.records import Read
from sourcing.need.checks_common import empty_pocket, is_above, rod_in_bore, says_something, size
from sourcing.need.checks_lengths import force_at, lengths_differ, points_of, with_lengths
from sourcing.need.records import AnyPressedNeed, ConicalPocketRecord
from sourcing.quantities import show_length

NeedRead = Read[AnyPressedNeed]


def findings(need: NeedRead) -> list[Finding]:
    """All that does not agree in a need."""
    checks = (_says_something, _pocket, _ends_of_pocket, _below_free_length, lengths_differ, _forces_rise)
    return [finding for check in checks for finding in check(need)]


def _says_something(need: NeedRead) -> Iterator[Finding]:
    yield from says_something(need, ("working", "pocket", "free_length"), "{length: 24 mm, force: 9 N}")


def _pocket(need: NeedRead) -> Iterator[Finding]:
    cone = isinstance(need.record.pocket, ConicalPocketRecord)
    yield from empty_pocket(need, "large_end, small_end, bore, rod and depth" if cone else "bore, rod and depth")
    yield from rod_in_bore(need)


def _ends_of_pocket(need: NeedRead) -> Iterator[Finding]:
    """The large end sits in the wider bore, and both ends over rods thinner than that."""
    pocket = need.record.pocket
    if not isinstance(pocket, ConicalPocketRecord):
        return
    for key, end in (("large_end", pocket.large_end), ("small_end", pocket.small_end)):
        if end is None:
            continue
        if need.inner("pocket", key) == {}:
            yield Finding(need.place("pocket", key), "an empty end", "at least one of bore and rod")
        yield from rod_in_bore(need, (key,), (key,))
    yield from rod_in_bore(need, ("small_end",), ("large_end",))
    small, large = size(need, "small_end", "bore"), size(need, "large_end", "bore")
    if small is not None and large is not None and small > large:
        wide, narrow = (need.text("pocket", end, "bore") for end in ("small_end", "large_end"))
        found = f"a bore of {narrow} for the large end, and one of {wide} for the small end"
        yield Finding(need.place("pocket", "large_end", "bore"), found, "the wider bore at the large end")


def _below_free_length(need: NeedRead) -> Iterator[Finding]:
    free = need.record.free_length and need.record.free_length.largest
    for number, point in points_of(need):
        length = point.length and point.length.nominal
        if free is not None and length is not None and length > free:
            yield Finding(
                need.place("working", number, "length"),
                f"{need.text('working', number, 'length')} is longer than the free length",
                f"a working length of {show_length(free)} or less (free_length: {need.text('free_length')})",
            )


def _forces_rise(need: NeedRead) -> Iterator[Finding]:
    for (shorter, other, _), (longer, one, _) in combinations(with_lengths(need), 2):
        if one.force and other.force and is_above(one.force, other.force):
            yield Finding(
                need.place("working", shorter, "force"),
                f"{force_at(need, shorter)}, but {force_at(need, longer)}",
                "a force that rises as a compression spring gets shorter",
            )
