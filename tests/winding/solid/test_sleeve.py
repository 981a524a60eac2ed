"""A sleeve on a steel rod: its rod, its bore, what it stands, and that one meant to be broken can be."""

from __future__ import annotations

from dataclasses import replace
from math import pi, tau

import numpy as np
import pytest

from sourcing.springs.model import CompressionSpring
from sourcing.stock.model import Bench
from sourcing.winding.model import Refusal
from sourcing.winding.pull import yield_force_n
from sourcing.winding.solid.coil import coil_of
from sourcing.winding.solid.made import sleeve_of
from sourcing.winding.solid.made import solid_for as made_for
from sourcing.winding.solid.printed import SAFE, greatest_pull_n, safety_of
from sourcing.winding.solid.printed_words import times
from sourcing.winding.solid.rings import mesh_of
from sourcing.winding.solid.shape import MandrelSolid
from sourcing.winding.solid.sleeve import (
    BREAK_SKIN_MM,
    BREAKS_RAD,
    FLAT_RAD,
    LEAST_WALL_MM,
    Bore,
    flat_depth_mm,
    safety_of_flat,
    sleeve_rod_mm,
    sleeve_wall_mm,
)
from tests.winding.cases import BENCH, need, plan, spool

from .plans import random_plans, solid_for, told


def sleeves() -> list[MandrelSolid]:
    made = [solid_for(each, shank="sleeve") for each in random_plans()]
    return [each for each in made if isinstance(each.held, Bore)]


def test_the_thickest_rod_that_leaves_the_least_wall_is_taken() -> None:
    rods = Bench().rods_mm
    for outside_mm in np.arange(4.0, 16.0, 0.05):
        rod_mm = sleeve_rod_mm(outside_mm, rods)
        thicker = [rod for rod in rods if rod_mm is None or rod > rod_mm]
        assert rod_mm is None or sleeve_wall_mm(outside_mm, rod_mm) >= LEAST_WALL_MM - 1e-9
        assert all(sleeve_wall_mm(outside_mm, rod) < LEAST_WALL_MM for rod in thicker)


def test_where_no_rod_leaves_a_wall_there_is_no_sleeve_and_the_reason_is_told() -> None:
    refused = sleeve_of(coil_of(plan(spool())), "a job", Bench(rods_mm=(8.0,)))
    assert isinstance(refused, Refusal)
    assert "no rod on hand (`rods` in bench.yaml)" in refused.why


def test_the_wall_is_nowhere_thinner_than_told_but_at_break_lines() -> None:
    """Measured on the mesh, from the axis out, at each angle over the whole body."""
    for solid in sleeves()[:6]:
        assert isinstance(solid.held, Bore)
        x, y, z = np.array(mesh_of(solid).vertices).T
        angle, radius = np.arctan2(y, x) % tau, np.hypot(x, y)
        bore_mm = np.array([solid.held.radius_mm(each) for each in angle])
        body = (z > solid.face_mm + 0.1) & (radius > bore_mm + 1e-6)
        least_mm = (radius - bore_mm)[body].min()
        wanted_mm = BREAK_SKIN_MM if solid.held.breaks_mm else solid.held.wall_mm
        assert least_mm >= wanted_mm - 1e-6
        assert least_mm == pytest.approx(wanted_mm, abs=0.02)


def test_the_filed_rod_goes_into_the_bore_one_way_only() -> None:
    """Its outline, a circle with a flat, lies inside the bore's, and turned by more than a little it does not."""
    for rod_mm in (3.0, 5.0, 12.0):
        assert room_mm(rod_mm, 0.0) == pytest.approx(0.1, abs=0.005)
        assert all(room_mm(rod_mm, turned) < 0 for turned in np.linspace(0.3, tau - 0.3, 20))


def room_mm(rod_mm: float, turned_rad: float) -> float:
    """What the bore leaves round its filed rod at the tightest, the rod turned."""
    bore, flat_mm, angles = Bore(rod_mm, 1.0), rod_mm / 2 - flat_depth_mm(rod_mm), np.arange(3600) * tau / 3600
    across = np.cos(angles - FLAT_RAD - turned_rad)
    rod = np.where(across * rod_mm / 2 > flat_mm, flat_mm / np.maximum(across, 1e-9), rod_mm / 2)
    return float((np.array([bore.radius_mm(each) for each in angles]) - rod).min())


def test_break_lines_leave_a_skin_and_keep_clear_of_the_flat() -> None:
    broken = [each for each in sleeves() if each.release.way == "break"]
    assert broken
    for solid in broken:
        bore = solid.held
        assert isinstance(bore, Bore)
        assert solid.coil.thinnest_mm - bore.breaks_mm == pytest.approx(BREAK_SKIN_MM)
        assert all(bore.radius_mm(angle) == bore.breaks_mm for angle in BREAKS_RAD)
        assert bore.radius_mm(FLAT_RAD) == pytest.approx(bore.flat_mm)
        assert bore.radius_mm(pi / 4) == bore.round_mm


def test_only_a_sleeve_that_would_hold_its_coil_has_break_lines() -> None:
    for each in random_plans():
        shanked, sleeve = solid_for(each), solid_for(each, shank="sleeve")
        if isinstance(sleeve.held, Bore):
            assert (sleeve.release.way == "break") == bool(sleeve.held.breaks_mm)
            if sleeve.release.way == "break":
                assert shanked.release.way == "split" or shanked.release.least_clearance_mm <= 0.1


def test_the_flat_is_as_strong_as_its_pressures_summed_by_hand() -> None:
    """Strips of half of the flat, each pressed by its share of the greatest pressure, times its arm."""
    rod_mm, deep_mm, long_mm = 6.0, 0.9, 40.0
    half_mm = (deep_mm * (rod_mm - deep_mm)) ** 0.5
    arms_mm = (np.arange(10000) + 0.5) * half_mm / 10000
    torque_n_mm = float((40.0 * arms_mm / half_mm * arms_mm * half_mm / 10000).sum() * long_mm)
    assert safety_of_flat(40.0, long_mm, torque_n_mm, deep_mm, rod_mm) == pytest.approx(1.0, rel=1e-6)


def test_half_as_long_a_piece_holds_half_as_much_on_its_flat() -> None:
    made, solid = plan(spool(1.0)), solid_for(plan(spool(1.0)), shank="sleeve")
    short_mm = solid.length_mm / 8
    assert safety_of(made, solid, short_mm) == pytest.approx(2 * safety_of(made, solid, short_mm / 2))


def test_the_words_tell_rod_wall_and_flat() -> None:
    made = plan(spool(1.0))
    solid = solid_for(made, shank="sleeve")
    said = told(made, solid, need(), Bench())
    assert "a sleeve on a steel rod of 5.00 mm" in said
    assert "File a flat 0.75 mm deep along it" in said
    assert "4.25 mm are left across it" in said
    assert f"On its rod it stands {times(safety_of(made, solid))}" in said


def test_a_printed_one_that_would_twist_off_becomes_a_sleeve_that_stands_or_is_refused() -> None:
    """What is handed out to be printed stands twice the torque, whatever the spring and whatever holds the mandrel."""
    bench = Bench(tools=("vice", "printer"))
    seen = set()
    for each in random_plans():
        sleeve = solid_for(each, shank="sleeve")
        safe = safety_of(each, solid_for(each)) >= SAFE, safety_of(each, sleeve) >= SAFE
        for held in (None, "hex", "sleeve"):
            made = made_for(each, "a job", bench, held, printed=True)
            assert isinstance(made, Refusal) or safety_of(each, made) >= SAFE
            seen.add((held, isinstance(made, Refusal)))
        offered = made_for(each, "a job", bench, None, printed=True)
        assert isinstance(offered, MandrelSolid) is (safe[0] or (safe[1] and isinstance(sleeve.held, Bore)))
    assert seen == {(held, refused) for held in (None, "hex", "sleeve") for refused in (False, True)}


def test_one_that_would_break_is_refused_with_what_it_stands_and_what_to_take_instead() -> None:
    bench, thin = Bench(tools=("vice", "printer")), 0
    for each in random_plans():
        made = made_for(each, "a job", bench, "hex", printed=True)
        if isinstance(made, MandrelSolid):
            continue
        thin += 1
        assert made.rule == "mandrel-would-break"
        assert f"stands only {times(safety_of(each, solid_for(each)))} the crank's torque" in made.why
        assert "2 times is wanted" in made.why
        assert "turn it from steel by its drawing" in made.why
        sleeve = solid_for(each, shank="sleeve")
        stands = isinstance(sleeve.held, Bore) and safety_of(each, sleeve) >= SAFE
        assert ("--shank sleeve, which stands" in made.why) is stands
    assert thin > 5


def test_a_drawing_to_turn_a_mandrel_by_is_never_too_weak() -> None:
    assert all(
        isinstance(made_for(each, "a job", Bench(tools=("lathe",)), None, printed=False), MandrelSolid)
        for each in random_plans()
    )


def test_the_greatest_pull_of_a_sleeve_leaves_its_weakest_place_twice_what_it_stands() -> None:
    bounded = 0
    for each in random_plans():
        solid = solid_for(each, shank="sleeve")
        if not isinstance(solid.held, Bore) or safety_of(each, solid) < SAFE:
            continue
        most_n = greatest_pull_n(each, solid, BENCH)
        at_most = safety_of(replace(each, pull_n=most_n), solid)
        share = most_n / yield_force_n(6 * each.crank_moment_n_mm / each.wire_diameter_mm**3, each.wire_diameter_mm)
        assert share <= 0.1 + 1e-9
        assert at_most == pytest.approx(SAFE) or (share == pytest.approx(0.1) and at_most > SAFE)
        bounded += share < 0.0999
    assert bounded


def test_a_spring_that_would_hold_on_a_sleeve_is_told_how_to_break_it() -> None:
    each = next(each for each in random_plans() if solid_for(each, shank="sleeve").release.way == "break")
    said = told(each, solid_for(each, shank="sleeve"), need(), Bench())
    assert "meant to be broken" in said
    assert "draw the rod out" in said
    assert "Never melt or burn it out" in said


def test_a_closely_wound_coil_that_may_hold_gets_a_sleeve_to_be_broken() -> None:
    """An extension or torsion spring of which one in forty opens by nothing."""
    each = next(each for each in random_plans() if each.wanted.kind == "extension" and coil_of(each).seat_mm > 3)
    coil = coil_of(each)
    held = replace(
        coil, stations=tuple(replace(station, least_released_mm=station.radius_mm) for station in coil.stations)
    )
    solid = sleeve_of(held, "a job", Bench())
    assert isinstance(solid, MandrelSolid)
    assert (solid.release.way, solid.release.groove_depth_mm) == ("break", 0.0)


def test_a_compression_spring_s_groove_on_a_sleeve_to_be_broken_is_as_deep_as_its_wire_wants() -> None:
    made = [each for each in random_plans() if isinstance(each.wanted, CompressionSpring)]
    broken = [each for each in (solid_for(plan, shank="sleeve") for plan in made) if each.release.way == "break"]
    assert all(each.release.groove_depth_mm == pytest.approx(0.3 * each.coil.wire_mm) for each in broken)


def test_the_bore_has_a_flat_all_along_on_the_mesh() -> None:
    solid = sleeves()[0]
    assert isinstance(solid.held, Bore)
    x, y, z = np.array(mesh_of(solid).vertices).T
    flat = abs(np.arctan2(y, x) % tau - FLAT_RAD) < 0.2
    on_flat = flat & (abs(np.hypot(x, y) * np.cos(np.arctan2(y, x) - FLAT_RAD) - solid.held.flat_mm) < 1e-9)
    assert {round(float(each), 6) for each in z[on_flat]} == {round(solid.foot_mm, 6), round(solid.end_mm, 6)}
