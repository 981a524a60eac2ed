"""The chance of a torsion spring's plan, held against whole springs that are wound, heated, bent and judged."""

from __future__ import annotations

from dataclasses import replace
from math import exp
from random import Random

import pytest

from sourcing.fit.judge import judge
from sourcing.fit.model import Spread
from sourcing.need.model import Need
from sourcing.springs import turned
from sourcing.springs.life import Making
from sourcing.springs.model import TorsionSpring
from sourcing.winding.doubts import COILS_DOUBT, RATE_DOUBT
from sourcing.winding.model import WindingPlan
from sourcing.winding.plan import plan_winding
from sourcing.winding.torsion.task import BENT_AT_MOST_DEG, LEGS_SET_DEG

from .cases import A_HANDLE, BENCH, planned, spool
from .test_simulated_bench import RUNS, WITHIN_POINTS
from .test_simulated_kinds import Bench, a_bench, a_torsion_spring, known_of
from .test_torsion import need as a_lid


def serves(bench: Bench, plan: WindingPlan, need: Need) -> float:
    """Whether one spring serves: legs near enough to be bent, room for the coil, all torques within their tolerance.

    Between 0 and 1 where it hangs on a clearance that the need does not know to a hundredth. The stress is that of the
    rate that is planned: a stiffer spring is mostly one of thicker wire, which bears more.
    """
    meant = plan.wanted
    assert isinstance(meant, TorsionSpring)
    assert meant.free_angle_deg is not None
    _, heated = a_torsion_spring(bench, plan)
    if abs(heated["free_angle_deg"] - meant.free_angle_deg) > BENT_AT_MOST_DEG:
        return 0.0
    off_deg = bench.random.gauss(0.0, LEGS_SET_DEG)
    spring = replace(
        meant,
        mean_diameter_mm=heated["mean_diameter_mm"],
        active_coils=meant.active_coils * meant.mean_diameter_mm / heated["mean_diameter_mm"],
    )
    stiffer = bench.random.gauss(0.0, RATE_DOUBT) + bench.random.gauss(0.0, COILS_DOUBT / meant.active_coils)
    rate = turned.rate_n_mm_per_deg(meant) * exp(stiffer)
    torques = ((point.torque_n_mm, rate * (point.at_deg + off_deg)) for point in need.turned)
    if not all(abs(got - (want.nominal or 0.0)) <= (want.plus or 0.0) for want, got in torques if want is not None):
        return 0.0
    return judge(spring, need, BENCH, Spread(making=Making.WOUND)).chance


@pytest.mark.parametrize(("need", "rods_mm"), [(a_lid(), BENCH.rods_mm), (A_HANDLE, (9.0,)), (A_HANDLE, ())])
def test_as_many_torsion_springs_serve_as_the_plan_says(need: Need, rods_mm: tuple[float, ...]) -> None:
    """Within 3 points over 2 000 springs, each of a wire of its own, on a good rod, a poor one and a turned one."""
    wire, random = spool(1.2), Random(str(rods_mm))
    plan, known = planned(plan_winding(need, wire, replace(BENCH, rods_mm=rods_mm))), known_of(wire)
    served = sum(serves(a_bench(random, known), plan, need) for _ in range(RUNS))
    assert served / RUNS == pytest.approx(plan.tries.first, abs=WITHIN_POINTS)
