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


OF_NO_ONE_COIL = "has a diameter and an angle of its legs that do not belong together"

SET_ASIDE = "set aside, for the coil after it came out as was expected, and not as this one."
"""What is said of a surprise that the next coil has shown to be a coil that slipped or was measured wrongly."""

BORNE_OUT = "too far off to be chance, and a coil after it agrees: this wire is another than its label says."
"""What is said of a surprise that a later coil has borne out."""

TEACH_NOTHING = (NO_COIL, OPENS_FULLY)
"""Lessons that stand alone: what came out and what was expected add nothing."""

OPENED_FULLY = 5.0
"""A coil that was expected at so many times its mandrel was expected to open fully (assumed)."""


def should_have_opened(mandrel_mm: float, expected_mm: float) -> bool:
    """Whether a coil was expected so large that no figure tells more than that it should have opened fully."""
    return expected_mm > OPENED_FULLY * mandrel_mm


def beside_expected(outside_diameter_mm: float, expected_mm: float, mandrel_mm: float, units: str) -> str:
    """How a coil came out, and what was expected.

    >>> beside_expected(10.4, 8.98, 6.0, "mm")
    '10.40 mm outside where 8.98 mm was expected'
    >>> beside_expected(90.0, 3680.99, 70.0, "mm")
    '90.00 mm outside where it should have opened fully'
    """
    got = f"{show_diameter(outside_diameter_mm, units)} outside where"
    if should_have_opened(mandrel_mm, expected_mm):
        return f"{got} it should have opened fully"
    return f"{got} {show_diameter(expected_mm, units)} was expected"


def take_back(spool: str) -> str:
    """The command that takes the last trial of a spool back."""
    return f"springwright trial {spool} --take-back"


def lesson_said(change: float, surprising: bool, should_open: bool) -> str:
    """The lesson in words; `should_open`: the coil was expected to open fully."""
    if surprising and should_open:
        return (
            "too far off to be chance. A much softer wire, or another than the label says: measure wire and mandrel "
            "again and wind a second coil, on a smaller mandrel. If that agrees, the wire is another than its label "
            "says."
        )
    if surprising:
        return (
            "too far off to be chance. Another wire or grade than the label says, or a coil that slipped: measure wire "
            "and mandrel again and wind a second coil. If that agrees, the wire is another than its label says."
        )
    if abs(change) < 0.005:
        return "springs back as assumed."
    return f"springs back {'more' if change > 0 else 'less'} than assumed ({100 * change:+.0f} % flow stress)."
