"""Torsion springs: the winding model's hand-checked case 6, and what is said of a spring turned to an angle."""

from __future__ import annotations

from dataclasses import replace
from math import pi, radians, sqrt

import numpy as np
import pytest

from sourcing.materials import find
from sourcing.springs import torsion, turned
from sourcing.springs.describe_torsion import describe_torsion
from sourcing.springs.model import Hand, Leg, LegShape, TorsionSpring

E_MPA = 206_000.0


def printed(value: float, digits: int) -> object:
    """Half a unit of the last digit as the case prints it."""
    return pytest.approx(value, abs=0.5001 * 10.0**-digits)


def spring(**changes: object) -> TorsionSpring:
    """Case 6: d 1.5, D 12, n 5, without legs."""
    wire = find("music-wire")
    assert wire is not None
    plain = TorsionSpring(1.5, 12.0, 5.0, wire, E_MPA, 2080.0, free_angle_deg=90.0, hand=Hand.RIGHT)
    return replace(plain, **changes)  # type: ignore[arg-type]


LEGS = {"leg_1": Leg(30.0), "leg_2": Leg(30.0)}


class TestCase6:
    """d 1.5, D 12, n 5: derived twice and independently."""

    def test_rate_and_torque_at_60_degrees(self) -> None:
        assert turned.rate_n_mm_per_deg(spring()) == printed(4.74, 2)
        assert turned.at_angle(spring(), 60.0).torque_n_mm == printed(284, 0)

    def test_stress_with_and_without_the_factor_for_curvature(self) -> None:
        at = turned.at_angle(spring(), 60.0)
        assert at.bending_stress_mpa == printed(858, 0)
        assert torsion.curvature_factor(8.0) == printed(1.113, 3)
        assert at.corrected_stress_mpa == pytest.approx(955, abs=1.0)  # 1.113, rounded, times 858

    def test_two_legs_of_30_make_it_softer(self) -> None:
        assert turned.rate_n_mm_per_deg(spring(**LEGS)) == printed(4.29, 2)
        assert turned.at_angle(spring(**LEGS), 60.0).torque_n_mm == printed(257, 0)

    def test_the_inside_closes_and_the_body_grows(self) -> None:
        assert spring().inside_diameter_mm == printed(10.5, 1)
        assert turned.inside_diameter_mm(spring(), 60.0) == printed(10.11, 2)
        assert turned.body_length_mm(spring(), 60.0) - turned.body_length_mm(spring()) == printed(0.25, 2)


def test_a_double_torsion_spring_is_two_bodies_that_share_the_torque() -> None:
    one, double = spring(**LEGS), spring(**LEGS, bodies=2)
    assert turned.rate_n_mm_per_deg(double) == pytest.approx(2 * turned.rate_n_mm_per_deg(one))
    at_one, at_double = turned.at_angle(one, 60.0), turned.at_angle(double, 60.0)
    assert at_double.bending_stress_mpa == pytest.approx(at_one.bending_stress_mpa)
    assert turned.body_length_mm(double) == pytest.approx(2 * turned.body_length_mm(one))
    assert turned.wire_length_mm(double) == pytest.approx(2 * turned.wire_length_mm(one) + 2 * pi * 1.5)


def test_the_wire_of_a_spring_is_its_coils_its_legs_and_what_a_hook_takes() -> None:
    bare, legged = turned.wire_length_mm(spring()), turned.wire_length_mm(spring(**LEGS))
    hooked = turned.wire_length_mm(spring(leg_1=Leg(30.0), leg_2=Leg(30.0, LegShape.HOOKED)))
    assert bare == pytest.approx(5 * sqrt((12 * pi) ** 2 + 1.5**2))
    assert legged - bare == pytest.approx(60.0)
    assert hooked - legged == pytest.approx(7 * 1.5)


def test_coils_that_stand_apart_keep_the_body_as_long_as_it_is_until_they_touch() -> None:
    apart = spring(body_length_mm=12.0)
    assert turned.body_length_mm(apart, 180.0) == 12.0
    assert turned.body_length_mm(apart, 1440.0) == pytest.approx((5 + 1 + 4) * 1.5)
    assert turned.pitch_mm(apart) == pytest.approx(2.1)


def test_the_permissible_angle_is_that_of_070_of_the_strength() -> None:
    described = describe_torsion(spring())
    assert described.permissible_angle_deg is not None
    at = turned.at_angle(spring(), described.permissible_angle_deg)
    assert at.bending_stress_mpa == pytest.approx(0.70 * 2080.0)
    assert described.permissible_torque_n_mm == at.torque_n_mm


@pytest.mark.parametrize(
    ("wire", "share", "book"),
    [
        ("stainless-1.4310", 0.60, "a spring institute's handbook"),
        ("phosphor-bronze", 0.60, "a spring institute's handbook"),
        ("EN 10270-2 FDSiCr", 0.70, "EN 13906-3"),
    ],
)
def test_each_group_of_wire_bears_the_share_of_its_own_row(wire: str, share: float, book: str) -> None:
    material = find(wire)
    assert material is not None
    of_it = spring(material=material, tensile_strength_mpa=1800.0)
    described = describe_torsion(of_it, [200.0, 300.0])
    assert described.permissible_stress_mpa == pytest.approx(share * 1800.0)
    assert described.permissible_angle_deg == pytest.approx(
        torsion.torque_for_stress_n_mm(share * 1800.0, 1.5) / described.rate_n_mm_per_deg
    )
    assert f"{book} allows {share * 1800.0:.0f} MPa ({share:.2f} of" in " ".join(described.notes)


def test_a_load_against_the_hand_is_warned_of_and_derated() -> None:
    wound, unwound = (turned.permissible_angle_deg(spring(), 4.74), turned.permissible_unwinding_deg(spring(), 4.74))
    assert wound is not None
    assert unwound is not None
    assert unwound == pytest.approx(0.75 * wound / torsion.curvature_factor(8.0))
    said = describe_torsion(spring(), [-30.0]).notes
    assert "At -30 deg it is loaded against its hand: that opens the coils, where it stands less. A spring of the " in (
        " ".join(said)
    )
    assert not any("take a set" in note for note in said)
    between = -(unwound + wound) / 2
    assert any(
        "take a set" in note and "1092 MPa, corrected" in note for note in describe_torsion(spring(), [between]).notes
    )


def test_wound_too_far_it_takes_a_set_and_further_it_breaks() -> None:
    notes = describe_torsion(spring(), [110.0, 200.0]).notes
    assert any(note.startswith("At 110 deg it will take a set: the stress is 1574 MPa") for note in notes)
    assert any(note.startswith("At 200 deg it will break or bend for good") for note in notes)


@pytest.mark.parametrize(("angle", "says"), [(-1800.0, "straight"), (12_700.0, "closed")])
def test_coils_turned_further_than_they_can_go_have_no_figures(angle: float, says: str) -> None:
    described = describe_torsion(spring(), [angle])
    assert described.at[0].torque_n_mm is None
    assert any(f"cannot be turned to {angle:g} deg: its" in note and says in note for note in described.notes)


def test_what_is_not_known_is_said() -> None:
    notes = " ".join(describe_torsion(spring(hand=None, free_angle_deg=None, tensile_strength_mpa=None)).notes)
    assert "the front wires of a right-hand spring climb to the right" in notes
    assert "The angle between its legs at rest is not known." in notes
    assert "No legs are given" in notes
    assert "how far it may be wound up is not known" in notes
    assert "hand is not known" not in " ".join(describe_torsion(spring(hand=None, bodies=2)).notes)


def test_an_offset_leg_is_said_to_break_at_its_bend() -> None:
    notes = " ".join(describe_torsion(spring(leg_1=Leg(20.0, LegShape.OFFSET), leg_2=Leg(20.0))).notes)
    assert "1.36 times the plain one" in notes


def test_outside_the_standards_range_figures_are_given_and_marked() -> None:
    thick = describe_torsion(spring(mean_diameter_mm=4.0, active_coils=1.0))
    assert thick.rate_n_mm_per_deg > 0.0
    assert any("index 2.67 is outside" in note for note in thick.notes)
    assert any("1 coil is fewer than the 2" in note for note in thick.notes)


def test_the_natural_frequency_is_that_of_coils_as_a_chain_of_turning_masses() -> None:
    """200 rings of the coils' inertia, joined by springs of the body's rate a radian; the lowest of their motions."""
    d, mean, coils, density, pieces = 1.5e-3, 12.0e-3, 5.0, 7850.0, 200
    inertia = density * pi * d**2 / 4 * pi * mean * coils * mean**2 / 4
    rate = torsion.rate_n_mm_per_deg(1.5, 12.0, 5.0, E_MPA) / radians(1.0) * 1e-3
    stiff = rate * pieces * (2 * np.eye(pieces - 1) - np.eye(pieces - 1, k=1) - np.eye(pieces - 1, k=-1))
    lowest = np.linalg.eigvalsh(stiff)[0] / (inertia / pieces)
    by_formula = torsion.natural_frequency_hz(1.5, 12.0, 5.0, E_MPA, density)
    assert by_formula == pytest.approx(sqrt(lowest) / (2 * pi), rel=1e-3)
