"""How far a cone's forces and free length are from those that are wanted, and the length that brings them nearest."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from sourcing.need.model import Need
from sourcing.springs import pressed
from sourcing.springs.model import ConicalSpring
from sourcing.stock.model import Bench
from sourcing.winding.line import Aims, aims

_STEPS = 12
"""At most, of the fit of a length."""

_FURTHEST_SHARE = 0.3
"""A step changes a length by no more than this share of it."""

_NEAR_MM = 1e-4


def misses(spring: ConicalSpring, wanted: Aims) -> tuple[float, ...]:
    """Each miss over its tolerance: of the forces that are wanted, each at its length, and of the free length."""
    rate, (forces, free) = pressed.rate_n_per_mm(spring), wanted
    rows = [(pressed.force_n(spring, at_mm, rate) - aim.value) / aim.tolerance for at_mm, aim in forces]
    return tuple(rows if free is None else [*rows, (spring.free_length_mm - free.value) / free.tolerance])


def at_best_length(spring: ConicalSpring, need: Need, bench: Bench) -> ConicalSpring:
    """The cone at the free length that brings its curve nearest to what is wanted, as it is where no force is.

    Least squares of the misses over their tolerances, as for a cylinder (line.py); the curve is progressive, so in
    steps (Gauss-Newton).
    """
    wanted = aims(need, bench)
    if not wanted[0]:
        return spring
    for _ in range(_STEPS):
        rows = misses(spring, wanted)
        longer = misses(replace(spring, free_length_mm=spring.free_length_mm + 0.01), wanted)
        before, spring = spring, at_length(spring, step_of_length(rows, slopes(rows, longer, 0.01)))
        if abs(spring.free_length_mm - before.free_length_mm) < _NEAR_MM:
            break
    return spring


def at_length(spring: ConicalSpring, longer_mm: float) -> ConicalSpring:
    """The cone longer by so much, which is bounded."""
    furthest_mm = _FURTHEST_SHARE * spring.free_length_mm
    return replace(spring, free_length_mm=spring.free_length_mm + min(max(longer_mm, -furthest_mm), furthest_mm))


def slopes(here: Sequence[float], there: Sequence[float], step: float) -> tuple[float, ...]:
    """How the misses go with what was changed by a step."""
    return tuple((after - before) / step for before, after in zip(here, there, strict=True))


def step_of_length(rows: Sequence[float], by_length: Sequence[float]) -> float:
    """By how much the length is to change, a little damped where the rows do not tell."""
    return -dot(by_length, rows) / (dot(by_length, by_length) + 1e-6)


def dot(one: Sequence[float], other: Sequence[float]) -> float:
    """The sum of products."""
    return sum(a * b for a, b in zip(one, other, strict=True))
