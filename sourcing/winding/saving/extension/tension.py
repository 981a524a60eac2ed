"""An extension spring that keeps another initial tension than was meant.

Of what is too much, heat and a pull take some away; else the hooks make up for it as near as they reach (bending.py).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.quantities import show_force
from sourcing.springs.model import ExtensionSpring
from sourcing.winding.extension.ends import end_words
from sourcing.winding.extension.hand_tension import LOST_IN_HEAT, TENSION_DOUBTED, hand_tension_n
from sourcing.winding.extension.tension_words import LEAN_LESS, LEAN_MORE, NOT_PUT_IN, READ_AGAIN, take_away
from sourcing.winding.saving.coil import Coil, Saved, Way, best_way, joined_said, keep_it, save_it, wrong
from sourcing.winding.saving.extension.bending import hooks_bent, if_it_stays, length_for_forces
from sourcing.winding.saving.extension.body import Tension, hooks_of, judged, wanted_of

SCALE_SD = 0.02
"""An initial tension read from a scale, as a share of it, one standard deviation (assumed)."""


def came_out_tension(coil: Coil, tension_n: float) -> Saved:
    """A coil that keeps another initial tension than was meant: less can be made of it, else hooks make up for it."""
    left = left_in_the_end(coil, tension_n)
    kept = replace(wanted_of(coil), initial_tension_n=left.newtons)
    way = best_way(coil, *ways_of(coil, kept, left))
    heat, lean = heat_leaves(coil, tension_n, left), lean_next(coil, tension_n)
    judgement = _if_taken_away(coil, kept, left) if _takes_away(left, way) else verdict(coil, way)
    read_again = tuple(doubted(coil, kept, tension_n))
    if read_again and way.answer != "keep":
        way, judgement = replace(way, answer="measure first"), f"if it reads so once more, {judgement}"
    said = joined_said(
        [f"It came out with {tension_came(coil, tension_n)}{heat}."],
        read_again,
        [f"{judgement[0].upper()}{judgement[1:]}."],
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


def ways_of(
    coil: Coil, kept: ExtensionSpring, left: Tension, body_mm: float | None = None
) -> tuple[Way[ExtensionSpring], ...]:
    """A spring as it is; pulled until no more tension is left than was meant; its hooks bent to give the forces."""
    as_it_is, lengthened = Way("keep", kept, judged(coil, kept, left)), hooks_bent(coil, kept, left, body_mm)
    if not too_much(coil, left):
        return as_it_is, lengthened
    meant_n = wanted_of(coil).initial_tension_n or 0.0
    less = replace(kept, initial_tension_n=meant_n)
    return as_it_is, Way("change", less, judged(coil, less, Tension(meant_n, SCALE_SD * meant_n))), lengthened


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


def verdict(coil: Coil, way: Way[ExtensionSpring]) -> str:
    """That it is kept and why, that it can be saved, or that nothing saves it."""
    if way.answer == "wind again":
        return f"wind it again; no other length {end_words(way.spring.hooks).between} saves it"
    if way.answer == "change":
        return save_it(coil, way)
    return keep_it(coil, way) + ("; its forces are within what is wanted" if way.fit.fits == "yes" else "")


def said_of_tension(coil: Coil, left: Tension, kept: ExtensionSpring, way: Way[ExtensionSpring]) -> Iterator[str]:
    """What is done about the tension: taken away, or made up for by the hooks of a spring that keeps what is left."""
    if _takes_away(left, way):
        yield from _said_of_taking_away(coil, left, kept, way)
        return
    if way.answer != "keep" and _too_little(coil, left):
        yield f"Too little: {NOT_PUT_IN}."
    yield from length_for_forces(coil, kept, way)
    yield from hooks_of(coil, way)


def _takes_away(left: Tension, way: Way[ExtensionSpring]) -> bool:
    """Whether a way is one in which less tension is left than it has."""
    return (way.spring.initial_tension_n or 0.0) < left.newtons and way.answer in ("change", "measure first")


def _if_taken_away(coil: Coil, kept: ExtensionSpring, left: Tension) -> str:
    """The verdict that hangs on how much heat and a pull take away, and what it is where they do not."""
    takes = "heat and a pull take" if _heat_to_come(coil) else "a pull takes"
    bent = hooks_bent(coil, kept, left)
    ends = end_words(kept.hooks)
    otherwise = {
        "yes": f"else its {ends.ends} make up for it",
        "near": "else it is a near fit, to keep only where that does not matter",
        "no": "else wind it again",
    }
    return f"it can be saved if {takes} enough of that away; {otherwise[bent.fit.fits]}"


def _said_of_taking_away(coil: Coil, left: Tension, kept: ExtensionSpring, way: Way[ExtensionSpring]) -> Iterator[str]:
    deed = take_away(way.spring, coil.need, coil.units)
    meant = show_force(way.spring.initial_tension_n or 0.0, coil.units)
    first = "Heat it first, and read. If that leaves too much" if _heat_to_come(coil) else "Too much"
    if way.spring == wanted_of(coil):
        yield f"{first}: {deed}; {meant} was meant, and {_most_kept(coil)} or less will do."
    else:
        yield f"{first}: {deed}; {meant} is to be left."
        yield from hooks_of(coil, way)
    yield from if_it_stays(coil, kept, left)


def _most_kept(coil: Coil) -> str:
    """The most initial tension that the sheet's list accepts."""
    (row,) = (row for row in coil.plan.accept if row.figure == "initial_tension_n")
    assert row.high is not None
    return show_force(row.high, coil.units)


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
