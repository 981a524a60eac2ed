"""What is cut off an end of a cone, so that it has the rate that was meant.

The initial rate goes as 1/(n (D₁ + D₂) (D₁² + D₂²)), and the wire between the ends keeps its length. Coils that are cut
off an end take that end's diameter with them: the step from turn to turn stays.
"""

from __future__ import annotations

from dataclasses import replace

from sourcing.figures import formula
from sourcing.quantities import show_diameter
from sourcing.springs import pressed
from sourcing.springs.model import ConicalSpring
from sourcing.winding.conical.room import End
from sourcing.winding.saving.coil import Coil


@formula(
    "D₂'⁴ = D₁⁴ + q G d⁴ / (2 R), n' = (D₂' − D₁) / q, q = (D₂ − D₁) / n at the large end; at the small end "
    "D₁'⁴ = D₂⁴ − q G d⁴ / (2 R)",
    where={"R": "rate_n_per_mm"},
    closed=False,
    source="Wahl, Mechanical Springs (from memory), solved for an end: n (D₁ + D₂)(D₁² + D₂²) = (D₂⁴ − D₁⁴) / q",
)
def cut_for_rate(cone: ConicalSpring, end: End, rate_n_per_mm: float) -> ConicalSpring | None:
    """The cone with so much cut off an end that its initial rate is the wanted one; None where it is stiff enough."""
    small, large, coils = cone.mean_diameter_small_mm, cone.mean_diameter_large_mm, cone.active_coils
    if pressed.rate_n_per_mm(cone) >= rate_n_per_mm:
        return None
    taper = (large - small) / coils
    fourths = taper * cone.shear_modulus_mpa * cone.wire_diameter_mm**4 / (2.0 * rate_n_per_mm)
    if end == "large":
        large = (small**4 + fourths) ** 0.25
    else:
        small = (large**4 - fourths) ** 0.25
    active = (large - small) / taper
    return replace(
        cone,
        mean_diameter_small_mm=small,
        mean_diameter_large_mm=large,
        active_coils=active,
        total_coils=active + cone.total_coils - coils,
    )


def cut_said(coil: Coil, kept: ConicalSpring, cut: ConicalSpring) -> str:
    """What is cut off, and how the cone then measures before heat."""
    end: End = "large" if cut.mean_diameter_small_mm == kept.mean_diameter_small_mm else "small"
    off = coil.shown(kept.active_coils - cut.active_coils)
    mean_mm = cut.mean_diameter_large_mm if end == "large" else cut.mean_diameter_small_mm
    left = show_diameter(mean_mm / (1.0 + coil.change_to_come) + coil.wire_mm, coil.units)
    closed = " and close it anew" if cut.total_coils > cut.active_coils else ""
    coils = coil.shown(cut.active_coils)
    return (
        f"cut {off} coils off its {end} end{closed}: {left} outside there, it has the rate that was meant with {coils} "
        f"active coils{coil.counted}"
    )
