"""What a compression spring of cold drawn wire stands in static duty: limits of the uncorrected shear stress."""

from __future__ import annotations

from sourcing.figures import formula


@formula(
    "τ_zul = 0.50 R_m",
    source="EN 13906-1:2013 clause 10, as a spring maker's design page gives it (cold coiled EN 10270 wire)",
)
def permissible_stress_mpa(tensile_strength_mpa: float) -> float:
    """Greatest uncorrected shear stress at a working length, static duty.

    >>> permissible_stress_mpa(2270.0)
    1135.0
    """
    return 0.50 * tensile_strength_mpa


@formula("τ_c,zul = 0.56 R_m", source="EN 13906-1:2013 clause 10 (cold coiled EN 10270 wire)")
def permissible_solid_stress_mpa(tensile_strength_mpa: float) -> float:
    """Greatest uncorrected shear stress at the solid length: above it the spring takes a set when pressed solid.

    >>> round(permissible_solid_stress_mpa(1980.0), 1)
    1108.8
    """
    return 0.56 * tensile_strength_mpa
