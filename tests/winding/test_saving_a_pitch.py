"""What a pitch measured alone says of the next coil: by how much its coil opened is known by the plan only."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

import pytest

from sourcing.need.model import Need
from sourcing.springs.model import CompressionSpring, ConicalSpring
from sourcing.winding.doubts import opening_sd
from sourcing.winding.measuring import LENGTH_DOUBT, PITCH_SD_MM
from sourcing.winding.model import wire_of
from sourcing.winding.pitch_share import PITCH_SHARE, PITCH_SHARE_SD
from sourcing.winding.plan import plan_winding
from sourcing.winding.saving.coil import Coil
from sourcing.winding.saving.kinds import saved

from .cases import BENCH, need, planned, spool
from .test_saving_a_cone import NEED as A_BUTTON

COLD = replace(BENCH, oven_c=None)


def plan_opens(coil: Coil) -> tuple[float, float]:
    """D_f/D_m by the plan, of a cone halfway between its ends, and the standard deviation of it."""
    spring, mandrel = coil.plan.finished.spring, coil.plan.mandrel
    if isinstance(spring, ConicalSpring):
        mandrel_mm = (mandrel.profile[0].diameter_mm + mandrel.profile[-1].diameter_mm) / 2.0
        mean_mm = (spring.mean_diameter_small_mm + spring.mean_diameter_large_mm) / 2.0
    else:
        assert isinstance(spring, CompressionSpring)
        assert mandrel.diameter_mm is not None
        mandrel_mm, mean_mm = mandrel.diameter_mm, spring.mean_diameter_mm
    opening = mean_mm / (mandrel_mm + coil.wire_mm)
    return opening, opening * opening_sd(coil.known_then(), mandrel_mm)


@pytest.mark.parametrize(("wish", "wire_mm", "times"), [(need(), 0.8, 1.15), (A_BUTTON, 0.9, 1.2)])
def test_a_pitch_alone_moves_the_next_one_by_less_where_the_opening_of_its_coil_is_in_doubt(
    wish: Need, wire_mm: float, times: float
):
    """Untried stainless wire: a = (p_f/p_m - 1)/(O - 1), u_a by its parts, and shares weighed by 1/u^2 (by hand)."""
    wire = spool(wire_mm, name="stainless-1.4310")
    coil = Coil(wish, COLD, wire_of(wire), planned(plan_winding(wish, wire, COLD)))
    laid_mm, (opening, doubt) = coil.plan.pitch_on_mandrel_mm, plan_opens(coil)
    share = (times - 1.0) / (opening - 1.0)
    laid_sd_mm = hypot(PITCH_SD_MM, LENGTH_DOUBT * (laid_mm - wire_mm))
    of_pitch = hypot(times * laid_sd_mm, PITCH_SD_MM) / laid_mm / (opening - 1.0)

    def next_mm(of_opening: float) -> str:
        weight = PITCH_SHARE_SD**2 / (PITCH_SHARE_SD**2 + of_pitch**2 + of_opening**2)
        moved = PITCH_SHARE + weight * (share - PITCH_SHARE)
        return f"{laid_mm * (1.0 + PITCH_SHARE * (opening - 1.0)) / (1.0 + moved * (opening - 1.0)):.2f} mm"

    answer = saved(coil, {"pitch": times * laid_mm})
    assert answer is not None
    (said,) = [each for each in answer.said if each.startswith("The next one: ")]
    assert f"a pitch of {next_mm(share * doubt / (opening - 1.0))} on the mandrel" in said
    assert next_mm(0.0) not in said
