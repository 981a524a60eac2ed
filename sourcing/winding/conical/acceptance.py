"""What a finished cone must measure: both ends, their closing, when its coils close; the rest as a cylinder."""

from __future__ import annotations

from collections.abc import Iterable
from math import inf

from sourcing.need.model import Need
from sourcing.quantities import show_diameter
from sourcing.springs.conical_lengths import growth_at_ends_mm, solid_length_of
from sourcing.springs.describe_conical import closing_order
from sourcing.springs.model import ConicalSpring, Ends
from sourcing.stock.model import Bench
from sourcing.winding.acceptance import coils_row, force_rows, free_length_row, readings, solid_length_row
from sourcing.winding.conical.room import End, EndDiameters
from sourcing.winding.doubts import DIAMETER_POWER
from sourcing.winding.heat import asked_with
from sourcing.winding.model import Acceptance
from sourcing.winding.trials import Knowledge

GAP_SHARE = 0.1
"""The gap left at the tip of a closed end, over the wire, at most (common practice, no source)."""

UNEVEN_GAP = 0.15
"""How unevenly coils laid by hand may close, over the travel at which they should (assumed)."""


def accept_cone(
    spring: ConicalSpring, ends: EndDiameters, need: Need, bench: Bench, known: Knowledge
) -> tuple[Acceptance, ...]:
    """The checks of a finished cone in the order in which they are done."""
    forces = readings(spring, need, bench)
    free = free_length_row(spring, need, bench, forces)
    return (
        _end("small", spring, ends, bench, known),
        _end("large", spring, ends, bench, known),
        coils_row(spring, need, bench),
        *_tips(spring, bench),
        free,
        *_closing(spring, free),
        solid_length_row(spring, need, bench),
        *force_rows(spring, forces, bench),
    )


def _end(name: End, spring: ConicalSpring, ends: EndDiameters, bench: Bench, known: Knowledge) -> Acceptance:
    """What the wanted forces bear at the coils planned, no further than the pocket of that end."""
    wire_mm, room, small = spring.wire_diameter_mm, ends.of(name), name == "small"
    mean_mm = spring.mean_diameter_small_mm if small else spring.mean_diameter_large_mm
    growth_mm = growth_at_ends_mm(spring)[0 if small else 1]
    borne_mm = spring.mean_diameter_mm * bench.tolerances.rate / DIAMETER_POWER
    least_mm = max(mean_mm - borne_mm, 0.0 if room.over_rod_mm is None else room.over_rod_mm)
    most_mm = min(mean_mm + borne_mm, inf if room.in_bore_mm is None else room.in_bore_mm - growth_mm)
    small_share, large_share = (
        (known.mandrel_mm(each) - known.mandrel_mm(0.99 * each)) / (0.01 * each)
        for each in (spring.mean_diameter_small_mm, spring.mean_diameter_large_mm)
    )
    return Acceptance(
        f"outside_diameter_{name}_mm",
        least_mm + wire_mm,
        most_mm + wire_mm,
        f"Too large: turn the mandrel down there, too small: make it thicker, by {small_share:.2f} of what the "
        f"diameter is off at the small end and {large_share:.2f} at the large one. Both ends off the same way: the "
        "wire springs back otherwise than assumed; "
        f"{asked_with('`--came-out` and `--came-out-small-end`', spring.material, bench)} says whether it is kept or "
        "cut, and the next mandrel. One end alone: the mandrel is not as listed there.",
    )


def _tips(spring: ConicalSpring, bench: Bench) -> Iterable[Acceptance]:
    """That closed ends are closed."""
    if spring.ends in (Ends.CLOSED, Ends.CLOSED_GROUND):
        yield Acceptance(
            "gap_at_end_tips_mm",
            None,
            GAP_SHARE * spring.wire_diameter_mm,
            f"More than a tenth of the wire ({show_diameter(GAP_SHARE * spring.wire_diameter_mm, bench.units)}; common "
            "practice, no source): a slip of paper that thick goes under the tip. Bend the last turn closer; an open "
            "end tilts in its seat, and the forces come late.",
        )


def _closing(spring: ConicalSpring, free: Acceptance) -> Iterable[Acceptance]:
    """The length at which the first turn of the large end lies down, where it can be seen to: before it is solid."""
    first, *others = closing_order(spring)
    if not others or free.low is None or free.high is None:
        return
    uneven_mm = UNEVEN_GAP * (spring.free_length_mm - first.length_mm)
    yield Acceptance(
        "first_turn_down_at_mm",
        max(solid_length_of(spring), first.length_mm - (spring.free_length_mm - free.low) - uneven_mm),
        first.length_mm + (free.high - spring.free_length_mm) + uneven_mm,
        "The first turn of the large end lies down at a longer length: its pitch is too small there; at a shorter one: "
        "too large. Bend that turn. If a smaller turn lies down before it, that one has too little pitch, or hangs on "
        "the next: bend it free.",
    )
