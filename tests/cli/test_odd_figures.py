"""Springs at the edge of what the formulas are for: an index of 2 and of 40, one active coil. A figure is marked, or a
wire is refused in words; nothing passes in silence.
"""

import pytest

SPRINGS = """\
springs:
  - {id: w2, kind: compression, wire_diameter: 2, mean_diameter: 4, free_length: 40, total_coils: 8, ends: closed,
     material: music-wire, on_hand: 1}
  - {id: w40, kind: compression, wire_diameter: 0.5, mean_diameter: 20, free_length: 40, total_coils: 8, ends: closed,
     material: music-wire, on_hand: 1}
  - {id: n1, kind: compression, wire_diameter: 1, mean_diameter: 10, free_length: 20, active_coils: 1, ends: closed,
     material: music-wire, on_hand: 1}
  - {id: cone-w2, kind: conical, wire_diameter: 2, mean_diameter_small: 4, mean_diameter_large: 16, free_length: 40,
     total_coils: 8, ends: closed, material: music-wire, on_hand: 1}
  - {id: cone-w40, kind: conical, wire_diameter: 0.5, mean_diameter_small: 9, mean_diameter_large: 20, free_length: 40,
     total_coils: 8, ends: closed, material: music-wire, on_hand: 1}
  - {id: cone-n1, kind: conical, wire_diameter: 1, mean_diameter_small: 6, mean_diameter_large: 10, free_length: 20,
     active_coils: 1, ends: closed, material: music-wire, on_hand: 1}
  - {id: pull-w2, kind: extension, wire_diameter: 2, mean_diameter: 4, free_length: 50, total_coils: 20,
     hooks: full-loop, material: music-wire, on_hand: 1}
  - {id: pull-w40, kind: extension, wire_diameter: 0.5, mean_diameter: 20, free_length: 50, total_coils: 20,
     hooks: full-loop, material: music-wire, on_hand: 1}
  - {id: pull-n1, kind: extension, wire_diameter: 1, mean_diameter: 10, free_length: 20, total_coils: 1,
     hooks: full-loop, material: music-wire, on_hand: 1}
  - {id: turn-w2, kind: torsion, wire_diameter: 2, mean_diameter: 4, total_coils: 5, material: music-wire, on_hand: 1}
  - {id: turn-n1, kind: torsion, wire_diameter: 1, mean_diameter: 10, total_coils: 1, material: music-wire, on_hand: 1}
"""
LESS_SURE = "rate and stress are less sure."

MARKED = {
    "w2": f"The spring index 2 is outside the 4 to 20 of EN 13906-1: {LESS_SURE}",
    "w40": f"The spring index 40 is outside the 4 to 20 of EN 13906-1: {LESS_SURE}",
    "n1": f"1 active coil is fewer than the 2 of EN 13906-1: {LESS_SURE}",
    "cone-w2": f"The spring index 2 of the small end is outside the 4 to 20 of EN 13906-1: {LESS_SURE}",
    "cone-w40": f"The spring index 40 of the large end is outside the 4 to 20 of EN 13906-1: {LESS_SURE}",
    "cone-n1": f"1 active coil is fewer than the 2 of EN 13906-1: {LESS_SURE}",
    "pull-w2": f"The spring index 2 is outside the 4 to 20 of EN 13906-2: {LESS_SURE}",
    "pull-w40": f"The spring index 40 is outside the 4 to 20 of EN 13906-2: {LESS_SURE}",
    "pull-n1": f"1 active coil is fewer than the 3 of EN 13906-2: {LESS_SURE}",
    "turn-w2": f"The spring index 2 is outside the 4 to 20 of EN 13906-3: {LESS_SURE}",
    "turn-n1": f"1 coil is fewer than the 2 of DIN 2194: {LESS_SURE}",
}
STEEP = "Its pitch of {} is more than half the mean diameter of {} (JIS B 2704-1): rate, stress and growth of the "


@pytest.fixture
def folder(tmp_path, monkeypatch):
    (tmp_path / "catalog/springs").mkdir(parents=True)
    (tmp_path / "catalog/springs/edge.yaml").write_text(SPRINGS, "utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.fixture
def described(run, folder):
    return {each["id"]: each for each in run("describe", "catalog/springs/edge.yaml", "--json").json["springs"]}


@pytest.mark.parametrize(("spring", "note"), MARKED.items(), ids=MARKED)
def test_describe_gives_the_figures_and_marks_them(described, spring, note):
    assert note in described[spring]["notes"]
    assert described[spring]["mass_g"] > 0


def test_a_pitch_too_steep_for_the_formulas_is_marked_too(described):
    assert [note for note in described["n1"]["notes"] if note.startswith(STEEP.format("17 mm", "10 mm"))]
    assert [note for note in described["cone-n1"]["notes"] if note.startswith(STEEP.format("19 mm", "6 mm"))]
    assert not [note for note in described["w40"]["notes"] if note.startswith("Its pitch")]


@pytest.mark.parametrize(
    ("spring", "word"), [("w40", "spring index"), ("n1", "active coils"), ("cone-n1", "active coils")]
)
def test_source_says_it_as_a_soft_limit(run, folder, spring, word):
    kind = "conical" if spring.startswith("cone") else "compression"
    (folder / "need.yaml").write_text(f"job: x\nkind: {kind}\nfree_length: 20..50 mm\n", "utf-8")
    options = run("source", "need.yaml", "--json").json["options"]
    (limit,) = (limit for each in options if each["id"] == spring for limit in each["limits"] if limit["limit"] == word)
    assert (limit["holds"], limit["hard"]) == (False, False)


def spool(folder, wire):
    (folder / "catalog/spools").mkdir()
    text = f"spools:\n  - {{id: W, material: music-wire, wire_diameter: {wire}, length_left: 20 m}}\n"
    (folder / "catalog/spools/w.yaml").write_text(text, "utf-8")


@pytest.mark.parametrize(
    ("kind", "pocket", "wire", "says"),
    [
        ("compression", "{bore: 6.5 mm}", 2, "or 4 wires) and at most 4.30 mm"),
        ("compression", "{rod: 11 mm, bore: 14 mm}", 0.3, "at most 6.00 mm (bore, clearance and wire, or 20 wires)"),
        ("conical", "{bore: 6.5 mm}", 2, "at least the rod with clearance and wire, or 4 wires"),
        ("conical", "{rod: 11 mm, bore: 14 mm}", 0.3, "or 20 wires"),
    ],
)
def test_wind_winds_no_index_outside_4_to_20_and_says_between_which_diameters(run, folder, kind, pocket, wire, says):
    spool(folder, wire)
    working = "working:\n  - {length: 20 mm, force: 1 N}\n  - {length: 15 mm, force: 2 N}\n"
    (folder / "need.yaml").write_text(f"job: x\nkind: {kind}\npocket: {pocket}\n{working}", "utf-8")
    ran = run("wind", "need.yaml", "--wire", "W", "--json")
    assert ran.status == 3
    assert ran.json["refused"]["rule"] == "no-room-for-wire"
    assert says in ran.json["refused"]["why"]


def test_wind_calls_a_spring_of_less_than_two_active_coils_near_at_best(run, folder):
    """24 N/mm from 1.4 mm wire in a bore of 13 mm: more coils would be solid, wider ones have fewer still."""
    spool(folder, 1.4)
    working = "working:\n  - {length: 6.8 mm, force: 20 N}\n  - {length: 6.3 mm, force: 32 N}\n"
    pocket = "pocket: {rod: 8 mm, bore: 13 mm}\n"
    (folder / "need.yaml").write_text(f"job: x\nkind: compression\n{pocket}{working}", "utf-8")
    plan = run("wind", "need.yaml", "--wire", "W", "--json").json
    assert plan["finished"]["active_coils"] < 2
    assert plan["fits"] == "near"
    assert "active coils; EN 13906-1 wants at least 2" in plan["answer"]
