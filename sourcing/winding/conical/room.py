"""The room of a cone's two ends: what each mean diameter may be, and how loosely an end then lies in its pocket."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from sourcing.need.model import PocketEnd
from sourcing.quantities import Wanted, show_diameter
from sourcing.springs.conical_lengths import growth_at_ends_mm
from sourcing.springs.model import ConicalSpring
from sourcing.winding.doubts import NORMAL_95, diameter_sd_mm, mandrel_for_mm
from sourcing.winding.model import Refusal
from sourcing.winding.pressed_task import PressedTask
from sourcing.winding.search import GREATEST_INDEX, LEAST_INDEX
from sourcing.winding.trials import Knowledge

ENDS_TRIED = 9
"""How many diameters of each end are paired."""

LEAST_TAPER = 0.8
"""The small end over the large one, at most: else a cylinder would do (assumed)."""

LOOSE = 0.15
"""The gap over an end's diameter from which bore or rod do not hold it, and a narrower one is no better (assumed)."""

_LAST_DIGITS = 1e-9

End = Literal["small", "large"]


@dataclass(frozen=True, slots=True)
class EndRoom:
    """Between what the mean diameter of one end may lie, before growth in compression.

    `in_bore_mm` is the widest that clears its bore, `over_rod_mm` the narrowest that clears its rod; None without one.
    `doubt_mm`: how far a coil of that end may come out, 95 %; one that lies closer than this by plan may not clear.
    """

    low_mm: float
    high_mm: float
    in_bore_mm: float | None
    over_rod_mm: float | None
    doubt_mm: float

    def tried(self, count: int) -> tuple[float, ...]:
        """Diameters over the whole range, rising: closer together towards where it lies snug, and on to the edge."""
        if self.in_bore_mm is None and self.over_rod_mm is None:
            return tuple(self._at(step / (count - 1)) for step in range(count))
        shares = [(step / (count - 3)) ** 2 for step in range(count - 2)]
        snug, bored = self.snug_mm(self.low_mm, 0.0), self.in_bore_mm is not None
        far, edge = (self.low_mm, self.high_mm) if bored else (self.high_mm, self.low_mm)
        return tuple(sorted({edge, (edge + snug) / 2, *(snug + (far - snug) * share for share in shares)}))

    def _at(self, share: float) -> float:
        return self.low_mm + (self.high_mm - self.low_mm) * share

    def snug_mm(self, mean_mm: float, growth_mm: float) -> float:
        """The mean diameter that lies close in the bore, or over the rod, and still clears when it is off by its doubt.

        As it was where there is neither.
        """
        if self.in_bore_mm is not None:
            return min(max(self.in_bore_mm - growth_mm - self.doubt_mm, self.low_mm), self.high_mm)
        if self.over_rod_mm is not None:
            return min(max(self.over_rod_mm + self.doubt_mm, self.low_mm), self.high_mm)
        return mean_mm

    def looseness(self, mean_mm: float, growth_mm: float) -> float:
        """The gap beyond clearance, growth and doubt to the nearer of bore and rod, over the diameter.

        At most `LOOSE`; below 0 where it may not clear; nothing where there is neither bore nor rod.
        """
        gaps = [
            *(() if self.in_bore_mm is None else (self.in_bore_mm - growth_mm - mean_mm,)),
            *(() if self.over_rod_mm is None else (mean_mm - self.over_rod_mm,)),
        ]
        return min((min(gaps) - self.doubt_mm) / mean_mm, LOOSE) if gaps else 0.0


@dataclass(frozen=True, slots=True)
class EndDiameters:
    """The room of both ends."""

    small: EndRoom
    large: EndRoom

    def of(self, end: End) -> EndRoom:
        """The room of one end."""
        return self.small if end == "small" else self.large

    def pairs(self) -> Iterable[tuple[float, float]]:
        """Pairs of a small and a larger end over what each may be."""
        return _tapering(self.small.tried(ENDS_TRIED), self.large.tried(ENDS_TRIED))

    def pairs_near(self, spring: ConicalSpring) -> Iterable[tuple[float, float]]:
        """More pairs round those of a cone, as far as the next that were tried."""
        small = _between(self.small.tried(ENDS_TRIED), spring.mean_diameter_small_mm)
        large = _between(self.large.tried(ENDS_TRIED), spring.mean_diameter_large_mm)
        return _tapering(small, large)

    def looseness(self, spring: ConicalSpring) -> float:
        """How loosely both ends lie in their pocket, added up."""
        return sum(max(0.0, each) for each in self._each(spring))

    def clears_surely(self, spring: ConicalSpring) -> bool:
        """Whether both ends clear their pocket also where they come out as far off as they may."""
        return min(self._each(spring)) >= -_LAST_DIGITS

    def _each(self, spring: ConicalSpring) -> tuple[float, float]:
        growth_small_mm, growth_large_mm = growth_at_ends_mm(spring)
        return (
            self.small.looseness(spring.mean_diameter_small_mm, growth_small_mm),
            self.large.looseness(spring.mean_diameter_large_mm, growth_large_mm),
        )


def _tapering(small_mm: Sequence[float], large_mm: Sequence[float]) -> Iterable[tuple[float, float]]:
    return ((small, large) for large in large_mm for small in small_mm if tapers(small, large))


def _between(tried_mm: Sequence[float], mean_mm: float) -> Sequence[float]:
    """Three diameters in each of the two gaps beside one that was tried."""
    place = tried_mm.index(mean_mm)
    gaps = pairwise(tried_mm[max(0, place - 1) : place + 2])
    return [low + (high - low) * share for low, high in gaps for share in (0.25, 0.5, 0.75)]


def tapers(small_mm: float, large_mm: float) -> bool:
    """Whether two ends make a cone worth the name."""
    return small_mm <= LEAST_TAPER * large_mm


def end_diameters_mm(task: PressedTask, known: Knowledge) -> EndDiameters | Refusal:
    """The mean diameters that the bores and rods of both ends and a spring index of 4 to 20 leave."""
    pocket, nothing = task.need.pocket, PocketEnd()
    large, small = pocket.large_end or nothing, pocket.small_end or nothing
    large_room = _room(task, known, (large.bore_mm, pocket.bore_mm), (large.rod_mm,))
    small_room = _room(task, known, (small.bore_mm,), (small.rod_mm, pocket.rod_mm))
    low_mm, high_mm = max(large_room.low_mm, small_room.low_mm), min(small_room.high_mm, large_room.high_mm)
    if small_room.low_mm <= high_mm and low_mm <= large_room.high_mm and small_room.low_mm < large_room.high_mm:
        return EndDiameters(
            replace(small_room, high_mm=high_mm),
            replace(large_room, low_mm=low_mm),
        )
    return _no_room(task, small_room, large_room)


def _no_room(task: PressedTask, small: EndRoom, large: EndRoom) -> Refusal:
    def size(value_mm: float) -> str:
        return show_diameter(value_mm, task.bench.units)

    def room(end: EndRoom) -> str:
        return f"at least {size(end.low_mm)} and at most {size(end.high_mm)}"

    why = (
        f"wire of {size(task.wire.wire_diameter_mm)} has no room: the mean diameter would have to be {room(small)} at "
        f"the small end, and {room(large)} at the large one (at least the rod with clearance and wire, or "
        f"{LEAST_INDEX:g} wires; at most the bore less clearance and wire, or {GREATEST_INDEX:g} wires). "
        "Thinner wire, a wider bore or a thinner rod would change it"
    )
    return Refusal("no-room-for-wire", why)


def _room(
    task: PressedTask, known: Knowledge, bores: Iterable[Wanted | None], rods: Iterable[Wanted | None]
) -> EndRoom:
    wire_mm, clearance = task.wire.wire_diameter_mm, task.bench.clearance
    into = [bore.smallest - clearance.bore_mm - wire_mm for bore in bores if bore and bore.smallest is not None]
    over = [rod.largest + clearance.rod_mm + wire_mm for rod in rods if rod and rod.largest is not None]
    low_mm, high_mm = max((LEAST_INDEX * wire_mm, *over)), min((GREATEST_INDEX * wire_mm, *into))
    near_mm = max(high_mm if into else low_mm, LEAST_INDEX * wire_mm)
    doubt_mm = NORMAL_95 * diameter_sd_mm(task, known, mandrel_for_mm(task, known, near_mm))
    return EndRoom(low_mm, high_mm, min(into, default=None), max(over, default=None), doubt_mm)
