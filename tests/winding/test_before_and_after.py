"""What a sheet says before and after the winding: the old spring, letting go, spacing, checks, going in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest

from sourcing.need.model import Need
from sourcing.quantities import show_energy
from sourcing.sheets.winding_text import answer_lines
from sourcing.springs.model import Hand
from sourcing.springs.stored import stored_energy_n_mm
from sourcing.winding.model import WindingPlan
from sourcing.winding.plan import plan_winding

from . import test_conical_ends, test_extension, test_torsion
from .cases import BENCH, need, planned, pocket, point, refused, spool

CONE, PULLED, TURNED = test_conical_ends.cone_need(), test_extension.a_need(), test_torsion.need()
NEEDS: Mapping[str, tuple[Need, float]] = {
    "compression": (need(), 0.8),
    "conical": (CONE, 0.9),
    "extension": (PULLED, 0.8),
    "torsion": (TURNED, 1.2),
}
every_kind = pytest.mark.parametrize("kind", NEEDS)


def plan_of(kind: str, **changes: object) -> WindingPlan:
    wish, wire_mm = NEEDS[kind]
    return planned(plan_winding(replace(wish, **changes), spool(wire_mm, length_left_mm=20_000.0), BENCH))


def lines_of(kind: str, **changes: object) -> str:
    wish, _ = NEEDS[kind]
    return " ".join(" ".join(answer_lines(plan_of(kind, **changes), replace(wish, **changes))).split())


# The old spring


@every_kind
def test_the_first_steps_photograph_mark_hold_captive_and_let_down_the_old_spring(kind: str) -> None:
    first, second, *_ = plan_of(kind).steps
    assert first.startswith("Photograph the old spring in place and mark both ends")
    assert second.startswith("Let it down slowly and captive")
    assert "eye protection" in second
    assert any(word in second for word in ("cord", "clamp"))


@every_kind
def test_the_sheet_says_the_joules_that_the_wanted_spring_holds_in_its_place(kind: str) -> None:
    made = plan_of(kind)
    at = {"compression": (24.0, 14.0), "conical": (12.0, 7.0), "extension": (48.0, 70.0), "torsion": (30.0, 120.0)}
    for each in at[kind]:
        assert show_energy(stored_energy_n_mm(made.wanted, each)) in made.steps[1]


def test_the_joules_of_a_line_through_two_forces_are_those_of_a_hand_calculation() -> None:
    """1.3 N/mm, 22 N at 14 mm: pressed by 16.92 mm, 186 N·mm; at 24 mm by 6.92 mm, 31 N·mm."""
    assert "0.031 J as fitted (24.0 mm) and 0.19 J at 14.0 mm" in plan_of("compression").steps[1]


def test_a_spring_that_holds_a_joule_is_said_to_be_thrown_hard_and_a_weaker_one_is_not() -> None:
    strong = need(pocket=pocket(None, None), working=(point(60, 40), point(30, 120)))
    made = planned(plan_winding(strong, spool(2.0), BENCH))
    assert stored_energy_n_mm(made.wanted, 30.0) > 1000.0
    assert "thrown hard" in made.steps[1]
    assert "thrown hard" not in plan_of("compression").steps[1]


@every_kind
def test_letting_the_old_spring_down_captive_is_said_once(kind: str) -> None:
    said = lines_of(kind)
    assert said.count("captive") == 1
    assert "Keep what is left" not in said


# The hand


@pytest.mark.parametrize("kind", ["compression", "conical", "extension"])
def test_the_first_step_tells_how_a_hand_is_seen_and_that_an_unknown_one_is_kept(kind: str) -> None:
    assert "front wires of a right-hand spring climb to the right" in plan_of(kind).steps[0]
    assert "no hand was said, so wind the new one the same way" in plan_of(kind).steps[0]
    assert "the need says left-hand, so see that the old one is" in plan_of(kind, hand=Hand.LEFT).steps[0]


@pytest.mark.parametrize("kind", ["compression", "conical", "extension", "torsion"])
@pytest.mark.parametrize(("hand", "way"), [(Hand.RIGHT, "clockwise"), (Hand.LEFT, "anticlockwise")])
def test_where_a_hand_is_wanted_the_wire_is_laid_that_way(kind: str, hand: Hand, way: str) -> None:
    made = plan_of(kind, hand=hand)
    assert f"{hand}-hand: seen from the end where you began, the wire runs away from you {way}" in " ".join(made.steps)


def test_a_torsion_spring_whose_hand_is_not_said_is_not_wound_and_told_how_to_see_it() -> None:
    answer = refused(plan_winding(replace(TURNED, hand=None), spool(1.2), BENCH))
    said = " ".join(" ".join(answer_lines(answer, TURNED)).split())
    assert "How to see the hand" in said
    assert "those of a right-hand spring climb to the right" in said


def test_a_double_torsion_spring_has_both_hands_and_none_is_asked_for() -> None:
    wide = replace(TURNED.pocket, width_mm=None)
    made = plan_of("torsion", bodies=2, hand=None, free_angle_deg=None, pocket=wide)
    assert "hand" not in made.steps[0]


# Letting go


@every_kind
def test_the_crank_is_eased_back_by_so_many_turns_and_joules(kind: str) -> None:
    made = plan_of(kind)
    (eased,) = [step for step in made.steps if step.startswith("Hold the crank and ease it back")]
    assert f"about {made.turns_run_back:.1f} turns" in eased
    felt = made.energy_let_go_n_mm >= 100.0
    assert (show_energy(made.energy_let_go_n_mm) in eased) == felt


def test_a_thin_wire_that_lets_go_of_less_than_a_tenth_of_a_joule_is_not_said_to_strike() -> None:
    thin = need(pocket=pocket(7, None), working=(point(12, 0.5), point(8, 1.0)))
    made = planned(plan_winding(thin, spool(0.35), BENCH))
    (eased,) = [step for step in made.steps if step.startswith("Hold the crank and ease it back")]
    assert (" J" in eased) == (made.energy_let_go_n_mm >= 100.0)


# What the wire can do


def test_what_stops_a_wire_below_and_above_is_told_in_sentences_of_their_own() -> None:
    made = planned(plan_winding(need(), spool(1.0), BENCH))
    low, high = made.serves[0].low_mm, made.serves[0].high_mm
    assert made.as_sentence.startswith(f"Only between mean diameters {low:.2f} mm and {high:.2f} mm. ")
    assert f" Below {low:.2f} mm: " in made.as_sentence
    assert f". Above {high:.2f} mm: " in made.as_sentence
