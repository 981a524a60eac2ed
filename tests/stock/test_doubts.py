"""What is doubtful in a catalogue is told, and what is in order is not."""

from pathlib import Path

import pytest

from sourcing.stock.doubts import doubts
from sourcing.stock.reading import read_catalogue
from tests.files.told import told, written

GOOD = (
    "{id: A, kind: compression, wire_diameter: 0.9, outside_diameter: 9.6, free_length: 31, total_coils: 9.75, "
    "ends: closed-ground, material: music-wire, rate: 1.31, place: B4, on_hand: 3}"
)


def told_of(folder: Path, *springs: str) -> list[str]:
    file = written(folder, "springs:\n" + "".join(f"  - {spring}\n" for spring in springs))
    return [line.replace(str(file), "FILE") for line in told(doubts(read_catalogue(file)))]


def test_springs_that_are_in_order_give_no_doubt(tmp_path: Path) -> None:
    assert told_of(tmp_path, GOOD, GOOD.replace("id: A", "id: B").replace("B4", "B5")) == []


def test_a_rate_that_does_not_fit_the_dimensions_is_told(tmp_path: Path) -> None:
    (line,) = told_of(tmp_path, GOOD.replace("1.31", "2.31"))
    assert line.startswith("2:160: a stated rate of 2.31 N/mm; expected about the 1.31 N/mm that follows")


@pytest.mark.parametrize("also", ["on_hand: 3", "on_hand: 9, least: 2, note: bought twice"])
def test_a_double_that_differs_only_in_its_name_is_told_however_many_there_are(tmp_path: Path, also: str) -> None:
    double = GOOD.replace("id: A", "id: B").replace("on_hand: 3", also)
    assert told_of(tmp_path, GOOD, double) == [
        "3:5: “B” differs only in its name from the spring at FILE:2; "
        "expected one record for both, or what sets them apart"
    ]


def test_a_spring_that_pressed_solid_is_stressed_beyond_its_limit_is_told(tmp_path: Path) -> None:
    """EN 13906-1 clause 10 allows 0.56 of the 2270 MPa that EN 10270-1 SH asks of a wire of 0.9 mm at least."""
    (line,) = told_of(tmp_path, GOOD.replace("free_length: 31", "free_length: 60"))
    assert line.startswith("2:5: “A” pressed solid is stressed to 2")
    assert line.endswith("; expected at most 1271 MPa: it takes a set there, or a dimension is wrong")


def test_a_spring_whose_strength_is_not_known_gives_no_doubt_about_stress(tmp_path: Path) -> None:
    thin = "wire_diameter: 40, outside_diameter: 400, free_length: 3100"
    spring = GOOD.replace("wire_diameter: 0.9, outside_diameter: 9.6, free_length: 31", thin).replace(
        "rate: 1.31, ", ""
    )
    assert told_of(tmp_path, spring) == []


@pytest.mark.parametrize(("left", "doubtful"), [("85 mm", True), ("86 mm", False)])
def test_a_spool_shorter_than_its_trials_used_is_told(tmp_path: Path, left: str, doubtful: bool) -> None:
    """Four turns of 0.8 mm wire on a rod of 6 mm are four circles of 6.8 mm: 85.5 mm."""
    trial = "{mandrel: 6, outside_diameter: 8.9, turns: 4}"
    file = written(
        tmp_path,
        f"spools:\n  - {{id: W, material: music-wire, wire_diameter: 0.8, length_left: {left}, trials: [{trial}]}}\n",
    )
    expected = (
        "2:5: “W” has 85.0 mm left, less than its trials used; "
        "expected more than the 85.5 mm in its trial coils, or the wire measured again"
    )
    assert told(doubts(read_catalogue(file))) == [expected] * doubtful


def test_two_spools_of_one_wire_are_doubles_only_where_all_is_the_same(tmp_path: Path) -> None:
    spool = "  - {id: %s, material: music-wire, wire_diameter: 0.8, length_left: %s m}\n"
    one = "spools:\n" + spool % ("A", 1)
    assert told(doubts(read_catalogue(written(tmp_path, one + spool % ("B", 2))))) == []
    (line,) = told(doubts(read_catalogue(written(tmp_path, one + spool % ("B", 1)))))
    assert "“B” differs only in its name from the spool" in line


@pytest.mark.parametrize("rods", ["[3,5, 4]", "[3, 4, 5, 4,5, 6]"])
def test_rods_that_do_not_rise_may_be_decimal_commas(tmp_path: Path, rods: str) -> None:
    written(tmp_path, f"rods: {rods}", "bench.yaml")
    (doubt,) = told(doubts(read_catalogue(tmp_path)))
    assert "a rod of 4.00 mm after one of 5.00 mm; expected rods from thin to thick" in doubt


def test_rods_that_rise_give_no_doubt(tmp_path: Path) -> None:
    written(tmp_path, "rods: [3, 3.5, 4, 4, 5]", "bench.yaml")
    assert not doubts(read_catalogue(tmp_path))
