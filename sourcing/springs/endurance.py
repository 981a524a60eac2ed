"""What a described spring bears: pressed solid or wound up, worked time after time, and where it is warm.

Who made it is not known unless it is said, so that none is called safe for good; `life.Making` has the factors.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sourcing.materials.model import Material
from sourcing.springs import pressed, pulled, turned
from sourcing.springs.initial_tension import tension_of
from sourcing.springs.life import Making, Word, badness, life, pressed_solid, steady
from sourcing.springs.model import ExtensionSpring, PressedSpring, TorsionSpring
from sourcing.springs.strength import Place
from sourcing.springs.warmth import left_of_force


@dataclass(frozen=True, slots=True)
class Service:
    """Between which temperatures a wire serves, and what is left of its force at the greatest; None: not known."""

    low_c: float | None
    high_c: float | None
    force_left_low: float | None
    force_left_high: float | None


@dataclass(frozen=True, slots=True)
class PressedEndurance:
    """What becomes of a compression spring; None where it cannot be pressed, or its strength is not known.

    `pressed_solid` the first time. `lasts`: pressed from one length to another and back, from free where only one is
    asked for, and from free to solid where none is.
    """

    pressed_solid: Word | None
    lasts: Word | None
    lasts_from_mm: float | None
    lasts_to_mm: float | None
    service: Service
    making: Making


@dataclass(frozen=True, slots=True)
class TurnedEndurance:
    """What becomes of a torsion spring wound up from one angle to another and back, from free where only one is asked
    for; None where none is, or its strength is not known."""

    lasts: Word | None
    lasts_from_deg: float | None
    lasts_to_deg: float | None
    service: Service
    making: Making


@dataclass(frozen=True, slots=True)
class PulledEndurance:
    """What becomes of an extension spring pulled from one length to another and back; None where it is not known.

    Where no length is asked for, from free to the largest safe length. `gives_way_first`: its part, in words.
    """

    lasts: Word | None
    lasts_from_mm: float | None
    lasts_to_mm: float | None
    gives_way_first: str | None
    service: Service
    making: Making


def service_of(material: Material) -> Service:
    """The temperatures of a material.

    >>> from sourcing.materials import find
    >>> service = service_of(find("music-wire"))
    >>> service.high_c, round(service.force_left_low, 2), round(service.force_left_high, 2)
    (100.0, 0.92, 0.98)
    """
    high_c = material.service_high_c
    low, high = (None if high_c is None else left_of_force(material, high_c)) or (None, None)
    return Service(material.service_low_c, high_c, low, high)


def of_pressed(spring: PressedSpring, at_mm: Sequence[float] = (), making: Making = Making.UNKNOWN) -> PressedEndurance:
    """What becomes of a compression spring of any shape, worked between the lengths asked for."""
    tensile_mpa, service = spring.tensile_strength_mpa, service_of(spring.material)
    free_mm, solid_mm = spring.free_length_mm, pressed.solid_length_mm(spring)
    if tensile_mpa is None or free_mm <= solid_mm:
        return PressedEndurance(None, None, None, None, service, making)
    rate = pressed.rate_n_per_mm(spring)
    at_solid_mpa = pressed.stress_mpa(spring, solid_mm, rate)
    _, corrected_mpa = pressed.corrected_range_mpa(spring, free_mm, solid_mm, rate)
    word = pressed_solid(spring.material, tensile_mpa, at_solid_mpa, corrected_mpa)
    reached = [length for length in at_mm if solid_mm <= length < free_mm]
    shortest_mm = min(reached, default=solid_mm)
    longest_mm = max(reached) if len(set(reached)) > 1 else free_mm
    lasts = _pressed_between(spring, tensile_mpa, longest_mm, shortest_mm, making)
    return PressedEndurance(word, lasts, longest_mm, shortest_mm, service, making)


def _pressed_between(
    spring: PressedSpring, tensile_mpa: float, longest_mm: float, shortest_mm: float, making: Making
) -> Word:
    rate, material = pressed.rate_n_per_mm(spring), spring.material
    place = Place.LENGTH if shortest_mm > pressed.solid_length_mm(spring) else Place.SOLID
    word = steady(place, material, tensile_mpa, pressed.stress_mpa(spring, shortest_mm, rate))
    low_mpa, high_mpa = pressed.corrected_range_mpa(spring, longest_mm, shortest_mm, rate)
    return word if word is not Word.WELL_WITHIN else life(place, material, tensile_mpa, low_mpa, high_mpa, making).word


def of_pulled(spring: ExtensionSpring, at_mm: Sequence[float] = (), making: Making = Making.UNKNOWN) -> PulledEndurance:
    """What becomes of an extension spring, pulled between the lengths asked for, at whichever part gives way first."""
    tensile_mpa, free_mm, service = spring.tensile_strength_mpa, spring.free_length_mm, service_of(spring.material)
    rate, tension_n = pulled.rate_n_per_mm(spring), tension_of(spring).likely_n
    safe_mm = pulled.largest_safe_length_mm(spring, rate, tension_n)
    if tensile_mpa is None or safe_mm is None:
        return PulledEndurance(None, None, None, None, service, making)
    reached = sorted({length for length in at_mm if length > free_mm}) or [safe_mm]
    from_mm, to_mm = reached[0] if len(reached) > 1 else free_mm, reached[-1]
    low_n, high_n = (pulled.force_n(spring, length, rate, tension_n) for length in (from_mm, to_mm))
    ends: list[tuple[Word, float, str]] = []
    for part in sorted(pulled.parts(spring), key=lambda part: -part.weakness):
        # At the largest safe length the stress is the permissible one, whatever its last digit.
        word, cycles = steady(part.place, spring.material, tensile_mpa, high_n * part.mpa_per_n * (1.0 - 1e-9)), 0.0
        if word is Word.WELL_WITHIN:
            low_mpa, high_mpa = (force * part.corrected * part.mpa_per_n for force in (low_n, high_n))
            lasts = life(part.place, spring.material, tensile_mpa, low_mpa, high_mpa, making)
            word, cycles = lasts.word, lasts.cycles
        ends.append((word, cycles, part.words))
    first = min(ends, key=lambda each: (-badness(each[0]), each[1]))
    return PulledEndurance(first[0], from_mm, to_mm, first[2], service, making)


def of_turned(spring: TorsionSpring, at_deg: Sequence[float] = (), making: Making = Making.UNKNOWN) -> TurnedEndurance:
    """What becomes of a torsion spring, wound up between the angles asked for; an angle that unwinds is left out."""
    tensile_mpa, service = spring.tensile_strength_mpa, service_of(spring.material)
    wound = sorted({angle for angle in at_deg if angle > 0.0 and turned.can_turn_to(spring, angle)})
    if tensile_mpa is None or not wound:
        return TurnedEndurance(None, None, None, service, making)
    from_deg, to_deg = wound[0] if len(wound) > 1 else 0.0, wound[-1]
    rate = turned.rate_n_mm_per_deg(spring)
    word = steady(Place.WOUND_UP, spring.material, tensile_mpa, turned.stress_mpa(spring, rate * to_deg))
    if word is Word.WELL_WITHIN:
        low_mpa, high_mpa = (turned.corrected_stress_mpa(spring, rate * angle) for angle in (from_deg, to_deg))
        word = life(Place.WOUND_UP, spring.material, tensile_mpa, low_mpa, high_mpa, making).word
    return TurnedEndurance(word, from_deg, to_deg, service, making)
