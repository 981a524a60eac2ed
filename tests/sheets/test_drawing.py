"""Drawings are true: in millimetres, the wire climbs by its hand, and a curve passes where it should."""

from __future__ import annotations

import cmath
import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from sourcing.materials import find
from sourcing.sheets.drawing import plots, springs, svg
from sourcing.sheets.drawing.end_view import end_view, legs_of, turned_dimensioned
from sourcing.sheets.drawing.hooked import hooked_dimensioned, hooked_one_to_one
from sourcing.sheets.drawing.on_mandrel import both_hands, laid_helix, wound_picture
from sourcing.springs.model import (
    CompressionSpring,
    ConicalSpring,
    Ends,
    ExtensionSpring,
    Hand,
    Hooks,
    Leg,
    LegShape,
    PressedSpring,
    TorsionSpring,
)
from sourcing.springs.turned import leg_angle_deg
from sourcing.winding.solid.coil import coil_of
from tests.winding.cases import plan

MUSIC = find("music-wire")
assert MUSIC is not None
CYLINDER = CompressionSpring(0.9, 8.7, 31.0, 7.75, 9.75, Ends.CLOSED_GROUND, MUSIC, 81500.0, 206000.0, 2270.0)
CONE = ConicalSpring(0.9, 7.0, 17.0, 24.0, 5.0, 7.0, Ends.CLOSED, MUSIC, 81500.0, 206000.0, 2270.0)
NAMESPACE = {"svg": "http://www.w3.org/2000/svg"}


def parsed(picture: svg.Picture) -> ElementTree.Element:
    return ElementTree.fromstring(picture.svg())


def strokes(picture: svg.Picture, colour: str) -> list[list[svg.Point]]:
    lines = parsed(picture).findall("svg:polyline", NAMESPACE)
    return [
        [(float(x), float(y)) for x, y in (point.split(",") for point in each.attrib["points"].split())]
        for each in lines
        if each.attrib["stroke"] == colour
    ]


@pytest.mark.parametrize("spring", [CYLINDER, CONE])
def test_one_to_one_is_as_large_as_the_spring(spring: PressedSpring):
    picture = springs.one_to_one(spring, (180.0, 200.0))
    assert picture is not None
    root = parsed(picture)
    assert root.attrib["width"] == f"{svg.number(picture.width_mm)}mm"
    assert root.attrib["viewBox"] == f"0 0 {svg.number(picture.width_mm)} {svg.number(picture.height_mm)}"
    points = [point for each in strokes(picture, "black") for point in each]
    wide, high = (max(axis) - min(axis) + 0.9 for axis in zip(*points, strict=True))
    outside = 9.6 if spring is CYLINDER else 17.9
    assert wide == pytest.approx(outside, abs=0.05)
    assert high == pytest.approx(spring.free_length_mm, abs=0.02)


def test_a_spring_too_long_for_the_room_has_no_outline():
    assert springs.one_to_one(replace(CYLINDER, free_length_mm=300.0), (180.0, 200.0)) is None


@pytest.mark.parametrize(("hand", "climbs_right"), [(None, True), (Hand.RIGHT, True), (Hand.LEFT, False)])
def test_upright_the_front_wires_of_a_right_hand_spring_climb_to_the_right(hand: Hand | None, climbs_right: bool):
    """EN ISO 26909's right-hand helix; the wires in front are drawn last."""
    picture = springs.one_to_one(replace(CYLINDER, hand=hand), (180.0, 200.0))
    assert picture is not None
    front = strokes(picture, "black")[-3]
    (x_start, y_start), (x_end, y_end) = front[0], front[-1]
    assert y_end < y_start
    assert (x_end > x_start) is climbs_right


def test_the_small_end_of_a_cone_is_on_top():
    picture = springs.one_to_one(CONE, (180.0, 200.0))
    assert picture is not None
    points = [point for each in strokes(picture, "black") for point in each]
    top, bottom = min(y for _, y in points), max(y for _, y in points)
    width_at = [
        max(x for x, y in points if abs(y - at) < 2) - min(x for x, y in points if abs(y - at) < 2)
        for at in (top, bottom)
    ]
    assert width_at[0] < 0.6 * width_at[1]


def test_the_check_line_is_a_hundred_millimetres_long():
    picture = springs.check_line()
    lines = [each.attrib for each in parsed(picture).findall("svg:line", NAMESPACE)]
    assert max(float(each["x2"]) - float(each["x1"]) for each in lines) == 100.0


def test_the_curve_passes_through_the_bars_of_the_points_it_meets():
    across, up = plots.Axis("length, mm", 8.0, 31.0), plots.Axis("force, N", 0.0, 30.0)
    picture = plots.curve(lambda mm: 1.31 * (31.0 - mm), across, up, [plots.Wish(24.0, 8.0, 10.0)], (90.0, 60.0))
    (curve,) = strokes(picture, "black")
    (mark,) = parsed(picture).findall("svg:circle", NAMESPACE)
    x, y = float(mark.attrib["cx"]), float(mark.attrib["cy"])
    nearest = min(curve, key=lambda point: abs(point[0] - x))
    assert nearest[1] == pytest.approx(y, abs=1.0)


def a_torsion_spring(active_coils: float, hand: Hand) -> TorsionSpring:
    leg = Leg(20.0)
    return TorsionSpring(
        1.5,
        12.0,
        active_coils,
        MUSIC,
        206000.0,
        2000.0,
        leg,
        leg,
        leg_angle_deg(active_coils),
        hand,
    )


@pytest.mark.parametrize("hand", list(Hand))
@pytest.mark.parametrize("active_coils", [5.0, 5.25, 4.6, 3.9])
def test_the_legs_leave_the_coil_where_the_wire_that_runs_round_it_does(active_coils: float, hand: Hand):
    """The wire is followed in from the first leg, round the coils, and out of the second."""
    (start_1, end_1), (start_2, end_2) = legs_of(a_torsion_spring(active_coils, hand))
    along_1, along_2 = (
        complex(end[0] - start[0], end[1] - start[1]) for start, end in ((start_1, end_1), (start_2, end_2))
    )
    turned = cmath.exp(2j * cmath.pi * active_coils * (1 if hand is Hand.LEFT else -1))
    assert complex(*start_1) * turned == pytest.approx(complex(*start_2))
    assert -along_1 * turned == pytest.approx(along_2)
    assert (complex(*start_1).conjugate() * along_1).real == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("hooks", list(Hooks))
def test_an_extension_spring_is_as_long_over_its_hooks_as_it_is(hooks: Hooks):
    """Free length is between the insides of the hooks: a wire more at each end over all."""
    assert MUSIC is not None
    spring = ExtensionSpring(1.0, 9.0, 45.0, 20.0, 20.0, hooks, MUSIC, 81500.0, 206000.0, 2200.0)
    picture = hooked_one_to_one(spring, (180.0, 220.0))
    assert picture is not None
    rings = parsed(picture).findall("svg:circle", NAMESPACE)
    ends = [float(r.attrib["cy"]) + sign * (float(r.attrib["r"]) + 0.5) for r in rings for sign in (-1, 1)]
    if hooks is Hooks.THREADED_PLUG:
        assert not rings
    else:
        assert max(ends) - min(ends) == pytest.approx(45.0 + 2.0, abs=0.05)
    assert hooked_one_to_one(spring, (180.0, 40.0)) is None


def test_a_torsion_spring_of_unknown_angle_has_no_outline():
    spring = a_torsion_spring(5.0, Hand.RIGHT)
    assert end_view(spring, (180.0, 200.0)) is not None
    assert end_view(replace(spring, free_angle_deg=None), (180.0, 200.0)) is None
    assert end_view(spring, (30.0, 200.0)) is None


def test_words_of_the_user_cannot_become_marks_of_the_drawing():
    picture = svg.Picture(10.0, 10.0, "<b>&", "</svg><script>", (svg.text((1.0, 1.0), "<i>\"'&"),))
    root = parsed(picture)
    assert [each.text for each in root] == ["<b>&", "</svg><script>", "<i>\"'&"]


def test_a_dimension_too_short_for_its_words_has_them_beside_it():
    short = svg.dimension((0.0, 0.0), (5.0, 0.0), "5.00 mm outside", 5.0)
    assert 'text-anchor="start"' in short[-1]
    assert 'text-anchor="middle"' in svg.dimension((0.0, 0.0), (60.0, 0.0), "60 mm", 5.0)[-1]


def drawn_words(picture: svg.Picture) -> str:
    return " ".join(each.text or "" for each in parsed(picture).iter("{http://www.w3.org/2000/svg}text"))


DRAWN = {
    "cylinder": springs.dimensioned(CYLINDER, "mm"),
    "cone": springs.dimensioned(CONE, "inch"),
    "stretched": hooked_dimensioned(
        ExtensionSpring(0.8, 5.6, 43.0, 40.8, 40.4, Hooks.SIDE_HOOK, MUSIC, 81500.0, 206000.0, 2200.0), "mm"
    ),
    "turned": turned_dimensioned(a_torsion_spring(5.25, Hand.LEFT), "inch"),
    "loose legs": turned_dimensioned(replace(a_torsion_spring(5.0, Hand.RIGHT), leg_1=None, free_angle_deg=None), "mm"),
    "long leg": turned_dimensioned(replace(a_torsion_spring(4.6, Hand.RIGHT), leg_2=Leg(150.0, LegShape.HOOKED)), "mm"),
    "hands": both_hands(),
    "mandrel": wound_picture(coil_of(plan()), "mm"),
    "line": springs.check_line(),
}


@pytest.mark.parametrize("name", DRAWN)
def test_no_line_is_too_thin_to_print_and_no_word_too_small_to_read(name: str):
    """0.2 mm, and 7 points (2.47 mm)."""
    for each in parsed(DRAWN[name]).iter():
        if each.get("stroke") == "black":
            assert float(each.attrib["stroke-width"]) >= 0.2
        if each.tag.endswith("}text"):
            assert float(each.attrib["font-size"]) >= 2.47
        assert {each.get("stroke"), each.get("fill")} <= {None, "none", "black", "white"}


@pytest.mark.parametrize("name", DRAWN)
def test_every_word_of_a_drawing_lies_within_it(name: str):
    picture = DRAWN[name]
    moved = re.findall(r'<g transform="translate\(([\d.]+) 0\)">', picture.svg())
    for each in parsed(picture).iter("{http://www.w3.org/2000/svg}text"):
        if "transform" in each.attrib:
            continue
        wide, x = len(each.text or "") * svg.LETTER * float(each.attrib["font-size"]), float(each.attrib["x"])
        left = {"start": x, "middle": x - wide / 2, "end": x - wide}[each.attrib["text-anchor"]]
        room = picture.width_mm + 0.5 + (float(moved[0]) if moved else 0.0)
        assert left >= -0.5, each.text
        assert left + wide <= room, each.text


def test_a_dimensioned_drawing_tells_the_sizes_of_its_spring():
    assert {"9.60 mm", "31.0 mm"} <= set(re.findall(r"[\d.]+ mm", drawn_words(DRAWN["cylinder"])))
    assert {"6.40 mm", "43.0 mm", "33.1 mm", "0.80 mm"} <= set(
        re.findall(r"[\d.]+ mm", drawn_words(DRAWN["stretched"]))
    )
    assert "hooks: side hook" in drawn_words(DRAWN["stretched"])
    assert "leg 1 not known" in drawn_words(DRAWN["loose legs"])
    assert "leg 2 150 mm hooked" in drawn_words(DRAWN["long leg"])
    assert "left-hand, 5.25 coils" in drawn_words(DRAWN["turned"])


@pytest.mark.parametrize(("hand", "way"), [(Hand.RIGHT, -1), (Hand.LEFT, 1)])
def test_the_load_pushes_leg_2_the_way_that_winds_the_spring_up(hand: Hand, way: int):
    """Seen from the end of leg 1 a right-hand coil goes clockwise as it runs away, and so does the load on leg 2."""
    spring = a_torsion_spring(5.25, hand)
    picture = end_view(spring, (180.0, 200.0))
    assert picture is not None
    (arrow,) = (
        each.attrib
        for each in parsed(picture).findall("svg:line", NAMESPACE)
        if each.attrib["stroke-width"] == str(svg.LINE_MM)
    )
    push = complex(float(arrow["x2"]) - float(arrow["x1"]), float(arrow["y1"]) - float(arrow["y2"]))
    start, end = legs_of(spring)[1]
    leg = complex(end[0] - start[0], end[1] - start[1])
    turn = (leg.conjugate() * push).imag / abs(leg) / abs(push)
    assert turn == pytest.approx(way, abs=0.01)


def test_the_wire_on_its_mandrel_covers_as_much_as_the_plan_lays():
    laid = coil_of(plan())
    words = drawn_words(wound_picture(laid, "mm"))
    assert f"{2 * laid.seat_mm:.2f} mm" in words
    assert f"{laid.length_mm + laid.wire_mm:.1f} mm" in words
    assert f"{laid.turns:.2f} turns, right-hand" in words
    helix = laid_helix(laid)
    assert helix.long_mm == pytest.approx(laid.length_mm + laid.wire_mm)
    assert min(helix.radii_mm) - laid.wire_mm / 2 == pytest.approx(laid.thinnest_mm)


def test_a_long_outline_lies_on_its_side():
    long = springs.one_to_one(replace(CYLINDER, free_length_mm=150.0), (180.0, 200.0))
    assert long is not None
    assert long.width_mm == pytest.approx(154.0)
    assert long.height_mm < 20.0


def test_a_wire_too_thin_for_two_edges_is_black_and_as_thick_as_it_is():
    fine = springs.one_to_one(replace(CYLINDER, wire_diameter_mm=0.3), (180.0, 200.0))
    assert fine is not None
    assert {each.get("stroke-width") for each in parsed(fine).findall("svg:polyline", NAMESPACE)} == {"0.3"}


def test_a_height_too_short_for_its_words_has_them_beside_it():
    assert 'text-anchor="start"' in svg.dimension((0.0, 0.0), (0.0, 5.0), "5.00 mm", 5.0)[-1]
    assert "rotate(-90" in svg.dimension((0.0, 0.0), (0.0, 60.0), "60 mm", 5.0)[-1]


@pytest.mark.parametrize(
    ("hooks", "told"), [(Hooks.FULL_LOOP, "between its hooks"), (Hooks.THREADED_PLUG, "between the eyes of its plugs")]
)
def test_a_drawing_speaks_of_the_ends_that_an_extension_spring_has(hooks: Hooks, told: str):
    assert MUSIC is not None
    spring = ExtensionSpring(1.0, 9.0, 45.0, 20.0, 20.0, hooks, MUSIC, 81500.0, 206000.0, 2200.0)
    (described,) = parsed(hooked_dimensioned(spring, "mm")).findall("svg:desc", NAMESPACE)
    assert f"{told}, inside, 45.0 mm," in (described.text or "")
