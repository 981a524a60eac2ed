"""A spring in its place: what the limits, the score and the chance ask of it, whatever its kind."""

from __future__ import annotations

from dataclasses import dataclass

from sourcing.fit.model import Spread
from sourcing.need.model import Need, PocketEnd
from sourcing.quantities import Wanted, show_diameter, show_length, show_wanted
from sourcing.springs import conical_lengths, geometry, pressed
from sourcing.springs.model import CompressionSpring, ConicalSpring, Spring
from sourcing.stock.model import Bench


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
class Case:
    """A spring in a need at a bench, with the figures that several limits ask for.

    `rate_n_per_mm` is the rate to believe; of a cone, the initial one.
    """

    spring: Spring
    need: Need
    bench: Bench
    spread: Spread
    rate_n_per_mm: float

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
        """Where the spring sits; a cone in a straight bore, and each of its ends in its own."""
        match self.spring:
            case CompressionSpring():
                return (_seat_of_cylinder(self.spring, self.need),)
            case ConicalSpring():
                return _seats_of_cone(self.spring, self.need)

    def force_n(self, length_mm: float) -> float:
        """The force at a length, to compare with the one wanted there, whether or not it can be pressed so far."""
        return pressed.force_n(self.spring, length_mm, self.rate_n_per_mm)

    def stress_mpa(self, length_mm: float) -> float:
        """The uncorrected shear stress at a length, that at solid where the length is shorter."""
        return pressed.stress_mpa(self.spring, max(length_mm, self.solid_length_mm), self.rate_n_per_mm)

    def size(self, length_mm: float) -> str:
        """A size in the bench's units, as calipers read it."""
        return show_diameter(length_mm, self.bench.units)

    def length(self, length_mm: float) -> str:
        """A length in the bench's units, to three figures and no noise."""
        return show_wanted(Wanted(nominal=length_mm), lambda mm: show_length(mm, self.bench.units))


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
