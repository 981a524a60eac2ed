"""The sentences of a described torsion spring: each is said where it holds, at its edge, and nowhere else."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.materials import find
from sourcing.springs import torsion
from sourcing.springs.describe_torsion import describe_torsion
from sourcing.springs.model import Hand, Leg, LegShape, TorsionSpring

E_MPA = 206_000.0
WIRE = find("music-wire")
assert WIRE is not None

WHOLE = TorsionSpring(1.5, 12.0, 5.0, WIRE, E_MPA, 2080.0, Leg(20.0), Leg(20.0), 90.0, Hand.RIGHT)
"""Of this one all is known, and it is inside every standard."""


def notes(spring: TorsionSpring, *at_deg: float) -> tuple[str, ...]:
    return describe_torsion(spring, at_deg=at_deg).notes


def said(words: str, spring: TorsionSpring, *at_deg: float) -> bool:
    return any(words in note for note in notes(spring, *at_deg))


def test_of_a_spring_of_which_all_is_known_only_the_friction_is_said() -> None:
    (note,) = notes(WHOLE, 30.0)
    assert note == (
        "The rate is the theory's, without friction. Coils that rub on each other and on a rod take up to 6 % of it "
        "(US practice: 10.8 for the theory's 10.19 a turn)."
    )


@pytest.mark.parametrize(
    ("changes", "note"),
    [
        (
            {"mean_diameter_mm": 5.25},
            "The spring index 3.5 is outside the 4 to 20 of EN 13906-3: rate and stress are less sure.",
        ),
        (
            {"active_coils": 1.5},
            "1.5 coils are fewer than the 2 of DIN 2194: rate and stress are less sure.",
        ),
        (
            {"tensile_strength_mpa": None},
            "The strength of music-wire is not listed for a wire of 1.5 mm: how far it may be wound up is not known.",
        ),
        (
            {"hand": None},
            "Its hand is not known, so that it is matched to nothing. To see it, hold the spring upright: the front "
            "wires of a right-hand spring climb to the right, those of a left-hand one to the left.",
        ),
        ({"free_angle_deg": None}, "The angle between its legs at rest is not known."),
        (
            {"leg_1": None},
            "One leg is not given: what is not there bends nothing, and the spring is that much stiffer.",
        ),
        (
            {"leg_2": None},
            "One leg is not given: what is not there bends nothing, and the spring is that much stiffer.",
        ),
        (
            {"leg_1": None, "leg_2": None},
            "No legs are given: what is not there bends nothing, and the spring is that much stiffer.",
        ),
        (
            {"bodies": 2},
            "Two bodies of opposite hand share the torque; the loop between them takes room of its own beside the "
            "length of the bodies.",
        ),
        (
            {"leg_2": Leg(20.0, LegShape.OFFSET)},
            "The whole torque goes through the bend of an offset leg at the coil: bent round its own wire diameter, "
            f"the stress there is {torsion.curvature_factor(3.0):.2f} times the plain one, and it breaks there first.",
        ),
    ],
    ids=str,
)
def test_what_makes_a_figure_unsure_is_said_and_nothing_else(changes: dict[str, object], note: str) -> None:
    assert [each for each in notes(replace(WHOLE, **changes)) if "friction" not in each] == [note]  # type: ignore[arg-type]


@pytest.mark.parametrize(("coils", "few"), [(1.99, True), (2.0, False)])
def test_two_coils_are_enough(coils: float, few: bool) -> None:
    assert said("are fewer than", replace(WHOLE, active_coils=coils)) is few


def test_the_hand_of_two_bodies_is_no_question() -> None:
    assert not said("Its hand is not known", replace(WHOLE, hand=None, bodies=2))


def test_a_spring_is_told_where_its_coils_end_either_way() -> None:
    assert "It cannot be turned to 20000 deg: its inside is closed before." in notes(WHOLE, 20_000.0)
    assert "It cannot be turned to -1800 deg: its coils are straight before." in notes(WHOLE, -1_800.0)


def angle_of(stress_mpa: float, spring: TorsionSpring = WHOLE) -> float:
    """Where the plain bending stress is this."""
    rate = describe_torsion(spring).rate_n_mm_per_deg
    return torsion.torque_for_stress_n_mm(stress_mpa, spring.wire_diameter_mm) / rate


@pytest.mark.parametrize(
    ("stress", "does"), [(1455.0, None), (1457.0, "take a set"), (2079.0, "take a set"), (2081.0, "break or bend")]
)
def test_wound_up_it_takes_a_set_above_the_standards_limit_and_breaks_above_its_strength(
    stress: float, does: str | None
) -> None:
    """0.70 of 2080 MPa are 1456 MPa."""
    angle = angle_of(stress)
    assert said("it will", WHOLE, angle) is (does is not None)
    if does is not None:
        assert said(f"it will {does}", WHOLE, angle)
        assert said("EN 13906-3 allows 1456 MPa (0.70 of the wire's least strength).", WHOLE, angle)


@pytest.mark.parametrize(("share", "does"), [(0.999, False), (1.001, True)])
def test_unwound_it_is_given_three_quarters_of_that_and_told_so(share: float, does: bool) -> None:
    """1092 MPa of corrected stress."""
    angle = -angle_of(share * 1092.0 / torsion.curvature_factor(8.0))
    assert said("it is loaded against its hand", WHOLE, angle)
    assert said("it will take a set", WHOLE, angle) is does
    if does:
        assert said("unwound it is given 1092 MPa, corrected (three quarters of EN 13906-3's, assumed).", WHOLE, angle)


@pytest.mark.parametrize("angle", [0.0, 0.5])
def test_at_rest_and_wound_up_nothing_is_said_of_its_hand(angle: float) -> None:
    assert not said("against its hand", WHOLE, angle)
    assert said("against its hand", WHOLE, -0.5)


def test_without_a_known_strength_no_set_is_foretold() -> None:
    assert not said("it will", replace(WHOLE, tensile_strength_mpa=None), 3000.0)
