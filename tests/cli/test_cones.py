"""Conical springs from the command line: described, found in the drawer, and told as mistakes."""

from pathlib import Path

import pytest

KEYS = {
    "id", "kind", "material", "wire_diameter_mm", "mean_diameter_small_mm", "mean_diameter_large_mm",
    "outside_diameter_small_mm", "outside_diameter_large_mm", "inside_diameter_small_mm", "inside_diameter_large_mm",
    "spring_index", "active_coils", "total_coils", "free_length_mm", "solid_length_mm", "pitch_mm", "rate_n_per_mm",
    "force_at_solid_n", "shear_stress_at_solid_mpa", "tensile_strength_mpa", "wire_length_mm", "mass_g",
    "natural_frequency_hz", "buckling_length_mm", "closing", "at", "notes",
}  # fmt: skip

CONES = """\
springs:
  - {id: C-1, kind: conical, wire_diameter: 0.9, mean_diameter_small: 7, mean_diameter_large: 17, free_length: 14,
     active_coils: 5, ends: closed, material: EN 10270-1 SH, on_hand: 2, place: tray C}
"""

NEED = """\
job: lamp-switch
kind: conical
pocket:
  large_end: {bore: 18.5 mm}
  small_end: {rod: 5.5 mm ± 0.1 mm}
working:
  - {length: 12 mm, force: 1.3 N ± 40 %}
  - {length: 4.5 mm, force: 8.8 N ± 20 %}
"""


@pytest.fixture
def cones(bench_folder: Path) -> Path:
    (bench_folder / "catalog/springs/cones.yaml").write_text(CONES, "utf-8")
    (bench_folder / "need.yaml").write_text(NEED, "utf-8")
    return bench_folder / "catalog/springs/cones.yaml"


def test_the_json_of_a_cone_has_every_key_of_the_contract(run, cones):
    (spring,) = run("describe", cones, "--at", "12", "--json").json["springs"]
    assert set(spring) >= KEYS
    assert {"mean_diameter_mm", "outside_diameter_mm", "inside_diameter_mm"}.isdisjoint(spring)
    assert set(spring["closing"][0]) == {"coil", "force_n", "length_mm"}
    assert spring["rate_n_per_mm"] == pytest.approx(0.659, abs=0.0005)


def test_the_text_of_a_cone_tells_both_ends_the_initial_rate_and_the_closing_order(run, cones):
    ran = run("describe", cones, "--at", "4.5")
    assert "small end: outside, mean, inside      7.90 mm / 7.00 mm / 6.10 mm" in ran.out
    assert "initial rate                          0.659 N/mm" in ran.out
    assert "coil from large end" in ran.out
    assert max(map(len, ran.out.split("\n"))) <= 80
    assert ran.err == ""


def test_a_cone_that_fits_is_taken_from_the_drawer(run, cones):
    ran = run("source", "need.yaml")
    assert ran.status == 0
    assert "Take C-1 from the drawer (tray C); it fits" in ran.out
    assert "bore at the large end 18.5 mm; rod at the small end 5.5 mm ± 0.1 mm" in ran.out


def test_the_need_is_told_back_with_the_ends_of_its_pocket(run, cones):
    pocket = run("source", "need.yaml", "--json").json["need"]["pocket"]
    assert pocket["large_end"] == {"bore_mm": 18.5, "rod_mm": None}
    assert pocket["small_end"] == {"bore_mm": None, "rod_mm": 5.5, "rod_mm_low": 5.4, "rod_mm_high": 5.6}


def test_a_cylinder_is_no_option_for_a_cone(run, cones):
    options = run("source", "need.yaml", "--json").json["options"]
    assert {option["id"] for option in options if option["option"] in ("drawer", "bought")} == {"C-1"}


def test_a_cone_whose_large_end_is_the_smaller_is_a_mistake(run, cones):
    cones.write_text(CONES.replace("large: 17", "large: 6"), "utf-8")
    ran = run("source", "need.yaml")
    assert ran.status == 1
    assert "a large end of 6, and a small end of 7 on line 2" in ran.err


@pytest.mark.parametrize(
    ("was", "wrong", "said"),
    [
        ("mean_diameter_large: 17", "mean_diameter_large: 6", "expected a large end that is larger than the small one"),
        ("mean_diameter_large: 17", "mean_diameter_large: 9", "its coils would overlap at a free length of 6"),
        ("free_length: 14", "free_length: 0.9", "is no longer than the spring pressed flat"),
        ("kind: conical", "kind: conicl", "“conicl” is no kind of spring"),
    ],
)
def test_a_cone_that_cannot_be_is_one_mistake_told_by_describe(run, cones, was, wrong, said):
    text = CONES.replace(was, wrong)
    cones.write_text(text.replace("free_length: 14", "free_length: 6") if "overlap" in said else text, "utf-8")
    ran = run("describe", cones, "--json")
    (mistake,) = ran.json["mistakes"]
    assert said in f"{mistake['found']}; expected {mistake['expected']}"
    assert ran.status == 1
