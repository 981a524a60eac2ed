"""`springwright wind` on a cone, as a user runs it."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
NEED = "examples/lamp-button/need.yaml"
REFUSED = 3


def run(*words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "sourcing", "wind", NEED, *words],
        cwd=ROOT,
        capture_output=True,
        encoding="utf-8",
        check=False,
    )


def test_the_sheet_of_a_cone_gives_its_mandrel_at_each_finished_turn() -> None:
    ran = run("--json")
    mandrel = json.loads(ran.stdout)["mandrel"]
    assert ran.returncode == 0
    assert mandrel["diameter_mm"] is None
    assert [each["turn"] for each in mandrel["profile"]][:3] == [0, 1, 2]
    assert "curved taper" in " ".join(run().stdout.split())


def test_a_single_mandrel_diameter_for_a_cone_is_refused_in_words() -> None:
    ran = run("--mandrel", "8 mm", "--json")
    assert ran.returncode == REFUSED
    assert "cone" in json.loads(ran.stdout)["refused"]["why"]


def test_the_sheet_and_its_json_tell_which_diameters_of_both_ends_the_wire_can_serve() -> None:
    document = json.loads(run("--json").stdout)
    assert {key for each in document["serves"] for key in each} == {
        "mean_diameter_large_mm_low",
        "mean_diameter_large_mm_high",
        "mean_diameter_small_mm_low",
        "mean_diameter_small_mm_high",
    }
    printed = " ".join(run().stdout.split())
    assert "as a cone of mean diameters " in printed
    assert document["answer"] in printed
