"""An extension spring with its last coils pulled out and a new loop bent: what mends a torn hook, or shortens a spring.

Its coils get fewer, so it gets stiffer and shorter; wire, coil, initial tension and what each part bears stay. A loop
takes a coil of wire (half a loop, half a coil); what else is taken off is cut away.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import ceil

from sourcing.quantities import show_length
from sourcing.springs import pulled
from sourcing.springs.extension import LEAST_ACTIVE_COILS
from sourcing.springs.hooks import BEND_RADIUS_WIRES, COILS_OF_HOOK, LOOPS
from sourcing.springs.model import ExtensionSpring
from sourcing.stock.model import StockSpring

HOOK_DOUBT = 0.035
"""How near a loop bent by hand comes to its height, over the inside diameter, one standard deviation (assumed)."""

MINUTES_TO_LOOSEN, MINUTES_A_LOOP = 5.0, 15.0
"""Minutes to find, cut and check a spring, and to bend one loop (assumed)."""


@dataclass(frozen=True, slots=True)
class Rehooked:
    """A stock spring as it becomes: `stock` is the new one, `was` the old; `loops` are bent anew."""

    stock: StockSpring
    was: ExtensionSpring
    loops: int
    coils_taken: float

    @property
    def spring(self) -> ExtensionSpring:
        """The spring as it becomes."""
        assert isinstance(self.stock.spring, ExtensionSpring)
        return self.stock.spring

    @property
    def minutes(self) -> float:
        """What it takes (assumed)."""
        return MINUTES_TO_LOOSEN + self.loops * MINUTES_A_LOOP

    @property
    def length_doubt_mm(self) -> float:
        """The standard deviation of the length that loops bent by hand add."""
        return HOOK_DOUBT * self.loops**0.5 * self.spring.inside_diameter_mm


def rehooked(stock: StockSpring) -> Iterator[Rehooked]:
    """What a spring can be made into: its torn hooks mended, and then shortened coil by coil.

    Of a whole one, one loop is bent anew further in. Nothing of a spring whose hooks are no loops bent of its coils.
    """
    spring = stock.spring
    if not isinstance(spring, ExtensionSpring) or spring.hooks not in LOOPS:
        return
    loops = max(1, spring.torn_hooks)
    for_loops = loops * COILS_OF_HOOK[spring.hooks]
    for cut in range(0 if spring.torn_hooks else 1, ceil(spring.active_coils)):
        taken = for_loops + cut
        if spring.active_coils - taken < LEAST_ACTIVE_COILS:
            return
        yield Rehooked(_shortened(stock, spring, taken), spring, loops, taken)


def _shortened(stock: StockSpring, spring: ExtensionSpring, coils: float) -> StockSpring:
    """The stock spring with so many coils fewer; a rate that somebody measured goes with the coils that are left."""
    left = spring.active_coils - coils
    stated = None if stock.stated_rate is None else stock.stated_rate * spring.active_coils / left
    shorter = replace(
        spring,
        active_coils=left,
        total_coils=spring.total_coils - coils,
        free_length_mm=spring.free_length_mm - coils * spring.wire_diameter_mm,
        torn_hooks=0,
    )
    return replace(stock, spring=shorter, stated_rate=stated)


def rehook_steps(made: Rehooked, units: str) -> Iterator[str]:
    """The work in bench order."""
    spring, was = made.spring, made.was
    loop = COILS_OF_HOOK[spring.hooks]
    cut = made.coils_taken - made.loops * loop
    pin = show_length((2.0 * BEND_RADIUS_WIRES - 1.0) * spring.wire_diameter_mm, units)
    both = "each end" if made.loops > 1 else "the torn end" if was.torn_hooks else "one end"
    if cut:
        coils = "1 coil" if cut == 1.0 else f"{cut:g} coils"
        yield f"Cut {coils} away at {both}, the hook with it: hold both sides of the cut."
    else:
        yield f"Cut away what is left of the torn hook at {both}, close to the body: hold both sides of the cut."
    yield (
        f"Pull the last {'coil' if loop == 1.0 else 'half coil'} a little away from the body: slip a thin blade with "
        "rounded edges under it, and lever it up with smooth, round-nosed pliers, never with cutters."
    )
    yield (
        f"Bend it up into a {spring.hooks}, its inside {show_length(pulled.hook_length_mm(spring), units)} from the "
        f"body; where it leaves the body, round a pin of {pin}, no tighter. Bend once only: bent to and fro it breaks."
    )
    yield "Turn it to the other hook as the old one stood. Rub every mark out with fine emery, along the wire."
    yield (
        f"Check it: {spring.total_coils:g} coils in the body, {show_length(spring.free_length_mm, units)} between the "
        "insides of the hooks. Without heat the new loop may give a little the first times: pull it three times to its "
        "longest length and measure again (common practice, no source)."
    )
