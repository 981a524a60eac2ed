"""The hand of a spring: how it is seen, which hand a load winds up, and what is said of both."""

from __future__ import annotations

from sourcing.springs.model import Hand

HOW_TO_SEE = (
    "Hold the spring upright and look at its front wires: those of a right-hand spring climb to the right, those of a "
    "left-hand one to the left."
)

SEEN = "held upright, the front wires of a right-hand spring climb to the right"
"""The same in a few words, for within a sentence."""

WHICH_IS_WANTED = (
    "Look along the axis from the end that the load turns, the other end held: a load that turns it anticlockwise "
    "winds up a right-hand spring, one that turns it clockwise a left-hand one."
)
"""Seen from that end a right-hand helix goes round anticlockwise as it comes nearer: turned so, it gets more coils."""

_WAY = {Hand.RIGHT: "clockwise", Hand.LEFT: "anticlockwise"}


def laid(hand: Hand) -> str:
    """How wire is laid that is to be of a hand.

    >>> laid(Hand.LEFT)
    'left-hand: seen from the end where you began, the wire runs away from you anticlockwise'
    """
    return f"{hand}-hand: seen from the end where you began, the wire runs away from you {_WAY[hand]}"
