"""Numbers as people read them: as many figures as the bench can use, none for show."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing import quantities as q
from sourcing.quantities import Money, Wanted

SHOWN: list[tuple[str, str]] = [
    (q.show_length(31), "31.0 mm"),
    (q.show_length(1.25), "1.25 mm"),
    (q.show_length(0.004), "0.00 mm"),
    (q.show_length(612.4), "612 mm"),
    (q.show_length(6200), "6200 mm"),
    (q.show_length(9.996), "10.0 mm"),
    (q.show_length(19.05), "19.1 mm"),
    (q.show_length(0.75 * 25.4), "19.1 mm"),
    (q.show_length(12.7 + 6.35), "19.1 mm"),
    (q.show_length(31, "inch"), "1.22 in"),
    (q.show_length(1.25, "inch"), "0.049 in"),
    (q.show_length(612.4, "inch"), "24.1 in"),
    (q.show_diameter(0.9), "0.90 mm"),
    (q.show_diameter(11.004), "11.00 mm"),
    (q.show_diameter(0.889, "inch"), "0.035 in"),
    (q.show_force(9), "9.0 N"),
    (q.show_force(0.35), "0.35 N"),
    (q.show_force(0.996), "1.0 N"),
    (q.show_force(99.96), "100 N"),
    (q.show_force(123.4), "123 N"),
    (q.show_force(-0.001), "0.00 N"),
    (q.show_force(9, "inch"), "2.02 lbf"),
    (q.show_weight(9), "918 g"),
    (q.show_weight(9.80665), "1000 g"),
    (q.show_weight(0.0001), "0 g"),
    (q.show_weight(4.4482216152605, "inch"), "16.0 oz"),
    (q.show_stop(14.25), "14.25 mm"),
    (q.show_stop(112.5), "112.5 mm"),
    (q.show_block(28.575, "inch"), "1.125 in (1 1/8)"),
    (q.show_block(25.4, "inch"), "1.000 in (1)"),
    (q.show_block(25.4 * 45 / 64, "inch"), "0.703 in (45/64)"),
    (q.show_block(27.5, "inch"), "1.083 in"),
    (q.show_energy(112.98, "inch"), "1.0 in·lbf (0.11 J)"),
    (q.show_rate(1.3102), "1.31 N/mm"),
    (q.show_rate(0.05312), "0.0531 N/mm"),
    (q.show_rate(10.98), "11.0 N/mm"),
    (q.show_rate(1.3102, "inch"), "7.48 lbf/in"),
    (q.show_torque(98.07), "98.1 N·mm"),
    (q.show_torque(284.2), "284 N·mm"),
    (q.show_torque(98.07, "inch"), "0.868 lbf·in"),
    (q.show_stress(924.4), "924 MPa"),
    (q.show_stress(924.4, "inch"), "134 ksi"),
    (q.show_temperature(250), "250 °C"),
    (q.show_temperature(-0.2), "0 °C"),
    (q.show_temperature(250, "inch"), "482 °F"),
    (q.show_money(Money(4.2, "EUR")), "4.20 EUR"),
    (q.show_money(Money(0, "EUR")), "0.00 EUR"),
    (q.show_money(Money(1234.5, "CHF")), "1234.50 CHF"),
    (q.show_days(0), "0 days"),
    (q.show_days(1), "1 day"),
    (q.show_days(4), "4 days"),
    (q.show_days(2.5), "2.5 days"),
    (q.show_days(0.5), "12 h"),
    (q.show_days(10), "10 days"),
]


@pytest.mark.parametrize(("shown", "text"), SHOWN)
def test_a_number_is_shown_with_the_figures_that_a_bench_can_use(shown: str, text: str) -> None:
    assert shown == text


def in_inches(length_mm: float) -> str:
    return q.show_length(length_mm, "inch")


WANTED: list[tuple[Callable[[str], Wanted], str, Callable[[float], str], str]] = [
    (q.wanted_length_mm, "31 mm ± 2 mm", q.show_length, "31 mm ± 2 mm"),
    (q.wanted_length_mm, "31 mm", q.show_length, "31 mm"),
    (q.wanted_length_mm, "24 +1/-0.5 mm", q.show_length, "24 mm +1/-0.5 mm"),
    (q.wanted_length_mm, "24 mm +10/-5 %", q.show_length, "24 mm +10/-5 %"),
    (q.wanted_length_mm, "20..24 mm", q.show_length, "20 to 24 mm"),
    (q.wanted_length_mm, "1..1.25 in", in_inches, "1 to 1.25 in"),
    (q.wanted_length_mm, "<= 12.5 mm", q.show_length, "at most 12.5 mm"),
    (q.wanted_length_mm, "100..120 mm", q.show_length, "100 to 120 mm"),
    (q.wanted_wire_diameter_mm, "0.85 ± 0.02", q.show_diameter, "0.85 mm ± 0.02 mm"),
    (q.wanted_force_n, "9 N ± 15 %", q.show_force, "9 N ± 15 %"),
    (q.wanted_force_n, "22 N ± 7.5 %", q.show_force, "22 N ± 7.5 %"),
    (q.wanted_force_n, ">= 5 N", q.show_force, "at least 5 N"),
]


@pytest.mark.parametrize(("read", "written", "show", "text"), WANTED)
def test_a_wanted_figure_is_shown_as_a_person_would_write_it(
    read: Callable[[str], Wanted], written: str, show: Callable[[float], str], text: str
) -> None:
    assert q.show_wanted(read(written), show) == text


SHOWS: list[tuple[Callable[[float, str], str], Callable[[str], float]]] = [
    (q.show_length, q.length_mm),
    (q.show_diameter, q.length_mm),
    (q.show_force, q.force_n),
    (q.show_rate, q.rate_n_per_mm),
    (q.show_torque, q.torque_n_mm),
    (q.show_stress, q.stress_mpa),
    (q.show_temperature, q.temperature_c),
]


@pytest.mark.parametrize("units", ["mm", "inch"])
@pytest.mark.parametrize(("show", "read"), SHOWS)
@given(value=st.floats(20, 1e5))
def test_what_is_shown_can_be_read_again_and_is_near(
    show: Callable[[float, str], str], read: Callable[[str], float], units: str, value: float
) -> None:
    """Half a unit of the last figure shown; the coarsest is a whole ksi, 3.45 MPa either way."""
    assert read(show(value, units)) == pytest.approx(value, rel=0.006, abs=3.45)


@pytest.mark.parametrize("units", ["mm", "inch"])
@pytest.mark.parametrize(("show", "read"), SHOWS)
@given(value=st.floats(-1e6, 1e6))
def test_no_number_is_shown_in_exponents_or_as_minus_nothing(
    show: Callable[[float, str], str], read: Callable[[str], float], units: str, value: float
) -> None:
    number = show(value, units).split(" ")[0]
    assert re.fullmatch(r"-?[0-9]+(\.[0-9]+)?", number)
    assert not re.fullmatch(r"-[0.]+", number)
