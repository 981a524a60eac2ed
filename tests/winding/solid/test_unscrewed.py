"""A coil that is unscrewed off its mandrel, with the pitch that it has once it has opened, against the mesh."""

from __future__ import annotations

import re
from math import pi, tau

import numpy as np
import pytest

from sourcing.springs.geometry import turn_length_mm
from sourcing.springs.model import Hand
from sourcing.winding.solid.coil import LaidCoil, Station, coil_of
from sourcing.winding.solid.in_steps import comes_off
from sourcing.winding.solid.release import release_of
from sourcing.winding.solid.rings import mesh_of
from sourcing.winding.solid.shape import MandrelSolid, solid_of
from sourcing.winding.solid.unwound import binds_by_mm, play_in_groove_mm
from tests.winding.cases import BENCH, plan

from .plans import random_plans, solid_for

PITCH_OPENS = 0.3
"""Of what the diameter opens (the winding model's, assumed there)."""

NEAR = 0.02
"""What lies nearer to touching than so many wires is not told apart on a mesh."""


def coil(wire_mm: float, on_mm: float, opening_mm: float, turns: float, pitch: float, hand: Hand) -> LaidCoil:
    """Open turns at a pitch of so many wires; its radius opens by so much, each figure known exactly."""
    radii = on_mm / 2, on_mm / 2 + opening_mm, on_mm / 2 + opening_mm
    climb_mm = pitch * wire_mm
    stations = (Station(0.0, 0.0, *radii), Station(turns, turns * climb_mm, *radii))
    released_mm = climb_mm * (1 + PITCH_OPENS * 2 * opening_mm / on_mm)
    return LaidCoil(wire_mm, hand, stations, released_pitch_mm=released_mm)


def room_mm(solid: MandrelSolid, climb_mm: float) -> float:
    """The least room of the opened coil at some pitch, its middle in the middle of the groove: every point of the mesh
    against the turn that lies over it."""
    laid, half_mm = solid.coil, solid.coil.wire_mm / 2
    first, second = laid.stations[:2]
    on_mm = (second.height_mm - first.height_mm) / second.turn
    turns = second.turn * turn_length_mm(2 * first.radius_mm, on_mm) / turn_length_mm(2 * first.released_mm, climb_mm)
    x, y, z = np.array(mesh_of(solid).vertices).T
    way = -1.0 if laid.hand is Hand.LEFT else 1.0
    from_middle = (way * (np.arctan2(y, x) - pi / 2) / tau - second.turn / 2) % 1.0
    least_mm = np.inf
    for whole in range(-int(turns / 2) - 2, int(turns / 2) + 2):
        at = from_middle + whole
        off_mm = z - (second.height_mm / 2 + at * climb_mm)
        met = (abs(at) <= turns / 2) & (abs(off_mm) < half_mm) & (z > solid.face_mm + 1e-6)
        rooms = first.released_mm - np.sqrt(half_mm**2 - off_mm[met] ** 2) - np.hypot(x, y)[met]
        least_mm = min(least_mm, rooms.min(initial=np.inf))
    return float(least_mm)


@pytest.mark.parametrize("hand", [Hand.LEFT, Hand.RIGHT])
@pytest.mark.parametrize(
    ("wire_mm", "on_mm", "opening_mm", "turns", "pitch", "binds"),
    [
        (1.0, 5.0, 0.10, 2.0, 2.0, False),
        (1.0, 5.0, 0.10, 9.0, 2.5, True),
        (1.0, 9.0, 0.15, 4.0, 2.0, False),
        (1.0, 5.0, 0.15, 12.0, 3.0, True),
        (1.6, 6.4, 0.22, 13.0, 1.9, True),
        (0.5, 2.5, 0.12, 5.0, 2.0, False),
    ],
)
def test_a_coil_binds_in_its_groove_where_the_mesh_meets_it_at_its_opened_pitch(
    wire_mm: float, on_mm: float, opening_mm: float, turns: float, pitch: float, binds: bool, hand: Hand
) -> None:
    """Free, it meets the lips or not as is said; pressed together by what is said, it has the groove's own pitch."""
    laid = coil(wire_mm, on_mm, opening_mm, turns, pitch, hand)
    solid = solid_of(laid, release_of(laid), "a job", "hex")
    assert solid.release.way == "unscrew"
    assert laid.released_pitch_mm is not None
    assert (binds_by_mm(laid, solid.release) > 0) == binds
    assert (room_mm(solid, laid.released_pitch_mm) < 0) == binds
    assert room_mm(solid, pitch * wire_mm) == pytest.approx(opening_mm, abs=NEAR * wire_mm)
    said = comes_off(solid, BENCH)
    assert ("press it together" in said) == binds
    if binds:
        (longer,) = map(float, re.findall(r"by about ([\d.]+) mm", said))
        opened = turns * turn_length_mm(on_mm, pitch * wire_mm)
        opened /= turn_length_mm(on_mm + 2 * opening_mm, laid.released_pitch_mm)
        assert longer == pytest.approx(opened * (laid.released_pitch_mm - pitch * wire_mm), abs=0.006)


def test_random_coils_that_are_unscrewed_bind_as_their_meshes_say() -> None:
    """With the pitch of the plan's own spring, as wound and before heat."""
    found = [(each, solid) for each in random_plans() for solid in (solid_for(each),) if solid.release.way == "unscrew"]
    assert found
    for each, solid in found:
        released_mm = solid.coil.released_pitch_mm
        assert released_mm is not None
        opening = each.finished.spring.mean_diameter_mm / (each.mandrel.diameter_mm + each.wire_diameter_mm)
        opened = 1 + PITCH_OPENS * (opening - 1)
        assert released_mm == pytest.approx(each.pitch_on_mandrel_mm * opened, rel=1e-6)
        rests_mm = room_mm(solid, released_mm)
        assert abs(rests_mm) > NEAR * each.wire_diameter_mm
        assert (binds_by_mm(solid.coil, solid.release) > 0) == (rests_mm < 0)
        assert room_mm(solid, each.pitch_on_mandrel_mm) > 0


def test_the_play_in_a_groove_is_that_of_two_circles() -> None:
    """Moved so far, the wire's underside meets the edge of the lip: both on the circle of the wire."""
    for wire_mm, lip, opening_mm in ((1.0, 0.3, 0.1), (0.8, 0.24, 0.02), (2.0, 0.6, 0.3)):
        edge_mm = (lip * (wire_mm - lip)) ** 0.5
        off_mm = edge_mm - play_in_groove_mm(wire_mm, lip, opening_mm)
        underside_mm = wire_mm / 2 + opening_mm - ((wire_mm / 2) ** 2 - off_mm**2) ** 0.5
        assert underside_mm == pytest.approx(lip)


def test_other_coils_have_nothing_said_of_their_pitch() -> None:
    for each in random_plans():
        solid = solid_for(each)
        assert ("press it together" in comes_off(solid, BENCH)) <= (solid.release.way == "unscrew")
        assert (solid.coil.released_pitch_mm is None) == (each.wanted.kind != "compression")


def test_the_pitch_of_the_opened_coil_has_in_it_what_the_first_pressing_takes() -> None:
    """What is laid opens to it, and it is more than the wanted spring's where the sheet says to wind longer."""
    made = plan()
    assert any(each.startswith("Wind it longer") for each in made.steps)
    opening = made.finished.spring.mean_diameter_mm / (made.mandrel.diameter_mm + made.wire_diameter_mm)
    opened_mm = made.pitch_on_mandrel_mm * (1 + PITCH_OPENS * (opening - 1))
    assert coil_of(made).released_pitch_mm == pytest.approx(opened_mm, rel=1e-6)
