"""What a spring is. Other kinds stand beside `CompressionSpring` as they are built."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from sourcing.materials.model import Material


class Ends(StrEnum):
    """How the ends of a compression spring are made (EN ISO 26909)."""

    OPEN = "open"
    OPEN_GROUND = "open-ground"
    CLOSED = "closed"
    CLOSED_GROUND = "closed-ground"


class Hand(StrEnum):
    """The direction in which the helix climbs."""

    RIGHT = "right"
    LEFT = "left"


@dataclass(frozen=True, slots=True)
class CompressionSpring:
    """A cylindrical compression spring of round wire, at rest.

    The three strength and stiffness figures are those of its material unless its keeper stated others;
    `tensile_strength_mpa` is None where the material's table does not reach the wire.
    """

    wire_diameter_mm: float
    mean_diameter_mm: float
    free_length_mm: float
    active_coils: float
    total_coils: float
    ends: Ends
    material: Material
    shear_modulus_mpa: float
    elastic_modulus_mpa: float
    tensile_strength_mpa: float | None
    hand: Hand | None = None

    kind = "compression"

    @property
    def outside_diameter_mm(self) -> float:
        """Mean diameter plus the wire."""
        return self.mean_diameter_mm + self.wire_diameter_mm

    @property
    def inside_diameter_mm(self) -> float:
        """Mean diameter less the wire."""
        return self.mean_diameter_mm - self.wire_diameter_mm

    @property
    def spring_index(self) -> float:
        """Mean diameter over wire diameter, w in EN 13906-1."""
        return self.mean_diameter_mm / self.wire_diameter_mm
