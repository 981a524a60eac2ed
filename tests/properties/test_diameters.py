"""Inside, mean and outside diameter lie a wire apart in every kind of spring, and the index is that of the mean."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from sourcing.materials import find
from sourcing.springs.model import (
    CompressionSpring,
    ConicalSpring,
    Ends,
    ExtensionSpring,
    Hooks,
    TorsionSpring,
)

WIRE = find("music-wire")
assert WIRE is not None

PRESSED = CompressionSpring(1.0, 12.0, 40.0, 6.0, 8.0, Ends.CLOSED, WIRE, 81_500.0, 206_000.0, None)
CONE = ConicalSpring(1.0, 8.0, 14.0, 40.0, 6.0, 8.0, Ends.CLOSED, WIRE, 81_500.0, 206_000.0, None)
PULLED = ExtensionSpring(1.0, 12.0, 40.0, 20.0, 20.0, Hooks.FULL_LOOP, WIRE, 81_500.0, 206_000.0, None)
TURNED = TorsionSpring(1.0, 12.0, 5.0, WIRE, 206_000.0, None)

wires = st.floats(0.125, 8.0)
means = st.floats(10.0, 100.0)


@given(wires, means, st.sampled_from([PRESSED, PULLED, TURNED]))
def test_of_a_cylinder(wire: float, mean: float, shape: CompressionSpring | ExtensionSpring | TorsionSpring) -> None:
    spring = replace(shape, wire_diameter_mm=wire, mean_diameter_mm=mean)
    assert spring.outside_diameter_mm == mean + wire
    assert spring.inside_diameter_mm == mean - wire
    assert spring.spring_index == mean / wire


@given(wires, means, means)
def test_of_a_cone_at_both_its_ends(wire: float, small: float, large: float) -> None:
    spring = replace(CONE, wire_diameter_mm=wire, mean_diameter_small_mm=small, mean_diameter_large_mm=large)
    assert (spring.inside_diameter_small_mm, spring.outside_diameter_small_mm) == (small - wire, small + wire)
    assert (spring.inside_diameter_large_mm, spring.outside_diameter_large_mm) == (large - wire, large + wire)
    assert spring.mean_diameter_mm == (small + large) / 2
    assert spring.spring_index == (small + large) / 2 / wire


def test_each_kind_ends_hands_and_hooks_are_called_what_a_catalogue_calls_them() -> None:
    assert [shape.kind for shape in (PRESSED, CONE, PULLED, TURNED)] == [
        "compression",
        "conical",
        "extension",
        "torsion",
    ]
    assert [str(ends) for ends in Ends] == ["open", "open-ground", "closed", "closed-ground"]
