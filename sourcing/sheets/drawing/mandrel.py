"""The turning drawing of a mandrel: seen from the side with its shank to the left, and its dimensions in tables.

The wire's slot faces whoever looks, so the seat climbs to the right as on the mandrel itself: on a right-hand one its
lines fall from left to right.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, cos, pi, sin, sqrt

from sourcing.files.findings import shortened
from sourcing.quantities import show_diameter, show_length
from sourcing.sheets.drawing.svg import THIN_MM, Picture, Point, dimension, line, ruled, shape, stroke, text
from sourcing.winding.mandrel import TURNED_STEP_MM
from sourcing.winding.solid.coil import Station
from sourcing.winding.solid.shape import MARK_MM, SLOT_SHARE, MandrelSolid, Shank
from sourcing.winding.solid.sleeve import Bore
from sourcing.winding.solid.surface import profile_at

SHEET_MM = (297.0, 210.0)
"""A4 across."""

EDGE_MM, ABOVE_MM = 12.0, 14.0
ROOM_MM = (SHEET_MM[0] - 2 * EDGE_MM, 64.0)
"""What the mandrel may fill; its dimensions and tables stand below."""

SCALES = (10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1)
"""Scales of technical drawings (ISO 5455)."""

STEPS_PER_WIRE, FRONT_POINTS = 12, 18
SIZES_MM, PROFILE_MM = (8.0, 42.0, 122.0), (18.0, 34.0, 30.0)
MOST_PROFILE_ROWS = 11
"""A cone of more turns has every second or third of them listed."""

Rows = Sequence[tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Frame:
    """Where on the paper the mandrel's points lie: its axis runs to the right."""

    scale: float
    foot_mm: float
    left_mm: float
    middle_mm: float

    def at(self, height_mm: float, up_mm: float) -> Point:
        """A point so far along the mandrel and so far above its axis."""
        return self.left_mm + (height_mm - self.foot_mm) * self.scale, self.middle_mm - up_mm * self.scale


def turning_drawing(solid: MandrelSolid, job: str, units: str = "mm") -> Picture:
    """The mandrel with its dimensions, to the largest scale of technical drawings that the sheet holds."""
    scale = next((each for each in SCALES if _fits(solid, each)), SCALES[-1])
    left_mm, middle_mm = (SHEET_MM[0] - solid.length_mm * scale) / 2, EDGE_MM + ABOVE_MM + ROOM_MM[1] / 2
    frame = Frame(scale, solid.foot_mm, left_mm, middle_mm)
    title, sizes, below_mm = f"Mandrel for {shortened(job)}", sizes_of(solid, units), EDGE_MM + ABOVE_MM + ROOM_MM[1]
    parts = (
        text((EDGE_MM, EDGE_MM + 3.0), title, "start", 5.0),
        text((SHEET_MM[0] - EDGE_MM, EDGE_MM + 3.0), f"scale {_ratio(scale)}", "end", 4.0),
        *side_view(solid, frame),
        *_letters(solid, frame),
        *_lengths(solid, frame, units),
        *ruled((EDGE_MM, below_mm + 30.0), (("", "what", "size"), *sizes), SIZES_MM),
        *_profile(solid, units, (SHEET_MM[0] - EDGE_MM - sum(PROFILE_MM), below_mm + 30.0)),
    )
    return Picture(*SHEET_MM, title, "; ".join(f"{what}: {size}" for _, what, size in sizes), parts)


def _fits(solid: MandrelSolid, scale: float) -> bool:
    return solid.length_mm * scale <= ROOM_MM[0] and solid.width_mm * scale <= ROOM_MM[1]


def _ratio(scale: float) -> str:
    return f"{scale:g} : 1" if scale >= 1 else f"1 : {1 / scale:g}"


def side_view(solid: MandrelSolid, frame: Frame) -> Iterator[str]:
    """The mandrel from the side: its outline, its edges, the seat in front, the axis."""
    above, below = _edge(solid, 0.0), _edge(solid, pi)
    corners = [frame.at(height, radius) for height, radius in above]
    yield shape([*corners, *(frame.at(height, -radius) for height, radius in reversed(below))])
    collar_up_mm = solid.collar.radius_mm
    yield line(frame.at(solid.face_mm, collar_up_mm), frame.at(solid.face_mm, -collar_up_mm))
    yield from _shank(solid, solid.held, frame) if isinstance(solid.held, Shank) else _bore(solid, solid.held, frame)
    for way in (-1, 1):
        up_mm = way * collar_up_mm * sin(solid.collar.slot_half_rad)
        yield line(frame.at(solid.underside_mm, up_mm), frame.at(solid.face_mm, up_mm))
    yield from _seat(solid, frame)
    if solid.coil.loop_mm:
        yield from _mark(solid, frame)
    yield line(
        frame.at(frame.foot_mm - 3 / frame.scale, 0), frame.at(solid.end_mm + 3 / frame.scale, 0), THIN_MM, "6 1 1 1"
    )


def _shank(solid: MandrelSolid, shank: Shank, frame: Frame) -> Iterator[str]:
    """The shank's end at the cone, the cone's at the collar, and the edges of its flats."""
    shank_mm = frame.foot_mm + shank.length_mm
    for height_mm, up_mm in ((shank_mm, shank.radius_mm(0.0)), (solid.underside_mm, solid.collar.radius_mm)):
        yield line(frame.at(height_mm, up_mm), frame.at(height_mm, -up_mm))
    for angle in shank.corners_rad:
        if 1e-6 < angle < pi - 1e-6:
            up_mm = shank.radius_mm(angle) * cos(angle)
            yield line(frame.at(frame.foot_mm, up_mm), frame.at(shank_mm, up_mm), THIN_MM)


def _bore(solid: MandrelSolid, bore: Bore, frame: Frame) -> Iterator[str]:
    """The hidden edges of a sleeve's bore, whose flat lies behind."""
    for up_mm in (bore.round_mm, -bore.round_mm):
        yield line(frame.at(solid.foot_mm, up_mm), frame.at(solid.end_mm, up_mm), THIN_MM, "3 1.5")


def _mark(solid: MandrelSolid, frame: Frame) -> Iterator[str]:
    """A cross where the hole for the loop's pin is drilled."""
    for along_mm, up_mm in ((MARK_MM, 0.0), (0.0, MARK_MM)):
        yield line(frame.at(solid.middle_mm - along_mm, -up_mm), frame.at(solid.middle_mm + along_mm, up_mm))


def _edge(solid: MandrelSolid, angle_rad: float) -> list[tuple[float, float]]:
    """Height and radius along one side, from the shank's end."""
    held, profile = solid.held, profile_at(solid.coil, solid.release, angle_rad)
    length_mm = solid.end_mm - solid.face_mm
    steps = ceil(length_mm / solid.coil.wire_mm * STEPS_PER_WIRE)
    body = [(height, profile(height)) for height in (solid.face_mm + length_mm * at / steps for at in range(steps + 1))]
    gripped = (0.0, held.length_mm) if isinstance(held, Shank) else ()
    return [
        *((solid.foot_mm + along_mm, held.radius_mm(angle_rad)) for along_mm in gripped),
        (solid.underside_mm, solid.collar.radius_mm),
        (solid.face_mm, solid.collar.radius_mm),
        *_without_the_straight(body),
    ]


def _without_the_straight(points: Sequence[tuple[float, float]]) -> Iterator[tuple[float, float]]:
    """The points less those between two of the same radius."""
    yield points[0]
    for (_, before), here, (_, after) in zip(points, points[1:], points[2:], strict=False):
        if not before == here[1] == after:
            yield here
    yield points[-1]


def _seat(solid: MandrelSolid, frame: Frame) -> Iterator[str]:
    """The edges of the seat where they run in front: of a groove both, of a ledge its wall."""
    depth_mm, half_mm = solid.release.groove_depth_mm, solid.coil.wire_mm / 2
    offsets = (-_half_width_mm(solid), _half_width_mm(solid)) if depth_mm else (-half_mm,)
    if not depth_mm and not solid.coil.tapered:
        return
    angles = [pi * at / FRONT_POINTS for at in range(FRONT_POINTS + 1)]
    crossings = [solid.coil.crossings(angle) for angle in angles]
    for start, offset_mm in ((at, offset) for at in range(len(crossings[0])) for offset in offsets):
        points: list[Point] = []
        low_mm = crossings[0][start].height_mm
        for angle, found in zip(angles, crossings, strict=True):
            nearest = min(found, key=lambda each: abs(each.height_mm - low_mm))
            if points and abs(nearest.height_mm - low_mm) > half_mm:
                break
            low_mm, up_mm = nearest.height_mm, (nearest.radius_mm - half_mm + depth_mm) * cos(angle)
            points.append(frame.at(low_mm + offset_mm, up_mm))
        yield stroke(points, THIN_MM)


def _half_width_mm(solid: MandrelSolid) -> float:
    depth_mm = solid.release.groove_depth_mm
    return sqrt(depth_mm * (solid.coil.wire_mm - depth_mm))


def _letters(solid: MandrelSolid, frame: Frame) -> Iterator[str]:
    """A to C over shank, collar and body, as the table has them."""
    shank = [("A", solid.foot_mm + solid.held.length_mm / 2)] if isinstance(solid.held, Shank) else []
    places = (
        *shank,
        ("B", (solid.underside_mm + solid.face_mm) / 2),
        ("C", (solid.face_mm + solid.end_mm) / 2),
    )
    for letter, height_mm in places:
        x, y = frame.at(height_mm, solid.collar.radius_mm)
        yield text((x, y - 2.5), letter, size_mm=4.5)


def _lengths(solid: MandrelSolid, frame: Frame, units: str) -> Iterator[str]:
    """The lengths of the shank, of the collar with its cone, of the body, and of the whole."""
    low = solid.collar.radius_mm
    shank = [solid.foot_mm + solid.held.length_mm] if isinstance(solid.held, Shank) else []
    marks = (solid.foot_mm, *shank, solid.face_mm, solid.end_mm)
    for first, last in pairwise(marks):
        words = show_length(last - first, units)
        yield from dimension(frame.at(first, -low), frame.at(last, -low), words, 8.0)
    whole = show_length(solid.length_mm, units)
    yield from dimension(frame.at(frame.foot_mm, -low), frame.at(solid.end_mm, -low), whole, 16.0)


def sizes_of(solid: MandrelSolid, units: str = "mm") -> Rows:
    """The table of dimensions: letter, what, size."""
    coil, collar = solid.coil, solid.collar

    def size(value_mm: float) -> str:
        return show_diameter(value_mm, units)

    ends = " to ".join(dict.fromkeys(size(2 * each) for each in (coil.seat_mm, coil.thinnest_mm)))
    curved = ", curved: see the list" if coil.tapered else ""
    taper = f"; 45° to the shank over {size(solid.taper_mm)}" if isinstance(solid.held, Shank) else ""
    hand = "either: the loop goes over a pin" if coil.loop_mm else f"{coil.hand}, the wire begins at the slot"
    rows = [
        *_held_sizes(solid.held, size),
        ("B", "collar", f"{size(solid.width_mm)} diameter, {size(collar.height_mm)} wide{taper}"),
        ("C", "where the wire lies", f"{ends} ± {size(TURNED_STEP_MM)}{curved}"),
        *_seat_sizes(solid, units),
        ("", "slot in the collar", f"{size(SLOT_SHARE * coil.wire_mm)} wide, down to {size(2 * collar.slot_floor_mm)}"),
        ("", "hand", hand),
        ("", "turns, spare ones too", f"{coil.turns:.2f}"),
        ("", "cut into the collar", shortened(" / ".join(collar.lines))),
    ]
    if coil.loop_mm:
        middle = size(solid.middle_mm - solid.face_mm)
        rows.append(("", "hole for the loop's pin", f"in the middle, {middle} from the collar"))
    if solid.release.way == "split":
        strip = size(solid.release.strip_mm)
        rows.append(("", "split along its length", f"a strip {strip} thick between the halves, sawn out"))
    return rows


def _held_sizes(held: Shank | Bore, size: Callable[[float], str]) -> Iterator[tuple[str, str, str]]:
    """The row about the shank, or those about a sleeve's bore."""
    if isinstance(held, Shank):
        grip = {"hex": "across flats", "round": "diameter", "drill": "diameter, three flats"}[held.kind]
        yield "A", "shank", f"{size(held.across_mm)} {grip}"
        return
    yield (
        "",
        "bore",
        f"{size(2 * held.round_mm)}, {size(held.round_mm + held.flat_mm)} across its flat, opposite the slot",
    )
    if held.breaks_mm:
        yield "", "lines to break it", f"three along the bore, to {size(held.breaks_mm)} from its axis"


def _seat_sizes(solid: MandrelSolid, units: str) -> Iterator[tuple[str, str, str]]:
    """The rows about the seat."""
    coil, depth_mm = solid.coil, solid.release.groove_depth_mm
    if depth_mm:
        land, deep, nose = (
            show_diameter(each, units) for each in (2 * (coil.seat_mm + depth_mm), depth_mm, coil.wire_mm / 2)
        )
        yield "C", "land", f"{land}, bare down to the seat where turns touch"
        yield "", "groove", f"{deep} deep, radius {nose}"
    if depth_mm or coil.tapered:
        climb = "; ".join(
            f"{show_diameter((b.height_mm - a.height_mm) / (b.turn - a.turn), units)} to turn {b.turn:.2f}"
            for a, b in _runs(solid)
        )
        yield "", "climb a turn", climb
    if coil.tapered:
        yield "", "wall", "towards the collar, round; none towards the free end"


def _runs(solid: MandrelSolid) -> Iterator[tuple[Station, Station]]:
    """From where to where the climb stays the same, the coils of a cone taken together."""
    stations = solid.coil.stations
    first, *middle, last = stations
    begins_close = solid.coil.starts_close
    marks = [first, *(middle[:1] if begins_close else []), middle[-1], last] if middle else [first, last]
    yield from pairwise(marks)


def _profile(solid: MandrelSolid, units: str, at: Point) -> Iterator[str]:
    """A cone's diameters by turn, from the collar's face."""
    coil = solid.coil
    if not coil.tapered:
        return
    turns, step = ceil(coil.turns), 1
    while turns / step > MOST_PROFILE_ROWS:
        step += 1
    found = [coil.at(min(float(turn), coil.turns)) for turn in range(0, turns + step, step) if turn < turns + step]
    rows = [
        (
            f"{each.turn:.2f}".rstrip("0").rstrip("."),
            show_diameter(each.height_mm - solid.face_mm, units),
            show_diameter(2 * each.radius_mm - coil.wire_mm, units),
        )
        for each in dict.fromkeys(found)
    ]
    yield from ruled(at, (("turn", "from the collar", "seat"), *rows), PROFILE_MM)
