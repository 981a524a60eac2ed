"""`springwright wind` as a user runs it."""

import re

import pytest

KEYS = {
    "wire", "material", "wire_diameter_mm", "cut_length_mm", "coil_length_mm", "mandrel", "turns_to_wind",
    "turns_to_spare", "pitch_on_mandrel_mm", "finished", "after_heat", "accept", "steps", "cautions", "tries_expected",
}  # fmt: skip


def test_the_json_has_every_key_of_the_contract(run, bench_folder):
    ran = run("wind", "need.yaml", "--json")
    assert ran.status == 0
    plan = ran.json
    assert set(plan) >= KEYS
    assert plan["wire"] == "W08"
    assert set(plan["mandrel"]) >= {"kind", "diameter_mm", "profile"}
    assert {"figure", "low", "high", "if_not"} == set(plan["accept"][0])
    assert plan["coil_length_mm"] < plan["cut_length_mm"]
    assert plan["finished"]["outside_diameter_mm_low"] < plan["finished"]["outside_diameter_mm"]


def test_it_is_accepted_in_grams_at_two_lengths_beside_newtons(run, bench_folder):
    figures = {row["figure"] for row in run("wind", "need.yaml", "--json").json["accept"]}
    assert {"scale_at_24_mm_g", "force_at_24_mm_n", "scale_at_14_mm_g", "force_at_14_mm_n"} <= figures


def test_the_sheet_leads_with_its_cautions(run, bench_folder):
    out = run("wind", "need.yaml").out
    assert out.index("eye protection") < out.index("At the bench")
    assert max(map(len, out.split("\n"))) <= 80


def test_one_spool_alone_is_solved_for(run, bench_folder):
    out = run("wind", "need.yaml", "--wire", "W08").out
    assert "Only between mean diameters" in out or "Yes, at every mean diameter" in out


def test_wire_of_a_size_to_buy_is_planned_where_it_is_named_with_its_unit(run, bench_folder):
    bought = run("wind", "need.yaml", "--wire", "0.85 mm", "--json").json
    assert (bought["wire"], bought["wire_diameter_mm"]) == (None, 0.85)
    assert run("wind", "need.yaml", "--wire", "MWG 15", "--json").json["wire_diameter_mm"] == pytest.approx(0.889)


@pytest.mark.parametrize("size", ["0.85", "0.85 N", "0 mm", "-1 mm"])
def test_what_is_neither_a_spool_nor_a_size_is_told_both(run, bench_folder, size):
    ran = run("wind", "need.yaml", "--wire", size)
    assert ran.status == 2
    assert f"there is no spool “{size}”" in ran.err
    assert "as in 1.4 mm" in ran.err


def test_an_unknown_spool_is_a_wrong_command_line_with_the_nearest_told(run, bench_folder):
    ran = run("wind", "need.yaml", "--wire", "W80")
    assert ran.status == 2
    assert "W08" in ran.err


def test_a_mandrel_that_is_given_is_judged_alone(run, bench_folder):
    plan = run("wind", "need.yaml", "--wire", "W08", "--mandrel", "6 mm", "--json").json
    assert plan["mandrel"]["diameter_mm"] == 6


def test_a_mandrel_that_cannot_serve_is_refused_with_status_3(run, bench_folder):
    ran = run("wind", "need.yaml", "--wire", "W08", "--mandrel", "10 mm", "--json")
    assert ran.status == 3
    assert set(ran.json) == {"refused", "cautions"}
    assert "the mandrel of 10.00 mm does not serve" in ran.json["refused"]["why"]


@pytest.mark.parametrize("words", [("source",), ("wind",)])
def test_a_guarded_need_gets_no_winding_sheet(run, bench_folder, words):
    need = bench_folder / "need.yaml"
    need.write_text(need.read_text("utf-8").replace("the lever of a desk punch", "a garage door"), "utf-8")
    ran = run(*words, "need.yaml", "--json")
    assert ran.status == 3
    if words == ("wind",):
        assert ran.json["refused"]["rule"] == "guarded"
    assert "cut_length_mm" not in ran.out


def test_a_spool_that_is_too_short_is_refused(run, bench_folder):
    wire = bench_folder / "catalog/spools/wire.yaml"
    wire.write_text(wire.read_text("utf-8").replace("6.2 m", "300 mm"), "utf-8")
    ran = run("wind", "need.yaml", "--wire", "W08", "--json")
    assert ran.status == 3
    assert ran.json["refused"]["rule"] == "wire-too-short"


def test_wire_over_the_hand_winding_limit_is_refused(run, bench_folder):
    wire = bench_folder / "catalog/spools/wire.yaml"
    wire.write_text(wire.read_text("utf-8").replace("wire_diameter: 0.8", "wire_diameter: 2.5"), "utf-8")
    ran = run("wind", "need.yaml", "--wire", "W08", "--json")
    assert ran.status == 3
    assert ran.json["refused"]["rule"] == "hand-winding-limit"


def test_wire_over_the_hand_winding_limit_by_moment_is_refused_with_the_key_that_sets_it(run, bench_folder):
    bench = bench_folder / "catalog/bench.yaml"
    bench.write_text("hand_winding: {stop_moment: 0.2 N*m}\n", "utf-8")
    ran = run("wind", "need.yaml", "--wire", "W08", "--json")
    assert ran.status == 3
    assert ran.json["refused"]["rule"] == "hand-winding-limit"
    assert "`stop_moment`" in ran.json["refused"]["why"]


def test_a_crank_of_nothing_is_told_at_its_line(run, bench_folder):
    bench = bench_folder / "catalog/bench.yaml"
    bench.write_text("units: mm\nhand_winding: {crank: -5 mm}\n", "utf-8")
    ran = run("wind", "need.yaml")
    assert ran.status == 1
    assert "bench.yaml:2:23: -5 mm is negative; expected a length above zero" in ran.err


def test_the_sheet_lists_the_mandrels_to_choose_among(run, bench_folder):
    bench = bench_folder / "catalog/bench.yaml"
    bench.write_text("tools: [vice, hand-drill, printer]\n", "utf-8")
    said = run("wind", "need.yaml").out
    assert "Mandrels that would do, and that would not" in said
    assert "this sheet: on hand" in said
    plan = run("wind", "need.yaml", "--json").json
    first, *others = plan["mandrel_choices"]
    assert (first["chosen"], first["diameter_mm"]) == (True, plan["mandrel"]["diameter_mm"])
    assert {each["kind"] for each in others} >= {"turned", "printed", "sleeve"}
    assert plan["crank"]["handle_mm"] == 100
    assert plan["crank"]["force_n"] == pytest.approx(plan["crank"]["moment_n_mm"] / 100)


def test_what_a_trial_taught_is_told_in_the_bench_s_units(run, bench_folder):
    """Hand-checked case 2 of the winding model: mandrel 6.0, outside 8.9 (0.236 and 0.350 in)."""
    wire, bench = bench_folder / "catalog/spools/wire.yaml", bench_folder / "catalog/bench.yaml"
    trial = "    trials: [{mandrel: 6.0, outside_diameter: 8.9}]\n"
    wire.write_text(wire.read_text("utf-8") + trial, "utf-8")
    assert any(
        note.startswith("Trial on 6.00 mm: 8.90 mm outside where 9.03 mm was expected: springs back less")
        for note in run("wind", "need.yaml", "--wire", "W08", "--json").json["notes"]
    )
    bench.write_text("units: inch\n" + bench.read_text("utf-8"), "utf-8")
    out = " ".join(run("wind", "need.yaml", "--wire", "W08").out.split())
    assert "Trial on 0.236 in: 0.350 in outside where" in out
    assert " mm" not in out.replace("thousandth", "")


def test_came_out_answers_what_to_do_with_the_coil(run, bench_folder):
    ran = run("wind", "need.yaml", "--came-out", "9.9 mm")
    assert ran.status == 0
    words = " ".join(ran.out.split())
    assert words.startswith("Taken as 11.63 turns wound from W08 (0.80 mm music-wire) on the rod of 5.50 mm. If you ")
    assert "It came out at 9.90 mm outside instead of" in words
    document = run("wind", "need.yaml", "--came-out", "9.9 mm", "--json").json
    assert document["answer"] in ("keep", "change", "wind again")
    assert run("wind", "need.yaml", "--came-out-pitch", "2.4").status == 0
    assert run("wind", "need.yaml", "--pressed-to", "29").status == 0


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--came-out", "4"), "less than its mandrel and two wires"),
        (("--came-out", "9.9", "--pressed-to", "29"), "--came-out and --pressed-to"),
        (("--came-out", "wide"), "--came-out"),
        (("--pressed-to", "0"), "--pressed-to"),
    ],
)
def test_a_coil_that_cannot_have_come_out_so_is_a_wrong_command_line(run, bench_folder, words, said):
    ran = run("wind", "need.yaml", *words)
    assert ran.status == 2
    assert said in " ".join(ran.err.split())


def test_that_current_wants_its_own_metal_comes_before_any_wire_is_named(run, bench_folder):
    need = bench_folder / "need.yaml"
    text = need.read_text("utf-8")
    need.write_text(re.sub("^what: .*$", "what: contact spring of a torch", text, flags=re.MULTILINE), "utf-8")
    out = " ".join(run("wind", "need.yaml").out.split())
    assert out.index("must be of the metal it was") < out.index("music-wire")
    assert out.count("must be of the metal it was") == 1
    run("wind", "need.yaml", "--sheet", "out.html")
    page = (bench_folder / "out.html").read_text("utf-8")
    assert 0 < page.index("must be of the metal it was") < page.index("music-wire")


def test_the_length_before_grinding_stands_beside_the_one_after_it(run, bench_folder):
    out = run("wind", "need.yaml").out
    document = run("wind", "need.yaml", "--json").json["finished"]
    (longer,) = map(float, re.findall(r"Wind it longer than [\d.]+ mm by about ([\d.]+) mm", " ".join(out.split())))
    table = " ".join(out.partition("What comes out")[2].partition("At the bench")[0].split())
    (before,) = re.findall(r"free length before ([\d.]+) mm .* grinding and pressing", table)
    assert float(before) == pytest.approx(document["free_length_mm"] + 0.8 + longer, abs=0.06)
    (in_the_end,) = re.findall(r"free length in the ([\d.]+) mm", table)
    assert float(in_the_end) == pytest.approx(document["free_length_mm"], abs=0.06)
