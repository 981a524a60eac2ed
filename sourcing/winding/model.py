"""What winding speaks of: the wire, a refusal, and the plan with its parts. Figures only; steps.py has the words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from sourcing.fit.model import Fit, Verdict
from sourcing.materials.model import Material
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.quantities import Money, show_diameter, show_wire
from sourcing.springs.describe import AnyDescription
from sourcing.springs.model import Spring
from sourcing.stock.model import Spool

if TYPE_CHECKING:
    from sourcing.winding.setting_up import Numbers


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why there is no winding plan: a rule's name, and the reason in words."""

    rule: str
    why: str


@dataclass(frozen=True, slots=True)
class Wire:
    """Wire to wind from: of a spool, or still to be bought (`spool` None)."""

    material: Material
    wire_diameter_mm: float
    spool: Spool | None = None

    @property
    def id(self) -> str | None:
        """The spool's id, None for wire to buy."""
        return None if self.spool is None else self.spool.id

    @property
    def tensile_strength_mpa(self) -> float | None:
        """The least tensile strength from the material's table, None where it does not reach."""
        return tensile_strength_mpa(self.material, self.wire_diameter_mm)


def wire_of(spool: Spool) -> Wire:
    """The wire of a spool."""
    return Wire(spool.material, spool.wire_diameter_mm, spool)


@dataclass(frozen=True, slots=True)
class Band:
    """The bounds between which a figure lies in 95 of 100 cases."""

    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Made:
    """A spring as it comes off a step of the work: its figures, and for those with a known doubt their bands."""

    spring: Spring
    figures: AnyDescription
    bands: Mapping[str, Band]


@dataclass(frozen=True, slots=True)
class ProfilePoint:
    """The diameter of a cone's mandrel at a finished turn, counted from the first active coil of its small end.

    `wound_turn` is the turn of the crank that it lies at, `height_mm` how far along the mandrel.
    """

    turn: float
    diameter_mm: float
    wound_turn: float = 0.0
    height_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class Mandrel:
    """What the wire is wound on. `diameter_mm` is where the wire lies; None for a cone, which has a `profile`.

    `rod_mm`: of the steel rod under a printed sleeve.
    """

    kind: Literal["rod", "turned", "printed"]
    diameter_mm: float | None
    profile: tuple[ProfilePoint, ...] = ()
    rod_mm: float | None = None

    @property
    def made_as(self) -> Literal["rod", "turned", "printed", "sleeve"]:
        """Its kind, a sleeve told from what is printed whole."""
        return self.kind if self.rod_mm is None else "sleeve"

    @property
    def named(self) -> str:
        """What it is, without its size."""
        return f"a {'mandrel' if self.rod_mm is None else 'sleeve'} {self.kind}" if self.kind != "rod" else "a rod"

    @property
    def thickest_mm(self) -> float:
        """The largest diameter that wire lies on."""
        return self.profile[-1].diameter_mm if self.diameter_mm is None else self.diameter_mm

    @property
    def thinnest_mm(self) -> float:
        """The smallest diameter that wire lies on."""
        return self.profile[0].diameter_mm if self.diameter_mm is None else self.diameter_mm


@dataclass(frozen=True, slots=True)
class Crank:
    """What turning the mandrel takes: to bend the wire, with the pull, and at a handle so far from the axis.

    `drill_serves`: whether a hand drill may turn it; else it wants a vice and a crank.
    """

    bending_n_mm: float
    moment_n_mm: float
    handle_mm: float
    force_n: float
    drill_serves: bool


@dataclass(frozen=True, slots=True)
class MandrelChoice:
    """A mandrel that might serve. `diameter_mm` is where the wire lies; None for a cone, which has its own profile.

    `chance`: of a right first try, None where it is not known. `fits`: how its spring does, with the pull of the plan.
    `safety`: what is twisted off it over what the crank puts on it, `greatest_pull_n` the pull with which that is
    enough (0: none is); both only of what is printed. `rod_mm`, `wall_mm`: the rod under a sleeve, and what it leaves
    of the sleeve.
    """

    kind: Literal["rod", "turned", "printed", "sleeve"]
    diameter_mm: float | None
    chance: float | None
    fits: Verdict
    chosen: bool
    said: str
    safety: float | None = None
    greatest_pull_n: float | None = None
    rod_mm: float | None = None
    wall_mm: float | None = None

    @property
    def serves(self) -> bool:
        """Whether its spring serves wholly, as in the plan's ranges of diameters; a near fit does not."""
        return self.fits == "yes"


@dataclass(frozen=True, slots=True)
class Heat:
    """Stress relief with the oven owned; both None where no oven reaches it, and `said` tells what then."""

    temperature_c: float | None
    minutes: float | None
    said: str


@dataclass(frozen=True, slots=True)
class Acceptance:
    """One check of the finished spring: the figure with its unit, its bounds (None: open), what to do outside them."""

    figure: str
    low: float | None
    high: float | None
    if_not: str


@dataclass(frozen=True, slots=True)
class GoesIn:
    """How the spring goes into its place.

    `stick_out_mm` is how far the free spring stands out of its hole (None where its depth is not known),
    `cover_force_n` what it pushes with at its longest working length: hold the cover against that. Either is None for
    a kind that no cover presses.
    """

    stick_out_mm: float | None
    cover_force_n: float | None
    said: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Serves:
    """An interval of mean diameters (after heat) that serve wholly, and what stops it below and above.

    `end`: "small" or "large" for an end of a cone, each with some diameter of the other; empty where there is only one.
    """

    low_mm: float
    high_mm: float
    below: str
    above: str
    end: str = ""


@dataclass(frozen=True, slots=True)
class Tries:
    """The chances that a coil comes out right, and what follows from them.

    `first`: with the present doubt. `after_a_trial`: once one coil has been measured. `by_second`: by the second try.
    `hours` are assumed figures.
    """

    first: float
    after_a_trial: float
    by_second: float
    expected: float
    hours: float


@dataclass(frozen=True, slots=True)
class WindingPlan:
    """All that the winding sheet says. Lengths of wire and turns are for one spring, `hours` and `cost` for all.

    `choices` are the mandrels to choose among, which are worked out for the plan that is shown (choices.py). `steps`
    are made of `numbers`. `taken`: what the need leaves open and the mandrel made for it does not.

    `wire` is the spool's id, None for wire to buy. `finished` is as wound, before heat; `after_heat` is None where no
    heat is given. `wanted` is the spring in its final state, judged in `fit`.
    """

    wire: str | None
    material: str
    wire_diameter_mm: float
    cut_length_mm: float
    coil_length_mm: float
    wire_left_mm: float | None
    mandrel: Mandrel
    turns_to_wind: float
    turns_to_spare: float
    pitch_on_mandrel_mm: float
    pull_n: float
    crank_moment_n_mm: float
    crank: Crank
    turns_run_back: float
    energy_let_go_n_mm: float
    finished: Made
    after_heat: Made | None
    wanted: Spring
    fit: Fit
    stress_in_use_mpa: float
    serves: tuple[Serves, ...]
    only: bool
    heat: Heat
    accept: tuple[Acceptance, ...]
    goes_in: GoesIn
    numbers: Numbers
    steps: tuple[str, ...]
    cautions: tuple[str, ...]
    never: tuple[str, ...]
    tries: Tries
    cost: Money | None
    units: str
    notes: tuple[str, ...]
    choices: tuple[MandrelChoice, ...] = ()
    taken: tuple[str, ...] = ()

    @property
    def unsettled(self) -> bool:
        """Whether a trial of its wire was too far off to be chance and none since has decided, so that another must."""
        return self.numbers.known.unsettled

    @property
    def label_refuted(self) -> bool:
        """Whether trial coils agree that its wire is another than its label says."""
        return self.numbers.known.label_refuted

    @property
    def holds_second_try(self) -> bool:
        """Whether there is wire for a second try, as far as the spool's record says."""
        return self.wire_left_mm is None or self.wire_left_mm >= self.cut_length_mm

    @property
    def tries_expected(self) -> float:
        """How many coils until one is right, on the average."""
        return self.tries.expected

    @property
    def from_wire(self) -> str:
        """From what it is wound, in one phrase."""
        wire = f"{show_wire(self.wire_diameter_mm, self.units)} {self.material}"
        return f"from {self.wire} ({wire})" if self.wire else f"from {wire} bought for it"

    @property
    def summary(self) -> str:
        """From what and on what, in one phrase."""
        return f"{self.from_wire} on {self.on_mandrel}"

    @property
    def on_mandrel(self) -> str:
        """What it is wound on, with its size; a cone's mandrel from end to end."""
        mandrel = self.mandrel
        if mandrel.diameter_mm is None:
            small, large = (show_diameter(mandrel.profile[at].diameter_mm, self.units) for at in (0, -1))
            return f"{mandrel.named} to a curved taper of {small} to {large}"
        on = {"rod": "the rod", "turned": "a mandrel", "printed": "a printed mandrel"}[mandrel.kind]
        return f"{on} of {show_diameter(mandrel.diameter_mm, self.units)}"
