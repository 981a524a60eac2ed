"""An extension spring that keeps another initial tension than was meant.

The force at a length is F = F₀ + R (L − L₀): with less initial tension than meant a shorter spring gives the same
force, and the hooks are bent to that length where they reach. Of what is too much, heat and a pull take some away.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.figures import formula
from sourcing.quantities import show_force, show_length
from sourcing.springs import pulled
from sourcing.springs.model import ExtensionSpring
from sourcing.winding.extension.hand_tension import LOST_IN_HEAT, TENSION_DOUBTED, hand_tension_n
from sourcing.winding.extension.in_hand import hooked
from sourcing.winding.extension.tension_words import LEAN_LESS, LEAN_MORE, NOT_PUT_IN, READ_AGAIN, take_away
from sourcing.winding.saving.coil import AS_LONG_MM, TOLD_FROM, Coil, Saved, Way, best_way, joined_said, keep_it, wrong
from sourcing.winding.saving.extension.body import Tension, hooks_of, judged, wanted_of

SCALE_SD = 0.02
"""An initial tension read from a scale, as a share of it, one standard deviation (assumed)."""


def came_out_tension(coil: Coil, tension_n: float) -> Saved:
    """A coil that keeps another initial tension than was meant: less can be made of it, else hooks make up for it."""
    left = left_in_the_end(coil, tension_n)
    kept = replace(wanted_of(coil), initial_tension_n=left.newtons)
    way = best_way(coil, *ways_of(coil, kept, left))
    heat, lean = heat_leaves(coil, tension_n, left), lean_next(coil, tension_n)
    said = joined_said(
        [f"It came out with {tension_came(coil, tension_n)}{heat}."],
        doubted(coil, kept, tension_n),
        verdict(coil, way),
        said_of_tension(coil, left, kept, way),
        wrong(way.fit, coil.bench),
        [f"The next one: {lean}."] if lean else [],
        _measure_too(coil),
    )
    return Saved(way.answer, way.spring, way.fit, 1.0, said)


def left_in_the_end(coil: Coil, tension_n: float) -> Tension:
    """What is left in the finished spring of an initial tension that was measured: heat to come takes of it."""
    if not _heat_to_come(coil):
        return Tension(tension_n, SCALE_SD * tension_n)
    least, most = LOST_IN_HEAT
    return Tension(tension_n * (1.0 - (least + most) / 2.0), tension_n * (most - least) / 4.0)


def _heat_to_come(coil: Coil) -> bool:
    return not coil.heated and coil.plan.after_heat is not None


@formula(
    "L₀ = L − (F − F₀) / R",
    where={"L": "length_mm", "F": "force_n", "F₀": "kept_n", "R": "rate_n_per_mm"},
    closed=False,
    source="EN 13906-2:2013 (from memory), F = F₀ + R (L − L₀)",
)
def free_length_for_force_mm(length_mm: float, force_n: float, kept_n: float, rate_n_per_mm: float) -> float:
    """How long inside the hooks a spring that keeps an initial tension must be to pull so much at a length.

    >>> free_length_for_force_mm(70.0, 13.0, 1.0, 0.5)
    46.0
    """
    return length_mm - (force_n - kept_n) / rate_n_per_mm


def for_forces_mm(coil: Coil, spring: ExtensionSpring) -> float:
    """How long inside its hooks a spring must be to pull, midway between the lengths it works at, what was meant."""
    wanted, lengths_mm = wanted_of(coil), [point.at_mm for point in coil.need.working]
    midway_mm = (min(lengths_mm) + max(lengths_mm)) / 2.0
    force_n = pulled.force_n(wanted, midway_mm, pulled.rate_n_per_mm(wanted), wanted.initial_tension_n or 0.0)
    kept_n = spring.initial_tension_n or 0.0
    return free_length_for_force_mm(midway_mm, force_n, kept_n, pulled.rate_n_per_mm(spring))


def ways_of(
    coil: Coil, kept: ExtensionSpring, left: Tension, body_mm: float | None = None
) -> tuple[Way[ExtensionSpring], ...]:
    """A spring as it is; pulled until no more tension is left than was meant; its hooks bent to give the forces."""
    as_it_is, lengthened = Way("keep", kept, judged(coil, kept, left)), _hooks_bent(coil, kept, left, body_mm)
    if not too_much(coil, left):
        return as_it_is, lengthened
    meant_n = wanted_of(coil).initial_tension_n or 0.0
    less = replace(kept, initial_tension_n=meant_n)
    return as_it_is, Way("change", less, judged(coil, less, Tension(meant_n, SCALE_SD * meant_n))), lengthened


def _hooks_bent(coil: Coil, kept: ExtensionSpring, left: Tension, body_mm: float | None) -> Way[ExtensionSpring]:
    set_to = hooked(kept, for_forces_mm(coil, kept), body_mm)
    return Way("change", set_to, judged(coil, set_to, left))


def too_much(coil: Coil, left: Tension) -> bool:
    """Whether a spring will hold its coils harder than was meant, as forces are shown."""
    meant_n = wanted_of(coil).initial_tension_n or 0.0
    return left.newtons > meant_n and show_force(left.newtons, coil.units) != show_force(meant_n, coil.units)


def _too_little(coil: Coil, left: Tension) -> bool:
    """Whether a spring will hold its coils less than was meant, even by the most that may be left."""
    return left.newtons + 2.0 * left.sd_n < (wanted_of(coil).initial_tension_n or 0.0)


def tension_came(coil: Coil, tension_n: float) -> str:
    """The initial tension that came out, beside the one meant."""
    came, meant = (show_force(n, coil.units) for n in (tension_n, _meant_n(coil)))
    had = f"an initial tension of {came}" if tension_n else "no initial tension"
    return had + (", as meant" if came == meant else f" instead of {meant}")


def heat_leaves(coil: Coil, tension_n: float, left: Tension) -> str:
    """What heat to come leaves of it, beside what is wanted then."""
    if left.newtons == tension_n:
        return ""
    low, high = (show_force(tension_n * (1.0 - lost), coil.units) for lost in reversed(LOST_IN_HEAT))
    return f"; {low} to {high} after heat ({show_force(wanted_of(coil).initial_tension_n or 0.0, coil.units)} meant)"


def _meant_n(coil: Coil) -> float:
    """The initial tension that was meant, in the state in which the coil was measured."""
    assert isinstance(coil.meant, ExtensionSpring)
    return coil.meant.initial_tension_n or 0.0


def verdict(coil: Coil, way: Way[ExtensionSpring]) -> Iterator[str]:
    """That it is kept and why, or that nothing saves it."""
    if way.answer == "keep":
        keep = keep_it(coil, way)
        yield f"{keep[0].upper()}{keep[1:]}" + (
            ": the forces are within what is wanted." if way.fit.fits == "yes" else "."
        )
    elif way.answer == "wind again":
        yield "Wind it again: hooks bent otherwise do not save it."


def said_of_tension(coil: Coil, left: Tension, kept: ExtensionSpring, way: Way[ExtensionSpring]) -> Iterator[str]:
    """What is done about the tension: taken away, or made up for by the hooks of a spring that keeps what is left."""
    if (way.spring.initial_tension_n or 0.0) < left.newtons and way.answer == "change":
        yield from _said_of_taking_away(coil, left, kept, way)
        return
    if way.answer != "keep" and _too_little(coil, left):
        yield f"Too little: {NOT_PUT_IN}."
    yield from length_for_forces(coil, kept, way)
    yield from hooks_of(coil, way)


def _said_of_taking_away(coil: Coil, left: Tension, kept: ExtensionSpring, way: Way[ExtensionSpring]) -> Iterator[str]:
    deed = take_away(way.spring, coil.need, coil.units)
    meant = show_force(way.spring.initial_tension_n or 0.0, coil.units)
    first = "Heat it first, and read. If that leaves too much" if _heat_to_come(coil) else "Too much"
    yield f"{first}: {deed}; {meant} is to be left."
    if way.spring != wanted_of(coil):
        yield from hooks_of(coil, way)
    bent = _hooks_bent(coil, kept, left, None)
    if bent.fit.fits == "no":
        yield "Only if too much stays in it, wind it again: hooks do not reach so far as to make up for it."
        return
    just = show_length(bent.spring.free_length_mm, coil.units)
    yield f"If it stays as it is, hooks bent to {just} between their insides make up for it."


def length_for_forces(
    coil: Coil, kept: ExtensionSpring, way: Way[ExtensionSpring], body_mm: float | None = None
) -> Iterator[str]:
    """How long it must be between its hooks to pull as it was meant to, and whether its hooks reach.

    `kept` is the spring before its hooks are bent for it.
    """
    wanted_mm, just_mm = wanted_of(coil).free_length_mm, for_forces_mm(coil, kept)
    if abs(just_mm - wanted_mm) < AS_LONG_MM:
        return
    just, off = (show_length(mm, coil.units) for mm in (just_mm, abs(just_mm - wanted_mm)))
    off, forces = f"{off} {'shorter' if just_mm < wanted_mm else 'longer'}", _forces(coil, kept)
    reached = abs(hooked(kept, just_mm, body_mm).free_length_mm - just_mm) < AS_LONG_MM
    if way.answer == "change" and not reached:
        yield f"{just} between its hooks, {off}, would give {forces}; bend them as far as hooks of this kind go."
    elif way.answer == "wind again":
        yield f"{just} between its hooks, {off}, would give {forces}."
    elif way.spring != kept:
        yield f"Bend its hooks to {just} between their insides, {off}: so it gives {forces}."
    elif reached:
        yield f"Just so: {just} between the insides of its hooks, {off}, gives {forces}."


def _forces(coil: Coil, spring: ExtensionSpring) -> str:
    """What a length gives: all the forces where the rate is the one meant, else the one midway."""
    rate_kept = pulled.rate_n_per_mm(spring) / pulled.rate_n_per_mm(wanted_of(coil))
    if abs(rate_kept - 1.0) < TOLD_FROM:
        return "the forces that were meant"
    return "the force that was meant midway between its working lengths"


def lean_next(coil: Coil, came_n: float) -> str:
    """What the hand does otherwise at the next coil; nothing where the tension came out as meant."""
    meant_n = _meant_n(coil)
    if show_force(came_n, coil.units) == show_force(meant_n, coil.units):
        return ""
    if came_n > meant_n:
        return LEAN_LESS
    return f"{LEAN_MORE}; {_most_by_hand(coil, wanted_of(coil))}"


def doubted(coil: Coil, kept: ExtensionSpring, tension_n: float) -> Iterator[str]:
    """That no hand winds so much into such a coil."""
    if tension_n > TENSION_DOUBTED * _most_n(coil, kept):
        most = _most_by_hand(coil, kept)
        yield f"{most[0].upper()}{most[1:]}: {READ_AGAIN}."


def _most_n(coil: Coil, spring: ExtensionSpring) -> float:
    """The most that a hand winds into a coil, in the state in which it was measured."""
    strength_mpa = spring.tensile_strength_mpa or 0.0
    return hand_tension_n(spring.wire_diameter_mm, spring.mean_diameter_mm, strength_mpa, heated=coil.heated).high


def _most_by_hand(coil: Coil, spring: ExtensionSpring) -> str:
    most = show_force(_most_n(coil, spring), coil.units)
    return f"a hand gives such a coil {most} at most (EN 13906-2, from memory)"


def _measure_too(coil: Coil) -> Iterator[str]:
    if coil.wire.spool is not None:
        yield "Measure it outside too (--came-out), so that it can be written down as a trial."
