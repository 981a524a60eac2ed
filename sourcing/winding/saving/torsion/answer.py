"""A torsion spring whose diameter or whose legs came out otherwise: kept, its legs bent, or wound again."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.springs import turned
from sourcing.springs.model import TorsionSpring
from sourcing.winding.coil_reading import SURPRISE
from sourcing.winding.leg_reading import WHOLE_TURN_DEG
from sourcing.winding.saving.coil import Coil, Saved, Way, best_way, joined_said, refuse_senseless, saved_by, write_down
from sourcing.winding.saving.next_coil import NextCoil, next_coil, said_of_next
from sourcing.winding.saving.torsion.body import (
    Came,
    expected_sd_deg,
    judged,
    legs_off_deg,
    mandrel_mm,
    stop_deg,
    turns_laid,
    wanted_of,
)
from sourcing.winding.saving.torsion.words import (
    TWO_COILS,
    diameter_came,
    hangs_on,
    legs_came,
    measure_too,
    measured_first,
    said_of_deed,
    said_of_legs,
    said_of_stop,
    said_of_surprise,
    surer_bent,
    verdict,
)
from sourcing.winding.saving.verdict_words import chance_said, clearances, wrong
from sourcing.winding.torsion.in_hand import as_it_came, turned_on_deg, with_coils
from sourcing.winding.torsion.task import BENT_AT_MOST_DEG


def came_out(coil: Coil, outside_mm: float) -> Saved:
    """A coil whose diameter came out otherwise: n' = n D / D', and the legs stand 360 (n' − n) further on."""
    wanted, mean_mm = wanted_of(coil), coil.final_mean_mm(outside_mm)
    refuse_senseless(coil, "outside", outside_mm, mandrel_mm(coil))
    came = as_it_came(wanted, mean_mm)
    trial = coil.trial(mandrel_mm(coil), outside_mm)
    off_deg, surprising = turned_on_deg(wanted, came), coil.known_then(trial).lessons[-1].surprising
    return _answer(coil, diameter_came(coil, outside_mm), Came(came, off_deg, trial, surprising))


def came_out_angle(coil: Coil, angle_deg: float) -> Saved:
    """A coil whose legs stand at another angle: n' = n + θ/360, and the diameter follows, D' = D n / n'."""
    wanted, off_deg = wanted_of(coil), legs_off_deg(coil, angle_deg)
    coils = wanted.active_coils + off_deg / WHOLE_TURN_DEG
    came = with_coils(wanted, wanted.mean_diameter_mm * wanted.active_coils / coils, coils)
    surprising = abs(off_deg) > SURPRISE * expected_sd_deg(coil)
    return _answer(coil, f"Its {legs_came(coil, angle_deg)}", Came(came, off_deg, None, surprising))


def came_out_with_angle(coil: Coil, outside_mm: float, angle_deg: float) -> Saved:
    """A coil of which both were measured: the whole turns by which the legs are off are told by the diameter."""
    wanted, mean_mm = wanted_of(coil), coil.final_mean_mm(outside_mm)
    refuse_senseless(coil, "outside", outside_mm, mandrel_mm(coil))
    about_deg = WHOLE_TURN_DEG * wanted.active_coils * (wanted.mean_diameter_mm / mean_mm - 1.0)
    off_deg = legs_off_deg(coil, angle_deg)
    off_deg += WHOLE_TURN_DEG * round((about_deg - off_deg) / WHOLE_TURN_DEG)
    came = with_coils(wanted, mean_mm, wanted.active_coils + off_deg / WHOLE_TURN_DEG)
    trial = replace(coil.trial(mandrel_mm(coil), outside_mm), stop_angle_deg=stop_deg(coil), leg_angle_deg=angle_deg)
    lesson = coil.known_then(trial).lessons[-1]
    at = f"{diameter_came(coil, outside_mm)}, and its {legs_came(coil, angle_deg)}"
    return _answer(coil, at, Came(came, off_deg, trial, lesson.surprising, lesson.agree))


def _answer(coil: Coil, at: str, came: Came) -> Saved:
    """What to do: keep it, bend its legs, or wind it again and stop the crank elsewhere.

    `at`: what was measured beside what was meant. Where something is to be measured before a verdict, that is all that
    is told to be done: what the next coil would be hangs on it too.
    """
    wanted = wanted_of(coil)
    if not came.agree:
        return Saved("measure first", came.spring, None, 1.0, (f"{at}.", TWO_COILS))
    bent_spring = replace(came.spring, free_angle_deg=wanted.free_angle_deg)
    bent = Way("change", bent_spring, judged(coil, bent_spring))
    rate_kept = turned.rate_n_mm_per_deg(came.spring) / turned.rate_n_mm_per_deg(wanted)
    if bent.fit.fits != "no" and (first := measured_first(coil, came, bent)):
        way = Way("measure first", came.spring, bent.fit)
        return saved_by(way, rate_kept, _said_first(coil, came, way, f"{at}: {first}."))
    stands = came.spring if came.legs_measured else bent_spring
    as_it_is = Way("keep", stands, judged(coil, stands))
    bends = wanted.free_angle_deg is not None and abs(came.off_deg) <= BENT_AT_MOST_DEG
    way = best_way(coil, as_it_is, *([bent] if bends else []))
    then = None if came.trial is None else next_coil(coil, came.trial)
    planned = stop_deg(coil) if bent.fit.fits != "no" or came.trial is None else None
    later_deg = -came.off_deg * turns_laid(coil) / came.spring.active_coils
    next_stop = None if planned is None else (planned + later_deg) % WHOLE_TURN_DEG
    said = joined_said(
        [f"{at}: {verdict(coil, way)}."],
        said_of_deed(coil, came, way),
        chance_said(coil, way),
        surer_bent(came, way, bent.fit),
        clearances(way.fit),
        wrong(way.fit, coil.bench),
        said_of_surprise(came),
        _said_of_next(coil, then, said_of_stop(came, later_deg, next_stop)),
        measure_too(coil) if came.trial is None else write_down(coil, came.trial),
    )
    return saved_by(way, rate_kept, said, then and then.plan.mandrel, next_stop)


def _said_first(coil: Coil, came: Came, way: Way[TorsionSpring], step: str) -> tuple[str, ...]:
    """The step that comes first, what hangs on it, and what is known of the coil already.

    It is written down once, when that is measured too.
    """
    return joined_said(
        [step],
        hangs_on(coil, came),
        said_of_legs(coil, came),
        said_of_deed(coil, came, way),
        clearances(way.fit),
        wrong(way.fit, coil.bench),
        said_of_surprise(came),
        write_down(coil, came.trial) if came.trial is not None and coil.written else (),
    )


def _said_of_next(coil: Coil, then: NextCoil | None, stop: str) -> Iterator[str]:
    """Where to stop next, or the mandrel to take instead; on the same one the stop says what other turns would."""
    if not stop:
        yield from said_of_next(coil, then)
        return
    yield stop
    mandrel, *others = [*said_of_next(coil, then, "Or on another")] or [""]
    if then is not None and then.plan.mandrel.diameter_mm != mandrel_mm(coil):
        yield mandrel
    yield from others
