"""The winding of a torsion spring in bench order: what differs from a compression spring's; the rest is in steps.py."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from sourcing.need.model import Need
from sourcing.quantities import show_angle, show_diameter, show_length
from sourcing.springs import hands, turned
from sourcing.springs.model import Leg, LegShape, TorsionSpring
from sourcing.springs.strength import Place
from sourcing.stock.model import Bench
from sourcing.winding.checking import check_turned
from sourcing.winding.finishing import kept_from_rust
from sourcing.winding.heat import where_heated
from sourcing.winding.model import Band
from sourcing.winding.presetting import limit_left
from sourcing.winding.setting_up import SLIDE_OFF, Numbers, anchored, eased, held, prepared, set_up, taken_off, way_laid
from sourcing.winding.steps import again, eighths, prepare
from sourcing.winding.torsion.acceptance import sits, torque_readings
from sourcing.winding.torsion.making import LaidBody

HELD_MM = 50.0
"""Wire beyond a leg, to anchor or to hold it by (assumed)."""


WIND_UP_INSTEAD = (
    "A torsion spring wound up the way it was coiled does without (Machinery's Handbook, p. 346); expect its legs to "
    "settle a few degrees."
)
"""What is said of a torsion spring in place of heat."""


@dataclass(frozen=True, slots=True)
class TorsionNumbers(Numbers):
    """What the sentences about a torsion spring are made of; `spring` is the finished one, `wound` as it comes off."""

    spring: TorsionSpring
    wound: TorsionSpring
    laid: LaidBody
    wound_outside: Band
    wound_angle: Band | None

    def steps(self, need: Need, bench: Bench) -> tuple[str, ...]:
        """The winding of one torsion spring."""
        return torsion_steps(self, need, bench)


def torsion_steps(numbers: TorsionNumbers, need: Need, bench: Bench) -> tuple[str, ...]:
    """The winding of one torsion spring, from the old one to the check of the new one."""
    return (
        *prepare(numbers, numbers.spring, need, bench),
        *_set_up(numbers, bench),
        f"{held(numbers, bench)}{way_laid(numbers, None)}",
        *_lay(numbers, bench),
        eased(numbers, bench),
        *_off(numbers, bench),
        *_bends(numbers, bench),
        *_heat(numbers, bench),
        *_set_angle(numbers, bench),
        *_trimmed(numbers, bench),
        _wind_up(numbers, need),
        check_turned([each.angle_deg for each in torque_readings(numbers.spring, need, bench)]),
        *kept_from_rust(numbers.spring.material, need.surroundings),
        *again(need),
    )


def _set_up(numbers: TorsionNumbers, bench: Bench) -> Iterable[str]:
    yield from prepared(numbers)
    if numbers.spring.bodies > 1:
        loop = numbers.spring.leg_2
        deep = "as deep as the old one" if loop is None else f"{show_length(loop.length_mm, bench.units)} deep"
        yield (
            f"Bend the loop first, in the middle of the wire: a narrow U {deep}, its bends round "
            f"{_round_pin(numbers.spring, bench)}. Each half then makes a body, wound outwards from the loop, one "
            "right-hand and one left-hand."
        )
        yield f"{set_up(numbers, bench)} Hook the loop over {_pin(numbers)}."
        return
    leg = numbers.spring.leg_1
    stands_mm = HELD_MM + (0.0 if leg is None else leg.length_mm)
    yield (
        f"{set_up(numbers, bench)} Leave {show_length(stands_mm, bench.units)} of wire standing out for leg 1, and "
        f"anchor it there: {anchored(numbers, bench)}"
    )


def _pin(numbers: TorsionNumbers) -> str:
    """The pin of a double spring, and where it goes in a rod that may be too hard to drill."""
    if numbers.on_solid:
        return numbers.on_solid.anchored
    soft = " (a drill's shank is too hard to drill: take a soft rod)" if numbers.mandrel.kind == "rod" else ""
    return f"a pin across the mandrel{soft}"


def _lay(numbers: TorsionNumbers, bench: Bench) -> Iterable[str]:
    hand, count = numbers.spring.hand, f"{eighths(numbers.laid.turns)} turns ({numbers.laid.turns:.2f})"
    if hand is None:
        yield f"Lay {count} of each half close, wire against wire, away from the loop. {_stop(numbers)}"
        return
    yield (
        f"Lay {count} close, wire against wire, {hands.laid(hand)}. {_stop(numbers)} Leave as much wire for leg 2 as "
        "stands out for leg 1, or more."
    )


def _stop(numbers: TorsionNumbers) -> str:
    """Where the crank stops, and how far the legs turn back from there."""
    laid = numbers.laid
    back = f"{show_angle(laid.opens_deg)}, {laid.opens_deg / 360.0:.2f} turns"
    if numbers.spring.free_angle_deg is None:
        return f"As it is let go, leg 2 turns back by {back}."
    return (
        f"Stop where leg 2, standing out from the mandrel, points {show_angle(laid.stop_deg)} on from where leg 1 "
        f"points, counted the way you wind: as it is let go, that falls by {back}."
    )


def _off(numbers: TorsionNumbers, bench: Bench) -> Iterable[str]:
    low, middle, high = (
        show_diameter(each, bench.units)
        for each in (numbers.wound_outside.low, numbers.wound.outside_diameter_mm, numbers.wound_outside.high)
    )
    angle = ""
    if numbers.wound_angle is not None and numbers.wound.free_angle_deg is not None:
        around = (numbers.wound_angle.high - numbers.wound_angle.low) / 2.0
        angle = (
            f" The legs should stand at {show_angle(numbers.wound.free_angle_deg)}, give or take {show_angle(around)}."
        )
    yield (
        f"{taken_off(numbers, SLIDE_OFF)} it outside: {middle} is expected, {low} to {high} in 95 of 100.{angle} Write "
        f"mandrel{', turns, both angles' if angle else ''} and diameter down with `springwright trial`."
    )


def _legs(spring: TorsionSpring) -> tuple[tuple[str, Leg | None], ...]:
    """The legs by name; the outer ones of a double spring are alike."""
    return (
        (("leg 1", spring.leg_1), ("leg 2", spring.leg_2))
        if spring.bodies == 1
        else (("each outer leg", spring.leg_1),)
    )


def _round_pin(spring: TorsionSpring, bench: Bench) -> str:
    """The pin of every bend: its inside is no tighter than the wire."""
    pin = show_diameter(2.0 * spring.wire_diameter_mm, bench.units)
    return f"a pin of {pin}, not tighter than its own wire, or it breaks there (DIN 2194)"


def _bends(numbers: TorsionNumbers, bench: Bench) -> Iterable[str]:
    """Hooks and offsets, bent out of legs that are still long."""
    spring = numbers.spring
    relieved = "; the heat relieves the bend too" if numbers.heat.temperature_c is not None else ""
    past = (
        f"{_round_pin(spring, bench)}. It springs back: bend it a little past. Leave the leg long{relieved} (common "
        "practice, no source)."
    )
    for name, leg in _legs(spring):
        if leg is None or leg.shape is LegShape.STRAIGHT:
            continue
        if leg.shape is LegShape.HOOKED:
            loaded = f"where it is loaded, {show_length(leg.length_mm, bench.units)} from where it leaves the coil"
            yield f"Mark {name} {loaded}, and bend its hook there with pliers round {past}"
        else:
            yield f"Bend {name} aside where it leaves the coil, with pliers, round {past}"


def _trimmed(numbers: TorsionNumbers, bench: Bench) -> Iterable[str]:
    """The legs cut to length last, when all that moves or shortens them is done."""
    spring = numbers.spring
    cuts = (_cut(name, leg, spring, bench) for name, leg in _legs(spring))
    yield f"Only now cut the legs, each cut end held (common practice, no source): {', '.join(cuts)}."


def _cut(name: str, leg: Leg | None, spring: TorsionSpring, bench: Bench) -> str:
    if leg is None:
        return f"{name} as long as the old one (how long it is was not said)"
    if leg.shape is LegShape.HOOKED:
        wire = show_length(turned.HOOK_WIRES * spring.wire_diameter_mm, bench.units)
        return f"the hook of {name} to {wire} of wire (assumed)"
    return f"{name} where it is loaded, {show_length(leg.length_mm, bench.units)} from where it leaves the coil"


def _heat(numbers: TorsionNumbers, bench: Bench) -> Iterable[str]:
    material, heat = numbers.spring.material, numbers.heat
    if heat.temperature_c is None:
        yield heat.said + limit_left(Place.WOUND_UP, material, numbers.spring.tensile_strength_mpa, bench.units)
        return
    yield f"Relieve the stress {where_heated(material)}: {heat.said}"
    moves = 360.0 * (numbers.spring.active_coils - numbers.wound.active_coils)
    if abs(moves) >= 1.0:
        coil, way = ("closes", "on, the way it is wound up") if moves > 0.0 else ("opens", "back")
        yield f"The coil {coil} a little in the heat, and leg 2 turns {way}, by about {show_angle(abs(moves))}."


def _wind_up(numbers: TorsionNumbers, need: Need) -> str:
    """The presetting of a torsion spring."""
    how = "to" if numbers.heat.temperature_c is not None else "a little past"
    return f"Wind it up {how} its largest angle three times {sits(need)}, the way it is loaded."


def _set_angle(numbers: TorsionNumbers, bench: Bench) -> Iterable[str]:
    angle, pin = numbers.spring.free_angle_deg, show_diameter(2.0 * numbers.spring.wire_diameter_mm, bench.units)
    bend = f"bend them where they leave the coil, with two pliers, over a pin of {pin} or thicker."
    if angle is None:
        yield f"Set the legs as the old ones stood (at what angle was not said): {bend}"
    else:
        seen = min(angle, 360.0 - angle)
        closing = " and the load brings them together" if angle > 180.0 else ""
        yield (
            f"Set the legs at {show_angle(angle)}, counted from leg 1 on to leg 2 the way it is wound up (between them "
            f"you see {show_angle(seen)}{closing}): {bend}"
        )
