"""Ends that hook into a part, from the need to the winding sheet."""

import pytest

NEED = """\
job: peg-spring
kind: compression
what: spring of a peg that hooks into its bar
pocket: {bore: 12 mm, depth: 40 mm}
working:
  - {length: 24 mm, force: 9 N ± 15 %}
  - {length: 16 mm, force: 18 N ± 15 %}
ends: closed
"""
ENDS = "end_1: {shape: tang-in, length: 4 mm, angle: 90 deg}\nend_2: leg, 12 mm\n"
SPRING = (
    "kind: compression, wire_diameter: 0.9, outside_diameter: 10, free_length: 31, total_coils: 9.5, ends: closed, \
material: music-wire, on_hand: 1"
)
SPRINGS = f"""\
springs:
  - {{id: hooked, {SPRING}, end_1: {{shape: leg, length: 12}}, end_2: "tang-in, 4.4 mm, 90 deg"}}
  - {{id: plain, {SPRING}}}
"""
SPOOLS = "spools:\n  - {id: W10, material: music-wire, wire_diameter: 1.0, length_left: 5 m}\n"


@pytest.fixture
def folder(tmp_path, monkeypatch):
    for name, text in {
        "catalog/springs/a.yaml": SPRINGS,
        "catalog/spools/a.yaml": SPOOLS,
        "plain.yaml": NEED,
        "hooked.yaml": NEED + ENDS,
    }.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_the_hooked_spring_fits_and_the_plain_one_is_near_with_the_reason(run, folder):
    options = {each["id"]: each for each in run("source", "hooked.yaml", "--json").json["options"]}
    assert options["hooked"]["fits"] == "yes"
    assert options["plain"]["fits"] == "near"
    whys = [limit["why"] for limit in options["plain"]["limits"] if limit["limit"] == "end 1"]
    assert whys[0].startswith("plain, and cannot hook into its part; a tang in, 4 mm long, bent by 90 deg is wanted")


def test_the_need_is_told_with_its_ends(run, folder):
    need = run("source", "hooked.yaml", "--json").json["need"]
    assert need["end_1"] == {"shape": "tang-in", "length_mm": 4.0, "angle_deg": 90.0}
    assert need["end_2"] == {"shape": "leg", "length_mm": 12.0, "angle_deg": 0.0}
    assert run("source", "plain.yaml", "--json").json["need"]["end_1"] is None
    told = " ".join(run("source", "hooked.yaml").out.split())
    assert "end 1 a tang in, 4 mm long, bent by 90 deg; end 2 a straight leg, 12 mm long" in told


def test_describe_tells_the_ends(run, folder):
    hooked, plain = run("describe", "catalog/springs/a.yaml", "--json").json["springs"]
    assert hooked["end_2"] == {"shape": "tang-in", "length_mm": 4.4, "angle_deg": 90.0}
    assert plain["end_1"] is None
    assert hooked["wire_length_mm"] > plain["wire_length_mm"] + 15
    assert "a tang in, 4.40 mm long, bent by 90 deg" in run("describe", "catalog/springs/a.yaml").out


def test_the_wire_of_the_ends_is_cut_too(run, folder):
    """12 mm of leg, and 4 mm of tang less what its bend saves: 2 · 1.5 mm of tangents for a quarter turn of 1.5 mm."""
    hooked, plain = (run("wind", f"{name}.yaml", "--json").json for name in ("hooked", "plain"))
    ends_mm = 12 + 4 - 3 + 1.5 * 3.14159265 / 2
    assert hooked["coil_length_mm"] - plain["coil_length_mm"] == pytest.approx(ends_mm, abs=0.001)
    assert hooked["cut_length_mm"] - plain["cut_length_mm"] == pytest.approx(ends_mm, abs=0.001)


def test_the_steps_tell_how_to_bend_them_before_heat(run, folder):
    steps = run("wind", "hooked.yaml", "--json").json["steps"]
    trim, tang, leg = (
        next(number for number, step in enumerate(steps) if start in step)
        for start in ("Trim to", "Make end 1 a tang in", "Make end 2 a straight leg")
    )
    heat = next(number for number, step in enumerate(steps) if step.startswith("Relieve the stress"))
    assert trim < tang < leg < heat
    assert "leave 3.36 mm at end 1 and 12.0 mm at end 2 beyond them" in steps[trim]
    assert "towards the axis round a pin of 2.00 mm or more" in steps[tang]
    assert not [step for step in run("wind", "plain.yaml", "--json").json["steps"] if "Make end" in step]


def test_where_nothing_is_said_of_the_ends_hooked_ones_are_not_ground(run, folder):
    text = (NEED + ENDS).replace("ends: closed\n", "", 1)
    (folder / "free.yaml").write_text(text, "utf-8")
    steps = run("wind", "free.yaml", "--json").json["steps"]
    assert not [step for step in steps if step.startswith("Grind")]


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("end_1: tang-inn, 4 mm", "“tang-inn” is no shape of an end; expected tang-in, tang-out, across or leg"),
        ("end_1: tang-in", "no length; expected the key length with a length, as in 4 mm"),
        ("end_1: {shape: leg, length: 3 N}", "3 N is a force; expected a length"),
        ("end_1: {shape: leg, length: '>= 3 mm'}", "is no one length; expected the length from the coil to the tip"),
        (
            "end_1: leg, 9 mm, 170 deg",
            "170 deg is sharper than is bent; expected a bend out of the coil of 0 to 150 deg",
        ),
    ],
)
def test_a_mistake_in_an_end_is_told(run, folder, line, says):
    (folder / "wrong.yaml").write_text(f"{NEED}{line}\n", "utf-8")
    ran = run("source", "wrong.yaml")
    assert ran.status == 1
    assert says in ran.err


@pytest.mark.parametrize(
    ("end", "says"),
    [
        ("tang-in, 60 mm", "60.0 mm is more than the coil has room for; expected 8.65 mm or less"),
        ("across, 3 mm", "3.00 mm does not reach across the coil; expected at least the inside diameter, 8.20 mm"),
    ],
)
def test_a_listed_end_that_its_coil_has_no_room_for_is_told_at_its_line(run, folder, end, says):
    (folder / "catalog/springs/a.yaml").write_text(f"springs:\n  - {{id: odd, {SPRING}, end_1: '{end}'}}\n", "utf-8")
    ran = run("stock", "check")
    assert ran.status == 1
    assert "a.yaml:2" in ran.out + ran.err
    assert says in " ".join((ran.out + ran.err).split())


def test_an_end_that_is_added_is_read_back(run, folder):
    words = [
        *("stock", "add", "--id", "N1", "--kind", "compression", "--wire-diameter", "0.9", "--outside-diameter", "9.6"),
        *("--free-length", "31", "--total-coils", "9.75", "--ends", "closed", "--material", "music-wire"),
        *("--end-1", "tang-out, 5 mm, 45 deg", "--to", "catalog/springs/a.yaml"),
    ]
    assert run(*words).status == 0
    added = run("describe", "catalog/springs/a.yaml", "--json").json["springs"][-1]
    assert added["end_1"] == {"shape": "tang-out", "length_mm": 5.0, "angle_deg": 45.0}
