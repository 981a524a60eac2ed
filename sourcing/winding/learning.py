"""What a spool's trial coils teach, one after the other.

The coil after a surprise decides. Where it came out as was expected before the surprise and not as that did, the
surprise is set aside: what is known is what the other coils teach. Where it agrees with the surprise, both count. Where
it agrees with neither it is a surprise itself, and like one that cannot tell leaves it to the next coil: that may bear
out any of those that wait, and the others are set aside.

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
from sourcing.winding.trials import Knowledge, Lesson, untried

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


def _after_all(untaught: Knowledge, coils: Iterable[Trial], material: Material) -> Knowledge:
    believed = known = untaught
    for coil in coils:
        known = _decided(believed, known, coil, material) if known.unsettled else known.after(coil, material)
        if not known.unsettled:
            believed = known
    return known


def _decided(believed: Knowledge, open_still: Knowledge, coil: Trial, material: Material) -> Knowledge:
    """What is known after a coil that follows a surprise; `believed` is what was known before that.

    It bears out each surprise since then that it came out as; or it bears out what was believed; or it agrees with
    none of them and is the next surprise; or it cannot tell.
    """
    waiting, without = open_still.lessons[len(believed.lessons) :], believed.after(coil, material)
    said = {at: _agrees(believed, each, coil, material) for at, each in enumerate(waiting) if each.surprising}
    if None in said.values() and True not in said.values():
        return _left_open(open_still, open_still.after(coil, material), None)
    if True not in said.values() and without.unsettled:
        return _left_open(open_still, without, False)
    lessons = [_when(each, said.get(at)) for at, each in enumerate(waiting)]
    known = believed
    for each in lessons:
        known = known if each.set_aside else known.after(each.trial, material)
    known = known.after(coil, material)
    last = replace(known.lessons[-1], agrees_with_surprise=True in said.values())
    return replace(known, lessons=(*believed.lessons, *lessons, last))


def _when(lesson: Lesson, agrees: bool | None) -> Lesson:
    """A lesson once a coil after it has agreed with it, or has not; as it is where that cannot tell."""
    if agrees is None:
        return lesson
    return lesson.when_borne_out if agrees else lesson.when_set_aside


def _left_open(before: Knowledge, known: Knowledge, agrees: bool | None) -> Knowledge:
    """What is known with a coil that leaves open what the ones before it did."""
    last = replace(known.lessons[-1], agrees_with_surprise=agrees)
    return replace(known, lessons=(*before.lessons, last), undecided=before.undecided + 1)


def _agrees(believed: Knowledge, surprise: Lesson, coil: Trial, material: Material) -> bool | None:
    """Whether a coil came out as a surprise before it did, and not as was believed before; None: it cannot tell.

    How sure a surprise makes by itself is what it leaves of its wide doubt as if it had been wound once more.
    """
    lesson = believed.after(coil, material).lessons[-1]
    if lesson.said in TEACH_NOTHING:
        return None
    if not surprise.agree or surprise.said in TEACH_NOTHING:
        return False
    surprised = believed.after(surprise.trial, material)
    as_surprise = surprised.after(surprise.trial, material).after(coil, material).lessons[-1]
    off = abs(as_surprise.deviations)
    if off < abs(lesson.deviations):
        return off <= SURPRISE
    return False if off > DISAGREE else None


def _of_different_indices(known: Knowledge, coils: Sequence[Trial]) -> bool:
    indices = [springback.index_on_mandrel(coil.mandrel_mm, known.wire_diameter_mm) for coil in coils]
    return max(indices) >= APART * min(indices)
