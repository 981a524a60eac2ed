"""Laws of a pressed spring of any shape: made wider, worked between two lengths, and believed to be stiffer."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.materials import find
from sourcing.springs import conical, pressed
from sourcing.springs.compression import curvature_factor, shear_stress_mpa
from sourcing.springs.conical_lengths import cone_of
from sourcing.springs.jis_tolerances import jis_covers, torsion_torque_tolerance_n_mm
from sourcing.springs.model import CompressionSpring, ConicalSpring, Ends
from sourcing.springs.strength import Place, permissible

WIRE = find("music-wire")
assert WIRE is not None
G_MPA = 81_500.0

CYLINDER = CompressionSpring(1.0, 12.0, 40.0, 6.0, 8.0, Ends.CLOSED_GROUND, WIRE, G_MPA, 206_000.0, None)
CONE = ConicalSpring(1.0, 8.0, 14.0, 40.0, 6.0, 8.0, Ends.CLOSED_GROUND, WIRE, G_MPA, 206_000.0, None)


@given(st.floats(-1.0, 5.0))
def test_made_wider_every_coil_is(off_mm: float) -> None:
    assert pressed.wider_by(CYLINDER, off_mm) == replace(CYLINDER, mean_diameter_mm=12.0 + off_mm)
    assert pressed.wider_by(CONE, off_mm) == replace(
        CONE, mean_diameter_small_mm=8.0 + off_mm, mean_diameter_large_mm=14.0 + off_mm
    )


@given(st.floats(21.0, 39.0), st.floats(0.0, 1.0))
def test_worked_between_two_lengths_a_cylinder_has_the_stress_of_each(long_mm: float, share: float) -> None:
    short_mm = 20.0 + share * (long_mm - 20.0)
    rate = pressed.rate_n_per_mm(CYLINDER)
    low, high = pressed.corrected_range_mpa(CYLINDER, long_mm, short_mm, rate)
    for stress, length in ((low, long_mm), (high, short_mm)):
        plain = shear_stress_mpa(rate * (40.0 - length), 1.0, 12.0)
        assert stress == pytest.approx(curvature_factor(12.0) * plain)


@given(st.floats(0.5, 2.0), st.floats(0.05, 0.95))
def test_a_cone_believed_to_be_stiffer_closes_its_coils_at_the_same_length(stiffer: float, share: float) -> None:
    """The coil that is stressed most depends on how far it is pressed, and not on the rate that is believed."""
    cone = cone_of(CONE)
    length = 40.0 - share * cone.travel_to_solid_mm
    by_dimensions = conical.force_n((cone,), share * cone.travel_to_solid_mm)
    mean = conical.largest_open_diameter_mm(cone, by_dimensions)
    rate = stiffer * pressed.rate_n_per_mm(CONE)
    assert pressed.force_n(CONE, length, rate) == pytest.approx(stiffer * by_dimensions)
    assert pressed.stress_mpa(CONE, length, rate) == pytest.approx(
        stiffer * shear_stress_mpa(by_dimensions, 1.0, mean), rel=1e-6
    )


@pytest.mark.parametrize(
    ("kind", "index", "coils", "covered"),
    [
        ("compression", 4.0, 3.0, True),
        ("compression", 3.9, 3.0, False),
        ("compression", 22.0, 3.0, True),
        ("compression", 22.1, 3.0, False),
        ("extension", 9.0, 2.9, False),
        ("torsion", 9.0, 1.0, True),
    ],
)
def test_jis_covers_an_index_of_4_to_22_and_three_coils(kind: str, index: float, coils: float, covered: bool) -> None:
    assert jis_covers(kind, index, coils) is covered


@pytest.mark.parametrize("angle", [90.0, -90.0])
def test_the_torque_is_held_by_a_share_of_the_angle_and_some_degrees_either_way(angle: float) -> None:
    """5 % of the angle and 10 degrees, at 2 N mm a degree: grade 2, 3 to 10 coils."""
    assert torsion_torque_tolerance_n_mm(angle, 2.0, 5.0, 2) == pytest.approx((0.05 * 90.0 + 10.0) * 2.0)


def test_a_recalled_limit_is_told_from_a_read_one() -> None:
    assert permissible(Place.WOUND_UP, WIRE).from_memory
    assert not permissible(Place.LENGTH, WIRE).from_memory
