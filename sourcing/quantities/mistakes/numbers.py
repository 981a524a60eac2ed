"""Numbers that are none, or that are written in a way that could be read as another number."""

from __future__ import annotations

import re

from sourcing.quantities.grammar import DECIMAL, TOLERANCE_SIGN, in_proportion, split_figure, value_of
from sourcing.quantities.mistakes.case import Case
from sourcing.quantities.values import QuantityError, echo, quoted

LONGEST_FIGURE = 200

_WORDS = {"yes", "no", "true", "false", "on", "off", "y", "n"}
_WORDS_FOR_UNKNOWN = {"null", "~", "none", "unknown", "?", "-", "n/a"}
_NOT_FINITE = re.compile(r"[+-]?(\.?(inf|infinity|nan)\b|∞).*", re.IGNORECASE)
_OTHER_BASES = {"x": "a hexadecimal", "o": "an octal", "b": "a binary"}
_IN_OTHER_BASE = re.compile(r"0[xX][0-9a-fA-F]+|0[oO][0-7]+|0[bB][01]+")
_WITH_COMMA = re.compile(r"[0-9]*(?:\.[0-9]+)*,[0-9]+(?:[.,][0-9]+)*")
_DIVIDED = re.compile(r"[0-9](?:([_'’])[0-9]|( )[0-9]{3}(?![0-9/]))")
_LEADING_ZEROS = re.compile(r"(?<![0-9.A-Za-z])0+(?=[0-9])")
_OTHER_RANGE = re.compile(rf"({DECIMAL}(?: ?[A-Za-z][A-Za-z/*]*2?)??) ?(?:\.\.\.|-|–|—|…|to) ?([0-9].*)")
_MINUS_FIRST = re.compile(r"(.*?[^ ]) ?- ?([0-9.][^/]*?) ?/ ?\+ ?([0-9.].*)")
_DASHED_FRACTION = re.compile(r"([0-9]+)-([1-9][0-9]*/[1-9][0-9]*.*)")


def missing(case: Case) -> QuantityError | None:
    """No text at all, or none on one side of a sign."""
    if case.part:
        return None
    found = f"a number is missing in {echo(case.whole)}" if case.whole else "nothing stands here"
    return QuantityError(found, case.kind.expected)


def too_long(case: Case) -> QuantityError | None:
    """A text that is longer than any figure."""
    if len(case.whole) <= LONGEST_FIGURE:
        return None
    return QuantityError(f"a text of {len(case.whole)} characters stands here", case.kind.expected)


def invisible(case: Case) -> QuantityError | None:
    """A control character or a mark without width."""
    sign = next((sign for sign in case.part if not sign.isprintable()), None)
    if sign is None:
        return None
    return QuantityError(
        f"{quoted(case.part)} has a character in it that cannot be seen, U+{ord(sign):04X}", case.kind.expected
    )


def word(case: Case) -> QuantityError | None:
    """Words that a YAML reader or a computer may take for a value: yes, null, .inf."""
    written = case.part.casefold()
    if written in _WORDS:
        return QuantityError(f"{quoted(case.part)} is no number", case.kind.expected)
    if written in _WORDS_FOR_UNKNOWN:
        expected = f"{case.kind.expected}; leave the key out where it is unknown"
        return QuantityError(f"{quoted(case.part)} is no number", expected)
    if _NOT_FINITE.fullmatch(case.part):
        return QuantityError(f"{echo(case.part)} is no finite number", case.kind.expected)
    return None


def comma(case: Case) -> QuantityError | None:
    """A comma, as decimal sign or between thousands; where it can be either, both readings are told."""
    if not _WITH_COMMA.search(case.whole):
        return None
    pointed = _WITH_COMMA.sub(lambda number: _with_point(number[0]), case.whole)
    joined = _WITH_COMMA.sub(lambda number: _without_thousands(number[0]), case.whole)
    suggestions = tuple(text for text in dict.fromkeys((pointed, joined)) if "," not in text)
    if joined != case.whole or "," in pointed:
        expected = "a decimal point, and nothing between thousands"
        return QuantityError(f"{echo(case.whole)} has a comma between its digits", expected, suggestions)
    return QuantityError(f"{echo(case.whole)} has a comma as decimal sign", "a decimal point", suggestions)


def _with_point(number: str) -> str:
    """A number whose only comma is its decimal sign, with a point; anything else as `_without_thousands`.

    >>> _with_point("1,5"), _with_point(",5"), _with_point("1.000,5"), _with_point("1,000.5")
    ('1.5', '0.5', '1000.5', '1000.5')
    """
    written = re.fullmatch(r"([0-9]{1,3}(?:\.[0-9]{3})+|[0-9]*),([0-9]+)", number)
    return f"{written[1].replace('.', '') or '0'}.{written[2]}" if written else _without_thousands(number)


def _without_thousands(number: str) -> str:
    """A number with commas between its thousands, without them; anything else unchanged.

    >>> _without_thousands("1,000"), _without_thousands("1,000,000.5"), _without_thousands("1,5")
    ('1000', '1000000.5', '1,5')
    """
    return number.replace(",", "") if re.fullmatch(r"[1-9][0-9]{0,2}(,[0-9]{3})+(\.[0-9]+)?", number) else number


def divided_digits(case: Case) -> QuantityError | None:
    """Digits in groups: 1_000, 1'000, 1 000."""
    written = _DIVIDED.search(case.whole)
    if written is None:
        return None
    sign = "a space" if written[2] else quoted(written[1])
    joined = re.sub(r"(?<=[0-9])[_'’ ](?=[0-9])", "", case.whole)
    return QuantityError(f"{echo(case.whole)} has {sign} between its digits", "digits without it", (joined,))


def other_base(case: Case) -> QuantityError | None:
    """Hexadecimal, octal and binary numbers."""
    written = _IN_OTHER_BASE.match(case.part)
    if written is None:
        return None
    decimal = f"{int(written[0], 0)}{case.part[written.end() :]}"
    base = _OTHER_BASES[written[0][1].lower()]
    return QuantityError(f"{echo(case.part)} is {base} number", case.kind.expected, case.instead(decimal))


def colon(case: Case) -> QuantityError | None:
    """Two numbers with a colon between them."""
    if not re.search("[0-9]:[0-9]", case.part):
        return None
    return QuantityError(f"{echo(case.part)} is a time of day or a ratio", case.kind.expected)


def leading_zero(case: Case) -> QuantityError | None:
    """A zero before other digits, which some readers take for an octal number."""
    without = _LEADING_ZEROS.sub("", case.whole)
    if without == case.whole:
        return None
    return QuantityError(f"{echo(case.whole)} has a leading zero", "a number without one", (without,))


def zero_divisor(case: Case) -> QuantityError | None:
    """A fraction over zero."""
    if not re.search(r"[0-9]/0(?![0-9.])", case.part):
        return None
    return QuantityError(f"{echo(case.part)} divides by zero", case.kind.expected)


def nothing_divided(case: Case) -> QuantityError | None:
    """A fraction of nothing."""
    if not re.match(r"0/[0-9]", case.part):
        return None
    return QuantityError(f"{echo(case.part)} is zero", case.kind.expected)


def minus_first(case: Case) -> QuantityError | None:
    """A tolerance of two sides with the lower one first."""
    sides = _MINUS_FIRST.fullmatch(case.whole)
    if not case.wanted or sides is None:
        return None
    first, minus, plus = sides.groups()
    number, unit = split_figure(plus) or (plus, "")
    meant = f"{first} +{number}/-{minus}{f' {unit}' if unit and minus[-1].isdigit() else ''}"
    found, expected = f"{echo(case.whole)} has its lower tolerance first", "the upper one first, as in +1/-0.5 mm"
    return QuantityError(found, expected, (meant,))


def several_figures(case: Case) -> QuantityError | None:
    """A tolerance, range or bound where one figure belongs; or a range or a mixed number written another way."""
    pieces = split_figure(case.part)
    if pieces and (not pieces[1] or pieces[1] in case.kind.factors):
        return None
    mixed = _DASHED_FRACTION.fullmatch(case.part)
    if mixed:
        suggestions = case.instead(f"{mixed[1]} {mixed[2]}")
        return QuantityError(f"{echo(case.part)} has a dash before its fraction", "a space before it", suggestions)
    span = _OTHER_RANGE.fullmatch(case.part)
    if not case.wanted:
        return _one_figure_only(case, span is not None)
    if span is None:
        return None
    suggestions = case.instead(f"{span[1]}..{span[2]}")
    return QuantityError(f"{echo(case.part)} is not how a range is written", "two dots in a range", suggestions)


def _one_figure_only(case: Case, is_range: bool) -> QuantityError | None:
    sign = TOLERANCE_SIGN.search(case.part, 1)
    if is_range or ".." in case.part or re.match("[<>=]", case.part):
        return QuantityError(f"{echo(case.part)} is a range or a bound", f"one figure, {case.kind.expected}")
    if sign is None:
        return None
    figure, shared = split_figure(case.part[: sign.start()].strip()), re.search("[A-Za-z/*]+2?$", case.part)
    unit = (figure[1] or (shared[0] if shared else "")) if figure else ""
    suggestions = (f"{figure[0]} {unit}".strip(),) if figure else ()
    return QuantityError(f"{echo(case.part)} has a tolerance", f"one figure, {case.kind.expected}", suggestions)


def out_of_proportion(case: Case) -> QuantityError | None:
    """A number too large or too small to belong to a spring, or for the computer."""
    pieces = split_figure(case.part)
    if pieces is None:
        return None
    if in_proportion(pieces[0]) or abs(value_of(pieces[0])) >= 1:
        return QuantityError(f"{echo(case.part)} is too large", case.kind.expected)
    return QuantityError(f"{echo(case.part)} is too small to be told from zero", case.kind.expected)
