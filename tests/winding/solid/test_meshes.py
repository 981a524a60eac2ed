"""Meshes of mandrels for sixty plans of all kinds: closed, turned outwards, of the right volume, read back the same."""

from __future__ import annotations

import io
from dataclasses import dataclass, replace
from itertools import pairwise
from math import asin, pi, sqrt, tau

import numpy as np
import pytest
import trimesh
from scipy.spatial import KDTree

from sourcing.files.solids import Part, stl_of, threemf_of
from sourcing.springs.model import Hand
from sourcing.winding.model import WindingPlan
from sourcing.winding.solid.bed import STANDING, OnBed, cuts_mm, meshes_of
from sourcing.winding.solid.in_steps import comes_off
from sourcing.winding.solid.mesh import Mesh
from sourcing.winding.solid.rings import half_of, mesh_of, piece_of
from sourcing.winding.solid.shape import DOT_MM, ENGRAVED_MM, MARK_DEEP_MM, MARK_MM, MandrelSolid, Shank
from sourcing.winding.solid.sleeve import Bore
from sourcing.winding.solid.surface import profile_at
from sourcing.winding.solid.unwound import room_at_rest_mm, steepest_climb_mm
from tests.winding.cases import BENCH

from .plans import HOW_MANY, MAKERS, kinds_without_a_plan, random_plans, solid_for

HALF_A_PER_CENT = 0.005
SHANKS = ("hex", "round", "drill", "sleeve", "sleeve")


@dataclass(frozen=True)
class Made:
    """A plan's mandrel, its meshes as they are written, and the same on its axis: the whole, or halves, or pieces."""

    plan: WindingPlan
    solid: MandrelSolid
    meshes: tuple[Mesh, ...]
    on_axis: tuple[Mesh, ...]


def _made(at: int) -> Made:
    plan = random_plans()[at]
    solid = solid_for(plan, shank=SHANKS[at % len(SHANKS)])
    lies = OnBed(standing=at % 4 == 0, pieces=1 + at % 3) if isinstance(solid.held, Bore) else STANDING
    halves = tuple(half_of(solid, half) for half in (1, -1)) if solid.release.way == "split" else ()
    pieces = tuple(piece_of(solid, low, high) for low, high in pairwise(cuts_mm(solid, lies.pieces)))
    return Made(plan, solid, meshes_of(solid, lies), halves or pieces)


@pytest.fixture(scope="module", params=range(HOW_MANY), ids=lambda at: f"{at}-{random_plans()[at].wanted.kind}")
def made(request: pytest.FixtureRequest) -> Made:
    """One at a time: all tests of one mandrel run before the next is made."""
    return _made(request.param)


def as_trimesh(mesh: Mesh) -> trimesh.Trimesh:
    return trimesh.Trimesh(np.array(mesh.vertices), np.array(mesh.triangles))


def body_of(mesh: Mesh, solid: MandrelSolid) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Angle, radius and height of the mesh's points above the collar's face, of the solid as it stands on its axis."""
    x, y, z = np.array(mesh.vertices).T
    above = z > solid.face_mm + 1e-6
    return np.arctan2(y, x)[above] % tau, np.hypot(x, y)[above], z[above]


def body_of_all(made: Made) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """The same of all pieces together, less the bore, which no coil meets."""
    angle, radius, height = (
        np.concatenate(each) for each in zip(*(body_of(mesh, made.solid) for mesh in made.on_axis), strict=True)
    )
    if not isinstance(made.solid.held, Bore):
        return angle, radius, height
    outside = radius > np.array([made.solid.held.radius_mm(each) for each in angle]) + 1e-6
    return angle[outside], radius[outside], height[outside]


def test_every_kind_that_is_wound_has_plans_here() -> None:
    assert not kinds_without_a_plan()


def test_every_way_off_is_among_the_plans() -> None:
    made = [solid_for(plan, shank=shank) for plan in random_plans() for shank in ("hex", "sleeve")]
    assert {each.release.way for each in made} == {"slide", "unscrew", "ledge", "split", "break"}


def test_sleeves_and_both_bodies_of_double_springs_are_among_the_plans() -> None:
    """And sleeves in one, two and three pieces."""
    solids = [solid_for(plan, shank=SHANKS[at % len(SHANKS)]) for at, plan in enumerate(random_plans())]
    sleeves = {(1 + at % 3, each.release.way) for at, each in enumerate(solids) if isinstance(each.held, Bore)}
    assert {pieces for pieces, _ in sleeves} == {1, 2, 3}
    assert {way for _, way in sleeves} >= {"slide", "ledge", "break"}
    assert any(each.coil.loop_mm for each in solids)


def test_a_mesh_is_closed_and_turned_outwards(made: Made) -> None:
    for mesh in made.meshes:
        read = as_trimesh(mesh)
        assert read.is_watertight
        assert read.is_winding_consistent
        assert read.volume > 0
        assert read.euler_number == (0 if isinstance(made.solid.held, Bore) else 2)
        assert read.volume == pytest.approx(mesh.volume_mm3)


def test_the_volume_of_a_mesh_is_that_of_the_integral(made: Made) -> None:
    volume_mm3 = sum(as_trimesh(mesh).volume for mesh in made.meshes)
    assert volume_mm3 == pytest.approx(integral_mm3(made.solid), rel=HALF_A_PER_CENT)


def integral_mm3(solid: MandrelSolid) -> float:
    """Half of the radius squared over angle and height, piece by piece, from the dimensions and not from the mesh."""
    held, collar = solid.held, solid.collar
    angles = (np.arange(1440) + 0.5) * tau / 1440
    cut_mm = solid.release.strip_mm / 2

    def area_mm2(radii: np.ndarray) -> float:
        """Of a section, less what lies within the strip."""
        return float(np.maximum(0.0, radii**2 - (cut_mm / np.sin(angles)) ** 2).mean() * pi)

    gripped = np.array([held.radius_mm(angle) for angle in angles])
    from_slot = (angles - pi / 2 + pi) % tau - pi
    round_mm = np.where(abs(from_slot) < collar.slot_half_rad, collar.slot_floor_mm, collar.radius_mm)
    shares = (np.arange(50) + 0.5) / 50
    taper = sum(area_mm2(gripped + share * (round_mm - gripped)) for share in shares) / 50 * solid.taper_mm
    dots = len(collar.dots) * DOT_MM**2 * ENGRAVED_MM * (1 - ENGRAVED_MM / 2 / collar.radius_mm)
    rows = int((solid.end_mm - solid.face_mm) / solid.coil.wire_mm * 20)
    step_mm = (solid.end_mm - solid.face_mm) / rows
    heights = solid.face_mm + (np.arange(rows) + 0.5) * step_mm
    some = angles[::24]
    profiles = [profile_at(solid.coil, solid.release, angle) for angle in some]
    radii = np.array([[profile(height) for height in heights] for profile in profiles])
    inside = np.maximum(0.0, radii**2 - (cut_mm / np.sin(some)[:, None]) ** 2)
    body = float(inside.mean(axis=0).sum() * pi * step_mm) - (MARK_MM**2 * MARK_DEEP_MM if solid.coil.loop_mm else 0.0)
    below = -area_mm2(gripped) * solid.length_mm
    if isinstance(held, Shank):
        below = area_mm2(gripped) * held.length_mm + taper
    return below + area_mm2(round_mm) * collar.height_mm - dots + body


def test_both_files_hold_the_volume_of_the_mesh(made: Made) -> None:
    parts = [Part(mesh.vertices, mesh.triangles) for mesh in made.meshes]
    volume_mm3 = sum(mesh.volume_mm3 for mesh in made.meshes)
    stl = trimesh.load(io.BytesIO(stl_of(parts)), file_type="stl")
    assert stl.is_watertight
    assert stl.volume == pytest.approx(volume_mm3, rel=1e-5)
    scene = trimesh.load(io.BytesIO(threemf_of(parts, "a job")), file_type="3mf")
    assert scene.units == "millimeter"
    read = list(scene.geometry.values())
    assert len(read) == len(parts)
    assert all(each.is_watertight for each in read)
    assert sum(each.volume for each in read) == pytest.approx(volume_mm3, rel=1e-5)


def test_the_finished_spring_comes_off_the_mesh(made: Made) -> None:
    """Every coil, opened as little as one in forty does, keeps clear of the mesh on its way off.

    A cone has unwound and stands at any angle: it is clear once it has moved towards its small end by a turn's climb.
    """
    solid = made.solid
    coil, least_mm = solid.coil, solid.release.least_clearance_mm
    half_mm = coil.wire_mm / 2
    if solid.release.way == "split":
        for half, mesh in zip((1, -1), made.on_axis, strict=True):
            x, y, z = np.array(mesh.vertices).T
            body = z > solid.face_mm + 1e-6
            moved = np.hypot(x, y - half * solid.release.strip_mm / 2)[body]
            assert coil.stations[0].least_released_mm - half_mm - moved.max() >= min(least_mm, 0.05) - 1e-6
        return
    angle, radius, height = body_of_all(made)
    if solid.release.way == "break":
        assert isinstance(solid.held, Bore)
        assert solid.held.round_mm < solid.held.breaks_mm < solid.coil.thinnest_mm
    elif solid.release.way == "slide":
        assert coil.stations[0].least_released_mm - half_mm - radius.max() == pytest.approx(least_mm, abs=1e-6)
    elif solid.release.way == "ledge":
        for turn in np.linspace(0.0, coil.turns, 200):
            at = coil.at(float(turn))
            moved_mm = at.height_mm + steepest_climb_mm(coil)
            below = np.minimum(height - moved_mm, 0.0)
            passed = below > -half_mm
            underside = at.least_released_mm - np.sqrt(half_mm**2 - below[passed] ** 2)
            assert (underside - radius[passed]).min(initial=np.inf) >= least_mm - 1e-6
    else:
        (first, second), released_mm = coil.stations[:2], coil.stations[0].least_released_mm
        pitch_mm = (second.height_mm - first.height_mm) / (second.turn - first.turn)
        way = -1.0 if coil.hand is Hand.LEFT else 1.0
        from_axis = (height - way * (angle - pi / 2) / tau * pitch_mm + pitch_mm / 2) % pitch_mm - pitch_mm / 2
        under = abs(from_axis) < half_mm
        underside = released_mm - np.sqrt(half_mm**2 - from_axis[under] ** 2)
        assert (underside - radius[under]).min() > 0


def room_on_mesh_mm(solid: MandrelSolid, body: tuple[np.ndarray, np.ndarray, np.ndarray], moved_mm: float) -> float:
    """The least room of an unwound cone held at the slot: each point of the mesh against the coil nearest above it."""
    coil, half_mm = solid.coil, solid.coil.wire_mm / 2
    angle, radius, height = body
    way = -1.0 if coil.hand is Hand.LEFT else 1.0
    places = [coil.at(float(turn)) for turn in np.linspace(0.0, coil.turns, 4000)]
    turned = np.cumsum([coil.turns / 4000 * each.radius_mm / each.released_mm for each in places])
    on_turn = way * (angle - pi / 2) / tau % 1.0
    least_mm = np.inf
    for whole in range(int(turned[-1]) + 1):
        found = np.minimum(np.searchsorted(turned, on_turn + whole), len(places) - 1)
        off_mm = height - moved_mm - np.array([each.height_mm for each in places])[found]
        met = (abs(off_mm) < 0.9 * half_mm) & (on_turn + whole <= turned[-1])
        underside = np.array([each.least_released_mm for each in places])[found[met]]
        rooms = underside - np.sqrt(half_mm**2 - off_mm[met] ** 2) - radius[met]
        least_mm = min(least_mm, rooms.min(initial=np.inf))
    return least_mm


def test_a_cone_whose_turns_stand_against_the_walls_is_freed_at_the_slot_first() -> None:
    """Said where the mesh meets the unwound coil, and not where it is clear by more than the places between points."""
    cones = [each for each in map(solid_for, random_plans()) if each.coil.tapered]
    held = []
    for solid in cones[::2]:
        body = body_of(mesh_of(solid), solid)
        rest_mm = room_on_mesh_mm(solid, body, 0.0)
        assert room_at_rest_mm(solid.coil, solid.release) == pytest.approx(rest_mm, abs=0.06 * solid.coil.wire_mm)
        moved_mm = steepest_climb_mm(solid.coil)
        assert room_on_mesh_mm(solid, body, moved_mm) >= 0
        said = "free its end at the slot first" in comes_off(solid, BENCH)
        held.append(said)
        if abs(rest_mm) > 0.06 * solid.coil.wire_mm:
            assert said == (rest_mm < 0)
    assert {True, False} == set(held)


@pytest.mark.parametrize("kind", ["compression", "conical"])
@pytest.mark.parametrize("hand", [Hand.LEFT, Hand.RIGHT])
def test_the_seat_climbs_the_way_of_the_hand(kind: str, hand: Hand) -> None:
    """Seen on the mesh: from one column of points to the next, the seat moves up on a right-hand mandrel."""
    plans = [plan for plan in random_plans() if plan.wanted.kind == kind and plan.wanted.hand is hand]
    solids = [each for each in map(solid_for, plans) if each.coil.tapered or each.release.groove_depth_mm][:4]
    assert solids
    for solid in solids:
        angle, radius, _ = body_of(mesh_of(solid), solid)
        columns, rows = np.unique(np.round(angle, 9), return_counts=True)
        one, other = columns[rows > 2][[20, 22]]
        sides = [radius[np.isclose(angle, each, atol=1e-8)] for each in (one, other)]
        rows = min(map(len, sides))
        slope = np.diff(sides[0][:rows])
        change = (sides[1][:rows] - sides[0][:rows])[1:]
        assert (np.sum(slope * change) < 0) == (hand is Hand.RIGHT)


@pytest.mark.parametrize("shank", ["hex", "sleeve"])
@pytest.mark.parametrize("kind", list(MAKERS))
def test_a_left_hand_mandrel_is_a_right_hand_one_in_the_mirror(kind: str, shank: str) -> None:
    """But for the name, which is read from left to right on both. No hand is drawn as right."""
    plan = next(plan for plan in random_plans() if plan.wanted.kind == kind and plan.wanted.hand is not None)
    points = {}
    for hand in (Hand.LEFT, Hand.RIGHT, None):
        solid = solid_for(replace(plan, wanted=replace(plan.wanted, hand=hand)), shank=shank)
        assert solid.collar.lines[-1].endswith("L" if hand is Hand.LEFT else "R")
        vertices = np.array(mesh_of(solid).vertices)
        points[hand] = vertices[vertices[:, 2] > solid.face_mm + 0.1]
    mirrored = points[Hand.LEFT] * (-1, 1, 1)
    assert len(mirrored) == len(points[Hand.RIGHT])
    assert KDTree(points[Hand.RIGHT]).query(mirrored)[0].max() < 1e-6
    assert (points[None] == points[Hand.RIGHT]).all()


def test_the_name_is_cut_into_the_collar_to_be_read_from_left_to_right() -> None:
    """Dots read back from the mesh, as somebody sees them who holds the shank down and turns the mandrel."""
    solid = solid_for(random_plans()[0], "LF 7/")
    collar = solid.collar
    x, y, z = np.array(mesh_of(solid).vertices).T
    on_collar = (z <= solid.face_mm + 1e-9) & (z >= solid.face_mm - collar.height_mm)
    cut = on_collar & (abs(np.hypot(x, y) - (collar.radius_mm - ENGRAVED_MM)) < 1e-6)
    along = (np.arctan2(y, x)[cut] - collar.first_dot_rad) % tau * collar.radius_mm / DOT_MM
    down = (solid.face_mm - DOT_MM - z[cut]) / DOT_MM
    read = {(int(column), int(row)) for column, row in zip(along, down, strict=True)}
    assert read == collar.dots
    picture = ["".join("#" if (column, row) in read else "." for column in range(11)) for row in range(7)]
    assert picture == [
        "#.....#####", "#.....#....", "#.....#....", "#.....####.", "#.....#....", "#.....#....", "#####.#....",
    ]  # fmt: skip


def test_a_hexagon_is_as_wide_across_flats_as_it_says() -> None:
    solid = solid_for(random_plans()[0], shank="hex")
    x, y, z = np.array(mesh_of(solid).vertices).T
    foot = z == z.min()
    assert np.hypot(x, y)[foot].max() == pytest.approx(solid.held.across_mm / sqrt(3), rel=1e-6)
    flats = np.cos(np.arctan2(y, x)[foot] - pi / 6) * np.hypot(x, y)[foot]
    assert flats.max() == pytest.approx(solid.held.across_mm / 2, rel=1e-6)


def test_the_slot_lets_the_wire_in_where_it_lies() -> None:
    for plan in random_plans():
        solid = solid_for(plan)
        wide_mm = 2 * solid.coil.stations[0].radius_mm * np.sin(solid.collar.slot_half_rad)
        assert wide_mm == pytest.approx(1.3 * plan.wire_diameter_mm)
        assert solid.collar.slot_half_rad == pytest.approx(asin(wide_mm / 2 / solid.coil.stations[0].radius_mm))
        assert solid.collar.radius_mm >= solid.collar.slot_floor_mm + plan.wire_diameter_mm
