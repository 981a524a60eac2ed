"""Laws that the mechanics of extension springs obey whatever the numbers."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from sourcing.materials import find
from sourcing.springs import extension, hooks, initial_tension, pulled
from sourcing.springs.describe import describe
from sourcing.springs.initial_tension import tension_of
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.strength import Place
from sourcing.winding.extension.hand_tension import hand_tension_n

G_MPA = 81_500.0
STEEL = find("music-wire")
assert STEEL is not None

wires = st.floats(0.1, 10.0)
indices = st.floats(4.0, 20.0)
coils = st.floats(3.0, 200.0)
forces = st.floats(0.001, 5_000.0)
factors = st.floats(1.01, 10.0)
lengths = st.floats(0.5, 2000.0)
kinds = st.sampled_from(Hooks)


def close(value: float) -> object:
    return pytest.approx(value, rel=1e-9)


@st.composite
def springs(draw: st.DrawFn) -> ExtensionSpring:
    assert STEEL is not None
    d = draw(st.floats(0.2, 5.0))
    mean, n, kind = d * draw(indices), draw(coils), draw(kinds)
    body = extension.body_length_mm(n, d)
    free = body + 2.0 * draw(st.floats(0.5, 1.5)) * (mean - d)
    tension = draw(st.none() | st.floats(0.01, 5.0))
    return ExtensionSpring(d, mean, free, n, n, kind, STEEL, G_MPA, 206_000.0, 1800.0, tension)


@given(wires, indices, coils, factors)
def test_the_rate_grows_with_the_fourth_power_of_the_wire_and_falls_with_the_third_of_the_diameter(
    d: float, index: float, n: float, factor: float
) -> None:
    mean = d * index
    rate = extension.rate_n_per_mm(d, mean, n, G_MPA)
    assert extension.rate_n_per_mm(factor * d, mean, n, G_MPA) == close(factor**4 * rate)
    assert extension.rate_n_per_mm(d, factor * mean, n, G_MPA) == close(rate / factor**3)
    assert extension.rate_n_per_mm(d, mean, factor * n, G_MPA) == close(rate / factor)


@given(forces, forces, lengths)
def test_force_and_extension_undo_each_other(tension: float, rate: float, pulled_mm: float) -> None:
    force = extension.force_n(tension, rate, pulled_mm)
    assert extension.extension_mm(force, tension, rate) == pytest.approx(pulled_mm, rel=1e-6)


@given(forces, wires, indices)
def test_initial_tension_and_its_stress_undo_each_other(tension: float, d: float, index: float) -> None:
    stress = extension.initial_stress_mpa(tension, d, d * index)
    assert extension.initial_tension_n(stress, d, d * index) == close(tension)


@given(lengths, lengths)
def test_free_length_and_hook_length_undo_each_other(body: float, hook: float) -> None:
    free = extension.free_length_mm(body, hook)
    assert extension.hook_length_mm(free, body) == pytest.approx(hook, rel=1e-6)


@given(st.floats(4.0, 19.9), st.floats(500.0, 3000.0))
def test_a_smaller_index_and_a_stronger_wire_hold_more_and_a_mandrel_winds_more_than_a_machine(
    index: float, tensile: float
) -> None:
    for stress in (initial_tension.initial_stress_wound_mpa, initial_tension.initial_stress_coiled_mpa):
        assert stress(index, tensile) > stress(index + 0.1, tensile)
        assert stress(index, 1.1 * tensile) == close(1.1 * stress(index, tensile))
    wound = initial_tension.initial_stress_wound_mpa(index, tensile)
    assert wound > initial_tension.initial_stress_coiled_mpa(index, tensile)


@given(wires, indices, st.floats(500.0, 3000.0))
def test_what_a_hand_winds_is_banded_from_nothing_and_heat_takes_some_of_it(
    d: float, index: float, tensile: float
) -> None:
    cold, heated = (hand_tension_n(d, d * index, tensile, heated) for heated in (False, True))
    assert (cold.low, heated.low) == (0.0, 0.0)
    assert heated.high == close(0.75 * cold.high)


@given(st.floats(2.0, 50.0))
def test_both_factors_of_a_hook_fall_towards_one_as_it_gets_rounder(index: float) -> None:
    for factor in (hooks.loop_factor, hooks.bend_factor):
        assert factor(index) > factor(1.1 * index) > 1.0


@given(springs())
def test_the_likely_tension_lies_within_its_bounds_and_they_within_the_sources(spring: ExtensionSpring) -> None:
    tension = tension_of(spring)
    assert 0.0 <= tension.low_n <= tension.likely_n <= tension.high_n
    if not tension.stated:
        assert tension.most_n is None or tension.high_n == tension.most_n


@given(springs(), st.floats(1.001, 3.0))
def test_a_spring_pulls_nothing_until_it_is_longer_than_free_and_then_ever_more(
    spring: ExtensionSpring, further: float
) -> None:
    rate, free = pulled.rate_n_per_mm(spring), spring.free_length_mm
    assert pulled.force_n(spring, free, rate, 2.0) == 0.0
    at, beyond = (pulled.force_n(spring, length, rate, 2.0) for length in (further * free, 1.01 * further * free))
    assert 2.0 < at < beyond


@given(springs())
def test_at_its_largest_safe_force_one_part_is_at_its_limit_and_none_is_past_it(spring: ExtensionSpring) -> None:
    force, tensile = pulled.largest_safe_force_n(spring), spring.tensile_strength_mpa
    assert force is not None
    assert tensile is not None
    used = [force * part.mpa_per_n / (part.share * tensile) for part in pulled.parts(spring)]
    assert max(used) == close(1.0)


@given(springs())
def test_the_hook_breaks_first_but_where_the_pull_is_beside_the_axis_or_there_is_no_hook(
    spring: ExtensionSpring,
) -> None:
    first = pulled.breaks_first(spring).place
    if spring.hooks in (Hooks.THREADED_PLUG, Hooks.SIDE_HOOK):
        assert first is Place.BODY
    else:
        assert first is not Place.BODY


@given(springs(), factors)
def test_everything_scales_with_size(spring: ExtensionSpring, factor: float) -> None:
    """Twice as large in every length: twice as stiff, four times the force at the same stress."""
    assume(spring.initial_tension_n is not None)
    assert spring.initial_tension_n is not None
    larger = replace(
        spring,
        wire_diameter_mm=factor * spring.wire_diameter_mm,
        mean_diameter_mm=factor * spring.mean_diameter_mm,
        free_length_mm=factor * spring.free_length_mm,
        initial_tension_n=factor**2 * spring.initial_tension_n,
    )
    one, other = describe(spring, [1.5 * spring.free_length_mm]), describe(larger, [1.5 * larger.free_length_mm])
    assert other.rate_n_per_mm == close(factor * one.rate_n_per_mm)
    assert other.at[0].force_n == close(factor**2 * one.at[0].force_n)
    assert other.at[0].shear_stress_mpa == close(one.at[0].shear_stress_mpa)
    assert other.wire_length_mm == close(factor * one.wire_length_mm)
    assert other.largest_safe_force_n == close(factor**2 * (one.largest_safe_force_n or 0.0))
