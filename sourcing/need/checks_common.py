"""What the checks of a need of any kind share: is there anything of its size, does the rod go into the bore."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeVar

from sourcing.files.findings import Finding
from sourcing.files.records import Read, Record
from sourcing.quantities import Wanted

R = TypeVar("R", bound=Record)


def says_something(need: Read[R], keys: Sequence[str], point: str) -> Iterator[Finding]:
    """That one of the keys stands there, and a working point under `working`, such as `point`."""
    if not set(keys) & need.raw.keys():
        expected = f"at least one of {', '.join(keys[:-1])} and {keys[-1]}"
        yield Finding(need.place(), "nothing of the spring's size", expected)
    if need.raw.get("working") == []:
        yield Finding(need.place("working"), "an empty list", f"a working point, as in  - {point}")


def empty_pocket(need: Read[R], keys: str) -> Iterator[Finding]:
    """That there is something in the pocket, one of `keys` in words."""
    if need.raw.get("pocket") == {}:
        yield Finding(need.place("pocket"), "an empty pocket", f"at least one of {keys}")


def rod_in_bore(need: Read[R], rod_at: tuple[str, ...] = (), bore_at: tuple[str, ...] = ()) -> Iterator[Finding]:
    """That a rod is thinner than the bore; each stands in the pocket itself, or in one of its ends."""
    rod, bore = size(need, *rod_at, "rod"), size(need, *bore_at, "bore")
    if rod is not None and bore is not None and rod >= bore:
        rod_text, bore_text = need.text("pocket", *rod_at, "rod"), need.text("pocket", *bore_at, "bore")
        found = f"a rod of {rod_text} in a bore of {bore_text}"
        if rod_at != bore_at:
            found = f"a rod of {rod_text} at the small end, and a bore of {bore_text} at the large end"
        yield Finding(need.place("pocket", *rod_at, "rod"), found, "a rod thinner than the bore")


def size(need: Read[R], *path: str) -> float | None:
    """The figure that is meant by a bore or a rod of the pocket."""
    value: object = getattr(need.record, "pocket", None)
    for key in path:
        value = getattr(value, key, None)
    return figure(value) if isinstance(value, Wanted) else None


def figure(wanted: Wanted) -> float | None:
    """The figure that is meant: the nominal, or the bound that counts."""
    return next((each for each in (wanted.nominal, wanted.low, wanted.high) if each is not None), None)


def is_above(one: Wanted, other: Wanted) -> bool:
    """Whether the first is the larger whatever the two turn out to be; two plain figures are taken as they are."""
    if one.nominal is not None and other.nominal is not None:
        return one.nominal > other.nominal
    return one.smallest is not None and other.largest is not None and one.smallest > other.largest
