"""A torsion spring that came out otherwise: its rate stays, its legs have turned, and the crank stops elsewhere."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.quantities import show_angle
from sourcing.springs import turned
from sourcing.springs.model import Leg, TorsionSpring
from sourcing.stock.model import Bench
from sourcing.winding.model import wire_of
from sourcing.winding.plan import plan_winding
from sourcing.winding.saving.coil import Coil, Saved, SenselessError
from sourcing.winding.saving.torsion.answer import came_out, came_out_angle, came_out_with_angle
from sourcing.winding.saving.torsion.body import judged, stop_deg, wanted_of
from sourcing.winding.torsion.in_hand import turned_on_deg, with_coils
from sourcing.winding.torsion.task import BENT_AT_MOST_DEG

from .cases import BENCH, material, planned, spool, wanted
from .test_torsion import need, point

COLD = replace(BENCH, oven_c=None)
WIRE = spool(1.2)


def a_coil(bench: Bench = COLD, heated: bool = False, **changes: object) -> Coil:
    wanted = need(**changes)
    return Coil(wanted, bench, wire_of(WIRE), planned(plan_winding(wanted, WIRE, bench)), heated)


COIL = a_coil()


def meant(coil: Coil) -> TorsionSpring:
    assert isinstance(coil.meant, TorsionSpring)
    return coil.meant


def off_by(coil: Coil, off_deg: float) -> float:
    """The outside diameter of a coil whose legs stand so much further on: D' = D n/(n + off/360)."""
    spring = meant(coil)
    return spring.mean_diameter_mm * spring.active_coils / (spring.active_coils + off_deg / 360.0) + 1.2


def test_case_6_that_came_out_at_12_5_has_4_8_coils_its_legs_72_deg_short_and_its_rate_as_it_was():
    """Hand-checked case 6 of the winding model: d 1.5, D 12, n 5: 4.74 N·mm/deg, with two 30 mm legs 4.29.

    5 * 12/12.5 = 4.8 coils; 360 * 0.2 = 72 deg.
    """
    steel, leg = material("music-wire"), Leg(30.0)
    spring = TorsionSpring(1.5, 12.0, 5.0, steel, 206000.0, 2000.0, leg_1=leg, leg_2=leg, free_angle_deg=90.0)
    came = with_coils(spring, 12.5, 5.0 * 12.0 / 12.5)
    assert came.active_coils == pytest.approx(4.8)
    assert turned_on_deg(spring, came) == pytest.approx(-72.0)
    assert came.free_angle_deg == pytest.approx(18.0)
    assert turned.rate_n_mm_per_deg(spring) == pytest.approx(4.29, abs=5e-3)
    assert turned.rate_n_mm_per_deg(came) == pytest.approx(turned.rate_n_mm_per_deg(spring), rel=1e-9)
    bare = replace(spring, leg_1=None, leg_2=None)
    assert turned.rate_n_mm_per_deg(bare) == pytest.approx(4.74, abs=5e-3)


def came_out_with_its_legs(coil: Coil, off_deg: float) -> Saved:
    """The answer to a coil of which both were measured, its legs so much further on than meant."""
    return came_out_with_angle(coil, off_by(coil, off_deg), ((meant(coil).free_angle_deg or 0.0) + off_deg) % 360.0)


@settings(deadline=None, max_examples=20)
@given(st.floats(-60.0, 60.0))
def test_however_far_it_opened_its_rate_is_the_one_that_was_meant(off_deg: float):
    saved = came_out(COIL, off_by(COIL, off_deg))
    assert saved.rate_kept == pytest.approx(1.0, rel=1e-9)


@settings(deadline=None, max_examples=20)
@given(st.floats(-100.0, 100.0))
def test_diameter_and_angle_of_one_coil_give_one_answer(off_deg: float):
    outside_mm, angle_deg = off_by(COIL, off_deg), ((meant(COIL).free_angle_deg or 0.0) + off_deg) % 360.0
    by_angle, by_both = came_out_angle(COIL, angle_deg), came_out_with_angle(COIL, outside_mm, angle_deg)
    by_diameter = came_out(COIL, outside_mm)
    assert by_angle.answer == by_both.answer
    assert by_diameter.answer == "measure first"
    assert by_angle.spring.active_coils == pytest.approx(by_diameter.spring.active_coils)
    assert by_angle.spring.mean_diameter_mm == pytest.approx(by_diameter.spring.mean_diameter_mm)
    assert not any("do not belong" in said for said in by_both.said)


def test_a_coil_that_came_out_as_meant_is_kept():
    spring = meant(COIL)
    for saved in (came_out_with_its_legs(COIL, 0.0), came_out_angle(COIL, spring.free_angle_deg or 0.0)):
        assert saved.answer == "keep"
        assert saved.next_stop_deg == pytest.approx(stop_deg(COIL), abs=1e-6)
        assert not any("stop the crank" in said for said in saved.said)


@pytest.mark.parametrize(
    ("off_deg", "answer"), [(-10.0, "keep"), (-30.0, "change"), (30.0, "change"), (-60.0, "wind again")]
)
def test_legs_are_bent_by_45_deg_at_most(off_deg: float, answer: str):
    """Within 15 deg of what is wanted they may stand as they are; beyond 45 deg the coil is wound again."""
    saved = came_out_with_its_legs(COIL, off_deg)
    assert saved.answer == answer
    assert (abs(off_deg) > BENT_AT_MOST_DEG) == any("at most (assumed)" in said for said in saved.said)


def test_what_the_list_takes_of_a_diameter_is_what_rod_and_bore_bear_and_legs_have_their_own_row():
    (row,) = (row for row in COIL.plan.accept if row.figure == "outside_diameter_mm")
    assert row.low is not None
    assert row.high is not None
    beyond_mm = off_by(COIL, -1.5 * BENT_AT_MOST_DEG)
    assert row.low < off_by(COIL, 1.5 * BENT_AT_MOST_DEG) < beyond_mm < row.high
    saved = came_out_with_angle(COIL, beyond_mm, ((meant(COIL).free_angle_deg or 0.0) - 67.5) % 360.0)
    assert saved.answer == "wind again"


def test_on_the_same_mandrel_the_stop_alone_is_told_and_no_other_turns():
    saved = came_out_with_its_legs(COIL, 20.0)
    assert any("stop the crank" in said for said in saved.said)
    same = saved.next_mandrel is not None and saved.next_mandrel.diameter_mm == COIL.plan.mandrel.diameter_mm
    assert any(said.startswith("Or on another: ") for said in saved.said) is not same
    assert sum(said.startswith("The next one") for said in saved.said) == 1


@pytest.mark.parametrize(("off_deg", "word"), [(-60.0, "later"), (50.0, "sooner")])
def test_the_crank_stops_by_so_much_later_or_sooner_that_the_coil_once_open_brings_the_legs_back(
    off_deg: float, word: str
):
    """Of what is laid more, the open coil keeps as many coils as it is wider: by the wire, n = N D_m / D_f."""
    saved, planned_deg = came_out_with_its_legs(COIL, off_deg), stop_deg(COIL)
    assert planned_deg is not None
    assert isinstance(saved.spring, TorsionSpring)
    kept = saved.spring.active_coils / COIL.plan.turns_to_wind
    assert 0.5 < kept < 1.0
    assert saved.next_stop_deg == pytest.approx((planned_deg - off_deg / kept) % 360.0)
    assert any(f"{show_angle(abs(off_deg) / kept)} {word}, at" in said for said in saved.said)


def test_the_stop_is_the_one_that_the_sheet_says():
    assert any(f"points {show_angle(stop_deg(COIL) or 0.0)} on from where leg 1" in step for step in COIL.plan.steps)


def test_a_coil_that_no_longer_clears_its_rod_wound_up_is_wound_again_on_a_larger_mandrel():
    snug = replace(COIL, plan=planned(plan_winding(COIL.need, WIRE, COLD, 5.5)))
    saved = came_out(snug, meant(snug).outside_diameter_mm - 0.5)
    assert saved.answer == "wind again"
    assert any(said.startswith("rod clearance does not hold") for said in saved.said)
    assert saved.next_mandrel is not None
    assert (saved.next_mandrel.diameter_mm or 0.0) > 5.5


def test_a_diameter_and_an_angle_of_two_coils_are_measured_again_and_nothing_else_is_told():
    spring = meant(COIL)
    saved = came_out_with_angle(COIL, spring.outside_diameter_mm, ((spring.free_angle_deg or 0.0) + 150.0) % 360.0)
    assert saved.answer == "measure first"
    assert saved.fit is None
    assert saved.said[1].startswith("Diameter and angle do not belong to one coil")
    assert len(saved.said) == 2


@pytest.mark.parametrize(
    ("off_deg", "within_deg", "answer"),
    [
        (0.0, 25.0, "keep"),
        (0.0, 15.0, "measure first"),
        (20.0, 15.0, "measure first"),
        (-50.0, 15.0, "measure first"),
        (80.0, 15.0, "wind again"),
    ],
)
def test_legs_that_heat_is_still_to_turn_are_heated_before_they_decide(off_deg: float, within_deg: float, answer: str):
    """Some six coils turn on by 11 to 44 deg in music wire's heat, so by 16 deg more or less than expected."""
    coil = a_coil(BENCH, free_angle_deg=wanted(180.0, within_deg))
    spring = meant(coil)
    saved = came_out_angle(coil, ((spring.free_angle_deg or 0.0) + off_deg) % 360.0)
    assert saved.answer == answer
    coils = (wanted_of(coil).active_coils + off_deg / 360.0) * (1.0 + coil.change_to_come)
    turns = [360.0 * coils * (1.0 / (1.0 + change) - 1.0) for change in (-0.005, -0.02)]
    low, high = (show_angle(turn) for turn in turns)
    told = any(
        f"where its legs stand then: heat turns them on by {low} to {high}, the way" in said for said in saved.said
    )
    assert told is (": heat it first, " in saved.said[0]) is (answer == "measure first")
    if told:
        assert not any("Bend its legs" in said or "tolerances off" in said for said in saved.said)
    after = came_out_angle(replace(coil, heated=True), ((wanted_of(coil).free_angle_deg or 0.0) + off_deg) % 360.0)
    assert after.answer != "measure first"


def test_heat_to_come_is_between_what_was_measured_and_what_is_judged():
    for coil, change in ((a_coil(BENCH), -0.0125), (a_coil(BENCH, heated=True), 0.0), (a_coil(COLD), 0.0)):
        outside_mm = meant(coil).outside_diameter_mm
        spring = came_out(coil, outside_mm).spring
        assert spring.mean_diameter_mm == pytest.approx((outside_mm - 1.2) * (1.0 + change))
        assert spring.mean_diameter_mm == pytest.approx(wanted_of(coil).mean_diameter_mm, rel=1e-3)


def test_where_the_need_names_no_angle_legs_may_stand_as_they_like_and_an_angle_is_refused():
    free = a_coil(free_angle_deg=None)
    assert came_out(free, meant(free).outside_diameter_mm + 0.1).answer == "keep"
    with pytest.raises(SenselessError, match="names no free_angle"):
        came_out_angle(free, 90.0)


def test_a_coil_smaller_than_its_mandrel_and_wire_is_refused():
    with pytest.raises(SenselessError, match="less than its mandrel and two wires"):
        came_out(COIL, 6.0)


@pytest.mark.parametrize(
    ("off_deg", "verdict"),
    [
        (-10.0, "keep it as it is"),
        (-30.0, "it can be saved, as told below"),
        (-60.0, "wind it again; bending its legs does not save it"),
    ],
)
def test_whatever_was_measured_the_first_sentence_has_the_verdict(off_deg: float, verdict: str):
    angle_deg = ((meant(COIL).free_angle_deg or 0.0) + off_deg) % 360.0
    of_both, by_diameter = came_out_with_its_legs(COIL, off_deg), came_out(COIL, off_by(COIL, off_deg))
    for saved in (came_out_angle(COIL, angle_deg), of_both):
        first = saved.said[0].replace(", though its chance is low", "")
        assert re.fullmatch(rf"It.* came out at .* instead of .*: {verdict}\.", first)
    assert by_diameter.said[0].endswith(
        ": its diameter serves; measure its legs, and ask again with --came-out-angle beside it."
    )
    assert "outside" in of_both.said[0]
    assert f"legs came out at {show_angle(angle_deg)}" in of_both.said[0]


def legs_told(said: tuple[str, ...]) -> list[str]:
    return [each for each in said if "its legs should stand" in each]


@pytest.mark.parametrize("off_deg", [-60.0, -30.0, 50.0])
def test_legs_of_which_the_diameter_alone_was_measured_are_told_as_worked_out_from_it(off_deg: float):
    outside_mm, angle_deg = off_by(COIL, off_deg), ((meant(COIL).free_angle_deg or 0.0) + off_deg) % 360.0
    (told,) = legs_told(came_out(COIL, outside_mm).said)
    assert f"at {show_angle(angle_deg)} instead of" in told
    assert "By its diameter" in told
    assert told.endswith(": that is worked out.")
    for measured in (came_out_angle(COIL, angle_deg), came_out_with_angle(COIL, outside_mm, angle_deg)):
        assert legs_told(measured.said) == []
        assert any(f"legs came out at {show_angle(angle_deg)}" in said for said in measured.said)


def test_legs_that_may_stand_as_they_like_and_legs_as_meant_are_not_worked_out():
    free = a_coil(free_angle_deg=None)
    assert legs_told(came_out(free, meant(free).outside_diameter_mm + 0.3).said) == []
    assert legs_told(came_out(COIL, meant(COIL).outside_diameter_mm).said) == []


def hardly_chance(said: tuple[str, ...]) -> bool:
    return any("hardly chance" in each for each in said)


@pytest.mark.parametrize("off_deg", [-170.0, -150.0, -60.0, -20.0, 20.0, 60.0, 150.0, 170.0])
def test_legs_too_far_off_to_be_chance_are_told_as_a_diameter_so_far_off_is(off_deg: float):
    by_angle = came_out_angle(COIL, ((meant(COIL).free_angle_deg or 0.0) + off_deg) % 360.0)
    assert hardly_chance(by_angle.said) is hardly_chance(came_out(COIL, off_by(COIL, off_deg)).said)
    assert hardly_chance(by_angle.said) is (abs(off_deg) > 100.0)


def test_the_stop_of_a_coil_that_is_hardly_chance_waits_for_another_coil():
    for off_deg, agrees in ((-150.0, ", if that agrees"), (-60.0, "")):
        by_angle = came_out_angle(COIL, ((meant(COIL).free_angle_deg or 0.0) + off_deg) % 360.0)
        for saved in (by_angle, came_out_with_its_legs(COIL, off_deg)):
            begins = f"The next one{agrees}, on the same mandrel: stop the crank"
            assert any(said.startswith(begins) for said in saved.said)


def test_legs_that_are_bent_on_a_spring_that_then_serves_only_nearly_are_told_as_that_first():
    """DIN 2194 wants two active coils at least: one planned with hardly more has fewer once it opens further."""
    spring = replace(wanted_of(COIL), active_coils=2.02)
    finished = replace(COIL.plan.finished, spring=spring)
    stiff = turned.rate_n_mm_per_deg(spring)
    wish = need(turned=(point(10.0, 10.0 * stiff), point(20.0, 20.0 * stiff)))
    coil = replace(COIL, need=wish, plan=replace(COIL.plan, wanted=spring, finished=finished))
    coil = replace(coil, plan=replace(coil.plan, fit=judged(coil, spring)))
    short, long = (came_out_angle(coil, (spring.free_angle_deg or 0.0) + off_deg) for off_deg in (-20.0, 20.0))
    assert short.answer == long.answer == "change"
    assert ": only a near fit can be made of it" in short.said[0]
    assert any(said.startswith("active coils does not hold") for said in short.said)
    assert long.said[0].endswith(": it can be saved, as told below, the near fit that was planned.")
