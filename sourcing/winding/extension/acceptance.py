"""What the finished extension spring must measure, with what to do where it doesn't, and how it is hooked in."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.model import Fit
from sourcing.fit.score import allowed, force_house_tolerance_n
from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_force, show_length, show_weight
from sourcing.springs import pulled
from sourcing.springs.geometry import turn_length_mm
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.stock.model import Bench
from sourcing.winding.acceptance import TURNS_COUNTED_TO, Reading
from sourcing.winding.extension.ends import end_words
from sourcing.winding.extension.in_hand import as_it_came, kept_lengths_mm, kept_tension
from sourcing.winding.extension.tension_words import LEAN_MORE, NOT_PUT_IN, READ_AGAIN, take_away
from sourcing.winding.heat import asked_with
from sourcing.winding.in_hand import finished, keeps, kept_outside_mm
from sourcing.winding.model import Acceptance, Band, GoesIn
from sourcing.winding.weighing import grams, stop_between_mm, weight_off

GAP_WIRES = 0.5
"""So many wires longer than with all its coils touching, a body shows gaps (assumed)."""


def accept_extension(
    spring: ExtensionSpring, planned: Fit, need: Need, bench: Bench, by_hand: Band
) -> tuple[Acceptance, ...]:
    """The checks of a finished spring in the order in which they are done."""
    return (
        _outside(spring, planned, need, bench),
        _coils(spring, bench),
        _body(spring),
        _free_length(spring, planned, need, bench),
        _tension(spring, planned, by_hand, need, bench),
        *(row for reading in readings(spring, need, bench) for row in _force_rows(spring, reading, bench)),
    )


def readings(spring: ExtensionSpring, need: Need, bench: Bench) -> tuple[Reading, ...]:
    """The forces to accept, shortest length first; where one is wanted alone, one midway to the free length beside it.

    The second is allowed the same share of itself as the first.
    """
    wanted = [
        Reading(point.at_mm, *allowed(point.force_n, force_house_tolerance_n(point.force_n, bench.tolerances)))
        for point in need.working
        if point.force_n is not None
    ]
    if len(wanted) == 1 and wanted[0].length_mm > spring.free_length_mm:
        between_mm = stop_between_mm(wanted[0].length_mm, spring.free_length_mm, bench.units)
        share = _force_n(spring, between_mm) / _force_n(spring, wanted[0].length_mm)
        low_n, high_n = (None if bound is None else bound * share for bound in (wanted[0].low_n, wanted[0].high_n))
        wanted.append(Reading(between_mm, low_n, high_n))
    return tuple(sorted(wanted, key=lambda each: each.length_mm))


def _force_n(spring: ExtensionSpring, length_mm: float) -> float:
    return pulled.force_n(spring, length_mm, pulled.rate_n_per_mm(spring), spring.initial_tension_n or 0.0)


def _outside(spring: ExtensionSpring, planned: Fit, need: Need, bench: Bench) -> Acceptance:
    """What is kept as it is with the coils planned."""

    def kept(mean_mm: float) -> bool:
        return keeps(finished(as_it_came(spring, mean_mm), need, bench), planned)

    plugged = spring.hooks is Hooks.THREADED_PLUG
    other = (
        "Other coils between its plugs may save it: `springwright wind` with `--came-out` says how many."
        if plugged
        else "Before its hooks are bent other coils may save it: `springwright wind` with `--came-out` says how many, "
        "and how high the hooks stand then."
    )
    return Acceptance(
        "outside_diameter_mm",
        *kept_outside_mm(spring, kept, bench.units),
        f"Too large: a smaller mandrel, too small: a larger one. {other} Write the coil down with "
        "`springwright trial`.",
    )


def _coils(spring: ExtensionSpring, bench: Bench) -> Acceptance:
    if spring.hooks is Hooks.THREADED_PLUG:
        return _between_plugs(spring)
    one_mm = turn_length_mm(spring.mean_diameter_mm, spring.wire_diameter_mm)
    if_not = (
        "Counted in the body, hooks apart. Too many: open a hook and bend it anew out of the next coil "
        f"({show_length(one_mm, bench.units)} of wire is one coil); too few: it is too stiff, wind another."
    )
    return Acceptance(
        "total_coils", spring.total_coils - TURNS_COUNTED_TO, spring.total_coils + TURNS_COUNTED_TO, if_not
    )


def _between_plugs(spring: ExtensionSpring) -> Acceptance:
    """The coils that are left between the plugs: how deep these are screwed decides."""
    return Acceptance(
        "coils_between_plugs",
        spring.active_coils - TURNS_COUNTED_TO,
        spring.active_coils + TURNS_COUNTED_TO,
        "Counted from one plug's thread to the other's; those on a plug do not act. Too many: screw a plug deeper; too "
        "few: screw it out a little, as long as it holds.",
    )


def _body(spring: ExtensionSpring) -> Acceptance:
    body_mm = pulled.body_length_mm(spring)
    return Acceptance(
        "body_length_mm",
        None,
        body_mm + GAP_WIRES * spring.wire_diameter_mm,
        "Held against a light, no gap may show between the coils. A gap: it was laid too loose there, and its force is "
        "off; wind another, leaning the wire back harder.",
    )


def _free_length(spring: ExtensionSpring, planned: Fit, need: Need, bench: Bench) -> Acceptance:
    """What is kept as it is with its coils touching."""
    if_not = (
        "Measured between the eyes of the plugs. Too long or too short: set the eyes in their plugs, for a plug that "
        "is screwed deeper takes coils away."
        if spring.hooks is Hooks.THREADED_PLUG
        else "Measured between the insides of the hooks. Too long or too short: bend the loops lower or higher, both "
        "alike, each once only: bent to and fro they break."
    )
    return Acceptance("free_length_mm", *kept_lengths_mm(spring, planned, need, bench), if_not)


def _tension(spring: ExtensionSpring, planned: Fit, by_hand: Band, need: Need, bench: Bench) -> Acceptance:
    """What is kept as it is at the length planned; of too little or too much only where a hand may wind it."""
    kept = kept_tension(spring, planned, need, bench, by_hand)
    said = ["Pull it on the scale until the coils just part, and read."]
    if kept.more:
        said.append(f"Too much: {take_away(spring, need, bench.units)}.")
    else:
        said.append(f"More than that no hand winds: {READ_AGAIN}.")
    said.append(f"Too little: {NOT_PUT_IN}." if kept.less else "None at all will do too.")
    if kept.more or kept.less:
        asked = asked_with("`--came-out-tension`", spring.material, bench)
        said.append(f"{asked} says how far another length {end_words(spring.hooks).between} makes up for it.")
    if kept.less:
        said.append(f"The next one: {LEAN_MORE}.")
    return Acceptance("initial_tension_n", kept.low_n, kept.high_n, " ".join(said))


def _force_rows(spring: ExtensionSpring, reading: Reading, bench: Bench) -> Iterator[Acceptance]:
    """Grams as a luggage scale reads them, and newtons."""
    at = f"at_{reading.length_mm:g}_mm"
    rate = pulled.rate_n_per_mm(spring)
    each_n, weight = weight_off(bench.units)
    for_each = show_length(each_n / rate, bench.units)
    if_not = (
        "Hang it from one end and pull with a luggage scale, or hang a weighed bottle from it. Off by the same at both "
        f"lengths: the initial tension or the {end_words(spring.hooks).ends} are off, {for_each} of length for each "
        f"{weight}. Off by more at the longer: the rate is off; a tenth too much wants a tenth more than "
        f"{spring.active_coils:.2f} {end_words(spring.hooks).coils}."
    )
    yield Acceptance(f"scale_{at}_g", grams(reading.low_n), grams(reading.high_n), if_not)
    yield Acceptance(f"force_{at}_n", reading.low_n, reading.high_n, if_not)


def extension_goes_in(spring: ExtensionSpring, need: Need, bench: Bench) -> GoesIn:
    """How it is hooked in, and how far it may be pulled for that."""
    return GoesIn(None, None, tuple(_said(spring, need, bench.units)))


def _said(spring: ExtensionSpring, need: Need, units: str) -> Iterator[str]:
    def length(value_mm: float) -> str:
        return show_length(value_mm, units)

    def pull(length_mm: float) -> str:
        force_n = _force_n(spring, length_mm)
        return f"{show_force(force_n, units)} ({show_weight(force_n, units)})"

    safe_mm = pulled.largest_safe_length_mm(spring, pulled.rate_n_per_mm(spring), spring.initial_tension_n or 0.0)
    first = pulled.breaks_first(spring).words
    end = "eye" if spring.hooks is Hooks.THREADED_PLUG else "hook"
    shortest_mm = min(point.at_mm for point in need.working)
    went_in = "Fitted" if end == "eye" else "Hooked in"
    yield f"{went_in} at {length(shortest_mm)}, its shortest working length, it pulls {pull(shortest_mm)}."
    if need.pull_to_fit_mm is not None:
        yield f"To go in it is pulled to {length(need.pull_to_fit_mm)}, which takes {pull(need.pull_to_fit_mm)}."
    if safe_mm is not None:
        yield f"Never pull it longer than {length(safe_mm)}: what gives first is {first}."
    yield (
        f"Pull it in with a loop of strong cord through its {end}, not with the fingers, eye protection on and the "
        f"face out of its line; see that the {end} sits in the middle of what it holds."
    )
    bore = need.pocket.bore_mm
    if bore is not None and bore.smallest is not None:
        room = show_diameter(bore.smallest - spring.outside_diameter_mm, units)
        yield f"Its body has {room} of room in the bore; pulled longer it only gets thinner."
        yield (
            f"If the bore is blind, push the far {end} in on a stiff wire, turn it until it has caught, and try it by "
            "the cord before you pull (common practice, no source)."
        )
