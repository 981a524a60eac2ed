"""An extension spring whose initial tension came out otherwise, alone or with its diameter."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.springs import pulled
from sourcing.springs.model import ExtensionSpring
from sourcing.winding.extension.tension_words import LEAN_MORE, NOT_PUT_IN, READ_AGAIN, take_away
from sourcing.winding.saving.coil import Coil, Saved
from sourcing.winding.saving.extension.body import wanted_of
from sourcing.winding.saving.extension.diameter import came_out, came_out_with_tension
from sourcing.winding.saving.extension.tension import came_out_tension

from .cases import BENCH, point, wanted
from .test_accepted_is_kept import at
from .test_saving_extension import a_coil, outside_mm

TIGHT = {"working": (point(120, wanted(24, 1.2)), point(95, wanted(14.5, 0.7)))}

COIL = a_coil(**TIGHT)

MEANT_N = wanted_of(COIL).initial_tension_n or 0.0

PULL_IT = take_away(wanted_of(COIL), COIL.need, COIL.units)


def on_the_sheet(coil: Coil) -> str:
    """What the sheet's own check of the initial tension says to do."""
    return next(row.if_not for row in coil.plan.accept if row.figure == "initial_tension_n")


def force_at(saved: Saved, length_mm: float) -> float:
    assert isinstance(saved.spring, ExtensionSpring)
    rate = pulled.rate_n_per_mm(saved.spring)
    return pulled.force_n(saved.spring, length_mm, rate, saved.spring.initial_tension_n or 0.0)


def whole(saved: Saved) -> str:
    return " ".join(saved.said)


@pytest.mark.parametrize(("more_n", "doubted"), [(1.0, False), (3.0, True), (10.0, True)])
def test_of_too_much_a_pull_takes_away_as_the_sheet_says_and_the_verdict_hangs_on_that(more_n: float, doubted: bool):
    """More than a hand can wind is read again first."""
    saved = came_out_tension(COIL, MEANT_N + more_n)
    assert f"Too much: {PULL_IT}" in on_the_sheet(COIL)
    assert f"Too much: {PULL_IT}" in whole(saved)
    assert saved.answer == "measure first"
    assert saved.fit is None
    (verdict,) = [said for said in saved.said if "t can be saved if a pull takes enough of that away (" in said]
    assert " or less will do); else " in verdict
    assert verdict.startswith("If it reads so once more, ") is doubted
    assert ("else wind it again" in verdict) is any(said.endswith(": wind it again.") for said in saved.said[3:])


def test_of_too_much_it_is_told_how_little_will_do_as_the_list_has_it():
    (row,) = (row for row in COIL.plan.accept if row.figure == "initial_tension_n")
    assert row.high is not None
    assert f"enough of that away ({row.high:.1f} N or less will do); else" in whole(
        came_out_tension(COIL, MEANT_N + 1.0)
    )
    assert came_out_tension(COIL, row.high).answer == "keep"


LAMP = a_coil(BENCH, heated=True, pull_to_fit_mm=128.0, working=(at(120.0, 24.0, 0.12), at(95.0, 14.5, 0.12)))
"""The lamp's arm: what it pulls is wanted within 12 %, so that 16.24 N is the most at 95 mm."""


def reach_mm(coil: Coil) -> float:
    """How long it is between loops bent as high as loops are: 1.1 of the inside diameter, twice, on its body."""
    spring = wanted_of(coil)
    return pulled.body_length_mm(spring) + 2 * 1.1 * spring.inside_diameter_mm


def bent_as_far_as_it_goes_n(coil: Coil, tension_n: float) -> float:
    """F = F0 + R (95 - L0) with the hooks as high as they go."""
    return tension_n + pulled.rate_n_per_mm(wanted_of(coil)) * (95.0 - reach_mm(coil))


@pytest.mark.parametrize(("more_n", "verdict"), [(2.0, "keep it so"), (3.1, "a near fit"), (6.5, "wind it again")])
def test_what_stays_wants_a_length_that_is_told_with_how_near_hooks_reach_it_and_what_is_off_then(
    more_n: float, verdict: str
):
    spring = wanted_of(LAMP)
    tension_n = (spring.initial_tension_n or 0.0) + more_n
    said = whole(came_out_tension(LAMP, tension_n))
    just_mm = spring.free_length_mm + more_n / pulled.rate_n_per_mm(spring)
    assert just_mm > reach_mm(LAMP) + 0.5
    assert f"{just_mm:.1f} mm between its hooks would give the forces that were meant" in said
    assert f"they reach {reach_mm(LAMP):.1f} mm at most" in said
    pulls_n = bent_as_far_as_it_goes_n(LAMP, tension_n)
    (bent,) = re.findall(r"Bent so far it pulls ([\d.]+) N at 95.0 mm, (.+?): (.+?)[.,]", said)
    assert float(bent[0]) == pytest.approx(pulls_n, abs=0.051)
    if pulls_n <= 1.12 * 14.5:
        assert bent[1] == "within what is wanted"
    else:
        (off, bound) = re.findall(r"([\d.]+) N more than the most that is wanted \(([\d.]+) N\)", bent[1])[0]
        assert float(off) == pytest.approx(pulls_n - 1.12 * 14.5, abs=0.051)
        assert float(bound) == pytest.approx(1.12 * 14.5, abs=0.051)
    assert bent[2].startswith(verdict)


def test_hooks_that_reach_make_up_for_what_stays_by_the_very_length_that_gives_the_forces():
    tighter = a_coil(working=(at(120.0, 24.0, 0.02), at(95.0, 14.5, 0.02)))
    spring = wanted_of(tighter)
    just_mm = spring.free_length_mm + 0.5 / pulled.rate_n_per_mm(spring)
    assert just_mm < reach_mm(tighter)
    said = whole(came_out_tension(tighter, (spring.initial_tension_n or 0.0) + 0.5))
    assert f"bend its hooks to {just_mm:.1f} mm between their insides: so it gives the forces that were meant" in said
    assert "wind it again" not in said


def test_the_pull_goes_past_the_greatest_length_and_not_past_the_one_that_it_stands():
    spring = wanted_of(COIL)
    safe_mm = pulled.largest_safe_length_mm(spring, pulled.rate_n_per_mm(spring), MEANT_N)
    assert safe_mm is not None
    assert f"past 120 mm, its greatest length, twice, never past {safe_mm:.0f} mm" in PULL_IT
    assert "past 130 mm," in take_away(spring, replace(COIL.need, pull_to_fit_mm=130.0), "mm")


def test_before_its_heat_what_is_too_much_is_heated_first_and_pulled_only_if_that_leaves_too_much():
    hot, done = a_coil(BENCH, **TIGHT), a_coil(BENCH, heated=True, **TIGHT)
    assert "Heat it first, and read. If that leaves too much: pull it" in whole(came_out_tension(hot, 9.0))
    assert "Too much: pull it" in whole(came_out_tension(done, 5.0))
    assert "Heat it first" not in whole(came_out_tension(done, 5.0))


def test_too_little_is_told_in_the_words_of_the_sheet_and_the_next_one_is_leaned_more():
    saved = came_out_tension(COIL, 0.0)
    for words in (f"Too little: {NOT_PUT_IN}", f"The next one: {LEAN_MORE}"):
        assert words in on_the_sheet(COIL)
        assert words in whole(saved)
    assert PULL_IT not in whole(saved)


def test_a_tension_that_serves_is_neither_pulled_nor_bent_for():
    saved = came_out_tension(a_coil(), MEANT_N + 0.5)
    assert saved.answer == "keep"
    assert "pull it" not in whole(saved)


@settings(deadline=None, max_examples=25)
@given(st.floats(-0.6, 0.6), st.floats(0.0, 6.0))
def test_diameter_and_tension_have_one_verdict_whose_forces_hold(off_mm: float, tension_n: float):
    """Where it says that all is well, F₀ + R (L − L₀) of what the coil becomes lies within what is wanted."""
    saved = came_out_with_tension(COIL, outside_mm(COIL) + off_mm, tension_n)
    if saved.fit is not None and saved.fit.fits == "yes":
        assert force_at(saved, 120.0) == pytest.approx(24.0, abs=1.2 + 1e-6)
        assert force_at(saved, 95.0) == pytest.approx(14.5, abs=0.7 + 1e-6)
    assert sum(said.startswith("The next one") for said in saved.said) == 1
    assert sum("came out" in said for said in saved.said) == 1
    assert (": wind it again" in saved.said[0]) is (saved.answer == "wind again")


@pytest.mark.parametrize("off_mm", [0.0, 0.4, -0.4])
def test_what_the_diameter_says_of_rate_and_mandrel_stays_beside_a_tension(off_mm: float):
    outside = outside_mm(COIL) + off_mm
    both, alone = came_out_with_tension(COIL, outside, MEANT_N), came_out(COIL, outside)
    assert both.rate_kept == alone.rate_kept
    assert both.next_mandrel == alone.next_mandrel
    assert (both.answer == "keep") is (off_mm == 0.0)


def test_a_larger_coil_with_less_tension_gets_fewer_coils_and_hooks_bent_nearer_together():
    saved = came_out_with_tension(COIL, outside_mm(COIL) + 0.4, 0.5)
    spring = saved.spring
    assert isinstance(spring, ExtensionSpring)
    assert saved.answer == "change"
    assert saved.fit.fits == "yes"
    assert spring.total_coils < wanted_of(COIL).total_coils
    assert spring.free_length_mm < wanted_of(COIL).free_length_mm
    for length_mm, force_n in ((120.0, 24.0), (95.0, 14.5)):
        assert force_at(saved, length_mm) == pytest.approx(force_n, abs=0.2)
    assert f"so that {spring.total_coils:.2f} coils in the body" in saved.said[1]
    assert whole(saved).count(f"{spring.free_length_mm:.1f} mm between their insides") == 1
    assert "and gives the forces that were meant" in whole(saved)


def test_a_larger_coil_with_more_tension_gets_fewer_coils_and_is_pulled():
    saved = came_out_with_tension(COIL, outside_mm(COIL) + 0.9, 3.6)
    (coils,) = re.findall(r"Bend the hooks so that ([\d.]+) coils in the body give", whole(saved))
    assert float(coils) < wanted_of(COIL).total_coils
    assert f"({MEANT_N:.1f} N is to be left)" in saved.said[0]
    assert "Too much: pull it" in whole(saved)


def test_a_coil_that_no_bore_takes_is_wound_again_whatever_its_tension():
    saved = came_out_with_tension(COIL, 15.2, MEANT_N)
    assert saved.answer == "wind again"
    assert "neither other coils nor other hooks save it: wind it again" in saved.said[0]
    assert saved.next_mandrel is not None


def test_both_are_written_down_in_one_trial():
    words = f"--outside 13.5 --turns {COIL.plan.turns_to_wind:.2f} --tension 1.5"
    assert any(said.endswith(words) for said in came_out_with_tension(COIL, 13.5, 1.5).said)
    assert "Measure it outside too (--came-out)" in whole(came_out_tension(COIL, 1.5))


def test_other_coils_are_not_asked_for_where_the_rate_is_the_one_meant():
    saved = came_out_with_tension(COIL, outside_mm(COIL) + 0.01, MEANT_N + 2.0)
    assert saved.answer == "measure first"
    assert "leave its coils so" in saved.said[0]


def test_hooks_that_do_not_reach_are_not_told_as_just_so():
    """A coil so large that the body which restores its rate is too short for its hooks to reach the wanted length."""
    coil = a_coil()
    saved = came_out_with_tension(coil, outside_mm(coil) + 1.0, wanted_of(coil).initial_tension_n or 0.0)
    spring = saved.spring
    assert isinstance(spring, ExtensionSpring)
    assert spring.free_length_mm < wanted_of(coil).free_length_mm - 1.0
    assert not any("Just so" in said and "insides of its hooks" in said for said in saved.said)


@pytest.mark.parametrize(("tension_n", "doubted"), [(2.0, False), (4.0, False), (8.0, True)])
def test_more_than_a_hand_can_wind_is_doubted_by_the_reading_as_a_trial_is(tension_n: float, doubted: bool):
    """The most is 0.45 R_m (0.135 - 0.00625 w) of this coil, some 4 N."""
    for saved in (came_out_tension(COIL, tension_n), came_out_with_tension(COIL, outside_mm(COIL), tension_n)):
        assert any(READ_AGAIN in said for said in saved.said) is doubted


def test_no_hook_is_cut_off_for_other_coils_where_a_pull_is_enough():
    saved = came_out_with_tension(COIL, outside_mm(COIL) - 0.2, 4.5)
    assert "it can be saved if a pull takes enough of that away" in saved.said[0]
    assert "leave its coils so" in saved.said[0]
