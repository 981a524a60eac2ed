"""A compression spring of any shape, pressed to a length: each question asked once, and answered by each kind.

The rate is handed in: that of the dimensions, or one that somebody measured. A cone's curve goes with its initial rate.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from sourcing.figures import formula
from sourcing.springs import compression, conical, conical_lengths, geometry
from sourcing.springs.compression import corrected_stress_mpa, shear_stress_mpa
from sourcing.springs.model import CompressionSpring, ConicalSpring, PressedSpring

# 14.0 typed for a solid length of 13.999999999999998 is that length.
_ALLOWANCE = 1e-9


@dataclass(frozen=True, slots=True)
class AtLength:
    """A spring pressed to a length. Where it cannot be pressed so far, force and stresses are None.

    `shear_stress_mpa` is not corrected for the curvature of the wire; `corrected_stress_mpa` is, by EN's factor.
    """

    length_mm: float
    force_n: float | None
    shear_stress_mpa: float | None
    corrected_stress_mpa: float | None


def rate_n_per_mm(spring: PressedSpring) -> float:
    """The rate that the dimensions give; a cone's initial one, from which it stiffens."""
    d, coils, shear = spring.wire_diameter_mm, spring.active_coils, spring.shear_modulus_mpa
    match spring:
        case CompressionSpring():
            return compression.rate_n_per_mm(d, spring.mean_diameter_mm, coils, shear)
        case ConicalSpring():
            return conical.rate_n_per_mm(d, spring.mean_diameter_small_mm, spring.mean_diameter_large_mm, coils, shear)


def solid_length_mm(spring: PressedSpring) -> float:
    """The length with every coil touching its neighbour, or lying inside it."""
    match spring:
        case CompressionSpring():
            return geometry.solid_length_mm(spring.wire_diameter_mm, spring.total_coils, spring.ends)
        case ConicalSpring():
            return conical_lengths.solid_length_of(spring)


def climb_mm(spring: PressedSpring) -> float:
    """What pitches make of the free length: all of it but what the ends take."""
    match spring:
        case CompressionSpring():
            d, active, total = spring.wire_diameter_mm, spring.active_coils, spring.total_coils
            return spring.free_length_mm - geometry.end_length_mm(d, active, total, spring.ends)
        case ConicalSpring():
            return spring.active_coils * conical_lengths.pitch_of(spring)


def force_n(spring: PressedSpring, length_mm: float, rate_n_per_mm: float) -> float:
    """The force at a length, none where it is longer than free.

    Shorter than solid it is what a cylinder's rate would give if it went so far; a cone's curve ends there.
    """
    return force_from_n(spring, spring.free_length_mm, length_mm, rate_n_per_mm)


@formula(
    "F = the force at which all its coils together have closed by L₀ − L, each no further than its gap",
    where={**conical_lengths.OF_CONE, "L": "length_mm"},
    closed=False,
    source=conical.DERIVED,
)
def cone_force_n(spring: ConicalSpring, length_mm: float) -> float:
    """The force of a cone at a length by its dimensions."""
    return conical.force_n((conical_lengths.cone_of(spring),), spring.free_length_mm - length_mm)


def force_from_n(spring: PressedSpring, free_length_mm: float, length_mm: float, rate_n_per_mm: float) -> float:
    """`force_n` of a spring that came out longer or shorter at rest than it should, all else as it should be."""
    match spring:
        case CompressionSpring():
            return compression.force_n(rate_n_per_mm, free_length_mm, length_mm)
        case ConicalSpring():
            as_it_is = replace(spring, free_length_mm=free_length_mm)
            return _believed(spring, rate_n_per_mm) * cone_force_n(as_it_is, length_mm)


def stress_mpa(spring: PressedSpring, length_mm: float, rate_n_per_mm: float) -> float:
    """The greatest uncorrected shear stress at a length: in a cone, that of the largest coil that is still open."""
    force = force_n(spring, length_mm, rate_n_per_mm)
    return shear_stress_mpa(force, spring.wire_diameter_mm, _stressed_diameter_mm(spring, force, rate_n_per_mm))


def tightest_mean_mm(spring: PressedSpring) -> float:
    """The mean diameter of the tightest coil, which is stressed most when the spring is pressed solid."""
    match spring:
        case CompressionSpring():
            return spring.mean_diameter_mm
        case ConicalSpring():
            return spring.mean_diameter_small_mm


def wider_by(spring: PressedSpring, off_mm: float) -> PressedSpring:
    """The spring with every coil so much wider, coils and free length kept."""
    match spring:
        case CompressionSpring():
            return replace(spring, mean_diameter_mm=spring.mean_diameter_mm + off_mm)
        case ConicalSpring():
            return replace(
                spring,
                mean_diameter_small_mm=spring.mean_diameter_small_mm + off_mm,
                mean_diameter_large_mm=spring.mean_diameter_large_mm + off_mm,
            )


def corrected_range_mpa(
    spring: PressedSpring, longest_mm: float, shortest_mm: float, rate_n_per_mm: float
) -> tuple[float, float]:
    """The stresses, corrected by EN's factor, between which the wire goes from one length to another and back."""
    low, high = (worked_stress_mpa(spring, each, shortest_mm, rate_n_per_mm) for each in (longest_mm, shortest_mm))
    return low, high


@formula(
    "τ_k = k 8 F D / (π d³) at L, of the coil that is stressed most at L_2",
    where={"L": "length_mm", "L_2": "shortest_mm", "R": "rate_n_per_mm"},
    closed=False,
    source="EN 13906-1:2013 clause 9",
    from_memory=True,
)
def worked_stress_mpa(spring: PressedSpring, length_mm: float, shortest_mm: float, rate_n_per_mm: float) -> float:
    """The stress at a length, corrected for curvature, in a spring that is worked down to a shorter one.

    In a cone a coil that has closed by then is stressed less.
    """
    shortest_n, wire_mm = force_n(spring, shortest_mm, rate_n_per_mm), spring.wire_diameter_mm
    mean_mm = _stressed_diameter_mm(spring, shortest_n, rate_n_per_mm)
    stress = shear_stress_mpa(force_n(spring, length_mm, rate_n_per_mm), wire_mm, mean_mm)
    return corrected_stress_mpa(stress, mean_mm / wire_mm)


def at_length(spring: PressedSpring, length_mm: float) -> AtLength:
    """Force and stresses at a length by the dimensions; None where it is shorter than the spring can be pressed."""
    if length_mm < min(solid_length_mm(spring), spring.free_length_mm) * (1.0 - _ALLOWANCE):
        return AtLength(length_mm, None, None, None)
    rate, wire_mm = rate_n_per_mm(spring), spring.wire_diameter_mm
    force = force_n(spring, length_mm, rate)
    mean_mm = _stressed_diameter_mm(spring, force, rate)
    stress = shear_stress_mpa(force, wire_mm, mean_mm)
    return AtLength(length_mm, force, stress, corrected_stress_mpa(stress, mean_mm / wire_mm))


def _stressed_diameter_mm(spring: PressedSpring, force_n: float, rate_n_per_mm: float) -> float:
    """The mean diameter of the coil that is stressed most."""
    match spring:
        case CompressionSpring():
            return spring.mean_diameter_mm
        case ConicalSpring():
            by_dimensions_n = force_n / _believed(spring, rate_n_per_mm)
            return conical.largest_open_diameter_mm(conical_lengths.cone_of(spring), by_dimensions_n)


def _believed(cone: ConicalSpring, initial_rate_n_per_mm: float) -> float:
    """How many times stiffer a cone is taken to be than its dimensions make it."""
    return initial_rate_n_per_mm / rate_n_per_mm(cone)
