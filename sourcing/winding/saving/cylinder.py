"""A coil of a cylindrical compression spring that came out otherwise: in its diameter, its pitch, or its set."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import hypot

from sourcing.fit.model import Fit, Spread
from sourcing.quantities import show_diameter, show_length
from sourcing.springs import compression, geometry
from sourcing.springs.model import CompressionSpring
from sourcing.springs.pressed import rate_n_per_mm
from sourcing.winding import in_hand
from sourcing.winding.doubts import rate_sd
from sourcing.winding.heat import making
from sourcing.winding.measuring import MANDREL_SD_MM
from sourcing.winding.pitch_lesson import cannot_be
from sourcing.winding.pitch_share import pitch_reading
from sourcing.winding.presetting import as_laid
from sourcing.winding.pressed_task import brought_length_sd_mm
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
    save_it,
    surprise,
    write_down,
    wrong,
)
from sourcing.winding.saving.lengths import of_set, pitch_next, to_length
from sourcing.winding.saving.next_coil import NextCoil, next_coil, said_of_next
from sourcing.winding.saving.pitch import (
    SAME_PITCH_MM,
    Opened,
    doubted_opening,
    doubted_pitch,
    of_pitch,
    refuse_narrower,
)
from sourcing.winding.turns import SPARE_TURNS


def wanted_of(coil: Coil) -> CompressionSpring:
    """The spring that was meant, in its final state."""
    assert isinstance(coil.plan.wanted, CompressionSpring)
    return coil.plan.wanted


def judged(coil: Coil, spring: CompressionSpring) -> Fit:
    """The spring against the need, measured: what is left of its doubt is the caliper's and the rate's."""
    spread = Spread(
        diameter_sd_mm=coil.diameter_sd_mm(spring.mean_diameter_mm),
        free_length_sd_mm=brought_length_sd_mm(spring),
        rate_sd=rate_sd(spring),
        making=making(coil.wire.material, coil.bench),
    )
    return in_hand.judged(spring, coil.need, coil.bench, spread)


def came_out(coil: Coil, outside_mm: float) -> Saved:
    """A coil whose diameter came out otherwise: cut to the coils that restore the rate, n = G d⁴ / (8 D³ R).

    Its pitch is taken to be the one meant, so that other coils make another length.

    >>> from sourcing.springs.compression import active_coils_for_rate as coils, rate_n_per_mm as rate
    >>> round(coils(0.8, 9.9, rate(0.8, 9.6, 6.0, 81500.0), 81500.0), 2)
    5.47

    Source: winding model, hand-checked case 3.
    """
    return _came_out(coil, outside_mm, None)


def came_out_with_pitch(coil: Coil, outside_mm: float, pitch_mm: float) -> Saved:
    """A coil of which both were measured: one verdict on its coils, by the diameter, and its length, by the pitch."""
    refuse_narrower(coil, pitch_mm)
    return _came_out(coil, outside_mm, pitch_mm)


def came_out_pitch(coil: Coil, pitch_mm: float) -> Saved:
    """A coil whose pitch came out otherwise: its free length follows, and so does what it pushes."""
    came = _at_pitch(wanted_of(coil), _final_pitch_mm(coil, pitch_mm))
    return of_pitch(coil, Way("keep", came, judged(coil, came)), pitch_mm, _meant_pitch_mm(coil), _opened(coil))


def _opened(coil: Coil) -> Opened:
    """How the coil opens by its plan, before heat."""
    before, mandrel_mm = coil.plan.finished.spring, coil.plan.mandrel.diameter_mm
    assert isinstance(before, CompressionSpring)
    assert mandrel_mm is not None
    known, mean_mm = coil.known_then(), before.mean_diameter_mm
    opening_sd = hypot(known.finished_mean_sd_mm(mandrel_mm) / mean_mm, MANDREL_SD_MM / (mandrel_mm + coil.wire_mm))
    return Opened(mean_mm / (mandrel_mm + coil.wire_mm), opening_sd, pitch_of(as_laid(before, wanted_of(coil))))


def _came_out(coil: Coil, outside_mm: float, pitch_mm: float | None) -> Saved:
    """What serves best of: as it is; closed or pulled to its length; cut; both."""
    mandrel_mm = coil.plan.mandrel.diameter_mm
    assert mandrel_mm is not None
    refuse_senseless(coil, "outside", outside_mm, mandrel_mm)
    mean_mm, wanted = coil.final_mean_mm(outside_mm), wanted_of(coil)
    cut, there = _with_its_rate(wanted, mean_mm), _coils_there(coil, mandrel_mm, mean_mm)
    at_mm = _meant_pitch_mm(coil) if pitch_mm is None else pitch_mm
    ways = _ways(coil, replace(wanted, mean_diameter_mm=mean_mm), cut, _final_pitch_mm(coil, at_mm))
    way = best_way(coil, *(ways if cut.total_coils <= there else ways[:2]))
    came = _Came(outside_mm, pitch_mm, at_mm, ways[0].spring, cut)
    trial, reading = coil.trial(mandrel_mm, outside_mm), None
    if pitch_mm is not None:
        with_pitch = replace(trial, pitch_wound_mm=coil.plan.pitch_on_mandrel_mm, pitch_mm=pitch_mm)
        reading = pitch_reading(with_pitch, coil.wire_mm, coil.wire.material)
        trial = trial if cannot_be(reading) else with_pitch
    then, rate_kept = next_coil(coil, trial), rate_n_per_mm(came.spring) / rate_n_per_mm(wanted)
    said = joined_said(
        doubted_pitch(coil, at_mm, _meant_pitch_mm(coil)),
        doubted_opening(coil, at_mm, reading, coil.known_then(trial).pitch),
        _said(coil, came, way, there, rate_kept),
        _too_few(coil, way, ways[-1], there),
        clearances(way.fit),
        wrong(way.fit, coil.bench),
        surprise(coil, trial),
        _said_next(coil, then, cannot_be(reading)),
        write_down(coil, trial),
    )
    return Saved(way.answer, way.spring, way.fit, rate_kept, said, then and then.plan.mandrel)


@dataclass(frozen=True, slots=True)
class _Came:
    """What was measured, the pitch it stands at (the one meant where none was), what it is, and cut for its rate."""

    outside_mm: float
    measured_pitch_mm: float | None
    pitch_mm: float
    spring: CompressionSpring
    cut: CompressionSpring


def _with_its_rate(wanted: CompressionSpring, mean_mm: float) -> CompressionSpring:
    """The spring of another diameter with the coils that give the wanted rate, its end coils kept."""
    active = compression.active_coils_for_rate(
        wanted.wire_diameter_mm, mean_mm, rate_n_per_mm(wanted), wanted.shear_modulus_mpa
    )
    total = active + wanted.total_coils - wanted.active_coils
    return replace(wanted, mean_diameter_mm=mean_mm, active_coils=active, total_coils=total)


def _coils_there(coil: Coil, mandrel_mm: float, mean_mm: float) -> float:
    """The coils that the turns wound have become, spare ones too: the wire keeps its length, N_f D_f = N_m D_m.

    The sheet has the spare ones cut off before heat.
    """
    if coil.heated:
        return wanted_of(coil).total_coils
    return (coil.plan.turns_to_wind + SPARE_TURNS) * (mandrel_mm + coil.wire_mm) / mean_mm


def _ways(
    coil: Coil, kept: CompressionSpring, cut: CompressionSpring, pitch_mm: float
) -> tuple[Way[CompressionSpring], ...]:
    """As it is, brought to its length, cut, and both, the fewest deeds first."""
    kept_at_pitch = _at_pitch(kept, pitch_mm)
    changed = (Way("change", each, judged(coil, each)) for each in (kept, _at_pitch(cut, pitch_mm), cut))
    return Way("keep", kept_at_pitch, judged(coil, kept_at_pitch)), *changed


def _too_few(coil: Coil, way: Way[CompressionSpring], cut: Way[CompressionSpring], there: float) -> Iterator[str]:
    """That other coils would save it if it had them."""
    if way.answer != "wind again" or cut.fit.fits == "no" or cut.spring.total_coils <= there:
        return
    wants = f"It would want {coil.shown(cut.spring.total_coils)} coils in all for its rate{coil.counted}, and has"
    if coil.heated:
        yield f"{wants} {there:.2f}: the spare turns were cut off before heat."
    else:
        yield f"{wants} {coil.shown(there)}, spare ones too."


def _said(coil: Coil, came: _Came, way: Way[CompressionSpring], there: float, rate_kept: float) -> Iterator[str]:
    at, as_it_is = _came_at(coil, came), _as_it_is(coil, came, rate_kept)
    active, total = (coil.shown(coils) for coils in (came.cut.active_coils, came.cut.total_coils))
    other = f"{active} active coils ({total} in all{coil.counted}) give the rate that was meant"
    if way.answer == "wind again":
        yield f"{at}, and neither other coils nor another length save it: wind it again; {as_it_is}."
        return
    if way.answer == "keep":
        yield f"{at}: {keep_it(coil, way)}; {as_it_is}."
        if abs(rate_kept - 1.0) >= TOLD_FROM and came.cut.total_coils <= there:
            yield f"Just so: {other}."
        return
    yield f"{at}: {save_it(coil, way)}. As it is, {as_it_is}."
    if way.spring.active_coils < came.spring.active_coils:
        yield f"Cut it: {other}."
    elif way.spring.active_coils > came.spring.active_coils:
        yield (
            f"Leave more of the spare turns on it: {other}. They lie close: open them to the pitch of the others with "
            "a wedge, moved on by a quarter turn at a time, and leave the last one closed."
        )
    stands_mm = _at_pitch(way.spring, _final_pitch_mm(coil, came.pitch_mm)).free_length_mm
    if abs(stands_mm - wanted_of(coil).free_length_mm) >= AS_LONG_MM:
        assumed = ", if its pitch is the one meant" if came.measured_pitch_mm is None else ""
        length = f"It is {show_length(stands_mm, coil.units)} long then{assumed}."
        as_long = abs(stands_mm - way.spring.free_length_mm) < AS_LONG_MM
        yield f"{length} Leave it so." if as_long else f"{length} {to_length(coil, stands_mm)}"


def _came_at(coil: Coil, came: _Came) -> str:
    """How the sentences begin: what was measured, and what was meant."""
    meant = coil.meant
    assert isinstance(meant, CompressionSpring)
    outside = came_out_at(*(show_diameter(mm, coil.units) for mm in (came.outside_mm, meant.outside_diameter_mm)))
    if came.measured_pitch_mm is None:
        return outside
    pitch, was = (show_length(mm, coil.units) for mm in (came.pitch_mm, _meant_pitch_mm(coil)))
    return f"{outside}, with a pitch of {pitch}" + (", as meant" if pitch == was else f" instead of {was}")


def _as_it_is(coil: Coil, came: _Came, rate_kept: float) -> str:
    """What the coil is if nothing is done to it; its length where its pitch was measured."""
    counted = f"{coil.counted}," if coil.counted else ""
    rate = (
        f"with {coil.shown(came.spring.active_coils)} active coils{counted} its rate is {rate_kept:.3f} of that meant"
    )
    if came.measured_pitch_mm is None:
        return rate
    free, was = (show_length(mm, coil.units) for mm in (came.spring.free_length_mm, wanted_of(coil).free_length_mm))
    return f"{rate}, and it is {free} long at rest ({was} meant)"


def _said_next(coil: Coil, then: NextCoil | None, laid_otherwise: bool) -> Iterator[str]:
    """The next coil: its mandrel, with the pitch to lay where that is another than the sheet's."""
    if then is None:
        return
    mandrel, *another = said_of_next(coil, then)
    laid_mm, of_sheet_mm = then.plan.pitch_on_mandrel_mm, coil.plan.pitch_on_mandrel_mm
    if abs(laid_mm - of_sheet_mm) >= SAME_PITCH_MM:
        yield f"{mandrel.removesuffix('.')}; {pitch_next(coil, laid_mm)}."
    elif laid_otherwise:
        yield f"{mandrel.removesuffix('.')}; lay it at the sheet's pitch of {show_length(of_sheet_mm, coil.units)}."
    else:
        yield mandrel
    yield from another


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
