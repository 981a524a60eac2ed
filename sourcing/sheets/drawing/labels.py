"""Words beside what they name, moved outwards until nothing runs through them. In mm of the paper, y up."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from math import hypot

from sourcing.sheets.drawing.svg import LETTER, TEXT_MM, Point

OFF_MM = 1.5
LINE_POINTS, MOST_OFF_MM = 60, 25
"""How finely a line is looked at where words are to clear it, and how far they are moved at most."""

Line = tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class Label:
    """Words beside a point, and the direction, of length one, in which they are from it."""

    at: Point
    away: Point
    words: str

    @property
    def anchor(self) -> str:
        """Which end of the words is at the point."""
        if abs(self.away[0]) < 0.4:
            return "middle"
        return "start" if self.away[0] > 0.0 else "end"

    @property
    def base(self) -> Point:
        """Where their base line begins, ends or has its middle."""
        x, y = self.at[0] + OFF_MM * self.away[0], self.at[1] + OFF_MM * self.away[1]
        return x, y + (self.away[1] - 1.0) * TEXT_MM * 0.37

    @property
    def corners(self) -> tuple[Point, Point]:
        """The lower left and the upper right corner that they lie between."""
        x, y = self.base
        wide = len(self.words) * LETTER * TEXT_MM
        left = {"start": x, "middle": x - wide / 2.0, "end": x - wide}[self.anchor]
        return (left, y - 0.8), (left + wide, y + TEXT_MM)

    def holds(self, point: Point) -> bool:
        """Whether a point lies in the words, or within a millimetre."""
        (left, low), (right, high) = self.corners
        return left - 1.0 < point[0] < right + 1.0 and low - 1.0 < point[1] < high + 1.0

    def meets(self, other: Label) -> bool:
        """Whether they lie on other words."""
        (left, low), (right, high) = self.corners
        (other_left, other_low), (other_right, other_high) = other.corners
        return left < other_right and other_left < right and low < other_high and other_low < high


def placed(labels: Iterable[Label], lines: Sequence[Line]) -> list[Label]:
    """Each label where it is clear of the lines and of those before it, or as far out as they are moved."""
    points = [
        (x_1 + (x_2 - x_1) * step / LINE_POINTS, y_1 + (y_2 - y_1) * step / LINE_POINTS)
        for (x_1, y_1), (x_2, y_2) in lines
        for step in range(LINE_POINTS + 1)
    ]
    found: list[Label] = []
    for label in labels:
        moved = [replace(label, at=_moved(label, off_mm)) for off_mm in range(MOST_OFF_MM)]
        clear = (
            each for each in moved if not any(map(each.holds, points)) and not any(each.meets(other) for other in found)
        )
        found.append(next(clear, moved[-1]))
    return found


def _moved(label: Label, off_mm: float) -> Point:
    return label.at[0] + off_mm * label.away[0], label.at[1] + off_mm * label.away[1]


def direction(start: Point, end: Point) -> Point:
    """The direction from one point to another, of length one."""
    length = hypot(end[0] - start[0], end[1] - start[1])
    return (end[0] - start[0]) / length, (end[1] - start[1]) / length
