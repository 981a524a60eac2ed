"""The workings of the wire: its strength, its flow stress and strain, the pull, the moment at the crank."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.figures.working import Working, given, work
from sourcing.materials.facts import facts
from sourcing.springs.model import TorsionSpring
from sourcing.springs.workings.inputs import Stated, input_of, strength, wire_figures
from sourcing.winding import by_hand, pull, springback
from sourcing.winding.model import WindingPlan
from sourcing.winding.trials import Knowledge

RECKONED = "as reckoned with"
NO_WEAKER = "a trial was too far off to be chance: the larger of its ratio and that of the wire on the label"


def wire(plan: WindingPlan, known: Knowledge, stated: Stated) -> Iterator[Working]:
    """From the wire as it stands on the spool to what bends it."""
    spring = plan.finished.spring
    yield input_of("wire_diameter_mm", plan.wire_diameter_mm, stated)
    yield from strength(spring, {})
    yield from wire_figures(spring, {}, "elastic_modulus_mpa")
    yield from _flow_ratio(plan, known)
    yield work(springback.flow_stress_mpa, known.flow_ratio, known.tensile_strength_mpa)
    yield work(springback.flow_strain, known.flow_stress_mpa, known.elastic_modulus_mpa)
    yield work(pull.yield_force_n, known.flow_stress_mpa, known.wire_diameter_mm)
    yield work(pull.pull_n, known.yield_n)
    fraction = work(pull.pull_fraction, known.pull_n, known.yield_n)
    yield fraction
    yield work(springback.moment_kept, fraction.value)
    crank = "crank_moment_n_mm"
    reckoned = known.reckoned_with
    if reckoned is not known:
        yield given("flow_ratio", reckoned.flow_ratio, NO_WEAKER).at(RECKONED)
        flow = work(springback.flow_stress_mpa, reckoned.flow_ratio, known.tensile_strength_mpa)
        yield flow.at(RECKONED)
    yield work(springback.plastic_moment_n_mm, reckoned.flow_stress_mpa, known.wire_diameter_mm, figure=crank)
    bodies = spring.bodies if isinstance(spring, TorsionSpring) else 1
    turned = plan.crank.bending_n_mm, bodies * reckoned.pull_n, plan.mandrel.thickest_mm, known.wire_diameter_mm
    moment = work(by_hand.moment_with_pull_n_mm, *turned)
    yield moment
    yield work(by_hand.force_at_handle_n, moment.value, plan.crank.handle_mm)


def _flow_ratio(plan: WindingPlan, known: Knowledge) -> Iterator[Working]:
    """The prior of the material, or what the spool's trials made of it."""
    values = {"flow_ratio": known.flow_ratio, "flow_ratio_sd": known.flow_ratio_sd}
    if known.lessons:
        trials = f"{len(known.counted)} trial coil{'s' if len(known.counted) > 1 else ''} of {plan.wire}"
        yield from (given(name, value, f"{trials}; derived, see winding_model") for name, value in values.items())
        return
    priors = {fact.figure.replace(" ", "_"): fact for fact in facts(plan.finished.spring.material)}
    for name, value in values.items():
        prior = priors.get(name)
        source, recalled = ("assumed", False) if prior is None else (prior.source, prior.from_memory)
        yield given(name, value, source, recalled)
