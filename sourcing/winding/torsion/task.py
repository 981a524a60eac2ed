"""What one wire can become for a need of a torsion spring: a rate fixes the coils of each mean diameter.

n = E d^4/(3667 D R) less what the legs count for. Where an angle between the legs is wanted, only whole turns more or
fewer bring them to it, and the rate comes as near as they let it. Wound by hand, the rate hangs on the wire in the body
and not on how far the coil opens: the same wire makes fewer coils of a larger coil.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from math import erf, hypot, sqrt

from sourcing.figures import formula
from sourcing.fit.judge import judge
from sourcing.fit.model import Spread
from sourcing.fit.score import torque_house_tolerance_n_mm
from sourcing.need.model import Need, WantedLeg
from sourcing.quantities import show_angle, show_angular_rate, show_torque
from sourcing.springs import torsion, turned
from sourcing.springs.hands import SEEN
from sourcing.springs.life import Making
from sourcing.springs.model import Leg, LegShape, TorsionSpring
from sourcing.stock.model import Bench
from sourcing.winding.doubts import COILS_DOUBT, RATE_DOUBT, diameter_sd_mm
from sourcing.winding.line import aim
from sourcing.winding.model import Refusal, Wire
from sourcing.winding.task import Design
from sourcing.winding.trials import Knowledge

LEGS_SET_DEG = 3.0
"""How near legs are bent to their angle with two pliers and a protractor, one standard deviation (assumed)."""

BENT_AT_MOST_DEG = 45.0
"""Legs are bent no further to their angle: beyond that the body takes part of the bend (assumed)."""

FEWEST_COILS = 0.5
"""A body of less is no coil: where legs alone are softer than wanted, it is judged with so many and found too soft."""

NO_TORQUE_WANTED = Refusal(
    "no-torque-wanted",
    "No torque is known, so there is no rate to wind for. Measure one at one angle: hold the old spring, or a like "
    "one, on its rod, turn its leg by an angle from where it stands free, and press a kitchen scale square against the "
    "leg at a measured distance from the coil; grams divided by 102, times the millimetres, are N*mm, and ounces "
    "divided by 16, times the inches, lbf*in. Write it as working: - {angle: .., torque: ..}.",
)

HAND_NOT_KNOWN = Refusal(
    "hand-not-known",
    f"which hand is wanted is not said, and a spring of the wrong one would be unwound ({SEEN}): write hand: right or "
    "hand: left into the need",
)


def wanted_rate(need: Need, bench: Bench) -> float | Refusal:
    """The rate in N·mm/deg that the torques ask for, by least squares of the misses over their tolerances."""
    over = under = 0.0
    for point in need.turned:
        if point.torque_n_mm is not None:
            wanted = aim(point.torque_n_mm, torque_house_tolerance_n_mm(point.torque_n_mm, bench.tolerances))
            over += point.at_deg * wanted.value / wanted.tolerance**2
            under += (point.at_deg / wanted.tolerance) ** 2
    return over / under if under > 0.0 else NO_TORQUE_WANTED


def no_wire_serves(need: Need, bench: Bench) -> Refusal | None:
    """Why no wire whatever could serve."""
    if need.hand is None and need.bodies != 2:
        return HAND_NOT_KNOWN
    rate = wanted_rate(need, bench)
    return rate if isinstance(rate, Refusal) else _no_rate_for_all(need, bench)


@dataclass(frozen=True, slots=True)
class _AskedRate:
    """The rate that one wanted torque asks for, and from where to where it is within two tolerances of it."""

    said: str
    rate: float
    low: float
    high: float


def _no_rate_for_all(need: Need, bench: Bench) -> Refusal | None:
    """Why no rate comes near every torque that is wanted, for a torque rises in proportion to the angle."""
    asked = list(_asked_rates(need, bench))
    least, most = (
        min(asked, key=lambda each: each.high, default=None),
        max(asked, key=lambda each: each.low, default=None),
    )
    if least is None or most is None or most.low <= least.high:
        return None
    why = (
        f"{most.said} asks for {show_angular_rate(most.rate, bench.units)}, and {least.said} for "
        f"{show_angular_rate(least.rate, bench.units)}: the torque of a torsion spring rises in proportion to its "
        "angle, counted from where it is free"
    )
    return Refusal("no-rising-torque", why)


def _asked_rates(need: Need, bench: Bench) -> Iterator[_AskedRate]:
    for point in need.turned:
        torque = point.torque_n_mm
        if torque is None or torque.nominal is None or point.at_deg <= 0.0:
            continue
        house = torque_house_tolerance_n_mm(torque, bench.tolerances)
        less, more = (2.0 * (house if each is None else each) for each in (torque.minus, torque.plus))
        rates = ((torque.nominal + off) / point.at_deg for off in (0.0, -less, more))
        yield _AskedRate(f"{show_torque(torque.nominal, bench.units)} at {show_angle(point.at_deg)}", *rates)


def angle_sd_deg(spring: TorsionSpring, relative_sd: float) -> float:
    """How far the legs may come from their angle before they are bent to it: 360 n times a relative doubt."""
    return 360.0 * spring.active_coils * relative_sd


@formula(
    "P = erf(45 / (√2 u))", where={"u": "angle_sd_deg"}, closed=False, source="a normal doubt within 45 deg (assumed)"
)
def chance_to_bend(angle_sd_deg: float) -> float:
    """That the legs come out near enough to their angle to be bent to it.

    >>> chance_to_bend(0.0), round(chance_to_bend(22.5), 4)
    (1.0, 0.9545)
    """
    return erf(BENT_AT_MOST_DEG / (sqrt(2.0) * angle_sd_deg)) if angle_sd_deg > 0.0 else 1.0


def wanted_leg(wish: WantedLeg | None) -> Leg | None:
    """The leg to bend for one that is wanted."""
    if wish is None:
        return None
    return Leg(aim(wish.length_mm, wish.length_mm.nominal or 1.0).value, wish.shape or LegShape.STRAIGHT)


@dataclass(frozen=True, slots=True)
class TorsionTask:
    """One wire for one need of a torsion spring."""

    need: Need
    bench: Bench
    wire: Wire
    tensile_strength_mpa: float
    rate_n_mm_per_deg: float

    @property
    def free_angle_deg(self) -> float | None:
        """The angle between the legs to aim at; None where any will do."""
        wish = self.need.free_angle_deg
        return None if wish is None else aim(wish, self.bench.tolerances.angle_deg).value

    def best_at(self, mean_diameter_mm: float, spread: Callable[[TorsionSpring], Spread]) -> Design[TorsionSpring]:
        """The best spring of a mean diameter."""
        designs = (self.judged(spring, spread) for spring in self._springs(mean_diameter_mm))
        return min(designs, key=lambda each: each.order)

    def judged(self, spring: TorsionSpring, spread: Callable[[TorsionSpring], Spread]) -> Design[TorsionSpring]:
        """The spring against the need, and whether its legs can be bent to their angle: they turn with its diameter,
        the rod's own error in it left in, on the safe side.

        It need not be stress relieved: what winding leaves helps where it winds up.

        Source: Machinery's Handbook, 31st ed., p. 346.
        """
        largest_deg = max((point.at_deg for point in self.need.turned), default=0.0)
        stress_mpa = turned.stress_mpa(spring, turned.rate_n_mm_per_deg(spring) * largest_deg)
        made = replace(spread(spring), making=Making.WOUND)
        fit = judge(spring, self.need, self.bench, made)
        if self.free_angle_deg is not None:
            relative_sd = made.diameter_sd_mm / spring.mean_diameter_mm
            fit = replace(fit, chance=fit.chance * chance_to_bend(angle_sd_deg(spring, relative_sd)))
        return Design(spring, fit, stress_mpa)

    def spread_on(self, known: Knowledge, mandrel_mm: float) -> Callable[[TorsionSpring], Spread]:
        """How far a spring wound on this mandrel may come from its figures, its legs bent to their angle."""
        sd_mm = diameter_sd_mm(self, known, mandrel_mm)
        return lambda spring: Spread(
            diameter_sd_mm=sd_mm,
            rate_sd=hypot(RATE_DOUBT, COILS_DOUBT / spring.active_coils),
            free_angle_sd_deg=LEGS_SET_DEG,
        )

    def _springs(self, mean_diameter_mm: float) -> Iterator[TorsionSpring]:
        """The springs whose coils come nearest to the rate, with their legs at the angle that is wanted."""
        leg_1, leg_2 = wanted_leg(self.need.leg_1), wanted_leg(self.need.leg_2)
        of_legs = torsion.coils_of_legs(
            leg_1.length_mm if leg_1 else 0.0, leg_2.length_mm if leg_2 else 0.0, mean_diameter_mm
        )
        bodies, elastic = self.need.bodies or 1, self.wire.material.elastic_modulus_mpa
        coils = torsion.active_coils_for_rate(
            self.wire.wire_diameter_mm, mean_diameter_mm, self.rate_n_mm_per_deg / bodies, elastic, of_legs
        )
        for number in self._coils(max(coils, FEWEST_COILS)):
            yield TorsionSpring(
                wire_diameter_mm=self.wire.wire_diameter_mm,
                mean_diameter_mm=mean_diameter_mm,
                active_coils=number,
                material=self.wire.material,
                elastic_modulus_mpa=elastic,
                tensile_strength_mpa=self.tensile_strength_mpa,
                leg_1=leg_1,
                leg_2=leg_2,
                free_angle_deg=self.free_angle_deg,
                hand=None if bodies > 1 else self.need.hand,
                bodies=bodies,
            )

    def _coils(self, coils: float) -> Iterator[float]:
        """The coils that are wanted, or the numbers beside them that bring the legs to their angle."""
        if self.free_angle_deg is None:
            yield coils
            return
        nearest = turned.coils_near(coils, self.free_angle_deg)
        yield from (number for number in (nearest - 1.0, nearest, nearest + 1.0) if number >= FEWEST_COILS)
