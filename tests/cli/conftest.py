"""The command line as a user runs it, in this process: words in; status, output and messages out."""

import json
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from sourcing.cli import main

SPRINGS = """\
springs:
  - id: T-17
    kind: compression
    wire_diameter: 0.9
    outside_diameter: 9.6
    free_length: 31
    total_coils: 9.75
    ends: closed-ground
    material: music-wire
    rate: 1.31 N/mm
    on_hand: 3
    place: drawer B4
    seller: Alder Row stock list
    price: 0.42 EUR
    pack: 10
    lead_days: 4
"""

SPOOLS = """\
spools:
  - id: W08
    material: music-wire
    wire_diameter: 0.8
    length_left: 6.2 m
    price_per_metre: 0.35 EUR
    place: rack 2
"""

BENCH = """\
sellers: {Alder Row stock list: {postage: 3.90 EUR, lead_days: 4}}
"""

NEED = """\
job: punch-return
kind: compression
what: return spring under the lever of a desk punch
pocket: {bore: 11 mm, rod: 6 mm, depth: 33 mm}
working:
  - {length: 24 mm, force: 9 N ± 15 %}
  - {length: 14 mm, force: 22 N ± 15 %}
free_length: 31 mm ± 2 mm
ends: closed-ground
needed_within: 3 days
"""


@dataclass(frozen=True)
class Ran:
    """What a run left behind."""

    status: int
    out: str
    err: str

    @property
    def json(self) -> Any:
        return json.loads(self.out)


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Callable[..., Ran]:
    """`run("source", "need.yaml")` is `springwright source need.yaml`."""

    def _run(*words: str | Path) -> Ran:
        monkeypatch.setattr(sys, "argv", ["springwright", *map(str, words)])
        capsys.readouterr()
        status = 0
        try:
            main()
        except SystemExit as end:
            status = end.code if isinstance(end.code, int) else 0 if end.code is None else 1
        written = capsys.readouterr()
        return Ran(status, written.out, written.err)

    return _run


@pytest.fixture
def bench_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A working folder with a small catalogue and the punch's need in it."""
    for name, text in {
        "catalog/springs/drawer.yaml": SPRINGS,
        "catalog/spools/wire.yaml": SPOOLS,
        "catalog/bench.yaml": BENCH,
        "need.yaml": NEED,
    }.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    monkeypatch.delenv("SPRINGWRIGHT_CATALOG", raising=False)
    monkeypatch.chdir(tmp_path)
    return tmp_path
