"""The figures of a spring that the index knows, one row a spring."""

from __future__ import annotations

from sourcing.springs.initial_tension import tension_of
from sourcing.springs.model import CompressionSpring, ConicalSpring, ExtensionSpring, TorsionSpring
from sourcing.springs.pressed import solid_length_mm
from sourcing.stock.model import StockSpring
from sourcing.stock.rates import believed_rate

COLUMNS = ("rate", "outside", "inside", "wire", "free", "solid", "tension", "here")
"""None stands where a kind has no such figure; a range never asks for it then. `here` is how many there are on hand."""

Row = tuple[float | None, ...]


def figures(stock: StockSpring) -> Row:
    """The columns of a spring: of a cone, the outside of its large end and the inside of its small one."""
    return believed_rate(stock), *_diameters_mm(stock), stock.spring.wire_diameter_mm, *_of_kind(stock), stock.on_hand


def _diameters_mm(stock: StockSpring) -> tuple[float, float]:
    spring = stock.spring
    if isinstance(spring, ConicalSpring):
        return spring.outside_diameter_large_mm, spring.inside_diameter_small_mm
    return spring.outside_diameter_mm, spring.inside_diameter_mm


def _of_kind(stock: StockSpring) -> Row:
    """Free length, solid length and initial tension, as far as the kind has them."""
    match spring := stock.spring:
        case CompressionSpring() | ConicalSpring():
            return spring.free_length_mm, solid_length_mm(spring), None
        case ExtensionSpring():
            return spring.free_length_mm, None, tension_of(spring).likely_n
        case TorsionSpring():
            return None, None, None
