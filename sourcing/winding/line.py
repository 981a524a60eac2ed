"""The line of force over length that a need asks for: its rate and the free length where the force is nothing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sourcing.fit.score import force_house_tolerance_n
from sourcing.need.model import Need, WorkingPoint
from sourcing.quantities import Wanted, show_force, show_length
from sourcing.stock.model import Bench
from sourcing.winding.model import Refusal


@dataclass(frozen=True, slots=True)
class Aim:
    """The value to aim at, and the tolerance by which a miss is weighed."""

    value: float
    tolerance: float


Aims = tuple[list[tuple[float, Aim]], Aim | None]
"""The forces that are wanted, each at its length, and the free length."""


@dataclass(frozen=True, slots=True)
class Line:
    """A straight spring: F = rate (free length - length)."""

    rate_n_per_mm: float
    free_length_mm: float


@dataclass(frozen=True, slots=True)
class OneForce:
    """One force at one length and no free length: any line through it would do, so the free length is searched too."""

    length_mm: float
    force_n: float


NO_FORCE_WANTED = Refusal(
    "no-force-wanted",
    "No force is known, so there is no rate to wind for. Measure one force at one length: stand the old spring, or "
    "a like one, between two plates on a kitchen scale, press it to a working length, and read the scale. With the old "
    "spring gone, press the part itself down with the scale between. Write it as working: - {length: .., force: ..}, "
    "grams as 950 gf and ounces as 33 ozf.",
)


def aim(wanted: Wanted, house: float) -> Aim:
    """Where inside a wanted figure to aim: its nominal, the middle of a range, half a house tolerance inside a bound.

    >>> aim(Wanted(low=20.0, high=24.0), house=1.0)
    Aim(value=22.0, tolerance=2.0)
    >>> aim(Wanted(low=5.0), house=1.0).value, aim(Wanted(high=5.0), house=20.0).value
    (5.5, 2.5)
    """
    if wanted.nominal is not None:
        stated = [each for each in (wanted.minus, wanted.plus) if each]
        return Aim(wanted.nominal, min(stated, default=house))
    if wanted.low is not None and wanted.high is not None:
        return Aim((wanted.low + wanted.high) / 2, (wanted.high - wanted.low) / 2 or house)
    if wanted.low is not None:
        return Aim(wanted.low + house / 2, house)
    assert wanted.high is not None
    return Aim(wanted.high - min(house, wanted.high) / 2, house)


def wanted_line(need: Need, bench: Bench) -> Line | OneForce | Refusal:
    """The line that a need's forces and free length ask for, by least squares of the misses over their tolerances."""
    forces, free = aims(need, bench)
    if not forces:
        return NO_FORCE_WANTED
    if len(forces) == 1 and free is None:
        return OneForce(forces[0][0], forces[0][1].value)
    start = _first_guess(forces, free, bench.units)
    return start if isinstance(start, Refusal) else _least_squares(start, forces, free)


def line_refusal(need: Need, bench: Bench) -> Refusal | None:
    """Why no wire whatever could meet the forces that are wanted."""
    line = wanted_line(need, bench)
    return line if isinstance(line, Refusal) else None


def length_for_rate_mm(rate_n_per_mm: float, need: Need, bench: Bench) -> float | None:
    """The free length at which a spring of this rate comes nearest to a need's forces and free length; None for none.

    L₀ = (Σ R (R L + F) / u² + L_w / u_w²) / (Σ R² / u² + 1 / u_w²): least squares of the misses over their tolerances.
    """
    forces, free = aims(need, bench)
    if not forces:
        return None
    rate = rate_n_per_mm
    pulls = [(rate * (rate * at + wanted.value), rate**2, wanted.tolerance) for at, wanted in forces]
    if free is not None:
        pulls.append((free.value, 1.0, free.tolerance))
    return sum(pull / u**2 for pull, _, u in pulls) / sum(weight / u**2 for _, weight, u in pulls)


def aims(need: Need, bench: Bench) -> Aims:
    """The forces that are wanted, each at its length, and the free length; None where none is."""
    forces = [(point.at_mm, _force_aim(point, bench)) for point in need.working if point.force_n is not None]
    free = None if need.free_length_mm is None else aim(need.free_length_mm, bench.tolerances.length_mm)
    return forces, free


def _force_aim(point: WorkingPoint, bench: Bench) -> Aim:
    assert point.force_n is not None
    return aim(point.force_n, force_house_tolerance_n(point.force_n, bench.tolerances))


def _first_guess(forces: Sequence[tuple[float, Aim]], free: Aim | None, units: str) -> Line | Refusal:
    """The line through the outer two forces, or through the one force and the free length."""
    longest_mm, lightest = max(forces, key=lambda each: each[0])
    shortest_mm, heaviest = min(forces, key=lambda each: each[0])
    at_longest, at_shortest = (show_length(mm, units) for mm in (longest_mm, shortest_mm))
    if longest_mm > shortest_mm:
        rate = (heaviest.value - lightest.value) / (longest_mm - shortest_mm)
        if rate <= 0:
            why = (
                f"{show_force(heaviest.value, units)} at {at_shortest} is no more than "
                f"{show_force(lightest.value, units)} at {at_longest}: a compression spring pushes harder the shorter "
                "it is"
            )
            return Refusal("no-rising-force", why)
        return Line(rate, longest_mm + lightest.value / rate)
    if free is None or free.value <= longest_mm:
        return Refusal("no-rising-force", f"at {at_longest} it would not be pressed: the free length is no longer")
    return Line(lightest.value / (free.value - longest_mm), free.value)


def _least_squares(line: Line, forces: Sequence[tuple[float, Aim]], free: Aim | None) -> Line:
    """Gauss-Newton on rate and free length; each miss counts over its tolerance."""
    for _ in range(30):
        rate, length = line.rate_n_per_mm, line.free_length_mm
        rows = [
            (
                (length - at) / wanted.tolerance,
                rate / wanted.tolerance,
                (rate * (length - at) - wanted.value) / wanted.tolerance,
            )
            for at, wanted in forces
        ]
        if free is not None:
            rows.append((0.0, 1 / free.tolerance, (length - free.value) / free.tolerance))
        aa, ab, bb = (sum(r[i] * r[j] for r in rows) for i, j in ((0, 0), (0, 1), (1, 1)))
        ar, br = (sum(r[i] * r[2] for r in rows) for i in (0, 1))
        determinant = aa * bb - ab * ab
        if determinant <= 0:
            return line
        rate_step, length_step = (ar * bb - br * ab) / determinant, (br * aa - ar * ab) / determinant
        line = Line(max(rate - rate_step, rate / 2), length - length_step)
        if abs(rate_step) <= 1e-12 * rate and abs(length_step) <= 1e-12 * length:
            return line
    return line
