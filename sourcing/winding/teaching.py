"""What the last trial coil of a spool taught: mandrels before and now, the band, and whether to wind another.

Sizes are as wound, before any heat. A spool is spoken of at spring indices that a bench meets; 12 stands for them all.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import log

from sourcing.materials.strength import tensile_strength_mpa
from sourcing.quantities import show_angle, show_diameter, show_force, show_length, show_temperature
from sourcing.stock.model import Bench, Spool, Trial
from sourcing.winding.advice import TRIAL_MINUTES, TRIAL_TURNS, trial_wire_mm
from sourcing.winding.doubts import NORMAL_95
from sourcing.winding.extension.hand_tension import TENSION_DOUBTED, hand_tension_n
from sourcing.winding.extension.tension_words import READ_AGAIN
from sourcing.winding.heat import oven_reaches
from sourcing.winding.lesson_words import TEACH_NOTHING, take_back
from sourcing.winding.mandrel import TURNED_STEP_MM
from sourcing.winding.pitch_lesson import pitch_said
from sourcing.winding.pitch_share import PitchShare
from sourcing.winding.trials import ASSUMED_PITCH, Knowledge, Lesson, learn

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

    `sizes` of a coil too far off to be chance are nothing to wind by (`told_sizes`). `agrees_with_surprise`: whether
    it points where such a coil before it did; None where the one before was none. `pitch_before`, `pitch`: how the
    pitch opens, before this coil and now.
    """

    spool: Spool
    bench: Bench
    lesson: Lesson
    sizes: tuple[Size, ...]
    another_band: float
    another_wire_mm: float
    used_wire_mm: float
    agrees_with_surprise: bool | None = None
    pitch_before: PitchShare = ASSUMED_PITCH
    pitch: PitchShare = ASSUMED_PITCH

    @property
    def told_sizes(self) -> tuple[Size, ...]:
        """The sizes that may be wound by."""
        return () if self.lesson.surprising else self.sizes

    @property
    def spoken_of(self) -> Size:
        """The size that the sentences speak of."""
        return self.sizes[INDICES.index(SPOKEN_OF)]

    @property
    def another_is_worth_it(self) -> bool:
        """Whether another trial coil would be worth its wire."""
        return self.lesson.surprising or self.another_band < WORTH_NARROWING * self.spoken_of.band


def taught(spool: Spool, bench: Bench) -> Taught | None:
    """What the last trial of a spool taught; None where the strength of its wire is not listed, or it has no trial."""
    strength_mpa = tensile_strength_mpa(spool.material, spool.wire_diameter_mm)
    if strength_mpa is None or not spool.trials:
        return None
    before = learn(spool.material, spool.wire_diameter_mm, strength_mpa, spool.trials[:-1])
    trial = spool.trials[-1]
    after = learn(spool.material, spool.wire_diameter_mm, strength_mpa, spool.trials)
    sizes = tuple(_size(index * spool.wire_diameter_mm, before, after) for index in INDICES)
    spoken_of = sizes[INDICES.index(SPOKEN_OF)]
    coil = Trial(spoken_of.mandrel_mm, after.finished_mean_mm(spoken_of.mandrel_mm) + spool.wire_diameter_mm)
    another = after.after(coil, spool.material)
    return Taught(
        spool,
        bench,
        after.lessons[-1],
        sizes,
        _band(another, spoken_of.mandrel_mm),
        trial_wire_mm(spoken_of.mandrel_mm, spool.wire_diameter_mm),
        trial_wire_mm(trial.mandrel_mm, spool.wire_diameter_mm, trial.turns or TRIAL_TURNS),
        _agrees(spool, strength_mpa, before, after) if before.unsettled and not after.unsettled else None,
        before.pitch,
        after.pitch,
    )


def _agrees(spool: Spool, strength_mpa: float, before: Knowledge, after: Knowledge) -> bool:
    """Whether the coil after a surprise points where that did, and not where the coils before it had."""
    earlier = learn(spool.material, spool.wire_diameter_mm, strength_mpa, spool.trials[:-2])
    now = log(after.flow_ratio)
    return abs(now - log(before.flow_ratio)) < abs(now - log(earlier.flow_ratio))


def _size(mean_mm: float, before: Knowledge, after: Knowledge) -> Size:
    was_mm, is_mm = (
        round(round(known.mandrel_mm(mean_mm) / TURNED_STEP_MM) * TURNED_STEP_MM, 2) for known in (before, after)
    )
    return Size(mean_mm, was_mm, is_mm, _band(before, was_mm), _band(after, is_mm))


def _band(known: Knowledge, mandrel_mm: float) -> float:
    """How far from what is expected a coil may come out, relative, in 95 of 100."""
    return NORMAL_95 * known.finished_mean_sd_mm(mandrel_mm) / known.finished_mean_mm(mandrel_mm)


def said(taught: Taught) -> Iterator[str]:
    """What it taught in sentences, the most important first."""
    units, size = taught.bench.units, taught.spoken_of
    yield _first(taught, units)
    if not taught.lesson.surprising:
        was, now = (f"{100.0 * band:.1f} %" for band in (size.band_before, size.band))
        yield f"The first coil of that size now comes out within {now} of it, 95 times of 100; before, within {was}."
    yield from _decided(taught)
    yield from _legs(taught, units)
    yield _another(taught, units)
    trial, spool = taught.lesson.trial, taught.spool
    yield from pitch_said(trial, spool.wire_diameter_mm, spool.material, taught.pitch_before, taught.pitch, units)
    if taught.lesson.surprising:
        yield f"If this coil slipped or was measured wrongly, take it back: {take_back(taught.spool.id)}"
    else:
        yield from _heat(taught)
    yield from _tension(taught, units)


def _decided(taught: Taught) -> Iterator[str]:
    """What a coil says of one before it that was too far off to be chance."""
    if taught.agrees_with_surprise:
        yield (
            "It agrees with the coil before it, which was too far off to be chance: this wire is another than its "
            f"label says. Measure it and mend material or diameter of {taught.spool.id}: its strength, and so every "
            "limit of a spring of it, is still the label's."
        )
    elif taught.agrees_with_surprise is False:
        yield "It does not agree with the coil before it, which was too far off to be chance: that one counts no more."


def _first(taught: Taught, units: str) -> str:
    lesson, size = taught.lesson, taught.spoken_of
    if not lesson.agree:
        return lesson.said[0].upper() + lesson.said[1:]
    if lesson.said in TEACH_NOTHING:
        return lesson.said
    if lesson.surprising:
        return f"It {lesson.came_otherwise(units)}: {lesson.said}"
    of = f"for a coil of {_short(size.mean_diameter_mm, units)} mean diameter"
    now, was = _short(size.mandrel_mm, units), _short(size.mandrel_before_mm, units)
    told = "assumed" if len(taught.spool.trials) == 1 else "its coils before said"
    if now == was:
        return f"This wire springs back as {told}: {of} a mandrel of {now} stays right."
    less = "less" if size.mandrel_mm > size.mandrel_before_mm else "more"
    return f"This wire springs back {less} than {told}: {of} use {now}, not {was.removesuffix(' ' + units)}."


def _short(length_mm: float, units: str) -> str:
    """A diameter without zeros at its end, one place after the point at least: as a winder says it."""
    if units == "inch":
        return show_length(length_mm, units)
    text = f"{length_mm:.2f}"
    return f"{text.removesuffix('0')} mm"


def _another(taught: Taught, units: str) -> str:
    costs = f"{show_length(taught.another_wire_mm, units)} of wire and about {TRIAL_MINUTES:.0f} minutes (assumed)"
    if taught.lesson.surprising:
        return f"No mandrel is told until a second coil decides. Wind it before anything else: it costs {costs}."
    narrows = f"another trial coil would bring that to {100.0 * taught.another_band:.1f} % for {costs}"
    if taught.another_is_worth_it:
        return f"Worth its wire: {narrows}."
    return f"Not worth its wire: {narrows}."


def _legs(taught: Taught, units: str) -> Iterator[str]:
    """What the legs of a torsion spring say beside the caliper."""
    lesson, trial = taught.lesson, taught.lesson.trial
    if lesson.outside_by_legs_mm is None:
        if trial.leg_angle_deg is not None:
            yield (
                f"The legs stand at {show_angle(trial.leg_angle_deg)}: with the angle at which the crank stopped "
                "(--stop-angle) and the turns laid that would say how far the coil opened, often nearer than a caliper."
            )
        return
    legs, caliper = (show_diameter(mm, units) for mm in (lesson.outside_by_legs_mm, lesson.outside_diameter_mm))
    yield f"By the angle of its legs it is {legs} outside, by the caliper {caliper}" + (
        ": both are taken, each by its doubt." if lesson.agree else "."
    )


def _tension(taught: Taught, units: str) -> Iterator[str]:
    """What a coil wound tight kept, beside what a hand can wind; no coil makes the next one surer."""
    trial, spool = taught.lesson.trial, taught.spool
    strength_mpa = tensile_strength_mpa(spool.material, spool.wire_diameter_mm)
    if trial.initial_tension_n is None or strength_mpa is None:
        return
    mean_mm = trial.outside_diameter_mm - spool.wire_diameter_mm
    most_n = hand_tension_n(spool.wire_diameter_mm, mean_mm, strength_mpa, trial.heated).high
    tension_n, most = trial.initial_tension_n, show_force(most_n, units)
    kept = f"an initial tension of {show_force(tension_n, units)}" if tension_n else "no initial tension"
    by_hand = f"a hand gives such a coil from nothing to {most}{', after heat' if trial.heated else ''} (EN 13906-2, "
    yield f"It kept {kept}; {by_hand}from memory)." + (
        f" It kept more: {READ_AGAIN}."
        if tension_n > TENSION_DOUBTED * most_n
        else " The next coil may keep another: nobody has shown that a hand can aim."
    )


def _heat(taught: Taught) -> Iterator[str]:
    material, bench = taught.spool.material, taught.bench
    if not oven_reaches(material, bench):
        return
    low, high = 100.0 * material.heat_change_low, 100.0 * material.heat_change_high
    change = f"a change of {low:+.1f} to {high:+.1f} % in diameter (common practice, no source)"
    at = f"stress relief from {show_temperature(material.stress_relief_low_c or 0.0, bench.units)}"
    if taught.lesson.trial.heated:
        yield f"It was measured after heat, so {change} lies between it and these sizes, which are as wound."
    else:
        yield f"It was measured before heat: {at} makes {change}, which the winding sheet takes in with its doubt."
