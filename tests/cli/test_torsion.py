"""Torsion springs from the command line: described at angles, found in the drawer, refused for their hand, wound."""

from pathlib import Path

import pytest

KEYS = {
    "id", "kind", "material", "wire_diameter_mm", "mean_diameter_mm", "outside_diameter_mm", "inside_diameter_mm",
    "spring_index", "active_coils", "total_coils", "rate_n_mm_per_deg", "tensile_strength_mpa", "wire_length_mm",
    "mass_g", "natural_frequency_hz", "at", "notes",
}  # fmt: skip

SPRINGS = """\
springs:
  - {id: N-1, kind: torsion, wire_diameter: 1.5, mean_diameter: 12, total_coils: 5, leg_1: 30 mm, leg_2: 34 mm,
     free_angle: 180 deg, hand: right, material: music-wire, on_hand: 2, place: tray N}
  - {id: N-2, kind: torsion, wire_diameter: 1.5, mean_diameter: 12, total_coils: 5, leg_1: 30 mm, leg_2: 30 mm,
     free_angle: 180 deg, hand: left, material: music-wire, on_hand: 1}
"""

NEED = """\
job: handle
kind: torsion
hand: right
pocket: {rod: 8 mm, bore: 20 mm, width: 12 mm}
working:
  - {angle: 60 deg, torque: 257 N*mm ± 15 %}
leg_1: 30 mm
leg_2: 30 mm
free_angle: 180 deg ± 10 deg
"""


@pytest.fixture
def tray(bench_folder: Path) -> Path:
    (bench_folder / "catalog/springs/torsion.yaml").write_text(SPRINGS, "utf-8")
    (bench_folder / "need.yaml").write_text(NEED, "utf-8")
    return bench_folder / "catalog/springs/torsion.yaml"


def test_the_json_has_every_key_of_the_contract_and_figures_at_an_angle(run, tray):
    (first, _) = run("describe", tray, "--at", "60 deg", "--json").json["springs"]
    assert set(first) >= KEYS
    (at,) = first["at"]
    assert set(at) >= {"angle_deg", "torque_n_mm", "bending_stress_mpa", "corrected_stress_mpa"}
    assert (at["angle_deg"], at["torque_n_mm"]) == (60.0, pytest.approx(254.0, abs=4.0))


def test_an_angle_may_have_no_unit_be_in_turns_or_be_against_the_hand(run, tray):
    out = run("describe", tray, "--at", "60", "--at", "1/4 turn", "--at", "-30 deg").out
    assert "60 deg" in out
    assert "90 deg" in out
    assert "At -30 deg it is loaded against its hand" in out
    assert max(map(len, out.split("\n"))) <= 80


@pytest.mark.parametrize(("at", "says"), [("24 mm", "24 mm is a length"), ("5 N", "5 N is a force")])
def test_what_is_no_angle_is_a_wrong_command_line(run, tray, at, says):
    ran = run("describe", tray, "--at", at)
    assert ran.status == 2
    assert says in ran.err


def test_an_angle_is_a_wrong_command_line_where_every_spring_is_pressed(run, bench_folder):
    ran = run("describe", bench_folder / "catalog/springs/drawer.yaml", "--at", "60 deg")
    assert ran.status == 2
    assert "--at: 60 deg is an angle; expected a length, as in 24 mm: no spring here is turned" in ran.err


def test_a_spring_that_fits_is_taken_from_the_drawer_and_its_leg_is_cut_first(run, tray):
    ran = run("source", "need.yaml")
    assert ran.status == 0
    said = " ".join(ran.out.split())
    assert "Take N-1 from the drawer (tray N); it fits" in said
    assert "first cut 4 mm off leg 2." in said
    assert "drawer N-2: left-hand, where right-hand is wanted" in said
    assert "(_.-')        ('-._)" in ran.out
    assert max(map(len, ran.out.split("\n"))) <= 80


def test_a_mirror_image_is_never_recommended_however_well_it_fits(run, tray):
    (tray.parents[2] / "need.yaml").write_text(NEED.replace("hand: right", "hand: left"), "utf-8")
    ran = run("source", "need.yaml", "--json").json
    options = {option["id"]: option["fits"] for option in ran["options"] if option["option"] == "drawer"}
    assert (options["N-1"], options["N-2"]) == ("no", "yes")
    assert ran["need"]["hand"] == "left"
    assert ran["need"]["working"] == [
        {"angle_deg": 60.0, "torque_n_mm": 257.0, "torque_n_mm_low": pytest.approx(218.45),
         "torque_n_mm_high": pytest.approx(295.55)}
    ]  # fmt: skip


def test_legs_longer_than_the_pocket_are_said(run, tray):
    said = " ".join(run("source", "need.yaml").out.split())
    assert (
        "Leg 1 and leg 2 are wanted longer than the pocket, whose wall is 10.00 mm from the axis. They must come out "
        "through slots: whether there is one was not judged."
    ) in said


def test_a_need_without_a_hand_is_told_how_to_see_one(run, tray):
    (tray.parents[2] / "need.yaml").write_text(NEED.replace("hand: right\n", ""), "utf-8")
    ran = run("wind", "need.yaml")
    assert ran.status == 3
    assert "No winding sheet: which hand is wanted is not said" in ran.out
    assert "anticlockwise winds up a right-hand spring" in " ".join(ran.out.split())
    assert "near" in run("source", "need.yaml").out


def test_the_stock_list_shows_a_rate_by_angle_and_finds_by_it(run, tray):
    assert "4.26" in (shown := run("stock", "list", "--kind", "torsion").out)
    assert "N·mm/deg" in shown
    assert "N-1" in run("stock", "list", "--rate", "4 N*mm/deg").out
    assert "N-1" not in run("stock", "list", "--rate", "4 N/mm").out


def test_a_torsion_spring_is_added_with_its_legs(run, tray):
    ran = run("stock", "add", "--kind", "torsion", "--wire-diameter", "1", "--outside-diameter", "9", "--total-coils",
              "4", "--material", "music-wire", "--hand", "left", "--leg-1", "20 mm", "--free-angle", "180 deg",
              "--to", "torsion", "--id", "N-9")  # fmt: skip
    assert ran.status == 0, ran.err
    assert "leg_1: 20 mm" in tray.read_text("utf-8")
    assert "N-9" in run("stock", "find", "left").out


def test_a_double_spring_is_wound_from_its_loop_and_the_sheet_keeps_to_its_width_in_inches(run, tray, bench_folder):
    need = """\
job: lid
kind: torsion
bodies: 2
pocket: {rod: 1/4 in, width: 3/4 in}
working:
  - {angle: 1/4 turn, torque: 3 lbf*in ± 20 %}
leg_1: 1 in
leg_2: 3/4 in
material: stainless-1.4310
"""
    (bench_folder / "need.yaml").write_text(need, "utf-8")
    (bench_folder / "catalog/bench.yaml").write_text("units: inch\n", "utf-8")
    ran = run("wind", "need.yaml")
    assert ran.status == 0, ran.out
    assert "Bend the loop first" in ran.out
    assert "How to see the hand" not in ran.out
    assert max(map(len, ran.out.split("\n"))) <= 80


def test_where_no_angle_is_wanted_the_sheet_gives_none(run, tray, bench_folder):
    (bench_folder / "need.yaml").write_text(NEED.replace("free_angle: 180 deg ± 10 deg\n", ""), "utf-8")
    out = " ".join(run("wind", "need.yaml").out.split())
    assert "Set the legs as the old ones stood (at what angle was not said)" in out
    assert "angle between the legs" not in out


def test_an_angle_counted_back_past_leg_1_is_told_as_it_is_measured(run, tray, bench_folder):
    (bench_folder / "need.yaml").write_text(NEED.replace("free_angle: 180", "free_angle: 10"), "utf-8")
    springs = SPRINGS.replace("free_angle: 180 deg, hand: right", "free_angle: 270 deg, hand: right")
    tray.write_text(springs, "utf-8")
    assert "free angle is 270 deg" in " ".join(run("source", "need.yaml").out.split())


def test_the_list_of_torsion_springs_tells_their_hands(run, tray):
    out = run("stock", "list", "--kind", "torsion").out
    assert "hand" in out.split("\n")[2]
    assert "right" in out
    assert "left" in out
    assert "length" not in out


def test_each_kind_is_listed_in_a_table_of_its_own_no_wider_than_80_columns(run, tray):
    out = run("stock", "list").out
    assert "compression spring\n" in out
    assert "torsion springs\n" in out
    assert max(map(len, out.splitlines())) <= 80
