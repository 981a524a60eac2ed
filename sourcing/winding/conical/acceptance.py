"""What a finished cone must measure: both ends, their closing, when its coils close; the rest as a cylinder."""

from __future__ import annotations

from collections.abc import Iterable

from sourcing.fit.model import Fit
from sourcing.need.model import Need
from sourcing.quantities import show_diameter
from sourcing.springs.conical_lengths import solid_length_of
from sourcing.springs.describe_conical import closing_order
from sourcing.springs.model import ConicalSpring, Ends
from sourcing.stock.model import Bench
from sourcing.winding.acceptance import coils_row, force_rows, free_length_row, readings, solid_length_row
from sourcing.winding.conical.in_hand import ends_kept_outside_mm
from sourcing.winding.heat import asked_with
from sourcing.winding.model import Acceptance
from sourcing.winding.trials import Knowledge

GAP_SHARE = 0.1
"""The gap left at the tip of a closed end, over the wire, at most (common practice, no source)."""

UNEVEN_GAP = 0.15
"""How unevenly coils laid by hand may close, over the travel at which they should (assumed)."""


def accept_cone(
    spring: ConicalSpring, planned: Fit, need: Need, bench: Bench, known: Knowledge
) -> tuple[Acceptance, ...]:
    """The checks of a finished cone in the order in which they are done."""
    forces = readings(spring, need, bench)
    free = free_length_row(spring, planned, need, bench)
    return (
        *_ends(spring, planned, need, bench, known),
        coils_row(spring, need, bench),
        *_tips(spring, bench),
        free,
        *_closing(spring, free),
        solid_length_row(spring, need, bench),
        *force_rows(spring, forces, bench),
    )


def _ends(spring: ConicalSpring, planned: Fit, need: Need, bench: Bench, known: Knowledge) -> Iterable[Acceptance]:
    """Both ends, small one first."""
    small_share, large_share = (
        (known.mandrel_mm(each) - known.mandrel_mm(0.99 * each)) / (0.01 * each)
        for each in (spring.mean_diameter_small_mm, spring.mean_diameter_large_mm)
    )
    if_not = (
        f"Too large: turn the mandrel down there, too small: make it thicker, by {small_share:.2f} of what the "
        f"diameter is off at the small end and {large_share:.2f} at the large one. Both ends off the same way: the "
        "wire springs back otherwise than assumed; "
        f"{asked_with('`--came-out` and `--came-out-small-end`', spring.material, bench)} says whether it is kept or "
        "cut, and the next mandrel. One end alone: the mandrel is not as listed there."
    )
    for end, (low_mm, high_mm) in ends_kept_outside_mm(spring, planned, need, bench).items():
        yield Acceptance(f"outside_diameter_{end}_mm", low_mm, high_mm, if_not)


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
