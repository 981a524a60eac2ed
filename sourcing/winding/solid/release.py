"""How the spring comes off its mandrel, and so how its seat is cut.

A cylinder has opened by the difference of its mean diameters. A groove no deeper than half of that, less some room,
lets it slide off; a shallower one holds no wire. Where the opening leaves no groove at all, a coil of one pitch
throughout is unscrewed, pressed together where its opened pitch binds in the groove (unwound.py). One with close end
coils wants a mandrel that splits in two along its length: a strip between the halves keeps them apart while the wire is
wound and is drawn out after it, and the halves fall together. One too thin to be split stays bare. A sleeve is never
split but broken: with its rod drawn out, its shell gives way inwards.
A cone's seat is a ledge, a wall towards the large end and no lip towards the small one: it comes off over the small
end. Coils that touch want no groove.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil
from typing import Literal

from sourcing.figures import formula
from sourcing.winding.solid.coil import LaidCoil

ROOM_MM = 0.1
"""Room left all round between a spring and what it slides over (winding_model)."""

DEEPEST_SHARE = 0.3
"""The depth of a groove over the wire: enough to hold it at its pitch (assumed)."""

SHALLOWEST_SHARE, SHALLOWEST_MM = 0.1, 0.05
"""A groove less deep than this share of the wire, or than this, holds none (assumed)."""

STRIP_STEP_MM = 0.5
"""Strips are found in steps of this."""

LIPS_WITHIN = 0.5
"""Lips of a split mandrel stand where the halves move at least this share of their way straight off the spring: within
60 degrees of the middle of a half."""

THICKEST_STRIP_SHARE = 1.0
"""A strip thicker than this share of the mandrel's radius leaves too little of the halves (assumed)."""

Way = Literal["slide", "unscrew", "ledge", "split", "break"]


@dataclass(frozen=True, slots=True)
class Release:
    """The way off, the depth of the groove (0: none), the room all round as meant and at least in 95 of 100 coils.

    `strip_mm`: how far apart the halves of a split mandrel are held. The room of a split one is that after the strip
    has been drawn out; of one to unscrew, over the bottom of the groove; of one to break, before it is broken.
    """

    way: Way
    groove_depth_mm: float
    clearance_mm: float
    least_clearance_mm: float
    strip_mm: float = 0.0


@formula(
    "h = min(0.3 d, a − 0.1)",
    where={"a": "opening_mm"},
    source="derived, see winding_model: deeper than half of the opening the groove holds the coil; 0.3 d assumed",
)
def groove_depth_mm(wire_diameter_mm: float, opening_mm: float) -> float:
    """The deepest groove over which a coil slides, by how much its radius has grown; none where it is not positive.

    >>> round(groove_depth_mm(0.8, 0.92), 3), round(groove_depth_mm(0.8, 0.18), 3)
    (0.24, 0.08)
    """
    return min(DEEPEST_SHARE * wire_diameter_mm, opening_mm - ROOM_MM)


def release_of(coil: LaidCoil, on_rod: bool = False) -> Release:
    """The way off for a coil; `on_rod`: of a sleeve on a rod, which is broken where a solid mandrel would hold it."""
    opening_mm = min(each.released_mm - each.radius_mm for each in coil.stations)
    least_mm = min(each.least_released_mm - each.radius_mm for each in coil.stations)
    if coil.tapered:
        return Release("ledge", 0.0, opening_mm, least_mm)
    if coil.close:
        return Release("break" if on_rod and least_mm <= 0 else "slide", 0.0, opening_mm, least_mm)
    depth_mm = groove_depth_mm(coil.wire_mm, least_mm)
    if depth_mm >= max(SHALLOWEST_SHARE * coil.wire_mm, SHALLOWEST_MM):
        return Release("slide", depth_mm, opening_mm - depth_mm, least_mm - depth_mm)
    depth_mm = DEEPEST_SHARE * coil.wire_mm
    if not coil.starts_close:
        return Release("unscrew", depth_mm, opening_mm, least_mm)
    if on_rod:
        return Release("break", depth_mm, opening_mm - depth_mm, least_mm - depth_mm)
    return _split(coil, depth_mm, opening_mm, least_mm)


def _split(coil: LaidCoil, depth_mm: float, opening_mm: float, least_mm: float) -> Release:
    """Halves far enough apart for the lips to clear; bare where the mandrel is too thin for that."""
    strip_mm = ceil(2 * (depth_mm + ROOM_MM - least_mm) / LIPS_WITHIN / STRIP_STEP_MM) * STRIP_STEP_MM
    if strip_mm > THICKEST_STRIP_SHARE * coil.seat_mm:
        return Release("slide", 0.0, opening_mm, least_mm)
    given_mm = LIPS_WITHIN * strip_mm / 2 - depth_mm
    return Release("split", depth_mm, opening_mm + given_mm, least_mm + given_mm, strip_mm)
