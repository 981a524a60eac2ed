"""Winding a torsion spring: turns, the angle to stop at, wire, bands, checks, and what is refused."""

from __future__ import annotations

import re
from dataclasses import replace
from importlib.resources import files

import pytest

from sourcing.need.model import Need, Pocket, TurnedPoint, WantedLeg
from sourcing.springs import torsion, turned
from sourcing.springs.model import Hand, LegShape, TorsionSpring
from sourcing.stock.model import Bench, Spool
from sourcing.winding import springback
from sourcing.winding.model import Refusal, WindingPlan
from sourcing.winding.plan import plan_winding
from tests.winding.cases import BENCH, planned, refused, spool, wanted

COLD = replace(BENCH, oven_c=None)


def point(angle: float, torque: float | None = None) -> TurnedPoint:
    return TurnedPoint(wanted(angle), None if torque is None else wanted(torque, 0.15 * torque))


def need(**changes: object) -> Need:
    """A lid: a pin of 5.5, 12 wide, 1.83 N·mm/deg, left-hand, two legs of 18 mm in one line."""
    lid = Need(
        job="lid",
        kind="torsion",
        pocket=Pocket(rod_mm=wanted(5.5), width_mm=wanted(12.0)),
        turned=(point(30.0, 55.0), point(120.0, 220.0)),
        hand=Hand.LEFT,
        leg_1=WantedLeg(wanted(18.0)),
        leg_2=WantedLeg(wanted(18.0)),
        free_angle_deg=wanted(180.0, 15.0),
    )
    return replace(lid, **changes)  # type: ignore[arg-type]


def plan(
    wire: Spool | None = None, bench: Bench = BENCH, mandrel_mm: float | None = None, **changes: object
) -> WindingPlan:
    return planned(plan_winding(need(**changes), wire or spool(1.2), bench, mandrel_mm))


def refusal(wire: Spool | None = None, **changes: object) -> Refusal:
    return refused(plan_winding(need(**changes), wire or spool(1.2), BENCH))


def spring_of(made: WindingPlan) -> TorsionSpring:
    assert isinstance(made.wanted, TorsionSpring)
    return made.wanted


def wound_of(made: WindingPlan) -> TorsionSpring:
    assert isinstance(made.finished.spring, TorsionSpring)
    return made.finished.spring


class TestTurns:
    def test_the_finished_spring_has_the_rate_that_the_torques_ask_for(self) -> None:
        assert turned.rate_n_mm_per_deg(spring_of(plan())) == pytest.approx(220 / 120, rel=0.02)

    def test_its_coils_bring_the_legs_to_their_angle(self) -> None:
        spring = spring_of(plan())
        assert turned.leg_angle_deg(spring.active_coils) == pytest.approx(180.0)
        assert spring_of(plan(free_angle_deg=wanted(270.0))).active_coils % 1.0 == pytest.approx(0.25)

    @pytest.mark.parametrize("bench", [BENCH, COLD], ids=["heated", "not heated"])
    def test_the_wire_of_the_body_is_the_same_on_the_mandrel_as_wound_and_after_heat(self, bench: Bench) -> None:
        made = plan(bench=bench)
        on_mandrel = (made.mandrel.diameter_mm or 0.0) + 1.2
        wound, final = wound_of(made), spring_of(made)
        assert wound.active_coils * wound.mean_diameter_mm == pytest.approx(
            final.active_coils * final.mean_diameter_mm, rel=1e-3
        )
        assert made.turns_to_wind * on_mandrel == pytest.approx(wound.active_coils * wound.mean_diameter_mm, rel=0.005)

    def test_the_coil_opens_by_the_springback_of_its_wire(self) -> None:
        made = plan(bench=COLD, mandrel_mm=5.5)
        strength = 2190.0  # EN 10270-1 SH, 1.2 mm
        index = springback.released_index(5.5 / 1.2 + 1, 1.08 * strength / 206_000)
        assert wound_of(made).mean_diameter_mm == pytest.approx(index * 1.2, rel=0.01)

    def test_the_crank_stops_where_springback_brings_the_legs_to_their_angle(self) -> None:
        made = plan(bench=COLD)
        (said,) = [step for step in made.steps if "Stop where leg 2" in step]
        stop, falls = (float(each) for each in re.findall(r"([\d.]+) deg", said)[:2])
        assert falls == pytest.approx(360 * made.turns_run_back, abs=0.05)
        assert (stop - falls) % 360 == pytest.approx(180.0, abs=0.1)

    def test_heat_turns_the_legs_on_and_the_coil_is_wound_short_of_it(self) -> None:
        wound, final = wound_of(plan()), spring_of(plan())
        moves = 360 * (final.active_coils - wound.active_coils)
        assert moves == pytest.approx(3.6 * wound.active_coils * 1.25, rel=0.03)
        assert ((wound.free_angle_deg or 0.0) + moves) % 360 == pytest.approx(180.0)

    def test_the_doubt_of_the_angle_is_that_of_the_diameter_times_all_its_coils_but_for_the_rods_own_error(
        self,
    ) -> None:
        """A rod that is thicker than it reads makes a larger coil, and its turns turn back as far as they would."""
        made = plan(bench=COLD)
        bands, wound = made.finished.bands, wound_of(made)
        share = (bands["mean_diameter_mm"].high - wound.mean_diameter_mm) / wound.mean_diameter_mm
        around = bands["free_angle_deg"].high - (wound.free_angle_deg or 0.0)
        assert 0.9 < around / (360 * wound.active_coils * share) < 1.0

    def test_the_doubt_of_the_rate_does_not_grow_with_that_of_the_diameter(self) -> None:
        light = (point(30.0, 45.0), point(120.0, 180.0))
        untried, stainless = (plan(spool(1.2, name=name), turned=light) for name in ("music-wire", "stainless-1.4310"))
        shares = [
            made.finished.bands["rate_n_mm_per_deg"].high / made.finished.figures.rate_n_mm_per_deg  # type: ignore[union-attr]
            for made in (untried, stainless)
        ]
        assert shares[0] == pytest.approx(shares[1], rel=0.01)


_OF_LEGS = "(Mark|Bend) leg .|Relieve the stress|Set the legs|Only now cut the legs|Wind it up"
_PAGE = files("sourcing.handbook").joinpath("winding.md").read_text("utf-8")


class TestWire:
    def test_legs_and_their_hooks_are_in_the_wire_that_is_cut(self) -> None:
        straight = plan(mandrel_mm=5.5)
        hooked = plan(mandrel_mm=5.5, leg_2=WantedLeg(wanted(18.0), LegShape.HOOKED))
        assert hooked.coil_length_mm - straight.coil_length_mm == pytest.approx(7 * 1.2)
        body = torsion.body_wire_length_mm(
            wound_of(straight).mean_diameter_mm, wound_of(straight).active_coils, wire := 1.2
        )
        assert straight.coil_length_mm == pytest.approx(body + 36.0)
        assert wire < straight.cut_length_mm - straight.coil_length_mm
        assert straight.turns_to_spare == 0.0

    def test_too_little_wire_is_a_refusal(self) -> None:
        assert refusal(spool(1.2, length_left_mm=300.0)).rule == "wire-too-short"

    def test_a_bend_is_not_tighter_than_its_own_wire(self) -> None:
        """DIN 2194: a pin of two wires makes an inside radius of one; so for the angle and for a double's loop."""
        for shape, bent in ((LegShape.OFFSET, "Bend leg 2 aside"), (LegShape.HOOKED, "bend its hook there")):
            steps = " ".join(plan(leg_2=WantedLeg(wanted(18.0), shape)).steps)
            assert re.search(f"{bent}[^.]*with pliers,? round a pin of 2.40 mm, not tighter than its own wire", steps)
            assert "with two pliers, over a pin of 2.40 mm or thicker" in steps
        double = " ".join(plan(bodies=2, hand=None, pocket=Pocket(rod_mm=wanted(5.5))).steps)
        assert re.search("a narrow U .* deep, its bends round a pin of 2.40 mm, not tighter than its own wire", double)

    @pytest.mark.parametrize("shape", LegShape)
    def test_legs_are_bent_before_the_heat_and_cut_when_nothing_moves_them_any_more(self, shape: LegShape) -> None:
        """Common practice (no source); the handbook's page on winding says the same."""
        steps = plan(leg_1=WantedLeg(wanted(18.0), shape), leg_2=WantedLeg(wanted(18.0), shape)).steps
        found = [match for match in (re.match(_OF_LEGS, step) for step in steps) if match]
        bends = {
            LegShape.STRAIGHT: [],
            LegShape.HOOKED: ["Mark leg 1", "Mark leg 2"],
            LegShape.OFFSET: ["Bend leg 1", "Bend leg 2"],
        }[shape]
        told = [match[0] for match in found]
        assert told == [*bends, "Relieve the stress", "Set the legs", "Only now cut the legs", "Wind it up"]
        assert all("; the heat relieves the bend too" in match.string for match in found[: len(bends)])
        page = next(text for text in _PAGE.split("\n") if text.startswith("Bend hooks and offsets first"))
        words = ("so that the heat relieves those bends too", "after the heat", "cut the legs to length last")
        assert sorted(words, key=page.index) == list(words)

    def test_without_an_oven_no_heat_is_promised_to_a_bend(self) -> None:
        steps = " ".join(plan(bench=COLD, leg_2=WantedLeg(wanted(18.0), LegShape.HOOKED)).steps)
        assert "Leave the leg long (common practice, no source)." in steps


class TestChecks:
    def test_grams_are_torque_over_the_arm_at_two_angles(self) -> None:
        rows = {row.figure: row for row in plan().accept}
        grams, torque = rows["scale_at_120_deg_18_mm_arm_g"], rows["torque_at_120_deg_n_mm"]
        assert (torque.low, torque.high) == (pytest.approx(187.0), pytest.approx(253.0))
        assert grams.low == pytest.approx(187.0 / 18.0 / 9.80665 * 1000)
        assert "scale_at_30_deg_18_mm_arm_g" in rows

    def test_where_one_torque_is_wanted_a_second_angle_shows_the_rate(self) -> None:
        figures = [row.figure for row in plan(turned=(point(120.0, 220.0),)).accept]
        assert "torque_at_60_deg_n_mm" in figures
        assert "torque_at_120_deg_n_mm" in figures

    def test_hand_angle_legs_and_body_are_checked(self) -> None:
        rows = {row.figure: row for row in plan().accept}
        assert {"hand_left", "outside_diameter_mm", "leg_1_mm", "leg_2_mm", "free_angle_deg"} <= set(rows)
        assert (rows["free_angle_deg"].low, rows["free_angle_deg"].high) == (165.0, 195.0)
        assert rows["body_length_mm"].high == pytest.approx(12.0 - 1.2 / 3)

    def test_a_coil_at_the_least_diameter_still_clears_the_pin_when_it_is_wound_up(self) -> None:
        made = plan()
        (row,) = [row for row in made.accept if row.figure == "outside_diameter_mm"]
        spring, least = spring_of(made), (row.low or 0.0) - 1.2
        same_wire = replace(
            spring, mean_diameter_mm=least, active_coils=spring.active_coils * spring.mean_diameter_mm / least
        )
        assert turned.inside_diameter_mm(same_wire, 120.0) >= 5.7 - 1e-9

    def test_it_is_told_what_pushes_back_as_it_is_hooked_in(self) -> None:
        said = " ".join(plan().goes_in.said)
        assert "Turned by 30 deg from free" in said
        assert plan().goes_in.cover_force_n is None


class TestWhereItSits:
    @pytest.mark.parametrize("rod", [5.5, None])
    def test_a_rod_is_spoken_of_only_where_the_need_has_one(self, rod: float | None) -> None:
        made = plan(pocket=Pocket(bore_mm=wanted(11.0), rod_mm=None if rod is None else wanted(rod)))
        said = " ".join((*made.steps, *made.goes_in.said, *(row.if_not for row in made.accept)))
        assert ("its rod" in said) == (rod is not None)
        assert ("in its bore" in said) == (rod is None)

    def test_a_spring_that_sits_on_nothing_is_checked_on_a_rod_that_fits_it(self) -> None:
        made = plan(pocket=Pocket(width_mm=wanted(12.0)))
        assert "three times on a rod that fits it loosely" in " ".join(made.steps)


@pytest.mark.parametrize(
    ("name", "way"),
    [
        ("music-wire", "closes a little in the heat, and leg 2 turns on"),
        ("stainless-1.4310", "opens a little in the heat, and leg 2 turns back"),
    ],
)
def test_heat_turns_the_legs_on_where_it_closes_the_coil_and_back_where_it_opens_it(name: str, way: str) -> None:
    assert way in " ".join(plan(spool(1.2, name=name)).steps)


class TestHand:
    @pytest.mark.parametrize(("hand", "way"), [(Hand.RIGHT, "clockwise"), (Hand.LEFT, "anticlockwise")])
    def test_the_way_to_lay_the_wire_follows_from_the_hand(self, hand: Hand, way: str) -> None:
        steps = " ".join(plan(hand=hand).steps)
        assert f"{hand}-hand: seen from the end where you began, the wire runs away from you {way}." in steps

    def test_nothing_is_wound_where_the_hand_is_not_known(self) -> None:
        refused_for = refusal(hand=None)
        assert refused_for.rule == "hand-not-known"
        assert refused_for.why.endswith("write hand: right or hand: left into the need")

    def test_a_double_spring_wants_no_hand_and_is_wound_from_its_loop(self) -> None:
        made = plan(
            hand=None, bodies=2, pocket=Pocket(rod_mm=wanted(5.5)), turned=(point(30.0, 110.0), point(120.0, 440.0))
        )
        assert spring_of(made).bodies == 2
        steps = " ".join(made.steps)
        assert "Bend the loop first" in steps
        assert "one right-hand and one left-hand" in steps
        assert made.turns_to_wind > 2 * spring_of(made).active_coils


def test_without_a_torque_there_is_nothing_to_wind_for_and_it_is_said_how_to_measure_one() -> None:
    refused_for = refusal(turned=(point(120.0),))
    assert refused_for.rule == "no-torque-wanted"
    assert "press a kitchen scale square against the leg" in refused_for.why


def test_wire_that_would_take_a_set_is_refused_with_the_stress() -> None:
    refused_for = refusal(spool(0.8))
    assert refused_for.rule == "no-diameter-serves"
    assert "it will take a set" in refused_for.why


@pytest.mark.parametrize("torque", [150.0, 220.0, 300.0])
@pytest.mark.parametrize("wire", [1.0, 1.2, 1.4])
@pytest.mark.parametrize("angle", [None, 0.0, 90.0, 180.0, 270.0])
def test_what_is_planned_is_what_the_judge_called_fit(torque: float, wire: float, angle: float | None) -> None:
    """Every plan's spring meets its torques and its angle within tolerance, and stands its largest angle."""
    free = None if angle is None else wanted(angle or 0.001, 15.0)
    made = plan_winding(need(turned=(point(120.0, torque),), free_angle_deg=free), spool(wire), BENCH)
    if isinstance(made, Refusal):
        assert made.why
        return
    spring = spring_of(made)
    assert made.fit.fits in ("yes", "near")
    assert turned.rate_n_mm_per_deg(spring) * 120.0 == pytest.approx(torque, rel=0.31)
    assert made.stress_in_use_mpa <= (turned.permissible_stress_mpa(spring) or 0.0)
    assert made.steps
    assert made.cut_length_mm > made.coil_length_mm


def test_friction_on_a_rod_is_spoken_of_only_where_there_is_a_rod() -> None:
    rodless = replace(need().pocket, rod_mm=None, bore_mm=wanted(16.0))
    with_rod, without = (
        " ".join(planned(plan_winding(each, spool(1.2), BENCH)).notes) for each in (need(), need(pocket=rodless))
    )
    assert "coils that rub on each other and on the rod take up to 6 %" in with_rod
    assert "coils that rub on each other take up to 6 %" in without


def test_where_the_crank_stops_next_counts_that_what_is_added_opens_too() -> None:
    made = planned(plan_winding(need(), spool(1.2, length_left_mm=20_000.0), BENCH))
    (row,) = (row for row in made.accept if row.figure == "free_angle_deg")
    (told,) = re.findall(r"times D_f/D_m = ([\d.]+)", row.if_not)
    on_mandrel_mm = (made.mandrel.diameter_mm or 0.0) + made.wire_diameter_mm
    assert float(told) == pytest.approx(made.finished.figures.mean_diameter_mm / on_mandrel_mm, abs=0.006)
    assert float(told) > 1.02
