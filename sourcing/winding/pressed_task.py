"""What one wire can become for a need of a compression spring: a line of force fixes coils and free length.

The rate fixes the coils, n = G d^4/(8 D^3 k). Each diameter is then judged as any candidate is. A wound spring is
measured before it is accepted, so its own tolerance is in the chance and not in the limits.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from math import hypot

from sourcing.figures import formula
from sourcing.fit.judge import judge
from sourcing.fit.model import Spread
from sourcing.need.model import Need
from sourcing.springs import compression, geometry, pressed
from sourcing.springs.model import CompressionSpring, Ends, PressedSpring
from sourcing.stock.model import Bench
from sourcing.winding.doubts import DIAMETER_POWER, diameter_sd_mm, rate_sd
from sourcing.winding.finishing import GRINDING_GREATEST_INDEX, can_be_ground
from sourcing.winding.heat import making
from sourcing.winding.line import Line, OneForce
from sourcing.winding.measuring import LENGTH_DOUBT
from sourcing.winding.model import Wire
from sourcing.winding.task import Design
from sourcing.winding.trials import Knowledge

TRAVEL_SHARES = (0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8)
"""Shares of the travel to solid at which a single wanted force may lie (common practice, no source)."""


@formula(
    "u_t = 0.02 max(0, L₀ − L_c)",
    where={"L₀": "spring.free_length_mm", "L_c": pressed.solid_length_mm},
    source="assumed",
)
def brought_length_sd_mm(spring: PressedSpring) -> float:
    """The standard deviation of the free length of a spring that was pulled or pressed to it where it was off."""
    return LENGTH_DOUBT * max(0.0, spring.free_length_mm - pressed.solid_length_mm(spring))


@formula(
    "u_L = √(u_t² + (h u_P)²)",
    where={"u_t": brought_length_sd_mm, "h": pressed.climb_mm, "u_P": "pitch_sd"},
    source="assumed: a hand lays no more evenly than it pulls; and the doubt of how the pitch opens",
)
def laid_length_sd_mm(spring: PressedSpring, pitch_sd: float) -> float:
    """The standard deviation of the free length as it comes off the mandrel; `pitch_sd`: of p_f/p_m, relative."""
    return hypot(brought_length_sd_mm(spring), pressed.climb_mm(spring) * pitch_sd)


Cylinder = Design[CompressionSpring]


@dataclass(frozen=True, slots=True)
class PressedTask:
    """One wire for one need of a compression spring; `best_at` and what follows are about cylinders."""

    need: Need
    bench: Bench
    wire: Wire
    tensile_strength_mpa: float
    target: Line | OneForce

    def ends(self, mean_diameter_mm: float) -> Ends:
        """The ends of the need, else ground where wire and index allow; thin wire and beryllium copper never are."""
        can_grind = can_be_ground(self.wire.material, self.wire.wire_diameter_mm)
        wish = self.need.ends
        if wish is not None:
            unground = {Ends.CLOSED_GROUND: Ends.CLOSED, Ends.OPEN_GROUND: Ends.OPEN}
            return wish if can_grind else unground.get(wish, wish)
        if self.need.end_1 or self.need.end_2:
            return Ends.CLOSED
        easy = mean_diameter_mm <= GRINDING_GREATEST_INDEX * self.wire.wire_diameter_mm
        return Ends.CLOSED_GROUND if can_grind and easy else Ends.CLOSED

    def best_at(self, mean_diameter_mm: float, spread: Callable[[CompressionSpring], Spread]) -> Cylinder:
        """The best spring of a mean diameter."""
        designs = (self.judged(self._spring(mean_diameter_mm, line), spread) for line in self._lines(mean_diameter_mm))
        return min(designs, key=lambda each: each.order)

    def judged(self, spring: CompressionSpring, spread: Callable[[CompressionSpring], Spread]) -> Cylinder:
        """The spring against the need."""
        rate = compression.rate_n_per_mm(
            spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils, spring.shear_modulus_mpa
        )
        shortest_mm = min(point.at_mm for point in self.need.working)
        force_n = rate * max(0.0, spring.free_length_mm - shortest_mm)
        stress_mpa = compression.shear_stress_mpa(force_n, spring.wire_diameter_mm, spring.mean_diameter_mm)
        made = replace(spread(spring), making=making(self.wire.material, self.bench))
        return Design(spring, judge(spring, self.need, self.bench, made), stress_mpa)

    def _spring(self, mean_diameter_mm: float, line: Line) -> CompressionSpring:
        material, wire_mm, ends = self.wire.material, self.wire.wire_diameter_mm, self.ends(mean_diameter_mm)
        active = compression.active_coils_for_rate(
            wire_mm, mean_diameter_mm, line.rate_n_per_mm, material.shear_modulus_mpa
        )
        return CompressionSpring(
            wire_diameter_mm=wire_mm,
            mean_diameter_mm=mean_diameter_mm,
            free_length_mm=line.free_length_mm,
            active_coils=active,
            total_coils=active + geometry.dead_coils(ends),
            ends=ends,
            material=material,
            shear_modulus_mpa=material.shear_modulus_mpa,
            elastic_modulus_mpa=material.elastic_modulus_mpa,
            tensile_strength_mpa=self.tensile_strength_mpa,
            hand=self.need.hand,
            end_1=self.need.end_1 and self.need.end_1.piece,
            end_2=self.need.end_2 and self.need.end_2.piece,
        )

    def _lines(self, mean_diameter_mm: float) -> Iterable[Line]:
        if isinstance(self.target, Line):
            return (self.target,)
        return (_line_at_share(share, self, self.target, mean_diameter_mm) for share in TRAVEL_SHARES)

    def spread_on(self, known: Knowledge, mandrel_mm: float) -> Callable[[PressedSpring], Spread]:
        """How far a spring wound on this mandrel may come from its figures."""
        sd_mm = diameter_sd_mm(self, known, mandrel_mm)
        return lambda spring: Spread(
            diameter_sd_mm=sd_mm,
            free_length_sd_mm=brought_length_sd_mm(spring),
            rate_sd=rate_sd(spring),
            rate_on_diameter=DIAMETER_POWER,
        )


def _line_at_share(share: float, task: PressedTask, wanted: OneForce, mean_diameter_mm: float) -> Line:
    """The line through one force that leaves it at this share of the travel to solid.

    With the travel t to the force F, n = a t/F coils of a = G d^4/(8 D^3), so the solid length grows with t too:
    share (L + t - e d - a d t/F) = t, where e d is the solid length of no active coil.
    """
    wire_mm, ends = task.wire.wire_diameter_mm, task.ends(mean_diameter_mm)
    coils_by_travel = compression.active_coils_for_rate(
        wire_mm, mean_diameter_mm, wanted.force_n, task.wire.material.shear_modulus_mpa
    )
    ends_mm = geometry.solid_length_mm(wire_mm, geometry.dead_coils(ends), ends)
    room_mm = max(wanted.length_mm - ends_mm, 0.05 * wanted.length_mm)
    travel_mm = share * room_mm / (1 - share + share * wire_mm * coils_by_travel)
    return Line(wanted.force_n / travel_mm, wanted.length_mm + travel_mm)
