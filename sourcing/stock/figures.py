"""The figures of a spring of any kind by the short names that somebody asks for them with."""

from __future__ import annotations

from sourcing.stock.model import StockSpring
from sourcing.stock.rates import believed_rate

RATE, ANGULAR_RATE = "rate", "angular rate"
"""Rates in N/mm, and those of torsion springs in N·mm/deg, which no range of the others compares with."""

_ATTRIBUTES = {
    "wire": ("wire_diameter_mm",),
    "outside": ("outside_diameter_mm", "outside_diameter_large_mm"),
    "inside": ("inside_diameter_mm", "inside_diameter_small_mm"),
    "length": ("free_length_mm",),
}


def spring_figure(stock: StockSpring, figure: str) -> float | None:
    """A figure of a spring by its short name; None where its kind has none. A cone's diameters are its outermost."""
    if figure in (RATE, ANGULAR_RATE):
        return believed_rate(stock) if (stock.spring.kind == "torsion") == (figure == ANGULAR_RATE) else None
    values = (getattr(stock.spring, name, None) for name in _ATTRIBUTES[figure])
    return next((value for value in values if value is not None), None)
