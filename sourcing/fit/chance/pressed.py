"""The chance of a compression spring of any shape.

The spring's mean diameter and free length are normal, its rate is log-normal (and falls with an unplanned diameter by
the power the spread names). The rate is integrated exactly, diameter and free length over equally probable strips.
`tests/fit/test_chance.py` holds it against plain sampling.
"""

from __future__ import annotations

from collections.abc import Sequence

from sourcing.fit.chance.common import WantedForce, clears, free_lengths, rate_within, strips, wanted_forces
from sourcing.fit.pressed import PressedCase
from sourcing.springs import pressed, strength


def chance(case: PressedCase) -> float:
    """The chance 0..1 that the spring keeps every clearance and meets every wanted figure within one tolerance.

    Where an unplanned diameter changes the rate it changes the stress too, and pressing solid must still be within its
    limit. The other limits that no spread of the spring can mend (solid, stress, temperature, surroundings) are not
    in it: the judge gives 0 where one of those is broken.
    """
    spread, mean_mm = case.spread, case.spring.mean_diameter_mm
    within, lengths = free_lengths(case, case.spring.free_length_mm)
    forces, seats, clearance = wanted_forces(case), case.seats, case.bench.clearance
    pushes = tuple(_pushes_n(case, forces, length) for length in lengths)

    def forces_met(more: Sequence[float]) -> float:
        bounds = (_stiffer_by(forces, each, more) for each in pushes)
        return sum(rate_within(low, high, 0.0, spread.rate_sd) for low, high in bounds) / len(pushes)

    def cleared(off_mm: float) -> float:
        return clears(seats, clearance, off_mm)

    stands, diameters = strips(mean_mm, spread.diameter_sd_mm, _smallest_that_stands_mm(case), float("inf"))
    if not (pushes and diameters):
        return 0.0
    offs = tuple(diameter - mean_mm for diameter in diameters)
    if spread.rate_on_diameter:
        works = sum(cleared(off) * forces_met(_pushes_more(case, forces, off)) for off in offs)
    else:
        works = sum(map(cleared, offs)) * forces_met([1.0] * len(forces))
    return within * stands * works / len(offs)


def _pushes_n(case: PressedCase, forces: Sequence[WantedForce], free_length_mm: float) -> tuple[float, ...]:
    """What the spring pushes at each wanted length where it came out so long at rest."""
    return tuple(pressed.force_from_n(case.spring, free_length_mm, wanted.length_mm, case.rate) for wanted in forces)


def _stiffer_by(forces: Sequence[WantedForce], pushes_n: Sequence[float], more: Sequence[float]) -> tuple[float, float]:
    """How many times stiffer than believed the spring may be, at least and at most, to meet every force.

    `more`: how many times more than `pushes_n` it pushes at each length by its diameter. Force goes with the rate
    whatever the curve over length, a cone's too. At most is below at least where none serves.
    """
    low, high = 0.0, float("inf")
    for wanted, push_n, times in zip(forces, pushes_n, more, strict=True):
        if push_n > 0.0:
            low, high = max(low, wanted.low_n / (push_n * times)), min(high, wanted.high_n / (push_n * times))
        elif wanted.low_n > 0.0:
            return 1.0, 0.0
    return low, high


def _pushes_more(case: PressedCase, forces: Sequence[WantedForce], off_mm: float) -> tuple[float, ...]:
    """How many times more it pushes at each wanted length where every coil is so much wider than planned.

    By D^-p of the spread; D³ stands for what a cone's curve goes by, its rate and the coils that have closed.
    """
    spring, wider = case.spring, pressed.wider_by(case.spring, off_mm)
    by_rate = pressed.rate_n_per_mm(wider) / pressed.rate_n_per_mm(spring)
    planned = _pushes_n(case, forces, spring.free_length_mm)
    wide = (pressed.force_n(wider, wanted.length_mm, case.rate * by_rate) for wanted in forces)
    power = case.spread.rate_on_diameter / 3.0
    return tuple((one / push if push > 0.0 else by_rate) ** power for one, push in zip(wide, planned, strict=True))


def _smallest_that_stands_mm(case: PressedCase) -> float:
    """The mean diameter below which the spring, coils and length kept, is over its limit when pressed solid.

    Stress goes as D F and the force as D^-p of the spread, so stress goes as D^(1-p), D that of the tightest coil; the
    mean diameter of a cone is off by as much as its tightest coil is.
    """
    tensile_mpa, power = case.spring.tensile_strength_mpa, case.spread.rate_on_diameter - 1.0
    if tensile_mpa is None or power <= 0.0:
        return 0.0
    over = case.stress_mpa(0.0) / strength.permissible_solid_stress_mpa(tensile_mpa)
    return case.spring.mean_diameter_mm + pressed.tightest_mean_mm(case.spring) * (over ** (1.0 / power) - 1.0)
