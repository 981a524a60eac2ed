"""Of a large catalogue only what is worth judging is judged, and the verdict is that of a full scan."""

from dataclasses import replace
from pathlib import Path

import pytest

from sourcing.fit.ranges import ranges_of
from sourcing.need.model import Need
from sourcing.need.reading import read_need
from sourcing.stock.index.shelf import open_shelf
from sourcing.stock.model import Catalogue
from sourcing.stock.reading import inspect_catalogue
from sourcing.verdict.verdict import Verdict, decide
from tests.benchmarks.catalogues import write_catalogue

NEED = read_need(Path(__file__).parents[2] / "examples" / "punch-return" / "need.yaml")
NEEDS = (
    NEED,
    replace(NEED, working=NEED.working[:1]),
    replace(NEED, free_length_mm=None),
    replace(NEED, working=(), wire_diameter_mm=None),
    replace(NEED, quantity=4, needed_within_days=1.0),
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("large") / "catalog"
    write_catalogue(folder, 2_000)
    return folder


@pytest.fixture(scope="module")
def whole(folder: Path) -> Catalogue:
    return inspect_catalogue(folder)[0]


def serving(verdict: Verdict) -> list[object]:
    """All that fits or nearly does, with every figure that is told of it."""
    return [option for option in verdict.options if option.fits != "no"]


@pytest.mark.parametrize("need", NEEDS, ids=range(len(NEEDS)))
def test_the_verdict_is_that_of_a_full_scan(
    need: Need, folder: Path, whole: Catalogue, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    for _ in range(2):
        shelf, _ = open_shelf(folder)
        asked, scanned = decide(need, shelf.springs_for(ranges_of(need, whole.bench))), decide(need, whole)
        assert (asked.option, asked.chosen, asked.sentence) == (scanned.option, scanned.chosen, scanned.sentence)
        assert serving(asked) == serving(scanned)
