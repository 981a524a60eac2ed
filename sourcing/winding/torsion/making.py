"""From the wanted torsion spring back to the bench: the coil before heat, the turns to lay, the legs, the bands."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import hypot

from sourcing.springs import torsion, turned
from sourcing.springs.describe import describe
from sourcing.springs.describe_torsion import TorsionDescription
from sourcing.springs.geometry import turn_length_mm
from sourcing.springs.life import Making
from sourcing.springs.model import TorsionSpring
from sourcing.winding import turns
from sourcing.winding.doubts import NORMAL_95, opening_sd
from sourcing.winding.heat import change_of_diameter
from sourcing.winding.mandrel import Wound
from sourcing.winding.model import Band, Made
from sourcing.winding.torsion.task import TorsionTask, angle_sd_deg
from sourcing.winding.trials import Knowledge


@dataclass(frozen=True, slots=True)
class LaidBody:
    """What is laid on the mandrel for one body, wire against wire, and the wire of the whole spring.

    `stop_deg` is where leg 2 leaves the mandrel, counted from leg 1 the way the spring is wound up, whole turns left
    out; `opens_deg` by how much that angle falls as the coil is let go.
    """

    turns: float
    stop_deg: float
    opens_deg: float
    coil_length_mm: float
    cut_length_mm: float


def as_wound(known: Knowledge, wound: Wound[TorsionSpring]) -> TorsionSpring:
    """The spring before heat: its diameter, the coils that the same wire makes of it, and its legs at their angle."""
    spring, mean_mm = wound.design.spring, known.finished_mean_mm(wound.diameter_mm)
    coils = spring.active_coils * spring.mean_diameter_mm / mean_mm
    angle = spring.free_angle_deg
    turned_by = 360.0 * (coils - spring.active_coils)
    return replace(
        spring,
        mean_diameter_mm=mean_mm,
        active_coils=coils,
        free_angle_deg=None if angle is None else (angle + turned_by) % 360.0,
    )


def laid(before_heat: TorsionSpring, mandrel_mm: float) -> LaidBody:
    """The turns to lay so that the coils come out, each turn keeping its arc, and the wire to cut."""
    wire_mm, coils = before_heat.wire_diameter_mm, before_heat.active_coils
    on_mandrel = turn_length_mm(mandrel_mm + wire_mm, wire_mm)
    laid_turns = turns.turns_from(coils, turn_length_mm(before_heat.mean_diameter_mm, wire_mm), on_mandrel)
    opens_deg = turns.opens_deg(laid_turns, coils)
    coil_mm = turned.wire_length_mm(before_heat)
    return LaidBody(
        turns=laid_turns,
        stop_deg=((before_heat.free_angle_deg or 0.0) + opens_deg) % 360.0,
        opens_deg=opens_deg,
        coil_length_mm=coil_mm,
        cut_length_mm=coil_mm + turns.TAILS_MM,
    )


def made_before_heat(task: TorsionTask, known: Knowledge, wound: Wound[TorsionSpring]) -> Made:
    """The spring as wound, with its bands."""
    spring, rate_sd = as_wound(known, wound), task.spread_on(known, wound.diameter_mm)(wound.design.spring).rate_sd
    doubts = _Doubts(known.finished_mean_sd_mm(wound.diameter_mm), opening_sd(known, wound.diameter_mm), rate_sd)
    return Made(spring, _figures(task, spring), _bands(spring, doubts))


def made_after_heat(task: TorsionTask, known: Knowledge, wound: Wound[TorsionSpring]) -> Made:
    """The spring after heat, with its bands."""
    spring, (_, of_heat) = wound.design.spring, change_of_diameter(task.wire.material, task.bench)
    spread = task.spread_on(known, wound.diameter_mm)(spring)
    doubts = _Doubts(spread.diameter_sd_mm, hypot(opening_sd(known, wound.diameter_mm), of_heat), spread.rate_sd)
    return Made(spring, _figures(task, spring), _bands(spring, doubts))


def _figures(task: TorsionTask, spring: TorsionSpring) -> TorsionDescription:
    """The spring's figures at the angles at which it works."""
    return describe(spring, at_deg=[point.at_deg for point in task.need.turned], making=Making.WOUND)


@dataclass(frozen=True, slots=True)
class _Doubts:
    """Standard deviations: of the mean diameter, and relative of how far the coil opens and of the rate."""

    diameter_sd_mm: float
    opening_sd: float
    rate_sd: float


def _bands(spring: TorsionSpring, doubts: _Doubts) -> Mapping[str, Band]:
    """The figures with a known doubt, between their 95 % bounds; the rate hangs on the wire, not on the diameter."""
    around_mm, rate = NORMAL_95 * doubts.diameter_sd_mm, turned.rate_n_mm_per_deg(spring)
    share = NORMAL_95 * doubts.rate_sd
    bands = {
        name: Band(value - around_mm, value + around_mm)
        for name, value in (
            ("mean_diameter_mm", spring.mean_diameter_mm),
            ("outside_diameter_mm", spring.outside_diameter_mm),
            ("inside_diameter_mm", spring.inside_diameter_mm),
        )
    }
    bands["rate_n_mm_per_deg"] = Band(rate / (1 + share), rate * (1 + share))
    if spring.free_angle_deg is not None:
        around_deg = NORMAL_95 * angle_sd_deg(spring, doubts.opening_sd)
        bands["free_angle_deg"] = Band(spring.free_angle_deg - around_deg, spring.free_angle_deg + around_deg)
    return bands


def body_length_mm(spring: TorsionSpring) -> float:
    """The length of the body with its coils touching, as it is wound."""
    return spring.bodies * torsion.wound_body_length_mm(spring.wire_diameter_mm, spring.active_coils, 0.0)
