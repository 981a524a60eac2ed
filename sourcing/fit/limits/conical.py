"""Limits of a conical compression spring, and all of them in their order.

The standard's least sum of gaps is not asked of a cone: its coils are meant to close one after the other.
"""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.limits import any_kind, pressed, room
from sourcing.fit.limits.end_pieces import end_pieces
from sourcing.fit.model import Limit
from sourcing.fit.pressed import PressedCase
from sourcing.springs.compression import INDEX_RANGE, index_is_covered
from sourcing.springs.conical_lengths import SURE_STEP, step_of, telescopes
from sourcing.springs.model import ConicalSpring
from sourcing.springs.stability import cone_buckling_length_mm

_LAST_DIGITS = 1e-9


def _cone(case: PressedCase) -> ConicalSpring:
    assert isinstance(case.spring, ConicalSpring)
    return case.spring


def end_coils(case: PressedCase) -> Iterator[Limit]:
    """A telescoping cone whose end coil stands on the next one is solid a wire earlier."""
    spring, shortest_mm = _cone(case), case.shortest_mm
    dead = spring.total_coils > spring.active_coils
    if shortest_mm is None or not dead or not telescopes(spring.wire_diameter_mm, step_of(spring)):
        return
    left_mm = shortest_mm - case.solid_length_mm
    holds = left_mm > spring.wire_diameter_mm
    why = f"{case.size(left_mm)} left before it is flat; an end coil that stands on the next takes a wire of it"
    yield Limit("end coils", holds, False, why)


def riding_up(case: PressedCase) -> Iterator[Limit]:
    """Turns that barely go inside each other ride up and jam."""
    spring = _cone(case)
    step_mm, wire_mm = step_of(spring), spring.wire_diameter_mm
    if not telescopes(wire_mm, step_mm):
        return
    holds = step_mm >= SURE_STEP * wire_mm * (1.0 - _LAST_DIGITS)
    why = (
        f"each turn is {case.size(step_mm)} smaller in radius than the next; {case.size(SURE_STEP * wire_mm)} are "
        "wanted for them to go inside each other (common practice, no source)"
    )
    yield Limit("nesting", holds, False, why if holds else why + ": they may ride up and jam")


def buckling(case: PressedCase) -> Iterator[Limit]:
    """Where a cylinder as slim as the small end would not buckle, the cone does not; else it is not known."""
    if case.shortest_mm is None:
        return
    buckles_mm = cone_buckling_length_mm(_cone(case), case.solid_length_mm)
    if buckles_mm is None or buckles_mm <= case.shortest_mm:
        yield Limit("buckling", True, True, "does not buckle between its working lengths with both ends seated flat")
        return
    guided = pressed.guides(case)
    yield Limit(
        "buckling",
        False,
        False,
        f"a cylinder as slim as its small end would buckle below {case.length(buckles_mm)}; the cone is steadier, by "
        "how much is not known" + (f", and the {guided} may have to guide it" if guided else ": try it"),
    )


def spring_index(case: PressedCase) -> Iterator[Limit]:
    """The index should be in the standard's range at both ends."""
    spring = _cone(case)
    small, large = (
        mean_mm / spring.wire_diameter_mm for mean_mm in (spring.mean_diameter_small_mm, spring.mean_diameter_large_mm)
    )
    why = f"index {small:.1f} to {large:.1f}; EN 13906-1 covers {INDEX_RANGE[0]:g} to {INDEX_RANGE[1]:g}"
    yield Limit(any_kind.INDEX, index_is_covered(small) and index_is_covered(large), False, why)


LIMITS = (
    room.bore,
    room.rod,
    pressed.depth,
    pressed.reaches,
    pressed.solid,
    end_coils,
    riding_up,
    pressed.stress_at_shortest,
    pressed.stress_at_solid,
    buckling,
    any_kind.temperature,
    spring_index,
    pressed.active_coils,
    pressed.ends,
    end_pieces,
    any_kind.material,
)
