"""The kinds of values that records are made of: each a figure or a word with the parser that reads its text.

The description of a field is what a message expects where the key is missing or its value is no text at all.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache
from typing import Annotated, Any, TypeVar

from pydantic import Field, PlainValidator, ValidationInfo
from pydantic_core import PydanticCustomError

from sourcing import quantities as q
from sourcing.files.findings import quoted
from sourcing.files.nearest import nearest
from sourcing.quantities import Money, QuantityError, Wanted

T = TypeVar("T")
_REMEMBERED = 1024


def read_by(parse: Callable[[str], object]) -> PlainValidator:
    """Reads a field's text with a parser that raises `QuantityError`; the same few texts fill most of a catalogue."""
    remembering = lru_cache(_REMEMBERED)(parse)
    return PlainValidator(lambda value: _read(value, remembering))


def read_within(parse: Callable[[str, Mapping[str, Any]], object]) -> PlainValidator:
    """Reads a field's text with a parser that looks at what the whole catalogue has settled too (`read_record`)."""
    return PlainValidator(lambda value, info: _read_within(value, info, parse))


def words_of(value: Any) -> str:
    """The choices as a message lists them."""
    *most, last = value
    return f"{', '.join(most)} or {last}" if most else last


def one_of(
    choices: Mapping[str, T], what: str, meant: Callable[[str], tuple[str, ...]] | None = None
) -> Callable[[str], T]:
    """A parser of one word among several; `what` is a noun phrase without its article, as in "kind of ends".

    `meant`: what a wrong word may have meant, nearest first; the choices that are spelt like it where none is given.
    """

    def parse(text: str) -> T:
        if text in choices:
            return choices[text]
        found = f"{quoted(text)} is no {what}" if text.strip() else "nothing stands here"
        raise QuantityError(found, words_of(choices), nearest(text, choices) if meant is None else meant(text))

    return parse


def above_zero(parse: Callable[[str], float], what: str) -> Callable[[str], float]:
    """The parser, for figures above zero."""
    return lambda text: q.above_zero(parse(text), text, what)


def at_least_zero(parse: Callable[[str], float], what: str) -> Callable[[str], float]:
    """The parser, for figures of zero or above."""
    return lambda text: q.at_least_zero(parse(text), text, what)


def whole_from(least: int, what: str) -> Callable[[str], int]:
    """A parser of whole numbers that are no smaller than the least."""

    def parse(text: str) -> int:
        value = q.whole_number(text)
        if value < least:
            raise QuantityError(f"{text} is less than {least}", f"{what}, {least} or more")
        return value

    return parse


def _read(value: object, parse: Callable[[str], T]) -> T | None:
    if value is None:
        return None
    if not isinstance(value, str):
        raise PydanticCustomError("shape", "shape")
    try:
        return parse(value)
    except QuantityError as error:
        evidence = {"found": error.found, "expected": error.expected, "suggestions": error.suggestions}
        raise PydanticCustomError("refused", "refused", evidence) from None


def _words(text: str) -> str:
    if not text.strip():
        raise QuantityError("nothing stands here", "a text")
    return text


def _read_within(value: object, info: ValidationInfo, parse: Callable[[str, Mapping[str, Any]], T]) -> T | None:
    return _read(value, lambda text: parse(text, info.context or {}))


def _price(text: str, settled: Mapping[str, Any]) -> Money:
    money = q.money(text, settled.get("currency", "EUR"))
    q.at_least_zero(money.amount, text, "an amount")
    return money


Text = Annotated[str | None, read_by(_words), Field(description="a text")]
Length = Annotated[
    float | None, read_by(above_zero(q.length_mm, "a length")), Field(description="a length, as in 24 mm")
]
LengthFromZero = Annotated[
    float | None, read_by(at_least_zero(q.length_mm, "a length")), Field(description="a length, as in 24 mm")
]
WireDiameter = Annotated[
    float | None,
    read_by(above_zero(q.wire_diameter_mm, "a wire diameter")),
    Field(description="a wire diameter, as in 0.8 mm or MWG 20"),
]
Force = Annotated[float | None, read_by(above_zero(q.force_n, "a force")), Field(description="a force, as in 9 N")]
ForceFromZero = Annotated[
    float | None, read_by(at_least_zero(q.force_n, "a force")), Field(description="a force, as in 9 N")
]
Rate = Annotated[
    float | None, read_by(above_zero(q.rate_n_per_mm, "a rate")), Field(description="a rate, as in 1.31 N/mm")
]
Stress = Annotated[float | None, read_by(above_zero(q.stress_mpa, "a stress")), Field(description="a stress in MPa")]
Angle = Annotated[float | None, read_by(above_zero(q.angle_deg, "an angle")), Field(description="an angle in deg")]
Temperature = Annotated[float | None, read_by(q.temperature_c), Field(description="a temperature, as in 20 degC")]
Days = Annotated[
    float | None, read_by(at_least_zero(q.duration_days, "a time")), Field(description="a time, as in 3 days")
]
Fraction = Annotated[
    float | None, read_by(above_zero(q.fraction, "a percentage")), Field(description="a percentage, as in 15 %")
]
NumberAboveZero = Annotated[
    float | None, read_by(above_zero(q.number, "a number")), Field(description="a number above zero")
]
Count = Annotated[int | None, read_by(whole_from(0, "a whole number")), Field(description="a whole number, 0 or more")]
CountFromOne = Annotated[
    int | None, read_by(whole_from(1, "a whole number")), Field(description="a whole number, 1 or more")
]
Price = Annotated[Money | None, read_within(_price), Field(description="a price, as in 0.42 EUR")]
WantedLength = Annotated[Wanted | None, read_by(q.wanted_length_mm), Field(description="a length, as in 31 mm ± 2 mm")]
WantedForce = Annotated[Wanted | None, read_by(q.wanted_force_n), Field(description="a force, as in 9 N ± 15 %")]
WantedWireDiameter = Annotated[
    Wanted | None, read_by(q.wanted_wire_diameter_mm), Field(description="a wire diameter, as in 0.8 mm or MWG 20")
]
WantedDirection = Annotated[
    Wanted | None, read_by(q.wanted_direction_deg), Field(description="an angle, as in 90 deg ± 5 deg")
]
WantedTorque = Annotated[Wanted | None, read_by(q.wanted_torque_n_mm), Field(description="a torque, as in 280 N*mm")]
AngleFromZero = Annotated[
    float | None, read_by(at_least_zero(q.angle_deg, "an angle")), Field(description="an angle, as in 90 deg")
]
LegAngle = Annotated[
    float | None, read_by(q.leg_angle_deg), Field(description="an angle between two legs, as in 270 deg")
]
Torque = Annotated[
    float | None, read_by(above_zero(q.torque_n_mm, "a torque")), Field(description="a torque, as in 1.2 N*m")
]
AngularRate = Annotated[
    float | None,
    read_by(above_zero(q.angular_rate_n_mm_per_deg, "a rate by angle")),
    Field(description="a rate by angle, as in 4.3 N*mm/deg"),
]
