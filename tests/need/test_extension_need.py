"""A need of an extension spring: lengths between the insides of the hooks, and every mistake in them."""

from pathlib import Path

import pytest

from sourcing.need.reading import read_need
from sourcing.quantities import Wanted
from sourcing.springs.model import Hooks
from tests.files.told import mistakes_of, told, written

HEAD = "job: x\nkind: extension\n"


def mistakes(folder: Path, text: str) -> list[str]:
    return told(mistakes_of(read_need, written(folder, HEAD + text)))


def test_all_keys_of_an_extension_spring_are_read(tmp_path: Path) -> None:
    path = written(
        tmp_path,
        """
        job: drawer-catch
        kind: extension
        pocket: {bore: 11 mm}
        working:
          - {length: 48 mm, force: 4.2 N}
          - {length: 70 mm, force: 17 N ± 10 %}
        free_length: 45 mm ± 1 mm
        hooks: half-loop
        initial_tension: 2.4 N
        pull_to_fit: 75 mm
        """,
    )
    need = read_need(path)
    assert [point.at_mm for point in need.working] == [70, 48]
    assert need.hooks is Hooks.HALF_LOOP
    assert need.initial_tension_n == Wanted(nominal=2.4)
    assert need.pull_to_fit_mm == 75.0


def test_hooks_may_be_left_out_for_they_may_not_be_known(tmp_path: Path) -> None:
    assert read_need(written(tmp_path, HEAD + "free_length: 45 mm\n")).hooks is None


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            "free_length: 45 mm\nworking: [{length: 40 mm}]\n",
            "4:20: 40 mm is shorter than the free length; expected a working length of 45.0 mm or more, for an "
            "extension spring only pulls (free_length: 45 mm)",
        ),
        (
            "working:\n  - {length: 50 mm, force: 9 N}\n  - {length: 60 mm, force: 4 N}\n",
            "5:28: 4 N at 60 mm, but 9 N at 50 mm; expected a force that rises as an extension spring gets longer",
        ),
        (
            "working: [{length: 50 mm, force: 4 N}]\ninitial_tension: 6 N\n",
            "3:34: 4 N at 50 mm, less than the initial tension of 6 N; expected a force above the initial tension: "
            "below it the coils stay closed",
        ),
        (
            "working: [{length: 50 mm}]\npull_to_fit: 40 mm\n",
            "4:14: pulled to 40 mm to go in, and never shorter than 50.0 mm in use; expected the length it must be "
            "pulled to when it is hooked in, at least its shortest working length",
        ),
        (
            "pocket: {rod: 5 mm}\n",
            "3:10: rod belongs to a compression or a torsion spring; expected a key of this kind of spring, or another "
            "kind",
        ),
        (
            "free_length: 40\nhooks: full loop\n",
            "4:8: “full loop” is no kind of hooks; expected full-loop, centre-loop, half-loop, extended-hook, "
            "side-hook or threaded-plug; did you mean full-loop?",
        ),
        (
            "free_length: 40\nends: closed\n",
            "4:1: ends belongs to a compression spring; expected a key of this kind of spring, or another kind",
        ),
    ],
)
def test_a_mistake_is_told_at_its_place(tmp_path: Path, text: str, said: str) -> None:
    assert mistakes(tmp_path, text) == [said]
