"""The pictures of a winding sheet, of springs drawn by chance: none fails, and its words lie within it."""

from __future__ import annotations

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from sourcing.sheets import winding_pictures
from sourcing.sheets.drawing.end_view import legs_of, turned_dimensioned
from sourcing.sheets.drawing.svg import LETTER, Picture
from sourcing.springs.model import Hand
from sourcing.winding.model import Acceptance
from sourcing.winding.plan import plan_winding
from tests.sheets.test_drawing import a_torsion_spring
from tests.winding.cases import BENCH, plan, planned, spool
from tests.winding.solid.plans import random_plans
from tests.winding.test_torsion import need as torsion_need

TEXT = "{http://www.w3.org/2000/svg}text"


def boxes(picture: Picture) -> list[tuple[float, float, float, float, str]]:
    """Left, right, top and bottom of each text that runs across."""
    root = ElementTree.fromstring(picture.svg())
    moved = re.search(r'<g transform="translate\(([\d.]+) 0\)">', picture.svg())
    inner = {each for group in root.iter("{http://www.w3.org/2000/svg}g") for each in group.iter(TEXT)}
    found = []
    for each in root.iter(TEXT):
        if "transform" not in each.attrib:
            size, y = float(each.attrib["font-size"]), float(each.attrib["y"])
            wide = len(each.text or "") * LETTER * size
            x = float(each.attrib["x"]) + (float(moved[1]) if moved and each in inner else 0.0)
            left = {"start": x, "middle": x - wide / 2, "end": x - wide}[each.attrib["text-anchor"]]
            found.append((left, left + wide, y - 0.7 * size, y, each.text or ""))
    return found


@pytest.mark.parametrize("units", ["mm", "inch"])
def test_no_word_of_a_drawing_leaves_it_or_lies_on_another(units: str):
    for each in random_plans():
        drawn = replace(each, units=units, accept=())
        for picture in (winding_pictures.finished(drawn), winding_pictures.mandrel(drawn)):
            found = boxes(picture)
            for at, (left, right, top, low, words) in enumerate(found):
                assert left >= -0.5, words
                assert right <= picture.width_mm + 0.5, words
                for other in found[at + 1 :]:
                    apart = other[0] >= right or other[1] <= left or other[2] >= low or other[3] <= top
                    assert apart, (words, other[4])


@pytest.mark.parametrize("hand", list(Hand))
@pytest.mark.parametrize("active_coils", [4.5, 4.6, 4.75, 4.9, 5.0, 5.1, 5.25, 5.4])
def test_no_leg_runs_through_the_words_of_its_angle(hand: Hand, active_coils: float):
    spring = a_torsion_spring(active_coils, hand)
    picture = turned_dimensioned(spring, "mm")
    (angle,) = (each for each in boxes(picture) if each[4].endswith(" deg"))
    root = ElementTree.fromstring(picture.svg())
    (moved,) = re.findall(r'<g transform="translate\(([\d.]+) 0\)">', picture.svg())
    legs = [each.attrib["points"] for each in root.iter("{http://www.w3.org/2000/svg}polyline")][
        : 2 * len(legs_of(spring))
    ]
    for points in legs:
        (x_1, y_1), (x_2, y_2) = (tuple(map(float, pair.split(","))) for pair in points.split())
        for share in (step / 200 for step in range(201)):
            x, y = x_1 + share * (x_2 - x_1) + float(moved), y_1 + share * (y_2 - y_1)
            assert not (angle[0] < x < angle[1] and angle[2] < y < angle[3])


def test_a_force_wanted_at_the_free_length_itself_is_still_drawn():
    made = plan()
    free_mm = made.wanted.free_length_mm
    rows = (Acceptance(f"force_at_{free_mm:g}_mm_n", 0.0, 1.0, "it is too short"),)
    assert winding_pictures.curve(replace(made, accept=rows)).width_mm > 50.0
    assert winding_pictures.curve(replace(made, accept=())).width_mm > 50.0


@pytest.mark.parametrize(
    ("name", "mm", "inch", "across", "up"),
    [
        ("pressed", ("length, mm", "force, N"), ("length, in", "force, lbf"), 25.4, 4.4482216),
        ("turned", ("wound up, deg", "torque, N·mm"), ("wound up, deg", "torque, lbf·in"), 1.0, 112.98483),
    ],
)
def test_a_curve_is_drawn_in_the_units_of_the_bench(
    name: str, mm: tuple[str, str], inch: tuple[str, str], across: float, up: float
):
    """1 in = 25.4 mm and 1 lbf = 4.4482216 N (international yard and pound, 1959; standard gravity)."""
    made = plan() if name == "pressed" else planned(plan_winding(torsion_need(), spool(1.2), BENCH))
    curves = [winding_pictures.curve(replace(made, units=units)).svg() for units in ("mm", "inch")]
    for drawn, words in zip(curves, (mm, inch), strict=True):
        assert all(f">{each}</text>" in drawn for each in words)
    (at_mm, low_n, high_n), (at_in, low_lbf, high_lbf) = (
        map(float, re.findall(r"at ([\d.]+) between ([\d.]+) and ([\d.]+)", each)[0]) for each in curves
    )
    assert at_in * across == pytest.approx(at_mm, rel=0.001)
    assert low_lbf * up == pytest.approx(low_n, rel=0.015)
    assert high_lbf * up == pytest.approx(high_n, rel=0.015)
