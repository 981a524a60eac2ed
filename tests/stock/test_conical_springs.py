"""Conical springs in a file of springs: a diameter of each end, and every mistake with its whole message."""

from pathlib import Path

import pytest

from sourcing.files.findings import Finding
from sourcing.springs.model import ConicalSpring, Ends
from sourcing.stock.reading import read_springs
from tests.files.told import mistakes_of, told, written
from tests.stock.test_springs import springs

CONE = {
    "id": "K-1",
    "kind": "conical",
    "wire_diameter": "0.9",
    "outside_diameter_small": "7.9",
    "outside_diameter_large": "17.9",
    "free_length": "16",
    "active_coils": "5",
    "ends": "closed",
    "material": "music-wire",
}


def changed(**changes: str | None) -> dict[str, str]:
    return {key: value for key, value in {**CONE, **changes}.items() if value is not None}


def one(folder: Path, **changes: str | None) -> tuple[ConicalSpring, tuple[Finding, ...]]:
    (stock,), warnings = read_springs(written(folder, springs(changed(**changes))))
    assert isinstance(stock.spring, ConicalSpring)
    return stock.spring, warnings


def mistakes(folder: Path, **changes: str | None) -> list[str]:
    return told(mistakes_of(read_springs, written(folder, springs(changed(**changes)))))


def test_a_cone_is_read_with_both_ends(tmp_path: Path) -> None:
    spring, warnings = one(tmp_path)
    assert not warnings
    assert spring.mean_diameter_small_mm == pytest.approx(7.0)
    assert spring.mean_diameter_large_mm == pytest.approx(17.0)
    assert (spring.wire_diameter_mm, spring.free_length_mm, spring.ends) == (0.9, 16, Ends.CLOSED)
    assert (spring.active_coils, spring.total_coils) == (5, 7)
    assert spring.tensile_strength_mpa == 2270  # EN 10270-1 SH, wire of 0.90 mm


@pytest.mark.parametrize(
    "ends",
    [
        {"mean_diameter_small": "7", "mean_diameter_large": "17"},
        {"inside_diameter_small": "6.1", "inside_diameter_large": "16.1"},
        {"inside_diameter_small": "6.1", "outside_diameter_large": "17.9"},
    ],
)
def test_each_end_may_be_measured_outside_inside_or_taken_as_the_mean(tmp_path: Path, ends: dict[str, str]) -> None:
    neither: dict[str, str | None] = {"outside_diameter_small": None, "outside_diameter_large": None}
    spring, _ = one(tmp_path, **neither | ends)
    assert (spring.mean_diameter_small_mm, spring.mean_diameter_large_mm) == (pytest.approx(7), pytest.approx(17))


def test_the_stated_rate_is_held_against_the_initial_one(tmp_path: Path) -> None:
    """81500 0.9^4 / (2 x 5 x 24 x 338) = 0.659 N/mm."""
    assert not one(tmp_path, rate="0.7")[1]
    assert told(one(tmp_path, rate="0.9")[1]) == [
        "11:11: a stated rate of 0.900 N/mm; expected about the 0.659 N/mm that follows from the dimensions; "
        "the seller's figure may be right and a dimension wrong"
    ]


LARGE_KEYS = "outside_diameter_large, mean_diameter_large, inside_diameter_large"

ONE_KEY = {
    "a large end that is the smaller": (
        {"outside_diameter_large": "6 mm"},
        "6:29: a large end of 6 mm, and a small end of 7.9 on line 5; "
        "expected a large end that is larger than the small one",
    ),
    "ends that are alike": (
        {"outside_diameter_large": "7.9 mm"},
        "6:29: a large end of 7.9 mm, and a small end as large on line 5; "
        "expected a large end that is larger, or kind: compression",
    ),
    "coils that overlap at rest and cannot nest": (
        {"outside_diameter_large": "9.9", "free_length": "5 mm"},
        "7:18: its coils would overlap at a free length of 5 mm: each is 0.20 mm smaller in radius than the next, and "
        "wire of 0.90 mm does not go inside it; expected a free length above the solid length, 7.54 mm",
    ),
    "coils that nest, and a spring that is flat at rest": (
        {"free_length": "0.9 mm"},
        "7:18: a free length of 0.9 mm is no longer than the spring pressed flat; "
        "expected a free length above the solid length, 0.90 mm",
    ),
    "no large end": (
        {"outside_diameter_large": None},
        f"2:5: no diameter of the large end; expected exactly one of {LARGE_KEYS}",
    ),
    "two diameters of one end": (
        {"inside_diameter_small": "6.1"},
        "11:5: inside_diameter_small, where outside_diameter_small stands on line 5 already; "
        "expected one diameter only: the others follow from it and the wire",
    ),
    "no room inside the small end": (
        {"outside_diameter_small": "1.8"},
        "5:29: 1.8 leaves no room inside the coil; expected more than twice the wire diameter, 1.80 mm",
    ),
    "a diameter of a cylinder": (
        {"outside_diameter": "9.6"},
        "11:5: outside_diameter belongs to a compression spring; "
        "expected a key of this kind of spring, or another kind",
    ),
    "hooks": (
        {"hooks": "full-loop"},
        "11:5: hooks belongs to an extension spring; expected a key of this kind of spring, or another kind",
    ),
    "no coils": (
        {"active_coils": None},
        "2:5: no number of coils; expected total_coils or active_coils, or both where the ends are odd",
    ),
    "dead coils only": (
        {"active_coils": None, "total_coils": "2"},
        "10:18: 2 coils, of which 2 at closed ends do not act; expected more than 2 coils",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("changes", "message"), ONE_KEY.values(), ids=ONE_KEY)
def test_a_mistake_is_told_at_its_place(tmp_path: Path, changes: dict[str, str | None], message: str) -> None:
    assert mistakes(tmp_path, **changes) == [message]


def test_keys_that_a_cone_must_have_are_told_together(tmp_path: Path) -> None:
    said = told(mistakes_of(read_springs, written(tmp_path, springs({"id": "A", "kind": "conical"}))))
    assert said[0] == (
        "2:5: no wire_diameter, material, free_length or ends; expected all of these keys in a conical spring"
    )
    assert [line.split(";")[0] for line in said[1:]] == [
        "2:5: no diameter of the small end",
        "2:5: no diameter of the large end",
        "2:5: no number of coils",
    ]


def test_a_kind_that_is_misspelt_brings_no_mistakes_about_its_other_keys(tmp_path: Path) -> None:
    assert mistakes(tmp_path, kind="conicl") == [
        "3:11: “conicl” is no kind of spring; expected compression, conical, extension or torsion; "
        "did you mean conical?"
    ]
