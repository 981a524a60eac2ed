"""A coil of a plan that came out otherwise, and what is said of one of any kind."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from math import hypot
from typing import Generic, Literal, TypeVar

from sourcing.fit.model import Fit
from sourcing.need.model import Need
from sourcing.quantities import show_diameter
from sourcing.springs.model import Spring
from sourcing.stock.model import Bench, Spool, Trial
from sourcing.stock.trial_bounds import least_outside_mm, measures_too_little, reading_error_mm
from sourcing.winding.heat import change_of_diameter
from sourcing.winding.in_hand import keeps
from sourcing.winding.learning import learn
from sourcing.winding.measuring import CALIPER_SD_MM
from sourcing.winding.model import Mandrel, WindingPlan, Wire
from sourcing.winding.saving.typed import typed_trial
from sourcing.winding.trials import Knowledge

Answer = Literal["keep", "change", "wind again", "measure first"]

S = TypeVar("S", bound=Spring, covariant=True)

AS_LONG_MM = 0.25
"""A steel rule tells no smaller difference in a length."""

TOLD_FROM = 0.01
"""A rate that is nearer to the one meant than this share needs no other coils."""

SAME_TURNS, SAME_MANDREL_MM = 0.5, 0.05
"""Trials that differ by less in turns and mandrel may be of one coil (assumed)."""

FAR_LARGER = 3.0
"""No wire that yields on its mandrel opens to so many times what it measured there (assumed)."""

HARDLY_CHANCE = (
    "So far off is hardly chance: another wire or grade than the label says, or a coil that slipped. Before you go by "
    "this measure wire, mandrel and coil again, and wind a trial coil on the same mandrel before the next spring."
)
"""What is said of a coil that came out more than `SURPRISE` standard deviations from what was expected."""

_ORDER = {"yes": 0, "near": 1, "no": 2}


class SenselessError(ValueError):
    """A measure that no coil of the plan can have: which one, what was found, and what was expected."""

    def __init__(self, measure: str, found: str, expected: str) -> None:
        super().__init__(f"{found}; expected {expected}")
        self.measure, self.found, self.expected = measure, found, expected


@dataclass(frozen=True, slots=True)
class Saved:
    """What to do with a coil.

    `keep`: it serves as it is. `change`: it serves with other coils, another length, its legs bent. `wind again`:
    nothing saves it. `measure first`: what was measured does not tell yet which of them, or what it becomes hangs on a
    reading after heat or a pull. `spring` is what it becomes, judged in `fit`, which is None before what decides is
    measured; `rate_kept` is the rate over the wanted one if
    nothing is changed. `next_mandrel` and `next_stop_deg` are for the next coil, where something is to be said of them.
    """

    answer: Answer
    spring: Spring
    fit: Fit | None
    rate_kept: float
    said: tuple[str, ...]
    next_mandrel: Mandrel | None = None
    next_stop_deg: float | None = None


@dataclass(frozen=True, slots=True)
class Way(Generic[S]):
    """What a coil may become, with what is done to it.

    `kept_too`: the coil is kept as it is as well. `surer`: what else a coil that is kept may become, clearly surer.
    """

    answer: Answer
    spring: S
    fit: Fit
    kept_too: bool = False
    surer: Way[S] | None = None


def saved_by(
    way: Way[Spring],
    rate_kept: float,
    said: tuple[str, ...],
    next_mandrel: Mandrel | None = None,
    next_stop_deg: float | None = None,
) -> Saved:
    """The answer that a way is; of one that waits for a measure no fit is told."""
    fit = None if way.answer == "measure first" else way.fit
    return Saved(way.answer, way.spring, fit, rate_kept, said, next_mandrel, next_stop_deg)


@dataclass(frozen=True, slots=True)
class Coil:
    """A coil of a plan, with what is needed to judge it.

    `heated`: it was measured after its heat. `written`: it is among its spool's trials, which the plan leaves out.
    `wound_on`: what it was wound on, as a trial says it; the plan's wire is known as on that.
    """

    need: Need
    bench: Bench
    wire: Wire
    plan: WindingPlan
    heated: bool = False
    written: bool = False
    wound_on: str | None = None

    @property
    def units(self) -> str:
        """What the bench reads."""
        return self.bench.units

    @property
    def wire_mm(self) -> float:
        """The wire's diameter."""
        return self.plan.wire_diameter_mm

    @property
    def meant(self) -> Spring:
        """The spring that was meant, in the state in which the coil was measured."""
        return self.plan.wanted if self.heated else self.plan.finished.spring

    @property
    def change_to_come(self) -> float:
        """By how much heat will yet change the diameter, relative."""
        return 0.0 if self.heated else change_of_diameter(self.wire.material, self.bench)[0]

    @property
    def spool(self) -> Spool:
        """The spool; one without a name for wire to buy."""
        return self.wire.spool or Spool("", self.wire.material, self.wire.wire_diameter_mm)

    def final_mean_mm(self, outside_mm: float) -> float:
        """The mean diameter in the end of a coil that measures so much outside."""
        return (outside_mm - self.wire_mm) * (1.0 + self.change_to_come)

    def diameter_sd_mm(self, mean_diameter_mm: float) -> float:
        """What is left of the doubt of a diameter that was measured: the caliper's, and that of heat to come."""
        doubt = 0.0 if self.heated else change_of_diameter(self.wire.material, self.bench)[1]
        return hypot(CALIPER_SD_MM, mean_diameter_mm * doubt)

    def trial(self, mandrel_mm: float, outside_mm: float) -> Trial:
        """The coil as a trial."""
        return Trial(mandrel_mm, outside_mm, turns=self.plan.turns_to_wind, heated=self.heated, on=self.wound_on)

    def known_then(self, *trials: Trial) -> Knowledge:
        """What is known of the wire once these are counted among its trials."""
        strength_mpa = self.wire.tensile_strength_mpa
        assert strength_mpa is not None
        known = learn(self.wire.material, self.wire_mm, strength_mpa, (*self.spool.trials, *trials))
        return replace(known, wound_on=self.wound_on)

    def shown(self, coils: float) -> str:
        """Coils of the finished spring as they are counted at the coil in hand, before heat or after."""
        return f"{coils * (1.0 + self.change_to_come):.2f}"

    @property
    def counted(self) -> str:
        """When the coils are counted, where heat is still to come."""
        return ", counted before heat" if self.change_to_come else ""


def best_way(coil: Coil, as_it_is: Way[S], *changed: Way[S]) -> Way[S]:
    """The coil as it is where it is kept so; else whichever way is best, as it is before any change that is no better.

    What is kept as a near fit that was planned is changed all the same where it then serves wholly, and may be kept
    too. Where none serves it is to be wound again.
    """
    wholly = as_it_is.fit.fits == "yes" or all(way.fit.fits != "yes" for way in changed)
    kept = keeps(as_it_is.fit, coil.plan.fit)
    if kept and wholly:
        return as_it_is
    best = min((as_it_is, *changed), key=lambda way: (_ORDER[way.fit.fits], -(way.fit.score or 0)))
    return replace(best, answer="wind again") if best.fit.fits == "no" else replace(best, kept_too=kept)


def refuse_senseless(coil: Coil, measure: str, outside_mm: float, mandrel_mm: float) -> None:
    """Raise `SenselessError` for an outside that is less than the mandrel and the wire on it, as a trial's would be, or
    many times as much."""
    wire_mm, material = coil.wire_mm, coil.wire.material
    if outside_mm > FAR_LARGER * (mandrel_mm + 2.0 * wire_mm):
        came, on = (show_diameter(mm, coil.units) for mm in (outside_mm, mandrel_mm))
        found = f"{came} outside is more than {FAR_LARGER:g} times what the wire measures on a mandrel of {on}"
        raise SenselessError(measure, found, "the outside diameter of a coil wound on it")
    if not measures_too_little(outside_mm, mandrel_mm, wire_mm, material, coil.heated):
        return
    least_mm = least_outside_mm(mandrel_mm, wire_mm, material, coil.heated)
    lengths = (outside_mm, least_mm, reading_error_mm(wire_mm, material))
    came, least, error = (show_diameter(mm, coil.units) for mm in lengths)
    found = f"{came} outside is less than its mandrel and two wires"
    expected = f"the outside diameter of the coil, {least} or more (up to {error} less is let pass)"
    raise SenselessError(measure, found, expected)


def surprise(coil: Coil, trial: Trial) -> Iterator[str]:
    """That a coil is too far off to be chance."""
    if coil.known_then(trial).lessons[-1].surprising:
        yield HARDLY_CHANCE


def write_down(coil: Coil, trial: Trial) -> Iterator[str]:
    """How to count the coil among the trials of its spool."""
    if coil.wire.spool is None:
        return
    if coil.written:
        yield "It is written down as a trial already; it was judged here as before that."
        return
    command = f"springwright trial {coil.spool.id} {typed_trial(trial, coil.units)}"
    if _may_stand_as_before_heat(coil, trial):
        yield (
            f"The last trial of {coil.spool.id} is of a coil like this, measured before its heat. If it is this one, "
            f"leave it at that, for a coil teaches once; if not, write it down: {command}"
        )
        return
    yield f"Write it down: {command}"


def _may_stand_as_before_heat(coil: Coil, trial: Trial) -> bool:
    """Whether the spool's last trial may be the same coil before its heat: on the same mandrel, of as many turns."""
    if not trial.heated or not coil.spool.trials:
        return False
    last = coil.spool.trials[-1]
    as_many = last.turns is None or trial.turns is None or abs(last.turns - trial.turns) < SAME_TURNS
    return not last.heated and abs(last.mandrel_mm - trial.mandrel_mm) < SAME_MANDREL_MM and as_many


def joined_said(*parts: Iterable[str]) -> tuple[str, ...]:
    """All that is said, in order, each sentence once."""
    return tuple(dict.fromkeys(each for part in parts for each in part))
