"""Springs and spools are found by words and figures, misspelt or in part."""

import pytest

from sourcing.stock.model import Catalogue
from sourcing.stock.reading import read_catalogue
from sourcing.stock.words import found_by_words
from tests.files.told import written

SPRINGS = """
    springs:
      - {id: T-17, kind: compression, wire_diameter: 0.9, outside_diameter: 9.6, free_length: 31, total_coils: 9.75,
         ends: closed-ground, material: music-wire, rate: 1.31, place: drawer B4, note: for the desk punches}
      - {id: B5-02, kind: compression, wire_diameter: 0.88, outside_diameter: 9.9, free_length: 40, total_coils: 9.75,
         ends: open, material: stainless-1.4310, place: drawer B5}
      - {id: alder-3, kind: compression, wire_diameter: 1.143, outside_diameter: 12.7, free_length: 50,
         total_coils: 9.75, ends: closed, material: music-wire, seller: Alder Row stock list, rate: 1.3 N/mm}
"""
SPOOLS = "spools:\n  - {id: W09, material: music-wire, wire_diameter: 0.9, length_left: 5 m, place: rack 2}\n"


@pytest.fixture(scope="module")
def catalogue(tmp_path_factory: pytest.TempPathFactory) -> Catalogue:
    folder = tmp_path_factory.mktemp("catalogue")
    written(folder, SPRINGS, "springs/a.yaml")
    written(folder, SPOOLS, "spools/a.yaml")
    return read_catalogue(folder)


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("T-17", ["T-17"]),
        ("t-71", ["T-17"]),
        ("punch", ["T-17"]),
        ("dsek punchs", ["T-17"]),
        ("drawer", ["T-17", "B5-02"]),
        ("drawr b4", ["T-17"]),
        ("0.9 drawer B4", ["T-17"]),
        ("ALDER", ["alder-3"]),
        ("alder row 50", ["alder-3"]),
        ("stainles", ["B5-02"]),
        ("0.9", ["T-17", "W09", "B5-02"]),
        ("0.90", ["T-17", "W09"]),
        ("0.9mm", ["T-17", "W09", "B5-02"]),
        ("0.9 mm music", ["T-17", "W09"]),
        ("1.31 N/mm", ["T-17"]),
        ("1.3", ["alder-3", "T-17"]),
        ("1.3 mm", []),
        ("1/2 in", ["alder-3"]),
        ("MWG 20", ["alder-3"]),
        ("5 m", ["W09"]),
        ("spool rack", ["W09"]),
        ("rack B4", []),
        ("umbrella", []),
        ("\x1b[2J", []),
        ("", []),
    ],
)
def test_every_word_must_be_found_and_the_best_comes_first(
    catalogue: Catalogue, words: str, expected: list[str]
) -> None:
    assert [thing.id for thing in found_by_words(words, catalogue)] == expected


def test_nothing_is_found_in_a_catalogue_with_nothing_in_it() -> None:
    assert found_by_words("drawer 0.9", Catalogue()) == ()
