"""What the counting of a drawer stands: random edits, processes killed at any moment, many processes at once.

The tests run a few of each. The full numbers, with a table of what came of them, are printed by

    python -m tests.stock.faults

which takes some minutes. Seeds are fixed; the moments of killing are drawn, but when they fall is the machine's.
"""

from __future__ import annotations

import json
import os
import random
import re
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

from sourcing.stock.counting import put, take
from sourcing.stock.reading import read_catalogue

RECORD = (
    ("kind", "compression"), ("wire_diameter", "0.9"), ("outside_diameter", "9.6"), ("free_length", "31"),
    ("total_coils", "9.75"), ("ends", "closed-ground"), ("material", "music-wire"),
)  # fmt: skip
NOTES = ("é", "Fächer 5 µm", "弹簧", "😀 two", "it's", "a - b", "100 %")
COMMENTS = ("# plain", "# ü: {a, [b", "#", "# - id: no", "# on_hand: 7", "# 'quote")
START = 1000


@dataclass
class Slot:
    """Where a count stands in a file; `None` for one that is not written yet."""

    name: str


Piece = str | Slot


def random_file(seed: int, records: int = 6) -> tuple[list[Piece], dict[str, int | None]]:
    """A file of springs in a random way of writing, as pieces of text with slots for the counts, and the counts."""
    draw = random.Random(seed)
    brk = draw.choice(["\n", "\r\n", "\r"])
    pieces: list[Piece] = ["springs:", brk]
    counts: dict[str, int | None] = {}
    indent = " " * draw.choice([0, 2, 4])
    for number in range(records):
        name = f"{draw.choice(['T', 'Ä', 'é 😀'])}-{number}"
        counts[name] = draw.choice([None, draw.randrange(0, 1200)])
        if draw.random() < 0.4:
            pieces.append(draw.choice(["", indent, "   "]) + draw.choice(COMMENTS) + brk)
        if draw.random() < 0.3:
            pieces.append(draw.choice(["", "  ", " "]) + brk)
        pairs = [("id", name), *draw.sample(RECORD, len(RECORD)), ("note", draw.choice(NOTES))]
        if counts[name] is not None:
            pairs.insert(draw.randrange(1, len(pairs)), ("on_hand", ""))
        write = _flow if draw.random() < 0.4 else _block
        pieces += write(draw, indent, brk, pairs, Slot(name))
    if draw.random() < 0.5:
        pieces.append(indent + draw.choice(COMMENTS) + brk)
    if draw.random() < 0.5 and isinstance(last := pieces[-1], str):
        pieces[-1] = last.removesuffix(brk)
    if draw.random() < 0.3:
        pieces.insert(0, "\ufeff")
    return pieces, counts


def _scalar(draw: random.Random, text: str) -> tuple[str, str]:
    """What stands before and behind a value: quotes, or nothing."""
    quote = draw.choice(["", "", "", '"', "'"])
    return (quote, quote) if "'" not in text and "," not in text else ('"', '"')


def _block(draw: random.Random, indent: str, brk: str, pairs: list[tuple[str, str]], slot: Slot) -> list[Piece]:
    dash = indent + "-" + " " * draw.choice([1, 1, 3])
    pieces: list[Piece] = []
    for number, (key, value) in enumerate(pairs):
        before, behind = _scalar(draw, value)
        pieces.append(f"{dash if number == 0 else ' ' * len(dash)}{key}:{' ' * draw.choice([1, 1, 4])}{before}")
        pieces.append(slot if key == "on_hand" else value)
        pieces.append(behind + draw.choice(["", "", "  ", f" {draw.choice(COMMENTS)}"]) + brk)
    return pieces


def _flow(draw: random.Random, indent: str, brk: str, pairs: list[tuple[str, str]], slot: Slot) -> list[Piece]:
    pieces: list[Piece] = [f"{indent}- {{"]
    for number, (key, value) in enumerate(pairs):
        before, behind = _scalar(draw, value)
        pieces.append(f"{'' if number == 0 else draw.choice([', ', ',  ', f',{brk}      '])}{key}: {before}")
        pieces.append(slot if key == "on_hand" else value)
        pieces.append(behind)
    pieces.append(draw.choice(["}", " }", ", }", f"{brk}      }}"]) + draw.choice(["", " # c"]) + brk)
    return pieces


def rendered(pieces: list[Piece], counts: dict[str, int | None]) -> bytes:
    return "".join(str(counts[piece.name]) if isinstance(piece, Slot) else piece for piece in pieces).encode()


def edit_at_random(folder: Path, seed: int, edits: int = 8) -> int:
    """Take and put at random, and after each change compare the file's bytes with what they should be.

    Only a count that was not written before is found by looking: all that was put in must be that key and its value,
    at one place within the pieces that were there. Returns how many changes were compared.
    """
    draw = random.Random(seed)
    pieces, counts = random_file(seed)
    file = folder / f"{seed}.yaml"
    file.write_bytes(rendered(pieces, counts))
    for _ in range(edits):
        name = draw.choice(list(counts))
        before = counts[name]
        number = draw.randrange(1, before + 1) if before and draw.random() < 0.5 else -draw.randrange(1, 300)
        (take if number > 0 else put)(read_catalogue(file), name, str(abs(number)))
        counts[name] = (before or 0) - number
        if before is None:
            pieces = _with_slot(pieces, counts, name, file.read_bytes())
        assert file.read_bytes() == rendered(pieces, counts), (seed, name)
    file.unlink()
    return edits


def _with_slot(pieces: list[Piece], counts: dict[str, int | None], name: str, after: bytes) -> list[Piece]:
    """The pieces with the count of that name among them, where it was put in."""
    at, before_count = _put_in(rendered(pieces, counts).decode(), after.decode(), counts[name])
    for number, piece in enumerate(pieces):
        text = str(counts[piece.name]) if isinstance(piece, Slot) else piece
        if at <= len(text) and isinstance(piece, str):
            return [*pieces[:number], piece[:at] + before_count, Slot(name), piece[at:], *pieces[number + 1 :]]
        at -= len(text)
    raise AssertionError(name)


def _put_in(old: str, new: str, count: int | None) -> tuple[int, str]:
    """Where the one stretch begins without which the new text is the old one, and what it has before the count."""
    for found in re.finditer(rf"((?:, |[\r\n]+ *)on_hand: ){count}", new):
        if new[: found.start()] + new[found.end() :] == old:
            return found.start(), found[1]
    raise AssertionError(new)


CATALOGUE = "springs:\n" + "".join(
    f"  - {{id: A{number}, kind: compression, wire_diameter: 0.9, outside_diameter: 9.6, total_coils: 9.75,\n"
    f"     free_length: {31 + number / 100}, ends: closed, material: music-wire, on_hand: {START}}} # é\n"
    for number in range(200)
)

WARM_TAKE = """
import os, sys
from sourcing.cli import main
def run(*words):
    sys.argv = ["springwright", "stock", *words, "--catalog", os.environ["DRAWER"]]
    try:
        main()
    except SystemExit as end:
        return end.code or 0
    return 0
sys.stdout = open(os.devnull, "w")
run("take", "A100", "1", "--dry-run")
os.write(1, b"ready")
os.read(0, 2)
status = 0
for _ in range(int(os.environ["TIMES"])):
    status = status or run("take", "A100", "1")
sys.exit(status)
"""


def _warm(drawer: Path, times: int = 1) -> subprocess.Popen[bytes]:
    """A process that has loaded all that it needs, and takes as soon as it is told to."""
    process = subprocess.Popen(
        [sys.executable, "-c", WARM_TAKE],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env={**os.environ, "DRAWER": str(drawer), "TIMES": str(times)},
    )
    assert process.stdout is not None
    assert process.stdout.read(5) == b"ready", process.communicate()[1]
    return process


def _tell(process: subprocess.Popen[bytes]) -> None:
    assert process.stdin is not None
    process.stdin.write(b"go")
    process.stdin.flush()


def in_the_drawer(drawer: Path) -> int:
    """How many A100 there are; all else in the file is as it was."""
    raw = drawer.read_bytes()
    lines = raw.decode().split("\n")
    line = next(number for number, line in enumerate(lines) if "id: A100," in line) + 1
    found = re.search(r"on_hand: (\d+)}", lines[line])
    assert found is not None
    lines[line] = lines[line].replace(found[0], f"on_hand: {START}}}")
    assert "\n".join(lines) == CATALOGUE
    return int(found[1])


def kill_takes(folder: Path, calls: int, seed: int = 1) -> Counter[str]:
    """Kill processes at random moments while they take one; the file is the old one or the new one each time.

    Whoever ended well has taken one. What a killed one leaves beside the file does not hinder the next.
    """
    draw = random.Random(seed)
    drawer = folder / "drawer.yaml"
    drawer.write_bytes(CATALOGUE.encode())
    came_of: Counter[str] = Counter()
    longest_s = _time_of_one(drawer)
    left = in_the_drawer(drawer)
    for _ in range(calls):
        process = _warm(drawer)
        _tell(process)
        time.sleep(draw.uniform(0, 1.1 * longest_s))
        process.kill()
        process.communicate()
        now = in_the_drawer(drawer)
        assert now in (left, left - 1), (left, now)
        assert now == left - 1 or process.returncode == -signal.SIGKILL
        ended = "ended" if process.returncode == 0 else "killed"
        came_of[f"{ended}, {'new' if now < left else 'old'}"] += 1
        came_of["of these with something left beside the file"] += len(os.listdir(folder)) > 1
        left = now
    _time_of_one(drawer)
    assert in_the_drawer(drawer) == left - 1
    assert os.listdir(folder) == ["drawer.yaml"]
    return came_of


def _time_of_one(drawer: Path) -> float:
    process = _warm(drawer)
    begun = time.perf_counter()
    _tell(process)
    _, err = process.communicate()
    assert process.returncode == 0, err
    return time.perf_counter() - begun


def many_at_once(folder: Path, processes: int, times: int) -> int:
    """Let processes take one each so many times, all at once; whoever looks meanwhile sees a whole file.

    Returns how often somebody looked.
    """
    drawer = folder / "drawer.yaml"
    drawer.write_bytes(CATALOGUE.encode())
    running = [_warm(drawer, times) for _ in range(processes)]
    for process in running:
        _tell(process)
    looks, seen = 0, START
    while any(process.poll() is None for process in running):
        now = in_the_drawer(drawer)
        assert now <= seen
        seen, looks = now, looks + 1
    for process in running:
        assert process.returncode == 0, process.communicate()[1]
        process.communicate()
    assert in_the_drawer(drawer) == START - processes * times
    assert os.listdir(folder) == ["drawer.yaml"]
    return looks


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        changes = sum(edit_at_random(folder, seed) for seed in range(200))
        print(f"random edits: 200 sequences, {changes} changes, every other byte as it was")
        print(f"killed: {json.dumps(kill_takes(folder, 200), indent=2)}")
        looks = many_at_once(folder, 8, 25)
        print(f"8 processes, 25 takes each: {8 * 25} fewer in the drawer; looked at {looks} times, always whole")


if __name__ == "__main__":
    main()
