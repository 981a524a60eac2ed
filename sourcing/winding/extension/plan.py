"""The winding plan of an extension spring from one wire, or why there is none.

1. The need's forces make a rate; each mean diameter in the bore then makes body, hooks and tension (extension_task.py).
2. The spool's trials say how the wire springs back (trials.py), and so which mandrel gives what (mandrel.py).
3. From the best of those follow turns, wire for the hooks, bands, checks and steps.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sourcing.quantities import show_diameter, show_force, show_length
from sourcing.springs import hooks, pulled
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.notes import material_note
from sourcing.winding.any_kind import cautions, cost, hours_said, knowledge, life_note, too_short, wire_notes
from sourcing.winding.by_hand import crank
from sourcing.winding.extension.acceptance import accept_extension, extension_goes_in
from sourcing.winding.extension.ends import end_words
from sourcing.winding.extension.hand_tension import LOST_IN_HEAT, hand_tension_n, tension_as_wound_n
from sourcing.winding.extension.making import LaidTight, as_wound, laid, made_after_heat, made_before_heat
from sourcing.winding.extension.steps import ExtensionNumbers, without_heat
from sourcing.winding.extension.task import ExtensionTask, no_wire_serves
from sourcing.winding.finishing import never
from sourcing.winding.heat import oven_reaches, stress_relief
from sourcing.winding.mandrel import Wound, wound_for
from sourcing.winding.model import Band, Refusal, WindingPlan
from sourcing.winding.search import MOST_STEPS, QUICK_STEPS, diameters_mm, scan, serving
from sourcing.winding.task import EASY_INDEX, Design, Given
from sourcing.winding.trials import Knowledge
from sourcing.winding.tries import tries
from sourcing.winding.turns import SPARE_TURNS

ExtensionDesign = Design[ExtensionSpring]


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
    coil = laid(as_wound(task, known, wound), wound.diameter_mm)
    return too_short(task, coil.cut_length_mm) or _plan(task, known, designs, wound, coil)


def quick(given: Given) -> ExtensionDesign | None:
    """The best spring of a wire before its mandrel is thought of."""
    scanned = _scanned(given, QUICK_STEPS)
    return None if isinstance(scanned, Refusal) else min(scanned[1], key=lambda each: each.order)


def _scanned(given: Given, most_steps: int = MOST_STEPS) -> tuple[ExtensionTask, tuple[ExtensionDesign, ...]] | Refusal:
    """The task, and the best spring at each mean diameter that has room."""
    if refusal := no_wire_serves(given.need, given.bench):
        return refusal
    between = diameters_mm(given.need, given.bench, given.wire.wire_diameter_mm)
    if isinstance(between, Refusal):
        return between
    task = ExtensionTask(given.need, given.bench, given.wire, given.tensile_strength_mpa)
    return task, scan(task, *between, most_steps=most_steps)


def _plan(
    task: ExtensionTask,
    known: Knowledge,
    designs: Sequence[ExtensionDesign],
    wound: Wound[ExtensionSpring],
    coil: LaidTight,
) -> WindingPlan:
    """The sheet's figures and words."""
    need, bench, wire, spring = task.need, task.bench, task.wire, wound.design.spring
    numbers, tension = _numbers(task, known, wound, coil), task.tension_band_n(spring)
    serves, only = serving(task, designs)
    left_mm = None if wire.spool is None else wire.spool.length_left_mm
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
        pitch_on_mandrel_mm=wire.wire_diameter_mm,
        pull_n=numbers.pull_n,
        crank_moment_n_mm=numbers.crank_moment_n_mm,
        crank=numbers.crank,
        turns_run_back=numbers.turns_run_back,
        energy_let_go_n_mm=numbers.energy_let_go_n_mm,
        finished=made_before_heat(task, known, wound),
        after_heat=made_after_heat(task, known, wound) if task.heated else None,
        wanted=spring,
        fit=wound.design.fit,
        stress_in_use_mpa=wound.design.stress_mpa,
        serves=serves,
        only=only,
        heat=numbers.heat,
        accept=accept_extension(spring, wound.design.fit, need, bench, tension),
        goes_in=extension_goes_in(spring, need, bench),
        numbers=numbers,
        steps=numbers.steps(need, bench),
        cautions=tuple(cautions(task, numbers)),
        never=never(numbers.wire.material, numbers.mandrel, numbers.heat.temperature_c is not None, bench),
        tries=tries(task, known, wound),
        cost=cost(wire.spool, need.quantity * coil.cut_length_mm),
        units=bench.units,
        notes=tuple(_notes(task, known, wound, coil, tension)),
    )


def _numbers(task: ExtensionTask, known: Knowledge, wound: Wound[ExtensionSpring], coil: LaidTight) -> ExtensionNumbers:
    """What the steps say."""
    return ExtensionNumbers(
        wire=task.wire,
        known=known.on(wound.diameter_mm),
        mandrel=wound.mandrel,
        cut_length_mm=coil.cut_length_mm,
        crank=crank(known.on(wound.diameter_mm), wound.mandrel, task.bench.hand_winding),
        turns_opened=coil.turns_run_back,
        heat=stress_relief(task.wire.material, task.bench, without_heat(wound.design.spring.hooks)),
        spring=wound.design.spring,
        wound=as_wound(task, known, wound),
        laid=coil,
        spare_turns=SPARE_TURNS,
        wound_outside=made_before_heat(task, known, wound).bands["outside_diameter_mm"],
    )


def _notes(
    task: ExtensionTask, known: Knowledge, wound: Wound[ExtensionSpring], coil: LaidTight, tension: Band
) -> Iterator[str]:
    """Doubts, and what was assumed."""
    spring, units = wound.design.spring, task.bench.units
    aimed = show_force(spring.initial_tension_n or 0.0, units)
    after = ", after heat" if oven_reaches(task.wire.material, task.bench) else ""
    yield from material_note(task.wire.material)
    yield from wire_notes(task, known, coil.cut_length_mm)
    yield (
        f"Wound by hand it keeps an initial tension of anything from nothing to {show_force(tension.high, units)}"
        f"{after} (EN 13906-2, from memory); {aimed} is aimed at. What needs more "
        "has to be bought."
    )
    yield from _kept_by_last(task)
    if task.heated:
        yield _wound_harder(task, as_wound(task, known, wound))
    safe_mm = pulled.largest_safe_length_mm(spring, pulled.rate_n_per_mm(spring), spring.initial_tension_n or 0.0)
    if safe_mm is not None:
        first = pulled.breaks_first(spring).words
        yield f"It may be pulled to {show_length(safe_mm, units)}; what breaks first is {first}."
    if spring.hooks is not Hooks.THREADED_PLUG and task.need.hooks is None:
        yield f"Hooks were not said: {spring.hooks} was taken, the simplest that reaches."
    if spring.spring_index > EASY_INDEX:
        yield f"A spring index of {spring.spring_index:.1f} is more than the {EASY_INDEX:g} that winds easily by hand."
    yield from life_note(wound.design.fit)
    ends = f"{end_words(spring.hooks).ends} together come out to 5 % of the inside diameter, the rate to 3 %"
    bent = f", hooks are bent with a radius of {hooks.BEND_RADIUS_WIRES:g} wires"
    plugged = spring.hooks is Hooks.THREADED_PLUG
    yield (
        f"Assumed: coils of one wire repeat to 0.4 % of the diameter, both {ends}{'' if plugged else bent}; "
        f"{hours_said(task)}"
    )


def _kept_by_last(task: ExtensionTask) -> Iterator[str]:
    """What the last trial coil whose initial tension was measured kept: told, and not counted on."""
    wire, units = task.wire, task.bench.units
    trials = () if wire.spool is None else wire.spool.trials
    for trial in reversed(trials):
        if trial.initial_tension_n is not None:
            kept, outside = show_force(trial.initial_tension_n, units), show_diameter(trial.outside_diameter_mm, units)
            pull = "" if trial.pull_n is None else f", wound under a pull of {show_force(trial.pull_n, units)}"
            yield (
                f"The last coil of this wire that was hung on a scale kept {kept}, {outside} outside"
                f"{', after heat' if trial.heated else ', before heat'}{pull}. The band is left as wide as it was: "
                "nobody has shown that a hand can aim."
            )
            return


def _wound_harder(task: ExtensionTask, before: ExtensionSpring) -> str:
    """How much initial tension must be wound for heat to leave what is planned, and whether a hand can."""
    units, least, most = task.bench.units, *LOST_IN_HEAT
    wound_n = before.initial_tension_n or 0.0
    hardest_n = tension_as_wound_n(wound_n * (1.0 - least), most)
    by_hand_n = hand_tension_n(
        before.wire_diameter_mm, before.mean_diameter_mm, task.tensile_strength_mpa, heated=False
    ).high
    said = (
        f"For that to be left it must be wound with {show_force(wound_n, units)} where heat takes a quarter, with "
        f"{show_force(hardest_n, units)} where it takes a half; a hand gives {show_force(by_hand_n, units)} at most"
    )
    return said + (", so that it may come out with too little." if hardest_n > by_hand_n else ".")
