"""Winding a cone: the curved mandrel with its known answers, the plan, its checks and steps, refusals."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from sourcing.need.model import Need, Pocket, PocketEnd
from sourcing.springs import pressed
from sourcing.springs.conical_lengths import wire_length_of
from sourcing.springs.geometry import turn_length_mm
from sourcing.springs.model import ConicalSpring, Ends
from sourcing.stock.model import HandWinding
from sourcing.winding import springback
from sourcing.winding.conical.mandrel import LaidCone, diameter_at_mm, laid_cone, straight_mm
from sourcing.winding.model import WindingPlan
from sourcing.winding.pitch_share import PITCH_SHARE
from sourcing.winding.plan import plan_winding
from sourcing.winding.turns import pitch_ratio

from .cases import BENCH, material, need, planned, point, refused, spool, wanted

FLOW_STRAIN = 0.011836
WIRE_MM = 0.9


def known_cone() -> ConicalSpring:
    """The winding model's: mean diameters 7 to 17, five coils, 14 mm from the first turn's wire to the last's."""
    return ConicalSpring(
        WIRE_MM, 7.0, 17.0, 14.0 + WIRE_MM, 5.0, 5.0, Ends.OPEN, material("music-wire"), 81500.0, 206000.0, 2270.0
    )


def compensation(mean_mm: float) -> float:
    return (springback.mandrel_index(mean_mm / WIRE_MM, FLOW_STRAIN) - 1) * WIRE_MM


def known_laid() -> LaidCone:
    return laid_cone(known_cone(), compensation, PITCH_SHARE)


# Known answers of the winding model (derived for this project, checked numerically)


def test_the_mandrel_of_the_known_cone_is_curved_as_known() -> None:
    sizes = [point.diameter_mm for point in known_laid().points]
    assert sizes == pytest.approx([5.16, 6.60, 7.94, 9.20, 10.37, 11.47], abs=0.005)
    assert known_laid().turns == pytest.approx(6.32, abs=0.005)


def test_its_initial_rate_is_as_known() -> None:
    assert pressed.rate_n_per_mm(known_cone()) == pytest.approx(0.659, abs=5e-4)


def test_a_straight_taper_between_the_right_ends_errs_by_0_20_mm_in_radius() -> None:
    laid = known_laid()
    errors = [(point.diameter_mm - straight_mm(laid, point.wound_turn)) / 2 for point in laid.points]
    assert max(errors) == pytest.approx(0.20, abs=0.005)
    assert errors[0] == pytest.approx(0)
    assert errors[-1] == pytest.approx(0, abs=1e-9)


# Laws


def test_each_coil_let_go_opens_to_the_diameter_that_is_wanted() -> None:
    for at in known_laid().points:
        opened = springback.released_index(at.diameter_mm / WIRE_MM + 1, FLOW_STRAIN) * WIRE_MM
        assert opened == pytest.approx(diameter_at_mm(known_cone(), at.turn), rel=1e-9)


def test_the_largest_coil_opens_most() -> None:
    ratios = [diameter_at_mm(known_cone(), at.turn) / (at.diameter_mm + WIRE_MM) for at in known_laid().points]
    assert ratios == sorted(ratios)


def test_the_wire_on_the_mandrel_is_as_long_as_the_wire_of_the_spring() -> None:
    """Summed by Simpson's rule between the marks, each turn of the crank with its own diameter and pitch."""
    points, total = known_laid().points, 0.0
    for one, other in pairwise(points):
        turns = other.wound_turn - one.wound_turn
        middle_mm = compensation(diameter_at_mm(known_cone(), (one.turn + other.turn) / 2))
        arcs = [_arc_mm(each) for each in (one.diameter_mm, middle_mm, other.diameter_mm)]
        total += turns * (arcs[0] + 4 * arcs[1] + arcs[2]) / 6
    assert total == pytest.approx(wire_length_of(known_cone()), rel=2e-3)


def _arc_mm(mandrel_mm: float) -> float:
    mean_mm = springback.released_index(mandrel_mm / WIRE_MM + 1, FLOW_STRAIN) * WIRE_MM
    on_mandrel_mm = mandrel_mm + WIRE_MM
    return turn_length_mm(on_mandrel_mm, 2.8 / pitch_ratio(mean_mm / on_mandrel_mm, PITCH_SHARE))


# The plan


def cone_need(**changes: object) -> Need:
    ends = Pocket(large_end=PocketEnd(bore_mm=wanted(18)), small_end=PocketEnd(rod_mm=wanted(5)))
    working = (point(12, wanted(2.6, 0.52)), point(7, wanted(8, 1.6)))
    return need(kind="conical", pocket=ends, working=working, free_length_mm=wanted(16, 2), **changes)


def cone_plan(**changes: object) -> WindingPlan:
    return planned(plan_winding(cone_need(**changes), spool(0.9), BENCH))


def test_the_progressive_curve_meets_the_forces() -> None:
    made = cone_plan()
    assert made.fit.fits == "yes"
    rate = pressed.rate_n_per_mm(made.wanted)
    assert pressed.force_n(made.wanted, 12, rate) == pytest.approx(2.6, abs=0.52)
    assert pressed.force_n(made.wanted, 7, rate) == pytest.approx(8.0, abs=1.6)


def test_the_mandrel_is_turned_and_has_a_profile_and_no_one_diameter() -> None:
    mandrel = cone_plan().mandrel
    assert (mandrel.kind, mandrel.diameter_mm) == ("turned", None)
    sizes = [each.diameter_mm for each in mandrel.profile]
    assert sizes == sorted(sizes)
    assert mandrel.profile[0].turn == 0


def test_what_comes_out_before_heat_is_larger_and_both_ends_have_their_bands() -> None:
    made = cone_plan()
    assert made.after_heat is not None
    assert made.after_heat.spring == made.wanted
    for end in ("small", "large"):
        before = getattr(made.finished.spring, f"mean_diameter_{end}_mm")
        assert before == pytest.approx(getattr(made.wanted, f"mean_diameter_{end}_mm") / 0.9875)
        band = made.finished.bands[f"mean_diameter_{end}_mm"]
        assert band.low < before < band.high


def test_both_ends_are_accepted_with_height_and_grams_at_two_lengths() -> None:
    figures = [row.figure for row in cone_plan().accept]
    assert figures[:2] == ["outside_diameter_small_mm", "outside_diameter_large_mm"]
    assert {"free_length_mm", "scale_at_12_mm_g", "scale_at_7_mm_g"} <= set(figures)


def test_the_sheet_says_that_no_rod_serves_and_how_the_spring_comes_off() -> None:
    made = cone_plan()
    assert any("No rod on hand winds a cone" in note for note in made.notes)
    assert any("over the small end of the mandrel" in step for step in made.steps)
    assert any("closes first" in note for note in made.notes)


def test_turns_that_would_ride_up_on_each_other_are_never_planned() -> None:
    spring = cone_plan().wanted
    assert isinstance(spring, ConicalSpring)
    step = (spring.mean_diameter_large_mm - spring.mean_diameter_small_mm) / 2 / spring.active_coils / WIRE_MM
    assert step >= 1.1 - 1e-9 or step <= 0.85 + 1e-9


# Refusals


def test_a_rod_of_one_diameter_winds_no_cone() -> None:
    refusal = refused(plan_winding(cone_need(), spool(0.9), BENCH, 8.0))
    assert refusal.rule == "cone-needs-its-own-mandrel"
    assert "winds a cylinder" in refusal.why


def test_ends_that_leave_no_room_for_the_wire_are_refused() -> None:
    narrow = Pocket(large_end=PocketEnd(bore_mm=wanted(7)), small_end=PocketEnd(rod_mm=wanted(6)))
    refusal = refused(plan_winding(replace(cone_need(), pocket=narrow), spool(0.9), BENCH))
    assert refusal.rule == "no-room-for-wire"
    assert refusal.why == (
        "wire of 0.90 mm has no room: the mean diameter would have to be at least 7.10 mm and at most 18.00 mm at the "
        "small end, and at least 3.60 mm and at most 5.90 mm at the large one (at least the rod with clearance and "
        "wire, or 4 wires; at most the bore less clearance and wire, or 20 wires). Thinner wire, a wider bore or a "
        "thinner rod would change it"
    )


def test_ends_so_alike_that_they_make_a_cylinder_are_refused() -> None:
    alike = Pocket(large_end=PocketEnd(bore_mm=wanted(11)), small_end=PocketEnd(rod_mm=wanted(7.5)))
    refusal = refused(plan_winding(replace(cone_need(), pocket=alike), spool(0.9), BENCH))
    assert refusal.why.startswith("bore, rod and index leave this wire no large end that is wider than the small one")


def test_too_short_a_wire_over_the_limit_and_no_force_are_refused_as_for_cylinders() -> None:
    short = plan_winding(cone_need(), spool(0.9, length_left_mm=300), BENCH)
    thick = plan_winding(cone_need(), spool(0.9), replace(BENCH, hand_winding=HandWinding(0.5, 0.8)))
    loose = plan_winding(replace(cone_need(), working=(point(12),)), spool(0.9), BENCH)
    rules = [refused(each).rule for each in (short, thick, loose)]
    assert rules == ["wire-too-short", "hand-winding-limit", "no-force-wanted"]


def test_thin_wire_is_refused_with_the_limit_the_length_and_what_would_ease_it() -> None:
    why = refused(plan_winding(cone_need(), spool(0.4), BENCH)).why
    assert why.startswith("no cone of this wire serves. The nearest, of mean diameters ")
    assert "MPa pressed solid; 1434 MPa is the static limit (EN 13906-1): it will take a set, which thicker wire" in why
    assert "it would be too soft: from 12.0 mm to 7.00 mm its force would rise by " in why
    assert " N, where 5.4 N is wanted, which thicker wire would ease" in why


@pytest.mark.parametrize("wire_mm", [0.4, 1.2, 1.6, 2.0])
def test_a_refusal_tells_no_force_of_nothing_and_no_wire_both_ways_without_saying_so(wire_mm: float) -> None:
    why = refused(plan_winding(cone_need(), spool(wire_mm), BENCH)).why
    assert "0.00 N" not in why
    assert ("which thicker wire" in why and "which thinner wire" in why) == ("since these pull apart" in why)


def test_wire_too_stiff_for_what_is_wanted_is_told_so() -> None:
    why = refused(plan_winding(cone_need(), spool(1.6), BENCH)).why
    assert "it would be too stiff: from 12.0 mm to 7.00 mm its force would rise by " in why
    assert ", where 5.4 N is wanted, which thinner wire or room for wider coils would ease" in why


# Bench facts of life


def test_a_cone_without_an_oven_is_pressed_solid_instead() -> None:
    made = planned(plan_winding(cone_need(), spool(0.9), replace(BENCH, oven_c=None)))
    assert made.after_heat is None
    assert "Press the spring solid" in made.heat.said
    assert made.finished.spring == made.wanted


def test_a_cone_in_a_blind_hole_is_told_to_stand_square_in_it() -> None:
    made = planned(plan_winding(_in_a_hole(cone_need()), spool(0.9), BENCH))
    assert any("blind" in said for said in made.goes_in.said)


def _in_a_hole(of: Need) -> Need:
    return replace(of, pocket=replace(of.pocket, depth_mm=wanted(14)))


def test_one_force_that_a_cone_cannot_give_is_told_with_its_length() -> None:
    strong = replace(cone_need(), working=(point(7, wanted(60, 6)),), free_length_mm=None)
    why = refused(plan_winding(strong, spool(0.6), BENCH)).why
    assert " N at 7 mm (wanted: 60 N ± 6 N), which thicker wire would ease" in why
