"""The chance that a spring truly works: every clearance kept and every wanted figure within its tolerance.

The spring's mean diameter and free length are normal, its rate is log-normal (and falls with an unplanned diameter by
the power the spread names). The rate is integrated exactly, diameter and free length over equally probable strips.
`tests/fit/test_chance.py` holds it against plain sampling.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from math import exp, hypot, log
from statistics import NormalDist

from sourcing.fit.limits import Case
from sourcing.fit.score import allowed, force_house_tolerance_n
from sourcing.quantities import Wanted

STRIPS = 24
LEAST_MEASURING_SD_MM = 0.03
"""A bore or rod measured with a caliper of ±0.05 mm, read as a rectangle (assumed where the need states nothing)."""

_STANDARD = NormalDist()


@cache
def _quantiles() -> tuple[float, ...]:
    return tuple((strip + 0.5) / STRIPS for strip in range(STRIPS))


def _below(limit: float, mean: float, sd: float) -> float:
    """P(X <= limit) for a normal X; a step where the spread is nothing."""
    return float(mean <= limit) if sd <= 0.0 else _STANDARD.cdf((limit - mean) / sd)


def _strips(mean: float, sd: float, low: float, high: float) -> tuple[float, tuple[float, ...]]:
    """The mass of a normal between two bounds, and equally probable points of what lies there."""
    if sd <= 0.0:
        return float(low <= mean <= high), (mean,)
    start, end = _STANDARD.cdf((low - mean) / sd), _STANDARD.cdf((high - mean) / sd)
    if end - start <= 1e-12:
        return 0.0, ()
    points = (start + share * (end - start) for share in _quantiles())
    return end - start, tuple(mean + sd * _STANDARD.inv_cdf(min(max(p, 1e-15), 1.0 - 1e-15)) for p in points)


def _doubt_mm(size: Wanted) -> float:
    """The standard deviation of a measured size whose stated tolerance bounds 95 %."""
    stated = max(size.minus or 0.0, size.plus or 0.0) / 2.0
    return max(stated, LEAST_MEASURING_SD_MM)


def _size(size: Wanted, otherwise: float | None) -> float | None:
    return size.nominal if size.nominal is not None else otherwise


def _clears(case: Case, mean_diameter_mm: float) -> float:
    """The chance that bore and rod are cleared by a spring of this mean diameter."""
    pocket, clearance, wire_mm = case.need.pocket, case.bench.clearance, case.spring.wire_diameter_mm
    chance = 1.0
    if pocket.bore_mm is not None and (size := _size(pocket.bore_mm, pocket.bore_mm.smallest)) is not None:
        wants = mean_diameter_mm + wire_mm + case.growth_mm + clearance.bore_mm
        chance *= _below(size, wants, _doubt_mm(pocket.bore_mm))
    if pocket.rod_mm is not None and (size := _size(pocket.rod_mm, pocket.rod_mm.largest)) is not None:
        leaves = mean_diameter_mm - wire_mm - clearance.rod_mm
        chance *= 1.0 - _below(size, leaves, _doubt_mm(pocket.rod_mm))
    return chance


@dataclass(frozen=True, slots=True)
class _Force:
    """One wanted force as the interval in which it is within tolerance."""

    length_mm: float
    low_n: float
    high_n: float


def _forces(case: Case) -> tuple[_Force, ...]:
    rows: list[_Force] = []
    for point in case.need.working:
        if point.force_n is not None:
            house = force_house_tolerance_n(point.force_n, case.bench.tolerances)
            low, high = allowed(point.force_n, house)
            rows.append(_Force(point.at_mm, low or 0.0, float("inf") if high is None else high))
    return tuple(rows)


def _rate_within(forces: tuple[_Force, ...], free_length_mm: float, log_rate: float, sd: float) -> float:
    """The chance that the rate meets every force, for one free length."""
    low, high = 0.0, float("inf")
    for force in forces:
        travel_mm = free_length_mm - force.length_mm
        if travel_mm <= 0.0:
            if force.low_n > 0.0:
                return 0.0
            continue
        low, high = max(low, force.low_n / travel_mm), min(high, force.high_n / travel_mm)
    if low >= high:
        return 0.0
    above = _below(log(low), log_rate, sd) if low > 0.0 else 0.0
    return max(0.0, (_below(log(high), log_rate, sd) if high < float("inf") else 1.0) - above)


def chance(case: Case) -> float:
    """The chance 0..1 that the spring keeps every clearance and meets every wanted figure within one tolerance.

    Limits that no spread of the spring can mend (solid, stress, temperature, surroundings) are not in it: the judge
    gives 0 where one of those is broken.
    """
    spring, need, spread = case.spring, case.need, case.spread
    low_mm, high_mm = 0.0, float("inf")
    if need.free_length_mm is not None:
        low, high = allowed(need.free_length_mm, case.bench.tolerances.length_mm)
        low_mm, high_mm = low or 0.0, float("inf") if high is None else high
    length_doubt_mm = max(
        (max(p.length_mm.minus or 0.0, p.length_mm.plus or 0.0) / 2.0 for p in need.working), default=0.0
    )
    length_sd_mm = hypot(spread.free_length_sd_mm, length_doubt_mm)
    within, free_lengths = _strips(spring.free_length_mm, length_sd_mm, low_mm, high_mm)
    forces = _forces(case)

    def forces_met(rate_n_per_mm: float) -> float:
        if not free_lengths:
            return 0.0
        met = (_rate_within(forces, length, log(rate_n_per_mm), spread.rate_sd) for length in free_lengths)
        return sum(met) / len(free_lengths)

    _, diameters = _strips(spring.mean_diameter_mm, spread.diameter_sd_mm, 0.0, float("inf"))
    if not spread.rate_on_diameter:
        cleared = sum(_clears(case, diameter) for diameter in diameters) / len(diameters)
        return within * cleared * forces_met(case.rate_n_per_mm)
    total = 0.0
    for diameter in diameters:
        lowered = exp(-spread.rate_on_diameter * log(diameter / spring.mean_diameter_mm))
        total += _clears(case, diameter) * forces_met(case.rate_n_per_mm * lowered)
    return within * total / len(diameters)
