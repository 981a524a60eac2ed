"""What a printed mandrel stands, and whether the printer holds it."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, pi
from typing import Literal

from sourcing.figures import formula
from sourcing.stock.model import Bench
from sourcing.winding.model import WindingPlan
from sourcing.winding.solid.mesh import HALVES_APART_MM
from sourcing.winding.solid.shape import MandrelSolid

PRINTED_STRENGTH_MPA = 20.0
"""Shear strength of printed plastic like PLA (assumed); layers part first."""

SAFE = 2.0
"""From this many times the crank's torque on a printed mandrel serves (assumed)."""

BED_EDGE_MM = 2.0
"""Left free at each side of the bed."""

Lies = Literal["standing", "lying", "nowhere"]
"""On its shank, along the bed, or not whole."""


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
    """What a printed mandrel stands over what the crank puts on it, at its thinnest.

    >>> round(safety_against_twisting_off(20.0, 2398.0, 5.9, 1.0, 0.0, 6.9), 2)
    2.02
    """
    slimness = core_mm / wire_diameter_mm
    alone = 3 * pi / 8 * printed_strength_mpa / flow_stress_mpa * slimness**3
    return alone / (1 + 3 * pi / 4 * pull_fraction * index_on_mandrel)


def safety_of(plan: WindingPlan, solid: MandrelSolid) -> float:
    """That of a plan's mandrel, with the pull that the plan asks for."""
    wire_mm = plan.wire_diameter_mm
    flow_mpa = 6 * plan.crank_moment_n_mm / wire_mm**3
    pull_fraction = plan.pull_n / (flow_mpa * pi / 4 * wire_mm**2)
    index = 2 * solid.coil.stations[0].radius_mm / wire_mm
    return safety_against_twisting_off(PRINTED_STRENGTH_MPA, flow_mpa, solid.core_mm, wire_mm, pull_fraction, index)


@dataclass(frozen=True, slots=True)
class OnBed:
    """How the mandrel lies in the printer; where it has no room whole, in how many pieces, cut across.

    No pieces: not even a piece has room.
    """

    lies: Lies
    pieces: int
    piece_mm: float


def on_bed(solid: MandrelSolid, bed_mm: tuple[float, float, float]) -> OnBed:
    """Standing on its shank where the printer is high enough, else lying along the bed, else in pieces.

    The halves of a split mandrel lie side by side on their flat faces.
    """
    standing_mm, lying_mm = _room_mm(solid, bed_mm)
    if solid.length_mm <= standing_mm:
        return OnBed("standing", 1, solid.length_mm)
    if solid.length_mm <= lying_mm:
        return OnBed("lying", 1, solid.length_mm)
    longest_mm = max(standing_mm, lying_mm)
    if longest_mm <= solid.collar.height_mm + solid.shank.length_mm:
        return OnBed("nowhere", 0, 0.0)
    pieces = ceil(solid.length_mm / longest_mm)
    return OnBed("nowhere", pieces, solid.length_mm / pieces)


def lies_on_bed(solid: MandrelSolid, bench: Bench) -> bool:
    """Whether it must lie to find room in the printer; where no bed is known it stands."""
    return bench.printer_bed_mm is not None and on_bed(solid, bench.printer_bed_mm).lies == "lying"


def _room_mm(solid: MandrelSolid, bed_mm: tuple[float, float, float]) -> tuple[float, float]:
    """How long it may be standing, and lying; nothing where it is too wide."""
    x_mm, y_mm, z_mm = (each - 2 * BED_EDGE_MM for each in bed_mm)
    split = solid.release.way == "split"
    beside_mm, up_mm = (2 * solid.width_mm + HALVES_APART_MM if split else solid.width_mm), solid.width_mm
    standing_mm = z_mm if not split and solid.width_mm <= min(x_mm, y_mm) else 0.0
    lying_mm = max(x_mm, y_mm) if beside_mm <= min(x_mm, y_mm) and up_mm <= z_mm else 0.0
    return standing_mm, lying_mm
