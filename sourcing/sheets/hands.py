"""A pair of springs, drawn, by which somebody sees the hand of one."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.need.model import Need
from sourcing.sheets.text import wrapped
from sourcing.springs.hands import HOW_TO_SEE, WHICH_IS_WANTED

_RIGHT, _LEFT, _TURNS = "(_.-')", "('-._)", 4


def hand_matters(need: Need) -> bool:
    """Whether a spring of the other hand would not serve."""
    return need.kind == "torsion" and need.bodies != 2


def pair_lines() -> Iterator[str]:
    """The drawn pair, upright, and in words how to see a hand and which one a load wants."""
    yield "    right-hand    left-hand"
    yield from (f"      {_RIGHT}        {_LEFT}" for _ in range(_TURNS))
    yield from wrapped(HOW_TO_SEE, "  ")
    yield from wrapped(WHICH_IS_WANTED, "  ")
