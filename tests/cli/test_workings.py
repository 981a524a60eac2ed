"""`--workings`: every printed figure with its formula, its numbers, its source, and the line it was written on."""

import pytest

KEYS = {"figure", "formula", "numbers", "value", "unit", "source", "from_memory", "holds"}


@pytest.fixture
def described(run, bench_folder):
    def _described(*more):
        return run("describe", "catalog/springs/drawer.yaml", "--at", "24 mm", "--workings", *more)

    return _described


def by_figure(workings):
    return {each["figure"]: each for each in workings}


def test_each_working_has_the_keys_that_a_program_reads(described):
    (spring,) = described("--json").json["springs"]
    assert all(set(each) == KEYS for each in spring["workings"])


def test_a_rate_is_told_with_its_numbers_its_source_and_its_range(described):
    (spring,) = described("--json").json["springs"]
    rate = by_figure(spring["workings"])["rate_n_per_mm"]
    assert rate["formula"] == "R = G d⁴ / (8 D³ n)"
    assert rate["numbers"] == "81500 · 0.9⁴ / (8 · 8.7³ · 7.75)"
    assert rate["value"] == spring["rate_n_per_mm"]
    assert rate["unit"] == "N/mm"
    assert rate["source"].startswith("EN 13906-1:2013 clause 9")
    assert rate["from_memory"] is False
    assert rate["holds"] == [
        {"range": "spring index 4 to 20", "value": pytest.approx(8.7 / 0.9), "inside": True},
        {"range": "active coils of 2 or more", "value": 7.75, "inside": True},
    ]


def test_a_number_of_the_file_leads_back_to_its_line(described):
    """The fixture's drawer has the wire in its fourth line, the outside diameter in the fifth; the mean follows."""
    (spring,) = described("--json").json["springs"]
    workings = by_figure(spring["workings"])
    assert workings["wire_diameter_mm"]["source"] == "catalog/springs/drawer.yaml:4:20"
    assert workings["outside_diameter_mm"]["source"] == "catalog/springs/drawer.yaml:5:23"
    assert workings["outside_diameter_mm"]["formula"] is None
    assert workings["mean_diameter_mm"]["formula"] == "D = D_e − d"
    assert workings["total_coils"]["source"] == "catalog/springs/drawer.yaml:7:18"
    assert workings["active_coils"]["numbers"] == "9.75 − 2"


def test_what_a_table_gives_names_its_row_and_what_is_from_memory_is_marked(described):
    (spring,) = described("--json").json["springs"]
    workings = by_figure(spring["workings"])
    strength = workings["tensile_strength_mpa"]
    assert strength["source"] == "EN 10270-1 table of tensile strength, SH, 0.9 mm"
    assert strength["from_memory"] is True
    assert workings["shear_modulus_mpa"]["from_memory"] is False


def test_text_shows_the_same_within_eighty_columns(described):
    out = described().out
    assert "  rate: 1.3097 N/mm\n      R = G d⁴ / (8 D³ n)\n      = 81500 · 0.9⁴ / (8 · 8.7³ · 7.75)\n" in out
    assert "inside its range: spring index 4 to 20 (here 9.6667)" in out
    assert "EN 13906-1:2013 clause 9, from memory" in out
    assert max(map(len, out.split("\n"))) <= 80


def test_a_figure_outside_its_range_is_given_and_marked(run, bench_folder):
    """An index of 3.3 where the standard begins with 4."""
    drawer = bench_folder / "catalog/springs/drawer.yaml"
    drawer.write_text(drawer.read_text("utf-8").replace("outside_diameter: 9.6", "outside_diameter: 3.9"), "utf-8")
    out = run("describe", drawer, "--workings").out
    assert "OUTSIDE its range: spring index 4 to 20 (here 3.3333)" in out


def test_without_the_option_there_are_no_workings(run, bench_folder):
    (spring,) = run("describe", "catalog/springs/drawer.yaml", "--json").json["springs"]
    assert "workings" not in spring
    assert "Workings" not in run("describe", "catalog/springs/drawer.yaml").out


def test_source_shows_how_the_chosen_spring_and_its_score_come_about(run, bench_folder):
    document = run("source", "need.yaml", "--workings", "--json").json
    chosen = document["options"][0]
    workings = by_figure(document["workings"])
    assert workings["force_n at 24 mm"]["numbers"] == "max(0, 1.3097 · (31 − 24))"
    assert workings["wanted of force at 24 mm"]["source"] == "need.yaml:6:28"
    assert workings["wanted of force at 24 mm"]["unit"] == "N"
    for row in chosen["deviations"]:
        shown = workings[f"deviation_over_tolerance of {row['figure']}"]
        assert shown["value"] == pytest.approx(row["deviation_over_tolerance"])
    assert workings["score"]["value"] == chosen["score"]
    assert workings["chance"]["value"] == chosen["chance"]


def test_wind_shows_how_the_mandrel_gives_the_spring(run, bench_folder):
    document = run("wind", "need.yaml", "--wire", "W08", "--workings", "--json").json
    workings = by_figure(document["workings"])
    assert workings["wire_diameter_mm"]["source"] == "catalog/spools/wire.yaml:4:20"
    assert workings["mandrel_diameter_mm"]["value"] == document["mandrel"]["diameter_mm"]
    assert workings["released_index"]["formula"] == "C_f = 1 / (1/C_m − ε b g)"
    assert workings["mean_diameter_mm as wound"]["value"] == document["finished"]["mean_diameter_mm"]
    assert workings["cut_length_mm"]["value"] == document["cut_length_mm"]
    assert workings["flow_ratio"]["from_memory"] is True


@pytest.mark.parametrize("words", [("source", "need.yaml"), ("wind", "need.yaml", "--wire", "W08")])
def test_text_of_source_and_wind_keeps_within_eighty_columns(run, bench_folder, words):
    out = run(*words, "--workings").out
    assert "\nWorkings, in mm, N and MPa\n" in out
    assert max(map(len, out.split("\n"))) <= 80


def test_a_guarded_need_has_no_workings(run, bench_folder):
    need = bench_folder / "need.yaml"
    need.write_text(need.read_text("utf-8") + "duty: guarded\n", "utf-8")
    assert run("source", "need.yaml", "--workings", "--json").json["workings"] == []
    assert "workings" not in run("wind", "need.yaml", "--workings", "--json").json
