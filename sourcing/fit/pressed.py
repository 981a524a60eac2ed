"""A compression spring of any shape in its place."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sourcing.fit.case import Case, Seat, Worked, wanted_free_length, wanted_wire
from sourcing.fit.model import WantedFigure
from sourcing.fit.score import force_house_tolerance_n
from sourcing.need.model import Need, PocketEnd
from sourcing.springs import conical_lengths, geometry, pressed
from sourcing.springs.life import steady
from sourcing.springs.model import CompressionSpring, ConicalSpring, PressedSpring
from sourcing.springs.strength import Place


@dataclass(frozen=True, slots=True)
class PressedCase(Case[PressedSpring]):
    """A compression spring in a need at a bench; `rate` is in N/mm."""

    @property
    def shortest_mm(self) -> float | None:
        """The shortest working length, or None."""
        return min((point.at_mm for point in self.need.working), default=None)

    @property
    def solid_length_mm(self) -> float:
        """Solid length (EN 13906-1)."""
        return pressed.solid_length_mm(self.spring)

    @property
    def seats(self) -> tuple[Seat, ...]:
        """A cylinder in its bore, over its rod; a cone in a straight bore, and each of its ends in its own."""
        match self.spring:
            case CompressionSpring():
                return (_seat_of_cylinder(self.spring, self.need),)
            case ConicalSpring():
                return _seats_of_cone(self.spring, self.need)

    def wanted(self) -> Iterator[WantedFigure]:
        """The wanted forces, then free length and wire."""
        for point in self.need.working:
            if point.force_n is not None:
                house_n = force_house_tolerance_n(point.force_n, self.bench.tolerances)
                got_n = self.force_n(point.at_mm)
                yield WantedFigure("force", "N", point.force_n, got_n, house_n, point.at_mm)
        yield from wanted_free_length(self, self.spring.free_length_mm)
        yield from wanted_wire(self)

    def force_n(self, length_mm: float) -> float:
        """The force at a length, to compare with the one wanted there, whether or not it can be pressed so far."""
        return pressed.force_n(self.spring, length_mm, self.rate)

    def stress_mpa(self, length_mm: float) -> float:
        """The uncorrected shear stress at a length, that at solid where the length is shorter."""
        return pressed.stress_mpa(self.spring, max(length_mm, self.solid_length_mm), self.rate)

    def worked(self) -> Iterator[Worked]:
        """The coils, between the longest and the shortest working length; from rest where there is only one."""
        tensile_mpa, shortest_mm = self.spring.tensile_strength_mpa, self.shortest_mm
        if tensile_mpa is None or shortest_mm is None:
            return
        several = len(self.need.working) > 1
        longest_mm = max(point.at_mm for point in self.need.working) if several else self.spring.free_length_mm
        pressed_to_mm = max(shortest_mm, self.solid_length_mm)
        low_mpa, high_mpa = pressed.corrected_range_mpa(self.spring, longest_mm, pressed_to_mm, self.rate)
        word = steady(Place.LENGTH, self.spring.material, tensile_mpa, self.stress_mpa(shortest_mm))
        yield Worked(Place.LENGTH, min(low_mpa, high_mpa), high_mpa, word)


def _seat_of_cylinder(spring: CompressionSpring, need: Need) -> Seat:
    pitch_mm = geometry.pitch_mm(
        spring.wire_diameter_mm, spring.free_length_mm, spring.active_coils, spring.total_coils, spring.ends
    )
    growth_mm = geometry.growth_at_solid_mm(spring.wire_diameter_mm, spring.mean_diameter_mm, pitch_mm)
    pocket = need.pocket
    return Seat("", spring.outside_diameter_mm, spring.inside_diameter_mm, growth_mm, pocket.bore_mm, pocket.rod_mm)


def _seats_of_cone(spring: ConicalSpring, need: Need) -> tuple[Seat, ...]:
    growth_small_mm, growth_large_mm = conical_lengths.growth_at_ends_mm(spring)
    pocket, nothing = need.pocket, PocketEnd()
    large, small = pocket.large_end or nothing, pocket.small_end or nothing
    outside_mm, inside_mm = spring.outside_diameter_large_mm, spring.inside_diameter_small_mm
    return (
        Seat("", outside_mm, inside_mm, growth_large_mm, pocket.bore_mm, pocket.rod_mm),
        Seat(
            " at the large end",
            outside_mm,
            spring.inside_diameter_large_mm,
            growth_large_mm,
            large.bore_mm,
            large.rod_mm,
        ),
        Seat(
            " at the small end",
            spring.outside_diameter_small_mm,
            inside_mm,
            growth_small_mm,
            small.bore_mm,
            small.rod_mm,
        ),
    )
