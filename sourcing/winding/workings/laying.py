"""The workings of what is laid on the mandrel: turns, pitch, wire to cut, and how far the crank is driven back."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from sourcing.figures.working import Working, given, work
from sourcing.springs import compression, geometry
from sourcing.springs.hooks import COILS_OF_HOOK
from sourcing.springs.model import CompressionSpring, ConicalSpring, ExtensionSpring, TorsionSpring
from sourcing.winding import turns
from sourcing.winding.model import WindingPlan
from sourcing.winding.presetting import as_laid
from sourcing.winding.setting_up import openings
from sourcing.winding.trials import Knowledge

ADDED_UP = "derived, see winding_model: each piece of a turn keeps its arc, added up"
AS_DESCRIBED = "the wire of the spring as wound, see wire length"
LONGER = "the free length and what the first pressing takes of it"
CLOSE = "laid wire against wire"
RUN_BACK = "turns_run_back"


def laying(plan: WindingPlan, known: Knowledge) -> Iterator[Working]:
    """Turns and wire, and the energy that is let go."""
    yield given("coil_length_mm", plan.coil_length_mm, AS_DESCRIBED)
    yield from _run_back(plan, known, _OF_KIND[plan.wanted.kind](plan, known))
    yield given("turns_to_spare", plan.turns_to_spare, "assumed")
    yield work(turns.energy_let_go_n_mm, plan.crank_moment_n_mm, plan.turns_run_back)


def _run_back(plan: WindingPlan, known: Knowledge, laid: Iterator[Working]) -> Iterator[Working]:
    """What is laid; the turns run back by a wire no weaker than its label says, where a trial makes it out to be."""
    mandrel_mm = plan.mandrel.thickest_mm
    opening, reckoned = openings(known.on(mandrel_mm), mandrel_mm)
    for each in laid:
        if each.figure == RUN_BACK and opening != reckoned:
            yield each.at("as planned")
            yield work(turns.turns_run_back_by, each.value, opening, reckoned, figure=RUN_BACK)
        else:
            yield each


def _on_mandrel_mm(plan: WindingPlan) -> float:
    """The mean diameter of what lies on a mandrel of one diameter."""
    assert plan.mandrel.diameter_mm is not None
    return plan.mandrel.diameter_mm + plan.wire_diameter_mm


def _cylinder(plan: WindingPlan, known: Knowledge) -> Iterator[Working]:
    wanted, spring = plan.wanted, plan.finished.spring
    assert isinstance(wanted, CompressionSpring)
    assert isinstance(spring, CompressionSpring)
    yield from _coils(wanted, spring)
    wire, mean, on_mandrel = spring.wire_diameter_mm, spring.mean_diameter_mm, _on_mandrel_mm(plan)
    active, total = spring.active_coils, spring.total_coils
    laid_mm = as_laid(spring, wanted).free_length_mm
    if laid_mm > spring.free_length_mm:
        yield given("free_length_mm", laid_mm, LONGER).at("as laid")
    pitch = geometry.pitch_mm(wire, laid_mm, active, total, spring.ends)
    laid = work(turns.pitch_on_mandrel_mm, pitch, mean / on_mandrel, known.pitch.share, wire)
    yield laid
    pairs = ((mean, pitch), (on_mandrel, laid.value))
    yield work(turns.turns_on_mandrel, active, total - active, *pairs, wire, figure="turns_to_wind")
    yield work(turns.cut_length_mm, plan.coil_length_mm, geometry.turn_length_mm(on_mandrel, laid.value))
    yield work(turns.turns_run_back, plan.turns_to_wind, total)


def _coils(wanted: CompressionSpring, spring: CompressionSpring) -> Iterator[Working]:
    """The coils that give the wanted rate, and those that the same wire makes before heat."""
    wire, mean, shear = wanted.wire_diameter_mm, wanted.mean_diameter_mm, wanted.shear_modulus_mpa
    rate, where = compression.rate_n_per_mm(wire, mean, wanted.active_coils, shear), "as wanted"
    yield given("rate_n_per_mm", rate, "the line through the need's forces, by least squares").at(where)
    yield work(compression.active_coils_for_rate, wire, mean, rate, shear, figure="active_coils").at(where)
    yield work(geometry.total_coils, wanted.active_coils, wanted.ends).at(where)
    for name in ("active_coils", "total_coils"):
        coils = getattr(wanted, name)
        yield work(turns.coils_of_same_wire, coils, mean, spring.mean_diameter_mm, figure=name).at("as wound")


def _cone(plan: WindingPlan, known: Knowledge) -> Iterator[Working]:
    yield given("turns_to_wind", plan.turns_to_wind, ADDED_UP)
    yield given("pitch_on_mandrel_mm", plan.pitch_on_mandrel_mm, "the height laid over the turns laid, active coils")
    spring, wire = plan.finished.spring, plan.wire_diameter_mm
    assert isinstance(spring, ConicalSpring)
    spare = geometry.turn_length_mm(known.mandrel_mm(spring.mean_diameter_small_mm) + wire, wire)
    yield work(turns.cut_length_mm, plan.coil_length_mm, spare)
    yield work(turns.turns_run_back, plan.turns_to_wind, spring.total_coils)


def _extension(plan: WindingPlan, _: Knowledge) -> Iterator[Working]:
    spring = plan.finished.spring
    assert isinstance(spring, ExtensionSpring)
    wire, hooks = spring.wire_diameter_mm, 2.0 * COILS_OF_HOOK[spring.hooks]
    one, laid = (geometry.turn_length_mm(mean, wire) for mean in (spring.mean_diameter_mm, _on_mandrel_mm(plan)))
    yield given("pitch_on_mandrel_mm", plan.pitch_on_mandrel_mm, CLOSE)
    yield given("coils_of_hooks", hooks, "the turns that both hooks are bent from")
    yield work(turns.turns_from, spring.total_coils + hooks, one, laid, figure="turns_to_wind")
    yield work(turns.cut_length_mm, plan.coil_length_mm, laid)
    yield work(turns.turns_run_back, plan.turns_to_wind, spring.total_coils + hooks)


def _torsion(plan: WindingPlan, _: Knowledge) -> Iterator[Working]:
    spring = plan.finished.spring
    assert isinstance(spring, TorsionSpring)
    wire = spring.wire_diameter_mm
    lengths = (geometry.turn_length_mm(mean, wire) for mean in (spring.mean_diameter_mm, _on_mandrel_mm(plan)))
    yield given("pitch_on_mandrel_mm", plan.pitch_on_mandrel_mm, CLOSE)
    laid = work(turns.turns_from, spring.active_coils, *lengths)
    yield laid.at("of a body")
    bodies = "the body" if spring.bodies == 1 else f"{spring.bodies} bodies"
    yield given("turns_to_wind", plan.turns_to_wind, f"those of {bodies}")
    opens = work(turns.opens_deg, laid.value, spring.active_coils)
    yield opens
    yield given(RUN_BACK, opens.value / 360.0, "that angle in turns")
    tails = f"the wire of the spring and {turns.TAILS_MM:g} mm to hold by (assumed)"
    yield given("cut_length_mm", plan.cut_length_mm, tails)


_OF_KIND: Mapping[str, Callable[[WindingPlan, Knowledge], Iterator[Working]]] = {
    "compression": _cylinder,
    "conical": _cone,
    "extension": _extension,
    "torsion": _torsion,
}
