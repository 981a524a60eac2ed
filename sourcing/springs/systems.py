"""Compression springs that work together: in series, in parallel, on a washer or in a cup, and all of these in another.

A system is made of parts; each question is asked of any part, and a system asks its own parts. Force over length is
straight in pieces for cylinders (a part is reached, a part goes solid), and curved where a cone is among them.
Whether one spring goes inside another: nesting.py.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from sourcing.figures import formula
from sourcing.springs import conical, conical_lengths, pressed
from sourcing.springs.model import CompressionSpring, ConicalSpring, PressedSpring

# 14.0 typed for a solid length of 13.999999999999998 is that length.
_LAST_DIGITS = 1e-9
_LAST_BITS = 1e-13
_MOST_STEPS = 100


@dataclass(frozen=True, slots=True)
class Single:
    """One spring. `stated_rate_n_per_mm` is one that somebody measured; None: that of the dimensions."""

    spring: PressedSpring
    stated_rate_n_per_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Seat:
    """What a part stands on, and how much higher it stands for it; below 0: deeper.

    A rim stops the other plate at the length `rim_mm`, 0 where there is none. `bore_mm` is the inside of a cup's wall.
    """

    raised_mm: float
    rim_mm: float = 0.0
    bore_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Seated:
    """A part on a washer or in a cup."""

    part: Part
    seat: Seat


@dataclass(frozen=True, slots=True)
class Series:
    """Parts end to end, such as two springs with a washer between them: each carries the whole force."""

    parts: tuple[Part, ...]


@dataclass(frozen=True, slots=True)
class Parallel:
    """Parts between the same two plates, side by side or one inside the other: each has the same length."""

    parts: tuple[Part, ...]


Part = Single | Seated | Series | Parallel


class Happening(StrEnum):
    """What changes the rate of a system on its way down."""

    REACHED = "reached"
    SOLID = "solid"


@dataclass(frozen=True, slots=True)
class Change:
    """A part that begins to act, or goes solid; parts count from 0."""

    part: int
    happening: Happening
    length_mm: float
    force_n: float


def washer(thickness_mm: float) -> Seat:
    """A washer, or several, under a spring.

    >>> washer(1.5).raised_mm
    1.5
    """
    return Seat(thickness_mm)


def cup(floor_mm: float, depth_mm: float, inside_diameter_mm: float, hung_mm: float = 0.0) -> Seat:
    """A cup under a spring: thickness of its floor, depth and diameter of its inside.

    `hung_mm` is how far the underside of its floor lies below the plate, for a cup that hangs by its brim in a hole.

    >>> cup(1.0, 6.0, 12.0), cup(1.0, 6.0, 12.0, hung_mm=7.0).raised_mm
    (Seat(raised_mm=1.0, rim_mm=7.0, bore_mm=12.0), -6.0)
    """
    return Seat(floor_mm - hung_mm, floor_mm + depth_mm - hung_mm, inside_diameter_mm)


@formula("R = 1 / Σ (1/Rᵢ)", source="statics", closed=False)
def series_rate_n_per_mm(rates_n_per_mm: Sequence[float]) -> float:
    """Rate of springs end to end, while none is solid.

    >>> round(series_rate_n_per_mm([1.0, 2.0]), 4)
    0.6667
    """
    return 1.0 / sum(1.0 / rate for rate in rates_n_per_mm)


@formula("R = Σ Rᵢ", source="statics", closed=False)
def parallel_rate_n_per_mm(rates_n_per_mm: Sequence[float]) -> float:
    """Rate of springs between the same two plates, while all of them act.

    >>> parallel_rate_n_per_mm([1.0, 2.0])
    3.0
    """
    return sum(rates_n_per_mm)


def rate_n_per_mm(part: Part) -> float:
    """Rate of a part while all in it act and nothing is solid; a cone counts with its initial one."""
    match part:
        case Single(spring, stated):
            return pressed.rate_n_per_mm(spring) if stated is None else stated
        case Seated(inner, _):
            return rate_n_per_mm(inner)
        case Series(parts):
            return series_rate_n_per_mm([rate_n_per_mm(each) for each in parts])
        case Parallel(parts):
            return parallel_rate_n_per_mm([rate_n_per_mm(each) for each in parts])


def free_length_mm(part: Part) -> float:
    """Length at which a part is first touched: in parallel, that of the longest; or the rim that stands above it."""
    match part:
        case Single(spring, _):
            return spring.free_length_mm
        case Seated(inner, seat):
            return max(free_length_mm(inner) + seat.raised_mm, seat.rim_mm)
        case Series(parts):
            return sum(map(free_length_mm, parts))
        case Parallel(parts):
            return max(map(free_length_mm, parts))


def solid_length_mm(part: Part) -> float:
    """Length below which a part cannot be pressed: all in series solid, the first in parallel, or a rim that is met."""
    match part:
        case Single(spring, _):
            return min(pressed.solid_length_mm(spring), spring.free_length_mm)
        case Seated(inner, seat):
            return max(solid_length_mm(inner) + seat.raised_mm, seat.rim_mm)
        case Series(parts):
            return sum(map(solid_length_mm, parts))
        case Parallel(parts):
            return max(map(solid_length_mm, parts))


def travel_mm(part: Part) -> float:
    """Travel from the first touch until a part can be pressed no further; 0 where it cannot be pressed at all."""
    return free_length_mm(part) - solid_length_mm(part)


def force_at_solid_n(part: Part) -> float:
    """Force with which a part has just come to its solid length; in series, that of the last part to get there."""
    match part:
        case Series(parts):
            return max(map(force_at_solid_n, parts))
        case _:
            return _force_unstopped_n(part, solid_length_mm(part))


def force_n(part: Part, length_mm: float) -> float | None:
    """Force of a part at a length: 0 where it is loose, None where it cannot be pressed so far.

    >>> from sourcing.materials import find
    >>> from sourcing.springs.model import Ends
    >>> wire = find("music-wire")
    >>> def spring(d, mean, coils, free):
    ...     return Single(CompressionSpring(d, mean, free, coils, coils + 2, Ends.CLOSED_GROUND, wire,
    ...         wire.shear_modulus_mpa, wire.elastic_modulus_mpa, None))
    >>> soft, stiff = spring(1.0, 12.0, 8.0, 40.0), spring(1.5, 12.0, 6.0, 30.0)
    >>> [round(force_n(Series((soft, stiff)), length), 2) for length in (71.0, 60.0, 30.0)]
    [0.0, 6.42, 49.74]
    >>> force_n(Series((soft, stiff)), 21.9) is None
    True

    Source: statics; of each spring, `pressed.force_n`.
    """
    if length_mm < solid_length_mm(part) * (1.0 - _LAST_DIGITS):
        return None
    return _force_unstopped_n(part, length_mm)


def length_mm(part: Part, force_n: float) -> float:
    """Length of a part under a force, the inverse of `force_n`: its solid length under all that is more than enough."""
    free, solid = free_length_mm(part), solid_length_mm(part)
    if force_n <= 0.0 or solid >= free:
        return free
    match part:
        case Single(spring, _):
            return max(solid, free - _travel_of_one_mm(spring, force_n, rate_n_per_mm(part)))
        case Seated(inner, seat):
            return max(solid, length_mm(inner, force_n) + seat.raised_mm)
        case Series(parts):
            return sum(length_mm(each, force_n) for each in parts)
        case Parallel():
            return free - _where(lambda travel: _force_unstopped_n(part, free - travel), force_n, free - solid)


def changes(part: Part) -> tuple[Change, ...]:
    """Where the rate of a part changes on its way down, the longest length first; the last is where it is stopped.

    In series each part goes solid in its turn. In parallel the shorter ones are reached, and the first that is solid
    stops all. A single spring, on a seat or not, only goes solid.
    """
    match part:
        case Series(parts):
            solid = [force_at_solid_n(each) for each in parts]
            found = [
                Change(number, Happening.SOLID, length_mm(part, force), force) for number, force in enumerate(solid)
            ]
        case Parallel(parts):
            found = [*_reached(part), Change(limited_by(part), *_at_solid(part))]
        case _:
            found = [Change(0, *_at_solid(part))]
    return tuple(sorted(found, key=lambda change: -change.length_mm))


def limited_by(part: Part) -> int:
    """Which of its parts stops a system, counted from 0: in parallel the first to go solid, in series the last."""
    match part:
        case Series(parts):
            return max(range(len(parts)), key=lambda number: force_at_solid_n(parts[number]))
        case Parallel(parts):
            return max(range(len(parts)), key=lambda number: solid_length_mm(parts[number]))
        case _:
            return 0


def _reached(system: Parallel) -> list[Change]:
    """The parts that the plates meet only on their way down, before they are stopped."""
    free, solid = free_length_mm(system), solid_length_mm(system)
    met = [(number, free_length_mm(each)) for number, each in enumerate(system.parts)]
    return [
        Change(number, Happening.REACHED, at_mm, _force_unstopped_n(system, at_mm))
        for number, at_mm in met
        if solid <= at_mm < free
    ]


def _at_solid(part: Part) -> tuple[Happening, float, float]:
    return Happening.SOLID, solid_length_mm(part), force_at_solid_n(part)


def _force_unstopped_n(part: Part, length_mm: float) -> float:
    """The force at a length that is no shorter than solid; 0 where the part is loose."""
    if length_mm >= free_length_mm(part):
        return 0.0
    match part:
        case Single(spring, _):
            return pressed.force_n(spring, length_mm, rate_n_per_mm(part))
        case Seated(inner, seat):
            return _force_unstopped_n(inner, length_mm - seat.raised_mm)
        case Series():
            return _force_in_series_n(part, length_mm)
        case Parallel(parts):
            return sum(_force_unstopped_n(each, length_mm) for each in parts)


def _travel_of_one_mm(spring: PressedSpring, force_n: float, rate_n_per_mm: float) -> float:
    """The travel of one spring under a force, as far as its curve goes."""
    match spring:
        case CompressionSpring():
            return force_n / rate_n_per_mm
        case ConicalSpring():
            by_dimensions_n = force_n * pressed.rate_n_per_mm(spring) / rate_n_per_mm
            return conical.travel_mm((conical_lengths.cone_of(spring),), by_dimensions_n)


def _force_in_series_n(system: Series, wanted_mm: float) -> float:
    """The force that presses all parts together to a length."""
    free = free_length_mm(system)
    return _where(lambda force: free - length_mm(system, force), free - wanted_mm, force_at_solid_n(system))


def _where(rising: Callable[[float], float], wanted: float, most: float) -> float:
    """Where between 0 and `most` a function that rises from 0 has a value: by false position (the Illinois method).

    It is exact at once where the function is straight.
    """
    other, other_missed = 0.0, -wanted
    at, missed = most, rising(most) - wanted
    if missed <= 0.0:
        return most
    for _ in range(_MOST_STEPS):
        at, before, missed_before = at - missed * (at - other) / (missed - other_missed), at, missed
        missed = rising(at) - wanted
        if abs(missed) <= _LAST_BITS * wanted:
            break
        if missed * missed_before < 0.0:
            other, other_missed = before, missed_before
        else:
            other_missed /= 2.0
    return at
