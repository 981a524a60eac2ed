"""How the finished spring is checked, as a step: by what the list goes, and how the forces are read at a length."""

from __future__ import annotations

from collections.abc import Sequence

from sourcing.quantities import show_angle, show_block

_BY_THE_LIST = (
    "Check it against the list, in that order. It goes by clearances and forces; a standard's grades are for bought "
    "springs."
)


def check_pressed(lengths_mm: Sequence[float], units: str) -> str:
    """A compression spring: pressed down to stop blocks."""
    if not lengths_mm:
        return _BY_THE_LIST
    return (
        f"{_BY_THE_LIST} For the forces cut stop blocks of {_both([show_block(each, units) for each in lengths_mm])}. "
        "Stand the block beside the spring on the scale, set it to 0 before the spring is on, and press a flat plate "
        "down until it just rests on the block: read then, for pressed on, the block bears it too."
    )


def check_pulled(lengths_mm: Sequence[float], units: str) -> str:
    """An extension spring: pulled to marks."""
    if not lengths_mm:
        return _BY_THE_LIST
    return (
        f"{_BY_THE_LIST} For the forces mark {_both([show_block(each, units) for each in lengths_mm])} on a board, "
        "from the pin that holds one end; read when the inside of the hook or eye at the other end is at the mark."
    )


def check_turned(angles_deg: Sequence[float]) -> str:
    """A torsion spring: turned to marks."""
    if not angles_deg:
        return _BY_THE_LIST
    return (
        f"{_BY_THE_LIST} For the torques mark {_both([show_angle(each) for each in angles_deg])} on a board round "
        "it, from where leg 2 stands free; read when it is at the mark."
    )


def _both(shown: Sequence[str]) -> str:
    """Things in a row.

    >>> _both(["24.0 mm", "19.0 mm", "14.0 mm"])
    '24.0 mm, 19.0 mm and 14.0 mm'
    """
    *most, last = shown
    return f"{', '.join(most)} and {last}" if most else last
