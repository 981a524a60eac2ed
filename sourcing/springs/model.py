"""What a spring is: one value a kind. Other kinds stand beside these as they are built."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from sourcing.materials.model import Material
from sourcing.springs import diameters


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


class EndShape(StrEnum):
    """How the end of a compression spring that hooks into a part leaves the coil."""

    TANG_IN = "tang-in"
    TANG_OUT = "tang-out"
    ACROSS = "across"
    LEG = "leg"


@dataclass(frozen=True, slots=True)
class EndPiece:
    """The wire beyond the last coil that hooks into a part: a tang towards the axis or away from it, a piece straight
    across the diameter, a straight leg.

    `length_mm` is measured from the corner where it leaves the coil to its tip; `angle_deg` is by how much it is bent
    out of the run of the coil.
    """

    shape: EndShape
    length_mm: float
    angle_deg: float


@dataclass(frozen=True, slots=True)
class CompressionSpring:
    """A cylindrical compression spring of round wire, at rest.

    The three strength and stiffness figures are those of its material unless its keeper stated others;
    `tensile_strength_mpa` is None where the material's table does not reach the wire. An end piece that is None is not
    there: the end is plain.
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
    end_1: EndPiece | None = None
    end_2: EndPiece | None = None

    kind = "compression"

    @property
    def end_pieces(self) -> tuple[EndPiece, ...]:
        """The end pieces that are there."""
        return tuple(piece for piece in (self.end_1, self.end_2) if piece is not None)

    @property
    def outside_diameter_mm(self) -> float:
        """Mean diameter plus the wire."""
        return diameters.outside_diameter_mm(self.mean_diameter_mm, self.wire_diameter_mm)

    @property
    def inside_diameter_mm(self) -> float:
        """Mean diameter less the wire."""
        return diameters.inside_diameter_mm(self.mean_diameter_mm, self.wire_diameter_mm)

    @property
    def spring_index(self) -> float:
        """Mean diameter over wire diameter, w in EN 13906-1."""
        return diameters.spring_index(self.mean_diameter_mm, self.wire_diameter_mm)


@dataclass(frozen=True, slots=True)
class ConicalSpring:
    """A conical compression spring of round wire, at rest: its diameter changes evenly from end to end, turn by turn.

    The two mean diameters are those of the first and the last active coil; a dead coil is as large as its end.
    Strength, stiffness and end pieces as in `CompressionSpring`; `end_1` is at the large end.
    """

    wire_diameter_mm: float
    mean_diameter_small_mm: float
    mean_diameter_large_mm: float
    free_length_mm: float
    active_coils: float
    total_coils: float
    ends: Ends
    material: Material
    shear_modulus_mpa: float
    elastic_modulus_mpa: float
    tensile_strength_mpa: float | None
    hand: Hand | None = None
    end_1: EndPiece | None = None
    end_2: EndPiece | None = None

    kind = "conical"

    @property
    def end_pieces(self) -> tuple[EndPiece, ...]:
        """The end pieces that are there."""
        return tuple(piece for piece in (self.end_1, self.end_2) if piece is not None)

    @property
    def outside_diameter_small_mm(self) -> float:
        """Mean diameter of the small end plus the wire."""
        return diameters.outside_diameter_mm(self.mean_diameter_small_mm, self.wire_diameter_mm)

    @property
    def outside_diameter_large_mm(self) -> float:
        """Mean diameter of the large end plus the wire."""
        return diameters.outside_diameter_mm(self.mean_diameter_large_mm, self.wire_diameter_mm)

    @property
    def inside_diameter_small_mm(self) -> float:
        """Mean diameter of the small end less the wire."""
        return diameters.inside_diameter_mm(self.mean_diameter_small_mm, self.wire_diameter_mm)

    @property
    def inside_diameter_large_mm(self) -> float:
        """Mean diameter of the large end less the wire."""
        return diameters.inside_diameter_mm(self.mean_diameter_large_mm, self.wire_diameter_mm)

    @property
    def mean_diameter_mm(self) -> float:
        """The mean of the two ends' mean diameters, that of the coil halfway."""
        return diameters.halfway_mean_mm(self.mean_diameter_small_mm, self.mean_diameter_large_mm)

    @property
    def spring_index(self) -> float:
        """That of the coil halfway; the ends' are smaller and larger."""
        return diameters.spring_index(self.mean_diameter_mm, self.wire_diameter_mm)


class Hooks(StrEnum):
    """How the ends of an extension spring are made."""

    FULL_LOOP = "full-loop"
    CENTRE_LOOP = "centre-loop"
    HALF_LOOP = "half-loop"
    EXTENDED_HOOK = "extended-hook"
    SIDE_HOOK = "side-hook"
    THREADED_PLUG = "threaded-plug"


@dataclass(frozen=True, slots=True)
class ExtensionSpring:
    """An extension spring of round wire, at rest, its coils wound tight.

    `free_length_mm` is measured between the insides of the hooks. `active_coils` may exceed `total_coils`, the coils of
    the body, for hooks bend too. `initial_tension_n` None: nobody has measured it, and the usual range by index holds.
    `torn_hooks`: how many of the two are broken off; all lengths are then those with both hooks whole.
    Strength and stiffness as in `CompressionSpring`.
    """

    wire_diameter_mm: float
    mean_diameter_mm: float
    free_length_mm: float
    active_coils: float
    total_coils: float
    hooks: Hooks
    material: Material
    shear_modulus_mpa: float
    elastic_modulus_mpa: float
    tensile_strength_mpa: float | None
    initial_tension_n: float | None = None
    torn_hooks: int = 0
    hand: Hand | None = None

    kind = "extension"

    @property
    def outside_diameter_mm(self) -> float:
        """Mean diameter plus the wire."""
        return diameters.outside_diameter_mm(self.mean_diameter_mm, self.wire_diameter_mm)

    @property
    def inside_diameter_mm(self) -> float:
        """Mean diameter less the wire."""
        return diameters.inside_diameter_mm(self.mean_diameter_mm, self.wire_diameter_mm)

    @property
    def spring_index(self) -> float:
        """Mean diameter over wire diameter, w in EN 13906-2."""
        return diameters.spring_index(self.mean_diameter_mm, self.wire_diameter_mm)


class LegShape(StrEnum):
    """How the leg of a torsion spring runs to where it is loaded."""

    STRAIGHT = "straight"
    HOOKED = "hooked"
    OFFSET = "offset"


@dataclass(frozen=True, slots=True)
class Leg:
    """The leg of a torsion spring, from where it leaves the coil to where it is loaded."""

    length_mm: float
    shape: LegShape = LegShape.STRAIGHT


@dataclass(frozen=True, slots=True)
class TorsionSpring:
    """A torsion spring of round wire, at rest. A leg that is None is not there; an angle that is None is unknown.

    `active_coils` are the coils of a body, all of which act. `bodies` 2: a double torsion spring, two such bodies of
    opposite hand in one wire, loaded together; `leg_1` is then each outer leg, `leg_2` the loop between the bodies from
    the coil to where it is loaded, and `hand` says nothing. `free_angle_deg` is the angle between the legs.
    `body_length_mm` None: coils that touch. Strength and stiffness as in `CompressionSpring`.
    """

    wire_diameter_mm: float
    mean_diameter_mm: float
    active_coils: float
    material: Material
    elastic_modulus_mpa: float
    tensile_strength_mpa: float | None
    leg_1: Leg | None = None
    leg_2: Leg | None = None
    free_angle_deg: float | None = None
    hand: Hand | None = None
    bodies: int = 1
    body_length_mm: float | None = None

    kind = "torsion"

    @property
    def outside_diameter_mm(self) -> float:
        """Mean diameter plus the wire."""
        return diameters.outside_diameter_mm(self.mean_diameter_mm, self.wire_diameter_mm)

    @property
    def inside_diameter_mm(self) -> float:
        """Mean diameter less the wire."""
        return diameters.inside_diameter_mm(self.mean_diameter_mm, self.wire_diameter_mm)

    @property
    def spring_index(self) -> float:
        """Mean diameter over wire diameter, w in EN 13906-3."""
        return diameters.spring_index(self.mean_diameter_mm, self.wire_diameter_mm)

    @property
    def total_coils(self) -> float:
        """The coils of a body: each of them acts."""
        return self.active_coils

    @property
    def legs(self) -> tuple[Leg, ...]:
        """The legs that are there."""
        return tuple(leg for leg in (self.leg_1, self.leg_2) if leg is not None)


PressedSpring = CompressionSpring | ConicalSpring
"""A compression spring of any shape."""

Spring = PressedSpring | ExtensionSpring | TorsionSpring
"""A spring of any kind that is worked out."""
