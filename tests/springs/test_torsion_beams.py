"""The rate of torsion springs against an independent computation: straight three-dimensional beams, legs and all.

Both ends of the body are joined to the axis by arms a hundred times as thick as the wire, and kept from tilting. The
lower leg rests against a stop, the upper one is pushed square to itself, and the axis above is pushed back as hard, so
that a pure couple goes through the body; the angle is that of the pushed point about the axis. A rod that holds the
upper end where it is instead makes it stiffer, the more so the fewer the coils: 3 % for 2.4 of them. The nodes stand on
the circle and the polygon is that much shorter than the arc, by 0.3 % with 24 elements a turn. The elements know
nothing of the wire's curvature.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, degrees, pi, sin
from random import Random

import pytest
from Pynite import FEModel3D

from sourcing import materials
from sourcing.springs import turned
from sourcing.springs.model import Leg, TorsionSpring

SHEAR_MODULUS_MPA, ELASTIC_MODULUS_MPA = 81_500.0, 206_000.0
MODEL_ERROR = 0.005
ELEMENTS_PER_LEG = 8


@dataclass(frozen=True)
class Body:
    """A body of touching coils with two straight, tangential legs."""

    wire_diameter_mm: float
    mean_diameter_mm: float
    active_coils: float
    leg_1_mm: float
    leg_2_mm: float

    @property
    def spring(self) -> TorsionSpring:
        wire = materials.find("music-wire")
        assert wire is not None
        return TorsionSpring(
            self.wire_diameter_mm,
            self.mean_diameter_mm,
            self.active_coils,
            wire,
            ELASTIC_MODULUS_MPA,
            None,
            Leg(self.leg_1_mm),
            Leg(self.leg_2_mm),
        )


def some_bodies(count: int, seed: int) -> list[Body]:
    """Bodies spread over the range for which the error is promised: n >= 2, index 4 to 16, legs up to 3 diameters."""
    random = Random(seed)

    def one() -> Body:
        wire = random.uniform(0.3, 3.0)
        mean = wire * random.uniform(4.0, 16.0)
        legs = (random.uniform(0.5, 3.0) * mean for _ in range(2))
        return Body(wire, mean, random.uniform(2.0, 9.0), *legs)

    return [one() for _ in range(count)]


def rate_by_beams_n_mm_per_deg(body: Body, elements_per_turn: int = 24) -> float:
    model = FEModel3D()
    poisson = ELASTIC_MODULUS_MPA / (2 * SHEAR_MODULUS_MPA) - 1
    model.add_material("steel", ELASTIC_MODULUS_MPA, SHEAR_MODULUS_MPA, poisson, 7.85e-6)
    for section, diameter in (("wire", body.wire_diameter_mm), ("arm", 100.0 * body.wire_diameter_mm)):
        bending = pi * diameter**4 / 64
        model.add_section(section, pi * diameter**2 / 4, bending, bending, 2 * bending)
    elements, radius = round(elements_per_turn * body.active_coils), body.mean_diameter_mm / 2
    turn = 2 * pi * body.active_coils
    height = body.wire_diameter_mm * body.active_coils
    for node in range(elements + 1):
        at = turn * node / elements
        model.add_node(f"{node}", radius * cos(at), radius * sin(at), height * node / elements)
        if node:
            model.add_member(f"{node}", f"{node - 1}", f"{node}", "steel", "wire")
    model.add_node("below", 0, 0, 0)
    model.add_node("above", 0, 0, height)
    model.add_member("arm below", "below", "0", "steel", "arm")
    model.add_member("arm above", "above", f"{elements}", "steel", "arm")
    model.def_support("below", True, True, True, True, True, False)
    model.def_support("above", False, False, False, True, True, False)

    _leg(model, "lower", "0", (radius, 0.0, 0.0), (0.0, -1.0), body.leg_1_mm)
    root = (radius * cos(turn), radius * sin(turn), height)
    _leg(model, "upper", f"{elements}", root, (-sin(turn), cos(turn)), body.leg_2_mm)

    model.def_support(f"lower {ELEMENTS_PER_LEG}", support_DX=True)
    square = (-cos(turn), -sin(turn))
    tip = f"upper {ELEMENTS_PER_LEG}"
    for way, axis in zip(square, ("FX", "FY"), strict=True):
        model.add_node_load(tip, axis, way)
        model.add_node_load("above", axis, -way)
    model.analyze_linear(check_stability=False)
    moved = sum(
        way * (_moved(model, tip, axis) - _moved(model, "above", axis))
        for way, axis in zip(square, ("DX", "DY"), strict=True)
    )
    return body.leg_2_mm / degrees(moved / body.leg_2_mm)


def _moved(model: FEModel3D, node: str, axis: str) -> float:
    return float(getattr(model.nodes[node], axis)["Combo 1"])


def _leg(
    model: FEModel3D, name: str, root: str, at: tuple[float, float, float], way: tuple[float, float], length: float
) -> None:
    before = root
    for node in range(1, ELEMENTS_PER_LEG + 1):
        along = length * node / ELEMENTS_PER_LEG
        model.add_node(f"{name} {node}", at[0] + way[0] * along, at[1] + way[1] * along, at[2])
        model.add_member(f"{name} {node}", before, f"{name} {node}", "steel", "wire")
        before = f"{name} {node}"


@pytest.mark.parametrize("body", some_bodies(12, seed=5), ids=str)
def test_the_rate_with_legs_agrees_with_beams(body: Body) -> None:
    by_formula = turned.rate_n_mm_per_deg(body.spring)
    assert by_formula == pytest.approx(rate_by_beams_n_mm_per_deg(body), rel=MODEL_ERROR)


@pytest.mark.parametrize("index", [4.0, 16.0])
@pytest.mark.parametrize("legs", [0.3, 4.0])
@pytest.mark.parametrize("coils", [2.0, 2.5])
def test_the_rate_with_legs_agrees_with_beams_where_it_errs_most(index: float, legs: float, coils: float) -> None:
    """Few coils, short legs and long ones: the corners of the range."""
    body = Body(1.0, index, coils, legs * index, legs * index)
    by_formula = turned.rate_n_mm_per_deg(body.spring)
    assert by_formula == pytest.approx(rate_by_beams_n_mm_per_deg(body), rel=MODEL_ERROR)


def test_the_mesh_is_fine_enough() -> None:
    body = Body(1.0, 8.0, 3.3, 15.0, 20.0)
    assert rate_by_beams_n_mm_per_deg(body, 24) == pytest.approx(rate_by_beams_n_mm_per_deg(body, 96), rel=0.004)
