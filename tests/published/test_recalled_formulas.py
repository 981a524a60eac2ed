"""A formula whose source was recalled says so, one that was read does not; and each says where it holds."""

from __future__ import annotations

import importlib
import pkgutil

import pytest

import sourcing.springs
from sourcing.figures.record import Formula, formula_of, formulas
from sourcing.springs import compression, extension, fatigue, hooks, initial_tension, torsion

for _module in pkgutil.iter_modules(sourcing.springs.__path__):
    importlib.import_module(f"sourcing.springs.{_module.name}")

RECALLED = ("EN 13906-2", "EN 13906-3", "EN 15800", "Shigley", "Wahl", "Bhandari")
"""Works of which no page with a formula was read (of EN 15800: the force's and the length's)."""

READ = ("geometry", "statics", "derived", "Machinery's Handbook", "JIS B 2704-2", "ASTM", "two spring stockists")
READ_ALL_THE_SAME = {"wahl_factor", "ultimate_shear_mpa", "coil_diameter_tolerance_mm"}
"""Of these works, what a page or a solution prints."""

RECALLED_OF_EN_13906_1 = {
    "force_n",
    "shear_stress_mpa",
    "corrected_stress_mpa",
    "worked_stress_mpa",
    "buckling_length_mm",
    "modulus_at_mpa",
}

OURS = [each for each in formulas() if each.function.__module__.startswith("sourcing.springs.")]


def named(record: Formula) -> str:
    return f"{record.function.__module__.rsplit('.', 1)[-1]}.{record.function.__name__}"


@pytest.mark.parametrize("record", [each for each in OURS if each.source.startswith(RECALLED)], ids=named)
def test_a_formula_of_a_work_that_was_not_read_is_from_memory(record: Formula) -> None:
    read = record.function.__name__ in READ_ALL_THE_SAME
    assert record.from_memory is not read
    assert ("(from memory)" in record.cited) is not read


@pytest.mark.parametrize("record", [each for each in OURS if each.source.startswith(READ)], ids=named)
def test_what_was_read_or_worked_out_here_is_not_from_memory(record: Formula) -> None:
    assert not record.from_memory


@pytest.mark.parametrize("record", [each for each in OURS if each.source.startswith("EN 13906-1")], ids=named)
def test_of_the_standard_for_compression_springs_a_makers_sheet_gave_all_but_six(record: Formula) -> None:
    assert record.from_memory is (record.function.__name__ in RECALLED_OF_EN_13906_1)


@pytest.mark.parametrize(
    ("function", "holds"),
    [
        (compression.rate_n_per_mm, ["spring index 4 to 20", "active coils of 2 or more"]),
        (extension.rate_n_per_mm, ["spring index 4 to 20", "active coils of 3 or more"]),
        (torsion.rate_n_mm_per_deg, ["spring index 4 to 20", "active coils of 2 or more"]),
        (initial_tension.initial_stress_wound_mpa, ["spring index 4 to 20"]),
        (initial_tension.initial_stress_preferred_mpa, ["spring index 4 to 16"]),
        (hooks.loop_factor, ["index of the loop of 2 or more"]),
        (hooks.bend_factor, ["index of the bend of 2 or more"]),
        (fatigue.reversed_mpa, ["mean stress over ultimate 0 to 1"]),
    ],
)
def test_a_formula_says_where_it_holds(function: object, holds: list[str]) -> None:
    assert [str(each) for each in formula_of(function).holds] == holds  # type: ignore[arg-type]
