"""The figures of a spring that the index knows, one row a spring."""

from __future__ import annotations

from sourcing.springs.model import CompressionSpring, ConicalSpring, TorsionSpring
from sourcing.springs.pressed import solid_length_mm
from sourcing.stock.model import StockSpring
from sourcing.stock.rates import believed_rate

COLUMNS = ("rate", "outside", "free", "inside", "solid", "wire")
"""None stands where a kind has no such figure; a range never asks for it then."""

Row = tuple[float | None, ...]


def figures(stock: StockSpring) -> Row:
    """The columns of a spring: of a cone, the outside of its large end and the inside of its small one."""
    spring, rate = stock.spring, believed_rate(stock)
    match spring:
        case CompressionSpring():
            outside_mm, inside_mm = spring.outside_diameter_mm, spring.inside_diameter_mm
        case ConicalSpring():
            outside_mm, inside_mm = spring.outside_diameter_large_mm, spring.inside_diameter_small_mm
        case TorsionSpring():
            return rate, spring.outside_diameter_mm, None, spring.inside_diameter_mm, None, spring.wire_diameter_mm
    return rate, outside_mm, spring.free_length_mm, inside_mm, solid_length_mm(spring), spring.wire_diameter_mm
