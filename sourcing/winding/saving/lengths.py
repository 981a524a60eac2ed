"""The length of a compression spring of any shape that came out otherwise, and one that set as it was pressed solid for
the first time."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from sourcing.quantities import show_length
from sourcing.springs import pressed
from sourcing.springs.model import PressedSpring
from sourcing.winding.in_hand import keeps
from sourcing.winding.model import Acceptance
from sourcing.winding.presetting import most_lost_share, pressed_off_mm
from sourcing.winding.saving.coil import AS_LONG_MM, Coil, Saved, SenselessError, Way, joined_said, saved_by
from sourcing.winding.saving.pressed import judged
from sourcing.winding.saving.verdict_words import as_it_is_wrong, chance_said, though_unsure

FAR_LONGER = 1.5
"""So many times too long no spring is that was wound by its sheet (assumed)."""


def wanted_mm(coil: Coil) -> float:
    """The free length that was meant in the end."""
    wanted = coil.plan.wanted
    assert isinstance(wanted, PressedSpring)
    return wanted.free_length_mm


def kept_by_length(coil: Coil, came: Way[PressedSpring]) -> Way[PressedSpring]:
    """The coil as it is where it serves as planned, or no rule tells its length from the one meant; else brought to
    that. One whose length the list takes by itself is weighed before that is known."""
    as_long = abs(came.spring.free_length_mm - wanted_mm(coil)) < AS_LONG_MM
    if as_long or keeps(came.fit, coil.plan.fit):
        return came
    if _is_listed(coil, came.spring.free_length_mm):
        return replace(came, answer="measure first")
    brought = replace(came.spring, free_length_mm=wanted_mm(coil))
    return Way("change", brought, judged(coil, brought))


def first_deed(coil: Coil, free_mm: float) -> str:
    """What is done first with a spring that is so long and not kept."""
    return "weigh it first" if _is_listed(coil, free_mm) else "bring it to its length"


def _is_listed(coil: Coil, free_mm: float) -> bool:
    row = _row(coil)
    return (row.low is None or row.low <= free_mm) and (row.high is None or free_mm <= row.high)


def _row(coil: Coil) -> Acceptance:
    """Between which free lengths the sheet's list takes one."""
    (row,) = (row for row in coil.plan.accept if row.figure == "free_length_mm")
    return row


def bring_to_length(coil: Coil, free_mm: float) -> Iterator[str]:
    """How it is brought to its length; first that the scale decides, where the list accepts that length by itself."""
    if not _is_listed(coil, free_mm):
        yield to_length(coil, free_mm)
        return
    yield (
        f"The list takes {_listed(coil)}, but by its rate its forces are off at this one: keep it if the scale finds "
        "them within the list."
    )
    yield f"Else: {to_length(coil, free_mm)}"


def _listed(coil: Coil) -> str:
    """The lengths that the list takes, in words."""
    row = _row(coil)
    low, high = ("" if mm is None else show_length(mm, coil.units) for mm in (row.low, row.high))
    if low and high:
        return f"a length of {low} to {high}"
    return f"a length of {low} or more" if low else f"a length of {high} or less"


def to_length(coil: Coil, free_mm: float, target_mm: float | None = None) -> str:
    """How a spring that is so long is brought to a length, the one that was meant where no other is said."""
    target_mm = wanted_mm(coil) if target_mm is None else target_mm
    target = show_length(target_mm, coil.units)
    if free_mm > target_mm:
        return f"Press it solid, then close the coils evenly with a wedge or by hand until it rests at {target}."
    return (
        f"Pull it evenly, a little further each time, until it rests at a little over {target}; press it solid once, "
        "and measure again."
    )


def of_set(coil: Coil, came: Way[PressedSpring], wider: Callable[[float], float]) -> Saved:
    """A spring that was shorter after it was first pressed solid: it has set, and the next one is wound longer.

    L₀' = L₀ + a + (L₀ − L), where it was wound a longer than wanted: longer by what it lost, it ends at the length that
    is wanted (presetting). `wider` is the pitch of a length over the one that was laid.
    """
    free_mm, solid_mm = came.spring.free_length_mm, pressed.solid_length_mm(came.spring)
    if free_mm < solid_mm - AS_LONG_MM:
        found = f"{show_length(free_mm, coil.units)} is shorter than it is pressed solid"
        raise SenselessError("pressed_to", found, f"its length at rest, {show_length(solid_mm, coil.units)} or more")
    if free_mm > FAR_LONGER * wanted_mm(coil):
        now, wanted = (show_length(mm, coil.units) for mm in (free_mm, wanted_mm(coil)))
        found = f"{now} is far longer than the {wanted} wanted"
        raise SenselessError("pressed_to", found, "its length at rest, after it was pressed solid")
    if _set_too_much(coil, free_mm):
        return Saved("wind again", came.spring, came.fit, 1.0, tuple(_said_of_soft_wire(coil, free_mm)))
    way = kept_by_length(coil, came)
    said = joined_said(
        _said_of_set(coil, way, free_mm),
        chance_said(coil, way),
        as_it_is_wrong(coil, came, way),
        _next_longer(coil, free_mm, wider),
    )
    return saved_by(way, 1.0, said)


def _wound_mm(coil: Coil) -> float:
    """How long it was wound, by the sheet."""
    assert isinstance(coil.plan.wanted, PressedSpring)
    return wanted_mm(coil) + pressed_off_mm(coil.plan.wanted)


def _set_too_much(coil: Coil, free_mm: float) -> bool:
    """Whether a spring set by more than its stress at solid can account for, though it was laid as short as a hand may.

    One that the list takes is not doubted for that.
    """
    assert isinstance(coil.plan.wanted, PressedSpring)
    most, laid_short_mm = most_lost_share(coil.plan.wanted), _laid_short_mm(coil)
    sets_mm = None if most is None else (_wound_mm(coil) - laid_short_mm) * (1.0 - most)
    return sets_mm is not None and free_mm < sets_mm and not _is_listed(coil, free_mm)


def _laid_short_mm(coil: Coil) -> float:
    """By how much shorter than meant it may come off its mandrel, by the sheet's band of 95 %."""
    return wanted_mm(coil) - coil.plan.finished.bands["free_length_mm"].low


def _said_of_soft_wire(coil: Coil, free_mm: float) -> Iterator[str]:
    now, wound, set_by = (show_length(mm, coil.units) for mm in (free_mm, _wound_mm(coil), _wound_mm(coil) - free_mm))
    yield (
        f"After its first pressing it is {now} long at rest, {set_by} shorter than the {wound} of the sheet: wind it "
        "again, and do not use this one."
    )
    yield (
        "Its stress at solid does not account for so much: it was wound shorter, or its wire is softer than the label "
        "says, or was heated too much. Winding the next one longer does not cure that: measure the length before you "
        "press it, go by a thermometer, and wind a trial coil of this wire first."
    )


def _said_of_set(coil: Coil, way: Way[PressedSpring], free_mm: float) -> Iterator[str]:
    short_mm = wanted_mm(coil) - free_mm
    now, off, wanted = (show_length(mm, coil.units) for mm in (free_mm, abs(short_mm), wanted_mm(coil)))
    at_rest = f"After its first pressing it is {now} long at rest"
    if abs(short_mm) < AS_LONG_MM:
        yield f"{at_rest}, as it should be: keep it as it is{though_unsure(coil, way.fit)}."
        return
    at_rest = f"{at_rest}, {off} {'less' if short_mm > 0.0 else 'more'} than the {wanted} wanted"
    if way.answer == "keep":
        again = ", and it will not set again by as much" if short_mm > 0.0 else ""
        unsure = though_unsure(coil, way.fit)
        yield f"{at_rest}: keep it as it is{unsure}; its forces are within what is wanted{again}."
        return
    yield f"{at_rest}: {first_deed(coil, free_mm)}."
    yield from bring_to_length(coil, free_mm)
    if short_mm > 0.0:
        yield "If it is as short as this once more, wind another."


def _next_longer(coil: Coil, free_mm: float, wider: Callable[[float], float]) -> Iterator[str]:
    """By how much it has set, and how much longer the next one is wound for it."""
    short_mm = wanted_mm(coil) - free_mm
    if short_mm < AS_LONG_MM:
        return
    wound_mm = _wound_mm(coil)
    next_mm = wound_mm + short_mm
    set_by, wound, longer, wanted = (
        show_length(mm, coil.units) for mm in (wound_mm - free_mm, wound_mm, next_mm, wanted_mm(coil))
    )
    yield (
        f"It has set by {set_by}, from {wound} as the sheet has it wound. The next one: wind it {longer} long, "
        f"{pitch_next(coil, coil.plan.pitch_on_mandrel_mm * wider(next_mm))}, and press it solid three times: it ends "
        f"near {wanted}."
    )


def pitch_next(coil: Coil, laid_mm: float) -> str:
    """How the next coil is laid, by its pitch on the mandrel."""
    if laid_mm <= coil.wire_mm:
        return "lay it wire against wire, and pull it out to its length afterwards"
    gap, pitch, was = (
        show_length(mm, coil.units) for mm in (laid_mm - coil.wire_mm, laid_mm, coil.plan.pitch_on_mandrel_mm)
    )
    return f"a pitch of {pitch} on the mandrel, a gap of {gap}, instead of {was}"
