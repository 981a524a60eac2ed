"""What an extension spring of another diameter may become: as it is, with other hooks or less tension, or other coils.

The coils that restore its rate come first, or all that it has where it has not so many. Before them comes what leaves
the coils so: the tension that was measured, and after heat the hooks alone, for they are bent by then. Where these give
no more than a near fit, hooks alone or coils between, the mildest first unless another is clearly surer.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from sourcing.springs.model import ExtensionSpring
from sourcing.winding.extension.in_hand import hooked
from sourcing.winding.mandrel import CLEARLY_SURER
from sourcing.winding.saving.coil import Coil, Way, best_way
from sourcing.winding.saving.extension.bending import hooks_bent
from sourcing.winding.saving.extension.body import Tension, judged, wanted_of
from sourcing.winding.saving.extension.tension_ways import pulled_to_meant, too_much, ways_of

STEP_COILS = 0.25
"""Coils are counted off by quarters."""

PulledWay = Way[ExtensionSpring]


@dataclass(frozen=True, slots=True)
class Came:
    """What was measured, the spring that it is with the coils that were meant, and with those that restore its rate.

    `cut`: with the coils for its rate, or all that are there for the body where those are fewer (`there`). `tension_n`
    and `left` are None where the tension was not measured.
    """

    outside_mm: float
    tension_n: float | None
    left: Tension | None
    kept: ExtensionSpring
    just: ExtensionSpring
    cut: ExtensionSpring
    there: float

    @property
    def enough(self) -> bool:
        """Whether it has the coils that restore its rate."""
        return self.just.total_coils <= self.there

    def is_cut(self, way: PulledWay) -> bool:
        """Whether a way is one with other coils."""
        return way.spring.active_coils != self.kept.active_coils


def with_coils(wanted: ExtensionSpring, kept: ExtensionSpring, total_coils: float) -> ExtensionSpring:
    """The spring with so many coils in its body, as long as was meant or can be."""
    active = total_coils - (wanted.total_coils - wanted.active_coils)
    return hooked(replace(kept, active_coils=active, total_coils=total_coils), wanted.free_length_mm)


def best(coil: Coil, came: Came, *, other_coils: bool) -> PulledWay:
    """The mildest that serves; where none does, the best of those with its own coils and with those for its rate."""
    own = tuple(_ways(coil, came, came.kept))
    hooks_first = coil.heated or came.left is not None or not other_coils
    way = best_way(coil, *(own if hooks_first else own[:1]))
    if way.fit.fits == "yes" or not other_coils:
        return way
    way = best_way(coil, *own[:1], *(cut := tuple(_changed(coil, came, came.cut))))
    if way.fit.fits == "yes":
        return way
    serving = [each for each in (*own[1:], *_between(coil, came)) if each.fit.fits == "yes"]
    surest = max((each.fit.chance for each in serving), default=0.0)
    mildest = next((each for each in serving if each.fit.chance > surest - CLEARLY_SURER), None)
    return best_way(coil, own[0], *((*own[1:], *cut) if mildest is None else (mildest,)))


def _ways(coil: Coil, came: Came, spring: ExtensionSpring) -> Iterator[PulledWay]:
    """As it is, with its hooks bent for the forces, and each with the tension pulled away that is too much."""
    if came.left is None:
        yield Way("keep", spring, judged(coil, spring))
        yield hooks_bent(coil, spring, None)
        return
    yield from ways_of(coil, spring, came.left)
    if too_much(coil, came.left):
        less, left = pulled_to_meant(coil, spring)
        yield hooks_bent(coil, less, left)


def _changed(coil: Coil, came: Came, spring: ExtensionSpring) -> Iterator[PulledWay]:
    return (replace(each, answer="change") for each in _ways(coil, came, spring))


def _between(coil: Coil, came: Came) -> Iterator[PulledWay]:
    """With coils between those that were meant and those for its rate, the fewest off or on first."""
    kept, cut = came.kept.total_coils, came.cut.total_coils
    way = STEP_COILS if cut > kept else -STEP_COILS
    for step in range(1, int(abs(cut - kept) / STEP_COILS) + 1):
        yield from _changed(coil, came, with_coils(wanted_of(coil), came.kept, kept + way * step))
