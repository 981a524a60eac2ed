"""What a trial coil taught, in the words of a winder."""

from __future__ import annotations

from sourcing.quantities import show_diameter

WIDE_DOUBT = 0.15
"""The least doubt of the flow stress after a surprise, one relative standard deviation (assumed)."""

NO_COIL = "No coil of this wire is so small: wire or diameter was measured wrongly. The trial is set aside."

OPENS_FULLY = "On so large a mandrel this wire should not yield at all: the coil teaches nothing. Wind a smaller one."

TWO_COILS = (
    "diameter and angle do not belong to one coil. Turns were counted wrongly, an angle was read from the wrong leg, "
    "or the coil slipped: measure again and wind a second coil. Until one agrees no mandrel is sure."
)

OTHER_WAY = (
    "diameter and angle do not belong to one coil, but would if both angles were counted the other way round: count "
    "from leg 1 on to leg 2 the way the spring is wound up, and write the trial anew. Until then no mandrel is sure."
)


def came_otherwise(outside_diameter_mm: float, expected_mm: float, agree: bool, units: str) -> str:
    """How a coil that is too far off to be chance came out, as a verb and what belongs to it.

    >>> came_otherwise(10.4, 8.98, True, "mm")
    'came out at 10.40 mm outside where 8.98 mm was expected'
    """
    if not agree:
        return "has a diameter and an angle of its legs that do not belong together"
    got, expected = (show_diameter(mm, units) for mm in (outside_diameter_mm, expected_mm))
    return f"came out at {got} outside where {expected} was expected"


def take_back(spool: str) -> str:
    """The command that takes the last trial of a spool back."""
    return f"springwright trial {spool} --take-back"


def lesson_said(change: float, surprising: bool) -> str:
    """The lesson in words."""
    if surprising:
        return (
            "too far off to be chance. Another wire or grade than the label says, or a coil that slipped: measure wire "
            "and mandrel again and wind a second coil. If that agrees, the wire is another than its label says."
        )
    if abs(change) < 0.005:
        return "springs back as assumed."
    return f"springs back {'more' if change > 0 else 'less'} than assumed ({100 * change:+.0f} % flow stress)."
