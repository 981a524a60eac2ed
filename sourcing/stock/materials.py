"""The keeper's own materials (materials.yaml) made into materials like those of the standards."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Annotated

from pydantic import Field

from sourcing import materials
from sourcing import quantities as q
from sourcing.files.document import Document
from sourcing.files.fields import NumberAboveZero, Temperature, Text, WireDiameter, one_of, read_by, words_of
from sourcing.files.findings import Finding, Place, quoted
from sourcing.files.nearest import nearest
from sourcing.files.records import Read, Record, read_record
from sourcing.materials.model import Material
from sourcing.need.records import SURROUNDINGS
from sourcing.quantities import QuantityError, show_length, show_stress, show_temperature
from sourcing.stock.lists import listed, told_twice

ASSUMED_FLOW_RATIO, ASSUMED_DOUBT = 1.0, 0.10
"""The prior of the flow stress over the least tensile strength where its keeper gives none (assumed)."""

ASSUMED_HEAT_CHANGE = 0.01
"""By how much a diameter may change in stress relief, either way (assumed: music wire closes and 302 opens by that)."""


def _between(parse: Callable[[str], float], low: float, high: float, expected: str) -> Callable[[str], float]:
    """The parser, for figures that a spring wire can have: a slip of the unit is far outside them."""

    def checked(text: str) -> float:
        value = parse(text)
        if not low <= value <= high:
            raise QuantityError(f"{text} is nothing that a spring wire has", expected)
        return value

    return checked


def _modulus(low_gpa: float, high_gpa: float, like: str) -> Callable[[str], float]:
    expected = f"{low_gpa:g} to {high_gpa:g} GPa, as in {like}; a bare number is in MPa"
    return _between(q.stress_mpa, 1000 * low_gpa, 1000 * high_gpa, expected)


_strength = _between(q.stress_mpa, 100.0, 4000.0, "100 to 4000 MPa, as in 900 MPa; a bare number is in MPa")
_density = _between(q.number, 1000.0, 25000.0, "1000 to 25000, in kg a cubic metre, as in 8800")
_ratio = _between(q.number, 0.3, 3.0, "0.3 to 3, the flow stress over the least tensile strength")
_doubt = _between(q.fraction, 0.005, 0.5, "0.5 to 50 %, as in 10 %")


class StrengthRecord(Record):
    """The least strength of wire up to a diameter."""

    called = "a tensile strength"

    up_to: WireDiameter
    least: Annotated[float | None, read_by(_strength), Field(description="a stress, as in 900 MPa")]


class TemperaturesRecord(Record):
    """Between which temperatures a material serves."""

    called = "a service temperature"

    low: Temperature
    high: Temperature


class ReliefRecord(Record):
    """What heat relieves a material of the stress of winding."""

    called = "a stress relief"

    low: Temperature
    high: Temperature
    minutes: NumberAboveZero


class SpringbackRecord(Record):
    """How a material springs back before any trial coil."""

    called = "a springback"

    flow_ratio: Annotated[float | None, read_by(_ratio), Field(description="a number, as in 1.05")]
    doubt: Annotated[float | None, read_by(_doubt), Field(description="a percentage, as in 10 %")]


Rating = Annotated[int | None, read_by(one_of({"0": 0, "1": 1, "2": 2, "3": 3}, "rating"))]


class MaterialRecord(Record):
    """A material as it is written."""

    called = "a material"

    name: Text
    shear_modulus: Annotated[
        float | None, read_by(_modulus(10, 100, "41 GPa")), Field(description="a modulus, as in 41 GPa")
    ]
    elastic_modulus: Annotated[
        float | None, read_by(_modulus(30, 250, "105 GPa")), Field(description="a modulus, as in 105 GPa")
    ]
    density: Annotated[float | None, read_by(_density), Field(description="kg a cubic metre, as in 8800")]
    tensile_strength: Annotated[
        list[StrengthRecord | None] | None,
        Field(description="a list of strengths, as in [{up_to: 0.5 mm, least: 950 MPa}]"),
    ] = None
    service_temperature: Annotated[
        TemperaturesRecord | None, Field(description="temperatures, as in {low: -40 degC, high: 120 degC}")
    ] = None
    corrosion: Annotated[
        dict[str, Rating] | None,
        Field(description="ratings from 0, unsuitable, to 3, suitable, as in {indoor-dry: 3, damp: 2}"),
    ] = None
    stress_relief: Annotated[
        ReliefRecord | None, Field(description="heat, as in {low: 180 degC, high: 200 degC, minutes: 30}")
    ] = None
    springback: Annotated[
        SpringbackRecord | None, Field(description="what is known of it, as in {flow_ratio: 1.0, doubt: 10 %}")
    ] = None
    note: Text = None


@dataclass(slots=True)
class MaterialsRead:
    """What a file of materials holds, by name as `materials.find` compares it; None for one that has mistakes."""

    materials: dict[str, Material | None] = field(default_factory=dict[str, "Material | None"])
    findings: list[Finding] = field(default_factory=list[Finding])


def materials_in(document: Document) -> MaterialsRead:
    """All that a file of materials holds, and all that is wrong with it; one with nothing but comments holds none."""
    read = MaterialsRead()
    if document.value is None:
        return read
    names: list[tuple[str, Place]] = []
    records, read.findings = listed("materials", document)
    for number, value in enumerate(records):
        record, findings = read_record(MaterialRecord, value, document.place(records, number), document)
        if record is None:
            read.findings += findings
            continue
        findings += _findings(record)
        read.findings += findings
        if (name := record.record.name) is not None:
            names.append((materials.folded(name), record.place("name")))
            read.materials[materials.folded(name)] = None if findings else _made(record.record)
    read.findings += told_twice(names, "material", "name")
    return read


def _findings(read: Read[MaterialRecord]) -> Iterator[Finding]:
    yield from _name_of_its_own(read)
    yield from _moduli(read)
    yield from _rising(read)
    yield from _known_surroundings(read)
    for key in ("service_temperature", "stress_relief"):
        yield from _low_below_high(read, key)


def _name_of_its_own(read: Read[MaterialRecord]) -> Iterator[Finding]:
    name = read.record.name
    if name is not None and (known := materials.find(name)) is not None:
        found = f"{quoted(known.name)} is a material that is known already"
        yield Finding(read.place("name"), found, "a name of its own: the known figures are not replaced")


def _moduli(read: Read[MaterialRecord]) -> Iterator[Finding]:
    """G = E/(2 (1 + nu)), and no wire has a Poisson's ratio below zero."""
    shear, elastic = read.record.shear_modulus, read.record.elastic_modulus
    if shear is not None and elastic is not None and shear >= elastic / 2:
        found = f"{read.text('shear_modulus')}, where elastic_modulus is {read.text('elastic_modulus')}"
        expected = f"a shear modulus below half of that, {show_stress(elastic / 2)}"
        yield Finding(read.place("shear_modulus"), found, expected)


def _rising(read: Read[MaterialRecord]) -> Iterator[Finding]:
    strengths = read.record.tensile_strength or ()
    for number, (before, after) in enumerate(pairwise(strengths), start=1):
        sizes = before and before.up_to, after and after.up_to
        if sizes[0] is not None and sizes[1] is not None and sizes[1] <= sizes[0]:
            found = f"{read.text('tensile_strength', number, 'up_to')} after {show_length(sizes[0])}"
            expected = "each diameter once, the thinnest first"
            yield Finding(read.place("tensile_strength", number, "up_to"), found, expected)


def _known_surroundings(read: Read[MaterialRecord]) -> Iterator[Finding]:
    for word in read.record.corrosion or ():
        if word not in SURROUNDINGS:
            place = read.document.key_place(read.inner("corrosion"), word)
            found = f"{quoted(word)} is no word for surroundings"
            yield Finding(place, found, words_of(SURROUNDINGS), nearest(word, SURROUNDINGS))


def _low_below_high(read: Read[MaterialRecord], key: str) -> Iterator[Finding]:
    bounds: TemperaturesRecord | ReliefRecord | None = getattr(read.record, key)
    if bounds is not None and bounds.low is not None and bounds.high is not None and bounds.low > bounds.high:
        expected = f"a temperature of {show_temperature(bounds.low)} or more, as low says"
        yield Finding(read.place(key, "high"), read.text(key, "high"), expected)


def _made(record: MaterialRecord) -> Material | None:
    name, shear, elastic, density = record.name, record.shear_modulus, record.elastic_modulus, record.density
    if name is None or shear is None or elastic is None or density is None:
        return None
    serves, relief, springback = record.service_temperature, record.stress_relief, record.springback
    return Material(
        name=" ".join(name.split()),
        standard="",
        grade=materials.folded(name),
        shear_modulus_mpa=shear,
        elastic_modulus_mpa=elastic,
        density_kg_per_m3=density,
        service_low_c=serves and serves.low,
        service_high_c=serves and serves.high,
        corrosion={word: rating for word, rating in (record.corrosion or {}).items() if rating is not None},
        flow_ratio=(springback and springback.flow_ratio) or ASSUMED_FLOW_RATIO,
        flow_ratio_sd=(springback and springback.doubt) or ASSUMED_DOUBT,
        stress_relief_low_c=relief and relief.low,
        stress_relief_high_c=relief and relief.high,
        stress_relief_minutes=relief and relief.minutes,
        heat_change_low=-ASSUMED_HEAT_CHANGE,
        heat_change_high=ASSUMED_HEAT_CHANGE,
        remark=record.note,
        own_strengths=tuple(_strengths(record.tensile_strength or ())),
    )


def _strengths(records: Iterable[StrengthRecord | None]) -> Iterator[tuple[float, float]]:
    for record in records:
        if record is not None and record.up_to is not None and record.least is not None:
            yield record.up_to, record.least
