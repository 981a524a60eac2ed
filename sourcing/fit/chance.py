"""The chance that a spring truly works: every clearance kept and every wanted figure within its tolerance.

The spring's mean diameter and free length are normal, its rate is log-normal (and falls with an unplanned diameter by
the power the spread names). The rate is integrated exactly, diameter and free length over equally probable strips.
`tests/fit/test_chance.py` holds it against plain sampling.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from math import hypot, log
from statistics import NormalDist

from sourcing.fit.case import Case, Seat
from sourcing.fit.score import allowed, force_house_tolerance_n
from sourcing.quantities import Wanted
from sourcing.springs import pressed, strength
from sourcing.stock.model import Clearance

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


def _clears(seats: tuple[Seat, ...], clearance: Clearance, off_mm: float) -> float:
    """The chance that every bore and rod is cleared by a spring whose diameters are off by so much."""
    chance = 1.0
    for seat in seats:
        if seat.bore_mm is not None and (size := _size(seat.bore_mm, seat.bore_mm.smallest)) is not None:
            wants = seat.outside_mm + off_mm + seat.growth_mm + clearance.bore_mm
            chance *= _below(size, wants, _doubt_mm(seat.bore_mm))
        if seat.rod_mm is not None and (size := _size(seat.rod_mm, seat.rod_mm.largest)) is not None:
            leaves = seat.inside_mm + off_mm - clearance.rod_mm
            chance *= 1.0 - _below(size, leaves, _doubt_mm(seat.rod_mm))
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


def _stiffer_by(case: Case, forces: tuple[_Force, ...], free_length_mm: float) -> tuple[float, float]:
    """How many times stiffer than believed the spring may be, at least and at most, to meet every force.

    Force goes with the rate whatever the curve over length, a cone's too. At most is below at least where none serves.
    """
    low, high = 0.0, float("inf")
    for wanted in forces:
        force_n = pressed.force_from_n(case.spring, free_length_mm, wanted.length_mm, case.rate_n_per_mm)
        if force_n > 0.0:
            low, high = max(low, wanted.low_n / force_n), min(high, wanted.high_n / force_n)
        elif wanted.low_n > 0.0:
            return 1.0, 0.0
    return low, high


def _rate_within(low: float, high: float, log_stiffer: float, sd: float) -> float:
    """The chance that the rate lies between two multiples of the believed one."""
    if low >= high:
        return 0.0
    above = _below(log(low), log_stiffer, sd) if low > 0.0 else 0.0
    return max(0.0, (_below(log(high), log_stiffer, sd) if high < float("inf") else 1.0) - above)


def chance(case: Case) -> float:
    """The chance 0..1 that the spring keeps every clearance and meets every wanted figure within one tolerance.

    Where an unplanned diameter changes the rate it changes the stress too, and pressing solid must still be within its
    limit. The other limits that no spread of the spring can mend (solid, stress, temperature, surroundings) are not
    in it: the judge gives 0 where one of those is broken.
    """
    spread, mean_mm = case.spread, case.spring.mean_diameter_mm
    within, free_lengths = _free_lengths(case)
    forces, seats, clearance = _forces(case), case.seats, case.bench.clearance
    bounds = tuple(_stiffer_by(case, forces, length) for length in free_lengths)

    def forces_met(log_stiffer: float) -> float:
        if not bounds:
            return 0.0
        return sum(_rate_within(low, high, log_stiffer, spread.rate_sd) for low, high in bounds) / len(bounds)

    _, diameters = _strips(mean_mm, spread.diameter_sd_mm, 0.0, float("inf"))
    if not spread.rate_on_diameter:
        cleared = sum(_clears(seats, clearance, diameter - mean_mm) for diameter in diameters) / len(diameters)
        return within * cleared * forces_met(0.0)
    total, smallest_mm = 0.0, _smallest_that_stands_mm(case)
    for diameter in diameters:
        if diameter < smallest_mm:
            continue
        log_stiffer = -spread.rate_on_diameter * log(diameter / mean_mm)
        total += _clears(seats, clearance, diameter - mean_mm) * forces_met(log_stiffer)
    return within * total / len(diameters)


def _smallest_that_stands_mm(case: Case) -> float:
    """The mean diameter below which the spring, coils and length kept, is over its limit when pressed solid.

    Stress goes as D F and the force as D^-p of the spread, so stress goes as D^(1-p).
    """
    tensile_mpa, power = case.spring.tensile_strength_mpa, case.spread.rate_on_diameter - 1.0
    if tensile_mpa is None or power <= 0.0:
        return 0.0
    over = case.stress_mpa(0.0) / strength.permissible_solid_stress_mpa(tensile_mpa)
    return case.spring.mean_diameter_mm * over ** (1.0 / power)


def _free_lengths(case: Case) -> tuple[float, tuple[float, ...]]:
    """The chance that the free length is as wanted, and equally probable lengths of what lies there."""
    need, low_mm, high_mm = case.need, 0.0, float("inf")
    if need.free_length_mm is not None:
        low, high = allowed(need.free_length_mm, case.bench.tolerances.length_mm)
        low_mm, high_mm = low or 0.0, float("inf") if high is None else high
    doubt_mm = max((max(p.length_mm.minus or 0.0, p.length_mm.plus or 0.0) / 2.0 for p in need.working), default=0.0)
    return _strips(case.spring.free_length_mm, hypot(case.spread.free_length_sd_mm, doubt_mm), low_mm, high_mm)
