"""The winding plan of a cylindrical compression spring from one wire, or why there is none.

1. The need's forces make a line (line.py); each mean diameter in the pocket then makes a spring, judged (search.py).
2. The spool's trials say how the wire springs back (trials.py), and so which mandrel gives what (mandrel.py).
3. From the best of those follow turns, pitch, wire, bands, checks and steps.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sourcing.quantities import show_length
from sourcing.springs.describe import describe
from sourcing.springs.model import CompressionSpring
from sourcing.springs.notes import material_note
from sourcing.winding.acceptance import accept, goes_in
from sourcing.winding.any_kind import cautions, cost, fit_notes, knowledge, too_short, wire_notes
from sourcing.winding.by_hand import crank
from sourcing.winding.finishing import never
from sourcing.winding.heat import oven_reaches, stress_relief
from sourcing.winding.line import wanted_line
from sourcing.winding.making import TOO_OPEN_SHARE, Laid, as_wound, laid, made_after_heat, made_before_heat
from sourcing.winding.mandrel import Wound, wound_for
from sourcing.winding.model import Refusal, WindingPlan
from sourcing.winding.presetting import PRESS_INSTEAD, as_laid
from sourcing.winding.pressed_task import Cylinder, PressedTask
from sourcing.winding.search import MOST_STEPS, QUICK_STEPS, diameters_mm, scan, serving
from sourcing.winding.steps import PressedNumbers
from sourcing.winding.task import EASY_INDEX, Given
from sourcing.winding.trials import Knowledge
from sourcing.winding.tries import tries
from sourcing.winding.turns import SPARE_TURNS


def plan(given: Given, mandrel_mm: float | None = None) -> WindingPlan | Refusal:
    """How to wind the need's spring from one wire, on the best mandrel or on the one given; or why not."""
    scanned = _scanned(given)
    if isinstance(scanned, Refusal):
        return scanned
    task, designs = scanned
    known = knowledge(given)
    wound = wound_for(task, known, designs, mandrel_mm)
    if isinstance(wound, Refusal):
        return wound
    return _too_short(task, wound, known) or _plan(task, known, designs, wound)


def quick(given: Given) -> Cylinder | None:
    """The best spring of a wire before its mandrel is thought of."""
    scanned = _scanned(given, QUICK_STEPS)
    return None if isinstance(scanned, Refusal) else min(scanned[1], key=lambda each: each.order)


def _scanned(given: Given, most_steps: int = MOST_STEPS) -> tuple[PressedTask, tuple[Cylinder, ...]] | Refusal:
    """The task, and the best spring at each mean diameter that has room."""
    line = wanted_line(given.need, given.bench)
    if isinstance(line, Refusal):
        return line
    between = diameters_mm(given.need, given.bench, given.wire.wire_diameter_mm)
    if isinstance(between, Refusal):
        return between
    task = PressedTask(given.need, given.bench, given.wire, given.tensile_strength_mpa, line)
    return task, scan(task, *between, most_steps=most_steps)


def _too_short(task: PressedTask, wound: Wound[CompressionSpring], known: Knowledge) -> Refusal | None:
    return too_short(task, _laid(known, wound).cut_length_mm)


def _laid(known: Knowledge, wound: Wound[CompressionSpring]) -> Laid:
    """What is laid for the spring before heat, as long as the first pressing wants it."""
    return laid(known, as_laid(as_wound(known, wound), wound.design.spring), wound.diameter_mm)


def _plan(
    task: PressedTask, known: Knowledge, designs: Sequence[Cylinder], wound: Wound[CompressionSpring]
) -> WindingPlan:
    """The sheet's figures and words."""
    need, bench, wire, spring = task.need, task.bench, task.wire, wound.design.spring
    numbers, coil = _numbers(task, known, wound), _laid(known, wound)
    serves, only = serving(task, designs)
    chances = tries(task, known, wound)
    spool = wire.spool
    left_mm = None if spool is None else spool.length_left_mm
    return WindingPlan(
        wire=wire.id,
        material=wire.material.name,
        wire_diameter_mm=wire.wire_diameter_mm,
        cut_length_mm=coil.cut_length_mm,
        coil_length_mm=coil.coil_length_mm,
        wire_left_mm=None if left_mm is None else left_mm - need.quantity * coil.cut_length_mm,
        mandrel=wound.mandrel,
        turns_to_wind=coil.turns,
        turns_to_spare=SPARE_TURNS,
        pitch_on_mandrel_mm=coil.pitch_mm,
        pull_n=numbers.pull_n,
        crank_moment_n_mm=numbers.crank_moment_n_mm,
        crank=numbers.crank,
        turns_run_back=numbers.turns_run_back,
        energy_let_go_n_mm=numbers.energy_let_go_n_mm,
        finished=made_before_heat(task, known, wound),
        after_heat=made_after_heat(task, known, wound) if oven_reaches(wire.material, bench) else None,
        wanted=spring,
        fit=wound.design.fit,
        stress_in_use_mpa=wound.design.stress_mpa,
        serves=serves,
        only=only,
        heat=numbers.heat,
        accept=accept(spring, wound.design.fit, need, bench, known, wound.diameter_mm),
        goes_in=goes_in(spring, need, bench),
        numbers=numbers,
        steps=numbers.steps(need, bench),
        cautions=tuple(cautions(task, numbers)),
        never=never(numbers.wire.material, numbers.mandrel, numbers.heat.temperature_c is not None, bench),
        tries=chances,
        cost=cost(spool, need.quantity * coil.cut_length_mm),
        units=bench.units,
        notes=tuple(_notes(task, known, wound, coil)),
    )


def _numbers(task: PressedTask, known: Knowledge, wound: Wound[CompressionSpring]) -> PressedNumbers:
    """What the steps say."""
    before, spring = as_wound(known, wound), wound.design.spring
    coil = _laid(known, wound)
    return PressedNumbers(
        wire=task.wire,
        known=known.on(wound.diameter_mm),
        mandrel=wound.mandrel,
        spring=spring,
        cut_length_mm=coil.cut_length_mm,
        active_turns=coil.active_turns,
        dead_turns=coil.dead_turns,
        spare_turns=SPARE_TURNS,
        pitch_on_mandrel_mm=coil.pitch_mm,
        crank=crank(known.on(wound.diameter_mm), wound.mandrel, task.bench.hand_winding),
        turns_opened=coil.run_back(before.total_coils),
        wound_coils=before.total_coils,
        wound_outside=made_before_heat(task, known, wound).bands["outside_diameter_mm"],
        wound_outside_mm=before.outside_diameter_mm,
        stress_at_solid_share=describe(spring).shear_stress_at_solid_mpa / task.tensile_strength_mpa,
        heat=stress_relief(task.wire.material, task.bench, PRESS_INSTEAD),
    )


def _notes(task: PressedTask, known: Knowledge, wound: Wound[CompressionSpring], coil: Laid) -> Iterable[str]:
    """Doubts, and what was assumed."""
    spring = wound.design.spring
    yield from material_note(task.wire.material)
    yield from wire_notes(task, known, coil.cut_length_mm)
    if coil.too_open_mm > TOO_OPEN_SHARE * spring.free_length_mm:
        yield (
            "Laid wire against wire its pitch still opens more than wanted: it comes out about "
            f"{show_length(coil.too_open_mm, task.bench.units)} too long, to be pressed shorter."
        )
    if spring.spring_index > EASY_INDEX:
        yield f"A spring index of {spring.spring_index:.1f} is more than the {EASY_INDEX:g} that winds easily by hand."
    yield from fit_notes(wound.design.fit, task, known)
