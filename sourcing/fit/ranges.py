"""A need's tolerances as closed ranges, outside which no spring can be fit or near.

They only ever leave out what the judge would refuse; what he refuses for other reasons (stress, say) is left to him.
"""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.score import force_house_tolerance_n
from sourcing.need.model import Need, WorkingPoint
from sourcing.quantities import Wanted
from sourcing.stock.index.ranges import ForceRange, Range, Ranges
from sourcing.stock.model import Bench, HouseTolerances

_SLACK = 1e-6


def ranges_of(need: Need, bench: Bench) -> Ranges:
    """The ranges for a need at a bench: every spring that the judge would call yes or near lies in them."""
    forces = tuple(_force_ranges(need, bench.tolerances))
    columns: dict[str, Range] = {}
    for column, low, high in (*_sizes(need, bench), *_rates(need.kind, forces)):
        columns[column] = _narrowed(columns.get(column, (None, None)), (low, high))
    return Ranges(need.kind, columns, forces)


def near_range(wanted: Wanted, house: float) -> Range:
    """What is at most two tolerances off, with a hair of slack for the last digits. None: open.

    >>> [bound and round(bound, 3) for bound in near_range(Wanted(low=20.0), house=1.0)]
    [18.0, None]
    """
    if wanted.nominal is not None:
        minus = house if wanted.minus is None else wanted.minus
        plus = house if wanted.plus is None else wanted.plus
        return _slack(wanted.nominal - 2.0 * minus, wanted.nominal + 2.0 * plus)
    low = None if wanted.low is None else wanted.low - 2.0 * house
    return _slack(low, None if wanted.high is None else wanted.high + 2.0 * house)


def _slack(low: float | None, high: float | None) -> Range:
    return (
        None if low is None else low - _SLACK * max(abs(low), 1.0),
        None if high is None else high + _SLACK * max(abs(high), 1.0),
    )


def _narrowed(one: Range, other: Range) -> Range:
    lows = [low for low in (one[0], other[0]) if low is not None]
    highs = [high for high in (one[1], other[1]) if high is not None]
    return max(lows, default=None), min(highs, default=None)


def _sizes(need: Need, bench: Bench) -> Iterator[tuple[str, float | None, float | None]]:
    """Room in the pocket without growth and tolerance, travel before solid, and the sizes that are wished."""
    pocket, clearance, house = need.pocket, bench.clearance, bench.tolerances
    for bore in (pocket.bore_mm, pocket.large_end and pocket.large_end.bore_mm):
        if bore is not None and bore.smallest is not None:
            yield "outside", *_slack(None, bore.smallest - clearance.bore_mm)
    for rod in (pocket.rod_mm, pocket.small_end and pocket.small_end.rod_mm):
        if rod is not None and rod.largest is not None:
            yield "inside", *_slack(rod.largest + clearance.rod_mm, None)
    if pocket.depth_mm is not None and pocket.depth_mm.smallest is not None:
        yield "solid", *_slack(None, pocket.depth_mm.smallest)
    if need.working:
        shortest_mm = min(point.at_mm for point in need.working)
        yield "free", *_slack(shortest_mm, None)
        yield "solid", *_slack(None, shortest_mm)
    if need.free_length_mm is not None:
        yield "free", *near_range(need.free_length_mm, house.length_mm)
    if need.wire_diameter_mm is not None:
        yield "wire", *near_range(need.wire_diameter_mm, house.diameter_mm)


def _force_ranges(need: Need, house: HouseTolerances) -> Iterator[ForceRange]:
    """The force of a straight line at the rate; a cone pushes at least so hard, so that only its most is bounded."""
    for point in need.working:
        if point.force_n is not None:
            low, high = _near_force(point, house)
            yield ForceRange(point.at_mm, None if need.kind == "conical" else low, high)


def _near_force(point: WorkingPoint, house: HouseTolerances) -> Range:
    assert point.force_n is not None
    return near_range(point.force_n, force_house_tolerance_n(point.force_n, house))


def _rates(kind: str, forces: tuple[ForceRange, ...]) -> Iterator[tuple[str, float | None, float | None]]:
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
                yield "rate", *_slack((shorter.low_n - longer.high_n) / travel_mm, None)
            if shorter.high_n is not None and longer.low_n is not None and longer.low_n > 0.0:
                yield "rate", *_slack(None, (shorter.high_n - longer.low_n) / travel_mm)
