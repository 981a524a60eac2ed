"""Whatever happens, a drawer's file is the old one or the new one, and its counts are right.

`python -m tests.stock.faults` runs the full numbers and prints what came of them.
"""

from pathlib import Path

import pytest

from tests.stock import faults


@pytest.mark.parametrize("seed", range(60))
def test_random_changes_keep_every_byte_that_they_do_not_change(tmp_path: Path, seed: int) -> None:
    assert faults.edit_at_random(tmp_path, seed) == 8


def test_a_process_killed_at_any_moment_leaves_the_old_file_or_the_new_one(tmp_path: Path) -> None:
    faults.kill_takes(tmp_path, calls=6)


def test_processes_that_take_at_once_lose_no_count(tmp_path: Path) -> None:
    assert faults.many_at_once(tmp_path, processes=4, times=5) > 0
