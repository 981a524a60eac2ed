"""What a need is, once it has been read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from sourcing.files.findings import Place
from sourcing.materials.model import Material
from sourcing.quantities import Wanted
from sourcing.springs.model import EndPiece, Ends, EndShape, Hand, Hooks, LegShape


@dataclass(frozen=True, slots=True)
class PocketEnd:
    """Where one end of a conical spring sits: a bore round it, a rod in it. None is unknown or not there."""

    bore_mm: Wanted | None = None
    rod_mm: Wanted | None = None


@dataclass(frozen=True, slots=True)
class Pocket:
    """The space the spring lives in: a bore round it, a rod through it, a depth. None is unknown or not there.

    Round a conical spring, `bore_mm` and `rod_mm` run straight past both of its ends; each end may have its own.
    `width_mm` is the room along the axis of a torsion spring.
    """

    bore_mm: Wanted | None = None
    rod_mm: Wanted | None = None
    depth_mm: Wanted | None = None
    large_end: PocketEnd | None = None
    small_end: PocketEnd | None = None
    width_mm: Wanted | None = None

    @property
    def bores_mm(self) -> tuple[Wanted, ...]:
        """Every bore that is given."""
        ends = (self, self.large_end, self.small_end)
        return tuple(end.bore_mm for end in ends if end is not None and end.bore_mm is not None)

    @property
    def rods_mm(self) -> tuple[Wanted, ...]:
        """Every rod that is given."""
        ends = (self, self.large_end, self.small_end)
        return tuple(end.rod_mm for end in ends if end is not None and end.rod_mm is not None)


@dataclass(frozen=True, slots=True)
class WorkingPoint:
    """A length with, if it is known, the force wanted there. `length_mm` always has a nominal."""

    length_mm: Wanted
    force_n: Wanted | None = None

    @property
    def at_mm(self) -> float:
        """The nominal length."""
        assert self.length_mm.nominal is not None
        return self.length_mm.nominal


@dataclass(frozen=True, slots=True)
class TurnedPoint:
    """An angle, wound up from free, with the torque wanted there if it is known. `angle_deg` always has a nominal."""

    angle_deg: Wanted
    torque_n_mm: Wanted | None = None

    @property
    def at_deg(self) -> float:
        """The nominal angle."""
        assert self.angle_deg.nominal is not None
        return self.angle_deg.nominal


@dataclass(frozen=True, slots=True)
class WantedLeg:
    """A leg of a torsion spring, from where it leaves the coil to where it is loaded. No shape: any will do."""

    length_mm: Wanted
    shape: LegShape | None = None


@dataclass(frozen=True, slots=True)
class WantedEnd:
    """An end of a compression spring that hooks into a part; `length_mm` always has a nominal.

    `angle_deg` is the usual one of its shape where the need gives none.
    """

    shape: EndShape
    length_mm: Wanted
    angle_deg: float

    @property
    def piece(self) -> EndPiece:
        """The end piece that is aimed at."""
        assert self.length_mm.nominal is not None
        return EndPiece(self.shape, self.length_mm.nominal, self.angle_deg)


@dataclass(frozen=True, slots=True)
class Need:
    """What the repair calls for. What is None or empty is unknown: neither judged nor assumed.

    `working` is ordered from the longest length to the shortest. `duty` is what the file says: "ordinary",
    "guarded" or None. `places` maps a key ("pocket.bore", "working.0.length") to where its value stands; working
    points are numbered as they are ordered here. The working points of a torsion spring are in `turned`, from the
    smallest angle to the largest; `bodies` is 2 where a double one is wanted. `end_1` and `end_2` are those of a
    compression spring that hook into a part; of a cone, the first is at its large end. An extension spring must be
    pulled to `pull_to_fit_mm` when it goes in.
    """

    job: str
    kind: str
    what: str | None = None
    duty: str | None = None
    pocket: Pocket = field(default_factory=Pocket)
    working: tuple[WorkingPoint, ...] = ()
    free_length_mm: Wanted | None = None
    ends: Ends | None = None
    hand: Hand | None = None
    cycles: float | None = None
    surroundings: tuple[str, ...] = ()
    temperature_c: float | None = None
    quantity: int = 1
    needed_within_days: float | None = None
    material: Material | None = None
    wire_diameter_mm: Wanted | None = None
    note: str | None = None
    hooks: Hooks | None = None
    initial_tension_n: Wanted | None = None
    pull_to_fit_mm: float | None = None
    turned: tuple[TurnedPoint, ...] = ()
    leg_1: WantedLeg | None = None
    leg_2: WantedLeg | None = None
    free_angle_deg: Wanted | None = None
    bodies: int | None = None
    end_1: WantedEnd | None = None
    end_2: WantedEnd | None = None
    place: Place = field(default_factory=lambda: Place(None))
    places: Mapping[str, Place] = field(default_factory=dict[str, Place])
