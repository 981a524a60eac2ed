"""What the last trial coil of a spool taught: mandrels before and now, the band, and whether to wind another.

Sizes are as wound, before any heat. A spool is spoken of at spring indices that a bench meets; 12 stands for them all.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from sourcing.materials.strength import tensile_strength_mpa
from sourcing.stock.model import Bench, Spool, Trial
from sourcing.winding.advice import TRIAL_TURNS, trial_wire_mm
from sourcing.winding.doubts import NORMAL_95
from sourcing.winding.learning import learn
from sourcing.winding.lesson_words import should_have_opened
from sourcing.winding.mandrel import TURNED_STEP_MM
from sourcing.winding.pitch_share import PitchShare
from sourcing.winding.trials import ASSUMED_PITCH, Knowledge, Lesson

INDICES = (6.0, 8.0, 10.0, 12.0, 14.0, 16.0)
SPOKEN_OF = 12.0
WORTH_NARROWING = 0.8
"""Another trial is worth its wire where it leaves less than this share of the band (assumed)."""


@dataclass(frozen=True, slots=True)
class Size:
    """A coil as wound: the mandrel that was right for it, the one that is now, and how far it may come out, 95 %."""

    mean_diameter_mm: float
    mandrel_before_mm: float
    mandrel_mm: float
    band_before: float
    band: float


@dataclass(frozen=True, slots=True)
class Taught:
    """What the last trial taught. `another_band` is what would be left of the band after one more trial coil.

    `sizes` of a wire of which a coil was too far off to be chance, and none since has decided, are nothing to wind by
    (`told_sizes`). A coil that does not agree with such a one before it is held against what was known before that:
    `coils_before` of those count. `sets_aside`: whether it has set a coil aside. `waited`, `undecided`: how many coils
    before it, and how many with it, wait for another to decide. `pitch_before`, `pitch`: how the pitch opens, before
    this coil and now. `as_expected_mm`: the mandrel that gives what was expected of this coil, None where it should
    have opened fully.
    """

    spool: Spool
    bench: Bench
    lesson: Lesson
    sizes: tuple[Size, ...]
    another_band: float
    another_wire_mm: float
    used_wire_mm: float
    coils_before: int = 0
    sets_aside: bool = False
    waited: int = 0
    undecided: int = 0
    pitch_before: PitchShare = ASSUMED_PITCH
    pitch: PitchShare = ASSUMED_PITCH
    as_expected_mm: float | None = None

    @property
    def agrees_with_surprise(self) -> bool | None:
        """Whether it came out as a surprise before it did; None where there was none, or where it cannot tell."""
        return self.lesson.agrees_with_surprise

    @property
    def told_sizes(self) -> tuple[Size, ...]:
        """The sizes that may be wound by."""
        return () if self.undecided else self.sizes

    @property
    def spoken_of(self) -> Size:
        """The size that the sentences speak of."""
        return self.sizes[INDICES.index(SPOKEN_OF)]

    @property
    def another_is_worth_it(self) -> bool:
        """Whether another trial coil would be worth its wire."""
        return self.undecided > 0 or self.another_band < WORTH_NARROWING * self.spoken_of.band


def taught(spool: Spool, bench: Bench) -> Taught | None:
    """What the last trial of a spool taught; None where the strength of its wire is not listed, or it has no trial."""
    strength_mpa = tensile_strength_mpa(spool.material, spool.wire_diameter_mm)
    if strength_mpa is None or not spool.trials:
        return None
    trial = spool.trials[-1]
    after, before = (_learnt(spool, strength_mpa, coils) for coils in (spool.trials, spool.trials[:-1]))
    lesson, waited, aside_before = after.lessons[-1], before.undecided, _set_aside(before)
    if lesson.agrees_with_surprise is False:
        before = _learnt(spool, strength_mpa, spool.trials[: len(before.lessons) - waited])
        held = before.after(trial, spool.material).lessons[-1]
        expected_mm, deviations = held.expected_outside_diameter_mm, held.deviations
        lesson = replace(lesson, expected_outside_diameter_mm=expected_mm, deviations=deviations)
    sizes = tuple(_size(index * spool.wire_diameter_mm, before, after) for index in INDICES)
    spoken_of = sizes[INDICES.index(SPOKEN_OF)]
    coil = Trial(spoken_of.mandrel_mm, after.finished_mean_mm(spoken_of.mandrel_mm) + spool.wire_diameter_mm)
    another = after.after(coil, spool.material)
    return Taught(
        spool,
        bench,
        lesson,
        sizes,
        _band(another, spoken_of.mandrel_mm),
        trial_wire_mm(spoken_of.mandrel_mm, spool.wire_diameter_mm),
        trial_wire_mm(trial.mandrel_mm, spool.wire_diameter_mm, trial.turns or TRIAL_TURNS),
        len(before.counted),
        _set_aside(after) > aside_before,
        waited,
        after.undecided,
        before.pitch,
        after.pitch,
        _as_expected_mm(after, lesson),
    )


def _set_aside(known: Knowledge) -> int:
    return len(known.lessons) - len(known.counted)


def _learnt(spool: Spool, strength_mpa: float, trials: Sequence[Trial]) -> Knowledge:
    return learn(spool.material, spool.wire_diameter_mm, strength_mpa, trials)


def _as_expected_mm(after: Knowledge, lesson: Lesson) -> float | None:
    if should_have_opened(lesson.trial.mandrel_mm, lesson.expected_outside_diameter_mm):
        return None
    return _turned_mm(after.mandrel_mm(lesson.expected_outside_diameter_mm - after.wire_diameter_mm))


def _turned_mm(mandrel_mm: float) -> float:
    return round(round(mandrel_mm / TURNED_STEP_MM) * TURNED_STEP_MM, 2)


def _size(mean_mm: float, before: Knowledge, after: Knowledge) -> Size:
    was_mm, is_mm = (_turned_mm(known.mandrel_mm(mean_mm)) for known in (before, after))
    return Size(mean_mm, was_mm, is_mm, _band(before, was_mm), _band(after, is_mm))


def _band(known: Knowledge, mandrel_mm: float) -> float:
    """How far from what is expected a coil may come out, relative, in 95 of 100."""
    return NORMAL_95 * known.finished_mean_sd_mm(mandrel_mm) / known.finished_mean_mm(mandrel_mm)
