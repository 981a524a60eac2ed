"""How an extension spring gets its ends: hooks bent out of its coils, or plugs screwed into its body."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_diameter, show_length, show_wire
from sourcing.springs import pulled
from sourcing.springs.hooks import BEND_RADIUS_WIRES
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.plug_thread import over_crests_mm
from sourcing.winding.extension.ends import COILS_ON_PLUG
from sourcing.winding.extension.making import wire_of_hooks_mm
from sourcing.winding.steps import eighths

NO_NICKS = (
    "Work with smooth, round jaws or a rounded pin, never with cutters or sharp-edged pliers: a nick is where a hook "
    "breaks. Rub any mark out with fine emery, along the wire."
)
"""How a hook is bent so that it lasts (common practice)."""

_TURN_UP = {
    Hooks.FULL_LOOP: "one whole coil at each end, until it stands square across the body's end and over its middle",
    Hooks.CENTRE_LOOP: (
        "one whole coil at each end until it stands square across the body's end, then lean it over until its top is "
        "on the axis"
    ),
    Hooks.HALF_LOOP: "half a coil at each end, until it stands square across the middle of the body's end",
    Hooks.SIDE_HOOK: "one whole coil at each end, so that it stands in line with the side of the body",
}


def hook_steps(spring: ExtensionSpring, units: str) -> Iterator[str]:
    """How the two hooks of a spring are bent."""
    wire_mm, height_mm = spring.wire_diameter_mm, pulled.hook_length_mm(spring)
    pin = show_diameter((2.0 * BEND_RADIUS_WIRES - 1.0) * wire_mm, units)
    wire = show_length(wire_of_hooks_mm(spring) / 2.0, units)
    if spring.hooks is Hooks.EXTENDED_HOOK:
        yield (
            f"Bend each hook out of {wire} of wire: straighten it where it leaves the body, over the middle of the "
            f"body's end, and bend a round hook as wide as the coil at its tip, its inside "
            f"{show_length(height_mm, units)} from the body."
        )
    else:
        yield (
            f"Bend the hooks ({wire} of wire each): slip a thin blade with rounded edges under the coil and turn up "
            f"{_TURN_UP[spring.hooks]}, its inside {show_length(height_mm, units)} from the body."
        )
    yield (
        f"Where a hook leaves the body, bend it round a pin of {pin}, no tighter, and a little past: it springs back. "
        f"This bend and the loop are where an extension spring breaks. {NO_NICKS}"
    )
    yield (
        "Turn the two hooks to each other as those of the old one stood, in line or crosswise, and measure "
        f"{show_length(spring.free_length_mm, units)} between their insides."
    )


def plug_steps(spring: ExtensionSpring, units: str) -> Iterator[str]:
    """The thread that the plugs must have, and how they are screwed into a body that is ready but for them."""
    inside_mm, wire_mm = spring.inside_diameter_mm, spring.wire_diameter_mm
    inside, touch, crests = (
        show_diameter(mm, units) for mm in (inside_mm, spring.mean_diameter_mm, over_crests_mm(inside_mm, wire_mm))
    )
    yield (
        f"The thread of the plugs: its pitch is one wire, {show_wire(wire_mm, units)}, and it is of the coil's "
        f"hand. The coils should now be {inside} inside: so thick its root may be at most, and its crests stay below "
        f"{touch}, where the turns touch. A thread of the usual 60° profile that the coils just lie in measures "
        f"{crests} over its crests. Measure the coil inside, and what it is more or less the thread is too."
    )
    between = f"{spring.active_coils:.2f} coils ({eighths(spring.active_coils)})"
    yield (
        f"Screw a plug {COILS_ON_PLUG} coils deep into each end, so that {between} are left between them, and set "
        f"their eyes so that {show_length(spring.free_length_mm, units)} lie between them."
    )
