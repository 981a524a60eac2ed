"""The need, the bench and the wire that the tests of this folder start from, changed as they ask."""

from __future__ import annotations

from dataclasses import replace

from sourcing.materials import find
from sourcing.materials.model import Material
from sourcing.need.model import Need, Pocket, TurnedPoint, WantedLeg, WorkingPoint
from sourcing.quantities import Wanted
from sourcing.springs.model import Hand
from sourcing.stock.model import Bench, Spool, Trial
from sourcing.winding.model import Refusal, WindingPlan
from sourcing.winding.plan import plan_winding

BENCH = Bench()


def material(name: str) -> Material:
    found = find(name)
    assert found is not None
    return found


def wanted(nominal: float, tolerance: float | None = None) -> Wanted:
    return Wanted(nominal=nominal, minus=tolerance, plus=tolerance)


A_HANDLE = Need(
    job="handle",
    kind="torsion",
    pocket=Pocket(rod_mm=wanted(9.0), bore_mm=wanted(22.0), width_mm=wanted(11.0)),
    turned=(TurnedPoint(wanted(20.0), wanted(80.0, 16.0)), TurnedPoint(wanted(65.0), wanted(265.0, 39.75))),
    hand=Hand.RIGHT,
    leg_1=WantedLeg(wanted(25.0)),
    leg_2=WantedLeg(wanted(28.0)),
    free_angle_deg=wanted(270.0, 15.0),
)
"""A torsion spring over a rod of 9 mm: 80 N·mm ± 20 % at 20 deg, 265 N·mm ± 15 % at 65 deg."""


def point(length_mm: float, force_n: float | Wanted | None = None) -> WorkingPoint:
    """A working point; a bare force is wanted within 15 %."""
    if isinstance(force_n, float | int):
        force_n = wanted(force_n, 0.15 * force_n)
    return WorkingPoint(wanted(length_mm), force_n)


def pocket(bore_mm: float | None = 11, rod_mm: float | None = 6, depth_mm: float | None = None) -> Pocket:
    return Pocket(*(None if each is None else wanted(each) for each in (bore_mm, rod_mm, depth_mm)))


def need(**changes: object) -> Need:
    """Hand-checked case 4 of the winding model: bore 11, rod 6, 1.30 N/mm, 22 N at the shortest length of 14 mm."""
    case = Need(job="case-4", kind="compression", pocket=pocket(), working=(point(24, 9), point(14, 22)))
    return replace(case, **changes)


def spool(wire_mm: float = 0.8, *trials: Trial, name: str = "music-wire", length_left_mm: float | None = None) -> Spool:
    return Spool(f"spool {wire_mm:g}", material(name), wire_mm, length_left_mm, trials=trials)


def planned(result: WindingPlan | Refusal) -> WindingPlan:
    assert isinstance(result, WindingPlan), result
    return result


def refused(result: WindingPlan | Refusal) -> Refusal:
    assert isinstance(result, Refusal), result
    return result


def plan(
    wire: Spool | None = None, bench: Bench = BENCH, mandrel_mm: float | None = None, **changes: object
) -> WindingPlan:
    return planned(plan_winding(need(**changes), wire or spool(), bench, mandrel_mm))
