"""The two ends of an extension spring: how high hooks stand, what coils go onto plugs, and how both are spoken of."""

from __future__ import annotations

from dataclasses import dataclass

from sourcing.fit.model import Limit
from sourcing.quantities import show_length
from sourcing.springs import pulled
from sourcing.springs.hooks import LOOP_HEIGHTS
from sourcing.springs.model import ExtensionSpring, Hooks

HOOKS_BENT_TO = 0.05
"""How near the two hooks of a spring bent by hand come to their height, over the inside diameter, one standard
deviation of both together (assumed)."""

LONGEST_HOOK = 4.0
"""An extended hook is not searched higher than so many inside diameters: its shank would only be wire (assumed)."""

COILS_ON_PLUG = 3
"""So many coils sit on a threaded plug, and act no longer (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class EndWords:
    """What one end and both are called, what is measured between them, and what brings them to it."""

    end: str
    ends: str
    between: str
    apart: str
    bring: str
    brought: str
    coils: str


_HOOKED = EndWords(
    "hook", "hooks", "between its hooks", "between their insides", "bend its hooks", "bent so far", "coils in the body"
)
_PLUGGED = EndWords(
    "plug",
    "plugs",
    "between the eyes of its plugs",
    "between their eyes",
    "set its plugs",
    "set so far",
    "coils between its plugs",
)


def end_words(hooks: Hooks) -> EndWords:
    """How the ends of a spring are spoken of."""
    return _PLUGGED if hooks is Hooks.THREADED_PLUG else _HOOKED


def coils_on_plugs(hooks: Hooks) -> float:
    """The coils of the body that sit on plugs; none where it has hooks.

    >>> coils_on_plugs(Hooks.THREADED_PLUG), coils_on_plugs(Hooks.FULL_LOOP)
    (6.0, 0.0)
    """
    return 2.0 * COILS_ON_PLUG if hooks is Hooks.THREADED_PLUG else 0.0


def hook_heights_mm(hooks: Hooks, inside_diameter_mm: float) -> tuple[float, float]:
    """Between what the height of a hook may be planned; a plug stands for itself."""
    low, high = LOOP_HEIGHTS[hooks] or (0.0, None)
    return low * inside_diameter_mm, (LONGEST_HOOK if high is None else high) * inside_diameter_mm


def free_length_sd_mm(spring: ExtensionSpring) -> float:
    """The standard deviation of the length inside the hooks of a spring wound by hand (assumed)."""
    return HOOKS_BENT_TO * spring.inside_diameter_mm


def hook_limit(spring: ExtensionSpring, units: str) -> Limit | None:
    """That the free length leaves a height that hooks of this kind cannot have."""
    low_mm, high_mm = hook_heights_mm(spring.hooks, spring.inside_diameter_mm)
    height_mm, hair_mm = pulled.hook_length_mm(spring), 1e-6 * spring.inside_diameter_mm
    if low_mm - hair_mm <= height_mm <= high_mm + hair_mm:
        return None
    body, free, left = (
        show_length(mm, units) for mm in (pulled.body_length_mm(spring), spring.free_length_mm, height_mm)
    )
    low, high = (show_length(mm, units) for mm in (low_mm, high_mm))
    words = end_words(spring.hooks)
    if height_mm <= 0.0:
        inside = "between the eyes" if spring.hooks is Hooks.THREADED_PLUG else "with the hooks"
        why = f"its body of {spring.total_coils:.1f} coils is {body} long, and {free} is wanted {inside}"
    else:
        why = f"a body of {body} leaves {left} for each {words.end}, where a {spring.hooks} is {low} to {high} high"
    return Limit(f"room for {words.ends}", False, True, why, abs(height_mm - low_mm) / spring.free_length_mm)
