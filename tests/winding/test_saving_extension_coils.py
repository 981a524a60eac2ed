"""An extension spring whose diameter is so far off that its own coils and those for its rate give only a near fit."""

from __future__ import annotations

import pytest

from sourcing.need.model import Need, Pocket
from sourcing.springs import pulled
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.winding.extension.ends import hook_heights_mm
from sourcing.winding.model import wire_of
from sourcing.winding.plan import plan_winding
from sourcing.winding.saving.coil import Coil, Saved
from sourcing.winding.saving.extension.body import wanted_of
from sourcing.winding.saving.extension.diameter import came_out, came_out_with_tension
from sourcing.winding.saving.extension.diameter_ways import STEP_COILS
from sourcing.winding.saving.extension.length import came_out_pitch
from sourcing.winding.saving.extension.tension import came_out_tension

from .cases import BENCH, planned, point, spool, wanted
from .test_saving_extension import outside_mm

WIRE = spool(0.8)

NEED = Need(
    job="drawer",
    kind="extension",
    pocket=Pocket(bore_mm=wanted(11.0)),
    working=(point(48, 4.2), point(70, 17)),
    hooks=Hooks.FULL_LOOP,
    pull_to_fit_mm=75.0,
)
"""A spring in a drawer: 4.2 N at 48 mm and 17 N at 70 mm."""

PLAN = planned(plan_winding(NEED, WIRE, BENCH))

BEFORE, AFTER = (Coil(NEED, BENCH, wire_of(WIRE), PLAN, heated) for heated in (False, True))

ROWS_LEFT = "of the sheet's list for "


def changed(saved: Saved) -> ExtensionSpring:
    assert saved.answer == "change"
    assert saved.fit.fits == "yes"
    assert isinstance(saved.spring, ExtensionSpring)
    return saved.spring


def force_n(spring: ExtensionSpring, length_mm: float) -> float:
    """F = F₀ + G d⁴ / (8 D³ n) (L − L₀) (EN 13906-2, from memory)."""
    rate = (
        spring.shear_modulus_mpa * spring.wire_diameter_mm**4 / (8 * spring.mean_diameter_mm**3 * spring.active_coils)
    )
    return (spring.initial_tension_n or 0.0) + rate * (length_mm - spring.free_length_mm)


@pytest.mark.parametrize(
    ("coil", "came_mm"), [(BEFORE, 5.9), (BEFORE, 6.0), (BEFORE, 6.1), (BEFORE, 7.0), (AFTER, 7.0), (AFTER, 7.2)]
)
def test_coils_between_with_hooks_for_them_serve_where_nothing_else_does(coil: Coil, came_mm: float):
    spring = changed(came_out(coil, came_mm))
    for row in (row for row in PLAN.accept if row.figure.startswith("force_at_")):
        assert row.low is not None
        assert row.high is not None
        assert row.low <= force_n(spring, float(row.figure.split("_")[2])) <= row.high
    other = spring.total_coils - wanted_of(coil).total_coils
    assert other / STEP_COILS == pytest.approx(round(other / STEP_COILS))
    assert (other > 0.0) is (came_mm < 6.4)
    low_mm, high_mm = hook_heights_mm(spring.hooks, spring.inside_diameter_mm)
    assert low_mm - 1e-9 <= pulled.hook_length_mm(spring) <= high_mm + 1e-9


def test_after_heat_hooks_alone_come_before_coils_and_no_coils_come_on():
    saved = came_out(AFTER, 6.1)
    assert changed(saved).total_coils == wanted_of(AFTER).total_coils
    assert "leave its coils so" in saved.said[0]
    assert saved.said[1].startswith("Bend its hooks")


@pytest.mark.parametrize(("coil", "came_mm"), [(BEFORE, 6.0), (AFTER, 7.0)])
def test_its_new_length_is_told_once_and_the_rows_that_it_leaves_are_named(coil: Coil, came_mm: float):
    saved = came_out(coil, came_mm)
    said, spring = " ".join(saved.said), changed(saved)
    assert said.count("between the") == said.count(f"{spring.free_length_mm:.1f} mm between their insides") == 1
    (left,) = [each for each in saved.said if ROWS_LEFT in each]
    measures = {"total coils": spring.total_coils, "free length": spring.free_length_mm}
    for row in PLAN.accept:
        name = row.figure.removesuffix("_mm").replace("_", " ")
        if name in measures:
            assert row.low is not None
            assert row.high is not None
            assert (name in left) is not (row.low <= measures[name] <= row.high)
    assert "total coils" in left
    assert left.endswith("; its clearances and the rows of its forces do.")


def test_what_leaves_no_row_of_the_list_says_nothing_of_rows():
    for saved in (came_out(BEFORE, outside_mm(BEFORE)), came_out_tension(BEFORE, 2.0)):
        assert not any(ROWS_LEFT in said for said in saved.said)


def test_coils_that_stand_apart_leave_the_rows_of_the_body_and_of_its_tension():
    (left,) = [said for said in came_out_pitch(BEFORE, 0.82).said if ROWS_LEFT in said]
    assert "body length" in left
    assert "initial tension" in left
    assert "coils" not in left


@pytest.mark.parametrize(("tension_n", "otherwise"), [(5.0, "it is a near fit"), (20.0, "wind it again")])
def test_more_tension_than_a_hand_winds_is_read_again_before_it_is_saved(tension_n: float, otherwise: str):
    """Nothing is judged before that, alone or with its diameter."""
    alone, both = came_out_tension(BEFORE, tension_n), came_out_with_tension(BEFORE, 6.4, tension_n)
    for saved in (alone, both):
        assert isinstance(saved.spring, ExtensionSpring)
        assert saved.answer == "measure first"
        assert saved.fit is None
        assert (saved.spring.initial_tension_n or 0.0) > tension_n / 2.0
        assert saved.said[0].startswith("It came out")
        assert "save" not in saved.said[0]
        assert saved.said[1].startswith("A hand gives such a coil")
        assert saved.said[2].startswith("If it reads so once more, it can be saved if heat and a pull take enough")
        assert not any("it can be saved, as told below" in said for said in saved.said)
    assert f"; else {otherwise}" in alone.said[2]


def test_with_its_diameter_too_the_verdict_says_on_what_it_hangs():
    saved = came_out_with_tension(BEFORE, 6.4, 3.8)
    assert saved.answer == "measure first"
    assert saved.fit is None
    assert "it can be saved if heat and a pull take enough of that away (" in saved.said[0]
    assert "; else " in saved.said[0]


def test_a_coil_that_no_bore_takes_is_wound_again_however_its_tension_reads():
    assert came_out_with_tension(BEFORE, 11.2, 20.0).answer == "wind again"
