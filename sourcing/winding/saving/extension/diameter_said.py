"""What is said of an extension spring whose diameter came out otherwise: its coils, and how its ends are made."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sourcing.quantities import show_diameter, show_length
from sourcing.springs import pulled
from sourcing.springs.hooks import COILS_OF_HOOK
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.winding.extension.ends import end_words
from sourcing.winding.in_hand import keeps
from sourcing.winding.saving.coil import AS_LONG_MM, TOLD_FROM, Coil, Way, came_out_at, keep_it, save_it
from sourcing.winding.saving.extension.bending import length_for_forces
from sourcing.winding.saving.extension.body import Tension, hooks_of, wanted_of
from sourcing.winding.saving.extension.tension import heat_leaves, said_of_tension, tension_came


@dataclass(frozen=True, slots=True)
class Came:
    """What was measured, the spring that it is with the coils that were meant, and with those that restore its rate.

    `cut`: with the coils that it is given, which are those, or all that are there for the body where those are fewer
    (`there`). `tension_n` and `left` are None where the tension was not measured.
    """

    outside_mm: float
    tension_n: float | None
    left: Tension | None
    kept: ExtensionSpring
    just: ExtensionSpring
    cut: ExtensionSpring
    there: float

    @property
    def enough(self) -> bool:
        """Whether it has the coils that restore its rate."""
        return self.just.total_coils <= self.there

    def is_cut(self, way: Way[ExtensionSpring]) -> bool:
        """Whether a way is one with other coils."""
        return way.spring.active_coils != self.kept.active_coils


def said_of(coil: Coil, came: Came, way: Way[ExtensionSpring], rate_kept: float) -> Iterator[str]:
    """The verdict, what is done to coils and ends, and how long the spring is then."""
    wanted, at = wanted_of(coil), _came_at(coil, came)
    words, meant = end_words(wanted.hooks), _shown(coil, wanted.active_coils)
    rate = f"With {meant} {words.coils} its rate is {rate_kept:.3f} of that meant"
    if way.answer == "wind again":
        saves = (
            "other coils do not save it" if came.left is None else f"neither other coils nor other {words.ends} save it"
        )
        yield f"{at}, and {saves}: wind it again."
        if not came.enough:
            yield _other_coils(coil, came)
        return
    if way.answer == "keep":
        yield f"{at}: {keep_it(coil, way)}. {rate}."
        if abs(rate_kept - 1.0) >= TOLD_FROM and (came.enough or not keeps(way.fit, coil.plan.fit)):
            yield _other_coils(coil, came)
        elif came.left is not None and abs(rate_kept - 1.0) < TOLD_FROM:
            yield from length_for_forces(coil, came.kept, way)
    elif came.is_cut(way):
        yield f"{at}: {save_it(coil, way)}. {rate}."
        yield from _other_ends(coil, came)
    else:
        yield f"{at}: {save_it(coil, way)}. {rate}: leave its coils so."
    if came.left is not None and way.answer == "change":
        yield from said_of_tension(coil, came.left, came.cut if came.is_cut(way) else came.kept, way)
    yield from hooks_of(coil, way)


def _other_coils(coil: Coil, came: Came) -> str:
    """The coils that would give the rate that was meant, or that it has not so many."""
    coils = f"{_shown(coil, came.just.active_coils)} {end_words(came.just.hooks).coils}"
    if came.enough:
        return f"Just so: {coils} give the rate that was meant{_counted(coil)}{_no_longer(coil, came)}."
    spare = "" if coil.heated else ", spare ones too"
    idle = came.just.total_coils - came.just.active_coils
    return f"For the rate that was meant it would want {coils}, and has {_shown(coil, came.there - idle)}{spare}."


def _other_ends(coil: Coil, came: Came) -> Iterator[str]:
    """How the ends are made for other coils."""
    hooks = came.cut.hooks
    rate = pulled.rate_n_per_mm(came.cut) / pulled.rate_n_per_mm(wanted_of(coil))
    gives = "give the rate that was meant" if came.enough else f"give {rate:.3f} of the rate that was meant"
    coils = f"{_shown(coil, came.cut.active_coils)} {end_words(hooks).coils} {gives}{_counted(coil)}"
    if hooks is Hooks.THREADED_PLUG:
        yield f"Screw its plugs so deep that {coils}{_no_longer(coil, came)}."
        if came.cut.total_coils > wanted_of(coil).total_coils:
            total = coil.shown(came.cut.total_coils)
            yield f"Leave spare turns on it for that: {total} coils{coil.counted}, those on both plugs among them."
        return
    if came.cut.total_coils > came.kept.total_coils:
        how_many = "more" if came.enough else "all"
        yield (
            f"Leave {how_many} of its spare turns in the body as you bend its hooks: {coils}{_no_longer(coil, came)}. "
            "Where they are bent already it has no more."
        )
        return
    yield f"Bend the hooks so that {coils}{_no_longer(coil, came)}."
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
