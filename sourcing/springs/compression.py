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


def active_coils_for_rate(
    wire_diameter_mm: float, mean_diameter_mm: float, rate_n_per_mm: float, shear_modulus_mpa: float
) -> float:
    """Active coils that give a wanted rate, the inverse of `rate_n_per_mm`.

    n = G d⁴ / (8 D³ R)

    Parameters: wire diameter d and mean coil diameter D in mm, rate R in N/mm, shear modulus G in MPa.
    Returns the active coils n; a spring wants at least 2 of them.

    >>> round(active_coils_for_rate(1.0, 12.0, 0.9826, 81500.0), 2)
    6.0

    Source: EN 13906-1:2013 clause 9.
    """
    return shear_modulus_mpa * wire_diameter_mm**4 / (8.0 * mean_diameter_mm**3 * rate_n_per_mm)


def shear_stress_mpa(force_n: float, wire_diameter_mm: float, mean_diameter_mm: float) -> float:
    """Shear stress in the wire, not corrected for its curvature: what static duty is judged by.

    τ = 8 F D / (π d³)

    Parameters: force F in N, wire diameter d and mean coil diameter D in mm.
    Returns the stress τ in MPa.

    >>> round(shear_stress_mpa(14.7, 1.0, 12.0), 1)
    449.2

    Source: EN 13906-1:2013 clause 9 (from memory).
    """
    return 8.0 * force_n * mean_diameter_mm / (pi * wire_diameter_mm**3)


def curvature_factor(spring_index: float) -> float:
    """EN's factor for the curvature of the wire: the stress at the inside of the coil over the uncorrected one.

    k = (w + 0.5) / (w − 0.75)

    Parameter: spring index w = D/d. Returns k, a bare number. Holds for w of 4 to 20.
    It is Bergsträsser's factor, (4w + 2)/(4w − 3), written another way.

    >>> round(curvature_factor(12.0), 4)
    1.1111

    Source: EN 13906-1:2013 clause 9; Shigley, Mechanical Engineering Design, eq. 10-5 (from memory).
    """
    return (spring_index + 0.5) / (spring_index - 0.75)


def wahl_factor(spring_index: float) -> float:
    """Wahl's factor for curvature and direct shear, 0.5 to 1.4 % above `curvature_factor` for an index of 4 to 20.

    K = (4w − 1)/(4w − 4) + 0.615/w

    Parameter: spring index w = D/d. Returns K, a bare number.

    >>> round(wahl_factor(12.0), 4)
    1.1194

    Source: Shigley, Mechanical Engineering Design, eq. 10-4; JIS B 2704-1.
    """
    return (4.0 * spring_index - 1.0) / (4.0 * spring_index - 4.0) + 0.615 / spring_index


def direct_shear_factor(spring_index: float) -> float:
    """The factor for direct shear alone, which US practice uses for static duty.

    K = 1 + 0.5/w

    Parameter: spring index w = D/d. Returns K, a bare number.

    >>> round(direct_shear_factor(12.0), 4)
    1.0417

    Source: Shigley, Mechanical Engineering Design, eq. 10-3 (from memory).
    """
    return 1.0 + 0.5 / spring_index
