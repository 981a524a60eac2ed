"""The pictures of a winding sheet, chosen by the kind of spring: the spring, its mandrel, its curve, its outline."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from sourcing.quantities.kinds import FORCE, LENGTH, TORQUE
from sourcing.sheets.drawing import plots, springs
from sourcing.sheets.drawing.end_view import end_view, turned_dimensioned
from sourcing.sheets.drawing.hooked import hooked_dimensioned, hooked_one_to_one
from sourcing.sheets.drawing.on_mandrel import wound_picture
from sourcing.sheets.drawing.svg import Picture
from sourcing.sheets.winding_text import AT_ANGLE, AT_LENGTH
from sourcing.springs import pressed, pulled, turned
from sourcing.springs.model import CompressionSpring, ConicalSpring, ExtensionSpring, TorsionSpring
from sourcing.winding.model import WindingPlan
from sourcing.winding.solid.coil import coil_of

PLOT_MM = (58.0, 46.0)

TRUE_SIZE_MM = (178.0, 200.0)
"""The room for the outline one to one on the narrower of A4 and Letter, between their margins."""


def finished(plan: WindingPlan) -> Picture:
    """The finished spring with its dimensions."""
    match plan.wanted:
        case CompressionSpring() | ConicalSpring() as spring:
            return springs.dimensioned(spring, plan.units)
        case ExtensionSpring() as spring:
            return hooked_dimensioned(spring, plan.units)
        case TorsionSpring() as spring:
            return turned_dimensioned(spring, plan.units)


def mandrel(plan: WindingPlan) -> Picture:
    """The wire on its mandrel."""
    return wound_picture(coil_of(plan), plan.units)


def outline(plan: WindingPlan) -> Picture | None:
    """The finished spring in its true size; None where a page does not hold it or its angle is unknown."""
    match plan.wanted:
        case CompressionSpring() | ConicalSpring() as spring:
            return springs.one_to_one(spring, TRUE_SIZE_MM)
        case ExtensionSpring() as spring:
            return hooked_one_to_one(spring, TRUE_SIZE_MM)
        case TorsionSpring() as spring:
            return end_view(spring, TRUE_SIZE_MM)


def curve(plan: WindingPlan) -> Picture:
    """Force over length, or torque over the angle wound up, with what is wanted as bars."""
    match plan.wanted:
        case CompressionSpring() | ConicalSpring() as spring:
            return _pressed(plan, spring)
        case ExtensionSpring() as spring:
            return _pulled(plan, spring)
        case TorsionSpring() as spring:
            return _turned(plan, spring)


@dataclass(frozen=True, slots=True)
class _Measure:
    """What an axis tells in the units of a bench, and how many of the house unit go into one of its own."""

    words: str
    unit: float = 1.0


_ANGLE = _Measure("wound up, deg")
_LENGTH = {"mm": _Measure("length, mm"), "inch": _Measure("length, in", LENGTH.factors["in"])}
_FORCE = {"mm": _Measure("force, N"), "inch": _Measure("force, lbf", FORCE.factors["lbf"])}
_TORQUE = {"mm": _Measure("torque, N·mm"), "inch": _Measure("torque, lbf·in", TORQUE.factors["lbf*in"])}


def _turned(plan: WindingPlan, spring: TorsionSpring) -> Picture:
    rate = turned.rate_n_mm_per_deg(spring)
    wishes = [
        plots.Wish(float(at[2]), row.low, row.high)
        for row in plan.accept
        if (at := AT_ANGLE.fullmatch(row.figure)) is not None and at[1] == "torque"
    ]
    most_deg = 1.15 * max((wish.at for wish in wishes), default=90.0)
    return _drawn(lambda deg: rate * deg, (0.0, most_deg), wishes, (_ANGLE, _TORQUE[plan.units]))


def _pulled(plan: WindingPlan, spring: ExtensionSpring) -> Picture:
    rate, tension_n, wishes = pulled.rate_n_per_mm(spring), spring.initial_tension_n or 0.0, _wanted_forces(plan)
    free_mm, places = spring.free_length_mm, [wish.at for wish in wishes]
    furthest_mm = max((at for at in places if at > free_mm), default=1.5 * free_mm)
    longest_mm = free_mm + 1.15 * (furthest_mm - free_mm)

    def force_n(length_mm: float) -> float:
        return max(tension_n, pulled.force_n(spring, length_mm, rate, tension_n))

    lengths_mm = min(free_mm, *places, longest_mm), longest_mm
    return _drawn(force_n, lengths_mm, wishes, (_LENGTH[plan.units], _FORCE[plan.units]))


def _pressed(plan: WindingPlan, spring: CompressionSpring | ConicalSpring) -> Picture:
    rate, wishes = pressed.rate_n_per_mm(spring), _wanted_forces(plan)
    free_mm, places = spring.free_length_mm, [wish.at for wish in wishes]
    shortest_mm = min((at for at in places if at < free_mm), default=0.7 * free_mm)
    low_mm = max(pressed.solid_length_mm(spring), shortest_mm - 0.15 * (free_mm - shortest_mm))

    def force_n(length_mm: float) -> float:
        return pressed.force_n(spring, min(length_mm, free_mm), rate)

    lengths_mm = low_mm, max(free_mm, *places, low_mm)
    return _drawn(force_n, lengths_mm, wishes, (_LENGTH[plan.units], _FORCE[plan.units]))


def _wanted_forces(plan: WindingPlan) -> list[plots.Wish]:
    return [
        plots.Wish(float(at[2]), row.low, row.high)
        for row in plan.accept
        if (at := AT_LENGTH.fullmatch(row.figure)) is not None and at[1] == "force"
    ]


def _drawn(
    value_at: Callable[[float], float],
    ends: tuple[float, float],
    wishes: Sequence[plots.Wish],
    measures: tuple[_Measure, _Measure],
) -> Picture:
    """The curve between two ends in the bench's units, along and up; its upper end and all bars in the picture."""
    along, up = measures

    def shown(value: float | None) -> float | None:
        return None if value is None else value / up.unit

    bars = [plots.Wish(wish.at / along.unit, shown(wish.low), shown(wish.high)) for wish in wishes]
    most = max(value_at(each) / up.unit for each in ends)
    top = max(most, *(bar.high for bar in bars if bar.high is not None), 1e-9)
    low, high = (each / along.unit for each in ends)
    across = plots.Axis(along.words, low, high)
    upward = plots.Axis(up.words, 0.0, 1.08 * top)
    return plots.curve(lambda at: value_at(at * along.unit) / up.unit, across, upward, bars, PLOT_MM)
