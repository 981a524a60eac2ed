"""What a finished cone must measure: the diameters of both ends, and when its coils close; the rest as a cylinder."""

from __future__ import annotations

from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_force, show_length
from sourcing.springs.describe_conical import closing_order
from sourcing.springs.model import ConicalSpring
from sourcing.stock.model import Bench
from sourcing.winding.acceptance import coils_row, force_rows, free_length_row, readings, solid_length_row
from sourcing.winding.conical_search import EndDiameters
from sourcing.winding.doubts import DIAMETER_POWER
from sourcing.winding.model import Acceptance


def accept_cone(spring: ConicalSpring, ends: EndDiameters, need: Need, bench: Bench) -> tuple[Acceptance, ...]:
    """The checks of a finished cone in the order in which they are done."""
    forces = readings(spring, need, bench)
    return (
        _end("small", spring.outside_diameter_small_mm, ends.small_mm, spring, bench),
        _end("large", spring.outside_diameter_large_mm, ends.large_mm, spring, bench),
        coils_row(spring, bench),
        free_length_row(spring, need, bench, forces),
        solid_length_row(spring, need, bench),
        *(row for reading in forces for row in force_rows(spring, reading, bench)),
    )


def _end(
    name: str, outside_mm: float, means_mm: tuple[float, float], spring: ConicalSpring, bench: Bench
) -> Acceptance:
    """What the wanted forces bear at the coils planned, no further than the pocket of that end."""
    borne_mm = spring.mean_diameter_mm * bench.tolerances.rate / DIAMETER_POWER
    low, high = (mean_mm + spring.wire_diameter_mm for mean_mm in means_mm)
    return Acceptance(
        f"outside_diameter_{name}_mm",
        max(low, outside_mm - borne_mm),
        min(high, outside_mm + borne_mm),
        "Both ends too large: turn the mandrel down by eight tenths of that; both too small: make a thicker one. One "
        "end off and the other right: the mandrel's taper is not the one listed. Write the coil down under trials of "
        "its spool: the next mandrel will be nearer.",
    )


def closing_said(spring: ConicalSpring, bench: Bench) -> str:
    """Which coil closes when, as it can be seen while the cone is pressed."""
    first, *_, last = closing_order(spring)
    return (
        f"Pressed, the large end closes first: it begins at {show_length(first.length_mm, bench.units)} "
        f"({show_force(first.force_n, bench.units)} for the first turn), and the last turn is down at "
        f"{show_force(last.force_n, bench.units)}. A coil that closes out of turn has too little pitch, or lies at "
        f"{show_diameter(spring.wire_diameter_mm, bench.units)} wire on the next: bend it free."
    )
