"""The winding plan of a cone from one wire: ends and coils, then the curved mandrel, turns, bands, checks, steps."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import hypot

from sourcing.quantities import show_diameter
from sourcing.springs import pressed
from sourcing.springs.conical_lengths import growth_at_ends_mm, wire_length_of
from sourcing.springs.describe_conical import describe_cone
from sourcing.springs.end_pieces import wire_of_ends_mm
from sourcing.springs.geometry import turn_length_mm
from sourcing.springs.model import ConicalSpring
from sourcing.winding import turns
from sourcing.winding.acceptance import goes_in
from sourcing.winding.any_kind import cautions, cost, knowledge, too_short
from sourcing.winding.by_hand import crank
from sourcing.winding.conical.acceptance import accept_cone
from sourcing.winding.conical.mandrel import LaidCone, as_turned, laid_cone
from sourcing.winding.conical.notes import cone_notes
from sourcing.winding.conical.refusal import why_no_cone
from sourcing.winding.conical.room import EndDiameters, end_diameters_mm, tapers
from sourcing.winding.conical.search import ConicalDesign, judged, scan_cones, springs_at
from sourcing.winding.conical.serving import serving_ends
from sourcing.winding.conical.steps import ConeNumbers
from sourcing.winding.doubts import DIAMETER_POWER, NORMAL_95, diameter_sd_mm, mandrel_for_mm, rate_sd
from sourcing.winding.finishing import never
from sourcing.winding.heat import change_of_diameter, making, oven_reaches, stress_relief
from sourcing.winding.line import wanted_line
from sourcing.winding.model import Band, Made, Mandrel, Refusal, WindingPlan
from sourcing.winding.presetting import PRESS_INSTEAD, as_laid
from sourcing.winding.pressed_task import PressedTask, laid_length_sd_mm
from sourcing.winding.task import Given
from sourcing.winding.trials import Knowledge
from sourcing.winding.tries import taught_by_one, tries_from
from sourcing.winding.turns import SPARE_TURNS

COMPARED = 10
"""How many of the cones that stand highest are compared by chance."""


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
        return wire_length_of(self.before_heat) + wire_of_ends_mm(self.before_heat)

    @property
    def cut_length_mm(self) -> float:
        """The wire to cut; the spare turns are those of the small end, wound last."""
        wire_mm = self.before_heat.wire_diameter_mm
        return turns.cut_length_mm(self.coil_length_mm, turn_length_mm(self.laid.small_mm + wire_mm, wire_mm))


def plan(given: Given, mandrel_mm: float | None = None) -> WindingPlan | Refusal:
    """How to wind the need's cone from one wire, or why not. No rod of one diameter winds a cone.

    The cone is chosen as for a mandrel of steel; what it is wound on is in its chance and its bands.
    """
    task = _task(given)
    if isinstance(task, Refusal):
        return task
    if mandrel_mm is not None:
        why = (
            f"a mandrel of {show_diameter(mandrel_mm, task.bench.units)} throughout winds a cylinder: a cone wants one "
            "turned to its own profile"
        )
        return Refusal("cone-needs-its-own-mandrel", why)
    known = knowledge(given)
    on_steel = replace(known, wound_on=None)
    ends = end_diameters_mm(task, on_steel)
    if isinstance(ends, Refusal):
        return ends
    designs = scan_cones(task, ends)
    wound = _wound(task, on_steel, ends, designs)
    if isinstance(wound, Refusal):
        return wound
    wound = replace(wound, design=_spread(task, known, ends, wound.design.spring))
    return too_short(task, wound.cut_length_mm) or _plan(task, known, ends, designs, wound)


def quick(given: Given) -> ConicalDesign | None:
    """The best cone of a wire before its mandrel is thought of."""
    task = _task(given)
    ends = task if isinstance(task, Refusal) else end_diameters_mm(task, knowledge(given))
    if isinstance(task, Refusal) or isinstance(ends, Refusal):
        return None
    return min(scan_cones(task, ends), key=lambda each: each.order, default=None)


def _task(given: Given) -> PressedTask | Refusal:
    line = wanted_line(given.need, given.bench)
    if isinstance(line, Refusal):
        return line
    return PressedTask(given.need, given.bench, given.wire, given.tensile_strength_mpa, line)


def _wound(
    task: PressedTask, known: Knowledge, ends: EndDiameters, designs: Sequence[ConicalDesign]
) -> WoundCone | Refusal:
    """The best of the cones that stand highest, the snuggest of them compared by chance, and drawn closer still."""
    if not designs:
        why = (
            "bore, rod and index leave this wire no large end that is wider than the small one by enough to make a "
            "cone. Thinner wire, or a wider bore at the large end, would change it"
        )
        return Refusal("no-diameter-serves", why)
    best = min(design.standing for design in designs)
    if all(design.fit.fits == "no" for design in designs):
        return why_no_cone(designs, task.bench.units)
    leading = [each for each in designs if each.standing == best]
    leading.sort(key=lambda each: (not ends.clears_surely(each.spring), each.order))
    spread = (_spread(task, known, ends, each.spring) for each in _picked(leading))
    wound = [_laid(task, known, each) for each in spread]
    thick = [each for each in wound if each.laid.small_mm >= task.wire.wire_diameter_mm]
    if not thick:
        why = (
            "the mandrel's small end would be thinner than the wire: so tight a coil is not wound by hand. Thinner "
            "wire, or a wider small end, would change it"
        )
        return Refusal("no-diameter-serves", why)
    return _snug(task, known, ends, min(thick, key=lambda each: each.design.order))


def _picked(leading: Sequence[ConicalDesign]) -> Sequence[ConicalDesign]:
    """Some of the designs, more of the first than of the last."""
    steps = ((step / (COMPARED - 1)) ** 2 for step in range(COMPARED))
    return [leading[place] for place in sorted({round(step * (len(leading) - 1)) for step in steps})]


def _snug(task: PressedTask, known: Knowledge, ends: EndDiameters, wound: WoundCone) -> WoundCone:
    """The cone with its ends drawn close to their pocket, where one so drawn is better."""
    spring = wound.design.spring
    growths_mm = growth_at_ends_mm(spring)
    means_mm = (spring.mean_diameter_small_mm, spring.mean_diameter_large_mm)
    rooms = zip((ends.small, ends.large), means_mm, growths_mm, strict=True)
    small_mm, large_mm = (room.snug_mm(mean_mm, growth_mm) for room, mean_mm, growth_mm in rooms)
    pairs = ((small_mm, large_mm), (small_mm, means_mm[1]), (means_mm[0], large_mm))
    drawn = (each for pair in pairs if tapers(*pair) for each in springs_at(task, *pair))
    designs = [wound.design, *(_spread(task, known, ends, each) for each in drawn)]
    best = min(designs, key=lambda each: each.order)
    return wound if best is wound.design else _laid(task, known, best)


def _spread(task: PressedTask, known: Knowledge, ends: EndDiameters, spring: ConicalSpring) -> ConicalDesign:
    """The cone judged with the spread of its large end, whose springback is the least sure."""
    return judged(task, ends, spring, task.spread_on(known, _large_mandrel_mm(task, known, spring)))


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
    laid = laid_cone(as_laid(before, spring), known.mandrel_mm, known.pitch.share)
    pairs = ((before.mean_diameter_small_mm, laid.small_mm), (before.mean_diameter_large_mm, laid.large_mm))
    ratios = (turn_length_mm(mean, wire_mm) / turn_length_mm(on + wire_mm, wire_mm) for mean, on in pairs)
    dead_turns = (before.total_coils - before.active_coils) / 2 * sum(ratios)
    return WoundCone(design, before, laid, dead_turns)


def _made(task: PressedTask, spring: ConicalSpring, small_sd_mm: float, large_sd_mm: float, pitch_sd: float) -> Made:
    """A cone's figures with their bands."""
    figures = describe_cone(
        spring, [point.at_mm for point in task.need.working], making(task.wire.material, task.bench)
    )
    return Made(spring, figures, _bands(spring, small_sd_mm, large_sd_mm, pitch_sd))


def _bands(spring: ConicalSpring, small_sd_mm: float, large_sd_mm: float, pitch_sd: float) -> Mapping[str, Band]:
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
    rate, length_mm = pressed.rate_n_per_mm(spring), NORMAL_95 * laid_length_sd_mm(spring, pitch_sd)
    share = NORMAL_95 * hypot(DIAMETER_POWER * large_sd_mm / spring.mean_diameter_large_mm, rate_sd(spring))
    bands["rate_n_per_mm"] = Band(rate / (1 + share), rate * (1 + share))
    bands["free_length_mm"] = Band(spring.free_length_mm - length_mm, spring.free_length_mm + length_mm)
    return bands


def _pitch_sd(known: Knowledge, laid: LaidCone) -> float:
    """Of the pitch after release, relative, halfway between both ends."""
    return (known.pitch_sd(laid.small_mm) + known.pitch_sd(laid.large_mm)) / 2.0


def _made_before_heat(task: PressedTask, known: Knowledge, wound: WoundCone) -> Made:
    small, large = (known.finished_mean_sd_mm(each) for each in (wound.laid.small_mm, wound.laid.large_mm))
    return _made(task, wound.before_heat, small, large, _pitch_sd(known, wound.laid))


def _made_after_heat(task: PressedTask, known: Knowledge, wound: WoundCone) -> Made:
    small, large = (diameter_sd_mm(task, known, each) for each in (wound.laid.small_mm, wound.laid.large_mm))
    return _made(task, wound.design.spring, small, large, _pitch_sd(known, wound.laid))


def _plan(
    task: PressedTask, known: Knowledge, ends: EndDiameters, designs: Sequence[ConicalDesign], wound: WoundCone
) -> WindingPlan:
    """The sheet's figures and words."""
    need, bench, wire, spring = task.need, task.bench, task.wire, wound.design.spring
    made = _made_before_heat(task, known, wound)
    numbers = _numbers(task, known, wound, made)
    cut_mm, left_mm = wound.cut_length_mm, None if wire.spool is None else wire.spool.length_left_mm
    taught = taught_by_one(task, known, wound.laid.large_mm)
    serves, only = serving_ends(task, ends, designs)
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
        crank=numbers.crank,
        turns_run_back=numbers.turns_run_back,
        energy_let_go_n_mm=numbers.energy_let_go_n_mm,
        finished=made,
        after_heat=_made_after_heat(task, known, wound) if oven_reaches(wire.material, bench) else None,
        wanted=spring,
        fit=wound.design.fit,
        stress_in_use_mpa=wound.design.stress_mpa,
        serves=serves,
        only=only,
        heat=numbers.heat,
        accept=accept_cone(spring, wound.design.fit, need, bench, known),
        goes_in=goes_in(spring, need, bench),
        numbers=numbers,
        steps=numbers.steps(need, bench),
        cautions=tuple(cautions(task, numbers)),
        never=never(numbers.wire.material, numbers.mandrel, numbers.heat.temperature_c is not None, bench),
        tries=tries_from(task, wound.design.fit.chance, _spread(task, taught, ends, spring).fit.chance),
        cost=cost(wire.spool, need.quantity * cut_mm),
        units=bench.units,
        notes=tuple(cone_notes(task, known, wound.design, wound.before_heat, wound.laid, wound.cut_length_mm)),
    )


def _numbers(task: PressedTask, known: Knowledge, wound: WoundCone, made: Made) -> ConeNumbers:
    """What the steps say; the diameter as wound is that of the large end."""
    before, spring = wound.before_heat, wound.design.spring
    mandrel = Mandrel("turned", None, as_turned(wound.laid))
    return ConeNumbers(
        wire=task.wire,
        known=known.on(wound.laid.large_mm),
        mandrel=mandrel,
        spring=spring,
        cut_length_mm=wound.cut_length_mm,
        active_turns=wound.laid.turns,
        dead_turns=wound.dead_turns,
        spare_turns=SPARE_TURNS,
        pitch_on_mandrel_mm=wound.laid.pitch_mm,
        crank=crank(known.on(wound.laid.large_mm), mandrel, task.bench.hand_winding),
        turns_opened=turns.turns_run_back(wound.turns, before.total_coils),
        wound_coils=before.total_coils,
        wound_outside=made.bands["outside_diameter_large_mm"],
        laid=wound.laid,
        wound_ends=(made.bands["outside_diameter_small_mm"], made.bands["outside_diameter_large_mm"]),
        wound_outside_mm=before.outside_diameter_large_mm,
        stress_at_solid_share=describe_cone(spring).shear_stress_at_solid_mpa / task.tensile_strength_mpa,
        heat=stress_relief(task.wire.material, task.bench, PRESS_INSTEAD),
    )
