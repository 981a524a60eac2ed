"""From the wanted extension spring back to the bench: the coil before heat, turns to lay, wire of the hooks, bands."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import hypot

from sourcing.springs import pulled
from sourcing.springs.describe_extension import describe_extension, wire_length_mm, wire_of_hook_mm
from sourcing.springs.geometry import turn_length_mm
from sourcing.springs.hooks import COILS_OF_HOOK
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.winding import turns
from sourcing.winding.doubts import DIAMETER_POWER, NORMAL_95, diameter_sd_mm, rate_sd
from sourcing.winding.extension.ends import free_length_sd_mm
from sourcing.winding.extension.hand_tension import LOST_IN_HEAT, hand_tension_n, tension_as_wound_n
from sourcing.winding.extension.task import ExtensionTask
from sourcing.winding.heat import making
from sourcing.winding.mandrel import Wound
from sourcing.winding.model import Band, Made
from sourcing.winding.trials import Knowledge
from sourcing.winding.turns import SPARE_TURNS, TAILS_MM


@dataclass(frozen=True, slots=True)
class LaidTight:
    """What is laid on the mandrel, wire against wire: turns of the body and of both hooks, and the wire of it all."""

    body_turns: float
    hook_turns: float
    coil_length_mm: float
    cut_length_mm: float
    turns_run_back: float

    @property
    def turns(self) -> float:
        """The turns that become the spring."""
        return self.body_turns + self.hook_turns


def as_wound(task: ExtensionTask, known: Knowledge, wound: Wound[ExtensionSpring]) -> ExtensionSpring:
    """The spring before heat: its diameter, the coils that the same wire makes of it, and the tension heat takes of.

    Heat changes its hooks as it does its coils, and adds to the body what coils it makes more. Plugs go in after it:
    the length between their eyes is the one wanted.
    """
    spring, mean_mm = wound.design.spring, known.finished_mean_mm(wound.diameter_mm)
    plugged = spring.hooks is Hooks.THREADED_PLUG
    share, tension_n = spring.mean_diameter_mm / mean_mm, spring.initial_tension_n or 0.0
    body_mm, hooks_mm = pulled.body_length_mm(spring), spring.free_length_mm - pulled.body_length_mm(spring)
    coils_more_mm = (1.0 - share) * spring.total_coils * spring.wire_diameter_mm
    return replace(
        spring,
        mean_diameter_mm=mean_mm,
        free_length_mm=spring.free_length_mm if plugged else body_mm - coils_more_mm + hooks_mm / share,
        active_coils=spring.active_coils * share,
        total_coils=spring.total_coils * share,
        initial_tension_n=tension_as_wound_n(tension_n, LOST_IN_HEAT[0]) if task.heated else tension_n,
    )


def laid(before_heat: ExtensionSpring, mandrel_mm: float) -> LaidTight:
    """Turns on the mandrel for body and hooks, each keeping its arc, and the wire to cut.

    The hooks are bent from turns that are wound on beside the body; an extended hook's shank is wire beyond them.
    """
    wire_mm, mean_mm = before_heat.wire_diameter_mm, before_heat.mean_diameter_mm
    one_mm, on_mandrel_mm = turn_length_mm(mean_mm, wire_mm), turn_length_mm(mandrel_mm + wire_mm, wire_mm)
    hook_coils = 2.0 * COILS_OF_HOOK[before_heat.hooks]
    body_turns = turns.turns_from(before_heat.total_coils, one_mm, on_mandrel_mm)
    hook_turns = turns.turns_from(hook_coils, one_mm, on_mandrel_mm)
    whole, coils = body_turns + hook_turns, before_heat.total_coils + hook_coils
    coil_mm = wire_length_mm(before_heat)
    return LaidTight(
        body_turns=body_turns,
        hook_turns=hook_turns,
        coil_length_mm=coil_mm,
        cut_length_mm=coil_mm + SPARE_TURNS * on_mandrel_mm + TAILS_MM,
        turns_run_back=(whole - coils) * (1.0 + SPARE_TURNS / whole),
    )


def wire_of_hooks_mm(spring: ExtensionSpring) -> float:
    """The wire of both hooks."""
    return 2.0 * wire_of_hook_mm(spring)


def made_before_heat(task: ExtensionTask, known: Knowledge, wound: Wound[ExtensionSpring]) -> Made:
    """The spring as wound, with its bands."""
    spring = as_wound(task, known, wound)
    return _made(task, spring, known.finished_mean_sd_mm(wound.diameter_mm), heated=False)


def made_after_heat(task: ExtensionTask, known: Knowledge, wound: Wound[ExtensionSpring]) -> Made:
    """The spring after heat, with its bands."""
    return _made(task, wound.design.spring, diameter_sd_mm(task, known, wound.diameter_mm), heated=True)


def _made(task: ExtensionTask, spring: ExtensionSpring, sd_mm: float, heated: bool) -> Made:
    tension = hand_tension_n(spring.wire_diameter_mm, spring.mean_diameter_mm, task.tensile_strength_mpa, heated)
    figures = describe_extension(
        spring, [point.at_mm for point in task.need.working], making(task.wire.material, task.bench)
    )
    return Made(spring, figures, {**_bands(spring, sd_mm), "initial_tension_n": tension})


def _bands(spring: ExtensionSpring, sd_mm: float) -> Mapping[str, Band]:
    """The figures with a known doubt, between their 95 % bounds."""
    around_mm, length_mm = NORMAL_95 * sd_mm, NORMAL_95 * free_length_sd_mm(spring)
    rate = pulled.rate_n_per_mm(spring)
    share = NORMAL_95 * hypot(DIAMETER_POWER * sd_mm / spring.mean_diameter_mm, rate_sd(spring))
    diameters = {
        "mean_diameter_mm": spring.mean_diameter_mm,
        "outside_diameter_mm": spring.outside_diameter_mm,
        "inside_diameter_mm": spring.inside_diameter_mm,
    }
    return {
        **{name: Band(value - around_mm, value + around_mm) for name, value in diameters.items()},
        "rate_n_per_mm": Band(rate / (1 + share), rate * (1 + share)),
        "free_length_mm": Band(spring.free_length_mm - length_mm, spring.free_length_mm + length_mm),
    }
