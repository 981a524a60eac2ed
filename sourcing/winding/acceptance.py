"""What the finished spring must measure, with what to do where it doesn't, and how it goes into its place."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from sourcing.fit.model import Fit
from sourcing.fit.score import allowed, force_house_tolerance_n
from sourcing.need.model import Need
from sourcing.quantities import Wanted, show_diameter, show_force, show_length, show_stop, show_weight
from sourcing.springs import geometry, pressed, tolerances
from sourcing.springs.model import CompressionSpring, ConicalSpring, Ends, PressedSpring
from sourcing.stock.model import Bench
from sourcing.winding.heat import asked_with
from sourcing.winding.in_hand import RULE_STEPS_MM, as_read_mm, finished, keeps, kept_between_mm, kept_outside_mm
from sourcing.winding.model import Acceptance, GoesIn
from sourcing.winding.trials import Knowledge
from sourcing.winding.weighing import KITCHEN_SCALE_N, grams, kitchen_scale_ends, stop_between_mm, weight_off

TURNS_COUNTED_TO = 0.125
"""Turns are counted to an eighth."""


_STEP_MM = 0.01


@dataclass(frozen=True, slots=True)
class Reading:
    """The force to accept at a length."""

    length_mm: float
    low_n: float | None
    high_n: float | None


def rate_of(spring: PressedSpring) -> float:
    """The rate that a spring's dimensions give; a cone's initial one."""
    return pressed.rate_n_per_mm(spring)


def rate_at(spring: PressedSpring, length_mm: float) -> float:
    """How steeply the force rises at a length: a cylinder's rate anywhere, that of a cone's open coils there."""
    return (_force_n(spring, length_mm - _STEP_MM) - _force_n(spring, length_mm + _STEP_MM)) / (2 * _STEP_MM)


def readings(spring: PressedSpring, need: Need, bench: Bench) -> tuple[Reading, ...]:
    """The forces to accept, longest length first.

    Where only one is wanted, a second is taken midway from there to the free length, so that the rate shows; it is
    allowed the same share of itself as the first.
    """
    wanted = [
        Reading(point.at_mm, *allowed(point.force_n, force_house_tolerance_n(point.force_n, bench.tolerances)))
        for point in need.working
        if point.force_n is not None
    ]
    if len(wanted) == 1:
        between_mm = stop_between_mm(wanted[0].length_mm, spring.free_length_mm, bench.units)
        share = _force_n(spring, between_mm) / _force_n(spring, wanted[0].length_mm)
        low_n, high_n = (None if bound is None else bound * share for bound in (wanted[0].low_n, wanted[0].high_n))
        wanted.append(Reading(between_mm, low_n, high_n))
    return tuple(sorted(wanted, key=lambda each: -each.length_mm))


def accept(
    spring: CompressionSpring,
    planned: Fit,
    need: Need,
    bench: Bench,
    known: Knowledge,
    mandrel_mm: float,
) -> tuple[Acceptance, ...]:
    """The checks of a finished spring in the order in which they are done."""
    forces = readings(spring, need, bench)
    return (
        _outside_diameter(spring, planned, need, bench, known, mandrel_mm),
        coils_row(spring, need, bench),
        free_length_row(spring, planned, need, bench),
        *_upright(spring),
        solid_length_row(spring, need, bench),
        *force_rows(spring, forces, bench),
    )


def _outside_diameter(
    spring: CompressionSpring, planned: Fit, need: Need, bench: Bench, known: Knowledge, mandrel_mm: float
) -> Acceptance:
    """What is kept as it is with the coils planned."""

    def kept(mean_mm: float) -> bool:
        return keeps(finished(replace(spring, mean_diameter_mm=mean_mm), need, bench), planned)

    slope = (known.mandrel_mm(spring.mean_diameter_mm) - known.mandrel_mm(spring.mean_diameter_mm * 0.99)) / (
        0.01 * spring.mean_diameter_mm
    )
    return Acceptance(
        "outside_diameter_mm",
        *kept_outside_mm(spring, kept, bench.units),
        f"{asked_with('`--came-out`', spring.material, bench)} says whether other coils save it, and how many. Else "
        f"wind another. Too large: a smaller mandrel, too small: a larger one, by {slope:.2f} of what it is off"
        f"{_rods_beside(mandrel_mm, bench)} Write the coil down with `springwright trial`: the next mandrel will be "
        "nearer.",
    )


def _rods_beside(mandrel_mm: float, bench: Bench) -> str:
    """The rods on hand next to the mandrel."""
    smaller = max((rod for rod in bench.rods_mm if rod < mandrel_mm), default=None)
    larger = min((rod for rod in bench.rods_mm if rod > mandrel_mm), default=None)
    on_hand = " and ".join(show_diameter(rod, bench.units) for rod in (smaller, larger) if rod is not None)
    return f"; the next rods on hand are {on_hand}." if on_hand else "."


def coils_row(spring: PressedSpring, need: Need, bench: Bench) -> Acceptance:
    """The coils, counted to an eighth; never so many that the spring is solid before its shortest working length."""
    room_mm = min(point.at_mm for point in need.working) - pressed.solid_length_mm(spring)
    more = min(TURNS_COUNTED_TO, max(0.0, room_mm / spring.wire_diameter_mm))
    return Acceptance(
        "total_coils",
        spring.total_coils - TURNS_COUNTED_TO,
        spring.total_coils + more,
        f"Too many: cut back ({_one_coil(spring, bench.units)}) and close the end again; too few: it is too stiff, "
        "wind another.",
    )


def _one_coil(spring: PressedSpring, units: str) -> str:
    """The wire of one coil where it is cut: of a cone at either end."""

    def wire(mean_mm: float) -> str:
        return f"{show_length(geometry.turn_length_mm(mean_mm, spring.wire_diameter_mm), units)} of wire"

    if isinstance(spring, ConicalSpring):
        small, large = (wire(each) for each in (spring.mean_diameter_small_mm, spring.mean_diameter_large_mm))
        return f"one coil is {small} at the small end, {large} at the large one"
    return f"{wire(spring.mean_diameter_mm)} is one coil"


def free_length_row(spring: PressedSpring, planned: Fit, need: Need, bench: Bench) -> Acceptance:
    """As the need wants it; where it wants none, what is kept as it is with the rate planned."""

    def kept(free_mm: float) -> bool:
        return keeps(finished(replace(spring, free_length_mm=free_mm), need, bench), planned)

    if need.free_length_mm is not None:
        low, high = allowed(need.free_length_mm, bench.tolerances.length_mm)
    else:
        low, high = as_read_mm(*kept_between_mm(spring.free_length_mm, kept), RULE_STEPS_MM[bench.units])
    return Acceptance(
        "free_length_mm",
        low,
        high,
        "Too long: press it solid again, then take what is left off the end coils by bending them closer, or by "
        "grinding where ends are ground. Too short: pull it evenly until it rests longer; "
        "it loses some of that in use.",
    )


def _upright(spring: CompressionSpring) -> Iterable[Acceptance]:
    """How far it leans, where it has an end to stand on."""
    if spring.ends is Ends.OPEN or len(spring.end_pieces) > 1:
        return
    ground = spring.ends in (Ends.CLOSED_GROUND, Ends.OPEN_GROUND)
    mend = "grind that end on the side it leans away from" if ground else "bend its last turn until it lies flat"
    yield Acceptance(
        "out_of_square_mm",
        None,
        tolerances.out_of_square_mm(spring.free_length_mm),
        "Stand it on a flat plate against a square and turn it: the widest gap at its top counts (as bought ones of "
        f"EN 15800 grade 2, from memory, and JIS B 2704-2 grade 2). More: the end it stands on is crooked; {mend}. Try "
        "the other end too.",
    )


def solid_length_row(spring: PressedSpring, need: Need, bench: Bench) -> Acceptance:
    """That it can be pressed to the shortest working length."""
    shortest_mm = min(point.at_mm for point in need.working)
    return Acceptance(
        "solid_length_mm",
        None,
        shortest_mm,
        f"It is solid before {show_length(shortest_mm, bench.units)}: it has a coil too many, or its wire is thicker "
        "than it should be.",
    )


def force_rows(spring: PressedSpring, forces: Sequence[Reading], bench: Bench) -> Iterable[Acceptance]:
    """Grams where a kitchen scale reaches, and newtons, at each length."""
    if_not = _off(spring, forces, bench)
    for reading in forces:
        at = f"at_{reading.length_mm:g}_mm"
        if reading.high_n is None or reading.high_n <= KITCHEN_SCALE_N:
            yield Acceptance(f"scale_{at}_g", grams(reading.low_n), grams(reading.high_n), if_not)
            yield Acceptance(f"force_{at}_n", reading.low_n, reading.high_n, if_not)
        else:
            ends = (
                f"A kitchen scale ends at {kitchen_scale_ends(bench.units)}: use bathroom scales or a luggage scale. "
            )
            yield Acceptance(f"force_{at}_n", reading.low_n, reading.high_n, ends + if_not)


def _off(spring: PressedSpring, forces: Sequence[Reading], bench: Bench) -> str:
    """What forces that are off say of the spring; a cone's curve tells its length at each in another measure."""

    each_n, weight = weight_off(bench.units)

    def for_each(reading: Reading) -> str:
        return show_length(each_n / rate_at(spring, reading.length_mm), bench.units)

    if spring.kind == "conical":
        each = ", ".join(f"{for_each(at)} for each {weight} at {show_stop(at.length_mm, bench.units)}" for at in forces)
        return (
            f"Off at both lengths as another length would make it ({each}): the free length is off. Off in proportion: "
            f"the rate is off; a tenth too much at both wants a tenth more than {spring.active_coils:.2f} active coils."
        )
    return (
        f"Off by the same amount at both lengths: the free length is off, {for_each(forces[0])} for each {weight}. Off "
        "in proportion: the rate is off; from one length to the other a tenth too much wants a tenth more than "
        f"{spring.active_coils:.2f} active coils."
    )


def goes_in(spring: PressedSpring, need: Need, bench: Bench) -> GoesIn:
    """How the free spring stands in its hole, and what pushes against the cover as it is closed."""
    longest_mm = max(point.at_mm for point in need.working)
    cover_n, depth = _force_n(spring, longest_mm), need.pocket.depth_mm
    stick_out_mm = None if depth is None or depth.nominal is None else spring.free_length_mm - depth.nominal
    return GoesIn(stick_out_mm, cover_n, tuple(_goes_in_said(spring, need, longest_mm, cover_n, bench.units)))


def _force_n(spring: PressedSpring, length_mm: float) -> float:
    return pressed.force_n(spring, length_mm, rate_of(spring))


def _goes_in_said(spring: PressedSpring, need: Need, longest_mm: float, cover_n: float, units: str) -> Iterable[str]:
    yield (
        f"Fitted at {show_stop(longest_mm, units)}, its longest working length, it pushes {show_force(cover_n, units)} "
        f"({show_weight(cover_n, units)}): hold the cover against that until it is fastened."
    )
    yield from _stands(spring, need.pocket.depth_mm, units)
    if need.pocket.bores_mm or need.pocket.depth_mm is not None:
        yield (
            "If the hole is blind, see that the spring stands square on its bottom before you close it; a dab of "
            "grease holds it while the cover goes on, a thin rod down its middle keeps a slim one straight (common "
            "practice, no source)."
        )


def _stands(spring: PressedSpring, depth: Wanted | None, units: str) -> Iterable[str]:
    """How far the free spring stands out of its hole, or ends below its edge."""
    if depth is None or depth.nominal is None:
        return
    stands_mm = spring.free_length_mm - depth.nominal
    if stands_mm > 0:
        flush_n = _force_n(spring, depth.nominal)
        yield (
            f"Free, it stands {show_length(stands_mm, units)} out of its hole; a cover flush with the hole wants "
            f"{show_force(flush_n, units)} ({show_weight(flush_n, units)})."
        )
    else:
        short = show_length(-stands_mm, units)
        yield f"Free, it ends {short} below the edge of its hole: something must reach in to press it."
