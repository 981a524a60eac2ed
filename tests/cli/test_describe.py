"""`springwright describe`: the contract of its JSON, and its notes."""

import pytest

KEYS = {
    "id", "kind", "material", "wire_diameter_mm", "mean_diameter_mm", "outside_diameter_mm", "inside_diameter_mm",
    "spring_index", "active_coils", "total_coils", "free_length_mm", "solid_length_mm", "pitch_mm", "rate_n_per_mm",
    "force_at_solid_n", "shear_stress_at_solid_mpa", "tensile_strength_mpa", "wire_length_mm", "mass_g",
    "natural_frequency_hz", "buckling_length_mm", "at", "notes",
}  # fmt: skip

CASE_1 = """\
springs:
  - {id: case-1, kind: compression, wire_diameter: 0.9, outside_diameter: 9.6, free_length: 32, total_coils: 9.75,
     ends: closed-ground, material: music-wire}
"""


@pytest.fixture
def case_1(tmp_path):
    path = tmp_path / "case.yaml"
    path.write_text(CASE_1, "utf-8")
    return path


def test_the_json_has_every_key_of_the_contract(run, case_1):
    (spring,) = run("describe", case_1, "--json").json["springs"]
    assert set(spring) >= KEYS
    assert spring["at"] == []


def test_the_hand_checked_case_comes_out(run, case_1):
    """Case 1 of the winding model: 1.310 N/mm, solid 8.775, 10.48 N at 24 mm, 716 MPa at 14 mm, 924 at solid."""
    (spring,) = run("describe", case_1, "--at", "24 mm", "--at", "14", "--json").json["springs"]
    assert spring["rate_n_per_mm"] == pytest.approx(1.310, abs=0.0005)
    assert spring["solid_length_mm"] == pytest.approx(8.775)
    assert spring["shear_stress_at_solid_mpa"] == pytest.approx(924, abs=0.5)
    first, second = spring["at"]
    assert set(first) == {"length_mm", "force_n", "shear_stress_mpa", "corrected_stress_mpa"}
    assert (first["length_mm"], second["length_mm"]) == (24, 14)
    assert first["force_n"] == pytest.approx(10.48, abs=0.005)
    assert second["shear_stress_mpa"] == pytest.approx(716, abs=0.5)


def test_a_length_in_inches_is_understood(run, case_1):
    (spring,) = run("describe", case_1, "--at", "1 in", "--json").json["springs"]
    assert spring["at"][0]["length_mm"] == pytest.approx(25.4)


def test_a_length_that_is_none_is_a_wrong_command_line(run, case_1):
    ran = run("describe", case_1, "--at", "5 N")
    assert ran.status == 2
    assert "force" in ran.err


def test_text_names_every_spring(run, case_1):
    out = run("describe", case_1, "--at", "14").out
    assert "case-1" in out
    assert "1.31 N/mm" in out
    assert max(map(len, out.split("\n"))) <= 80


def test_a_file_that_is_no_list_of_springs_is_a_mistake(run, bench_folder):
    assert run("describe", "need.yaml").status == 1
    assert run("describe", "catalog/spools/wire.yaml").status == 1


def test_a_bench_in_inches_describes_in_inches(run, bench_folder):
    bench = bench_folder / "catalog/bench.yaml"
    bench.write_text("units: inch\n" + bench.read_text("utf-8"), "utf-8")
    out = run("describe", "catalog/springs/drawer.yaml", "--at", "14").out
    assert "0.378 in" in out
    assert "7.48 lbf/in" in out
    assert "N/mm" not in out
