"""What a spool's trial coils teach, one after the other.

The coil after a surprise decides. Where it came out as was expected before the surprise and not as that did, the
surprise is set aside: what is known is what the other coils teach. Where it agrees with the surprise, or with neither,
all of them count.

Where coils of different spring indices disagree, the flow stress is taken to go with the index (index_trend.py).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from sourcing.materials.model import Material
from sourcing.stock.model import Trial
from sourcing.winding import springback
from sourcing.winding.coil_reading import SURPRISE
from sourcing.winding.index_trend import AS_ONE_AT_INDEX, Trend
from sourcing.winding.lesson_words import TEACH_NOTHING
from sourcing.winding.trials import Knowledge, untried

DISAGREE = 2.0
"""From this many standard deviations on, coils are taken to disagree (assumed)."""

APART = 1.25
"""Indices of which one is so many times the other are different (assumed)."""


def learn(
    material: Material, wire_diameter_mm: float, tensile_strength_mpa: float, trials: Iterable[Trial]
) -> Knowledge:
    """What is known after a spool's trial coils, in the order in which they stand, of wire pulled as a sheet asks.

    One flow stress for every index, unless coils of different indices disagree about it and a trend explains them
    better: with fewer surprises, or as many and the others less far off.
    """
    coils = tuple(trials)
    untaught = replace(untried(material, wire_diameter_mm, tensile_strength_mpa), pulled=True)
    known = _after_all(untaught, coils, material)
    if _unexplained(known) == (0, DISAGREE) or not _of_different_indices(known, coils):
        return known
    prior = Trend(AS_ONE_AT_INDEX, untaught.flow_ratio, untaught.flow_ratio_sd)
    with_trend = _after_all(replace(untaught, trend=prior), coils, material)
    return min(known, with_trend, key=_unexplained)


def _unexplained(known: Knowledge) -> tuple[int, float]:
    """How many coils are surprises, and how far off the worst that counts is, where it disagrees at all."""
    return sum(lesson.surprising for lesson in known.lessons), max(DISAGREE, known.greatest_deviation)


def _after_all(known: Knowledge, coils: Iterable[Trial], material: Material) -> Knowledge:
    believed = known
    for coil in coils:
        known = _decided(believed, known, coil, material) if known.unsettled else known.after(coil, material)
        if not known.unsettled:
            believed = known
    return known


def _decided(believed: Knowledge, surprised: Knowledge, coil: Trial, material: Material) -> Knowledge:
    """What is known after the coil that follows a surprise; `believed` is what was known before that."""
    agrees, without = _agrees(believed, surprised, coil, material), believed.after(coil, material)
    known, before = surprised.after(coil, material), surprised.lessons
    if agrees is False and not without.unsettled:
        slipped = before[len(believed.lessons) :]
        known, before = without, (*believed.lessons, *(lesson.when_set_aside for lesson in slipped))
    if known.unsettled:
        return known
    return replace(known, lessons=(*before, replace(known.lessons[-1], agrees_with_surprise=agrees)))


def _agrees(believed: Knowledge, surprised: Knowledge, coil: Trial, material: Material) -> bool | None:
    """Whether a coil came out as the surprise before it did, and not as was believed before; None: it cannot tell.

    How sure a surprise makes by itself is what it leaves of its wide doubt as if it had been wound once more.
    """
    surprise, lesson = surprised.lessons[-1], believed.after(coil, material).lessons[-1]
    if lesson.said in TEACH_NOTHING:
        return None
    if not surprise.agree or surprise.said in TEACH_NOTHING:
        return False
    as_surprise = surprised.after(surprise.trial, material).after(coil, material).lessons[-1]
    off = abs(as_surprise.deviations)
    if off < abs(lesson.deviations):
        return off <= SURPRISE
    return False if off > DISAGREE else None


def _of_different_indices(known: Knowledge, coils: Sequence[Trial]) -> bool:
    indices = [springback.index_on_mandrel(coil.mandrel_mm, known.wire_diameter_mm) for coil in coils]
    return max(indices) >= APART * min(indices)
