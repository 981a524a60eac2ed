"""Whatever is typed, a reader returns a finite figure or says shortly what is wrong; nothing else happens."""

from __future__ import annotations

import math
import subprocess
import sys
from collections.abc import Callable

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from sourcing import quantities as q
from sourcing.quantities import Money, QuantityError, Wanted

READERS: list[Callable[[str], float | Money | Wanted]] = [
    q.length_mm,
    q.wire_diameter_mm,
    q.force_n,
    q.rate_n_per_mm,
    q.torque_n_mm,
    q.angular_rate_n_mm_per_deg,
    q.angle_deg,
    q.stress_mpa,
    q.temperature_c,
    q.mass_g,
    q.duration_days,
    q.fraction,
    q.number,
    q.whole_number,
    lambda text: q.money(text, "EUR"),
    q.wanted_length_mm,
    q.wanted_wire_diameter_mm,
    q.wanted_force_n,
    q.wanted_angle_deg,
    q.wanted_torque_n_mm,
]

FRAGMENTS = st.sampled_from(
    [
        *("0", "1", "24", "0.5", "1e400", "1e-9", "007", "½", "²", "٣", "𝟛", "inf", "nan", "yes", "x"),
        *(" ", "  ", ".", "..", ",", "_", ":", "#", '"', "\\", "\n", "\u00a0", "\u200b", "\x00", "\x1b[0m", "\u202e"),
        *("±", "+", "-", "−", "+-", "+/-", "/-", "/", ">=", "<=", ">", "=", "at least ", " to "),
        *("%", "mm", "in", "N", "N*mm", "°", "degC", "EUR", "MWG", "AWG 20"),
    ]
)
TYPED = st.text(max_size=40) | st.lists(FRAGMENTS, max_size=8).map("".join)

LONGEST_MESSAGE = 240


def read_or_refuse(read: Callable[[str], float | Money | Wanted], text: str) -> float | Money | Wanted | QuantityError:
    try:
        return read(text)
    except QuantityError as mistake:
        return mistake


def figures(value: float | Money | Wanted) -> list[float]:
    if isinstance(value, Money):
        return [value.amount]
    if isinstance(value, Wanted):
        parts = (value.nominal, value.minus, value.plus, value.low, value.high, value.smallest, value.largest)
        return [part for part in parts if part is not None]
    return [value]


@given(text=TYPED)
@example(text="1e308 ± 1e308")
@example(text="5²")
@example(text="9" * 10_000)
@example(text="0x" + "f" * 10_000)
@example(text="1/" + "9" * 10_000)
@example(text="1 " * 10_000)
@example(text="MWG " + "9" * 10_000)
@example(text="[" * 10_000)
def test_anything_typed_is_a_finite_figure_or_a_short_message(text: str) -> None:
    for read in READERS:
        outcome = read_or_refuse(read, text)
        if isinstance(outcome, QuantityError):
            assert outcome.found
            assert outcome.expected
            assert len(str(outcome)) <= LONGEST_MESSAGE
            assert text not in outcome.suggestions
        else:
            assert figures(outcome)
            assert all(math.isfinite(figure) for figure in figures(outcome))


@given(text=TYPED)
def test_a_wanted_figure_is_positive_and_its_parts_belong_together(text: str) -> None:
    for read in (q.wanted_length_mm, q.wanted_wire_diameter_mm, q.wanted_force_n):
        try:
            wanted = read(text)
        except QuantityError:
            continue
        assert (wanted.nominal is None) == (wanted.low is not None or wanted.high is not None)
        assert (wanted.minus is None) == (wanted.plus is None)
        assert all(value is None or value > 0 for value in (wanted.nominal, wanted.low, wanted.high))
        assert all(value is None or value >= 0 for value in (wanted.minus, wanted.plus))
        if wanted.low is not None and wanted.high is not None:
            assert wanted.low <= wanted.high
        if read is not q.wanted_force_n:
            assert wanted.smallest is None or wanted.smallest > 0


@given(text=TYPED)
def test_a_text_that_is_one_figure_is_the_same_figure_where_tolerances_are_read_too(text: str) -> None:
    try:
        plain = q.length_mm(text)
    except QuantityError:
        return
    if plain > 0:
        assert q.wanted_length_mm(text) == Wanted(nominal=plain)
    else:
        with pytest.raises(QuantityError, match=r"is zero|is negative"):
            q.wanted_length_mm(text)


@pytest.mark.parametrize("sign", ["5²", "٣", "𝟛 mm", "５"])
def test_digits_of_other_scripts_and_raised_digits_are_no_digits(sign: str) -> None:
    with pytest.raises(QuantityError):
        q.length_mm(sign)


def test_a_very_long_text_is_cut_where_it_is_repeated() -> None:
    with pytest.raises(QuantityError) as mistake:
        q.length_mm("x" * 150)
    assert mistake.value.found == f"“{'x' * 57}...” is no number"


def test_reading_good_figures_imports_nothing_slow() -> None:
    """Looking for the nearest unit and the gauge tables wait until a text calls for them."""
    program = """
import sys
before = set(sys.modules)
from sourcing.quantities import length_mm, wanted_force_n, show_length
length_mm("24 mm"), wanted_force_n("9 N ± 15 %"), show_length(24)
slow = {"rapidfuzz", "pydantic", "yaml", "numpy", "csv", "importlib.resources", "sourcing.quantities.mistakes"}
print(sorted(slow & (set(sys.modules) - before)))
"""
    run = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "[]"
