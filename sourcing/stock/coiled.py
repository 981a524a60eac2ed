"""What the records of coil springs of any kind share: wire, material, coils, diameters, and the doubt about a rate."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeVar

from sourcing.files.fields import NumberAboveZero, WireDiameter
from sourcing.files.findings import Finding
from sourcing.files.records import Read
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.need.kinds import MaterialField
from sourcing.quantities import show_length
from sourcing.springs.model import Spring
from sourcing.springs.rates import rate_of
from sourcing.stock.rates import disagree, show_rate_of
from sourcing.stock.shelf import ShelfRecord

DIAMETERS = ("outside_diameter", "mean_diameter", "inside_diameter")
OF_CONES = {f"{diameter}_{end}": "a conical spring" for diameter in DIAMETERS for end in ("small", "large")}
"""The keys of a cone's diameters, and whose they are."""


class CoiledRecord(ShelfRecord):
    """A coil spring of any kind as it is written, but for its diameters and ends."""

    wire_diameter: WireDiameter
    total_coils: NumberAboveZero = None
    active_coils: NumberAboveZero = None
    material: MaterialField


P = TypeVar("P", bound=CoiledRecord)


def rate_warnings(read: Read[P], spring: Spring) -> list[Finding]:
    """That the rate which the seller states is far from the one that follows from the dimensions."""
    stated = read.record.rate
    if stated is None or not disagree(stated, spring):
        return []
    expected = (
        f"about the {show_rate_of(spring, rate_of(spring))} that follows from the dimensions; "
        "the seller's figure may be right and a dimension wrong"
    )
    return [Finding(read.place("rate"), f"a stated rate of {show_rate_of(spring, stated)}", expected)]


def strength_mpa(record: CoiledRecord) -> float | None:
    """The tensile strength that is stated, else the least of the material at this wire; None where neither is known."""
    if record.tensile_strength is not None or record.material is None or record.wire_diameter is None:
        return record.tensile_strength
    return tensile_strength_mpa(record.material, record.wire_diameter)


def measured_mean_mm(measure: str, diameter_mm: float, wire_diameter_mm: float) -> float:
    """The mean diameter of a coil from one that was measured outside, inside or taken as the mean.

    >>> round(measured_mean_mm("outside_diameter", 9.6, 0.9), 3)
    8.7
    """
    return diameter_mm + {"outside": -1.0, "mean": 0.0, "inside": 1.0}[measure.split("_")[0]] * wire_diameter_mm


def mean_diameter_mm(record: CoiledRecord) -> float | None:
    """The mean diameter of a coil that is as wide at both ends; None where a figure it takes is missing."""
    for measure in DIAMETERS:
        diameter: float | None = getattr(record, measure)
        if diameter is not None and record.wire_diameter is not None:
            return measured_mean_mm(measure, diameter, record.wire_diameter)
    return None


def one_diameter(read: Read[P], end: str = "", of_end: str = "the coil") -> Iterator[Finding]:
    """That exactly one diameter stands in the record; `end` is how a cone's key ends, "_small" or "_large"."""
    keys = [diameter + end for diameter in DIAMETERS]
    given = sorted((key for key in keys if key in read.raw), key=list(read.raw).index)
    if not given:
        yield Finding(read.place(), f"no diameter of {of_end}", f"exactly one of {', '.join(keys)}")
    for diameter in given[1:]:
        line = read.key_place(given[0]).line
        found = f"{diameter}, where {given[0]} stands on line {line} already"
        yield Finding(read.key_place(diameter), found, "one diameter only: the others follow from it and the wire")


def room_inside(read: Read[P], end: str = "") -> Iterator[Finding]:
    """That the wire leaves room inside the coil."""
    wire = read.record.wire_diameter
    if wire is None:
        return
    for measure, least, why in (
        ("outside_diameter", 2 * wire, "twice the wire diameter"),
        ("mean_diameter", wire, "the wire diameter"),
    ):
        key = measure + end
        diameter = getattr(read.record, key)
        if diameter is not None and diameter <= least:
            found = f"{read.text(key)} leaves no room inside the coil"
            yield Finding(read.place(key), found, f"more than {why}, {show_length(least)}")


def some_coils(read: Read[P]) -> Iterator[Finding]:
    """That a number of coils is given."""
    if not {"total_coils", "active_coils"} & read.raw.keys():
        yield Finding(read.place(), "no number of coils", "total_coils or active_coils, or both where the ends are odd")
