"""The body and the hooks of an extension spring in hand: how it is judged, and how high its hooks are bent."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from sourcing.fit.model import Fit
from sourcing.quantities import show_length
from sourcing.springs import extension, pulled
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.winding import in_hand
from sourcing.winding.extension.task import ExtensionTask
from sourcing.winding.heat import making
from sourcing.winding.saving.coil import Coil, Way


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


def hooks_of(coil: Coil, way: Way[ExtensionSpring], body_mm: float | None = None) -> Iterator[str]:
    """How high the hooks are to be bent, and how long the spring is then."""
    spring = way.spring
    if way.answer == "wind again" or spring.hooks is Hooks.THREADED_PLUG:
        return
    body_mm = pulled.body_length_mm(spring) if body_mm is None else body_mm
    free, height, body, wanted = (
        show_length(mm, coil.units)
        for mm in (
            spring.free_length_mm,
            extension.hook_length_mm(spring.free_length_mm, body_mm),
            body_mm,
            wanted_of(coil).free_length_mm,
        )
    )
    if way.answer == "keep" and free == wanted:
        return
    instead = "" if free == wanted else f" ({wanted} was meant)"
    yield f"Bend its hooks {height} high: with its body of {body} that is {free} between their insides{instead}."
