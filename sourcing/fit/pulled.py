"""An extension spring in its place, pulled between its hooks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sourcing.fit.case import Case, Seat, Worked, wanted_free_length, wanted_wire
from sourcing.fit.model import WantedFigure
from sourcing.fit.score import force_house_tolerance_n
from sourcing.springs import pulled
from sourcing.springs.initial_tension import Tension, tension_of
from sourcing.springs.life import steady
from sourcing.springs.model import ExtensionSpring


@dataclass(frozen=True, slots=True)
class PulledCase(Case[ExtensionSpring]):
    """An extension spring in a need at a bench; `rate` is in N/mm."""

    @property
    def shortest_mm(self) -> float | None:
        """The shortest working length, or None."""
        return min((point.at_mm for point in self.need.working), default=None)

    @property
    def longest_mm(self) -> float | None:
        """The longest working length, or None."""
        return max((point.at_mm for point in self.need.working), default=None)

    @property
    def tension(self) -> Tension:
        """The initial tension to believe."""
        return tension_of(self.spring)

    @property
    def largest_safe_mm(self) -> float | None:
        """The length at which its first part comes to its limit; None where the wire's strength is not known."""
        return pulled.largest_safe_length_mm(self.spring, self.rate, self.tension.likely_n)

    @property
    def seats(self) -> tuple[Seat, ...]:
        """Its body in the bore; pulled longer it only gets thinner."""
        spring = self.spring
        return (Seat("", spring.outside_diameter_mm, spring.inside_diameter_mm, 0.0, self.need.pocket.bore_mm, None),)

    def wanted(self) -> Iterator[WantedFigure]:
        """The wanted forces, the initial tension, then free length and wire."""
        house, need = self.bench.tolerances, self.need
        for point in need.working:
            if point.force_n is not None:
                house_n = force_house_tolerance_n(point.force_n, house)
                yield WantedFigure("force", "N", point.force_n, self.force_n(point.at_mm), house_n, point.at_mm)
        if need.initial_tension_n is not None:
            house_n = force_house_tolerance_n(need.initial_tension_n, house)
            yield WantedFigure("initial tension", "N", need.initial_tension_n, self.tension.likely_n, house_n)
        yield from wanted_free_length(self, self.spring.free_length_mm)
        yield from wanted_wire(self)

    def worked(self) -> Iterator[Worked]:
        """The body and both places of a hook, between the shortest and the longest working length."""
        tensile_mpa, longest_mm, spring = self.spring.tensile_strength_mpa, self.longest_mm, self.spring
        if tensile_mpa is None or longest_mm is None or self.shortest_mm is None:
            return
        several = len(self.need.working) > 1
        low_n, high_n = (
            self.force_n(mm) for mm in (self.shortest_mm if several else spring.free_length_mm, longest_mm)
        )
        for part in pulled.parts(spring):
            word = steady(part.place, spring.material, tensile_mpa, high_n * part.mpa_per_n)
            corrected_mpa = part.corrected * part.mpa_per_n
            yield Worked(part.place, low_n * corrected_mpa, high_n * corrected_mpa, word)

    def force_n(self, length_mm: float, initial_tension_n: float | None = None) -> float:
        """The force at a length, with the initial tension to believe or the one given."""
        tension_n = self.tension.likely_n if initial_tension_n is None else initial_tension_n
        return pulled.force_n(self.spring, length_mm, self.rate, tension_n)
