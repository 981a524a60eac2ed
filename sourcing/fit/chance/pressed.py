"""The chance of a compression spring of any shape.

The spring's mean diameter and free length are normal, its rate is log-normal (and falls with an unplanned diameter by
the power the spread names). The rate is integrated exactly, diameter and free length over equally probable strips.
`tests/fit/test_chance.py` holds it against plain sampling.
"""

from __future__ import annotations

from math import log

from sourcing.fit.chance.common import WantedForce, clears, free_lengths, rate_within, strips, wanted_forces
from sourcing.fit.pressed import PressedCase
from sourcing.springs import pressed, strength


def _stiffer_by(case: PressedCase, forces: tuple[WantedForce, ...], free_length_mm: float) -> tuple[float, float]:
    """How many times stiffer than believed the spring may be, at least and at most, to meet every force.

    Force goes with the rate whatever the curve over length, a cone's too. At most is below at least where none serves.
    """
    low, high = 0.0, float("inf")
    for wanted in forces:
        force_n = pressed.force_from_n(case.spring, free_length_mm, wanted.length_mm, case.rate)
        if force_n > 0.0:
            low, high = max(low, wanted.low_n / force_n), min(high, wanted.high_n / force_n)
        elif wanted.low_n > 0.0:
            return 1.0, 0.0
    return low, high


def chance(case: PressedCase) -> float:
    """The chance 0..1 that the spring keeps every clearance and meets every wanted figure within one tolerance.

    Where an unplanned diameter changes the rate it changes the stress too, and pressing solid must still be within its
    limit. The other limits that no spread of the spring can mend (solid, stress, temperature, surroundings) are not
    in it: the judge gives 0 where one of those is broken.
    """
    spread, mean_mm = case.spread, case.spring.mean_diameter_mm
    within, lengths = free_lengths(case, case.spring.free_length_mm)
    forces, seats, clearance = wanted_forces(case), case.seats, case.bench.clearance
    bounds = tuple(_stiffer_by(case, forces, length) for length in lengths)

    def forces_met(log_stiffer: float) -> float:
        if not bounds:
            return 0.0
        return sum(rate_within(low, high, log_stiffer, spread.rate_sd) for low, high in bounds) / len(bounds)

    _, diameters = strips(mean_mm, spread.diameter_sd_mm, 0.0, float("inf"))
    if not spread.rate_on_diameter:
        cleared = sum(clears(seats, clearance, diameter - mean_mm) for diameter in diameters) / len(diameters)
        return within * cleared * forces_met(0.0)
    total, smallest_mm = 0.0, _smallest_that_stands_mm(case)
    for diameter in diameters:
        if diameter < smallest_mm:
            continue
        log_stiffer = -spread.rate_on_diameter * log(diameter / mean_mm)
        total += clears(seats, clearance, diameter - mean_mm) * forces_met(log_stiffer)
    return within * total / len(diameters)


def _smallest_that_stands_mm(case: PressedCase) -> float:
    """The mean diameter below which the spring, coils and length kept, is over its limit when pressed solid.

    Stress goes as D F and the force as D^-p of the spread, so stress goes as D^(1-p).
    """
    tensile_mpa, power = case.spring.tensile_strength_mpa, case.spread.rate_on_diameter - 1.0
    if tensile_mpa is None or power <= 0.0:
        return 0.0
    over = case.stress_mpa(0.0) / strength.permissible_solid_stress_mpa(tensile_mpa)
    return case.spring.mean_diameter_mm * over ** (1.0 / power)
