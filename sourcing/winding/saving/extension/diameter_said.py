"""What is said of an extension spring whose diameter came out otherwise: its coils, and how its ends are made."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sourcing.quantities import show_diameter, show_length
from sourcing.springs import pulled
from sourcing.springs.hooks import COILS_OF_HOOK
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.winding.extension.ends import end_words
from sourcing.winding.in_hand import keeps
from sourcing.winding.saving.coil import AS_LONG_MM, TOLD_FROM, Coil, Way
from sourcing.winding.saving.extension.bending import hooks_of, length_for_forces
from sourcing.winding.saving.extension.body import wanted_of
from sourcing.winding.saving.extension.diameter_ways import Came, with_coils
from sourcing.winding.saving.extension.tension_said import (
    IF_AGAIN,
    heat_leaves,
    just_so,
    said_of_tension,
    tension_came,
    verdict_on,
)
from sourcing.winding.saving.extension.to_be_read import heat_decides, heat_first
from sourcing.winding.saving.verdict_words import came_out_at, keep_it, save_it


def said_of(
    coil: Coil, came: Came, way: Way[ExtensionSpring], rate_kept: float, read_again: Sequence[str]
) -> Iterator[str]:
    """The verdict, what is done to coils and ends, and how long the spring is then.

    `read_again`: that its tension is read again first, on which the verdict hangs.
    """
    wanted, at = wanted_of(coil), _came_at(coil, came)
    words, meant = end_words(wanted.hooks), _shown(coil, wanted.active_coils)
    rate = f"With {meant} {words.coils} its rate is {rate_kept:.3f} of that meant"
    if way.answer == "wind again":
        yield f"{at}, and neither other coils nor other {words.ends} save it: wind it again."
        if not came.enough:
            yield _other_coils(coil, came)
        return
    if way.answer == "keep":
        undecided = came.left is not None and heat_decides(coil, came.left, way)
        judgement = heat_first(coil, came.kept) if undecided else keep_it(coil, way)
        yield from _verdict(at, f"{judgement}. {rate}.", read_again)
        if abs(rate_kept - 1.0) >= TOLD_FROM and (came.enough or not keeps(way.fit, coil.plan.fit)):
            yield _other_coils(coil, came)
        elif came.left is not None and abs(rate_kept - 1.0) < TOLD_FROM:
            yield from length_for_forces(coil, came.kept, way, just_so=just_so(coil, came.left, way))
    else:
        yield from _changed(coil, came, way, rate, read_again)
    yield from hooks_of(coil, way)


def _verdict(at: str, judgement: str, read_again: Sequence[str]) -> Iterator[str]:
    """The verdict on what came out; where it is read again first, what holds if it reads so once more."""
    if read_again:
        yield f"{at}."
        yield from read_again
        yield f"{IF_AGAIN[0].upper()}{IF_AGAIN[1:]}{judgement}"
    else:
        yield f"{at}: {judgement}"


def _changed(coil: Coil, came: Came, way: Way[ExtensionSpring], rate: str, read_again: Sequence[str]) -> Iterator[str]:
    """The verdict on one that is changed, and how."""
    at, kept = _came_at(coil, came), came.kept
    if came.is_cut(way):
        kept = with_coils(wanted_of(coil), kept, way.spring.total_coils)
    else:
        rate = f"{rate}: leave its coils so"
    judgement = save_it(coil, way) if came.left is None else verdict_on(coil, kept, came.left, way)
    yield from _verdict(at, f"{judgement}. {rate}.", read_again)
    if came.is_cut(way):
        yield from _other_ends(coil, came, way.spring)
    if came.left is not None:
        yield from said_of_tension(coil, came.left, kept, way)


def _other_coils(coil: Coil, came: Came) -> str:
    """The coils that would give the rate that was meant, or that it has not so many."""
    coils = f"{_shown(coil, came.just.active_coils)} {end_words(came.just.hooks).coils}"
    if came.enough:
        return f"Just so: {coils} give the rate that was meant{_counted(coil)}{_no_longer(coil, came)}."
    spare = "" if coil.heated else ", spare ones too"
    idle = came.just.total_coils - came.just.active_coils
    return f"For the rate that was meant it would want {coils}, and has {_shown(coil, came.there - idle)}{spare}."


def _other_ends(coil: Coil, came: Came, spring: ExtensionSpring) -> Iterator[str]:
    """How the ends are made for the coils that it then has."""
    hooks = spring.hooks
    share = pulled.rate_n_per_mm(spring) / pulled.rate_n_per_mm(wanted_of(coil))
    gives = "the rate that was meant" if abs(share - 1.0) < TOLD_FROM else f"{share:.3f} of the rate that was meant"
    coils = f"{_shown(coil, spring.active_coils)} {end_words(hooks).coils} give {gives}{_counted(coil)}"
    if hooks is Hooks.THREADED_PLUG:
        yield f"Screw its plugs so deep that {coils}."
        if spring.total_coils > wanted_of(coil).total_coils:
            total = coil.shown(spring.total_coils)
            yield f"Leave spare turns on it for that: {total} coils{coil.counted}, those on both plugs among them."
        return
    if spring.total_coils > came.kept.total_coils:
        all_it_has = spring.total_coils == came.cut.total_coils and not came.enough
        yield (
            f"Leave {'all' if all_it_has else 'more'} of its spare turns in the body as you bend its hooks: {coils}. "
            "Where they are bent already it has no more."
        )
        return
    yield f"Bend the hooks so that {coils}."
    loop = COILS_OF_HOOK[hooks]
    yield (
        "Where its hooks are bent already, cut one off and bend it anew out of the body: the loop takes "
        f"{f'{loop:g} of a coil' if loop < 1.0 else 'a coil'}, and the body is a wire shorter for each coil less."
    )


def _shown(coil: Coil, coils: float) -> str:
    """Coils as they are counted: of a body as it is in hand; between plugs after heat, for plugs go in only then."""
    return f"{coils:.2f}" if _plugged(coil) else coil.shown(coils)


def _counted(coil: Coil) -> str:
    """When they are counted, where heat is still to come."""
    return ", counted after heat" if coil.change_to_come and _plugged(coil) else coil.counted


def _plugged(coil: Coil) -> bool:
    return wanted_of(coil).hooks is Hooks.THREADED_PLUG


def _no_longer(coil: Coil, came: Came) -> str:
    """That its ends do not reach the length that was meant with the coils that give its rate."""
    if came.cut.free_length_mm >= wanted_of(coil).free_length_mm - AS_LONG_MM:
        return ""
    return (
        f"; no longer than {show_length(came.cut.free_length_mm, coil.units)} {end_words(came.cut.hooks).between} then"
    )


def _came_at(coil: Coil, came: Came) -> str:
    """How the sentences begin: what was measured, and what was meant."""
    meant = coil.meant
    assert isinstance(meant, ExtensionSpring)
    outside = came_out_at(*(show_diameter(mm, coil.units) for mm in (came.outside_mm, meant.outside_diameter_mm)))
    if came.tension_n is None or came.left is None:
        return outside
    heat = heat_leaves(coil, came.tension_n, came.left)
    return f"{outside}, with {tension_came(coil, came.tension_n)}{heat}"
