"""The springback of a coil: known answers, laws, and the section integrated independently.

Known answers: derived for this project, twice and independently (hand-checked cases of the winding model).
"""

from __future__ import annotations

from math import inf, log10, pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from sourcing.springs import geometry
from sourcing.winding import springback, turns
from sourcing.winding.pitch_share import PITCH_SHARE

STRAINS = st.floats(0.002, 0.02)
INDICES = st.floats(2.2, 60.0)
PULLS = st.floats(0.0, 0.5)

SH_AT_0_8_MPA = 2220 - 820 * log10(0.8)
"""EN 10270-1, SH: the formula of the least tensile strength, 2299 MPa at 0.8 mm."""

FLOW_STRAIN = 1.08 * SH_AT_0_8_MPA / 206000


def test_the_known_mandrel_of_a_9_6_mm_spring_of_0_8_mm_music_wire() -> None:
    mandrel_mm = springback.mandrel_index(9.6 / 0.8, FLOW_STRAIN) * 0.8 - 0.8
    assert pytest.approx(0.012055, abs=5e-7) == FLOW_STRAIN
    assert mandrel_mm == pytest.approx(6.917, abs=5e-4)
    assert 9.6 / (mandrel_mm + 0.8) == pytest.approx(1.2439, abs=5e-5)
    assert 8.8 / mandrel_mm == pytest.approx(1.2721, abs=5e-4)  # printed from the mandrel rounded to 0.001 mm


def test_a_coil_of_8_9_mm_from_a_6_mm_mandrel_shows_2302_mpa() -> None:
    assert springback.flow_strain_shown(6.8 / 0.8, 8.1 / 0.8) * 206000 == pytest.approx(2302, abs=0.5)


@pytest.mark.parametrize("surface_strain", [1.0, 1.3, 2.0, 8.0, 40.0])
def test_the_moment_equals_the_stress_summed_over_a_round_section(surface_strain: float) -> None:
    def slice_moment(y: float) -> float:
        return max(-1.0, min(1.0, surface_strain * y)) * y * 2 * sqrt(1 - y * y)

    moment, _ = quad(slice_moment, 0, 1, points=[1 / surface_strain], epsabs=1e-13)
    assert springback.moment_ratio(surface_strain) == pytest.approx(2 * moment / (pi / 4), rel=1e-9)


@pytest.mark.parametrize("pull_fraction", [0.05, 0.1, 0.2, 0.3, 0.5])
def test_pulled_wire_keeps_the_moment_that_its_yielding_section_gives(pull_fraction: float) -> None:
    """The neutral axis that balances the pull, found by bisection on the areas; the moment about the centre."""

    def area_between(a: float, b: float) -> float:
        return quad(lambda y: 2 * sqrt(1 - y * y), a, b, epsabs=1e-12)[0]

    low, high = -1.0, 0.0
    for _ in range(50):
        axis = (low + high) / 2
        if area_between(axis, 1) - area_between(-1, axis) > pull_fraction * pi:
            low = axis
        else:
            high = axis
    moment = 2 * quad(lambda y: 2 * y * sqrt(1 - y * y), axis, 1, epsabs=1e-12)[0]
    assert springback.moment_kept(pull_fraction) == pytest.approx(moment / (4 / 3), rel=1e-6)


@given(STRAINS, INDICES)
def test_from_the_mandrel_to_the_spring_and_back_is_where_it_began(strain: float, index: float) -> None:
    on_mandrel = springback.mandrel_index(index, strain)
    assert on_mandrel < index
    assert springback.released_index(on_mandrel, strain) == pytest.approx(index, rel=1e-9)
    assert springback.flow_strain_shown(on_mandrel, index) == pytest.approx(strain, rel=1e-6)


@given(STRAINS, INDICES, PULLS, PULLS)
def test_more_back_tension_makes_a_smaller_spring(strain: float, index: float, pull: float, more: float) -> None:
    on_mandrel = springback.mandrel_index(index, strain)
    light, heavy = sorted((pull, more))
    released = [springback.released_index(on_mandrel, strain, springback.moment_kept(c)) for c in (light, heavy)]
    assert released[1] <= released[0] * (1 + 1e-12)
    if heavy > light + 0.01:
        assert released[1] < released[0]


@given(STRAINS, INDICES, PULLS)
def test_the_mandrel_for_wire_wound_under_a_pull_gives_the_spring(strain: float, index: float, pull: float) -> None:
    kept = springback.moment_kept(pull)
    on_mandrel = springback.mandrel_index(index, strain, kept)
    assert springback.released_index(on_mandrel, strain, kept) == pytest.approx(index, rel=1e-9)


@given(STRAINS, INDICES)
def test_the_root_lies_between_one_and_1_6977_above_the_elastic_strain(strain: float, index: float) -> None:
    x_f = 1 / (strain * index)
    x = 1 / (strain * springback.mandrel_index(index, strain))
    assert x_f + 1 <= x + 1e-9
    assert x <= x_f + springback.FULLY_PLASTIC + 1e-9


@given(STRAINS, st.floats(3.0, 40.0))
def test_the_sensitivities_are_the_slopes(strain: float, index: float) -> None:
    on_mandrel, h = springback.mandrel_index(index, strain), 1e-5
    by_stress = springback.released_index(on_mandrel, strain * (1 + h)) / springback.released_index(
        on_mandrel, strain * (1 - h)
    )
    by_mandrel = springback.released_index(on_mandrel * (1 + h), strain) / springback.released_index(
        on_mandrel * (1 - h), strain
    )
    assert springback.stress_sensitivity(on_mandrel, strain) == pytest.approx((by_stress - 1) / (2 * h), rel=1e-3)
    assert springback.mandrel_sensitivity(on_mandrel, strain) == pytest.approx((by_mandrel - 1) / (2 * h), rel=1e-3)


@given(STRAINS, st.floats(1.0, 3.0))
def test_wire_that_has_not_yielded_on_its_mandrel_opens_fully(strain: float, beyond: float) -> None:
    assert springback.released_index(beyond / strain * (1 + 1e-9), strain) == inf


def test_a_coil_no_larger_than_on_its_mandrel_shows_no_flow_stress() -> None:
    with pytest.raises(ValueError, match="has not opened"):
        springback.flow_strain_shown(10.0, 10.0)


def test_a_pull_beyond_the_yield_force_is_refused() -> None:
    with pytest.raises(ValueError, match="between 0 and 1"):
        springback.moment_kept(1.0)


@pytest.mark.parametrize(
    ("wire_mm", "moment_n_m"), [(0.5, 0.06), (0.8, 0.21), (1.0, 0.40), (1.5, 1.26), (2.0, 2.84), (3.0, 8.9)]
)
def test_the_crank_moments_of_music_wire(wire_mm: float, moment_n_m: float) -> None:
    """The winding model's figures, rounded as printed there."""
    flow_stress_mpa = 1.08 * (2220 - 820 * log10(wire_mm))
    assert springback.plastic_moment_n_mm(flow_stress_mpa, wire_mm) / 1000 == pytest.approx(
        moment_n_m, abs=0.006 if wire_mm < 3 else 0.06
    )


@pytest.mark.parametrize(("wire_mm", "turns_back", "energy_j"), [(0.8, 1.95, 1.3), (2.0, 1.68, 15.0)])
def test_eight_coils_of_index_12_drive_the_crank_back(wire_mm: float, turns_back: float, energy_j: float) -> None:
    """The winding model's figures, rounded as printed there."""
    flow_stress_mpa = 1.08 * (2220 - 820 * log10(wire_mm))
    back = 8 * (12 / springback.mandrel_index(12, flow_stress_mpa / 206000) - 1)
    moment = springback.plastic_moment_n_mm(flow_stress_mpa, wire_mm)
    assert back == pytest.approx(turns_back, abs=0.005)
    assert turns.energy_let_go_n_mm(moment, back) / 1000 == pytest.approx(energy_j, abs=0.05)


def test_turns_pitch_and_wire_of_the_worked_example() -> None:
    """d 0.8, D 9.6, 6 + 2 coils, free 26, closed and ground, on 6.96: pitch 3.80, 9.87 turns, 243 mm of wire."""
    pitch_mm = (26 - 2 * 0.8) / 6
    wound_pitch_mm = pitch_mm / turns.pitch_ratio(9.6 / 7.76, PITCH_SHARE)
    assert wound_pitch_mm == pytest.approx(3.80, abs=0.005)
    wound = turns.turns_on_mandrel(6, 2, (9.6, pitch_mm), (7.76, wound_pitch_mm), 0.8)
    assert wound == pytest.approx(9.87, abs=0.005)
    assert geometry.wire_length_mm(0.8, 9.6, pitch_mm, 6, 8) == pytest.approx(243, abs=0.5)


@given(st.floats(2, 30), st.floats(0, 2), st.floats(3, 30), st.floats(1.05, 1.6), st.floats(0.3, 2))
def test_the_wire_on_the_mandrel_is_as_long_as_the_wire_in_the_spring(
    active: float, dead: float, mandrel_mean_mm: float, opening: float, wire_mm: float
) -> None:
    finished, wound = (mandrel_mean_mm * opening, 2 * wire_mm), (mandrel_mean_mm, 1.9 * wire_mm)
    active_wound = turns.turns_on_mandrel(active, 0, finished, wound, wire_mm)
    dead_wound = turns.turns_on_mandrel(0, dead, finished, wound, wire_mm)
    assert active_wound * geometry.turn_length_mm(*wound) == pytest.approx(active * geometry.turn_length_mm(*finished))
    assert dead_wound * geometry.turn_length_mm(wound[0], wire_mm) == pytest.approx(
        dead * geometry.turn_length_mm(finished[0], wire_mm)
    )
    assert active_wound / active == pytest.approx(opening, rel=0.06)
