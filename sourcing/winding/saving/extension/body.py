"""An extension spring in hand: the one that was meant, and how one is judged."""

from __future__ import annotations

from dataclasses import dataclass, replace

from sourcing.fit.model import Fit
from sourcing.springs.model import ExtensionSpring
from sourcing.winding import in_hand
from sourcing.winding.extension.task import ExtensionTask
from sourcing.winding.heat import making
from sourcing.winding.saving.coil import Coil


@dataclass(frozen=True, slots=True)
class Tension:
    """An initial tension in the finished spring, and its doubt."""

    newtons: float
    sd_n: float


def wanted_of(coil: Coil) -> ExtensionSpring:
    """The spring that was meant, in its final state."""
    assert isinstance(coil.plan.wanted, ExtensionSpring)
    return coil.plan.wanted


def judged(coil: Coil, spring: ExtensionSpring, tension: Tension | None = None) -> Fit:
    """The spring against the need; with the initial tension that was measured, or with what a hand may have wound."""
    task = ExtensionTask(coil.need, coil.bench, coil.wire, spring.tensile_strength_mpa or 0.0)
    spread = task.spread_of(spring, coil.diameter_sd_mm(spring.mean_diameter_mm))
    if tension is not None:
        spread = replace(spread, initial_tension_sd_n=tension.sd_n, initial_tension_off_n=0.0)
    return in_hand.judged(spring, coil.need, coil.bench, replace(spread, making=making(coil.wire.material, coil.bench)))
