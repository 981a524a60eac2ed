"""A need file: every key of it, and what comes out."""

from pathlib import Path

import pytest

from sourcing.files.findings import Place
from sourcing.need.model import Need, Pocket, WorkingPoint
from sourcing.need.reading import read_need
from sourcing.quantities import Wanted
from sourcing.springs.model import Ends, Hand
from tests.files.told import written

ALL_KEYS = """
    job: punch-return
    kind: compression
    what: return spring under the lever of a desk punch
    duty: ordinary
    pocket: {bore: 11 mm, rod: 6 mm, depth: 33 mm}
    working:
      - {length: 14 mm, force: 22 N ± 15 %}
      - {length: 24 mm, force: 9 N ± 15 %}
    free_length: 31 mm ± 2 mm
    ends: closed-ground
    hand: left
    cycles: 2e4
    surroundings: [indoor-dry, damp, damp]
    temperature: 68 degF
    quantity: 2
    needed_within: 1 week
    material: EN 10270-1 DH
    wire_diameter: 0.8..1 mm
    note: "10 % over is fine"
"""


@pytest.fixture
def need(tmp_path: Path) -> Need:
    return read_need(written(tmp_path, ALL_KEYS))


def test_the_words_of_a_need(need: Need) -> None:
    assert (need.job, need.kind, need.duty) == ("punch-return", "compression", "ordinary")
    assert (need.what, need.note) == ("return spring under the lever of a desk punch", "10 % over is fine")
    assert (need.ends, need.hand) == (Ends.CLOSED_GROUND, Hand.LEFT)
    assert need.material is not None
    assert need.material.name == "EN 10270-1 DH"


def test_the_figures_of_a_need(need: Need) -> None:
    assert need.pocket == Pocket(Wanted(nominal=11), Wanted(nominal=6), Wanted(nominal=33))
    assert need.free_length_mm == Wanted(nominal=31, minus=2, plus=2)
    assert need.wire_diameter_mm == Wanted(low=0.8, high=1)
    assert need.temperature_c == pytest.approx(20)
    assert (need.cycles, need.quantity, need.needed_within_days) == (20000, 2, 7)


def test_working_points_go_from_the_longest_length_to_the_shortest(need: Need) -> None:
    assert [point.at_mm for point in need.working] == [24, 14]
    assert [point.force_n and point.force_n.nominal for point in need.working] == [9, 22]


def test_a_word_for_surroundings_counts_once(need: Need) -> None:
    assert need.surroundings == ("indoor-dry", "damp")


def test_every_key_has_its_place_and_working_points_are_numbered_as_in_the_need(tmp_path: Path, need: Need) -> None:
    file = str(tmp_path / "file.yaml")
    assert need.place == Place(file, 1, 1)
    assert need.places["job"] == Place(file, 1, 6)
    assert need.places["pocket.rod"] == Place(file, 5, 28)
    assert need.places["working.0.force"] == Place(file, 8, 28)
    assert need.places["working.1.force"] == Place(file, 7, 28)
    assert need.places["surroundings.1"] == Place(file, 13, 28)


def test_what_is_absent_is_unknown(tmp_path: Path) -> None:
    need = read_need(written(tmp_path, "job: x\nkind: compression\npocket: {bore: 11}\n"))
    assert need == Need(
        job="x", kind="compression", pocket=Pocket(bore_mm=Wanted(nominal=11)), place=need.place, places=need.places
    )


@pytest.mark.parametrize("size", ["free_length: 31", "pocket: {depth: 30}", "working: [{length: 20}]"])
def test_one_of_working_pocket_and_free_length_is_enough(tmp_path: Path, size: str) -> None:
    assert read_need(written(tmp_path, f"job: x\nkind: compression\n{size}\n")).job == "x"


def test_a_working_point_may_lack_its_force(tmp_path: Path) -> None:
    need = read_need(written(tmp_path, "job: x\nkind: compression\nworking: [{length: 20}, {length: 12, force: 5}]\n"))
    assert need.working == (
        WorkingPoint(Wanted(nominal=20)),
        WorkingPoint(Wanted(nominal=12), Wanted(nominal=5)),
    )


def test_surroundings_may_be_one_bare_word(tmp_path: Path) -> None:
    need = read_need(written(tmp_path, "job: x\nkind: compression\nfree_length: 31\nsurroundings: wet\n"))
    assert need.surroundings == ("wet",)


@pytest.mark.parametrize(
    ("key", "text", "wanted"),
    [
        ("bore_mm", "bore: '>= 11 mm'", Wanted(low=11)),
        ("bore_mm", "bore: 11..12", Wanted(low=11, high=12)),
        ("rod_mm", "rod: <= 1/4 in", Wanted(high=6.35)),
        ("depth_mm", "depth: <= 30 mm", Wanted(high=30)),
    ],
)
def test_a_pocket_may_be_known_within_bounds(tmp_path: Path, key: str, text: str, wanted: Wanted) -> None:
    need = read_need(written(tmp_path, f"job: x\nkind: compression\npocket: {{{text}}}\n"))
    assert getattr(need.pocket, key) == wanted


def test_texts_reach_the_words_of_a_need_as_they_stand(tmp_path: Path) -> None:
    need = read_need(written(tmp_path, "job: 010\nkind: compression\nfree_length: 31\nnote: yes\nwhat: 1:30\n"))
    assert (need.job, need.note, need.what) == ("010", "yes", "1:30")


def test_a_length_may_equal_the_largest_free_length(tmp_path: Path) -> None:
    text = "job: x\nkind: compression\nfree_length: 31 mm ± 2 mm\nworking: [{length: 33}]\n"
    assert read_need(written(tmp_path, text)).working[0].at_mm == 33


def test_forces_whose_tolerances_meet_may_stand_in_any_order_where_one_has_no_nominal(tmp_path: Path) -> None:
    text = "job: x\nkind: compression\nworking: [{length: 24, force: 9..12 N}, {length: 14, force: 11 N ± 20 %}]\n"
    assert len(read_need(written(tmp_path, text)).working) == 2
