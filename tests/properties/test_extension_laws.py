"""Laws that the mechanics of extension springs obey whatever the numbers."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.materials import find
from sourcing.springs import extension, hooks, initial_tension, pulled
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.strength import Place, permissible

G_MPA, E_MPA = 81_500.0, 206_000.0
WIRE, STAINLESS, BRASS = (find(name) for name in ("music-wire", "stainless-1.4310", "brass"))
assert WIRE is not None
assert STAINLESS is not None
assert BRASS is not None

wires = st.floats(0.1, 10.0)
indices = st.floats(4.0, 20.0)
coils = st.floats(3.0, 100.0)
forces = st.floats(0.01, 1e4)
factors = st.floats(1.01, 10.0)
bent = st.sampled_from([kind for kind in Hooks if kind is not Hooks.THREADED_PLUG])


def spring(d: float = 1.0, index: float = 12.0, kind: Hooks = Hooks.FULL_LOOP, **changes: object) -> ExtensionSpring:
    """Twenty coils of music wire with hooks as high as 0.9 of the inside; initial tension 3 N."""
    high = 0.9 * (index - 1) * d
    whole = ExtensionSpring(
        d, index * d, 21 * d + 2 * high, 20.0, 20.0, kind, WIRE, G_MPA, E_MPA, 2000.0, 3.0
    )  # fmt: skip
    return replace(whole, **changes)  # type: ignore[arg-type]


def close(value: float) -> object:
    return pytest.approx(value, rel=1e-9)


class TestBody:
    @given(wires, indices, coils, factors)
    def test_the_rate_goes_with_the_fourth_power_of_the_wire_and_against_diameter_cubed_and_coils(
        self, d: float, index: float, n: float, factor: float
    ) -> None:
        rate = extension.rate_n_per_mm(d, d * index, n, G_MPA)
        assert extension.rate_n_per_mm(factor * d, d * index, n, G_MPA) == close(factor**4 * rate)
        assert extension.rate_n_per_mm(d, factor * d * index, n, G_MPA) == close(rate / factor**3)
        assert extension.rate_n_per_mm(d, d * index, factor * n, G_MPA) == close(rate / factor)

    @given(forces, st.floats(0.001, 100.0), st.floats(0.0, 500.0))
    def test_force_and_extension_are_inverse(self, tension: float, rate: float, pulled_mm: float) -> None:
        force = extension.force_n(tension, rate, pulled_mm)
        assert extension.extension_mm(force, tension, rate) == pytest.approx(pulled_mm, rel=1e-6, abs=1e-6)
        assert extension.force_n(tension, rate, 0.0) == tension

    @given(wires, indices, forces)
    def test_initial_stress_and_tension_are_inverse(self, d: float, index: float, tension: float) -> None:
        stress = extension.initial_stress_mpa(tension, d, d * index)
        assert extension.initial_tension_n(stress, d, d * index) == close(tension)

    @given(wires, coils, st.floats(1.0, 200.0))
    def test_hooks_and_body_make_the_free_length(self, d: float, n: float, hook: float) -> None:
        body = extension.body_length_mm(n, d)
        assert extension.hook_length_mm(extension.free_length_mm(body, hook), body) == pytest.approx(hook, rel=1e-6)

    def test_counted_hooks_make_it_softer_by_four_tenths_of_a_coil_in_steel(self) -> None:
        assert extension.active_coils_with_hooks(20.0, G_MPA, E_MPA) - 20.0 == pytest.approx(0.3956, abs=5e-5)


class TestInitialTension:
    @given(st.floats(4.0, 19.9), st.floats(500.0, 3000.0))
    def test_a_mandrel_holds_more_than_a_machine_and_less_the_larger_the_index(self, index: float, rm: float) -> None:
        wound, coiled = (
            of(index, rm)
            for of in (initial_tension.initial_stress_wound_mpa, initial_tension.initial_stress_coiled_mpa)
        )
        assert wound > coiled > 0.0
        assert initial_tension.initial_stress_wound_mpa(index + 0.1, rm) < wound

    @given(st.floats(4.0, 16.0))
    def test_the_preferred_range_lies_above_nothing_and_falls_as_the_index_grows(self, index: float) -> None:
        middle, half = (
            of(index)
            for of in (initial_tension.initial_stress_preferred_mpa, initial_tension.initial_stress_either_side_mpa)
        )
        assert 0.0 < half < middle
        assert initial_tension.initial_stress_preferred_mpa(index + 0.1) < middle
        assert initial_tension.initial_stress_either_side_mpa(index + 0.1) < half

    def test_what_is_stated_is_believed_within_15_per_cent(self) -> None:
        told = initial_tension.tension_of(spring())
        assert told.stated
        assert (told.low_n, told.likely_n, told.high_n) == (close(2.55), 3.0, close(3.45))

    @given(wires, st.floats(4.0, 16.0))
    def test_what_is_not_stated_lies_in_the_middle_of_all_that_the_sources_have(self, d: float, index: float) -> None:
        told = initial_tension.tension_of(spring(d, index, initial_tension_n=None))
        stresses = [
            initial_tension.initial_stress_coiled_mpa(index, 2000.0),
            initial_tension.initial_stress_wound_mpa(index, 2000.0),
            *(
                initial_tension.initial_stress_preferred_mpa(index)
                + side * initial_tension.initial_stress_either_side_mpa(index)
                for side in (-1.0, 1.0)
            ),
        ]
        low, high = (extension.initial_tension_n(stress, d, d * index) for stress in (min(stresses), max(stresses)))
        assert not told.stated
        assert (told.low_n, told.high_n) == (close(low), close(high))
        assert told.likely_n == close((low + high) / 2)
        assert told.most_n == close(high)

    @pytest.mark.parametrize(
        ("changes", "sources"),
        [
            ({}, 2),
            ({"tensile_strength_mpa": None}, 1),
            ({"material": STAINLESS}, 2),
            ({"material": BRASS}, 1),
            ({"mean_diameter_mm": 18.0}, 1),
            ({"mean_diameter_mm": 16.0}, 2),
            ({"mean_diameter_mm": 4.0}, 2),
            ({"mean_diameter_mm": 3.9}, 0),
        ],
        ids=str,
    )
    def test_a_source_speaks_only_of_what_it_covers(self, changes: dict[str, object], sources: int) -> None:
        """EN of an index of 4 to 20 and a known strength, US makers of steel and stainless wire and 4 to 16."""
        unstated = spring(initial_tension_n=None, **changes)
        assert len(initial_tension.ranges_of(unstated)) == sources

    def test_of_stainless_wire_us_makers_have_85_per_cent(self) -> None:
        of_steel, of_stainless = (
            initial_tension.ranges_of(spring(material=material))[1] for material in (WIRE, STAINLESS)
        )
        assert of_stainless.low_n / of_steel.low_n == close(0.85)
        assert of_stainless.high_n / of_steel.high_n == close(0.85)

    def test_where_no_source_covers_a_spring_nothing_is_known_of_the_most(self) -> None:
        told = initial_tension.tension_of(spring(index=3.0, initial_tension_n=None))
        assert (told.likely_n, told.low_n, told.high_n, told.most_n) == (0.0, 0.0, 0.0, None)


class TestHooks:
    @given(st.floats(2.0, 40.0), factors)
    def test_a_wider_loop_or_bend_is_stressed_less(self, index: float, factor: float) -> None:
        for of in (hooks.loop_factor, hooks.bend_factor):
            assert of(index) > of(factor * index) > 1.0

    @given(wires, indices, forces, factors)
    def test_the_stresses_of_a_hook_go_with_the_force(
        self, d: float, index: float, force: float, factor: float
    ) -> None:
        for of in (hooks.bending_stress_mpa, hooks.torsion_stress_mpa):
            assert of(factor * force, d, d * index, 1.1) == close(factor * of(force, d, d * index, 1.1))

    @given(st.floats(2.0, 50.0), st.floats(1.0, 100.0))
    def test_an_extended_hook_takes_its_shank_beside_three_quarters_of_a_coil(self, mean: float, high: float) -> None:
        coil = hooks.hook_wire_mm(Hooks.FULL_LOOP, mean, high)
        shank = max(0.0, high - mean / 2)
        assert hooks.hook_wire_mm(Hooks.EXTENDED_HOOK, mean, high) == close(0.75 * coil + shank)
        assert hooks.hook_wire_mm(Hooks.HALF_LOOP, mean, high) == close(coil / 2)
        assert hooks.hook_wire_mm(Hooks.THREADED_PLUG, mean, high) == 0.0


class TestWhole:
    @given(wires, indices, bent)
    def test_at_the_largest_safe_force_one_part_is_at_its_limit_and_none_beyond(
        self, d: float, index: float, kind: Hooks
    ) -> None:
        whole = spring(d, index, kind)
        force = pulled.largest_safe_force_n(whole)
        assert force is not None
        used = [force * part.mpa_per_n / (2000.0 * permissible(part.place, WIRE).share) for part in pulled.parts(whole)]
        assert max(used) == close(1.0)

    @given(wires, indices)
    def test_a_plug_leaves_only_the_body_to_break(self, d: float, index: float) -> None:
        assert [part.place for part in pulled.parts(spring(d, index, Hooks.THREADED_PLUG))] == [Place.BODY]

    def test_the_hook_of_an_ordinary_spring_breaks_before_its_body(self) -> None:
        assert pulled.breaks_first(spring()).place in (Place.HOOK_BENDING, Place.HOOK_TORSION)

    @given(wires, indices)
    def test_side_hooks_load_the_body_twice_as_hard(self, d: float, index: float) -> None:
        beside, over = (pulled.parts(spring(d, index, kind))[0] for kind in (Hooks.SIDE_HOOK, Hooks.FULL_LOOP))
        assert beside.mpa_per_n == close(2 * over.mpa_per_n)

    @given(st.floats(0.1, 100.0))
    def test_pulled_it_has_its_tension_and_its_rate_and_at_rest_nothing(self, more_mm: float) -> None:
        whole = spring()
        rate, free = pulled.rate_n_per_mm(whole), whole.free_length_mm
        at = pulled.at_length(whole, free + more_mm)
        assert at.force_n == close(3.0 + rate * more_mm)
        assert at.corrected_stress_mpa > at.shear_stress_mpa > 0.0
        assert at.hook_bending_stress_mpa is not None
        assert at.hook_torsion_stress_mpa is not None
        for length in (free, free - more_mm):
            assert pulled.at_length(whole, length).force_n == 0.0

    def test_the_hooks_stand_where_the_free_length_puts_them(self) -> None:
        assert pulled.body_length_mm(spring()) == close(21.0)
        assert pulled.hook_length_mm(spring()) == close(0.9 * 11.0)

    def test_the_largest_safe_length_is_where_the_largest_safe_force_is(self) -> None:
        whole = spring()
        rate, force = pulled.rate_n_per_mm(whole), pulled.largest_safe_force_n(whole)
        length = pulled.largest_safe_length_mm(whole, rate, 3.0)
        assert force is not None
        assert length is not None
        assert pulled.force_n(whole, length, rate, 3.0) == close(force)

    def test_past_its_limit_at_rest_it_may_not_be_pulled_at_all(self) -> None:
        weak = spring(tensile_strength_mpa=50.0)
        assert pulled.largest_safe_length_mm(weak, pulled.rate_n_per_mm(weak), 300.0) == weak.free_length_mm

    def test_without_a_known_strength_nothing_is_said_to_be_safe(self) -> None:
        unknown = spring(tensile_strength_mpa=None)
        assert pulled.largest_safe_force_n(unknown) is None
        assert pulled.largest_safe_length_mm(unknown, 1.0, 3.0) is None
