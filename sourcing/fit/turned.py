"""A torsion spring in its place, wound up from free."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from sourcing.fit.case import Case, Seat, Worked, wanted_wire
from sourcing.fit.model import WantedFigure
from sourcing.fit.score import allowed, torque_house_tolerance_n_mm
from sourcing.need.model import WantedLeg
from sourcing.springs import turned
from sourcing.springs.life import steady
from sourcing.springs.model import Leg, TorsionSpring
from sourcing.springs.strength import Place


@dataclass(frozen=True, slots=True)
class TurnedCase(Case[TorsionSpring]):
    """A torsion spring in a need at a bench; `rate` is in N·mm/deg, of the spring with its legs as they are."""

    @property
    def largest_deg(self) -> float | None:
        """The largest working angle, or None."""
        return max((point.at_deg for point in self.need.turned), default=None)

    @property
    def legs(self) -> tuple[tuple[str, WantedLeg | None, Leg | None], ...]:
        """Each leg by its name, as wanted and as it is; a spring is turned end for end where that suits better."""
        wanted = (self.need.leg_1, self.need.leg_2)
        has = (self.spring.leg_1, self.spring.leg_2)
        if self.spring.bodies == 1 and self._misfit(wanted, has[::-1]) < self._misfit(wanted, has):
            has = has[::-1]
        return tuple(zip(("leg 1", "leg 2"), wanted, has, strict=True))

    @property
    def rate_in_place(self) -> float:
        """The rate where the legs are loaded: what stands out beyond does not bend."""
        loaded = [
            leg if leg is None or wish is None else replace(leg, length_mm=min(leg.length_mm, self.loaded_at_mm(wish)))
            for _, wish, leg in self.legs
        ]
        in_place = replace(self.spring, leg_1=loaded[0], leg_2=loaded[1])
        return self.rate * turned.rate_n_mm_per_deg(in_place) / turned.rate_n_mm_per_deg(self.spring)

    @property
    def seats(self) -> tuple[Seat, ...]:
        """In its bore as it is at rest, over its rod as it closes at the largest angle."""
        spring, pocket = self.spring, self.need.pocket
        return (Seat("", spring.outside_diameter_mm, self.wound_inside_mm, 0.0, pocket.bore_mm, pocket.rod_mm),)

    @property
    def wound_inside_mm(self) -> float:
        """The inside at the largest angle; none left where it closes before."""
        angle = self.largest_deg or 0.0
        return max(0.0, turned.inside_diameter_mm(self.spring, angle))

    def loaded_at_mm(self, wish: WantedLeg) -> float:
        """Where a leg is loaded: the nominal, or the bound that is given."""
        wanted = wish.length_mm
        return next(each for each in (wanted.nominal, wanted.high, wanted.low) if each is not None)

    def leg_bounds_mm(self, wish: WantedLeg) -> tuple[float, float]:
        """The shortest and the longest that a leg may be."""
        low, high = allowed(wish.length_mm, self.bench.tolerances.length_mm)
        return low or 0.0, float("inf") if high is None else high

    def torque_n_mm(self, wound_deg: float) -> float:
        """The torque at an angle."""
        return self.rate_in_place * wound_deg

    def stress_mpa(self, wound_deg: float) -> float:
        """The uncorrected bending stress at an angle."""
        return turned.stress_mpa(self.spring, self.torque_n_mm(wound_deg))

    def worked(self) -> Iterator[Worked]:
        """The body, between the smallest and the largest working angle; from rest where there is only one."""
        tensile_mpa, angles = self.spring.tensile_strength_mpa, [point.at_deg for point in self.need.turned]
        if tensile_mpa is None or not angles:
            return
        least = min(angles) if len(angles) > 1 else 0.0
        low_mpa, high_mpa = (
            turned.corrected_stress_mpa(self.spring, self.torque_n_mm(angle)) for angle in (least, max(angles))
        )
        word = steady(Place.WOUND_UP, self.spring.material, tensile_mpa, self.stress_mpa(max(angles)))
        yield Worked(Place.WOUND_UP, low_mpa, high_mpa, word)

    def wanted(self) -> Iterator[WantedFigure]:
        """The wanted torques, then the angle between the legs and the wire."""
        for point in self.need.turned:
            if point.torque_n_mm is not None:
                house = torque_house_tolerance_n_mm(point.torque_n_mm, self.bench.tolerances)
                got = self.torque_n_mm(point.at_deg)
                yield WantedFigure("torque", "N·mm", point.torque_n_mm, got, house, point.at_deg, "deg")
        wish, has = self.need.free_angle_deg, self.spring.free_angle_deg
        if wish is not None and has is not None:
            near = next(each for each in (wish.nominal, wish.low, wish.high) if each is not None)
            house = self.bench.tolerances.angle_deg
            yield WantedFigure("free angle", "deg", wish, whole_turns_nearer(has, near), house)
        yield from wanted_wire(self)

    def _misfit(self, wanted: tuple[WantedLeg | None, ...], has: tuple[Leg | None, ...]) -> float:
        """How far legs are from those wanted: too short counts most, then too long, then another shape."""
        return sum(self._misfit_of(wish, leg) for wish, leg in zip(wanted, has, strict=True) if wish is not None)

    def _misfit_of(self, wish: WantedLeg, leg: Leg | None) -> float:
        if leg is None:
            return 1e6
        low, high = self.leg_bounds_mm(wish)
        shape = 0.0 if wish.shape in (None, leg.shape) else 0.5
        return 1e3 * max(0.0, low - leg.length_mm) + max(0.0, leg.length_mm - high) + shape


def whole_turns_nearer(angle_deg: float, near_deg: float) -> float:
    """The same direction of a leg, counted whole turns on or back so that it comes nearest to another angle.

    >>> whole_turns_nearer(350.0, 10.0), whole_turns_nearer(90.0, 100.0)
    (-10.0, 90.0)
    """
    return angle_deg - 360.0 * round((angle_deg - near_deg) / 360.0)
