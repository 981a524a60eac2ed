"""The thread on which the coils of an extension spring just lie, held against the geometry of its flanks."""

from __future__ import annotations

from math import cos, radians, sin, tan

import pytest

from sourcing.springs.plug_thread import over_crests_mm, pitch_diameter_mm

FLANK = radians(30.0)


@pytest.mark.parametrize(("inside_mm", "wire_mm"), [(6.484, 1.0), (4.0, 0.8), (12.0, 1.25)])
def test_a_wire_in_the_groove_touches_both_flanks_below_the_crests(inside_mm: float, wire_mm: float) -> None:
    """At the pitch diameter groove and ridge are each half a pitch wide; a flank is then as far from the middle of the
    wire as the wire is thick, and touches it where there still is a flank."""
    middle_mm, pitch_mm = (inside_mm + wire_mm) / 2.0, wire_mm
    half_groove_mm = pitch_mm / 4.0 + (middle_mm - pitch_diameter_mm(inside_mm, wire_mm) / 2.0) * tan(FLANK)
    assert half_groove_mm * cos(FLANK) == pytest.approx(wire_mm / 2.0)
    touches_mm = 2.0 * (middle_mm - wire_mm / 2.0 * sin(FLANK))
    assert inside_mm < touches_mm < over_crests_mm(inside_mm, wire_mm) < inside_mm + wire_mm


def test_wire_of_a_pitch_goes_onto_a_standard_thread_of_that_pitch() -> None:
    """7 x 1: pitch diameter 6.350 mm (ISO 724, from memory), over wires of 1 mm M = 6.350 − 0.86603 + 3 = 8.484 mm."""
    over_wires_mm = 6.350 - 0.86603 + 3.0
    inside_mm = over_wires_mm - 2.0
    assert pitch_diameter_mm(inside_mm, 1.0) == pytest.approx(6.350, abs=5e-4)
    assert over_crests_mm(inside_mm, 1.0) == pytest.approx(7.0, abs=5e-4)
