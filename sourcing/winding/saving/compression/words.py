"""What is said of a coil of a cylindrical compression spring whose diameter came out otherwise."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_diameter, show_length
from sourcing.springs.model import CompressionSpring
from sourcing.springs.pressed import rate_n_per_mm
from sourcing.winding.saving.coil import TOLD_FROM, Coil, Way
from sourcing.winding.saving.compression.body import (
    Came,
    at_pitch,
    pitch_in_the_end_mm,
    pitch_meant_mm,
    wanted_of,
)
from sourcing.winding.saving.lengths import pitch_next
from sourcing.winding.saving.next_coil import NextCoil, said_of_next
from sourcing.winding.saving.pitch import SAME_PITCH_MM
from sourcing.winding.saving.pressed import judged
from sourcing.winding.saving.pressed_words import at_its_length, new_end
from sourcing.winding.saving.verdict_words import came_out_at, keep_it, or_surer, save_it, so_it_serves


def too_few(coil: Coil, came: Came, way: Way[CompressionSpring], just: CompressionSpring) -> Iterator[str]:
    """That the coils for its rate (`just`) would save it if it had them."""
    there = came.coils_there
    if way.answer != "wind again" or just.total_coils <= there or judged(coil, just).fits == "no":
        return
    wants = f"It would want {coil.shown(just.total_coils)} coils in all for its rate{coil.counted}, and has"
    if coil.heated:
        yield f"{wants} {there:.2f}: the spare turns were cut off before heat."
    else:
        yield f"{wants} {coil.shown(there)}, spare ones too."


def said_of_verdict(
    coil: Coil, came: Came, way: Way[CompressionSpring], rate_kept: float, *, read_again: bool
) -> Iterator[str]:
    """Whether it is kept, changed or wound again; `rate_kept`: its rate over the one meant.

    `read_again`: only if its pitch reads so once more.
    """
    at, as_it_is = _came_at(coil, came), _as_it_is(coil, came, rate_kept)
    if read_again:
        at = f"If its pitch reads so again: {at[0].lower()}{at[1:]}"
    if way.answer == "wind again":
        yield f"{at}, and neither other coils nor another length save it: wind it again; {as_it_is}."
    elif way.answer == "keep":
        yield f"{at}: {keep_it(coil, way)}; {as_it_is}."
    else:
        yield f"{at}: {save_it(coil, way)}. As it is, {as_it_is}."
        yield from _with_other_coils(coil, came, way)
        yield from _at_its_length(coil, came, way)


def said_of_nearer(coil: Coil, came: Came, way: Way[CompressionSpring], rate_kept: float) -> Iterator[str]:
    """What else a kept coil may become: clearly surer, or of the rate that was meant where it serves so."""
    if way.surer is not None:
        yield or_surer(way.surer)
        yield from _with_other_coils(coil, came, way.surer)
        yield from _at_its_length(coil, came, way.surer)
    elif way.answer == "keep" and abs(rate_kept - 1.0) >= TOLD_FROM and _gives_the_rate(coil, came.cut):
        fit = judged(coil, came.cut)
        if fit.fits != "no":
            opened = "; spare turns that lie close are opened for that" if rate_kept > 1.0 else ""
            yield f"If its rate is to be nearer: {_coils(coil, came.cut)}{opened}. {so_it_serves(coil, fit)}"


def _gives_the_rate(coil: Coil, spring: CompressionSpring) -> bool:
    return abs(rate_n_per_mm(spring) / rate_n_per_mm(wanted_of(coil)) - 1.0) < TOLD_FROM


def _coils(coil: Coil, spring: CompressionSpring) -> str:
    """So many coils, and what rate they give."""
    active, total = (coil.shown(coils) for coils in (spring.active_coils, spring.total_coils))
    share = rate_n_per_mm(spring) / rate_n_per_mm(wanted_of(coil))
    gives = "the rate that was meant" if _gives_the_rate(coil, spring) else f"{share:.3f} of the rate that was meant"
    return f"{active} active coils ({total} in all{coil.counted}) give {gives}"


def _with_other_coils(coil: Coil, came: Came, way: Way[CompressionSpring]) -> Iterator[str]:
    """How it comes to have them."""
    coils = _coils(coil, way.spring)
    if way.spring.active_coils < came.spring.active_coils:
        yield f"Cut it: {coils}."
        yield from new_end(coil, way.spring.ends)
    elif way.spring.active_coils > came.spring.active_coils:
        yield (
            f"Leave {_spare(coil, came, way)} on it: {coils}. They lie close: open them to the pitch of the others "
            "with a wedge, moved on by a quarter turn at a time, and leave the last one closed."
        )


def _spare(coil: Coil, came: Came, way: Way[CompressionSpring]) -> str:
    """How many of its spare turns are left on it."""
    left, spare = (coil.shown(coils - came.spring.total_coils) for coils in (way.spring.total_coils, came.coils_there))
    return f"all its {spare} spare turns" if left == spare else f"{left} of its {spare} spare turns"


def _at_its_length(coil: Coil, came: Came, way: Way[CompressionSpring]) -> Iterator[str]:
    """How long it stands with the coils that it then has, and how it comes to the length that serves."""
    stands_mm = at_pitch(way.spring, pitch_in_the_end_mm(coil, came.pitch_mm)).free_length_mm
    cut, measured = way.spring.active_coils != came.spring.active_coils, came.measured_pitch_mm is not None
    yield from at_its_length(coil, stands_mm, way.spring.free_length_mm, cut=cut, measured=measured)


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
