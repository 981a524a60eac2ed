"""A cylindrical compression spring that came out otherwise: what it became, its pitch and its length."""

from __future__ import annotations

from dataclasses import dataclass, replace

from sourcing.springs import compression, geometry
from sourcing.springs.model import CompressionSpring
from sourcing.springs.pressed import rate_n_per_mm
from sourcing.winding.presetting import as_laid
from sourcing.winding.saving.coil import Coil
from sourcing.winding.turns import SPARE_TURNS


@dataclass(frozen=True, slots=True)
class Came:
    """What was measured, the pitch it stands at (the one meant where none was), what it is, and with other coils.

    `cut`: with those that restore its rate, or with all that it has where it has not so many (`coils_there`).
    """

    outside_mm: float
    measured_pitch_mm: float | None
    pitch_mm: float
    spring: CompressionSpring
    cut: CompressionSpring
    coils_there: float


def wanted_of(coil: Coil) -> CompressionSpring:
    """The spring that was meant, in its final state."""
    assert isinstance(coil.plan.wanted, CompressionSpring)
    return coil.plan.wanted


def with_its_rate(wanted: CompressionSpring, mean_mm: float) -> CompressionSpring:
    """The spring of another diameter with the coils that give the wanted rate, its end coils kept."""
    active = compression.active_coils_for_rate(
        wanted.wire_diameter_mm, mean_mm, rate_n_per_mm(wanted), wanted.shear_modulus_mpa
    )
    return with_coils(replace(wanted, mean_diameter_mm=mean_mm), active + wanted.total_coils - wanted.active_coils)


def with_coils(spring: CompressionSpring, total_coils: float) -> CompressionSpring:
    """The spring with so many coils in all, its end coils kept."""
    active = total_coils - (spring.total_coils - spring.active_coils)
    return replace(spring, active_coils=active, total_coils=total_coils)


def coils_there(coil: Coil, mandrel_mm: float, mean_mm: float) -> float:
    """The coils that the turns wound have become, spare ones too: the wire keeps its length, N_f D_f = N_m D_m.

    The sheet has the spare ones cut off before heat.
    """
    if coil.heated:
        return wanted_of(coil).total_coils
    return (coil.plan.turns_to_wind + SPARE_TURNS) * (mandrel_mm + coil.wire_mm) / mean_mm


def pitch_meant_mm(coil: Coil) -> float:
    """The pitch that was meant before the first pressing, in the state in which the coil was measured."""
    assert isinstance(coil.meant, CompressionSpring)
    return pitch_of(as_laid(coil.meant, wanted_of(coil)))


def pitch_in_the_end_mm(coil: Coil, pitch_mm: float) -> float:
    """The pitch in the end of a coil that has this one: heat changes it as it does the one that was meant."""
    return pitch_mm * pitch_of(wanted_of(coil)) / pitch_meant_mm(coil)


def at_pitch(spring: CompressionSpring, pitch_mm: float) -> CompressionSpring:
    """The spring as long as its coils stand at this pitch."""
    coils = (spring.active_coils, spring.total_coils, spring.ends)
    free_mm = geometry.free_length_from_pitch_mm(spring.wire_diameter_mm, pitch_mm, *coils)
    return replace(spring, free_length_mm=free_mm)


def pitch_of(spring: CompressionSpring) -> float:
    """The pitch that the spring's coils have at rest."""
    return geometry.pitch_mm(
        spring.wire_diameter_mm, spring.free_length_mm, spring.active_coils, spring.total_coils, spring.ends
    )
