"""What winding speaks of: the wire, a refusal, and the plan with its parts. Figures only; steps.py has the words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from sourcing.fit.model import Fit
from sourcing.materials.model import Material
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.quantities import Money, show_diameter, show_wire
from sourcing.springs.describe import AnyDescription
from sourcing.springs.model import ConicalSpring, Spring
from sourcing.stock.model import Spool
from sourcing.winding.trials import Lesson

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

    `chance`: of a right first try, None where it is not known. `serves`: with the pull of the plan. `safety`: what is
    twisted off it over what the crank puts on it, `greatest_pull_n` the pull with which that is enough (0: none is);
    both only of what is printed. `rod_mm`, `wall_mm`: the rod under a sleeve, and what it leaves of the sleeve.
    """

    kind: Literal["rod", "turned", "printed", "sleeve"]
    diameter_mm: float | None
    chance: float | None
    serves: bool
    chosen: bool
    said: str
    safety: float | None = None
    greatest_pull_n: float | None = None
    rod_mm: float | None = None
    wall_mm: float | None = None


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
    `cover_force_n` the force at the height of the cover: flush with the hole, or else at the longest working length.
    Either is None for a kind that goes into no hole.
    """

    stick_out_mm: float | None
    cover_force_n: float | None
    said: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Serves:
    """An interval of mean diameters (after heat) that serve, and what stops it below and above.

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


_GAP_MM = 0.1
"""Two ranges of a cone's end no further apart are one: the search is no finer."""


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
    lessons: tuple[Lesson, ...]
    notes: tuple[str, ...]
    choices: tuple[MandrelChoice, ...] = ()
    taken: tuple[str, ...] = ()

    @property
    def unsettled(self) -> bool:
        """Whether the last trial of its wire was too far off to be chance, so that another coil must decide."""
        return bool(self.lessons) and self.lessons[-1].surprising

    @property
    def tries_expected(self) -> float:
        """How many coils until one is right, on the average."""
        return self.tries.expected

    @property
    def summary(self) -> str:
        """From what and on what, in one phrase."""
        wire = f"{show_wire(self.wire_diameter_mm, self.units)} {self.material}"
        source = f"from {self.wire} ({wire})" if self.wire else f"from {wire} bought for it"
        return f"{source} on {self.on_mandrel}"

    @property
    def on_mandrel(self) -> str:
        """What it is wound on, with its size; a cone's mandrel from end to end."""
        mandrel = self.mandrel
        if mandrel.diameter_mm is None:
            small, large = (show_diameter(mandrel.profile[at].diameter_mm, self.units) for at in (0, -1))
            return f"{mandrel.named} to a curved taper of {small} to {large}"
        on = "the rod" if mandrel.kind == "rod" else "a mandrel"
        return f"{on} of {show_diameter(mandrel.diameter_mm, self.units)}"

    @property
    def as_sentence(self) -> str:
        """What this wire can do for the need: yes, or only between which diameters."""
        if not self.serves:
            return "Only a near fit: " + "; ".join(limit.why for limit in self.fit.broken) + "."
        if isinstance(self.wanted, ConicalSpring):
            return self._as_cone(self.wanted)
        between = " or ".join(
            f"{show_diameter(each.low_mm, self.units)} and {show_diameter(each.high_mm, self.units)}"
            for each in self.serves
        )
        if not self.only:
            return f"Yes, at every mean diameter between {between}."
        return f"Only between mean diameters {between}. " + " ".join(self._edges(each) for each in self.serves)

    def _as_cone(self, cone: ConicalSpring) -> str:
        """The ranges of both ends round the ones chosen, and what bounds them; not every one goes with every other."""
        chosen = {"large": cone.mean_diameter_large_mm, "small": cone.mean_diameter_small_mm}
        (at_large, edges_large), (at_small, edges_small) = (self._round(end, mm) for end, mm in chosen.items())
        large, small = (show_diameter(each, self.units) for each in chosen.values())
        more = (
            f", though not each with each; here {large} and {small}" if (large, small) != (at_large, at_small) else ""
        )
        ranges = f"as a cone of mean diameters {at_large} at the large end and {at_small} at the small one{more}."
        if not self.only:
            return f"Yes, {ranges}"
        return " ".join(filter(None, (f"Only {ranges}", edges_large, edges_small)))

    def _round(self, end: str, chosen_mm: float) -> tuple[str, str]:
        """From where to where an end serves round the diameter chosen, with what bounds it; its other ranges unsaid."""
        around = [each for each in self._of(end) if each.low_mm - _GAP_MM <= chosen_mm <= each.high_mm + _GAP_MM]
        if not around:
            return show_diameter(chosen_mm, self.units), ""
        first, last = around[0], around[-1]
        low, high = (show_diameter(each, self.units) for each in (first.low_mm, last.high_mm))
        sides = (("below", low, first.below), ("above", high, last.above))
        said = [f"{end.capitalize()} end {way} {at}: {why}." for way, at, why in sides if why]
        return low if low == high else f"{low} to {high}", " ".join(said)

    def _of(self, end: str) -> tuple[Serves, ...]:
        return tuple(each for each in self.serves if each.end == end)

    def _edges(self, serves: Serves) -> str:
        """What stops the diameters below and above one range."""
        sides = (("Below", serves.low_mm, serves.below), ("Above", serves.high_mm, serves.above))
        return " ".join(f"{way} {show_diameter(at_mm, self.units)}: {why}." for way, at_mm, why in sides if why)
