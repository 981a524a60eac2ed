"""The pitch of a compression spring of any shape that came out otherwise, and how the next coil is laid."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from sourcing.quantities import show_length
from sourcing.springs.model import PressedSpring
from sourcing.stock.trial_bounds import LEAST_PITCH
from sourcing.winding.pitch_lesson import cannot_be
from sourcing.winding.pitch_share import PitchReading, PitchShare, reading_of
from sourcing.winding.saving.coil import AS_LONG_MM, Coil, Saved, SenselessError, Way, joined_said, saved_by
from sourcing.winding.saving.lengths import bring_to_length, first_deed, kept_by_length, pitch_next, wanted_mm
from sourcing.winding.saving.verdict_words import as_it_is_wrong, chance_said, though_unsure
from sourcing.winding.turns import pitch_ratio

ODD_PITCH = 1.7
"""From this many times the pitch that was meant on, two turns may have been taken for one (assumed)."""

SAME_PITCH_MM = 0.05
"""No finer is a pitch laid by hand (assumed)."""


@dataclass(frozen=True, slots=True)
class Opened:
    """How a coil was to open as it was let go: D_f/D_m, its relative standard deviation, and the pitch after it."""

    opening: float
    opening_sd: float
    pitch_mm: float


def refuse_narrower(coil: Coil, pitch_mm: float) -> None:
    """Raise `SenselessError` for a pitch that is less than the wire."""
    if pitch_mm < LEAST_PITCH * coil.wire_mm:
        found = f"a pitch of {show_length(pitch_mm, coil.units)} is less than the wire"
        raise SenselessError("pitch", found, "from one turn to the next, the wire counted in")


def doubted_pitch(coil: Coil, pitch_mm: float, meant_mm: float) -> Iterator[str]:
    """That a pitch is so far off that several turns may have been measured."""
    if pitch_mm > ODD_PITCH * meant_mm:
        yield (
            f"{show_length(pitch_mm, coil.units)} is {pitch_mm / meant_mm:.1f} times the pitch that was meant: measure "
            "from one turn to the next, or over several and divide."
        )


def doubted_opening(coil: Coil, pitch_mm: float, reading: PitchReading | None, then: PitchShare) -> Iterator[str]:
    """That no pitch grows so from the one on the sheet, or hardly by chance; `then`: what is known with it."""
    if cannot_be(reading):
        came, laid = (show_length(mm, coil.units) for mm in (pitch_mm, coil.plan.pitch_on_mandrel_mm))
        yield (
            f"Measure its pitch again, over several turns: {came} is not that of a coil laid at {laid}, as the sheet "
            "has it. If it is so all the same, it was laid otherwise, and teaches nothing of how the pitch opens."
        )
    elif then.surprising:
        yield (
            "So far off its pitch is hardly chance: measure it again, over several turns, and the gap that was laid. "
            "The next one below takes it as it was measured."
        )


def of_pitch(coil: Coil, came: Way[PressedSpring], pitch_mm: float, meant_mm: float, opened: Opened) -> Saved:
    """What to do with a coil whose pitch is this instead of the one meant; `came` is the spring as it is then.

    Its diameter is taken to be the one meant, and the share of its opening by which its pitch opened to be the next
    coil's as `PitchShare.after` has it: p_m' = p_m P(O, a) / P(O, a').
    """
    refuse_narrower(coil, pitch_mm)
    by_length = kept_by_length(coil, came)
    let_go_mm, laid_mm = pitch_mm * opened.pitch_mm / meant_mm, coil.plan.pitch_on_mandrel_mm
    reading = reading_of(opened.opening, opened.opening_sd, laid_mm, let_go_mm, coil.wire_mm)
    way = replace(by_length, answer="measure first") if cannot_be(reading) else by_length
    before = coil.known_then().pitch
    then = before.after(reading)
    said = joined_said(
        doubted_pitch(coil, pitch_mm, meant_mm),
        doubted_opening(coil, pitch_mm, reading, then),
        _said(coil, by_length, came.spring.free_length_mm, (pitch_mm, meant_mm), again=cannot_be(reading)),
        chance_said(coil, way),
        as_it_is_wrong(coil, came, way),
    )
    if abs(came.spring.free_length_mm - wanted_mm(coil)) >= AS_LONG_MM:
        was, now = (pitch_ratio(opened.opening, known.share) for known in (before, then))
        said += tuple(_next(coil, max(coil.wire_mm, laid_mm * was / now), cannot_be(reading)))
    return saved_by(way, 1.0, said)


def _said(
    coil: Coil, way: Way[PressedSpring], free_mm: float, pitches_mm: tuple[float, float], *, again: bool
) -> Iterator[str]:
    """What is done, and how long it came out; the pitch that it has and the one meant; `again`: if it reads so once
    more."""
    lengths_mm = (*pitches_mm, free_mm, wanted_mm(coil))
    pitch, meant, free, wanted = (show_length(mm, coil.units) for mm in lengths_mm)
    instead = "" if pitch == meant else f" instead of {meant}"
    long = f"it is {free} long at rest, {'as meant' if free == wanted else f'not {wanted}'}"
    came = f"If it reads {pitch} again" if again else f"It came out with a pitch of {pitch}{instead}"
    if way.answer == "keep":
        yield f"{came}: keep it as it is{though_unsure(coil, way.fit)}; {long}."
    else:
        yield f"{came}: {first_deed(coil, free_mm)}; {long}."
        yield from bring_to_length(coil, free_mm)


def _next(coil: Coil, laid_mm: float, laid_otherwise: bool) -> Iterator[str]:
    of_sheet_mm = coil.plan.pitch_on_mandrel_mm
    if laid_otherwise or abs(laid_mm - of_sheet_mm) < SAME_PITCH_MM:
        yield f"The next one: lay it at the sheet's pitch, {show_length(of_sheet_mm, coil.units)} on the mandrel."
        return
    yield f"The next one: {pitch_next(coil, laid_mm)}."
    if coil.wire.spool is not None:
        yield "Measure its outside too and ask with both: written down so, it changes the pitch of the next sheet."
