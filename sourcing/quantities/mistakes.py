"""Why a text is no figure of its kind, and what comes nearest. Looked into only after reading has failed.

Each check is a small function from a case to an error or None; the first in `_CHECKS` that has something to say wins.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from sourcing.quantities.gauges import SYSTEMS, gauge_mm, nearest_gauge, span
from sourcing.quantities.grammar import DECIMAL, in_proportion, split_figure, value_of
from sourcing.quantities.kinds import FORCE, LENGTH, MASS, MONEY, Kind, kind_of
from sourcing.quantities.values import QuantityError, echo

LONGEST_FIGURE = 200

_WORDS_FOR_UNKNOWN = {"null", "~", "none", "unknown", "?", "-", "n/a"}
_WORDS = {"yes", "no", "true", "false", "on", "off", "y", "n"}
_NOT_FINITE = re.compile(r"[+-]?\.?(inf|infinity|nan|∞)\b.*|[+-]?∞.*", re.IGNORECASE)
_OTHER_BASE = re.compile(r"0[xX][0-9a-fA-F]+|0[oO][0-7]+|0[bB][01]+")
_OTHER_RANGE = re.compile(rf"({DECIMAL} ?[A-Za-z/*0-9]*?) ?(\.\.\.|-|–|—|…|to) ?([0-9].*)")
_TOLERANCE = re.compile(r"(.+?) ?(?:±|\+)")
_TWIN_UNITS = {"g": "gf", "kg": "kgf", "oz": "ozf", "lb": "lbf", "gf": "g", "kgf": "kg", "ozf": "oz", "lbf": "lb"}
_SPOKEN_UNITS = {
    '"': "in", "''": "in", "″": "in", "”": "in", "inch": "in", "inches": "in", "'": "ft", "foot": "ft", "feet": "ft",
    "mil": "thou", "mils": "thou", "c": "degC", "f": "degF", "celsius": "degC", "fahrenheit": "degF", "deg": "degC",
    "d": "days", "wk": "weeks", "w": "weeks", "hr": "h", "hrs": "h", "newton": "N", "newtons": "N", "gram": "g",
    "grams": "g", "pound": "lb", "pounds": "lb", "degrees": "deg", "rev": "turns", "revs": "turns", "nm": "N*m",
    "nmm": "N*mm", "in-lb": "lbf*in", "in*lbf": "lbf*in", "€": "EUR", "£": "GBP", "percent": "%", "pct": "%",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Case:
    """A text that could not be read: the part at fault, the whole field it stands in, the kind of figure wanted.

    `wanted` is true where ranges, bounds and tolerances are read as well. Both texts are tidied.
    """

    part: str
    whole: str
    kind: Kind
    wanted: bool = False

    def instead(self, *parts: str) -> tuple[str, ...]:
        """The whole text with each of these in the place of the part."""
        return tuple(self.whole.replace(self.part, part, 1) for part in parts) if self.part else ()


def explain(case: Case) -> QuantityError:
    """The error for a text that could not be read.

    >>> explain(Case("5 N", "5 N", LENGTH))
    QuantityError('5 N is a force; expected a length (mm, cm, m, in, ft, thou)')
    """
    found = next((error for check in _CHECKS if (error := check(case))), None)
    return found or QuantityError(f'"{echo(case.part)}" is no number', case.kind.expected)


def _missing(case: Case) -> QuantityError | None:
    if case.part:
        return None
    return QuantityError(
        f"a number is missing in {echo(case.whole)}" if case.whole else "nothing stands here", case.kind.expected
    )


def _too_long(case: Case) -> QuantityError | None:
    if len(case.whole) <= LONGEST_FIGURE:
        return None
    return QuantityError(
        f'a text of {len(case.whole)} characters stands here, "{echo(case.whole)}"', case.kind.expected
    )


def _invisible(case: Case) -> QuantityError | None:
    sign = next((sign for sign in case.part if not sign.isprintable()), None)
    if sign is None:
        return None
    return QuantityError(
        f'"{echo(case.part)}" has a character in it that cannot be seen (U+{ord(sign):04X})',
        case.kind.expected,
        case.instead("".join(sign for sign in case.part if sign.isprintable())),
    )


def _word(case: Case) -> QuantityError | None:
    word = case.part.casefold()
    if word in _WORDS:
        return QuantityError(f"{case.part} is no number", case.kind.expected)
    if word in _WORDS_FOR_UNKNOWN:
        return QuantityError(
            f"{case.part} is no number", f"{case.kind.expected}, or the key left out where it is unknown"
        )
    if _NOT_FINITE.fullmatch(case.part):
        return QuantityError(f"{echo(case.part)} is no finite number", case.kind.expected)
    return None


def _comma(case: Case) -> QuantityError | None:
    if not re.search(r",[0-9]", case.whole):
        return None
    point = re.sub(r"[0-9.]*,[0-9.,]+", lambda number: _with_point(number[0]), case.whole)
    without = re.sub(r"(?<=[0-9]),(?=[0-9]{3}(?![0-9]))", "", case.whole)
    thousands = "," not in without and re.search(r"(?<![0-9])[1-9][0-9]{0,2},[0-9]{3}(?![0-9])", case.whole)
    return QuantityError(
        f"{echo(case.whole)} has a comma as decimal sign"
        if point != without
        else f"{echo(case.whole)} has a comma between thousands",
        "a point as decimal sign, and no sign between thousands",
        tuple(dict.fromkeys((point, without) if thousands else (point,))),
    )


def _with_point(number: str) -> str:
    """A number with commas written with a point: the last of two different signs is the decimal sign.

    >>> _with_point("1,5"), _with_point("1,000.5"), _with_point("1.000,5"), _with_point("1,000,000")
    ('1.5', '1000.5', '1000.5', '1000000')
    """
    if "." in number and number.rfind(".") > number.rfind(","):
        return number.replace(",", "")
    if number.count(",") > 1:
        return number.replace(",", "")
    whole, _, decimals = number.rpartition(",")
    return f"{whole.replace('.', '') or '0'}.{decimals}"


def _grouped_digits(case: Case) -> QuantityError | None:
    if not re.search(r"[0-9](?:[_'’][0-9]| [0-9]{3}(?![0-9/]))", case.whole):
        return None
    joined = re.sub(r"(?<=[0-9])[_'’ ](?=[0-9])", "", case.whole)
    return QuantityError(f"{echo(case.whole)} has a sign or a space between its digits", "the digits alone", (joined,))


def _other_base(case: Case) -> QuantityError | None:
    written = _OTHER_BASE.match(case.part)
    if written is None:
        return None
    decimal = str(int(written[0], 0))
    return QuantityError(
        f"{echo(case.part)} is not written in decimals",
        case.kind.expected,
        case.instead(case.part.replace(written[0], decimal, 1)),
    )


def _colon(case: Case) -> QuantityError | None:
    if not re.search("[0-9]:[0-9]", case.part):
        return None
    return QuantityError(f"{echo(case.part)} is a time of day or a ratio", case.kind.expected)


def _leading_zero(case: Case) -> QuantityError | None:
    if not re.search(r"(?<![0-9.A-Za-z])0[0-9]", case.whole):
        return None
    without = re.sub(r"(?<![0-9.A-Za-z])0+(?=[0-9])", "", case.whole)
    return QuantityError(f"{echo(case.whole)} has a leading zero", "a number without one", (without,))


def _gauge(case: Case) -> QuantityError | None:
    first = re.fullmatch(r"(MWG|WM|W&M|SWG|AWG)(?![A-Z]) ?#?(.*)", case.part, re.IGNORECASE)
    last = re.fullmatch(r"#?(.*?) ?(MWG|WM|W&M|SWG|AWG)", case.part, re.IGNORECASE)
    if not (first or last):
        return _gauge_without_system(case)
    system, number = (first[1], first[2]) if first else (last[2], last[1]) if last else ("", "")
    system = system.upper().replace("&", "")
    meant = f"{system} {number.strip()}"
    if not case.kind.gauges:
        return _gauge_elsewhere(case, gauge_mm(meant))
    if not number.strip():
        return QuantityError(f"{echo(case.part)} has no gauge number after it", f"a gauge number, as in {system} 20")
    if gauge_mm(meant):
        return QuantityError(
            f"{echo(case.part)} is not how a gauge is written", "its letters, then its number", case.instead(meant)
        )
    nearest = nearest_gauge(system, number.strip())
    low, high = span(system)
    return QuantityError(
        f"there is no {echo(meant)}",
        f"a gauge number from {system} {low} to {system} {high}",
        case.instead(f"{system} {nearest}") if nearest else (),
    )


def _gauge_elsewhere(case: Case, diameter_mm: float | None) -> QuantityError:
    return QuantityError(
        f"{echo(case.part)} is a gauge number, and a gauge number is a wire diameter",
        case.kind.expected,
        case.instead(f"{diameter_mm:g} mm") if diameter_mm and case.kind is LENGTH else (),
    )


def _gauge_without_system(case: Case) -> QuantityError | None:
    written = re.fullmatch(
        r"(?:#|no\.? ?|gauge ?|ga\.? ?)([0-9./]+)|([0-9./]+) ?(?:gauge|gage|ga|g\.)", case.part, re.IGNORECASE
    )
    if not written or not case.kind.gauges:
        return None
    number = written[1] or written[2]
    meant = [text for text in (f"{system} {number}" for system in SYSTEMS) if gauge_mm(text)]
    return QuantityError(
        f"{echo(case.part)} does not say which gauge",
        f"one of {', '.join(SYSTEMS)} before the number",
        case.instead(*meant),
    )


def _more_than_one_figure(case: Case) -> QuantityError | None:
    mixed = re.fullmatch(r"([0-9]+)-([1-9][0-9]*/[1-9][0-9]*.*)", case.part)
    if mixed:
        return QuantityError(
            f"{echo(case.part)} has a dash before its fraction", "a space there", case.instead(f"{mixed[1]} {mixed[2]}")
        )
    if case.wanted:
        return _other_range(case)
    tolerance = _TOLERANCE.match(case.part)
    if not (tolerance or _OTHER_RANGE.fullmatch(case.part) or re.search(r"\.\.|[<>]", case.part)):
        return None
    return QuantityError(
        f"{echo(case.part)} has a tolerance" if tolerance else f"{echo(case.part)} is a range or a bound",
        f"one figure without them, {case.kind.expected}",
        (tolerance[1],) if tolerance and re.match("[0-9]", tolerance[1]) else (),
    )


def _other_range(case: Case) -> QuantityError | None:
    written = _OTHER_RANGE.fullmatch(case.part)
    if written is None or not re.fullmatch(r"[0-9].*", written[3]):
        return None
    return QuantityError(
        f"{echo(case.part)} is not how a range is written",
        "two dots in a range",
        case.instead(f"{written[1]}..{written[3]}"),
    )


def _unit(case: Case) -> QuantityError | None:
    pieces = split_figure(case.part)
    if pieces is None:
        return _unit_first(case)
    number, unit = pieces
    if unit in case.kind.factors:
        return None
    if not unit:
        return QuantityError(
            f"{echo(case.part)} has no unit",
            case.kind.expected,
            case.instead(*(f"{number} {unit}" for unit in list(case.kind.units)[:2])),
        )
    other = kind_of(unit)
    if other is case.kind:
        return None
    if other:
        suggestions = [f"{number} {_TWIN_UNITS[unit]}"] if _TWIN_UNITS.get(unit) in case.kind.units else []
        return QuantityError(f"{echo(case.part)} is {other.name}", case.kind.expected, case.instead(*suggestions))
    return _trailing(case, number, unit) or _unknown_unit(case, number, unit)


def _unit_first(case: Case) -> QuantityError | None:
    """A unit or a currency's sign before its number, or without one."""
    written = re.fullmatch(rf"([^0-9.+-]+?) ?({DECIMAL})?", case.part)
    unit = _SPOKEN_UNITS.get(written[1].casefold(), written[1]) if written else ""
    if written is None or not (unit in case.kind.factors or kind_of(unit) is case.kind):
        return None
    if written[2] is None:
        return QuantityError(f"{echo(case.part)} has no number", case.kind.expected)
    return QuantityError(
        f"{echo(case.part)} has its unit before the number", case.kind.expected, case.instead(f"{written[2]} {unit}")
    )


def _trailing(case: Case, number: str, rest: str) -> QuantityError | None:
    """A figure that is complete, and then something more; or two numbers."""
    if re.match(r"[0-9./*+-]", rest):
        return QuantityError(
            f"{echo(case.part)} is more than one number",
            case.kind.expected,
            case.instead(number) if rest == "." else (),
        )
    unit, _, more = rest.partition(" ")
    if not more or unit not in case.kind.factors:
        return None
    return QuantityError(
        f'after {number} {unit} stands "{echo(more)}"', case.kind.expected, case.instead(f"{number} {unit}")
    )


def _unknown_unit(case: Case, number: str, unit: str) -> QuantityError:
    if not case.kind.units and case.kind is not MONEY:
        return QuantityError(
            f'"{echo(unit)}" stands after the number {number}', case.kind.expected, case.instead(number)
        )
    return QuantityError(
        f'"{echo(unit)}" is no unit that is known',
        case.kind.expected,
        case.instead(*(f"{number} {known}" for known in _nearest_units(unit, case.kind))),
    )


def _nearest_units(unit: str, kind: Kind) -> list[str]:
    """The units of a kind that a writer may have meant, nearest first.

    >>> _nearest_units("inch", LENGTH), _nearest_units("mmm", LENGTH), _nearest_units("xyzzy", LENGTH)
    (['in'], ['mm'], [])
    """
    spoken = _SPOKEN_UNITS.get(unit.casefold(), unit)
    if kind is MONEY:
        return [spoken.upper()] if re.fullmatch("[A-Za-z]{3}", spoken) else []
    meant = _TWIN_UNITS.get(spoken, spoken) if kind is FORCE or (kind is MASS and spoken not in kind.units) else spoken
    if meant in kind.units:
        return [meant]
    from rapidfuzz import fuzz, process

    found = process.extract(unit, list(kind.units), scorer=fuzz.ratio, processor=str.casefold, limit=2, score_cutoff=55)
    return [name for name, score, _ in found if score >= found[0][1]]


def _size(case: Case) -> QuantityError | None:
    if re.search(r"/0+(?![0-9])", case.part) and not split_figure(case.part):
        return QuantityError(f"{echo(case.part)} divides by zero", case.kind.expected)
    pieces = split_figure(case.part)
    if pieces is None:
        return None
    if in_proportion(pieces[0]) or abs(value_of(pieces[0])) >= 1:
        return QuantityError(f"{echo(case.part)} is too large", case.kind.expected)
    return QuantityError(f"{echo(case.part)} is too small to be told from zero", case.kind.expected)


_CHECKS: tuple[Callable[[Case], QuantityError | None], ...] = (
    _missing,
    _too_long,
    _invisible,
    _word,
    _comma,
    _other_base,
    _gauge,
    _grouped_digits,
    _colon,
    _leading_zero,
    _more_than_one_figure,
    _unit,
    _size,
)
