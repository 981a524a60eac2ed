"""A cone whose ends came out otherwise, one of them measured or both."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from sourcing.quantities import show_diameter, show_length
from sourcing.springs import pressed
from sourcing.springs.conical_lengths import SURE_STEP, pitch_of, solid_length_of, step_of, telescopes
from sourcing.springs.model import ConicalSpring
from sourcing.winding.conical.in_hand import as_it_came
from sourcing.winding.conical.room import End
from sourcing.winding.saving.coil import (
    AS_LONG_MM,
    TOLD_FROM,
    Coil,
    Saved,
    SenselessError,
    Way,
    best_way,
    came_out_at,
    clearances,
    joined_said,
    keep_it,
    surprise,
    write_down,
    wrong,
)
from sourcing.winding.saving.conical.cone import judged, wanted_of
from sourcing.winding.saving.conical.cutting import cut_for_rate, cut_said
from sourcing.winding.saving.conical.ends import ENDS, CameOut, ends_of
from sourcing.winding.saving.conical.next_mandrel import next_mandrel, said_of_next
from sourcing.winding.saving.lengths import to_length
from sourcing.winding.saving.next_coil import next_one


def large_came_out(coil: Coil, outside_mm: float) -> Saved:
    """A cone whose large end came out otherwise; the small one follows by the same wire."""
    return _came_out(coil, {"large": outside_mm})


def small_came_out(coil: Coil, outside_mm: float) -> Saved:
    """A cone whose small end came out otherwise; the large one follows by the same wire."""
    return _came_out(coil, {"small": outside_mm})


def both_came_out(coil: Coil, large_mm: float, small_mm: float) -> Saved:
    """A cone of which both ends were measured."""
    if large_mm <= small_mm:
        large, small = (show_diameter(mm, coil.units) for mm in (large_mm, small_mm))
        raise SenselessError("outside", f"a large end of {large} beside a small one of {small}", "the larger one first")
    return _came_out(coil, {"large": large_mm, "small": small_mm})


def _came_out(coil: Coil, measured_mm: Mapping[End, float]) -> Saved:
    ends, wanted = ends_of(coil, measured_mm), wanted_of(coil)
    kept = as_it_came(wanted, ends.mean_mm["small"], ends.mean_mm["large"])
    rate = pressed.rate_n_per_mm(wanted)
    cuts = filter(None, (cut_for_rate(kept, end, rate) for end in ENDS))
    as_it_is = Way("keep", kept, judged(coil, kept))
    way = best_way(coil, as_it_is, *(Way("change", cut, judged(coil, cut)) for cut in cuts))
    rate_kept = pressed.rate_n_per_mm(kept) / rate
    mandrel = next_mandrel(coil, ends.known)
    begins = next_one(ends.known.unsettled)
    said = joined_said(
        _said(coil, ends, kept, way, rate_kept),
        clearances(way.fit),
        _solid(coil, way.spring),
        wrong(way.fit, coil.bench),
        (*surprise(coil, ends.trial), *said_of_next(coil, mandrel, begins), *write_down(coil, ends.trial))
        if ends.agree
        else (),
    )
    return Saved(way.answer, way.spring, way.fit, rate_kept, said, mandrel)


def _said(coil: Coil, ends: CameOut, kept: ConicalSpring, way: Way[ConicalSpring], rate_kept: float) -> Iterator[str]:
    meant = coil.meant
    assert isinstance(meant, ConicalSpring)
    meant_mm = {"large": meant.outside_diameter_large_mm, "small": meant.outside_diameter_small_mm}
    now, was = ({end: show_diameter(mm[end], coil.units) for end in ENDS} for mm in (ends.outside_mm, meant_mm))
    if not ends.agree:
        large, small = (now[end] for end in ENDS)
        yield (
            f"A large end of {large} and a small one of {small} cannot be of one wire on this mandrel: measure both "
            "ends again, and the mandrel, before anything is cut or written down. As they are measured:"
        )
    came = " and ".join(came_out_at(now[end], was[end], f"at its {end} end") for end in ends.told)
    came = came.replace(", as meant and", ", as meant, and").replace(" and It came out", " and")
    coils = f"{coil.shown(kept.active_coils)} coils between its ends{coil.counted}"
    rate = f"its rate is {rate_kept:.3f} of that meant ({coils})"
    if way.answer == "keep":
        yield f"{came}: {keep_it(coil, way)}; {rate}."
        just = cut_for_rate(kept, "large", pressed.rate_n_per_mm(wanted_of(coil)))
        if just is not None and rate_kept < 1.0 - TOLD_FROM:
            yield f"Just so: c{cut_said(coil, kept, just)[1:]}."
    elif way.answer == "change":
        yield f"{came}. {cut_said(coil, kept, way.spring)}; as it is, {rate}."
        stands_mm = kept.free_length_mm - pitch_of(kept) * (kept.active_coils - way.spring.active_coils)
        if kept.free_length_mm - stands_mm >= AS_LONG_MM:
            length = show_length(stands_mm, coil.units)
            yield f"It is {length} long then, if its pitch is the one meant. {to_length(coil, stands_mm)}"
    else:
        stiff = "and a cone that is too stiff gets no more coils"
        yield f"{came}, {stiff if rate_kept > 1.0 else 'and cutting does not save it'}: wind it again."
    for end in ENDS:
        if end not in ends.told:
            yield f"By the same wire its {end} end is {now[end]} outside ({was[end]} meant): measure it too."


def _solid(coil: Coil, cone: ConicalSpring) -> Iterator[str]:
    """How its turns lie when it is pressed solid."""
    step_mm, solid = step_of(cone), show_length(solid_length_of(cone), coil.units)
    step, sure = (show_diameter(mm, coil.units) for mm in (step_mm, SURE_STEP * coil.wire_mm))
    if not telescopes(coil.wire_mm, step_mm):
        yield f"Pressed solid its turns stand on each other, {solid} high."
    elif step_mm >= SURE_STEP * coil.wire_mm * (1.0 - 1e-9):
        yield f"Pressed solid its turns go inside each other, each {step} smaller in radius ({sure} wanted)."
