"""Extension springs in a catalogue: what they must have, what must agree, and what is doubted."""

from pathlib import Path

import pytest

from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.stock.reading import read_springs
from tests.files.told import mistakes_of, told, written
from tests.stock.test_springs import springs

SPRING = {
    "id": "P-1",
    "kind": "extension",
    "wire_diameter": "1.0",
    "outside_diameter": "10",
    "free_length": "40",
    "total_coils": "22",
    "hooks": "full-loop",
    "material": "music-wire",
}


def changed(**changes: str | None) -> dict[str, str]:
    return {key: value for key, value in {**SPRING, **changes}.items() if value is not None}


def read(folder: Path, **changes: str | None) -> tuple[ExtensionSpring, list[str]]:
    (stock,), warnings = read_springs(written(folder, springs(changed(**changes))))
    assert isinstance(stock.spring, ExtensionSpring)
    return stock.spring, told(warnings)


def mistakes(folder: Path, **changes: str | None) -> list[str]:
    return told(mistakes_of(read_springs, written(folder, springs(changed(**changes)))))


def test_a_spring_with_its_hooks_tension_and_torn_hooks(tmp_path: Path) -> None:
    spring, warnings = read(tmp_path, initial_tension="2 N", torn_hooks="1")
    assert warnings == []
    assert (spring.mean_diameter_mm, spring.active_coils, spring.total_coils) == (9.0, 22.0, 22.0)
    assert (spring.hooks, spring.initial_tension_n, spring.torn_hooks) == (Hooks.FULL_LOOP, 2.0, 1)


def test_active_coils_may_exceed_those_of_the_body_by_one_for_hooks_bend_too(tmp_path: Path) -> None:
    assert read(tmp_path, active_coils="22.5")[0].active_coils == 22.5
    assert mistakes(tmp_path, active_coils="24") == [
        "10:19: 24 active coils of 22 in the body; expected at most 23: the hooks bend like one coil more at most"
    ]


def test_an_initial_tension_that_such_coils_cannot_hold_is_doubted(tmp_path: Path) -> None:
    (doubt,) = read(tmp_path, initial_tension="12 N")[1]
    assert doubt == (
        "10:22: an initial tension of 12.0 N; expected at most the 4.8 N that coils of index 9 can hold (the greatest "
        "of the sources); the tension or a dimension may be wrong"
    )


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        (
            {"free_length": "23"},
            "6:18: 23 is no longer than the body with its coils closed; expected the length between the insides of the "
            "hooks, more than 23.0 mm",
        ),
        (
            {"hooks": "threaded-plug", "torn_hooks": "1"},
            "10:17: 1 torn hooks of a spring with threaded plugs; expected hooks that are bent from its wire, or no "
            "torn_hooks",
        ),
        (
            {"hooks": None},
            "2:5: no hooks; expected the key hooks with full-loop, centre-loop, half-loop, extended-hook, side-hook or "
            "threaded-plug",
        ),
        (
            {"total_coils": None},
            "2:5: no number of coils; expected total_coils or active_coils, or both where the ends are odd",
        ),
        (
            {"pull_to_fit": "50"},
            "10:5: pull_to_fit belongs to the need of an extension spring; expected a key of this kind of spring, or "
            "another kind",
        ),
        ({"torn_hooks": "3"}, "10:17: “3” is no number of torn hooks; expected 0, 1 or 2"),
    ],
)  # fmt: skip
def test_a_mistake_is_told_at_its_place(tmp_path: Path, changes: dict[str, str | None], said: str) -> None:
    assert mistakes(tmp_path, **changes) == [said]
