"""The wire as it lies on the mandrel, from the plan of any kind of spring: where its axis runs, and to what it opens.

Turns are those of the crank, counted from the end that is held. A cone is wound from its large end, so that it comes
off over its small one.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import ceil, floor, pi

from sourcing.springs.geometry import pitch_mm
from sourcing.springs.model import CompressionSpring, ConicalSpring, Ends, Hand, Spring, TorsionSpring
from sourcing.winding.conical.mandrel import diameter_at_mm
from sourcing.winding.model import WindingPlan
from sourcing.winding.presetting import as_laid
from sourcing.winding.turns import turns_on_mandrel

START_RAD = pi / 2
"""Where round the mandrel the wire begins."""


@dataclass(frozen=True, slots=True)
class Station:
    """A point of the wire's axis: the turn, how far along the mandrel, its radius there and once let go.

    `least_released_mm`: what that radius is at least in 95 of 100 coils.
    """

    turn: float
    height_mm: float
    radius_mm: float
    released_mm: float
    least_released_mm: float


@dataclass(frozen=True, slots=True)
class LaidCoil:
    """Wire on a mandrel; between stations everything changes evenly. Heights never fall, radii never grow.

    `loop_mm`: the room left in the middle for the loop of a double torsion spring, whose bodies lie on either side of
    it, one of either hand; stations do not count it. `released_pitch_mm`: the pitch of a cylinder's open turns once let
    go, None where it has none.
    """

    wire_mm: float
    hand: Hand
    stations: tuple[Station, ...]
    loop_mm: float = 0.0
    released_pitch_mm: float | None = None

    @property
    def turns(self) -> float:
        """All turns laid, spare ones too."""
        return self.stations[-1].turn

    @property
    def length_mm(self) -> float:
        """From the first turn's axis to the last one's, along the mandrel."""
        return self.stations[-1].height_mm + self.loop_mm

    @property
    def tapered(self) -> bool:
        """Whether it is a cone."""
        return self.stations[0].radius_mm > self.stations[-1].radius_mm

    @property
    def starts_close(self) -> bool:
        """Whether the first turns touch, which then must pass over all that is above them."""
        first, second = self.stations[:2]
        return second.height_mm - first.height_mm <= CLOSE * self.wire_mm * second.turn

    @property
    def close(self) -> bool:
        """Whether every turn touches the next."""
        return self.stations[-1].height_mm <= CLOSE * self.wire_mm * self.turns

    @property
    def seat_mm(self) -> float:
        """The mandrel's radius under the first turn."""
        return self.stations[0].radius_mm - self.wire_mm / 2

    @property
    def thinnest_mm(self) -> float:
        """The mandrel's radius under the last turn."""
        return self.stations[-1].radius_mm - self.wire_mm / 2

    def at(self, turn: float) -> Station:
        """Where the axis is at a turn from nothing to all."""
        place = min(max(bisect_right(self.stations, turn, key=lambda each: each.turn), 1), len(self.stations) - 1)
        before, after = self.stations[place - 1], self.stations[place]
        share = (turn - before.turn) / (after.turn - before.turn)

        def between(first: float, last: float) -> float:
            return first + share * (last - first)

        return Station(
            turn,
            between(before.height_mm, after.height_mm),
            between(before.radius_mm, after.radius_mm),
            between(before.released_mm, after.released_mm),
            between(before.least_released_mm, after.least_released_mm),
        )

    def crossings(self, angle_rad: float) -> tuple[Station, ...]:
        """Where the wire passes an angle, from the held end: a right-hand coil climbs the way the angle grows."""
        way = 1.0 if self.hand is Hand.RIGHT else -1.0
        part = way * (angle_rad - START_RAD) / (2 * pi)
        part -= floor(part + 1e-9)
        return tuple(self.at(max(0.0, part + whole)) for whole in range(ceil(self.turns - part + 1e-9)))


LOOP_WIRES = 5.0
"""The room along the mandrel for the loop between two bodies, in wires (assumed: a narrow U round a pin)."""

CLOSE = 1.05
"""A climb of up to so many wires a turn is wire against wire."""


def is_double(spring: Spring) -> bool:
    """Whether it is a double torsion spring."""
    return isinstance(spring, TorsionSpring) and spring.bodies > 1


def coil_of(plan: WindingPlan) -> LaidCoil:
    """What the plan lays on its mandrel: close end coils, the rest at its pitch, spare turns close.

    Where the need gives no hand it is right. Raises ValueError where the mandrel is thinner than the wire, or the
    spring would not come out larger than it was wound.
    """
    stations = tuple(_from_the_large_end(plan) if plan.mandrel.diameter_mm is None else _along_a_cylinder(plan))
    loop_mm = LOOP_WIRES * plan.wire_diameter_mm if is_double(plan.wanted) else 0.0
    hand = plan.wanted.hand or Hand.RIGHT
    coil = LaidCoil(plan.wire_diameter_mm, hand, stations, loop_mm, _released_pitch_mm(plan))
    if 2 * coil.thinnest_mm < coil.wire_mm - 1e-9:
        raise ValueError(f"a mandrel of {2 * coil.thinnest_mm:g} mm is thinner than the wire of {coil.wire_mm:g} mm")
    if any(each.released_mm <= each.radius_mm for each in stations):
        raise ValueError("the spring would not come out larger than it was wound: its mandrel does not fit inside it")
    return coil


def _released_pitch_mm(plan: WindingPlan) -> float | None:
    """The pitch as it comes off the mandrel, what the first pressing will take still in it."""
    made, wanted = plan.finished.spring, plan.wanted
    if not (isinstance(made, CompressionSpring) and isinstance(wanted, CompressionSpring)):
        return None
    spring = as_laid(made, wanted)
    return pitch_mm(
        spring.wire_diameter_mm, spring.free_length_mm, spring.active_coils, spring.total_coils, spring.ends
    )


def _along_a_cylinder(plan: WindingPlan) -> Iterable[Station]:
    """Stations of one radius."""
    assert plan.mandrel.diameter_mm is not None
    wire_mm, spring = plan.wire_diameter_mm, plan.finished.spring
    assert not isinstance(spring, ConicalSpring)
    radius_mm = (plan.mandrel.diameter_mm + wire_mm) / 2
    least_mm = (plan.finished.bands["inside_diameter_mm"].low + wire_mm) / 2
    close = 0.0
    if isinstance(spring, CompressionSpring) and spring.ends in (Ends.CLOSED, Ends.CLOSED_GROUND):
        pair = ((spring.mean_diameter_mm, wire_mm), (2 * radius_mm, plan.pitch_on_mandrel_mm))
        close = turns_on_mandrel(0.0, spring.total_coils - spring.active_coils, *pair, wire_mm) / 2
    runs = (
        (close, wire_mm),
        (plan.turns_to_wind - 2 * close, plan.pitch_on_mandrel_mm),
        (close + plan.turns_to_spare, wire_mm),
    )
    turn = height_mm = 0.0
    yield Station(turn, height_mm, radius_mm, spring.mean_diameter_mm / 2, least_mm)
    for turns, climb_mm in runs:
        if turns > 0:
            turn, height_mm = turn + turns, height_mm + turns * climb_mm
            yield Station(turn, height_mm, radius_mm, spring.mean_diameter_mm / 2, least_mm)


def _from_the_large_end(plan: WindingPlan) -> Iterable[Station]:
    """Stations of a cone: straight at both ends, for end coils and spare turns."""
    wire_mm, spring, points = plan.wire_diameter_mm, plan.finished.spring, plan.mandrel.profile
    assert isinstance(spring, ConicalSpring)
    bands, last = plan.finished.bands, points[-1]
    doubt_small_mm, doubt_large_mm = (
        (mean - bands[f"mean_diameter_{end}_mm"].low) / 2
        for end, mean in (("small", spring.mean_diameter_small_mm), ("large", spring.mean_diameter_large_mm))
    )
    close = (plan.turns_to_wind - last.wound_turn) / 2

    def station(turn: float, height_mm: float, finished_turn: float, diameter_mm: float) -> Station:
        released_mm = diameter_at_mm(spring, finished_turn) / 2
        doubt_mm = doubt_small_mm + (doubt_large_mm - doubt_small_mm) * finished_turn / spring.active_coils
        return Station(turn, height_mm, (diameter_mm + wire_mm) / 2, released_mm, released_mm - doubt_mm)

    if close > 1e-6:
        yield station(0.0, 0.0, last.turn, last.diameter_mm)
    for point in reversed(points):
        turn, along_mm = last.wound_turn - point.wound_turn, last.height_mm - point.height_mm
        yield station(close + turn, close * wire_mm + along_mm, point.turn, point.diameter_mm)
    turn, height_mm, spare = close + last.wound_turn, close * wire_mm + last.height_mm, close + plan.turns_to_spare
    yield station(turn + spare, height_mm + spare * wire_mm, 0.0, points[0].diameter_mm)


def heights_mm(crossings: Sequence[Station]) -> list[float]:
    """The heights alone."""
    return [each.height_mm for each in crossings]
