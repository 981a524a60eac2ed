"""Every unit leads to the house unit by its legal factor. The independent source is scipy.constants (CODATA, NIST)."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
import scipy.constants as si
from hypothesis import given
from hypothesis import strategies as st

from sourcing import quantities as q
from sourcing.quantities import kinds

Reader = Callable[[str], float]

MM, MPA, N_MM = 1e-3, 1e6, 1e-3
"""The house units in SI: metres, pascals, newton metres."""

FACTORS: list[tuple[Reader, str, float]] = [
    (q.length_mm, "mm", 1.0),
    (q.length_mm, "cm", 10.0),
    (q.length_mm, "m", 1000.0),
    (q.length_mm, "in", si.inch / MM),
    (q.length_mm, "ft", si.foot / MM),
    (q.length_mm, "thou", si.mil / MM),
    (q.force_n, "N", 1.0),
    (q.force_n, "mN", si.milli),
    (q.force_n, "kN", si.kilo),
    (q.force_n, "gf", si.kilogram_force / 1000),
    (q.force_n, "kgf", si.kilogram_force),
    (q.force_n, "lbf", si.pound_force),
    (q.force_n, "ozf", si.oz * si.g),
    (q.rate_n_per_mm, "N/mm", 1.0),
    (q.rate_n_per_mm, "N/m", si.milli),
    (q.rate_n_per_mm, "lbf/in", si.pound_force / (si.inch / MM)),
    (q.rate_n_per_mm, "kgf/mm", si.kilogram_force),
    (q.torque_n_mm, "N*mm", 1.0),
    (q.torque_n_mm, "N·mm", 1.0),
    (q.torque_n_mm, "N*m", 1 / N_MM),
    (q.torque_n_mm, "lbf*in", si.pound_force * si.inch / N_MM),
    (q.angular_rate_n_mm_per_deg, "N*mm/deg", 1.0),
    (q.angular_rate_n_mm_per_deg, "N*mm/rad", si.degree),
    (q.angle_deg, "deg", 1.0),
    (q.angle_deg, "°", 1.0),
    (q.angle_deg, "rad", 1 / si.degree),
    (q.angle_deg, "turns", 2 * math.pi / si.degree),
    (q.angle_deg, "turn", 2 * math.pi / si.degree),
    (q.stress_mpa, "MPa", 1.0),
    (q.stress_mpa, "GPa", si.giga / MPA),
    (q.stress_mpa, "N/mm2", 1.0),
    (q.stress_mpa, "N/mm²", 1.0),
    (q.stress_mpa, "psi", si.psi / MPA),
    (q.stress_mpa, "ksi", si.psi * 1000 / MPA),
    (q.mass_g, "g", 1.0),
    (q.mass_g, "kg", si.kilo),
    (q.mass_g, "oz", si.oz / si.gram),
    (q.mass_g, "lb", si.lb / si.gram),
    (q.duration_days, "h", si.hour / si.day),
    (q.duration_days, "hour", si.hour / si.day),
    (q.duration_days, "hours", si.hour / si.day),
    (q.duration_days, "days", 1.0),
    (q.duration_days, "day", 1.0),
    (q.duration_days, "weeks", si.week / si.day),
    (q.duration_days, "week", si.week / si.day),
    (q.fraction, "%", 0.01),
]
IDS = [f"{read.__name__} {unit}" for read, unit, _ in FACTORS]


@pytest.mark.parametrize(("read", "unit", "factor"), FACTORS, ids=IDS)
def test_a_unit_leads_to_the_house_unit_by_its_legal_factor(read: Reader, unit: str, factor: float) -> None:
    assert read(f"1 {unit}") == pytest.approx(factor, rel=1e-14)


@pytest.mark.parametrize(("read", "unit", "factor"), FACTORS, ids=IDS)
@given(value=st.floats(1e-6, 1e6))
def test_a_number_written_in_any_unit_comes_back(read: Reader, unit: str, factor: float, value: float) -> None:
    assert read(f"{value / factor!r} {unit}") == pytest.approx(value, rel=1e-9)


def test_every_unit_that_is_read_is_in_this_table() -> None:
    tested = {unit.replace("·", "*").replace("²", "2") for _, unit, _ in FACTORS}
    read = {unit for kind in kinds.MEASURED for unit in kind.factors if unit}
    assert read - tested == {"degC", "degF"}, "temperatures have their own test below"


@pytest.mark.parametrize(
    ("text", "celsius"),
    [
        ("20", 20.0),
        ("20 degC", 20.0),
        ("-40 °C", -40.0),
        ("−40 °C", -40.0),
        ("212 degF", si.convert_temperature(212, "F", "C")),
        ("0 degF", si.convert_temperature(0, "F", "C")),
        ("-459.67 degF", si.convert_temperature(-459.67, "F", "C")),
        ("32 °F", 0.0),
    ],
)
def test_a_temperature_is_read_from_its_own_zero(text: str, celsius: float) -> None:
    assert q.temperature_c(text) == pytest.approx(celsius, abs=1e-9)


@given(celsius=st.floats(-273, 2000))
def test_a_temperature_in_fahrenheit_comes_back(celsius: float) -> None:
    fahrenheit = float(si.convert_temperature(celsius, "C", "F"))
    assert q.temperature_c(f"{fahrenheit!r} degF") == pytest.approx(celsius, rel=1e-9, abs=1e-9)


def test_a_difference_of_temperatures_has_no_zero_of_its_own() -> None:
    assert kinds.TEMPERATURE.difference_in_house_unit(18, "degF") == pytest.approx(10)


@pytest.mark.parametrize(
    ("read", "value"),
    [
        (q.length_mm, 24.0),
        (q.wire_diameter_mm, 24.0),
        (q.force_n, 24.0),
        (q.rate_n_per_mm, 24.0),
        (q.torque_n_mm, 24.0),
        (q.angular_rate_n_mm_per_deg, 24.0),
        (q.angle_deg, 24.0),
        (q.stress_mpa, 24.0),
        (q.temperature_c, 24.0),
        (q.mass_g, 24.0),
        (q.duration_days, 24.0),
        (q.number, 24.0),
        (q.whole_number, 24),
    ],
)
def test_a_bare_number_is_in_the_house_unit(read: Reader, value: float) -> None:
    assert read("24") == value


def test_a_bare_amount_is_in_the_currency_of_the_bench() -> None:
    assert q.money("4.20", "CHF") == q.Money(4.2, "CHF")


def test_an_amount_may_name_any_currency_by_three_capitals() -> None:
    assert q.money("4.20 EUR", "CHF") == q.Money(4.2, "EUR")
    assert q.money("12NOK", "CHF") == q.Money(12.0, "NOK")
