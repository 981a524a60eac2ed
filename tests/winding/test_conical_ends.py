"""The ends of a wound cone: which diameters a wire can serve, how snugly they lie, the mandrel's steps, the checks."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.need.model import Need, Pocket, PocketEnd
from sourcing.sheets.winding_data import plan_document
from sourcing.springs import pressed
from sourcing.springs.conical_lengths import growth_at_ends_mm
from sourcing.springs.describe_conical import closing_order
from sourcing.springs.model import ConicalSpring, Ends
from sourcing.winding import springback
from sourcing.winding.conical.mandrel import as_turned, laid_cone
from sourcing.winding.model import WindingPlan
from sourcing.winding.pitch_share import PITCH_SHARE
from sourcing.winding.plan import plan_winding
from sourcing.winding.serving_words import what_serves

from .cases import BENCH, material, need, planned, point, spool, wanted

WIRE_MM = 0.9


def cone_need(**changes: object) -> Need:
    """A bore of 18 round the large end, a rod of 5 in the small one, 2.6 N at 12 mm and 8 N at 7 mm."""
    ends = Pocket(large_end=PocketEnd(bore_mm=wanted(18)), small_end=PocketEnd(rod_mm=wanted(5)))
    working = (point(12, wanted(2.6, 0.52)), point(7, wanted(8, 1.6)))
    case = need(kind="conical", pocket=ends, working=working, free_length_mm=wanted(16, 2))
    return replace(case, **changes)


def plan_of(wire_mm: float = WIRE_MM, **changes: object) -> WindingPlan:
    return planned(plan_winding(cone_need(**changes), spool(wire_mm), BENCH))


def cone_of_plan(plan: WindingPlan) -> ConicalSpring:
    assert isinstance(plan.wanted, ConicalSpring)
    return plan.wanted


# Only one size of wire


def test_the_one_size_of_wire_is_told_which_diameters_of_both_ends_it_can_serve() -> None:
    plan = plan_of()
    ranges = {each.end: each for each in plan.serves}
    assert set(ranges) == {"large", "small"}
    spring = cone_of_plan(plan)
    assert ranges["large"].low_mm <= spring.mean_diameter_large_mm <= ranges["large"].high_mm
    assert ranges["small"].low_mm <= spring.mean_diameter_small_mm <= ranges["small"].high_mm
    assert what_serves(plan).startswith("Only as a cone of mean diameters ")
    assert " at the large end and " in what_serves(plan)
    assert "Large end below " in what_serves(plan)
    assert " N at 7 mm (wanted: 8 N ± 1.6 N), outside its tolerance" in what_serves(plan)


def test_what_serves_is_in_json_with_its_end() -> None:
    document = plan_document(plan_of())
    serves = document["serves"]
    assert isinstance(serves, list)
    keys = [tuple(each) for each in serves]
    assert keys[0] == ("mean_diameter_large_mm_low", "mean_diameter_large_mm_high")
    assert keys[-1] == ("mean_diameter_small_mm_low", "mean_diameter_small_mm_high")
    assert document["answer"] == what_serves(plan_of())


@pytest.mark.parametrize("end", ["large", "small"])
def test_an_end_inside_its_range_serves_and_one_outside_does_not(end: str) -> None:
    """Asked again with a pocket that leaves this end no other diameter; edges are sought to 0.05 mm, coarsely."""
    (serves,) = [each for each in plan_of().serves if each.end == end]
    for mean_mm, fits in ((serves.low_mm + 0.5, True), (serves.low_mm - 0.5, False)):
        held = PocketEnd(wanted(mean_mm + WIRE_MM + 0.3), wanted(mean_mm - WIRE_MM - 0.3))
        place = replace(cone_need().pocket, **{f"{end}_end": held})
        result = plan_winding(cone_need(pocket=place), spool(WIRE_MM), BENCH)
        assert (isinstance(result, WindingPlan) and result.fit.fits == "yes") == fits, (mean_mm, result)


def test_where_only_pocket_and_index_bound_it_the_answer_is_yes() -> None:
    plan = planned(plan_winding(cone_need(working=(point(7, wanted(5, 1)),), free_length_mm=None), spool(0.6), BENCH))
    assert what_serves(plan).startswith("Yes, as a cone of mean diameters ")
    assert "though not each with each; here " in what_serves(plan)


# Snug in the pocket


def test_each_end_is_drawn_to_its_bore_or_rod_as_far_as_its_doubt_lets_it() -> None:
    """0.8 mm wire can be any cone in this place for one force: it lies 15 % of its diameter off, and mostly nearer."""
    snug = replace(
        cone_need(),
        pocket=Pocket(large_end=PocketEnd(bore_mm=wanted(14)), small_end=PocketEnd(rod_mm=wanted(5))),
        working=(point(7, wanted(5, 1)),),
        free_length_mm=None,
    )
    plan = planned(plan_winding(snug, spool(0.8), BENCH))
    spring = cone_of_plan(plan)
    growth = growth_at_ends_mm(spring)[1]
    band = plan.after_heat or plan.finished
    large_doubt = band.bands["mean_diameter_large_mm"].high - spring.mean_diameter_large_mm
    gap = 14 - 0.2 - growth - spring.outside_diameter_large_mm
    assert 0.0 < gap < large_doubt + 0.05 * spring.mean_diameter_large_mm
    assert plan.fit.fits == "yes"
    assert plan.fit.chance >= BENCH.least_chance


def test_a_bore_that_cannot_be_reached_draws_nothing() -> None:
    """Index 20 ends at 12 mm: in a bore of 40 no cone lies snug, and the surer one is taken."""
    wide = Pocket(large_end=PocketEnd(bore_mm=wanted(40)), small_end=PocketEnd(rod_mm=wanted(5)))
    plan = planned(plan_winding(replace(cone_need(), pocket=wide, free_length_mm=None), spool(0.6), BENCH))
    assert plan.fit.fits == "yes"


# The mandrel


def close_cone(pitch_mm: float) -> ConicalSpring:
    """Mean diameters 7 to 17 in five turns of wire of 0.9, which go inside each other by 1 mm a turn."""
    return ConicalSpring(
        WIRE_MM,
        7.0,
        17.0,
        5 * pitch_mm + WIRE_MM,
        5.0,
        5.0,
        Ends.OPEN,
        material("music-wire"),
        81500.0,
        206000.0,
        2270.0,
    )


def compensation(mean_mm: float) -> float:
    return (springback.mandrel_index(mean_mm / WIRE_MM, 0.011836) - 1) * WIRE_MM


def test_turns_that_nest_in_the_spring_do_not_on_the_mandrel_and_are_laid_wire_against_wire() -> None:
    """On the mandrel the radius steps by about 0.5 mm a turn: 0.9 mm apart in all wants 0.75 along it."""
    laid = laid_cone(close_cone(0.3), compensation, PITCH_SHARE)
    assert laid.touching == pytest.approx(laid.turns)
    assert 0.6 < laid.pitch_mm < 0.85
    assert laid.too_open_mm > 1.0


def test_turns_far_enough_apart_do_not_touch() -> None:
    laid = laid_cone(close_cone(2.8), compensation, PITCH_SHARE)
    assert (laid.touching, laid.too_open_mm) == (0.0, 0.0)


def test_the_tighter_turns_of_a_cone_touch_later_than_the_wider_ones() -> None:
    """The taper is flatter towards the large end, so that a turn there has to climb more to clear the last."""
    laid = laid_cone(close_cone(0.72), compensation, PITCH_SHARE)
    assert 0.0 < laid.touching < laid.turns


def test_a_cone_whose_turns_touch_on_the_mandrel_is_told_with_how_much_too_long_it_comes_out() -> None:
    flat = cone_need(working=(point(3, wanted(1, 0.2)), point(1.5, wanted(3, 0.6))), free_length_mm=None)
    plan = planned(plan_winding(flat, spool(0.9), BENCH))
    laid_close = [note for note in plan.notes if "wire against wire" in note]
    assert bool(laid_close) == any("of them wire against wire" in step for step in plan.steps)


def test_the_sheets_mandrel_is_in_steps_of_five_hundredths_and_says_what_they_do() -> None:
    plan = plan_of()
    for at in plan.mandrel.profile:
        assert at.diameter_mm == pytest.approx(round(at.diameter_mm / 0.05) * 0.05)
        assert at.height_mm == pytest.approx(round(at.height_mm, 1))
    (said,) = [note for note in plan.notes if "No rod on hand winds a cone" in note]
    assert "Its diameters are to 0.05 mm, as fine as springback is known; the rounding moves a coil by 0.0" in said


def test_rounding_leaves_the_function_itself_exact() -> None:
    laid = laid_cone(close_cone(2.8), compensation, PITCH_SHARE)
    assert [at.diameter_mm for at in as_turned(laid)] == pytest.approx([5.15, 6.6, 7.95, 9.2, 10.35, 11.45])
    assert laid.points[0].diameter_mm == pytest.approx(5.16, abs=0.005)


# Accept it when


def test_all_that_can_be_measured_is_accepted_in_the_order_of_measuring() -> None:
    assert [row.figure for row in plan_of().accept] == [
        "outside_diameter_small_mm",
        "outside_diameter_large_mm",
        "total_coils",
        "gap_at_end_tips_mm",
        "free_length_mm",
        "first_turn_down_at_mm",
        "solid_length_mm",
        "scale_at_12_mm_g",
        "force_at_12_mm_n",
        "scale_at_7_mm_g",
        "force_at_7_mm_n",
    ]


def test_open_ends_have_no_tips_to_close() -> None:
    assert "gap_at_end_tips_mm" not in [row.figure for row in plan_of(ends=Ends.OPEN).accept]


def test_the_first_turn_lies_down_within_its_row_and_a_length_that_can_be_seen() -> None:
    plan = plan_of()
    (row,) = [row for row in plan.accept if row.figure == "first_turn_down_at_mm"]
    spring = cone_of_plan(plan)
    assert row.low is not None
    assert row.high is not None
    assert pressed.solid_length_mm(spring) <= row.low < closing_order(spring)[0].length_mm < row.high
    assert row.high < spring.free_length_mm


def test_advice_to_correct_the_mandrel_is_worked_out_for_each_end() -> None:
    """No share of the thumb: the large end, which opens more, wants less of what it is off."""
    (advice,) = {row.if_not for row in plan_of().accept if row.figure.startswith("outside_diameter")}
    assert "eight tenths" not in advice
    small, large = (float(advice.split(mark)[0].split()[-1]) for mark in (" of what", " at the large one"))
    assert 0.4 < large < small < 0.8
