"""The winding of a cone in bench order: what differs from a cylinder's; the rest is in steps.py."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_length
from sourcing.springs.model import ConicalSpring, Ends
from sourcing.stock.model import Bench
from sourcing.winding.acceptance import readings
from sourcing.winding.checking import check_pressed
from sourcing.winding.conical.mandrel import LaidCone, straight_taper_error_mm
from sourcing.winding.conical.notes import TOUCHING_FROM
from sourcing.winding.finishing import kept_from_rust
from sourcing.winding.model import Band
from sourcing.winding.presetting import wind_longer
from sourcing.winding.setting_up import anchored, eased, held, holder, prepared, set_up, taken_off, takes, way_laid
from sourcing.winding.spacing import WEDGE, cone_without_seat
from sourcing.winding.steps import PressedNumbers, again, eighths, finish, prepare

OFF = "Take it off over the small end of the mandrel; over the large end it never comes. Then"
"""How a cone comes off a mandrel that is turned for it."""


@dataclass(frozen=True, slots=True)
class ConeNumbers(PressedNumbers):
    """What the sentences about a cone are made of.

    `wound_ends` are the outside diameters of the small and the large end as wound, 95 %.
    """

    laid: LaidCone
    wound_ends: tuple[Band, Band]

    def steps(self, need: Need, bench: Bench) -> tuple[str, ...]:
        """The winding of one cone."""
        return cone_steps(self, need, bench)


def cone_steps(numbers: ConeNumbers, need: Need, bench: Bench) -> tuple[str, ...]:
    """The winding of one cone, from the old one to the check of the new one."""
    return (
        *prepare(numbers, numbers.spring, need, bench),
        *wind_longer(numbers.spring, numbers.stress_at_solid_share, bench),
        *_mandrel(numbers, bench),
        f"{held(numbers, bench)}{way_laid(numbers, numbers.spring.hand)}",
        *_lay(numbers, bench),
        eased(numbers, bench),
        *_off(numbers, bench),
        *finish(numbers, need, bench),
        check_pressed([each.length_mm for each in readings(numbers.spring, need, bench)], bench.units),
        *kept_from_rust(numbers.spring.material, need.surroundings),
        *again(need),
    )


def _mandrel(numbers: ConeNumbers, bench: Bench) -> Iterable[str]:
    if numbers.on_solid:
        yield from prepared(numbers)
        yield f"{set_up(numbers, bench)} Anchor the wire at the large end: {anchored(numbers, bench)}"
        return
    yield from _turned(numbers, bench)
    yield (
        f"Set it up, the large end held, {holder(numbers.crank, bench)} {takes(numbers, bench)} Anchor the wire at the "
        f"large end: {anchored(numbers, bench)}"
    )


def _turned(numbers: ConeNumbers, bench: Bench) -> Iterable[str]:
    """How a mandrel is turned or filed to its profile."""

    def size(value_mm: float) -> str:
        return show_diameter(value_mm, bench.units)

    marks = "; ".join(
        f"at {show_length(point.height_mm, bench.units)}, {size(point.diameter_mm)}"
        for point in numbers.mandrel.profile
    )
    half = f"{eighths(numbers.dead_turns / 2)} turns"
    beyond = f" Leave it straight beyond both, for {half} of end coil and the spare ones." if numbers.dead_turns else ""
    yield (
        f"Turn or file a mandrel, from the small end along it: {marks}. It is curved: a straight taper between the "
        f"same ends would be {size(straight_taper_error_mm(numbers.laid))} too thin in its middle.{beyond} No rod on "
        "hand can serve."
    )
    yield (
        "Cut the wire's seat into it as a flat step that climbs round it, level with the axis, with a wall towards the "
        "large end and none towards the small end: so the wire does not slide while it is wound, and the spring can "
        "come off."
    )
    if isinstance(numbers.spring, ConicalSpring):
        pitch_mm, flow_mpa = numbers.laid.pitch_mm, numbers.known.flow_stress_mpa
        yield from cone_without_seat(numbers.spring, numbers.mandrel, pitch_mm, flow_mpa, bench.units)


def _lay(numbers: ConeNumbers, bench: Bench) -> Iterable[str]:
    laid = numbers.laid
    closed = numbers.spring.ends in (Ends.CLOSED, Ends.CLOSED_GROUND)
    half = f"{eighths(numbers.dead_turns / 2)} turns ({numbers.dead_turns / 2:.2f})"
    if closed:
        yield f"Lay {half} close at the large end, wire against wire: the first end coil."
    yield (
        f"{'Then' if closed else 'Lay'} {eighths(laid.turns)} turns ({laid.turns:.2f}) down the seat to the small end, "
        f"at a pitch of {show_diameter(laid.pitch_mm, bench.units)} along the mandrel"
        + (f", {laid.touching:.1f} of them wire against wire." if laid.touching >= TOUCHING_FROM else ".")
    )
    if closed:
        yield f"Then {half} close again at the small end: the last end coil."
    yield (
        f"That makes {numbers.active_turns + numbers.dead_turns:.2f} turns in all. Wind {numbers.spare_turns:g} "
        "more to spare, close, so that a spoiled end can be cut off."
    )


def _off(numbers: ConeNumbers, bench: Bench) -> Iterable[str]:
    small, large = (
        f"{show_diameter(band.low, bench.units)} to {show_diameter(band.high, bench.units)}"
        for band in numbers.wound_ends
    )
    yield (
        f"{taken_off(numbers, OFF)} both ends outside: "
        f"{small} at the small one and {large} at the large one in 95 of 100; the largest coil has opened most. Write "
        "the mandrel and the outside diameter at one end down with `springwright trial`."
    )
    yield WEDGE
