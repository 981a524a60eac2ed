"""The page of materials: what the tables hold of each wire, and where sources disagree."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from sourcing import materials
from sourcing.materials import Fact
from sourcing.materials.plating import HYDROGEN, THICKNESS
from sourcing.sheets.text import bullets, heading, table, wrapped
from sourcing.tables import rows


def wire_lines() -> Iterator[str]:
    """What each name means, every figure of every wire, and what no single figure holds."""
    yield ""
    yield from wrapped(
        "A figure is followed by its source; (memory) is recalled and not checked against a page. Where sources "
        "disagree, the figure taken is followed by what they print, least to most, and by the reason for the choice."
    )
    yield from wrapped(
        "Corrosion is rated 0 unsuitable, 1 for a short time or coated, 2 suitable with care, 3 suitable; magnetic 0 "
        "not, 1 weakly, 2 strongly."
    )
    yield from heading("Names")
    yield from table(("name", "standard and grade", "G, MPa", "E, MPa"), _names())
    yield from heading("Least tensile strength, by the standards' tables")
    yield from table(("wire", "from mm", "to mm", "rows", "memory"), _strengths())
    for wire, group in groupby(materials.facts(), lambda fact: fact.wire):
        yield from heading(wire)
        yield from bullets(map(_told, group))
    for wire, group in groupby(sorted(materials.stress_facts(), key=_group), _group):
        yield from heading(f"{wire[0].upper()}{wire[1:]}: what share of its least tensile strength it bears")
        yield from bullets(map(_told, group))
    yield from heading("Plating")
    yield from bullets((HYDROGEN, THICKNESS))
    yield from heading("Of other tables")
    of_no_row = (fact for fact in materials.disagreements()[_of_facts() :] if fact not in materials.stress_facts())
    yield from bullets(f"{fact.wire}, {_told(fact)}" for fact in of_no_row)


def _group(fact: Fact) -> str:
    return fact.wire


def _names() -> Iterator[tuple[str, ...]]:
    for name in materials.words():
        wire = materials.find(name)
        if wire is not None:
            moduli = (f"{wire.shear_modulus_mpa:.0f}", f"{wire.elastic_modulus_mpa:.0f}")
            yield name, f"{wire.standard} {wire.grade}", *moduli


def _strengths() -> Iterator[tuple[str, ...]]:
    for grade, group in groupby(rows("wire_strength"), lambda row: f"{row['standard']} {row['grade']}"):
        listed = list(group)
        thinnest = listed[0]["wire_diameter_over_mm"] or listed[0]["wire_diameter_mm"]
        recalled = sum(row["via"] == "memory" for row in listed)
        yield grade, thinnest, listed[-1]["wire_diameter_mm"], str(len(listed)), str(recalled or "")


def _told(fact: Fact) -> str:
    """A figure with its source, and where sources disagree what they print and why this one was taken."""
    unit = f" {fact.unit}" if fact.unit and fact.unit != "rating" else ""
    memory = ", memory" if fact.from_memory else ""
    said = f"{fact.figure}: {fact.value}{unit} ({fact.source.strip()}{memory})"
    if fact.low is not None and fact.high is not None:
        said += f"; sources: {fact.low:g} to {fact.high:g}"
    return said + (f"; {fact.reason}" if fact.reason else "")


def _of_facts() -> int:
    """How many of the disagreements stand beside a figure of a wire."""
    return sum(bool(fact.reason) for fact in materials.facts())
