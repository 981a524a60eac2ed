"""A plan that is a near fit only says so at its head, in its ranges of diameters and in its table of mandrels."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.need.model import Need
from sourcing.sheets.winding_data import plan_document
from sourcing.sheets.winding_page import winding_page
from sourcing.sheets.winding_text import FOR_CHOOSING, choices, summary, what_it_serves
from sourcing.springs.model import ConicalSpring, TorsionSpring
from sourcing.stock.model import Bench, Spool
from sourcing.winding.advice import trial_first
from sourcing.winding.choices import with_choices
from sourcing.winding.model import WindingPlan, wire_of
from sourcing.winding.plan import plan_winding
from sourcing.winding.saving.coil import Coil
from sourcing.winding.saving.kinds import saved
from sourcing.winding.serving_words import what_is_off

from .cases import A_HANDLE, BENCH, material, need, planned, spool
from .test_conical import cone_need
from .test_extension import a_need as pulled_need
from .test_saving_a_cone import NEED as A_BUTTON

PRINTER = replace(BENCH, tools=("vice", "hand-drill", "printer"))
SERVES, NEAR = "serves wholly", "a near fit only"


def shown(wanted: Need, wire: Spool, mandrel_mm: float | None, bench: Bench = PRINTER) -> WindingPlan:
    made = planned(plan_winding(wanted, wire, bench, mandrel_mm))
    return with_choices(made, wanted, wire_of(wire), bench)


STEPS_AWAY: dict[str, tuple[Need, float, float, tuple[str, ...]]] = {
    "coils too close": (need(), 0.9, 5.65, ("minimum gaps",)),
    "a torque off": (A_HANDLE, 1.2, 9.7, ("torque at 65 deg",)),
    "too few coils": (A_HANDLE, 1.2, 14.0, ("active coils",)),
    "a force off": (pulled_need(), 0.9, 5.65, ("force at 48 mm",)),
}
"""Wire and mandrel a step away from what serves wholly, and what is off there."""


@pytest.mark.parametrize("case", STEPS_AWAY)
def test_a_mandrel_a_step_away_is_told_as_a_near_fit_everywhere(case: str) -> None:
    wanted, wire_mm, mandrel_mm, off = STEPS_AWAY[case]
    plan = shown(wanted, spool(wire_mm), mandrel_mm)
    assert plan.fit.fits == "near"
    head, serves, page = summary(plan, "mm"), what_it_serves(plan), winding_page(plan, wanted)
    assert what_is_off(plan) == off
    assert head.startswith(f"Only a near fit (off: {', '.join(off)}): wind ")
    mean = f"{plan.wanted.mean_diameter_mm:.2f} mm"
    assert serves.startswith(f"This mandrel gives a mean diameter of {mean}, and so a near fit only: ")
    assert "It serves wholly " in serves
    assert not any(each.low_mm <= plan.wanted.mean_diameter_mm <= each.high_mm for each in plan.serves)
    first = plan.choices[0]
    assert (first.chosen, first.fits, first.serves) == (True, "near", False)
    assert NEAR in first.said
    for words in (head, first.said, f"and so {NEAR}: "):
        assert words in page
    document = plan_document(plan)
    assert (document["fits"], document["off"]) == ("near", list(off))
    assert serves == f"{document['answer']} {FOR_CHOOSING}"


def test_the_table_says_which_mandrels_serve_wholly_where_the_one_of_the_sheet_does_not() -> None:
    plan = shown(need(), spool(0.9), 5.65)
    others = plan.choices[1:]
    assert {each.fits for each in others} == {"yes", "near", "no"}
    assert [each.fits for each in others] == sorted((each.fits for each in others), key=("yes", "near", "no").index)
    for each in others:
        assert (SERVES in each.said, NEAR in each.said) == (each.fits == "yes", each.fits == "near"), each


@pytest.mark.parametrize("mandrel_mm", [5.65, 6.0])
def test_chances_of_a_near_fit_and_a_whole_one_are_not_compared(mandrel_mm: float) -> None:
    """That of a near fit leaves out the limits that are broken: so it is told with them, and not held against another.

    Rods of 5.65 mm and 6 mm beside each other; the coils on the first come too close.
    """
    bench = replace(PRINTER, rods_mm=(5.65, 6.0))
    plan = shown(need(), spool(0.9), mandrel_mm, bench)
    assert {each.fits for each in plan.choices} >= {"yes", "near"}
    for each in plan.choices:
        if each.fits == "near":
            told = "" if each.chosen else f" ({each.chance:.2f} but for minimum gaps)"
            assert f"{NEAR}{told}" in each.said
        if each.fits != plan.fit.fits:
            assert "sure" not in each.said, each


def test_chances_of_two_near_fits_are_compared_where_they_leave_out_the_same() -> None:
    plan = shown(need(), spool(0.9), 5.65, replace(BENCH, rods_mm=(5.6,)))
    (rod,) = [each for each in plan.choices if each.kind == "rod"]
    assert (plan.fit.fits, rod.fits) == ("near", "near")
    assert rod.said.startswith(f"on hand; no surer; {NEAR} (")


@pytest.mark.parametrize("mandrel_mm", [5.5, 5.65, 5.8, 6.0, 6.5])
def test_the_ranges_of_diameters_and_the_table_go_by_one_rule(mandrel_mm: float) -> None:
    plan = shown(need(), spool(0.9), mandrel_mm)
    for each in plan.choices:
        if each.diameter_mm is None or each.chance is None or each.safety is not None:
            continue
        own = planned(plan_winding(need(), spool(0.9), PRINTER, each.diameter_mm))
        within = any(serves.low_mm <= own.wanted.mean_diameter_mm <= serves.high_mm for serves in plan.serves)
        assert within is each.serves, each
        assert each.fits == own.fit.fits


def test_of_wire_that_gives_near_fits_only_no_mandrel_is_told_to_serve() -> None:
    """A cone of plain steel wire that must stand damp: told to last a short time only."""
    wanted = cone_need(surroundings=("damp",))
    plan = shown(wanted, spool(0.9), None)
    assert plan.serves == ()
    assert summary(plan, "mm").startswith("Only a near fit (off: surroundings: damp): wind ")
    assert what_it_serves(plan).startswith("Only a near fit: music-wire in damp ")
    assert not any(each.serves for each in plan.choices)
    for each in plan.choices:
        told = "" if each.chosen else f" ({each.chance:.2f} but for surroundings: damp)"
        assert (f"{NEAR}{told}" in each.said) is (each.fits == "near")


def test_the_chance_of_a_near_fit_leaves_out_the_limits_that_it_does_not_count() -> None:
    """A chance is of clearances and figures: a gap too small lowers it by nothing, a torque that is off does."""
    gaps = shown(need(), spool(0.9), 5.65)
    assert ": but for that, right first time with a chance of " in summary(gaps, "mm")
    assert "comes out right, but for that, with a chance of " in trial_first(gaps).said
    torque = shown(A_HANDLE, spool(1.2), 9.7)
    assert ": right first time with a chance of " in summary(torque, "mm")
    assert "comes out right with a chance of " in trial_first(torque).said


def test_of_limits_and_figures_that_are_off_together_the_limits_are_named_beside_the_chance() -> None:
    wire = replace(spool(1.2), material=material("music-wire"))
    plan = shown(replace(A_HANDLE, surroundings=("damp",)), wire, 9.7)
    assert what_is_off(plan) == ("surroundings: damp", "torque at 65 deg")
    assert ": but for surroundings: damp, right first time" in summary(plan, "mm")


def test_a_plan_that_serves_wholly_says_nothing_of_near_fits_at_its_head() -> None:
    plan = shown(need(), spool(0.9), 6.0)
    assert plan.fit.fits == "yes"
    assert summary(plan, "mm").startswith("Wind ")
    assert what_is_off(plan) == ()
    assert "near" not in what_it_serves(plan)
    assert plan.choices[0].serves
    assert not any(SERVES in each.said for each in plan.choices)
    assert plan_document(plan)["fits"] == "yes"


@pytest.mark.parametrize("case", STEPS_AWAY)
def test_a_coil_of_a_near_fit_is_kept_as_the_near_fit_that_was_planned(case: str) -> None:
    wanted, wire_mm, mandrel_mm, _ = STEPS_AWAY[case]
    plan = planned(plan_winding(wanted, spool(wire_mm), BENCH, mandrel_mm))
    coil = Coil(wanted, BENCH, wire_of(spool(wire_mm)), plan)
    spring = plan.finished.spring
    legs = {"angle": spring.free_angle_deg or 0.0} if isinstance(spring, TorsionSpring) else {}
    answer = saved(coil, {"outside": spring.mean_diameter_mm + wire_mm, **legs})
    assert answer is not None
    assert answer.fit is not None
    assert (answer.answer, answer.fit.fits) == ("keep", "near")
    assert any("eep it as it is, the near fit that was planned" in said for said in answer.said)


def test_a_coil_that_is_cut_back_to_a_near_fit_is_saved_as_that() -> None:
    """Plain steel wire in damp stays a near fit whatever is cut off it; one whose gaps are too small does not."""
    for wanted, wire_mm, mandrel_mm, fits in (
        (need(surroundings=("damp",)), 0.9, 6.0, "near"),
        (need(), 1.0, 6.65, "yes"),
    ):
        plan = planned(plan_winding(wanted, spool(wire_mm), BENCH, mandrel_mm))
        coil = Coil(wanted, BENCH, wire_of(spool(wire_mm)), plan)
        meant_mm = plan.finished.spring.mean_diameter_mm + wire_mm
        told = [saved(coil, {"outside": meant_mm + 0.02 * step}) for step in range(40)]
        changed = [each for each in told if each is not None and each.answer == "change"]
        assert plan.fit.fits == "near"
        assert {each.fit and each.fit.fits for each in changed} == {fits}
        assert any(", the near fit that was planned" in each.said[0] for each in changed) is (fits == "near")
        for each in changed:
            assert ("it serves wholly once it is changed" in each.said[0]) is (fits == "yes")


TO_BE_SAVED: dict[str, tuple[Need, float, str, float]] = {
    "compression": (need(), 0.8, "outside", 0.5),
    "conical": (A_BUTTON, 0.9, "outside", 1.3),
    "extension": (pulled_need(), 0.8, "outside", 0.5),
    "torsion": (A_HANDLE, 1.2, "angle", 20.0),
}
"""Need, wire, and what is measured, by so much off, of a coil that serves wholly once it is changed."""


@pytest.mark.parametrize("kind", TO_BE_SAVED)
def test_a_planned_near_fit_that_serves_wholly_once_changed_may_also_be_kept(kind: str) -> None:
    """Of a plan whose every figure is one and a half tolerances off, a coil as near as that is kept."""
    wanted, wire_mm, measure, off = TO_BE_SAVED[kind]
    plan = planned(plan_winding(wanted, spool(wire_mm), BENCH))
    rows = tuple(replace(row, deviation_over_tolerance=1.5) for row in plan.fit.deviations)
    near = replace(plan, fit=replace(plan.fit, fits="near", deviations=rows))
    for each, words in ((near, "; it may also be kept as it is, for a near fit was planned"), (plan, "as told below")):
        coil = Coil(wanted, BENCH, wire_of(spool(wire_mm)), each, heated=True)
        answer = saved(coil, {measure: meant(coil, measure) + off})
        assert answer is not None
        assert answer.fit is not None
        assert (answer.answer, answer.fit.fits) == ("change", "yes")
        assert words in answer.said[0]
        assert ("may also be kept" in answer.said[0]) is (each is near)


def meant(coil: Coil, measure: str) -> float:
    """What was meant of what is measured: the outside diameter, at a cone's large end, or the angle."""
    spring = coil.meant
    if isinstance(spring, TorsionSpring):
        assert measure == "angle"
        assert spring.free_angle_deg is not None
        return spring.free_angle_deg
    if isinstance(spring, ConicalSpring):
        return spring.outside_diameter_large_mm
    return spring.outside_diameter_mm


def test_a_mandrel_that_does_not_serve_has_no_chance_beside_its_no() -> None:
    plan = shown(need(), spool(0.9), 5.65)
    for each, (_, chance, _) in zip(plan.choices, choices(plan), strict=True):
        assert (chance == "") is (each.fits == "no" or each.chance is None)
    assert any(each.fits == "no" and each.chance is not None for each in plan.choices)
