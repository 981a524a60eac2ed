"""From the wanted spring back to the bench: the coil before heat, what is laid on the mandrel, and the bands."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from sourcing.springs import geometry
from sourcing.springs.describe import describe
from sourcing.springs.end_pieces import wire_of_ends_mm
from sourcing.springs.model import CompressionSpring
from sourcing.winding import turns
from sourcing.winding.doubts import (
    diameter_sd_mm,
    lower_95,
    lower_rate,
    rate_sd,
    upper_95,
    upper_rate,
    whole_rate_sd,
)
from sourcing.winding.heat import making
from sourcing.winding.mandrel import Wound
from sourcing.winding.model import Band, Made
from sourcing.winding.pressed_task import PressedTask, laid_length_sd_mm
from sourcing.winding.trials import Knowledge

TOO_OPEN_SHARE = 0.01
"""The share of the free length from which a coil that opens too far is spoken of."""


@dataclass(frozen=True, slots=True)
class Laid:
    """What is laid on the mandrel for one spring: turns, pitch and wire.

    `too_open_mm`: by how much the free length comes out too long where the wire, laid close, opens more than wanted.
    """

    active_turns: float
    dead_turns: float
    pitch_mm: float
    coil_length_mm: float
    cut_length_mm: float
    too_open_mm: float

    @property
    def turns(self) -> float:
        """The turns that become the spring."""
        return self.active_turns + self.dead_turns

    def run_back(self, coils: float) -> float:
        """The turns by which the crank is driven back as the turns laid, spare ones too, become so many coils."""
        return turns.turns_run_back(self.turns, coils)


def as_wound(known: Knowledge, wound: Wound[CompressionSpring]) -> CompressionSpring:
    """The spring before heat: its diameter, and the coils that the same wire makes of it.

    Heat is taken to leave the free length as it is (assumed).
    """
    spring, mean_mm = wound.design.spring, known.finished_mean_mm(wound.diameter_mm)
    share = spring.mean_diameter_mm / mean_mm
    return replace(
        spring,
        mean_diameter_mm=mean_mm,
        active_coils=spring.active_coils * share,
        total_coils=spring.total_coils * share,
    )


def laid(known: Knowledge, before_heat: CompressionSpring, mandrel_mm: float) -> Laid:
    """Turns and pitch on the mandrel, each kind of coil keeping its arc, and the wire to cut."""
    wire_mm, mean_mm = before_heat.wire_diameter_mm, before_heat.mean_diameter_mm
    active, total = before_heat.active_coils, before_heat.total_coils
    pitch_mm = geometry.pitch_mm(wire_mm, before_heat.free_length_mm, active, total, before_heat.ends)
    on_mandrel_mm = mandrel_mm + wire_mm
    opening = mean_mm / on_mandrel_mm
    laid_pitch_mm = turns.pitch_on_mandrel_mm(pitch_mm, opening, known.pitch.share, wire_mm)
    finished, on_mandrel = (mean_mm, pitch_mm), (on_mandrel_mm, laid_pitch_mm)
    coil_mm = geometry.wire_length_mm(wire_mm, mean_mm, pitch_mm, active, total) + wire_of_ends_mm(before_heat)
    return Laid(
        active_turns=turns.turns_on_mandrel(active, 0, finished, on_mandrel, wire_mm),
        dead_turns=turns.turns_on_mandrel(0, total - active, finished, on_mandrel, wire_mm),
        pitch_mm=laid_pitch_mm,
        coil_length_mm=coil_mm,
        cut_length_mm=turns.cut_length_mm(coil_mm, geometry.turn_length_mm(on_mandrel_mm, laid_pitch_mm)),
        too_open_mm=active * max(0.0, laid_pitch_mm * turns.pitch_ratio(opening, known.pitch.share) - pitch_mm),
    )


def made_before_heat(task: PressedTask, known: Knowledge, wound: Wound[CompressionSpring]) -> Made:
    """The spring as wound, with its bands."""
    sd_mm = known.finished_mean_sd_mm(wound.diameter_mm)
    return _made(task, as_wound(known, wound), sd_mm, known.pitch_sd(wound.diameter_mm))


def made_after_heat(task: PressedTask, known: Knowledge, wound: Wound[CompressionSpring]) -> Made:
    """The spring after heat, with its bands."""
    sd_mm = diameter_sd_mm(task, known, wound.diameter_mm)
    return _made(task, wound.design.spring, sd_mm, known.pitch_sd(wound.diameter_mm))


def _made(task: PressedTask, spring: CompressionSpring, sd_mm: float, pitch_sd: float) -> Made:
    figures = describe(
        spring, [point.at_mm for point in task.need.working], making=making(task.wire.material, task.bench)
    )
    return Made(spring, figures, _bands(spring, sd_mm, pitch_sd))


def _bands(spring: CompressionSpring, sd_mm: float, pitch_sd: float) -> Mapping[str, Band]:
    """The figures with a known doubt, between their 95 % bounds."""
    rate, length_mm = describe(spring).rate_n_per_mm, laid_length_sd_mm(spring, pitch_sd)
    share = whole_rate_sd(spring.mean_diameter_mm, sd_mm, rate_sd(spring))
    diameters = {
        "mean_diameter_mm": spring.mean_diameter_mm,
        "outside_diameter_mm": spring.outside_diameter_mm,
        "inside_diameter_mm": spring.inside_diameter_mm,
    }
    return {
        **{name: band(value, sd_mm) for name, value in diameters.items()},
        "rate_n_per_mm": Band(lower_rate(rate, share), upper_rate(rate, share)),
        "free_length_mm": band(spring.free_length_mm, length_mm),
    }


def band(value: float, sd: float) -> Band:
    """The bounds of 95 % of a figure with a normal doubt."""
    return Band(lower_95(value, sd), upper_95(value, sd))
