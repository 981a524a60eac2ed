"""A spring inside another: the room between them, their hands, and the lengths that they can work at."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.materials import find
from sourcing.springs import systems
from sourcing.springs.model import CompressionSpring, Ends, Hand
from sourcing.springs.nesting import Nested, clearance_of, growth_of, nested_notes, touches

WIRE = find("music-wire")
assert WIRE is not None


def spring(wire: float, mean: float, free: float = 40.0, coils: float = 6.0, hand: Hand | None = None):
    return CompressionSpring(
        wire, mean, free, coils, coils + 2.0, Ends.CLOSED_GROUND, WIRE, 81_500.0, 206_000.0, None, hand
    )


OUTER = spring(2.0, 16.0, hand=Hand.RIGHT)  # 14 mm inside, solid at 16 mm
INNER = spring(1.4, 11.0, coils=8.0, hand=Hand.LEFT)  # 12.4 mm outside, solid at 14 mm


def notes(pair: Nested, longest: float = 35.0, shortest: float = 20.0, wanted: float = 0.2) -> list[str]:
    return list(nested_notes(pair, longest, shortest, wanted))


def test_a_pair_that_clears_with_opposite_hands_and_reaches_has_nothing_against_it() -> None:
    pair = Nested(OUTER, INNER, 0.2, 0.15)
    assert clearance_of(pair) == pytest.approx(14.0 - 12.4 - growth_of(INNER) - 0.35)
    assert not touches(pair)
    assert notes(pair) == []


def test_a_pair_that_touches_is_said_so_with_the_sizes() -> None:
    pair = Nested(OUTER, replace(INNER, mean_diameter_mm=12.6), 0.2, 0.15)
    assert touches(pair)
    assert notes(pair) == [
        "The two springs touch: the inner one is 14 mm outside and grows by 0.13 mm when pressed, the outer one is "
        "14 mm inside, and their tolerances take 0.35 mm: 0.48 mm too little. Springs that rub wear, bind and lose "
        "force: do not nest them."
    ]


def test_growth_alone_can_make_them_touch() -> None:
    """0.1 mm apart at rest; the inner one grows by more than that."""
    pair = Nested(OUTER, replace(INNER, mean_diameter_mm=12.5))
    assert OUTER.inside_diameter_mm > pair.inner.outside_diameter_mm
    assert touches(pair)


def test_tolerance_alone_can_make_them_touch() -> None:
    apart = Nested(OUTER, replace(INNER, mean_diameter_mm=12.2))
    assert not touches(apart)
    assert touches(replace(apart, outer_tolerance_mm=0.2, inner_tolerance_mm=0.2))


def test_less_room_than_wanted_is_said() -> None:
    told = notes(Nested(OUTER, replace(INNER, mean_diameter_mm=12.4)))
    assert told[0].startswith("Only 0.07 mm on the diameter is left between the two springs, 0.2 mm wanted")


def test_two_of_the_same_hand_are_said_and_so_are_unknown_ones() -> None:
    assert "Both springs are right-hand" in notes(Nested(OUTER, replace(INNER, hand=Hand.RIGHT)))[0]
    assert "The hand of the inner spring is not known" in notes(Nested(OUTER, replace(INNER, hand=None)))[0]
    both = Nested(replace(OUTER, hand=None), replace(INNER, hand=None))
    assert "The hand of the outer and inner spring is not known" in notes(both)[0]


def test_each_must_reach_the_length() -> None:
    short = Nested(OUTER, replace(INNER, free_length_mm=30.0))
    assert notes(short) == ["The inner spring is loose at 35 mm: it is 30 mm long at rest."]
    assert notes(short, longest=20.0) == []
    never = Nested(OUTER, replace(INNER, free_length_mm=19.0))
    assert notes(never) == ["The inner spring is never pressed, even at 20 mm: it is 19 mm long at rest."]


def test_none_may_go_solid_before_the_shortest_length() -> None:
    long_inner = Nested(OUTER, replace(INNER, total_coils=16.0, active_coils=14.0, free_length_mm=45.0))
    assert notes(long_inner) == ["The inner spring is solid at 22.4 mm: the pair cannot be pressed to 20 mm."]
    assert systems.limited_by(long_inner.system) == 1


@settings(deadline=None, derandomize=True)
@given(st.floats(0.0, 1.0), st.floats(0.0, 1.0), st.floats(5.0, 12.0))
def test_the_room_shrinks_with_each_tolerance_and_with_the_inner_springs_size(
    one: float, two: float, mean: float
) -> None:
    pair = Nested(OUTER, replace(INNER, mean_diameter_mm=mean))
    assert clearance_of(replace(pair, outer_tolerance_mm=one, inner_tolerance_mm=two)) == pytest.approx(
        clearance_of(pair) - one - two
    )
    assert clearance_of(replace(pair, inner=replace(pair.inner, mean_diameter_mm=mean + 0.5))) < clearance_of(pair)
