"""`describe`: its keys, its nulls, and the notes that say why."""

from __future__ import annotations

from dataclasses import fields, replace

import pytest

from sourcing.materials import find
from sourcing.springs.compression import curvature_factor
from sourcing.springs.describe import Description, describe
from sourcing.springs.model import CompressionSpring, Ends
from sourcing.springs.pressed import AtLength

WIRE = find("music-wire")
assert WIRE is not None

SPRING = CompressionSpring(
    wire_diameter_mm=0.9,
    mean_diameter_mm=8.7,
    free_length_mm=32.0,
    active_coils=7.75,
    total_coils=9.75,
    ends=Ends.CLOSED_GROUND,
    material=WIRE,
    shear_modulus_mpa=WIRE.shear_modulus_mpa,
    elastic_modulus_mpa=WIRE.elastic_modulus_mpa,
    tensile_strength_mpa=2270.0,
)


def notes_with(word: str, described: Description) -> list[str]:
    return [note for note in described.notes if word in note]


def test_the_fields_are_the_keys_of_the_command() -> None:
    """The contract's keys for a compression spring (all but the id, which is the record's), and five more."""
    contract = (
        "kind material wire_diameter_mm mean_diameter_mm outside_diameter_mm inside_diameter_mm spring_index"
        " active_coils total_coils free_length_mm solid_length_mm pitch_mm rate_n_per_mm force_at_solid_n"
        " shear_stress_at_solid_mpa tensile_strength_mpa wire_length_mm mass_g natural_frequency_hz"
        " buckling_length_mm at notes"
    )
    more = {"diameter_growth_mm", "minimum_gaps_mm", "end_1", "end_2", "endurance"}
    at = {"length_mm", "force_n", "shear_stress_mpa", "corrected_stress_mpa"}
    assert {field.name for field in fields(Description)} == {*contract.split(), *more}
    assert {field.name for field in fields(AtLength)} == at


def test_the_corrected_stress_carries_the_factor_for_curvature() -> None:
    (at,) = describe(SPRING, [14.0]).at
    assert at.shear_stress_mpa is not None
    assert at.corrected_stress_mpa == pytest.approx(curvature_factor(8.7 / 0.9) * at.shear_stress_mpa)


def test_the_lengths_stay_in_the_order_asked() -> None:
    assert [at.length_mm for at in describe(SPRING, [14.0, 24.0, 20.0]).at] == [14.0, 24.0, 20.0]


def test_the_rate_follows_from_the_dimensions_and_the_modulus_stated_for_the_spring() -> None:
    softer = replace(SPRING, shear_modulus_mpa=0.9 * SPRING.shear_modulus_mpa)
    assert describe(softer).rate_n_per_mm == pytest.approx(0.9 * describe(SPRING).rate_n_per_mm)


def test_longer_than_free_the_force_is_nothing_and_it_is_said() -> None:
    described = describe(SPRING, [40.0])
    assert described.at == (AtLength(40.0, 0.0, 0.0, 0.0),)
    assert notes_with("loose", described) == ["At 40 mm it is loose: it is 32 mm long at rest."]


def test_shorter_than_solid_the_force_is_unknown_and_it_is_said() -> None:
    described = describe(SPRING, [8.0])
    assert described.at == (AtLength(8.0, None, None, None),)
    assert notes_with("pressed to", described) == ["It cannot be pressed to 8 mm: it is solid at 8.78 mm."]


def test_at_the_solid_length_itself_the_force_is_that_at_solid() -> None:
    described = describe(SPRING, [8.775])
    assert described.at[0].force_n == pytest.approx(described.force_at_solid_n)


def test_a_wire_outside_the_table_has_no_strength_and_it_is_said() -> None:
    described = describe(replace(SPRING, tensile_strength_mpa=None))
    assert described.tensile_strength_mpa is None
    assert notes_with("strength", described) == [
        "The strength of music-wire is not listed for a wire of 0.9 mm: what stress it stands is not known."
    ]


def test_a_spring_that_takes_a_set_when_pressed_solid_says_so() -> None:
    """EN 13906-1 clause 10: 0.56 of the least tensile strength, uncorrected stress."""
    assert not notes_with("set", describe(SPRING))
    described = describe(replace(SPRING, free_length_mm=45.0))
    assert notes_with("set", described) == [
        f"Pressed solid it will take a set: the stress there is {described.shear_stress_at_solid_mpa:.0f} MPa, "
        "and EN 13906-1 allows 1271 MPa (0.56 of the wire's least strength)."
    ]


@pytest.mark.parametrize(("mean", "said"), [(3.5, True), (3.6, False), (18.0, False), (18.2, True)])
def test_an_index_outside_4_to_20_is_said(mean: float, said: bool) -> None:
    assert bool(notes_with("spring index", describe(replace(SPRING, mean_diameter_mm=mean)))) is said


def test_an_index_of_4_worked_out_from_the_outside_diameter_is_inside() -> None:
    spring = replace(SPRING, wire_diameter_mm=0.56, mean_diameter_mm=2.8 - 0.56)
    assert spring.spring_index < 4.0
    assert not notes_with("spring index", describe(spring))


@pytest.mark.parametrize(("coils", "said"), [(1.75, True), (2.0, False)])
def test_fewer_than_2_active_coils_are_said(coils: float, said: bool) -> None:
    spring = replace(SPRING, active_coils=coils, total_coils=coils + 2.0)
    assert bool(notes_with("active coils", describe(spring))) is said


def test_a_spring_that_is_solid_at_rest_is_said() -> None:
    described = describe(replace(SPRING, free_length_mm=8.0))
    assert described.force_at_solid_n == 0.0
    assert notes_with("at rest", described) == [
        "It cannot be pressed: 8 mm long at rest, it would be solid at 8.78 mm already."
    ]


class TestBuckling:
    def test_a_slender_spring_says_below_which_length_and_how_its_ends_are_taken(self) -> None:
        described = describe(replace(SPRING, free_length_mm=60.0))
        assert described.buckling_length_mm is not None
        assert 8.775 < described.buckling_length_mm < 60.0
        (note,) = notes_with("buckle", described)
        assert f"below {described.buckling_length_mm:.2f} mm with both ends flat and guided square (assumed)" in note

    def test_a_spring_that_only_buckles_on_a_tilting_end_says_so(self) -> None:
        described = describe(SPRING)
        assert described.buckling_length_mm is None
        (note,) = notes_with("buckle", described)
        assert note.endswith("both free to tilt, it may below 24.39 mm.")

    def test_a_stout_spring_has_nothing_to_say(self) -> None:
        described = describe(replace(SPRING, free_length_mm=20.0))
        assert described.buckling_length_mm is None
        assert not notes_with("buckle", described)

    def test_a_spring_that_is_solid_before_it_could_buckle_does_not_buckle(self) -> None:
        many = replace(SPRING, free_length_mm=60.0, active_coils=58.0, total_coils=60.0)
        assert describe(many).buckling_length_mm is None
