"""What heat takes from a spring's force."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.materials import find, names
from sourcing.materials.model import Material
from sourcing.springs.warmth import left_of_force, modulus_at_mpa, relaxed_at_most

wires = st.sampled_from(names())


def wire(name: str = "music-wire") -> Material:
    found = find(name)
    assert found is not None
    return found


@given(st.floats(10_000.0, 220_000.0), st.floats(0.0001, 0.0005), st.floats(-50.0, 300.0), st.floats(0.0, 50.0))
def test_a_modulus_falls_with_heat(modulus: float, fall: float, temperature: float, warmer: float) -> None:
    assert modulus_at_mpa(modulus, fall, temperature + warmer) <= modulus_at_mpa(modulus, fall, temperature)
    assert modulus_at_mpa(modulus, fall, 20.0) == modulus


@given(wires, st.floats(-20.0, 93.0))
def test_what_is_left_lies_between_two_shares_and_never_more_than_all_where_it_is_warm(name: str, at_c: float) -> None:
    left = left_of_force(wire(name), at_c)
    assert left is not None
    low, high = left
    assert 0.85 < low <= high
    assert high <= 1.0 or at_c < 20.0


@given(wires)
def test_at_room_temperature_nothing_is_lost(name: str) -> None:
    assert left_of_force(wire(name), 20.0) == (1.0, 1.0)
    assert relaxed_at_most(wire(name), 20.0) == 0.0


@given(wires, st.floats(0.0, 300.0), st.floats(0.0, 50.0))
def test_the_warmer_the_more_it_relaxes(name: str, at_c: float, warmer: float) -> None:
    cooler, hotter = (relaxed_at_most(wire(name), each) for each in (at_c, at_c + warmer))
    assert hotter is None or (cooler is not None and cooler <= hotter <= 0.05)


def test_above_the_greatest_temperature_nobody_knows_what_is_left() -> None:
    assert relaxed_at_most(wire(), 100.0) == 0.05
    assert relaxed_at_most(wire(), 100.1) is None
    assert left_of_force(wire(), 150.0) is None


def test_of_a_keepers_own_material_nothing_is_known_where_it_is_warm() -> None:
    own = replace(wire("brass"), service_high_c=None, modulus_fall=None)
    assert relaxed_at_most(own, 50.0) is None
    assert left_of_force(own, 15.0) is None


@pytest.mark.parametrize(("name", "left"), [("music-wire", (0.922, 0.980)), ("stainless-1.4310", (0.952, 0.978))])
def test_at_a_hundred_degrees(name: str, left: tuple[float, float]) -> None:
    """Music wire: 2.0 to 2.9 % of the modulus, and 5 % relaxed at its limit. 1.4310: 2.2 to 3.2 %, and 1.7 %."""
    assert left_of_force(wire(name), 100.0) == pytest.approx(left, abs=0.001)
