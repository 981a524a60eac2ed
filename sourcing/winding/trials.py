"""What trial coils teach about the flow stress of a spool.

theta = ln(sigma/Rm) is normal: the material's prior first, then each trial coil (the mandrel and the diameter that came
out) moves and narrows it. The reading is the curvature d/D, in which springback is nearly straight in the stress and
which stays finite where a coil opens fully.

The legs of a torsion spring are a second reading of the same coil (leg_reading.py).

A coil more than three standard deviations from what was expected is a surprise: another wire or grade than the label
says, or a coil that slipped. It isn't averaged with the rest: the middle goes where that coil points, the doubt is
widened until its band of 95 % reaches back to what was believed before, 15 % at least, and the next coil decides
(learning.py). As long as the spool has such a coil, set aside or not, a hand reckons with no weaker a wire than the
label says (`Knowledge.reckoned_with`).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import exp, hypot, inf, log, sqrt

from sourcing.figures import formula
from sourcing.materials.model import Material
from sourcing.stock.model import Trial
from sourcing.winding import pull, springback
from sourcing.winding.coil_reading import NORMAL_95, SURPRISE, ReadCoil, Shared, settled, with_legs
from sourcing.winding.heat_change import as_wound
from sourcing.winding.index_trend import Trend
from sourcing.winding.leg_reading import leg_reading
from sourcing.winding.lesson_words import (
    BORNE_OUT,
    NO_COIL,
    OF_NO_ONE_COIL,
    OPENS_FULLY,
    SET_ASIDE,
    TEACH_NOTHING,
    WIDE_DOUBT,
    beside_expected,
    lesson_said,
    should_have_opened,
)
from sourcing.winding.measuring import CALIPER_SD_MM, sd_of_mandrel_mm
from sourcing.winding.pitch_share import PitchShare, pitch_reading

REPEATABILITY = 0.004
"""Coils of one wire on one mandrel differ by this share of the diameter, one standard deviation (assumed)."""

ASSUMED_PITCH = PitchShare()
"""How the pitch opens where no coil has shown it."""

_STEPS_TO_MANDREL = 12
"""Each step brings the mandrel of a wire with a trend ten times as near, and more."""


@dataclass(frozen=True, slots=True)
class Lesson:
    """What one trial coil showed.

    Diameters are outside ones, as wound. `flow_ratio_alone` is what this coil says without the prior, None where it
    has not opened at all; `deviations` is how far it came from what was expected, in standard deviations.
    `outside_by_legs_mm` is the diameter that the legs of a torsion spring tell; `agree` is whether the caliper's can be
    of the same coil. `agrees_with_surprise`: whether it came out as a surprise before it did, False where it did not,
    None where there was none before it or it cannot tell. `set_aside`: a surprise with which the next coil did not
    agree, but with what was known before, so that it teaches nothing. `borne_out`: one with which a later coil agreed,
    so that the wire is another than its label says.
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
    agrees_with_surprise: bool | None = None
    set_aside: bool = False
    borne_out: bool = False

    @property
    def when_borne_out(self) -> Lesson:
        """The same once a later coil has agreed with it."""
        return replace(self, borne_out=True, said=BORNE_OUT)

    @property
    def when_set_aside(self) -> Lesson:
        """The same once the next coil has set it aside."""
        return replace(self, set_aside=True, said=self.said if self.said in TEACH_NOTHING else SET_ASIDE)

    def came_otherwise(self, units: str) -> str:
        """How it came out otherwise than expected, as a verb and what belongs to it."""
        return f"came out at {self.beside_expected(units)}" if self.agree else OF_NO_ONE_COIL

    def beside_expected(self, units: str) -> str:
        """The diameter that came out, and what was expected."""
        expected_mm, mandrel_mm = self.expected_outside_diameter_mm, self.trial.mandrel_mm
        return beside_expected(self.outside_diameter_mm, expected_mm, mandrel_mm, units)


@dataclass(frozen=True, slots=True)
class Knowledge:
    """What is known of a wire's flow stress: its ratio to the least tensile strength, and the doubt of that.

    `pulled`: whether it is wound with the pull that the sheets ask for, which leaves a little less springback. `trend`:
    how that ratio goes with the spring index, where coils of different indices want more than one; ratio and doubt are
    then those at the trend's own index. `label_ratio`: the ratio that the wire of the label is taken to have. `pitch`:
    how its pitch opens. `wound_on`: what its springs are, as a trial says it. `undecided`: how many of its last coils,
    a surprise and those after it, wait for another to decide.
    """

    wire_diameter_mm: float
    elastic_modulus_mpa: float
    tensile_strength_mpa: float
    flow_ratio: float
    flow_ratio_sd: float
    lessons: tuple[Lesson, ...] = ()
    pulled: bool = False
    trend: Trend | None = None
    label_ratio: float = 0.0
    pitch: PitchShare = ASSUMED_PITCH
    wound_on: str | None = None
    undecided: int = 0

    @property
    def unsettled(self) -> bool:
        """Whether a coil was too far off to be chance and none since has decided, so that another must."""
        return self.undecided > 0

    @property
    def label_refuted(self) -> bool:
        """Whether coils agree that the wire is another than its label says."""
        return any(lesson.borne_out for lesson in self.lessons)

    @property
    def reckoned_with(self) -> Knowledge:
        """What moments and energies are reckoned with: after a surprise a wire no weaker than its label says."""
        if not any(lesson.surprising for lesson in self.lessons):
            return self
        return replace(self, flow_ratio=max(self.flow_ratio, self.label_ratio), trend=None)

    def on(self, mandrel_mm: float) -> Knowledge:
        """The same as the wire shows it on one mandrel: with the flow stress of the index there, and no trend."""
        if self.trend is None:
            return self
        index = springback.index_on_mandrel(mandrel_mm, self.wire_diameter_mm)
        ratio, doubt = self.trend.ratio_at(index), self.trend.ratio_sd_at(index)
        return replace(self, flow_ratio=ratio, flow_ratio_sd=doubt, trend=None)

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
        known, wire_mm = self.on(mandrel_mm), self.wire_diameter_mm
        index = springback.index_on_mandrel(mandrel_mm, wire_mm)
        kept = 1.0 if known.elastic_at(index) else known.moment_kept
        return springback.mean_diameter_mm(springback.released_index(index, known.flow_strain, kept), wire_mm)

    def mandrel_mm(self, finished_mean_mm: float) -> float:
        """The mandrel that gives a mean diameter as wound."""
        wire_mm = self.wire_diameter_mm
        if self.trend is None:
            index = springback.mandrel_index(finished_mean_mm / wire_mm, self.flow_strain, self.moment_kept)
            return springback.mandrel_mm(index, wire_mm)
        mandrel_mm = finished_mean_mm - wire_mm
        for _ in range(_STEPS_TO_MANDREL):
            mandrel_mm = self.on(mandrel_mm).mandrel_mm(finished_mean_mm)
        return mandrel_mm

    def finished_mean_sd_mm(self, mandrel_mm: float) -> float:
        """The standard deviation of that diameter: doubt of the flow stress, repeatability, the mandrel's own error."""
        known, index = self.on(mandrel_mm), springback.index_on_mandrel(mandrel_mm, self.wire_diameter_mm)
        return wound_sd_mm(
            self.finished_mean_mm(mandrel_mm),
            springback.stress_sensitivity(index, known.flow_strain),
            known.flow_ratio_sd,
            springback.mandrel_sensitivity(index, known.flow_strain),
            mandrel_mm + self.wire_diameter_mm,
            sd_of_mandrel_mm(self.wound_on),
        )

    def pitch_sd(self, mandrel_mm: float) -> float:
        """The relative standard deviation of the pitch after release, by the doubt of how it opens."""
        opening = self.finished_mean_mm(mandrel_mm) / (mandrel_mm + self.wire_diameter_mm)
        return self.pitch.ratio_sd(opening)

    def after(self, trial: Trial, material: Material) -> Knowledge:
        """What is known once this coil has been measured too; the pitch of one that is a surprise teaches nothing."""
        here = self.on(trial.mandrel_mm)
        lesson, ratio, doubt = _lesson(here, trial, material)
        reading = None if lesson.surprising else pitch_reading(trial, self.wire_diameter_mm, material)
        taught = replace(
            self,
            flow_ratio=ratio,
            flow_ratio_sd=doubt,
            lessons=(*self.lessons, lesson),
            pitch=self.pitch.after(reading),
            undecided=1 if lesson.surprising else 0,
        )
        if self.trend is None:
            return taught
        index, believed_sd = springback.index_on_mandrel(trial.mandrel_mm, self.wire_diameter_mm), here.flow_ratio_sd
        trend = self.trend.after(index, log(ratio / here.flow_ratio), max(believed_sd, doubt), doubt)
        return replace(taught, flow_ratio=trend.ratio, flow_ratio_sd=trend.ratio_sd, trend=trend)

    @property
    def greatest_deviation(self) -> float:
        """How far the coil that was expected least came from what was expected, in standard deviations."""
        return max((abs(lesson.deviations) for lesson in self.counted), default=0.0)

    @property
    def counted(self) -> tuple[Lesson, ...]:
        """The lessons of coils that are not set aside."""
        return tuple(lesson for lesson in self.lessons if not lesson.set_aside)


@formula(
    "u = D_f √((S_σ u_σ)² + 0.004² + (S_m u_m / D_m)²)",
    where={
        "D_f": "mean_diameter_mm",
        "S_σ": "stress_sensitivity",
        "u_σ": "flow_ratio_sd",
        "S_m": "mandrel_sensitivity",
        "D_m": "wound_mean_mm",
        "u_m": "mandrel_sd_mm",
    },
    source="derived, see winding_model; coils of one wire repeat to 0.4 % (assumed)",
)
def wound_sd_mm(
    mean_diameter_mm: float,
    stress_sensitivity: float,
    flow_ratio_sd: float,
    mandrel_sensitivity: float,
    wound_mean_mm: float,
    mandrel_sd_mm: float,
) -> float:
    """The standard deviation of the mean diameter as wound; of the mandrel's own error by how well it is known."""
    return mean_diameter_mm * hypot(
        stress_sensitivity * flow_ratio_sd, REPEATABILITY, mandrel_sensitivity * mandrel_sd_mm / wound_mean_mm
    )


def untried(material: Material, wire_diameter_mm: float, tensile_strength_mpa: float) -> Knowledge:
    """What is known of a wire before its first trial coil, pulled by nobody: the material's prior."""
    return Knowledge(
        wire_diameter_mm,
        material.elastic_modulus_mpa,
        tensile_strength_mpa,
        material.flow_ratio,
        material.flow_ratio_sd,
        label_ratio=material.flow_ratio,
    )


def _coil(known: Knowledge, trial: Trial, material: Material) -> ReadCoil:
    wire_mm = known.wire_diameter_mm
    measured_mm = trial.outside_diameter_mm - wire_mm
    mean_mm, heat_doubt = as_wound(measured_mm, trial.heated, material)
    index, curvature = springback.index_on_mandrel(trial.mandrel_mm, wire_mm), wire_mm / mean_mm
    slope = springback.moment_ratio_slope(springback.surface_strain(index, known.flow_strain))
    shared = Shared(
        REPEATABILITY**2 + heat_doubt**2,
        sd_of_mandrel_mm(trial.on) / (trial.mandrel_mm + wire_mm),
        (1 - slope) / (curvature * index),
    )
    relative_sd = hypot(CALIPER_SD_MM / mean_mm, sqrt(shared.variance), shared.rod_share * shared.rod)
    pulled_n = known.pull_n if trial.pull_n is None else trial.pull_n
    kept = 1.0 if known.elastic_at(index) else known.kept_under(pulled_n)
    coil = ReadCoil(index, curvature, curvature * relative_sd, kept, curvature)
    legs = leg_reading(trial, wire_mm)
    return coil if legs is None else with_legs(coil, legs, measured_mm, shared)


def _lesson(known: Knowledge, trial: Trial, material: Material) -> tuple[Lesson, float, float]:
    """The lesson of one coil, and ratio and doubt after it."""
    if trial.outside_diameter_mm <= 2 * known.wire_diameter_mm:
        lesson = Lesson(trial, trial.outside_diameter_mm, inf, None, 0.0, True, NO_COIL)
        return lesson, known.flow_ratio, known.flow_ratio_sd
    coil, strain = _coil(known, trial, material), known.flow_strain
    deviations, agree = coil.deviations(strain, known.flow_ratio_sd), not coil.contradiction
    surprising = (abs(deviations) > SURPRISE or not agree) and not coil.opened(strain)
    change, doubt = settled(coil, strain, WIDE_DOUBT if surprising else known.flow_ratio_sd)
    if surprising:
        doubt = max(WIDE_DOUBT, abs(change) / NORMAL_95)
    ratio = known.flow_ratio * exp(change)
    expected_mm = _outside_mm(known, springback.released_curvature(coil.index_on_mandrel, strain, coil.moment_kept))
    shown = coil.contradiction or lesson_said(
        ratio / known.flow_ratio - 1, surprising, should_have_opened(trial.mandrel_mm, expected_mm)
    )
    lesson = Lesson(
        trial=trial,
        outside_diameter_mm=_outside_mm(known, coil.by_caliper),
        expected_outside_diameter_mm=expected_mm,
        flow_ratio_alone=_ratio_alone(known, coil),
        deviations=deviations,
        surprising=surprising,
        said=OPENS_FULLY if coil.opened(strain) else shown,
        outside_by_legs_mm=None if coil.by_legs is None else _outside_mm(known, coil.by_legs),
        agree=agree,
    )
    return lesson, ratio, doubt


def _outside_mm(known: Knowledge, curvature: float) -> float:
    """The outside diameter of a coil of curvature d/D; infinite where the wire is straight."""
    return known.wire_diameter_mm * (1 / curvature + 1) if curvature > 1e-9 else inf


def _ratio_alone(known: Knowledge, coil: ReadCoil) -> float | None:
    """The flow stress over the least tensile strength that one coil shows by itself."""
    if coil.curvature * coil.index_on_mandrel >= 1:
        return None
    strain = springback.flow_strain_shown(coil.index_on_mandrel, 1 / coil.curvature)
    return strain * known.elastic_modulus_mpa / known.tensile_strength_mpa / coil.moment_kept
