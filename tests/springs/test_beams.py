"""The rate formulas against an independent computation: a helix of straight three-dimensional beam elements.

The force acts on the axis through arms a hundred times as thick as the wire. Both ends are kept from tilting, turning
and shifting, as flat ends between plates are. The nodes stand a little outside the helix, so that the polygon encloses
the circle's area: with 24 elements a turn the mesh is then within 0.3 % of one four times as fine. The elements know
neither the wire's curvature nor the shear in it, which matter least where the formula is used (an index from 5 up).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, pi, sin, sqrt
from random import Random

import pytest
from Pynite import FEModel3D

from sourcing.springs import conical, extension
from sourcing.springs.compression import rate_n_per_mm

SHEAR_MODULUS_MPA, ELASTIC_MODULUS_MPA = 81_500.0, 206_000.0
MODEL_ERROR = 0.015
CONTACT_ERROR = 0.03


@dataclass(frozen=True)
class Helix:
    """A helix; with `mean_diameter_above_mm` its radius changes evenly, turn by turn.

    `mirrored`: it changes so up to the middle, and back again: a barrel, or an hourglass.
    """

    wire_diameter_mm: float
    mean_diameter_mm: float
    active_coils: float
    pitch_mm: float
    mean_diameter_above_mm: float | None = None
    mirrored: bool = False

    def radius_mm(self, share: float) -> float:
        """The radius at a share of the turns."""
        above = self.mean_diameter_mm if self.mean_diameter_above_mm is None else self.mean_diameter_above_mm
        if self.mirrored:
            share = 1 - abs(2 * share - 1)
        return (self.mean_diameter_mm + share * (above - self.mean_diameter_mm)) / 2


def some_helices(count: int, seed: int) -> list[Helix]:
    """Helices spread over the range for which the error is promised: n >= 3, index 5 to 16, pitch up to 0.3 D."""
    random = Random(seed)

    def one() -> Helix:
        wire = random.uniform(0.3, 3.0)
        mean = wire * random.uniform(5.0, 16.0)
        return Helix(wire, mean, random.uniform(3.0, 9.0), random.uniform(1.1 * wire, 0.3 * mean))

    return [one() for _ in range(count)]


def some_cones(count: int, seed: int) -> list[Helix]:
    """Cones with both ends in that range, the pitch up to 0.3 of the small end."""
    random = Random(seed)

    def one() -> Helix:
        wire = random.uniform(0.3, 3.0)
        small, large = sorted((wire * random.uniform(5.0, 16.0), wire * random.uniform(5.0, 16.0)))
        return Helix(wire, large, random.uniform(3.0, 9.0), random.uniform(0.1, 0.3) * small, small)

    return [one() for _ in range(count)]


def elements_of(helix: Helix, elements_per_turn: int) -> int:
    return round(elements_per_turn * helix.active_coils)


def beams(helix: Helix, elements_per_turn: int) -> FEModel3D:
    """The helix from node 0 to the last, and stiff arms from its ends to the nodes "below" and "above" on the axis."""
    model = FEModel3D()
    model.add_material(
        "steel", ELASTIC_MODULUS_MPA, SHEAR_MODULUS_MPA, ELASTIC_MODULUS_MPA / (2 * SHEAR_MODULUS_MPA) - 1, 7.85e-6
    )
    for section, diameter in (("wire", helix.wire_diameter_mm), ("arm", 100.0 * helix.wire_diameter_mm)):
        bending = pi * diameter**4 / 64
        model.add_section(section, pi * diameter**2 / 4, bending, bending, 2 * bending)

    elements = elements_of(helix, elements_per_turn)
    step = 2 * pi * helix.active_coils / elements
    outside = sqrt(step / sin(step))
    height = helix.pitch_mm * helix.active_coils
    for node in range(elements + 1):
        radius = outside * helix.radius_mm(node / elements)
        model.add_node(f"{node}", radius * cos(step * node), radius * sin(step * node), height * node / elements)
    for node in range(elements):
        model.add_member(f"{node}", f"{node}", f"{node + 1}", "steel", "wire")

    model.add_node("below", 0, 0, 0)
    model.add_node("above", 0, 0, height)
    model.add_member("arm below", "below", "0", "steel", "arm")
    model.add_member("arm above", "above", f"{elements}", "steel", "arm")
    model.def_support("below", True, True, True, True, True, True)
    return model


def rate_by_beams_n_per_mm(helix: Helix, elements_per_turn: int = 24) -> float:
    model = beams(helix, elements_per_turn)
    model.def_support("above", True, True, False, True, True, True)
    model.add_node_load("above", "FZ", -1.0)
    model.analyze_linear(check_stability=False)
    return -1.0 / float(model.nodes["above"].DZ["Combo 1"])


def force_on_a_plate_n(helix: Helix, travel_mm: float, elements_per_turn: int = 24) -> float:
    """The force that presses a telescoping cone so far onto the plate that its large end stands on.

    Every node is held up by the plate as soon as it comes down to it, and let go where the plate would have to pull.
    """
    elements = elements_of(helix, elements_per_turn)
    heights = {node: helix.pitch_mm * helix.active_coils * node / elements for node in range(1, elements)}
    lying: set[int] = set()
    for _ in range(60):
        model = beams(helix, elements_per_turn)
        model.def_support("above", True, True, True, True, True, True)
        model.def_node_disp("above", "DZ", -travel_mm)
        for node in lying:
            model.def_support(f"{node}", support_DZ=True)
            model.def_node_disp(f"{node}", "DZ", -heights[node])
        model.analyze_linear(check_stability=False)
        held = {node for node in lying if model.nodes[f"{node}"].RxnFZ["Combo 1"] >= 0.0}
        sunk = {node for node in heights if model.nodes[f"{node}"].DZ["Combo 1"] < -heights[node] - 1e-9} - lying
        if held | sunk == lying:
            break
        lying = held | sunk
    return -float(model.nodes["above"].RxnFZ["Combo 1"])


def rate_by_formula_n_per_mm(helix: Helix) -> float:
    return rate_n_per_mm(helix.wire_diameter_mm, helix.mean_diameter_mm, helix.active_coils, SHEAR_MODULUS_MPA)


@pytest.mark.parametrize("helix", some_helices(10, seed=3), ids=str)
def test_the_rate_formula_agrees_with_beams(helix: Helix) -> None:
    assert rate_by_formula_n_per_mm(helix) == pytest.approx(rate_by_beams_n_per_mm(helix), rel=MODEL_ERROR)


@pytest.mark.parametrize("index", [5.0, 16.0])
@pytest.mark.parametrize("coils", [3.0, 3.5])
def test_the_rate_formula_agrees_with_beams_where_it_errs_most(index: float, coils: float) -> None:
    """Few coils and a steep pitch: the corners of the range."""
    helix = Helix(1.0, index, coils, 0.3 * index)
    assert rate_by_formula_n_per_mm(helix) == pytest.approx(rate_by_beams_n_per_mm(helix), rel=MODEL_ERROR)


def test_the_mesh_is_fine_enough() -> None:
    helix = Helix(1.0, 8.0, 3.3, 2.0)
    assert rate_by_beams_n_per_mm(helix, 24) == pytest.approx(rate_by_beams_n_per_mm(helix, 96), rel=0.003)


def some_bodies(count: int, seed: int) -> list[Helix]:
    """Bodies of extension springs: wound tight, that is at a pitch of one wire."""
    return [
        Helix(helix.wire_diameter_mm, helix.mean_diameter_mm, helix.active_coils, helix.wire_diameter_mm)
        for helix in some_helices(count, seed)
    ]


@pytest.mark.parametrize("helix", some_bodies(8, seed=9), ids=str)
def test_the_rate_of_an_extension_spring_s_body_agrees_with_beams(helix: Helix) -> None:
    by_formula = extension.rate_n_per_mm(
        helix.wire_diameter_mm, helix.mean_diameter_mm, helix.active_coils, SHEAR_MODULUS_MPA
    )
    assert by_formula == pytest.approx(rate_by_beams_n_per_mm(helix), rel=MODEL_ERROR)


@pytest.mark.parametrize("helix", some_cones(20, seed=4), ids=str)
def test_the_initial_rate_of_a_cone_agrees_with_beams(helix: Helix) -> None:
    assert helix.mean_diameter_above_mm is not None
    initial = conical.rate_n_per_mm(
        helix.wire_diameter_mm,
        helix.mean_diameter_above_mm,
        helix.mean_diameter_mm,
        helix.active_coils,
        SHEAR_MODULUS_MPA,
    )
    assert initial == pytest.approx(rate_by_beams_n_per_mm(helix), rel=MODEL_ERROR)


@pytest.mark.parametrize(
    "helix",
    [
        Helix(1.0, 8.0, 10.0, 2.0, 16.0, mirrored=True),
        Helix(0.8, 5.0, 7.0, 1.4, 12.0, mirrored=True),
        Helix(1.0, 16.0, 8.0, 2.4, 8.0, mirrored=True),
        Helix(0.7, 10.5, 6.0, 1.6, 5.0, mirrored=True),
    ],
    ids=["barrel 8-16-8", "barrel 5-12-5", "hourglass 16-8-16", "hourglass 10.5-5-10.5"],
)
def test_two_cones_in_series_are_as_stiff_as_the_beams_of_a_barrel_or_an_hourglass(helix: Helix) -> None:
    assert helix.mean_diameter_above_mm is not None
    small, large = sorted((helix.mean_diameter_mm, helix.mean_diameter_above_mm))
    half = conical.Cone(helix.wire_diameter_mm, small, large, helix.active_coils / 2, helix.pitch_mm, SHEAR_MODULUS_MPA)
    in_series = conical.series_rate_n_per_mm((half, half))
    assert in_series == pytest.approx(rate_by_beams_n_per_mm(helix), rel=MODEL_ERROR)


@pytest.mark.parametrize(
    "helix", [Helix(0.9, 17.0, 5.0, 3.0, 7.0), Helix(0.8, 15.8, 4.0, 3.5, 8.4)], ids=["7 to 17", "8.4 to 15.8"]
)
@pytest.mark.parametrize("share", [0.5, 0.7, 0.85])
def test_the_progressive_force_of_a_cone_agrees_with_beams_that_lie_down_on_a_plate(helix: Helix, share: float) -> None:
    """At shares of the travel to flat; the winding model has 0.97 to 1.03 for beams with contact."""
    assert helix.mean_diameter_above_mm is not None
    cone = conical.Cone(
        helix.wire_diameter_mm,
        helix.mean_diameter_above_mm,
        helix.mean_diameter_mm,
        helix.active_coils,
        helix.pitch_mm,
        SHEAR_MODULUS_MPA,
    )
    travel = share * cone.travel_to_solid_mm
    by_curve = conical.force_n((cone,), travel)
    assert by_curve == pytest.approx(force_on_a_plate_n(helix, travel), rel=CONTACT_ERROR)
