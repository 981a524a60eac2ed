"""What to cut and to have at hand before a spring is wound."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_block, show_diameter, show_length, show_wire, show_wire_length
from sourcing.sheets.winding_text import AT_LENGTH, mandrel_words
from sourcing.springs.model import CompressionSpring, ConicalSpring
from sourcing.winding.model import WindingPlan
from sourcing.winding.solid.coil import coil_of

SPACER_FROM_MM = 0.1
"""A gap that is no wider is kept by eye."""


def cut_list(plan: WindingPlan) -> list[tuple[str, str, str]]:
    """Wire, mandrel stock, spacer, stop blocks: what it is for, what to take, and how long."""
    return list(_rows(plan))


def _rows(plan: WindingPlan) -> Iterator[tuple[str, str, str]]:
    units = plan.units
    left = "" if plan.wire_left_mm is None else f"; {show_wire_length(plan.wire_left_mm, units)} stay on it"
    spool = "to be bought" if plan.wire is None else f"spool {plan.wire}{left}"
    spare = ", tails and spare turns included" if plan.turns_to_spare else ", tails included"
    wire = f"{show_wire(plan.wire_diameter_mm, units)} {plan.material}, {spool}"
    yield "wire", wire, show_length(plan.cut_length_mm, units) + spare
    yield "mandrel", mandrel_words(plan, units).removeprefix("a mandrel "), _covered(plan)
    gap_mm = plan.pitch_on_mandrel_mm - plan.wire_diameter_mm
    on = plan.numbers.on_solid
    if isinstance(plan.wanted, CompressionSpring) and gap_mm > SPACER_FROM_MM and not (on and on.seated):
        yield "spacer", f"strip or wire, {show_diameter(gap_mm, units)} thick", "to lay beside the wire"
    if isinstance(plan.wanted, CompressionSpring | ConicalSpring) and (lengths := list(_lengths(plan))):
        yield "stop blocks", "wood or metal, one each", " and ".join(lengths)


def _covered(plan: WindingPlan) -> str:
    """How much of the mandrel the wire covers, the room for a loop between two bodies included."""
    coil = coil_of(plan)
    return f"wire covers {show_length(coil.length_mm + coil.wire_mm, plan.units)}"


def _lengths(plan: WindingPlan) -> Iterator[str]:
    """The lengths at which the force is weighed."""
    for row in plan.accept:
        if (at := AT_LENGTH.fullmatch(row.figure)) is not None and at[1] == "scale":
            yield show_block(float(at[2]), plan.units)
