"""Lines, texts and dimensions in millimetres, and the picture round them. Nothing here knows what it draws."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from html import escape
from math import hypot

from sourcing.files.findings import shown

THIN_MM, LINE_MM, THICK_MM = 0.2, 0.35, 0.5
"""No line is thinner than the first, which every printer at hand still draws."""

TEXT_MM, SMALL_MM = 3.2, 2.8
ARROW_MM = 2.0
LETTER = 0.55
"""The width of a letter over its height, about."""


Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing of a size in mm; x runs to the right and y down. `title` and `said` are for those who cannot see it."""

    width_mm: float
    height_mm: float
    title: str
    said: str
    parts: tuple[str, ...]

    def svg(self, name: str = "picture") -> str:
        """The picture as SVG in true millimetres; `name` tells its title apart from those of others on a page."""
        size = f'width="{number(self.width_mm)}mm" height="{number(self.height_mm)}mm"'
        box = f'viewBox="0 0 {number(self.width_mm)} {number(self.height_mm)}"'
        labels = f'role="img" aria-labelledby="{name}-title {name}-said"'
        head = f'<svg xmlns="http://www.w3.org/2000/svg" {size} {box} {labels} font-family="sans-serif">'
        title, said = (escape(shown(each)) for each in (self.title, self.said))
        titles = f'<title id="{name}-title">{title}</title><desc id="{name}-said">{said}</desc>'
        return "\n".join((head, titles, *self.parts, "</svg>"))

    def within(self, room_mm: tuple[float, float]) -> Picture | None:
        """The picture, or None where it is larger than the room."""
        return self if self.width_mm <= room_mm[0] and self.height_mm <= room_mm[1] else None

    def turned_right(self) -> Picture:
        """The picture on its right side: what was its top is to the right."""
        opened = f'<g transform="translate({number(self.height_mm)} 0) rotate(90)">'
        return Picture(self.height_mm, self.width_mm, self.title, self.said, (opened, *self.parts, "</g>"))


def number(value: float) -> str:
    """A coordinate to a hundredth of a millimetre, without zeros at its end.

    >>> number(10.0), number(1.256)
    ('10', '1.26')
    """
    return f"{value:.2f}".rstrip("0").rstrip(".") if "." in f"{value:.2f}" else f"{value:.2f}"


def line(start: Point, end: Point, width_mm: float = LINE_MM, dash: str = "") -> str:
    """A straight line; `dash` as SVG writes it."""
    dashed = f' stroke-dasharray="{dash}"' if dash else ""
    ends = f'x1="{number(start[0])}" y1="{number(start[1])}" x2="{number(end[0])}" y2="{number(end[1])}"'
    return f'<line {ends} stroke="black" stroke-width="{width_mm}"{dashed}/>'


def stroke(points: Iterable[Point], width_mm: float = LINE_MM, colour: str = "black", square: bool = False) -> str:
    """A line through points, with round ends or square ones."""
    through = " ".join(f"{number(x)},{number(y)}" for x, y in points)
    cap = "butt" if square else "round"
    style = f'fill="none" stroke="{colour}" stroke-width="{number(width_mm)}"'
    return f'<polyline points="{through}" {style} stroke-linecap="{cap}" stroke-linejoin="round"/>'


def wire(points: Sequence[Point], wire_mm: float, square: bool = False, scaled: bool = False) -> Iterator[str]:
    """A wire along points, white between its edges; black where it is too thin for that.

    `scaled`: nothing is measured on it, and a black one is drawn thinner, so that turns that touch are told apart.
    """
    inner_mm = _between_edges_mm(wire_mm)
    outer_mm = wire_mm / 2.0 if scaled and inner_mm is None else wire_mm
    yield stroke(points, max(outer_mm, THIN_MM), square=square)
    if inner_mm is not None:
        yield stroke(points, inner_mm, "white", square)


def _between_edges_mm(wire_mm: float) -> float | None:
    edge_mm = LINE_MM if wire_mm >= 4.0 * LINE_MM else THIN_MM
    return wire_mm - 2.0 * edge_mm if wire_mm >= 3.0 * edge_mm else None


def shape(points: Iterable[Point], fill: str = "none", width_mm: float = LINE_MM) -> str:
    """A closed outline."""
    corners = " ".join(f"{number(x)},{number(y)}" for x, y in points)
    return f'<polygon points="{corners}" fill="{fill}" stroke="black" stroke-width="{width_mm}"/>'


def circle(centre: Point, radius_mm: float, fill: str = "none", width_mm: float = LINE_MM) -> str:
    """A circle."""
    at = f'cx="{number(centre[0])}" cy="{number(centre[1])}" r="{number(radius_mm)}"'
    return f'<circle {at} fill="{fill}" stroke="black" stroke-width="{width_mm}"/>'


def ring(centre: Point, radius_mm: float, wire_mm: float) -> Iterator[str]:
    """A ring of wire seen from its side."""
    at = f'cx="{number(centre[0])}" cy="{number(centre[1])}" r="{number(radius_mm)}" fill="none"'
    yield f'<circle {at} stroke="black" stroke-width="{number(max(wire_mm, THIN_MM))}"/>'
    if (inner_mm := _between_edges_mm(wire_mm)) is not None:
        yield f'<circle {at} stroke="white" stroke-width="{number(inner_mm)}"/>'


def text(at: Point, words: str, anchor: str = "middle", size_mm: float = TEXT_MM, upright: bool = False) -> str:
    """Words at a point: their middle, start or end there; upright: read from the right."""
    turned = f' transform="rotate(-90 {number(at[0])} {number(at[1])})"' if upright else ""
    place = f'x="{number(at[0])}" y="{number(at[1])}" text-anchor="{anchor}" font-size="{number(size_mm)}"'
    return f"<text {place}{turned}>{escape(shown(words))}</text>"


ROW_MM = 5.2
"""The height of a row of a table."""


def ruled(at: Point, rows: Sequence[Sequence[str]], widths_mm: Sequence[float]) -> Sequence[str]:
    """A table whose upper left corner is at a point; its first row is its head."""
    edges = [at[0] + sum(widths_mm[:column]) for column in range(len(widths_mm) + 1)]
    bottom = at[1] + len(rows) * ROW_MM
    return (
        *(line((x, at[1]), (x, bottom), THIN_MM) for x in edges),
        *(line((edges[0], y), (edges[-1], y), THIN_MM) for y in (at[1] + row * ROW_MM for row in range(len(rows) + 1))),
        line((edges[0], at[1] + ROW_MM), (edges[-1], at[1] + ROW_MM)),
        *(
            text((x + 1.2, at[1] + (place + 1) * ROW_MM - 1.6), words, "start")
            for place, row in enumerate(rows)
            for x, words in zip(edges, row, strict=False)
        ),
    )


def dimension(start: Point, end: Point, words: str, off_mm: float) -> Sequence[str]:
    """A dimension between two points of one height or one side, `off_mm` from them: below or right where positive."""
    if start[1] == end[1]:
        y = start[1] + off_mm
        left, right = sorted((start[0], end[0]))
        return (
            *(line((x, start[1]), (x, y + (1.0 if off_mm > 0 else -1.0)), THIN_MM) for x in (left, right)),
            line((left, y), (right, y), THIN_MM),
            *_arrows((left, y), (right, y)),
            text(((left + right) / 2.0, y - 0.9), words)
            if len(words) * LETTER * TEXT_MM < right - left
            else text((right + ARROW_MM + 1.5, y + 1.0), words, "start"),
        )
    x = start[0] + off_mm
    top, bottom = sorted((start[1], end[1]))
    along = len(words) * LETTER * TEXT_MM < bottom - top
    return (
        *(line((start[0], y), (x + (1.0 if off_mm > 0 else -1.0), y), THIN_MM) for y in (top, bottom)),
        line((x, top), (x, bottom), THIN_MM),
        *_arrows((x, top), (x, bottom)),
        text((x - 0.9, (top + bottom) / 2.0), words, upright=True)
        if along
        else text(
            (x + (1.5 if off_mm > 0 else -1.5), (top + bottom) / 2.0 + 1.0), words, "start" if off_mm > 0 else "end"
        ),
    )


def _arrows(start: Point, end: Point) -> Sequence[str]:
    """An arrow head at each end of a dimension, turned inwards where it is too short for them."""
    length = max(abs(end[0] - start[0]), abs(end[1] - start[1]))
    inwards = -1.0 if length < 3.0 * ARROW_MM else 1.0
    return (_head(start, end, inwards), _head(end, start, inwards))


def arrow(start: Point, tip: Point, width_mm: float = LINE_MM) -> Sequence[str]:
    """A line with a head at its tip."""
    return (line(start, tip, width_mm), _head(tip, start, 1.0))


def _head(tip: Point, other: Point, inwards: float) -> str:
    length = hypot(other[0] - tip[0], other[1] - tip[1]) or 1.0
    along = ((other[0] - tip[0]) / length * ARROW_MM * inwards, (other[1] - tip[1]) / length * ARROW_MM * inwards)
    across = (-along[1] / 6.0, along[0] / 6.0)
    base = (tip[0] + along[0], tip[1] + along[1])
    corners = (tip, (base[0] + across[0], base[1] + across[1]), (base[0] - across[0], base[1] - across[1]))
    return shape(corners, "black", THIN_MM)
