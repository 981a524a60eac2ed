"""The length of a compression spring of any shape that came out otherwise: by its pitch, or pressed solid for the first
time."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from sourcing.quantities import show_length
from sourcing.springs import pressed
from sourcing.springs.model import PressedSpring
from sourcing.stock.trial_bounds import LEAST_PITCH
from sourcing.winding.presetting import pressed_off_mm
from sourcing.winding.saving.coil import AS_LONG_MM, Coil, Saved, SenselessError, Way, joined_said, wrong

FAR_LONGER = 1.5
"""So many times too long no spring is that was wound by its sheet (assumed)."""

ODD_PITCH = 1.7
"""From this many times the pitch that was meant on, two turns may have been taken for one (assumed)."""


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


def of_pitch(coil: Coil, came: Way[PressedSpring], pitch_mm: float, meant_mm: float) -> Saved:
    """What to do with a coil whose pitch is this instead of the one meant; `came` is the spring as it is then."""
    refuse_narrower(coil, pitch_mm)
    wanted_mm, free_mm = _wanted_mm(coil), came.spring.free_length_mm
    way = came if came.fit.fits == "yes" or _as_long(came, wanted_mm) else replace(came, answer="change")
    laid_mm = coil.plan.pitch_on_mandrel_mm * meant_mm / pitch_mm
    said = joined_said(
        doubted_pitch(coil, pitch_mm, meant_mm),
        _said_of_pitch(coil, way, pitch_mm, meant_mm),
        wrong(way.fit, coil.bench),
        [f"The next one: {pitch_next(coil, laid_mm)}."] if abs(free_mm - wanted_mm) >= AS_LONG_MM else [],
    )
    return Saved(way.answer, way.spring, way.fit, 1.0, said)


def _wanted_mm(coil: Coil) -> float:
    wanted = coil.plan.wanted
    assert isinstance(wanted, PressedSpring)
    return wanted.free_length_mm


def _as_long(came: Way[PressedSpring], wanted_mm: float) -> bool:
    return abs(came.spring.free_length_mm - wanted_mm) < AS_LONG_MM


def _said_of_pitch(coil: Coil, way: Way[PressedSpring], pitch_mm: float, meant_mm: float) -> Iterator[str]:
    wanted_mm, free_mm = _wanted_mm(coil), way.spring.free_length_mm
    pitch, meant, free, wanted = (show_length(mm, coil.units) for mm in (pitch_mm, meant_mm, free_mm, wanted_mm))
    if free == wanted:
        yield f"It came out with a pitch of {pitch}, so {free} long at rest, as meant."
    else:
        instead = "" if pitch == meant else f" instead of {meant}"
        yield f"It came out with a pitch of {pitch}{instead}, so {free} long at rest, not {wanted}."
    if way.answer == "keep":
        yield "Keep it as it is: the forces are within what is wanted." if way.fit.fits == "yes" else "Leave it so."
    else:
        yield to_length(coil, free_mm)


def to_length(coil: Coil, free_mm: float) -> str:
    """How a spring that is so long is brought to the length that is wanted."""
    wanted_mm = _wanted_mm(coil)
    wanted = show_length(wanted_mm, coil.units)
    if free_mm > wanted_mm:
        return f"Press it solid, then close the coils evenly with a wedge or by hand until it is {wanted}."
    return f"Pull it evenly to a little over {wanted}, press it solid once, and measure again."


def pitch_next(coil: Coil, laid_mm: float) -> str:
    """How the next coil is laid, by its pitch on the mandrel."""
    if laid_mm <= coil.wire_mm:
        return "lay it wire against wire, and pull it out to its length afterwards"
    gap, pitch, was = (
        show_length(mm, coil.units) for mm in (laid_mm - coil.wire_mm, laid_mm, coil.plan.pitch_on_mandrel_mm)
    )
    return f"a pitch of {pitch} on the mandrel, a gap of {gap}, instead of {was}"


def of_set(coil: Coil, came: Way[PressedSpring], wider: Callable[[float], float]) -> Saved:
    """A spring that was shorter after it was first pressed solid: it has set, and the next one is wound longer.

    L₀' = L₀ + a + (L₀ − L), where it was wound a longer than wanted: longer by what it lost, it ends at the length that
    is wanted (presetting). `wider` is the pitch of a length over the one that was laid.
    """
    free_mm, solid_mm = came.spring.free_length_mm, pressed.solid_length_mm(came.spring)
    if free_mm < solid_mm - AS_LONG_MM:
        found = f"{show_length(free_mm, coil.units)} is shorter than it is pressed solid"
        raise SenselessError("pressed_to", found, f"its length at rest, {show_length(solid_mm, coil.units)} or more")
    short_mm = _wanted_mm(coil) - free_mm
    if free_mm > FAR_LONGER * _wanted_mm(coil):
        now, wanted = (show_length(mm, coil.units) for mm in (free_mm, _wanted_mm(coil)))
        found = f"{now} is far longer than the {wanted} wanted"
        raise SenselessError("pressed_to", found, "its length at rest, after it was pressed solid")
    keeps = came.fit.fits == "yes" or abs(short_mm) < AS_LONG_MM
    way = came if keeps else replace(came, answer="change")
    said = joined_said(_said_of_set(coil, way, wider), wrong(way.fit, coil.bench))
    return Saved(way.answer, way.spring, way.fit, 1.0, said)


def _said_of_set(coil: Coil, way: Way[PressedSpring], wider: Callable[[float], float]) -> Iterator[str]:
    wanted_mm = _wanted_mm(coil)
    short_mm = wanted_mm - way.spring.free_length_mm
    now, off, wanted = (show_length(mm, coil.units) for mm in (way.spring.free_length_mm, abs(short_mm), wanted_mm))
    if abs(short_mm) < AS_LONG_MM:
        yield f"Pressed solid it is {now} long, as it should be: leave it."
        return
    assert isinstance(coil.plan.wanted, PressedSpring)
    allowed_mm = pressed_off_mm(coil.plan.wanted)
    wound_mm = wanted_mm + allowed_mm
    wound = f" from {show_length(wound_mm, coil.units)}, as the sheet has it wound," if allowed_mm else ""
    if short_mm <= 0.0:
        yield f"Pressed solid it is {now} long, {off} more than wanted: press it again, or take an end coil closer."
        return
    yield f"Pressed solid it has set by {show_length(allowed_mm + short_mm, coil.units)},{wound} to {now}."
    if way.answer == "keep":
        yield "Keep it: the forces are still within what is wanted, and it will not set again by as much."
    else:
        yield (
            "It is too short for what is wanted. Pull it evenly a little beyond its length and press it solid again; "
            "if it is as short as this once more, wind another."
        )
    next_mm = wound_mm + short_mm
    longer, laid_mm = show_length(next_mm, coil.units), coil.plan.pitch_on_mandrel_mm * wider(next_mm)
    yield (
        f"The next one: wind it {longer} long, {pitch_next(coil, laid_mm)}, and press it solid three times: it ends "
        f"near {wanted}."
    )
