"""What hangs on an initial tension that is still to be read: after heat, or after a pull that takes some away."""

from __future__ import annotations

from dataclasses import replace

from sourcing.fit.model import Fit
from sourcing.quantities import show_force
from sourcing.springs.model import ExtensionSpring
from sourcing.winding.in_hand import keeps
from sourcing.winding.saving.coil import Coil, Way
from sourcing.winding.saving.extension.body import Tension, judged, wanted_of
from sourcing.winding.saving.extension.tension_ways import SCALE_SD, heat_to_come
from sourcing.winding.saving.verdict_words import is_low, low_chance, of_chance


def takes_away(left: Tension, way: Way[ExtensionSpring]) -> bool:
    """Whether a way is one in which less tension is left than it has."""
    return (way.spring.initial_tension_n or 0.0) < left.newtons and way.answer == "change"


def heat_decides(coil: Coil, left: Tension, way: Way[ExtensionSpring]) -> bool:
    """Whether a coil that would be kept is so, or is not, by how much of its tension heat takes.

    One that is kept with the chance that the bench asks for waits for nothing.
    """
    if way.answer != "keep" or not heat_to_come(coil):
        return False
    if keeps(way.fit, coil.plan.fit) and not is_low(coil, way.fit):
        return False
    ends_n = (left.newtons - 2.0 * left.sd_n, left.newtons + 2.0 * left.sd_n)
    kept = [keeps(_with(coil, way.spring, Tension(end_n, SCALE_SD * end_n)), coil.plan.fit) for end_n in ends_n]
    return any(kept) and not all(kept)


def to_be_read(coil: Coil, left: Tension, way: Way[ExtensionSpring]) -> bool:
    """Whether what becomes of a coil hangs on what its tension reads later."""
    return takes_away(left, way) or heat_decides(coil, left, way)


def heat_first(coil: Coil, kept: ExtensionSpring) -> str:
    """That it is heated and read first; what is kept then, where the sheet's list tells it of that very coil."""
    wanted = wanted_of(coil)
    if replace(kept, initial_tension_n=wanted.initial_tension_n) == wanted:
        then = f"measure that again: {_listed(coil)} keep it as it is, else ask again with --came-out-tension"
    else:
        then = "measure both again, and ask with --came-out, --came-out-tension"
    return f"heat it first, as the sheet has it, for its tension after heat decides; then {then} and --heated yes"


def most_kept_n(coil: Coil) -> float:
    """The most initial tension that the sheet's list accepts."""
    high_n = _row(coil)[1]
    assert high_n is not None
    return high_n


def chance_once_pulled(coil: Coil, way: Way[ExtensionSpring]) -> str:
    """The chance of a spring that is pulled, by what it may read then: as was meant, or the most that will do."""
    chance, fits = of_chance(way.fit), [way.fit]
    said = f"If it then reads {show_force(way.spring.initial_tension_n or 0.0, coil.units)}, {chance}"
    if way.spring == wanted_of(coil):
        most_n = most_kept_n(coil)
        fits.append(_with(coil, way.spring, Tension(most_n, SCALE_SD * most_n)))
        said = f"{said}, and at {show_force(most_n, coil.units)} it is {fits[-1].chance:.2f}"
    return f"{said}{low_chance(coil, min(fits, key=lambda fit: fit.chance))}."


def _with(coil: Coil, spring: ExtensionSpring, tension: Tension) -> Fit:
    return judged(coil, replace(spring, initial_tension_n=tension.newtons), tension)


def _row(coil: Coil) -> tuple[float | None, float | None]:
    """Between what the sheet's list accepts an initial tension."""
    (row,) = (row for row in coil.plan.accept if row.figure == "initial_tension_n")
    return row.low, row.high


def _listed(coil: Coil) -> str:
    low_n, high_n = _row(coil)
    assert high_n is not None
    high = show_force(high_n, coil.units)
    return f"between {show_force(low_n, coil.units)} and {high}" if low_n else f"at {high} or less"
