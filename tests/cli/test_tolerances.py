"""`springwright describe --tolerances`: each figure's band, as text and as JSON."""

import pytest

SPRINGS = """\
springs:
  - {id: straight, kind: compression, wire_diameter: 1, mean_diameter: 12, free_length: 32, total_coils: 8,
     ends: closed-ground, material: music-wire}
  - {id: odd, kind: compression, wire_diameter: 1, mean_diameter: 41, free_length: 60, total_coils: 8,
     ends: closed-ground, material: music-wire}
  - {id: cone, kind: conical, wire_diameter: 0.9, mean_diameter_small: 7, mean_diameter_large: 17, free_length: 15.8,
     total_coils: 7, ends: closed-ground, material: music-wire}
  - {id: pulled, kind: extension, wire_diameter: 1, mean_diameter: 9, free_length: 40, total_coils: 20,
     hooks: full-loop, initial_tension: 4 N, material: music-wire}
  - {id: turned, kind: torsion, wire_diameter: 0.5, mean_diameter: 5, total_coils: 6, leg_1: 20, leg_2: 15,
     free_angle: 90, hand: right, material: music-wire}
"""


@pytest.fixture
def springs(tmp_path):
    path = tmp_path / "springs.yaml"
    path.write_text(SPRINGS, "utf-8")
    return path


def test_the_json_has_bounds_beside_the_figures_and_their_sources(run, springs):
    straight = run("describe", springs, "--tolerances", "2", "--at", "17", "--json").json["springs"][0]
    assert straight["outside_diameter_mm_low"] == pytest.approx(12.65)
    assert straight["outside_diameter_mm_high"] == pytest.approx(13.35)
    assert straight["free_length_mm_high"] - straight["free_length_mm"] == pytest.approx(1.57, abs=0.005)
    (at,) = straight["at"]
    assert at["force_n_low"] < at["force_n"] < at["force_n_high"]
    assert straight["grade"] == 2
    assert straight["tolerance_sources"]["rate_n_per_mm"] == "JIS B 2704-2"
    assert straight["tolerance_sources"]["force_n"] == "EN 15800 (from memory)"


def test_extension_and_torsion_springs_have_their_bounds_too(run, springs):
    pulled, turned = run("describe", springs, "--tolerances", "2", "--at", "60", "--json").json["springs"][3:]
    assert (pulled["free_length_mm_low"], pulled["free_length_mm_high"]) == pytest.approx((39.1, 40.9))
    assert (pulled["initial_tension_n_low"], pulled["initial_tension_n_high"]) == pytest.approx((3.4, 4.6))
    assert pulled["at"][0]["force_n_low"] < pulled["at"][0]["force_n"] < pulled["at"][0]["force_n_high"]
    assert (turned["free_angle_deg_low"], turned["free_angle_deg_high"]) == pytest.approx((75.0, 105.0))
    assert (turned["leg_1_mm_low"], turned["leg_2_mm_high"]) == pytest.approx((19.4, 15.5))
    (at,) = turned["at"]
    off = (0.05 * 60 + 10) * turned["rate_n_mm_per_deg"]
    assert at["torque_n_mm_high"] - at["torque_n_mm"] == pytest.approx(off)


def test_a_figure_that_no_table_reaches_has_null_bounds(run, springs):
    odd = run("describe", springs, "--tolerances", "2", "--json").json["springs"][1]
    assert odd["outside_diameter_mm_low"] is odd["outside_diameter_mm_high"] is None
    assert odd["tolerance_sources"]["outside_diameter_mm"] == "not known"


def test_without_the_option_no_bounds_are_told(run, springs):
    straight = run("describe", springs, "--json").json["springs"][0]
    assert not [key for key in straight if key.endswith(("_low", "_high"))]
    assert "made to grade" not in run("describe", springs).out


def test_the_text_tells_the_bounds_within_80_columns(run, springs):
    out = run("describe", springs, "--tolerances", "2", "--at", "17").out
    assert "made to grade 2" in out
    assert "outside diameter 12.65 mm 13.35 mm EN 15800" in " ".join(out.split())
    assert "not known" in out
    assert "EN 15800 is for cylinders" in out
    assert "The tables of DIN 2194 were not to be" in out
    assert max(map(len, out.split("\n"))) <= 80


@pytest.mark.parametrize("grade", ["0", "4", "fine"])
def test_a_grade_that_is_none_is_a_wrong_command_line(run, springs, grade):
    ran = run("describe", springs, "--tolerances", grade)
    assert ran.status == 2
    assert "--tolerances" in ran.err
