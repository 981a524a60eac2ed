"""Limits of how long a spring lasts, of any kind: cycles, and what is left of its force where it is warm."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.case import AnyCase, Worked
from sourcing.fit.model import Limit, WantedFigure
from sourcing.fit.score import allowed
from sourcing.quantities import show_angle, show_cycles, show_force, show_temperature, show_torque
from sourcing.springs.fatigue import FEWEST_CYCLES, MOST_CYCLES
from sourcing.springs.life import Life, Word, badness
from sourcing.springs.life import life as life_of
from sourcing.springs.strength import Place
from sourcing.springs.warmth import ROOM_C, left_of_force

LIFE = "life"


def life(case: AnyCase) -> Iterator[Limit]:
    """The spring must last the cycles wanted, at whichever place in its wire gives way first.

    It holds where it lasts them even if its life is off by its factor; where it is not sure to, it is near.
    """
    cycles, tensile_mpa, places = case.need.cycles, case.spring.tensile_strength_mpa, tuple(case.worked())
    if cycles is None or tensile_mpa is None or not places:
        return
    words = [each.steady for each in places if each.steady is not Word.WELL_WITHIN]
    if words:
        yield Limit(LIFE, False, True, f"{max(words, key=badness)} at once: no cycles to be counted")
    elif cycles < FEWEST_CYCLES:
        why = f"{Word.WELL_WITHIN}: {show_cycles(cycles)} cycles are few enough to count as a steady load"
        yield Limit(LIFE, True, True, why)
    else:
        yield _life_of(*_first_to_break(case, places, tensile_mpa), cycles)


def _first_to_break(case: AnyCase, places: tuple[Worked, ...], tensile_mpa: float) -> tuple[Life, str]:
    """The life of the place that gives way first, and where that is, if others last longer."""
    material, making = case.spring.material, case.spread.making
    lives = [life_of(each.place, material, tensile_mpa, each.low_mpa, each.high_mpa, making) for each in places]
    shortest = min(lives, key=lambda each: each.cycles)
    alone = sum(each.cycles == shortest.cycles for each in lives) == 1 < len(lives)
    return shortest, _PARTS.get(places[lives.index(shortest)].place, "") if alone else ""


_PARTS = {
    Place.BODY: "the body breaks first, ",
    Place.HOOK_BENDING: "the hook's loop breaks first, ",
    Place.HOOK_TORSION: "the hook's bend breaks first, ",
}


def _life_of(lasts: Life, where: str, cycles: float) -> Limit:
    why = f"{where}{lasts.told}; {show_cycles(cycles)} wanted"
    if lasts.as_far_as_known and cycles > MOST_CYCLES:
        why += ": tests in print end at ten million, and what comes after is not known"
        return Limit(LIFE, False, False, why)
    if lasts.serves(cycles):
        return Limit(LIFE, True, True, why)
    if lasts.may_serve(cycles):
        return Limit(LIFE, False, False, why + ": it may break before, keep a second one ready")
    return Limit(LIFE, False, True, f"{why}: it {Word.WILL_BREAK}")


def warm(case: AnyCase) -> Iterator[Limit]:
    """Where it is warm, the wanted forces must be there with what is left of them: a soft limit."""
    at_c = case.need.temperature_c
    left = None if at_c is None or at_c <= ROOM_C else left_of_force(case.spring.material, at_c)
    if at_c is None or left is None:
        return
    at = show_temperature(at_c, case.bench.units)
    why = (
        f"at {at} it keeps {100 * left[0]:.0f} to {100 * left[1]:.0f} % of its force (the wire is softer, and gives "
        "way in the first hundred hours)"
    )
    missed = [each for each in case.wanted() if each.figure in ("force", "torque") and _missed(each, left)]
    told = "; ".join(_told(each, left, case) for each in missed)
    yield Limit("force when warm", not missed, False, f"{why}: {told}" if missed else why)


def _missed(wanted: WantedFigure, left: tuple[float, float]) -> bool:
    """Whether a figure that is within its tolerance at room temperature may be below it where it is warm."""
    least, _ = allowed(wanted.wanted, wanted.house)
    return least is not None and wanted.got >= least > wanted.got * left[0]


def _told(wanted: WantedFigure, left: tuple[float, float], case: AnyCase) -> str:
    show, units = show_force if wanted.figure == "force" else show_torque, case.bench.units
    least, _ = allowed(wanted.wanted, wanted.house)
    low, high, wants = (show(figure, units) for figure in (wanted.got * left[0], wanted.got * left[1], least or 0.0))
    at = wanted.at or 0.0
    where = case.length(at) if wanted.at_unit == "mm" else show_angle(at)
    return f"{low} to {high} at {where}, where {wants} is the least"
