"""Units of another kind, units nobody knows, and what stands before or after a figure."""

from __future__ import annotations

import re

from sourcing.quantities.grammar import DECIMAL, split_figure, value_of
from sourcing.quantities.kinds import MONEY, PERCENTAGE, Kind, is_currency, kind_of
from sourcing.quantities.mistakes.case import Case
from sourcing.quantities.values import QuantityError, echo, quoted

LEAST_LIKENESS = 55

_FORCE_OF_A_MASS = {"g": "gf", "kg": "kgf", "oz": "ozf", "lb": "lbf"}
_TWINS = _FORCE_OF_A_MASS | {force: mass for mass, force in _FORCE_OF_A_MASS.items()}

_SPOKEN = {
    "in": ('"', "''", "″", "”", "inch", "inches"),
    "ft": ("'", "′", "’", "foot", "feet"),
    "thou": ("mil", "mils"),
    "mm": ("millimetre", "millimetres", "millimeter", "millimeters"),
    "N": ("newton", "newtons"),
    "g": ("gram", "grams", "gramme", "grammes"),
    "kg": ("kilo", "kilos"),
    "lb": ("lbs", "pound", "pounds"),
    "oz": ("ounce", "ounces"),
    "N*m": ("nm", "n.m"),
    "N*mm": ("nmm", "n.mm"),
    "lbf*in": ("in-lb", "in-lbs", "in lb", "lb-in", "lb*in", "in*lb", "in*lbf"),
    "degC": ("c", "deg", "celsius"),
    "degF": ("f", "fahrenheit"),
    "deg": ("degree", "degrees"),
    "turns": ("rev", "revs", "revolutions"),
    "days": ("d",),
    "h": ("hr", "hrs"),
    "weeks": ("w", "wk", "wks"),
    "%": ("percent", "pct", "per cent"),
    "EUR": ("€", "euro", "euros"),
    "GBP": ("£",),
}
_MEANT = {spoken: unit for unit, words in _SPOKEN.items() for spoken in words}

_REAL_BUT_NOT_READ = {
    *("µm", "μm", "um", "nm", "dm", "km", "yd", "mi", "N/cm", "kN/m", "kN/mm", "N/in", "lbf/ft", "gf/mm", "g/mm"),
    *("cN", "dN", "daN", "MN", "t", "mg", "Pa", "kPa", "bar", "atm", "K", "grad", "gon", "N*cm", "kN*m", "lbf*ft"),
    *("ft*lbf", "s", "sec", "min", "months", "month", "years", "year"),
}
"""Units that a letter turns into another: for these no unit is offered as the nearest, it would be a wrong figure."""


def unit_first(case: Case) -> QuantityError | None:
    """A unit or a currency's sign before its number, or without one."""
    written = re.fullmatch(rf"([^0-9.+-]+?) ?({DECIMAL})?", case.part)
    unit = _MEANT.get(written[1].casefold(), written[1]) if written else ""
    if written is None or not _belongs(unit, case.kind):
        return None
    if written[2] is None:
        return QuantityError(f"{quoted(case.part)} has no number", case.kind.expected)
    suggestions = case.instead(f"{written[2]} {unit}")
    return QuantityError(f"{echo(case.part)} has its unit before the number", case.kind.expected, suggestions)


def no_unit(case: Case) -> QuantityError | None:
    """A bare number where only one with its unit is clear."""
    number, unit = split_figure(case.part) or ("", "?")
    if unit or case.kind.bare:
        return None
    if case.kind is PERCENTAGE and 0 < abs(value_of(number)) < 1:
        number = f"{value_of(number) * 100:g}"
    suggestions = case.instead(*(f"{number} {unit}" for unit in case.kind.units))
    return QuantityError(f"{echo(case.part)} has no unit", case.kind.expected, suggestions)


def other_kind(case: Case) -> QuantityError | None:
    """A figure of another kind. A mass is offered as the force it weighs with, and a force as that mass."""
    number, unit = split_figure(case.part) or ("", "")
    other = kind_of(unit) or kind_of(unit.replace(" ", "*"))
    if other is None or _belongs(unit, case.kind) or _belongs(unit.replace(" ", "*"), case.kind):
        return None
    meant = (_TWINS.get(unit), _MEANT.get(unit.casefold()))
    if other is MONEY and meant[1]:
        return None
    suggestions = case.instead(*(f"{number} {name}" for name in meant if name in case.kind.units))
    return QuantityError(f"{echo(case.part)} is {other.name}", case.kind.expected, suggestions)


def trailing(case: Case) -> QuantityError | None:
    """A figure that is complete, and then something more; or two numbers."""
    number, rest = split_figure(case.part) or ("", "")
    unit, _, more = rest.partition(" ")
    if rest == ".":
        return QuantityError(f"{echo(case.part)} ends with a point", case.kind.expected, case.instead(number))
    if re.match(r"[0-9./*+±<>=-]", rest) or (_belongs(unit, case.kind) and re.match("[0-9]", more)):
        return QuantityError(f"{echo(case.part)} is more than one number", case.kind.expected)
    if not more or not _belongs(unit, case.kind):
        return None
    figure = f"{number} {unit}"
    return QuantityError(f"after {echo(figure)} stands {quoted(more)}", case.kind.expected, case.instead(figure))


def unknown_unit(case: Case) -> QuantityError | None:
    """A unit that is not read."""
    number, unit = split_figure(case.part) or ("", "")
    if not unit or _belongs(unit, case.kind):
        return None
    if not case.kind.units and case.kind is not MONEY:
        found = f"{quoted(unit)} stands after {echo(number)}"
        return QuantityError(found, case.kind.expected, case.instead(number))
    suggestions = case.instead(*(f"{number} {known}" for known in nearest_units(unit, case.kind)))
    return QuantityError(f"{quoted(unit)} is no unit that is read here", case.kind.expected, suggestions)


def nearest_units(unit: str, kind: Kind) -> list[str]:
    """The units of a kind that a writer may have meant by a text, nearest first.

    >>> from sourcing.quantities.kinds import LENGTH, FORCE
    >>> nearest_units("inch", LENGTH), nearest_units("mmm", LENGTH), nearest_units("µm", LENGTH)
    (['in'], ['mm'], [])
    >>> nearest_units("pounds", FORCE)
    ['lbf']
    """
    meant = _MEANT.get(unit.casefold(), unit)
    if kind is MONEY:
        return [meant.upper()] if is_currency(meant.upper()) else []
    known = [name for name in (meant, _TWINS.get(meant)) if name in kind.units and name is not None]
    if known or unit in _REAL_BUT_NOT_READ:
        return known[:1]
    from rapidfuzz import fuzz, process

    names = list(kind.units)
    found = process.extract(
        unit, names, scorer=fuzz.ratio, processor=str.casefold, limit=2, score_cutoff=LEAST_LIKENESS
    )
    return [name for name, likeness, _ in found if likeness >= found[0][1]]


def _belongs(unit: str, kind: Kind) -> bool:
    return bool(unit) and (unit in kind.factors or kind_of(unit) is kind)
