"""What no trial coil can be is refused by its option, and nothing is written; the same stands in a file and is told."""

import re
from pathlib import Path

import pytest

CASE_2 = ("trial", "W08", "--mandrel", "6.0", "--turns", "4", "--outside", "8.9")


@pytest.fixture
def spools(bench_folder: Path) -> Path:
    return next((bench_folder / "catalog" / "spools").glob("*.yaml"))


WRONG = [
    (("W08", "--mandrel", "6", "--outside", "9", "--leg-angle", "-90"), 2, "--leg-angle: -90 is negative"),
    (("W08", "--mandrel", "6", "--outside", "9", "--stop-angle", "90"), 2, "without leg_angle and turns"),
    (("W08", "--mandrel", "6", "--outside", "9", "--leg-angle", "90 mm"), 2, "--leg-angle:"),
    (("W08", "--mandrel", "6", "--outside", "9", "--tension", "4 mm"), 2, "--tension:"),
    (("W08", "--mandrel", "6", "--outside", "9", "--tension", "-4 N"), 2, "--tension: -4 N is negative"),
    (("W08", "--mandrel", "nan", "--outside", "9"), 2, "--mandrel: nan"),
    (("W08", "--mandrel", "6", "--outside", "8.9 N"), 2, "--outside:"),
    (("W08", "--mandrel", "6", "--turns", "0", "--outside", "8.9"), 2, "--turns: 0 is zero"),
    (("W08", "--mandrel", "6", "--outside", "5"), 2, "--outside: 5 is less than the mandrel"),
    (
        ("W08", "--mandrel", "7", "--outside", "8.4"),
        2,
        "--outside: 8.4 is less than the mandrel and the wire on it",
    ),
    (("W08", "--mandrel", "6", "--inside", "4"), 2, "--inside: 4 is less than the mandrel"),
    (("W08", "--mandrel", "0.5", "--outside", "5"), 2, "--mandrel: a mandrel of 0.50 mm, thinner than the wire"),
    (
        ("W80", "--mandrel", "6", "--outside", "8.9"),
        2,
        "there is no spool “W80”; expected the id of a spool; did you mean W08?",
    ),
    (("W08", "--mandrel", "6"), 2, "neither --outside nor --inside"),
    (("W08", "--mandrel", "6", "--outside", "9", "--inside", "7.4"), 2, "both --outside and --inside"),
    (("W08", "--mandrel", "6,5", "--outside", "9"), 2, "--mandrel:"),
    (("W08", "--mandrel", "6", "--outside", "9", "--on", "a broom"), 2, "--on:"),
    (("W08", "--mandrel", "6", "--outside", "9", "--heated", "maybe"), 2, "--heated:"),
    (("W08", "--mandrel", "-6", "--outside", "9"), 2, "--mandrel:"),
    (("W08", "--mandrel", "6", "--outside", "9", "--pull", "much"), 2, "--pull:"),
    (("W08", "--outside", "9"), 2, "--mandrel"),
    (("W08", "--mandrel", "8", "--outside", "9.5"), 2, "--outside: 9.5 is less than the mandrel"),
    (("W08", "--mandrel", "8 mm", "--outside", "0.37 in"), 2, "--outside: 0.37 in is less than the mandrel"),
    (("W08", "--mandrel", "6", "--turns", "-4", "--outside", "8.9"), 2, "--turns: -4 is negative"),
    (("W08", "--mandrel", "6", "--turns", "nan", "--outside", "8.9"), 2, "--turns: nan is no finite number"),
    (("W08", "--mandrel", "6", "--outside", "inf"), 2, "--outside: inf is no finite number"),
    (("W08", "--mandrel", "6", "--outside", "9", "--pull", "-30 N"), 2, "--pull: -30 N is negative"),
    (("W08", "--mandrel", "6", "--outside", "9", "--pull", "0 N"), 2, "--pull: 0 N is zero"),
    (("W08", "--mandrel", "6", "--outside", "9", "--pull", "nan"), 2, "--pull: nan is no finite number"),
    (("W08", "--mandrel", "6", "--outside", "9", "--pull", "1200 N"), 2, "--pull: a pull of 1200 N, which tears"),
    (
        ("W08", "--mandrel", "6", "--outside", "9", "--pull", "900 N"),
        2,
        "--pull: a pull of 900 N, which is 0.78 of what "
        "breaks this wire; expected the pull on the wire as it was wound: 348 N at most, 0.3 of what breaks it",
    ),
    (
        ("W08", "--mandrel", "6", "--outside", "9", "--pull", "350 N"),
        2,
        "--pull: a pull of 350 N, which is 0.30 of what",
    ),
    (("W08", "--mandrel", "6", "--outside", "9", "--turns", "1e9"), 2, "--turns: 1e9 turns, more than anybody counts"),
    (
        ("W08", "--mandrel", "6", "--outside", "9", "--turns", "1001"),
        2,
        "--turns: 1001 turns, more than anybody counts",
    ),
    (("W08", "--mandrel", "6", "--outside", "9", "--turns", "4000"), 2, "1000 at most (assumed)"),
    (
        ("W08", "--mandrel", "6", "--outside", "9", "--turns", "0.1"),
        2,
        "--turns: 0.1 turns have no diameter to measure",
    ),
    (
        ("W08", "--mandrel", "6", "--outside", "9", "--turns", "400"),
        2,
        "--turns: 400 turns take 8545 mm of wire, and W08 "
        "has 6200 mm left; expected the turns that the coil has; or, if there was more on the spool, count it anew",
    ),
    (("W08", "--mandrel", "6", "--outside", "9", "--turns", "400"), 2, "springwright stock put W08 LENGTH"),
    (
        ("W08", "--mandrel", "6", "--outside", "9", "--date", "gestern"),
        2,
        "--date: gestern is no day; expected YYYY-MM-DD",
    ),
    (("W08", "--mandrel", "6", "--outside", "9", "--date", "20240302"), 2, "--date: 20240302 is no day"),
    (("W08", "--mandrel", "6", "--outside", "9", "--date", "2023-02-29"), 2, "--date: 2023-02-29 is no day"),
    (("W08", "--mandrel", "6", "--outside", "9", "--date", "9999-12-31"), 2, "--date: 9999-12-31 is yet to come"),
    (("W08", "--mandrel", "6", "--outside", "9", "--pitch-wound", "0.5"), 2, "--pitch-wound: a pitch of 0.50 mm"),
    (("W08", "--mandrel", "6", "--outside", "9", "--pitch", "-1"), 2, "--pitch: -1 is negative"),
]


@pytest.mark.parametrize(("words", "status", "said"), WRONG, ids=[" ".join(words) for words, _, _ in WRONG])
def test_a_wrong_trial_is_told_by_its_option_and_nothing_is_written(run, spools, words, status, said):
    before = spools.read_bytes()
    ran = run("trial", *words)
    assert ran.status == status
    assert said in re.sub(r"\s+", " ", ran.err)
    assert spools.read_bytes() == before


def test_stock_check_and_every_command_point_at_a_hand_written_trial_that_measures_too_little(run, spools):
    """One bound: what `trial` refuses is refused in the file, and `wind --came-out` has it too."""
    text = spools.read_text("utf-8")
    spools.write_text(text + "    trials:\n      - {mandrel: 8, outside_diameter: 9.5}\n", "utf-8")
    line = text.count("\n") + 2
    for words in (("stock", "check"), ("wind", "need.yaml", "--wire", "W08"), CASE_2):
        ran = run(*words)
        assert ran.status == 1
        assert f"wire.yaml:{line}:" in ran.out + ran.err or f".yaml:{line}:" in ran.out + ran.err
        assert "9.5 is less than the mandrel" in " ".join((ran.out + ran.err).split())


def test_came_out_has_the_bound_of_a_trial(run, spools):
    mandrel = ("wind", "need.yaml", "--wire", "W08", "--mandrel", "6", "--came-out")
    least = run(*mandrel, "7.55")
    assert least.status == 0
    assert "7.55 mm" in least.out
    too_little = run(*mandrel, "7.53")
    assert too_little.status == 2
    assert "7.60 mm or more (up to 0.06 mm less is let pass)" in " ".join(too_little.err.split())
    assert run("trial", "W08", "--mandrel", "6", "--outside", "7.55", "--dry-run").status == 0
    assert run("trial", "W08", "--mandrel", "6", "--outside", "7.53", "--dry-run").status == 2


def test_what_is_just_within_the_bounds_of_a_trial_is_written(run, spools):
    """290 turns of 21.36 mm are 6.195 m of the 6.2 m; 0.3 of the breaking force of 0.8 mm is 348 N."""
    for words in (("--turns", "290"), ("--turns", "0.5"), ("--pull", "340 N"), ("--date", "2024-02-29")):
        assert run("trial", "W08", "--mandrel", "6", "--outside", "8.9", *words, "--dry-run").status == 0, words
    spools.write_text(spools.read_text("utf-8").replace("    length_left: 6.2 m\n", ""), "utf-8")
    assert run("trial", "W08", "--mandrel", "6", "--outside", "8.9", "--turns", "400", "--dry-run").status == 0


def test_a_file_whose_wire_was_counted_off_after_its_trials_stays_right(run, spools):
    run("trial", "W08", "--mandrel", "6", "--outside", "8.9", "--turns", "200")
    assert run("stock", "take", "W08", "5 m").status == 0
    assert run("stock", "list").status == 0


def test_a_hand_written_trial_beyond_the_bounds_is_a_mistake_at_its_line(run, spools):
    text = spools.read_text("utf-8")
    for wrong in ("turns: 1e9", "turns: 0.1", "pull: 900 N"):
        spools.write_text(f"{text}    trials:\n      - {{mandrel: 6, outside_diameter: 8.9, {wrong}}}\n", "utf-8")
        ran = run("stock", "check")
        assert ran.status == 1, wrong
        assert f".yaml:{text.count(chr(10)) + 2}:" in ran.out + ran.err


@pytest.mark.parametrize(("day", "told"), [("gestern", "is no day"), ("9999-12-31", "is yet to come")])
def test_stock_check_doubts_a_day_that_nobody_can_read_or_that_is_yet_to_come(run, spools, day, told):
    text = spools.read_text("utf-8")
    spools.write_text(f"{text}    trials:\n      - {{date: {day}, mandrel: 6, outside_diameter: 8.9}}\n", "utf-8")
    checked = run("stock", "check")
    assert checked.status == 0
    assert f".yaml:{text.count(chr(10)) + 2}:" in checked.out
    assert f"the day of this trial of “W08”: {day} {told}" in " ".join(checked.out.split())
