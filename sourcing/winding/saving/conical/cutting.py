"""What is cut off an end of a cone, so that it has the rate that was meant.

The initial rate goes as 1/(n (D₁ + D₂) (D₁² + D₂²)), and the wire between the ends keeps its length. Coils that are cut
off an end take that end's diameter with them: the step from turn to turn stays.
"""

from __future__ import annotations

from dataclasses import replace

from sourcing.figures import formula
from sourcing.quantities import show_diameter
from sourcing.springs import pressed
from sourcing.springs.conical_lengths import pitch_of
from sourcing.springs.model import ConicalSpring
from sourcing.winding.conical.room import End
from sourcing.winding.saving.coil import TOLD_FROM, Coil
from sourcing.winding.saving.conical.cone import wanted_of


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
        return cut_off(cone, end, (large - (small**4 + fourths) ** 0.25) / taper)
    return cut_off(cone, end, ((large**4 - fourths) ** 0.25 - small) / taper)


def cut_off(cone: ConicalSpring, end: End, coils: float) -> ConicalSpring:
    """The cone with so many coils cut off an end, whose diameter goes with them; as long as before."""
    small, large, active = cone.mean_diameter_small_mm, cone.mean_diameter_large_mm, cone.active_coils
    nearer_mm = coils * (large - small) / active
    return replace(
        cone,
        mean_diameter_small_mm=small + (nearer_mm if end == "small" else 0.0),
        mean_diameter_large_mm=large - (nearer_mm if end == "large" else 0.0),
        active_coils=active - coils,
        total_coils=cone.total_coils - coils,
    )


def as_it_stands(cone: ConicalSpring, cut: ConicalSpring) -> ConicalSpring:
    """What is cut as long as the turns that are left stand, each at the pitch that it had."""
    shorter_mm = pitch_of(cone) * (cone.active_coils - cut.active_coils)
    return replace(cut, free_length_mm=cone.free_length_mm - shorter_mm)


def cut_said(coil: Coil, kept: ConicalSpring, cut: ConicalSpring) -> str:
    """What is cut off, and how the cone in hand then measures."""
    end: End = "large" if cut.mean_diameter_small_mm == kept.mean_diameter_small_mm else "small"
    off = coil.shown(kept.active_coils - cut.active_coils)
    mean_mm = cut.mean_diameter_large_mm if end == "large" else cut.mean_diameter_small_mm
    left = show_diameter(mean_mm / (1.0 + coil.change_to_come) + coil.wire_mm, coil.units)
    closed = " and close it anew" if cut.total_coils > cut.active_coils else ""
    share, coils = pressed.rate_n_per_mm(cut) / pressed.rate_n_per_mm(wanted_of(coil)), coil.shown(cut.active_coils)
    rate = "the rate that was meant" if abs(share - 1.0) < TOLD_FROM else f"{share:.3f} of the rate that was meant"
    return (
        f"cut {off} coils off its {end} end{closed}: {left} outside there, it has {rate} with {coils} "
        f"active coils{coil.counted}"
    )
