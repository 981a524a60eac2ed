"""Plain figures: one value, text in, a float in the house unit out. Every function raises `QuantityError`.

They take any value that is a figure of the right kind, zero and negative too; whoever asks knows the sign that makes
sense (`above_zero`, `at_least_zero`).
"""

from __future__ import annotations

from sourcing.quantities import kinds
from sourcing.quantities.grammar import GREATEST_NUMBER, LEAST_NUMBER, PLAIN, read_figure, refusal, split_figure, tidied
from sourcing.quantities.kinds import Kind
from sourcing.quantities.values import Money, QuantityError, echo

ABSOLUTE_ZERO_C = -273.15
LARGEST_WHOLE_NUMBER = 10**9
FULL_TURN_DEG = 360.0


def length_mm(text: str) -> float:
    """A length in mm.

    >>> length_mm("24"), length_mm("1/4 in")
    (24.0, 6.35)
    """
    return plain(text, kinds.LENGTH)


def wire_diameter_mm(text: str) -> float:
    """A wire diameter in mm, written as a length or as a gauge number.

    >>> wire_diameter_mm("0.8 mm"), wire_diameter_mm("MWG 20")
    (0.8, 1.143)
    """
    return plain(text, kinds.WIRE_DIAMETER)


def force_n(text: str) -> float:
    """A force in N.

    >>> force_n("9 N"), round(force_n("918 gf"), 2)
    (9.0, 9.0)
    """
    return plain(text, kinds.FORCE)


def rate_n_per_mm(text: str) -> float:
    """A spring rate in N/mm."""
    return plain(text, kinds.RATE)


def torque_n_mm(text: str) -> float:
    """A torque in N·mm."""
    return plain(text, kinds.TORQUE)


def angular_rate_n_mm_per_deg(text: str) -> float:
    """The rate of a torsion spring in N·mm per degree."""
    return plain(text, kinds.ANGULAR_RATE)


def angle_deg(text: str) -> float:
    """An angle in degrees.

    >>> angle_deg("1 1/2 turns")
    540.0
    """
    return plain(text, kinds.ANGLE)


def leg_angle_deg(text: str) -> float:
    """The angle between two legs in degrees: from leg 1 on to leg 2, the way the spring is wound up, 0 to 360.

    >>> leg_angle_deg("270 deg"), leg_angle_deg("1/4 turns")
    (270.0, 90.0)
    """
    value = angle_deg(text)
    if 0.0 <= value <= FULL_TURN_DEG:
        return value
    found = "is negative" if value < 0.0 else "is more than a whole turn"
    other = value % FULL_TURN_DEG
    expected = "an angle of 0 to 360 deg, counted from leg 1 on to leg 2 the way the spring is wound up"
    raise QuantityError(f"{echo(text)} {found}", f"{expected}: {other:g} deg, if that is what you mean")


def stress_mpa(text: str) -> float:
    """A stress or a modulus in MPa."""
    return plain(text, kinds.STRESS)


def temperature_c(text: str) -> float:
    """A temperature in degrees Celsius, at or above absolute zero."""
    value = plain(text, kinds.TEMPERATURE)
    if value < ABSOLUTE_ZERO_C - 1e-9:
        raise QuantityError(f"{echo(text)} is below absolute zero", f"a temperature of {ABSOLUTE_ZERO_C} degC or above")
    return value


def mass_g(text: str) -> float:
    """A mass in grams."""
    return plain(text, kinds.MASS)


def duration_days(text: str) -> float:
    """A time in days.

    >>> duration_days("2 weeks"), duration_days("12 h")
    (14.0, 0.5)
    """
    return plain(text, kinds.DURATION)


def fraction(text: str) -> float:
    """A percentage as a fraction of one; the sign % must stand there.

    >>> fraction("15 %")
    0.15
    """
    return plain(text, kinds.PERCENTAGE) / 100


def number(text: str) -> float:
    """A number without a unit.

    >>> number("9 3/4")
    9.75
    """
    return plain(text, kinds.NUMBER)


def whole_number(text: str) -> int:
    """A whole number without a unit.

    >>> whole_number("20000")
    20000
    """
    value = plain(text, kinds.NUMBER)
    if not value.is_integer():
        raise QuantityError(f"{echo(text)} is not whole", "a whole number")
    if abs(value) > LARGEST_WHOLE_NUMBER:
        raise QuantityError(f"{echo(text)} is too large", f"a whole number up to {LARGEST_WHOLE_NUMBER}")
    return int(value)


def money(text: str, currency: str) -> Money:
    """An amount of money; a bare number is in the given currency.

    >>> money("4.20", "EUR"), money("5 CHF", "EUR")
    (Money(amount=4.2, currency='EUR'), Money(amount=5.0, currency='CHF'))
    """
    tidy = tidied(text)
    amount, unit = split_figure(tidy) or ("", "")
    figure = read_figure(amount, kinds.MONEY) if not unit or kinds.is_currency(unit) else None
    if figure is None:
        raise refusal(tidy, tidy, kinds.MONEY)
    return Money(figure.number, unit or currency)


def plain(text: str, kind: Kind) -> float:
    """One figure of a kind in its house unit. Nearly all texts take the short way: one expression, one look-up."""
    match = PLAIN.fullmatch(text)
    if match and match[2] in kind.factors:
        value = kind.in_house_unit(float(match[1]), match[2])
        if LEAST_NUMBER <= abs(value) <= GREATEST_NUMBER:
            return value
    tidy = tidied(text)
    figure = read_figure(tidy, kind)
    if figure is None:
        raise refusal(tidy, tidy, kind)
    return kind.in_house_unit(figure.number, figure.unit)
