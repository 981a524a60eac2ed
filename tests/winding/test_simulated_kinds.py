"""A simulated bench for the kinds that the first one leaves out: extension springs, torsion springs with their angle,
cones at both ends; the bands of whole plans, before any trial and after one.

What is drawn is what the winding model assumes: the flow stress from the prior, coils that repeat to 0.4 %, a rod that
is known to 0.03 mm, heat's change of diameter from its range, the rate to 3 %.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from math import exp
from random import Random

import pytest

from sourcing.materials.strength import tensile_strength_mpa
from sourcing.springs.geometry import turn_length_mm
from sourcing.springs.model import ConicalSpring, ExtensionSpring, TorsionSpring
from sourcing.stock.model import Spool, Trial
from sourcing.winding import springback
from sourcing.winding.doubts import COILS_DOUBT, NORMAL_95, RATE_DOUBT, opening_sd
from sourcing.winding.heat_change import heat_change, heated_sd_mm
from sourcing.winding.learning import learn
from sourcing.winding.leg_reading import LEG_SD_DEG, TURNS_SD
from sourcing.winding.measuring import CALIPER_SD_MM, MANDREL_SD_MM
from sourcing.winding.model import Made, WindingPlan
from sourcing.winding.plan import plan_winding
from sourcing.winding.torsion.task import angle_sd_deg
from sourcing.winding.trials import REPEATABILITY, Knowledge

from .cases import BENCH, material, planned, spool
from .test_extension import a_need as a_catch
from .test_saving_a_cone import NEED as A_BUTTON
from .test_simulated_bench import RUNS, WITHIN_POINTS
from .test_torsion import need as a_lid

MUSIC = material("music-wire")
SIGMAS = {0.95: NORMAL_95, 0.68: 0.9945}


def known_of(wire: Spool) -> Knowledge:
    """What the plan of this spool goes by."""
    strength_mpa = planned_strength(wire)
    return learn(wire.material, wire.wire_diameter_mm, strength_mpa, wire.trials)


def planned_strength(wire: Spool) -> float:
    strength_mpa = tensile_strength_mpa(wire.material, wire.wire_diameter_mm)
    assert strength_mpa is not None
    return strength_mpa


@dataclass(frozen=True)
class Bench:
    """One wire and one afternoon: its true flow stress, how far each rod is off, what heat does."""

    random: Random
    known: Knowledge
    ratio: float
    heat: float

    def coil(self, mandrel_mm: float, off_mm: float) -> float:
        """The mean diameter of a coil of this wire as wound, on a rod that is so much thicker than it reads."""
        known = self.known
        strain = self.ratio * known.tensile_strength_mpa / known.elastic_modulus_mpa
        index = (mandrel_mm + off_mm) / known.wire_diameter_mm + 1
        open_mm = springback.released_index(index, strain, known.kept_under(known.pull_n)) * known.wire_diameter_mm
        return open_mm * (1 + self.random.gauss(0.0, REPEATABILITY))

    def rod(self) -> float:
        return self.random.gauss(0.0, MANDREL_SD_MM)


def a_bench(random: Random, known: Knowledge) -> Bench:
    ratio = known.flow_ratio * exp(random.gauss(0.0, known.flow_ratio_sd))
    return Bench(random, known, ratio, random.gauss(*heat_change(MUSIC)))


Outcome = tuple[Mapping[str, float], Mapping[str, float]]
"""Figures as wound, and after heat."""


def an_extension_spring(bench: Bench, plan: WindingPlan) -> Outcome:
    """The body has the coils that are counted off; the rate goes by the cube of the diameter that came out."""
    made, wanted = plan.finished.spring, plan.wanted
    assert isinstance(made, ExtensionSpring)
    assert isinstance(wanted, ExtensionSpring)
    mean_mm = bench.coil(plan.mandrel.diameter_mm or 0.0, bench.rod())
    off = bench.random.gauss(0.0, RATE_DOUBT) + bench.random.gauss(0.0, COILS_DOUBT / made.total_coils)
    stages: list[Mapping[str, float]] = []
    for stage, d in ((plan.finished, mean_mm), (plan.after_heat, mean_mm * (1 + bench.heat))):
        assert stage is not None
        spring = stage.spring
        assert isinstance(spring, ExtensionSpring)
        rate = stage.figures.rate_n_per_mm * exp(off) * (spring.mean_diameter_mm / d) ** 3  # type: ignore[union-attr]
        stages.append(
            {"mean_diameter_mm": d, "outside_diameter_mm": d + spring.wire_diameter_mm, "rate_n_per_mm": rate}
        )
    return stages[0], stages[1]


def a_torsion_spring(bench: Bench, plan: WindingPlan) -> Outcome:
    """The crank stops where it should; the legs turn back by what the turns laid lose as the coil opens."""
    made, wanted = plan.finished.spring, plan.wanted
    assert isinstance(made, TorsionSpring)
    assert isinstance(wanted, TorsionSpring)
    wire_mm, off_mm, mandrel_mm = made.wire_diameter_mm, bench.rod(), plan.mandrel.diameter_mm or 0.0
    mean_mm = bench.coil(mandrel_mm, off_mm)
    on_mandrel_mm = turn_length_mm(mandrel_mm + off_mm + wire_mm, wire_mm)
    stages: list[Mapping[str, float]] = []
    for d, meant in ((mean_mm, made), (mean_mm * (1 + bench.heat), wanted)):
        coils = plan.turns_to_wind * on_mandrel_mm / turn_length_mm(d, wire_mm)
        angle = (meant.free_angle_deg or 0.0) + 360.0 * (coils - meant.active_coils)
        stages.append({"mean_diameter_mm": d, "inside_diameter_mm": d - wire_mm, "free_angle_deg": angle})
    return stages[0], stages[1]


def a_cone(bench: Bench, plan: WindingPlan) -> Outcome:
    """Both ends of one mandrel, each off by its own; the ends are laid beside each other."""
    profile, wire_mm = plan.mandrel.profile, plan.wire_diameter_mm
    small_mm, large_mm = (bench.coil(each.diameter_mm, bench.rod()) for each in (profile[0], profile[-1]))
    stages: list[Mapping[str, float]] = []
    for share in (1.0, 1.0 + bench.heat):
        ends = {"small": small_mm * share, "large": large_mm * share}
        stages.append({f"outside_diameter_{end}_mm": mm + wire_mm for end, mm in ends.items()})
    return stages[0], stages[1]


def mandrel_of(plan: WindingPlan) -> float:
    """The mandrel's diameter, that of a cone's large end."""
    return plan.mandrel.profile[-1].diameter_mm if plan.mandrel.profile else plan.mandrel.diameter_mm or 0.0


@dataclass(frozen=True)
class Case:
    """A need, its wire, and what becomes of one winding."""

    plan: Callable[[Spool], WindingPlan]
    wire: Spool
    wind: Callable[[Bench, WindingPlan], Outcome]


def planning(need: object) -> Callable[[Spool], WindingPlan]:
    return lambda wire: planned(plan_winding(need, wire, BENCH))  # type: ignore[arg-type]


CASES = {
    "extension": Case(planning(a_catch()), spool(0.8), an_extension_spring),
    "torsion": Case(planning(a_lid()), spool(1.2), a_torsion_spring),
    "cone": Case(planning(A_BUTTON), spool(0.9), a_cone),
}


def holds(made: Made, figure: str, got: float, sigmas: float) -> bool:
    """Whether a figure is within so many standard deviations of its band, which holds 1.96."""
    band = made.bands[figure]
    if figure.startswith("rate"):
        middle = (band.low * band.high) ** 0.5
        share = (band.high / middle - 1.0) * sigmas / NORMAL_95
        return middle / (1.0 + share) <= got <= middle * (1.0 + share)
    return abs(got - (band.low + band.high) / 2) <= (band.high - band.low) / 2 * sigmas / NORMAL_95


@pytest.mark.parametrize("kind", CASES)
def test_the_bands_of_a_plan_hold_as_many_springs_as_they_say(kind: str):
    """As wound and after heat, within 3 points over 2 000 springs, before any trial."""
    case, random = CASES[kind], Random(kind)
    plan, known = case.plan(case.wire), known_of(case.wire)
    held = Counter[tuple[str, str, float]]()
    for _ in range(RUNS):
        for stage, made, figures in zip(
            ("wound", "heated"), (plan.finished, plan.after_heat), case.wind(a_bench(random, known), plan), strict=True
        ):
            assert made is not None
            for (figure, got), (share, sigmas) in ((f, s) for f in figures.items() for s in SIGMAS.items()):
                held[stage, figure, share] += holds(made, figure, got, sigmas)
    for (stage, figure, share), count in held.items():
        assert count / RUNS == pytest.approx(share, abs=WITHIN_POINTS), (stage, figure)


def a_trial(kind: str, bench: Bench, plan: WindingPlan) -> Trial:
    """The first spring measured as a trial: a cone at its large end, a torsion spring with its legs."""
    on_mm, off_mm, wire_mm = mandrel_of(plan), bench.rod(), plan.wire_diameter_mm
    mean_mm = bench.coil(on_mm, off_mm)
    trial = Trial(on_mm, mean_mm + wire_mm + bench.random.gauss(0.0, CALIPER_SD_MM), turns=plan.turns_to_wind)
    if kind != "torsion":
        return trial
    laid = plan.turns_to_wind + bench.random.gauss(0.0, TURNS_SD)
    coils = laid * turn_length_mm(on_mm + off_mm + wire_mm, wire_mm) / turn_length_mm(mean_mm, wire_mm)
    angles = (90.0, 90.0 - 360.0 * (laid - coils))
    stop, leg = ((angle + bench.random.gauss(0.0, LEG_SD_DEG)) % 360.0 for angle in angles)
    return replace(trial, stop_angle_deg=stop, leg_angle_deg=leg)


@pytest.mark.parametrize("kind", CASES)
def test_after_one_trial_the_bands_hold_as_many_as_they_say_and_are_as_narrow_as_was_stated(kind: str):
    """Over 2 000 benches: the next coil, before and after heat, both ends of a cone, the angle of a torsion spring."""
    case, random = CASES[kind], Random(f"{kind} tried")
    plan, known = case.plan(case.wire), known_of(case.wire)
    held, squared, stated = Counter[tuple[str, float]](), Counter[bool](), Counter[bool]()
    for _ in range(RUNS):
        bench = a_bench(random, known)
        taught = known.after(a_trial(kind, bench, plan), MUSIC)
        for knows in (known, taught):
            off = next_off(kind, bench, knows, plan)
            squared[knows is taught] += off["wound"] ** 2
            stated[knows is taught] += 1.0
            if knows is taught:
                for (figure, deviations), (share, sigmas) in ((o, s) for o in off.items() for s in SIGMAS.items()):
                    held[figure, share] += abs(deviations) <= sigmas
    for (figure, share), count in held.items():
        assert count / RUNS == pytest.approx(share, abs=WITHIN_POINTS), figure
    for tried in (False, True):
        assert (squared[tried] / stated[tried]) ** 0.5 == pytest.approx(1.0, rel=0.12)


def next_off(kind: str, bench: Bench, knows: Knowledge, plan: WindingPlan) -> Mapping[str, float]:
    """How far the next coil comes from what is expected, in the standard deviations that are stated for it."""
    wire_mm, meant, heat = plan.wire_diameter_mm, plan.finished.spring, heat_change(MUSIC)
    if isinstance(meant, ConicalSpring):
        means = {"wound": meant.mean_diameter_large_mm, "small": meant.mean_diameter_small_mm}
    else:
        means = {"wound": meant.mean_diameter_mm}
    off: dict[str, float] = {}
    for name, mean_mm in means.items():
        on_mm, rod_mm = knows.mandrel_mm(mean_mm), bench.rod()
        came_mm, expected_mm, sd_mm = (
            bench.coil(on_mm, rod_mm),
            knows.finished_mean_mm(on_mm),
            knows.finished_mean_sd_mm(on_mm),
        )
        off[name] = (came_mm - expected_mm) / sd_mm
        heated_mm, heated_sd = came_mm * (1 + bench.heat), heated_sd_mm(expected_mm, sd_mm, *heat)
        off[f"{name}, heated"] = (heated_mm - expected_mm * (1 + heat[0])) / heated_sd
        if kind == "torsion":
            assert isinstance(meant, TorsionSpring)
            laid = meant.active_coils * turn_length_mm(expected_mm, wire_mm) / turn_length_mm(on_mm + wire_mm, wire_mm)
            coils = laid * turn_length_mm(on_mm + rod_mm + wire_mm, wire_mm) / turn_length_mm(came_mm, wire_mm)
            sd_deg = angle_sd_deg(meant, opening_sd(knows, on_mm))
            off["angle"] = 360.0 * (coils - meant.active_coils) / sd_deg
    return off
