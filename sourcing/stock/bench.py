"""The bench file made into a `Bench`: what stands in it, and the defaults for what does not."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import partial
from itertools import pairwise
from typing import Annotated, Literal, TypeVar

from pydantic import Field

from sourcing import quantities as q
from sourcing.files.document import Document
from sourcing.files.fields import (
    Angle,
    Days,
    Fraction,
    Length,
    LengthFromZero,
    Price,
    Text,
    above_zero,
    one_of,
    read_by,
)
from sourcing.files.findings import Finding, quoted
from sourcing.files.records import Read, Record, read_record
from sourcing.quantities import Money, QuantityError, show_length
from sourcing.stock import hand_winding as hand
from sourcing.stock.model import Bench, Clearance, HouseTolerances, Seller, SpringMaker

TOOLS = ("vice", "hand-drill", "bench-drill", "lathe", "printer")
_DEFAULT = Bench()
T = TypeVar("T")


def _currency(text: str) -> str:
    if not re.fullmatch("[A-Z]{3}", text):
        near = (text.upper(),) if re.fullmatch("[A-Za-z]{3}", text) else ()
        raise QuantityError(f"{quoted(text)} is no currency", "three capital letters, as in EUR", near)
    return text


def _oven(text: str) -> float | Literal["none"]:
    return "none" if text == "none" else above_zero(q.temperature_c, "a temperature")(text)


def _chance(text: str) -> float:
    chance = q.fraction(text) if "%" in text else q.number(text)
    if not 0 <= chance <= 1:
        raise QuantityError(f"{text} is no chance", "a chance from 0 to 1, or from 0 % to 100 %")
    return chance


class SellerRecord(Record):
    """What an order from one seller costs and takes."""

    called = "a seller"

    postage: Price = None
    lead_days: Days = None


class SpringMakerRecord(Record):
    """Who winds to order."""

    called = "a spring maker"

    name: Text
    price: Price = None
    lead_days: Days = None


class TolerancesRecord(Record):
    """The tolerances of the house."""

    called = "tolerances"

    force: Fraction = None
    length: Length = None
    diameter: Length = None
    angle: Angle = None
    rate: Fraction = None


class ClearanceRecord(Record):
    """Room on the diameter."""

    called = "clearance"

    bore: LengthFromZero = None
    rod: LengthFromZero = None


class PreferRecord(Record):
    """How the keeper likes to decide."""

    called = "prefer"

    least_chance: Annotated[
        float | None, read_by(_chance), Field(description="a chance from 0 to 1, or from 0 % to 100 %")
    ] = None


class BenchRecord(Record):
    """The bench as it is written."""

    called = "a bench"

    currency: Annotated[str | None, read_by(_currency), Field(description="three capital letters, as in EUR")] = None
    units: Annotated[
        str | None, read_by(one_of({"mm": "mm", "inch": "inch"}, "unit to print in")), Field(description="mm or inch")
    ] = None
    hour_value: Price = None
    rods: Annotated[list[Length] | None, Field(description="a list of diameters, as in [3, 3.5, 4]")] = None
    tools: Annotated[
        list[Annotated[str | None, read_by(one_of({tool: tool for tool in TOOLS}, "tool"))]] | None,
        Field(description="a list of tools, as in [vice, hand-drill]"),
    ] = None
    printer_bed: Annotated[list[Length] | None, Field(description="three lengths, as in [200 mm, 200 mm, 180 mm]")] = (
        None
    )
    oven: Annotated[
        float | Literal["none"] | None, read_by(_oven), Field(description="a temperature, as in 250 degC, or none")
    ] = None
    sellers: Annotated[
        dict[str, SellerRecord | None] | None,
        Field(description="sellers by name, each with {postage: 3.90 EUR, lead_days: 4}"),
    ] = None
    spring_maker: SpringMakerRecord | None = None
    tolerances: TolerancesRecord | None = None
    clearance: ClearanceRecord | None = None
    hand_winding: hand.HandWindingRecord | None = None
    prefer: PreferRecord | None = None


def currency_in(document: Document) -> str:
    """The currency of bare prices: the file's if it names one, else the default."""
    value = document.value
    named = value.get("currency") if isinstance(value, dict) else None
    return named if isinstance(named, str) and re.fullmatch("[A-Z]{3}", named) else _DEFAULT.currency


def bench_in(document: Document) -> tuple[Bench, list[Finding]]:
    """The bench that a file describes, and all that is wrong with it."""
    currency = currency_in(document)
    read, findings = read_record(BenchRecord, document.value, document.start(), document, {"currency": currency})
    if read is None:
        return _DEFAULT, findings
    place = partial(read.place, "hand_winding")
    findings += [*_three_sides(read), *hand.beyond_the_stop(read.record.hand_winding, place)]
    return (_DEFAULT if findings else _made(read, currency)), findings


def _three_sides(read: Read[BenchRecord]) -> Iterator[Finding]:
    sides = read.record.printer_bed
    if sides is not None and len(sides) != 3:
        found = f"{len(sides)} length{'' if len(sides) == 1 else 's'}"
        yield Finding(read.place("printer_bed"), found, "three lengths, as in [200 mm, 200 mm, 180 mm]")


def _falling_rods(read: Read[BenchRecord]) -> Iterator[Finding]:
    """Rods that are not listed from thin to thick: as likely as not, a decimal comma made two of one."""
    rods = read.record.rods or []
    for place, (rod, following) in enumerate(pairwise(rods), 1):
        if rod is not None and following is not None and following < rod:
            found = f"a rod of {show_length(following)} after one of {show_length(rod)}"
            expected = (
                "rods from thin to thick, a decimal point in each and a comma between: 3,5 is a rod of 3 and one of 5"
            )
            yield Finding(read.place("rods", place), found, expected)
            return


def _made(read: Read[BenchRecord], currency: str) -> Bench:
    record = read.record
    rods = sorted({rod for rod in record.rods or () if rod is not None})
    return Bench(
        currency=currency,
        units=_stated(record.units, _DEFAULT.units),
        hour_value=_stated(record.hour_value, Money(_DEFAULT.hour_value.amount, currency)),
        rods_mm=_DEFAULT.rods_mm if record.rods is None else tuple(rods),
        tools=_DEFAULT.tools if record.tools is None else tuple(dict.fromkeys(tool for tool in record.tools if tool)),
        printer_bed_mm=_bed(record.printer_bed),
        oven_c=None if record.oven == "none" else _stated(record.oven, _DEFAULT.oven_c),
        sellers={
            name: Seller(seller.postage, seller.lead_days) for name, seller in (record.sellers or {}).items() if seller
        },
        spring_maker=_spring_maker(record.spring_maker),
        tolerances=_tolerances(record.tolerances or TolerancesRecord()),
        clearance=_clearance(record.clearance or ClearanceRecord()),
        hand_winding=hand.limits(record.hand_winding or hand.HandWindingRecord()),
        least_chance=_stated(record.prefer and record.prefer.least_chance, _DEFAULT.least_chance),
        stated=frozenset(_keys(read)),
        doubts=(*_falling_rods(read), *hand.raised(record.hand_winding, partial(read.place, "hand_winding"))),
    )


def _stated(value: T | None, default: T) -> T:
    return default if value is None else value


def _bed(sides: list[float | None] | None) -> tuple[float, float, float] | None:
    known = [side for side in sides or () if side is not None]
    return (known[0], known[1], known[2]) if len(known) == 3 else None


def _spring_maker(record: SpringMakerRecord | None) -> SpringMaker | None:
    return None if record is None or record.name is None else SpringMaker(record.name, record.price, record.lead_days)


def _tolerances(record: TolerancesRecord) -> HouseTolerances:
    default = _DEFAULT.tolerances
    return HouseTolerances(
        force=_stated(record.force, default.force),
        length_mm=_stated(record.length, default.length_mm),
        diameter_mm=_stated(record.diameter, default.diameter_mm),
        angle_deg=_stated(record.angle, default.angle_deg),
        rate=_stated(record.rate, default.rate),
    )


def _clearance(record: ClearanceRecord) -> Clearance:
    default = _DEFAULT.clearance
    return Clearance(_stated(record.bore, default.bore_mm), _stated(record.rod, default.rod_mm))


def _keys(read: Read[BenchRecord]) -> Iterator[str]:
    """The keys that stand in the file, those within others with a point: "tolerances", "tolerances.force"."""
    for key, value in read.raw.items():
        yield key
        if isinstance(value, dict):
            yield from (f"{key}.{inner}" for inner in value)
