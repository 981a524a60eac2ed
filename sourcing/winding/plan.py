"""The winding plan of one wire for one need, or why there is none.

1. What may not be wound by hand, or cannot be worked out, is refused.
2. The need's forces make a line (line.py); each mean diameter in the pocket then makes a spring, judged (search.py).
3. The spool's trials say how the wire springs back (trials.py), and so which mandrel gives what (mandrel.py).
4. From the best of those follow turns, pitch, wire, bands, checks and steps.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_length
from sourcing.springs.describe import describe
from sourcing.springs.notes import material_note
from sourcing.stock.model import Bench, Spool
from sourcing.winding import mandrel as mandrels
from sourcing.winding import springback, turns
from sourcing.winding.acceptance import accept, goes_in
from sourcing.winding.any_kind import cautions, cost, fit_notes, knowledge, too_short, wire_notes
from sourcing.winding.conical_plan import plan_cone
from sourcing.winding.heat import oven_reaches, stress_relief
from sourcing.winding.line import wanted_line
from sourcing.winding.making import SPARE_TURNS, Laid, as_wound, laid, made_after_heat, made_before_heat
from sourcing.winding.mandrel import Wound
from sourcing.winding.model import Mandrel, Refusal, WindingPlan, Wire, wire_of
from sourcing.winding.search import EASY_INDEX, Design, Task, diameters_mm, scan, serving, why_none
from sourcing.winding.steps import Numbers, pull_n, steps, yield_force_n
from sourcing.winding.trials import Knowledge
from sourcing.winding.tries import tries

THINNEST_WIRE_MM = 0.08
"""The thinnest wire that a handbook for hand tools winds."""

TOO_OPEN_SHARE = 0.01
"""The share of the free length from which a coil that opens too far is spoken of."""


def plan_winding(
    need: Need, wire: Wire | Spool, bench: Bench, mandrel_mm: float | None = None
) -> WindingPlan | Refusal:
    """How to wind the need's spring from one wire, on the best mandrel or on the one given; or why not."""
    wire = wire_of(wire) if isinstance(wire, Spool) else wire
    task = refused_by_size(wire, bench) or task_for(need, wire, bench)
    if isinstance(task, Refusal):
        return task
    if need.kind == "conical":
        return plan_cone(task, mandrel_mm)
    between = diameters_mm(need, bench, wire.wire_diameter_mm)
    if isinstance(between, Refusal):
        return between
    known = knowledge(task)
    designs = scan(task, *between)
    wound = _wound(task, known, designs, mandrel_mm)
    if isinstance(wound, Refusal):
        return wound
    return _too_short(task, wound, known) or _plan(task, known, designs, wound)


def refused_by_size(wire: Wire, bench: Bench) -> Refusal | None:
    """The refusal of wire that is too thick or too thin to wind by hand."""
    size = show_diameter(wire.wire_diameter_mm, bench.units)
    stop_mm = bench.hand_winding.stop_mm
    if wire.wire_diameter_mm >= stop_mm:
        why = (
            f"wire of {size} is not wound by hand: the bench stops at {show_diameter(stop_mm, bench.units)}, for bent "
            "wire of that size throws the crank with more than an arm holds"
        )
        return Refusal("hand-winding-limit", why)
    if wire.wire_diameter_mm < THINNEST_WIRE_MM:
        why = f"wire of {size} is thinner than hand tools wind ({show_diameter(THINNEST_WIRE_MM, bench.units)})"
        return Refusal("wire-too-thin", why)
    return None


def task_for(need: Need, wire: Wire, bench: Bench) -> Task | Refusal:
    """The wire and the line of force it must meet; refused where strength or line is not known."""
    strength_mpa = wire.tensile_strength_mpa
    if strength_mpa is None:
        why = (
            f"the strength of {wire.material.name} is not listed for wire of "
            f"{show_diameter(wire.wire_diameter_mm, bench.units)}, so neither its springback nor what it stands can be "
            "worked out"
        )
        return Refusal("strength-unknown", why)
    line = wanted_line(need, bench)
    return line if isinstance(line, Refusal) else Task(need, bench, wire, strength_mpa, line)


def _wound(task: Task, known: Knowledge, designs: Sequence[Design], mandrel_mm: float | None) -> Wound | Refusal:
    """The mandrel and what it gives."""
    if mandrel_mm is None:
        if all(design.fit.fits == "no" for design in designs):
            return why_none(designs, task.bench.units)
        wound = mandrels.choose(task, known, designs)
        if wound is None:
            why = "the mandrel would be thinner than the wire: so tight a coil is not wound by hand"
            return Refusal("no-diameter-serves", why)
        return why_none([wound.design], task.bench.units) if wound.design.fit.fits == "no" else wound
    size, wire_mm = show_diameter(mandrel_mm, task.bench.units), task.wire.wire_diameter_mm
    if mandrel_mm < wire_mm:
        return Refusal("mandrel-too-thin", f"a mandrel of {size} is thinner than the wire")
    kind = "rod" if mandrel_mm in task.bench.rods_mm else "turned"
    wound = mandrels.wound_on(task, known, Mandrel(kind, mandrel_mm))
    if wound is None:
        return Refusal("mandrel-too-large", f"on a mandrel of {size} this wire does not yield: it would open fully")
    if wound.design.fit.fits == "no":
        return Refusal(
            "no-diameter-serves",
            f"the mandrel of {size} does not serve: {why_none([wound.design], task.bench.units).why}",
        )
    return wound


def _too_short(task: Task, wound: Wound, known: Knowledge) -> Refusal | None:
    return too_short(task, laid(as_wound(known, wound), wound.diameter_mm).cut_length_mm)


def _plan(task: Task, known: Knowledge, designs: Sequence[Design], wound: Wound) -> WindingPlan:
    """The sheet's figures and words."""
    need, bench, wire, spring = task.need, task.bench, task.wire, wound.design.spring
    numbers, coil = _numbers(task, known, wound), laid(as_wound(known, wound), wound.diameter_mm)
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
        turns_run_back=numbers.turns_run_back,
        energy_let_go_n_mm=turns.energy_let_go_n_mm(numbers.crank_moment_n_mm, numbers.turns_run_back),
        finished=made_before_heat(known, wound),
        after_heat=made_after_heat(task, known, wound) if oven_reaches(wire.material, bench) else None,
        wanted=spring,
        fit=wound.design.fit,
        stress_at_shortest_mpa=wound.design.stress_mpa,
        serves=serves,
        only=only,
        heat=numbers.heat,
        accept=accept(spring, need, bench, known, wound.diameter_mm),
        goes_in=goes_in(spring, need, bench),
        steps=steps(numbers, need, bench),
        cautions=tuple(cautions(task, numbers)),
        tries=chances,
        cost=cost(spool, need.quantity * coil.cut_length_mm),
        units=bench.units,
        lessons=known.lessons,
        notes=tuple(_notes(task, known, wound, coil)),
    )


def _numbers(task: Task, known: Knowledge, wound: Wound) -> Numbers:
    """What the steps say."""
    before, spring = as_wound(known, wound), wound.design.spring
    coil = laid(before, wound.diameter_mm)
    yield_n = yield_force_n(known.flow_stress_mpa, known.wire_diameter_mm)
    return Numbers(
        wire=task.wire,
        mandrel=wound.mandrel,
        spring=spring,
        cut_length_mm=coil.cut_length_mm,
        active_turns=coil.active_turns,
        dead_turns=coil.dead_turns,
        spare_turns=SPARE_TURNS,
        pitch_on_mandrel_mm=coil.pitch_mm,
        pull_n=pull_n(yield_n),
        yield_n=yield_n,
        crank_moment_n_mm=springback.plastic_moment_n_mm(known.flow_stress_mpa, known.wire_diameter_mm),
        turns_run_back=coil.run_back(before.total_coils),
        wound_coils=before.total_coils,
        wound_outside=made_before_heat(known, wound).bands["outside_diameter_mm"],
        wound_outside_mm=before.outside_diameter_mm,
        stress_at_solid_share=describe(spring).shear_stress_at_solid_mpa / task.tensile_strength_mpa,
        heat=stress_relief(task.wire.material, task.bench),
    )


def _notes(task: Task, known: Knowledge, wound: Wound, coil: Laid) -> Iterable[str]:
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
    yield from fit_notes(wound.design.fit)
