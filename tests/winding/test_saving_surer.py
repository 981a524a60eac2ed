"""A coil that is kept with a low chance is told what makes it surer, and what the coils for its rate would cost it."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from sourcing.springs.model import ConicalSpring
from sourcing.winding.model import wire_of
from sourcing.winding.plan import plan_winding
from sourcing.winding.saving.coil import Coil, Saved
from sourcing.winding.saving.compression.diameter import came_out
from sourcing.winding.saving.conical.diameter import both_came_out

from .cases import BENCH, need, planned, spool, wanted
from .test_saving_a_cone import a_coil as a_cone
from .test_saving_a_cone import outside

PUNCH = need(free_length_mm=wanted(31.0, 2.0))
SURER = re.compile(r"Or change it as follows, for a chance of ([\d.]+)\.")


def punched(outside_mm: float) -> Saved:
    """The answer to a coil of case 4's need, wound of 1.0 mm wire on 7 mm, which measures so before heat."""
    wire = spool(1.0)
    return came_out(Coil(PUNCH, BENCH, wire_of(wire), planned(plan_winding(PUNCH, wire, BENCH, 7.0))), outside_mm)


def chance(saved: Saved) -> float:
    assert saved.fit is not None
    return saved.fit.chance


def surer(saved: Saved) -> float | None:
    """The chance that it is told to have once it is changed."""
    found = SURER.search(" ".join(saved.said))
    return None if found is None else float(found[1])


@pytest.mark.parametrize("outside_mm", [10.2, 10.15, 10.1])
def test_a_coil_that_is_kept_with_a_low_chance_is_told_the_change_that_makes_it_clearly_surer(outside_mm: float):
    saved = punched(outside_mm)
    assert saved.answer == "keep"
    assert chance(saved) < BENCH.least_chance
    told = surer(saved)
    assert told is not None
    assert told >= chance(saved) + 0.1
    assert any("until it rests at" in said for said in saved.said)


def test_a_coil_nearer_to_what_was_meant_is_told_no_less_than_one_further_off_that_is_saved():
    """At 10.05 mm it is changed; what it may become has the chance that the bench asks for, and so on from there."""
    assert punched(10.05).answer == "change"
    for step in range(10):
        saved = punched(10.05 + 0.05 * step)
        assert (surer(saved) or chance(saved)) >= BENCH.least_chance


def test_a_coil_that_is_kept_with_a_good_chance_is_told_nothing_of_that():
    for outside_mm in (10.35, 10.5, 10.6):
        assert surer(punched(outside_mm)) is None


@pytest.mark.parametrize("outside_mm", [10.3, 10.35])
def test_coils_for_its_rate_that_would_leave_it_a_near_fit_are_told_with_what_is_wrong_then(outside_mm: float):
    (told,) = [said for said in punched(outside_mm).said if said.startswith("If its rate is to be nearer")]
    assert "It would be a near fit only then: minimum gaps does not hold" in told
    (told,) = [said for said in punched(10.62).said if said.startswith("If its rate is to be nearer")]
    assert "Its chance is 0.9" in told


@pytest.mark.parametrize("heated", [False, True])
def test_a_cone_that_is_kept_with_a_low_chance_is_told_what_makes_it_surer_too(heated: bool):
    coil = a_cone(replace(BENCH, least_chance=0.99), heated)
    large, small = outside(coil)
    answers = [
        both_came_out(coil, large + off, small + off * (small / large) ** 2)
        for off in (step / 10.0 for step in range(-12, 13))
    ]
    kept = [saved for saved in answers if saved.answer == "keep" and isinstance(saved.spring, ConicalSpring)]
    told = [(chance(saved), better) for saved in kept if (better := surer(saved)) is not None]
    assert told
    assert all(better >= low + 0.095 for low, better in told)
