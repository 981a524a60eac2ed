"""`describe` of a conical spring: its keys, its progressive figures, and the notes that say why."""

from __future__ import annotations

from dataclasses import fields, replace
from math import isfinite

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.materials import find
from sourcing.springs.compression import curvature_factor, shear_stress_mpa
from sourcing.springs.conical import closing_force_n
from sourcing.springs.describe_conical import Closing, ConicalDescription, describe_cone
from sourcing.springs.model import ConicalSpring, Ends

WIRE = find("music-wire")
assert WIRE is not None

FLAT = ConicalSpring(0.9, 7.0, 17.0, 16.0, 5.0, 5.0, Ends.OPEN, WIRE, 81_500.0, 206_000.0, 2270.0)
"""Telescopes: each turn is 1 mm smaller in radius."""

STACKED = ConicalSpring(1.0, 8.0, 14.0, 20.0, 6.0, 8.0, Ends.CLOSED_GROUND, WIRE, 81_500.0, 206_000.0, 2230.0)
"""Each turn is 0.5 mm smaller in radius, so the solid pitch is sqrt(1 - 0.25) = 0.866: solid at 6 x 0.866 + 2."""


def notes_with(word: str, described: ConicalDescription) -> list[str]:
    return [note for note in described.notes if word in note]


def test_the_fields_are_the_keys_of_the_command() -> None:
    """The contract's keys for a conical spring (all but the id, which is the record's), and six more."""
    contract = (
        "kind material wire_diameter_mm mean_diameter_small_mm mean_diameter_large_mm outside_diameter_small_mm"
        " outside_diameter_large_mm inside_diameter_small_mm inside_diameter_large_mm spring_index"
        " active_coils total_coils free_length_mm solid_length_mm pitch_mm rate_n_per_mm force_at_solid_n"
        " shear_stress_at_solid_mpa tensile_strength_mpa wire_length_mm mass_g natural_frequency_hz"
        " buckling_length_mm closing at notes"
    )
    more = {
        *("diameter_growth_small_mm", "diameter_growth_large_mm", "telescopes", "even_down_to_mm", "end_1", "end_2"),
        "endurance",
    }
    assert {field.name for field in fields(ConicalDescription)} == {*contract.split(), *more}
    assert [field.name for field in fields(Closing)] == ["coil", "force_n", "length_mm"]


@pytest.mark.parametrize(("spring", "solid"), [(FLAT, 0.9), (STACKED, 6 * 0.75**0.5 + 2.0)])
def test_the_coils_close_one_by_one_down_to_the_solid_length(spring: ConicalSpring, solid: float) -> None:
    described = describe_cone(spring)
    assert described.solid_length_mm == pytest.approx(solid)
    assert [closing.coil for closing in described.closing] == list(range(1, len(described.closing) + 1))
    forces = [closing.force_n for closing in described.closing]
    lengths = [closing.length_mm for closing in described.closing]
    assert forces == sorted(forces)
    assert lengths == sorted(lengths, reverse=True)
    assert lengths[-1] == pytest.approx(solid)
    assert forces[-1] == pytest.approx(described.force_at_solid_n)


def test_a_coil_has_closed_when_its_smaller_end_has() -> None:
    """The second coil of five, 17 to 7 mm, ends at 13 mm; each turn closes (16 - 0.9)/5 mm."""
    second = describe_cone(FLAT).closing[1]
    assert second.force_n == pytest.approx(closing_force_n(0.9, 13.0, 15.1 / 5, 81_500.0))


def test_a_part_of_a_coil_closes_last() -> None:
    described = describe_cone(replace(FLAT, active_coils=4.5, total_coils=4.5))
    assert [closing.coil for closing in described.closing] == [1, 2, 3, 4, 5]
    assert described.closing[-1].force_n == pytest.approx(described.force_at_solid_n)


def test_the_force_at_a_length_is_that_of_the_progressive_curve() -> None:
    described = describe_cone(FLAT, [15.0, 2.0])
    above, below = described.at
    assert above.force_n == pytest.approx(described.rate_n_per_mm * 1.0)
    assert below.force_n is not None
    assert below.force_n > 1.5 * described.rate_n_per_mm * 14.0
    assert above.length_mm > described.even_down_to_mm > below.length_mm


def test_the_stress_is_that_of_the_largest_open_coil() -> None:
    described = describe_cone(FLAT, [15.0, 0.9])
    above, solid = described.at
    assert above.force_n is not None
    assert solid.force_n is not None
    assert above.shear_stress_mpa == pytest.approx(shear_stress_mpa(above.force_n, 0.9, 17.0))
    assert solid.shear_stress_mpa == pytest.approx(shear_stress_mpa(solid.force_n, 0.9, 7.0))
    assert solid.shear_stress_mpa == pytest.approx(described.shear_stress_at_solid_mpa)
    assert solid.corrected_stress_mpa == pytest.approx(
        curvature_factor(7.0 / 0.9) * described.shear_stress_at_solid_mpa
    )


def test_longer_than_free_and_shorter_than_solid_are_said() -> None:
    described = describe_cone(STACKED, [21.0, 7.0])
    assert [at.force_n for at in described.at] == [0.0, None]
    assert notes_with("loose", described) == ["At 21 mm it is loose: it is 20 mm long at rest."]
    assert notes_with("pressed to", described) == ["It cannot be pressed to 7 mm: it is solid at 7.2 mm."]


def test_where_the_rate_ends_is_said() -> None:
    described = describe_cone(STACKED)
    assert notes_with("rate holds", described) == [
        f"The rate holds down to {described.even_down_to_mm:.2f} mm; below, the coils close one by one, the largest "
        "first, and it stiffens."
    ]


@pytest.mark.parametrize(("wire", "said"), [(0.9, False), (0.95, True), (1.0, True), (1.01, False)])
def test_turns_that_might_ride_up_on_each_other_are_said(wire: float, said: bool) -> None:
    """Each turn 1 mm smaller in radius: from 1.1 wire diameters they go inside each other, below 1 they never do."""
    assert bool(notes_with("ride up", describe_cone(replace(FLAT, wire_diameter_mm=wire)))) is said


def test_end_coils_that_may_stand_on_the_next_are_said() -> None:
    assert not notes_with("lie flat", describe_cone(FLAT))
    closed = describe_cone(replace(FLAT, ends=Ends.CLOSED, total_coils=7.0))
    assert notes_with("lie flat", closed) == [
        "Pressed solid it is taken to lie flat, 0.9 mm high; an end coil that stands on the next one instead makes it "
        "a wire higher."
    ]


def test_an_index_outside_4_to_20_is_said_of_the_end_that_has_it() -> None:
    described = describe_cone(replace(FLAT, mean_diameter_small_mm=3.0, mean_diameter_large_mm=19.0))
    assert [note.split(" is outside")[0] for note in notes_with("spring index", described)] == [
        "The spring index 3.33 of the small end",
        "The spring index 21.1 of the large end",
    ]


def test_a_slender_cone_is_bounded_by_a_cylinder_as_slim_as_its_small_end() -> None:
    described = describe_cone(replace(STACKED, free_length_mm=60.0))
    assert described.buckling_length_mm is not None
    assert notes_with("buckle", described) == [
        "With no bore or rod to guide it, a cylinder as slim as its small end would buckle below "
        f"{described.buckling_length_mm:.2f} mm; the cone is steadier, by how much is not known."
    ]
    assert describe_cone(STACKED).buckling_length_mm is None


def test_pressed_solid_beyond_its_strength_it_takes_a_set() -> None:
    assert notes_with("take a set", describe_cone(replace(STACKED, free_length_mm=45.0)))
    assert not notes_with("take a set", describe_cone(STACKED))


@settings(deadline=None, derandomize=True)
@given(
    st.floats(0.1, 5.0), st.floats(2.0, 25.0), st.floats(1.001, 4.0), st.floats(0.5, 500.0), st.floats(0.5, 40.0),
    st.floats(0.0, 4.0), st.sampled_from(Ends), st.floats(-10.0, 600.0),
)  # fmt: skip
def test_a_description_is_never_nan_and_every_gap_in_it_is_explained(
    d: float, index: float, widening: float, free: float, active: float, dead: float, ends: Ends, at: float
) -> None:
    spring = replace(
        FLAT, wire_diameter_mm=d, mean_diameter_small_mm=d * index, mean_diameter_large_mm=d * index * widening,
        free_length_mm=free, active_coils=active, total_coils=active + dead, ends=ends,
    )  # fmt: skip
    described = describe_cone(spring, [at])
    numbers = [getattr(described, field.name) for field in fields(described)]
    assert all(isfinite(number) for number in numbers if isinstance(number, float))
    (point,) = described.at
    assert (point.force_n is None) == bool(notes_with("cannot be pressed to", described))
    if point.force_n is not None:
        assert 0.0 <= point.force_n <= described.force_at_solid_n * (1.0 + 1e-9) + 1e-9
    assert described.closing[-1].length_mm >= min(described.solid_length_mm, free) * (1.0 - 1e-9)
