"""Winding an extension spring: tight, with hooks counted, and an initial tension that is a band from nothing."""

from __future__ import annotations

import re
from dataclasses import replace
from math import pi
from random import Random

import pytest

from sourcing.need.model import Need, Pocket, WorkingPoint
from sourcing.springs import pulled
from sourcing.springs.geometry import turn_length_mm
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.pulled import force_n, rate_n_per_mm
from sourcing.stock.model import Bench
from sourcing.winding.doubts import DIAMETER_POWER
from sourcing.winding.extension.hand_tension import LOST_IN_HEAT, TENSION_DOUBTED
from sourcing.winding.extension.task import ExtensionTask
from sourcing.winding.model import WindingPlan, Wire
from sourcing.winding.plan import plan_winding
from sourcing.winding.turns import SPARE_TURNS, TAILS_MM
from tests.winding.cases import planned, point, refused, spool, wanted

BENCH = Bench()


def a_need(**changes: object) -> Need:
    """A catch: 11 mm round it, 4.2 N at 48 mm and 17 N at 70 mm."""
    case = {"pocket": Pocket(wanted(11)), "working": (point(70, 17), point(48, 4.2)), "hooks": Hooks.FULL_LOOP}
    return Need(job="catch", kind="extension", **{**case, **changes})


def a_plan(wire_mm: float = 0.8, bench: Bench = BENCH, **changes: object) -> WindingPlan:
    return planned(plan_winding(a_need(**changes), spool(wire_mm, length_left_mm=20_000.0), bench))


def wound(plan: WindingPlan) -> ExtensionSpring:
    assert isinstance(plan.wanted, ExtensionSpring)
    return plan.wanted


@pytest.mark.parametrize("wire_mm", [0.8, 0.9, 1.0])
def test_the_wanted_forces_are_met_by_rate_and_initial_tension_together(wire_mm: float) -> None:
    spring = wound(a_plan(wire_mm))
    for length, force in ((48.0, 4.2), (70.0, 17.0)):
        got = force_n(spring, length, rate_n_per_mm(spring), spring.initial_tension_n or 0.0)
        assert got == pytest.approx(force, rel=0.15)


def test_it_is_laid_wire_against_wire_and_what_is_laid_becomes_body_and_hooks() -> None:
    plan = a_plan()
    spring, made = wound(plan), plan.finished.spring
    assert isinstance(made, ExtensionSpring)
    assert plan.pitch_on_mandrel_mm == plan.wire_diameter_mm
    body_mm = made.total_coils * turn_length_mm(made.mean_diameter_mm, made.wire_diameter_mm)
    assert plan.coil_length_mm == pytest.approx(body_mm + 2 * pi * made.mean_diameter_mm)
    assert plan.cut_length_mm > plan.coil_length_mm + TAILS_MM
    assert plan.turns_to_wind > spring.total_coils + 2.0
    assert plan.turns_to_spare == SPARE_TURNS


def test_half_loops_take_half_the_wire_of_full_ones() -> None:
    full, half = a_plan(), a_plan(hooks=Hooks.HALF_LOOP)
    hooks_mm = [
        each.coil_length_mm
        - each.finished.spring.total_coils
        * turn_length_mm(each.finished.spring.mean_diameter_mm, each.wire_diameter_mm)
        for each in (full, half)
    ]
    per_diameter = [mm / each.finished.spring.mean_diameter_mm for mm, each in zip(hooks_mm, (full, half), strict=True)]
    assert per_diameter[1] == pytest.approx(per_diameter[0] / 2)


def test_its_initial_tension_is_a_band_from_nothing_and_heat_takes_a_quarter_at_least() -> None:
    plan = a_plan()
    before, after = (made.bands["initial_tension_n"] for made in (plan.finished, plan.after_heat) if made is not None)
    assert (before.low, after.low) == (0.0, 0.0)
    assert after.high < 0.8 * before.high
    assert 0.0 <= (wound(plan).initial_tension_n or 0.0) <= after.high


def test_without_an_oven_it_keeps_what_the_hand_gave_it() -> None:
    plan = a_plan(bench=Bench(oven_c=None))
    assert plan.after_heat is None
    assert any("it keeps an initial tension of anything from nothing to" in note for note in plan.notes)


def test_an_initial_tension_that_no_hand_winds_is_out_of_its_tolerance() -> None:
    refusal = plan_winding(
        a_need(initial_tension_n=wanted(12.0), working=(point(70, 20), point(48, 13))), spool(), BENCH
    )
    assert "and wound by hand it keeps" in refused(refusal).why


def test_a_need_without_a_force_says_how_to_measure_one() -> None:
    refusal = refused(plan_winding(a_need(working=(point(70), point(48))), spool(), BENCH))
    assert refusal.rule == "no-force-wanted"
    assert "luggage scale" in refusal.why


def test_the_body_and_its_hooks_must_have_room_in_the_free_length() -> None:
    refusal = refused(plan_winding(a_need(free_length_mm=wanted(20, 1)), spool(1.0), BENCH))
    assert refusal.rule == "no-diameter-serves"


def test_the_checks_weigh_it_at_two_lengths_and_look_for_gaps() -> None:
    figures = [row.figure for row in a_plan().accept]
    assert figures == [
        "outside_diameter_mm",
        "total_coils",
        "body_length_mm",
        "free_length_mm",
        "initial_tension_n",
        "scale_at_48_mm_g",
        "force_at_48_mm_n",
        "scale_at_70_mm_g",
        "force_at_70_mm_n",
    ]


@pytest.mark.parametrize(
    ("hooks", "words"),
    [
        (Hooks.FULL_LOOP, "one whole coil at each end"),
        (Hooks.HALF_LOOP, "half a coil at each end"),
        (Hooks.SIDE_HOOK, "in line with the side of the body"),
        (Hooks.EXTENDED_HOOK, "straighten it where it leaves the body"),
        (Hooks.THREADED_PLUG, "Screw a plug 3 coils deep"),
    ],
)
def test_the_steps_say_how_each_kind_of_hook_is_made(hooks: Hooks, words: str) -> None:
    steps = " ".join(a_plan(hooks=hooks).steps)
    assert words in steps
    assert ("a nick is where a hook breaks" in steps) == (hooks is not Hooks.THREADED_PLUG)


@pytest.mark.parametrize("hooks", [each for each in Hooks if each is not Hooks.THREADED_PLUG])
def test_turns_to_spare_are_cut_off_once_a_hook_is_good_and_heat_comes_after_the_hooks(hooks: Hooks) -> None:
    steps = " ".join(a_plan(hooks=hooks).steps).lower()
    order = [
        re.search(words, steps)
        for words in (
            "turns more to spare, so that a spoiled hook can be cut off",
            "bend one hook|bend the hooks|bend each hook",
            "cut off the rest|cut the rest off",
            "where a hook leaves the body",
            "relieve the stress with the hooks bent",
        )
    ]
    places = [each.start() for each in order if each]
    assert len(places) == len(order)
    assert places == sorted(places)


def test_a_spring_with_plugs_is_told_of_no_hooks_and_its_turns_on_them_are_wound_before_it_comes_off() -> None:
    plan = a_plan(hooks=Hooks.THREADED_PLUG)
    steps = plan.steps
    (laid,) = (number for number, step in enumerate(steps) if "3 coils for each plug among them" in step)
    (cut,) = (number for number, step in enumerate(steps) if step.startswith("Count off"))
    (eased,) = (number for number, step in enumerate(steps) if "ease it back" in step)
    assert laid < eased < cut
    assert "those that go onto both plugs among them" in steps[cut]
    for step in steps:
        assert "hook" not in step.replace("bend a small hook at the free end", "").replace("hook or eye", ""), step
    for row in plan.accept:
        assert "hook" not in row.if_not, row.figure


@pytest.mark.parametrize("points", [(point(70, 17), point(48, 4.2)), (point(70, 17),)])
def test_the_coils_on_both_plugs_are_wound_and_cut_with_the_body_but_do_not_act(
    points: tuple[WorkingPoint, ...],
) -> None:
    """Three coils sit on each plug: six more than act, each its own length of wire."""
    plan = a_plan(hooks=Hooks.THREADED_PLUG, working=points)
    spring, made = wound(plan), plan.finished.spring
    assert isinstance(made, ExtensionSpring)
    assert spring.total_coils == pytest.approx(spring.active_coils + 6.0)
    one_mm = turn_length_mm(made.mean_diameter_mm, made.wire_diameter_mm)
    assert plan.cut_length_mm > (made.active_coils + 5.9) * one_mm + TAILS_MM
    assert plan.turns_to_wind > spring.total_coils
    assert spring.free_length_mm > (spring.active_coils + 7.0) * spring.wire_diameter_mm - 1e-9
    got = force_n(spring, 70.0, rate_n_per_mm(spring), spring.initial_tension_n or 0.0)
    assert got == pytest.approx(17.0, rel=0.15)


def test_one_force_alone_leaves_length_and_tension_to_be_chosen() -> None:
    spring = wound(a_plan(working=(point(70, 17),)))
    assert spring.free_length_mm < 70.0
    assert (spring.initial_tension_n or 0.0) > 0.0


def test_how_far_it_may_be_pulled_and_what_breaks_first_stands_on_the_sheet() -> None:
    said = " ".join(a_plan(pull_to_fit_mm=75.0).goes_in.said)
    assert "To go in it is pulled to 75.0 mm" in said
    assert "what gives first is the hook, by torsion where it leaves the body" in said


DRAWS, SAMPLING_NOISE = 10_000, 0.02


def a_task(share: float) -> tuple[ExtensionTask, ExtensionSpring]:
    """A catch's spring whose initial tension lies at a share of the band, with forces wanted to match it."""
    spring = wound(a_plan())
    task = ExtensionTask(a_need(pocket=Pocket()), BENCH, Wire(spring.material, 0.8), spring.tensile_strength_mpa or 0)
    spring = replace(spring, initial_tension_n=share * task.tension_band_n(spring).high)
    rate, tension_n = rate_n_per_mm(spring), spring.initial_tension_n or 0.0
    points = tuple(point(length, force_n(spring, length, rate, tension_n)) for length in (70.0, 48.0))
    return replace(task, need=replace(task.need, working=points)), spring


def sampled(task: ExtensionTask, spring: ExtensionSpring, diameter_sd_mm: float) -> float:
    """The share of springs, their tension drawn from the middle of what a hand gives, that meet both forces."""
    random, most_n, rate = Random(20261125), task.tension_band_n(spring).high, rate_n_per_mm(spring)
    spread, right = task.spread_of(spring, diameter_sd_mm), 0
    for _ in range(DRAWS):
        tension_n = random.gauss(most_n / 2, most_n / 4)
        free_mm = random.gauss(spring.free_length_mm, spread.free_length_sd_mm)
        wider = random.gauss(spring.mean_diameter_mm, diameter_sd_mm) / spring.mean_diameter_mm
        real = rate * random.lognormvariate(0.0, spread.rate_sd) * wider**-DIAMETER_POWER
        forces = [(p.force_n, tension_n + real * (p.at_mm - free_mm)) for p in task.need.working]
        right += tension_n > 0.0 and all(
            want is not None and want.smallest <= got <= want.largest for want, got in forces
        )
    return right / DRAWS


@pytest.mark.parametrize("share", [0.5, 0.9])
def test_the_chance_counts_what_a_hand_winds_wherever_in_its_band_the_tension_is_planned(share: float) -> None:
    task, spring = a_task(share)
    chance = task.judged(spring, lambda each: task.spread_of(each, 0.03)).fit.chance
    assert chance == pytest.approx(sampled(task, spring, 0.03), abs=SAMPLING_NOISE)


def test_a_tension_near_the_most_that_a_hand_gives_seldom_comes_out() -> None:
    low, middle = (
        task.judged(spring, lambda each, task=task: task.spread_of(each, 0.03)).fit.chance
        for task, spring in (a_task(0.9), a_task(0.5))
    )
    assert low < 0.6 * middle


def test_a_trial_coil_teaches_its_diameter_and_nothing_of_its_tension() -> None:
    """Of the three doubts a trial takes away only that of the diameter, which is small here."""
    tries = a_plan().tries
    assert tries.after_a_trial == pytest.approx(tries.first, abs=0.05)


def test_so_much_more_tension_is_wound_as_heat_takes_away_and_the_sheet_says_so() -> None:
    plan = a_plan()
    made = plan.finished.spring
    assert isinstance(made, ExtensionSpring)
    kept_n, wound_n = wound(plan).initial_tension_n or 0.0, made.initial_tension_n or 0.0
    assert wound_n == pytest.approx(kept_n / (1 - LOST_IN_HEAT[0]))
    (said,) = (note for note in plan.notes if "where heat takes a quarter" in note)
    assert ("too little" in said) == (kept_n / (1 - LOST_IN_HEAT[1]) > plan.finished.bands["initial_tension_n"].high)


def test_the_least_tension_to_accept_is_what_the_forces_bear() -> None:
    plan = a_plan()
    spring, rate = wound(plan), rate_n_per_mm(wound(plan))
    (row,) = (each for each in plan.accept if each.figure == "initial_tension_n")
    wanted_n = {48.0: 4.2 * 0.85, 70.0: 17.0 * 0.85}
    least_n = max(force - rate * (length - spring.free_length_mm) for length, force in wanted_n.items())
    assert row.low == pytest.approx(max(0.0, least_n), abs=0.01)
    assert row.high is not None
    assert row.high <= TENSION_DOUBTED * hand_most_n(plan) + 0.05


def hand_most_n(plan: WindingPlan) -> float:
    assert plan.after_heat is not None
    return plan.after_heat.bands["initial_tension_n"].high


def test_heat_adds_coils_to_the_body_and_tightens_the_hooks_and_the_length_wanted_is_the_one_after_it() -> None:
    """Body and hooks make the length in both states; the hooks are bent and measured before the heat."""
    made = planned(plan_winding(a_need(), spool(0.8), replace(BENCH, oven_c=250.0)))
    assert made.after_heat is not None
    wound, heated = made.finished.spring, made.after_heat.spring
    assert isinstance(wound, ExtensionSpring)
    assert isinstance(heated, ExtensionSpring)
    share = heated.mean_diameter_mm / wound.mean_diameter_mm
    hooks = [each.free_length_mm - pulled.body_length_mm(each) for each in (wound, heated)]
    assert share < 1.0
    assert hooks[1] == pytest.approx(hooks[0] * share)
    assert pulled.body_length_mm(heated) > pulled.body_length_mm(wound)
    assert any(f"measure {wound.free_length_mm:.1f} mm between their insides" in step for step in made.steps)
