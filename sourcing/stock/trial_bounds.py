"""What no trial coil can measure, however it was wound: the same bounds wherever a coil is written down or asked about.

A reading may lie below them by what the caliper and the wire's own diameter may err, and by no more.
"""

from __future__ import annotations

import re
from datetime import date
from math import hypot, pi

from sourcing.materials.model import Material
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.springs.wire_tolerances import wire_diameter_tolerance_mm

CALIPER_MM = 0.05
"""A caliper on a coil, plus or minus (assumed)."""

LEAST_PITCH = 0.95
"""Coils that touch are a wire apart; a rule over several of them reads a little less (assumed)."""

GREATEST_PULL = 0.3
"""No coil is wound under more of the pull that breaks its wire (assumed); sheets ask for a tenth of yield at most."""

LEAST_TURNS, MOST_TURNS = 0.5, 1000.0
"""Less than half a turn has no diameter that a caliper finds; nobody counts so many (both assumed)."""

DATE = "YYYY-MM-DD, a day up to today, as in 2026-03-02"
"""What the day of a trial is."""


def least_outside_mm(mandrel_mm: float, wire_diameter_mm: float, material: Material, heated: bool) -> float:
    """The least that a coil can be outside: its mandrel and a wire on either side, m + 2 d; heat may draw it together.

    >>> from sourcing.materials import find
    >>> round(least_outside_mm(8.0, 1.0, find("music-wire"), False), 2)
    10.0
    >>> round(least_outside_mm(8.0, 1.0, find("music-wire"), True), 2)
    9.8

    Source: geometry; the change of diameter in heat is common practice, no source (music wire: 2 % at the most).
    """
    drawn_together = min(0.0, material.heat_change_low) if heated else 0.0
    return (mandrel_mm + 2.0 * wire_diameter_mm) * (1.0 + drawn_together)


def reading_error_mm(wire_diameter_mm: float, material: Material) -> float:
    """By how much less a coil may read: √(0.05² + (2 t)²), the caliper's error and the tolerance of two wires.

    >>> from sourcing.materials import find
    >>> round(reading_error_mm(1.0, find("music-wire")), 3)
    0.058

    Source: the caliper is assumed, the wire's tolerance t is its standard's; none where no row lists it.
    """
    tolerance_mm = wire_diameter_tolerance_mm(material.standard, wire_diameter_mm) or 0.0
    return hypot(CALIPER_MM, 2.0 * tolerance_mm)


def measures_too_little(
    outside_mm: float, mandrel_mm: float, wire_diameter_mm: float, material: Material, heated: bool
) -> bool:
    """Whether no coil of that wire on that mandrel can read so little outside.

    >>> from sourcing.materials import find
    >>> [measures_too_little(outside, 8.0, 1.0, find("music-wire"), False) for outside in (9.9, 9.95, 10.0)]
    [True, False, False]
    """
    least_mm = least_outside_mm(mandrel_mm, wire_diameter_mm, material, heated)
    return outside_mm < least_mm - reading_error_mm(wire_diameter_mm, material) - 1e-9


def breaking_force_n(wire_diameter_mm: float, material: Material) -> float | None:
    """The pull that wire of its least strength breaks at, R_m π d² / 4; None where its strength is not listed.

    >>> from sourcing.materials import find
    >>> round(breaking_force_n(1.0, find("music-wire")) or 0)
    1751

    Source: statics.
    """
    strength_mpa = tensile_strength_mpa(material, wire_diameter_mm)
    return None if strength_mpa is None else strength_mpa * pi * wire_diameter_mm**2 / 4.0


def greatest_pull_n(wire_diameter_mm: float, material: Material) -> float | None:
    """The hardest pull that a coil is wound under, 0.3 F_break; None where the wire's strength is not listed.

    >>> from sourcing.materials import find
    >>> round(greatest_pull_n(1.0, find("music-wire")) or 0)
    525

    Source: assumed.
    """
    breaking_n = breaking_force_n(wire_diameter_mm, material)
    return None if breaking_n is None else GREATEST_PULL * breaking_n


def wire_in_trial_mm(mandrel_mm: float, wire_diameter_mm: float, turns: float) -> float:
    """The wire in a trial coil, tails left out: π (mandrel + d) n.

    >>> round(wire_in_trial_mm(6.0, 0.8, 4), 2)
    85.45

    Source: the circle of the wire's middle on the mandrel; its climb adds less than a hundredth.
    """
    return pi * (mandrel_mm + wire_diameter_mm) * turns


def wrong_date(text: str, today: date) -> str | None:
    """What is wrong with the day of a trial; None where nothing is.

    >>> [wrong_date(text, date(2026, 3, 2)) for text in ("2026-03-02", "2026-03-03", "2026-02-30", "gestern")]
    [None, '2026-03-03 is yet to come', '2026-02-30 is no day', 'gestern is no day']
    """
    try:
        day = date.fromisoformat(text) if re.fullmatch(r"\d{4}-\d\d-\d\d", text, re.ASCII) else None
    except ValueError:
        day = None
    if day is None:
        return f"{text} is no day"
    return f"{text} is yet to come" if day > today else None
