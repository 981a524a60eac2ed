"""One wire for one need, and the designs that can be made of it; each kind of spring has its own tasks.

Where a spring follows from its mean diameter alone, its task is a `ByDiameter`: search.py, mandrel.py and tries.py then
know how to go on.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Generic, Protocol, TypeVar

from sourcing.fit.model import Fit, Spread, Verdict
from sourcing.need.model import Need
from sourcing.springs.model import Spring
from sourcing.stock.model import Bench
from sourcing.winding.model import Wire
from sourcing.winding.trials import Knowledge

S = TypeVar("S", bound=Spring)

EASY_INDEX = 15.0
"""Index up to which hand winding is easy: a spring maker's glossary has 4 to 16, JIS guidance 4 to 15."""

ORDER: Mapping[Verdict, int] = {"yes": 0, "near": 1, "no": 2}
"""Of fits, best first."""


@dataclass(frozen=True, slots=True)
class Design(Generic[S]):
    """A spring that the wire could become, judged, with its stress where it works hardest."""

    spring: S
    fit: Fit
    stress_mpa: float

    @property
    def standing(self) -> tuple[int, int, int, bool]:
        """What comes before chance and stress in the order of designs, best first."""
        score = 100 if self.fit.score is None else self.fit.score
        return ORDER[self.fit.fits], -score, self.fit.soft_broken, self.spring.spring_index > EASY_INDEX

    @property
    def order(self) -> tuple[int, int, int, bool, float, float]:
        """The sort key, best first: fits, score, soft limits, easy index, chance in whole per cents, lower stress."""
        return (*self.standing, -round(self.fit.chance, 2), self.stress_mpa)


class AnyDesign(Protocol):
    """A design of any kind."""

    @property
    def spring(self) -> Spring:
        """What the wire could become."""
        ...

    @property
    def fit(self) -> Fit:
        """How it was judged."""
        ...

    @property
    def stress_mpa(self) -> float:
        """Its stress where it works hardest."""
        ...

    @property
    def standing(self) -> tuple[float, ...]:
        """What comes before chance and stress in the order of designs, best first."""
        ...


class Task(Protocol):
    """One wire for one need."""

    @property
    def need(self) -> Need:
        """What is wanted."""
        ...

    @property
    def bench(self) -> Bench:
        """Where it is wound."""
        ...

    @property
    def wire(self) -> Wire:
        """What it is wound from."""
        ...

    @property
    def tensile_strength_mpa(self) -> float:
        """The least tensile strength of the wire."""
        ...


@dataclass(frozen=True, slots=True)
class Given:
    """One wire for one need, before a kind of spring has made its own of it; `wound_on`: as a trial says it."""

    need: Need
    bench: Bench
    wire: Wire
    tensile_strength_mpa: float
    wound_on: str | None = None


class ByDiameter(Task, Protocol[S]):
    """A task whose spring follows from its mean diameter."""

    def best_at(self, mean_diameter_mm: float, spread: Callable[[S], Spread]) -> Design[S]:
        """The best spring of a mean diameter."""
        ...

    def judged(self, spring: S, spread: Callable[[S], Spread]) -> Design[S]:
        """The spring against the need."""
        ...

    def spread_on(self, known: Knowledge, mandrel_mm: float) -> Callable[[S], Spread]:
        """How far a spring wound on this mandrel may come from its figures."""
        ...


def unspread(spring: Spring) -> Spread:
    """No spread: limits, deviations and score alone."""
    del spring
    return Spread()
