"""What a described spring bears: between which lengths or angles its life is told, and what heat leaves."""

from dataclasses import replace

import pytest

from sourcing.springs.describe import describe
from sourcing.springs.endurance import of_pressed, of_pulled, of_turned, service_of
from sourcing.springs.life import Word
from sourcing.springs.model import ExtensionSpring, Hooks, TorsionSpring
from tests.fit.cases import make_cone, make_spring

SPRING = make_spring()
"""31 mm long at rest, solid at 8.78 mm; 885 MPa there, of 2270."""

TURNED = TorsionSpring(1.5, 12.0, 5.0, SPRING.material, SPRING.material.elastic_modulus_mpa, 2080.0)

PULLED = ExtensionSpring(1.2, 12.0, 44.6, 20.0, 20.0, Hooks.FULL_LOOP, SPRING.material, 81500.0, 206000.0, 2150.0, 6.0)
"""A body of 25.2 mm with full loops, an initial tension of 6 N."""


def between(*at_mm: float) -> tuple[float | None, float | None]:
    bears = of_pressed(SPRING, at_mm)
    return bears.lasts_from_mm, bears.lasts_to_mm


class TestBetweenWhichLengths:
    def test_where_none_is_asked_for_from_free_to_solid(self) -> None:
        assert between() == (31.0, pytest.approx(8.775))

    def test_where_one_is_asked_for_from_free_to_there(self) -> None:
        assert between(14.0) == (31.0, 14.0)
        assert between(14.0, 14.0) == (31.0, 14.0)

    def test_where_several_are_asked_for_from_the_longest_to_the_shortest(self) -> None:
        assert between(20.0, 14.0, 24.0) == (24.0, 14.0)

    def test_a_length_that_it_cannot_reach_is_left_out(self) -> None:
        assert between(40.0, 14.0, 5.0) == (31.0, 14.0)
        assert between(40.0, 5.0) == between()


class TestPressed:
    def test_the_spring_of_the_punch_keeps_its_length_and_lasts(self) -> None:
        bears = of_pressed(SPRING, (24.0, 14.0))
        assert (bears.pressed_solid, bears.lasts) == (Word.WELL_WITHIN, Word.MILLIONS)

    def test_a_longer_one_settles_and_lasts_less(self) -> None:
        bears = of_pressed(make_spring(free_length_mm=36.0))
        assert (bears.pressed_solid, bears.lasts) == (Word.SETTLES, Word.THOUSANDS)

    def test_a_still_longer_one_takes_a_set_and_no_life_is_told(self) -> None:
        bears = of_pressed(make_spring(free_length_mm=60.0))
        assert (bears.pressed_solid, bears.lasts) == (Word.WILL_SET, Word.WILL_SET)

    def test_short_of_solid_it_may_be_well_where_solid_is_not(self) -> None:
        bears = of_pressed(make_spring(free_length_mm=60.0), (40.0, 35.0))
        assert (bears.pressed_solid, bears.lasts) == (Word.WILL_SET, Word.MILLIONS)

    @pytest.mark.parametrize(
        "changes", [{"free_length_mm": 8.0}, {"wire_diameter_mm": 25.0, "mean_diameter_mm": 200.0}]
    )
    def test_what_cannot_be_pressed_or_whose_strength_is_not_known_is_not_told(self, changes: dict[str, float]) -> None:
        bears = of_pressed(make_spring(**changes))
        assert (bears.pressed_solid, bears.lasts, bears.lasts_from_mm) == (None, None, None)

    def test_a_cone_is_told_by_the_coil_that_is_stressed_most(self) -> None:
        bears = of_pressed(make_cone())
        assert (bears.pressed_solid, bears.lasts) == (Word.SETTLES, Word.FEW)

    def test_the_description_has_it(self) -> None:
        assert describe(SPRING, [24.0, 14.0]).endurance == of_pressed(SPRING, [24.0, 14.0])
        assert describe(make_cone()).endurance == of_pressed(make_cone())


class TestTurned:
    def test_where_no_angle_is_asked_for_no_life_is_told(self) -> None:
        assert of_turned(TURNED).lasts is None

    @pytest.mark.parametrize(
        ("at_deg", "lasts"),
        [
            ((60.0,), (Word.MILLIONS, 0.0, 60.0)),
            ((30.0, 60.0), (Word.MILLIONS, 30.0, 60.0)),
            ((-30.0, 60.0), (Word.MILLIONS, 0.0, 60.0)),
            ((85.0,), (Word.TENS_OF_THOUSANDS, 0.0, 85.0)),
            ((120.0,), (Word.WILL_SET, 0.0, 120.0)),
            ((200.0,), (Word.WILL_BREAK, 0.0, 200.0)),
        ],
    )
    def test_it_is_wound_up_between_the_angles_asked_for(
        self, at_deg: tuple[float, ...], lasts: tuple[Word, float, float]
    ) -> None:
        bears = of_turned(TURNED, at_deg)
        assert (bears.lasts, bears.lasts_from_deg, bears.lasts_to_deg) == lasts

    def test_of_wire_whose_strength_is_not_known_nothing_is_told(self) -> None:
        assert of_turned(replace(TURNED, tensile_strength_mpa=None), (60.0,)).lasts is None


def test_what_heat_leaves_of_a_keepers_own_wire_is_not_known() -> None:
    own = replace(SPRING.material, service_low_c=None, service_high_c=None, modulus_fall=None)
    service = service_of(own)
    assert (service.high_c, service.force_left_low) == (None, None)


class TestPulled:
    def test_the_hook_gives_way_before_the_body(self) -> None:
        bears = of_pulled(PULLED, (50.0, 55.0))
        assert (bears.lasts_from_mm, bears.lasts_to_mm) == (50.0, 55.0)
        assert bears.lasts in (Word.MILLIONS, Word.HUNDREDS_OF_THOUSANDS)
        assert bears.gives_way_first is not None

    def test_a_spring_screwed_on_a_plug_gives_way_in_its_body(self) -> None:
        plugged = replace(PULLED, hooks=Hooks.THREADED_PLUG)
        assert of_pulled(plugged, (64.6,)).gives_way_first == "the body, by torsion of its coils"

    def test_where_no_length_is_asked_for_it_is_pulled_from_free_to_what_is_safe(self) -> None:
        bears, safe_mm = of_pulled(PULLED), describe(PULLED).largest_safe_length_mm
        assert (bears.lasts_from_mm, bears.lasts_to_mm) == (44.6, safe_mm)
        assert bears.lasts not in (Word.WILL_SET, Word.WILL_BREAK, None)

    @pytest.mark.parametrize(("length_mm", "word"), [(110.0, Word.WILL_SET), (160.0, Word.WILL_BREAK)])
    def test_past_what_is_safe_it_takes_a_set_and_at_last_it_breaks(self, length_mm: float, word: Word) -> None:
        assert of_pulled(PULLED, (length_mm,)).lasts is word

    def test_a_length_at_which_it_is_loose_counts_as_free(self) -> None:
        assert of_pulled(PULLED, (30.0, 55.0)).lasts_from_mm == 44.6

    def test_of_wire_whose_strength_is_not_known_nothing_is_told(self) -> None:
        assert of_pulled(replace(PULLED, tensile_strength_mpa=None)).lasts is None
