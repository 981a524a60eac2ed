"""Every number of a description can be walked back: to its formula and numbers, or to where it stands."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict
from typing import Any

import pytest
from hypothesis import given, settings

from sourcing.figures.working import Working
from sourcing.springs.describe import describe
from sourcing.springs.model import ConicalSpring, Spring, TorsionSpring
from sourcing.springs.workings import workings

from .springs import between, cones, cylinders, extension_springs, torsion_springs

SPRINGS = cylinders() | cones() | torsion_springs() | extension_springs()

ASKED = {"length_mm", "angle_deg", "coil"}
"""What a row of a table is about: asked for, or counted."""


def rows(figures: dict[str, Any]) -> Iterator[tuple[str, float]]:
    """Every number of a description by its name, with where it holds."""
    for name, value in figures.items():
        if name in ("at", "closing"):
            for row in value:
                where = f" of coil {row['coil']}" if "coil" in row else f" at {_asked(row)}"
                inner = row.items() if "coil" in row else ((key, row[key]) for key in row if key not in ASKED)
                yield from ((key + where, each) for key, each in inner if key != "coil" and each is not None)
        elif isinstance(value, int | float) and not isinstance(value, bool):
            yield name, value


def _asked(row: dict[str, Any]) -> str:
    return f"{row['length_mm']:g} mm" if "length_mm" in row else f"{row['angle_deg']:g} deg"


def described(spring: Spring, share: float) -> tuple[dict[str, Any], tuple[Working, ...]]:
    """A description at one length or angle, and its workings."""
    if isinstance(spring, TorsionSpring):
        figures: Any = describe(spring, at_deg=[360.0 * share - 30.0])
    else:
        figures = describe(spring, at_mm=[spring.free_length_mm * share])
    return asdict(figures), workings(spring, figures)


@given(spring=SPRINGS, share=between(0.2, 1.2))
@settings(max_examples=200, deadline=None)
def test_every_number_of_a_description_has_a_working_that_comes_to_it(spring: Spring, share: float) -> None:
    figures, shown = described(spring, share)
    worked = {each.figure + each.where: each.value for each in shown}
    for name, value in rows(figures):
        assert worked[name] == pytest.approx(value, rel=1e-9, abs=1e-12), name


@given(spring=SPRINGS, share=between(0.2, 1.2))
@settings(max_examples=50, deadline=None)
def test_a_working_has_its_numbers_its_unit_and_its_source(spring: Spring, share: float) -> None:
    for each in described(spring, share)[1]:
        assert each.source
        assert each.numbers is None or each.formula is not None
        name = each.figure.removesuffix("_low").removesuffix("_high")
        assert bool(each.unit) == name.endswith(("_mm", "_n", "_mpa", "_hz", "_g", "_deg", "_m3"))


@given(spring=SPRINGS)
@settings(max_examples=50, deadline=None)
def test_the_force_left_by_heat_is_worked_out_from_modulus_and_relaxation(spring: Spring) -> None:
    figures, shown = described(spring, 0.9)
    service, worked = figures["endurance"]["service"], {each.figure: each.value for each in shown}
    for name in ("force_left_low", "force_left_high"):
        assert worked.get(name) == (None if service[name] is None else pytest.approx(service[name], rel=1e-12))
    assert ("relaxed_share" in worked) == (service["force_left_low"] is not None)


@given(spring=cones())
@settings(max_examples=20, deadline=None)
def test_a_figure_outside_its_range_is_marked(spring: ConicalSpring) -> None:
    """An index of a cone's end outside 4 to 20, and so the rate that is worked out with it."""
    figures, shown = described(spring, 0.9)
    rate = next(each for each in shown if each.figure == "rate_n_per_mm")
    indices = [figures[f"mean_diameter_{end}_mm"] / spring.wire_diameter_mm for end in ("small", "large")]
    assert rate.inside == all(4.0 <= index <= 20.0 for index in indices)
