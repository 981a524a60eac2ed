"""What the last trial coil of a spool taught, in the words of a winder, the most important first."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.materials.strength import tensile_strength_mpa
from sourcing.quantities import show_angle, show_diameter, show_force, show_length, show_temperature
from sourcing.winding.advice import TRIAL_MINUTES
from sourcing.winding.doubts import NORMAL_95
from sourcing.winding.extension.hand_tension import TENSION_DOUBTED, hand_tension_n
from sourcing.winding.extension.tension_words import READ_AGAIN
from sourcing.winding.heat import oven_reaches
from sourcing.winding.lesson_words import TEACH_NOTHING, take_back
from sourcing.winding.mandrel import TURNED_STEP_MM
from sourcing.winding.measuring import PRINTED_SD_MM
from sourcing.winding.pitch_lesson import pitch_said
from sourcing.winding.teaching import Taught


def said(taught: Taught) -> Iterator[str]:
    """What it taught in sentences, the most important first."""
    units, size = taught.bench.units, taught.spoken_of
    yield _first(taught, units)
    if not taught.undecided:
        was, now = (f"{100.0 * band:.1f} %" for band in (size.band_before, size.band))
        yield f"The first coil of that size now comes out within {now} of it, 95 times of 100; before, within {was}."
    yield from _this_coil(taught, units)
    yield from _decided(taught)
    yield from _legs(taught, units)
    yield _another(taught, units)
    trial, spool = taught.lesson.trial, taught.spool
    yield from pitch_said(trial, spool.wire_diameter_mm, spool.material, taught.pitch_before, taught.pitch, units)
    if taught.lesson.surprising:
        yield f"If this coil slipped or was measured wrongly, take it back: {take_back(taught.spool.id)}"
    elif not taught.undecided:
        yield from _heat(taught)
    yield from _tension(taught, units)


def _decided(taught: Taught) -> Iterator[str]:
    """What a coil says of one before it that was too far off to be chance."""
    one = taught.waited == 1
    if taught.agrees_with_surprise:
        with_it = "the coil before it, which was" if one else f"one of the {taught.waited} coils before it that were"
        yield (
            f"It agrees with {with_it} too far off to be chance: this wire is another than its "
            f"label says. Measure it and mend material or diameter of {taught.spool.id}: its strength, and so every "
            "limit of a spring of it, is still the label's."
        )
        return
    if taught.agrees_with_surprise is None:
        return
    differs = (
        "It does not agree with the coil before it, which was too far off to be chance,"
        if one
        else f"It agrees with none of the {taught.waited} coils before it, which were too far off to be chance,"
    )
    if not taught.sets_aside:
        yield (
            f"{differs} nor with what was expected before that: measure wire and mandrel again and wind another coil."
        )
        return
    aside = "that one is set aside and moves" if one else "those are set aside and move"
    yield (
        f"{differs} but with what was expected before that: {aside} no mandrel. Until "
        f"{'its trial is' if one else 'their trials are'} out of the file, moment and energy stay no smaller than the "
        "wire of the label gives."
    )


def _first(taught: Taught, units: str) -> str:
    lesson, size = taught.lesson, taught.spoken_of
    if not lesson.agree:
        return lesson.said[0].upper() + lesson.said[1:]
    if lesson.said in TEACH_NOTHING:
        return lesson.said
    if lesson.surprising and taught.waited:
        return f"It {lesson.came_otherwise(units)}: too far off to be chance as well."
    if lesson.surprising:
        return f"It {lesson.came_otherwise(units)}: {lesson.said}"
    if taught.undecided:
        return (
            "It cannot tell whether the coil that was too far off to be chance slipped or is of another wire: wind one "
            "on the mandrel of that coil."
        )
    of = f"for a coil of {_short(size.mean_diameter_mm, units)} mean diameter"
    now, was = _alike(size.mandrel_mm, size.mandrel_before_mm, units)
    told = "its coils before said" if taught.coils_before else "assumed"
    if now == was:
        return f"This wire springs back as {told}: {of} a mandrel of {now} stays right."
    less = "less" if size.mandrel_mm > size.mandrel_before_mm else "more"
    return f"This wire springs back {less} than {told}: {of} use {now}, not {was.rpartition(' ')[0]}."


def _this_coil(taught: Taught, units: str) -> Iterator[str]:
    """What came out on this mandrel beside what was expected, and the mandrel that gives what was; what it was of."""
    lesson, mandrel_mm = taught.lesson, taught.lesson.trial.mandrel_mm
    if taught.undecided or lesson.said in TEACH_NOTHING:
        return
    before_heat = " (reckoned back to before its heat)" if lesson.trial.heated else ""
    came = f"On {show_diameter(mandrel_mm, units)} this coil{before_heat} {lesson.came_otherwise(units)}"
    if taught.as_expected_mm is None:
        yield f"{came}."
    elif abs(taught.as_expected_mm - mandrel_mm) < TURNED_STEP_MM / 2.0:
        yield f"{came}: for that the same mandrel stays right."
    else:
        now = show_diameter(taught.as_expected_mm, units)
        yield f"{came}: for that it wants {now}. `springwright wind NEED` has the mandrel of your spring."
    if lesson.trial.on == "printed":
        within = show_diameter(NORMAL_95 * PRINTED_SD_MM, units)
        yield (
            f"A printed mandrel gives way under the wire: its diameter is taken to be known to {within} only (assumed)."
            " A coil wound on steel teaches more."
        )


def _short(length_mm: float, units: str) -> str:
    """A diameter without zeros at its end, one place after the point at least: as a winder says it."""
    if units == "inch":
        return show_length(length_mm, units)
    text = f"{length_mm:.2f}"
    return f"{text.removesuffix('0')} mm"


def _alike(one_mm: float, other_mm: float, units: str) -> tuple[str, str]:
    """Two diameters with as many places after the point."""
    one, other = (_short(mm, units) for mm in (one_mm, other_mm))
    return (one, other) if len(one) == len(other) else (show_diameter(one_mm, units), show_diameter(other_mm, units))


def _another(taught: Taught, units: str) -> str:
    costs = f"{show_length(taught.another_wire_mm, units)} of wire and about {TRIAL_MINUTES:.0f} minutes (assumed)"
    if taught.undecided:
        decides = "a second coil decides" if taught.undecided == 1 else "one more coil decides"
        return f"No mandrel is told until {decides}. Wind it before anything else: it costs {costs}."
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
