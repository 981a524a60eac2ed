"""What is said of a cone whose ends came out otherwise."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from sourcing.quantities import show_diameter
from sourcing.springs import pressed
from sourcing.springs.model import ConicalSpring
from sourcing.winding.conical.room import End
from sourcing.winding.in_hand import CALIPER_STEPS_MM, as_read_mm
from sourcing.winding.saving.coil import TOLD_FROM, Coil, Way
from sourcing.winding.saving.conical.cone import wanted_of
from sourcing.winding.saving.conical.cutting import as_it_stands, cut_for_rate, cut_said
from sourcing.winding.saving.conical.ends import ENDS, CameOut, listed_mm
from sourcing.winding.saving.pressed import judged
from sourcing.winding.saving.pressed_words import at_its_length, new_end
from sourcing.winding.saving.verdict_words import came_out_at, keep_it, or_surer, save_it, so_it_serves

NOT_THE_WIRE_ALONE = (
    "The wire alone does not put its ends off so: the mandrel is not as listed at one of them, the wire slid along it, "
    "or an end was read wrong."
)

TEACHES_NOTHING = (
    "If both ends read so again, it serves, whatever put them there; but it teaches nothing of the wire. Do not write "
    "it down, and measure the mandrel at both ends before another is wound on it."
)


def said_of_ends(coil: Coil, ends: CameOut, deed: Sequence[str], sure: bool) -> Iterator[str]:
    """What came out and what is done, at once where that is `sure`; it is told where the wire alone does not do so."""
    came, (first, *more) = _came(coil, ends), deed
    if sure:
        yield f"{came}: {first}"
    else:
        yield f"{came}: measure both ends again, and the mandrel at both, before anything is cut or written down."
        yield NOT_THE_WIRE_ALONE
        yield f"If both ends read so again, {first}"
    if sure and not ends.agree:
        yield NOT_THE_WIRE_ALONE
        yield TEACHES_NOTHING
    else:
        yield from more
    for end in _untold(ends):
        now, was = _now_and_meant(coil, ends, end)
        yield f"By the same wire its {end} end is {now} outside ({was} meant): measure it too."


def said_of_other_end(coil: Coil, ends: CameOut) -> Iterator[str]:
    """That the other end is measured first, and what the list takes of it."""
    for end in _untold(ends):
        read_mm = as_read_mm(*listed_mm(coil, end), CALIPER_STEPS_MM[coil.units])
        low, high = (show_diameter(mm, coil.units) for mm in read_mm)
        heat = " before heat" if coil.change_to_come else ""
        yield (
            f"{_came(coil, ends)}, which the list accepts there: measure its {end} end too, and ask with both, before "
            f"anything is cut or written down. It is kept as it is if that is {low} to {high} outside{heat}."
        )
        now, was = _now_and_meant(coil, ends, end)
        yield f"By the same wire its {end} end would be {now} outside ({was} meant), and then it would not be kept."


def deed(coil: Coil, cone: ConicalSpring, way: Way[ConicalSpring], rate_kept: float) -> Sequence[str]:
    """What is done with the cone, in words that go on a sentence; then what else is to be said of that."""
    coils = f"{coil.shown(cone.active_coils)} coils between its ends{coil.counted}"
    rate = f"its rate is {rate_kept:.3f} of that meant ({coils})"
    if way.answer == "keep":
        return (f"{keep_it(coil, way)}; {rate}.",)
    if way.answer == "change":
        return f"{save_it(coil, way)}. As it is, {rate}.", *_changed(coil, cone, way.spring)
    why = (
        "a cone that is too stiff gets no more coils, and no other length saves it"
        if rate_kept > 1.0
        else "neither a cut nor another length saves it"
    )
    return (f"wind it again, for {why}.",)


def said_of_nearer(coil: Coil, cone: ConicalSpring, way: Way[ConicalSpring], rate_kept: float) -> Iterator[str]:
    """What else a kept cone may become: clearly surer, or cut to the rate that was meant where it serves so."""
    if way.surer is not None:
        yield or_surer(way.surer)
        yield from _changed(coil, cone, way.surer.spring)
    elif way.answer == "keep" and rate_kept < 1.0 - TOLD_FROM:
        just = cut_for_rate(cone, "large", pressed.rate_n_per_mm(wanted_of(coil)))
        if just is not None and (fit := judged(coil, just)).fits != "no":
            yield f"If its rate is to be nearer: {cut_said(coil, cone, just)}. {so_it_serves(coil, fit)}"


def _changed(coil: Coil, cone: ConicalSpring, spring: ConicalSpring) -> Iterator[str]:
    """What is cut off it, and how it comes to its length."""
    cut = spring.active_coils != cone.active_coils
    if cut:
        said = cut_said(coil, cone, spring)
        yield f"{said[0].upper()}{said[1:]}."
        yield from new_end(coil, spring.ends)
    stands_mm = as_it_stands(cone, spring).free_length_mm
    yield from at_its_length(coil, stands_mm, spring.free_length_mm, cut=cut, measured=False)


def _came(coil: Coil, ends: CameOut) -> str:
    """How the first sentence begins: each end that was measured beside the one meant."""
    came = " and ".join(came_out_at(*_now_and_meant(coil, ends, end), f"at its {end} end") for end in ends.told)
    return came.replace(", as meant and", ", as meant, and").replace(" and It came out", " and")


def _untold(ends: CameOut) -> Sequence[End]:
    return [end for end in ENDS if end not in ends.told]


def _now_and_meant(coil: Coil, ends: CameOut, end: End) -> tuple[str, str]:
    meant = coil.meant
    assert isinstance(meant, ConicalSpring)
    meant_mm: Mapping[End, float] = {"large": meant.outside_diameter_large_mm, "small": meant.outside_diameter_small_mm}
    return show_diameter(ends.outside_mm[end], coil.units), show_diameter(meant_mm[end], coil.units)
