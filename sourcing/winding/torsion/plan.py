"""The winding plan of a torsion spring from one wire, or why there is none.

1. The need's torques make a rate; each mean diameter in the pocket then makes a spring, judged (torsion_task.py).
2. The spool's trials say how the wire springs back (trials.py), and so which mandrel gives what (mandrel.py).
3. From the best of those follow turns, where to stop the legs, wire, bands, checks and steps.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sourcing.springs.model import TorsionSpring
from sourcing.springs.notes import material_note
from sourcing.winding.any_kind import assumed_of_torsion, cautions, cost, knowledge, life_note, too_short, wire_notes
from sourcing.winding.by_hand import crank
from sourcing.winding.finishing import never
from sourcing.winding.heat import oven_reaches, stress_relief
from sourcing.winding.mandrel import Wound, wound_for
from sourcing.winding.model import Refusal, WindingPlan
from sourcing.winding.search import MOST_STEPS, QUICK_STEPS, diameters_mm, scan, serving
from sourcing.winding.setting_up import openings
from sourcing.winding.task import EASY_INDEX, Design, Given
from sourcing.winding.torsion.acceptance import accept_torsion, torsion_goes_in
from sourcing.winding.torsion.making import LaidBody, as_wound, laid, made_after_heat, made_before_heat
from sourcing.winding.torsion.steps import WIND_UP_INSTEAD, TorsionNumbers
from sourcing.winding.torsion.task import TorsionTask, no_wire_serves, wanted_rate
from sourcing.winding.trials import Knowledge
from sourcing.winding.tries import tries

TorsionDesign = Design[TorsionSpring]


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
    body = laid(as_wound(known, wound), wound.diameter_mm)
    return too_short(task, body.cut_length_mm) or _plan(task, known, designs, wound, body)


def quick(given: Given) -> TorsionDesign | None:
    """The best spring of a wire before its mandrel is thought of."""
    scanned = _scanned(given, QUICK_STEPS)
    return None if isinstance(scanned, Refusal) else min(scanned[1], key=lambda each: each.order)


def _scanned(given: Given, most_steps: int = MOST_STEPS) -> tuple[TorsionTask, tuple[TorsionDesign, ...]] | Refusal:
    """The task, and the best spring at each mean diameter that has room."""
    if refusal := no_wire_serves(given.need, given.bench):
        return refusal
    rate = wanted_rate(given.need, given.bench)
    if isinstance(rate, Refusal):
        return rate
    between = diameters_mm(given.need, given.bench, given.wire.wire_diameter_mm)
    if isinstance(between, Refusal):
        return between
    task = TorsionTask(given.need, given.bench, given.wire, given.tensile_strength_mpa, rate)
    return task, scan(task, *between, most_steps=most_steps)


def _plan(
    task: TorsionTask, known: Knowledge, designs: Sequence[TorsionDesign], wound: Wound[TorsionSpring], body: LaidBody
) -> WindingPlan:
    """The sheet's figures and words."""
    need, bench, wire, spring = task.need, task.bench, task.wire, wound.design.spring
    numbers = _numbers(task, known, wound, body)
    serves, only = serving(task, designs)
    spool = wire.spool
    left_mm = None if spool is None else spool.length_left_mm
    return WindingPlan(
        wire=wire.id,
        material=wire.material.name,
        wire_diameter_mm=wire.wire_diameter_mm,
        cut_length_mm=body.cut_length_mm,
        coil_length_mm=body.coil_length_mm,
        wire_left_mm=None if left_mm is None else left_mm - need.quantity * body.cut_length_mm,
        mandrel=wound.mandrel,
        turns_to_wind=spring.bodies * body.turns,
        turns_to_spare=0.0,
        pitch_on_mandrel_mm=wire.wire_diameter_mm,
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
        accept=accept_torsion(spring, wound.design.fit, openings(numbers.known, wound.diameter_mm)[0], need, bench),
        goes_in=torsion_goes_in(spring, need, bench),
        numbers=numbers,
        steps=numbers.steps(need, bench),
        cautions=tuple(cautions(task, numbers)),
        never=never(numbers.wire.material, numbers.mandrel, numbers.heat.temperature_c is not None, bench),
        tries=tries(task, known, wound),
        cost=cost(spool, need.quantity * body.cut_length_mm),
        units=bench.units,
        notes=tuple(_notes(task, known, wound, body)),
    )


def _numbers(task: TorsionTask, known: Knowledge, wound: Wound[TorsionSpring], body: LaidBody) -> TorsionNumbers:
    """What the steps say."""
    made, spring = made_before_heat(task, known, wound), as_wound(known, wound)
    return TorsionNumbers(
        wire=task.wire,
        known=known.on(wound.diameter_mm),
        mandrel=wound.mandrel,
        cut_length_mm=body.cut_length_mm,
        crank=crank(known.on(wound.diameter_mm), wound.mandrel, task.bench.hand_winding, spring.bodies),
        turns_opened=body.opens_deg / 360.0,
        heat=stress_relief(task.wire.material, task.bench, WIND_UP_INSTEAD),
        spring=wound.design.spring,
        wound=spring,
        laid=body,
        wound_outside=made.bands["outside_diameter_mm"],
        wound_angle=made.bands.get("free_angle_deg"),
    )


def _notes(task: TorsionTask, known: Knowledge, wound: Wound[TorsionSpring], body: LaidBody) -> Iterable[str]:
    """Doubts, and what was assumed."""
    spring = wound.design.spring
    yield from material_note(task.wire.material)
    yield from wire_notes(task, known, body.cut_length_mm)
    if spring.spring_index > EASY_INDEX:
        yield f"A spring index of {spring.spring_index:.1f} is more than the {EASY_INDEX:g} that winds easily by hand."
    if not spring.legs:
        yield "No legs are given: they were taken to bend nothing. Each leg makes the spring softer than planned."
    rod = "" if task.need.pocket.rod_mm is None else " and on the rod"
    yield (
        f"The rate is the theory's, without friction: coils that rub on each other{rod} take up to 6 % of it. A drop "
        "of oil helps (common practice, no source)."
    )
    yield from life_note(wound.design.fit)
    yield assumed_of_torsion(task)
