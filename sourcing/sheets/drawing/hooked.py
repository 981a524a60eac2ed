"""An extension spring from the side: its body wound tight, and its hooks turned to the reader."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.sheets.drawing.springs import MARGIN_MM, POINTS_A_TURN, Helix, side_view
from sourcing.sheets.drawing.svg import LINE_MM, Picture, Point, ring, shape, stroke
from sourcing.springs import pulled
from sourcing.springs.model import ExtensionSpring, Hand, Hooks


def body_of(spring: ExtensionSpring) -> Helix:
    """The wire of the body, turn upon turn."""
    count = max(2, round(spring.total_coils * POINTS_A_TURN))
    turns = tuple(spring.total_coils * at / count for at in range(count + 1))
    radii = (spring.mean_diameter_mm / 2.0,) * len(turns)
    wire_mm = spring.wire_diameter_mm
    return Helix(wire_mm, turns, radii, tuple(turn * wire_mm for turn in turns), spring.hand is Hand.LEFT)


def hooked_one_to_one(spring: ExtensionSpring, room_mm: tuple[float, float]) -> Picture | None:
    """The finished spring in its true size, to lay it on; None where the room does not hold it."""
    body, hook_mm = body_of(spring), pulled.hook_length_mm(spring)
    beyond_mm = hook_mm + spring.wire_diameter_mm
    width = 2.0 * body.widest_mm + 2.0 * MARGIN_MM
    height = body.long_mm + 2.0 * beyond_mm + 2.0 * MARGIN_MM
    if width > room_mm[0] or height > room_mm[1]:
        return None
    top = (width / 2.0, MARGIN_MM + beyond_mm)
    foot = (width / 2.0, top[1] + body.long_mm)
    parts = (*_hook(spring, top, -1.0, hook_mm), *_hook(spring, foot, 1.0, hook_mm), *side_view(body, 1.0, foot))
    said = "an outline to lay the finished spring on, its hooks turned to the reader"
    return Picture(width, height, "The finished spring, one to one", said, parts)


def _hook(spring: ExtensionSpring, end: Point, down: float, hook_mm: float) -> Iterator[str]:
    """A hook from the end of the body, upwards or down: a loop as wide as the coils, on a shank where it is longer."""
    wire_mm, radius_mm = spring.wire_diameter_mm, spring.mean_diameter_mm / 2.0
    if spring.hooks is Hooks.THREADED_PLUG:
        half, tip = radius_mm - wire_mm / 2.0, end[1] + down * hook_mm
        yield shape(((end[0] - half, end[1]), (end[0] - half, tip), (end[0] + half, tip), (end[0] + half, end[1])))
        return
    aside = radius_mm if spring.hooks is Hooks.SIDE_HOOK else 0.0
    centre_mm = hook_mm + wire_mm / 2.0 - radius_mm
    middle = (end[0] + aside, end[1] + down * centre_mm)
    if centre_mm > radius_mm:
        shank = (end[0] + aside, end[1]), (end[0] + aside, end[1] + down * (centre_mm - radius_mm))
        yield stroke(shank, wire_mm)
        yield stroke(shank, max(wire_mm - 2.0 * LINE_MM, 0.1), "white")
    yield ring(middle, radius_mm, wire_mm)
