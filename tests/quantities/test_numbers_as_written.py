"""The ways in which a number may be written, all of them read as the same length."""

from __future__ import annotations

import pytest

from sourcing.quantities import QuantityError, above_zero, at_least_zero, length_mm, number, whole_number

ACCEPTED: list[tuple[str, float]] = [
    ("24", 24.0),
    ("24 mm", 24.0),
    ("24mm", 24.0),
    ("24   mm", 24.0),
    ("  24 mm  ", 24.0),
    ("24\u00a0mm", 24.0),  # no-break space
    ("24\u202fmm", 24.0),  # narrow no-break space
    ("24\tmm\n", 24.0),
    ("+24", 24.0),
    ("-24", -24.0),
    ("−24 mm", -24.0),  # the minus sign proper
    ("0", 0.0),
    ("0.0 mm", 0.0),
    ("-0", 0.0),
    ("0e5", 0.0),
    (".045 in", 1.143),
    ("0.045 in", 1.143),
    ("1e-3 m", 1.0),
    ("1.5E1", 15.0),
    ("1e+1 mm", 10.0),
    ("1/2", 0.5),
    ("1/32 in", 0.79375),
    ("1 1/4 in", 31.75),
    ("1 1/4in", 31.75),
    ("-1 1/4 in", -31.75),
    ("5/4 in", 31.75),
    ("1⁄4 in", 6.35),  # fraction slash
    ("½ in", 12.7),
    ("1½ in", 38.1),
    ("2 ¾ in", 69.85),
    ("1000 thou", 25.4),
    ("2 ft", 609.6),
    ("1.2 cm", 12.0),
]


@pytest.mark.parametrize(("text", "value_mm"), ACCEPTED)
def test_a_length_is_read_however_it_is_written(text: str, value_mm: float) -> None:
    assert length_mm(text) == pytest.approx(value_mm, rel=1e-12)


@pytest.mark.parametrize(("text", "value"), [("9.75", 9.75), ("9 3/4", 9.75), ("1e3", 1000.0), ("-2", -2.0)])
def test_a_number_without_a_unit(text: str, value: float) -> None:
    assert number(text) == value


@pytest.mark.parametrize(("text", "value"), [("20000", 20000), ("3.0", 3), ("1e3", 1000), ("-2", -2), ("0", 0)])
def test_a_whole_number_may_be_written_in_any_way_that_is_whole(text: str, value: int) -> None:
    read = whole_number(text)
    assert read == value
    assert isinstance(read, int)


def test_above_zero_refuses_zero_and_below_and_says_which() -> None:
    assert above_zero(0.9, "0.9 mm", "a wire diameter") == 0.9
    with pytest.raises(QuantityError) as zero:
        above_zero(0.0, "0 mm", "a wire diameter")
    with pytest.raises(QuantityError) as negative:
        above_zero(-1.0, "-1 mm", "a wire diameter")
    assert str(zero.value) == "0 mm is zero; expected a wire diameter above zero"
    assert str(negative.value) == "-1 mm is negative; expected a wire diameter above zero"


def test_at_least_zero_refuses_what_is_below() -> None:
    assert at_least_zero(0.0, "0", "a count") == 0.0
    with pytest.raises(QuantityError) as negative:
        at_least_zero(-1.0, "-1", "a count")
    assert str(negative.value) == "-1 is negative; expected a count of zero or above"
