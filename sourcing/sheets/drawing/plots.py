"""Force over length: the spring's curve from free to its shortest, and the working points with their tolerances."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor, log10

from sourcing.sheets.drawing.svg import SMALL_MM, THICK_MM, THIN_MM, Picture, Point, circle, line, stroke, text

LEFT_MM, BELOW_MM, ABOVE_MM, RIGHT_MM = 16.0, 13.0, 5.0, 5.0
CURVE_POINTS = 60


@dataclass(frozen=True, slots=True)
class Wish:
    """A working point: where, and between which values; None in a bound: open."""

    at: float
    low: float | None
    high: float | None


@dataclass(frozen=True, slots=True)
class Axis:
    """What an axis tells: its words, and the least and greatest value on it."""

    words: str
    low: float
    high: float


def ticks(low: float, high: float, about: int = 6) -> Sequence[float]:
    """Round values between two bounds: one, two or five times a power of ten apart.

    >>> ticks(0.0, 26.3)
    [0.0, 5.0, 10.0, 15.0, 20.0, 25.0]
    """
    raw = (high - low) / about
    power = 10.0 ** floor(log10(raw))
    step = next(power * each for each in (1.0, 2.0, 5.0, 10.0) if power * each >= raw * (1 - 1e-9))
    return [step * at for at in range(ceil(low / step - 1e-9), floor(high / step + 1e-9) + 1)]


def curve(
    value_at: Callable[[float], float], across: Axis, up: Axis, wishes: Sequence[Wish], size_mm: tuple[float, float]
) -> Picture:
    """A curve with its axes, and each wish as a bar with its middle marked."""
    width, height = size_mm

    def at(x: float, y: float) -> Point:
        inner_w, inner_h = width - LEFT_MM - RIGHT_MM, height - BELOW_MM - ABOVE_MM
        share_x, share_y = (x - across.low) / (across.high - across.low), (y - up.low) / (up.high - up.low)
        return LEFT_MM + share_x * inner_w, ABOVE_MM + (1.0 - share_y) * inner_h

    xs = [across.low + (across.high - across.low) * step / CURVE_POINTS for step in range(CURVE_POINTS + 1)]
    points = [at(x, value_at(x)) for x in xs]
    parts = (
        *_frame(at, across, up, size_mm),
        stroke(points, THICK_MM),
        *(part for wish in wishes for part in _bar(at, wish, up)),
    )
    said = "; ".join(_said(wish) for wish in wishes) or "no working point has a force"
    return Picture(width, height, f"{up.words} over {across.words}", said, parts)


def _frame(at: Callable[[float, float], Point], across: Axis, up: Axis, size_mm: tuple[float, float]) -> Iterator[str]:
    for x in ticks(across.low, across.high):
        yield line(at(x, up.low), at(x, up.high), THIN_MM, "0.5 1")
        yield text((at(x, up.low)[0], at(x, up.low)[1] + 4.0), f"{x:g}", size_mm=SMALL_MM)
    for y in ticks(up.low, up.high):
        yield line(at(across.low, y), at(across.high, y), THIN_MM, "0.5 1")
        yield text((at(across.low, y)[0] - 1.5, at(across.low, y)[1] + 1.0), f"{y:g}", "end", SMALL_MM)
    yield line(at(across.low, up.low), at(across.high, up.low))
    yield line(at(across.low, up.low), at(across.low, up.high))
    yield text(((LEFT_MM + size_mm[0] - RIGHT_MM) / 2.0, size_mm[1] - 2.0), across.words)
    yield text((4.0, (ABOVE_MM + size_mm[1] - BELOW_MM) / 2.0), up.words, upright=True)


def _bar(at: Callable[[float, float], Point], wish: Wish, up: Axis) -> Iterator[str]:
    low = up.low if wish.low is None else max(wish.low, up.low)
    high = up.high if wish.high is None else min(wish.high, up.high)
    (x, bottom), (_, top) = at(wish.at, low), at(wish.at, high)
    yield line((x, bottom), (x, top), THICK_MM)
    for y, bound in ((bottom, wish.low), (top, wish.high)):
        if bound is not None:
            yield line((x - 1.5, y), (x + 1.5, y), THICK_MM)
    if wish.low is not None and wish.high is not None:
        yield circle((x, (bottom + top) / 2.0), 0.9, "white")


def _said(wish: Wish) -> str:
    low, high = ("any" if bound is None else _figure(bound) for bound in (wish.low, wish.high))
    return f"at {wish.at:.4g} between {low} and {high}"


def _figure(value: float) -> str:
    return f"{value:.1f}" if value >= 10.0 else f"{value:.2f}"
