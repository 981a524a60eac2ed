"""Which rows of the sheet's list no longer apply to an extension spring that was changed to save it."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.springs import pulled
from sourcing.springs.model import ExtensionSpring
from sourcing.winding.saving.coil import Coil, Way

_HAIR = 1e-6


def rows_left(coil: Coil, way: Way[ExtensionSpring], body_mm: float | None = None) -> Iterator[str]:
    """The rows that it no longer meets, told in one sentence; `body_mm`: of a body whose coils do not touch."""
    if way.answer != "change":
        return
    spring = way.spring
    measures = {
        "outside_diameter_mm": spring.outside_diameter_mm,
        "total_coils": spring.total_coils,
        "coils_between_plugs": spring.active_coils,
        "body_length_mm": pulled.body_length_mm(spring) if body_mm is None else body_mm,
        "free_length_mm": spring.free_length_mm,
        "initial_tension_n": spring.initial_tension_n or 0.0,
    }
    left = [
        row.figure.removesuffix("_mm").removesuffix("_n").replace("_", " ")
        for row in coil.plan.accept
        if row.figure in measures and not _within(measures[row.figure], row.low, row.high)
    ]
    if left:
        *others, last = left
        named = f"{', '.join(others)} and {last}" if others else last
        rows, apply = ("rows", "apply") if others else ("row", "applies")
        yield (
            f"Done so, the {rows} of the sheet's list for {named} no longer {apply}; its clearances and the rows of "
            "its forces do."
        )


def _within(value: float, low: float | None, high: float | None) -> bool:
    return (low is None or value >= low - _HAIR) and (high is None or value <= high + _HAIR)
