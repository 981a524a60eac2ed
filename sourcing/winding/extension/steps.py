"""The winding of an extension spring in bench order: what differs from other springs; the rest is in steps.py."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_length
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.strength import Place
from sourcing.stock.model import Bench
from sourcing.winding.checking import check_pulled
from sourcing.winding.extension.acceptance import readings
from sourcing.winding.extension.end_steps import hook_steps, plug_steps
from sourcing.winding.extension.ends import COILS_ON_PLUG
from sourcing.winding.extension.making import LaidTight
from sourcing.winding.finishing import kept_from_rust
from sourcing.winding.heat import where_heated
from sourcing.winding.model import Band
from sourcing.winding.presetting import TENTH_LEFT, limit_left
from sourcing.winding.setting_up import SLIDE_OFF, Numbers, anchored, eased, held, prepared, set_up, taken_off, way_laid
from sourcing.winding.steps import again, eighths, prepare


def without_heat(hooks: Hooks) -> str:
    """What is said of an extension spring in place of heat."""
    cracks = "" if hooks is Hooks.THREADED_PLUG else "its hooks crack more easily and "
    return (
        f"Without heat it keeps all of its initial tension, but {cracks}it grows a little longer in use (common "
        "practice, no source)."
    )


@dataclass(frozen=True, slots=True)
class ExtensionNumbers(Numbers):
    """What the sentences about an extension spring are made of; `spring` is the finished one, `wound` before heat."""

    spring: ExtensionSpring
    wound: ExtensionSpring
    laid: LaidTight
    spare_turns: float
    wound_outside: Band

    def steps(self, need: Need, bench: Bench) -> tuple[str, ...]:
        """The winding of one extension spring."""
        return extension_steps(self, need, bench)


def extension_steps(numbers: ExtensionNumbers, need: Need, bench: Bench) -> tuple[str, ...]:
    """The winding of one extension spring, from the old one to the check of the new one."""
    return (
        *prepare(numbers, numbers.spring, need, bench),
        *prepared(numbers),
        f"{set_up(numbers, bench)} Anchor the wire: {anchored(numbers, bench)}",
        f"{held(numbers, bench)}{way_laid(numbers, numbers.spring.hand)}",
        *_lay(numbers),
        eased(numbers, bench),
        *_off(numbers, bench),
        *_ends_and_heat(numbers, bench),
        _pull(numbers, need, bench),
        check_pulled([each.length_mm for each in readings(numbers.spring, need, bench)], bench.units),
        *kept_from_rust(numbers.spring.material, need.surroundings),
        *again(need),
    )


def _lay(numbers: ExtensionNumbers) -> Iterator[str]:
    laid = numbers.laid
    parts = (
        f"{COILS_ON_PLUG} coils for each plug among them, which act no longer"
        if numbers.spring.hooks is Hooks.THREADED_PLUG
        else f"{laid.body_turns:.2f} for the body, {laid.hook_turns:.2f} for the two hooks"
    )
    yield (
        f"Lay {eighths(laid.turns)} turns ({laid.turns:.2f}: {parts}) close, wire against wire, and lean the wire back "
        "over the turn before it by a few degrees all the while, so that each turn presses on the last: that is what "
        "holds the coils together (common practice, no source). Keep lean and pull even."
    )
    spoiled = "end" if numbers.spring.hooks is Hooks.THREADED_PLUG else "hook"
    yield f"Wind {numbers.spare_turns:g} turns more to spare, so that a spoiled {spoiled} can be cut off."


def _off(numbers: ExtensionNumbers, bench: Bench) -> Iterator[str]:
    low, middle, high = (
        show_diameter(each, bench.units)
        for each in (numbers.wound_outside.low, numbers.wound.outside_diameter_mm, numbers.wound_outside.high)
    )
    yield (
        f"{taken_off(numbers, SLIDE_OFF)} it outside: {middle} is expected, {low} to {high} in 95 of 100. "
        "Write mandrel and diameter down with `springwright trial`. Hold it against a light: no gap may show."
    )
    yield _cut_to_coils(numbers.wound)


def _cut_to_coils(wound: ExtensionSpring) -> str:
    """Where the turns to spare are cut off: only once one hook is good."""
    body = f"{wound.total_coils:.2f} coils ({eighths(wound.total_coils)})"
    if wound.hooks is Hooks.THREADED_PLUG:
        return f"Count off {body}, those that go onto both plugs among them, and cut off the rest, the cut end held."
    return (
        "Bend one hook, as the next steps say, while the turns to spare are still on: if it is spoiled, cut it off, "
        f"the cut end held, and bend the next coil. From a good one count off {body} for the body and mark where they "
        "end; leave the wire of the other hook and cut off the rest, the cut end held (common practice, no source)."
    )


def _ends_and_heat(numbers: ExtensionNumbers, bench: Bench) -> Iterator[str]:
    """Hooks are bent before heat, which relieves their bends too; plugs go into the body that heat has left."""
    if numbers.spring.hooks is Hooks.THREADED_PLUG:
        yield from _heat(numbers, bench)
        yield from plug_steps(numbers.spring, bench.units)
    else:
        yield from hook_steps(numbers.wound, bench.units)
        yield from _heat(numbers, bench)


def _heat(numbers: ExtensionNumbers, bench: Bench) -> Iterator[str]:
    material, heat = numbers.spring.material, numbers.heat
    if heat.temperature_c is None:
        left = limit_left(Place.BODY, material, numbers.spring.tensile_strength_mpa, bench.units)
        yield f"{heat.said}{left}{TENTH_LEFT}"
        return
    when = (
        "before its plugs go in, for heat changes its diameter, "
        if numbers.spring.hooks is Hooks.THREADED_PLUG
        else "with the hooks bent, "
    )
    yield (
        f"Relieve the stress {when}{where_heated(material)}: {heat.said} It takes a quarter to a half of the initial "
        "tension away (a trade handbook, from memory)."
    )


def _pull(numbers: ExtensionNumbers, need: Need, bench: Bench) -> str:
    """The presetting of an extension spring."""
    plugged = numbers.spring.hooks is Hooks.THREADED_PLUG
    end = "plug" if plugged else "hook"
    stay_out = f"Eye protection on, and stay out of its line: a {end} that slips or breaks lets it fly."
    if numbers.heat.temperature_c is not None:
        return f"Pull it to its longest working length three times, slowly. {stay_out}"
    longest = show_length(max(point.at_mm for point in need.working), bench.units)
    look = "see that its plugs hold" if plugged else "look at the bends of its hooks for cracks"
    return f"Pull it once, slowly, to its greatest length of {longest}, and {look}. {stay_out}"
