"""The next coil goes by the mandrel of the spring that was meant; another that is then planned is told as another."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.need.model import Pocket
from sourcing.quantities import show_wire_length
from sourcing.springs.model import CompressionSpring, TorsionSpring
from sourcing.winding.saving.coil import Coil, Saved
from sourcing.winding.saving.compression import diameter as cylinder
from sourcing.winding.saving.torsion import answer as torsion
from sourcing.winding.torsion.in_hand import as_it_came

from . import test_saving_torsion
from .cases import BENCH, point, wanted
from .test_saving import COLD, a_coil

ANOTHER = "Or another spring, which the sheet would rather plan by then, "

ONE_FORCE = a_coil(BENCH, pocket=Pocket(wanted(15.0)), working=(point(18, 18),))
"""One force leaves the diameter open, so that another rod on hand soon serves as well."""

SOFT = a_coil(COLD, pocket=Pocket(wanted(18.0)), working=(point(30, 3), point(18, 6)))

LEGS = test_saving_torsion.a_coil()


def came_out(coil: Coil, share: float) -> Saved:
    """The answer for a coil so much larger outside than meant, its legs where that leaves them."""
    meant = coil.meant
    assert isinstance(meant, CompressionSpring | TorsionSpring)
    outside_mm = meant.outside_diameter_mm * (1.0 + share)
    if isinstance(meant, CompressionSpring):
        return cylinder.came_out(coil, outside_mm)
    came = as_it_came(meant, outside_mm - meant.wire_diameter_mm)
    return torsion.came_out_with_angle(coil, outside_mm, came.free_angle_deg or 0.0)


def led_to_mm(saved: Saved) -> float:
    """The mandrel of the next coil, as it is told first and as it is kept."""
    assert saved.next_mandrel is not None
    mandrel_mm = saved.next_mandrel.diameter_mm
    assert mandrel_mm is not None
    told, *others = [said for said in saved.said if said.startswith(("The next one", "Or on another: "))]
    if "stop the crank" in told and others:
        (told,) = others
    assert f"{mandrel_mm:.2f} mm" in told
    return mandrel_mm


@pytest.mark.parametrize("share", [-0.05, -0.03, -0.02, 0.02, 0.03, 0.05])
@pytest.mark.parametrize("coil", [ONE_FORCE, SOFT, LEGS], ids=["one force", "soft", "legs"])
def test_a_coil_too_small_is_never_led_to_a_smaller_mandrel_nor_one_too_large_to_a_larger(coil: Coil, share: float):
    was_mm = coil.plan.mandrel.diameter_mm
    assert was_mm is not None
    assert (led_to_mm(came_out(coil, share)) - was_mm) * share <= 0.0


@pytest.mark.parametrize("coil", [ONE_FORCE, SOFT], ids=["one force", "soft"])
def test_the_mandrel_that_leads_gives_the_diameter_that_was_meant_by_what_the_coil_taught(coil: Coil):
    meant = coil.meant
    assert isinstance(meant, CompressionSpring)
    trial = coil.trial(coil.plan.mandrel.diameter_mm or 0.0, meant.outside_diameter_mm * 0.95)
    gives_mm = coil.known_then(trial).finished_mean_mm(led_to_mm(came_out(coil, -0.05)))
    assert gives_mm == pytest.approx(meant.mean_diameter_mm, rel=0.01)


@pytest.mark.parametrize(
    ("left_mm", "ends"),
    [(5000.0, "by its record."), (1200.0, "are not counted off yet."), (100.0, "too little.")],
)
def test_the_wire_of_the_next_coil_is_told_beside_what_its_spool_has_left(left_mm: float, ends: str):
    spool = replace(SOFT.spool, length_left_mm=left_mm)
    saved = came_out(replace(SOFT, wire=replace(SOFT.wire, spool=spool)), -0.03)
    (told,) = [said for said in saved.said if said.startswith("It wants ")]
    assert f"; {spool.id} has {show_wire_length(left_mm, 'mm')} by its record" in told
    assert told.endswith(ends)


def test_another_spring_that_is_then_planned_is_told_as_one_with_what_it_measures():
    saved = came_out(ONE_FORCE, -0.03)
    at = next(i for i, said in enumerate(saved.said) if said.startswith("The next one"))
    told = saved.said[at + 1]
    meant = ONE_FORCE.meant
    assert isinstance(meant, CompressionSpring)
    assert told.startswith(ANOTHER)
    assert f"outside instead of {meant.outside_diameter_mm:.2f} mm: a rod of 3.00 mm instead of 4.00 mm" in told


def test_a_spring_as_meant_on_another_mandrel_is_not_told_as_another():
    room, firm = Pocket(wanted(11.0), wanted(6.0)), (point(24, 9), point(14, 22))
    coil = a_coil(replace(COLD, rods_mm=()), pocket=room, working=firm)
    saved = came_out(coil, -0.03)
    assert led_to_mm(saved) > (coil.plan.mandrel.diameter_mm or 0.0)
    assert not any(said.startswith(ANOTHER) for said in saved.said)


@pytest.mark.parametrize("share", [-0.012, -0.006, 0.006, 0.012])
def test_no_mandrel_is_turned_anew_for_a_twentieth_of_a_millimetre_that_makes_nothing_surer(share: float):
    room, firm = Pocket(wanted(11.0), wanted(6.0)), (point(24, 9), point(14, 22))
    coil = a_coil(replace(COLD, rods_mm=()), pocket=room, working=firm)
    was_mm = coil.plan.mandrel.diameter_mm
    assert was_mm is not None
    saved = came_out(coil, share)
    led_mm = led_to_mm(saved)
    assert led_mm == was_mm or abs(led_mm - was_mm) > 0.06
    assert any("the same mandrel" in said for said in saved.said) is (led_mm == was_mm)
    assert led_mm == was_mm or abs(share) > 0.01
