"""`wind --came-out ... --on printed`: a coil that was wound on a printed mandrel is judged and written down as that."""

import shlex

import pytest

from .test_misses import ASKED, shipped

HARDLY = "So far off is hardly chance"

COILS = [
    ("punch-return", ("--came-out", "10.4 mm")),
    ("lamp-button", ("--came-out", "17.6 mm")),
    ("card-drawer", ("--came-out", "6.7 mm")),
    ("cupboard-handle", ("--came-out", "12.9 mm", "--came-out-angle", "293", "--heated", "yes")),
]


def written_down(said: list[str]) -> list[str]:
    (line,) = [each for each in said if each.startswith("Write it down: springwright ")]
    return shlex.split(line.removeprefix("Write it down: springwright "))


@pytest.mark.parametrize(("example", "words"), COILS, ids=[name for name, _ in COILS])
def test_what_it_was_wound_on_stands_in_the_line_to_write_it_down_and_the_next_one_is_printed(run, example, words):
    steel, printed = (run(*shipped(example), *words, *more, "--json").json for more in ((), ("--on", "printed")))
    assert written_down(printed["said"])[-2:] == ["--on", "printed"]
    assert "--on" not in written_down(steel["said"])
    assert printed["mandrel"]["kind"] == printed["next_mandrel"]["kind"] == "printed"
    assert "mandrel turned to" not in " ".join(printed["said"])


def test_a_coil_that_is_hardly_chance_on_steel_may_be_chance_on_what_was_printed(run):
    """A printed mandrel is known less well: 0.07 mm for 0.03 mm."""
    words = (*shipped("cupboard-handle"), "--came-out", "12.9 mm")
    assert HARDLY in " ".join(run(*words).out.split())
    assert HARDLY in " ".join(run(*words, "--on", "steel-rod").out.split())
    assert HARDLY not in " ".join(run(*words, "--on", "printed").out.split())


def test_the_chance_of_the_next_coil_is_that_of_a_printed_mandrel(run):
    words = (*shipped("punch-return"), "--came-out", "10.15 mm")
    steel, printed = (" ".join(run(*words, *more).out.split()) for more in ((), ("--on", "printed")))
    chance_on_steel, chance_on_printed = (float(each.split(", chance ")[1][:4]) for each in (steel, printed))
    assert chance_on_printed < chance_on_steel


def test_the_line_is_typed_as_it_stands_and_the_coil_is_then_judged_as_before(run, bench_folder):
    sheet = " ".join(run("wind", "need.yaml", "--solid", "rod.stl").out.split())
    asked = ASKED.search(sheet)
    assert asked is not None
    assert asked[2].endswith(" --on printed")
    words = ("wind", "need.yaml", *shlex.split(asked[2]), "--came-out", "8.3 mm")
    before = run(*words, "--json").json
    assert run(*written_down(before["said"])).status == 0
    assert "on: printed" in (bench_folder / "catalog" / "spools" / "wire.yaml").read_text("utf-8")
    after = run(*words, "--json").json
    *said, last = after.pop("said")
    assert last == "It is written down as a trial already; it was judged here as before that."
    assert said == before.pop("said")[:-1]
    assert after == before


def test_a_coil_without_a_sheet_of_its_mandrel_is_written_down_as_wound_on_what_was_printed(run):
    ran = run(*shipped("punch-return"), "--wire", "W10", "--mandrel", "9.9", "--came-out", "13.6", "--on", "printed")
    assert ran.status == 3
    assert "--mandrel 9.9 --outside 13.6 --on printed" in " ".join(ran.out.split())


REFUSED = [
    (("--came-out", "10 mm", "--on", "wood"), "--on: “wood”; expected steel-rod or printed"),
    (("--on", "printed"), "--on: no coil was measured; expected it beside --came-out; a sheet for a printed mandrel"),
    (("--on", "printed", "--solid", "rod.stl"), "--on: no coil was measured"),
    (("--on", "printed", "--came-out", "10 mm", "--solid", "rod.stl"), "expected one of them"),
]


@pytest.mark.parametrize(("words", "said"), REFUSED, ids=[" ".join(words) for words, _ in REFUSED])
def test_what_it_was_wound_on_goes_with_a_coil_and_is_one_of_two(run, words, said):
    ran = run(*shipped("punch-return"), *words)
    assert ran.status == 2
    assert said in " ".join(ran.err.split())
    assert ran.out == ""
