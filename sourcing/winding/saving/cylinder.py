"""A coil of a cylindrical compression spring that came out otherwise: in its diameter, its pitch, or its set."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.fit.judge import judge
from sourcing.fit.model import Fit, Spread
from sourcing.quantities import show_diameter, show_length
from sourcing.springs import compression, geometry
from sourcing.springs.model import CompressionSpring
from sourcing.springs.pressed import rate_n_per_mm
from sourcing.winding.doubts import rate_sd
from sourcing.winding.heat import making
from sourcing.winding.model import WindingPlan
from sourcing.winding.presetting import as_laid
from sourcing.winding.pressed_task import free_length_sd_mm
from sourcing.winding.saving.coil import (
    AS_LONG_MM,
    TOLD_FROM,
    Coil,
    Saved,
    Way,
    best_way,
    came_out_at,
    clearances,
    joined_said,
    keep_it,
    refuse_senseless,
    said_of_next,
    surprise,
    then_planned,
    write_down,
    wrong,
)
from sourcing.winding.saving.lengths import (
    doubted_pitch,
    of_pitch,
    of_set,
    pitch_next,
    refuse_narrower,
    to_length,
)
from sourcing.winding.turns import SPARE_TURNS

SAME_PITCH_MM = 0.05
"""No finer is a pitch laid by hand (assumed)."""


def wanted_of(coil: Coil) -> CompressionSpring:
    """The spring that was meant, in its final state."""
    assert isinstance(coil.plan.wanted, CompressionSpring)
    return coil.plan.wanted


def judged(coil: Coil, spring: CompressionSpring) -> Fit:
    """The spring against the need, measured: what is left of its doubt is the caliper's and the rate's."""
    spread = Spread(
        diameter_sd_mm=coil.diameter_sd_mm(spring.mean_diameter_mm),
        free_length_sd_mm=free_length_sd_mm(spring),
        rate_sd=rate_sd(spring),
        making=making(coil.wire.material, coil.bench),
    )
    return judge(spring, coil.need, coil.bench, spread)


def came_out(coil: Coil, outside_mm: float) -> Saved:
    """A coil whose diameter came out otherwise: cut to the coils that restore the rate, n = G d⁴ / (8 D³ R).

    >>> from sourcing.springs.compression import active_coils_for_rate as coils, rate_n_per_mm as rate
    >>> round(coils(0.8, 9.9, rate(0.8, 9.6, 6.0, 81500.0), 81500.0), 2)
    5.47

    Source: winding model, hand-checked case 3.
    """
    mandrel_mm = coil.plan.mandrel.diameter_mm
    assert mandrel_mm is not None
    refuse_senseless(coil, "outside", outside_mm, mandrel_mm)
    mean_mm, wanted = coil.final_mean_mm(outside_mm), wanted_of(coil)
    kept, cut = replace(wanted, mean_diameter_mm=mean_mm), _with_its_rate(wanted, mean_mm)
    there = _coils_there(coil, mandrel_mm, mean_mm)
    with_others = Way("change", cut, judged(coil, cut))
    as_it_is = Way("keep", kept, judged(coil, kept))
    way = best_way(as_it_is, *([with_others] if cut.total_coils <= there else []))
    if way.answer == "wind again":
        way = replace(with_others, answer="wind again")
    rate_kept = rate_n_per_mm(kept) / rate_n_per_mm(wanted)
    short = (
        f"It would want {cut.total_coils:.2f} coils for its rate and has {there:.2f}, spare ones too."
        if way.answer == "wind again" and with_others.fit.fits != "no"
        else ""
    )
    trial = coil.trial(mandrel_mm, outside_mm)
    then = then_planned(coil, trial)
    said = joined_said(
        _said_of_diameter(coil, outside_mm, cut, rate_kept, way),
        filter(None, [short]),
        clearances(way.fit),
        wrong(way.fit, coil.bench),
        surprise(coil, trial),
        said_of_next(coil, then),
        write_down(coil, trial),
    )
    return Saved(way.answer, way.spring, way.fit, rate_kept, said, then and then.mandrel)


def _with_its_rate(wanted: CompressionSpring, mean_mm: float) -> CompressionSpring:
    """The spring of another diameter with the coils that give the wanted rate, its end coils kept."""
    active = compression.active_coils_for_rate(
        wanted.wire_diameter_mm, mean_mm, rate_n_per_mm(wanted), wanted.shear_modulus_mpa
    )
    total = active + wanted.total_coils - wanted.active_coils
    return replace(wanted, mean_diameter_mm=mean_mm, active_coils=active, total_coils=total)


def _coils_there(coil: Coil, mandrel_mm: float, mean_mm: float) -> float:
    """The coils that the turns wound have become, spare ones too: the wire keeps its length, N_f D_f = N_m D_m."""
    return (coil.plan.turns_to_wind + SPARE_TURNS) * (mandrel_mm + coil.wire_mm) / mean_mm


def _said_of_diameter(
    coil: Coil, outside_mm: float, cut: CompressionSpring, rate_kept: float, way: Way[CompressionSpring]
) -> Iterator[str]:
    meant, wanted = coil.meant, wanted_of(coil)
    assert isinstance(meant, CompressionSpring)
    came = came_out_at(*(show_diameter(mm, coil.units) for mm in (outside_mm, meant.outside_diameter_mm)))
    if way.answer == "wind again":
        yield f"{came}, and other coils do not save it: wind it again."
        return
    active, total, meant_coils = (
        coil.shown(coils) for coils in (cut.active_coils, cut.total_coils, wanted.active_coils)
    )
    other = f"{active} active coils ({total} in all{coil.counted}) give the rate that was meant"
    if way.answer == "keep":
        rate = f"With {meant_coils} active coils its rate is {rate_kept:.3f} of that meant"
        yield f"{came}: {keep_it(coil, way)}. {rate}."
        if abs(rate_kept - 1.0) >= TOLD_FROM:
            yield f"Just so: {other}."
    else:
        cut_it = "Cut it" if cut.active_coils < wanted.active_coils else "Keep more of the spare turns"
        yield f"{came}. {cut_it}: {other}. With {meant_coils} the rate would be {rate_kept:.3f} of it."


def came_out_pitch(coil: Coil, pitch_mm: float) -> Saved:
    """A coil whose pitch came out otherwise: its free length follows, and so does what it pushes."""
    refuse_narrower(coil, pitch_mm)
    came = _at_pitch(wanted_of(coil), _final_pitch_mm(coil, pitch_mm))
    return of_pitch(coil, Way("keep", came, judged(coil, came)), pitch_mm, _meant_pitch_mm(coil))


def came_out_with_pitch(coil: Coil, outside_mm: float, pitch_mm: float) -> Saved:
    """A coil of which both were measured: one verdict on its coils, by the diameter, and its length, by the pitch.

    What serves best of: as it is; cut; closed or pulled to its length; both.
    """
    mandrel_mm = coil.plan.mandrel.diameter_mm
    assert mandrel_mm is not None
    refuse_senseless(coil, "outside", outside_mm, mandrel_mm)
    refuse_narrower(coil, pitch_mm)
    mean_mm, wanted = coil.final_mean_mm(outside_mm), wanted_of(coil)
    cut = _with_its_rate(wanted, mean_mm)
    final_pitch_mm = _final_pitch_mm(coil, pitch_mm)
    ways = _ways(coil, replace(wanted, mean_diameter_mm=mean_mm), cut, final_pitch_mm)
    if cut.total_coils > _coils_there(coil, mandrel_mm, mean_mm):
        ways = ways[:2]
    way = best_way(*ways)
    rate_kept = rate_n_per_mm(ways[0].spring) / rate_n_per_mm(wanted)
    trial = replace(coil.trial(mandrel_mm, outside_mm), pitch_wound_mm=coil.plan.pitch_on_mandrel_mm, pitch_mm=pitch_mm)
    then = then_planned(coil, trial)
    said = joined_said(
        doubted_pitch(coil, pitch_mm, _meant_pitch_mm(coil)),
        _said_of_both(coil, (outside_mm, pitch_mm), way, ways[0].spring, rate_kept),
        clearances(way.fit),
        wrong(way.fit, coil.bench),
        surprise(coil, trial),
        _both_next(coil, then, ways[0].spring.free_length_mm, pitch_mm),
        write_down(coil, trial),
    )
    return Saved(way.answer, way.spring, way.fit, rate_kept, said, then and then.mandrel)


def _ways(
    coil: Coil, kept: CompressionSpring, cut: CompressionSpring, pitch_mm: float
) -> tuple[Way[CompressionSpring], ...]:
    """As it is, brought to its length, cut, and both, the fewest deeds first."""
    kept_at_pitch, cut_at_pitch = (_at_pitch(each, pitch_mm) for each in (kept, cut))
    changed = (Way("change", each, judged(coil, each)) for each in (kept, cut_at_pitch, cut))
    return Way("keep", kept_at_pitch, judged(coil, kept_at_pitch)), *changed


def _said_of_both(
    coil: Coil,
    measured_mm: tuple[float, float],
    way: Way[CompressionSpring],
    came: CompressionSpring,
    rate_kept: float,
) -> Iterator[str]:
    wanted, meant, units = wanted_of(coil), coil.meant, coil.units
    assert isinstance(meant, CompressionSpring)
    outside_mm, pitch_mm = measured_mm
    outside, was_outside = (show_diameter(mm, units) for mm in (outside_mm, meant.outside_diameter_mm))
    pitch, was_pitch, free, was_free = (
        show_length(mm, units) for mm in (pitch_mm, _meant_pitch_mm(coil), came.free_length_mm, wanted.free_length_mm)
    )
    at = f"{came_out_at(outside, was_outside)}, with a pitch of {pitch}" + (
        ", as meant" if pitch == was_pitch else f" instead of {was_pitch}"
    )
    as_it_is = (
        f"with {coil.shown(came.active_coils)} active coils{coil.counted and coil.counted + ','} its rate is "
        f"{rate_kept:.3f} of that meant, and it is {free} long at rest ({was_free} meant)"
    )
    if way.answer == "wind again":
        yield f"{at}, and neither other coils nor another length save it: wind it again; {as_it_is}."
    elif way.answer == "keep":
        yield f"{at}: {keep_it(coil, way)}; {as_it_is}."
    else:
        yield f"{at}. As it is, {as_it_is}."
        if way.spring.active_coils != came.active_coils:
            fewer = way.spring.active_coils < came.active_coils
            active, total = (coil.shown(coils) for coils in (way.spring.active_coils, way.spring.total_coils))
            cut = "Cut it" if fewer else "Keep more of the spare turns"
            yield f"{cut}: {active} active coils ({total} in all{coil.counted}) give the rate that was meant."
        stands_mm = _at_pitch(way.spring, _final_pitch_mm(coil, pitch_mm)).free_length_mm
        if abs(stands_mm - way.spring.free_length_mm) >= AS_LONG_MM:
            yield f"It is {show_length(stands_mm, units)} long then. {to_length(coil, stands_mm)}"


def _both_next(coil: Coil, then: WindingPlan | None, free_mm: float, pitch_mm: float) -> Iterator[str]:
    """The next coil in one line: its mandrel, and the pitch to lay where this one's made another length."""
    mandrel, wanted = next(said_of_next(coil, then), None), wanted_of(coil)
    if mandrel is None or then is None:
        return
    wider = _meant_pitch_mm(coil) / pitch_mm if abs(free_mm - wanted.free_length_mm) >= AS_LONG_MM else 1.0
    laid_mm = then.pitch_on_mandrel_mm * wider
    same = abs(laid_mm - coil.plan.pitch_on_mandrel_mm) < SAME_PITCH_MM
    yield mandrel if same else f"{mandrel.removesuffix('.')}; {pitch_next(coil, laid_mm)}."


def _meant_pitch_mm(coil: Coil) -> float:
    """The pitch that was meant before the first pressing, in the state in which the coil was measured."""
    assert isinstance(coil.meant, CompressionSpring)
    return pitch_of(as_laid(coil.meant, wanted_of(coil)))


def _final_pitch_mm(coil: Coil, pitch_mm: float) -> float:
    """The pitch in the end of a coil that has this one: heat changes it as it does the one that was meant."""
    return pitch_mm * pitch_of(wanted_of(coil)) / _meant_pitch_mm(coil)


def _at_pitch(spring: CompressionSpring, pitch_mm: float) -> CompressionSpring:
    """The spring as long as its coils stand at this pitch."""
    coils = (spring.active_coils, spring.total_coils, spring.ends)
    free_mm = geometry.free_length_from_pitch_mm(spring.wire_diameter_mm, pitch_mm, *coils)
    return replace(spring, free_length_mm=free_mm)


def pressed_to(coil: Coil, free_length_mm: float) -> Saved:
    """A spring that was shorter after it was first pressed solid: it has set, and the next one is wound longer."""
    wanted = wanted_of(coil)
    spring = replace(wanted, free_length_mm=free_length_mm)

    def wider(length_mm: float) -> float:
        return pitch_of(replace(wanted, free_length_mm=length_mm)) / pitch_of(as_laid(wanted, wanted))

    return of_set(coil, Way("keep", spring, judged(coil, spring)), wider)


def pitch_of(spring: CompressionSpring) -> float:
    """The pitch that the spring's coils have at rest."""
    return geometry.pitch_mm(
        spring.wire_diameter_mm, spring.free_length_mm, spring.active_coils, spring.total_coils, spring.ends
    )
