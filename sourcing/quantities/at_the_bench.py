"""Figures that a hand goes by: what is cut and marked, read off a scale, typed. `units` as in `showing`."""

from __future__ import annotations

from fractions import Fraction

from sourcing.quantities.kinds import FORCE, LENGTH, MASS, STANDARD_GRAVITY
from sourcing.quantities.rounding import to_decimals, without_noise

HALVED = 64
"""A rule in inches is divided so far."""

_ON_A_MARK_IN = 0.0005


def show_stop(length_mm: float, units: str = "mm") -> str:
    """A length at which a force is read, as a block is cut for it: to 0.01 mm or 0.001 in.

    >>> show_stop(24.0), show_stop(14.25), show_stop(112.5), show_stop(28.575, "inch")
    ('24.0 mm', '14.25 mm', '112.5 mm', '1.125 in')
    """
    if units == "inch":
        return f"{to_decimals(length_mm / LENGTH.factors['in'], 3)} in"
    number = without_noise(to_decimals(length_mm, 2))
    return f"{number if '.' in number else number + '.0'} mm"


def show_block(length_mm: float, units: str = "mm") -> str:
    """The same with the mark of a rule in inches that it lies on, where it lies on one.

    >>> show_block(28.575, "inch"), show_block(19.05, "inch"), show_block(30.0, "inch"), show_block(24.0)
    ('1.125 in (1 1/8)', '0.750 in (3/4)', '1.181 in', '24.0 mm')
    """
    inches = length_mm / LENGTH.factors["in"]
    mark = Fraction(round(inches * HALVED), HALVED)
    if units != "inch" or abs(inches - mark) > _ON_A_MARK_IN:
        return show_stop(length_mm, units)
    whole, part = divmod(mark, 1)
    written = " ".join(str(each) for each in (whole, part) if each)
    return f"{show_stop(length_mm, units)} ({written})"


def show_weight(force_n: float, units: str = "mm") -> str:
    """What a kitchen scale shows under a force, at standard gravity: whole grams, or ounces to a tenth.

    >>> show_weight(9), show_weight(9, "inch")
    ('918 g', '32.4 oz')
    """
    return show_mass(force_n / STANDARD_GRAVITY * 1000, units)


def show_mass(mass_g: float, units: str = "mm") -> str:
    """A mass as a kitchen scale shows it: whole grams, or ounces to a tenth.

    >>> show_mass(918.0), show_mass(918.0, "inch")
    ('918 g', '32.4 oz')
    """
    if units == "inch":
        return f"{to_decimals(mass_g / MASS.factors['oz'], 1)} oz"
    return f"{to_decimals(mass_g, 0)} g"


def typed_length(length_mm: float, units: str) -> str:
    """A length as it is typed for a command: with its unit, in quotes; it reads back to a hair.

    >>> typed_length(6.0, "mm"), typed_length(6.35, "inch"), typed_length(7.0, "inch")
    ("'6 mm'", "'0.25 in'", "'0.275591 in'")
    """
    return f"'{length_mm / LENGTH.factors['in']:.6g} in'" if units == "inch" else f"'{length_mm:g} mm'"


def typed_force(force_n: float, units: str) -> str:
    """A force as it is typed for a command.

    >>> typed_force(0.4, "mm"), typed_force(8.896443230521, "inch")
    ("'0.4 N'", "'2 lbf'")
    """
    return f"'{force_n / FORCE.factors['lbf']:.6g} lbf'" if units == "inch" else f"'{force_n:g} N'"
