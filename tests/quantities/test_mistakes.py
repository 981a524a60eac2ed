"""What a user is told about a text that is no figure: what stands there, what was expected, and what comes nearest."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from sourcing import quantities as q
from sourcing.quantities import QuantityError

Reader = Callable[[str], object]
Row = tuple[str, str, str, tuple[str, ...]]

A_LENGTH = "a length (mm, cm, m, in, ft, thou)"
A_WIRE = "a wire diameter (mm, cm, m, in, ft, thou, or a gauge number as in MWG 20)"
A_FORCE = "a force (N, mN, kN, gf, kgf, lbf, ozf)"
A_RATE = "a spring rate (N/mm, N/m, lbf/in, kgf/mm)"
A_STRESS = "a stress (MPa, GPa, N/mm2, psi, ksi)"
A_TORQUE = "a torque (N*mm, N*m, lbf*in)"
MONEY = "an amount of money such as 4.20 EUR"
UNKNOWN = "; leave the key out where it is unknown"
POINT = "a decimal point"
POINT_AND_DIGITS = "a decimal point, and nothing between thousands"


def price(text: str) -> q.Money:
    """An amount on a bench that counts in EUR."""
    return q.money(text, "EUR")


def check(read: Reader, row: Row) -> None:
    text, found, expected, suggestions = row
    with pytest.raises(QuantityError) as mistake:
        read(text)
    assert (mistake.value.found, mistake.value.expected, mistake.value.suggestions) == (found, expected, suggestions)


NOT_A_NUMBER: list[Row] = [
    ("", "nothing stands here", A_LENGTH, ()),
    ("   ", "nothing stands here", A_LENGTH, ()),
    ("yes", "“yes” is no number", A_LENGTH, ()),
    ("No", "“No” is no number", A_LENGTH, ()),
    ("true", "“true” is no number", A_LENGTH, ()),
    ("about right", "“about right” is no number", A_LENGTH, ()),
    ("--5", "“--5” is no number", A_LENGTH, ()),
    ("null", "“null” is no number", A_LENGTH + UNKNOWN, ()),
    ("?", "“?” is no number", A_LENGTH + UNKNOWN, ()),
    (".inf", ".inf is no finite number", A_LENGTH, ()),
    ("-.inf", "-.inf is no finite number", A_LENGTH, ()),
    ("inf", "inf is no finite number", A_LENGTH, ()),
    ("nan", "nan is no finite number", A_LENGTH, ()),
    ("∞ mm", "∞ mm is no finite number", A_LENGTH, ()),
    ("1e400", "1e400 is too large", A_LENGTH, ()),
    ("1e400 mm", "1e400 mm is too large", A_LENGTH, ()),
    ("1e11 m", "1e11 m is too large", A_LENGTH, ()),
    ("1e-400", "1e-400 is too small to be told from zero", A_LENGTH, ()),
    ("1:30", "1:30 is a time of day or a ratio", A_LENGTH, ()),
    ("0x10", "0x10 is a hexadecimal number", A_LENGTH, ("16",)),
    ("0o17 mm", "0o17 mm is an octal number", A_LENGTH, ("15 mm",)),
    ("0b11", "0b11 is a binary number", A_LENGTH, ("3",)),
    ("010", "010 has a leading zero", "a number without one", ("10",)),
    ("-010 mm", "-010 mm has a leading zero", "a number without one", ("-10 mm",)),
    ("00.5", "00.5 has a leading zero", "a number without one", ("0.5",)),
    ("0/0", "0/0 divides by zero", A_LENGTH, ()),
    ("1/0 in", "1/0 in divides by zero", A_LENGTH, ()),
    ("1 1/0 in", "1 1/0 in divides by zero", A_LENGTH, ()),
    ("0/4 in", "0/4 in is zero", A_LENGTH, ()),
    ("5 6", "5 6 is more than one number", A_LENGTH, ()),
    ("5 mm 6 mm", "5 mm 6 mm is more than one number", A_LENGTH, ()),
    ("5 ft 3 in", "5 ft 3 in is more than one number", A_LENGTH, ()),
    ("1.2.3", "1.2.3 is more than one number", A_LENGTH, ()),
    ("1/2/3", "1/2/3 is more than one number", A_LENGTH, ()),
    ("5.", "5. ends with a point", A_LENGTH, ("5",)),
    ("5 mm long", "after 5 mm stands “long”", A_LENGTH, ("5 mm",)),
    ("5\x1b[31m", "“5\x1b[31m” has a character in it that cannot be seen, U+001B", A_LENGTH, ()),
    ("5\u200bmm", "“5\u200bmm” has a character in it that cannot be seen, U+200B", A_LENGTH, ()),
    ("9" * 5000, "a text of 5000 characters stands here", A_LENGTH, ()),
    ("z" * 100, f"“{'z' * 57}...” is no number", A_LENGTH, ()),
]


@pytest.mark.parametrize("row", NOT_A_NUMBER, ids=lambda row: repr(row[0][:20]))
def test_a_text_that_is_no_number(row: Row) -> None:
    check(q.length_mm, row)


COMMAS: list[Row] = [
    ("1,5", "1,5 has a comma as decimal sign", POINT, ("1.5",)),
    ("1,5 mm", "1,5 mm has a comma as decimal sign", POINT, ("1.5 mm",)),
    (",5 in", ",5 in has a comma as decimal sign", POINT, ("0.5 in",)),
    ("1.000,5", "1.000,5 has a comma as decimal sign", POINT, ("1000.5",)),
    ("1,000.5", "1,000.5 has a comma between its digits", POINT_AND_DIGITS, ("1000.5",)),
    ("1,000,000 mm", "1,000,000 mm has a comma between its digits", POINT_AND_DIGITS, ("1000000 mm",)),
    ("1,000 mm", "1,000 mm has a comma between its digits", POINT_AND_DIGITS, ("1.000 mm", "1000 mm")),
    ("1,5,2", "1,5,2 has a comma between its digits", POINT_AND_DIGITS, ()),
    ("24,5 ± 0,5 mm", "24,5 ± 0,5 mm has a comma as decimal sign", POINT, ("24.5 ± 0.5 mm",)),
    ("24 +1,5/-0,5 mm", "24 +1,5/-0,5 mm has a comma as decimal sign", POINT, ("24 +1.5/-0.5 mm",)),
    ("20,5..24 mm", "20,5..24 mm has a comma as decimal sign", POINT, ("20.5..24 mm",)),
    (">= 4,5 mm", ">= 4,5 mm has a comma as decimal sign", POINT, (">= 4.5 mm",)),
]


@pytest.mark.parametrize("row", COMMAS, ids=lambda row: row[0])
def test_a_comma_in_a_number_is_refused_and_the_point_form_shown(row: Row) -> None:
    check(q.wanted_length_mm, row)


DIVIDED: list[Row] = [
    ("1_000", "1_000 has “_” between its digits", "digits without it", ("1000",)),
    ("1'000 mm", "1'000 mm has “'” between its digits", "digits without it", ("1000 mm",)),
    ("1 000 mm", "1 000 mm has a space between its digits", "digits without it", ("1000 mm",)),
]


@pytest.mark.parametrize("row", DIVIDED, ids=lambda row: row[0])
def test_digits_in_groups_are_refused_and_the_digits_shown(row: Row) -> None:
    check(q.length_mm, row)


UNITS: list[tuple[Reader, Row]] = [
    (q.length_mm, ("5 N", "5 N is a force", A_LENGTH, ())),
    (q.length_mm, ("5 N mm", "5 N mm is a torque", A_LENGTH, ())),
    (q.length_mm, ("5 °C", "5 degC is a temperature", A_LENGTH, ())),
    (q.length_mm, ("5 %", "5 % is a percentage", A_LENGTH, ())),
    (q.length_mm, ("5 NOK", "5 NOK is an amount of money", A_LENGTH, ())),
    (q.length_mm, ("5 mmm", "“mmm” is no unit that is read here", A_LENGTH, ("5 mm",))),
    (q.length_mm, ("5 MM", "“MM” is no unit that is read here", A_LENGTH, ("5 mm",))),
    (q.length_mm, ("5 inch", "“inch” is no unit that is read here", A_LENGTH, ("5 in",))),
    (q.length_mm, ('1/2"', "“\"” is no unit that is read here", A_LENGTH, ("1/2 in",))),
    (q.length_mm, ("1 125/1000 mmm", "“mmm” is no unit that is read here", A_LENGTH, ("1 125/1000 mm",))),
    (q.stress_mpa, ("5 PSI", "“PSI” is no unit that is read here", A_STRESS, ("5 psi",))),
    (q.length_mm, ("5 xyz", "“xyz” is no unit that is read here", A_LENGTH, ())),
    (q.length_mm, ("5 µm", "“µm” is no unit that is read here", A_LENGTH, ())),
    (q.length_mm, ("mm 5", "mm 5 has its unit before the number", A_LENGTH, ("5 mm",))),
    (q.length_mm, ("mm", "“mm” has no number", A_LENGTH, ())),
    (q.force_n, ("5 mm", "5 mm is a length", A_FORCE, ())),
    (q.force_n, ("500 g", "500 g is a mass", A_FORCE, ("500 gf",))),
    (q.force_n, ("5 n", "“n” is no unit that is read here", A_FORCE, ("5 N",))),
    (q.force_n, ("5 pounds", "“pounds” is no unit that is read here", A_FORCE, ("5 lbf",))),
    (q.mass_g, ("5 lbf", "5 lbf is a force", "a mass (g, kg, oz, lb)", ("5 lb",))),
    (q.rate_n_per_mm, ("5 lb/in", "“lb/in” is no unit that is read here", A_RATE, ("5 lbf/in",))),
    (q.rate_n_per_mm, ("5 N/cm", "“N/cm” is no unit that is read here", A_RATE, ())),
    (q.torque_n_mm, ("5 Nm", "“Nm” is no unit that is read here", A_TORQUE, ("5 N*m",))),
    (q.torque_n_mm, ("5 in-lb", "“in-lb” is no unit that is read here", A_TORQUE, ("5 lbf*in",))),
    (q.temperature_c, ("20 C", "“C” is no unit that is read here", "a temperature (degC, degF)", ("20 degC",))),
    (q.temperature_c, ("20°", "20deg is an angle", "a temperature (degC, degF)", ("20 degC",))),
    (q.force_n, ("5 LBS", "“LBS” is no unit that is read here", A_FORCE, ("5 lbf",))),
    (q.duration_days, ("3 d", "“d” is no unit that is read here", "a time (days, h, weeks)", ("3 days",))),
    (q.number, ("9.75 coils", "“coils” stands after 9.75", "a number without a unit", ("9.75",))),
    (q.number, ("5 mm", "5 mm is a length", "a number without a unit", ())),
    (q.fraction, ("15", "15 has no unit", "a percentage such as 15 %", ("15 %",))),
    (q.fraction, ("0.15", "0.15 has no unit", "a percentage such as 15 %", ("15 %",))),
    (price, ("4.20 eur", "“eur” is no unit that is read here", MONEY, ("4.20 EUR",))),
    (price, ("€4.20", "€4.20 has its unit before the number", MONEY, ("4.20 EUR",))),
    (price, ("5 mm", "5 mm is a length", MONEY, ())),
    (price, ("1e400 EUR", "1e400 EUR is too large", MONEY, ())),
]  # fmt: skip


@pytest.mark.parametrize(("read", "row"), UNITS, ids=[f"{read.__name__} {row[0]}" for read, row in UNITS])
def test_a_unit_that_does_not_belong_is_named_with_the_nearest_that_does(read: Reader, row: Row) -> None:
    check(read, row)


RANGE_OF_MWG = "a gauge from MWG 10/0 to MWG 45"
SYSTEM_FIRST = "MWG, WM, SWG or AWG before the number"

GAUGES: list[Row] = [
    ("MWG", "MWG has no gauge number after it", "a number after it, as in MWG 20", ()),
    ("MWG 60", "there is no MWG 60", RANGE_OF_MWG, ("MWG 45",)),
    ("MWG 12.3", "there is no MWG 12.3", RANGE_OF_MWG, ("MWG 12.5",)),
    ("AWG 7/0", "there is no AWG 7/0", "a gauge from AWG 6/0 to AWG 50", ("AWG 6/0",)),
    ("SWG x", "there is no SWG x", "a gauge from SWG 7/0 to SWG 50", ()),
    ("20 MWG", "20 MWG is not how a gauge is written", "MWG, then the gauge number", ("MWG 20",)),
    ("mwg 20", "mwg 20 is not how a gauge is written", "MWG, then the gauge number", ("MWG 20",)),
    ("W&M 20", "W&M 20 is not how a gauge is written", "WM, then the gauge number", ("WM 20",)),
    ("#49", "#49 does not say which gauge", SYSTEM_FIRST, ("WM 49", "SWG 49", "AWG 49")),
    ("20 gauge", "20 gauge does not say which gauge", SYSTEM_FIRST, ("MWG 20", "WM 20", "SWG 20", "AWG 20")),
    ("5 N", "5 N is a force", A_WIRE, ()),
]


@pytest.mark.parametrize("row", GAUGES, ids=lambda row: row[0])
def test_a_gauge_number_that_leads_to_no_diameter(row: Row) -> None:
    check(q.wire_diameter_mm, row)


GAUGE_IS_WIRE = "MWG 20 is a gauge number, and a gauge number is a wire diameter"


@pytest.mark.parametrize(
    ("read", "row"),
    [
        (q.length_mm, ("MWG 20", GAUGE_IS_WIRE, A_LENGTH, ("1.143 mm",))),
        (q.wanted_length_mm, ("MWG 20 ± 0.1 mm", GAUGE_IS_WIRE, A_LENGTH, ("1.143 mm ± 0.1 mm",))),
        (q.force_n, ("MWG 20", GAUGE_IS_WIRE, A_FORCE, ())),
        (price, ("MWG 20", GAUGE_IS_WIRE, MONEY, ())),
    ],
)
def test_a_gauge_number_is_a_wire_diameter_and_nothing_else(read: Reader, row: Row) -> None:
    check(read, row)


ONE_FIGURE = f"one figure, {A_LENGTH}"

SEVERAL: list[Row] = [
    ("24 mm ± 0.5 mm", "24 mm ± 0.5 mm has a tolerance", ONE_FIGURE, ("24 mm",)),
    ("1 ± 1/32 in", "1 ± 1/32 in has a tolerance", ONE_FIGURE, ("1 in",)),
    ("24 mm +1/-0.5 mm", "24 mm +1/-0.5 mm has a tolerance", ONE_FIGURE, ("24 mm",)),
    ("20..24 mm", "20..24 mm is a range or a bound", ONE_FIGURE, ()),
    ("20 - 24 mm", "20 - 24 mm is a range or a bound", ONE_FIGURE, ()),
    ("≥ 5 mm", ">= 5 mm is a range or a bound", ONE_FIGURE, ()),
    ("1-1/4 in", "1-1/4 in has a dash before its fraction", "a space before it", ("1 1/4 in",)),
]


@pytest.mark.parametrize("row", SEVERAL, ids=lambda row: row[0])
def test_a_range_or_a_tolerance_is_refused_where_one_figure_belongs(row: Row) -> None:
    check(q.length_mm, row)


TWO_DOTS = "two dots in a range"
SMALL_FIRST = "the smaller figure of a range first"
BOUND_SIGN = "the sign >= or <= before a bound"
BOTH_SIDES = "both sides of a tolerance, as in +1/-0.5 mm"
ABOVE_ZERO = "a length above zero"
STAYS = "a length that stays above zero"

WANTED: list[Row] = [
    ("24..20 mm", "24..20 mm runs from large to small", SMALL_FIRST, ("20..24 mm",)),
    ("2 in..24 mm", "2 in..24 mm runs from large to small", SMALL_FIRST, ("24 mm..2 in",)),
    ("20 mm..24", "24 has no unit in 20 mm..24", A_LENGTH, ("20 mm..24 mm",)),
    ("20..", "a number is missing in 20..", A_LENGTH, ()),
    ("..24 mm", "a number is missing in ..24 mm", A_LENGTH, ()),
    ("20..24..28", "24..28 is more than one number", A_LENGTH, ()),
    (
        "31 mm -0.5/+1 mm",
        "31 mm -0.5/+1 mm has its lower tolerance first",
        "the upper one first, as in +1/-0.5 mm",
        ("31 mm +1/-0.5 mm",),
    ),
    (
        "31 -0.5 mm/+1 mm",
        "31 -0.5 mm/+1 mm has its lower tolerance first",
        "the upper one first, as in +1/-0.5 mm",
        ("31 +1/-0.5 mm",),
    ),
    ("20-24 mm", "20-24 mm is not how a range is written", TWO_DOTS, ("20..24 mm",)),
    ("20 – 24 mm", "20 – 24 mm is not how a range is written", TWO_DOTS, ("20..24 mm",)),
    ("20 to 24 mm", "20 to 24 mm is not how a range is written", TWO_DOTS, ("20..24 mm",)),
    ("20...24 mm", "20...24 mm is not how a range is written", TWO_DOTS, ("20..24 mm",)),
    ("0..24 mm", "0..24 mm begins at zero", "a length above zero, or a bound", ("<= 24 mm",)),
    ("-5..24 mm", "-5 is negative", ABOVE_ZERO, ()),
    ("> 5 mm", "“>” is no sign of a bound", BOUND_SIGN, (">= 5 mm",)),
    ("<5 mm", "“<” is no sign of a bound", BOUND_SIGN, ("<= 5 mm",)),
    ("=> 5 mm", "“=>” is no sign of a bound", BOUND_SIGN, (">= 5 mm",)),
    ("at least 5 mm", "“at least” is no sign of a bound", BOUND_SIGN, (">= 5 mm",)),
    (">=", "a number is missing in >=", A_LENGTH, ()),
    (">= 0 mm", "0 mm is zero", ABOVE_ZERO, ()),
    ("24 mm ± -2 mm", "24 mm ± -2 mm has a negative tolerance", "a tolerance of zero or above", ()),
    ("24 mm ± 24 mm", "24 mm ± 24 mm has a tolerance that reaches zero", STAYS, ()),
    ("24 mm ± 100 %", "24 mm ± 100 % has a tolerance that reaches zero", STAYS, ()),
    ("24 mm +1/-24 mm", "24 mm +1/-24 mm has a tolerance that reaches zero", STAYS, ()),
    ("24 mm ± 2", "2 has no unit in 24 mm ± 2", A_LENGTH, ("24 mm ± 2 mm", "24 mm ± 2 %")),
    ("24 mm ±", "a number is missing in 24 mm ±", A_LENGTH, ()),
    ("± 2 mm", "a number is missing in ± 2 mm", A_LENGTH, ()),
    ("24 +1 mm", "24 +1 mm has half a tolerance", BOTH_SIDES, ("24 +1 mm/-0",)),
    ("24 +1 -0.5 mm", "24 +1 -0.5 mm has half a tolerance", BOTH_SIDES, ("24 +1/-0.5 mm",)),
    ("24 ± 2 ± 3 mm", "2 ± 3 mm is more than one number", A_LENGTH, ()),
    ("24 mm ± 2 N", "2 N is a force", A_LENGTH, ()),
    ("24 ± 2 mmm", "“mmm” is no unit that is read here", A_LENGTH, ("24 ± 2 mm",)),
    ("24 ± 010 mm", "24 ± 010 mm has a leading zero", "a number without one", ("24 ± 10 mm",)),
    ("24 % ± 3 mm", "24 % is a percentage", A_LENGTH, ()),
    ("0 mm", "0 mm is zero", ABOVE_ZERO, ()),
    ("-24 mm ± 2 mm", "-24 mm ± 2 mm is negative", ABOVE_ZERO, ()),
]


@pytest.mark.parametrize("row", WANTED, ids=lambda row: row[0])
def test_a_range_a_bound_or_a_tolerance_that_cannot_be_meant(row: Row) -> None:
    check(q.wanted_length_mm, row)


OTHERS: list[tuple[Reader, Row]] = [
    (q.whole_number, ("3.5", "3.5 is not whole", "a whole number", ())),
    (q.whole_number, ("1e11", "1e11 is too large", "a whole number up to 1000000000", ())),
    (q.temperature_c, ("-274", "-274 is below absolute zero", "a temperature of -273.15 degC or above", ())),
    (q.temperature_c, ("-460 degF", "-460 degF is below absolute zero", "a temperature of -273.15 degC or above", ())),
    (q.wanted_wire_diameter_mm, ("MWG 18..20", "20 has no unit in MWG 18..20", A_WIRE, ("MWG 18..MWG 20",))),
    (q.wanted_force_n, ("9 N ± 15", "15 has no unit in 9 N ± 15", A_FORCE, ("9 N ± 15 N", "9 N ± 15 %"))),
]


@pytest.mark.parametrize(("read", "row"), OTHERS, ids=[row[0] for _, row in OTHERS])
def test_other_figures_out_of_their_range(read: Reader, row: Row) -> None:
    check(read, row)


MENDED: list[tuple[Reader, Row]] = [
    *((q.length_mm, row) for row in (*NOT_A_NUMBER, *DIVIDED, *SEVERAL)),
    *((q.wire_diameter_mm, row) for row in GAUGES),
    *((q.wanted_length_mm, row) for row in (*COMMAS, *WANTED)),
    *UNITS,
    *OTHERS,
]


def test_every_suggestion_is_a_text_that_is_read() -> None:
    for read, (_, _, _, suggestions) in MENDED:
        for suggestion in suggestions:
            read(suggestion)


def test_the_error_reads_as_one_sentence() -> None:
    with pytest.raises(QuantityError) as mistake:
        q.length_mm("5 N")
    assert str(mistake.value) == "5 N is a force; expected a length (mm, cm, m, in, ft, thou)"
