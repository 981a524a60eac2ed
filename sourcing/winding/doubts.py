"""How far what is wound by hand may come from what was meant, and which mandrel means what, heat taken into account."""

from __future__ import annotations

from math import hypot

from sourcing.figures import formula
from sourcing.springs.model import Spring
from sourcing.winding import springback
from sourcing.winding.coil_reading import NORMAL_95
from sourcing.winding.heat import change_of_diameter
from sourcing.winding.heat_change import heated_mean_mm, heated_sd_mm
from sourcing.winding.measuring import sd_of_mandrel_mm
from sourcing.winding.task import Task
from sourcing.winding.trials import Knowledge, wound_sd_mm

RATE_DOUBT = 0.03
"""The rate of wire of its nominal diameter within its tolerance, one standard deviation (assumed)."""

COILS_DOUBT = 0.07
"""Turns counted to an eighth, read as a rectangle, in coils."""

DIAMETER_POWER = 3.0
"""The rate falls with the cube of a diameter that was not planned."""


def diameter_sd_mm(task: Task, known: Knowledge, mandrel_mm: float) -> float:
    """The standard deviation of the final mean diameter: springback, and heat where it is given."""
    change, doubt = change_of_diameter(task.wire.material, task.bench)
    mean_mm, sd_mm = known.finished_mean_mm(mandrel_mm), known.finished_mean_sd_mm(mandrel_mm)
    return heated_sd_mm(mean_mm, sd_mm, change, doubt)


def opening_sd(known: Knowledge, mandrel_mm: float) -> float:
    """The relative doubt of D_f/D_m as wound, and so of the turns by which the legs of a coil turn back.

    A rod that is thicker than it reads makes a coil that is larger by about as much, and leaves their ratio alone.
    """
    here, index = known.on(mandrel_mm), springback.index_on_mandrel(mandrel_mm, known.wire_diameter_mm)
    return wound_sd_mm(
        1.0,
        springback.stress_sensitivity(index, here.flow_strain),
        here.flow_ratio_sd,
        springback.mandrel_sensitivity(index, here.flow_strain) - 1.0,
        mandrel_mm + known.wire_diameter_mm,
        sd_of_mandrel_mm(known.wound_on),
    )


@formula("u_R = √(0.03² + (0.07 / n)²)", where={"n": "spring.active_coils"}, source="assumed")
def rate_sd(spring: Spring) -> float:
    """The relative standard deviation of the rate at a known diameter: wire, and coils counted."""
    return hypot(RATE_DOUBT, COILS_DOUBT / spring.active_coils)


@formula("y = v − 1.96 u", where={"v": "value", "u": "sd"}, source="95 of 100 of a normal distribution")
def lower_95(value: float, sd: float) -> float:
    """The lower bound of 95 % of a figure with a normal doubt."""
    return value - NORMAL_95 * sd


@formula("y = v + 1.96 u", where={"v": "value", "u": "sd"}, source="95 of 100 of a normal distribution")
def upper_95(value: float, sd: float) -> float:
    """The upper bound of 95 % of a figure with a normal doubt."""
    return value + NORMAL_95 * sd


@formula(
    "u = √((3 u_D / D)² + u_R²)",
    where={"u_D": "diameter_sd_mm", "u_R": "rate_sd_at_diameter"},
    source="derived: the rate falls with the cube of a diameter that was not planned, and what else is in doubt",
)
def whole_rate_sd(mean_diameter_mm: float, diameter_sd_mm: float, rate_sd_at_diameter: float) -> float:
    """The relative standard deviation of the rate, the diameter's doubt in it."""
    return hypot(DIAMETER_POWER * diameter_sd_mm / mean_diameter_mm, rate_sd_at_diameter)


@formula(
    "R' = R / (1 + 1.96 u)", where={"R": "rate", "u": "sd"}, source="95 of 100, of a figure that cannot fall below 0"
)
def lower_rate(rate: float, sd: float) -> float:
    """The lower bound of a rate with a relative doubt."""
    return rate / (1 + NORMAL_95 * sd)


@formula(
    "R' = R (1 + 1.96 u)", where={"R": "rate", "u": "sd"}, source="95 of 100, of a figure that cannot fall below 0"
)
def upper_rate(rate: float, sd: float) -> float:
    """The upper bound of a rate with a relative doubt."""
    return rate * (1 + NORMAL_95 * sd)


def final_mean_mm(task: Task, known: Knowledge, mandrel_mm: float) -> float:
    """The mean diameter that a mandrel gives in the end, after heat where it is given; infinite: opens fully."""
    change, _ = change_of_diameter(task.wire.material, task.bench)
    return heated_mean_mm(known.finished_mean_mm(mandrel_mm), change)


def mandrel_for_mm(task: Task, known: Knowledge, final_mean_diameter_mm: float) -> float:
    """The mandrel that gives a final mean diameter."""
    change, _ = change_of_diameter(task.wire.material, task.bench)
    return known.mandrel_mm(final_mean_diameter_mm / (1 + change))
