"""The winding plan of a cone from one wire: ends and coils, then the curved mandrel, turns, bands, checks, steps."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import hypot

from sourcing.quantities import show_diameter, show_length
from sourcing.springs import pressed
from sourcing.springs.conical_lengths import wire_length_of
from sourcing.springs.describe_conical import describe_cone
from sourcing.springs.geometry import turn_length_mm
from sourcing.springs.model import ConicalSpring
from sourcing.springs.notes import material_note
from sourcing.winding import springback, turns
from sourcing.winding.acceptance import goes_in
from sourcing.winding.any_kind import cautions, cost, fit_notes, knowledge, too_short, wire_notes
from sourcing.winding.conical_acceptance import accept_cone, closing_said
from sourcing.winding.conical_mandrel import LaidCone, laid_cone, straight_taper_error_mm
from sourcing.winding.conical_search import ConicalDesign, EndDiameters, end_diameters_mm, judged, scan_cones
from sourcing.winding.conical_steps import cone_steps
from sourcing.winding.doubts import DIAMETER_POWER, diameter_sd_mm, mandrel_for_mm, rate_sd
from sourcing.winding.heat import change_of_diameter, oven_reaches, stress_relief
from sourcing.winding.line import wanted_line
from sourcing.winding.making import NORMAL_95
from sourcing.winding.mandrel import TRIED_AT
from sourcing.winding.model import Band, Made, Mandrel, Refusal, WindingPlan
from sourcing.winding.pressed_task import PressedTask, free_length_sd_mm
from sourcing.winding.search import refusal_of
from sourcing.winding.steps import Numbers, pull_n, yield_force_n
from sourcing.winding.task import Given
from sourcing.winding.trials import Knowledge
from sourcing.winding.tries import taught_by_one, tries_from
from sourcing.winding.turns import SPARE_TURNS


@dataclass(frozen=True, slots=True)
class WoundCone:
    """A cone with what is laid on its mandrel; `before_heat` is the spring as it comes off it."""

    design: ConicalDesign
    before_heat: ConicalSpring
    laid: LaidCone
    dead_turns: float

    @property
    def turns(self) -> float:
        """The turns of the crank that become the spring."""
        return self.laid.turns + self.dead_turns

    @property
    def coil_length_mm(self) -> float:
        """The wire that becomes the spring."""
        return wire_length_of(self.before_heat)

    @property
    def cut_length_mm(self) -> float:
        """The wire to cut; the spare turns are those of the small end, wound last."""
        wire_mm = self.before_heat.wire_diameter_mm
        return turns.cut_length_mm(self.coil_length_mm, turn_length_mm(self.laid.small_mm + wire_mm, wire_mm))


def plan(given: Given, mandrel_mm: float | None = None) -> WindingPlan | Refusal:
    """How to wind the need's cone from one wire, or why not. No rod of one diameter winds a cone."""
    task = _task(given)
    if isinstance(task, Refusal):
        return task
    if mandrel_mm is not None:
        why = (
            f"a mandrel of {show_diameter(mandrel_mm, task.bench.units)} throughout winds a cylinder: a cone wants one "
            "turned to its own profile"
        )
        return Refusal("cone-needs-its-own-mandrel", why)
    ends = end_diameters_mm(task)
    if isinstance(ends, Refusal):
        return ends
    designs, known = scan_cones(task, ends), knowledge(task)
    wound = _wound(task, known, designs)
    if isinstance(wound, Refusal):
        return wound
    return too_short(task, wound.cut_length_mm) or _plan(task, known, ends, wound)


def quick(given: Given) -> ConicalDesign | None:
    """The best cone of a wire before its mandrel is thought of."""
    task = _task(given)
    ends = task if isinstance(task, Refusal) else end_diameters_mm(task)
    if isinstance(task, Refusal) or isinstance(ends, Refusal):
        return None
    return min(scan_cones(task, ends), key=lambda each: each.order, default=None)


def _task(given: Given) -> PressedTask | Refusal:
    line = wanted_line(given.need, given.bench)
    if isinstance(line, Refusal):
        return line
    return PressedTask(given.need, given.bench, given.wire, given.tensile_strength_mpa, line)


def _wound(task: PressedTask, known: Knowledge, designs: Sequence[ConicalDesign]) -> WoundCone | Refusal:
    """The best of the cones that stand highest, by chance and then by stress."""
    if not designs:
        why = "no pair of end diameters that bore, rod and index leave makes a cone of this wire"
        return Refusal("no-diameter-serves", why)
    best = min(design.standing for design in designs)
    leading = sorted((each for each in designs if each.standing == best), key=lambda each: each.stress_mpa)
    if leading[0].fit.fits == "no":
        return _why_none(designs)
    picked = sorted({round(at * (len(leading) - 1) / (TRIED_AT - 1)) for at in range(TRIED_AT)})
    wire_mm = task.wire.wire_diameter_mm
    wound = [_laid(task, known, _spread(task, known, each.spring)) for each in (leading[at] for at in picked)]
    thick = [each for each in wound if each.laid.small_mm >= wire_mm]
    if not thick:
        why = "the mandrel's small end would be thinner than the wire: so tight a coil is not wound by hand"
        return Refusal("no-diameter-serves", why)
    return min(thick, key=lambda each: each.design.order)


def _why_none(designs: Sequence[ConicalDesign]) -> Refusal:
    """The refusal in the words of the cone that comes nearest."""
    nearest = min(designs, key=lambda each: (sum(limit.past for limit in each.fit.broken if limit.hard), each.order))
    return Refusal("no-diameter-serves", "no cone of this wire serves; at the nearest, " + refusal_of(nearest.fit))


def _spread(task: PressedTask, known: Knowledge, spring: ConicalSpring) -> ConicalDesign:
    """The cone judged with the spread of its large end, whose springback is the least sure."""
    return judged(task, spring, task.spread_on(known, _large_mandrel_mm(task, known, spring)))


def _large_mandrel_mm(task: PressedTask, known: Knowledge, spring: ConicalSpring) -> float:
    return mandrel_for_mm(task, known, spring.mean_diameter_large_mm)


def _laid(task: PressedTask, known: Knowledge, design: ConicalDesign) -> WoundCone:
    """What is laid for a design: heat is taken back first, then each coil's springback."""
    spring, wire_mm = design.spring, design.spring.wire_diameter_mm
    opened = 1 / (1 + change_of_diameter(task.wire.material, task.bench)[0])
    before = replace(
        spring,
        mean_diameter_small_mm=spring.mean_diameter_small_mm * opened,
        mean_diameter_large_mm=spring.mean_diameter_large_mm * opened,
        active_coils=spring.active_coils / opened,
        total_coils=spring.total_coils / opened,
    )
    laid = laid_cone(before, known.mandrel_mm)
    pairs = ((before.mean_diameter_small_mm, laid.small_mm), (before.mean_diameter_large_mm, laid.large_mm))
    ratios = (turn_length_mm(mean, wire_mm) / turn_length_mm(on + wire_mm, wire_mm) for mean, on in pairs)
    dead_turns = (before.total_coils - before.active_coils) / 2 * sum(ratios)
    return WoundCone(design, before, laid, dead_turns)


def _made(spring: ConicalSpring, small_sd_mm: float, large_sd_mm: float) -> Made:
    """A cone's figures with their bands."""
    return Made(spring, describe_cone(spring), _bands(spring, small_sd_mm, large_sd_mm))


def _bands(spring: ConicalSpring, small_sd_mm: float, large_sd_mm: float) -> Mapping[str, Band]:
    """The figures with a known doubt, between their 95 % bounds; the rate's is taken from the large end."""
    bands: dict[str, Band] = {}
    wire_mm = spring.wire_diameter_mm
    ends = (
        ("small", spring.mean_diameter_small_mm, small_sd_mm),
        ("large", spring.mean_diameter_large_mm, large_sd_mm),
    )
    for end, mean_mm, sd_mm in ends:
        for name, value in (("mean", mean_mm), ("outside", mean_mm + wire_mm), ("inside", mean_mm - wire_mm)):
            bands[f"{name}_diameter_{end}_mm"] = Band(value - NORMAL_95 * sd_mm, value + NORMAL_95 * sd_mm)
    rate, length_mm = pressed.rate_n_per_mm(spring), NORMAL_95 * free_length_sd_mm(spring)
    share = NORMAL_95 * hypot(DIAMETER_POWER * large_sd_mm / spring.mean_diameter_large_mm, rate_sd(spring))
    bands["rate_n_per_mm"] = Band(rate / (1 + share), rate * (1 + share))
    bands["free_length_mm"] = Band(spring.free_length_mm - length_mm, spring.free_length_mm + length_mm)
    return bands


def _made_before_heat(known: Knowledge, wound: WoundCone) -> Made:
    small, large = (known.finished_mean_sd_mm(each) for each in (wound.laid.small_mm, wound.laid.large_mm))
    return _made(wound.before_heat, small, large)


def _made_after_heat(task: PressedTask, known: Knowledge, wound: WoundCone) -> Made:
    small, large = (diameter_sd_mm(task, known, each) for each in (wound.laid.small_mm, wound.laid.large_mm))
    return _made(wound.design.spring, small, large)


def _plan(task: PressedTask, known: Knowledge, ends: EndDiameters, wound: WoundCone) -> WindingPlan:
    """The sheet's figures and words."""
    need, bench, wire, spring = task.need, task.bench, task.wire, wound.design.spring
    made = _made_before_heat(known, wound)
    numbers = _numbers(task, known, wound, made)
    cut_mm, left_mm = wound.cut_length_mm, None if wire.spool is None else wire.spool.length_left_mm
    taught = taught_by_one(task, known, wound.laid.large_mm)
    outside = (made.bands["outside_diameter_small_mm"], made.bands["outside_diameter_large_mm"])
    return WindingPlan(
        wire=wire.id,
        material=wire.material.name,
        wire_diameter_mm=wire.wire_diameter_mm,
        cut_length_mm=cut_mm,
        coil_length_mm=wound.coil_length_mm,
        wire_left_mm=None if left_mm is None else left_mm - need.quantity * cut_mm,
        mandrel=numbers.mandrel,
        turns_to_wind=wound.turns,
        turns_to_spare=SPARE_TURNS,
        pitch_on_mandrel_mm=wound.laid.pitch_mm,
        pull_n=numbers.pull_n,
        crank_moment_n_mm=numbers.crank_moment_n_mm,
        turns_run_back=numbers.turns_run_back,
        energy_let_go_n_mm=turns.energy_let_go_n_mm(numbers.crank_moment_n_mm, numbers.turns_run_back),
        finished=made,
        after_heat=_made_after_heat(task, known, wound) if oven_reaches(wire.material, bench) else None,
        wanted=spring,
        fit=wound.design.fit,
        stress_in_use_mpa=wound.design.stress_mpa,
        serves=(),
        only=False,
        heat=numbers.heat,
        accept=accept_cone(spring, ends, need, bench),
        goes_in=goes_in(spring, need, bench),
        steps=cone_steps(numbers, wound.laid, outside, need, bench),
        cautions=tuple(cautions(task, numbers)),
        tries=tries_from(task, wound.design.fit.chance, _spread(task, taught, spring).fit.chance),
        cost=cost(wire.spool, need.quantity * cut_mm),
        units=bench.units,
        lessons=known.lessons,
        notes=tuple(_notes(task, known, wound)),
    )


def _numbers(task: PressedTask, known: Knowledge, wound: WoundCone, made: Made) -> Numbers:
    """What the steps say; the diameter as wound is that of the large end."""
    before, spring = wound.before_heat, wound.design.spring
    yield_n = yield_force_n(known.flow_stress_mpa, known.wire_diameter_mm)
    return Numbers(
        wire=task.wire,
        mandrel=Mandrel("turned", None, wound.laid.points),
        spring=spring,
        cut_length_mm=wound.cut_length_mm,
        active_turns=wound.laid.turns,
        dead_turns=wound.dead_turns,
        spare_turns=SPARE_TURNS,
        pitch_on_mandrel_mm=wound.laid.pitch_mm,
        pull_n=pull_n(yield_n),
        yield_n=yield_n,
        crank_moment_n_mm=springback.plastic_moment_n_mm(known.flow_stress_mpa, known.wire_diameter_mm),
        turns_run_back=turns.turns_run_back(wound.turns, before.total_coils),
        wound_coils=before.total_coils,
        wound_outside=made.bands["outside_diameter_large_mm"],
        wound_outside_mm=before.outside_diameter_large_mm,
        stress_at_solid_share=describe_cone(spring).shear_stress_at_solid_mpa / task.tensile_strength_mpa,
        heat=stress_relief(task.wire.material, task.bench),
    )


def _notes(task: PressedTask, known: Knowledge, wound: WoundCone) -> Iterable[str]:
    """Doubts, and what was assumed."""
    units, laid = task.bench.units, wound.laid
    yield from material_note(task.wire.material)
    yield from wire_notes(task, known, wound.cut_length_mm)
    thin_mm = straight_taper_error_mm(laid)
    yield (
        "No rod on hand winds a cone: turn the mandrel to the list. A straight taper between its two ends is up to "
        f"{show_length(thin_mm, units)} too thin ({show_diameter(thin_mm / 2, units)} in radius), and the coils in its "
        "middle come out too small by more than that."
    )
    yield closing_said(wound.design.spring, task.bench)
    yield from fit_notes(wound.design.fit)
