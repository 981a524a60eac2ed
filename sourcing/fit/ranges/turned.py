"""The ranges of a need of a torsion spring."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.ranges.common import Column, bores, columns_of, near_range, slack, wishes
from sourcing.fit.score import torque_house_tolerance_n_mm
from sourcing.need.model import Need
from sourcing.stock.index.ranges import Ranges
from sourcing.stock.model import Bench


def ranges(need: Need, bench: Bench) -> Ranges:
    """Room in the pocket without closing and tolerance, and the rate that the torques ask for."""
    return Ranges(
        need.kind, columns_of((*bores(need, bench), *_rods(need, bench), *_rates(need, bench), *wishes(need, bench)))
    )


def _rods(need: Need, bench: Bench) -> Iterator[Column]:
    rod = need.pocket.rod_mm
    if rod is not None and rod.largest is not None:
        yield "inside", *slack(rod.largest + bench.clearance.rod_mm, None)


def _rates(need: Need, bench: Bench) -> Iterator[Column]:
    """R = M / θ. Legs that are longer than they are wanted make a spring softer than it is in its place."""
    longer_legs = need.leg_1 is not None or need.leg_2 is not None
    for point in need.turned:
        if point.torque_n_mm is None:
            continue
        low, high = near_range(point.torque_n_mm, torque_house_tolerance_n_mm(point.torque_n_mm, bench.tolerances))
        least = None if low is None or longer_legs else low / point.at_deg
        yield "rate", *slack(least, None if high is None else high / point.at_deg)
