"""The work in bench order, as sentences with the numbers in them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_length, show_wire
from sourcing.springs.model import CompressionSpring, Ends, PressedSpring, Spring
from sourcing.springs.strength import Place
from sourcing.stock.model import Bench
from sourcing.winding.acceptance import readings
from sourcing.winding.checking import check_pressed
from sourcing.winding.end_steps import bend_ends, left_over
from sourcing.winding.finishing import ends_finished, kept_from_rust
from sourcing.winding.heat import where_heated
from sourcing.winding.measuring import LEAST_GAP_MM
from sourcing.winding.model import Band
from sourcing.winding.old_spring import old_spring
from sourcing.winding.presetting import TENTH_LEFT, limit_left, press_solid, pressed_off_mm, wind_longer
from sourcing.winding.setting_up import SLIDE_OFF, Numbers, anchored, eased, held, prepared, set_up, taken_off, way_laid
from sourcing.winding.spacing import WEDGE, laid_apart, pulled_out

RATE_ON_WIRE = 4
"""The rate goes as the fourth power of the wire."""


@dataclass(frozen=True, slots=True)
class PressedNumbers(Numbers):
    """What the sentences about a compression spring are made of; turns as laid on the mandrel."""

    spring: PressedSpring
    active_turns: float
    dead_turns: float
    spare_turns: float
    pitch_on_mandrel_mm: float
    wound_coils: float
    wound_outside: Band
    wound_outside_mm: float
    stress_at_solid_share: float

    def steps(self, need: Need, bench: Bench) -> tuple[str, ...]:
        """The winding of one cylinder."""
        return cylinder_steps(self, need, bench)


def eighths(turns: float) -> str:
    """Turns as they are counted at the bench.

    >>> eighths(9.87), eighths(8.02), eighths(2.5)
    ('9 7/8', '8', '2 1/2')
    """
    whole, part = divmod(round(turns * 8), 8)
    fractions = ("", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8")
    return f"{whole} {fractions[part]}".strip()


def cylinder_steps(numbers: PressedNumbers, need: Need, bench: Bench) -> tuple[str, ...]:
    """The winding of one spring, from the old one to the check of the new one."""
    return (
        *prepare(numbers, numbers.spring, need, bench),
        *wind_longer(numbers.spring, numbers.stress_at_solid_share, bench),
        *_wind(numbers, bench),
        *_let_go(numbers, bench),
        *finish(numbers, need, bench),
        check_pressed([each.length_mm for each in readings(numbers.spring, need, bench)], bench.units),
        *kept_from_rust(numbers.spring.material, need.surroundings),
        *again(need),
    )


def prepare(numbers: Numbers, spring: Spring, need: Need, bench: Bench) -> Iterable[str]:
    """What comes before winding: the old spring, the wire, the cut."""
    yield from old_spring(spring, need, bench.units, numbers.on_solid and numbers.on_solid.hand_taken)
    wire_mm = numbers.wire.wire_diameter_mm
    step_mm, step = (0.0254, "thousandth of an inch") if bench.units == "inch" else (0.01, "hundredth of a millimetre")
    yield (
        f"Measure the wire: {show_wire(wire_mm, bench.units)}. One {step} more makes the spring "
        f"{100 * RATE_ON_WIRE * step_mm / wire_mm:.0f} % stiffer."
    )
    source = f"from {numbers.wire.id}" if numbers.wire.id else "from the new wire"
    yield (
        f"Cut {show_length(numbers.cut_length_mm, bench.units)} {source}, both ends held, and bend a small hook at the "
        "free end so that it cannot scratch or slip through."
    )


def _wind(numbers: PressedNumbers, bench: Bench) -> Iterable[str]:
    yield from prepared(numbers)
    yield f"{set_up(numbers, bench)} Anchor the wire: {anchored(numbers, bench)}"
    yield f"{held(numbers, bench)}{way_laid(numbers, numbers.spring.hand)}"
    yield from _lay(numbers, bench)


def _lay(numbers: PressedNumbers, bench: Bench) -> Iterable[str]:
    pitch_mm, wire_mm = numbers.pitch_on_mandrel_mm, numbers.wire.wire_diameter_mm
    half = f"{eighths(numbers.dead_turns / 2)} turns ({numbers.dead_turns / 2:.2f})"
    closed = numbers.spring.ends in (Ends.CLOSED, Ends.CLOSED_GROUND)
    seated = numbers.on_solid is not None and numbers.on_solid.seated
    if closed:
        yield f"Lay {half} close, wire against wire: the first end coil."
    yield (
        f"{'Then' if closed else 'Lay'} {eighths(numbers.active_turns)} turns ({numbers.active_turns:.2f}) "
        f"{laid_apart(pitch_mm, wire_mm, seated, bench.units)}"
    )
    if closed:
        yield f"Then {half} close again: the last end coil."
    total = numbers.active_turns + numbers.dead_turns
    yield (
        f"That makes {total:.2f} turns in all. Wind {numbers.spare_turns:g} more to spare, close, so that a "
        "spoiled end can be cut off."
    )
    if isinstance(numbers.spring, CompressionSpring) and not seated and pitch_mm - wire_mm >= LEAST_GAP_MM:
        more_mm = pressed_off_mm(numbers.spring)
        yield pulled_out(numbers.spring, numbers.wound_coils, numbers.known.flow_stress_mpa, more_mm, bench.units)


def _let_go(numbers: PressedNumbers, bench: Bench) -> Iterable[str]:
    yield eased(numbers, bench)
    low, middle, high = (
        show_diameter(each, bench.units)
        for each in (numbers.wound_outside.low, numbers.wound_outside_mm, numbers.wound_outside.high)
    )
    yield (
        f"{taken_off(numbers, SLIDE_OFF)} it outside: {middle} is expected, {low} to {high} in 95 of 100. "
        "Write it down with `springwright trial`: it says which mandrel is next."
    )
    if numbers.pitch_on_mandrel_mm - numbers.wire.wire_diameter_mm >= LEAST_GAP_MM:
        yield WEDGE


def finish(numbers: PressedNumbers, need: Need, bench: Bench) -> Iterable[str]:
    """What comes after winding: trimming, heat, grinding, pressing, checking, keeping rust off."""
    spring, heated = numbers.spring, numbers.heat.temperature_c is not None
    closes = (
        ", and bend the last turns until their tips touch the next coil" if spring.ends.startswith("closed") else ""
    )
    then = f"; heat makes them {spring.total_coils:.2f}" if heated else ""
    coils = f"{numbers.wound_coils:.2f} coils ({eighths(numbers.wound_coils)}{then})"
    yield f"Trim to {coils}, both sides of each cut held{left_over(spring, bench)}{closes}."
    yield from bend_ends(spring, bench)
    yield _relieve(numbers, bench)
    yield from ends_finished(spring, need, bench)
    yield press_solid(heated, numbers.stress_at_solid_share, spring, bench)


def _relieve(numbers: PressedNumbers, bench: Bench) -> str:
    """The heat, or what is left without it."""
    material, heat = numbers.spring.material, numbers.heat
    if heat.temperature_c is not None:
        return f"Relieve the stress {where_heated(material)}: {heat.said}"
    left = limit_left(Place.LENGTH, material, numbers.spring.tensile_strength_mpa, bench.units)
    return f"{heat.said}{left}{TENTH_LEFT}"


def again(need: Need) -> Iterable[str]:
    """The others, where several are wanted."""
    if need.quantity > 1:
        yield f"{need.quantity} are wanted: wind the others only when the first has passed."
