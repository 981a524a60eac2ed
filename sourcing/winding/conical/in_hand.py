"""A cone in hand: what it is with other ends, and between which diameters both ends are kept together."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from sourcing.figures import formula
from sourcing.fit.model import Fit
from sourcing.need.model import Need
from sourcing.springs.conical_lengths import step_of, telescopes
from sourcing.springs.model import ConicalSpring
from sourcing.stock.model import Bench
from sourcing.winding.conical.room import End
from sourcing.winding.in_hand import REACH, as_read_mm, finished, keeps, kept_between_mm, most_kept


@formula(
    "n' = n (D₁ + D₂) / (D₁' + D₂')",
    where={
        "n": "wanted.active_coils",
        "D₁": "wanted.mean_diameter_small_mm",
        "D₂": "wanted.mean_diameter_large_mm",
        "D₁'": "small_mean_mm",
        "D₂'": "large_mean_mm",
    },
    closed=False,
    source="derived, see winding_model: the wire keeps its length; what it climbs and leans inwards is left out",
)
def as_it_came(wanted: ConicalSpring, small_mean_mm: float, large_mean_mm: float) -> ConicalSpring:
    """The cone with other ends: the same wire makes fewer coils of larger ones, and the end coils are kept."""
    meant_mm = wanted.mean_diameter_small_mm + wanted.mean_diameter_large_mm
    active = wanted.active_coils * meant_mm / (small_mean_mm + large_mean_mm)
    return replace(
        wanted,
        mean_diameter_small_mm=small_mean_mm,
        mean_diameter_large_mm=large_mean_mm,
        active_coils=active,
        total_coils=active + wanted.total_coils - wanted.active_coils,
    )


def ends_kept_outside_mm(
    spring: ConicalSpring, planned: Fit, need: Need, bench: Bench
) -> Mapping[End, tuple[float, float]]:
    """The least and the greatest outside diameter of each end that is kept, whatever the other is between its own.

    Pressed solid, its turns lie as planned: between those that stand on each other and those that go inside each other
    for sure are some that jam.
    Both ends go as far as each may alone, by the same share of their diameters; then they are drawn in alike until
    they are kept together: both small, both large, and one of each.
    """
    small_mm, large_mm = spring.mean_diameter_small_mm, spring.mean_diameter_large_mm

    def kept(small: float, large: float) -> bool:
        came = as_it_came(spring, small, large)
        return small < large and _nests(came) is _nests(spring) and keeps(finished(came, need, bench), planned)

    alone_small = kept_between_mm(small_mm, lambda small: kept(small, large_mm))
    alone_large = kept_between_mm(large_mm, lambda large: kept(small_mm, large))
    least, most = (_together(kept, (small_mm, alone_small[side]), (large_mm, alone_large[side])) for side in (0, 1))
    drawn = most_kept(lambda share: all(kept(*corner) for corner in _unlike((small_mm, large_mm), least, most, share)))
    edges = (_drawn((small_mm, large_mm), far, drawn) for far in (least, most))
    (small_low, large_low), (small_high, large_high) = edges
    wire_mm = spring.wire_diameter_mm
    return {
        "small": as_read_mm(small_low + wire_mm, small_high + wire_mm, bench.units),
        "large": as_read_mm(large_low + wire_mm, large_high + wire_mm, bench.units),
    }


def _nests(cone: ConicalSpring) -> bool:
    return telescopes(cone.wire_diameter_mm, step_of(cone))


_Ends = tuple[float, float]
"""The mean diameters of the small and the large end."""


def _together(kept: Callable[[float, float], bool], small_mm: _Ends, large_mm: _Ends) -> _Ends:
    """How far both ends go the same way, each from where it was planned to where it may go alone."""

    def at(share: float) -> _Ends:
        small, large = (_no_further(*each, share) for each in (small_mm, large_mm))
        return small, large

    return at(most_kept(lambda share: kept(*at(share))))


def _no_further(planned_mm: float, alone_mm: float, share: float) -> float:
    """A share of all the way, or where an end may go alone where that is nearer."""
    furthest_mm = REACH * planned_mm * share
    return min(max(alone_mm, planned_mm - furthest_mm), planned_mm + furthest_mm)


def _unlike(planned: _Ends, least: _Ends, most: _Ends, share: float) -> tuple[_Ends, _Ends]:
    """One end small and the other large, drawn in to a share."""
    (small_low, large_low), (small_high, large_high) = (_drawn(planned, far, share) for far in (least, most))
    return (small_low, large_high), (small_high, large_low)


def _drawn(planned: _Ends, far: _Ends, share: float) -> _Ends:
    small, large = (meant + (mm - meant) * share for meant, mm in zip(planned, far, strict=True))
    return small, large
