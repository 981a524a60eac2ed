"""Trial coils of a catalogue that its keeper should look at once more: those too far off to be chance."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from sourcing.files.findings import Finding, quoted
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.stock.model import Spool
from sourcing.stock.places import place_of_inner
from sourcing.winding.learning import learn
from sourcing.winding.lesson_words import take_back
from sourcing.winding.trials import Lesson

SET_ASIDE_STILL = "a file without it: it is set aside, for the coil after it came out as was expected"
"""What to do about a trial that the next coil has set aside."""


def surprises(spools: Iterable[Spool], units: str) -> Iterator[Finding]:
    """A doubt for each trial coil that was too far off to be chance, at its own line."""
    for spool in spools:
        strength_mpa = tensile_strength_mpa(spool.material, spool.wire_diameter_mm)
        if strength_mpa is None or not spool.trials:
            continue
        lessons = learn(spool.material, spool.wire_diameter_mm, strength_mpa, spool.trials).lessons
        for number, lesson in enumerate(lessons):
            if lesson.surprising:
                found = f"this trial of {quoted(spool.id)} {lesson.came_otherwise(units)}, too far off to be chance"
                expected = _expected(spool, number, lesson)
                yield Finding(place_of_inner(spool.place, "trials", number), found, expected)


def _expected(spool: Spool, number: int, lesson: Lesson) -> str:
    """What to do about it."""
    if lesson.set_aside:
        return SET_ASIDE_STILL
    if lesson.borne_out:
        return "another wire on the label, for a coil after it agrees: measure the wire"
    if number == len(spool.trials) - 1:
        return f"another coil that decides; or, if this one slipped, {take_back(spool.id)}"
    return "another wire on the label if the coils after it agree with it; if it slipped, a file without it"
