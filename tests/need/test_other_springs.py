"""Springs that are no coil springs of round wire are told what they are, in one line, and never taken for another."""

from __future__ import annotations

from pathlib import Path

import pytest

from sourcing.need.kinds import KINDS, kind_meant
from sourcing.need.other_springs import OTHER_SPRINGS, other_kind, other_thing
from sourcing.need.reading import read_need
from tests.files.told import mistakes_of, told, written

EXPECTED = "a compression, conical, extension or torsion spring: this program works out coil springs of round wire"


def mistakes(folder: Path, text: str) -> list[str]:
    return told(mistakes_of(read_need, written(folder, text)))


KINDS_NAMED = {
    "spiral": "a spiral spring",
    "Hairspring": "a spiral spring",
    "hair spring": "a spiral spring",
    "balance spring": "a spiral spring",
    "clock": "a clock spring",
    "mainspring": "a clock spring",
    "main-spring": "a clock spring",
    "power spring": "a clock spring",
    "constant-force": "a constant-force spring",
    "constant_force_spring": "a constant-force spring",
    "leaf": "a leaf spring",
    "leaf springs": "a leaf spring",
    "flat": "a leaf spring",
    "wave": "a wave spring",
    "wave washer": "a wave spring",
    "disc": "a disc spring",
    "disk spring": "a disc spring",
    "Belleville": "a disc spring",
    "belleville washers": "a disc spring",
    "conical washer": "a disc spring",
    "garter": "a garter spring",
    "barrel": "two cones in one wire",
    "hourglass": "two cones in one wire",
    "volute": "a volute spring",
    "gas strut": "a gas spring",
    "torsion bar": "a torsion bar",
}


@pytest.mark.parametrize(("kind", "called"), KINDS_NAMED.items(), ids=lambda word: word)
def test_a_kind_of_another_build_is_told_what_it_is_in_one_line(tmp_path: Path, kind: str, called: str) -> None:
    (line,) = mistakes(tmp_path, f"job: x\nkind: {kind}\nthickness: 0.5 mm\nfree_length: 31\n")
    assert line.startswith(f"2:7: “{kind}” is {called}, ")
    assert line.endswith(f"; expected {EXPECTED}")


def test_the_whole_line_names_the_spring_and_what_this_program_works_out(tmp_path: Path) -> None:
    (line,) = mistakes(tmp_path, "job: x\nkind: Belleville\nfree_length: 31\n")
    assert line == f"2:7: “Belleville” is a disc spring, a coned washer; expected {EXPECTED}"


@pytest.mark.parametrize("kind", [*KINDS, "double-torsion", "double torsion", "tension", "cone", "coil", "push"])
def test_a_coil_spring_is_never_taken_for_another_build(kind: str) -> None:
    assert other_kind(kind) is None


@pytest.mark.parametrize("kind", KINDS_NAMED)
def test_no_nearest_word_is_guessed_for_another_build(kind: str) -> None:
    assert kind_meant(kind) is None


PLAIN = [
    "broken hairspring of a mantel clock",
    "clock spring",
    "the old clock spring",
    "mainspring for a kitchen timer",
    "kitchen-timer mainspring",
    "constant-force spring in a tape measure",
    "laminated spring",
    "wave spring of a pump seal",
    "pair of wave washers",
    "a stack of disc springs",
    "Belleville washer under the tap",
    "clutch diaphragm spring",
    "garter spring inside an oil seal",
    "oil seal spring",
    "spiral spring of a gauge",
    "gas strut of a hatch",
]


@pytest.mark.parametrize("what", PLAIN)
def test_a_text_that_plainly_calls_it_so_is_refused_too(tmp_path: Path, what: str) -> None:
    (line,) = mistakes(tmp_path, f"job: x\nkind: compression\nwhat: {what}\nfree_length: 31\n")
    assert line.startswith(f"3:7: “{what}” is a ")
    assert line.endswith(EXPECTED)


ONLY_MENTIONED = [
    "return spring of a clock",
    "spring behind the leaf spring of a latch",
    "main spring of a desk lamp",
    "spring that presses on a wave washer",
    "cuckoo clock spring",
    "brake disc spring",
    "wiper motor spring",
    "balance spring of a lamp arm",
    "microwave door spring",
    "power switch spring",
    "gas tap knob spring",
    "disc player lid spring",
    "flat cap spring",
    "leaf gate latch",
]


@pytest.mark.parametrize("what", ONLY_MENTIONED)
def test_a_text_that_only_mentions_one_is_read_as_it_is_meant(tmp_path: Path, what: str) -> None:
    assert other_thing(what) is None
    need = read_need(written(tmp_path, f"job: x\nkind: compression\nwhat: {what}\nfree_length: 31\n"))
    assert need.what == what


@pytest.mark.parametrize("kind", ["leaf", "compression"])
def test_a_guarded_duty_has_its_answer_whatever_the_spring(tmp_path: Path, kind: str) -> None:
    """A leaf spring carries a vehicle: the answer is none, and not that the file is wrong."""
    need = read_need(written(tmp_path, f"job: x\nkind: {kind}\nwhat: leaf spring of a trailer\nfree_length: 31\n"))
    assert need.what == "leaf spring of a trailer"


def test_a_leaf_spring_that_carries_nobody_is_refused(tmp_path: Path) -> None:
    (line,) = mistakes(tmp_path, "job: x\nkind: leaf\nwhat: catch of a tin box\n")
    assert "is a leaf spring, flat strip that bends" in line


def test_no_name_stands_for_two_springs() -> None:
    names = [name for other in OTHER_SPRINGS for name in (*other.nouns, *other.sure, *other.whole, *other.loose)]
    allowed_twice = {"belleville", "torsion bar", "coned disc"}  # alone, and before "spring"
    assert {name for name in names if names.count(name) > 1} == allowed_twice
