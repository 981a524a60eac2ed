"""Whose tolerance bounds a figure is told, what was recalled too, and what is bounded by nobody."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.springs import pressed
from sourcing.springs.bands import GRADES, load_band, torque_band

from .test_bands import CONE, CYLINDER, EXTENSION, TORSION, bands


def test_there_are_three_grades() -> None:
    assert GRADES == (1, 2, 3)


@pytest.mark.parametrize(
    ("mean_mm", "grade", "source"),
    [
        (63.0, 1, "EN 15800"),
        (63.5, 1, "EN 15800 (from memory)"),
        (63.5, 3, "EN 15800 (from memory)"),
        (63.5, 2, "EN 15800"),
    ],
)
def test_of_the_coil_diameter_grades_1_and_3_are_recalled_above_63_mm(mean_mm: float, grade: int, source: str) -> None:
    large = replace(CYLINDER, wire_diameter_mm=8.0, mean_diameter_mm=mean_mm, free_length_mm=200.0)
    assert bands(large, grade=grade)["mean_diameter_mm"].source == source


@pytest.mark.parametrize(
    ("spring", "figure", "source"),
    [
        (CYLINDER, "wire_diameter_mm", "EN 10270-1"),
        (CYLINDER, "outside_diameter_mm", "EN 15800"),
        (CYLINDER, "free_length_mm", "EN 15800 (from memory)"),
        (CYLINDER, "force_at_solid_n", "EN 15800 (from memory)"),
        (CYLINDER, "rate_n_per_mm", "JIS B 2704-2"),
        (CYLINDER, "solid_length_mm", "EN 10270-1, JIS B 2704-2"),
        (CONE, "force_at_solid_n", "length and rate"),
        (EXTENSION, "inside_diameter_mm", "DIN 2097"),
        (replace(TORSION, body_length_mm=6.0), "body_length_mm", "JIS B 2704-2"),
    ],
)
def test_each_figure_says_whose_tolerance_it_has(spring: object, figure: str, source: str) -> None:
    assert bands(spring)[figure].source == source  # type: ignore[arg-type]


def test_loads_are_called_what_a_description_calls_them() -> None:
    loads = [
        load_band(CYLINDER, 20.0, 12.0, 2),
        load_band(EXTENSION, 45.0, 12.0, 2),
        load_band(CONE, 12.0, 2.0, 2),
        load_band(TORSION, 45.0, 90.0, 2),
        torque_band(replace(TORSION, active_coils=2.5), 45.0, 90.0, 2),
    ]
    assert [band and band.figure for band in loads] == ["force_n", "force_n", "force_n", "torque_n_mm", "torque_n_mm"]
    assert loads[1] is not None
    assert loads[1].source == "DIN 2097 (from memory)"


def test_what_it_cannot_do_and_what_is_nothing_has_no_band() -> None:
    assert load_band(CYLINDER, 1.0, None, 2) is None
    at_rest = torque_band(TORSION, 0.0, 0.0, 2)
    assert (at_rest.figure, at_rest.low, at_rest.high, at_rest.source) == ("torque_n_mm", None, None, "not known")


@pytest.mark.parametrize(
    "changes", [{"active_coils": 1.5}, {"mean_diameter_small_mm": 1.0, "mean_diameter_large_mm": 2.0}]
)
def test_the_force_of_a_cone_is_bounded_only_where_both_its_length_and_its_rate_are(changes: dict[str, float]) -> None:
    small = replace(CONE, **changes)
    force = load_band(small, 14.0, pressed.force_n(small, 14.0, 1.0), 2)
    assert force is not None
    assert (force.low, force.high, force.source) == (None, None, "not known")


def test_no_figure_falls_below_nothing_but_a_torque_may() -> None:
    assert bands(replace(EXTENSION, initial_tension_n=0.0))["initial_tension_n"].low == 0.0
    unwound = load_band(TORSION, -90.0, -180.0, 2)
    assert unwound is not None
    assert unwound.low is not None
    assert unwound.high is not None
    assert unwound.low < -180.0 < unwound.high
