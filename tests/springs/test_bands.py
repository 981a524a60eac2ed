"""Every figure of a spring between the bounds that a grade of tolerance sets."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.materials import find
from sourcing.springs import pressed
from sourcing.springs.bands import Band, Toleranced, bands_of, load_band
from sourcing.springs.model import (
    CompressionSpring,
    ConicalSpring,
    Ends,
    ExtensionSpring,
    Hooks,
    Leg,
    TorsionSpring,
)

WIRE = find("music-wire")
assert WIRE is not None
G, E = WIRE.shear_modulus_mpa, WIRE.elastic_modulus_mpa

CYLINDER = CompressionSpring(1.0, 12.0, 32.0, 6.0, 8.0, Ends.CLOSED_GROUND, WIRE, G, E, 2230.0)
CONE = ConicalSpring(0.9, 7.0, 17.0, 15.8, 5.0, 7.0, Ends.CLOSED_GROUND, WIRE, G, E, 2270.0)
EXTENSION = ExtensionSpring(1.0, 9.0, 40.0, 12.0, 12.0, Hooks.FULL_LOOP, WIRE, G, E, 2230.0, initial_tension_n=4.0)
TORSION = TorsionSpring(0.5, 5.0, 6.0, WIRE, E, 2480.0, Leg(20.0), Leg(15.0), 90.0)


def bands(spring: Toleranced, rate: float = 1.0, grade: int = 2) -> dict[str, Band]:
    return {band.figure: band for band in bands_of(spring, rate, grade)}


def reach(band: Band) -> float:
    assert band.low is not None
    assert band.high is not None
    assert band.low + band.high == pytest.approx(2 * band.nominal)
    return band.high - band.nominal


def test_a_compression_spring_has_the_bands_of_en_15800() -> None:
    """For d 1, D 12, n 6 grade 2 gives 0.35 mm on the diameter, 1.57 mm on the length, 12 % on a force of 14.7 N."""
    found = bands(CYLINDER, 0.982591)
    for side in ("outside", "mean", "inside"):
        assert reach(found[f"{side}_diameter_mm"]) == pytest.approx(0.35)
    assert reach(found["free_length_mm"]) == pytest.approx(1.57, abs=0.005)
    assert reach(found["rate_n_per_mm"]) == pytest.approx(0.10 * 0.982591)
    force = load_band(CYLINDER, 17.0, 14.7, 2)
    assert force is not None
    assert reach(force) == pytest.approx(0.12 * 14.7, abs=0.01)
    assert force.source == "EN 15800 (from memory)"


def test_the_solid_length_has_the_wires_tolerance_in_every_coil_and_a_quarter_of_a_coil() -> None:
    assert reach(bands(CYLINDER)["solid_length_mm"]) == pytest.approx((0.12**2 + 0.25**2) ** 0.5)


def test_a_coarser_grade_is_wider_in_every_figure_but_the_wire_and_the_solid_length() -> None:
    for spring in (CYLINDER, CONE, EXTENSION, TORSION):
        fine, coarse = bands(spring, grade=1), bands(spring, grade=3)
        for figure, band in fine.items():
            if band.high is None or coarse[figure].high is None or figure in ("wire_diameter_mm", "solid_length_mm"):
                continue
            assert reach(coarse[figure]) > reach(band), figure


def test_the_larger_end_of_a_cone_has_the_larger_tolerance() -> None:
    found = bands(CONE, pressed.rate_n_per_mm(CONE))
    assert reach(found["outside_diameter_small_mm"]) < reach(found["outside_diameter_large_mm"])


def test_the_force_of_a_cone_follows_from_the_bands_of_its_length_and_its_rate() -> None:
    """Where it is still even: the length's 2.0 mm at the initial rate, and a tenth of the force, both by chance."""
    rate = pressed.rate_n_per_mm(CONE)
    length = reach(bands(CONE, rate)["free_length_mm"])
    force = load_band(CONE, 12.0, pressed.force_n(CONE, 12.0, rate), 2)
    assert force is not None
    by_hand = ((rate * length) ** 2 + (0.10 * force.nominal) ** 2) ** 0.5
    assert reach(force) == pytest.approx(by_hand, rel=0.02)


def test_an_extension_spring_has_the_bands_of_din_2097_and_the_rest_by_jis() -> None:
    found = bands(EXTENSION, 2.0)
    assert found["free_length_mm"].source == "DIN 2097"
    assert reach(found["free_length_mm"]) == pytest.approx(0.9)
    assert reach(found["initial_tension_n"]) == pytest.approx(0.15 * 4.0)
    assert reach(found["rate_n_per_mm"]) == pytest.approx(0.08 * 2.0)


def test_the_length_of_an_extension_spring_of_grade_1_is_by_jis_for_din_2097s_rows_were_not_to_be_had() -> None:
    length = bands(EXTENSION, grade=1)["free_length_mm"]
    assert length.source == "JIS B 2704-2"
    assert reach(length) == pytest.approx(0.6)


def test_no_initial_tension_is_bounded_where_none_is_given() -> None:
    assert "initial_tension_n" not in bands(replace(EXTENSION, initial_tension_n=None))


def test_a_torsion_spring_has_the_bands_of_jis() -> None:
    found = bands(TORSION, 2.0)
    assert {band.source for band in found.values()} == {"EN 10270-1", "JIS B 2704-2"}
    assert reach(found["outside_diameter_mm"]) == reach(found["inside_diameter_mm"]) == pytest.approx(0.3)
    assert reach(found["free_angle_deg"]) == pytest.approx(15.0)
    assert reach(found["leg_1_mm"]) == pytest.approx(0.6)
    assert reach(found["leg_2_mm"]) == pytest.approx(0.5)
    torque = load_band(TORSION, 90.0, 180.0, 2)
    assert torque is not None
    assert reach(torque) == pytest.approx((0.05 * 90 + 10) * 2)


@pytest.mark.parametrize("coils", [2.5, 31.0])
def test_a_handbooks_tenth_stands_in_for_the_torque_where_the_rows_of_jis_end(coils: float) -> None:
    torque = load_band(replace(TORSION, active_coils=coils), 90.0, 180.0, 2)
    assert torque is not None
    assert torque.source == "Machinery's Handbook"
    assert reach(torque) == pytest.approx(18.0)


def test_a_torque_that_unwinds_keeps_its_sign_between_its_bounds() -> None:
    torque = load_band(TORSION, -30.0, -60.0, 2)
    assert torque is not None
    assert torque.low is not None
    assert torque.low < -60.0 < (torque.high or 0.0)


def test_legs_that_are_not_there_and_an_angle_that_is_not_known_have_no_band() -> None:
    found = bands(replace(TORSION, leg_1=None, leg_2=None, free_angle_deg=None))
    assert not {"leg_1_mm", "leg_2_mm", "free_angle_deg", "body_length_mm"} & found.keys()
    assert "body_length_mm" in bands(replace(TORSION, body_length_mm=9.0))


def test_outside_every_table_a_figure_has_no_bounds_and_says_so() -> None:
    odd = bands(replace(CYLINDER, mean_diameter_mm=40.0))
    for figure in ("outside_diameter_mm", "free_length_mm", "rate_n_per_mm", "force_at_solid_n"):
        assert (odd[figure].low, odd[figure].high, odd[figure].source) == (None, None, "not known")
    few = bands(replace(CYLINDER, active_coils=1.0, total_coils=3.0))
    assert few["outside_diameter_mm"].low is not None
    assert few["free_length_mm"].low is few["rate_n_per_mm"].low is few["force_at_solid_n"].low is None


def test_a_force_is_never_below_nothing() -> None:
    weak = load_band(CYLINDER, 31.9, 0.1, 2)
    assert weak is not None
    assert weak.low == 0.0


def test_where_a_spring_cannot_go_there_is_no_band() -> None:
    assert load_band(CYLINDER, 5.0, None, 2) is None


def test_the_angle_and_the_diameter_of_a_torsion_spring_of_one_coil_are_bounded_still_but_not_its_rate() -> None:
    found = bands(replace(TORSION, active_coils=1.0))
    assert reach(found["free_angle_deg"]) == pytest.approx(10.0)
    assert reach(found["outside_diameter_mm"]) == pytest.approx(0.3)
    assert found["rate_n_mm_per_deg"].low is None
