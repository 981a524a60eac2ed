"""An extension spring that came out otherwise: coils for the rate, hooks for the length, the tension that is left."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.need.model import Need, Pocket
from sourcing.springs import pulled
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.stock.model import Bench
from sourcing.winding.extension.ends import hook_heights_mm
from sourcing.winding.extension.in_hand import hooked
from sourcing.winding.model import wire_of
from sourcing.winding.plan import plan_winding
from sourcing.winding.saving.coil import Coil, SenselessError
from sourcing.winding.saving.extension.bending import free_length_for_force_mm
from sourcing.winding.saving.extension.body import wanted_of
from sourcing.winding.saving.extension.diameter import came_out
from sourcing.winding.saving.extension.length import came_out_pitch, pulled_to
from sourcing.winding.saving.extension.tension import came_out_tension
from sourcing.winding.saving.extension.tension_ways import left_in_the_end

from .cases import BENCH, material, planned, point, spool, wanted

COLD = replace(BENCH, oven_c=None)
WIRE = spool(1.2)


def a_coil(bench: Bench = COLD, heated: bool = False, **changes: object) -> Coil:
    """The arm of a lamp: 14.5 N at 95 mm and 24 N at 120 mm."""
    lamp = {
        "pocket": Pocket(bore_mm=wanted(15.0)),
        "working": (point(120, 24), point(95, 14.5)),
        "hooks": Hooks.FULL_LOOP,
    }
    need = Need(job="arm", kind="extension", **{**lamp, **changes})  # type: ignore[arg-type]
    return Coil(need, bench, wire_of(WIRE), planned(plan_winding(need, WIRE, bench)), heated)


@pytest.fixture(scope="module")
def coil() -> Coil:
    return a_coil()


def outside_mm(coil: Coil) -> float:
    assert isinstance(coil.meant, ExtensionSpring)
    return coil.meant.outside_diameter_mm


def hand_checked() -> ExtensionSpring:
    """Hand-checked case 5 of the winding model: d 1.2, D 12, n 20, an initial tension of 6 N; 0.611 N/mm."""
    steel = material("music-wire")
    return ExtensionSpring(
        1.2, 12.0, 25.2 + 2 * 10.8, 20.0, 20.0, Hooks.FULL_LOOP, steel, 81500.0, 206000.0, 2060.0, 6.0
    )


def with_hand_checked(coil: Coil) -> Coil:
    spring = hand_checked()
    plan = replace(coil.plan, wanted=spring, finished=replace(coil.plan.finished, spring=spring))
    working = (point(66.8, 18.2), point(56.8, 12.1))
    return replace(coil, plan=plan, need=replace(coil.need, working=working))


def test_case_5_that_came_out_at_12_4_keeps_0_906_of_its_rate_and_18_13_coils_restore_it(coil: Coil):
    """(12/12.4)^3 = 0.9063; 20 * 0.9063 = 18.13 coils; the body is (18.13 + 1) 1.2 = 22.95 mm."""
    assert pulled.rate_n_per_mm(hand_checked()) == pytest.approx(0.611, abs=5e-4)
    saved = came_out(with_hand_checked(coil), 12.4 + 1.2)
    assert saved.rate_kept == pytest.approx(0.9063, abs=5e-5)
    assert "18.13 coils in the body give the rate that was meant" in " ".join(saved.said)


def test_one_coil_less_in_the_body_is_stiffer_and_a_wire_shorter():
    """Case 5: one coil pulled for a new loop makes 0.643 N/mm, and the body 1.2 mm shorter."""
    one_less = replace(hand_checked(), active_coils=19.0, total_coils=19.0)
    assert pulled.rate_n_per_mm(one_less) == pytest.approx(0.643, abs=5e-4)
    assert pulled.body_length_mm(hand_checked()) - pulled.body_length_mm(one_less) == pytest.approx(1.2)


@settings(deadline=None, max_examples=20)
@given(st.floats(-0.6, 0.6))
def test_cut_for_it_the_rate_is_the_wanted_one(off: float):
    coil = _COIL
    saved = came_out(coil, outside_mm(coil) + off)
    if saved.answer == "change":
        assert isinstance(saved.spring, ExtensionSpring)
        got, meant = (pulled.rate_n_per_mm(each) for each in (saved.spring, wanted_of(coil)))
        if any(said.startswith("Leave all of its spare turns in the body") for said in saved.said):
            assert meant < got < meant * saved.rate_kept
        else:
            assert got == pytest.approx(meant, rel=1e-9)
    assert saved.rate_kept == pytest.approx((1 + off / (outside_mm(coil) - 1.2)) ** -3)


_COIL = a_coil()


def test_a_coil_that_came_out_as_meant_is_kept_on_the_same_mandrel(coil: Coil):
    saved = came_out(coil, outside_mm(coil))
    assert saved.answer == "keep"
    assert saved.rate_kept == pytest.approx(1.0, abs=1e-9)
    assert saved.spring == wanted_of(coil)
    assert any("same mandrel" in said for said in saved.said)


@pytest.mark.parametrize("off", [0.9, -0.9])
def test_a_coil_further_off_wants_the_mandrel_moved_the_other_way(off: float):
    turned = a_coil(replace(COLD, rods_mm=()))
    saved = came_out(turned, outside_mm(turned) + off)
    assert saved.next_mandrel is not None
    assert saved.next_mandrel.diameter_mm is not None
    assert turned.plan.mandrel.diameter_mm is not None
    assert (saved.next_mandrel.diameter_mm - turned.plan.mandrel.diameter_mm) * off < 0.0


def test_a_coil_wider_than_its_bore_is_wound_again(coil: Coil):
    saved = came_out(coil, 15.2)
    assert saved.answer == "wind again"
    assert any(said.startswith("bore clearance does not hold") for said in saved.said)


def test_with_less_tension_a_shorter_spring_pulls_the_same_at_every_length():
    """F = F0 + R (L - L0): 3 N and 50 mm, 1 N and 46 mm, at 0.5 N/mm: 13 N at 70 mm, either way."""
    assert free_length_for_force_mm(70.0, 13.0, 1.0, 0.5) == 46.0
    assert 3.0 + 0.5 * (70.0 - 50.0) == 1.0 + 0.5 * (70.0 - 46.0) == 13.0


@settings(deadline=None, max_examples=20)
@given(st.floats(0.0, 4.0))
def test_hooks_stay_between_the_heights_that_their_kind_can_have(tension_n: float):
    spring = came_out_tension(_COIL, tension_n).spring
    assert isinstance(spring, ExtensionSpring)
    low, high = hook_heights_mm(spring.hooks, spring.inside_diameter_mm)
    assert low - 1e-9 <= pulled.hook_length_mm(spring) <= high + 1e-9


def test_the_tension_that_was_meant_is_kept(coil: Coil):
    saved = came_out_tension(coil, wanted_of(coil).initial_tension_n or 0.0)
    assert saved.answer == "keep"
    assert not any(said.startswith("The next one") for said in saved.said)


@pytest.mark.parametrize(("tension_n", "word"), [(0.0, "further back"), (6.0, "less over the last turn")])
def test_the_next_one_is_leaned_more_or_less(coil: Coil, tension_n: float, word: str):
    assert any(word in said for said in came_out_tension(coil, tension_n).said)


def test_hooks_are_bent_to_the_length_that_gives_the_forces_where_as_it_is_they_are_missed():
    tight = a_coil(working=(point(120, wanted(24, 1.2)), point(95, wanted(14.5, 0.7))))
    saved = came_out_tension(tight, 0.6)
    assert saved.answer == "change"
    assert isinstance(saved.spring, ExtensionSpring)
    assert saved.spring.free_length_mm < wanted_of(tight).free_length_mm
    assert any("between the insides" in said or "between their insides" in said for said in saved.said)


def test_heat_to_come_takes_a_quarter_to_a_half_of_a_tension_and_leaves_that_in_doubt():
    hot = left_in_the_end(a_coil(BENCH), 4.0)
    assert (hot.newtons, hot.sd_n) == pytest.approx((4.0 * (1 - 0.375), 4.0 * 0.25 / 4))
    assert left_in_the_end(a_coil(BENCH, heated=True), 4.0).newtons == 4.0
    assert left_in_the_end(a_coil(COLD), 4.0).newtons == 4.0


def test_heat_to_come_is_between_the_diameter_measured_and_the_one_judged():
    for coil, change in ((a_coil(BENCH), -0.0125), (a_coil(BENCH, heated=True), 0.0), (a_coil(COLD), 0.0)):
        assert came_out(coil, 13.3).spring.mean_diameter_mm == pytest.approx(12.1 * (1.0 + change))


def test_coils_that_touch_are_kept_and_coils_that_stand_apart_hold_nothing(coil: Coil):
    assert came_out_pitch(coil, 1.2).answer == "keep"
    saved = came_out_pitch(coil, 1.3)
    assert isinstance(saved.spring, ExtensionSpring)
    assert saved.spring.initial_tension_n == 0.0
    longer = 0.1 * wanted_of(coil).total_coils
    assert saved.said[0] == "Its coils stand 0.10 mm apart: it can be saved, as told below."
    assert f"Its body is {longer:.2f} mm longer" in saved.said[1]
    assert came_out_pitch(coil, 1.8).said[0].startswith("Its coils stand 0.60 mm apart: wind it again")
    with pytest.raises(SenselessError, match="less than the wire"):
        came_out_pitch(coil, 1.0)


def test_a_spring_that_pulled_out_of_its_length_has_set_and_the_next_one_is_hooked_shorter(coil: Coil):
    free_mm = wanted_of(coil).free_length_mm
    assert pulled_to(coil, free_mm + 0.1).answer == "keep"
    saved = pulled_to(coil, free_mm + 1.5)
    assert any("bend its hooks 1.50 mm nearer together" in said for said in saved.said)
    assert pulled_to(coil, free_mm - 1.0).answer == "keep"
    assert pulled_to(coil, free_mm - 8.0).answer == "change"
    with pytest.raises(SenselessError, match="shorter than its body"):
        pulled_to(coil, 10.0)


def test_a_free_length_beyond_what_hooks_reach_is_the_nearest_that_they_do():
    spring = hand_checked()
    body_mm, inside_mm = pulled.body_length_mm(spring), spring.inside_diameter_mm
    assert hooked(spring, 1000.0).free_length_mm == pytest.approx(body_mm + 2 * 1.1 * inside_mm)
    assert hooked(spring, 1.0).free_length_mm == pytest.approx(body_mm + 2 * 0.8 * inside_mm)
    assert hooked(spring, spring.free_length_mm) == spring


def test_a_coil_too_far_off_to_be_chance_is_told_as_that_and_one_within_it_is_not(coil: Coil):
    far, near = (came_out(coil, outside_mm(coil) + off) for off in (1.5, 0.2))
    assert any("hardly chance" in said for said in far.said)
    assert not any("hardly chance" in said for said in near.said)


def plugged(**changes: object) -> Coil:
    return a_coil(hooks=Hooks.THREADED_PLUG, **changes)


def test_of_a_spring_with_plugs_what_is_between_their_eyes_is_told_and_nothing_of_hooks():
    coil = plugged(working=(point(120, wanted(24, 0.5)), point(95, wanted(14.5, 0.3))))
    spring = wanted_of(coil)
    tension_n, free_mm = spring.initial_tension_n or 0.0, spring.free_length_mm
    answers = (
        came_out_tension(coil, tension_n + 1.0),
        came_out_tension(coil, 0.0),
        came_out_pitch(coil, 1.5),
        pulled_to(coil, free_mm + 3.0),
        pulled_to(coil, free_mm - 3.0),
        came_out(coil, outside_mm(coil) + 0.3),
        came_out(coil, outside_mm(coil) - 0.3),
    )
    for saved in answers:
        said = " ".join(saved.said)
        assert "hooks" not in said
        assert "insides" not in said
    for saved in answers[:-2]:
        assert "between the eyes" in " ".join(saved.said) or "between their eyes" in " ".join(saved.said)


def test_a_coil_with_plugs_that_came_out_too_large_has_its_plugs_screwed_deeper():
    coil = plugged(working=(point(120, wanted(24, 0.5)), point(95, wanted(14.5, 0.3))))
    saved = came_out(coil, outside_mm(coil) + 0.3)
    assert saved.answer == "change"
    assert isinstance(saved.spring, ExtensionSpring)
    coils = f"{saved.spring.active_coils:.2f} coils between its plugs give the rate that was meant"
    assert f"Screw its plugs so deep that {coils}" in " ".join(saved.said)
    assert saved.spring.total_coils == pytest.approx(saved.spring.active_coils + 6.0)


def test_coils_that_it_has_not_are_not_told_as_just_so():
    """Much too small it would want more coils than were wound; after heat its spare turns are off."""
    coil = a_coil(working=(point(120, wanted(24, 3.0)), point(95, wanted(14.5, 1.8))))
    few = came_out(coil, outside_mm(coil) - 0.9)
    assert isinstance(few.spring, ExtensionSpring)
    assert not any(said.startswith("Just so") for said in few.said)
    (deed,) = [said for said in few.said if said.startswith("Leave all of its spare turns in the body")]
    assert f"{few.spring.active_coils:.2f} coils in the body give" in deed
    assert few.fit.fits == "yes"
    tight = (point(120, wanted(24, 0.9)), point(95, wanted(14.5, 0.5)))
    before, after = (a_coil(BENCH, heated, working=tight) for heated in (False, True))
    assert came_out(before, outside_mm(before) - 0.2).answer == "change"
    late = came_out(after, outside_mm(after) - 0.2)
    assert isinstance(late.spring, ExtensionSpring)
    assert late.spring.total_coils == wanted_of(after).total_coils
    assert "spare ones too" not in " ".join(late.said)
    kept = came_out(replace(coil, heated=True), outside_mm(coil) - 0.2)
    assert kept.answer == "keep"
    assert not any("would want" in said or "Just so" in said for said in kept.said)
