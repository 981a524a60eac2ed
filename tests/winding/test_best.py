"""Which wire to wind from."""

from __future__ import annotations

from dataclasses import replace

from sourcing.winding.best import best_plan
from sourcing.winding.model import WindingPlan

from .cases import BENCH, need, planned, pocket, point, spool


def test_every_spool_has_its_own_answer() -> None:
    winding = best_plan(need(), [spool(0.4), spool(0.8), spool(1.2)], BENCH)
    assert [isinstance(each.result, WindingPlan) for each in winding.results] == [False, True, False]
    assert winding.best is not None
    assert winding.best.wire == "spool 0.8"
    assert winding.refusal is None


def test_the_likelier_wire_wins_and_then_the_lower_stress() -> None:
    untried, tried = spool(0.9, name="stainless-1.4310"), spool(0.9)
    best = best_plan(need(), [untried, tried], BENCH).best
    assert best is not None
    assert best.material == "music-wire"


def test_where_no_spool_serves_wire_to_buy_is_planned() -> None:
    winding = best_plan(need(), [spool(0.4)], BENCH)
    assert winding.best is not None
    assert winding.best.wire is None
    assert 0.7 <= winding.best.wire_diameter_mm <= 1.0


def test_where_a_spool_serves_nothing_is_bought() -> None:
    assert len(best_plan(need(), [spool(0.4), spool(0.8)], BENCH).results) == 2


def test_wire_to_buy_is_stainless_where_music_wire_would_rust() -> None:
    best = best_plan(need(surroundings=("wet",)), [spool(0.8)], BENCH).best
    assert best is not None
    assert (best.wire, best.material) == (None, "stainless-1.4310")


def test_where_only_thicker_wire_would_serve_the_hand_winding_limit_is_the_reason() -> None:
    heavy = need(pocket=pocket(32, 18), working=(point(62, 250), point(40, 500)))
    winding = best_plan(heavy, [spool(1.0), spool(1.2)], BENCH)
    assert winding.best is None
    assert winding.refusal is not None
    assert winding.refusal.rule == "hand-winding-limit"


def test_a_reason_that_all_wires_share_is_said_once() -> None:
    winding = best_plan(need(working=(point(24), point(14))), [spool(0.4), spool(0.8)], BENCH)
    assert winding.refusal is not None
    assert winding.refusal.rule == "no-force-wanted"


def test_without_any_spool_a_missing_force_is_still_the_reason() -> None:
    refusal = best_plan(need(working=(point(24),)), [], BENCH).refusal
    assert refusal is not None
    assert refusal.rule == "no-force-wanted"


def test_where_wires_fail_for_different_reasons_the_nearest_are_told() -> None:
    wires = [spool(0.4), spool(1.2), spool(0.8, length_left_mm=100)]
    refusal = best_plan(need(), wires, BENCH, may_buy=False).refusal
    assert refusal is not None
    assert refusal.rule == "no-wire-serves"
    assert all(wire.id in refusal.why for wire in wires)


def test_a_mandrel_that_is_given_holds_for_every_wire() -> None:
    winding = best_plan(need(), [spool(0.8), spool(0.9)], replace(BENCH, rods_mm=()), mandrel_mm=5.8)
    plans = [planned(each.result) for each in winding.results]
    assert {each.mandrel.diameter_mm for each in plans} == {5.8}
