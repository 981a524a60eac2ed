"""The job's name and diameter in the collar, measured on the mesh in sections through each row of dots."""

from __future__ import annotations

from math import cos, pi, sin, tau

import numpy as np
import pytest
import trimesh

from sourcing.winding.solid.lettering import HIGH, LINE
from sourcing.winding.solid.rings import mesh_of
from sourcing.winding.solid.shape import DOT_MM, MandrelSolid
from sourcing.winding.solid.sleeve import Bore

from .plans import random_plans, solid_for

DEEP_MM = 0.5
"""Deep enough to be felt and read, and less than the wall of any collar."""

FLAT_MM = 0.03
"""A facet lies so far within its round at most."""

BESIDE = 0.47
"""Where a dot is probed: beside its middle, where corners of triangles meet."""

PLANS = [(at, shank) for at in (0, 1, 2, 3, 5, 6, 9) for shank in ("hex", "sleeve")]


def radius_at(segments: np.ndarray, angle: float) -> float:
    """Where a ray from the axis leaves a section: the outermost crossing."""
    along, across = np.array((cos(angle), sin(angle))), np.array((-sin(angle), cos(angle)))
    ends = segments[:, :, :2]
    off, out = ends @ across, ends @ along
    crossed = (off[:, 0] * off[:, 1] <= 0) & (off[:, 0] != off[:, 1])
    share = off[crossed, 0] / (off[crossed, 0] - off[crossed, 1])
    return float((out[crossed, 0] + share * (out[crossed, 1] - out[crossed, 0])).max())


def read(solid: MandrelSolid) -> dict[tuple[int, int], float]:
    """how deep the collar is cut near the middle of each place for a dot, by column after the slot and row."""
    mesh = mesh_of(solid)
    whole = trimesh.Trimesh(np.array(mesh.vertices), np.array(mesh.triangles))
    collar, depths = solid.collar, {}
    for row in range((len(collar.lines) - 1) * LINE + HIGH):
        height_mm = solid.face_mm - (row + 1.5) * DOT_MM
        section = trimesh.intersections.mesh_plane(whole, (0.0, 0.0, 1.0), (0.0, 0.0, height_mm))
        for column in range(collar.columns):
            angle = collar.first_dot_rad + (column + BESIDE) * DOT_MM / collar.radius_mm
            depths[column, row] = collar.radius_mm - radius_at(section, angle)
    return depths


@pytest.mark.parametrize(("at", "shank"), PLANS)
def test_each_dot_of_the_name_is_cut_half_a_millimetre_deep_and_nothing_else_is(at: int, shank: str) -> None:
    solid = solid_for(random_plans()[at], "book press", shank)
    found = read(solid)
    assert {place for place, deep_mm in found.items() if deep_mm > DEEP_MM / 2} == solid.collar.dots
    for place, deep_mm in found.items():
        wanted_mm = DEEP_MM if place in solid.collar.dots else 0.0
        assert deep_mm == pytest.approx(wanted_mm, abs=FLAT_MM), place


@pytest.mark.parametrize(("at", "shank"), PLANS)
def test_the_collar_bears_the_diameter_that_the_wire_lies_on_and_keeps_its_wall_below_the_dots(
    at: int, shank: str
) -> None:
    plan = random_plans()[at]
    solid = solid_for(plan, "book press", shank)
    sizes = [plan.mandrel.thinnest_mm, plan.mandrel.thickest_mm]
    shown = "-".join(dict.fromkeys(f"{size:.2f}" for size in sizes))
    assert solid.collar.lines[-1].startswith(f"⌀{shown} ")
    inside_mm = solid.held.round_mm if isinstance(solid.held, Bore) else 0.0
    assert solid.collar.radius_mm - DEEP_MM - inside_mm >= 2.0


@pytest.mark.parametrize(("at", "shank"), PLANS)
def test_the_name_ends_before_the_slot_and_above_the_collar_s_lower_edge(at: int, shank: str) -> None:
    """However long it is: cut off where it has no room."""
    solid = solid_for(random_plans()[at], "a name that is far too long for any collar " * 3, shank)
    collar = solid.collar
    ends_rad = collar.first_dot_rad + collar.columns * DOT_MM / collar.radius_mm
    assert ends_rad < pi / 2 + tau - collar.slot_half_rad
    lowest_mm = solid.face_mm - DOT_MM * (1 + max(row for _, row in collar.dots) + 1)
    assert lowest_mm > solid.underside_mm
