"""Rate and stress of a cylindrical compression spring of round wire."""

from __future__ import annotations

from math import pi

from sourcing.figures import Holds, formula

# Where EN 13906-1 holds for cold coiled springs: outside, rate and stress are still worked out, and said to be unsure.
INDEX_RANGE = (4.0, 20.0)
LEAST_ACTIVE_COILS = 2.0
INDEX = Holds("spring index", "w", *INDEX_RANGE)
ACTIVE_COILS = Holds("active coils", "n", LEAST_ACTIVE_COILS)


def index_is_covered(spring_index: float) -> bool:
    """Whether EN 13906-1 covers a spring index; (2.8 − 0.56)/0.56 is on the edge still, though its last digits differ.

    4 <= w <= 20

    >>> index_is_covered((2.8 - 0.56) / 0.56), index_is_covered(3.9)
    (True, False)

    Source: EN 13906-1:2013, for cold coiled springs.
    """
    least, greatest = INDEX_RANGE
    return least * (1.0 - 1e-6) <= spring_index <= greatest * (1.0 + 1e-6)


@formula(
    "R = G d⁴ / (8 D³ n)",
    holds=(INDEX, ACTIVE_COILS),
    source="EN 13906-1:2013 clause 9; Shigley, Mechanical Engineering Design, ch. 10",
)
def rate_n_per_mm(
    wire_diameter_mm: float, mean_diameter_mm: float, active_coils: float, shear_modulus_mpa: float
) -> float:
    """Rate of a cylindrical compression spring.

    Against a three-dimensional beam model it is within 1.5 % for n >= 3, an index of 5 to 16 and a pitch up to 0.3 D.

    >>> round(rate_n_per_mm(1.0, 12.0, 6.0, 81500.0), 4)
    0.9826
    """
    return shear_modulus_mpa * wire_diameter_mm**4 / (8.0 * mean_diameter_mm**3 * active_coils)


@formula("n = G d⁴ / (8 D³ R)", holds=(INDEX,), source="EN 13906-1:2013 clause 9")
def active_coils_for_rate(
    wire_diameter_mm: float, mean_diameter_mm: float, rate_n_per_mm: float, shear_modulus_mpa: float
) -> float:
    """Active coils that give a wanted rate, the inverse of `rate_n_per_mm`; a spring wants at least 2 of them.

    >>> round(active_coils_for_rate(1.0, 12.0, 0.9826, 81500.0), 2)
    6.0
    """
    return shear_modulus_mpa * wire_diameter_mm**4 / (8.0 * mean_diameter_mm**3 * rate_n_per_mm)


@formula("F = max(0, R (L₀ − L))", source="EN 13906-1:2013 clause 9", from_memory=True)
def force_n(rate_n_per_mm: float, free_length_mm: float, length_mm: float) -> float:
    """Force of a spring of even rate at a length; none where that is longer than free.

    >>> round(force_n(1.31, 32.0, 24.0), 2)
    10.48
    """
    return rate_n_per_mm * max(0.0, free_length_mm - length_mm)


@formula("τ = 8 F D / (π d³)", holds=(INDEX,), source="EN 13906-1:2013 clause 9", from_memory=True)
def shear_stress_mpa(force_n: float, wire_diameter_mm: float, mean_diameter_mm: float) -> float:
    """Shear stress in the wire, not corrected for its curvature: what static duty is judged by.

    >>> round(shear_stress_mpa(14.7, 1.0, 12.0), 1)
    449.2
    """
    return 8.0 * force_n * mean_diameter_mm / (pi * wire_diameter_mm**3)


@formula("k = (w + 0.5) / (w − 0.75)", holds=(INDEX,), source="EN 13906-1:2013 clause 9")
def curvature_factor(spring_index: float) -> float:
    """EN's factor for the curvature of the wire: the stress at the inside of the coil over the uncorrected one.

    It is Bergsträsser's factor, (4w + 2)/(4w − 3), written another way (Shigley, eq. 10-5, from memory).

    >>> round(curvature_factor(12.0), 4)
    1.1111
    """
    return (spring_index + 0.5) / (spring_index - 0.75)


@formula(
    "τ_k = k τ", where={"k": curvature_factor}, holds=(INDEX,), source="EN 13906-1:2013 clause 9", from_memory=True
)
def corrected_stress_mpa(shear_stress_mpa: float, spring_index: float) -> float:
    """Shear stress at the inside of the coil, corrected for the curvature of the wire: what breaks a spring in use.

    >>> round(corrected_stress_mpa(449.2, 12.0), 1)
    499.1
    """
    return curvature_factor(spring_index) * shear_stress_mpa


@formula(
    "K = (4 w − 1) / (4 w − 4) + 0.615 / w",
    holds=(INDEX,),
    source="Shigley, Mechanical Engineering Design, eq. 10-4; JIS B 2704-1",
)
def wahl_factor(spring_index: float) -> float:
    """Wahl's factor for curvature and direct shear, 0.5 to 1.4 % above `curvature_factor` for an index of 4 to 20.

    >>> round(wahl_factor(12.0), 4)
    1.1194
    """
    return (4.0 * spring_index - 1.0) / (4.0 * spring_index - 4.0) + 0.615 / spring_index


@formula(
    "K_s = 1 + 0.5 / w", holds=(INDEX,), source="Shigley, Mechanical Engineering Design, eq. 10-3", from_memory=True
)
def direct_shear_factor(spring_index: float) -> float:
    """The factor for direct shear alone, which US practice uses for static duty.

    >>> round(direct_shear_factor(12.0), 4)
    1.0417
    """
    return 1.0 + 0.5 / spring_index
