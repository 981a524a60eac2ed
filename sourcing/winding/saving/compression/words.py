"""What is said of a coil of a cylindrical compression spring whose diameter came out otherwise."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_diameter, show_length
from sourcing.springs.model import CompressionSpring
from sourcing.winding.saving.coil import AS_LONG_MM, TOLD_FROM, Coil, Way, came_out_at, keep_it, save_it
from sourcing.winding.saving.compression.body import (
    Came,
    at_pitch,
    judged,
    pitch_in_the_end_mm,
    pitch_meant_mm,
    wanted_of,
)
from sourcing.winding.saving.lengths import pitch_next, to_length
from sourcing.winding.saving.next_coil import NextCoil, said_of_next
from sourcing.winding.saving.pitch import SAME_PITCH_MM


def too_few(coil: Coil, way: Way[CompressionSpring], just: CompressionSpring, there: float) -> Iterator[str]:
    """That the coils for its rate (`just`) would save it if it had them."""
    if way.answer != "wind again" or just.total_coils <= there or judged(coil, just).fits == "no":
        return
    wants = f"It would want {coil.shown(just.total_coils)} coils in all for its rate{coil.counted}, and has"
    if coil.heated:
        yield f"{wants} {there:.2f}: the spare turns were cut off before heat."
    else:
        yield f"{wants} {coil.shown(there)}, spare ones too."


def said_of_verdict(coil: Coil, came: Came, way: Way[CompressionSpring], rate_kept: float) -> Iterator[str]:
    """Whether it is kept, changed or wound again; `rate_kept`: its rate over the one meant."""
    at, as_it_is = _came_at(coil, came), _as_it_is(coil, came, rate_kept)
    active, total = (coil.shown(coils) for coils in (came.cut.active_coils, came.cut.total_coils))
    gives = "give the rate that was meant" if came.enough else f"give {came.rate_cut:.3f} of the rate that was meant"
    other = f"{active} active coils ({total} in all{coil.counted}) {gives}"
    if way.answer == "wind again":
        yield f"{at}, and neither other coils nor another length save it: wind it again; {as_it_is}."
        return
    if way.answer == "keep":
        yield f"{at}: {keep_it(coil, way)}; {as_it_is}."
        if abs(rate_kept - 1.0) >= TOLD_FROM and came.enough:
            opened = "; spare turns that lie close are opened for that" if rate_kept > 1.0 else ""
            yield f"Just so: {other}{opened}."
        return
    yield f"{at}: {save_it(coil, way)}. As it is, {as_it_is}."
    if way.spring.active_coils < came.spring.active_coils:
        yield f"Cut it: {other}."
    elif way.spring.active_coils > came.spring.active_coils:
        how_many = "more" if came.enough else "all"
        yield (
            f"Leave {how_many} of the spare turns on it: {other}. They lie close: open them to the pitch of the others "
            "with a wedge, moved on by a quarter turn at a time, and leave the last one closed."
        )
    stands_mm = at_pitch(way.spring, pitch_in_the_end_mm(coil, came.pitch_mm)).free_length_mm
    if abs(stands_mm - wanted_of(coil).free_length_mm) >= AS_LONG_MM:
        assumed = ", if its pitch is the one meant" if came.measured_pitch_mm is None else ""
        length = f"It is {show_length(stands_mm, coil.units)} long then{assumed}."
        as_long = abs(stands_mm - way.spring.free_length_mm) < AS_LONG_MM
        yield f"{length} Leave it so." if as_long else f"{length} {to_length(coil, stands_mm)}"


def _came_at(coil: Coil, came: Came) -> str:
    """How the sentences begin: what was measured, and what was meant."""
    meant = coil.meant
    assert isinstance(meant, CompressionSpring)
    outside = came_out_at(*(show_diameter(mm, coil.units) for mm in (came.outside_mm, meant.outside_diameter_mm)))
    if came.measured_pitch_mm is None:
        return outside
    pitch, was = (show_length(mm, coil.units) for mm in (came.pitch_mm, pitch_meant_mm(coil)))
    return f"{outside}, with a pitch of {pitch}" + (", as meant" if pitch == was else f" instead of {was}")


def _as_it_is(coil: Coil, came: Came, rate_kept: float) -> str:
    """What the coil is if nothing is done to it; its length where its pitch was measured."""
    counted = f"{coil.counted}," if coil.counted else ""
    rate = (
        f"with {coil.shown(came.spring.active_coils)} active coils{counted} its rate is {rate_kept:.3f} of that meant"
    )
    if came.measured_pitch_mm is None:
        return rate
    free, was = (show_length(mm, coil.units) for mm in (came.spring.free_length_mm, wanted_of(coil).free_length_mm))
    return f"{rate}, and it is {free} long at rest ({was} meant)"


def said_next(coil: Coil, then: NextCoil | None, laid_otherwise: bool) -> Iterator[str]:
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
