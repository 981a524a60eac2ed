"""Every figure of the tables of wire as a value: with its source, and where sources disagree, how far and why."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sourcing.materials.model import Material
from sourcing.tables import rows


@dataclass(frozen=True, slots=True)
class Fact:
    """One figure of a wire as its table holds it: `value` is what the program takes, as it is written there.

    `low` and `high` bound what sources print where they disagree (None: not a matter of one number), `reason` says why
    this one was taken, and is empty where they agree. `from_memory`: recalled, not checked against its page.
    """

    wire: str
    figure: str
    value: str
    unit: str
    source: str
    from_memory: bool
    low: float | None = None
    high: float | None = None
    reason: str = ""


def facts(material: Material | None = None) -> tuple[Fact, ...]:
    """What the table of materials holds, of one material or of all, in the order of the table.

    >>> from sourcing.materials import find
    >>> modulus = facts(find("music-wire"))[1]
    >>> modulus.figure, modulus.value, modulus.low, modulus.high
    ('shear modulus', '81500', 80000.0, 82700.0)
    """
    return tuple(fact for fact, row in _materials() if material is None or _is_of(material, row))


def disagreements(material: Material | None = None) -> tuple[Fact, ...]:
    """Where sources disagree: the figure taken, between which figures the others lie, and why it was taken.

    With a material, those of its own rows; without, those of every wire and of every table, what no single row holds
    last.

    >>> from sourcing.materials import find
    >>> [fact.figure for fact in disagreements(find("brass"))]
    ['modulus fall', 'shear modulus', 'elastic modulus']
    """
    doubted = tuple(fact for fact in facts(material) if fact.reason)
    if material is not None:
        return doubted
    return (*doubted, *(fact for fact in stress_facts() if fact.reason), *_of_no_row())


def stress_facts() -> tuple[Fact, ...]:
    """What share of its least tensile strength a wire may bear: in steady duty by group of wire, then by cycles.

    >>> first = stress_facts()[0]
    >>> first.wire, first.figure, first.value, first.unit
    ('drawn wire', 'compression at a length, uncorrected', '0.50', 'of the strength')
    """
    return tuple(_of_stresses())


def _of_stresses() -> Iterator[Fact]:
    for row in rows("permissible"):
        set_ = "" if row["set"] == "as it is" else f", set {row['set']}"
        figure = f"{row['place']}, {row['factor']}{set_}"
        yield _fact(f"{row['group']} wire", figure, row["share"], {**row, "unit": "of the strength"})
    for row in rows("fatigue"):
        figure = f"{row['place']}, {row['cycles']} times from nothing to it"
        yield _fact(f"{row['group']} wire", figure, row["share"], {**row, "unit": "of the strength"})


def _materials() -> Iterator[tuple[Fact, dict[str, str]]]:
    for row in rows("materials"):
        wire = f"{row['standard']} {row['grade']}".strip()
        yield _fact(wire, row["figure"].replace("_", " "), row["value"], row), row


def _of_no_row() -> Iterator[Fact]:
    for row in rows("disagreements"):
        yield _fact(row["wire"], row["figure"], row["chosen"], row)


def _fact(wire: str, figure: str, value: str, row: dict[str, str]) -> Fact:
    low, high = (float(row[bound]) if row[bound] else None for bound in ("low", "high"))
    unit = "" if row["unit"] == "-" else row["unit"]
    return Fact(wire, figure, value, unit, row["source"], row["via"] == "memory", low, high, row["reason"])


def _is_of(material: Material, row: dict[str, str]) -> bool:
    return row["standard"] == material.standard and material.grade.startswith(row["grade"])
