"""A bench in inches: what it cuts, weighs and types is told so, and no figure is rounded away that a hand goes by."""

import re
import shlex
from pathlib import Path

import pytest

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture
def inch(bench_folder):
    bench = bench_folder / "catalog" / "bench.yaml"
    bench.write_text("units: inch\n" + bench.read_text("utf-8"), "utf-8")
    treadle = (EXAMPLES / "treadle-foot" / "need.yaml").read_text("utf-8")
    (bench_folder / "treadle.yaml").write_text(treadle, "utf-8")
    return bench_folder


def sheet(run, *words: str) -> str:
    return " ".join(run("wind", *words).out.split())


def test_a_stop_block_is_told_to_a_thousandth_with_the_mark_of_the_rule(run, inch):
    """1 1/8 in and 3/4 in are wanted; 1.13 in is a spring's force off by what the need allows it."""
    told = sheet(run, "treadle.yaml")
    assert "cut stop blocks of 1.125 in (1 1/8) and 0.750 in (3/4)." in told
    assert "scale at 1.125 in" in told
    assert "force at 1.125 in" in told
    run("wind", "treadle.yaml", "--sheet", "page.html")
    assert "1.125 in (1 1/8) and 0.750 in (3/4)" in (inch / "page.html").read_text("utf-8")


def test_a_stop_that_nobody_asked_for_lies_on_a_sixteenth(run, inch):
    need = inch / "treadle.yaml"
    kept = [line for line in need.read_text("utf-8").splitlines() if "3/4 in" not in line]
    need.write_text("\n".join(kept), "utf-8")
    blocks = re.search(r"cut stop blocks of (.+?) and (.+?)\. Stand", sheet(run, "treadle.yaml"))
    assert blocks is not None
    assert all(re.fullmatch(r"[\d.]+ in \((\d+ )?\d+/(2|4|8|16)\)", block) for block in blocks.groups())


NEEDS = ["need.yaml", "treadle.yaml", *(str(EXAMPLES / name / "need.yaml") for name in (
    "lamp-button", "card-drawer", "lamp-arm", "cupboard-handle"
))]  # fmt: skip


@pytest.mark.parametrize("need", NEEDS)
def test_forces_are_weighed_in_ounces_and_energy_is_in_inch_pounds_with_the_joules_beside(run, inch, need):
    told = sheet(run, need)
    assert re.search(r"scale at .+? [\d.]+ oz", told)
    assert not re.search(r"\d k?g\b", told)
    energies = re.findall(r"(\S+ \S+ \(?)([\d.]+) J\b", told)
    assert energies
    assert all(before.endswith("in·lbf (") for before, _ in energies)


COILS = [
    ("need.yaml", ("--came-out", "0.37 in")),
    ("need.yaml", ("--came-out", "0.33 in", "--came-out-pitch", "0.15 in")),
    (NEEDS[3], ("--came-out", "0.25 in", "--came-out-tension", "0.9 lbf")),
    (NEEDS[2], ("--came-out", "0.69 in")),
]


@pytest.mark.parametrize(("need", "words"), COILS)
def test_the_line_to_write_a_coil_down_is_in_inches_and_reads_back_as_it_was_measured(run, inch, need, words):
    ran = run("wind", need, *words, "--json")
    (line,) = [each for each in ran.json["said"] if each.startswith("Write it down: springwright ")]
    typed = line.removeprefix("Write it down: springwright ")
    for option, text in zip(words[::2], words[1::2], strict=True):
        as_trial = {"--came-out": "--outside", "--came-out-pitch": "--pitch", "--came-out-tension": "--tension"}[option]
        assert f"{as_trial} '{text}'" in typed
    written = run(*shlex.split(typed), "--json")
    assert written.status == 0
    trial = written.json["trial"]
    mandrel_mm = ran.json["mandrel"]["diameter_mm"] or ran.json["mandrel"]["profile"][-1]["diameter_mm"]
    assert trial["mandrel_mm"] == pytest.approx(mandrel_mm, abs=1e-4)
    assert trial["outside_diameter_mm"] == pytest.approx(float(words[1].split()[0]) * 25.4)
    again = run("wind", need, *words, "--json").json["said"]
    assert again[-1] == "It is written down as a trial already; it was judged here as before that."
