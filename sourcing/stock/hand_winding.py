"""The limits of winding by hand as they are written in the bench file.

From each on something holds: caution on the sheet, no drill but a vice and a crank, no winding at all. Each is a wire
diameter, and with `_moment` added a moment at the crank.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from sourcing.files.fields import Length, Torque, WireDiameter
from sourcing.files.findings import Finding, Place
from sourcing.files.records import Record
from sourcing.quantities import show_length, show_torque
from sourcing.stock.model import HandWinding

USUAL = HandWinding()
CRANK_MM = (20.0, 500.0)
"""Between these lies the handle of any crank that a hand turns (assumed)."""

KEYS = {
    "caution": "caution_mm",
    "vice_and_crank": "vice_and_crank_mm",
    "stop": "stop_mm",
    "caution_moment": "caution_n_mm",
    "vice_and_crank_moment": "vice_and_crank_n_mm",
    "stop_moment": "stop_n_mm",
}
"""Each limit as it is written, and as it is called in `HandWinding`."""

At = Callable[[str], Place]
"""Where a key of `hand_winding` stands."""


class HandWindingRecord(Record):
    """The limits of winding by hand, and the crank."""

    called = "hand_winding"

    caution: WireDiameter = None
    vice_and_crank: WireDiameter = None
    stop: WireDiameter = None
    caution_moment: Torque = None
    vice_and_crank_moment: Torque = None
    stop_moment: Torque = None
    crank: Length = None


def limits(record: HandWindingRecord) -> HandWinding:
    """The limits; one that is not stated is the usual one, but never beyond a stop that is."""
    found = {name: value for key, name in KEYS.items() if (value := getattr(record, key)) is not None}
    stop_mm, stop_n_mm = found.get("stop_mm", USUAL.stop_mm), found.get("stop_n_mm", USUAL.stop_n_mm)
    usual = {
        name: min(getattr(USUAL, name), stop_n_mm if key.endswith("_moment") else stop_mm) for key, name in KEYS.items()
    }
    return HandWinding(**{**usual, **found}, crank_mm=USUAL.crank_mm if record.crank is None else record.crank)


def beyond_the_stop(record: HandWindingRecord | None, at: At) -> Iterator[Finding]:
    """Limits that are stated beyond where winding stops."""
    if record is None:
        return
    made = limits(record)
    for key, name in KEYS.items():
        stop = made.stop_n_mm if key.endswith("_moment") else made.stop_mm
        if getattr(made, name) > stop:
            found = f"{key} from {_shown(key, getattr(made, name))}, where {_shown(key, stop)} stops already"
            yield Finding(at(key), found, "a limit below the stop")


def raised(record: HandWindingRecord | None, at: At) -> Iterator[Finding]:
    """Limits above the usual ones, which a bench may lower, and what can be no crank."""
    if record is None:
        return
    for key, name in KEYS.items():
        stated, usual = getattr(record, key), getattr(USUAL, name)
        if stated is not None and stated > usual:
            expected = f"{_shown(key, usual)} or less: more than is common practice is at your own risk"
            yield Finding(at(key), f"{key} from {_shown(key, stated)}", expected)
    low, high = CRANK_MM
    if record.crank is not None and not low <= record.crank <= high:
        expected = f"how far its handle is from its axis, {show_length(low)} to {show_length(high)}"
        yield Finding(at("crank"), f"a crank of {show_length(record.crank)}", expected)


def _shown(key: str, value: float) -> str:
    return show_torque(value) if key.endswith("_moment") else show_length(value)
