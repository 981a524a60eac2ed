"""A torsion spring seen along its axis: the coil, both legs at the angle between them, and which way the load turns.

It is seen from the end that leg 1 is at, which runs to the right. From there a right-hand coil turns clockwise as it
runs away; leg 2 stands at the free angle, counted that way, and winding up adds to it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil, cos, radians, sin

from sourcing.quantities import show_angle, show_diameter, show_length, show_wire
from sourcing.sheets.drawing.labels import Label, Line, direction, placed
from sourcing.sheets.drawing.springs import MOST_ENLARGED, ROOM_MM
from sourcing.sheets.drawing.svg import SMALL_MM, THIN_MM, Picture, Point, arrow, circle, stroke, text, wire
from sourcing.springs import turned
from sourcing.springs.model import Hand, Leg, LegShape, TorsionSpring

MARGIN_MM = 2.0
SHOWN_LEG_MM = 10.0
"""A leg of unknown length is drawn so long."""

LOAD_MM, ARC_OFF_MM = 9.0, 2.5
WORDS_MM = 19.0
"""The room for the words below a dimensioned drawing."""


def turning(spring: TorsionSpring) -> float:
    """Which way the wire goes round as it runs away from leg 1: 1 anticlockwise on the paper, -1 clockwise."""
    return 1.0 if spring.hand is Hand.LEFT else -1.0


def angle_of(spring: TorsionSpring) -> float:
    """The angle from leg 1 on to leg 2; where it is not known, that of straight legs after so many coils."""
    return turned.leg_angle_deg(spring.active_coils) if spring.free_angle_deg is None else spring.free_angle_deg


def legs_of(spring: TorsionSpring) -> tuple[tuple[Point, Point], tuple[Point, Point]]:
    """Where each leg leaves the coil and where it ends, the coil's middle at nothing, x to the right and y up."""
    way, radius_mm, angle_deg = turning(spring), spring.mean_diameter_mm / 2.0, angle_of(spring)
    first = _leg(radius_mm, 180.0 - way * 90.0, 0.0, spring.leg_1)
    second = _leg(radius_mm, way * (angle_deg - 90.0), way * angle_deg, spring.leg_2)
    return first, second


def _leg(radius_mm: float, at_deg: float, towards_deg: float, leg: Leg | None) -> tuple[Point, Point]:
    length_mm = SHOWN_LEG_MM if leg is None else leg.length_mm
    start = (radius_mm * cos(radians(at_deg)), radius_mm * sin(radians(at_deg)))
    end = (start[0] + length_mm * cos(radians(towards_deg)), start[1] + length_mm * sin(radians(towards_deg)))
    return start, end


def end_view(spring: TorsionSpring, room_mm: tuple[float, float]) -> Picture | None:
    """The spring in its true size from the end; None where the room does not hold it, or its angle is unknown."""
    if spring.free_angle_deg is None:
        return None
    names = _leg_names(spring)
    return _seen(spring, 1.0, names, "The finished spring from the end of leg 1, one to one").within(room_mm)


def turned_dimensioned(spring: TorsionSpring, units: str, room_mm: tuple[float, float] = ROOM_MM) -> Picture:
    """The finished spring with its dimensions, as large as the room allows, at most five times its size."""
    names = _leg_names(spring)
    title, scale = "The finished spring with its dimensions", MOST_ENLARGED
    view = _seen(spring, scale, names, title)
    inner_mm = (room_mm[0], room_mm[1] - WORDS_MM)
    while view.within(inner_mm) is None and scale > 0.2:
        scale *= 0.97
        view = _seen(spring, scale, names, title)
    words = _sizes(spring, units)
    left_mm = (room_mm[0] - view.width_mm) / 2.0
    parts = (
        f'<g transform="translate({left_mm:.2f} 0)">',
        *view.parts,
        "</g>",
        *(
            text((room_mm[0] / 2.0, view.height_mm + 4.0 + 4.0 * row), each, size_mm=SMALL_MM)
            for row, each in enumerate(words)
        ),
    )
    return Picture(room_mm[0], view.height_mm + WORDS_MM, title, f"{view.said}; {' '.join(words)}", parts)


def _leg_names(spring: TorsionSpring) -> tuple[str, str]:
    return ("leg 1", "leg 2") if spring.bodies == 1 else ("outer legs", "loop")


def _leg_size(leg: Leg | None, units: str) -> str:
    if leg is None:
        return "not known"
    shape = "" if leg.shape is LegShape.STRAIGHT else f" {leg.shape}"
    return f"{show_length(leg.length_mm, units)}{shape}"


def _sizes(spring: TorsionSpring, units: str) -> tuple[str, ...]:
    hand = "" if spring.hand is None else f"{spring.hand}-hand, "
    body, coils = show_length(turned.body_length_mm(spring), units), f"{spring.active_coils:.2f} coils"
    bodies = "" if spring.bodies == 1 else " each of two bodies"
    legs = zip(_leg_names(spring), (spring.leg_1, spring.leg_2), strict=True)
    return (
        ", ".join(f"{name} {_leg_size(leg, units)}" for name, leg in legs),
        f"{show_diameter(spring.outside_diameter_mm, units)} outside, {show_wire(spring.wire_diameter_mm, units)} wire",
        f"{hand}{coils}{bodies}",
        f"body {body} long",
    )


def _seen(spring: TorsionSpring, scale: float, names: tuple[str, ...], title: str) -> Picture:
    """The coil, its legs with their names, the load on leg 2 and the angle, to a scale."""
    first, second = (_scaled(leg, scale) for leg in legs_of(spring))
    outer, wire_mm = spring.outside_diameter_mm / 2.0 * scale, spring.wire_diameter_mm * scale
    push = _push(second, turning(spring), wire_mm / 2.0)
    arc = list(_arc(angle_of(spring), outer + ARC_OFF_MM, turning(spring)))
    labels = placed(_labels(spring, names, (first, second, push), arc[len(arc) // 2]), (first, second, push))
    points = [*first, *second, *push, *arc, *(point for each in labels for point in each.corners)]
    points += [(-outer, -outer), (outer, outer)]
    left, right = min(x for x, _ in points) - MARGIN_MM, max(x for x, _ in points) + MARGIN_MM
    low, high = min(y for _, y in points) - MARGIN_MM, max(y for _, y in points) + MARGIN_MM

    def on_paper(point: Point) -> Point:
        return point[0] - left, high - point[1]

    parts = (
        *(part for leg in (first, second) for part in wire([*map(on_paper, leg)], wire_mm, square=True)),
        circle(on_paper((0.0, 0.0)), outer, "white"),
        circle(on_paper((0.0, 0.0)), outer - wire_mm, "white"),
        *arrow(on_paper(push[0]), on_paper(push[1])),
        *_turned(list(map(on_paper, arc))),
        *(text(on_paper(each.base), each.words, each.anchor) for each in labels),
    )
    hand = "" if spring.hand is None else f", {spring.hand}-hand"
    said = f"the coil from the end of {names[0]}{hand}, {names[1]} at {angle_of(spring):.0f} degrees from it"
    return Picture(right - left, high - low, title, said, parts)


def _labels(spring: TorsionSpring, names: tuple[str, ...], lines: Sequence[Line], on_arc: Point) -> Iterator[Label]:
    """The names of the legs beyond them, the load behind its arrow, the angle beside its arc."""
    first, second, push = lines
    yield Label(first[1], direction(*first), names[0])
    yield Label(second[1], direction(*second), names[1])
    yield Label(push[0], direction(push[1], push[0]), "load")
    if spring.free_angle_deg is not None:
        yield Label(on_arc, direction((0.0, 0.0), on_arc), show_angle(spring.free_angle_deg))


def _scaled(leg: Line, scale: float) -> Line:
    (x_1, y_1), (x_2, y_2) = leg
    return (x_1 * scale, y_1 * scale), (x_2 * scale, y_2 * scale)


def _push(leg: Line, way: float, half_wire_mm: float) -> Line:
    """The arrow of the load: square to the leg where it ends, the way that winds the spring up."""
    (x, y), (dx, dy) = leg[1], direction(*leg)
    square = (-dy * way, dx * way)
    x, y = x - 1.0 * dx - half_wire_mm * square[0], y - 1.0 * dy - half_wire_mm * square[1]
    return (x - LOAD_MM * square[0], y - LOAD_MM * square[1]), (x, y)


def _arc(angle_deg: float, radius_mm: float, way: float) -> Iterator[Point]:
    """From the direction of leg 1 on to that of leg 2, the way the load winds."""
    count = max(2, ceil(abs(angle_deg) / 5.0))
    for at in range(count + 1):
        angle = radians(way * angle_deg * at / count)
        yield radius_mm * cos(angle), radius_mm * sin(angle)


def _turned(arc: list[Point]) -> Iterator[str]:
    """The arc with its head; nothing of one that is too short."""
    if len(arc) > 3:
        yield stroke(arc[:-1], THIN_MM)
        yield from arrow(arc[-2], arc[-1], THIN_MM)
