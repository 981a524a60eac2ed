"""Extension springs from the command line, as a user runs it."""

from __future__ import annotations

import json

import pytest

SPRINGS = """springs:
  - {id: P-1, kind: extension, wire_diameter: 1.0, outside_diameter: 10, free_length: 40, total_coils: 22,
     hooks: full-loop, initial_tension: 2 N, material: music-wire, on_hand: 2, place: drawer B5}
  - {id: P-2, kind: extension, wire_diameter: 1.0, outside_diameter: 10, free_length: 41, total_coils: 23,
     hooks: full-loop, initial_tension: 2 N, torn_hooks: 1, material: music-wire, on_hand: 1}
"""
NEED = """job: catch
kind: extension
pocket: {bore: 12 mm}
working:
  - {length: 45 mm, force: 5.2 N}
  - {length: 60 mm, force: 14.7 N}
"""
NOTHING_RECOMMENDED = 3


@pytest.fixture
def bench(bench_folder):
    for file in (bench_folder / "catalog" / "springs").glob("*.yaml"):
        file.unlink()
    (bench_folder / "catalog" / "springs" / "pulling.yaml").write_text(SPRINGS, "utf-8")
    (bench_folder / "need.yaml").write_text(NEED, "utf-8")
    return bench_folder


def test_describe_gives_the_keys_of_the_contract_and_those_of_its_kind(run, bench):
    spring = run("describe", "catalog/springs/pulling.yaml", "--at", "60 mm", "--json").json["springs"][0]
    assert spring["initial_tension_n"] == 2.0
    assert (spring["initial_tension_n_low"], spring["initial_tension_n_high"]) == pytest.approx((1.7, 2.3))
    assert spring["breaks_first"] == "the hook, by torsion where it leaves the body"
    assert spring["at"][0]["force_n"] == pytest.approx(14.7, abs=0.01)
    for key in ("solid_length_mm", "force_at_solid_n", "shear_stress_at_solid_mpa", "buckling_length_mm"):
        assert spring[key] is None


def test_a_spring_that_fits_is_taken_from_the_drawer(run, bench):
    ran = run("source", "need.yaml", "--json")
    assert (ran.json["verdict"]["option"], ran.json["verdict"]["id"]) == ("drawer", "P-1")
    assert ran.json["need"]["hooks"] is None
    assert any("No hooks are given" in note for note in ran.json["notes"])


def test_a_torn_one_is_adapted_and_the_document_says_into_what(run, bench):
    (bench / "catalog" / "springs" / "pulling.yaml").write_text(SPRINGS.replace("on_hand: 2", "on_hand: 0"), "utf-8")
    ran = run("source", "need.yaml", "--json")
    assert (ran.json["verdict"]["option"], ran.json["verdict"]["id"]) == ("adapted", "P-2")
    (option,) = [each for each in ran.json["options"] if each["option"] == "adapted"]
    assert option["adapted"]["coils_taken"] == 1.0
    assert option["adapted"]["becomes"]["total_coils"] == 22.0
    assert option["hours"] == pytest.approx(1 / 3)
    sheet = run("source", "need.yaml").out
    assert "How to adapt it" in sheet
    assert max(map(len, sheet.splitlines())) <= 80


def test_wind_lays_it_tight_and_bands_its_tension(run, bench):
    plan = run("wind", "need.yaml", "--json").json
    assert plan["pitch_on_mandrel_mm"] == plan["wire_diameter_mm"]
    assert plan["finished"]["initial_tension_n_low"] == 0.0
    assert {"free_length_mm", "body_length_mm", "initial_tension_n"} <= {row["figure"] for row in plan["accept"]}
    assert max(map(len, run("wind", "need.yaml").out.splitlines())) <= 80


def test_a_need_without_a_force_cannot_be_wound_and_is_told_how_to_measure_one(run, bench):
    (bench / "need.yaml").write_text("job: x\nkind: extension\nfree_length: 40 mm\n", "utf-8")
    ran = run("wind", "need.yaml", "--json")
    assert ran.status == NOTHING_RECOMMENDED
    assert json.loads(ran.out)["refused"]["rule"] == "no-force-wanted"


def test_a_garage_door_stays_guarded(run, bench):
    (bench / "need.yaml").write_text(NEED + "what: extension spring of the garage door\n", "utf-8")
    ran = run("source", "need.yaml", "--json")
    assert ran.status == NOTHING_RECOMMENDED
    assert ran.json["verdict"]["because"][0]["rule"] == "guarded"


def test_it_is_found_by_its_everyday_name_and_by_its_hooks(run, bench):
    for words in (("tension",), ("full-loop",), ("extension", "drawer", "B5")):
        assert "P-1" in run("stock", "find", *words).out
