"""An extension spring that came out otherwise: its diameter, the tension that holds its coils, or gaps between them.

The coils are measured before the hooks are bent, so that both are still free: how many coils the body has, and how high
the hooks stand. The force at a length is F = F₀ + R (L − L₀): with less initial tension than meant a shorter spring
gives the same force, L₀' = L₀ − (F₀ − F₀')/R, and the hooks are bent to that length where they reach.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import inf

from sourcing.figures import formula
from sourcing.fit.judge import judge
from sourcing.fit.model import Fit
from sourcing.quantities import show_diameter, show_force, show_length
from sourcing.springs import compression, extension, pulled
from sourcing.springs.hooks import COILS_OF_HOOK
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.stock.trial_bounds import LEAST_PITCH
from sourcing.winding.extension.hand_tension import LOST_IN_HEAT, hand_tension_n
from sourcing.winding.extension.task import ExtensionTask, hook_heights_mm
from sourcing.winding.heat import making
from sourcing.winding.saving.coil import (
    AS_LONG_MM,
    TOLD_FROM,
    Coil,
    Saved,
    SenselessError,
    Way,
    best_way,
    came_out_at,
    clearances,
    joined_said,
    keep_it,
    refuse_senseless,
    surprise,
    write_down,
    wrong,
)
from sourcing.winding.saving.next_coil import next_coil, said_of_next
from sourcing.winding.turns import SPARE_TURNS

CLOSE = 1.02
"""A pitch of less than so many wires is that of coils that touch: a rule tells no better (assumed)."""

SCALE_SD = 0.02
"""An initial tension read from a scale, as a share of it, one standard deviation (assumed)."""


@dataclass(frozen=True, slots=True)
class Tension:
    """An initial tension in the finished spring, and its doubt."""

    newtons: float
    sd_n: float


NO_TENSION = Tension(0.0, 0.0)


def wanted_of(coil: Coil) -> ExtensionSpring:
    """The spring that was meant, in its final state."""
    assert isinstance(coil.plan.wanted, ExtensionSpring)
    return coil.plan.wanted


def judged(coil: Coil, spring: ExtensionSpring, tension: Tension | None = None) -> Fit:
    """The spring against the need; with the initial tension that was measured, or with what a hand may have wound."""
    task = ExtensionTask(coil.need, coil.bench, coil.wire, spring.tensile_strength_mpa or 0.0)
    spread = task.spread_of(spring, coil.diameter_sd_mm(spring.mean_diameter_mm))
    if tension is not None:
        spread = replace(spread, initial_tension_sd_n=tension.sd_n, initial_tension_off_n=0.0)
    return judge(spring, coil.need, coil.bench, replace(spread, making=making(coil.wire.material, coil.bench)))


def came_out(coil: Coil, outside_mm: float) -> Saved:
    """A coil whose diameter came out otherwise: the body gets the coils that restore the rate, n = G d⁴ / (8 D³ R)."""
    mandrel_mm = coil.plan.mandrel.diameter_mm
    assert mandrel_mm is not None
    refuse_senseless(coil, "outside", outside_mm, mandrel_mm)
    wanted, mean_mm = wanted_of(coil), coil.final_mean_mm(outside_mm)
    kept, cut = hooked(replace(wanted, mean_diameter_mm=mean_mm), wanted.free_length_mm), _cut(wanted, mean_mm)
    there = _coils_there(coil, mandrel_mm, mean_mm)
    with_others = [Way("change", cut, judged(coil, cut))] if cut.total_coils <= there else []
    way = best_way(Way("keep", kept, judged(coil, kept)), *with_others)
    rate_kept = pulled.rate_n_per_mm(kept) / pulled.rate_n_per_mm(wanted)
    trial = coil.trial(mandrel_mm, outside_mm)
    then = next_coil(coil, trial)
    said = joined_said(
        _said_of_diameter(coil, outside_mm, cut, rate_kept, way),
        _hooks_of(coil, way),
        clearances(way.fit),
        wrong(way.fit, coil.bench),
        surprise(coil, trial),
        said_of_next(coil, then),
        write_down(coil, trial),
    )
    return Saved(way.answer, way.spring, way.fit, rate_kept, said, then and then.plan.mandrel)


def hooked(spring: ExtensionSpring, free_length_mm: float, body_mm: float | None = None) -> ExtensionSpring:
    """The spring with its hooks bent as near to a free length as hooks of their kind reach.

    `body_mm`: how long its body is where its coils do not touch.
    """
    low_mm, high_mm = hook_heights_mm(spring.hooks, spring.inside_diameter_mm)
    body_mm = pulled.body_length_mm(spring) if body_mm is None else body_mm
    least_mm, most_mm = (extension.free_length_mm(body_mm, height_mm) for height_mm in (low_mm, high_mm))
    return replace(spring, free_length_mm=min(max(free_length_mm, least_mm), most_mm))


def _cut(wanted: ExtensionSpring, mean_mm: float) -> ExtensionSpring:
    """The spring of another diameter with the coils in its body that give the wanted rate, as long as it can be."""
    active = compression.active_coils_for_rate(
        wanted.wire_diameter_mm, mean_mm, pulled.rate_n_per_mm(wanted), wanted.shear_modulus_mpa
    )
    total = active + wanted.total_coils - wanted.active_coils
    other = replace(wanted, mean_diameter_mm=mean_mm, active_coils=active, total_coils=total)
    return hooked(other, wanted.free_length_mm)


def _coils_there(coil: Coil, mandrel_mm: float, mean_mm: float) -> float:
    """The coils that are there for the body once those of the hooks are taken off, spare ones too."""
    wound = (coil.plan.turns_to_wind + SPARE_TURNS) * (mandrel_mm + coil.wire_mm) / mean_mm
    return wound - 2.0 * COILS_OF_HOOK[wanted_of(coil).hooks]


def _said_of_diameter(
    coil: Coil, outside_mm: float, cut: ExtensionSpring, rate_kept: float, way: Way[ExtensionSpring]
) -> Iterator[str]:
    meant, wanted = coil.meant, wanted_of(coil)
    assert isinstance(meant, ExtensionSpring)
    came = came_out_at(*(show_diameter(mm, coil.units) for mm in (outside_mm, meant.outside_diameter_mm)))
    coils, meant_coils = (coil.shown(each) for each in (cut.total_coils, wanted.total_coils))
    other = f"{coils} coils in the body give the rate that was meant{coil.counted}"
    if cut.free_length_mm < wanted.free_length_mm - AS_LONG_MM:
        other += f"; no longer than {show_length(cut.free_length_mm, coil.units)} between its hooks then"
    if way.answer == "keep":
        rate = f"With {meant_coils} coils in the body its rate is {rate_kept:.3f} of that meant"
        yield f"{came}: {keep_it(coil, way)}. {rate}."
        if abs(rate_kept - 1.0) >= TOLD_FROM:
            yield f"Just so: {other}."
    elif way.answer == "change":
        yield f"{came}. Bend the hooks so that {other}. With {meant_coils} the rate would be {rate_kept:.3f} of it."
        yield (
            "Where its hooks are bent already, cut one off and bend it anew out of the body: the loop takes "
            f"{COILS_OF_HOOK[wanted.hooks]:g} coils, and the body is a wire shorter for each coil less."
        )
    else:
        yield f"{came}, and other coils do not save it: wind it again."


def _hooks_of(coil: Coil, way: Way[ExtensionSpring], body_mm: float | None = None) -> Iterator[str]:
    """How high the hooks are to be bent, and how long the spring is then."""
    spring = way.spring
    if way.answer == "wind again" or spring.hooks is Hooks.THREADED_PLUG:
        return
    body_mm = pulled.body_length_mm(spring) if body_mm is None else body_mm
    free, height, body, wanted = (
        show_length(mm, coil.units)
        for mm in (
            spring.free_length_mm,
            extension.hook_length_mm(spring.free_length_mm, body_mm),
            body_mm,
            wanted_of(coil).free_length_mm,
        )
    )
    if way.answer == "keep" and free == wanted:
        return
    instead = "" if free == wanted else f", not {wanted}"
    yield f"The body is {body} long: hooks {height} high leave {free} between their insides{instead}."


@formula(
    "L₀' = L₀ − (F₀ − F₀') / R",
    where={"L₀": "free_length_mm", "F₀": "meant_n", "F₀'": "kept_n", "R": "rate_n_per_mm"},
    closed=False,
    source="EN 13906-2:2013 (from memory), F = F₀ + R (L − L₀) for the same force at every length",
)
def free_length_for_forces_mm(free_length_mm: float, meant_n: float, kept_n: float, rate_n_per_mm: float) -> float:
    """How long inside the hooks a spring that keeps another initial tension must be to pull as it was meant to.

    >>> free_length_for_forces_mm(50.0, 3.0, 1.0, 0.5)
    46.0
    """
    return free_length_mm - (meant_n - kept_n) / rate_n_per_mm


def came_out_tension(coil: Coil, tension_n: float) -> Saved:
    """A coil that keeps another initial tension than was meant: shorter or longer hooks give the wanted forces."""
    wanted, meant, left = wanted_of(coil), coil.meant, left_in_the_end(coil, tension_n)
    assert isinstance(meant, ExtensionSpring)
    kept = replace(wanted, initial_tension_n=left.newtons)
    way = _by_hooks(coil, kept, left, pulled.body_length_mm(wanted))
    came, meant_n = tension_n, meant.initial_tension_n or 0.0
    said = joined_said(
        _said_of_tension(coil, came, meant_n, left, way),
        wrong(way.fit, coil.bench),
        _lean_next(coil, came, meant_n),
    )
    return Saved(way.answer, way.spring, way.fit, 1.0, said)


def left_in_the_end(coil: Coil, tension_n: float) -> Tension:
    """What is left in the finished spring of an initial tension that was measured: heat to come takes of it."""
    if coil.heated or coil.plan.after_heat is None:
        return Tension(tension_n, SCALE_SD * tension_n)
    least, most = LOST_IN_HEAT
    return Tension(tension_n * (1.0 - (least + most) / 2.0), tension_n * (most - least) / 4.0)


def _by_hooks(coil: Coil, kept: ExtensionSpring, tension: Tension, body_mm: float) -> Way[ExtensionSpring]:
    """The spring as it is, or with its hooks bent to the length at which it pulls as it was meant to."""
    set_to = hooked(kept, _for_forces_mm(coil, tension.newtons), body_mm)
    as_it_is = Way("keep", kept, judged(coil, kept, tension))
    return best_way(as_it_is, Way("change", set_to, judged(coil, set_to, tension)))


def _for_forces_mm(coil: Coil, kept_n: float) -> float:
    wanted = wanted_of(coil)
    rate, meant_n = pulled.rate_n_per_mm(wanted), wanted.initial_tension_n or 0.0
    return free_length_for_forces_mm(wanted.free_length_mm, meant_n, kept_n, rate)


def _said_of_tension(
    coil: Coil, came_n: float, meant_n: float, left: Tension, way: Way[ExtensionSpring]
) -> Iterator[str]:
    came, meant = (show_force(n, coil.units) for n in (came_n, meant_n))
    low, high = (show_force(came_n * (1.0 - lost), coil.units) for lost in reversed(LOST_IN_HEAT))
    instead = ", as meant" if came == meant else f" instead of {meant}"
    heat = "" if left.newtons == came_n else f"; {low} to {high} after heat"
    yield f"It came out with {f'an initial tension of {came}' if came_n else 'no initial tension'}{instead}{heat}."
    yield from _kept(coil, way)
    yield from _length_for_forces(coil, left.newtons, way)
    yield from _hooks_of(coil, way)


def _kept(coil: Coil, way: Way[ExtensionSpring]) -> Iterator[str]:
    """That it is kept, and why."""
    if way.answer == "keep":
        keep = keep_it(coil, way)
        yield f"{keep[0].upper()}{keep[1:]}" + (
            ": the forces are within what is wanted." if way.fit.fits == "yes" else "."
        )


def _length_for_forces(coil: Coil, kept_n: float, way: Way[ExtensionSpring]) -> Iterator[str]:
    """How long it must be between its hooks to pull as it was meant to, and whether its hooks reach."""
    wanted_mm, just_mm = wanted_of(coil).free_length_mm, _for_forces_mm(coil, kept_n)
    if abs(just_mm - wanted_mm) < AS_LONG_MM:
        return
    just, off = (show_length(mm, coil.units) for mm in (just_mm, abs(just_mm - wanted_mm)))
    way_off = "shorter" if just_mm < wanted_mm else "longer"
    forces = "the forces that were meant"
    if way.answer == "keep":
        yield f"Just so: {just} between the insides of its hooks, {off} {way_off}, gives {forces}."
    elif abs(way.spring.free_length_mm - just_mm) < AS_LONG_MM and way.answer == "change":
        yield f"Bend its hooks to {just} between their insides, {off} {way_off}: so it gives {forces}."
    else:
        deed = (
            "bend them as far as hooks of this kind go"
            if way.answer == "change"
            else "they do not reach: wind it again"
        )
        yield f"{just} between the insides of its hooks, {off} {way_off}, would give {forces}; {deed}."


def _lean_next(coil: Coil, came_n: float, meant_n: float) -> Iterator[str]:
    """What the hand does otherwise at the next coil."""
    if show_force(came_n, coil.units) == show_force(meant_n, coil.units):
        return
    wanted = wanted_of(coil)
    most_n = hand_tension_n(
        wanted.wire_diameter_mm, wanted.mean_diameter_mm, wanted.tensile_strength_mpa or 0.0, heated=coil.heated
    ).high
    most = show_force(most_n, coil.units)
    if came_n < meant_n:
        lean = "lean the wire further back over the last turn and pull harder"
        yield f"The next one: {lean}, evenly; a hand gives such a coil {most} at most (EN 13906-2, from memory)."
    else:
        yield "The next one: lean the wire back less over the last turn, or pull less, evenly."


def came_out_pitch(coil: Coil, pitch_mm: float) -> Saved:
    """A body whose coils do not touch: it is longer, and nothing holds it closed."""
    wanted, gap_mm = wanted_of(coil), pitch_mm - coil.wire_mm
    if pitch_mm < LEAST_PITCH * coil.wire_mm:
        found = f"a pitch of {show_length(pitch_mm, coil.units)} is less than the wire"
        raise SenselessError("pitch", found, "from one turn to the next, the wire counted in")
    if pitch_mm <= CLOSE * coil.wire_mm:
        said = ("Its coils touch, as meant: keep it.",)
        return Saved("keep", wanted, judged(coil, wanted), 1.0, said)
    return _open(coil, wanted.total_coils * gap_mm, _said_of_gap(coil, gap_mm), _LAY_CLOSE)


_LAY_CLOSE = (
    "No heat closes it. The next one: lay it wire against wire, and lean the wire back over the last turn by a few "
    "degrees all the while."
)


def _said_of_gap(coil: Coil, gap_mm: float) -> Iterator[str]:
    gap, whole = (show_length(mm, coil.units) for mm in (gap_mm, wanted_of(coil).total_coils * gap_mm))
    yield f"Its coils stand {gap} apart: the body is {whole} longer, and it keeps no initial tension."


def _open(coil: Coil, longer_mm: float, first: Iterator[str], last: str) -> Saved:
    """A spring whose coils stand apart: its body so much longer, and without an initial tension."""
    wanted = wanted_of(coil)
    body_mm = pulled.body_length_mm(wanted) + longer_mm
    kept = replace(wanted, free_length_mm=wanted.free_length_mm + longer_mm, initial_tension_n=0.0)
    way = _by_hooks(coil, kept, NO_TENSION, body_mm)
    said = joined_said(
        first,
        _kept(coil, way),
        _length_for_forces(coil, 0.0, way),
        _hooks_of(coil, way, body_mm),
        wrong(way.fit, coil.bench),
        [last],
    )
    return Saved(way.answer, way.spring, way.fit, 1.0, said)


def pulled_to(coil: Coil, free_length_mm: float) -> Saved:
    """A spring that was longer at rest after it was first pulled to its longest: it has set."""
    wanted = wanted_of(coil)
    body_mm, longer_mm = pulled.body_length_mm(wanted), free_length_mm - wanted.free_length_mm
    now, off = (show_length(mm, coil.units) for mm in (free_length_mm, abs(longer_mm)))
    if free_length_mm < body_mm:
        body = show_length(body_mm, coil.units)
        raise SenselessError("pulled_to", f"{now} is shorter than its body of {body}", "its length inside the hooks")
    works_mm = min((point.at_mm for point in coil.need.working), default=inf)
    if free_length_mm >= works_mm:
        found = f"{now} is as long as it works ({show_length(works_mm, coil.units)})"
        raise SenselessError("pulled_to", found, "its length inside the hooks at rest, after it was pulled")
    if longer_mm >= AS_LONG_MM:
        last = f"The next one: bend its hooks {off} nearer together, and pull it to its longest three times."
        return _open(coil, longer_mm, _said_of_stretch(coil, now, off), last)
    short = longer_mm <= -AS_LONG_MM
    said = f"{now} between its hooks, {off} less than wanted: bend them a little higher." if short else ""
    kept = replace(wanted, free_length_mm=free_length_mm)
    as_meant = f"Pulled, it is {now} between its hooks again, as it should be: leave it."
    return Saved("change" if short else "keep", kept, judged(coil, kept), 1.0, (said or as_meant,))


def _said_of_stretch(coil: Coil, now: str, off: str) -> Iterator[str]:
    wanted = wanted_of(coil)
    yield f"Pulled, it is {now} between its hooks, {off} longer: it has set."
    yield (
        "If a hook has opened, bend it back and measure again. If its coils stand apart, what held them closed is gone."
    )
    tension_n = wanted.initial_tension_n or 0.0
    safe_mm = pulled.largest_safe_length_mm(wanted, pulled.rate_n_per_mm(wanted), tension_n)
    if safe_mm is not None:
        yield f"By its plan it stands {show_length(safe_mm, coil.units)}: pull it no further when it is hooked in."
