"""Laws of whole conical springs: their wire, their cone of active coils, and what a thin one does under a newton."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.materials import find
from sourcing.springs import geometry
from sourcing.springs.conical import Cone, rate_n_per_mm, series_rate_n_per_mm
from sourcing.springs.conical_lengths import pitch_of, solid_pitch_mm, wire_length_of
from sourcing.springs.describe import describe
from sourcing.springs.model import ConicalSpring, Ends

G_MPA = 81_500.0
WIRE = find("music-wire")
assert WIRE is not None

dead = st.floats(0.0, 3.0)


def cone(small_mm: float, large_mm: float, dead_coils: float, ends: Ends = Ends.CLOSED) -> ConicalSpring:
    return ConicalSpring(1.0, small_mm, large_mm, 40.0, 6.0, 6.0 + dead_coils, ends, WIRE, G_MPA, 206_000.0, None)


class TestWire:
    @given(st.floats(5.0, 30.0), dead, st.sampled_from(Ends))
    def test_a_cone_of_equal_ends_takes_the_wire_of_a_cylinder(self, mean: float, dead: float, ends: Ends) -> None:
        spring = cone(mean, mean, dead, ends)
        of_cylinder = geometry.wire_length_mm(1.0, mean, pitch_of(spring), 6.0, 6.0 + dead)
        assert wire_length_of(spring) == pytest.approx(of_cylinder)

    @given(st.floats(5.0, 30.0), st.floats(0.0, 11.0))
    def test_two_dead_coils_are_one_of_each_end(self, small: float, wider: float) -> None:
        """At the same pitch of the active coils: the free length grows by the two wires."""
        large = small + wider
        bare = cone(small, large, 0.0, Ends.CLOSED_GROUND)
        ended = replace(bare, total_coils=8.0, free_length_mm=42.0)
        turns = sum(geometry.turn_length_mm(mean, 1.0) for mean in (small, large))
        assert pitch_of(ended) == pytest.approx(pitch_of(bare))
        assert wire_length_of(ended) - wire_length_of(bare) == pytest.approx(turns)


def test_coils_that_lie_inside_each_other_have_no_height_between_them() -> None:
    assert solid_pitch_mm(1.0, 1.0) == solid_pitch_mm(1.0, 1.5) == 0.0


@given(st.floats(0.05, 0.3), st.floats(5.0, 15.0), st.floats(1.1, 3.0))
def test_the_rate_of_cones_in_series_is_that_before_any_coil_closes(d: float, index: float, widening: float) -> None:
    """However soft they are: under a newton a thin one may be closed already."""
    half = Cone(d, d * index, d * index * widening, 5.0, 0.1 * d, G_MPA)
    alone = rate_n_per_mm(d, d * index, d * index * widening, 5.0, G_MPA)
    assert series_rate_n_per_mm([half, half]) == pytest.approx(alone / 2)
    assert series_rate_n_per_mm([half]) == pytest.approx(alone)


@given(st.floats(5.0, 15.0), st.floats(1.0, 10.0))
def test_the_rate_holds_down_to_where_the_largest_coil_closes_and_no_further(small: float, wider: float) -> None:
    spring = cone(small, small + wider, 2.0)
    told = describe(spring)
    at_edge, below = (told.free_length_mm - told.even_down_to_mm) * told.rate_n_per_mm, told.even_down_to_mm - 0.5
    assert told.closing[0].length_mm < told.even_down_to_mm
    assert force_at(spring, told.even_down_to_mm) == pytest.approx(at_edge)
    assert force_at(spring, below) > at_edge + 0.5 * told.rate_n_per_mm


def force_at(spring: ConicalSpring, length_mm: float) -> float:
    force = describe(spring, [length_mm]).at[0].force_n
    assert force is not None
    return force
