"""A coil that was wound on a mandrel without a sheet is not judged by the sheet of another one."""

import re
import shlex
from pathlib import Path

import pytest

EXAMPLES = Path(__file__).parents[2] / "examples"
SHIPPED = Path(__file__).parents[2] / "catalog"

REFUSED = [
    ("punch-return", "W08", "9", ("--came-out", "12 mm"), "springwright trial W08 --mandrel 9 --outside 12, "),
    ("punch-return", "W10", "9", ("--came-out", "12.4 mm", "--heated", "yes"), "--outside 12.4 --heated yes, "),
    ("punch-return", "W08", "9", ("--came-out-pitch", "3.2 mm"), "springwright trial W08, with its mandrel, "),
    ("card-drawer", "W08", "9", ("--came-out", "13.2 mm", "--came-out-tension", "1 N"), "--mandrel 9 --outside 13.2, "),
    ("cupboard-handle", "W12", "6", ("--came-out", "9.2 mm"), "springwright trial W12 --mandrel 6 --outside 9.2, "),
    ("lamp-button", "W08", "9", ("--came-out", "17 mm"), "springwright trial W08 --mandrel 9 --outside 17, "),
]


def asked(name: str, wire: str | None, mandrel: str) -> tuple[str, ...]:
    named = () if wire is None else ("--wire", wire)
    return ("wind", str(EXAMPLES / name / "need.yaml"), "--catalog", str(SHIPPED), *named, "--mandrel", f"{mandrel} mm")


@pytest.mark.parametrize(("example", "wire", "mandrel", "measured", "line"), REFUSED)
def test_it_is_told_why_there_is_no_sheet_and_what_to_do(run, example, wire, mandrel, measured, line):
    words = asked(example, wire, mandrel)
    planned = run(*words, "--json")
    ran, document = run(*words, *measured), run(*words, *measured, "--json")
    assert (planned.status, ran.status, document.status) == (3, 3, 3)
    refused = document.json["refused"]
    assert refused["rule"] == "no-sheet-of-its-mandrel"
    assert planned.json["refused"]["why"] in refused["why"]
    assert line in refused["why"]
    assert f"No verdict on this coil: {refused['why']} ({refused['rule']})" in " ".join(ran.out.split())
    assert all(len(line) <= 80 for line in ran.out.replace("\x1b[1m", "").replace("\x1b[0m", "").splitlines())


@pytest.mark.parametrize(("example", "wire", "mandrel", "measured", "line"), REFUSED)
def test_neither_a_figure_of_another_sheet_nor_a_doubt_of_the_wire_is_told(run, example, wire, mandrel, measured, line):
    words = asked(example, wire, mandrel)
    said = run(*words, *measured, "--json").json["refused"]["why"]
    sheet = run(*words[:-2], "--json").json
    for figure in ("outside_diameter_mm", "outside_diameter_large_mm", "rate_n_per_mm"):
        if figure in sheet["finished"]:
            assert f"{sheet['finished'][figure]:.2f}" not in said, figure
    assert f"{sheet['turns_to_wind']:.2f}" not in said
    assert "instead of" not in said
    assert "hardly chance" not in said


def test_without_its_wire_that_is_asked_for_first(run):
    why = run(*asked("punch-return", None, "9"), "--came-out", "12 mm", "--json").json["refused"]["why"]
    assert "no wire serves on a mandrel of 9.00 mm. " in why
    assert "Say with --wire which wire it was wound from" in why
    assert "springwright trial" not in why


def test_of_wire_to_buy_no_trial_is_offered(run):
    why = run(*asked("punch-return", "0.8 mm", "9"), "--came-out", "12 mm", "--json").json["refused"]["why"]
    assert "the mandrel of 9.00 mm does not serve" in why
    assert "trial" not in why


@pytest.mark.parametrize(
    ("measured", "said"),
    [
        (("--came-out", "9 mm"), "--came-out: 9.00 mm outside is less than its mandrel and two wires"),
        (("--came-out-angle", "90"), "--came-out-angle of a spring of kind compression; expected --came-out"),
    ],
)
def test_what_no_coil_on_it_measures_is_a_mistake_all_the_same(run, measured, said):
    ran = run(*asked("punch-return", "W08", "9"), *measured)
    assert ran.status == 2
    assert said in " ".join(ran.err.split())


def test_the_trial_can_be_typed_as_it_stands_and_is_known_then(run, bench_folder):
    words = ("wind", "need.yaml", "--wire", "W08", "--mandrel", "9 mm", "--came-out", "13.2 mm", "--json")
    command = re.search(r"Write it down: springwright (trial .+?), with --turns", run(*words).json["refused"]["why"])
    assert command is not None
    taught = run(*shlex.split(command[1]), "--turns", "11.8", "--json")
    assert taught.status == 0
    assert not taught.json["taught"]["surprising"]
    why = run(*words).json["refused"]["why"]
    assert "It is written down as a trial already" in why
    assert "springwright trial" not in why


def test_a_coil_is_judged_though_its_spool_has_no_wire_for_another(run, bench_folder):
    """The wire of the coil is wound off by then."""
    words = ("wind", "need.yaml", "--wire", "W08", "--mandrel", "5.5 mm", "--came-out", "8.3 mm", "--json")
    before = run(*words).json
    spools = bench_folder / "catalog/spools/wire.yaml"
    spools.write_text(spools.read_text("utf-8").replace("6.2 m", "200 mm"), "utf-8")
    assert run("wind", "need.yaml", "--wire", "W08").status == 3
    after = run(*words)
    assert after.status == 0
    assert after.json["answer"] == before["answer"]
    assert any("W08 has 200 mm by its record, too little" in each for each in after.json["said"])
