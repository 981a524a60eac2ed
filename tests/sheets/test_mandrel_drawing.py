"""The turning drawing of a mandrel: true to scale, its table within its rules, its hand seen, its words only words."""

from __future__ import annotations

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from sourcing.sheets.drawing.mandrel import SIZES_MM, Frame, side_view, sizes_of, turning_drawing
from sourcing.sheets.drawing.svg import LETTER, TEXT_MM
from sourcing.springs.model import Hand
from sourcing.winding.solid.sleeve import Bore
from tests.winding.solid.plans import random_plans, solid_for

SVG = "{http://www.w3.org/2000/svg}"
FRAME = Frame(1.0, 0.0, 0.0, 0.0)


def outline(solid):
    drawn = ElementTree.fromstring(turning_drawing(solid, "job").svg())
    points = [tuple(map(float, pair.split(","))) for pair in drawn.find(f"{SVG}polygon").get("points").split()]
    (scale,) = [each.text for each in drawn.iter(f"{SVG}text") if (each.text or "").startswith("scale")]
    enlarged, reduced = map(float, re.findall(r"[\d.]+", scale))
    return points, enlarged / reduced


@pytest.mark.parametrize("at", range(0, 60, 7))
def test_the_outline_is_true_to_the_scale_that_is_written(at):
    solid = solid_for(random_plans()[at], shank=("hex", "drill", "sleeve")[at % 3])
    points, scale = outline(solid)
    across, along = ([point[axis] for point in points] for axis in (1, 0))
    assert max(along) - min(along) == pytest.approx(solid.length_mm * scale, abs=0.02)
    assert max(across) - min(across) == pytest.approx(solid.width_mm * scale, abs=0.02)


def test_the_sheet_is_an_a4_in_true_millimetres():
    drawn = ElementTree.fromstring(turning_drawing(solid_for(random_plans()[0]), "job").svg())
    assert (drawn.get("width"), drawn.get("height"), drawn.get("viewBox")) == ("297mm", "210mm", "0 0 297 210")


@pytest.mark.parametrize("units", ["mm", "inch"])
def test_every_size_fits_its_column(units):
    for plan in random_plans():
        for shank in ("drill", "sleeve"):
            for row in sizes_of(solid_for(plan, "w" * 200, shank), units):
                for words, width_mm in zip(row, SIZES_MM, strict=True):
                    assert len(words) * LETTER * TEXT_MM < width_mm, words


def test_a_sleeve_has_its_bore_listed_and_a_double_spring_s_mandrel_the_hole_for_its_pin():
    for plan in random_plans():
        solid = solid_for(plan, shank="sleeve")
        told = {what: size for _, what, size in sizes_of(solid)}
        assert ("bore" in told) == isinstance(solid.held, Bore) == ("shank" not in told)
        assert ("lines to break it" in told) == (solid.release.way == "break")
        assert ("hole for the loop's pin" in told) == (solid.coil.loop_mm > 0)


def test_everything_lies_on_the_sheet():
    for plan in random_plans()[::3]:
        drawn = ElementTree.fromstring(turning_drawing(solid_for(plan), "job").svg())
        for each in drawn.iter(f"{SVG}line"):
            assert all(0 <= float(each.get(key)) <= 297 for key in ("x1", "x2"))
            assert all(0 <= float(each.get(key)) <= 210 for key in ("y1", "y2"))


@pytest.mark.parametrize("hand", [Hand.LEFT, Hand.RIGHT])
def test_with_the_shank_to_the_left_a_right_hand_seat_falls_from_left_to_right(hand):
    """As the thread of a screw that lies so: turned upright, a right-hand one rises to the right."""
    solid = solid_for(next(each for each in random_plans() if each.wanted.kind == "conical"))
    turned = replace(solid, coil=replace(solid.coil, hand=hand))
    seats = [part for part in side_view(turned, FRAME) if part.startswith("<polyline")]
    falls = 0
    for seat in seats:
        points = [tuple(map(float, pair.split(","))) for pair in re.findall(r"-?[\d.]+,-?[\d.]+", seat)]
        (left, left_y), (right, right_y) = min(points), max(points)
        falls += (right > left) and (right_y > left_y)
    assert falls > len(seats) * 0.8 if hand is Hand.RIGHT else falls == 0


def test_a_job_s_name_of_markup_is_only_words():
    drawn = turning_drawing(solid_for(random_plans()[0]), "<script>&</script>" + "x" * 300).svg()
    assert "<script" not in drawn
    title = ElementTree.fromstring(drawn).findtext(f"{SVG}title")
    assert title.startswith("Mandrel for <script>&</script>")


def test_a_cone_has_its_diameters_listed_from_the_collar():
    for plan in random_plans():
        solid = solid_for(plan)
        drawn = turning_drawing(solid, "job").svg()
        assert (">from the collar<" in drawn) == solid.coil.tapered
