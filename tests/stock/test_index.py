"""The index is believed only where it tells what the files tell, and is never an error."""

import json
import os
import sqlite3
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from sourcing.files.findings import Finding
from sourcing.need.model import Need
from sourcing.need.reading import read_need
from sourcing.stock.index import kept, state
from sourcing.stock.index.needs import known_need
from sourcing.stock.index.ranges import Ranges
from sourcing.stock.index.shelf import open_shelf
from sourcing.stock.model import Catalogue
from sourcing.stock.reading import Gathered, inspect_catalogue
from tests.benchmarks.catalogues import write_catalogue

CATALOG = Path(__file__).parents[2] / "catalog"
ALL = Ranges("compression")
OLD_NS = 1_700_000_000_000_000_000


@pytest.fixture(autouse=True)
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return tmp_path / "cache" / "springwright"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    write_catalogue(tmp_path / "catalog", 12)
    for file in (tmp_path / "catalog").rglob("*.yaml"):
        os.utime(file, ns=(OLD_NS, OLD_NS))
    return tmp_path / "catalog"


def asked(path: str | Path) -> tuple[Catalogue, tuple[Finding, ...]]:
    shelf, mistakes = open_shelf(path)
    return shelf.springs_for(ALL), mistakes


def as_read(path: str | Path) -> tuple[Catalogue, tuple[Finding, ...]]:
    catalogue, mistakes = inspect_catalogue(path)
    return replace(catalogue, springs=tuple(s for s in catalogue.springs if s.spring.kind == "compression")), mistakes


def files_read(path: str | Path, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The names of the files that are read to answer; what is read is not kept."""
    read: list[str] = []
    load = Gathered.load

    def noted(self: Gathered, file: str):
        read.append(Path(file).name)
        return load(self, file)

    with monkeypatch.context() as patched:
        patched.setattr(Gathered, "load", noted)
        patched.setattr(kept, "keep_index", lambda *_: None)
        open_shelf(path)
    return read


def believed(path: str | Path, monkeypatch: pytest.MonkeyPatch) -> bool:
    """Whether a catalogue is answered without reading its files."""
    return not files_read(path, monkeypatch)


def the_index(cache: Path) -> Path:
    (index,) = cache.iterdir()
    return index


def edit_one(folder: Path, keep_time: bool = False) -> None:
    """Change a digit, so that the size stays."""
    file = folder / "springs" / "list-0.yaml"
    text = file.read_text()
    line = next(line for line in text.splitlines() if "free_length" in line)
    digit = line[-1]
    file.write_text(text.replace(line, line[:-1] + ("1" if digit != "1" else "2"), 1))
    if keep_time:
        os.utime(file, ns=(OLD_NS, OLD_NS))


def test_a_second_reading_answers_from_the_index_and_tells_the_same(folder: Path, monkeypatch: pytest.MonkeyPatch):
    assert asked(folder) == as_read(folder)
    assert believed(folder, monkeypatch)
    assert asked(folder) == as_read(folder)


def test_the_starter_catalogue_comes_back_value_by_value():
    asked(CATALOG)
    for kind in ("compression", "conical"):
        shelf, _ = open_shelf(CATALOG)
        found = shelf.springs_for(Ranges(kind))
        assert found.springs == tuple(s for s in inspect_catalogue(CATALOG)[0].springs if s.spring.kind == kind)
        assert found.spools == inspect_catalogue(CATALOG)[0].spools
        assert found.bench == inspect_catalogue(CATALOG)[0].bench


@pytest.mark.parametrize("keep_time", [False, True])
def test_a_changed_file_is_read_again_even_where_its_size_and_time_are_as_before(folder: Path, keep_time: bool):
    asked(folder)
    edit_one(folder, keep_time)
    assert asked(folder) == as_read(folder)


def test_a_file_that_was_only_touched_is_not_read_again(folder: Path, monkeypatch: pytest.MonkeyPatch):
    asked(folder)
    os.utime(folder / "springs" / "list-0.yaml")
    assert believed(folder, monkeypatch)


@pytest.mark.parametrize("name", ["springs/more.yaml", "bench.yaml", "materials.yaml", "spools/more.yaml"])
def test_a_file_that_came_or_went_makes_the_index_old(folder: Path, name: str, monkeypatch: pytest.MonkeyPatch):
    asked(folder)
    (folder / name).write_text("# nothing yet\n")
    assert not believed(folder, monkeypatch)


def test_a_catalogue_with_a_mistake_is_never_indexed(folder: Path, cache: Path):
    (folder / "springs" / "wrong.yaml").write_text("springs:\n  - {id: A, kind: compression}\n")
    assert asked(folder)[1] == as_read(folder)[1]
    assert not cache.exists()


def test_an_id_in_two_files_is_told_with_an_index_as_without(folder: Path):
    asked(folder)
    (folder / "springs" / "again.yaml").write_bytes((folder / "springs" / "list-0.yaml").read_bytes())
    mistakes = asked(folder)[1]
    assert mistakes
    assert mistakes == as_read(folder)[1]


def test_a_doubtful_rate_is_told_from_the_index_too(folder: Path, monkeypatch: pytest.MonkeyPatch):
    file = folder / "springs" / "list-0.yaml"
    file.write_text(file.read_text().replace("rate: ", "rate: 9", 1))
    asked(folder)
    assert believed(folder, monkeypatch)
    assert len(asked(folder)[0].warnings) == 1
    assert asked(folder) == as_read(folder)


def damaged(index: Path, how: str) -> None:
    raw = index.read_bytes()
    middle = len(raw) // 2
    texts = {
        "empty": b"",
        "cut": raw[:middle],
        "foreign": b"no index at all" * 1000,
        "a bit": raw[:middle] + bytes([raw[middle] ^ 1]) + raw[middle + 1 :],
    }
    index.chmod(0o600)
    index.write_bytes(texts[how])


@pytest.mark.parametrize("how", ["empty", "cut", "foreign", "a bit"])
def test_a_damaged_index_is_not_believed_and_is_replaced(
    folder: Path, cache: Path, how: str, monkeypatch: pytest.MonkeyPatch
):
    asked(folder)
    damaged(the_index(cache), how)
    assert not believed(folder, monkeypatch)
    assert asked(folder) == as_read(folder)
    assert believed(folder, monkeypatch)


def test_a_database_of_somebody_elses_under_a_right_name_is_not_believed(folder: Path, cache: Path, tmp_path: Path):
    asked(folder)
    index = the_index(cache)
    key = index.name.split("-")[0]
    index.unlink()
    with sqlite3.connect(tmp_path / "other") as other:
        other.execute("CREATE TABLE whole (name, value)")
    other.close()
    name = f"{key}-{kept.sum_of(str(tmp_path / 'other'))}.sqlite"
    (tmp_path / "other").rename(cache / name)
    assert asked(folder) == as_read(folder)


def test_an_index_of_another_program_or_schema_is_not_believed(folder: Path, monkeypatch: pytest.MonkeyPatch):
    asked(folder)
    monkeypatch.setattr(state, "SCHEMA", state.SCHEMA + 1)
    assert not believed(folder, monkeypatch)


def test_without_a_home_and_a_cache_folder_the_files_are_read(folder: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.delenv("XDG_CACHE_HOME")
    monkeypatch.delenv("HOME", raising=False)
    assert kept.cache_folder() is None
    assert asked(folder) == as_read(folder)


def test_a_cache_folder_that_cannot_be_written_is_no_error(folder: Path, cache: Path):
    cache.parent.write_text("a file where the folder should be")
    assert asked(folder) == as_read(folder)


def test_one_file_a_link_and_a_relative_path_are_catalogues_too(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    (tmp_path / "link").symlink_to(folder)
    monkeypatch.chdir(tmp_path)
    for path in (folder / "springs" / "list-1.yaml", tmp_path / "link", Path("catalog"), Path("missing")):
        assert asked(path) == as_read(path)
        assert asked(path) == as_read(path)


ASK = """
import sys
from sourcing.stock.index.ranges import Ranges
from sourcing.stock.index.shelf import open_shelf
shelf, mistakes = open_shelf(sys.argv[1])
print(len(mistakes), hash(tuple(s.id for s in shelf.springs_for(Ranges("compression")).springs)))
"""


def test_a_file_whose_name_is_no_utf_8_is_indexed_as_any_other(folder: Path, monkeypatch: pytest.MonkeyPatch):
    os.rename(folder / "springs" / "list-0.yaml", os.fsencode(folder / "springs") + b"/g\xff.yaml")
    assert asked(folder) == as_read(folder)
    assert believed(folder, monkeypatch)
    edit_one_more = folder / "springs" / "list-1.yaml"
    edit_one_more.write_text(edit_one_more.read_text() + "# more\n")
    assert asked(folder) == as_read(folder)


def test_several_processes_at_once_all_tell_the_same_and_leave_one_index(folder: Path, cache: Path):
    environment = {**os.environ, "PYTHONHASHSEED": "0"}
    command = [sys.executable, "-c", ASK, str(folder)]
    running = [
        subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=environment, cwd=CATALOG.parent)
        for _ in range(4)
    ]
    answers = {process.communicate()[0] for process in running}
    assert len(answers) == 1
    assert answers.pop().startswith("0 ")
    assert [file.suffix for file in cache.iterdir()] == [".sqlite"]


def test_of_two_that_are_kept_at_once_the_newer_stays_whoever_comes_last(tmp_path: Path):
    kept.keep(lambda scratch: Path(scratch).write_text("another's"), tmp_path, "key", ".kept")
    (newer,) = tmp_path.iterdir()
    os.utime(newer, ns=(newer.stat().st_atime_ns, newer.stat().st_mtime_ns + 10**10))
    kept.keep(lambda scratch: Path(scratch).write_text("ours"), tmp_path, "key", ".kept")
    assert list(tmp_path.iterdir()) == [newer]


@pytest.mark.parametrize("edit", ["springs/list-2.yaml", "spools/wire.yaml"])
def test_only_the_files_of_springs_that_changed_are_read_again(
    folder: Path, edit: str, monkeypatch: pytest.MonkeyPatch
):
    asked(folder)
    with (folder / edit).open("a") as file:
        file.write("# a comment more\n")
    assert set(files_read(folder, monkeypatch)) == {Path(edit).name, "wire.yaml"}
    assert asked(folder) == as_read(folder)
    assert asked(folder) == as_read(folder)


@pytest.mark.parametrize("name", ["bench.yaml", "materials.yaml"])
def test_where_what_settles_the_springs_changed_all_are_read_again(
    folder: Path, name: str, monkeypatch: pytest.MonkeyPatch
):
    asked(folder)
    texts = {
        "bench.yaml": "currency: CHF\n",
        "materials.yaml": "materials:\n  - {name: odd-wire, shear_modulus: 80000, elastic_modulus: 200000, "
        "density: 7850, tensile_strength: [{up_to: 1, strength: 2000}]}\n",
    }
    (folder / name).write_text(texts[name])
    assert {f"list-{number}.yaml" for number in range(4)} < set(files_read(folder, monkeypatch))
    assert asked(folder) == as_read(folder)


def test_files_that_come_between_go_and_change_their_order_are_taken_over_as_they_should(folder: Path):
    asked(folder)
    springs = folder / "springs"
    (springs / "list-2.yaml").rename(springs / "a-first.yaml")
    (springs / "list-0.yaml").unlink()
    assert asked(folder) == as_read(folder)
    assert asked(folder) == as_read(folder)


def test_an_id_that_now_stands_in_a_changed_file_and_in_one_taken_over_is_told(folder: Path):
    asked(folder)
    file = folder / "springs" / "list-1.yaml"
    file.write_text(file.read_text().replace("R-000001", "R-000000"))
    mistakes = asked(folder)[1]
    assert len(mistakes) == 1
    assert mistakes == as_read(folder)[1]


def test_a_mistake_in_one_file_leaves_the_others_of_the_index_good(folder: Path, monkeypatch: pytest.MonkeyPatch):
    asked(folder)
    file = folder / "springs" / "list-1.yaml"
    file.write_text(file.read_text().replace("kind: compression", "kind: spiral staircase", 1))
    assert asked(folder)[1] == as_read(folder)[1] != ()
    assert set(files_read(folder, monkeypatch)) == {"list-1.yaml", "wire.yaml"}


def test_the_whole_catalogue_comes_from_the_index_as_from_the_files(folder: Path):
    for _ in range(2):
        shelf, _ = open_shelf(folder)
        assert shelf.whole() == inspect_catalogue(folder)[0]


def test_a_read_only_cache_folder_is_no_error(folder: Path, cache: Path):
    cache.mkdir(parents=True)
    cache.chmod(0o500)
    try:
        assert asked(folder) == as_read(folder)
        assert asked(folder) == as_read(folder)
    finally:
        cache.chmod(0o700)


NEED = "job: a\nkind: compression\nworking:\n  - {length: 24 mm, force: 9 N ± 15 %}\nmaterial: music-wire\n"


def need_known(file: Path, monkeypatch: pytest.MonkeyPatch) -> tuple[Need, bool]:
    """The need, and whether it was known without reading its file as YAML."""
    read: list[object] = []

    def noted(path: str, own: object) -> Need:
        read.append(path)
        return read_need(path)

    with monkeypatch.context() as patched:
        patched.setattr("sourcing.stock.index.needs.read_need", noted)
        return known_need(str(file), {}), not read


def test_a_need_that_was_read_is_known_until_a_byte_of_it_changes(
    tmp_path: Path, cache: Path, monkeypatch: pytest.MonkeyPatch
):
    file = tmp_path / "need.yaml"
    file.write_text(NEED)
    assert need_known(file, monkeypatch) == (read_need(file), False)
    assert need_known(file, monkeypatch) == (read_need(file), True)
    file.write_text(NEED.replace("24", "25"))
    assert need_known(file, monkeypatch) == (read_need(file), False)
    (kept_need, *_) = sorted(cache.glob("*.need"))
    kept_need.write_text(json.dumps([[[], []], None]))
    file.write_text(NEED)
    assert need_known(file, monkeypatch)[0] == read_need(file)


def test_only_so_many_indexes_are_kept(tmp_path: Path, cache: Path):
    for number in range(kept.KEPT + 3):
        write_catalogue(tmp_path / f"catalog-{number}", 1, files=1)
        asked(tmp_path / f"catalog-{number}")
    assert len(list(cache.iterdir())) == kept.KEPT
