"""The chance of a torsion spring.

The mean diameter and the angle between the legs are normal, the rate is log-normal (and falls with an unplanned
diameter). The rate is integrated exactly, diameter and angle over equally probable strips. Where the need wants an
angle between the legs, a spring that is off by so much is wound up by that much more or less in its place.
"""

from __future__ import annotations

from math import hypot, log

from sourcing.fit.chance.common import clears, rate_within, strips
from sourcing.fit.score import allowed, torque_house_tolerance_n_mm
from sourcing.fit.turned import TurnedCase, whole_turns_nearer
from sourcing.springs import turned

_Torque = tuple[float, float, float]
"""An angle, and the least and the greatest torque within tolerance there."""


def chance(case: TurnedCase) -> float:
    """The chance 0..1 that the spring keeps every clearance and meets every wanted figure within one tolerance.

    Where an unplanned diameter changes the rate it changes the stress too, which must still be within its limit.
    """
    spread, mean_mm = case.spread, case.spring.mean_diameter_mm
    within, offs = _angles_off(case)
    torques = tuple(_torques(case))
    bounds = tuple(_stiffer_by(case, torques, off) for off in offs)
    if not bounds:
        return 0.0
    _, diameters = strips(mean_mm, spread.diameter_sd_mm, 0.0, float("inf"))
    smallest_mm, total = _smallest_that_stands_mm(case), 0.0
    for diameter in diameters:
        if diameter < smallest_mm:
            continue
        stiffer = -spread.rate_on_diameter * log(diameter / mean_mm)
        met = sum(rate_within(low, high, stiffer, spread.rate_sd) for low, high in bounds) / len(bounds)
        total += clears(case.seats, case.bench.clearance, diameter - mean_mm) * met
    return within * total / len(diameters)


def _angles_off(case: TurnedCase) -> tuple[float, tuple[float, ...]]:
    """The chance that the angle between the legs is as wanted, and equally probable angles that it is wound up more.

    The doubt of a working angle, whose tolerance bounds 95 %, adds to that of the spring's own.
    """
    angles = [point.angle_deg for point in case.need.turned]
    doubt = max((max(each.minus or 0.0, each.plus or 0.0) / 2.0 for each in angles), default=0.0)
    wish, has = case.need.free_angle_deg, case.spring.free_angle_deg
    if wish is None or has is None:
        return strips(0.0, doubt, float("-inf"), float("inf"))
    near = next(each for each in (wish.nominal, wish.low, wish.high) if each is not None)
    low, high = allowed(wish, case.bench.tolerances.angle_deg)
    least, most = (float("-inf") if low is None else low), (float("inf") if high is None else high)
    stands = whole_turns_nearer(has, near)
    within, found = strips(stands, hypot(case.spread.free_angle_sd_deg, doubt), least, most)
    aimed = near if wish.nominal is not None else stands
    return within, tuple(angle - aimed for angle in found)


def _torques(case: TurnedCase) -> list[_Torque]:
    rows: list[_Torque] = []
    for point in case.need.turned:
        if point.torque_n_mm is not None:
            house = torque_house_tolerance_n_mm(point.torque_n_mm, case.bench.tolerances)
            low, high = allowed(point.torque_n_mm, house)
            rows.append((point.at_deg, low or 0.0, float("inf") if high is None else high))
    return rows


def _stiffer_by(case: TurnedCase, torques: tuple[_Torque, ...], off_deg: float) -> tuple[float, float]:
    """How many times stiffer than believed the spring may be, at least and at most, to meet every torque."""
    low, high = 0.0, float("inf")
    for angle, least, most in torques:
        torque = case.torque_n_mm(angle + off_deg)
        if torque > 0.0:
            low, high = max(low, least / torque), min(high, most / torque)
        elif least > 0.0:
            return 1.0, 0.0
    return low, high


def _smallest_that_stands_mm(case: TurnedCase) -> float:
    """The mean diameter below which the spring, coils kept, is over its limit at the largest angle.

    Stress goes as the torque, and the torque as D^-p of the spread.
    """
    bears_mpa, power, angle = turned.permissible_stress_mpa(case.spring), case.spread.rate_on_diameter, case.largest_deg
    if bears_mpa is None or power <= 0.0 or angle is None:
        return 0.0
    over = case.stress_mpa(angle) / bears_mpa
    return case.spring.mean_diameter_mm * over ** (1.0 / power)
