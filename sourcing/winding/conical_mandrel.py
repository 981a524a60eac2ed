"""The mandrel of a cone: each coil springs back by its own amount, so its profile is curved and not a straight taper.

A cone's mean diameter grows evenly from finished turn to finished turn. The large coils open most, so the mandrel is
thinner there than a straight taper, and each finished turn takes more than one turn on it. Each piece of wire keeps its
arc; what the wire leans inwards is left out (it is under a thousandth of the arc).

Derived for this project; the known answers are in the tests.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

from sourcing.springs.conical_lengths import pitch_of
from sourcing.springs.geometry import turn_length_mm
from sourcing.springs.model import ConicalSpring
from sourcing.winding.model import ProfilePoint
from sourcing.winding.turns import pitch_ratio

PARTS_OF_A_TURN = 40
"""So many that the turns laid are exact to a thousandth."""

Compensation = Callable[[float], float]
"""From the mean diameter after release to the mandrel's diameter, mm."""


@dataclass(frozen=True, slots=True)
class LaidCone:
    """The active coils on the mandrel, from the small end: a point at each whole finished turn, and at the last one."""

    points: tuple[ProfilePoint, ...]
    pitch_mm: float

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


def laid_cone(spring: ConicalSpring, mandrel_for_mm: Compensation) -> LaidCone:
    """What is laid on the mandrel for a cone as it is to be when let go.

    dN_m/dN_f = √((π D_f)² + p_f²) / √((π D_m)² + p_m²), added up over pieces of turns; p_f/p_m as in a cylinder, and
    p_m no less than nothing where turns go inside each other.

    `spring`: as wound, before heat. `mandrel_for_mm`: the compensation of its wire.
    Source: derived for this project; the arc is kept.
    """
    wire_mm, pitch_mm, active = spring.wire_diameter_mm, pitch_of(spring), spring.active_coils
    steps = max(1, ceil(active)) * PARTS_OF_A_TURN
    marks = [*range(ceil(active)), active]
    points = [ProfilePoint(0.0, mandrel_for_mm(spring.mean_diameter_small_mm))]
    wound = height_mm = 0.0
    for first, last in pairwise(marks):
        parts = max(1, round(steps * (last - first) / active))
        for part in range(parts):
            share = (last - first) / parts
            mean_mm = diameter_at_mm(spring, first + (part + 0.5) * share)
            on_mandrel_mm = mandrel_for_mm(mean_mm) + wire_mm
            laid_pitch_mm = pitch_mm / pitch_ratio(mean_mm / on_mandrel_mm)
            turns = share * turn_length_mm(mean_mm, pitch_mm) / turn_length_mm(on_mandrel_mm, laid_pitch_mm)
            wound, height_mm = wound + turns, height_mm + turns * laid_pitch_mm
        points.append(ProfilePoint(last, mandrel_for_mm(diameter_at_mm(spring, last)), wound, height_mm))
    return LaidCone(tuple(points), height_mm / wound)


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
