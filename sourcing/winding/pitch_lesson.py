"""What the pitch of a trial coil taught, in a sentence."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.materials.model import Material
from sourcing.quantities import show_diameter
from sourcing.stock.model import Trial
from sourcing.winding.pitch_share import PitchReading, PitchShare, pitch_reading
from sourcing.winding.turns import pitch_on_mandrel_mm, pitch_ratio

HARDLY_CHANCE = (
    "So far off is hardly chance: measure both again, each over several turns, and wind another coil. Until then, "
)
"""What is said of a pitch that is a surprise, before how such a coil is laid."""


def pitch_said(
    trial: Trial, wire_diameter_mm: float, material: Material, before: PitchShare, now: PitchShare, units: str
) -> Iterator[str]:
    """What pitch came out beside what was expected, and how such a coil is laid now; or which measure is missing."""
    wound_mm, came_mm = trial.pitch_wound_mm, trial.pitch_mm
    if wound_mm is None and came_mm is None:
        return
    if wound_mm is None:
        yield _alone(show_diameter(came_mm or 0.0, units), "that came out", "the one on the mandrel", "--pitch-wound")
        return
    if came_mm is None:
        yield _alone(show_diameter(wound_mm, units), "on the mandrel", "the one that came out", "--pitch")
        return
    reading = pitch_reading(trial, wire_diameter_mm, material)
    if reading is None:
        yield "Its turns lie close, or it did not open: of how the pitch opens it teaches nothing."
    elif cannot_be(reading):
        yield _impossible(reading, wound_mm, came_mm, units)
    elif now == before:
        yield "Of how the pitch opens it teaches nothing before a second coil decides."
    else:
        yield _opened(reading, wound_mm, wire_diameter_mm, before, now, units, trial.heated)


def cannot_be(reading: PitchReading | None) -> bool:
    """Whether no pitch opens so, for all that is known of wire."""
    return reading is not None and not reading.can_be


def _impossible(reading: PitchReading, wound_mm: float, came_mm: float, units: str) -> str:
    wound, came = (show_diameter(mm, units) for mm in (wound_mm, came_mm))
    most = show_diameter(wound_mm * reading.opening**2, units)
    why = (
        "a pitch grows as the coil is let go, and never shrinks"
        if reading.ratio < 1.0
        else f"even wire that turns freely about its own axis opens to {most} at most"
    )
    return (
        f"A coil laid at a pitch of {wound} does not come out at {came}: {why}. Measure both again, each over several "
        "turns. They are written down, but do not count."
    )


def _alone(pitch: str, which: str, other: str, option: str) -> str:
    return f"The pitch of {pitch} {which} teaches nothing without {other}: say both ({option})."


def _opened(
    reading: PitchReading,
    wound_mm: float,
    wire_mm: float,
    before: PitchShare,
    now: PitchShare,
    units: str,
    heated: bool,
) -> str:
    """The sentences of a coil of which both pitches were measured; what came out as before its heat."""
    came_mm, expected_mm = (wound_mm * ratio for ratio in (reading.ratio, pitch_ratio(reading.opening, before.share)))
    was_mm, lay_mm = (pitch_on_mandrel_mm(came_mm, reading.opening, known.share, wire_mm) for known in (before, now))
    wound, came, expected, was, lay = (
        show_diameter(mm, units) for mm in (wound_mm, came_mm, expected_mm, was_mm, lay_mm)
    )
    before_heat = " (reckoned back to before its heat)" if heated else ""
    told = "expected by its coils before" if before.coils else "assumed"
    how = "wire against wire" if lay_mm <= wire_mm else f"at {lay} on the mandrel"
    to_get = f"to get {came} lay it {how}{'' if lay == was else f', not at {was}'}"
    doubted = HARDLY_CHANCE if now.surprising else "By all that is known of this wire now, "
    return (
        f"A coil opens as it is let go: laid at a pitch of {wound} this one came out at {came}{before_heat}, where "
        f"{expected} was {told}. {doubted}{to_get}."
    )
