"""How a compression spring of any shape that was measured is judged."""

from __future__ import annotations

from sourcing.fit.model import Fit, Spread
from sourcing.springs.model import ConicalSpring, PressedSpring
from sourcing.winding import in_hand
from sourcing.winding.doubts import rate_sd
from sourcing.winding.heat import making
from sourcing.winding.pressed_task import brought_length_sd_mm
from sourcing.winding.saving.coil import Coil


def judged(coil: Coil, spring: PressedSpring) -> Fit:
    """The spring against the need: what is left of its doubt is the caliper's, of a cone at its large end, and the
    rate's."""
    mean_mm = spring.mean_diameter_large_mm if isinstance(spring, ConicalSpring) else spring.mean_diameter_mm
    spread = Spread(
        diameter_sd_mm=coil.diameter_sd_mm(mean_mm),
        free_length_sd_mm=brought_length_sd_mm(spring),
        rate_sd=rate_sd(spring),
        making=making(coil.wire.material, coil.bench),
    )
    return in_hand.judged(spring, coil.need, coil.bench, spread)
