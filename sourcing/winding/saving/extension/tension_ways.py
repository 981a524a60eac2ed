"""An initial tension that came out otherwise: how much of it is left in the end, and what the spring may become."""

from __future__ import annotations

from dataclasses import replace

from sourcing.quantities import show_force
from sourcing.springs.model import ExtensionSpring
from sourcing.winding.extension.hand_tension import LOST_IN_HEAT
from sourcing.winding.saving.coil import Coil, Way
from sourcing.winding.saving.extension.bending import hooks_bent
from sourcing.winding.saving.extension.body import Tension, judged, wanted_of

SCALE_SD = 0.02
"""An initial tension read from a scale, as a share of it, one standard deviation (assumed)."""


def left_in_the_end(coil: Coil, tension_n: float) -> Tension:
    """What is left in the finished spring of an initial tension that was measured: heat to come takes of it."""
    if not heat_to_come(coil):
        return Tension(tension_n, SCALE_SD * tension_n)
    least, most = LOST_IN_HEAT
    return Tension(tension_n * (1.0 - (least + most) / 2.0), tension_n * (most - least) / 4.0)


def heat_to_come(coil: Coil) -> bool:
    """Whether it was measured before a heat that takes of its tension."""
    return not coil.heated and coil.plan.after_heat is not None


def ways_of(
    coil: Coil, kept: ExtensionSpring, left: Tension, body_mm: float | None = None
) -> tuple[Way[ExtensionSpring], ...]:
    """A spring as it is; pulled until no more tension is left than was meant; its hooks bent to give the forces."""
    as_it_is, lengthened = Way("keep", kept, judged(coil, kept, left)), hooks_bent(coil, kept, left, body_mm)
    if not too_much(coil, left):
        return as_it_is, lengthened
    less, meant = pulled_to_meant(coil, kept)
    return as_it_is, Way("change", less, judged(coil, less, meant)), lengthened


def pulled_to_meant(coil: Coil, kept: ExtensionSpring) -> tuple[ExtensionSpring, Tension]:
    """A spring that was pulled until no more tension is left in it than was meant."""
    meant_n = wanted_of(coil).initial_tension_n or 0.0
    return replace(kept, initial_tension_n=meant_n), Tension(meant_n, SCALE_SD * meant_n)


def too_much(coil: Coil, left: Tension) -> bool:
    """Whether a spring will hold its coils harder than was meant, as forces are shown."""
    meant_n = wanted_of(coil).initial_tension_n or 0.0
    return left.newtons > meant_n and show_force(left.newtons, coil.units) != show_force(meant_n, coil.units)


def too_little(coil: Coil, left: Tension) -> bool:
    """Whether a spring will hold its coils less than was meant, even by the most that may be left."""
    return left.newtons + 2.0 * left.sd_n < (wanted_of(coil).initial_tension_n or 0.0)
