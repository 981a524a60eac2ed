"""What a compression spring of cold drawn wire stands in static duty: limits of the uncorrected shear stress."""

from __future__ import annotations


def permissible_stress_mpa(tensile_strength_mpa: float) -> float:
    """Greatest uncorrected shear stress at a working length, static duty.

    τ_zul = 0.50 R_m

    Parameter: least tensile strength R_m in MPa. Returns the stress in MPa. Holds for cold coiled EN 10270 wire.

    >>> permissible_stress_mpa(2270.0)
    1135.0

    Source: EN 13906-1:2013 clause 10, as a spring maker's design page gives it.
    """
    return 0.50 * tensile_strength_mpa


def permissible_solid_stress_mpa(tensile_strength_mpa: float) -> float:
    """Greatest uncorrected shear stress at the solid length: above it the spring takes a set when pressed solid.

    τ_c,zul = 0.56 R_m

    Parameter: least tensile strength R_m in MPa. Returns the stress in MPa. Holds for cold coiled EN 10270 wire.

    >>> round(permissible_solid_stress_mpa(1980.0), 1)
    1108.8

    Source: EN 13906-1:2013 clause 10.
    """
    return 0.56 * tensile_strength_mpa
