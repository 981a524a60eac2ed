"""One process at a time changes a file; who holds it and since when is told; a dead one's lock is taken over."""

import os
import re
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from sourcing.files.findings import Mistakes
from sourcing.files.lock import lock_beside, locked
from tests.files.told import told

HOLD = """
import sys
from sourcing.files.lock import locked
with locked(sys.argv[1], "drawer.yaml"):
    print("held", flush=True)
    sys.stdin.readline()
"""


@pytest.fixture
def target(tmp_path: Path) -> Path:
    path = tmp_path / "drawer.yaml"
    path.touch()
    return path


def holder(target: Path) -> "subprocess.Popen[str]":
    process = subprocess.Popen(
        [sys.executable, "-c", HOLD, str(target)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    assert process.stdout is not None
    assert process.stdout.readline() == "held\n"
    return process


def test_who_holds_a_file_and_since_when_is_told(target: Path) -> None:
    with holder(target) as process:
        with pytest.raises(Mistakes) as raised, locked(str(target), "drawer.yaml", wait_s=0):
            raise AssertionError
        process.communicate("\n")
    (line,) = told(raised.value.findings)
    assert re.fullmatch(
        rf"\S+ \(process {process.pid}\) is changing it since \d\d:\d\d:\d\d, for \d s; "
        "expected a second try when it is done",
        line,
    )


def test_whoever_waits_gets_the_file_when_its_holder_is_done(target: Path) -> None:
    with holder(target) as process:
        timer = threading.Timer(0.1, lambda: process.communicate("\n"))
        timer.start()
        with locked(str(target), "drawer.yaml", wait_s=30):
            timer.join()
            assert process.returncode == 0


def test_the_lock_of_a_process_that_was_killed_is_taken_over(target: Path) -> None:
    with holder(target) as process:
        process.kill()
    assert Path(lock_beside(str(target))).exists()
    with locked(str(target), "drawer.yaml", wait_s=0):
        pass
    assert not Path(lock_beside(str(target))).exists()


def test_a_note_that_nobody_can_read_is_no_reason_to_stop(target: Path) -> None:
    with holder(target) as process:
        Path(lock_beside(str(target))).write_bytes(b"\xff\x1b[2J")
        with pytest.raises(Mistakes) as raised, locked(str(target), "drawer.yaml", wait_s=0):
            raise AssertionError
        process.communicate("\n")
    assert told(raised.value.findings) == ["another process is changing it; expected a second try when it is done"]


def test_threads_of_one_process_wait_for_each_other_too(target: Path) -> None:
    inside: list[int] = []

    def work(number: int) -> None:
        with locked(str(target), "drawer.yaml"):
            inside.append(number)
            assert len(inside) == 1
            inside.remove(number)

    threads = [threading.Thread(target=work, args=(number,)) for number in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert not Path(lock_beside(str(target))).exists()


def test_a_disk_too_full_for_the_note_still_gives_the_lock_and_leaves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> int:
        raise OSError(28, "No space left on device")

    target = tmp_path / "drawer.yaml"
    target.write_text("springs: []\n")
    monkeypatch.setattr("os.pwrite", full)
    with locked(str(target), str(target)):
        assert len(os.listdir(tmp_path)) == 2
    assert os.listdir(tmp_path) == ["drawer.yaml"]
