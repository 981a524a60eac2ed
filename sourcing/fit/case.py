"""A spring in its place: what the limits, the score and the chance ask of it, whatever its kind.

Each kind has a case of its own beside this file (pressed.py), which `cases.py` lists.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Generic, TypeVar

from sourcing.fit.model import Spread, WantedFigure
from sourcing.need.model import Need
from sourcing.quantities import Wanted, show_diameter, show_length, show_wanted
from sourcing.springs.life import Word
from sourcing.springs.model import Spring
from sourcing.springs.strength import Place
from sourcing.stock.model import Bench

S_co = TypeVar("S_co", bound=Spring, covariant=True)


@dataclass(frozen=True, slots=True)
class Seat:
    """A bore and a rod with what must go into the one and over the other; `where` opens with a blank, or is empty."""

    where: str
    outside_mm: float
    inside_mm: float
    growth_mm: float
    bore_mm: Wanted | None
    rod_mm: Wanted | None


@dataclass(frozen=True, slots=True)
class Worked:
    """A place in a spring's wire that is worked between two corrected stresses, and the word for the greater alone."""

    place: Place
    low_mpa: float
    high_mpa: float
    steady: Word


@dataclass(frozen=True, slots=True)
class Case(ABC, Generic[S_co]):
    """A spring in a need at a bench, with the figures that several limits ask for.

    `rate` is the rate to believe, in the unit of the spring's kind (`springs.rates`); of a cone, the initial one.
    """

    spring: S_co
    need: Need
    bench: Bench
    spread: Spread
    rate: float

    @property
    @abstractmethod
    def seats(self) -> tuple[Seat, ...]:
        """Where the spring sits."""

    @abstractmethod
    def wanted(self) -> Iterator[WantedFigure]:
        """Every figure that the need wants, with what the spring gives, in the order of the need."""

    def worked(self) -> Iterator[Worked]:
        """Every place in the wire that the need works, where its working points say between which stresses."""
        return iter(())

    def size(self, length_mm: float) -> str:
        """A size in the bench's units, as calipers read it."""
        return show_diameter(length_mm, self.bench.units)

    def length(self, length_mm: float) -> str:
        """A length in the bench's units, to three figures and no noise."""
        return show_wanted(Wanted(nominal=length_mm), lambda mm: show_length(mm, self.bench.units))


AnyCase = Case[Spring]


def wanted_wire(case: AnyCase) -> Iterator[WantedFigure]:
    """The wire diameter, where the need wishes one."""
    wish = case.need.wire_diameter_mm
    if wish is not None:
        house_mm = case.bench.tolerances.diameter_mm
        yield WantedFigure("wire diameter", "mm", wish, case.spring.wire_diameter_mm, house_mm)


def wanted_free_length(case: AnyCase, free_length_mm: float) -> Iterator[WantedFigure]:
    """The free length, where the need wants one."""
    wish = case.need.free_length_mm
    if wish is not None:
        yield WantedFigure("free length", "mm", wish, free_length_mm, case.bench.tolerances.length_mm)
