"""What a printed mandrel stands: alone, or as a sleeve on a steel rod."""

from __future__ import annotations

from dataclasses import replace
from math import pi

from sourcing.figures import formula
from sourcing.springs.model import TorsionSpring
from sourcing.stock.model import Bench
from sourcing.winding.model import WindingPlan
from sourcing.winding.pull import GREATEST_PULL_SHARE, yield_force_n
from sourcing.winding.solid.bed import driven_mm
from sourcing.winding.solid.shape import MandrelSolid
from sourcing.winding.solid.sleeve import CRUSHES_MPA, ROD_STRENGTH_MPA, Bore, flat_depth_mm, safety_of_flat

PRINTED_STRENGTH_MPA = 20.0
"""Shear strength of printed plastic like PLA (assumed); layers part first."""

SAFE = 2.0
"""From this many times the crank's torque on a printed mandrel serves (assumed)."""


@formula(
    "S = (3π/8) (τ_p / σ_f) (a / d)³ / (1 + (3π/4) c C_m)",
    where={"τ_p": "printed_strength_mpa", "a": "core_mm", "C_m": "index_on_mandrel", "c": "pull_fraction"},
    source="derived, see winding_model: the round section's torque, over the wire's plastic moment and the pull's",
)
def safety_against_twisting_off(
    printed_strength_mpa: float,
    flow_stress_mpa: float,
    core_mm: float,
    wire_diameter_mm: float,
    pull_fraction: float,
    index_on_mandrel: float,
) -> float:
    """What a mandrel stands over what the crank puts on it, at its thinnest.

    >>> round(safety_against_twisting_off(20.0, 2398.0, 5.9, 1.0, 0.0, 6.9), 2)
    2.02
    """
    slimness = core_mm / wire_diameter_mm
    alone = 3 * pi / 8 * printed_strength_mpa / flow_stress_mpa * slimness**3
    return alone / (1 + 3 * pi / 4 * pull_fraction * index_on_mandrel)


@formula(
    "c = (S_0 / S − 1) 4 / (3π C_m)",
    where={"S_0": "safety_without_pull", "S": "safety_wanted", "C_m": "index_on_mandrel"},
    source="derived, see winding_model: the pull at which the mandrel's safety has fallen to what is wanted",
)
def greatest_pull_fraction(safety_without_pull: float, safety_wanted: float, index_on_mandrel: float) -> float:
    """The pull, over the one at which the wire yields, that a mandrel stands; below zero where it stands none.

    >>> round(greatest_pull_fraction(2.67, 2.0, 7.5), 3)
    0.019
    """
    return (safety_without_pull / safety_wanted - 1) * 4 / (3 * pi * index_on_mandrel)


def safety_of(plan: WindingPlan, solid: MandrelSolid, gripped_mm: float | None = None) -> float:
    """That of a plan's mandrel, with the pull that the plan asks for; of a sleeve, its rod's or its flat's.

    `gripped_mm`: the length of the piece that drives a sleeve cut across. The two halves of a double torsion spring's
    wire are wound at once.
    """
    wire_mm, wires = plan.wire_diameter_mm, plan.wanted.bodies if isinstance(plan.wanted, TorsionSpring) else 1
    flow_mpa, radius_mm, bore = _flow_mpa(plan), solid.coil.stations[0].radius_mm, solid.held
    pull_fraction = plan.pull_n / yield_force_n(flow_mpa, wire_mm)
    strength_mpa = ROD_STRENGTH_MPA if isinstance(bore, Bore) else PRINTED_STRENGTH_MPA
    index = 2 * radius_mm / wire_mm
    twisted = safety_against_twisting_off(strength_mpa, flow_mpa, solid.core_mm, wire_mm, pull_fraction, index) / wires
    if not isinstance(bore, Bore):
        return twisted
    torque_n_mm = wires * (plan.crank_moment_n_mm + plan.pull_n * radius_mm)
    driven = gripped_mm or solid.length_mm, torque_n_mm, flat_depth_mm(bore.rod_mm), bore.rod_mm
    return min(twisted, safety_of_flat(CRUSHES_MPA, *driven))


def safety_at(plan: WindingPlan, solid: MandrelSolid, bench: Bench) -> float:
    """That of a plan's mandrel, a sleeve cut across where the bench's printer wants it."""
    return safety_of(plan, solid, driven_mm(solid, bench.printer_bed_mm))


def greatest_pull_n(plan: WindingPlan, solid: MandrelSolid, bench: Bench) -> float:
    """The pull at which a plan's mandrel is just safe at its weakest place, or the most that its wire is given.

    Zero where it is not safe with any.
    """
    alone, index = safety_at(replace(plan, pull_n=0.0), solid, bench), 2 * solid.coil.stations[0].radius_mm
    share = greatest_pull_fraction(alone, SAFE, index / plan.wire_diameter_mm)
    return min(max(0.0, share), GREATEST_PULL_SHARE) * yield_force_n(_flow_mpa(plan), plan.wire_diameter_mm)


def _flow_mpa(plan: WindingPlan) -> float:
    """The flow stress of the plan's wire, from the moment that bends it."""
    return 6 * plan.crank_moment_n_mm / plan.wire_diameter_mm**3
