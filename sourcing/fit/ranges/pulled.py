"""The ranges of a need of an extension spring."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from sourcing.fit.ranges.common import Column, bores, columns_of, near_force, near_range, slack, wishes
from sourcing.fit.score import force_house_tolerance_n
from sourcing.need.model import Need
from sourcing.stock.index.ranges import PullRange, Range, Ranges
from sourcing.stock.model import Bench


def ranges(need: Need, bench: Bench) -> Ranges:
    """Room in the bore, a free length that is pulled at all, the initial tension, forces and the rate they ask for."""
    forces = tuple(
        PullRange(point.at_mm, *near_force(point, bench.tolerances))
        for point in need.working
        if point.force_n is not None
    )
    columns = columns_of((*_sizes(need, bench), *_rates(forces)))
    return Ranges(need.kind, columns, forces, _if_here(columns))


def _if_here(columns: Mapping[str, Range]) -> Mapping[str, Range]:
    """What a spring on hand must lie in: shortened by coils, it gets stiffer and shorter, and nothing else."""
    kept = {column: columns[column] for column in ("outside", "wire", "tension") if column in columns}
    if "rate" in columns:
        kept["rate"] = (None, columns["rate"][1])
    if "free" in columns:
        kept["free"] = (columns["free"][0], None)
    return kept


def _sizes(need: Need, bench: Bench) -> Iterator[Column]:
    yield from bores(need, bench)
    if need.working:
        yield "free", *slack(None, max(point.at_mm for point in need.working))
    if need.initial_tension_n is not None:
        house_n = force_house_tolerance_n(need.initial_tension_n, bench.tolerances)
        yield "tension", *near_range(need.initial_tension_n, house_n)
    yield from wishes(need, bench)


def _rates(forces: tuple[PullRange, ...]) -> Iterator[Column]:
    """What two forces say of the rate, R = (F2 - F1) / (L2 - L1), where some force is wanted at the shorter length.

    Where none is, the spring may be loose there, and its initial tension be all of what is wanted at the longer one.
    """
    for longer in forces:
        for shorter in forces:
            travel_mm = longer.length_mm - shorter.length_mm
            if travel_mm <= 0.0 or shorter.low_n is None or shorter.low_n <= 0.0:
                continue
            if longer.low_n is not None and shorter.high_n is not None:
                yield "rate", *slack((longer.low_n - shorter.high_n) / travel_mm, None)
            if longer.high_n is not None:
                yield "rate", *slack(None, (longer.high_n - shorter.low_n) / travel_mm)
