"""Springs and wire are taken and put back in the keeper's own file."""

from pathlib import Path

import pytest

from sourcing.files.findings import Mistakes, WrongWords
from sourcing.stock.counting import Count, put, take
from sourcing.stock.reading import read_catalogue
from tests.files.told import told, written

DRAWER = """
    springs:
      - id: T-17        # the punch
        kind: compression
        wire_diameter: 0.9
        outside_diameter: 9.6
        free_length: 31
        total_coils: 9.75
        ends: closed-ground
        material: music-wire
        on_hand: 3
      - {id: T-18, kind: compression, wire_diameter: 0.9, outside_diameter: 9.6, free_length: 32, total_coils: 9.75,
         ends: closed-ground, material: music-wire}
"""
SPOOLS = """
    spools:
      - {id: W08, material: music-wire, wire_diameter: 0.8, length_left: %s}
      - {id: W09, material: music-wire, wire_diameter: 0.9}
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    written(tmp_path, DRAWER, "springs/drawer.yaml")
    written(tmp_path, SPOOLS % "6.2 m", "spools/wire.yaml")
    return tmp_path


def taken(folder: Path, name: str, amount: str) -> Count:
    return take(read_catalogue(folder), name, amount)


def wrong(folder: Path, name: str, amount: str) -> list[str]:
    """What is told of words that make no sense; no file is changed."""
    before = [path.read_bytes() for path in sorted(folder.rglob("*.yaml"))]
    with pytest.raises(Mistakes) as raised:
        take(read_catalogue(folder), name, amount)
    assert [path.read_bytes() for path in sorted(folder.rglob("*.yaml"))] == before
    return [
        f"{'words' if isinstance(raised.value, WrongWords) else 'file'} {line}" for line in told(raised.value.findings)
    ]


def test_taking_lowers_the_count_in_the_file_and_nothing_else(folder: Path) -> None:
    file = folder / "springs/drawer.yaml"
    before = file.read_text()
    count = taken(folder, "T-17", "2")
    assert (count.was, count.now, count.left, count.line) == ("3", "1", 1, 10)
    assert file.read_text() == before.replace("on_hand: 3", "on_hand: 1")


def test_putting_back_raises_the_count(folder: Path) -> None:
    assert put(read_catalogue(folder), "T-17", "2").left == 5
    assert [spring.on_hand for spring in read_catalogue(folder).springs] == [5, 0]


def test_a_spring_without_a_count_has_none_until_some_are_put_back(folder: Path) -> None:
    assert wrong(folder, "T-18", "1") == [
        "file 11:5: T-18 has 0, less than the 1 to be taken; "
        "expected no more than there is, or the right count written down first"
    ]
    assert put(read_catalogue(folder), "T-18", "2").changed == (
        "     ends: closed-ground, material: music-wire, on_hand: 2}",
    )


@pytest.mark.parametrize(("left", "has"), [("6.2 m", "6.2 m"), ("6200", "6200 mm"), ("20 ft", "20 ft")])
def test_too_little_wire_is_told_in_the_units_that_were_written(tmp_path: Path, left: str, has: str) -> None:
    spools = tmp_path / "spools.yaml"
    spools.write_text(f"spools:\n  - {{id: W08, material: music-wire, wire_diameter: 0.8, length_left: {left}}}\n")
    with pytest.raises(Mistakes) as told:
        take(read_catalogue(spools), "W08", "30m")
    assert told.value.findings[0].found == f"W08 has {has}, less than the 30m to be taken"


def test_all_that_is_there_can_be_taken_and_no_more(folder: Path) -> None:
    assert wrong(folder, "T-17", "4") == [
        "file 10:14: T-17 has 3, less than the 4 to be taken; "
        "expected no more than there is, or the right count written down first"
    ]
    assert taken(folder, "T-17", "3").left == 0


@pytest.mark.parametrize(
    ("left", "amount", "now", "left_mm"),
    [
        ("6.2 m", "0.3m", "5.9 m", 5900.0),
        ("6.2 m", "300", "5.9 m", 5900.0),
        ("6200", "12.5 mm", "6187.5", 6187.5),
        ("20ft", "1 ft", "19ft", 19 * 304.8),
        ("1 1/4 in", "1/4 in", "1 in", 25.4),
        ("'6.2 m'", "6.2 m", "0 m", 0.0),
        ("0.3 m", "0.1 m", "0.2 m", 200.0),
        ("2e3", "1 m", "1000", 1000.0),
    ],
)
def test_wire_is_taken_in_any_unit_and_written_in_the_unit_that_stands_there(
    tmp_path: Path, left: str, amount: str, now: str, left_mm: float
) -> None:
    file = written(tmp_path, SPOOLS % left, "spools/wire.yaml")
    before = file.read_text()
    count = taken(tmp_path, "W08", amount)
    assert count.now == now
    assert count.left == pytest.approx(left_mm, abs=1e-9)
    assert file.read_text() == before.replace(left.strip("'"), now)


def test_wire_of_which_nobody_wrote_down_how_much_is_left_cannot_be_counted(folder: Path) -> None:
    assert wrong(folder, "W09", "1 m") == [
        "file 3:5: W09 does not say how much is left; expected its length_left: measure what is left and write it down"
    ]


@pytest.mark.parametrize(
    ("name", "amount", "message"),
    [
        ("T-17", "0", "0 is zero; expected a whole number of springs above zero"),
        ("T-17", "-1", "-1 is negative; expected a whole number of springs above zero"),
        ("T-17", "1.5", "1.5 is not whole; expected a whole number"),
        ("T-17", "1 m", "1 m is a length; expected a number without a unit"),
        ("W08", "2 N", "2 N is a force; expected a length (mm, cm, m, in, ft, thou)"),
        ("W08", "0", "0 is zero; expected a length of wire above zero"),
        ("T-71", "1", "there is no spring or spool “T-71”; expected the id of one; did you mean T-17 or T-18?"),
        ("T\n\x1b[2J", "1", "there is no spring or spool “T \x1b[2J”; expected the id of one"),
    ],
)
def test_words_that_make_no_sense_are_told(folder: Path, name: str, amount: str, message: str) -> None:
    assert wrong(folder, name, amount) == [f"words {message}"]


def test_a_count_that_grows_too_large_to_be_read_again_is_refused(folder: Path) -> None:
    with pytest.raises(Mistakes) as raised:
        put(read_catalogue(folder), "T-17", "1000000000")
    assert told(raised.value.findings) == ["10:14: 1000000003 is too large; expected a whole number up to 1000000000"]
    assert read_catalogue(folder).springs[0].on_hand == 3


def test_where_a_spring_and_a_spool_have_one_id_a_length_means_the_spool(folder: Path) -> None:
    written(folder, (SPOOLS % "6.2 m").replace("W08", "T-17"), "spools/wire.yaml")
    assert taken(folder, "T-17", "1").now == "2"
    assert taken(folder, "T-17", "1 m").now == "5.2 m"


def test_the_count_is_the_one_that_stands_there_when_it_is_changed(folder: Path) -> None:
    catalogue = read_catalogue(folder)
    taken(folder, "T-17", "1")
    assert take(catalogue, "T-17", "1").left == 1


def test_a_record_that_is_gone_when_it_is_to_be_changed_is_told(folder: Path) -> None:
    catalogue = read_catalogue(folder)
    written(folder, DRAWER.replace("T-17", "T-16"), "springs/drawer.yaml")
    with pytest.raises(Mistakes) as raised:
        take(catalogue, "T-17", "1")
    assert told(raised.value.findings) == ["“T-17” stands here no longer; expected a second try; nothing was changed"]


def test_a_dry_run_tells_the_same_and_changes_nothing(folder: Path) -> None:
    file = folder / "springs/drawer.yaml"
    before = file.read_bytes()
    dry = take(read_catalogue(folder), "T-17", "2", dry_run=True)
    assert file.read_bytes() == before
    assert dry == taken(folder, "T-17", "2")
    assert dry.changed == ("    on_hand: 1",)


@pytest.mark.parametrize("name", ["T\n17", "T\x1b[2J17", "T\u202e17", "T 17 # x", "'T'", "弹簧", "010"])
def test_any_id_can_be_counted(tmp_path: Path, name: str) -> None:
    from sourcing.files.splicing import as_scalar

    written(tmp_path, DRAWER.replace("T-17", as_scalar(name)), "springs/drawer.yaml")
    assert taken(tmp_path, name, "1").left == 2
