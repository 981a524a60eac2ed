"""The ranges of a need of a compression spring of any shape."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.ranges.common import Column, bores, columns_of, near_force, slack, wishes
from sourcing.need.model import Need
from sourcing.stock.index.ranges import ForceRange, Ranges
from sourcing.stock.model import Bench, HouseTolerances


def ranges(need: Need, bench: Bench) -> Ranges:
    """Room in the pocket, travel before solid, forces and the rate that they ask for."""
    forces = tuple(_force_ranges(need, bench.tolerances))
    return Ranges(need.kind, columns_of((*_sizes(need, bench), *_rates(need.kind, forces))), forces)


def _sizes(need: Need, bench: Bench) -> Iterator[Column]:
    """Room in the pocket without growth and tolerance, travel before solid, and the sizes that are wished."""
    pocket, clearance = need.pocket, bench.clearance
    yield from bores(need, bench)
    for rod in (pocket.rod_mm, pocket.small_end and pocket.small_end.rod_mm):
        if rod is not None and rod.largest is not None:
            yield "inside", *slack(rod.largest + clearance.rod_mm, None)
    if pocket.depth_mm is not None and pocket.depth_mm.smallest is not None:
        yield "solid", *slack(None, pocket.depth_mm.smallest)
    if need.working:
        shortest_mm = min(point.at_mm for point in need.working)
        yield "free", *slack(shortest_mm, None)
        yield "solid", *slack(None, shortest_mm)
    yield from wishes(need, bench)


def _force_ranges(need: Need, house: HouseTolerances) -> Iterator[ForceRange]:
    """The force of a straight line at the rate; a cone pushes at least so hard, so that only its most is bounded."""
    for point in need.working:
        if point.force_n is not None:
            low, high = near_force(point, house)
            yield ForceRange(point.at_mm, None if need.kind == "conical" else low, high)


def _rates(kind: str, forces: tuple[ForceRange, ...]) -> Iterator[Column]:
    """What two forces say of the rate: R = (F2 - F1) / (L1 - L2), wherever the spring begins to push.

    A spring that is still loose at the longer length is stiffer than that: its rate is bounded below alone.
    """
    if kind == "conical":
        return
    for number, longer in enumerate(forces):
        for shorter in forces[number + 1 :]:
            travel_mm = longer.length_mm - shorter.length_mm
            if travel_mm <= 0.0:
                continue
            if shorter.low_n is not None and longer.high_n is not None:
                yield "rate", *slack((shorter.low_n - longer.high_n) / travel_mm, None)
            if shorter.high_n is not None and longer.low_n is not None and longer.low_n > 0.0:
                yield "rate", *slack(None, (shorter.high_n - longer.low_n) / travel_mm)
