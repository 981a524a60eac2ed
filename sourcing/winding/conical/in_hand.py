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
from sourcing.winding.in_hand import CALIPER_STEPS_MM, REACH, as_read_mm, finished, keeps, kept_between_mm, most_kept


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

    Both ends are let off the same way as one wire puts them off, by 1/D_m - 1/D_f, so each as the square of its
    diameter; an end that may go no further alone stays there. They are then drawn in alike until they are kept with one
    small and the other large too: the wire alone puts no cone off so, but a mandrel that is not as listed does, or wire
    that slid along it, and what serves by its forces and its room serves however it came to be so.

    Pressed solid, the turns lie as planned: between those that stand on each other and those that go inside each other
    for sure are some that jam.
    """
    meant = spring.mean_diameter_small_mm, spring.mean_diameter_large_mm

    def kept(ends: _Ends) -> bool:
        came = as_it_came(spring, *ends)
        return ends[0] < ends[1] and _nests(came) is _nests(spring) and keeps(finished(came, need, bench), planned)

    small_mm = kept_between_mm(meant[0], lambda small: kept((small, meant[1])))
    large_mm = kept_between_mm(meant[1], lambda large: kept((meant[0], large)))
    least, most = (_together(kept, meant, alone) for alone in zip(small_mm, large_mm, strict=True))

    def unlike(share: float) -> bool:
        (small_low, large_low), (small_high, large_high) = (_drawn_in(meant, far, share) for far in (least, most))
        return kept((small_low, large_high)) and kept((small_high, large_low))

    share = most_kept(unlike)
    low, high = (_drawn_in(meant, far, share) for far in (least, most))
    wire_mm, step_mm = spring.wire_diameter_mm, CALIPER_STEPS_MM[bench.units]
    small, large = (as_read_mm(low[end] + wire_mm, high[end] + wire_mm, step_mm) for end in (0, 1))
    return {"small": small, "large": large}


_Ends = tuple[float, float]
"""The mean diameters of the small and the large end."""


def _nests(cone: ConicalSpring) -> bool:
    return telescopes(cone.wire_diameter_mm, step_of(cone))


def _together(kept: Callable[[_Ends], bool], meant: _Ends, alone: _Ends) -> _Ends:
    """How far both ends go the same way together, neither further than alone."""

    def at(share: float) -> _Ends:
        small, large = (
            _towards(mm, furthest_mm, REACH * share * mm**2 / meant[1])
            for mm, furthest_mm in zip(meant, alone, strict=True)
        )
        return small, large

    return at(most_kept(lambda share: kept(at(share))))


def _towards(mm: float, furthest_mm: float, by_mm: float) -> float:
    """Off towards a diameter by so much, no further than there."""
    return min(max(furthest_mm, mm - by_mm), mm + by_mm)


def _drawn_in(meant: _Ends, far: _Ends, share: float) -> _Ends:
    """Both ends at a share of the way from where they were meant."""
    small, large = (mm + (far_mm - mm) * share for mm, far_mm in zip(meant, far, strict=True))
    return small, large
