"""Ends that hook into a part: a spring without them is near, for an end can be bent out of its last coil."""

from __future__ import annotations

from collections.abc import Iterator
from math import pi

from sourcing.fit.model import Limit
from sourcing.fit.pressed import PressedCase
from sourcing.need.model import WantedEnd
from sourcing.springs.end_pieces import room_mm, said, wire_of_piece_mm
from sourcing.springs.model import ConicalSpring, EndPiece, PressedSpring

Ends = tuple[EndPiece | None, EndPiece | None]

_LAST_DIGITS_MM = 1e-9


def end_pieces(case: PressedCase) -> Iterator[Limit]:
    """Each end must hook into its part as wanted; either way round, but for a cone."""
    wanted = (case.need.end_1, case.need.end_2)
    if wanted == (None, None):
        yield from _in_the_way(case)
        return
    for number, (wish, piece) in enumerate(zip(wanted, _turned_round(case), strict=True), 1):
        if wish is not None:
            why = _no_room(case, number, wish) or _why_not(case, wish, piece)
            yield Limit(f"end {number}", not why, False, why or _said(case, wish.piece) + ", as wanted")


def _no_room(case: PressedCase, number: int, wish: WantedEnd) -> str:
    """What keeps the coil from having such an end at all; empty where nothing does."""
    spring, long_mm = case.spring, wish.piece.length_mm
    low_mm, high_mm = room_mm(wish.shape, _inside_mm(spring, number), spring.wire_diameter_mm)
    wanted = f"{_said(case, wish.piece)} is wanted"
    if long_mm < low_mm - _LAST_DIGITS_MM:
        return f"{wanted}: it would not reach across the inside of the coil, {case.size(low_mm)}"
    if long_mm > high_mm + _LAST_DIGITS_MM:
        return f"{wanted}: the coil has room for {case.size(high_mm)}, from wire to tip"
    return ""


def _inside_mm(spring: PressedSpring, number: int) -> float:
    """The inside diameter at an end; of a cone, the first is the large one."""
    if not isinstance(spring, ConicalSpring):
        return spring.inside_diameter_mm
    return spring.inside_diameter_large_mm if number == 1 else spring.inside_diameter_small_mm


def _turned_round(case: PressedCase) -> Ends:
    """The ends of the spring in the order in which they serve best."""
    spring = case.spring
    as_listed: Ends = (spring.end_1, spring.end_2)
    turned_round: Ends = (spring.end_2, spring.end_1)
    if isinstance(spring, ConicalSpring):
        return as_listed
    wanted = (case.need.end_1, case.need.end_2)

    def misses(ends: Ends) -> int:
        pairs = zip(wanted, ends, strict=True)
        return sum(wish is not None and bool(_why_not(case, wish, piece)) for wish, piece in pairs)

    return min(as_listed, turned_round, key=misses)


def _why_not(case: PressedCase, wish: WantedEnd, piece: EndPiece | None) -> str:
    """What keeps an end from hooking in as wanted; empty where nothing does."""
    wanted = _said(case, wish.piece)
    if piece is None:
        return f"plain, and cannot hook into its part; {wanted} is wanted: {_bent_out(case, wish.piece)}"
    if piece.shape is not wish.shape:
        return f"{_said(case, piece)}; {wanted} is wanted: straighten it and bend it anew, or choose another"
    low_mm, high_mm = _bounds_mm(case, wish)
    if piece.length_mm < low_mm:
        return f"{_said(case, piece)}; {wanted} is wanted: it is too short"
    if piece.length_mm > high_mm:
        return f"{_said(case, piece)}; {wanted} is wanted: cut it to length"
    if abs(piece.angle_deg - wish.angle_deg) > case.bench.tolerances.angle_deg:
        return f"{_said(case, piece)}; {wanted} is wanted: bend it further or less"
    return ""


def _bent_out(case: PressedCase, piece: EndPiece) -> str:
    """How much of the last coil an end takes that is bent out of it."""
    spring = case.spring
    share = wire_of_piece_mm(piece, spring.wire_diameter_mm) / (pi * spring.mean_diameter_mm)
    return f"bent out of the last coil it takes {share:.1f} of a turn, and the spring is that much shorter"


def _bounds_mm(case: PressedCase, wish: WantedEnd) -> tuple[float, float]:
    house_mm = case.bench.tolerances.length_mm
    wanted, nominal_mm = wish.length_mm, wish.piece.length_mm
    stated = wanted.minus is not None or wanted.plus is not None
    low, high = (wanted.smallest, wanted.largest) if stated else (nominal_mm - house_mm, nominal_mm + house_mm)
    return low or 0.0, high if high is not None else nominal_mm + house_mm


def _in_the_way(case: PressedCase) -> Iterator[Limit]:
    """A piece that nobody asked for, where the need says what the ends should be."""
    pieces = case.spring.end_pieces
    if case.need.ends is not None and pieces:
        which = " and ".join(_said(case, piece) for piece in pieces)
        yield Limit("end pieces", False, False, f"{which}; {case.need.ends} ends are wanted: cut it off")


def _said(case: PressedCase, piece: EndPiece) -> str:
    return said(piece, case.length(piece.length_mm))
