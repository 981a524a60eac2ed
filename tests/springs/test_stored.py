"""What springs of every kind hold under load, against the work of their forces."""

from __future__ import annotations

from math import pi, radians

import pytest
from hypothesis import given, settings
from scipy.integrate import quad

from sourcing.materials import find
from sourcing.springs import pressed, pulled, turned
from sourcing.springs.model import CompressionSpring, ConicalSpring, Ends, ExtensionSpring, Hooks, Spring, TorsionSpring
from sourcing.springs.stored import stored_energy_n_mm
from tests.figures.springs import cones

WIRE = find("music-wire")
assert WIRE is not None
G, E = 81_500.0, 206_000.0
CYLINDER = CompressionSpring(1.0, 10.0, 40.0, 8.0, 10.0, Ends.CLOSED_GROUND, WIRE, G, E, 2230.0)
CONE = ConicalSpring(0.9, 7.0, 17.0, 15.8, 5.0, 7.0, Ends.CLOSED_GROUND, WIRE, G, E, 2270.0)
PULLED = ExtensionSpring(1.0, 9.0, 40.0, 12.0, 12.0, Hooks.FULL_LOOP, WIRE, G, E, 2230.0, initial_tension_n=4.0)
TURNED = TorsionSpring(1.5, 12.0, 5.0, WIRE, E, 2080.0)


def test_a_cylinder_holds_half_its_force_times_its_travel() -> None:
    """R = 81 500/(8 x 1 000 x 8) = 1.2734 N/mm; W = R s²/2 (EN 13906-1: F s/2)."""
    assert stored_energy_n_mm(CYLINDER, 25.0) == pytest.approx(81_500 / 64_000 * 15.0**2 / 2)


def test_an_extension_spring_holds_its_initial_tension_times_the_travel_besides() -> None:
    rate = 81_500 / (8 * 9.0**3 * 12)
    assert stored_energy_n_mm(PULLED, 60.0) == pytest.approx(4.0 * 20 + rate * 20**2 / 2)


def test_a_torsion_spring_holds_half_its_torque_times_the_angle_in_radians() -> None:
    torque = turned.rate_n_mm_per_deg(TURNED) * 90.0
    assert stored_energy_n_mm(TURNED, 90.0) == pytest.approx(torque * radians(90.0) / 2)
    assert stored_energy_n_mm(TURNED, 90.0) == pytest.approx(torque * pi / 4)


@given(cones())
@settings(max_examples=25)
def test_a_cone_holds_the_work_of_its_progressive_force_by_quadrature(cone: ConicalSpring) -> None:
    """The kinks, where coils lie down, leave the quadrature itself some parts in 10 000."""
    solid, rate = pressed.solid_length_mm(cone), pressed.rate_n_per_mm(cone)
    if solid >= 0.9 * cone.free_length_mm:
        return
    at = solid + 0.2 * (cone.free_length_mm - solid)

    def force(length_mm: float) -> float:
        return pressed.force_n(cone, length_mm, rate)

    work, _ = quad(force, at, cone.free_length_mm, limit=400)
    assert stored_energy_n_mm(cone, at) == pytest.approx(work, rel=2e-3)


def test_a_cone_holds_more_than_its_initial_rate_would_make_it() -> None:
    travel = CONE.free_length_mm - 8.0
    assert stored_energy_n_mm(CONE, 8.0) > pressed.rate_n_per_mm(CONE) * travel**2 / 2


@pytest.mark.parametrize(("spring", "at"), [(CYLINDER, 45.0), (CONE, 20.0), (PULLED, 30.0), (TURNED, 0.0)])
def test_a_spring_at_rest_or_loaded_the_other_way_holds_nothing(spring: Spring, at: float) -> None:
    assert stored_energy_n_mm(spring, at) == 0.0


def test_what_an_extension_spring_holds_is_the_work_of_its_force() -> None:
    rate = pulled.rate_n_per_mm(PULLED)

    def force(length_mm: float) -> float:
        return pulled.force_n(PULLED, length_mm, rate, 4.0)

    work, _ = quad(force, 40.0, 60.0)
    assert stored_energy_n_mm(PULLED, 60.0) == pytest.approx(work)
