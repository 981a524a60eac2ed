"""A new record is checked as the readers will, given the next free id, and put where its like stands."""

from pathlib import Path

import pytest

from sourcing.files.findings import WrongWords
from sourcing.need.kinds import KINDS
from sourcing.stock.adding import ASKED, SPOOL, add, as_read, file_for, keys_to_ask, keys_to_offer, next_free_id
from sourcing.stock.model import Catalogue
from sourcing.stock.reading import read_catalogue
from tests.files.told import told, written

RECORD = {
    "kind": "compression", "wire_diameter": "0.9", "outside_diameter": "9.6", "free_length": "31",
    "total_coils": "9.75", "ends": "closed", "material": "music-wire",
}  # fmt: skip
SPRING = (
    "  - {id: %s, kind: compression, wire_diameter: 0.9, outside_diameter: 9.6, free_length: 31, total_coils: 9.75,\n"
    "     ends: closed, material: music-wire, place: %s, seller: %s}\n"
)


@pytest.fixture
def catalogue(tmp_path: Path) -> Catalogue:
    written(
        tmp_path,
        "springs:\n" + SPRING % ("B4-08", "drawer B4", "x") + SPRING % ("odd one", "drawer B4", "x")
        + SPRING % ("B5-1", "drawer B5", "x") + SPRING % ("B4-09", "drawer B6", "x"),
        "springs/drawer.yaml",
    )  # fmt: skip
    written(tmp_path, "springs:\n" + SPRING % ("alder-99", "list", "Alder Row"), "springs/alder.yaml")
    written(tmp_path, "spools:\n  - {id: W08, material: music-wire, wire_diameter: 0.8}\n", "spools/wire.yaml")
    return read_catalogue(tmp_path)


@pytest.mark.parametrize(
    ("more", "name", "file"),
    [
        ({"place": "drawer B4"}, "B4-10", "drawer.yaml"),
        ({"place": "drawer B5"}, "B5-2", "drawer.yaml"),
        ({"seller": "Alder Row"}, "alder-100", "alder.yaml"),
        ({"place": "elsewhere"}, "alder-100", "alder.yaml"),
        ({"kind": SPOOL, "place": "rack"}, "W09", "wire.yaml"),
    ],
)
def test_the_next_free_id_follows_those_at_the_same_place_or_in_the_same_file(
    catalogue: Catalogue, more: dict[str, str], name: str, file: str
) -> None:
    record = {**RECORD, **more}
    goes_to = file_for(catalogue, record, None)
    assert Path(goes_to).name == file
    assert next_free_id(catalogue, record["kind"] == SPOOL, record.get("place"), goes_to) == name


def test_what_is_added_is_read_as_it_was_given(catalogue: Catalogue, tmp_path: Path) -> None:
    added = add(catalogue, {**RECORD, "on_hand": "2", "place": "drawer B4", "note": "a: b # ü"})
    assert (added.item.id, added.line) == ("B4-10", 10)
    assert added.changed[0].startswith("  - {id: B4-10, kind: compression, wire_diameter: 0.9, ")
    (stock,) = [stock for stock in read_catalogue(tmp_path).springs if stock.id == "B4-10"]
    assert (stock.on_hand, stock.shelf, stock.note, stock.spring) == (
        2,
        "drawer B4",
        "a: b # ü",
        catalogue.springs[0].spring,
    )


def test_a_spool_is_added_too(catalogue: Catalogue, tmp_path: Path) -> None:
    spool = {"kind": SPOOL, "material": "music-wire", "wire_diameter": "MWG 20", "length_left": "3 m"}
    assert add(catalogue, spool).item.id == "W09"
    assert read_catalogue(tmp_path).spools[-1].length_left_mm == 3000


def test_a_dry_run_writes_nothing(catalogue: Catalogue, tmp_path: Path) -> None:
    before = (tmp_path / "springs/alder.yaml").read_bytes()
    assert add(catalogue, RECORD, dry_run=True).item.id == "alder-100"
    assert (tmp_path / "springs/alder.yaml").read_bytes() == before


def test_a_file_can_be_named(catalogue: Catalogue, tmp_path: Path) -> None:
    for name in ("drawer", "drawer.yaml", str(tmp_path / "springs/drawer.yaml")):
        assert add(catalogue, RECORD, to=name, dry_run=True).file == str(tmp_path / "springs/drawer.yaml")


@pytest.mark.parametrize(
    ("more", "message"),
    [
        (
            {"wire_diameter": "0,9"},
            "--wire-diameter: 0,9 has a comma as decimal sign; expected a decimal point; did you mean 0.9?",
        ),
        (
            {"free_length": "2"},
            "--free-length: 2 is no longer than the spring pressed solid; "
            "expected a free length above the solid length, 10.1 mm",
        ),
        (
            {"mean_diameter": "9"},
            "--mean-diameter: mean_diameter, where outside_diameter stands already; "
            "expected one diameter only: the others follow from it and the wire",
        ),
        ({"id": "B4-08"}, "“B4-08” is the id of another, at FILE:2; expected an id of its own"),
        ({"id": " "}, "--id: nothing stands here; expected a text"),
    ],
)
def test_what_is_wrong_with_a_record_is_told_with_the_option(
    catalogue: Catalogue, tmp_path: Path, more: dict[str, str], message: str
) -> None:
    with pytest.raises(WrongWords) as raised:
        add(catalogue, {**RECORD, **more}, to="drawer")
    assert [line.replace(str(tmp_path / "springs/drawer.yaml"), "FILE") for line in told(raised.value.findings)] == [
        message
    ]


def test_all_that_is_missing_is_told(catalogue: Catalogue) -> None:
    with pytest.raises(WrongWords) as raised:
        add(catalogue, {"kind": "compression", "wire_diameter": "0.9", "outside_diameter": "9.6"})
    assert raised.value.findings[0].found == "no material, free_length or ends"


def test_a_file_that_is_not_of_the_catalogue_is_told_with_the_nearest(catalogue: Catalogue) -> None:
    with pytest.raises(WrongWords) as raised:
        add(catalogue, RECORD, to="drawr.yaml")
    assert told(raised.value.findings) == [
        "“drawr.yaml” is no file of the catalogue; expected one of its files; did you mean drawer.yaml?"
    ]


def test_a_catalogue_without_a_file_of_springs_is_told(tmp_path: Path) -> None:
    written(tmp_path, "units: mm\n", "bench.yaml")
    with pytest.raises(WrongWords) as raised:
        add(read_catalogue(tmp_path), RECORD)
    assert raised.value.findings[0].found == "the catalogue has no springs"


ANSWERS = {
    "wire_diameter": "0.9", "outside_diameter": "9.6", "outside_diameter_large": "12", "outside_diameter_small": "6",
    "free_length": "31", "total_coils": "9.75", "ends": "closed", "material": "music-wire", "length_left": "3 m",
    "hooks": "full-loop",
}  # fmt: skip


@pytest.mark.parametrize("kind", [*KINDS, SPOOL])
def test_the_keys_that_are_asked_for_make_a_record_of_every_kind(kind: str) -> None:
    record = {"kind": kind}
    record |= {key: ANSWERS[key] for key in keys_to_ask(record)}
    assert keys_to_ask(record) == []
    item, wrong = as_read(record, "EUR")
    assert not wrong
    assert item is not None
    assert kind in ASKED


def test_a_key_is_not_asked_for_where_another_stands_for_it() -> None:
    assert keys_to_ask({**RECORD, "kind": "compression"}) == []
    inside = {"inside_diameter" if key == "outside_diameter" else key: value for key, value in RECORD.items()}
    assert (
        keys_to_ask({key: value for key, value in inside.items() if key != "total_coils"} | {"active_coils": "7"}) == []
    )
    assert keys_to_offer(RECORD) == ["on_hand", "place"]
    assert keys_to_offer({"kind": SPOOL}) == ["place"]
    assert keys_to_ask({"kind": "umbrella"}) == []
