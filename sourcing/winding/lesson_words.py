"""What a trial coil taught, in the words of a winder."""

from __future__ import annotations

WIDE_DOUBT = 0.15
"""The doubt of the flow stress after a surprise, one relative standard deviation (assumed)."""

NO_COIL = "No coil of this wire is so small: wire or diameter was measured wrongly. The trial is set aside."

OPENS_FULLY = "On so large a mandrel this wire should not yield at all: the coil teaches nothing. Wind a smaller one."

TWO_COILS = (
    "diameter and angle do not belong to one coil. Turns were counted wrongly, an angle was read from the wrong leg, "
    "or the coil slipped: measure again and wind a second coil; until one agrees the doubt is "
    f"{100 * WIDE_DOUBT:.0f} %."
)

OTHER_WAY = (
    "diameter and angle do not belong to one coil, but would if both angles were counted the other way round: count "
    "from leg 1 on to leg 2 the way the spring is wound up, and write the trial anew; until then the doubt is "
    f"{100 * WIDE_DOUBT:.0f} %."
)


def lesson_said(change: float, surprising: bool) -> str:
    """The lesson in words."""
    if surprising:
        return (
            "too far off to be chance. Another wire or grade than the label says, or a coil that slipped: measure wire "
            "and mandrel again and wind a second coil; until one agrees the doubt is "
            f"{100 * WIDE_DOUBT:.0f} %."
        )
    if abs(change) < 0.005:
        return "springs back as assumed."
    return f"springs back {'more' if change > 0 else 'less'} than assumed ({100 * change:+.0f} % flow stress)."
