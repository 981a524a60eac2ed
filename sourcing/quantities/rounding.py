"""Numbers in plain decimals, rounded as a person rounds."""

from __future__ import annotations

import math
import re


def to_decimals(value: float, decimals: int) -> str:
    """Fixed decimals, a half rounded away from zero, and never a minus before nothing but zeros.

    >>> to_decimals(-0.001, 2), to_decimals(19.05, 1), to_decimals(0.75 * 25.4, 1)
    ('0.00', '19.1', '19.1')
    """
    return f"{round(_off_the_half(value), decimals) + 0.0:.{decimals}f}"


def _off_the_half(value: float) -> float:
    """A value moved from zero by less than anybody measures: what lies on a half but for its binary digits is past it.

    So 3/4 in and 19.05 mm, which differ in the sixteenth digit, are shown alike.
    """
    return value * (1 + 1e-13)


def to_figures(value: float, figures: int, most_decimals: int = 6) -> str:
    """A number of significant figures in plain decimals; whole digits are never rounded away.

    >>> to_figures(9.996, 3), to_figures(0.05312, 3), to_figures(24041, 3)
    ('10.0', '0.0531', '24041')
    """
    rounded = float(f"{_off_the_half(value):.{figures - 1}e}")
    before_point = math.floor(math.log10(abs(rounded))) + 1 if rounded else 1
    return to_decimals(value, min(max(figures - before_point, 0), most_decimals))


def without_noise(text: str) -> str:
    """The text without the zeros that end a decimal fraction.

    >>> without_noise("20.0 mm"), without_noise("9.60 mm"), without_noise("100 N")
    ('20 mm', '9.6 mm', '100 N')
    """
    return re.sub(r"(\.[0-9]*?)0+(?![0-9])", lambda found: found[1].rstrip("."), text)
