"""What is said of an initial tension that came out otherwise: the verdict, and what is done about it."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_force
from sourcing.springs.model import ExtensionSpring
from sourcing.winding.extension.ends import end_words
from sourcing.winding.extension.hand_tension import LOST_IN_HEAT, TENSION_DOUBTED, hand_tension_n
from sourcing.winding.extension.tension_words import LEAN_LESS, LEAN_MORE, NOT_PUT_IN, READ_AGAIN, take_away
from sourcing.winding.saving.coil import Coil, Way
from sourcing.winding.saving.extension.bending import hooks_bent, hooks_of, if_it_stays, length_for_forces
from sourcing.winding.saving.extension.body import Tension, wanted_of
from sourcing.winding.saving.extension.rows_left import rows_left
from sourcing.winding.saving.extension.tension_ways import heat_to_come, too_little
from sourcing.winding.saving.extension.to_be_read import (
    chance_once_pulled,
    heat_decides,
    heat_first,
    most_kept_n,
    takes_away,
)
from sourcing.winding.saving.verdict_words import keep_it, save_it

IF_AGAIN = "if it reads so once more, "
"""How the verdict begins on a tension that no hand winds."""


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


def verdict(coil: Coil, way: Way[ExtensionSpring]) -> str:
    """That it is kept and why, that it can be saved, or that nothing saves it."""
    if way.answer == "wind again":
        return f"wind it again; no other length {end_words(way.spring.hooks).between} saves it"
    if way.answer == "change":
        return save_it(coil, way)
    return keep_it(coil, way) + ("; its forces are within what is wanted" if way.fit.fits == "yes" else "")


def said_of_tension(coil: Coil, left: Tension, kept: ExtensionSpring, way: Way[ExtensionSpring]) -> Iterator[str]:
    """What is done about the tension: taken away, or made up for by the hooks of a spring that keeps what is left."""
    if takes_away(left, way):
        yield from _said_of_taking_away(coil, left, kept, way)
        return
    if way.answer != "keep" and too_little(coil, left):
        yield f"Too little: {NOT_PUT_IN}."
    yield from length_for_forces(coil, kept, way, just_so=just_so(coil, left, way))
    yield from hooks_of(coil, way)


def just_so(coil: Coil, left: Tension, way: Way[ExtensionSpring]) -> str:
    """How a length is told that is just the one for a spring that is kept: by what heat leaves, where that decides."""
    return f"If heat leaves {show_force(left.newtons, coil.units)}, " if heat_decides(coil, left, way) else "Just so: "


def verdict_on(coil: Coil, kept: ExtensionSpring, left: Tension, way: Way[ExtensionSpring]) -> str:
    """The verdict; it hangs on heat where that decides, of too much tension on how much heat and a pull take away.

    `kept` has the coils that the way has, and its hooks as they were meant.
    """
    if heat_decides(coil, left, way):
        return heat_first(coil, kept)
    if not takes_away(left, way):
        return verdict(coil, way)
    takes = "heat and a pull take" if heat_to_come(coil) else "a pull takes"
    bent = hooks_bent(coil, kept, left)
    ends = end_words(kept.hooks)
    otherwise = {
        "yes": f"else its {ends.ends} make up for it",
        "near": "else it is a near fit, to keep only where that does not matter",
        "no": "else wind it again",
    }
    return f"it can be saved if {takes} enough of that away ({_enough(coil, way)}); {otherwise[bent.fit.fits]}"


def _enough(coil: Coil, way: Way[ExtensionSpring]) -> str:
    """How little is to be left of it: what the sheet's list accepts of the spring that was meant."""
    if way.spring == wanted_of(coil):
        return f"{show_force(most_kept_n(coil), coil.units)} or less will do"
    return f"{show_force(way.spring.initial_tension_n or 0.0, coil.units)} is to be left"


def _said_of_taking_away(coil: Coil, left: Tension, kept: ExtensionSpring, way: Way[ExtensionSpring]) -> Iterator[str]:
    deed = take_away(way.spring, coil.need, coil.units)
    meant = show_force(way.spring.initial_tension_n or 0.0, coil.units)
    first = "Heat it first, and read. If that leaves too much" if heat_to_come(coil) else "Too much"
    yield f"{first}: {deed}; {meant} was meant."
    if way.spring != wanted_of(coil):
        yield from hooks_of(coil, way)
    yield chance_once_pulled(coil, way)
    yield from rows_left(coil, way)
    yield from if_it_stays(coil, kept, left)


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
