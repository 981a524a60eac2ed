"""The mandrel of a cone: each coil springs back by its own amount, so its profile is curved and not a straight taper.

A cone's mean diameter grows evenly from finished turn to finished turn. The large coils open most, so the mandrel is
thinner there than a straight taper, and each finished turn takes more than one turn on it. Each piece of wire keeps its
arc, the little that it leans towards the axis included.

Turns that go inside each other in the spring need not do so on the mandrel, whose taper is flatter: where the pitch
would bring one onto the last, they are laid wire against wire, and the spring comes out longer than wanted.

Derived for this project; the known answers are in the tests.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import pairwise
from math import ceil, hypot, sqrt

from sourcing.springs.conical_lengths import pitch_of, solid_pitch_mm
from sourcing.springs.geometry import turn_length_mm
from sourcing.springs.model import ConicalSpring
from sourcing.winding.mandrel import TURNED_STEP_MM
from sourcing.winding.model import ProfilePoint
from sourcing.winding.turns import pitch_ratio

PARTS_OF_A_TURN = 40
"""So many that the turns laid are exact to a thousandth."""

MARKED_STEP_MM = 0.1
"""How finely the places along a mandrel are given."""

Compensation = Callable[[float], float]
"""From the mean diameter after release to the mandrel's diameter, or back, mm."""


@dataclass(frozen=True, slots=True)
class LaidCone:
    """The active coils on the mandrel, from the small end: a point at each whole finished turn, and at the last one.

    `touching`: so many of the turns laid lie wire against wire. `too_open_mm`: by how much the spring comes out too
    long for it.
    """

    points: tuple[ProfilePoint, ...]
    pitch_mm: float
    touching: float = 0.0
    too_open_mm: float = 0.0

    @property
    def turns(self) -> float:
        """The turns of the crank that lay the active coils."""
        return self.points[-1].wound_turn

    @property
    def small_mm(self) -> float:
        """The mandrel's diameter at the small end."""
        return self.points[0].diameter_mm

    @property
    def large_mm(self) -> float:
        """The mandrel's diameter at the large end."""
        return self.points[-1].diameter_mm


def laid_cone(spring: ConicalSpring, mandrel_for_mm: Compensation, pitch_share: float) -> LaidCone:
    """What is laid on the mandrel for a cone as it is to be when let go.

    (π D_m dN_m)² + (p_m dN_m)² + dr_m² = (π D_f dN_f)² + (p_f dN_f)² + dr_f², added up over pieces of turns; p_f/p_m as
    in a cylinder, and p_m no less than √(d² − Δr_m²), at which a turn lies against the last, its radius on the mandrel
    Δr_m off.

    `spring`: as wound, before heat. `mandrel_for_mm`: the compensation of its wire. `pitch_share`: by which share of
    the opening its pitch opens.
    Source: derived for this project; the arc is kept.
    """
    active = spring.active_coils
    parts_of_a_turn = max(1, ceil(active)) * PARTS_OF_A_TURN / active
    laid = ProfilePoint(0.0, mandrel_for_mm(spring.mean_diameter_small_mm))
    points, pieces = [laid], list[_Piece]()
    for first, last in pairwise([*range(ceil(active)), active]):
        parts = max(1, round(parts_of_a_turn * (last - first)))
        share = (last - first) / parts
        these = [_piece(spring, mandrel_for_mm, pitch_share, first + part * share, share) for part in range(parts)]
        laid = ProfilePoint(
            last,
            mandrel_for_mm(diameter_at_mm(spring, last)),
            laid.wound_turn + sum(piece.turns for piece in these),
            laid.height_mm + sum(piece.turns * piece.pitch_mm for piece in these),
        )
        points.append(laid)
        pieces += these
    touching = sum(piece.turns for piece in pieces if piece.touches)
    too_open_mm = sum(piece.too_open_mm for piece in pieces)
    return LaidCone(tuple(points), laid.height_mm / laid.wound_turn, touching, too_open_mm)


@dataclass(frozen=True, slots=True)
class _Piece:
    """A piece of a turn on the mandrel: the turns it takes there, its pitch, and what the spring is longer for it.

    `touches`: it lies against the turn before.
    """

    turns: float
    pitch_mm: float
    too_open_mm: float
    touches: bool


def _piece(
    spring: ConicalSpring, mandrel_for_mm: Compensation, pitch_share: float, turn: float, share: float
) -> _Piece:
    """So much of a finished turn, on the mandrel."""
    wire_mm, pitch_mm = spring.wire_diameter_mm, pitch_of(spring)
    below_mm, mean_mm, above_mm = (diameter_at_mm(spring, turn + part * share) for part in (0.0, 0.5, 1.0))
    on_mandrel_mm = mandrel_for_mm(mean_mm) + wire_mm
    opening = pitch_ratio(mean_mm / on_mandrel_mm, pitch_share)
    arc_mm = hypot(share * turn_length_mm(mean_mm, pitch_mm), (above_mm - below_mm) / 2)
    leans_mm = (mandrel_for_mm(above_mm) - mandrel_for_mm(below_mm)) / 2
    round_mm = sqrt(arc_mm**2 - leans_mm**2)
    wanted_mm = pitch_mm / opening
    turns = round_mm / turn_length_mm(on_mandrel_mm, wanted_mm)
    least_mm = solid_pitch_mm(wire_mm, leans_mm / turns)
    if least_mm >= wanted_mm:
        turns = round_mm / turn_length_mm(on_mandrel_mm, least_mm)
    too_open_mm = share * opening * max(0.0, least_mm - wanted_mm)
    return _Piece(turns, max(wanted_mm, least_mm), too_open_mm, least_mm >= wanted_mm)


def diameter_at_mm(spring: ConicalSpring, turn: float) -> float:
    """The mean diameter so many active turns from the small end."""
    small, large = spring.mean_diameter_small_mm, spring.mean_diameter_large_mm
    return small + (large - small) * turn / spring.active_coils


def straight_taper_error_mm(laid: LaidCone) -> float:
    """By how much a straight taper between the right ends is too thin, at most: in the mandrel's diameter.

    Straight over the turns laid: the taper that a lathe's slide, turned by the crank, would cut.
    """
    return max(point.diameter_mm - straight_mm(laid, point.wound_turn) for point in laid.points)


def straight_mm(laid: LaidCone, wound_turn: float) -> float:
    """The diameter of that straight taper at a turn of the crank."""
    return laid.small_mm + (laid.large_mm - laid.small_mm) * wound_turn / laid.turns


def as_turned(laid: LaidCone) -> tuple[ProfilePoint, ...]:
    """The profile in the steps in which it is turned and marked out."""
    return tuple(
        replace(
            point,
            diameter_mm=_to_step(point.diameter_mm, TURNED_STEP_MM),
            height_mm=_to_step(point.height_mm, MARKED_STEP_MM),
        )
        for point in laid.points
    )


def _to_step(value_mm: float, step_mm: float) -> float:
    return round(round(value_mm / step_mm) * step_mm, 2)


def moved_by_rounding_mm(spring: ConicalSpring, laid: LaidCone, finished_mean_mm: Compensation) -> float:
    """How far the steps of the mandrel move a coil's diameter, at most.

    `spring`: as wound, before heat. `finished_mean_mm`: from a mandrel's diameter to the mean one after release.
    """
    coils = zip(as_turned(laid), laid.points, strict=True)
    return max(abs(finished_mean_mm(at.diameter_mm) - diameter_at_mm(spring, exact.turn)) for at, exact in coils)
