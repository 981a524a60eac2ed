"""An extension spring with threaded plugs, from its steps to what is said of one that came out otherwise."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.quantities import show_diameter, show_length, show_wire
from sourcing.sheets.description_extension import tables
from sourcing.sheets.made_table import made_table
from sourcing.springs.describe_extension import describe_extension
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.plug_thread import over_crests_mm
from sourcing.springs.pulled import body_length_mm
from sourcing.stock.model import Bench
from sourcing.winding.extension.ends import hook_limit
from sourcing.winding.saving.coil import SenselessError
from sourcing.winding.saving.extension.body import wanted_of
from sourcing.winding.saving.extension.diameter import came_out
from sourcing.winding.saving.extension.length import came_out_pitch, pulled_to

from .cases import BENCH, point, wanted
from .test_extension import a_plan, wound
from .test_saving_extension import a_coil, outside_mm, plugged

NO_OVEN = Bench(oven_c=None)


def test_plugs_go_in_after_heat_and_their_eyes_are_set_to_the_length_wanted() -> None:
    """Heat changes the diameter, and the length of the body with it: what is set before it does not stay."""
    plan = a_plan(hooks=Hooks.THREADED_PLUG)
    spring, as_wound = wound(plan), plan.finished.spring
    assert isinstance(as_wound, ExtensionSpring)
    (heated,) = (number for number, step in enumerate(plan.steps) if step.startswith("Relieve the stress"))
    (screwed,) = (number for number, step in enumerate(plan.steps) if step.startswith("Screw a plug"))
    assert heated < screwed
    assert "before its plugs go in" in plan.steps[heated]
    assert f"{show_length(spring.free_length_mm, 'mm')} lie between them" in plan.steps[screwed]
    assert f"{spring.active_coils:.2f} coils" in plan.steps[screwed]
    assert as_wound.free_length_mm == spring.free_length_mm
    bare = a_plan(hooks=Hooks.THREADED_PLUG, bench=NO_OVEN)
    assert any(step.startswith("Screw a plug") for step in bare.steps)


def test_the_thread_that_the_plugs_must_have_is_told_of_the_coils_as_heat_has_left_them() -> None:
    plan = a_plan(hooks=Hooks.THREADED_PLUG)
    spring = wound(plan)
    (at,) = (number for number, step in enumerate(plan.steps) if step.startswith("The thread of the plugs"))
    assert plan.steps[at + 1].startswith("Screw a plug")
    assert plan.steps[at - 1].startswith("Relieve the stress")
    told = plan.steps[at]
    assert f"its pitch is one wire, {show_wire(spring.wire_diameter_mm)}, and it is of the coil's hand" in told
    assert f"The coils should now be {show_diameter(spring.inside_diameter_mm)} inside" in told
    assert f"below {show_diameter(spring.mean_diameter_mm)}, where the turns touch" in told
    crests_mm = over_crests_mm(spring.inside_diameter_mm, spring.wire_diameter_mm)
    assert f"measures {show_diameter(crests_mm)} over its crests" in told
    assert not any("The thread of the plugs" in step for step in a_plan().steps)


def test_of_a_spring_with_plugs_the_coils_between_them_are_counted() -> None:
    """However deep a plug is screwed, the body keeps its coils: those between the plugs are what it changes."""
    plan = a_plan(hooks=Hooks.THREADED_PLUG)
    (row,) = (each for each in plan.accept if each.figure == "coils_between_plugs")
    assert row.low is not None
    assert row.high is not None
    assert (row.low + row.high) / 2 == pytest.approx(wound(plan).active_coils)
    assert "Too many: screw a plug deeper" in row.if_not
    assert not any(each.figure == "total_coils" for each in plan.accept)


def test_what_a_spring_with_plugs_has_only_once_they_are_in_is_told_after_heat_and_by_its_own_name() -> None:
    rows = {name: cells for name, *cells in made_table(a_plan(hooks=Hooks.THREADED_PLUG), "mm")[1]}
    assert not any("hook" in name for name in rows)
    for name in ("free length between the eyes", "coils between plugs"):
        as_wound, after_heat = rows[name]
        assert as_wound == "-"
        assert after_heat[0].isdigit()
    cold = {name: cells for name, *cells in made_table(a_plan(hooks=Hooks.THREADED_PLUG, bench=NO_OVEN), "mm")[1]}
    assert cold["free length between the eyes"][0][0].isdigit()
    assert "free length inside the hooks" in [name for name, *_ in made_table(a_plan(), "mm")[1]]


def test_how_a_spring_with_plugs_is_let_down_and_goes_in_speaks_of_eyes() -> None:
    plan = a_plan(hooks=Hooks.THREADED_PLUG)
    said = " ".join((*plan.steps[:2], *plan.goes_in.said))
    assert "a cord tied through the eyes of both its plugs" in said
    assert "Fitted at 48.0 mm" in said
    assert "hook" not in said.lower()
    hooked = a_plan()
    assert "Hooked in at 48.0 mm" in " ".join(hooked.goes_in.said)
    assert "a cord tied through both its hooks" in " ".join(hooked.steps[:2])


def test_plugs_that_have_no_room_are_told_as_plugs() -> None:
    for hooks, name in ((Hooks.THREADED_PLUG, "room for plugs"), (Hooks.FULL_LOOP, "room for hooks")):
        spring = wound(a_plan(hooks=hooks))
        limit = hook_limit(replace(spring, free_length_mm=body_length_mm(spring) - 1.0), "mm")
        assert limit is not None
        assert limit.limit == name
        assert ("hooks" in limit.why) is (hooks is Hooks.FULL_LOOP)


def test_the_figures_of_a_spring_with_plugs_speak_of_no_hooks() -> None:
    figures = "\n".join(next(tables(describe_extension(wound(a_plan(hooks=Hooks.THREADED_PLUG))), "mm")))
    assert "hook" not in figures
    assert "free length between the eyes" in figures
    hooked = "\n".join(next(tables(describe_extension(wound(a_plan())), "mm")))
    assert "free length inside the hooks" in hooked
    assert "wire length with hooks" in hooked


def test_coils_between_plugs_that_are_screwed_in_after_heat_are_counted_after_it() -> None:
    coil = a_coil(BENCH, hooks=Hooks.THREADED_PLUG, working=(point(120, wanted(24, 0.5)), point(95, wanted(14.5, 0.3))))
    saved = came_out(coil, outside_mm(coil) + 0.3)
    assert isinstance(saved.spring, ExtensionSpring)
    coils = f"{saved.spring.active_coils:.2f} coils between its plugs give the rate that was meant, counted after heat"
    assert f"Screw its plugs so deep that {coils}" in " ".join(saved.said)
    assert f"With {wanted_of(coil).active_coils:.2f} coils between its plugs" in " ".join(saved.said)


def test_a_coil_with_plugs_that_came_out_too_small_keeps_the_spare_turns_that_it_needs() -> None:
    coil = a_coil(BENCH, hooks=Hooks.THREADED_PLUG, working=(point(120, wanted(24, 0.5)), point(95, wanted(14.5, 0.3))))
    small, large = (came_out(coil, outside_mm(coil) + off_mm) for off_mm in (-0.2, 0.3))
    assert small.answer == large.answer == "change"
    assert isinstance(small.spring, ExtensionSpring)
    before_heat = small.spring.total_coils * (1.0 + coil.change_to_come)
    assert small.spring.total_coils > wanted_of(coil).total_coils
    left = f"Leave spare turns on it for that: {before_heat:.2f} coils, counted before heat, those on both plugs"
    assert any(said.startswith(left) for said in small.said)
    assert not any("spare turns" in said for said in large.said)


def test_coils_on_a_plug_lie_at_the_pitch_of_its_thread_however_far_apart_they_came_out() -> None:
    """Six coils sit on the two plugs: the gap is between the others only."""
    coil = plugged(working=(point(120, wanted(24, 3.0)), point(95, wanted(14.5, 1.8))))
    spring, gap_mm = wanted_of(coil), 0.5
    longer = show_length((spring.total_coils - 6.0) * gap_mm, "mm")
    said = came_out_pitch(coil, spring.wire_diameter_mm + gap_mm).said
    assert any(f"Its body is {longer} longer so" in each for each in said), said


def test_a_length_that_no_spring_with_plugs_has_is_asked_for_between_their_eyes() -> None:
    with pytest.raises(SenselessError, match=r"expected its length between the eyes$"):
        pulled_to(plugged(), 5.0)
