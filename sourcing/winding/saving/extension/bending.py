"""How long between its hooks a spring must be to pull what was meant, how near its hooks reach, and what is off then.

The force at a length is F = F₀ + R (L − L₀): with less initial tension than meant a shorter spring gives the same
force, with more a longer one, and the hooks are bent to that length as near as they reach.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.figures import formula
from sourcing.fit.judge import ROUNDING
from sourcing.fit.model import Fit
from sourcing.fit.score import allowed, force_house_tolerance_n
from sourcing.quantities import show_force, show_length
from sourcing.springs import extension, pulled
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.winding.extension.ends import end_words
from sourcing.winding.extension.in_hand import hooked
from sourcing.winding.in_hand import keeps
from sourcing.winding.line import aim
from sourcing.winding.saving.coil import AS_LONG_MM, TOLD_FROM, Coil, Way
from sourcing.winding.saving.extension.body import Tension, judged, wanted_of
from sourcing.winding.saving.extension.rows_left import rows_left
from sourcing.winding.saving.verdict_words import low_chance, wrong

FORCE = "force"
"""The figure of a fit that a force at a length is."""


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
    """How long inside its hooks a spring must be to pull what was meant, at all lengths or as near as its rate allows.

    L₀ = Σ (L_i / u_i²) / Σ (1 / u_i²): L_i gives the force at the i-th working length, which may miss it by u_i; least
    squares of the misses over their tolerances.
    """
    wanted, rate, kept_n = wanted_of(coil), pulled.rate_n_per_mm(spring), spring.initial_tension_n or 0.0
    wanted_rate, wanted_n = pulled.rate_n_per_mm(wanted), wanted.initial_tension_n or 0.0
    sums = weights = 0.0
    for point in coil.need.working:
        if point.force_n is not None:
            force_n = pulled.force_n(wanted, point.at_mm, wanted_rate, wanted_n)
            house_n = force_house_tolerance_n(point.force_n, coil.bench.tolerances)
            weight = 1.0 / aim(point.force_n, house_n).tolerance ** 2
            sums += weight * free_length_for_force_mm(point.at_mm, force_n, kept_n, rate)
            weights += weight
    return sums / weights


def hooks_bent(
    coil: Coil, kept: ExtensionSpring, left: Tension | None, body_mm: float | None = None
) -> Way[ExtensionSpring]:
    """The spring with its hooks bent as near as they reach to where it pulls what was meant."""
    set_to = hooked(kept, for_forces_mm(coil, kept), body_mm)
    return Way("change", set_to, judged(coil, set_to, left))


def if_it_stays(coil: Coil, kept: ExtensionSpring, left: Tension) -> Iterator[str]:
    """What comes of too much tension that no pull takes away: the length of the hooks, what is off, the verdict."""
    bent = hooks_bent(coil, kept, left)
    just_mm, reach_mm = for_forces_mm(coil, kept), bent.spring.free_length_mm
    just, reached, forces = (*(show_length(mm, coil.units) for mm in (just_mm, reach_mm)), forces_meant(coil, kept))
    words, stays = end_words(kept.hooks), f"If {show_force(left.newtons, coil.units)} stays in it"
    if abs(just_mm - reach_mm) < AS_LONG_MM:
        yield f"{stays}, {words.bring} to {reached} {words.apart}: so it gives {forces}{_with_chance(coil, bent)}."
        if keeps(bent.fit, coil.plan.fit):
            yield from rows_left(coil, bent)
            return
    else:
        reach = reach_said(coil, just_mm, reach_mm)
        yield f"{stays}, {just} {words.between} would give {forces}; they reach {reach}."
    yield from outcome(coil, bent)


def _with_chance(coil: Coil, bent: Way[ExtensionSpring]) -> str:
    """Goes on a spring that serves with its hooks bent."""
    fit = bent.fit
    return f", with a chance of {fit.chance:.2f}{low_chance(coil, fit)}" if keeps(fit, coil.plan.fit) else ""


def reach_said(coil: Coil, just_mm: float, reach_mm: float) -> str:
    """How near to a length hooks can be bent."""
    return f"{show_length(reach_mm, coil.units)} at {'most' if just_mm > reach_mm else 'least'}"


def outcome(coil: Coil, bent: Way[ExtensionSpring]) -> Iterator[str]:
    """What a spring pulls whose hooks are bent as far as they reach, and the verdict on it."""
    fit = bent.fit
    others = tuple(row for row in fit.deviations if row.figure != FORCE)
    hard = tuple(limit for limit in fit.limits if limit.hard)
    yield from wrong(replace(fit, limits=hard, deviations=others), coil.bench)
    if keeps(fit, coil.plan.fit):
        verdict = f"keep it so{_with_chance(coil, bent)}"
    elif fit.fits == "no":
        verdict = "wind it again"
    else:
        verdict = "a near fit, to keep only where that does not matter; else wind it again"
    yield f"{end_words(bent.spring.hooks).brought.capitalize()} {furthest_off(coil, fit)}: {verdict}."


def furthest_off(coil: Coil, fit: Fit) -> str:
    """The force that is furthest off, and by how much it is outside what is wanted."""
    row = max((each for each in fit.deviations if each.figure == FORCE), key=lambda row: row.deviation_over_tolerance)
    pulls = f"it pulls {show_force(row.got, coil.units)} at {show_length(row.at or 0.0, coil.units)}"
    low_n, high_n = allowed(row.wanted, row.tolerance)
    if row.deviation_over_tolerance <= 1.0 + ROUNDING:
        return f"{pulls}, within what is wanted"
    if high_n is not None and row.got > high_n:
        bound_n, word, least = high_n, "more", "most"
    else:
        bound_n, word, least = low_n or 0.0, "less", "least"
    off, bound = (show_force(force_n, coil.units) for force_n in (abs(row.got - bound_n), bound_n))
    return f"{pulls}, {off} {word} than the {least} that is wanted ({bound})"


def length_for_forces(
    coil: Coil,
    kept: ExtensionSpring,
    way: Way[ExtensionSpring],
    body_mm: float | None = None,
    just_so: str = "Just so: ",
) -> Iterator[str]:
    """How long it must be between its hooks to pull as it was meant to, and whether its hooks reach.

    `kept` is the spring before its hooks are bent for it. `just_so` begins the length of one that is kept.
    """
    wanted_mm, just_mm = wanted_of(coil).free_length_mm, for_forces_mm(coil, kept)
    words, reach_mm = end_words(kept.hooks), hooked(kept, just_mm, body_mm).free_length_mm
    reached = abs(reach_mm - just_mm) < AS_LONG_MM
    told_mm = reach_mm if reached else just_mm
    if abs(told_mm - wanted_mm) < AS_LONG_MM:
        return
    just, off = (show_length(mm, coil.units) for mm in (told_mm, abs(told_mm - wanted_mm)))
    off, forces = f"{off} {'shorter' if told_mm < wanted_mm else 'longer'}", forces_meant(coil, kept)
    if way.answer != "keep" and not reached:
        reach = reach_said(coil, just_mm, reach_mm)
        yield f"{just} {words.between}, {off}, would give {forces}; they reach {reach}."
        if way.answer == "change":
            yield f"{words.brought.capitalize()} {furthest_off(coil, way.fit)}."
    elif way.answer == "wind again":
        yield f"{just} {words.between}, {off}, would give {forces}."
    elif way.answer == "keep" and reached:
        yield f"{just_so}{just} {words.between}, {off}, gives {forces}."


def forces_meant(coil: Coil, spring: ExtensionSpring) -> str:
    """What a length gives: all the forces where the rate is the one meant, else the nearest to them."""
    rate_kept = pulled.rate_n_per_mm(spring) / pulled.rate_n_per_mm(wanted_of(coil))
    if abs(rate_kept - 1.0) < TOLD_FROM:
        return "the forces that were meant"
    return "the forces nearest to those that were meant"


def hooks_of(coil: Coil, way: Way[ExtensionSpring], body_mm: float | None = None) -> Iterator[str]:
    """How high the hooks are to be bent, how long the spring is then, and what forces that gives; of plugs how far
    apart."""
    spring = way.spring
    if way.answer == "wind again":
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
    plugs = spring.hooks is Hooks.THREADED_PLUG
    if free == wanted and (plugs or way.answer == "keep"):
        return
    instead = "" if free == wanted else f" ({wanted} was meant)"
    gives = "" if free == wanted or way.answer == "keep" else _gives(coil, spring)
    if plugs:
        yield f"Set its plugs to {free} between their eyes{instead}{gives}."
    else:
        yield (
            f"Bend its hooks {height} high: with its body of {body} that is {free} between their insides"
            f"{instead}{gives}."
        )


def _gives(coil: Coil, spring: ExtensionSpring) -> str:
    """The forces that its length gives, where it is the one for them."""
    near = abs(spring.free_length_mm - for_forces_mm(coil, spring)) < AS_LONG_MM
    return f", and gives {forces_meant(coil, spring)}" if near else ""
