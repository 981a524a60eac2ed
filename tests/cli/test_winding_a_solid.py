"""`springwright wind --solid` as a user runs it."""

from __future__ import annotations

import errno
import io
import os
from xml.etree import ElementTree

import pytest
import trimesh

SEVEN = ("--wire", "W08", "--mandrel", "6 mm")


def listed(folder):
    return sorted(str(each.relative_to(folder)) for each in folder.rglob("*"))


@pytest.mark.parametrize("suffix", ["stl", "3mf", "STL"])
def test_a_solid_is_written_and_the_sheet_says_how_the_spring_comes_off(run, bench_folder, suffix):
    ran = run("wind", "need.yaml", *SEVEN, "--solid", f"out.{suffix}")
    assert ran.status == 0
    out = " ".join(ran.out.split())
    assert "The mandrel as a solid" in out
    assert "mm of room all round" in out
    assert f"Written to out.{suffix}." in out
    assert max(map(len, ran.out.split("\n"))) <= 80
    read = trimesh.load(io.BytesIO((bench_folder / f"out.{suffix}").read_bytes()), file_type=suffix.lower())
    assert read.is_watertight if suffix != "3mf" else all(each.is_watertight for each in read.geometry.values())


def test_two_files_hold_the_same_solid(run, bench_folder):
    assert run("wind", "need.yaml", *SEVEN, "--solid", "out.stl", "--solid", "out.3mf").status == 0
    stl = trimesh.load(bench_folder / "out.stl")
    (other,) = trimesh.load(bench_folder / "out.3mf").geometry.values()
    assert stl.volume == pytest.approx(other.volume, rel=1e-4)


def test_the_json_tells_the_files_and_what_is_said(run, bench_folder):
    told = run("wind", "need.yaml", *SEVEN, "--solid", "out.stl", "--json").json
    assert told["solid"]["files"] == ["out.stl"]
    assert any("Printed solid, it stands" in each for each in told["solid"]["said"])
    assert any("slides off" in each for each in told["steps"])
    assert told["mandrel"]["kind"] == "printed"
    assert "solid" not in run("wind", "need.yaml", *SEVEN, "--json").json


@pytest.mark.parametrize("name", ["out.obj", "out", ".stl", "stl"])
def test_an_ending_that_there_is_not_is_a_wrong_command_line(run, bench_folder, name):
    before = listed(bench_folder)
    ran = run("wind", "need.yaml", *SEVEN, "--solid", name)
    assert ran.status == 2
    assert "does not end in .stl" in ran.err
    assert listed(bench_folder) == before


def test_a_folder_of_that_name_is_told_and_nothing_is_written(run, bench_folder):
    (bench_folder / "out.stl").mkdir()
    before = listed(bench_folder)
    ran = run("wind", "need.yaml", *SEVEN, "--solid", "other.stl", "--solid", "out.stl")
    assert ran.status == 1
    assert ran.err == "out.stl: a folder; expected a name for a new file; nothing was written\n"
    assert ran.out == ""
    assert listed(bench_folder) == before


def test_a_folder_that_may_not_be_written_is_told(run, bench_folder):
    shut = bench_folder / "shut"
    shut.mkdir()
    shut.chmod(0o555)
    ran = run("wind", "need.yaml", *SEVEN, "--solid", "shut/out.stl", "--json")
    shut.chmod(0o755)
    assert ran.status == 1
    assert ran.json["mistakes"][0]["found"] == "you may not write it or its folder"
    assert os.listdir(shut) == []


def test_a_drawing_is_written_with_its_dimensions(run, bench_folder):
    ran = run("wind", "need.yaml", *SEVEN, "--solid", "out.svg")
    assert ran.status == 0
    drawn = (bench_folder / "out.svg").read_text("utf-8")
    assert "Mandrel for punch-return" in drawn
    assert "6.00 mm ± 0.05 mm" in drawn


def test_a_solid_and_a_coil_that_came_out_otherwise_are_asked_one_at_a_time(run, bench_folder):
    ran = run("wind", "need.yaml", *SEVEN, "--came-out", "9 mm", "--solid", "out.stl")
    assert ran.status == 2
    assert "--came-out and --solid" in ran.err
    assert not (bench_folder / "out.stl").exists()


def test_an_unknown_shank_is_a_wrong_command_line(run, bench_folder):
    ran = run("wind", "need.yaml", *SEVEN, "--solid", "out.stl", "--shank", "square")
    assert ran.status == 2
    assert "expected hex, round, drill, sleeve" in " ".join(ran.err.split())


@pytest.mark.parametrize(
    ("shank", "words"), [("hex", "a hexagon of"), ("round", "The shank is round, 6.00 mm."), ("drill", "three flats")]
)
def test_the_shank_is_the_one_wished(run, bench_folder, shank, words):
    out = " ".join(run("wind", "need.yaml", *SEVEN, "--solid", "out.stl", "--shank", shank).out.split())
    assert words in out


def test_where_winding_is_refused_nothing_is_written(run, bench_folder):
    """A mandrel larger than the finished spring's inside."""
    ran = run("wind", "need.yaml", "--wire", "W08", "--mandrel", "10 mm", "--solid", "out.stl")
    assert ran.status == 3
    assert not (bench_folder / "out.stl").exists()


def test_a_mandrel_thinner_than_the_wire_is_refused_and_nothing_is_written(run, bench_folder):
    ran = run("wind", "need.yaml", "--wire", "W08", "--mandrel", "0.5 mm", "--solid", "out.stl")
    assert ran.status == 3
    assert "thinner than the wire" in " ".join(ran.out.split())
    assert not (bench_folder / "out.stl").exists()


def named(bench_folder, name):
    need = bench_folder / "need.yaml"
    need.write_text(need.read_text("utf-8").replace("punch-return", name), "utf-8")


NAMES = {
    '"<b>&../../x</b>\\u0007"': "“<B>&../../X< / /B> / ⌀",
    '"a\\0b\\nc"': "“AB C / ⌀",
    "../../etc/passwd": "“../../ETC/PA / SSWD / ⌀",
    '"]]>"': "“]]> / ⌀",
    "ferð 2": "“FER□ 2 / ⌀",
    "пружина": "“⌀6.00 R”, for the job's name is in signs that are not cut here",
    '"\\uFFFE"': "“⌀6.00 R”, for the job's name is in signs that are not cut here",
}


@pytest.mark.parametrize("name", NAMES)
def test_a_job_s_name_of_markup_slashes_and_foreign_signs_harms_nothing(run, bench_folder, name):
    named(bench_folder, name)
    before = listed(bench_folder)
    files = ["out.3mf", "out.svg"]
    ran = run("wind", "need.yaml", *SEVEN, *(word for file in files for word in ("--solid", file)))
    assert ran.status == 0
    assert f"Cut into the collar stands {NAMES[name]}" in " ".join(ran.out.split())
    assert listed(bench_folder) == sorted([*before, *files])
    assert len(trimesh.load(bench_folder / "out.3mf").geometry) == 1
    ElementTree.parse(bench_folder / "out.svg")


def test_a_job_without_a_name_is_a_mistake_and_nothing_is_written(run, bench_folder):
    named(bench_folder, '""')
    assert run("wind", "need.yaml", *SEVEN, "--solid", "out.stl").status == 1
    assert not (bench_folder / "out.stl").exists()


def test_a_shank_without_a_solid_is_a_wrong_command_line(run, bench_folder):
    ran = run("wind", "need.yaml", *SEVEN, "--shank", "sleeve")
    assert ran.status == 2
    assert ran.err == "--shank: there is no solid; expected it together with --solid\n"


@pytest.mark.parametrize("out", ["nowhere/out.stl", "out.stl/"])
def test_a_folder_that_is_not_there_is_told(run, bench_folder, out):
    before = listed(bench_folder)
    ran = run("wind", "need.yaml", *SEVEN, "--solid", "other.3mf", "--solid", out)
    assert ran.status == 1
    assert ran.err.startswith(out)
    assert listed(bench_folder) == before


def test_a_disk_that_is_full_at_the_second_file_leaves_neither(run, bench_folder, monkeypatch):
    flushed = []

    def full(descriptor):
        flushed.append(descriptor)
        if len(flushed) == 2:
            raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    before = listed(bench_folder)
    ran = run("wind", "need.yaml", *SEVEN, "--solid", "one.stl", "--solid", "two.3mf")
    assert ran.status == 1
    assert ran.err.startswith("two.3mf: it cannot be written")
    assert listed(bench_folder) == before


def printer(bench_folder, bed):
    bench = bench_folder / "catalog/bench.yaml"
    bench.write_text(bench.read_text("utf-8") + f"tools: [vice, printer]\nprinter_bed: {bed}\n", "utf-8")


def test_one_too_long_for_the_bed_is_written_as_a_sleeve_in_pieces(run, bench_folder):
    printer(bench_folder, "[50 mm, 50 mm, 40 mm]")
    ran = run("wind", "need.yaml", *SEVEN, "--solid", "out.stl", "--solid", "out.3mf")
    assert ran.status == 0
    out = " ".join(ran.out.split())
    assert "a sleeve on a steel rod of 4.00 mm" in out
    assert "With a shank it would have no room in the printer" in out
    assert "cut across into 2 pieces" in out
    pieces = list(trimesh.load(bench_folder / "out.3mf").geometry.values())
    assert len(pieces) == 2
    assert all(each.is_watertight and each.euler_number == 0 for each in pieces)
    stl = trimesh.load(bench_folder / "out.stl")
    assert len(stl.split()) == 2
    assert stl.volume == pytest.approx(sum(each.volume for each in pieces), rel=1e-4)
    assert max(stl.bounds[1][:2]) <= 48


def test_one_for_which_the_bed_has_no_room_at_all_is_refused_and_nothing_is_written(run, bench_folder):
    printer(bench_folder, "[12 mm, 12 mm, 12 mm]")
    before = listed(bench_folder)
    ran = run("wind", "need.yaml", *SEVEN, "--solid", "out.stl", "--solid", "out.svg")
    assert ran.status == 3
    assert "Nothing was written: the mandrel" in " ".join(ran.out.split())
    assert listed(bench_folder) == before


def test_a_drawing_to_turn_by_asks_for_no_bed(run, bench_folder):
    printer(bench_folder, "[12 mm, 12 mm, 12 mm]")
    assert run("wind", "need.yaml", *SEVEN, "--solid", "out.svg").status == 0


def test_a_sleeve_is_made_where_it_is_asked_for(run, bench_folder):
    ran = run("wind", "need.yaml", *SEVEN, "--solid", "out.stl", "--solid", "out.svg", "--shank", "sleeve")
    assert ran.status == 0
    assert "a sleeve on a steel rod of 4.00 mm" in " ".join(ran.out.split())
    read = trimesh.load(bench_folder / "out.stl")
    assert read.is_watertight
    assert read.euler_number == 0
    assert "With a shank" not in ran.out
    assert "across its flat" in (bench_folder / "out.svg").read_text("utf-8")


def test_where_no_rod_on_hand_goes_into_a_sleeve_it_is_refused(run, bench_folder):
    bench = bench_folder / "catalog/bench.yaml"
    bench.write_text(bench.read_text("utf-8") + "rods: [6, 7]\n", "utf-8")
    ran = run("wind", "need.yaml", *SEVEN, "--solid", "out.stl", "--shank", "sleeve")
    assert ran.status == 3
    assert "no rod on hand" in " ".join(ran.out.split())
    assert not (bench_folder / "out.stl").exists()


@pytest.mark.parametrize("other", ["out.stl", "./out.stl", "../bench/out.stl", "link.stl"])
def test_one_file_named_twice_is_a_wrong_command_line(run, bench_folder, other):
    (bench_folder / "link.stl").symlink_to("out.stl")
    other = other.replace("bench", bench_folder.name)
    ran = run("wind", "need.yaml", *SEVEN, "--solid", "out.stl", "--solid", other)
    assert ran.status == 2
    assert "names one file twice" in " ".join(ran.err.split())
    assert not (bench_folder / "out.stl").exists()


def test_the_sheet_of_a_cone_says_that_it_comes_off_over_its_small_end(run, tmp_path, monkeypatch):
    root = os.path.dirname(os.path.dirname(os.path.dirname(__file__)))
    monkeypatch.chdir(root)
    ran = run("wind", "examples/lamp-button/need.yaml", "--solid", tmp_path / "cone.stl")
    assert ran.status == 0
    assert "slides off over the small end" in " ".join(ran.out.split())


def strong_wire(bench_folder):
    """Wire of 1.2 mm for a spring so narrow that what is printed for it twists off."""
    (bench_folder / "strong.yaml").write_text(
        "job: strong\nkind: compression\npocket: {bore: 9 mm}\n"
        "working:\n  - {length: 30 mm, force: 40 N}\n  - {length: 22 mm, force: 90 N}\n",
        "utf-8",
    )
    return ("wind", "strong.yaml", "--wire", "1.2 mm")


@pytest.mark.parametrize("shank", [(), ("--shank", "hex"), ("--shank", "sleeve")])
def test_a_mandrel_that_the_wire_would_break_is_refused_before_anything_is_written(run, bench_folder, shank):
    asked = strong_wire(bench_folder)
    assert run(*asked).status == 0
    before = listed(bench_folder)
    files = ("--solid", "out.stl", "--solid", "out.svg", "--sheet", "out.html")
    ran = run(*asked, *files, *shank)
    out = " ".join(ran.out.split())
    assert ran.status == 3
    assert "Nothing was written: the wire would break" in out or "no rod on hand" in out
    assert "Winding sheet: before you begin" not in out
    assert listed(bench_folder) == before
    told = run(*asked, *files, *shank, "--json")
    assert told.status == 3
    assert told.json["solid"]["files"] == []
    assert told.json["solid"]["said"][0].startswith("Nothing was written: ")


def test_the_drawing_of_that_mandrel_is_written_to_turn_it_from_steel(run, bench_folder):
    assert run(*strong_wire(bench_folder), "--solid", "out.svg").status == 0
    assert (bench_folder / "out.svg").exists()


def test_the_sheet_tells_the_hand_that_was_taken_right_below_its_first_sentence(run, bench_folder):
    out = run("wind", "need.yaml", *SEVEN, "--solid", "out.stl", "--sheet", "out.html").out
    before = " ".join(out.partition("Wire and mandrel")[0].split())
    said = "The need gives no hand: the mandrel is made for a right-hand spring."
    assert said in before
    assert said in (bench_folder / "out.html").read_text("utf-8")
    assert said not in " ".join(run("wind", "need.yaml", *SEVEN).out.split())


@pytest.mark.parametrize("shank", [(), ("--shank", "hex"), ("--shank", "sleeve")])
def test_a_drawing_alone_says_nothing_of_printing(run, bench_folder, shank):
    printer(bench_folder, "[300 mm, 300 mm, 300 mm]")
    ran = run("wind", "need.yaml", *SEVEN, "--solid", "out.svg", *shank)
    assert ran.status == 0
    said = ran.out[ran.out.index("The mandrel as a solid") :] + (bench_folder / "out.svg").read_text("utf-8")
    for words in ("Printed solid", "printer", "as it is in the file"):
        assert words not in said
    if "sleeve" not in shank:
        assert "what is printed" not in ran.out
        assert "it stands" not in said


def test_a_printed_mandrel_has_wider_bands_and_a_smaller_chance_than_one_turned_to_its_drawing(run, bench_folder):
    """It gives way under the wire: the same spring, the same mandrel, known to 0.07 mm where steel is to 0.03."""
    plans = [run("wind", "need.yaml", "--solid", file, "--json").json for file in ("m.stl", "m.svg")]
    printed, turned = plans
    plain = run("wind", "need.yaml", "--json").json
    for same in ("turns_to_wind", "pitch_on_mandrel_mm", "cut_length_mm"):
        assert printed[same] == turned[same] == plain[same]
    wide, narrow, bare = (plan["finished"]["outside_diameter_mm_high"] for plan in (printed, turned, plain))
    assert wide > narrow + 0.02
    assert narrow == bare
    assert printed["chance_first_try"] < turned["chance_first_try"] == plain["chance_first_try"]


@pytest.mark.parametrize(
    ("job", "wire"),
    [
        ("lamp-button", ()),
        ("torch-tail", ()),
        ("punch-return", ()),
        ("lamp-arm", ("--wire", "W12")),
        ("cupboard-handle", ()),
    ],
)
def test_the_sheet_of_a_printed_mandrel_winds_the_same_spring_as_the_one_without(run, tmp_path, job, wire):
    """So that what it accepts, and a coil that is asked about, are those of either."""
    need, solid = (f"examples/{job}/need.yaml", *wire), str(tmp_path / "m.stl")
    bare, printed = (run("wind", *need, *more, "--json").json for more in ((), ("--solid", solid)))
    for same in ("wire", "turns_to_wind", "pitch_on_mandrel_mm", "cut_length_mm", "accept"):
        assert printed[same] == bare[same], same
    for same in ("diameter_mm", "profile"):
        assert printed["mandrel"][same] == bare["mandrel"][same]
    assert printed["chance_first_try"] <= bare["chance_first_try"]
