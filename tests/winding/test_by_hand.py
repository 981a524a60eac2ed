"""What winding asks of the hand: the pull, the moment at the crank, what turns it, and where the bench stops."""

from __future__ import annotations

import re
from dataclasses import replace
from math import log10, pi

import pytest

from sourcing.stock.model import Bench, HandWinding, Trial
from sourcing.winding import pull, springback
from sourcing.winding.by_hand import bending_moment_n_mm, crank, force_at_handle_n, moment_with_pull_n_mm
from sourcing.winding.learning import learn
from sourcing.winding.model import Mandrel, ProfilePoint, WindingPlan, wire_of
from sourcing.winding.plan import plan_winding
from sourcing.winding.trials import Knowledge
from sourcing.winding.workings import workings

from .cases import BENCH, material, need, plan, planned, pocket, point, refused, spool

CRANK_MOMENTS_N_M = {0.5: 0.06, 0.8: 0.21, 1.0: 0.40, 1.5: 1.26, 2.0: 2.84, 3.0: 8.9}
"""winding_model.md, "Releasing the crank": music wire at its plastic moment."""


def music(wire_mm: float) -> Knowledge:
    return Knowledge(wire_mm, 206_000, 2220 - 820 * log10(wire_mm), 1.08, 0.06, pulled=True)


def thick(wire_mm: float, bench: Bench = BENCH) -> WindingPlan:
    """A plan for thick wire, which wants room."""
    working = (point(12 * wire_mm + 20, 20 * wire_mm**2), point(12 * wire_mm + 10, 45 * wire_mm**2))
    return planned(plan_winding(need(pocket=pocket(None, None), working=working), spool(wire_mm), bench))


# The pull


def test_what_a_coil_opens_to_has_the_pull_in_it_and_only_wire_that_yields_feels_it() -> None:
    """A tenth of the yield force leaves 0.991 of the moment (winding_model.md): 0.24 times as much of the diameter."""
    loose = replace(music(0.8), pulled=False)
    assert loose.mandrel_mm(9.6) == pytest.approx(6.917, abs=5e-4)
    pulled = replace(loose, pulled=True)
    assert pulled.pull_n == 40.0
    assert pulled.finished_mean_mm(6.917) < loose.finished_mean_mm(6.917)
    assert pulled.finished_mean_mm(pulled.mandrel_mm(9.6)) == pytest.approx(9.6)
    hard = 9.6 - pull.smaller_mm(6.917, 0.8, loose.flow_strain, (0.0, 0.1))
    assert hard / 9.6 == pytest.approx(1 - 0.241 * (1 - 0.991), abs=2e-4)
    assert pulled.finished_mean_mm(200.0) == loose.finished_mean_mm(200.0)


def test_the_pull_that_a_trial_was_wound_with_is_taken_out_of_what_it_teaches() -> None:
    """The same coil wound with a harder pull shows a wire that springs back more."""
    wire = material("music-wire")
    ratios = [learn(wire, 0.8, 2299, [Trial(6.0, 8.9, pull_n=force)]).flow_ratio for force in (0.0, 40.0, 120.0, 240.0)]
    assert ratios == sorted(ratios)
    assert ratios[-1] > ratios[0] * 1.005
    assert learn(wire, 0.8, 2299, [Trial(6.0, 8.9)]).flow_ratio == ratios[1]


def test_a_trial_whose_pull_is_not_said_was_wound_as_the_sheet_asks_and_so_surprises_nobody() -> None:
    known = learn(material("music-wire"), 0.8, 2299, ())
    coil = Trial(7.0, known.finished_mean_mm(7.0) + 0.8)
    assert known.after(coil, material("music-wire")).lessons[0].deviations == pytest.approx(0, abs=1e-9)


def test_the_plan_gives_the_diameter_that_its_own_pull_leaves() -> None:
    made = plan(mandrel_mm=6.0)
    flow_mpa = 6 * made.crank_moment_n_mm / 0.8**3
    kept = springback.moment_kept(made.pull_n / (flow_mpa * pi / 4 * 0.8**2))
    index = springback.released_index(6.8 / 0.8, flow_mpa / 206_000, kept)
    assert kept < 1
    assert made.finished.spring.mean_diameter_mm == pytest.approx(0.8 * index)


@pytest.mark.parametrize(
    ("pull_n", "said"),
    [
        (8.0, "No hand keeps that even (20 to 60 N, common practice, no source): draw it through two blocks"),
        (40.0, "A hand with pliers keeps that (20 to 60 N, common practice, no source); steadier, through two blocks"),
        (90.0, "No hand keeps that even"),
    ],
)
def test_a_pull_beyond_the_hand_is_made_with_a_block_or_a_weight(pull_n: float, said: str) -> None:
    made = pull.how_made(pull_n, "mm")
    assert made.startswith(said)
    assert "over a pulley" in made


def test_the_step_says_what_a_tenth_of_the_yield_force_does_to_the_coil() -> None:
    (step,) = [each for each in plan(spool(1.0)).steps if "steady pull" in each]
    assert "Never pull more than 189 N (19.3 kg), a tenth of what the wire yields at" in step
    assert "that alone makes the coil 0.02 mm smaller" in step
    assert "No hand" in " ".join(plan(spool(0.4), **small()).steps)


def small() -> dict[str, object]:
    return {"pocket": pocket(None, None), "working": (point(12, 1.0), point(8, 2.0))}


# The crank


@pytest.mark.parametrize("wire_mm", CRANK_MOMENTS_N_M)
def test_the_moment_that_bends_the_wire_is_the_known_one(wire_mm: float) -> None:
    known = music(wire_mm)
    moment = springback.plastic_moment_n_mm(known.flow_stress_mpa, wire_mm) / 1000
    assert moment == pytest.approx(CRANK_MOMENTS_N_M[wire_mm], rel=0.01, abs=0.005)


def test_the_pull_adds_its_share_to_the_moment_at_the_crank() -> None:
    """winding_model.md: x (1 + 2.36 c C_m)."""
    known = music(1.0)
    moment = springback.plastic_moment_n_mm(known.flow_stress_mpa, 1.0)
    share = pull.pull_fraction(known.pull_n, known.yield_n)
    whole = moment_with_pull_n_mm(moment, known.pull_n, 7.0, 1.0)
    assert whole == pytest.approx(moment * (1 + 2.356 * share * 8.0), rel=1e-3)
    assert force_at_handle_n(2840.0, 100.0) == pytest.approx(28.4)


@pytest.mark.parametrize(
    ("wire_mm", "drill"), [(0.5, True), (0.8, True), (1.0, True), (1.2, False), (1.5, False), (2.0, False)]
)
def test_a_hand_drill_serves_up_to_one_millimetre_of_music_wire(wire_mm: float, drill: bool) -> None:
    assert crank(music(wire_mm), Mandrel("rod", 7 * wire_mm), HandWinding()).drill_serves is drill


@pytest.mark.parametrize(("wire_mm", "drill"), [(1.19, True), (1.2, False), (1.4, False)])
def test_soft_wire_that_a_drill_could_turn_is_too_thick_for_it_from_its_limit_on(wire_mm: float, drill: bool) -> None:
    """Half as strong as music wire: the moment stays below the limit, so the diameter alone decides."""
    soft = Knowledge(wire_mm, 115_000, 800, 1.0, 0.06, pulled=True)
    turned, limits = crank(soft, Mandrel("rod", 7 * wire_mm), HandWinding()), HandWinding()
    assert turned.moment_n_mm < limits.vice_and_crank_n_mm
    assert turned.drill_serves is drill


def test_a_hard_pull_on_a_large_coil_is_too_much_for_a_drill() -> None:
    assert not crank(music(1.0), Mandrel("rod", 14.0), HandWinding()).drill_serves


def test_the_crank_of_a_cone_is_that_of_its_large_end() -> None:
    cone = Mandrel("turned", None, (ProfilePoint(0, 6.0), ProfilePoint(5, 12.0)))
    assert crank(music(1.0), cone, HandWinding()) == crank(music(1.0), Mandrel("turned", 12.0), HandWinding())


def test_no_drill_is_named_where_the_moment_is_beyond_it() -> None:
    setting_up = " ".join(each for each in thick(1.5).steps if each.startswith("Set "))
    assert "with a crank" in setting_up
    assert "No drill: it serves below 0.60 N·m and wire of 1.20 mm" in setting_up
    assert "hand drill" not in setting_up
    low = replace(BENCH, hand_winding=HandWinding(vice_and_crank_n_mm=200))
    assert any("with a crank" in each for each in plan(bench=low).steps)
    assert any("in the hand drill" in each for each in plan().steps)


def test_turns_are_those_of_the_mandrel_and_a_geared_drill_s_are_counted_at_its_chuck() -> None:
    def said(tool: str) -> str:
        return " ".join(plan(bench=replace(BENCH, tools=("vice", tool))).steps)

    assert "Count turns at its chuck: a geared handle makes fewer" in said("hand-drill")
    assert "Hold the handle of the drill and ease it back: the coil drives the mandrel by about" in said("hand-drill")
    assert "geared" not in said("lathe") + said("vice") + said("bench-drill")
    assert "Hold the crank and ease it back: the coil drives the mandrel by about" in said("vice")
    assert all("turns of the crank" not in said(tool) for tool in ("hand-drill", "lathe", "vice", "bench-drill"))


def test_a_lathe_serves_whatever_the_moment() -> None:
    assert any("in the lathe" in each for each in thick(2.0, replace(BENCH, tools=("lathe", "hand-drill"))).steps)


def test_the_force_at_the_handle_is_said_and_whether_its_length_is_assumed() -> None:
    made = plan(spool(1.0), mandrel_mm=7.0)
    assert made.crank.force_n == pytest.approx((made.crank_moment_n_mm + 40 * 8 / 2) / 100)
    said = "with the pull 0.56 N·m: 5.6 N at the handle of a crank of 100 mm"
    assert any(f"{said}, assumed." in each for each in made.steps)
    limits, stated = HandWinding(crank_mm=200), frozenset({"hand_winding.crank"})
    long = plan(spool(1.0), replace(BENCH, hand_winding=limits, stated=stated), mandrel_mm=7.0)
    assert any("2.8 N at the handle of a crank of 200 mm." in each for each in long.steps)


def test_the_workings_lead_to_the_force_at_the_handle_and_to_what_the_pull_leaves() -> None:
    made = plan(spool(1.0), mandrel_mm=7.0)
    by_figure = {each.figure: each.value for each in workings(made, spool(1.0), BENCH)}
    assert by_figure["moment_with_pull_n_mm"] == pytest.approx(made.crank.moment_n_mm)
    assert by_figure["force_at_handle_n"] == pytest.approx(made.crank.force_n)
    assert by_figure["moment_kept"] == pytest.approx(1 - 0.9 * by_figure["pull_fraction"] ** 2, abs=2e-4)


# Where it stops


def test_wire_above_the_limit_by_moment_is_refused_though_its_diameter_is_below() -> None:
    bench = replace(BENCH, hand_winding=HandWinding(stop_n_mm=200))
    refusal = refused(plan_winding(need(), spool(0.8), bench))
    assert refusal.rule == "hand-winding-limit"
    assert refusal.why.startswith("bending wire of 0.80 mm takes 0.21 N·m at the crank: the bench stops at 0.20 N·m")
    plan(bench=replace(BENCH, hand_winding=HandWinding(stop_n_mm=250)))


def test_the_usual_moment_stops_no_music_wire_that_the_usual_diameter_lets_through() -> None:
    moment = bending_moment_n_mm(wire_of(spool(2.49)))
    assert moment is not None
    assert moment < HandWinding().stop_n_mm


def test_softer_wire_of_the_same_size_is_wound_where_harder_is_not() -> None:
    bench = replace(BENCH, hand_winding=HandWinding(stop_n_mm=200))
    refusal = plan_winding(need(), spool(0.8, name="phosphor-bronze"), bench)
    assert getattr(refusal, "rule", None) != "hand-winding-limit"


def test_caution_comes_by_moment_too() -> None:
    limits = HandWinding(caution_n_mm=200)
    assert any("throws the crank" in each for each in plan(bench=replace(BENCH, hand_winding=limits)).cautions)


def test_a_bench_that_has_raised_its_limits_is_told_so_where_it_matters() -> None:
    raised = replace(BENCH, hand_winding=HandWinding(stop_mm=4.0, stop_n_mm=20_000))
    assert any("this bench has raised its limits" in each for each in thick(2.8, raised).cautions)
    assert not any("raised its limits" in each for each in thick(2.0, raised).cautions)


def test_a_double_torsion_spring_asks_twice_as_much_of_the_crank() -> None:
    one, two = (crank(music(0.8), Mandrel("rod", 6.0), HandWinding(), wires) for wires in (1, 2))
    assert (two.bending_n_mm, two.moment_n_mm) == pytest.approx((2 * one.bending_n_mm, 2 * one.moment_n_mm))


# A mandrel that does not serve


@pytest.mark.parametrize(
    ("mandrel_mm", "rule", "said"),
    [
        (0.7, "mandrel-too-thin", "a mandrel of 0.70 mm is thinner than the wire of 0.80 mm; expected 5.2"),
        (
            12.0,
            "mandrel-too-large",
            "the mandrel of 12.00 mm does not serve: it is larger than the inside of any spring here, 9.20",
        ),
        (
            8.0,
            "no-diameter-serves",
            "the mandrel of 8.00 mm does not serve: on it wire of 0.80 mm comes out with a mean diameter",
        ),
    ],
)
def test_a_mandrel_that_cannot_serve_is_told_with_those_that_have_room(mandrel_mm: float, rule: str, said: str) -> None:
    refusal = refused(plan_winding(need(), spool(0.8), BENCH, mandrel_mm))
    assert (refusal.rule, refusal.why[: len(said)]) == (rule, said)
    low, high = (float(each) for each in re.findall(r"expected ([\d.]+) mm to ([\d.]+) mm", refusal.why)[0])
    coils = [learn(material("music-wire"), 0.8, 2299, ()).finished_mean_mm(each) * 0.9875 for each in (low, high)]
    assert coils == pytest.approx([6 + 0.2 + 0.8, 11 - 0.2 - 0.8], abs=0.02)


# How the wire is anchored


def test_a_rod_that_may_be_a_hard_drill_is_not_drilled() -> None:
    (step,) = [each for each in plan(mandrel_mm=6.0).steps if each.startswith("Set up")]
    assert "bend its end under a jaw of the chuck, or clamp it to the rod" in step
    assert "wind on it, not on the flutes" in step
    assert "cross hole" not in step


def test_a_rod_on_a_crank_has_no_chuck_to_anchor_the_wire_in() -> None:
    (step,) = [each for each in plan(bench=replace(BENCH, tools=("vice",)), mandrel_mm=6.0).steps if "Set up" in each]
    assert "slot ground across the rod's end" in step
    assert "jaw" not in step


def test_a_turned_mandrel_gets_a_cross_hole() -> None:
    (step,) = [each for each in plan(mandrel_mm=5.6).steps if each.startswith("Set up")]
    assert "cross hole or slot of the mandrel" in step
    assert "flutes" not in step
