"""What the pitch of a trial coil taught, in a sentence. Winding sheets keep to the share that is assumed."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_diameter
from sourcing.stock.model import Trial
from sourcing.winding.turns import pitch_ratio


def pitch_said(trial: Trial, as_wound_outside_mm: float, wire_diameter_mm: float, units: str) -> Iterator[str]:
    """How the pitch grew beside what is assumed, and what to wind next time; or which of its two measures is missing.

    >>> coil = Trial(6.0, 8.9, pitch_wound_mm=1.2, pitch_mm=1.25)
    >>> next(pitch_said(coil, 8.9, 0.8, "mm")).split(":")[0]
    'Its pitch grew by 4.2 %, from 1.20 mm to 1.25 mm, where 5.7 % is assumed'
    """
    wound_mm, came_mm = trial.pitch_wound_mm, trial.pitch_mm
    if wound_mm is None and came_mm is None:
        return
    if wound_mm is None:
        yield _alone(show_diameter(came_mm or 0.0, units), "that came out", "the one on the mandrel", "--pitch-wound")
        return
    if came_mm is None:
        yield _alone(show_diameter(wound_mm, units), "on the mandrel", "the one that came out", "--pitch")
        return
    opening = (as_wound_outside_mm - wire_diameter_mm) / (trial.mandrel_mm + wire_diameter_mm)
    yield _grew(wound_mm, came_mm, opening, wire_diameter_mm, units)


def _alone(pitch: str, which: str, other: str, option: str) -> str:
    return f"The pitch of {pitch} {which} teaches nothing without {other}: say both ({option})."


def _grew(wound_mm: float, came_mm: float, opening: float, wire_diameter_mm: float, units: str) -> str:
    """The sentence of a coil of which both pitches were measured; D_f/D_m is its opening."""
    wound, came = (show_diameter(mm, units) for mm in (wound_mm, came_mm))
    if not 1.0 <= came_mm / wound_mm <= max(1.0, opening) ** 2:
        grew = (
            "less than nothing" if came_mm < wound_mm else "more than wire that turns freely about its own axis lets it"
        )
        return f"Its pitch grew by {grew}, from {wound} to {came}: measure both again, each over several turns."
    grown, assumed = (f"{100.0 * (ratio - 1.0):.1f} %" for ratio in (came_mm / wound_mm, pitch_ratio(opening)))
    next_mm = wound_mm**2 / came_mm
    lay = "lay it wire against wire" if next_mm <= wire_diameter_mm else f"wind it at {show_diameter(next_mm, units)}"
    return (
        f"Its pitch grew by {grown}, from {wound} to {came}, where {assumed} is assumed: for one that comes out at "
        f"{wound} {lay} next time. Sheets go on with what is assumed."
    )
