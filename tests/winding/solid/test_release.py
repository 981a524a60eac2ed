"""How the spring comes off decides the seat; what a printed mandrel stands; whether the printer holds it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from sourcing.springs.model import Hand, TorsionSpring
from sourcing.stock.model import Bench
from sourcing.winding.model import Refusal, WindingPlan
from sourcing.winding.solid.coil import START_RAD, LaidCoil, Station, coil_of
from sourcing.winding.solid.lettering import lines_of
from sourcing.winding.solid.made import solid_for as made_for
from sourcing.winding.solid.printed import PRINTED_STRENGTH_MPA, SAFE, safety_against_twisting_off, safety_of
from sourcing.winding.solid.release import release_of
from sourcing.winding.solid.rings import mesh_of
from sourcing.winding.solid.shape import shank_for, solid_of
from tests.winding.cases import need, plan, spool

from .plans import random_plans, solid_for, told

KNOWN_SPRINGBACK = (0.8, 7.717, 9.6)
"""The winding model's: wire, mean diameter on the mandrel, and after release."""


def coil(wire_mm: float, on_mm: float, released_mm: float, close: float = 1.0, pitch: float = 4.0) -> LaidCoil:
    """Close end turns and six at a pitch of so many wires, each known exactly."""
    turns = [(0.0, 0.0), (close, close * wire_mm), (close + 6, (close + 6 * pitch) * wire_mm)]
    stations = [
        Station(turn, height, on_mm / 2, released_mm / 2, released_mm / 2)
        for at, (turn, height) in enumerate(turns)
        if close or at != 1
    ]
    return LaidCoil(wire_mm, Hand.RIGHT, tuple(stations))


def test_the_known_spring_slides_off_a_groove_of_three_tenths_of_its_wire() -> None:
    release = release_of(coil(*KNOWN_SPRINGBACK))
    assert release.way == "slide"
    assert release.groove_depth_mm == pytest.approx(0.24)
    assert release.clearance_mm == pytest.approx((9.6 - 7.717) / 2 - 0.24)


def test_a_groove_deeper_than_half_the_opening_less_a_tenth_is_never_cut() -> None:
    for opening_mm in (0.2, 0.3, 0.4, 0.5, 0.6, 1.0, 2.0):
        release = release_of(coil(1.0, 6.0, 6.0 + opening_mm))
        if release.way == "slide":
            assert release.groove_depth_mm <= max(0.0, opening_mm / 2 - 0.1 + 1e-9)


def test_a_coil_of_one_pitch_that_opens_too_little_is_unscrewed() -> None:
    assert release_of(coil(1.0, 6.0, 6.2, close=0.0)).way == "unscrew"


def test_with_close_ends_its_mandrel_is_split_and_the_strip_gives_the_lips_their_room() -> None:
    release = release_of(coil(1.0, 6.0, 6.2))
    assert release.way == "split"
    assert release.strip_mm == 1.5
    assert release.clearance_mm == pytest.approx(0.1 - 0.3 + 0.5 * 1.5 / 2)


def test_too_thin_to_be_split_it_stays_bare() -> None:
    release = release_of(coil(0.3, 1.2, 1.24))
    assert (release.way, release.groove_depth_mm) == ("slide", 0.0)


def test_the_release_goes_by_the_coil_that_opens_least() -> None:
    """One in forty opens less than the band: the groove must let that one off too."""
    for each in random_plans():
        release = solid_for(each).release
        if release.groove_depth_mm and release.way == "slide":
            assert release.least_clearance_mm >= 0.1 - 1e-9
            assert release.least_clearance_mm < release.clearance_mm


@pytest.mark.parametrize(("pull_fraction", "slimness"), [(0.0, 5.9), (0.02, 6.5), (0.05, 7.4), (0.10, 8.8)])
def test_a_printed_mandrel_stands_twice_the_torque_from_the_known_slimness_on(
    pull_fraction: float, slimness: float
) -> None:
    """The winding model's, for music wire of 1 mm (σ 1.08 · 2220 MPa): a/d by pull over the yield force."""
    safety = safety_against_twisting_off(
        PRINTED_STRENGTH_MPA, 1.08 * 2220.0, slimness, 1.0, pull_fraction, slimness + 1.0
    )
    assert safety == pytest.approx(2.0, rel=0.05)


def test_a_mandrel_thinner_than_the_wire_is_no_mandrel() -> None:
    made = plan(spool())
    with pytest.raises(ValueError, match="thinner than the wire"):
        coil_of(replace(made, mandrel=replace(made.mandrel, diameter_mm=0.7)))


def test_a_mandrel_that_the_finished_spring_does_not_go_over_is_refused() -> None:
    made = plan(spool())
    with pytest.raises(ValueError, match="does not fit inside it"):
        coil_of(replace(made, mandrel=replace(made.mandrel, diameter_mm=12.0)))


def test_the_turns_laid_are_those_of_the_plan() -> None:
    for each in random_plans():
        laid = coil_of(each)
        assert laid.turns == pytest.approx(each.turns_to_wind + each.turns_to_spare, rel=0.01)


def test_what_a_printed_one_stands_is_told_of_one_that_is_printed_and_not_of_one_that_is_turned() -> None:
    made = plan(spool(0.8))
    solid = solid_for(made)
    assert "Printed solid, it stands" in told(made, solid, need(), Bench())
    assert "print" not in told(made, solid, need(), Bench(), printed=False).lower()


def test_a_shank_for_a_drill_that_is_too_thin_is_refused_with_the_one_that_stands() -> None:
    made = next(
        each
        for each in random_plans()
        if safety_of(each, solid_for(each, shank="drill")) < SAFE <= safety_of(each, solid_for(each))
    )
    refused = made_for(made, "a job", Bench(tools=("printer", "hand-drill")), "drill", printed=True)
    assert isinstance(refused, Refusal)
    assert "print it with --shank hex, which stands" in refused.why


@pytest.mark.parametrize(
    ("hand", "way"),
    [(Hand.LEFT, "clockwise (the drill runs forwards"), (Hand.RIGHT, "anticlockwise (the drill runs backwards")],
)
def test_the_way_to_turn_is_told_for_each_hand(hand: Hand, way: str) -> None:
    """Wire laid on from a fixed place, away from the shank: seen from the shank, a right-hand coil runs away clockwise,
    so the mandrel under the hand turns the other way."""
    made = plan(spool(), hand=hand)
    said = told(made, solid_for(made), need(hand=hand), Bench())
    assert f"turn it {way}" in said
    assert f"lays a {hand}-hand spring" in said


def test_the_way_off_and_its_room_are_told() -> None:
    said = {solid_for(each).release.way: told(each, solid_for(each), need(), Bench()) for each in random_plans()}
    assert "slides off over the free end" in said["slide"]
    assert "over the small end" in said["ledge"]
    assert "unscrew it" in said["unscrew"]
    assert "split in two along its length" in said["split"]
    assert "meant to be broken" in said["split"]
    assert all("mm of room all round" in each for each in said.values())


@pytest.mark.parametrize(
    ("tools", "kind"), [(("lathe",), "round"), (("vice", "hand-drill"), "drill"), (("vice", "printer"), "hex")]
)
def test_the_shank_suits_what_turns_it(tools: tuple[str, ...], kind: str) -> None:
    assert shank_for(Bench(tools=tools)) == kind


def test_a_name_of_markup_slashes_and_other_scripts_is_cut_in_as_signs_that_there_are() -> None:
    assert lines_of("<b>../x</b>", "⌀5", 20, 2) == ("<B>../X</B>", "⌀5")
    assert lines_of("bobine à ressort", "⌀5", 30, 2) == ("BOBINE A RESSORT", "⌀5")
    laid = coil(*KNOWN_SPRINGBACK)
    for name in ("鍵", "", "a\nb\tc", "x" * 500):
        lines = solid_of(laid, release_of(laid), name, "hex").collar.lines
        assert len(lines) <= 3
        assert lines[-1] == "⌀6.92 R"


def double() -> WindingPlan:
    return next(each for each in random_plans() if isinstance(each.wanted, TorsionSpring) and each.wanted.bodies == 2)


def test_a_double_torsion_spring_gets_one_mandrel_for_both_bodies_and_room_for_the_loop() -> None:
    made = double()
    solid = solid_for(made)
    turns = made.turns_to_wind + made.turns_to_spare
    assert solid.coil.length_mm == pytest.approx((turns + 5.0) * made.wire_diameter_mm, rel=0.01)
    assert solid.middle_mm == pytest.approx(solid.coil.length_mm / 2)
    assert solid.collar.lines[-1].endswith("R+L")
    assert solid.release.groove_depth_mm == 0.0


def test_its_loop_goes_over_a_pin_at_the_mark_and_it_is_turned_either_way() -> None:
    said = told(double(), solid_for(double()), need(kind="torsion"), Bench())
    assert "Drill through the mandrel at the mark in its middle" in said
    assert "Turned either way" in said
    assert "Draw the pin." in said
    assert "lay it in the slot" not in said


def test_the_pin_s_mark_lies_in_the_middle_of_the_mesh_at_the_slot() -> None:
    solid = solid_for(double())
    x, y, z = np.array(mesh_of(solid).vertices).T
    radius, seat_mm = np.hypot(x, y), solid.coil.seat_mm
    cut = (z > solid.face_mm) & (radius < seat_mm - 0.1) & (radius > seat_mm / 2)
    assert z[cut].mean() == pytest.approx(solid.middle_mm)
    assert np.arctan2(y, x)[cut].mean() == pytest.approx(START_RAD)


def test_both_halves_of_its_wire_are_wound_at_once_so_the_torque_is_twice_that_of_one() -> None:
    made = double()
    one = replace(made, wanted=replace(made.wanted, bodies=1))
    assert safety_of(made, solid_for(made)) == pytest.approx(safety_of(one, solid_for(made)) / 2)
