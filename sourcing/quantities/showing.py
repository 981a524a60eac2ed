"""Numbers made into text for people. `units` is the bench's: "mm", or "inch" for inches, pounds and degF."""

from __future__ import annotations

import math
from collections.abc import Callable

from sourcing.quantities.kinds import FORCE, LENGTH, RATE, STRESS, TEMPERATURE, TORQUE
from sourcing.quantities.rounding import to_decimals, to_figures, without_noise
from sourcing.quantities.values import Money, Wanted


def show_length(length_mm: float, units: str = "mm") -> str:
    """A length to three figures, at most 0.01 mm or 0.001 in.

    >>> show_length(31), show_length(612.4), show_length(31, "inch")
    ('31.0 mm', '612 mm', '1.22 in')
    """
    if units == "inch":
        return f"{to_figures(length_mm / LENGTH.factors['in'], 3, most_decimals=3)} in"
    return f"{to_figures(length_mm, 3, most_decimals=2)} mm"


def show_diameter(diameter_mm: float, units: str = "mm") -> str:
    """A diameter to 0.01 mm or 0.001 in, as calipers read.

    >>> show_diameter(9.6), show_diameter(0.889, "inch")
    ('9.60 mm', '0.035 in')
    """
    if units == "inch":
        return f"{to_decimals(diameter_mm / LENGTH.factors['in'], 3)} in"
    return f"{to_decimals(diameter_mm, 2)} mm"


def show_wire(wire_diameter_mm: float, units: str = "mm") -> str:
    """A wire diameter as a micrometer reads it: the rate goes as its fourth power.

    >>> show_wire(0.8), show_wire(0.8, "inch"), show_wire(1.143)
    ('0.80 mm', '0.0315 in', '1.143 mm')
    """
    if units == "inch":
        return f"{to_decimals(wire_diameter_mm / LENGTH.factors['in'], 4)} in"
    decimals = 2 if math.isclose(wire_diameter_mm, round(wire_diameter_mm, 2), abs_tol=5e-5) else 3
    return f"{to_decimals(wire_diameter_mm, decimals)} mm"


def show_wire_length(length_mm: float, units: str = "mm") -> str:
    """A length of wire: in metres from one on.

    >>> show_wire_length(592.0), show_wire_length(6808.0), show_wire_length(6808.0, "inch")
    ('592 mm', '6.81 m', '268 in')
    """
    return f"{length_mm / 1000:.2f} m" if units == "mm" and length_mm >= 1000 else show_length(length_mm, units)


def show_force(force_n: float, units: str = "mm") -> str:
    """A force to 0.1 N, finer below 1 N and whole from 100 N on; to three figures in lbf.

    >>> show_force(9), show_force(0.35), show_force(123.4), show_force(9, "inch")
    ('9.0 N', '0.35 N', '123 N', '2.02 lbf')
    """
    if units == "inch":
        return f"{to_figures(force_n / FORCE.factors['lbf'], 3, most_decimals=3)} lbf"
    return f"{to_decimals(force_n, 2 if abs(force_n) < 0.995 else 1 if abs(force_n) < 99.95 else 0)} N"


def show_rate(rate_n_per_mm: float, units: str = "mm") -> str:
    """A spring rate to three figures.

    >>> show_rate(1.3102), show_rate(1.3102, "inch")
    ('1.31 N/mm', '7.48 lbf/in')
    """
    if units == "inch":
        return f"{to_figures(rate_n_per_mm / RATE.factors['lbf/in'], 3)} lbf/in"
    return f"{to_figures(rate_n_per_mm, 3)} N/mm"


def show_torque(torque_n_mm: float, units: str = "mm") -> str:
    """A torque to three figures.

    >>> show_torque(98.07)
    '98.1 N·mm'
    """
    if units == "inch":
        return f"{to_figures(torque_n_mm / TORQUE.factors['lbf*in'], 3)} lbf·in"
    return f"{to_figures(torque_n_mm, 3)} N·mm"


def show_energy(energy_n_mm: float, units: str = "mm") -> str:
    """An energy to two figures, in joules; on a bench in inches in in·lbf, with the joules beside.

    >>> show_energy(41.3), show_energy(1340.0), show_energy(12_600.0), show_energy(2.0)
    ('0.041 J', '1.3 J', '13 J', 'less than 0.01 J')
    >>> show_energy(41.3, "inch"), show_energy(1340.0, "inch"), show_energy(2.0, "inch")
    ('0.37 in·lbf (0.041 J)', '12 in·lbf (1.3 J)', 'less than 0.1 in·lbf (0.01 J)')
    """
    small, joules = energy_n_mm < 10.0, f"{to_figures(energy_n_mm / 1000, 2, most_decimals=3)} J"
    if units == "inch":
        inch_pounds = f"{to_figures(energy_n_mm / TORQUE.factors['lbf*in'], 2, most_decimals=2)} in·lbf"
        return "less than 0.1 in·lbf (0.01 J)" if small else f"{inch_pounds} ({joules})"
    return "less than 0.01 J" if small else joules


def show_angle(angle_deg: float) -> str:
    """An angle for people, to a tenth of a degree; in degrees on every bench.

    >>> show_angle(90.0), show_angle(57.2958)
    ('90 deg', '57.3 deg')
    """
    return f"{without_noise(to_decimals(angle_deg, 1))} deg"


def show_angular_rate(rate_n_mm_per_deg: float, units: str = "mm") -> str:
    """The rate of a torsion spring for people, to three figures.

    >>> show_angular_rate(4.7407), show_angular_rate(4.7407, "inch")
    ('4.74 N·mm/deg', '0.0420 lbf·in/deg')
    """
    if units == "inch":
        return f"{to_figures(rate_n_mm_per_deg / TORQUE.factors['lbf*in'], 3)} lbf·in/deg"
    return f"{to_figures(rate_n_mm_per_deg, 3)} N·mm/deg"


def show_stress(stress_mpa: float, units: str = "mm") -> str:
    """A stress in whole MPa or ksi.

    >>> show_stress(924.4), show_stress(924.4, "inch")
    ('924 MPa', '134 ksi')
    """
    if units == "inch":
        return f"{to_decimals(stress_mpa / STRESS.factors['ksi'], 0)} ksi"
    return f"{to_decimals(stress_mpa, 0)} MPa"


def show_temperature(temperature_c: float, units: str = "mm") -> str:
    """A temperature in whole degrees.

    >>> show_temperature(250), show_temperature(250, "inch")
    ('250 °C', '482 °F')
    """
    if units == "inch":
        return f"{to_decimals(temperature_c / TEMPERATURE.factors['degF'] + TEMPERATURE.zeros['degF'], 0)} °F"
    return f"{to_decimals(temperature_c, 0)} °C"


def show_money(money: Money) -> str:
    """An amount to two decimals, and its currency.

    >>> show_money(Money(4.2, "EUR"))
    '4.20 EUR'
    """
    return f"{to_decimals(money.amount, 2)} {money.currency}"


def show_days(days: float) -> str:
    """A time in days, in hours where it is under a day.

    >>> show_days(4), show_days(1), show_days(2.5), show_days(0.5)
    ('4 days', '1 day', '2.5 days', '12 h')
    """
    if 0 < days < 1:
        return f"{to_decimals(days * 24, 0)} h"
    number = without_noise(to_decimals(days, 1))
    return f"{number} day" if number == "1" else f"{number} days"


def show_cycles(cycles: float) -> str:
    """A number of cycles, in millions from one million on.

    >>> show_cycles(20000), show_cycles(2e6), show_cycles(1e12)
    ('20000', '2 million', '1000000 million')
    """
    return f"{cycles:.0f}" if cycles < 1e6 else f"{without_noise(to_decimals(cycles / 1e6, 6))} million"


def show_wanted(wanted: Wanted, show: Callable[[float], str]) -> str:
    """A wanted figure as a person would write it; `show` makes one number of its kind into text.

    >>> show_wanted(Wanted(9.0, 1.35, 1.35, percent=True), show_force)
    '9 N ± 15 %'
    >>> show_wanted(Wanted(low=20.0, high=24.0), show_length), show_wanted(Wanted(low=5.0), show_force)
    ('20 to 24 mm', 'at least 5 N')
    >>> show_wanted(Wanted(24.0, 0.5, 1.0), show_length)
    '24 mm +1/-0.5 mm'
    """

    def text(value: float) -> str:
        return without_noise(show(value))

    if wanted.nominal is not None:
        return text(wanted.nominal) + _show_tolerance(wanted, text)
    if wanted.low is None or wanted.high is None:
        return f"at least {text(wanted.low)}" if wanted.low is not None else f"at most {text(wanted.high or 0.0)}"
    return f"{text(wanted.low).split(' ')[0]} to {text(wanted.high)}"


def _show_tolerance(wanted: Wanted, text: Callable[[float], str]) -> str:
    if not wanted.nominal or wanted.minus is None or wanted.plus is None:
        return ""
    plus, minus = text(wanted.plus), text(wanted.minus)
    if wanted.percent:
        plus, minus = (f"{part / wanted.nominal * 100:.3g} %" for part in (wanted.plus, wanted.minus))
    return f" ± {plus}" if plus == minus else f" +{plus.split(' ')[0]}/-{minus}"
