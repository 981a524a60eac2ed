"""What the ranges of any kind are made of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from sourcing.fit.score import force_house_tolerance_n
from sourcing.need.model import Need, WorkingPoint
from sourcing.quantities import Wanted
from sourcing.stock.index.ranges import Range
from sourcing.stock.model import Bench, HouseTolerances

_SLACK = 1e-6

Column = tuple[str, float | None, float | None]


def near_range(wanted: Wanted, house: float) -> Range:
    """What is at most two tolerances off, with a hair of slack for the last digits. None: open.

    >>> [bound and round(bound, 3) for bound in near_range(Wanted(low=20.0), house=1.0)]
    [18.0, None]
    """
    if wanted.nominal is not None:
        minus = house if wanted.minus is None else wanted.minus
        plus = house if wanted.plus is None else wanted.plus
        return slack(wanted.nominal - 2.0 * minus, wanted.nominal + 2.0 * plus)
    low = None if wanted.low is None else wanted.low - 2.0 * house
    return slack(low, None if wanted.high is None else wanted.high + 2.0 * house)


def slack(low: float | None, high: float | None) -> Range:
    """A range wider by a hair, for the last digits."""
    return (
        None if low is None else low - _SLACK * max(abs(low), 1.0),
        None if high is None else high + _SLACK * max(abs(high), 1.0),
    )


def narrowed(one: Range, other: Range) -> Range:
    """What lies in both ranges."""
    lows = [low for low in (one[0], other[0]) if low is not None]
    highs = [high for high in (one[1], other[1]) if high is not None]
    return max(lows, default=None), min(highs, default=None)


def columns_of(bounds: Iterable[Column]) -> dict[str, Range]:
    """The narrowest range of each column."""
    columns: dict[str, Range] = {}
    for column, low, high in bounds:
        columns[column] = narrowed(columns.get(column, (None, None)), (low, high))
    return columns


def bores(need: Need, bench: Bench) -> Iterator[Column]:
    """Room in a bore without growth and tolerance."""
    pocket = need.pocket
    for bore in (pocket.bore_mm, pocket.large_end and pocket.large_end.bore_mm):
        if bore is not None and bore.smallest is not None:
            yield "outside", *slack(None, bore.smallest - bench.clearance.bore_mm)


def wishes(need: Need, bench: Bench) -> Iterator[Column]:
    """The free length and the wire that are wished."""
    if need.free_length_mm is not None:
        yield "free", *near_range(need.free_length_mm, bench.tolerances.length_mm)
    if need.wire_diameter_mm is not None:
        yield "wire", *near_range(need.wire_diameter_mm, bench.tolerances.diameter_mm)


def near_force(point: WorkingPoint, house: HouseTolerances) -> Range:
    """What is at most two tolerances off the force of a working point."""
    assert point.force_n is not None
    return near_range(point.force_n, force_house_tolerance_n(point.force_n, house))
