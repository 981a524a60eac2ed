"""One trial coil as the springback formulas see it, and what it makes of what was believed before."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import exp, hypot, log, sqrt

from sourcing.winding import springback
from sourcing.winding.leg_reading import Joined, LegReading, joined
from sourcing.winding.lesson_words import OTHER_WAY, TWO_COILS

SURPRISE = 3.0
"""From this many standard deviations on a trial coil is a surprise."""

NORMAL_95 = 1.96
"""Standard deviations to each side that hold 95 % of a normal distribution."""

OPENED_BY_CAST = 0.25
"""Of wire that did not yield, the cast that it has from its spool may keep this share of the curvature (assumed)."""

_MOST_KEPT = 0.999
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
        """Whether the wire should not have yielded on this mandrel, so that the coil should have opened fully."""
        return springback.surface_strain(self.index_on_mandrel, flow_strain) <= 1

    def opened(self, flow_strain: float) -> bool:
        """Whether it should have opened fully and did, but for the wire's cast: it says nothing of the flow stress."""
        return self.elastic(flow_strain) and self.curvature * self.index_on_mandrel < OPENED_BY_CAST

    @property
    def strain_shown(self) -> float:
        """The flow strain that it shows by itself, without any pull; next to none where it has not opened at all."""
        kept = min(self.curvature * self.index_on_mandrel, _MOST_KEPT)
        return springback.flow_strain_shown(self.index_on_mandrel, self.index_on_mandrel / kept)

    def fall(self, flow_strain: float) -> float:
        """By how much d/D falls as theta rises."""
        return self.moment_kept * springback.curvature_fall(self.index_on_mandrel, flow_strain)

    def residual(self, flow_strain: float) -> float:
        """Measured less expected d/D."""
        return self.curvature - springback.released_curvature(self.index_on_mandrel, flow_strain, self.moment_kept)

    def deviations(self, flow_strain: float, doubt: float) -> float:
        """How far it came from what was expected, in standard deviations, below 0 where it opened less.

        `doubt` is that of the flow stress. While the wire is elastic d/D_f does not move with it, but it would with
        softer wire: one standard deviation is then a third of what wire softer by three of them keeps.
        """
        if self.opened(flow_strain):
            return 0.0
        spread = self.fall(flow_strain) * doubt
        if self.elastic(flow_strain):
            softer = flow_strain * exp(-SURPRISE * doubt)
            spread = springback.released_curvature(self.index_on_mandrel, softer, self.moment_kept) / SURPRISE
        return -self.residual(flow_strain) / hypot(spread, self.curvature_sd)


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
    """The most probable change of theta and the doubt left, from a prior of sd `doubt`: Gauss-Newton.

    It begins where the coil points if the wire should not have yielded, for there d/D_f does not move with theta.
    """
    yielded = coil.elastic(strain) and not coil.opened(strain)
    change = log(coil.strain_shown / strain) if yielded else 0.0
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
