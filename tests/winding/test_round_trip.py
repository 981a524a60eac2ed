"""From mandrel to spring by another way: the section's stress and the wire's path integrated by a library.

The bending moment is summed over the section's slices, the wire let go by that moment over E I, and the helix on the
mandrel measured as a curve in space; nothing of the program's springback, turns or lengths is used in between.
"""

from __future__ import annotations

from collections.abc import Callable
from math import cos, hypot, pi, sin, sqrt

import pytest
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from sourcing.materials.strength import tensile_strength_mpa
from sourcing.springs.conical_lengths import pitch_of
from sourcing.springs.geometry import pitch_mm
from sourcing.springs.model import CompressionSpring, ConicalSpring
from sourcing.winding.conical.mandrel import diameter_at_mm, laid_cone
from sourcing.winding.pitch_share import PITCH_SHARE
from sourcing.winding.presetting import as_laid
from sourcing.winding.trials import Knowledge, untried
from sourcing.winding.turns import pitch_ratio

from .cases import material, plan, spool
from .test_conical import WIRE_MM, compensation, cone_plan, known_cone

CASES = [
    ("music-wire", 0.3, 2.4),
    ("music-wire", 0.8, 9.6),
    ("music-wire", 2.0, 32.0),
    ("stainless-1.4310", 1.0, 9.0),
    ("phosphor-bronze", 0.8, 8.0),
    ("hard-drawn", 1.5, 15.0),
]


def known(name: str, wire_mm: float) -> Knowledge:
    strength_mpa = tensile_strength_mpa(material(name), wire_mm)
    assert strength_mpa is not None
    return untried(material(name), wire_mm, strength_mpa)


def moment_n_mm(curvature: float, wire: Knowledge) -> float:
    """What a slice bears is E times its strain, and no more than the flow stress."""
    radius_mm, flow_mpa = wire.wire_diameter_mm / 2, wire.flow_stress_mpa

    def of_slice(y_mm: float) -> float:
        return min(wire.elastic_modulus_mpa * curvature * y_mm, flow_mpa) * y_mm * 2 * sqrt(radius_mm**2 - y_mm**2)

    yields_at_mm = min(flow_mpa / (wire.elastic_modulus_mpa * curvature), radius_mm)
    inner, outer = quad(of_slice, 0, yields_at_mm, epsrel=1e-12), quad(of_slice, yields_at_mm, radius_mm, epsrel=1e-12)
    return 2 * (inner[0] + outer[0])


def let_go_mm(mandrel_mm: float, wire: Knowledge) -> float:
    """The mean diameter of a coil let go: its moment, over the stiffness of the section, is taken off its curvature."""
    curvature = 2 / (mandrel_mm + wire.wire_diameter_mm)
    stiffness = wire.elastic_modulus_mpa * pi * wire.wire_diameter_mm**4 / 64
    return 2 / (curvature - moment_n_mm(curvature, wire) / stiffness)


@pytest.mark.parametrize(("name", "wire_mm", "mean_mm"), CASES)
def test_a_coil_let_go_opens_as_its_section_summed_slice_by_slice_does(name: str, wire_mm: float, mean_mm: float):
    wire = known(name, wire_mm)
    for mandrel_mm in (1.2 * wire_mm, 0.6 * mean_mm, 0.8 * mean_mm):
        assert wire.finished_mean_mm(mandrel_mm) == pytest.approx(let_go_mm(mandrel_mm, wire), rel=1e-9)


@pytest.mark.parametrize(("name", "wire_mm", "mean_mm"), CASES)
def test_the_mandrel_is_the_one_that_a_search_over_such_sections_finds(name: str, wire_mm: float, mean_mm: float):
    wire = known(name, wire_mm)
    found_mm = brentq(lambda mm: let_go_mm(mm, wire) - mean_mm, 0.5 * mean_mm, mean_mm - wire_mm, xtol=1e-12)
    assert wire.mandrel_mm(mean_mm) == pytest.approx(found_mm, rel=1e-9)


def helix_length_mm(mean_mm: float, climbs_mm: float, turns: float) -> float:
    """The length of a helix in space, summed along its curve."""

    def speed(turn: float) -> float:
        along = -pi * mean_mm * sin(2 * pi * turn), pi * mean_mm * cos(2 * pi * turn), climbs_mm
        return hypot(*along)

    return quad(speed, 0, turns, epsrel=1e-12, limit=500)[0]


def test_the_wire_on_the_mandrel_is_as_long_as_the_wire_of_the_spring() -> None:
    """Before its first pressing, which makes it shorter."""
    made = plan(spool(0.8))
    wound, wanted = made.finished.spring, made.wanted
    assert isinstance(wound, CompressionSpring)
    assert isinstance(wanted, CompressionSpring)
    assert made.mandrel.diameter_mm is not None
    spring = as_laid(wound, wanted)
    wire_mm, dead = spring.wire_diameter_mm, spring.total_coils - spring.active_coils
    free_pitch_mm = pitch_mm(wire_mm, spring.free_length_mm, spring.active_coils, spring.total_coils, spring.ends)
    in_spring_mm = helix_length_mm(spring.mean_diameter_mm, free_pitch_mm, spring.active_coils) + helix_length_mm(
        spring.mean_diameter_mm, wire_mm, dead
    )
    on_mandrel_mm = made.mandrel.diameter_mm + wire_mm
    dead_mm = helix_length_mm(spring.mean_diameter_mm, wire_mm, dead)
    dead_turns = dead_mm / helix_length_mm(on_mandrel_mm, wire_mm, 1.0)
    laid_mm = dead_mm + helix_length_mm(on_mandrel_mm, made.pitch_on_mandrel_mm, made.turns_to_wind - dead_turns)
    assert laid_mm == pytest.approx(in_spring_mm, rel=1e-6)
    assert made.coil_length_mm == pytest.approx(in_spring_mm, rel=1e-6)


def turns_of_cone(cone: ConicalSpring, mandrel_for_mm: Callable[[float], float]) -> float:
    """The turns of the crank for a cone: both curves in space, run along together so that their arcs stay alike."""
    pitch, per_turn_mm = pitch_of(cone), (cone.mean_diameter_large_mm - cone.mean_diameter_small_mm) / cone.active_coils
    step_mm = 1e-5

    def wound_per_finished(turn: float, _: object) -> list[float]:
        mean_mm = diameter_at_mm(cone, turn)
        on_mandrel_mm = mandrel_for_mm(mean_mm) + cone.wire_diameter_mm
        steeper = (mandrel_for_mm(mean_mm + step_mm) - mandrel_for_mm(mean_mm - step_mm)) / (2 * step_mm) * per_turn_mm
        arc = hypot(pi * mean_mm, pitch, per_turn_mm / 2)
        return [
            sqrt(arc**2 - (steeper / 2) ** 2)
            / hypot(pi * on_mandrel_mm, pitch / pitch_ratio(mean_mm / on_mandrel_mm, PITCH_SHARE))
        ]

    return solve_ivp(wound_per_finished, (0, cone.active_coils), [0.0], rtol=1e-11, atol=1e-12).y[0, -1]


@pytest.mark.parametrize("spring", [known_cone(), cone_plan().finished.spring], ids=["known", "planned"])
def test_a_cone_keeps_its_wire_turn_by_turn(spring: ConicalSpring) -> None:
    assert spring.wire_diameter_mm == WIRE_MM
    laid = laid_cone(spring, compensation, PITCH_SHARE)
    assert laid.turns == pytest.approx(turns_of_cone(spring, compensation), rel=1e-6)
