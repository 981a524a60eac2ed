"""A torsion spring that came out otherwise: in its diameter, in the angle between its legs, or both.

All the wire of the body stays in it, so the rate is what was meant however far the coil opened; the coils, and with
them the legs, have turned back by more or by less.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import hypot

from sourcing.figures import formula
from sourcing.fit.model import Fit, Spread
from sourcing.quantities import show_angle, show_diameter
from sourcing.springs import turned
from sourcing.springs.life import Making
from sourcing.springs.model import TorsionSpring
from sourcing.stock.model import Trial
from sourcing.winding import in_hand
from sourcing.winding.coil_reading import SURPRISE
from sourcing.winding.doubts import COILS_DOUBT, RATE_DOUBT, opening_sd
from sourcing.winding.heat import change_of_diameter
from sourcing.winding.in_hand import keeps
from sourcing.winding.leg_reading import WHOLE_TURN_DEG, relative_sd
from sourcing.winding.saving.coil import (
    HARDLY_CHANCE,
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
    save_it,
    write_down,
    wrong,
)
from sourcing.winding.saving.next_coil import next_coil, said_of_next
from sourcing.winding.torsion.in_hand import as_it_came, turned_on_deg, with_coils
from sourcing.winding.torsion.task import BENT_AT_MOST_DEG, LEGS_SET_DEG
from sourcing.winding.turns import opens_deg

_TWO_COILS = (
    "Diameter and angle do not belong to one coil: measure both again, and count the turns, before you go by what "
    "follows."
)


@dataclass(frozen=True, slots=True)
class _Came:
    """The spring as it came out, in its final state with its legs as they stand, and by how much they are off.

    `off_deg` counts whole turns too; `trial` is None where the diameter was not measured; `surprising`: it is too far
    off to be chance.
    """

    spring: TorsionSpring
    off_deg: float
    trial: Trial | None
    surprising: bool
    agree: bool = True


def wanted_of(coil: Coil) -> TorsionSpring:
    """The spring that was meant, in its final state."""
    assert isinstance(coil.plan.wanted, TorsionSpring)
    return coil.plan.wanted


def judged(coil: Coil, spring: TorsionSpring) -> Fit:
    """The spring against the need, measured."""
    spread = Spread(
        diameter_sd_mm=coil.diameter_sd_mm(spring.mean_diameter_mm),
        rate_sd=(RATE_DOUBT**2 + (COILS_DOUBT / spring.active_coils) ** 2) ** 0.5,
        free_angle_sd_deg=LEGS_SET_DEG,
        making=Making.WOUND,
    )
    return in_hand.judged(spring, coil.need, coil.bench, spread)


def came_out(coil: Coil, outside_mm: float) -> Saved:
    """A coil whose diameter came out otherwise: n' = n D / D', and the legs stand 360 (n' − n) further on."""
    wanted, mean_mm = wanted_of(coil), coil.final_mean_mm(outside_mm)
    refuse_senseless(coil, "outside", outside_mm, _mandrel_mm(coil))
    came = as_it_came(wanted, mean_mm)
    trial = coil.trial(_mandrel_mm(coil), outside_mm)
    off_deg, surprising = turned_on_deg(wanted, came), coil.known_then(trial).unsettled
    said = (*_said_of_diameter(coil, outside_mm), *_said_of_legs(coil, off_deg))
    return _answer(coil, _Came(came, off_deg, trial, surprising), iter(said))


def came_out_angle(coil: Coil, angle_deg: float) -> Saved:
    """A coil whose legs stand at another angle: n' = n + θ/360, and the diameter follows, D' = D n / n'."""
    wanted, off_deg = wanted_of(coil), _off_deg(coil, angle_deg)
    coils = wanted.active_coils + off_deg / WHOLE_TURN_DEG
    came = with_coils(wanted, wanted.mean_diameter_mm * wanted.active_coils / coils, coils)
    surprising = abs(off_deg) > SURPRISE * _expected_sd_deg(coil)
    return _answer(coil, _Came(came, off_deg, None, surprising), _said_of_angle(coil, angle_deg))


def came_out_with_angle(coil: Coil, outside_mm: float, angle_deg: float) -> Saved:
    """A coil of which both were measured: the whole turns by which the legs are off are told by the diameter."""
    wanted, mean_mm = wanted_of(coil), coil.final_mean_mm(outside_mm)
    refuse_senseless(coil, "outside", outside_mm, _mandrel_mm(coil))
    about_deg = WHOLE_TURN_DEG * wanted.active_coils * (wanted.mean_diameter_mm / mean_mm - 1.0)
    off_deg = _off_deg(coil, angle_deg)
    off_deg += WHOLE_TURN_DEG * round((about_deg - off_deg) / WHOLE_TURN_DEG)
    came = with_coils(wanted, mean_mm, wanted.active_coils + off_deg / WHOLE_TURN_DEG)
    trial = replace(coil.trial(_mandrel_mm(coil), outside_mm), stop_angle_deg=stop_deg(coil), leg_angle_deg=angle_deg)
    lesson = coil.known_then(trial).lessons[-1]
    said = (*_said_of_diameter(coil, outside_mm), *_said_of_angle(coil, angle_deg))
    return _answer(coil, _Came(came, off_deg, trial, lesson.surprising, lesson.agree), iter(said))


@formula(
    "u = 360 n √(u_o² + u_l² + u_h²)",
    where={"n": "coils", "u_o": "opening_sd", "u_l": "reading_sd", "u_h": "heat_sd"},
    source="derived, see winding_model: a share by which the coils open more is that share of all their turns",
)
def legs_sd_deg(coils: float, opening_sd: float, reading_sd: float, heat_sd: float) -> float:
    """How far legs may be read from where they were expected, one standard deviation in degrees.

    The relative doubts are of how far the coil opens, of what is read and counted, and of what heat did to it.

    >>> round(legs_sd_deg(5.0, 0.02, 0.005, 0.0), 1)
    37.1
    """
    return WHOLE_TURN_DEG * coils * hypot(opening_sd, reading_sd, heat_sd)


def _expected_sd_deg(coil: Coil) -> float:
    """The same of the coil, by what is known of its wire."""
    assert isinstance(coil.meant, TorsionSpring)
    coils, heat_sd = coil.meant.active_coils, change_of_diameter(coil.wire.material, coil.bench)[1]
    doubts = (opening_sd(coil.known_then(), _mandrel_mm(coil)), relative_sd(_turns(coil), coils))
    return legs_sd_deg(coils, *doubts, heat_sd if coil.heated else 0.0)


def stop_deg(coil: Coil) -> float | None:
    """Where the plan stops the crank, from leg 1 on to leg 2; None where no angle is wanted."""
    meant = coil.plan.finished.spring
    assert isinstance(meant, TorsionSpring)
    if meant.free_angle_deg is None:
        return None
    return (meant.free_angle_deg + opens_deg(_turns(coil), meant.active_coils)) % WHOLE_TURN_DEG


def _turns(coil: Coil) -> float:
    """The turns laid of one body."""
    return coil.plan.turns_to_wind / wanted_of(coil).bodies


def _mandrel_mm(coil: Coil) -> float:
    assert coil.plan.mandrel.diameter_mm is not None
    return coil.plan.mandrel.diameter_mm


def _meant_deg(coil: Coil) -> float | None:
    """The angle that was meant, in the state in which the coil was measured."""
    assert isinstance(coil.meant, TorsionSpring)
    return coil.meant.free_angle_deg


def _off_deg(coil: Coil, angle_deg: float) -> float:
    """By how much legs at an angle stand further on than meant, the nearer way round."""
    meant_deg = _meant_deg(coil)
    if meant_deg is None:
        found = "the need names no free_angle, so the legs may stand as they like"
        raise SenselessError("angle", found, "a free_angle in the need, or --came-out")
    return (angle_deg - meant_deg + 180.0) % WHOLE_TURN_DEG - 180.0


def _answer(coil: Coil, came: _Came, first: Iterator[str]) -> Saved:
    """What to do: keep it, bend its legs, or wind it again and stop the crank elsewhere."""
    wanted = wanted_of(coil)
    as_it_is = Way("keep", came.spring, judged(coil, came.spring))
    bent = replace(came.spring, free_angle_deg=wanted.free_angle_deg)
    bends = wanted.free_angle_deg is not None and abs(came.off_deg) <= BENT_AT_MOST_DEG
    way = best_way(coil, as_it_is, *([Way("change", bent, judged(coil, bent))] if bends else []))
    rate_kept = turned.rate_n_mm_per_deg(came.spring) / turned.rate_n_mm_per_deg(wanted)
    then = None if came.trial is None else next_coil(coil, came.trial)
    planned = stop_deg(coil)
    later_deg = -came.off_deg * _turns(coil) / came.spring.active_coils
    next_stop = None if planned is None else (planned + later_deg) % WHOLE_TURN_DEG
    said = joined_said(
        first,
        [] if came.agree else [_TWO_COILS],
        _said(coil, came, way),
        clearances(way.fit),
        wrong(way.fit, coil.bench),
        _said_of_surprise(came),
        (*_said_of_stop(came, later_deg, next_stop), *said_of_next(coil, then)) if came.agree else (),
        _written(coil, came) if came.agree else (),
    )
    return Saved(way.answer, way.spring, way.fit, rate_kept, said, then and then.plan.mandrel, next_stop)


def _written(coil: Coil, came: _Came) -> Iterator[str]:
    """How the coil is written down, or what is wanting for that."""
    return _measure_too(coil) if came.trial is None else write_down(coil, came.trial)


def _said_of_diameter(coil: Coil, outside_mm: float) -> Iterator[str]:
    assert isinstance(coil.meant, TorsionSpring)
    yield came_out_at(*(show_diameter(mm, coil.units) for mm in (outside_mm, coil.meant.outside_diameter_mm))) + "."


def _said_of_angle(coil: Coil, angle_deg: float) -> Iterator[str]:
    came, meant = show_angle(angle_deg), show_angle(_meant_deg(coil) or 0.0)
    yield f"Its legs came out at {came}" + (", as meant." if came == meant else f" instead of {meant}.")


def _said_of_legs(coil: Coil, off_deg: float) -> Iterator[str]:
    """Where the legs of a coil should stand of which the diameter alone was measured."""
    meant_deg = _meant_deg(coil)
    if meant_deg is None or abs(off_deg) < LEGS_SET_DEG:
        return
    stand, meant = show_angle((meant_deg + off_deg) % WHOLE_TURN_DEG), show_angle(meant_deg)
    yield (
        f"Its legs should then stand at {stand} instead of {meant}. That is worked out from the diameter: measure "
        "them, and ask again with --came-out-angle beside it."
    )


def _said(coil: Coil, came: _Came, way: Way[TorsionSpring]) -> Iterator[str]:
    kept = "All its wire is in the body still, so its rate is the one that was meant"
    now, meant = (coil.shown(spring.active_coils) for spring in (came.spring, wanted_of(coil)))
    coils = f"{now} coils" + ("" if now == meant else f" instead of {meant}")
    if way.answer == "keep":
        keep = keep_it(coil, way)
        yield f"{keep[0].upper()}{keep[1:]}. {kept}: {coils}{coil.counted}."
    elif way.answer == "change":
        if not keeps(way.fit, coil.plan.fit):
            near = save_it(coil, way)
            yield f"{near[0].upper()}{near[1:]}."
        yield f"Bend its legs {_back(came.off_deg)} where they leave the coil. {kept}: {coils}{coil.counted}."
    else:
        yield "Wind it again: bending its legs does not save it."
        if wanted_of(coil).free_angle_deg is not None and abs(came.off_deg) > BENT_AT_MOST_DEG:
            off = show_angle(abs(came.off_deg))
            yield f"They are {off} off, and are bent by {BENT_AT_MOST_DEG:g} deg at most (assumed)."
    if came.trial is None and abs(came.off_deg) >= 1.0:
        outside_mm = came.spring.mean_diameter_mm / (1.0 + coil.change_to_come) + coil.wire_mm
        yield f"If the turns were counted right, it is {show_diameter(outside_mm, coil.units)} outside."


def _back(off_deg: float) -> str:
    """The way in which legs are bent that stand too far on, or not far enough."""
    way = "back, against the way it is wound up," if off_deg > 0.0 else "on, the way it is wound up,"
    return f"{way} by {show_angle(abs(off_deg))} between them"


def _said_of_surprise(came: _Came) -> Iterator[str]:
    """That it is too far off to be chance; of an angle alone, turns that were counted wrongly come first."""
    if not came.surprising or not came.agree:
        return
    if came.trial is None:
        yield "Count its turns again first: a quarter of a turn counted wrongly is 90 deg between its legs."
    yield HARDLY_CHANCE


def _said_of_stop(came: _Came, later_deg: float, next_stop_deg: float | None) -> Iterator[str]:
    """Where to stop next: turns that are laid more become fewer coils as the coil opens, so by more than it was off."""
    if next_stop_deg is None or abs(later_deg) < LEGS_SET_DEG:
        return
    late = "later" if later_deg > 0.0 else "sooner"
    begins = "If that agrees, on the same mandrel" if came.surprising else "On the same mandrel,"
    yield (
        f"{begins} stop the crank {show_angle(abs(later_deg))} {late} next time: at "
        f"{show_angle(next_stop_deg)}, from leg 1 on to leg 2 the way you wind."
    )


def _measure_too(coil: Coil) -> Iterator[str]:
    if coil.wire.spool is not None:
        yield "Measure it outside too (--came-out), so that it can be written down as a trial."
