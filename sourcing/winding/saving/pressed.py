"""How a compression spring of any shape that was measured is judged, and which of the ways to save it is taken."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import TypeVar

from sourcing.fit.model import Fit, Spread
from sourcing.springs.model import ConicalSpring, PressedSpring
from sourcing.winding import in_hand
from sourcing.winding.doubts import rate_sd
from sourcing.winding.heat import making
from sourcing.winding.mandrel import CLEARLY_SURER
from sourcing.winding.pressed_task import brought_length_sd_mm
from sourcing.winding.saving.coil import Coil, Way, best_way
from sourcing.winding.saving.verdict_words import is_low, wrong

STEP_COILS = 0.25
"""Coils are counted off by quarters."""

LEAST_CHANGE_MM = 0.1
"""No coil is brought to another length by less (assumed)."""

P = TypeVar("P", bound=PressedSpring)


def best_of(
    coil: Coil, as_it_is: P, longer: Iterable[P], for_its_rate: Iterable[P], between: Callable[[], Iterable[P]]
) -> Way[P]:
    """The best of what a coil may become: as it is, with the coils for its rate, or else at lengths and coils between.

    `longer`: as it is but for its length. After heat that goes before a cut, whose end would be closed, ground and
    heated anew. A length that can hardly be told from the one that it has changes nothing; and a near fit is changed to
    another only where less is wrong with it.
    """
    other = (each for each in longer if abs(each.free_length_mm - as_it_is.free_length_mm) >= LEAST_CHANGE_MM)
    keep, lengths = Way("keep", as_it_is, judged(coil, as_it_is)), _changed(coil, other)
    plain = _changed(coil, for_its_rate)
    if keep.fit.fits == "yes" and best_way(coil, keep).answer == "keep":
        first, then = (lengths, plain) if coil.heated else (plain, lengths)
        return _with_surer(coil, keep, lambda: [*first, *then, *_changed(coil, between())])
    if coil.heated and (way := best_way(coil, keep, *lengths)).fit.fits == "yes":
        return way
    if (way := best_way(coil, keep, *plain)).fit.fits == "yes":
        return way
    way = best_way(coil, keep, *plain, *lengths, *_changed(coil, between()))
    no_better = way.fit.fits == keep.fit.fits == "near" and _wrongs(coil, way) >= _wrongs(coil, keep)
    return keep if no_better else way


def _with_surer(coil: Coil, keep: Way[P], others: Callable[[], Iterable[Way[P]]]) -> Way[P]:
    """A coil that is kept, with the mildest change that makes it clearly surer where its chance is low."""
    if not is_low(coil, keep.fit):
        return keep
    surer = [each for each in others() if each.fit.fits == "yes" and each.fit.chance >= keep.fit.chance + CLEARLY_SURER]
    surest = max((each.fit.chance for each in surer), default=0.0)
    return replace(keep, surer=next((each for each in surer if each.fit.chance > surest - CLEARLY_SURER), None))


def _wrongs(coil: Coil, way: Way[P]) -> int:
    return sum(1 for _ in wrong(way.fit, coil.bench))


def _changed(coil: Coil, springs: Iterable[P]) -> list[Way[P]]:
    return [Way("change", each, judged(coil, each)) for each in springs]


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
