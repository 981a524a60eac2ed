"""The diameters of a coil: one of them and the wire give the others."""

from __future__ import annotations

from sourcing.figures import formula


@formula("D_e = D + d", source="geometry")
def outside_diameter_mm(mean_diameter_mm: float, wire_diameter_mm: float) -> float:
    """Outside diameter of a coil.

    >>> outside_diameter_mm(12.0, 1.0)
    13.0
    """
    return mean_diameter_mm + wire_diameter_mm


@formula("D_i = D − d", source="geometry")
def inside_diameter_mm(mean_diameter_mm: float, wire_diameter_mm: float) -> float:
    """Inside diameter of a coil.

    >>> inside_diameter_mm(12.0, 1.0)
    11.0
    """
    return mean_diameter_mm - wire_diameter_mm


@formula("w = D / d", source="EN 13906-1:2013")
def spring_index(mean_diameter_mm: float, wire_diameter_mm: float) -> float:
    """How tight a coil is: its mean diameter over the wire's.

    >>> spring_index(12.0, 1.0)
    12.0
    """
    return mean_diameter_mm / wire_diameter_mm


@formula("D = (D₁ + D₂) / 2", source="geometry")
def halfway_mean_mm(mean_diameter_small_mm: float, mean_diameter_large_mm: float) -> float:
    """Mean diameter of the coil halfway up a cone.

    >>> halfway_mean_mm(8.0, 16.0)
    12.0
    """
    return (mean_diameter_small_mm + mean_diameter_large_mm) / 2.0


@formula("D = D_e − d", source="geometry")
def mean_from_outside_mm(outside_diameter_mm: float, wire_diameter_mm: float) -> float:
    """Mean diameter of a coil measured outside.

    >>> mean_from_outside_mm(13.0, 1.0)
    12.0
    """
    return outside_diameter_mm - wire_diameter_mm


@formula("D = D_i + d", source="geometry")
def mean_from_inside_mm(inside_diameter_mm: float, wire_diameter_mm: float) -> float:
    """Mean diameter of a coil measured inside.

    >>> mean_from_inside_mm(11.0, 1.0)
    12.0
    """
    return inside_diameter_mm + wire_diameter_mm
