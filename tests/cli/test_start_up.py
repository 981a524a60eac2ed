"""Slow imports are paid only by what needs them; each command is run in a process of its own."""

import subprocess
import sys
from pathlib import Path

import pytest

TOP = Path(__file__).parents[2]
SLOW = {"numpy", "pydantic", "rapidfuzz", "scipy", "tabulate", "yaml"}


def modules(*words: str) -> list[str]:
    """What is loaded when `springwright WORDS` ends."""
    code = (
        "import sys\nfrom sourcing.cli import main\nsys.argv = ['springwright', *sys.argv[1:]]\n"
        "try:\n    main()\nexcept SystemExit:\n    pass\n"
        "sys.stderr.write('\\nLOADED ' + ' '.join(sys.modules))\n"
    )
    ran = subprocess.run([sys.executable, "-c", code, *words], capture_output=True, text=True, cwd=TOP, check=True)
    return ran.stderr.rsplit("LOADED ", 1)[1].split()


def loaded(*words: str) -> set[str]:
    """The slow libraries among them."""
    return SLOW & set(modules(*words))


@pytest.mark.parametrize("words", [("--help",), ("source", "--help"), ("init", "examples")])
def test_help_and_init_load_nothing_slow(words: tuple[str, ...], tmp_path: Path):
    assert loaded(*words[:1], *(str(tmp_path) if word == "examples" else word for word in words[1:])) == set()


@pytest.fixture
def no_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


@pytest.mark.usefixtures("no_cache")
def test_a_verdict_in_json_loads_what_reads_the_files_and_the_second_time_nothing_slow():
    assert loaded("source", "examples/punch-return/need.yaml", "--json") == {"pydantic", "yaml"}
    assert loaded("source", "examples/punch-return/need.yaml", "--json") == set()


@pytest.mark.usefixtures("no_cache")
def test_a_verdict_in_text_loads_the_tables_too():
    assert loaded("source", "examples/punch-return/need.yaml") == {"pydantic", "tabulate", "yaml"}
    assert loaded("source", "examples/punch-return/need.yaml") == {"tabulate"}


@pytest.mark.usefixtures("no_cache")
def test_the_drawer_is_asked_without_reading_its_files_again():
    assert "yaml" in loaded("stock", "list", "--catalog", "catalog")
    assert "yaml" not in loaded("stock", "list", "--catalog", "catalog")


def test_a_verdict_loads_nothing_of_workings_where_none_are_asked_for():
    """What evaluates formulas and makes docstrings is paid by --workings alone."""
    found = modules("source", "examples/punch-return/need.yaml")
    assert [name for name in found if name.startswith("sourcing.figures")] == ["sourcing.figures"]
