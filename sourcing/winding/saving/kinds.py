"""Which measures of a coil serve for which kind of spring, and what answers them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from sourcing.winding.saving.coil import Coil, Saved
from sourcing.winding.saving.compression import diameter as cylinder_diameter
from sourcing.winding.saving.compression import length as cylinder_length
from sourcing.winding.saving.conical import diameter as cone_diameter
from sourcing.winding.saving.conical import length as cone_length
from sourcing.winding.saving.extension import diameter, length, tension
from sourcing.winding.saving.torsion import answer as torsion


@dataclass(frozen=True, slots=True)
class Answering:
    """The measures that are answered together, by name, and what answers them: the coil, then one figure each."""

    measures: tuple[str, ...]
    answer: Callable[..., Saved]


OF_KIND: Mapping[str, tuple[Answering, ...]] = {
    "compression": (
        Answering(("outside",), cylinder_diameter.came_out),
        Answering(("pitch",), cylinder_length.came_out_pitch),
        Answering(("outside", "pitch"), cylinder_diameter.came_out_with_pitch),
        Answering(("pressed_to",), cylinder_length.pressed_to),
    ),
    "conical": (
        Answering(("outside",), cone_diameter.large_came_out),
        Answering(("outside_small",), cone_diameter.small_came_out),
        Answering(("outside", "outside_small"), cone_diameter.both_came_out),
        Answering(("pitch",), cone_length.came_out_pitch),
        Answering(("pressed_to",), cone_length.pressed_to),
    ),
    "extension": (
        Answering(("outside",), diameter.came_out),
        Answering(("pitch",), length.came_out_pitch),
        Answering(("tension",), tension.came_out_tension),
        Answering(("outside", "tension"), diameter.came_out_with_tension),
        Answering(("pulled_to",), length.pulled_to),
    ),
    "torsion": (
        Answering(("outside",), torsion.came_out),
        Answering(("angle",), torsion.came_out_angle),
        Answering(("outside", "angle"), torsion.came_out_with_angle),
    ),
}


def saved(coil: Coil, measured: Mapping[str, float]) -> Saved | None:
    """What to do with a coil that measures so; None where its kind is not asked by these measures together.

    Raises `SenselessError` for a figure that no coil of the plan can have.
    """
    for each in OF_KIND[coil.need.kind]:
        if set(each.measures) == set(measured):
            return each.answer(coil, *(measured[name] for name in each.measures))
    return None


def measures_of(kind: str) -> tuple[str, ...]:
    """The measures that a kind of spring is asked by, in order."""
    return tuple(dict.fromkeys(name for each in OF_KIND[kind] for name in each.measures))
