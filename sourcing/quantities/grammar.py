"""How one figure is written: a number, then perhaps a unit. Ranges and tolerances of figures stand in wanted.py."""

from __future__ import annotations

import re
from dataclasses import dataclass

from sourcing.quantities.gauges import gauge_mm
from sourcing.quantities.kinds import Kind
from sourcing.quantities.values import QuantityError

LEAST_NUMBER = 1e-12
GREATEST_NUMBER = 1e12

DECIMAL = r"[+-]?(?:(?:0|[1-9][0-9]*)(?:\.[0-9]+)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?"
FRACTION = r"[+-]?(?:[1-9][0-9]* )?[1-9][0-9]*/[1-9][0-9]*"
PLAIN = re.compile(rf"({DECIMAL}) ?((?:[A-Za-z%][^ ]*)?)")
"""A decimal number with or without a unit after it, the form that nearly all figures have."""
TOLERANCE_SIGN = re.compile(r"(?<![0-9.][eE])(±|\+ ?/? ?-|\+)")
"""What stands between a figure and its tolerance; the plus of an exponent is none."""

_FIGURE = re.compile(rf"({FRACTION}|{DECIMAL}) ?(.*)")
_ROUND_AN_OPERATOR = re.compile(r" ?([*/]) ?")
_TYPED_OTHERWISE = str.maketrans(
    {
        "−": "-",  # the minus sign proper
        "·": "*",
        "⋅": "*",
        "°": "deg",
        "⁄": "/",
        "½": " 1/2",
        "¼": " 1/4",
        "¾": " 3/4",
        "≥": ">=",
        "≤": "<=",
    }
)


@dataclass(frozen=True, slots=True)
class Figure:
    """A number as it was written, and the unit it was written in ("" for none)."""

    number: float
    unit: str


def tidied(text: str) -> str:
    """The text with one spelling for each sign, and single plain spaces.

    >>> tidied("  1½\\u00a0in "), tidied("−40 °C"), tidied("5 N·mm")
    ('1 1/2 in', '-40 degC', '5 N*mm')
    """
    return " ".join(text.replace("mm²", "mm2").translate(_TYPED_OTHERWISE).split())


def split_figure(part: str) -> tuple[str, str] | None:
    """The number at the head of a tidied text and all that follows it; None where no number leads.

    >>> split_figure("1 1/4 in"), split_figure("5 N / mm"), split_figure("mm")
    (('1 1/4', 'in'), ('5', 'N/mm'), None)
    """
    match = _FIGURE.fullmatch(part)
    return (match[1], _ROUND_AN_OPERATOR.sub(r"\1", match[2])) if match else None


def value_of(number: str) -> float:
    """The value of a number as `split_figure` finds it; infinite where it is too large for a float.

    >>> value_of("1 1/4"), value_of("-1/2"), value_of("1e-3")
    (1.25, -0.5, 0.001)
    """
    if "/" not in number:
        return float(number)
    whole, _, fraction = number.lstrip("+-").rpartition(" ")
    numerator, denominator = fraction.split("/")
    value = float(whole or 0) + float(numerator) / float(denominator)
    return -value if number.startswith("-") else value


def read_figure(part: str, kind: Kind) -> Figure | None:
    """The figure that a tidied text writes; None where it is no figure of this kind, or out of all proportion.

    >>> from sourcing.quantities.kinds import LENGTH, WIRE_DIAMETER
    >>> read_figure("1/32 in", LENGTH), read_figure("MWG 20", WIRE_DIAMETER), read_figure("5 N", LENGTH)
    (Figure(number=0.03125, unit='in'), Figure(number=1.143, unit='mm'), None)
    """
    gauge = gauge_mm(part) if kind.gauges else None
    if gauge is not None:
        return Figure(gauge, "mm")
    pieces = split_figure(part)
    if pieces is None or pieces[1] not in kind.factors or not in_proportion(pieces[0]):
        return None
    figure = Figure(value_of(pieces[0]), pieces[1])
    return figure if abs(kind.in_house_unit(figure.number, figure.unit)) <= GREATEST_NUMBER else None


def in_proportion(number: str) -> bool:
    """Whether a number is zero, or of a size that can belong to a spring: so no later formula overflows."""
    value = abs(value_of(number))
    return LEAST_NUMBER <= value <= GREATEST_NUMBER or (
        value == 0 and not re.search("[1-9]", re.split("[eE]", number)[0])
    )


def refusal(part: str, whole: str, kind: Kind, wanted: bool = False) -> QuantityError:
    """The error for a part of a tidied text that `read_figure` could not read."""
    from sourcing.quantities.mistakes import Case, explain

    return explain(Case(part, whole, kind, wanted))
