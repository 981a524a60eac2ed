"""How the mandrel is set up, the wire anchored and held, and what the crank takes, in sentences."""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import dataclass, field

from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_energy, show_force, show_length
from sourcing.springs import hands
from sourcing.springs.model import Hand
from sourcing.stock.model import Bench
from sourcing.winding import pull, springback, turns
from sourcing.winding.by_hand import show_moment
from sourcing.winding.model import Crank, Heat, Mandrel, Wire
from sourcing.winding.trials import Knowledge

_WEAK = ("hand-drill", "bench-drill")
"""What turns a mandrel and is weaker than a crank in a vice."""

FELT_N_MM = 100.0
"""The energy from which a crank that is let go is spoken of as one that strikes (assumed)."""

TOLD_MM = 0.005
"""A difference that is shown as nothing is not told."""

SLIDE_OFF = "Slide the coil off and"
"""How a cylinder comes off a rod."""

_SHANK = "A drill's shank is too hard to drill; wind on it, not on the flutes."


@dataclass(frozen=True, slots=True)
class OnSolid:
    """What the steps say of a mandrel that is made as a solid, where else they speak of a bare rod or of turning one.

    `prepared` are deeds before `gripped` is set up, `anchored` the end of a sentence, `turned` and `off` sentences.
    `greatest_pull_n`: that the mandrel stands, None for one of steel. `seated`: its seat keeps the pitch.
    `hand_taken`: the hand that it was made for where the need gives none.
    """

    prepared: tuple[str, ...]
    gripped: str
    anchored: str
    turned: str
    off: str
    greatest_pull_n: float | None
    seated: bool
    hand_taken: Hand | None


@dataclass(frozen=True, slots=True)
class Numbers(ABC):
    """What the sentences of any kind are made of; lengths in mm, `turns_opened` the crank's as planned."""

    wire: Wire
    known: Knowledge
    mandrel: Mandrel
    cut_length_mm: float
    crank: Crank
    turns_opened: float
    heat: Heat
    on_solid: OnSolid | None = field(default=None, kw_only=True)

    @abstractmethod
    def steps(self, need: Need, bench: Bench) -> tuple[str, ...]:
        """The winding of one spring, from the old one to the check of the new one."""

    @property
    def pull_n(self) -> float:
        """The pull on the wire."""
        return self.known.pull_n

    @property
    def crank_moment_n_mm(self) -> float:
        """The moment that bends the wire."""
        return springback.plastic_moment_n_mm(self.known.reckoned_with.flow_stress_mpa, self.known.wire_diameter_mm)

    @property
    def turns_run_back(self) -> float:
        """The turns by which the crank is driven back, of a wire no weaker than is reckoned with."""
        return turns.turns_run_back_by(self.turns_opened, *openings(self.known, self.mandrel.thickest_mm))

    @property
    def energy_let_go_n_mm(self) -> float:
        """What drives the crank back as the coil opens."""
        return turns.energy_let_go_n_mm(self.crank_moment_n_mm, self.turns_run_back)


def openings(known: Knowledge, mandrel_mm: float) -> tuple[float, float]:
    """D_f/D_m on a mandrel: of the wire as it is planned, and as it is reckoned with."""
    on_mandrel_mm = mandrel_mm + known.wire_diameter_mm
    planned_mm, reckoned_mm = (each.finished_mean_mm(mandrel_mm) for each in (known, known.reckoned_with))
    return planned_mm / on_mandrel_mm, reckoned_mm / on_mandrel_mm


def set_up(numbers: Numbers, bench: Bench) -> str:
    """The mandrel in what turns it, and what that takes."""
    if numbers.on_solid:
        return f"Set up {numbers.on_solid.gripped}, {holder(numbers.crank, bench)} {takes(numbers, bench)}"
    diameter = show_diameter(numbers.mandrel.diameter_mm or 0.0, bench.units)
    what = f"the rod of {diameter}" if numbers.mandrel.kind == "rod" else f"a mandrel turned or filed to {diameter}"
    return f"Set up {what} {holder(numbers.crank, bench)} {takes(numbers, bench)}"


def turned_by(crank: Crank, bench: Bench) -> str:
    """What turns the mandrel, of what the bench has: a drill only where it is strong enough."""
    having = ("lathe", *(_WEAK if crank.drill_serves else ()))
    return next((tool for tool in having if tool in bench.tools), "vice")


def holder(crank: Crank, bench: Bench) -> str:
    """What turns the mandrel, and why no drill does where the bench has one that is too weak; a sentence's end."""
    tool = turned_by(crank, bench)
    how = {
        "lathe": "in the lathe, turned by hand with its power off.",
        "bench-drill": "in the chuck of the bench drill, turned by hand and unplugged.",
        "hand-drill": (
            "in the hand drill, the drill clamped in the vice. Count turns at its chuck: a geared handle makes fewer, "
            "with as many times the force."
        ),
        "vice": "with a crank, running in a hole in wood held in a vice.",
    }[tool]
    if tool == "vice" and not set(_WEAK).isdisjoint(bench.tools):
        limits = bench.hand_winding
        most = show_moment(limits.vice_and_crank_n_mm, bench.units)
        thick = show_diameter(limits.vice_and_crank_mm, bench.units)
        how += f" No drill: it serves below {most} and wire of {thick} (common practice, no source)."
    return how


def takes(numbers: Numbers, bench: Bench) -> str:
    """The moment at the crank and the force at its handle."""
    crank, units = numbers.crank, bench.units
    assumed = "" if "hand_winding.crank" in bench.stated else ", assumed"
    return (
        f"Bending the wire takes {show_moment(crank.bending_n_mm, units)}, with the pull "
        f"{show_moment(crank.moment_n_mm, units)}: {show_force(crank.force_n, units)} at the handle of a crank of "
        f"{show_length(crank.handle_mm, units)}{assumed}."
    )


def eased(numbers: Numbers, bench: Bench) -> str:
    """How the coil is let go."""
    energy_n_mm = numbers.energy_let_go_n_mm
    force = f", with {show_energy(energy_n_mm, bench.units)} in all," if energy_n_mm >= FELT_N_MM else ""
    grip = {"vice": "crank", "hand-drill": "handle of the drill"}.get(turned_by(numbers.crank, bench), "chuck")
    return (
        f"Hold the {grip} and ease it back: the coil drives the mandrel by about {numbers.turns_run_back:.1f} turns"
        f"{force} as it opens. Never let go of the {grip} or of the wire; only when nothing pushes any more, cut both "
        "tails, each with both sides held."
    )


def prepared(numbers: Numbers) -> tuple[str, ...]:
    """What is done to a mandrel that was made as a solid before it is set up."""
    return numbers.on_solid.prepared if numbers.on_solid else ()


def anchored(numbers: Numbers, bench: Bench) -> str:
    """How the wire's end is held at the mandrel, as the end of a sentence and what belongs to it."""
    mandrel, crank = numbers.mandrel, numbers.crank
    if numbers.on_solid:
        return numbers.on_solid.anchored
    if mandrel.kind != "rod":
        return "put its end into a cross hole or slot of the mandrel, a little wider than the wire."
    if turned_by(crank, bench) == "vice":
        return (
            f"bend its end into a slot ground across the rod's end, or clamp it to the rod with a screw clip. {_SHANK}"
        )
    return f"bend its end under a jaw of the chuck, or clamp it to the rod with a screw clip. {_SHANK}"


def held(numbers: Numbers, bench: Bench) -> str:
    """How hard the wire is pulled, how that is done, and what too much does."""
    return (
        f"Hold the wire with a steady pull of about {pull_shown(numbers.pull_n, bench.units)}. "
        f"{pull.how_made(numbers.pull_n, bench.units)} {_never_more(numbers, bench.units)}"
    )


def _never_more(numbers: Numbers, units: str) -> str:
    """The greatest pull: the wire's own, or what its mandrel stands where that is less."""
    wires_n, on = pull.GREATEST_PULL_SHARE * numbers.known.yield_n, numbers.on_solid
    smaller_mm = _smaller_mm(numbers)
    if on and on.greatest_pull_n is not None and on.greatest_pull_n < 0.999 * wires_n:
        return (
            f"Never pull more than {pull_shown(on.greatest_pull_n, units)}: with more, what is printed stands less "
            "than twice the torque (statics; its strength is assumed)."
        )
    return f"Never pull more than {pull_shown(wires_n, units)}, a tenth of what the wire yields at" + (
        f": that alone makes the coil {show_diameter(smaller_mm, units)} smaller." if smaller_mm >= TOLD_MM else "."
    )


def way_laid(numbers: Numbers, hand: Hand | None) -> str:
    """How the first turns are laid: which way a solid is turned, else what a wanted hand asks for, if anything."""
    if numbers.on_solid:
        return f" {numbers.on_solid.turned}"
    return f" Lay it {hands.laid(hand)}." if hand else ""


def taken_off(numbers: Numbers, bare: str) -> str:
    """How the coil comes off its mandrel, and that it is measured; `bare`: off one without a seat."""
    return f"{numbers.on_solid.off} Measure" if numbers.on_solid else f"{bare} measure"


def _smaller_mm(numbers: Numbers) -> float:
    """How much smaller a coil gets that is pulled with the most instead of what is aimed at."""
    known = numbers.known
    pulls = (pull.pull_fraction(known.pull_n, known.yield_n), pull.GREATEST_PULL_SHARE)
    return pull.smaller_mm(numbers.mandrel.thickest_mm, known.wire_diameter_mm, known.flow_strain, pulls)


def pull_shown(force_n: float, units: str) -> str:
    """A pull as a hand knows it: by the weight that it lifts."""
    force = show_force(force_n, units)
    return force if units == "inch" else f"{force} ({pull.weight_shown(force_n, units)})"
