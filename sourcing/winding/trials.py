"""What trial coils teach about the flow stress of a spool.

theta = ln(sigma/Rm) is normal: the material's prior first, then each trial coil (the mandrel and the diameter that came
out) moves and narrows it. The reading is the curvature d/D, in which springback is nearly straight in the stress and
which stays finite where a coil opens fully.

The legs of a torsion spring are a second reading of the same coil (leg_reading.py).

A coil more than three standard deviations from what was expected is a surprise: another wire or grade than the label
says, or a coil that slipped. It isn't averaged with the rest: the middle goes where that coil points, the doubt is
widened to 15 %, and the next coil decides.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import exp, hypot, inf, sqrt

from sourcing.figures import formula
from sourcing.materials.model import Material
from sourcing.stock.model import Trial
from sourcing.winding import pull, springback
from sourcing.winding.leg_reading import Joined, LegReading, joined, leg_reading

CALIPER_SD_MM = 0.03
"""A caliper on a coil, ±0.05 mm (assumed), read as a rectangle."""

REPEATABILITY = 0.004
"""Coils of one wire on one mandrel differ by this share of the diameter, one standard deviation (assumed)."""

MANDREL_SD_MM = 0.03
"""A rod measured with a caliper of ±0.05 mm, read as a rectangle."""

SURPRISE = 3.0
"""From this many standard deviations on a trial coil is a surprise."""

WIDE_DOUBT = 0.15
"""The doubt of the flow stress after a surprise, one relative standard deviation (assumed)."""

_CONVERGED = 1e-9

_NO_COIL = "No coil of this wire is so small: wire or diameter was measured wrongly. The trial is set aside."

_OPENS_FULLY = "On so large a mandrel this wire should not yield at all: the coil teaches nothing. Wind a smaller one."

_TWO_COILS = (
    "diameter and angle do not belong to one coil. Turns were counted wrongly, an angle was read from the wrong leg, "
    "or the coil slipped: measure again and wind a second coil; until one agrees the doubt is "
    f"{100 * WIDE_DOUBT:.0f} %."
)

_OTHER_WAY = (
    "diameter and angle do not belong to one coil, but would if both angles were counted the other way round: count "
    "from leg 1 on to leg 2 the way the spring is wound up, and write the trial anew; until then the doubt is "
    f"{100 * WIDE_DOUBT:.0f} %."
)


@dataclass(frozen=True, slots=True)
class Lesson:
    """What one trial coil showed.

    Diameters are outside ones, as wound. `flow_ratio_alone` is what this coil says without the prior, None where it
    has not opened at all; `deviations` is how far it came from what was expected, in standard deviations.
    `outside_by_legs_mm` is the diameter that the legs of a torsion spring tell; `agree` is whether the caliper's can be
    of the same coil.
    """

    trial: Trial
    outside_diameter_mm: float
    expected_outside_diameter_mm: float
    flow_ratio_alone: float | None
    deviations: float
    surprising: bool
    said: str
    outside_by_legs_mm: float | None = None
    agree: bool = True


@dataclass(frozen=True, slots=True)
class Knowledge:
    """What is known of a wire's flow stress: its ratio to the least tensile strength, and the doubt of that.

    `pulled`: whether it is wound with the pull that the sheets ask for, which leaves a little less springback.
    """

    wire_diameter_mm: float
    elastic_modulus_mpa: float
    tensile_strength_mpa: float
    flow_ratio: float
    flow_ratio_sd: float
    lessons: tuple[Lesson, ...] = ()
    pulled: bool = False

    @property
    def flow_stress_mpa(self) -> float:
        """sigma."""
        return springback.flow_stress_mpa(self.flow_ratio, self.tensile_strength_mpa)

    @property
    def flow_strain(self) -> float:
        """s = sigma/E."""
        return springback.flow_strain(self.flow_stress_mpa, self.elastic_modulus_mpa)

    @property
    def yield_n(self) -> float:
        """The pull at which the wire yields."""
        return pull.yield_force_n(self.flow_stress_mpa, self.wire_diameter_mm)

    @property
    def pull_n(self) -> float:
        """The pull with which it is wound."""
        return pull.pull_n(self.yield_n) if self.pulled else 0.0

    @property
    def moment_kept(self) -> float:
        """What that pull leaves of the moment that springs back, of wire that yields as it is wound."""
        return self.kept_under(self.pull_n)

    def kept_under(self, pull_n: float) -> float:
        """What any pull leaves of that moment."""
        return springback.moment_kept(min(pull.pull_fraction(pull_n, self.yield_n), 0.99))

    def elastic_at(self, index_on_mandrel: float) -> bool:
        """Whether the wire does not yield at an index, so that it opens fully, however it is pulled."""
        return springback.surface_strain(index_on_mandrel, self.flow_strain) <= 1

    def finished_mean_mm(self, mandrel_mm: float) -> float:
        """The mean diameter as wound that a mandrel gives; infinite where the wire would open fully."""
        wire_mm = self.wire_diameter_mm
        index = springback.index_on_mandrel(mandrel_mm, wire_mm)
        kept = 1.0 if self.elastic_at(index) else self.moment_kept
        return springback.mean_diameter_mm(springback.released_index(index, self.flow_strain, kept), wire_mm)

    def mandrel_mm(self, finished_mean_mm: float) -> float:
        """The mandrel that gives a mean diameter as wound."""
        wire_mm = self.wire_diameter_mm
        index = springback.mandrel_index(finished_mean_mm / wire_mm, self.flow_strain, self.moment_kept)
        return springback.mandrel_mm(index, wire_mm)

    def finished_mean_sd_mm(self, mandrel_mm: float) -> float:
        """The standard deviation of that diameter: doubt of the flow stress, repeatability, the mandrel's own error."""
        index, strain = springback.index_on_mandrel(mandrel_mm, self.wire_diameter_mm), self.flow_strain
        return wound_sd_mm(
            self.finished_mean_mm(mandrel_mm),
            springback.stress_sensitivity(index, strain),
            self.flow_ratio_sd,
            springback.mandrel_sensitivity(index, strain),
            mandrel_mm + self.wire_diameter_mm,
        )

    def after(self, trial: Trial, material: Material) -> Knowledge:
        """What is known once this coil has been measured too."""
        lesson, ratio, doubt = _lesson(self, trial, material)
        return replace(self, flow_ratio=ratio, flow_ratio_sd=doubt, lessons=(*self.lessons, lesson))


@formula(
    "u = D_f √((S_σ u_σ)² + 0.004² + (S_m 0.03 / D_m)²)",
    where={
        "D_f": "mean_diameter_mm",
        "S_σ": "stress_sensitivity",
        "u_σ": "flow_ratio_sd",
        "S_m": "mandrel_sensitivity",
        "D_m": "wound_mean_mm",
    },
    source="derived, see winding_model; coils of one wire repeat to 0.4 % (assumed), a caliper reads a rod to 0.03 mm",
)
def wound_sd_mm(
    mean_diameter_mm: float,
    stress_sensitivity: float,
    flow_ratio_sd: float,
    mandrel_sensitivity: float,
    wound_mean_mm: float,
) -> float:
    """The standard deviation of the mean diameter as wound."""
    return mean_diameter_mm * hypot(
        stress_sensitivity * flow_ratio_sd, REPEATABILITY, mandrel_sensitivity * MANDREL_SD_MM / wound_mean_mm
    )


def untried(material: Material, wire_diameter_mm: float, tensile_strength_mpa: float) -> Knowledge:
    """What is known of a wire before its first trial coil, pulled by nobody: the material's prior."""
    return Knowledge(
        wire_diameter_mm,
        material.elastic_modulus_mpa,
        tensile_strength_mpa,
        material.flow_ratio,
        material.flow_ratio_sd,
    )


def learn(
    material: Material, wire_diameter_mm: float, tensile_strength_mpa: float, trials: Iterable[Trial]
) -> Knowledge:
    """What is known after a spool's trial coils, in the order in which they stand, of wire pulled as a sheet asks."""
    known = replace(untried(material, wire_diameter_mm, tensile_strength_mpa), pulled=True)
    for trial in trials:
        known = known.after(trial, material)
    return known


def as_wound(mean_mm: float, heated: bool, material: Material) -> tuple[float, float]:
    """The mean diameter before heat of a coil measured at `mean_mm`, and the relative doubt that heat left in it."""
    if not heated:
        return mean_mm, 0.0
    change, doubt = heat_change(material)
    return mean_mm / (1 + change), doubt


def heat_change(material: Material) -> tuple[float, float]:
    """Relative change of the coil diameter in stress relief: the middle of the material's range, half of it as 2 sd."""
    low, high = material.heat_change_low, material.heat_change_high
    return (low + high) / 2, (high - low) / 4


@formula(
    "D_h = D (1 + h)",
    where={"h": "heat_change"},
    source="the middle of the range that is common practice for the material, no source",
)
def heated_mean_mm(mean_diameter_mm: float, heat_change: float) -> float:
    """The mean diameter after stress relief.

    >>> round(heated_mean_mm(9.6, -0.0125), 3)
    9.48
    """
    return mean_diameter_mm * (1 + heat_change)


@formula(
    "u_h = (1 + h) √(u² + (D q)²)",
    where={"h": "heat_change", "u": "mean_sd_mm", "q": "heat_doubt"},
    source="derived: the doubts of springback and of heat, independent of each other",
)
def heated_sd_mm(mean_diameter_mm: float, mean_sd_mm: float, heat_change: float, heat_doubt: float) -> float:
    """The standard deviation of the mean diameter after stress relief."""
    return (1 + heat_change) * hypot(mean_sd_mm, mean_diameter_mm * heat_doubt)


@dataclass(frozen=True, slots=True)
class _Coil:
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
class _Shared:
    """What a caliper's and a protractor's reading of one coil share, relative: `variance` of coil and heat, and `rod`.

    An error of the rod reaches the caliper's by `rod_share` of it, through d(1/C_f) = (1 - g') d(1/C_m), and the legs'
    by a whole one less, since they tell D_f/D_m.
    """

    variance: float
    rod: float
    rod_share: float


def _coil(known: Knowledge, trial: Trial, material: Material) -> _Coil:
    wire_mm = known.wire_diameter_mm
    measured_mm = trial.outside_diameter_mm - wire_mm
    mean_mm, heat_doubt = as_wound(measured_mm, trial.heated, material)
    index, curvature = springback.index_on_mandrel(trial.mandrel_mm, wire_mm), wire_mm / mean_mm
    slope = springback.moment_ratio_slope(springback.surface_strain(index, known.flow_strain))
    shared = _Shared(
        REPEATABILITY**2 + heat_doubt**2,
        MANDREL_SD_MM / (trial.mandrel_mm + wire_mm),
        (1 - slope) / (curvature * index),
    )
    relative_sd = hypot(CALIPER_SD_MM / mean_mm, sqrt(shared.variance), shared.rod_share * shared.rod)
    pulled_n = known.pull_n if trial.pull_n is None else trial.pull_n
    kept = 1.0 if known.elastic_at(index) else known.kept_under(pulled_n)
    coil = _Coil(index, curvature, curvature * relative_sd, kept, curvature)
    legs = leg_reading(trial, wire_mm)
    return coil if legs is None else _with_legs(coil, legs, measured_mm, shared)


def _with_legs(coil: _Coil, legs: LegReading, measured_mm: float, shared: _Shared) -> _Coil:
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
        return replace(coil, by_legs=by_legs, contradiction=_OTHER_WAY if counted_wrongly else _TWO_COILS)
    return replace(coil, curvature=both.value, curvature_sd=sqrt(both.variance), by_legs=by_legs)


def _settled(coil: _Coil, strain: float, doubt: float) -> tuple[float, float]:
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


def _lesson(known: Knowledge, trial: Trial, material: Material) -> tuple[Lesson, float, float]:
    """The lesson of one coil, and ratio and doubt after it."""
    if trial.outside_diameter_mm <= 2 * known.wire_diameter_mm:
        lesson = Lesson(trial, trial.outside_diameter_mm, inf, None, 0.0, True, _NO_COIL)
        return lesson, known.flow_ratio, known.flow_ratio_sd
    coil, strain = _coil(known, trial, material), known.flow_strain
    spread = hypot(coil.fall(strain) * known.flow_ratio_sd, coil.curvature_sd)
    deviations = -coil.residual(strain) / spread
    agree = not coil.contradiction
    surprising = (abs(deviations) > SURPRISE or not agree) and not coil.elastic(strain)
    change, doubt = _settled(coil, strain, WIDE_DOUBT if surprising else known.flow_ratio_sd)
    ratio = known.flow_ratio * exp(change)
    expected_mm = _outside_mm(known, springback.released_curvature(coil.index_on_mandrel, strain, coil.moment_kept))
    shown = coil.contradiction or _said(ratio / known.flow_ratio - 1, surprising)
    lesson = Lesson(
        trial=trial,
        outside_diameter_mm=_outside_mm(known, coil.by_caliper),
        expected_outside_diameter_mm=expected_mm,
        flow_ratio_alone=_ratio_alone(known, coil),
        deviations=deviations,
        surprising=surprising,
        said=_OPENS_FULLY if expected_mm == inf else shown,
        outside_by_legs_mm=None if coil.by_legs is None else _outside_mm(known, coil.by_legs),
        agree=agree,
    )
    return lesson, ratio, WIDE_DOUBT if surprising else doubt


def _outside_mm(known: Knowledge, curvature: float) -> float:
    """The outside diameter of a coil of curvature d/D; infinite where the wire is straight."""
    return known.wire_diameter_mm * (1 / curvature + 1) if curvature > 1e-9 else inf


def _ratio_alone(known: Knowledge, coil: _Coil) -> float | None:
    """The flow stress over the least tensile strength that one coil shows by itself."""
    if coil.curvature * coil.index_on_mandrel >= 1:
        return None
    strain = springback.flow_strain_shown(coil.index_on_mandrel, 1 / coil.curvature)
    return strain * known.elastic_modulus_mpa / known.tensile_strength_mpa / coil.moment_kept


def _said(change: float, surprising: bool) -> str:
    """The lesson in words."""
    if surprising:
        return (
            "too far off to be chance. Another wire or grade than the label says, or a coil that slipped: measure wire "
            "and mandrel again and wind a second coil; until one agrees the doubt is "
            f"{100 * WIDE_DOUBT:.0f} %."
        )
    if abs(change) < 0.005:
        return "springs back as assumed."
    return f"springs back {'more' if change > 0 else 'less'} than assumed ({100 * change:+.0f} % flow stress)."
