"""Figures that are asked for: with a tolerance, as a range, as a bound, or plain. Text in, `Wanted` out.

    31 mm ± 2 mm    24 ± 0.5 mm    9 N ± 15 %    24 +1/-0.5 mm        +- and +/- are read as ±
    20..24 mm       20 mm..1 in
    >= 5 N          <= 12 mm

A number without a unit takes the unit of the next number to its right that has one; where none has, the house unit.
All figures must be above zero. Every function raises `QuantityError`.
"""

from __future__ import annotations

import re

from sourcing.quantities import kinds
from sourcing.quantities.gauges import SYSTEMS
from sourcing.quantities.grammar import PLAIN, TOLERANCE_SIGN, Figure, read_figure, refusal, tidied
from sourcing.quantities.kinds import PERCENTAGE, Kind
from sourcing.quantities.plain import plain
from sourcing.quantities.values import QuantityError, Wanted, above_zero, at_least_zero, echo, quoted

_BOUND = re.compile(r"(>=|<=|=>|=<|>|<|=|at least |at most )(.*)")


def wanted_length_mm(text: str) -> Wanted:
    """A length in mm.

    >>> wanted_length_mm("31 mm ± 2 mm")
    Wanted(nominal=31.0, minus=2.0, plus=2.0, low=None, high=None, percent=False)
    >>> wanted_length_mm("20..24 mm").low
    20.0
    """
    return _wanted(text, kinds.LENGTH)


def wanted_wire_diameter_mm(text: str) -> Wanted:
    """A wire diameter in mm, written as a length or as a gauge number."""
    return _wanted(text, kinds.WIRE_DIAMETER)


def wanted_force_n(text: str) -> Wanted:
    """A force in N.

    >>> wanted_force_n("9 N ± 15 %").plus
    1.35
    >>> wanted_force_n(">= 5 N").low
    5.0
    """
    return _wanted(text, kinds.FORCE)


def wanted_rate_n_per_mm(text: str) -> Wanted:
    """A spring rate in N/mm."""
    return _wanted(text, kinds.RATE)


def wanted_angular_rate_n_mm_per_deg(text: str) -> Wanted:
    """The rate of a torsion spring in N·mm/deg."""
    return _wanted(text, kinds.ANGULAR_RATE)


def wanted_angle_deg(text: str) -> Wanted:
    """An angle in degrees."""
    return _wanted(text, kinds.ANGLE)


def wanted_direction_deg(text: str) -> Wanted:
    """An angle in degrees that says which way something points, and may be zero.

    >>> wanted_direction_deg("0 deg ± 10 deg").plus
    10.0
    """
    return _wanted(text, kinds.DIRECTION)


def wanted_torque_n_mm(text: str) -> Wanted:
    """A torque in N·mm."""
    return _wanted(text, kinds.TORQUE)


def _wanted(text: str, kind: Kind) -> Wanted:
    whole = tidied(text)
    plain_figure = PLAIN.fullmatch(whole)
    if plain_figure and plain_figure[2] in kind.factors:
        return Wanted(nominal=_counts(plain(whole, kind), whole, kind))
    bound = _BOUND.fullmatch(whole)
    if bound:
        return _bound(bound[1].strip(), bound[2].strip(), whole, kind)
    if ".." in whole and "..." not in whole:
        return _range(whole, kind)
    sign = TOLERANCE_SIGN.search(whole, 1 if re.match(r"\+[0-9.]", whole) else 0)
    if sign:
        return _toleranced(whole, sign, kind)
    figure = _figure(whole, whole, kind)
    return Wanted(nominal=_counts(kind.in_house_unit(figure.number, figure.unit), whole, kind))


def _counts(value: float, text: str, kind: Kind) -> float:
    """The value, if it is above zero, or zero where that is a figure of its kind."""
    return (at_least_zero if kind.from_zero else above_zero)(value, text, kind.name)


def _figure(part: str, whole: str, kind: Kind) -> Figure:
    figure = read_figure(part, kind)
    if figure is None:
        raise refusal(part, whole, kind, wanted=True)
    return figure


def _bound(sign: str, part: str, whole: str, kind: Kind) -> Wanted:
    figure = _figure(part, whole, kind)
    if sign not in (">=", "<="):
        least = sign in (">", "=>", "at least")
        suggestions = (part,) if sign == "=" else (f"{'>=' if least else '<='} {part}",)
        raise QuantityError(f"{quoted(sign)} is no sign of a bound", "the sign >= or <= before a bound", suggestions)
    value = _counts(kind.in_house_unit(figure.number, figure.unit), part, kind)
    return Wanted(low=value) if sign == ">=" else Wanted(high=value)


def _range(whole: str, kind: Kind) -> Wanted:
    first, last = (part.strip() for part in whole.split("..", 1))
    low, high = _figure(first, whole, kind), _figure(last, whole, kind)
    if low.unit and not high.unit:
        system = first.split(" ")[0] if first.startswith(SYSTEMS) else None
        meant = f"{first}..{system} {last}" if system else f"{whole} {low.unit}"
        raise _unit_missing(last, whole, (meant,), kind)
    low_value = kind.in_house_unit(low.number, low.unit or high.unit)
    high_value = kind.in_house_unit(high.number, high.unit)
    if low_value > high_value:
        shared = f" {high.unit}" if high.unit and not low.unit else ""
        swapped = f"{last.removesuffix(high.unit).strip()}..{first}{shared}" if shared else f"{last}..{first}"
        raise QuantityError(
            f"{echo(whole)} runs from large to small", "the smaller figure of a range first", (swapped,)
        )
    if low_value == 0 and not kind.from_zero:
        raise QuantityError(f"{echo(whole)} begins at zero", f"{kind.name} above zero, or a bound", (f"<= {last}",))
    return Wanted(low=_counts(low_value, first, kind), high=high_value)


def _toleranced(whole: str, sign: re.Match[str], kind: Kind) -> Wanted:
    """The nominal before the sign; after it one distance for ±, or two, +a/-b."""
    first, rest = whole[: sign.start()].strip(), whole[sign.end() :].strip()
    nominal = _figure(first, whole, kind)
    if sign[0] == "+":
        upper, lower = _upper_and_lower(first, rest, whole)
    else:
        upper = lower = rest
    plus, minus = _distance(upper, whole, kind), _distance(lower, whole, kind)
    plus = plus if plus.unit or not minus.unit else Figure(plus.number, minus.unit)
    if not minus.unit and minus.number and (nominal.unit or plus.unit):
        raise _unit_missing(lower, whole, tuple(f"{whole} {unit}" for unit in (plus.unit or nominal.unit, "%")), kind)
    unit = nominal.unit or next((one.unit for one in (plus, minus) if one.unit != "%"), "")
    return _around(Figure(nominal.number, unit), plus, minus, whole, kind)


def _upper_and_lower(first: str, rest: str, whole: str) -> tuple[str, str]:
    both = re.fullmatch(r"(.*?) ?/ ?- ?(.*)", rest)
    if both:
        return both[1], both[2]
    slash_missing = re.fullmatch(r"([^ ]+) ?- ?(.*)", rest)
    meant = f"{first} +{slash_missing[1]}/-{slash_missing[2]}" if slash_missing else f"{first} +{rest}/-0"
    raise QuantityError(f"{echo(whole)} has half a tolerance", "both sides of a tolerance, as in +1/-0.5 mm", (meant,))


def _distance(part: str, whole: str, kind: Kind) -> Figure:
    figure = read_figure(part, PERCENTAGE) or _figure(part, whole, kind)
    if figure.number < 0:
        raise QuantityError(f"{echo(whole)} has a negative tolerance", "a tolerance of zero or above")
    return figure


def _around(nominal: Figure, plus: Figure, minus: Figure, whole: str, kind: Kind) -> Wanted:
    value = _counts(kind.in_house_unit(nominal.number, nominal.unit), whole, kind)
    above, below = (_distance_in_house_unit(one, value, kind) for one in (plus, minus))
    if kind.never_zero and value - below <= 0:
        raise QuantityError(f"{echo(whole)} has a tolerance that reaches zero", f"{kind.name} that stays above zero")
    return Wanted(nominal=value, minus=below, plus=above, percent="%" in (plus.unit, minus.unit))


def _distance_in_house_unit(distance: Figure, nominal: float, kind: Kind) -> float:
    if distance.unit == "%":
        return nominal * distance.number / 100
    return kind.difference_in_house_unit(distance.number, distance.unit)


def _unit_missing(part: str, whole: str, suggestions: tuple[str, ...], kind: Kind) -> QuantityError:
    return QuantityError(f"{echo(part)} has no unit in {echo(whole)}", kind.expected, suggestions)
