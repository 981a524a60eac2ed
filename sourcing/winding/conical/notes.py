"""What the sheet of a cone says beside its figures: doubts, what was assumed, what rounding and touching turns do."""

from __future__ import annotations

from collections.abc import Iterable

from sourcing.quantities import show_diameter, show_force, show_length
from sourcing.springs.describe_conical import closing_order
from sourcing.springs.model import ConicalSpring
from sourcing.springs.notes import material_note
from sourcing.stock.model import Bench
from sourcing.winding.any_kind import fit_notes, wire_notes
from sourcing.winding.conical.mandrel import LaidCone, moved_by_rounding_mm, straight_taper_error_mm
from sourcing.winding.conical.search import ConicalDesign
from sourcing.winding.making import TOO_OPEN_SHARE
from sourcing.winding.mandrel import TURNED_STEP_MM
from sourcing.winding.pressed_task import PressedTask
from sourcing.winding.trials import Knowledge

TOUCHING_FROM = 0.1
"""Turns that touch are spoken of from so many on."""


def cone_notes(
    task: PressedTask,
    known: Knowledge,
    design: ConicalDesign,
    before_heat: ConicalSpring,
    laid: LaidCone,
    cut_length_mm: float,
) -> Iterable[str]:
    """The notes of one plan."""
    yield from material_note(task.wire.material)
    yield from wire_notes(task, known, cut_length_mm)
    yield _mandrel(task, known, before_heat, laid)
    yield from _touching(design.spring, laid, task.bench)
    yield _closing(design.spring, task.bench)
    yield from fit_notes(design.fit, task, known)


def _mandrel(task: PressedTask, known: Knowledge, before_heat: ConicalSpring, laid: LaidCone) -> str:
    units, thin_mm = task.bench.units, straight_taper_error_mm(laid)
    step, moved, thin = (
        show_diameter(each, units)
        for each in (TURNED_STEP_MM, moved_by_rounding_mm(before_heat, laid, known.finished_mean_mm), thin_mm)
    )
    return (
        f"No rod on hand winds a cone: its mandrel is made to the list. Its diameters are to {step}, as fine as "
        f"springback is known; the rounding moves a coil by {moved} at most. A straight taper between its two ends "
        f"would be up to {thin} too thin."
    )


def _touching(spring: ConicalSpring, laid: LaidCone, bench: Bench) -> Iterable[str]:
    """Turns that the pitch would bring onto the last."""
    if laid.touching < TOUCHING_FROM:
        return
    length = show_length(laid.too_open_mm, bench.units)
    longer = laid.too_open_mm > TOO_OPEN_SHARE * spring.free_length_mm
    yield (
        f"On the mandrel {laid.touching:.1f} turns lie wire against wire, and cannot go inside each other as they do "
        "in the spring: guide the wire from the small end's side, or it climbs onto the turn before. "
        + (f"The spring comes out about {length} too long for it, to be pressed shorter." if longer else "")
    ).rstrip()


def _closing(spring: ConicalSpring, bench: Bench) -> str:
    """Which coil closes when, as it can be seen while the cone is pressed."""
    first, *_, last = closing_order(spring)
    first_n, last_n = (show_force(each.force_n, bench.units) for each in (first, last))
    return (
        f"Pressed, the large end closes first: {first_n} lay its first turn down, at "
        f"{show_length(first.length_mm, bench.units)}; the last turn is down at {last_n}."
    )
