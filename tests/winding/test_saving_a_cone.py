"""A cone that came out otherwise: ends in their places, the rate of what lies between, the next mandrel's profile."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.need.model import Need, Pocket, PocketEnd
from sourcing.springs import pressed
from sourcing.springs.conical_lengths import pitch_of, wire_length_of
from sourcing.springs.model import ConicalSpring, Ends
from sourcing.stock.model import Bench
from sourcing.winding.conical.in_hand import as_it_came
from sourcing.winding.conical.misses import at_best_length, misses
from sourcing.winding.line import aims
from sourcing.winding.model import wire_of
from sourcing.winding.plan import plan_winding
from sourcing.winding.saving.coil import Coil, Saved, SenselessError
from sourcing.winding.saving.conical.cone import wanted_of
from sourcing.winding.saving.conical.cutting import cut_for_rate
from sourcing.winding.saving.conical.diameter import both_came_out, large_came_out, small_came_out
from sourcing.winding.saving.conical.length import came_out_pitch, pressed_to

from .cases import BENCH, material, planned, point, spool, wanted

NEED = Need(
    job="button",
    kind="conical",
    pocket=Pocket(large_end=PocketEnd(bore_mm=wanted(18.0)), small_end=PocketEnd(rod_mm=wanted(5.0))),
    working=(point(12, 2.6), point(7, 8)),
)
WIRE = spool(0.9)


def a_cone(small_mm: float = 8.0, large_mm: float = 16.0, coils: float = 5.0) -> ConicalSpring:
    steel = material("music-wire")
    return ConicalSpring(
        1.0, small_mm, large_mm, 25.0, coils, coils + 2.0, Ends.CLOSED_GROUND, steel, 81500.0, 206000.0, 2220.0
    )


def a_coil(bench: Bench = BENCH, heated: bool = False) -> Coil:
    plan = planned(plan_winding(NEED, WIRE, bench))
    return Coil(NEED, bench, wire_of(WIRE), plan, heated)


@pytest.fixture(scope="module")
def coil() -> Coil:
    return a_coil()


def outside(coil: Coil) -> tuple[float, float]:
    """The large and the small end as they were meant, outside."""
    assert isinstance(coil.meant, ConicalSpring)
    return coil.meant.outside_diameter_large_mm, coil.meant.outside_diameter_small_mm


def test_a_half_barrel_whose_large_end_came_out_at_17_keeps_0_907_of_its_rate():
    """Hand-checked case 7 of the winding model, its half: d 1, 8 to 16, n 5: G/(2 n 24 320) = 1.061 N/mm.

    At 8 and 17 the same wire makes 5 (8 + 16)/(8 + 17) = 4.8 coils: 81500/(2 * 4.8 * 25 * 353) = 0.962 N/mm.
    """
    cone = a_cone()
    came = as_it_came(cone, 8.0, 17.0)
    assert pressed.rate_n_per_mm(cone) == pytest.approx(1.061, abs=5e-4)
    assert came.active_coils == pytest.approx(4.8)
    assert pressed.rate_n_per_mm(came) == pytest.approx(0.962, abs=5e-4)
    assert pressed.rate_n_per_mm(came) / pressed.rate_n_per_mm(cone) == pytest.approx(0.9065, abs=5e-4)


def test_what_is_cut_off_its_large_end_for_the_rate_by_hand():
    """q = 9/4.8 = 1.875 mm a coil; D2^4 = 8^4 + 1.875 * 81500/(2 * 1.0612) = 76 096: 16.609 mm, 4.592 coils."""
    cut = cut_for_rate(as_it_came(a_cone(), 8.0, 17.0), "large", pressed.rate_n_per_mm(a_cone()))
    assert cut is not None
    assert cut.mean_diameter_large_mm == pytest.approx(16.609, abs=1e-3)
    assert cut.active_coils == pytest.approx(4.592, abs=1e-3)
    assert cut.mean_diameter_small_mm == 8.0


@given(st.floats(6.0, 9.0), st.floats(12.5, 20.0), st.floats(3.0, 9.0), st.floats(1.001, 1.5))
def test_cut_at_either_end_the_rate_is_the_wanted_one(small: float, large: float, coils: float, stiffer: float):
    cone = a_cone(small, large, coils)
    rate = stiffer * pressed.rate_n_per_mm(cone)
    for end in ("large", "small"):
        cut = cut_for_rate(cone, end, rate)
        assert cut is not None
        assert pressed.rate_n_per_mm(cut) == pytest.approx(rate, rel=1e-9)
        assert cut.total_coils - cut.active_coils == pytest.approx(2.0)
        step, was = (
            (each.mean_diameter_large_mm - each.mean_diameter_small_mm) / each.active_coils for each in (cut, cone)
        )
        assert step == pytest.approx(was)
    assert cut_for_rate(cone, "large", 0.99 * pressed.rate_n_per_mm(cone)) is None


@given(st.floats(0.95, 1.06), st.floats(0.95, 1.06))
def test_the_wire_between_the_ends_keeps_its_length(at_small: float, at_large: float):
    cone = replace(a_cone(), total_coils=5.0, ends=Ends.OPEN)
    came = as_it_came(cone, 8.0 * at_small, 16.0 * at_large)
    assert wire_length_of(came) == pytest.approx(wire_length_of(cone), rel=0.01)


def test_a_cone_that_came_out_as_meant_is_kept_on_the_same_mandrel(coil: Coil):
    large, small = outside(coil)
    for saved in (large_came_out(coil, large), small_came_out(coil, small), both_came_out(coil, large, small)):
        assert saved.answer == "keep"
        assert saved.rate_kept == pytest.approx(1.0, abs=0.005)
        assert any("same mandrel" in said for said in saved.said)
        assert "as meant" in saved.said[0]


def test_the_end_that_was_not_measured_follows_by_the_same_wire(coil: Coil):
    large, small = outside(coil)
    saved = large_came_out(coil, large + 0.5)
    (said,) = [each for each in saved.said if each.startswith("By the same wire its small end is")]
    assert float(said.split(" is ")[1].split(" ")[0]) > small
    assert not any("By the same wire" in said for said in both_came_out(coil, large + 0.5, small + 0.15).said)


def test_an_end_that_no_longer_goes_into_its_bore_is_wound_again_on_a_smaller_mandrel(coil: Coil):
    saved = large_came_out(coil, 20.0)
    assert saved.answer == "wind again"
    assert any(said.startswith("bore clearance at the large end does not hold") for said in saved.said)
    assert saved.next_mandrel is not None
    for now, was in zip(saved.next_mandrel.profile, coil.plan.mandrel.profile, strict=True):
        assert now.diameter_mm < was.diameter_mm


def test_a_cone_that_came_out_small_gets_a_larger_mandrel_at_every_turn_and_no_more_coils(coil: Coil):
    large, _ = outside(coil)
    saved = large_came_out(coil, large - 0.9)
    assert saved.rate_kept > 1.0
    assert saved.next_mandrel is not None
    for now, was in zip(saved.next_mandrel.profile, coil.plan.mandrel.profile, strict=True):
        assert now.diameter_mm > was.diameter_mm


def sum_of_squares(cone: ConicalSpring, longer_mm: float = 0.0) -> float:
    wanted_here = aims(NEED, BENCH)
    return sum(miss**2 for miss in misses(replace(cone, free_length_mm=cone.free_length_mm + longer_mm), wanted_here))


@given(st.floats(6.0, 9.0), st.floats(12.5, 17.0), st.floats(2.5, 6.0), st.floats(15.0, 28.0))
def test_no_length_nearby_brings_a_cone_nearer_to_what_is_wanted(small: float, large: float, coils: float, free: float):
    cone = at_best_length(replace(a_cone(small, large, coils), free_length_mm=free), NEED, BENCH)
    assert sum_of_squares(cone) <= min(sum_of_squares(cone, longer_mm) for longer_mm in (-0.02, 0.02)) + 1e-6


def both(coil: Coil, large_by_mm: float) -> Saved:
    """Both ends off as one wire puts them off, by the squares of their diameters."""
    large, small = outside(coil)
    return both_came_out(coil, large + large_by_mm, small + large_by_mm * (small / large) ** 2)


@pytest.mark.parametrize("heated", [False, True])
def test_a_cone_too_stiff_for_its_length_serves_at_one_of_its_own(heated: bool):
    coil = a_coil(heated=heated)
    saved, meant_mm = both(coil, -1.5), wanted_of(coil).free_length_mm
    assert saved.answer == "change"
    assert saved.fit is not None
    assert saved.fit.fits == "yes"
    assert isinstance(saved.spring, ConicalSpring)
    assert saved.spring.free_length_mm < meant_mm - 0.3
    assert "it can be saved, as told below" in saved.said[0]
    assert saved.said[1].startswith(f"It is {meant_mm:.1f} mm long, if its pitch is the one meant. Press it solid")
    assert f"until it rests at {saved.spring.free_length_mm:.1f} mm. {meant_mm:.1f} mm was meant" in saved.said[1]


def test_a_length_that_only_a_caliper_tells_is_an_answer_in_mm_and_in_inches_alike():
    tight = replace(NEED, working=(point(12, wanted(2.6, 0.156)), point(7, wanted(8, 0.48))))
    for bench in (BENCH, replace(BENCH, units="inch")):
        coil = Coil(tight, bench, wire_of(WIRE), planned(plan_winding(tight, WIRE, bench)))
        saved = large_came_out(coil, outside(coil)[0] - 0.6)
        assert saved.answer == "change"
        assert isinstance(saved.spring, ConicalSpring)
        assert 0.1 < wanted_of(coil).free_length_mm - saved.spring.free_length_mm < 0.25
        assert any(said.startswith("A steel rule tells no such difference") for said in saved.said)


def test_after_heat_a_length_goes_before_a_cut_whose_end_would_be_closed_ground_and_heated_anew():
    before, after = (both(a_coil(heated=heated), 1.3) for heated in (False, True))
    for saved in (before, after):
        assert saved.answer == "change"
        assert saved.fit is not None
        assert saved.fit.fits == "yes"
    assert any("coils off its large end" in said for said in before.said)
    assert not any("coils off its" in said for said in after.said)
    assert any("until it rests at" in said for said in after.said)


def test_where_the_cut_for_its_rate_gives_a_near_fit_less_is_cut_and_the_length_made_to_suit():
    need = replace(NEED, working=(point(11, 2.899), point(7, 8.432)))
    wire = spool(0.8)
    coil = Coil(need, BENCH, wire_of(wire), planned(plan_winding(need, wire, BENCH)))
    saved, rate = both(coil, 2.2), pressed.rate_n_per_mm(wanted_of(coil))
    assert saved.answer == "change"
    assert saved.fit is not None
    assert saved.fit.fits == "yes"
    assert isinstance(saved.spring, ConicalSpring)
    assert 0.85 < pressed.rate_n_per_mm(saved.spring) / rate < 0.99
    assert any("of the rate that was meant with" in said and "coils off its" in said for said in saved.said)


@pytest.mark.parametrize("units", ["mm", "inch"])
def test_no_mandrel_is_turned_anew_for_less_than_it_is_turned_to(units: str):
    coil = a_coil(replace(BENCH, units=units))
    large, _ = outside(coil)
    for hundredths in range(-40, 41, 5):
        saved = large_came_out(coil, large + hundredths / 100.0)
        assert saved.next_mandrel is not None
        pairs = zip(saved.next_mandrel.profile, coil.plan.mandrel.profile, strict=True)
        apart_mm = max(abs(now.diameter_mm - was.diameter_mm) for now, was in pairs)
        (said,) = [each for each in saved.said if each.startswith("The next one")]
        same = "the same mandrel" in said
        assert same is (apart_mm == 0.0)
        assert same or apart_mm > 0.06
        assert same or abs(hundredths) > 5
        assert not same or abs(hundredths) < 20


def test_heat_to_come_is_between_what_was_measured_and_what_is_judged():
    cold, hot, done = a_coil(replace(BENCH, oven_c=None)), a_coil(), a_coil(heated=True)
    for coil, change in ((cold, 0.0), (hot, -0.0125), (done, 0.0)):
        spring = large_came_out(coil, 17.0).spring
        assert isinstance(spring, ConicalSpring)
        assert spring.mean_diameter_large_mm == pytest.approx(16.1 * (1.0 + change))
    assert any("--heated yes" in said for said in large_came_out(done, 17.0).said)


def test_ends_that_the_wire_alone_does_not_put_off_so_teach_no_mandrel_and_are_measured_again_before_a_cut(coil: Coil):
    large, small = outside(coil)
    saved = both_came_out(coil, large + 0.8, small + 1.2)
    assert saved.answer == "measure first"
    assert ": measure both ends again, and the mandrel at both, before anything is cut" in saved.said[0]
    assert saved.said[1].startswith("The wire alone does not put its ends off so")
    assert saved.said[2].startswith("If both ends read so again, ")
    assert saved.next_mandrel is None
    assert not any(said.startswith(("The next one", "Write it down")) for said in saved.said)


@pytest.mark.parametrize("heated", [False, True])
def test_ends_that_the_list_takes_are_kept_even_where_the_wire_alone_does_not_put_them_off_so(heated: bool):
    """The mandrel may not be as listed at one end; a spring serves by what it measures."""
    coil = a_coil(heated=heated)
    large, small = outside(coil)
    saved = both_came_out(coil, large - 0.14, small + 0.3)
    assert saved.answer == "keep"
    assert "keep it as it is" in saved.said[0]
    assert not any("measure both ends again" in said or "cannot" in said or "cut " in said for said in saved.said)
    assert saved.said[1].startswith("The wire alone does not put its ends off so")
    assert "teaches nothing of the wire" in saved.said[2]
    assert saved.next_mandrel is None
    assert not any(said.startswith(("The next one", "Write it down")) for said in saved.said)


def test_ends_the_wrong_way_round_and_ends_inside_their_mandrel_are_refused(coil: Coil):
    with pytest.raises(SenselessError, match="the larger one first"):
        both_came_out(coil, 9.0, 12.0)
    with pytest.raises(SenselessError, match="less than its mandrel"):
        small_came_out(coil, 7.0)
    with pytest.raises(SenselessError, match="less than its mandrel"):
        large_came_out(coil, 11.0)


def test_a_pitch_that_came_out_longer_makes_the_cone_longer_by_as_much_a_turn(coil: Coil):
    wanted_cone = wanted_of(coil)
    assert isinstance(coil.meant, ConicalSpring)
    as_wound_mm = pitch_of(coil.meant)
    saved = came_out_pitch(coil, as_wound_mm + 0.5)
    (told,) = re.findall(r"it is ([\d.]+) mm long at rest", " ".join(saved.said))
    longer = replace(wanted_cone, free_length_mm=float(told))
    assert pitch_of(longer) == pytest.approx(pitch_of(wanted_cone) * (1.0 + 0.5 / as_wound_mm), abs=0.02)
    assert saved.spring == wanted_cone
    assert came_out_pitch(coil, as_wound_mm).spring.free_length_mm == pytest.approx(wanted_cone.free_length_mm)  # type: ignore[union-attr]
    assert saved.answer == "change"
    with pytest.raises(SenselessError, match="less than the wire"):
        came_out_pitch(coil, 0.5)


def test_a_cone_that_has_set_is_wound_longer_by_what_it_lost(coil: Coil):
    free_mm = wanted_of(coil).free_length_mm
    assert pressed_to(coil, free_mm).answer == "keep"
    saved = pressed_to(coil, 0.96 * free_mm)
    assert any(f"wind it {1.04 * free_mm:.1f} mm long" in said for said in saved.said)
    with pytest.raises(SenselessError, match="shorter than it is pressed solid"):
        pressed_to(coil, 0.5)


def test_a_large_end_too_wide_for_its_bore_may_be_cut_to_where_it_goes_in_and_has_its_rate(coil: Coil):
    saved = large_came_out(coil, 18.6)
    assert saved.answer == "change"
    assert isinstance(saved.spring, ConicalSpring)
    assert pressed.rate_n_per_mm(saved.spring) == pytest.approx(pressed.rate_n_per_mm(wanted_of(coil)), rel=1e-9)
    assert saved.spring.outside_diameter_large_mm < 17.8
    assert "it can be saved, as told below" in saved.said[0]
    assert "coils off its large end" in saved.said[1]
