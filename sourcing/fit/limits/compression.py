"""Limits of a cylindrical compression spring, and all of them in their order."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.limits import any_kind, pressed, room
from sourcing.fit.limits.end_pieces import end_pieces
from sourcing.fit.model import Limit
from sourcing.fit.pressed import PressedCase
from sourcing.springs import geometry, stability


def minimum_gaps(case: PressedCase) -> Iterator[Limit]:
    """At the shortest length the coils should still be apart by Sa in all (EN 13906-1)."""
    if case.shortest_mm is None or case.solid_length_mm >= case.shortest_mm:
        return
    spring = case.spring
    gaps_mm = geometry.minimum_gaps_mm(spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils)
    left_mm = case.shortest_mm - case.solid_length_mm
    holds = left_mm >= gaps_mm
    why = f"{case.size(left_mm)} left before solid, where EN 13906-1 wants {case.size(gaps_mm)}"
    yield Limit(
        "minimum gaps", holds, False, why if holds else why + ": coils may touch, with noise and an uneven rate"
    )


def buckling(case: PressedCase) -> Iterator[Limit]:
    """A slender spring bows out: a refusal unless a bore or a rod guides it."""
    if case.shortest_mm is None:
        return
    spring = case.spring
    buckles_mm = stability.buckling_length_mm(
        spring.free_length_mm, spring.mean_diameter_mm, spring.shear_modulus_mpa, spring.elastic_modulus_mpa
    )
    if buckles_mm is None or buckles_mm <= case.shortest_mm:
        yield Limit("buckling", True, True, "does not buckle between its working lengths with both ends seated flat")
        return
    why = f"buckles below {case.length(buckles_mm)} with both ends seated flat"
    if guided := pressed.guides(case):
        yield Limit("buckling", False, False, f"{why}: the {guided} must guide it, and it will rub")
    else:
        yield Limit("buckling", False, True, f"{why}, and nothing guides it")


def spring_index(case: PressedCase) -> Iterator[Limit]:
    """The index should be in the standard's range."""
    return any_kind.index_covered(case, "EN 13906-1")


LIMITS = (
    room.bore,
    room.rod,
    pressed.depth,
    pressed.reaches,
    pressed.solid,
    minimum_gaps,
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
