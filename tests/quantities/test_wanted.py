"""Tolerances, ranges and bounds, as a user types them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.quantities import (
    QuantityError,
    Wanted,
    wanted_angle_deg,
    wanted_force_n,
    wanted_length_mm,
    wanted_torque_n_mm,
)


def around(nominal: float, minus: float, plus: float) -> Wanted:
    return Wanted(nominal=nominal, minus=minus, plus=plus)


LENGTHS: list[tuple[str, Wanted]] = [
    ("24", Wanted(nominal=24)),
    ("24 mm", Wanted(nominal=24)),
    ("1 1/4 in", Wanted(nominal=31.75)),
    ("31 mm ± 2 mm", around(31, 2, 2)),
    ("24 ± 0.5 mm", around(24, 0.5, 0.5)),
    ("24 ± 0.5", around(24, 0.5, 0.5)),
    ("24±0.5mm", around(24, 0.5, 0.5)),
    ("24\u00a0mm\u00a0±\u00a00.5\u00a0mm", around(24, 0.5, 0.5)),
    ("24 +- 2 mm", around(24, 2, 2)),
    ("24 +-2 mm", around(24, 2, 2)),
    ("24 +/- 2 mm", around(24, 2, 2)),
    ("24 +/- 10 %", around(24, 2.4, 2.4)),
    ("24 mm ± 10%", around(24, 2.4, 2.4)),
    ("1 in ± 0.5 mm", around(25.4, 0.5, 0.5)),
    ("1 ± 1/32 in", around(25.4, 0.79375, 0.79375)),
    ("1 1/4 in ± 1/32 in", around(31.75, 0.79375, 0.79375)),
    ("24 +1/-0.5 mm", around(24, 0.5, 1)),
    ("24 mm +1/-0.5 mm", around(24, 0.5, 1)),
    ("24 mm +1 mm/-0.5 mm", around(24, 0.5, 1)),
    ("24 mm + 1 / - 0.5 mm", around(24, 0.5, 1)),
    ("24 mm +1/−0.5 mm", around(24, 0.5, 1)),
    ("24 +1/-0 mm", around(24, 0, 1)),
    ("24 mm +0/-0.5 mm", around(24, 0.5, 0)),
    ("24 mm +10/-5 %", around(24, 1.2, 2.4)),
    ("1 in +1/32/-1/64 in", around(25.4, 0.396875, 0.79375)),
    ("1e+1 +1/-0.5 mm", around(10, 0.5, 1)),
    ("2.4e1 ± 5e-1 mm", around(24, 0.5, 0.5)),
    ("20..24 mm", Wanted(low=20, high=24)),
    ("20 .. 24 mm", Wanted(low=20, high=24)),
    ("20 mm..24 mm", Wanted(low=20, high=24)),
    ("20..24", Wanted(low=20, high=24)),
    ("20 mm..1 in", Wanted(low=20, high=25.4)),
    ("1/4..1/2 in", Wanted(low=6.35, high=12.7)),
    (">= 5 mm", Wanted(low=5)),
    (">=5", Wanted(low=5)),
    ("≥ 5 mm", Wanted(low=5)),
    ("<= 12 mm", Wanted(high=12)),
    ("≤ 1/2 in", Wanted(high=12.7)),
]


def same(one: Wanted, other: Wanted) -> bool:
    pairs = [(getattr(one, name), getattr(other, name)) for name in ("nominal", "minus", "plus", "low", "high")]
    return all(a is b if a is None or b is None else a == pytest.approx(b, rel=1e-12) for a, b in pairs)


@pytest.mark.parametrize(("text", "wanted"), LENGTHS)
def test_a_wanted_length_is_read_however_it_is_written(text: str, wanted: Wanted) -> None:
    assert same(wanted_length_mm(text), wanted), wanted_length_mm(text)


def test_the_other_kinds_are_read_by_the_same_rules() -> None:
    assert same(wanted_force_n("9 N ± 15 %"), around(9, 1.35, 1.35))
    assert same(wanted_force_n("1 kgf ± 100 gf"), around(9.80665, 0.980665, 0.980665))
    assert same(wanted_angle_deg("1/4 turns ± 5 deg"), around(90, 5, 5))
    assert same(wanted_torque_n_mm("80..120 N·mm"), Wanted(low=80, high=120))


def test_a_tolerance_in_percent_is_remembered_as_such_and_compares_equal_to_the_same_in_newtons() -> None:
    in_percent, in_newtons = wanted_force_n("10 N ± 15 %"), wanted_force_n("10 N ± 1.5 N")
    assert in_percent.percent
    assert not in_newtons.percent
    assert in_percent == in_newtons


def test_a_force_may_have_a_tolerance_that_reaches_zero_and_a_length_may_not() -> None:
    assert wanted_force_n("5 N ± 5 N").smallest == 0
    with pytest.raises(QuantityError, match="has a tolerance that reaches zero"):
        wanted_length_mm("5 mm ± 5 mm")


@given(low=st.floats(0.01, 1e4), width=st.floats(0, 1e4))
def test_a_range_comes_back_in_any_unit(low: float, width: float) -> None:
    read = wanted_length_mm(f"{low / 25.4!r}..{(low + width) / 25.4!r} in")
    assert read.low == pytest.approx(low, rel=1e-9)
    assert read.high == pytest.approx(low + width, rel=1e-9)


@given(nominal=st.floats(1, 1e4), part=st.floats(0.001, 99))
def test_a_percentage_is_the_same_tolerance_in_every_unit(nominal: float, part: float) -> None:
    mm, inch = (wanted_length_mm(f"{nominal!r} {unit} ± {part!r} %") for unit in ("mm", "in"))
    assert mm.minus is not None
    assert inch.minus == pytest.approx(mm.minus * 25.4, rel=1e-9)
    assert mm.minus == pytest.approx(nominal * part / 100, rel=1e-9)
