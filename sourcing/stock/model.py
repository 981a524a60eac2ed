"""What the keeper of the catalogue has and can get: stock springs, spools with their trials, the bench."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from sourcing.files.findings import Finding, Place
from sourcing.materials.model import NO_MATERIALS, Material, OwnMaterials
from sourcing.quantities import Money
from sourcing.springs.model import Spring


@dataclass(frozen=True, slots=True)
class StockSpring:
    """A spring with its shelf data. `price` is for one spring, sold in packs of `pack`.

    `stated_rate` is in N/mm, of a torsion spring in N·mm/deg.
    """

    id: str
    spring: Spring
    stated_rate: float | None = None
    grade: int | None = None
    on_hand: int = 0
    least: int | None = None
    shelf: str | None = None
    seller: str | None = None
    price: Money | None = None
    pack: int = 1
    lead_days: float | None = None
    note: str | None = None
    place: Place = field(default_factory=lambda: Place(None))


@dataclass(frozen=True, slots=True)
class Trial:
    """One trial coil as it was wound and measured. `outside_diameter_mm` is worked out where the inside was given.

    Angles are those of a torsion spring, from leg 1 on to leg 2 the way it is wound up: `stop_angle_deg` where the
    crank was stopped, `leg_angle_deg` as it came out. `initial_tension_n`: what opens a coil wound tight.
    """

    mandrel_mm: float
    outside_diameter_mm: float
    turns: float | None = None
    date: str | None = None
    pitch_wound_mm: float | None = None
    pitch_mm: float | None = None
    heated: bool = False
    pull_n: float | None = None
    on: str | None = None
    stop_angle_deg: float | None = None
    leg_angle_deg: float | None = None
    initial_tension_n: float | None = None


@dataclass(frozen=True, slots=True)
class Spool:
    """A spool of spring wire. `length_left_mm` None: not said."""

    id: str
    material: Material
    wire_diameter_mm: float
    length_left_mm: float | None = None
    price_per_metre: Money | None = None
    shelf: str | None = None
    trials: tuple[Trial, ...] = ()
    note: str | None = None
    place: Place = field(default_factory=lambda: Place(None))


@dataclass(frozen=True, slots=True)
class HouseTolerances:
    """The tolerances used where a need gives none. `force` and `rate` are relative; the others absolute."""

    force: float = 0.15
    length_mm: float = 1.0
    diameter_mm: float = 0.3
    angle_deg: float = 5.0
    rate: float = 0.15


@dataclass(frozen=True, slots=True)
class Clearance:
    """Room wanted on the diameter beyond growth in compression and the spring's own tolerance."""

    bore_mm: float = 0.2
    rod_mm: float = 0.2


@dataclass(frozen=True, slots=True)
class HandWinding:
    """The limits of winding by hand, and how far from the axis the handle of the crank is (assumed).

    From either a wire diameter or a moment at the crank on: caution; stop; no drill, but a vice and a crank. The
    moments of caution and stop are those that bend the wire, that of vice and crank has the pull in it. All are common
    practice, no source; music wire of 0.5, 0.8, 1, 1.5, 2 and 3 mm takes 0.06, 0.21, 0.40, 1.26, 2.84 and 8.9 N·m.
    """

    caution_mm: float = 1.5
    stop_mm: float = 2.5
    vice_and_crank_mm: float = 1.2
    caution_n_mm: float = 1200.0
    stop_n_mm: float = 6000.0
    vice_and_crank_n_mm: float = 600.0
    crank_mm: float = 100.0


@dataclass(frozen=True, slots=True)
class Seller:
    """What an order from a seller costs in postage, and how long it takes where the spring does not say."""

    postage: Money | None = None
    lead_days: float | None = None


@dataclass(frozen=True, slots=True)
class SpringMaker:
    """A spring maker who winds to order."""

    name: str
    price: Money | None = None
    lead_days: float | None = None


@dataclass(frozen=True, slots=True)
class Bench:
    """The keeper's bench and preferences (bench.yaml). `oven_c` None: no oven. `stated` names the keys in the file.

    `doubts`: what its keeper should look at once more, though it can be read.
    """

    currency: str = "EUR"
    units: str = "mm"
    hour_value: Money = Money(0.0, "EUR")
    rods_mm: tuple[float, ...] = (3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 8, 9, 10, 12)
    tools: tuple[str, ...] = ("vice", "hand-drill")
    printer_bed_mm: tuple[float, float, float] | None = None
    oven_c: float | None = 250.0
    sellers: Mapping[str, Seller] = field(default_factory=dict[str, Seller])
    spring_maker: SpringMaker | None = None
    tolerances: HouseTolerances = HouseTolerances()
    clearance: Clearance = Clearance()
    hand_winding: HandWinding = HandWinding()
    least_chance: float = 0.8
    stated: frozenset[str] = frozenset()
    doubts: tuple[Finding, ...] = field(default=(), compare=False)


@dataclass(frozen=True, slots=True)
class Catalogue:
    """All that was read: springs and spools in the order of the files, the bench, the doubts met on the way, and the
    keeper's own materials.

    Where it was asked for what is worth judging, `further_off` counts the springs of the kind that are left out.
    """

    springs: tuple[StockSpring, ...] = ()
    spools: tuple[Spool, ...] = ()
    bench: Bench = Bench()
    warnings: tuple[Finding, ...] = ()
    materials: OwnMaterials = field(default_factory=lambda: NO_MATERIALS)
    further_off: int = 0
