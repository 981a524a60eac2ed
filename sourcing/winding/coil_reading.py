"""One trial coil as the springback formulas see it, and what it makes of what was believed before."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import exp, sqrt

from sourcing.winding import springback
from sourcing.winding.leg_reading import Joined, LegReading, joined
from sourcing.winding.lesson_words import OTHER_WAY, TWO_COILS

SURPRISE = 3.0
"""From this many standard deviations on a trial coil is a surprise."""

NORMAL_95 = 1.96
"""Standard deviations to each side that hold 95 % of a normal distribution."""

_CONVERGED = 1e-9


@dataclass(frozen=True, slots=True)
class ReadCoil:
    """A trial as the springback formulas see it: index on the mandrel, d/D after release and its sd, moment kept.

    `by_caliper` and `by_legs` are the single readings of d/D that went into it; `contradiction` says in words that
    they cannot be of one coil.
    """

    index_on_mandrel: float
    curvature: float
    curvature_sd: float
    moment_kept: float
    by_caliper: float
    by_legs: float | None = None
    contradiction: str = ""

    def elastic(self, flow_strain: float) -> bool:
        """Whether the wire has not yielded on this mandrel, so that the coil says nothing of the flow stress."""
        return springback.surface_strain(self.index_on_mandrel, flow_strain) <= 1

    def fall(self, flow_strain: float) -> float:
        """By how much d/D falls as theta rises."""
        return self.moment_kept * springback.curvature_fall(self.index_on_mandrel, flow_strain)

    def residual(self, flow_strain: float) -> float:
        """Measured less expected d/D."""
        return self.curvature - springback.released_curvature(self.index_on_mandrel, flow_strain, self.moment_kept)


@dataclass(frozen=True, slots=True)
class Shared:
    """What a caliper's and a protractor's reading of one coil share, relative: `variance` of coil and heat, and `rod`.

    An error of the rod reaches the caliper's by `rod_share` of it, through d(1/C_f) = (1 - g') d(1/C_m), and the legs'
    by a whole one less, since they tell D_f/D_m.
    """

    variance: float
    rod: float
    rod_share: float


def with_legs(coil: ReadCoil, legs: LegReading, measured_mm: float, shared: Shared) -> ReadCoil:
    """The coil with what its legs tell joined to what the caliper does; or that they contradict each other."""
    scale, less = coil.curvature**2, shared.rod_share - 1
    variance = scale * (shared.variance + legs.relative_sd**2 + (less * shared.rod) ** 2)
    covariance = scale * (shared.variance + shared.rod_share * less * shared.rod**2)

    def with_legs_at(mean_mm: float) -> Joined:
        told = coil.curvature * measured_mm / mean_mm
        return joined((coil.curvature, coil.curvature_sd**2), (told, variance), covariance)

    both, by_legs = with_legs_at(legs.mean_diameter_mm), coil.curvature * measured_mm / legs.mean_diameter_mm
    if both.apart > SURPRISE:
        counted_wrongly = with_legs_at(legs.other_way_mm).apart <= SURPRISE
        return replace(coil, by_legs=by_legs, contradiction=OTHER_WAY if counted_wrongly else TWO_COILS)
    return replace(coil, curvature=both.value, curvature_sd=sqrt(both.variance), by_legs=by_legs)


def settled(coil: ReadCoil, strain: float, doubt: float) -> tuple[float, float]:
    """The most probable change of theta and the doubt left, from a prior of sd `doubt`: Gauss-Newton."""
    change = 0.0
    for _ in range(30):
        here = strain * exp(change)
        fall = coil.fall(here)
        weight = 1 / doubt**2 + (fall / coil.curvature_sd) ** 2
        step = (-change / doubt**2 - fall * coil.residual(here) / coil.curvature_sd**2) / weight
        change += max(-0.5, min(0.5, step))
        if abs(step) < _CONVERGED:
            break
    fall = coil.fall(strain * exp(change))
    return change, 1 / sqrt(1 / doubt**2 + (fall / coil.curvature_sd) ** 2)
