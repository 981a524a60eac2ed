"""What a sheet says before and after the winding: the old spring, letting go, spacing, checks, going in."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from math import hypot, pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.need.model import Need, Pocket, PocketEnd, WantedEnd
from sourcing.quantities import show_energy
from sourcing.sheets.winding_text import answer_lines
from sourcing.springs.compression import shear_stress_mpa
from sourcing.springs.model import CompressionSpring, ConicalSpring, Ends, EndShape, Hand
from sourcing.springs.pressed import rate_n_per_mm
from sourcing.springs.stored import stored_energy_n_mm
from sourcing.winding.model import Mandrel, ProfilePoint, WindingPlan
from sourcing.winding.plan import plan_winding
from sourcing.winding.serving_words import what_serves
from sourcing.winding.spacing import cone_without_seat, goes_back_mm, laid_apart, spacer_wire_mm, yields_at_n

from . import test_conical_ends, test_extension, test_torsion
from .cases import BENCH, need, planned, pocket, point, refused, spool, wanted

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


def open_cone() -> Need:
    """A long cone that tapers little."""
    ends = Pocket(large_end=PocketEnd(bore_mm=wanted(15)), small_end=PocketEnd(bore_mm=wanted(12)))
    working = (point(34, wanted(3.0, 0.6)), point(22, wanted(9.0, 1.8)))
    return need(kind="conical", pocket=ends, working=working)


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
    (eased,) = [step for step in made.steps if "and ease it back: the coil drives the mandrel" in step]
    assert f"about {made.turns_run_back:.1f} turns" in eased
    felt = made.energy_let_go_n_mm >= 100.0
    assert (show_energy(made.energy_let_go_n_mm) in eased) == felt


def test_a_thin_wire_that_lets_go_of_less_than_a_tenth_of_a_joule_is_not_said_to_strike() -> None:
    thin = need(pocket=pocket(7, None), working=(point(12, 0.5), point(8, 1.0)))
    made = planned(plan_winding(thin, spool(0.35), BENCH))
    (eased,) = [step for step in made.steps if "and ease it back: the coil drives the mandrel" in step]
    assert (" J" in eased) == (made.energy_let_go_n_mm >= 100.0)


# Spacing


def test_a_round_wire_beside_the_springs_is_the_one_that_touches_both_turns() -> None:
    """Centres of wires d and s on one cylinder lie hypot(p/2, (d - s)/2) apart, and that is (d + s)/2."""
    for wire, pitch in ((1.0, 2.92), (0.8, 1.4), (0.56, 1.66)):
        spacer = spacer_wire_mm(pitch, wire)
        assert hypot(pitch / 2, (wire - spacer) / 2) == pytest.approx((wire + spacer) / 2)


def test_an_open_coil_is_laid_beside_a_strip_of_the_gap_or_a_wire_of_a_stated_size() -> None:
    made = plan_of("compression")
    gap, spacer = made.pitch_on_mandrel_mm - 0.8, made.pitch_on_mandrel_mm**2 / (4 * 0.8)
    (laid,) = [step for step in made.steps if "at a pitch of" in step]
    assert f"a gap of {gap:.2f} mm between the wires: a strip of that thickness" in laid
    assert f"a soft round wire of {spacer:.2f} mm" in laid


def test_a_coil_yields_in_shear_at_the_stress_of_von_mises() -> None:
    """8 F D/(π d³) is then the flow stress over the root of three, 0.577 of it."""
    force = yields_at_n(1.0, 9.5, 2398.0)
    assert shear_stress_mpa(force, 1.0, 9.5) / 2398.0 == pytest.approx(0.57735, abs=1e-5)


def test_wound_close_and_pulled_out_it_is_told_how_long_it_is_rests_and_how_far_to_pull_it() -> None:
    """Wire of 1 mm, by hand: 11.39 coils as wound are 12.4 mm long close; free 30.97 mm and a wire more unground.

    1 384 MPa in shear (0.577 of 2 398) takes 57.9 N at a mean diameter of 9.38 mm, 44.8 mm at 1.29 N/mm.
    """
    made = planned(plan_winding(need(), spool(1.0), BENCH, 7.0))
    spring = made.wanted
    assert isinstance(spring, CompressionSpring)
    (pulled,) = [step for step in made.steps if "pull the coil out" in step]
    wound = made.finished.spring
    assert isinstance(wound, CompressionSpring)
    band = 1.96 * 0.02 * (spring.free_length_mm - spring.total_coils)
    back = 0.57735 * 1.08 * 2220 * pi / (8 * spring.mean_diameter_mm) / rate_n_per_mm(spring)
    assert f"It is {wound.total_coils + 1.0:.1f} mm long then" in pulled
    assert (
        f"is to rest at {spring.free_length_mm + 1.0:.1f} mm, give or take {band:.2f} mm "
        "(assumed); grinding takes 1.00 mm" in pulled
    )
    first, last = re.findall(r"Pull it to ([\d.]+) mm.* by about ([\d.]+) mm", pulled)[0]
    assert float(first) == pytest.approx(spring.free_length_mm + 1.0 + back, rel=0.01)
    stays = spring.free_length_mm + 1.0 - wound.total_coils - 1.0
    assert float(last) == pytest.approx(spring.free_length_mm + 1.0 + goes_back_mm(stays, back), rel=0.01)


def test_a_coil_pulled_out_keeps_what_the_first_pressing_will_take() -> None:
    """Told to be wound longer, it is pulled out to that length too, and a wire more where it is ground."""
    made = planned(plan_winding(need(working=(point(24, 9), point(14, 22))), spool(0.8), BENCH))
    spring = made.wanted
    assert isinstance(spring, CompressionSpring)
    steps = "\n".join(made.steps)
    (more,) = re.findall(r"Wind it longer than [\d.]+ mm by about ([\d.]+) mm", steps)
    rests, taken = re.findall(r"to rest at ([\d.]+) mm.*the first pressing takes ([\d.]+) mm of that", steps)[0]
    assert taken == more
    ground_mm = 0.8 if spring.ends in (Ends.CLOSED_GROUND, Ends.OPEN_GROUND) else 0.0
    assert float(rests) == pytest.approx(spring.free_length_mm + float(more) + ground_mm, abs=0.1)


@pytest.mark.parametrize("yields_mm", [4.0, 45.0])
@pytest.mark.parametrize("times", [1.0, 1.3, 1.7, 3.0])
def test_a_wire_twisted_beyond_yield_springs_back_by_what_its_section_carries(times: float, yields_mm: float) -> None:
    """The shear over the section summed ring by ring: elastic up to 1/u of the radius, at yield beyond."""
    rings = [(ring + 0.5) / 20_000 for ring in range(20_000)]
    torque = sum(min(1.0, times * radius) * radius**2 for radius in rings) / 20_000
    at_yield = sum(radius**3 for radius in rings) / 20_000
    back_mm = yields_mm * torque / at_yield
    assert goes_back_mm(times * yields_mm - back_mm, yields_mm) == pytest.approx(back_mm, rel=1e-4)


def test_a_coil_that_is_closed_by_hand_is_opened_with_a_wedge_a_quarter_turn_at_a_time() -> None:
    for kind in ("compression", "conical"):
        assert [step for step in plan_of(kind).steps if "wedge of wood or plastic" in step and "quarter turn" in step]


@pytest.mark.parametrize("kind", ["extension", "torsion"])
def test_what_is_laid_close_is_told_nothing_of_gaps_wedges_and_pulling_out(kind: str) -> None:
    said = " ".join(plan_of(kind).steps)
    assert not any(word in said for word in ("wedge", "pull the coil out", "strip of"))


def test_turns_that_lie_close_are_told_no_gap() -> None:
    assert laid_apart(0.8, 0.8, False, "mm") == "close, wire against wire."
    assert laid_apart(0.81, 0.8, False, "mm") == "close, wire against wire."


def test_a_cone_is_not_pulled_out_for_its_large_coils_open_first() -> None:
    made = planned(plan_winding(open_cone(), spool(0.9), BENCH))
    cone = made.wanted
    assert isinstance(cone, ConicalSpring)
    assert made.pitch_on_mandrel_mm > 0.92
    (told,) = [step for step in made.steps if "Do not wind a cone close and pull it out" in step]
    large, small = map(float, re.findall(r"from ([\d.]+) N", told))
    assert large < small
    assert small / large == pytest.approx(cone.mean_diameter_large_mm / cone.mean_diameter_small_mm, rel=0.02)


def test_a_strip_is_offered_for_a_cone_only_where_its_taper_holds_the_wire() -> None:
    made = planned(plan_winding(open_cone(), spool(0.9), BENCH))
    cone = made.wanted
    assert isinstance(cone, ConicalSpring)

    def told(large_mm: float) -> str:
        mandrel = Mandrel("turned", None, (ProfilePoint(0.0, 6.0), ProfilePoint(5.0, large_mm, 5.0, 20.0)))
        return " ".join(cone_without_seat(cone, mandrel, 4.0, 2300.0, "mm"))

    assert f"a strip of {hypot(4.0, 0.4) - 0.9:.2f} mm" in told(10.0)
    assert "strip" not in told(20.0)


# The checks


@every_kind
def test_every_check_says_what_to_do_where_it_fails(kind: str) -> None:
    made = plan_of(kind)
    assert made.accept
    for row in made.accept:
        assert len(row.if_not.split()) >= 5, row.figure
        assert row.if_not.rstrip().endswith("."), row.figure


@every_kind
def test_a_standards_grades_are_said_to_be_for_bought_springs(kind: str) -> None:
    assert lines_of(kind).count("It goes by clearances and forces; a standard's grades are for bought springs.") == 1


@pytest.mark.parametrize(
    ("kind", "words"),
    [
        ("compression", "cut stop blocks of 24.0 mm and 14.0 mm"),
        ("conical", "cut stop blocks of 12.0 mm and 7.0 mm"),
        ("extension", "mark 48.0 mm and 70.0 mm on a board"),
        ("torsion", "mark 30 deg and 120 deg on a board"),
    ],
)
def test_forces_are_read_at_two_lengths_with_stop_blocks_or_marks(kind: str, words: str) -> None:
    assert [step for step in plan_of(kind).steps if words in step and step.startswith("Check it against the list")]


@pytest.mark.parametrize(
    ("ends", "mend"), [(Ends.CLOSED_GROUND, "grind that end"), (Ends.CLOSED, "bend its last turn"), (Ends.OPEN, None)]
)
def test_a_spring_that_stands_may_lean_by_a_twentieth_of_its_free_length(ends: Ends, mend: str | None) -> None:
    made = plan_of("compression", ends=ends)
    rows = [row for row in made.accept if row.figure == "out_of_square_mm"]
    assert bool(rows) == (mend is not None)
    assert isinstance(made.wanted, CompressionSpring)
    for row in rows:
        assert row.low is None
        assert row.high == pytest.approx(0.05 * made.wanted.free_length_mm)
        assert mend is not None
        assert mend in row.if_not


@pytest.mark.parametrize("ends", [None, Ends.CLOSED, Ends.CLOSED_GROUND])
def test_how_far_a_spring_may_lean_is_told_by_its_row_alone(ends: Ends | None) -> None:
    assert not [step for step in plan_of("compression", ends=ends).steps if "3 deg" in step]


def test_closed_ends_may_lean_by_more_than_the_list_allows() -> None:
    assert [step for step in plan_of("compression", ends=Ends.CLOSED).steps if "more than the list allows" in step]


def test_the_wire_of_one_coil_of_a_cone_is_told_at_either_end() -> None:
    made = plan_of("conical")
    assert isinstance(made.wanted, ConicalSpring)
    (row,) = (row for row in made.accept if row.figure == "total_coils")
    for end, mean_mm in (
        ("small end", made.wanted.mean_diameter_small_mm),
        ("large one", made.wanted.mean_diameter_large_mm),
    ):
        (told,) = re.findall(rf"([\d.]+) mm of wire at the {end}", row.if_not)
        assert float(told) == pytest.approx(pi * mean_mm, rel=0.02)


@pytest.mark.parametrize("kind", ["compression", "conical"])
@pytest.mark.parametrize("ends", [Ends.OPEN, Ends.CLOSED])
def test_no_step_of_laying_wire_begins_with_then_unless_one_stands_before_it(kind: str, ends: Ends) -> None:
    steps = plan_of(kind, ends=ends).steps
    laying = [step for step in steps if step.startswith(("Lay ", "Then "))]
    assert [step.split()[0] for step in laying] == (["Lay"] if ends is Ends.OPEN else ["Lay", "Then", "Then"])


@pytest.mark.parametrize(
    ("tools", "grip"), [((), "crank"), (("vice", "hand-drill"), "handle of the drill"), (("lathe",), "chuck")]
)
def test_what_is_never_let_go_has_its_article(tools: tuple[str, ...], grip: str) -> None:
    wish, wire_mm = NEEDS["compression"]
    steps = planned(plan_winding(wish, spool(wire_mm, length_left_mm=20_000.0), replace(BENCH, tools=tools))).steps
    (eased,) = (step for step in steps if "ease it back" in step)
    assert f"Hold the {grip} and" in eased
    assert f"Never let go of the {grip} or of the wire" in eased


def test_a_spring_with_both_ends_bent_out_does_not_stand_and_is_not_asked_to() -> None:
    piece = WantedEnd(EndShape.TANG_OUT, wanted(3.0), 90.0)
    made = plan_of("compression", end_1=piece, end_2=piece, pocket=pocket(None, None))
    assert "out_of_square_mm" not in {row.figure for row in made.accept}


# Going in


@pytest.mark.parametrize(
    ("kind", "words"),
    [
        ("compression", "a dab of grease"),
        ("conical", "a dab of grease"),
        ("extension", "push the far hook in on a stiff wire"),
        ("torsion", "tie its legs with thread"),
    ],
)
def test_what_goes_into_a_hole_is_told_how_it_is_held_where_that_is_blind(kind: str, words: str) -> None:
    wide = replace(NEEDS[kind][0].pocket, bore_mm=wanted(25.0))
    held = plan_of(kind) if kind in ("compression", "conical", "extension") else plan_of(kind, pocket=wide)
    said = " ".join(held.goes_in.said)
    assert "blind" in said
    assert words in said


@pytest.mark.parametrize("kind", ["compression", "torsion", "extension"])
def test_what_goes_into_no_hole_is_told_of_none(kind: str) -> None:
    bare = replace(NEEDS[kind][0].pocket, bore_mm=None)
    assert "blind" not in " ".join(plan_of(kind, pocket=bare).goes_in.said)


# What the wire can do


def test_what_stops_a_wire_below_and_above_is_told_in_sentences_of_their_own() -> None:
    made = planned(plan_winding(need(), spool(1.0), BENCH))
    low, high = made.serves[0].low_mm, made.serves[0].high_mm
    assert what_serves(made).startswith(f"Only between mean diameters {low:.2f} mm and {high:.2f} mm. ")
    assert f" Below {low:.2f} mm: " in what_serves(made)
    assert f". Above {high:.2f} mm: " in what_serves(made)


# What every sheet keeps to


@given(
    st.sampled_from([0.35, 0.5, 0.8, 1.0, 1.4, 2.0]),
    st.floats(1.5, 12.0),
    st.floats(0.4, 0.9),
    st.floats(0.3, 30.0),
    st.sampled_from([None, *Ends]),
    st.booleans(),
    st.sampled_from(["mm", "inch"]),
)
@settings(max_examples=12)
def test_no_sentence_of_a_drawn_need_has_a_hole_or_a_negative_gap(
    wire: float, stretch: float, share: float, force: float, ends: Ends | None, deep: bool, units: str
) -> None:
    longest = 12 * wire * stretch
    wish = need(
        pocket=pocket(14 * wire, None, 0.9 * longest if deep else None),
        working=(point(longest, 0.4 * force), point(share * longest, force)),
        ends=ends,
    )
    made = plan_winding(wish, spool(wire, length_left_mm=50_000.0), replace(BENCH, units=units))
    said = "\n".join(answer_lines(made, wish))
    assert not re.search(r"\bnan\b|\bNone\b|\binf\b|(gap of|wire of|rest at|give or take|About) -", said)
