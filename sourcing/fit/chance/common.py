"""What the chance of any kind of spring is made of: normal distributions in strips, clearances, free lengths."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from math import hypot, log
from statistics import NormalDist

from sourcing.fit.case import AnyCase, Seat
from sourcing.fit.score import allowed, force_house_tolerance_n
from sourcing.quantities import Wanted
from sourcing.stock.model import Clearance

STRIPS = 24
LEAST_MEASURING_SD_MM = 0.03
"""A bore or rod measured with a caliper of ±0.05 mm, read as a rectangle (assumed where the need states nothing)."""

_STANDARD = NormalDist()


@cache
def _quantiles(count: int) -> tuple[float, ...]:
    return tuple((strip + 0.5) / count for strip in range(count))


def below(limit: float, mean: float, sd: float) -> float:
    """P(X <= limit) for a normal X; a step where the spread is nothing."""
    return float(mean <= limit) if sd <= 0.0 else _STANDARD.cdf((limit - mean) / sd)


def strips(mean: float, sd: float, low: float, high: float, count: int = STRIPS) -> tuple[float, tuple[float, ...]]:
    """The mass of a normal between two bounds, and equally probable points of what lies there."""
    if sd <= 0.0:
        return float(low <= mean <= high), (mean,)
    start, end = _STANDARD.cdf((low - mean) / sd), _STANDARD.cdf((high - mean) / sd)
    if end - start <= 1e-12:
        return 0.0, ()
    points = (start + share * (end - start) for share in _quantiles(count))
    return end - start, tuple(mean + sd * _STANDARD.inv_cdf(min(max(p, 1e-15), 1.0 - 1e-15)) for p in points)


def _doubt_mm(size: Wanted) -> float:
    """The standard deviation of a measured size whose stated tolerance bounds 95 %."""
    stated = max(size.minus or 0.0, size.plus or 0.0) / 2.0
    return max(stated, LEAST_MEASURING_SD_MM)


def _size(size: Wanted, otherwise: float | None) -> float | None:
    return size.nominal if size.nominal is not None else otherwise


def clears(seats: tuple[Seat, ...], clearance: Clearance, off_mm: float) -> float:
    """The chance that every bore and rod is cleared by a spring whose diameters are off by so much."""
    chance = 1.0
    for seat in seats:
        if seat.bore_mm is not None and (size := _size(seat.bore_mm, seat.bore_mm.smallest)) is not None:
            wants = seat.outside_mm + off_mm + seat.growth_mm + clearance.bore_mm
            chance *= below(size, wants, _doubt_mm(seat.bore_mm))
        if seat.rod_mm is not None and (size := _size(seat.rod_mm, seat.rod_mm.largest)) is not None:
            leaves = seat.inside_mm + off_mm - clearance.rod_mm
            chance *= 1.0 - below(size, leaves, _doubt_mm(seat.rod_mm))
    return chance


@dataclass(frozen=True, slots=True)
class WantedForce:
    """One wanted force as the interval in which it is within tolerance."""

    length_mm: float
    low_n: float
    high_n: float


def wanted_forces(case: AnyCase) -> tuple[WantedForce, ...]:
    """Every force that the need wants."""
    rows: list[WantedForce] = []
    for point in case.need.working:
        if point.force_n is not None:
            house = force_house_tolerance_n(point.force_n, case.bench.tolerances)
            low, high = allowed(point.force_n, house)
            rows.append(WantedForce(point.at_mm, low or 0.0, float("inf") if high is None else high))
    return tuple(rows)


def rate_within(low: float, high: float, log_stiffer: float, sd: float) -> float:
    """The chance that the rate lies between two multiples of the believed one."""
    if low >= high:
        return 0.0
    above = below(log(low), log_stiffer, sd) if low > 0.0 else 0.0
    return max(0.0, (below(log(high), log_stiffer, sd) if high < float("inf") else 1.0) - above)


def free_lengths(case: AnyCase, free_length_mm: float, count: int = STRIPS) -> tuple[float, tuple[float, ...]]:
    """The chance that the free length is as wanted, and equally probable lengths of what lies there."""
    need, low_mm, high_mm = case.need, 0.0, float("inf")
    if need.free_length_mm is not None:
        low, high = allowed(need.free_length_mm, case.bench.tolerances.length_mm)
        low_mm, high_mm = low or 0.0, float("inf") if high is None else high
    doubt_mm = max((max(p.length_mm.minus or 0.0, p.length_mm.plus or 0.0) / 2.0 for p in need.working), default=0.0)
    return strips(free_length_mm, hypot(case.spread.free_length_sd_mm, doubt_mm), low_mm, high_mm, count)
