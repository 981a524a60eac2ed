"""When a compression spring bows out sideways, and how fast it rings."""

from __future__ import annotations

from math import pi, sqrt

from sourcing.figures import formula
from sourcing.springs.compression import ACTIVE_COILS, INDEX
from sourcing.springs.model import ConicalSpring

# Both ends flat on plates that are guided square to each other: the best case of EN 13906-1.
GUIDED_SQUARE = 0.5
# Both ends free to tilt, or flat with one that may shift sideways.
TILTING_OR_SHIFTING = 1.0

_CONE = {
    "d": "spring.wire_diameter_mm",
    "D₁": "spring.mean_diameter_small_mm",
    "D₂": "spring.mean_diameter_large_mm",
    "n": "spring.active_coils",
    "L₀": "spring.free_length_mm",
}


@formula(
    "L_K = L₀ (1 − 0.5 (1 − √(1 − (1 − G/E) / (0.5 + G/E) (π D / (ν L₀))²)) / (1 − G/E))",
    source="EN 13906-1:2013 9.14 (it equals Haringx's column, see the tests); Shigley, Mechanical Engineering Design, "
    "eq. 10-10",
    from_memory=True,
)
def buckling_length_mm(
    free_length_mm: float,
    mean_diameter_mm: float,
    shear_modulus_mpa: float,
    elastic_modulus_mpa: float,
    seating: float = GUIDED_SQUARE,
) -> float | None:
    """Length at which an unguided compression spring begins to bow out sideways; None where it never does.

    Seating ν: 0.5 both ends flat and guided square, 0.7 one flat and one hinged, 1 both hinged or one that may shift
    sideways, 2 one flat and one free. It knows nothing of the solid length: a spring that is solid above L_K never
    reaches it. Where the root is imaginary the spring is stable at every length; for steel below L₀/D of 2.63/ν.

    >>> round(buckling_length_mm(80.0, 12.0, 81500.0, 206000.0, seating=1.0), 2)
    74.84
    >>> buckling_length_mm(32.0, 12.0, 81500.0, 206000.0) is None
    True

    The body is the formula multiplied out by 1 + √(..): the same value, without the difference of near numbers.
    """
    ratio = shear_modulus_mpa / elastic_modulus_mpa
    bend = (pi * mean_diameter_mm / (seating * free_length_mm)) ** 2 / (0.5 + ratio)
    radicand = 1.0 - (1.0 - ratio) * bend
    if radicand < 0.0:
        return None
    return free_length_mm * (1.0 - 0.5 * bend / (1.0 + sqrt(radicand)))


@formula(
    "f = 10^6 d / (2 π n D²) √(G / (2 ρ))",
    holds=(INDEX, ACTIVE_COILS),
    source="EN 13906-1:2013 clause 9; Shigley, Mechanical Engineering Design, eq. 10-25 (that from memory)",
)
def natural_frequency_hz(
    wire_diameter_mm: float,
    mean_diameter_mm: float,
    active_coils: float,
    shear_modulus_mpa: float,
    density_kg_per_m3: float,
) -> float:
    """First natural frequency along the axis, both ends fixed, of the active coils.

    It is ½ √(R/m), with R the rate and m the mass of the active coils; 10⁶ is for mm and MPa. EN rounds the constant:
    3560 for 3558.8 (d, D in mm, ρ in kg/dm³).

    >>> round(natural_frequency_hz(1.0, 12.0, 6.0, 81500.0, 7850.0), 1)
    419.7
    """
    per_mm_and_mpa = 1e6  # mm⁻¹ to m⁻¹ gives 1000, √MPa to √Pa another 1000
    wave = sqrt(shear_modulus_mpa / (2.0 * density_kg_per_m3))
    return per_mm_and_mpa * wire_diameter_mm / (2.0 * pi * active_coils * mean_diameter_mm**2) * wave


@formula(
    "f = that of a cylinder of D² = (D₁² + D₁ D₂ + D₂²)/3",
    where=_CONE,
    closed=False,
    source="derived for this project, and held against coils as a chain of masses and springs (see the tests)",
)
def cone_natural_frequency_hz(spring: ConicalSpring) -> float:
    """First natural frequency of a cone along its axis, both ends fixed, all coils open.

    The diameter is the root mean square of the cone's. A wave takes a time that goes with D² to run through a turn, so
    the whole takes the mean of them; the waves that turn back on the way are left out: it is 3 % low for 7 and 14 mm,
    6 % for 6 and 20.
    """
    small, large = spring.mean_diameter_small_mm, spring.mean_diameter_large_mm
    return natural_frequency_hz(
        spring.wire_diameter_mm,
        sqrt((small**2 + small * large + large**2) / 3.0),
        spring.active_coils,
        spring.shear_modulus_mpa,
        spring.material.density_kg_per_m3,
    )


@formula(
    "L_K = that of a cylinder of the small end's diameter D₁",
    where=_CONE,
    closed=False,
    source="a bound on the safe side; EN 13906-1:2013 9.14 for the cylinder",
    from_memory=True,
)
def cone_buckling_length_mm(spring: ConicalSpring, solid_length_mm: float) -> float | None:
    """Length below which a cylinder as slim as the cone's small end would buckle, in mm; None where solid by then.

    A bound on the safe side: the cone is wider and steadier. No formula for cones is known to this project.
    """
    length = buckling_length_mm(
        spring.free_length_mm, spring.mean_diameter_small_mm, spring.shear_modulus_mpa, spring.elastic_modulus_mpa
    )
    return None if length is None or length <= solid_length_mm else length
