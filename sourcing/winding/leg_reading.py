"""What the legs of a torsion spring tell of its springback: a second reading beside the caliper's.

As a coil is let go its legs turn back by 360 (N − n) degrees, N turns laid and n coils come of them; the wire keeps its
length, so D_f/D_m = N/n. Both readings are of one coil: how coils repeat, the rod and the heat are in both, so they are
weighed together with what they share, and must not lie further apart than their own errors let them.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot, pi, sqrt

from sourcing.figures import formula
from sourcing.springs.geometry import turn_length_mm
from sourcing.stock.model import Trial
from sourcing.winding.turns import opens_deg, turns_from

LEG_SD_DEG = 3.0
"""An angle between two legs held to a protractor, ±5 deg (assumed), read as a rectangle."""

TURNS_SD = 0.07
"""Turns counted to an eighth, read as a rectangle."""

WHOLE_TURN_DEG = 360.0


@dataclass(frozen=True, slots=True)
class LegReading:
    """The mean diameter that the legs tell, as measured, and its own relative doubt.

    `other_way_mm`: what they would tell had both angles been counted from leg 2 on to leg 1.
    """

    mean_diameter_mm: float
    relative_sd: float
    other_way_mm: float


@formula(
    "θ = θ_s − θ_l, and as many whole turns as bring it nearest to what is about right",
    where={"θ_s": "stop_deg", "θ_l": "leg_deg"},
    closed=False,
    source="geometry",
)
def opened_deg(stop_deg: float, leg_deg: float, about_deg: float) -> float:
    """By how much the legs turned back.

    >>> opened_deg(300.0, 60.0, 250.0), opened_deg(30.0, 330.0, 400.0)
    (240.0, 420.0)
    """
    off = stop_deg - leg_deg
    return off + WHOLE_TURN_DEG * round((about_deg - off) / WHOLE_TURN_DEG)


@formula(
    "u = √((√2 · 3/360)² + ((1 − r) 0.07)²) / (N r), r = n / N",
    where={"N": "turns", "n": "coils"},
    closed=False,
    source="derived: two angles read to 3 deg and turns counted to an eighth (assumed)",
)
def relative_sd(turns: float, coils: float) -> float:
    """The relative doubt of a diameter that the legs tell: many turns make it sharp, much springback less so.

    >>> round(relative_sd(4.0, 3.2), 4)
    0.0057
    >>> round(relative_sd(12.0, 9.6), 4)
    0.0019
    """
    share = coils / turns
    return hypot(sqrt(2.0) * LEG_SD_DEG / WHOLE_TURN_DEG, (1.0 - share) * TURNS_SD) / coils


@formula(
    "D = √(l² − d²) / π, l = N l_m / n",
    where={"N": "turns", "n": "coils", "l_m": "turn_on_mandrel_mm", "d": "wire_diameter_mm"},
    closed=False,
    source="derived, see winding_model: the wire keeps its length; coils laid close climb one wire a turn",
)
def mean_from_coils_mm(turns: float, coils: float, turn_on_mandrel_mm: float, wire_diameter_mm: float) -> float:
    """The mean diameter of the coils that turns laid close have become.

    >>> from sourcing.springs.geometry import turn_length_mm
    >>> round(mean_from_coils_mm(5.0, 4.0, turn_length_mm(8.0, 0.8), 0.8), 2)
    10.0
    """
    return sqrt(turns_from(turns, turn_on_mandrel_mm, coils) ** 2 - wire_diameter_mm**2) / pi


def leg_reading(trial: Trial, wire_diameter_mm: float) -> LegReading | None:
    """What the legs of a trial tell; None where it was not written down where the crank stopped.

    The whole turns are those that come nearest to what the caliper says.
    """
    turns, stop_deg, leg_deg = trial.turns, trial.stop_angle_deg, trial.leg_angle_deg
    if turns is None or stop_deg is None or leg_deg is None:
        return None
    on_mandrel_mm = turn_length_mm(trial.mandrel_mm + wire_diameter_mm, wire_diameter_mm)
    measured_mm = turn_length_mm(trial.outside_diameter_mm - wire_diameter_mm, wire_diameter_mm)
    about_deg = opens_deg(turns, turns_from(turns, on_mandrel_mm, measured_mm))

    def told(opened: float) -> tuple[float, float]:
        coils = max(turns - opened / WHOLE_TURN_DEG, turns * LEAST_SHARE)
        return coils, mean_from_coils_mm(turns, coils, on_mandrel_mm, wire_diameter_mm)

    coils, mean_mm = told(opened_deg(stop_deg, leg_deg, about_deg))
    _, other_way_mm = told(opened_deg(leg_deg, stop_deg, about_deg))
    return LegReading(mean_mm, relative_sd(turns, coils), other_way_mm)


LEAST_SHARE = 0.05
"""Legs that say that less is left of the turns contradict any coil; so much keeps the diameter a number."""


@dataclass(frozen=True, slots=True)
class Joined:
    """Two readings of one value made one, and how far they lie apart, in standard deviations of that."""

    value: float
    variance: float
    apart: float


@formula(
    "v = w v₁ + (1 − w) v₂, w = (s₂ − c) / (s₁ + s₂ − 2 c); its variance is (s₁ s₂ − c²) / (s₁ + s₂ − 2 c)",
    closed=False,
    source="least squares of two readings with variances s₁ and s₂ that share the covariance c (Gauss, Markov)",
)
def joined(first: tuple[float, float], second: tuple[float, float], covariance: float) -> Joined:
    """The best value of two readings, each with its variance, that have errors in common.

    >>> both = joined((10.0, 1.0), (12.0, 1.0), 0.0)
    >>> both.value, both.variance, round(both.apart, 3)
    (11.0, 0.5, 1.414)
    """
    (one, variance_1), (other, variance_2) = first, second
    between = variance_1 + variance_2 - 2.0 * covariance
    weight = (variance_2 - covariance) / between
    return Joined(
        weight * one + (1.0 - weight) * other,
        (variance_1 * variance_2 - covariance**2) / between,
        abs(one - other) / sqrt(between),
    )
