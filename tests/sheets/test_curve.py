"""The curve of a winding sheet, measured on the drawing: bars are as long as the need's tolerance and stand at its
points, ticks stand where their figures say, and the line is the spring's own.

1 in = 25.4 mm, 1 lbf = 4.4482216 N (international yard and pound, 1959; standard gravity).
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from xml.etree import ElementTree

import numpy as np
import pytest

from sourcing.need.model import Need
from sourcing.quantities import Wanted
from sourcing.sheets import winding_pictures
from sourcing.springs import pressed, pulled, turned
from sourcing.springs.model import ExtensionSpring, Spring, TorsionSpring
from sourcing.winding.plan import plan_winding
from tests.winding import test_extension, test_torsion
from tests.winding.cases import BENCH, need, planned, point, spool
from tests.winding.test_conical_ends import cone_need

SVG = "{http://www.w3.org/2000/svg}"
ON_PAPER_MM = 0.011
"""Coordinates are written to a hundredth of a millimetre."""

THICK, DOTTED = "0.5", "0.5 1"

PER_UNIT = {"mm": (1.0, 1.0, 1.0), "inch": (25.4, 4.4482216, 4.4482216 * 25.4)}
"""What a unit of the axes holds: mm, N, N·mm."""

CASES: dict[str, tuple[Need, float]] = {
    "compression": (need(), 0.8),
    "conical": (cone_need(), 0.9),
    "extension": (test_extension.a_need(), 0.8),
    "torsion": (test_torsion.need(), 1.2),
}

Line = tuple[float, float, float, float]


@dataclass(frozen=True)
class Axis:
    """An axis as its ticks have it: from a place on the paper to the value there."""

    places: tuple[float, ...]
    values: tuple[float, ...]

    def value(self, place: float) -> float:
        slope, offset = np.polyfit(self.places, self.values, 1)
        return float(slope * place + offset)

    @property
    def a_hundredth(self) -> float:
        """The value of so much paper as a coordinate may be off."""
        return abs(self.value(ON_PAPER_MM) - self.value(0.0))


@dataclass(frozen=True)
class Drawn:
    """A curve read back from its drawing."""

    across: Axis
    up: Axis
    thick: tuple[Line, ...]
    circles: tuple[tuple[float, float], ...]
    points: tuple[tuple[float, float], ...]

    @property
    def bars(self) -> list[Line]:
        """From left to right: x, its lower end, x, its upper end."""
        return sorted(each for each in self.thick if each[0] == each[2])

    @property
    def caps(self) -> list[Line]:
        return [each for each in self.thick if each[1] == each[3]]


def drawn(need: Need, wire_mm: float, units: str) -> Drawn:
    plan = planned(plan_winding(need, spool(wire_mm, length_left_mm=20_000.0), BENCH))
    root = ElementTree.fromstring(winding_pictures.curve(replace(plan, units=units)).svg())

    def ends(each: ElementTree.Element) -> Line:
        x_1, y_1, x_2, y_2 = (float(each.attrib[key]) for key in ("x1", "y1", "x2", "y2"))
        return x_1, y_1, x_2, y_2

    lines = list(root.iter(f"{SVG}line"))
    dotted = [ends(each) for each in lines if each.get("stroke-dasharray") == DOTTED]
    figures = [
        (float(each.attrib["x"]), float(each.attrib["y"]), each.attrib["text-anchor"], float(each.text or ""))
        for each in root.iter(f"{SVG}text")
        if re.fullmatch(r"-?[\d.]+", each.text or "")
    ]
    columns = sorted(x for x, _, other, _ in dotted if x == other)
    rows = sorted(y for x, y, other, _ in dotted if x != other)
    below = sorted((x, value) for x, _, anchor, value in figures if anchor == "middle")
    beside = sorted((y, value) for _, y, anchor, value in figures if anchor == "end")
    assert [x for x, _ in below] == columns
    assert [y for y, _ in beside] == pytest.approx([y + 1.0 for y in rows], abs=ON_PAPER_MM)
    (curve,) = (each for each in root.iter(f"{SVG}polyline"))
    return Drawn(
        Axis(tuple(columns), tuple(value for _, value in below)),
        Axis(tuple(rows), tuple(value for _, value in beside)),
        tuple(ends(each) for each in lines if each.get("stroke-width") == THICK),
        tuple((float(each.attrib["cx"]), float(each.attrib["cy"])) for each in root.iter(f"{SVG}circle")),
        tuple((float(x), float(y)) for x, y in re.findall(r"([\d.]+),([\d.]+)", curve.attrib["points"])),
    )


def wanted_points(need: Need, units: str) -> list[tuple[float, float, float]]:
    """Where on the axis, from and up to what: the need's own tolerances in the axes' units."""
    length, force, torque = PER_UNIT[units]
    if need.kind == "torsion":
        wishes = [(each.at_deg, each.torque_n_mm, 1.0, torque) for each in need.turned]
    else:
        wishes = [(each.at_mm, each.force_n, length, force) for each in need.working]
    found = []
    for at, wish, along, up in wishes:
        assert wish is not None
        assert wish.nominal is not None
        minus, plus = (0.15 * wish.nominal if each is None else each for each in (wish.minus, wish.plus))
        found.append((at / along, (wish.nominal - minus) / up, (wish.nominal + plus) / up))
    return sorted(found)


every_kind = pytest.mark.parametrize("kind", CASES)
both_units = pytest.mark.parametrize("units", ["mm", "inch"])


@every_kind
@both_units
def test_a_bar_stands_at_its_point_and_is_as_long_as_the_tolerance(kind: str, units: str) -> None:
    wish, wire_mm = CASES[kind]
    picture = drawn(wish, wire_mm, units)
    wanted = wanted_points(wish, units)
    assert len(picture.bars) == len(wanted) >= 2
    for (x, bottom, _, top), (at, low, high) in zip(picture.bars, wanted, strict=True):
        assert picture.across.value(x) == pytest.approx(at, abs=2 * picture.across.a_hundredth)
        assert picture.up.value(bottom) == pytest.approx(low, abs=2 * picture.up.a_hundredth)
        assert picture.up.value(top) == pytest.approx(high, abs=2 * picture.up.a_hundredth)
        for end in (bottom, top):
            (cap,) = [each for each in picture.caps if each[1] == end and each[0] < x < each[2]]
            assert (cap[0] + cap[2]) / 2 == pytest.approx(x, abs=ON_PAPER_MM)
        assert any(
            c_x == x and c_y == pytest.approx((bottom + top) / 2, abs=ON_PAPER_MM) for c_x, c_y in picture.circles
        )
    assert len(picture.caps) == 2 * len(wanted)
    assert len(picture.circles) == len(wanted)


@every_kind
@both_units
def test_ticks_stand_where_their_figures_say(kind: str, units: str) -> None:
    wish, wire_mm = CASES[kind]
    picture = drawn(wish, wire_mm, units)
    for axis in (picture.across, picture.up):
        assert len(axis.values) >= 2
        for place, value in zip(axis.places, axis.values, strict=True):
            assert axis.value(place) == pytest.approx(value, abs=2 * axis.a_hundredth)
    assert picture.up.values[-1] == 0.0
    assert list(picture.across.values) == sorted(picture.across.values)


def meant_of(spring: Spring, at: float) -> float:
    """The force at a length in mm, or the torque at an angle in deg."""
    match spring:
        case TorsionSpring():
            return turned.rate_n_mm_per_deg(spring) * at
        case ExtensionSpring():
            tension_n = spring.initial_tension_n or 0.0
            return max(tension_n, pulled.force_n(spring, at, pulled.rate_n_per_mm(spring), tension_n))
        case _:
            return pressed.force_n(spring, at, pressed.rate_n_per_mm(spring))


@every_kind
@both_units
def test_the_line_is_the_spring_s_own(kind: str, units: str) -> None:
    """At every point of the line, the force or torque of the spring that is planned."""
    wish, wire_mm = CASES[kind]
    picture = drawn(wish, wire_mm, units)
    spring = planned(plan_winding(wish, spool(wire_mm, length_left_mm=20_000.0), BENCH)).wanted
    length, force, torque = PER_UNIT[units]
    along, up = (1.0, torque) if kind == "torsion" else (length, force)
    aside = 2 * picture.across.a_hundredth
    for x, y in picture.points:
        at = picture.across.value(x)
        bounds = [meant_of(spring, (at + way) * along) / up for way in (-aside, aside)]
        assert min(bounds) - 2 * picture.up.a_hundredth <= picture.up.value(y)
        assert picture.up.value(y) <= max(bounds) + 2 * picture.up.a_hundredth


@both_units
def test_a_bound_that_is_open_runs_to_the_edge_and_has_no_end_there(units: str) -> None:
    """At least 20 N, with the 15 % of a bench that says nothing: 17 N are accepted."""
    wish = need(working=(point(24, 9), point(14, Wanted(low=20.0))))
    picture = drawn(wish, 0.8, units)
    (first, *_), top = picture.bars, picture.up.places[0]
    assert picture.up.value(first[1]) == pytest.approx(17.0 / PER_UNIT[units][1], abs=2 * picture.up.a_hundredth)
    assert first[3] <= top
    assert len(picture.caps) == 3
    assert len(picture.circles) == 1
