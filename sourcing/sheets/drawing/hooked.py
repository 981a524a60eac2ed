"""An extension spring from the side: its body wound tight, and its hooks turned to the reader."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_diameter, show_length, show_wire
from sourcing.sheets.drawing.springs import (
    MARGIN_MM,
    MOST_ENLARGED,
    POINTS_A_TURN,
    ROOM_MM,
    Helix,
    lying_if_long,
    side_view,
)
from sourcing.sheets.drawing.svg import SMALL_MM, Picture, Point, dimension, ring, shape, text, wire
from sourcing.springs import pulled
from sourcing.springs.model import ExtensionSpring, Hand, Hooks
from sourcing.winding.extension.ends import end_words

ABOVE_MM, BELOW_MM, ASIDE_MM = 4.0, 17.0, 22.5
"""Room for the dimensions above, below and at either side."""


def body_of(spring: ExtensionSpring) -> Helix:
    """The wire of the body, turn upon turn."""
    count = max(2, round(spring.total_coils * POINTS_A_TURN))
    turns = tuple(spring.total_coils * at / count for at in range(count + 1))
    radii = (spring.mean_diameter_mm / 2.0,) * len(turns)
    wire_mm = spring.wire_diameter_mm
    return Helix(wire_mm, turns, radii, tuple(turn * wire_mm for turn in turns), spring.hand is Hand.LEFT)


def hooked_one_to_one(spring: ExtensionSpring, room_mm: tuple[float, float]) -> Picture | None:
    """The finished spring in its true size, to lay it on; None where the room does not hold it."""
    body, beyond_mm = body_of(spring), _beyond_body_mm(spring)
    width = 2.0 * body.widest_mm + 2.0 * MARGIN_MM
    height = body.long_mm + 2.0 * beyond_mm + 2.0 * MARGIN_MM
    parts = tuple(hooked_view(spring, 1.0, (width / 2.0, height - MARGIN_MM - beyond_mm)))
    said = f"an outline to lay the finished spring on, its {end_words(spring.hooks).ends} turned to the reader"
    picture = Picture(width, height, "The finished spring, one to one", said, parts)
    return lying_if_long(picture).within(room_mm)


def hooked_dimensioned(spring: ExtensionSpring, units: str, room_mm: tuple[float, float] = ROOM_MM) -> Picture:
    """The finished spring with its dimensions, as large as the room allows, at most five times its size."""
    body, beyond_mm, hook_mm = body_of(spring), _beyond_body_mm(spring), pulled.hook_length_mm(spring)
    over_all_mm = body.long_mm + 2.0 * beyond_mm
    scale = min(
        (room_mm[0] - 2.0 * ASIDE_MM) / body.widest_mm,
        (room_mm[1] - ABOVE_MM - BELOW_MM) / over_all_mm,
        MOST_ENLARGED,
    )
    middle, half = room_mm[0] / 2.0, body.widest_mm * scale / 2.0
    top, foot = ABOVE_MM + beyond_mm * scale, ABOVE_MM + (beyond_mm + body.long_mm) * scale
    low = ABOVE_MM + over_all_mm * scale
    size, right = show_diameter(spring.outside_diameter_mm, units), middle + half
    left = middle - half
    inside = ((right, top - hook_mm * scale), (right, foot + hook_mm * scale))
    words = (
        f"{show_wire(spring.wire_diameter_mm, units)} wire, {spring.total_coils:.2f} coils in body,",
        f"{end_words(spring.hooks).ends}: {spring.hooks.replace('-', ' ')}",
    )
    parts = (
        *hooked_view(spring, scale, (middle, foot)),
        *dimension((left, foot), (right, foot), size, low - foot + 4.0),
        *dimension((left, top), (left, foot), show_length(pulled.body_length_mm(spring), units), -6.0),
        *dimension(*inside, show_length(spring.free_length_mm, units), 7.0),
        *(text((room_mm[0] / 2.0, low + 11.0 + 4.0 * row), each, size_mm=SMALL_MM) for row, each in enumerate(words)),
    )
    lengths = (
        f"body {show_length(pulled.body_length_mm(spring), units)},",
        f"{end_words(spring.hooks).between}, inside, {show_length(spring.free_length_mm, units)},",
    )
    said = " ".join((f"outside {size},", *lengths, *words))
    return Picture(room_mm[0], low + BELOW_MM, "The finished spring with its dimensions", said, parts)


def _beyond_body_mm(spring: ExtensionSpring) -> float:
    """How far the wire of each hook stands from the body."""
    return pulled.hook_length_mm(spring) + spring.wire_diameter_mm


def hooked_view(spring: ExtensionSpring, scale: float, foot: Point) -> Iterator[str]:
    """Body and hooks from the side, the axis upright; `foot` is the middle of the body's lower end."""
    body = body_of(spring)
    yield from _hook(spring, scale, (foot[0], foot[1] - body.long_mm * scale), -1.0)
    yield from _hook(spring, scale, foot, 1.0)
    yield from side_view(body, scale, foot)


def _hook(spring: ExtensionSpring, scale: float, end: Point, down: float) -> Iterator[str]:
    """A hook from the end of the body, upwards or down: a loop as wide as the coils, on a shank where it is longer."""
    wire_mm, radius_mm = spring.wire_diameter_mm * scale, spring.mean_diameter_mm / 2.0 * scale
    hook_mm = pulled.hook_length_mm(spring) * scale
    if spring.hooks is Hooks.THREADED_PLUG:
        half, tip = radius_mm - wire_mm / 2.0, end[1] + down * hook_mm
        yield shape(((end[0] - half, end[1]), (end[0] - half, tip), (end[0] + half, tip), (end[0] + half, end[1])))
        return
    aside = radius_mm if spring.hooks is Hooks.SIDE_HOOK else 0.0
    centre_mm = hook_mm + wire_mm / 2.0 - radius_mm
    middle = (end[0] + aside, end[1] + down * centre_mm)
    if centre_mm > radius_mm:
        shank = (end[0] + aside, end[1]), (end[0] + aside, end[1] + down * (centre_mm - radius_mm))
        yield from wire(shank, wire_mm)
    yield from ring(middle, radius_mm, wire_mm)
