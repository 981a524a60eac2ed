"""The workings of the mandrel: what it gives when the coil is let go, after heat, and how sure that is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.figures.working import Working, given, work
from sourcing.springs import extension, initial_tension
from sourcing.springs.conical_lengths import step_of
from sourcing.springs.model import ConicalSpring, ExtensionSpring, Spring
from sourcing.stock.model import Bench
from sourcing.winding import doubts, heat, heat_change, springback, trials
from sourcing.winding.extension import hand_tension
from sourcing.winding.measuring import sd_of_mandrel_mm
from sourcing.winding.model import Made, WindingPlan
from sourcing.winding.trials import Knowledge

ON_HAND = "a rod on hand, see bench.yaml"
AS_WOUND, AFTER_HEAT = "as wound", "after heat"
BOUNDS = "95 of 100, see winding_model: 2 % of the travel, 3 % of the rate and 0.07 coils (assumed), and the diameter's"
HOOKS_BENT = "95 of 100: both hooks together are bent to within 5 % of the inside diameter (assumed)"
NO_TENSION = "how hard the coils press hangs on the hand: none at the least, common practice, no source"
TURNED = "turned for it, rounded as it can be turned"


def mandrel(plan: WindingPlan, known: Knowledge, bench: Bench) -> Iterator[Working]:
    """One of one diameter, or a cone's turn by turn; the heat; and the bounds of what comes out."""
    yield from _heat(plan, bench)
    if plan.mandrel.diameter_mm is None:
        yield from _profile(plan, known)
    else:
        yield from _diameter(plan, known, plan.mandrel.diameter_mm, bench)
    for made, where in ((plan.finished, AS_WOUND), (plan.after_heat, AFTER_HEAT)):
        if made is not None:
            yield from _other_bounds(made, where)


def _heat(plan: WindingPlan, bench: Bench) -> Iterator[Working]:
    material = plan.finished.spring.material
    low, high = material.stress_relief_low_c, material.stress_relief_high_c
    if plan.heat.temperature_c is None or low is None or high is None or bench.oven_c is None:
        return
    yield work(heat.relief_c, low, high, bench.oven_c, figure="temperature_c")
    change, doubt = heat_change.heat_change(material)
    yield given("heat_change", change, "the middle of the material's range, common practice, no source", True)
    yield given("heat_doubt", doubt, "a quarter of that range", True)


def _diameter(plan: WindingPlan, known: Knowledge, mandrel_mm: float, bench: Bench) -> Iterator[Working]:
    """From the mandrel to the finished diameter, and its doubts."""
    known = known.on(mandrel_mm)
    wire, strain = known.wire_diameter_mm, known.flow_strain
    yield given("mandrel_diameter_mm", mandrel_mm, ON_HAND if mandrel_mm in bench.rods_mm else TURNED)
    index = work(springback.index_on_mandrel, mandrel_mm, wire)
    yield index
    yield work(springback.surface_strain, index.value, strain)
    released = work(springback.released_index, index.value, strain, known.moment_kept)
    yield released
    yield work(springback.mean_diameter_mm, released.value, wire).at(AS_WOUND)
    yield from _doubts(plan, known, mandrel_mm, bench)


def _doubts(plan: WindingPlan, known: Knowledge, mandrel_mm: float, bench: Bench) -> Iterator[Working]:
    index, strain = springback.index_on_mandrel(mandrel_mm, known.wire_diameter_mm), known.flow_strain
    mean, on_mandrel = known.finished_mean_mm(mandrel_mm), mandrel_mm + known.wire_diameter_mm
    stress = work(springback.stress_sensitivity, index, strain)
    rod = work(springback.mandrel_sensitivity, index, strain)
    rod_sd_mm = sd_of_mandrel_mm(known.wound_on)
    sd = work(trials.wound_sd_mm, mean, stress.value, known.flow_ratio_sd, rod.value, on_mandrel, rod_sd_mm)
    yield from (stress, rod, sd)
    yield from _bands(plan.finished.spring, sd.value, AS_WOUND)
    change, doubt = heat.change_of_diameter(plan.finished.spring.material, bench)
    if plan.after_heat is None:
        return
    yield work(heat_change.heated_mean_mm, mean, change, figure="mean_diameter_mm").at(AFTER_HEAT)
    heated = work(heat_change.heated_sd_mm, mean, sd.value, change, doubt)
    yield heated
    yield from _bands(plan.after_heat.spring, heated.value, AFTER_HEAT)


def _bands(spring: Spring, sd_mm: float, where: str) -> Iterator[Working]:
    """Between which bounds the diameters will lie."""
    for name in ("mean", "outside", "inside"):
        figure = f"{name}_diameter_mm"
        value = getattr(spring, figure)
        yield work(doubts.lower_95, value, sd_mm, figure=f"{figure}_low").at(where)
        yield work(doubts.upper_95, value, sd_mm, figure=f"{figure}_high").at(where)


def _other_bounds(made: Made, where: str) -> Iterator[Working]:
    """Between which bounds the other figures will lie."""
    if isinstance(made.spring, ExtensionSpring):
        yield from _hand_tension(made.spring, where)
        yield from _hooks_bent(made, where)
    for name, band in made.bands.items():
        for bound, value in (("low", band.low), ("high", band.high)):
            yield given(f"{name}_{bound}", value, BOUNDS).at(where)


def _hand_tension(spring: ExtensionSpring, where: str) -> Iterator[Working]:
    """Between what the initial tension lies: from none to what a mandrel gives, less what heat takes."""
    assert spring.tensile_strength_mpa is not None
    wire, mean, high = spring.wire_diameter_mm, spring.mean_diameter_mm, "initial_tension_n_high"
    stress = work(initial_tension.initial_stress_wound_mpa, spring.spring_index, spring.tensile_strength_mpa)
    yield stress.at(where)
    yield given("initial_tension_n_low", 0.0, NO_TENSION).at(where)
    most = work(extension.initial_tension_n, max(0.0, stress.value), wire, mean, figure=high)
    if where == AS_WOUND:
        yield most.at(where)
    else:
        yield replace(most, figure="initial_tension_n").at("at most, without heat")
        yield work(hand_tension.most_left_after_heat_n, most.value, figure=high).at(where)


def _hooks_bent(made: Made, where: str) -> Iterator[Working]:
    """Between what the free length lies, by how near hooks are bent to their height."""
    band = made.bands["free_length_mm"]
    for bound, value in (("low", band.low), ("high", band.high)):
        yield given(f"free_length_mm_{bound}", value, HOOKS_BENT).at(where)


def _profile(plan: WindingPlan, known: Knowledge) -> Iterator[Working]:
    """A cone's mandrel at each finished turn: the compensation of that coil."""
    spring, wire = plan.finished.spring, known.wire_diameter_mm
    assert isinstance(spring, ConicalSpring)
    for point in plan.mandrel.profile:
        mean = spring.mean_diameter_small_mm + 2.0 * step_of(spring) * point.turn
        where = f"at turn {point.turn:g}"
        here = known.on(known.mandrel_mm(mean))
        wound = (here.flow_strain, here.moment_kept)
        index = work(springback.mandrel_index, mean / wire, *wound, figure="index_on_mandrel")
        yield index.at(where)
        yield work(springback.mandrel_mm, index.value, wire, figure="unrounded_diameter_mm").at(where)
        yield given("diameter_mm", point.diameter_mm, TURNED).at(where)
