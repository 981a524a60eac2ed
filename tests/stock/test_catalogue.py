"""A catalogue as a folder or as one file, and how it is found."""

import errno
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from sourcing.stock.reading import find_catalogue, read_catalogue
from tests.files.told import mistakes_of, told, written

SPRING = """
    springs:
      - {id: %s, kind: compression, wire_diameter: 0.9, outside_diameter: 9.6, free_length: 31, total_coils: 9.75,
         ends: closed-ground, material: music-wire}
"""
SPOOL = "spools:\n  - {id: %s, material: music-wire, wire_diameter: 0.8}\n"


def test_a_folder_is_read_whole_in_the_order_of_its_names(tmp_path: Path) -> None:
    written(tmp_path, SPRING % "B", "springs/b.yaml")
    written(tmp_path, SPRING % "A", "springs/a.yml")
    written(tmp_path, SPOOL % "W", "spools/w.yaml")
    written(tmp_path, "units: inch\n", "bench.yaml")
    written(tmp_path, "not read: [", "springs/.hidden.yaml")
    written(tmp_path, "not read: [", "springs/notes.txt")
    catalogue = read_catalogue(tmp_path)
    assert [spring.id for spring in catalogue.springs] == ["A", "B"]
    assert [spool.id for spool in catalogue.spools] == ["W"]
    assert (catalogue.bench.units, catalogue.warnings) == ("inch", ())


@pytest.mark.parametrize(
    ("name", "text"), [("springs/a.yaml", SPRING % "A"), ("spools/w.yaml", SPOOL % "W"), ("bench.yaml", "units: mm\n")]
)
def test_each_part_of_a_catalogue_may_stand_alone(tmp_path: Path, name: str, text: str) -> None:
    written(tmp_path, text, name)
    read_catalogue(tmp_path)


def test_one_file_is_told_by_its_top_key(tmp_path: Path) -> None:
    assert [s.id for s in read_catalogue(written(tmp_path, SPRING % "A")).springs] == ["A"]
    assert [s.id for s in read_catalogue(written(tmp_path, SPOOL % "W")).spools] == ["W"]


def test_a_need_and_a_bench_file_are_no_catalogue(tmp_path: Path) -> None:
    assert told(mistakes_of(read_catalogue, written(tmp_path, "job: x\nkind: compression\n"))) == [
        "1:1: a need; expected a catalogue: a folder, or springs: or spools:"
    ]
    assert told(mistakes_of(read_catalogue, written(tmp_path, "units: mm\noven: none\n"))) == [
        "1:1: a bench file; expected the folder it lies in, or springs: or spools:"
    ]


def test_a_folder_without_a_catalogue_is_told_what_was_looked_for(tmp_path: Path) -> None:
    assert told(mistakes_of(read_catalogue, tmp_path)) == [
        "a folder without a catalogue; expected springs/*.yaml, spools/*.yaml or bench.yaml; "
        "`springwright init` makes a catalogue"
    ]


def test_a_catalogue_that_is_not_there_is_told_with_the_nearest_name(tmp_path: Path) -> None:
    (tmp_path / "catalog").mkdir()
    assert told(mistakes_of(read_catalogue, tmp_path / "catalogue")) == [
        "nothing of that name; expected a catalogue: a folder, or a file of springs or of spools; "
        f"did you mean {tmp_path / 'catalog'}?"
    ]


def test_the_mistakes_of_all_files_are_told_in_the_order_of_files_and_lines(tmp_path: Path) -> None:
    written(tmp_path, "units: cm\n", "bench.yaml")
    written(tmp_path, SPRING % "A" + "job: x\n", "springs/b.yaml")
    written(tmp_path, "springs: [\n", "springs/a.yaml")
    written(tmp_path, SPOOL % "''", "spools/w.yaml")
    (tmp_path / "spools" / "x.yaml").write_bytes(b"\0\1")
    found = mistakes_of(read_catalogue, tmp_path)
    assert [(Path(f.place.file or "").name, f.place.line) for f in found] == [
        ("bench.yaml", 1), ("w.yaml", 2), ("x.yaml", None), ("a.yaml", 2), ("b.yaml", 4),
    ]  # fmt: skip


def test_one_id_in_two_files_is_told_once_with_both_places(tmp_path: Path) -> None:
    first = written(tmp_path, SPRING % "A", "springs/a.yaml")
    second = written(tmp_path, SPRING % "A", "springs/b.yaml")
    (finding,) = mistakes_of(read_catalogue, tmp_path)
    assert (finding.place.file, finding.place.line, finding.place.column) == (str(second), 2, 10)
    assert finding.found == f"“A” is the id of another spring, at {first}:2:10"


def test_a_spring_and_a_spool_may_have_one_id(tmp_path: Path) -> None:
    written(tmp_path, SPRING % "A", "springs/a.yaml")
    written(tmp_path, SPOOL % "A", "spools/a.yaml")
    assert len(read_catalogue(tmp_path).spools) == 1


def test_a_file_where_the_folder_of_springs_belongs_is_told(tmp_path: Path) -> None:
    (tmp_path / "springs").touch()
    (finding,) = mistakes_of(read_catalogue, tmp_path)
    assert (finding.place.file, finding.found, finding.expected) == (str(tmp_path / "springs"), "a file", "a folder")


def test_a_folder_that_may_not_be_looked_into_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The tests may run as somebody who may look anywhere, so the refusal of the disk is played."""

    def refusing(folder: Any) -> list[str]:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(folder))

    monkeypatch.setattr(os, "listdir", refusing)
    (finding,) = mistakes_of(read_catalogue, tmp_path)
    assert (finding.place.file, finding.found) == (str(tmp_path / "springs"), "you may not read it")


def test_a_folder_where_the_bench_belongs_is_told(tmp_path: Path) -> None:
    (tmp_path / "bench.yaml").mkdir()
    assert told(mistakes_of(read_catalogue, tmp_path)) == ["a folder; expected a file"]


def test_files_are_named_as_the_user_named_the_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    written(tmp_path, SPRING % "A", "catalog/springs/a.yaml")
    monkeypatch.chdir(tmp_path)
    (spring,) = read_catalogue("catalog").springs
    assert spring.place.file == str(Path("catalog/springs/a.yaml"))


@pytest.fixture
def nowhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.delenv("SPRINGWRIGHT_CATALOG", raising=False)
    folder = tmp_path / "bench" / "jobs"
    folder.mkdir(parents=True)
    monkeypatch.chdir(folder)
    return folder


def test_the_option_is_taken_before_all_else(nowhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SPRINGWRIGHT_CATALOG", str(nowhere))
    assert find_catalogue("mine.yaml") == Path("mine.yaml")


def test_the_variable_is_taken_before_a_folder(nowhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (nowhere / "catalog").mkdir()
    monkeypatch.setenv("SPRINGWRIGHT_CATALOG", str(nowhere.parent))
    assert find_catalogue(None) == nowhere.parent


def test_a_variable_that_names_nothing_is_told(nowhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SPRINGWRIGHT_CATALOG", "/no/such/folder")
    assert told(mistakes_of(lambda _: find_catalogue(None), nowhere)) == [
        "nothing of that name, which $SPRINGWRIGHT_CATALOG says; expected a catalogue; `springwright init` makes one"
    ]


def test_the_nearest_folder_called_catalog_is_taken(nowhere: Path) -> None:
    (nowhere.parent.parent / "catalog").mkdir()
    assert find_catalogue(None) == Path("../../catalog")
    (nowhere / "catalog").mkdir()
    assert find_catalogue(None) == Path("catalog")


def test_no_catalogue_anywhere_is_told_with_where_it_was_looked_for(nowhere: Path) -> None:
    assert told(mistakes_of(lambda _: find_catalogue(None), nowhere)) == [
        f"no folder of that name in {nowhere} or above it, and no $SPRINGWRIGHT_CATALOG; "
        "expected a catalogue; `springwright init` makes one"
    ]


def test_nothing_slow_is_imported_before_a_file_is_read() -> None:
    """Nor is the comparing of words where there is no mistake."""
    code = (
        "import sys, sourcing.need.reading, sourcing.stock.reading as reading\n"
        "assert not {'yaml', 'pydantic', 'rapidfuzz'} & sys.modules.keys()\n"
        "reading.read_catalogue('catalog')\n"
        "assert {'yaml', 'pydantic'} <= sys.modules.keys() and 'rapidfuzz' not in sys.modules\n"
    )
    root = Path(__file__).parents[2]
    subprocess.run([sys.executable, "-c", code], cwd=root, check=True)
