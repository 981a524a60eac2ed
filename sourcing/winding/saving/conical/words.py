"""What is said of a cone whose ends came out otherwise."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from sourcing.quantities import show_diameter, show_length
from sourcing.springs import pressed
from sourcing.springs.conical_lengths import pitch_of
from sourcing.springs.model import ConicalSpring
from sourcing.winding.conical.room import End
from sourcing.winding.in_hand import CALIPER_STEPS_MM, as_read_mm
from sourcing.winding.saving.coil import AS_LONG_MM, TOLD_FROM, Coil, Way
from sourcing.winding.saving.conical.cone import wanted_of
from sourcing.winding.saving.conical.cutting import cut_for_rate, cut_said
from sourcing.winding.saving.conical.ends import ENDS, CameOut, listed_mm
from sourcing.winding.saving.lengths import to_length
from sourcing.winding.saving.verdict_words import came_out_at, keep_it, save_it

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
        return f"{keep_it(coil, way)}; {rate}.", *_just_so(coil, cone, rate_kept)
    if way.answer == "change":
        saved = f"{save_it(coil, way)}: {cut_said(coil, cone, way.spring)}; as it is, {rate}."
        return saved, *_shorter(coil, cone, way.spring)
    why = "a cone that is too stiff gets no more coils" if rate_kept > 1.0 else "cutting does not save it"
    return (f"wind it again, for {why}.",)


def _just_so(coil: Coil, cone: ConicalSpring, rate_kept: float) -> Iterator[str]:
    """What would have to be cut off a cone that is kept, for just the rate that was meant."""
    just = cut_for_rate(cone, "large", pressed.rate_n_per_mm(wanted_of(coil)))
    if just is not None and rate_kept < 1.0 - TOLD_FROM:
        yield f"Just so: {cut_said(coil, cone, just)}."


def _shorter(coil: Coil, cone: ConicalSpring, cut: ConicalSpring) -> Iterator[str]:
    """How long a cone stands once it is cut, where a rule tells that."""
    stands_mm = cone.free_length_mm - pitch_of(cone) * (cone.active_coils - cut.active_coils)
    if cone.free_length_mm - stands_mm >= AS_LONG_MM:
        length = show_length(stands_mm, coil.units)
        yield f"It is {length} long then, if its pitch is the one meant. {to_length(coil, stands_mm)}"


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
