"""The kinds of figures, and for each its units with the factor that leads to the house unit.

Factors are exact by definition: 1 in = 25.4 mm and 1 lb = 453.59237 g (international yard and pound, 1959),
standard gravity 9.80665 m/s2 (3rd CGPM, 1901); the rest follows from these.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field

MM_PER_INCH = 25.4
G_PER_POUND = 453.59237
STANDARD_GRAVITY = 9.80665
N_PER_POUND_FORCE = G_PER_POUND * STANDARD_GRAVITY / 1000
MPA_PER_PSI = N_PER_POUND_FORCE / MM_PER_INCH**2


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of figure. `name` carries its article; the first of `units` is the house unit.

    `also` are forms that are read but not listed in messages; `zeros` are the readings, in the unit itself, at which
    the house unit reads zero. Where `bare` is false a unit must be written. `gauges`: a wire gauge number is read too.
    `never_zero`: no tolerance may let it reach zero. `from_zero`: zero is a figure too. `factors` holds every unit that
    is read, "" for none.
    """

    name: str
    units: Mapping[str, float]
    also: Mapping[str, float] = field(default_factory=dict[str, float])
    zeros: Mapping[str, float] = field(default_factory=dict[str, float])
    hint: str | None = None
    bare: bool = True
    gauges: bool = False
    never_zero: bool = False
    from_zero: bool = False
    factors: Mapping[str, float] = field(init=False)

    def __post_init__(self) -> None:
        bare = {"": 1.0} if self.bare else {}
        object.__setattr__(self, "factors", {**self.units, **self.also, **bare})

    @property
    def expected(self) -> str:
        """What a message says was expected.

        >>> MASS.expected
        'a mass (g, kg, oz, lb)'
        """
        return f"{self.name} {self.hint or '(' + ', '.join(self.units) + ')'}"

    def in_house_unit(self, number: float, unit: str) -> float:
        """The number, written in a unit of this kind, in the house unit.

        >>> round(TEMPERATURE.in_house_unit(212, "degF"), 9)
        100.0
        """
        return (number - self.zeros.get(unit, 0.0)) * self.factors[unit]

    def difference_in_house_unit(self, number: float, unit: str) -> float:
        """A difference of two figures of this kind in the house unit; zeros play no part.

        >>> round(TEMPERATURE.difference_in_house_unit(9, "degF"), 9)
        5.0
        """
        return number * self.factors[unit]


_LENGTHS = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": MM_PER_INCH, "ft": 12 * MM_PER_INCH, "thou": MM_PER_INCH / 1000}

LENGTH = Kind("a length", _LENGTHS, never_zero=True)
WIRE_DIAMETER = Kind(
    "a wire diameter",
    _LENGTHS,
    hint=f"({', '.join(_LENGTHS)}, or a gauge number as in MWG 20)",
    gauges=True,
    never_zero=True,
)
FORCE = Kind(
    "a force",
    {
        "N": 1.0,
        "mN": 1 / 1000,
        "kN": 1000.0,
        "gf": STANDARD_GRAVITY / 1000,
        "kgf": STANDARD_GRAVITY,
        "lbf": N_PER_POUND_FORCE,
        "ozf": N_PER_POUND_FORCE / 16,
    },
)
RATE = Kind(
    "a spring rate",
    {"N/mm": 1.0, "N/m": 1 / 1000, "lbf/in": N_PER_POUND_FORCE / MM_PER_INCH, "kgf/mm": STANDARD_GRAVITY},
)
TORQUE = Kind("a torque", {"N*mm": 1.0, "N*m": 1000.0, "lbf*in": N_PER_POUND_FORCE * MM_PER_INCH})
ANGULAR_RATE = Kind("a rate by angle", {"N*mm/deg": 1.0, "N*mm/rad": math.pi / 180})
ANGLE = Kind("an angle", {"deg": 1.0, "rad": 180 / math.pi, "turns": 360.0}, {"turn": 360.0})
DIRECTION = Kind("an angle", ANGLE.units, ANGLE.also, from_zero=True)
STRESS = Kind("a stress", {"MPa": 1.0, "GPa": 1000.0, "N/mm2": 1.0, "psi": MPA_PER_PSI, "ksi": 1000 * MPA_PER_PSI})
TEMPERATURE = Kind("a temperature", {"degC": 1.0, "degF": 5 / 9}, zeros={"degF": 32.0})
MASS = Kind("a mass", {"g": 1.0, "kg": 1000.0, "oz": G_PER_POUND / 16, "lb": G_PER_POUND})
DURATION = Kind(
    "a time",
    {"days": 1.0, "h": 1 / 24, "weeks": 7.0},
    {"day": 1.0, "hour": 1 / 24, "hours": 1 / 24, "week": 7.0},
)
PERCENTAGE = Kind("a percentage", {"%": 1.0}, hint="such as 15 %", bare=False)
NUMBER = Kind("a number", {}, hint="without a unit")
MONEY = Kind("an amount of money", {}, hint="such as 4.20 EUR")

MEASURED = (LENGTH, FORCE, RATE, TORQUE, ANGULAR_RATE, ANGLE, STRESS, TEMPERATURE, MASS, DURATION, PERCENTAGE)


def is_currency(unit: str) -> bool:
    """Whether a unit has the form of a currency: three capital letters.

    >>> is_currency("EUR"), is_currency("MPa")
    (True, False)
    """
    return len(unit) == 3 and unit.isascii() and unit.isalpha() and unit.isupper()


def kind_of(unit: str) -> Kind | None:
    """The kind of figure that a unit belongs to; None for a unit nobody knows.

    >>> kind_of("psi").name, kind_of("CHF").name, kind_of("mmm")
    ('a stress', 'an amount of money', None)
    """
    if is_currency(unit) and not any(unit.lower() == known.lower() for kind in MEASURED for known in kind.units):
        return MONEY
    return next((kind for kind in MEASURED if unit and unit in kind.factors), None)
