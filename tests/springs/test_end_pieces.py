"""Ends that hook into a part: the wire in them."""

from __future__ import annotations

from dataclasses import replace
from math import pi, radians, tan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.materials import find
from sourcing.springs.describe import describe
from sourcing.springs.end_pieces import bend_reaches_mm, bent_wire_mm, least_length_mm, wire_of_ends_mm
from sourcing.springs.model import CompressionSpring, ConicalSpring, EndPiece, Ends, EndShape
from sourcing.springs.workings import workings

WIRE = find("music-wire")
assert WIRE is not None
G, E = WIRE.shear_modulus_mpa, WIRE.elastic_modulus_mpa
CYLINDER = CompressionSpring(1.0, 12.0, 32.0, 6.0, 8.0, Ends.CLOSED, WIRE, G, E, 2230.0)
CONE = ConicalSpring(0.9, 7.0, 17.0, 15.8, 5.0, 7.0, Ends.CLOSED, WIRE, G, E, 2270.0)
TANG = EndPiece(EndShape.TANG_IN, 4.0, 90.0)
LEG = EndPiece(EndShape.LEG, 12.0, 0.0)

steady = settings(deadline=None, derandomize=True)


def test_a_bend_of_a_right_angle_saves_wire_against_its_corner() -> None:
    """Radius of the centre 1.5 wires: two tangents of it less, and a quarter turn of it more."""
    assert bent_wire_mm(4.0, 1.0, 90.0, 1.0) == pytest.approx(4.0 - 2 * 1.5 + 1.5 * pi / 2)
    assert bend_reaches_mm(1.0, 90.0, 1.0) == pytest.approx(1.5)


def test_a_straight_leg_takes_its_own_length() -> None:
    assert bent_wire_mm(12.0, 1.0, 0.0, 1.0) == 12.0
    assert least_length_mm(0.0, 1.0) == 0.0


@pytest.mark.parametrize("spring", [CYLINDER, CONE], ids=lambda spring: spring.kind)
def test_the_wire_and_the_mass_of_a_spring_count_both_ends(spring: CompressionSpring | ConicalSpring) -> None:
    plain = describe(spring)
    hooked = describe(replace(spring, end_1=TANG, end_2=LEG))
    ends_mm = wire_of_ends_mm(replace(spring, end_1=TANG, end_2=LEG))
    assert wire_of_ends_mm(spring) == 0.0
    assert hooked.wire_length_mm - plain.wire_length_mm == pytest.approx(ends_mm)
    assert hooked.mass_g / plain.mass_g == pytest.approx(hooked.wire_length_mm / plain.wire_length_mm)
    assert hooked.rate_n_per_mm == plain.rate_n_per_mm


@pytest.mark.parametrize("spring", [CYLINDER, CONE], ids=lambda spring: spring.kind)
def test_the_workings_of_the_wire_count_the_ends_too(spring: CompressionSpring | ConicalSpring) -> None:
    hooked = replace(spring, end_1=TANG, end_2=LEG)
    described = describe(hooked)
    of_wire = {each.name: each.value for each in workings(hooked, described) if each.figure == "wire_length_mm"}
    assert list(of_wire) == ["wire length of its coils", "wire length of end 1", "wire length of end 2", "wire length"]
    assert of_wire["wire length"] == pytest.approx(described.wire_length_mm)
    assert of_wire["wire length"] == pytest.approx(sum(list(of_wire.values())[:3]))


@steady
@given(st.floats(0.1, 3.0), st.floats(1.0, 4.0), st.floats(1.0, 150.0), st.floats(0.0, 50.0))
def test_the_wire_is_arc_and_straight_less_what_the_bend_takes_of_the_coil(
    wire: float, radius: float, angle: float, beyond: float
) -> None:
    """The bend begins on the coil as far before the corner as it ends beyond it."""
    centre = radius + wire / 2
    reach = centre * tan(radians(angle) / 2)
    assert bend_reaches_mm(radius, angle, wire) == pytest.approx(reach)
    arc = centre * radians(angle)
    assert bent_wire_mm(reach + beyond, radius, angle, wire) == pytest.approx(arc + beyond - reach)


@steady
@given(st.floats(0.1, 3.0), st.floats(0.0, 149.0), st.floats(0.1, 1.0))
def test_a_sharper_bend_of_the_same_piece_takes_less_wire(wire: float, angle: float, more: float) -> None:
    assert bent_wire_mm(30.0, wire, angle + more, wire) < bent_wire_mm(30.0, wire, angle, wire)
