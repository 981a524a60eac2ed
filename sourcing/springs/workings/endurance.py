"""The workings of what a spring bears: the numbers behind the words, which the sheet itself never tells in digits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import isfinite

from sourcing.figures.working import Working, work
from sourcing.springs import fatigue, life, pressed, pulled, strength, turned, warmth
from sourcing.springs.endurance import PressedEndurance, PulledEndurance, Service, TurnedEndurance
from sourcing.springs.initial_tension import tension_of
from sourcing.springs.life import Making
from sourcing.springs.model import ExtensionSpring, PressedSpring, Spring, TorsionSpring
from sourcing.springs.strength import Place, Presetting


def of_pressed(spring: PressedSpring, bears: PressedEndurance) -> Iterator[Working]:
    """Permissible stresses, the life between the lengths that it is told for, and the force that heat leaves."""
    yield from _life_pressed(spring, bears)
    yield from _warm(spring, bears.service)


def _life_pressed(spring: PressedSpring, bears: PressedEndurance) -> Iterator[Working]:
    if bears.lasts_from_mm is None or bears.lasts_to_mm is None:
        return
    yield from _permissible(spring, Place.LENGTH)
    yield from _permissible(spring, Place.SOLID)
    yield from _permissible(spring, Place.SOLID, Presetting.NOT_AT_ALL)
    rate, to_mm = pressed.rate_n_per_mm(spring), bears.lasts_to_mm
    stresses = [
        work(pressed.worked_stress_mpa, spring, length, to_mm, rate).at(f"at {length:g} mm")
        for length in (bears.lasts_from_mm, to_mm)
    ]
    yield from stresses
    place = Place.LENGTH if to_mm > pressed.solid_length_mm(spring) else Place.SOLID
    low_mpa, high_mpa = (each.value for each in stresses)
    yield from _life(spring, place, low_mpa, high_mpa, bears.making)


def of_pulled(spring: ExtensionSpring, bears: PulledEndurance) -> Iterator[Working]:
    """Permissible stresses of body and hook, the life of the part that gives way first, and the force heat leaves."""
    yield from _life_pulled(spring, bears)
    yield from _warm(spring, bears.service)


def _life_pulled(spring: ExtensionSpring, bears: PulledEndurance) -> Iterator[Working]:
    if bears.lasts_from_mm is None or bears.lasts_to_mm is None:
        return
    rate, tension_n = pulled.rate_n_per_mm(spring), tension_of(spring).likely_n
    for part in pulled.parts(spring):
        yield from _permissible(spring, part.place)
        if part.words == bears.gives_way_first:
            low_mpa, high_mpa = (
                part.corrected * part.mpa_per_n * pulled.force_n(spring, length, rate, tension_n)
                for length in (bears.lasts_from_mm, bears.lasts_to_mm)
            )
            yield from _life(spring, part.place, low_mpa, high_mpa, bears.making)


def of_turned(spring: TorsionSpring, bears: TurnedEndurance) -> Iterator[Working]:
    """The life between the angles that it is told for, and the torque that heat leaves."""
    yield from _life_turned(spring, bears)
    yield from _warm(spring, bears.service)


def _life_turned(spring: TorsionSpring, bears: TurnedEndurance) -> Iterator[Working]:
    if bears.lasts_from_deg is None or bears.lasts_to_deg is None:
        return
    rate = turned.rate_n_mm_per_deg(spring)
    angles = (bears.lasts_from_deg, bears.lasts_to_deg)
    low_mpa, high_mpa = (turned.corrected_stress_mpa(spring, rate * angle) for angle in angles)
    yield from _life(spring, Place.WOUND_UP, low_mpa, high_mpa, bears.making)


def _permissible(spring: Spring, place: Place, presetting: Presetting = Presetting.AS_IT_IS) -> Iterator[Working]:
    """A permissible stress with the source of its row."""
    tensile_mpa = spring.tensile_strength_mpa
    if tensile_mpa is not None:
        row = strength.permissible(place, spring.material, presetting)
        worked = work(strength.permissible_stress_mpa, row.share, tensile_mpa)
        where = place.value.removeprefix("compression ").removeprefix("extension ")
        at = "" if where.startswith("at ") else "of the "
        set_ = "" if presetting is Presetting.AS_IT_IS else ", no set taken"
        yield replace(worked, source=row.source, from_memory=row.from_memory).at(f"{at}{where}, {row.factor}{set_}")


def _life(spring: Spring, place: Place, low_mpa: float, high_mpa: float, making: Making) -> Iterator[Working]:
    """From amplitude and mean to cycles; what is infinite (a mean stress that breaks alone, no end) is left out."""
    tensile_mpa = spring.tensile_strength_mpa
    if tensile_mpa is None:
        return
    amplitude = work(fatigue.amplitude_mpa, low_mpa, high_mpa, figure="stress_amplitude_mpa")
    mean = work(fatigue.mean_mpa, low_mpa, high_mpa, figure="mean_stress_mpa")
    yield from (amplitude, mean)
    if place.in_shear:
        yield work(fatigue.ultimate_shear_mpa, tensile_mpa, figure="ultimate_shear_stress_mpa")
    ultimate = fatigue.ultimate_mpa(place, tensile_mpa)
    harm = work(
        fatigue.reversed_mpa, amplitude.value, mean.value, ultimate, figure="reversed_stress_that_harms_as_much_mpa"
    )
    if not isfinite(harm.value):
        return
    yield harm
    yield work(fatigue.pulsating_mpa, harm.value, ultimate, figure="stress_from_nothing_that_harms_as_much_mpa")
    cycles = work(fatigue.cycles_borne, place, spring.material, tensile_mpa, low_mpa, high_mpa)
    if isfinite(cycles.value):
        yield cycles
        if making.share < 1.0:
            yield work(life.cycles_of_making, cycles.value, making.share, figure="cycles_not_relieved")
        return
    pair = (fatigue.ZIMMERLI_AMPLITUDE_MPA, fatigue.ZIMMERLI_MEAN_MPA)
    endurance = work(fatigue.reversed_mpa, *pair, ultimate, figure="endurance_without_mean_stress_mpa")
    yield endurance
    yield work(fatigue.safety, amplitude.value, mean.value, endurance.value, ultimate, figure="safety_against_any_end")


def _warm(spring: Spring, service: Service) -> Iterator[Working]:
    """The modulus at the greatest temperature by the least and the greatest fall of the sources, and the force left."""
    falls, high_c = spring.material.modulus_fall, service.high_c
    if falls is None or high_c is None or service.force_left_low is None:
        return
    modulus = spring.elastic_modulus_mpa if isinstance(spring, TorsionSpring) else spring.shear_modulus_mpa
    least, most = min(falls), max(falls)
    for fall, how in ((least, "by the least fall"), (most, "by the greatest fall")):
        fallen = work(warmth.modulus_at_mpa, modulus, fall, high_c, figure="modulus_mpa")
        yield fallen.at(f"at {high_c:g} degC {how}")
    relaxed = work(warmth.relaxed_share, high_c, high_c)
    yield relaxed.at(f"at {high_c:g} degC")
    yield work(warmth.share_left, most, high_c, relaxed.value, figure="force_left_low")
    yield work(warmth.share_left, least, high_c, 0.0, figure="force_left_high")
