"""A double torsion spring on its mandrel, measured on the drawing: two bodies in the mirror, the loop round its pin."""

from __future__ import annotations

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest
from scipy.spatial import KDTree

from sourcing.need.model import Need
from sourcing.sheets import winding_pictures
from sourcing.sheets.drawing.on_mandrel import laid_helix
from sourcing.sheets.winding_page import winding_page
from sourcing.winding.model import WindingPlan
from sourcing.winding.plan import plan_winding
from sourcing.winding.solid.coil import coil_of
from sourcing.winding.solid.release import release_of
from sourcing.winding.solid.shape import solid_of
from tests.winding import test_torsion
from tests.winding.cases import BENCH, planned, spool
from tests.winding.solid.plans import random_plans

SVG = "{http://www.w3.org/2000/svg}"
ON_PAPER_MM = 0.03

Points = list[tuple[float, float]]


def double_need() -> Need:
    lid = test_torsion.need(bodies=2, hand=None, free_angle_deg=None)
    return replace(lid, pocket=replace(lid.pocket, width_mm=None))


def double_plans() -> list[WindingPlan]:
    drawn = [each for each in random_plans() if each.wanted.kind == "torsion" and each.wanted.bodies > 1]
    return [*drawn, planned(plan_winding(double_need(), spool(1.2), BENCH))]


def read(plan: WindingPlan) -> tuple[Points, Points, tuple[float, float, float], ElementTree.Element]:
    """All points of the wire, those of the loop, the pin's middle and radius, and the drawing."""
    root = ElementTree.fromstring(winding_pictures.mandrel(plan).svg())
    lines = [
        [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+),(-?[\d.]+)", each.attrib["points"])]
        for each in root.iter(f"{SVG}polyline")
    ]
    (pin,) = root.iter(f"{SVG}circle")
    circle = float(pin.attrib["cx"]), float(pin.attrib["cy"]), float(pin.attrib["r"])
    (loop,) = {tuple(each) for each in lines if each[0][0] == each[-1][0] and each[0][1] < circle[1] < each[-1][1]}
    return [at for each in lines if tuple(each) != loop for at in each], list(loop), circle, root


@pytest.mark.parametrize("plan", double_plans(), ids=lambda each: f"{each.wire_diameter_mm:g} mm")
def test_two_bodies_lie_in_the_mirror_on_either_side_of_the_loop_round_its_pin(plan: WindingPlan) -> None:
    wires, loop, (pin_x, pin_y, pin_mm), _ = read(plan)
    laid = coil_of(plan)
    above, below = ([at for at in wires if (at[1] < pin_y) == upper] for upper in (True, False))
    mirrored = [(x, 2 * pin_y - y) for x, y in below]
    assert len(above) == len(below)
    assert KDTree(above).query(mirrored)[0].max() < ON_PAPER_MM
    assert KDTree(mirrored).query(above)[0].max() < ON_PAPER_MM
    heights = [y for _, y in wires]
    scale = (max(heights) - min(heights)) / laid.length_mm
    half_mm = laid.loop_mm / 2 * scale
    assert min(abs(y - pin_y) for y in heights) == pytest.approx(half_mm, abs=ON_PAPER_MM)
    assert pin_mm == pytest.approx(half_mm - laid.wire_mm / 2 * scale, abs=ON_PAPER_MM)
    for end, way in ((loop[0], -1), (loop[-1], 1)):
        assert end[1] == pytest.approx(pin_y + way * half_mm, abs=ON_PAPER_MM)
        assert min(abs(end[0] - x) + abs(end[1] - y) for x, y in wires) < ON_PAPER_MM
    off_pin = [((x - pin_x) ** 2 + (y - pin_y) ** 2) ** 0.5 for x, y in loop]
    assert min(off_pin) == pytest.approx(half_mm, abs=ON_PAPER_MM)


@pytest.mark.parametrize("plan", double_plans(), ids=lambda each: f"{each.wire_diameter_mm:g} mm")
def test_each_body_has_half_of_the_turns_and_the_pin_is_where_the_solid_is_drilled(plan: WindingPlan) -> None:
    laid = coil_of(plan)
    helix = laid_helix(laid)
    turns = (plan.turns_to_wind + plan.turns_to_spare) / 2
    assert helix.turns[-1] - helix.turns[0] == pytest.approx(turns)
    solid = solid_of(laid, release_of(laid), "lid", "hex")
    wires, _, (_, pin_y, _), root = read(plan)
    heights = [y for _, y in wires]
    share = (max(heights) - pin_y) / (max(heights) - min(heights))
    assert share == pytest.approx(solid.middle_mm / laid.length_mm, abs=0.002)
    outline = root.find(f"{SVG}polygon")
    assert outline is not None
    edges = [float(y) for y in re.findall(r",(-?[\d.]+)", outline.attrib["points"])]
    assert (max(edges) + min(edges)) / 2 == pytest.approx(pin_y, abs=ON_PAPER_MM)
    words = [each.text for each in root.iter(f"{SVG}text")]
    assert f"{turns:.2f} turns each side of the pin" in words
    shown = [float(each.removesuffix(" mm")) for each in words if (each or "").endswith(" mm")]
    assert any(each == pytest.approx(5 * plan.wire_diameter_mm, abs=0.05) for each in shown)
    assert any(each == pytest.approx(laid.length_mm + laid.wire_mm, abs=0.05) for each in shown)


def test_the_bodies_are_wound_one_to_the_right_and_one_to_the_left() -> None:
    """The front wires of the upper one climb to the right, those of the lower one to the left."""
    plan = double_plans()[-1]
    _, _, (_, pin_y, _), root = read(plan)
    laid_over = root.find(f"{SVG}polygon")
    assert laid_over is not None
    parts = list(root)
    front = [each for each in parts[parts.index(laid_over) :] if each.tag == f"{SVG}polyline"]
    ways = {True: set(), False: set()}
    for each in front:
        points = [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+),(-?[\d.]+)", each.attrib["points"])]
        (left, left_y), (right, right_y) = min(points), max(points)
        if all((y < pin_y) == (left_y < pin_y) for _, y in points) and right - left > 1.0:
            ways[left_y < pin_y].add(right_y < left_y)
    assert ways == {True: {True}, False: {False}}


def test_the_page_of_a_double_spring_has_its_mandrel() -> None:
    page = winding_page(double_plans()[-1], double_need())
    assert 'id="mandrel-title"' in page
    assert "On the mandrel; the loop goes over the pin." in page
    single = test_torsion.need()
    alone = winding_page(planned(plan_winding(single, spool(1.2), BENCH)), single)
    assert "On the mandrel; the held end is below." in alone
    assert "over the pin" not in alone
