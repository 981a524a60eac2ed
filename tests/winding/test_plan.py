"""The winding plan: hand-checked cases, laws, mandrels, wire, checks, steps, refusals."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.quantities import Money, Wanted
from sourcing.springs import compression, geometry
from sourcing.springs.describe import describe
from sourcing.springs.model import CompressionSpring, Ends
from sourcing.springs.pressed import solid_length_mm
from sourcing.stock.model import HandWinding, Trial
from sourcing.winding import springback
from sourcing.winding.mandrel import SAME_ROD_MM
from sourcing.winding.model import Acceptance, WindingPlan, Wire
from sourcing.winding.plan import plan_winding
from sourcing.winding.presetting import as_laid
from sourcing.winding.serving_words import what_serves

from .cases import BENCH, material, need, plan, planned, pocket, point, refused, spool


def row(made: WindingPlan, figure: str) -> Acceptance:
    return next(each for each in made.accept if each.figure == figure)


# Hand-checked case 4 of the winding model (derived twice and independently)


def test_wire_of_1_mm_serves_only_between_certain_diameters() -> None:
    made = plan(spool(1.0))
    assert made.fit.fits == "yes"
    assert [each.low_mm < 9.5 < each.high_mm for each in made.serves] == [True]
    assert made.serves[0].low_mm > 8.6
    assert what_serves(made).startswith("Only between mean diameters")
    assert "left before solid" in what_serves(made)


def test_the_coils_of_a_9_5_mm_spring_of_1_mm_wire_are_9_14_and_solid_at_11_1() -> None:
    made = plan(spool(1.0))
    coils = compression.active_coils_for_rate(1.0, 9.5, 1.30, 81500)
    assert coils == pytest.approx(9.14, abs=0.005)
    assert geometry.solid_length_mm(1.0, coils + 2, Ends.CLOSED_GROUND) == pytest.approx(11.1, abs=0.05)
    wound = made.wanted
    assert wound.active_coils == pytest.approx(coils * (9.5 / wound.mean_diameter_mm) ** 3, rel=1e-6)


def test_at_8_6_mm_the_same_wire_is_solid_at_14_3_and_refused_in_those_words() -> None:
    refusal = refused(plan_winding(need(pocket=pocket(bore_mm=9.9)), spool(1.0), BENCH))
    assert refusal.rule == "no-diameter-serves"
    assert "solid at" in refusal.why
    coils = compression.active_coils_for_rate(1.0, 8.6, 1.30, 81500)
    assert coils == pytest.approx(12.3, abs=0.05)
    assert geometry.solid_length_mm(1.0, coils + 2, Ends.CLOSED_GROUND) == pytest.approx(14.3, abs=0.05)


def test_wire_of_0_8_mm_serves() -> None:
    made = plan(spool(0.8))
    assert made.fit.fits == "yes"
    coils = compression.active_coils_for_rate(0.8, 8.8, 1.30, 81500)
    assert coils == pytest.approx(4.71, abs=0.005)
    assert compression.shear_stress_mpa(22, 0.8, 8.8) == pytest.approx(963, abs=0.5)


# The mandrel


def test_the_coils_on_a_rod_are_those_that_restore_the_rate() -> None:
    """Case 3 of the winding model: from 9.6 to 9.9 mm, 6 active coils give 0.912 of the rate, 5.47 restore it."""
    assert compression.rate_n_per_mm(0.8, 9.9, 6, 81500) / compression.rate_n_per_mm(0.8, 9.6, 6, 81500) == (
        pytest.approx(0.912, abs=5e-4)
    )
    assert pytest.approx(5.47, abs=0.005) == 6 * (9.6 / 9.9) ** 3
    for rod_mm in (5.5, 6.0):
        made = plan(mandrel_mm=rod_mm)
        wound = made.wanted
        rate = compression.rate_n_per_mm(0.8, wound.mean_diameter_mm, wound.active_coils, 81500)
        assert rate == pytest.approx(1.30, rel=1e-6)


def test_a_rod_on_hand_that_serves_wins_over_turning_one() -> None:
    made = plan()
    assert made.mandrel.kind == "rod"
    assert made.mandrel.diameter_mm in BENCH.rods_mm


def test_with_no_rod_that_serves_one_is_turned_to_0_05_mm() -> None:
    made = plan(bench=replace(BENCH, rods_mm=(3.0, 12.0)))
    assert made.mandrel.kind == "turned"
    assert made.mandrel.diameter_mm is not None
    assert made.mandrel.diameter_mm / 0.05 == pytest.approx(round(made.mandrel.diameter_mm / 0.05))
    assert made.serves[0].low_mm <= made.wanted.mean_diameter_mm <= made.serves[0].high_mm


def test_a_mandrel_that_is_given_is_judged_alone_and_said_to_be_a_rod_where_it_is_one() -> None:
    assert plan(mandrel_mm=6.0).mandrel.kind == "rod"
    assert plan(mandrel_mm=5.85).mandrel.kind == "turned"


@pytest.mark.parametrize(
    ("mandrel_mm", "rule"), [(0.7, "mandrel-too-thin"), (9.0, "no-diameter-serves"), (200.0, "mandrel-too-large")]
)
def test_a_mandrel_that_cannot_serve_is_refused(mandrel_mm: float, rule: str) -> None:
    assert refused(plan_winding(need(), spool(), BENCH, mandrel_mm)).rule == rule


def test_a_trial_that_sprang_back_less_than_assumed_makes_the_spring_of_a_rod_smaller() -> None:
    tried = plan(spool(0.8, Trial(6.0, 8.9)), mandrel_mm=6.0)
    untried = plan(mandrel_mm=6.0)
    assert tried.wanted.mean_diameter_mm < untried.wanted.mean_diameter_mm
    assert any("springs back less than assumed" in note for note in tried.notes)


def test_a_trial_narrows_the_band_of_the_diameter() -> None:
    def width(made: WindingPlan) -> float:
        band = made.finished.bands["outside_diameter_mm"]
        return band.high - band.low

    assert width(plan(spool(0.8, Trial(6.0, 8.95)), mandrel_mm=6.0)) < 0.8 * width(plan(mandrel_mm=6.0))


def test_stainless_wire_without_a_trial_is_said_to_want_one_and_its_band_is_wide() -> None:
    made = plan(spool(0.9, name="stainless-1.4310"), mandrel_mm=6.0)
    steel = plan(spool(0.9), mandrel_mm=6.0)
    assert any("nearly always worth it" in note for note in made.notes)
    bands = [each.finished.bands["outside_diameter_mm"] for each in (made, steel)]
    assert bands[0].high - bands[0].low > 1.5 * (bands[1].high - bands[1].low)
    assert made.tries_expected >= steel.tries_expected


@given(st.sampled_from((0.8, 0.9, 1.0)), st.floats(5.3, 7.2), st.floats(0.9, 1.3), st.booleans())
def test_what_the_mandrel_gives_is_the_spring_that_is_planned(
    wire: float, mandrel: float, rate: float, hot: bool
) -> None:
    bench = replace(BENCH, oven_c=250.0 if hot else None)
    working = (point(24, 9.0), point(14, 9.0 + 10 * rate))
    made = plan_winding(need(working=working), spool(wire), bench, mandrel)
    if isinstance(made, WindingPlan):
        flow_mpa = 1.08 * spool_strength_mpa(wire)
        kept = springback.moment_kept(made.pull_n / (flow_mpa * pi / 4 * wire**2))
        assert made.mandrel.diameter_mm == pytest.approx(mandrel, abs=SAME_ROD_MM)
        index = springback.released_index(made.mandrel.diameter_mm / wire + 1, flow_mpa / 206000, kept)
        assert made.finished.spring.mean_diameter_mm == pytest.approx(index * wire)
        assert made.wanted.mean_diameter_mm == pytest.approx(index * wire * (0.9875 if hot else 1.0))
        assert made.pitch_on_mandrel_mm >= wire
        assert made.finished.figures.wire_length_mm < made.cut_length_mm
    else:
        assert made.why


def spool_strength_mpa(wire_mm: float) -> float:
    strength = Wire(material("music-wire"), wire_mm).tensile_strength_mpa
    assert strength is not None
    return strength


# Heat


def test_the_diameter_wanted_is_the_one_after_heat() -> None:
    made = plan()
    assert made.after_heat is not None
    assert made.after_heat.spring == made.wanted
    ratio = made.wanted.mean_diameter_mm / made.finished.spring.mean_diameter_mm
    assert ratio == pytest.approx(1 - 0.0125)
    assert made.heat.temperature_c is not None
    assert 200 <= made.heat.temperature_c <= 250


@pytest.mark.parametrize("oven_c", [None, 180.0])
def test_without_an_oven_that_reaches_it_nothing_is_heated_and_pressing_solid_is_advised(oven_c: float | None) -> None:
    made = plan(bench=replace(BENCH, oven_c=oven_c))
    assert made.after_heat is None
    assert made.heat.temperature_c is None
    assert "Press the spring solid" in made.heat.said
    assert made.finished.spring == made.wanted


def test_an_oven_for_music_wire_is_no_oven_for_stainless() -> None:
    made = plan(spool(0.9, name="stainless-1.4310"), bench=replace(BENCH, oven_c=230.0))
    assert made.after_heat is None


# Wire and turns


def test_the_wire_on_the_mandrel_becomes_the_wire_of_the_spring() -> None:
    made = plan()
    assert made.mandrel.diameter_mm is not None
    on_mandrel_mm = made.mandrel.diameter_mm + 0.8
    wound, wanted = made.finished.spring, made.wanted
    assert isinstance(wound, CompressionSpring)
    assert isinstance(wanted, CompressionSpring)
    finished = describe(as_laid(wound, wanted))
    assert made.coil_length_mm == pytest.approx(finished.wire_length_mm)
    assert made.turns_to_wind == pytest.approx(
        finished.total_coils * finished.mean_diameter_mm / on_mandrel_mm, rel=0.01
    )
    spare_mm = 2 * geometry.turn_length_mm(on_mandrel_mm, made.pitch_on_mandrel_mm)
    assert made.cut_length_mm >= made.coil_length_mm + spare_mm + 152
    back = (made.turns_to_wind - finished.total_coils) * (1 + 2 / made.turns_to_wind)
    assert made.turns_run_back == pytest.approx(back)


def test_the_wire_left_is_what_the_springs_wanted_do_not_take() -> None:
    made = plan(spool(length_left_mm=6200), quantity=3)
    assert made.wire_left_mm == pytest.approx(6200 - 3 * made.cut_length_mm)


def test_too_short_a_wire_is_refused_with_what_it_needs_and_has() -> None:
    refusal = refused(plan_winding(need(quantity=2), spool(length_left_mm=700), BENCH))
    assert refusal.rule == "wire-too-short"
    assert "700 mm" in refusal.why
    assert "2 springs" in refusal.why


def test_wire_for_no_second_try_is_said() -> None:
    cut_mm = plan().cut_length_mm
    assert any("not enough for one more try" in note for note in plan(spool(length_left_mm=1.5 * cut_mm)).notes)


def test_the_wire_is_priced_where_its_price_is_known() -> None:
    priced = replace(spool(), price_per_metre=Money(0.35, "EUR"))
    made = plan(priced, quantity=2)
    assert made.cost == Money(round(0.35 * 2 * made.cut_length_mm / 1000, 2), "EUR")
    assert plan().cost is None


def test_wire_still_to_be_bought_is_planned_without_a_spool() -> None:
    made = planned(plan_winding(need(), Wire(material("music-wire"), 0.8), BENCH))
    assert made.wire is None
    assert made.wire_left_mm is None
    assert "bought for it" in made.summary


def test_a_coil_that_opens_more_than_wanted_even_when_laid_close_is_said_to_come_out_too_long() -> None:
    weak = plan(spool(2.0), pocket=pocket(34, 24), working=(point(45, 0.3),))
    assert weak.pitch_on_mandrel_mm == pytest.approx(2.0)
    assert any("too long, to be pressed shorter" in note for note in weak.notes)


# Ends


def test_wire_under_half_a_millimetre_is_not_ground() -> None:
    thin = plan(
        spool(0.45),
        pocket=pocket(bore_mm=6, rod_mm=None),
        working=(point(18, 1.5), point(12, 3.5)),
        ends=Ends.CLOSED_GROUND,
    )
    assert thin.wanted.ends is Ends.CLOSED
    assert not any("Grind" in step for step in thin.steps)


def test_ends_are_ground_where_nothing_else_is_wished_and_the_wire_bears_it() -> None:
    assert plan().wanted.ends is Ends.CLOSED_GROUND
    assert any(step.startswith("Grind") for step in plan().steps)
    open_ends = plan(ends=Ends.OPEN)
    assert open_ends.wanted.ends is Ends.OPEN
    assert not any("end coil" in step for step in open_ends.steps)


# One force only


def test_one_force_without_a_free_length_uses_a_sensible_share_of_the_travel() -> None:
    made = plan(working=(point(14, 22),))
    figures = made.wanted
    solid_mm = geometry.solid_length_mm(0.8, figures.total_coils, figures.ends)
    share = (figures.free_length_mm - 14) / (figures.free_length_mm - solid_mm)
    assert 0.2 - 1e-9 <= share <= 0.8 + 1e-9
    rate = compression.rate_n_per_mm(0.8, figures.mean_diameter_mm, figures.active_coils, 81500)
    assert rate * (figures.free_length_mm - 14) == pytest.approx(22)


def test_one_force_is_still_accepted_at_two_lengths() -> None:
    made = plan(working=(point(14, 22),))
    scales = [each for each in made.accept if each.figure.startswith("scale_at_")]
    assert len(scales) == 2
    assert scales[-1].figure == "scale_at_14_mm_g"


# Checks


def test_it_is_accepted_in_grams_at_both_working_lengths_beside_newtons() -> None:
    made = plan()
    assert row(made, "scale_at_24_mm_g").low == pytest.approx(1000 * 7.65 / 9.80665)
    assert row(made, "scale_at_14_mm_g").high == pytest.approx(1000 * 25.3 / 9.80665)
    assert row(made, "force_at_24_mm_n").low == pytest.approx(7.65)
    assert all(each.if_not for each in made.accept)


def test_above_what_a_kitchen_scale_shows_newtons_stand_alone() -> None:
    made = plan(spool(2.0), pocket=pocket(bore_mm=24, rod_mm=None), working=(point(50, 40), point(35, 100)))
    figures = [each.figure for each in made.accept]
    assert "scale_at_35_mm_g" not in figures
    assert "5 kg" in row(made, "force_at_35_mm_n").if_not


def test_an_accepted_outside_diameter_is_what_the_forces_bear_and_clears_the_rod() -> None:
    """At the coils planned the forces fall as 1/D^3: 15 % less of them at (1/0.85)^(1/3) D."""
    made = plan()
    outside, wanted = row(made, "outside_diameter_mm"), made.wanted
    assert outside.high == pytest.approx(wanted.mean_diameter_mm * 0.85 ** (-1 / 3) + 0.8, abs=0.011)
    assert outside.low == pytest.approx(
        max(6 + 0.2 + 2 * 0.8, wanted.mean_diameter_mm * 1.15 ** (-1 / 3) + 0.8), abs=0.011
    )


def test_an_accepted_outside_diameter_clears_a_tight_bore() -> None:
    made = plan(spool(1.0), pocket=pocket(bore_mm=10.7, rod_mm=7))
    high = row(made, "outside_diameter_mm").high
    assert high == pytest.approx(10.7 - 0.2, abs=0.1)
    assert high < 10.7 - 0.2


def test_no_diameter_is_accepted_that_does_not_serve_and_others_are_asked_about() -> None:
    made = plan()
    (serves,) = [each for each in made.serves if each.low_mm <= made.wanted.mean_diameter_mm <= each.high_mm]
    accepted = row(made, "outside_diameter_mm")
    assert accepted.low is not None
    assert accepted.high is not None
    assert serves.low_mm + 0.8 <= accepted.low < accepted.high <= serves.high_mm + 0.8
    assert "`--came-out`" in accepted.if_not


def test_no_coil_count_is_accepted_that_is_solid_before_the_shortest_length() -> None:
    made = plan()
    accepted = row(made, "total_coils")
    assert accepted.high is not None
    assert isinstance(made.wanted, CompressionSpring)
    solid = replace(made.wanted, total_coils=accepted.high, active_coils=accepted.high - 2.0)
    assert solid_length_mm(solid) <= 14.0 + 1e-9


def test_without_a_pocket_the_outside_diameter_is_accepted_within_what_the_forces_bear() -> None:
    made = plan(pocket=pocket(None, None))
    outside = row(made, "outside_diameter_mm")
    assert outside.low is not None
    assert outside.high is not None
    borne = 0.85 ** (-1 / 3) - 1.15 ** (-1 / 3)
    assert outside.high - outside.low == pytest.approx(made.wanted.mean_diameter_mm * borne, abs=0.021)


def test_how_far_the_free_spring_stands_out_of_its_hole_is_said() -> None:
    made = plan(pocket=pocket(depth_mm=25))
    assert made.goes_in.stick_out_mm == pytest.approx(made.wanted.free_length_mm - 25)
    assert any("blind" in said for said in made.goes_in.said)
    unknown = plan().goes_in
    assert unknown.stick_out_mm is None
    assert any("blind" in said for said in unknown.said)


@pytest.mark.parametrize("depth_mm", [None, 20.0, 25.0, 40.0])
def test_the_cover_is_held_against_the_force_at_the_longest_working_length_however_deep_the_hole(
    depth_mm: float | None,
) -> None:
    """9 N at 24 mm, as the need wants."""
    goes_in = plan(pocket=pocket(depth_mm=depth_mm)).goes_in
    assert goes_in.cover_force_n == pytest.approx(9.0, rel=1e-3)
    assert "it pushes 9.0 N" in goes_in.said[0]


# Words


def test_the_cautions_lead_with_eye_protection() -> None:
    assert "eye protection" in plan().cautions[0]


def test_wire_near_the_limit_is_cautioned_with_its_energy() -> None:
    made = plan(spool(2.0), pocket=pocket(bore_mm=24, rod_mm=None), working=(point(50, 40), point(35, 100)))
    assert any("throws the crank" in caution for caution in made.cautions)
    assert not any("throws the crank" in caution for caution in plan().cautions)


def test_the_steps_are_in_bench_order_with_the_numbers_in_them() -> None:
    made = plan()
    laying = ["steady pull", "first end coil", "at a pitch of", "last end coil", "to spare", "ease it back"]
    finishing = ["measure it outside", "Trim to", "Relieve", "Grind", "Press it solid", "Check it"]
    told = ["old spring", "Measure the wire", "Cut ", "Set up the rod", *laying, *finishing]
    places = [next(at for at, step in enumerate(made.steps) if word in step) for word in told]
    assert places == sorted(places)
    assert f"{made.turns_to_wind:.2f} turns in all." in " ".join(made.steps)


def test_inches_are_printed_where_the_bench_wants_them() -> None:
    made = plan(bench=replace(BENCH, units="inch"))
    assert " in " in made.summary + " "
    assert " mm" not in " ".join(step for step in made.steps if "millimetre" not in step)


def test_chances_and_tries_follow_from_each_other() -> None:
    tries = plan(spool(0.9, name="stainless-1.4310")).tries
    assert 0 <= tries.first <= tries.after_a_trial <= 1
    assert tries.by_second == pytest.approx(1 - (1 - tries.first) * (1 - tries.after_a_trial))
    assert tries.expected == pytest.approx(1 + (1 - tries.first) / tries.after_a_trial)


# Refusals


def test_wire_at_the_hand_winding_limit_is_refused() -> None:
    bench = replace(BENCH, hand_winding=HandWinding(caution_mm=0.6, stop_mm=0.8))
    assert refused(plan_winding(need(), spool(0.8), bench)).rule == "hand-winding-limit"


def test_wire_thinner_than_hand_tools_wind_is_refused() -> None:
    assert refused(plan_winding(need(), spool(0.05), BENCH)).rule == "wire-too-thin"


def test_wire_whose_strength_is_not_listed_is_refused() -> None:
    assert refused(plan_winding(need(), spool(0.5, name="EN 10270-1 SL"), BENCH)).rule == "strength-unknown"


def test_a_pocket_too_narrow_for_the_wire_is_refused() -> None:
    refusal = refused(plan_winding(need(pocket=pocket(8, 6)), spool(1.0), BENCH))
    assert refusal.rule == "no-room-for-wire"


def test_what_excluded_most_diameters_is_the_reason() -> None:
    assert "is the static limit" in refused(plan_winding(need(), spool(0.5), BENCH)).why
    assert "solid at" in refused(plan_winding(need(), spool(1.2), BENCH)).why


def test_wire_that_rusts_in_the_surroundings_is_refused_for_that() -> None:
    refusal = refused(plan_winding(need(surroundings=("wet",)), spool(0.9), BENCH))
    assert "wet surroundings" in refusal.why


def test_a_bound_on_a_force_is_met_with_room_to_spare() -> None:
    made = plan(working=(point(24, Wanted(low=8.0)), point(14, Wanted(high=24.0))))
    rate = compression.rate_n_per_mm(0.8, made.wanted.mean_diameter_mm, made.wanted.active_coils, 81500)
    assert rate * (made.wanted.free_length_mm - 24) > 8.3
    assert rate * (made.wanted.free_length_mm - 14) < 23


def test_without_an_oven_no_hours_of_heat_are_assumed() -> None:
    hours = "0.7 hours for the heat"
    assert any(hours in note for note in plan().notes)
    assert not any(hours in note for note in plan(bench=replace(BENCH, oven_c=None)).notes)
