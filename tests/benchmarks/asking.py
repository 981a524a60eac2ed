"""Prints what `springwright source` costs over floors: python -m tests.benchmarks.asking [SPRINGS ...].

All are measured in one loop, so that a busy machine slows them alike; medians; only the ratios carry over. Cold is the
first run over a catalogue, with an empty cache folder; warm are those that follow. Bytecode is kept, as it is for
whoever has installed the program.
"""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter

TOP = Path(__file__).parents[2]
NEED = TOP / "examples" / "punch-return" / "need.yaml"
SIZES = (1_000, 10_000, 100_000)
ROUNDS = 5
BARE_TYPER = """
import typer
app = typer.Typer()
@app.command()
def main(word: str = ""):
    pass
app([], standalone_mode=False)
"""
WRITE = """
import json, sys
from pathlib import Path
from tests.benchmarks.catalogues import write_catalogue
Path(sys.argv[3]).write_text(json.dumps(write_catalogue(Path(sys.argv[1]), int(sys.argv[2]))))
"""
LOAD = """
import json, sys, time
text = open(sys.argv[1]).read()
begin = time.perf_counter()
json.loads(text)
print(time.perf_counter() - begin)
"""
PASS, TYPER, WARM, JSON = "python -c pass", "a bare typer command", "warm", "json.loads"


def run(words: Sequence[str], cache: Path) -> tuple[float, float]:
    """Seconds and greatest MiB in memory of one process; its answer is thrown away."""
    begin = perf_counter()
    environment = {**os.environ, "XDG_CACHE_HOME": str(cache), "PYTHONDONTWRITEBYTECODE": ""}
    with subprocess.Popen(
        [sys.executable, *words], cwd=TOP, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    ) as process:
        _, status, usage = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode not in (0, 3):
        raise RuntimeError(f"{' '.join(words)} ended with {process.returncode}")
    return perf_counter() - begin, usage.ru_maxrss / 1024


def said_by(code: str, *words: str) -> str:
    """What a Python process prints.

    All that is large is done in processes of its own: what is started from a large process is counted as large itself.
    """
    command = [sys.executable, "-c", code, *words]
    return subprocess.run(command, cwd=TOP, capture_output=True, text=True, check=True).stdout


def measure(count: int, rounds: int) -> str:
    """One line of the table for a catalogue of so many springs."""
    with TemporaryDirectory() as scratch:
        folder, cache = Path(scratch, "catalog"), Path(scratch, "cache")
        records = str(Path(scratch, "records.json"))
        said_by(WRITE, str(folder), str(count), records)
        ask = ("-m", "sourcing", "source", str(NEED), "--catalog", str(folder), "--json")
        cold_s, cold_mib = run(ask, cache)
        seconds: dict[str, list[float]] = {PASS: [], TYPER: [], WARM: [], JSON: []}
        warm_mib = 0.0
        for _ in range(rounds):
            seconds[PASS].append(run(("-c", "pass"), cache)[0])
            seconds[TYPER].append(run(("-c", BARE_TYPER), cache)[0])
            warm_s, warm_mib = run(ask, cache)
            seconds[WARM].append(warm_s)
            seconds[JSON].append(float(said_by(LOAD, records)))
    floor = {name: median(each) for name, each in seconds.items()}
    figures = (
        floor[WARM] / floor[PASS],
        floor[WARM] / floor[TYPER],
        warm_mib,
        cold_s / floor[PASS],
        cold_s / floor[JSON],
        cold_mib,
    )
    return f"{count:>8}" + "".join(f"{figure:>12.1f}" for figure in figures)


def main(words: Sequence[str]) -> None:
    """The table, a line a size."""
    heads = ("warm/pass", "warm/typer", "warm MiB", "cold/pass", "cold/json", "cold MiB")
    print(f"{'springs':>8}" + "".join(f"{head:>12}" for head in heads))
    for count in [int(word) for word in words] or SIZES:
        print(measure(count, ROUNDS), flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
