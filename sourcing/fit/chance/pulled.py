"""The chance of an extension spring.

The mean diameter, the free length and the initial tension are normal, the rate is log-normal (and falls with an
unplanned diameter). The rate is integrated exactly, the others over equally probable strips.
"""

from __future__ import annotations

from math import log

from sourcing.fit.chance.common import WantedForce, clears, free_lengths, rate_within, strips, wanted_forces
from sourcing.fit.pulled import PulledCase
from sourcing.fit.score import allowed, force_house_tolerance_n
from sourcing.springs import pulled

FEWER_STRIPS = 16
"""Of free length and initial tension each, for every pair of them is looked at."""

_Bounds = tuple[tuple[float, float], ...]


def chance(case: PulledCase) -> float:
    """The chance 0..1 that the spring keeps every clearance and meets every wanted figure within one tolerance.

    Where an unplanned diameter changes the rate it changes the stress too, which must still be within its limit.
    """
    spread, mean_mm = case.spread, case.spring.mean_diameter_mm
    length_within, lengths = free_lengths(case, case.spring.free_length_mm, FEWER_STRIPS)
    tension_within, tensions = _tensions(case)
    forces = wanted_forces(case)
    bounds = tuple(_stiffer_by(case, forces, length, tension) for length in lengths for tension in tensions)
    if not bounds:
        return 0.0
    _, diameters = strips(mean_mm, spread.diameter_sd_mm, 0.0, float("inf"))
    smallest_mm, total = _smallest_that_stands_mm(case), 0.0
    met = _met(bounds, 0.0, spread.rate_sd) if not spread.rate_on_diameter else None
    for diameter in diameters:
        if diameter < smallest_mm:
            continue
        stiffer = -spread.rate_on_diameter * log(diameter / mean_mm)
        share = _met(bounds, stiffer, spread.rate_sd) if met is None else met
        total += clears(case.seats, case.bench.clearance, diameter - mean_mm) * share
    return length_within * tension_within * total / len(diameters)


def _met(bounds: _Bounds, log_stiffer: float, rate_sd: float) -> float:
    return sum(rate_within(low, high, log_stiffer, rate_sd) for low, high in bounds) / len(bounds)


def _tensions(case: PulledCase) -> tuple[float, tuple[float, ...]]:
    """The chance that the initial tension is as wanted, and equally probable tensions of what lies there."""
    low, high = 0.0, float("inf")
    if (wish := case.need.initial_tension_n) is not None:
        least, most = allowed(wish, force_house_tolerance_n(wish, case.bench.tolerances))
        low, high = least or 0.0, float("inf") if most is None else most
    expected_n = case.tension.likely_n + case.spread.initial_tension_off_n
    return strips(expected_n, case.spread.initial_tension_sd_n, low, high, FEWER_STRIPS)


def _stiffer_by(
    case: PulledCase, forces: tuple[WantedForce, ...], free_length_mm: float, initial_tension_n: float
) -> tuple[float, float]:
    """How many times stiffer than believed the spring may be, at least and at most, to meet every force."""
    low, high = 0.0, float("inf")
    for wanted in forces:
        over_tension_n = case.rate * (wanted.length_mm - free_length_mm)
        if over_tension_n > 0.0:
            low = max(low, (wanted.low_n - initial_tension_n) / over_tension_n)
            high = min(high, (wanted.high_n - initial_tension_n) / over_tension_n)
        elif wanted.low_n > 0.0:
            return 1.0, 0.0
    return low, high


def _smallest_that_stands_mm(case: PulledCase) -> float:
    """The mean diameter below which the spring, coils kept, is over its limit at the longest length.

    Stress goes as D F and the force, its initial tension apart, as D^-p of the spread, so stress goes as
    D^(1-p) at most.
    """
    tensile_mpa, power, longest_mm = (
        case.spring.tensile_strength_mpa,
        case.spread.rate_on_diameter - 1.0,
        case.longest_mm,
    )
    if tensile_mpa is None or power <= 0.0 or longest_mm is None:
        return 0.0
    over = case.force_n(longest_mm) * pulled.breaks_first(case.spring).weakness / tensile_mpa
    return case.spring.mean_diameter_mm * over ** (1.0 / power)
