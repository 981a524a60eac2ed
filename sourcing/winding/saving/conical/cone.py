"""The cone in hand: what was meant, and how one that came out otherwise is judged."""

from __future__ import annotations

from sourcing.fit.model import Fit, Spread
from sourcing.springs.model import ConicalSpring
from sourcing.winding import in_hand
from sourcing.winding.doubts import rate_sd
from sourcing.winding.heat import making
from sourcing.winding.pressed_task import brought_length_sd_mm
from sourcing.winding.saving.coil import Coil


def wanted_of(coil: Coil) -> ConicalSpring:
    """The cone that was meant, in its final state."""
    assert isinstance(coil.plan.wanted, ConicalSpring)
    return coil.plan.wanted


def judged(coil: Coil, spring: ConicalSpring) -> Fit:
    """The cone against the need, measured: what is left of its doubt is the caliper's and the rate's."""
    spread = Spread(
        diameter_sd_mm=coil.diameter_sd_mm(spring.mean_diameter_large_mm),
        free_length_sd_mm=brought_length_sd_mm(spring),
        rate_sd=rate_sd(spring),
        making=making(coil.wire.material, coil.bench),
    )
    return in_hand.judged(spring, coil.need, coil.bench, spread)
