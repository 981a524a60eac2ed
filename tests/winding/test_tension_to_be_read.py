"""An initial tension on which the verdict hangs once it is read after heat, or after a pull that takes some away."""

from __future__ import annotations

import re

import pytest

from sourcing.need.model import Need, Pocket
from sourcing.springs import pulled
from sourcing.springs.model import Hooks
from sourcing.winding.extension.hand_tension import LOST_IN_HEAT
from sourcing.winding.model import wire_of
from sourcing.winding.plan import plan_winding
from sourcing.winding.saving.coil import Coil, Saved
from sourcing.winding.saving.extension.body import wanted_of
from sourcing.winding.saving.extension.diameter import came_out_with_tension
from sourcing.winding.saving.extension.tension import came_out_tension

from .cases import BENCH, planned, point, spool, wanted
from .test_saving_extension import outside_mm

NEED = Need(
    job="drawer",
    kind="extension",
    pocket=Pocket(bore_mm=wanted(11.0)),
    working=(point(48, 4.2), point(70, 17)),
    hooks=Hooks.FULL_LOOP,
    pull_to_fit_mm=75.0,
)
"""A spring in a drawer: 4.2 N at 48 mm and 17 N at 70 mm."""

WIRE = spool(0.8)

BEFORE, AFTER = (
    Coil(NEED, BENCH, wire_of(WIRE), planned(plan_winding(NEED, WIRE, BENCH)), heated) for heated in (False, True)
)

MEANT_N = wanted_of(AFTER).initial_tension_n or 0.0

TENSIONS_N = [round(0.15 * step, 2) for step in range(41)]

HEAT_DECIDES = "for its tension after heat decides; then measure "


def answers(coil: Coil, tension_n: float) -> tuple[Saved, Saved]:
    """By its tension alone, and with a diameter as it was meant."""
    return came_out_tension(coil, tension_n), came_out_with_tension(coil, outside_mm(coil), tension_n)


def is_kept(tension_n: float) -> bool:
    """Whether a spring that keeps so much after its heat is kept as it is."""
    return came_out_tension(AFTER, tension_n).answer == "keep"


def most_kept_n() -> float:
    (row,) = (row for row in AFTER.plan.accept if row.figure == "initial_tension_n")
    assert row.high is not None
    return row.high


@pytest.mark.parametrize("tension_n", [2.1, 3.0, 4.5])
@pytest.mark.parametrize("coil", [BEFORE, AFTER], ids=["before heat", "after heat"])
def test_nothing_is_judged_of_what_a_pull_may_leave_until_it_is_read(coil: Coil, tension_n: float):
    for saved in answers(coil, tension_n + (0.0 if coil.heated else 1.2)):
        assert "pull it a little past 75.0 mm" in " ".join(saved.said)
        assert saved.answer == "measure first"
        assert saved.fit is None
        assert not any(said.startswith(("Done so, the chance", "The chance")) for said in saved.said)


def test_the_chance_of_a_pull_is_that_of_what_it_may_read_then():
    """Asked again with the reading, the same chance is told."""
    said = list(came_out_tension(AFTER, 3.0).said)
    (pull,) = [place for place, each in enumerate(said) if each.startswith("Too much: pull it")]
    told = re.match(
        r"If it then reads ([\d.]+) N, the chance that all that is wanted holds with it is ([\d.]+), "
        r"and at ([\d.]+) N it is ([\d.]+)",
        said[pull + 1],
    )
    assert told is not None
    assert (float(told[1]), float(told[3])) == pytest.approx((MEANT_N, most_kept_n()), abs=0.051)
    for tension_n, chance in ((MEANT_N, told[2]), (most_kept_n(), told[4])):
        then = came_out_tension(AFTER, tension_n)
        assert then.answer == "keep"
        assert then.fit is not None
        assert float(chance) == pytest.approx(then.fit.chance, abs=0.006)


def test_hooks_that_make_up_for_what_stays_are_told_with_their_chance():
    (stays,) = [said for said in came_out_tension(AFTER, 2.1).said if said.startswith("Bent so far")]
    assert re.search(r": keep it so, with a chance of [01]\.\d\d\.$", stays)


@pytest.mark.parametrize("tension_n", TENSIONS_N)
def test_heat_is_waited_for_just_where_what_it_leaves_decides(tension_n: float):
    """Heat takes a quarter to a half: where one end of that is kept and the other is not, the chance is no verdict."""
    kept = {is_kept(tension_n * (1.0 - lost)) for lost in LOST_IN_HEAT}
    saved = came_out_tension(BEFORE, tension_n)
    if any(HEAT_DECIDES in said for said in saved.said):
        assert len(kept) == 2
        assert saved.answer == "measure first"
        assert saved.fit is None
    elif saved.answer == "keep":
        assert saved.fit is not None
        assert kept == {True} or saved.fit.chance >= BENCH.least_chance - 0.005


def test_one_that_heat_decides_is_told_what_is_kept_then_and_how_to_ask_again():
    tension_n = 1.6 * most_kept_n()
    alone, both = (
        came_out_tension(BEFORE, tension_n),
        came_out_with_tension(BEFORE, outside_mm(BEFORE) + 0.02, tension_n),
    )
    low, high = (
        next(row for row in AFTER.plan.accept if row.figure == "initial_tension_n").low,
        most_kept_n(),
    )
    assert low is not None
    assert f"between {low:.2g} N and {high:.1f} N keep it as it is, else ask again" in " ".join(alone.said)
    assert any(said.startswith("Heat it first, as the sheet has it, " + HEAT_DECIDES) for said in alone.said)
    assert f"heat it first, as the sheet has it, {HEAT_DECIDES}both again" in both.said[0]
    for saved in (alone, both):
        assert saved.answer == "measure first"
        assert not any("chance" in said or "tolerance" in said for said in saved.said)


@pytest.mark.parametrize("tension_n", TENSIONS_N)
def test_no_length_that_is_to_give_the_forces_is_more_than_the_hooks_reach(tension_n: float):
    """Loops are bent 1.1 of the inside diameter high at most: the body and twice that is all that it reaches."""
    spring = wanted_of(AFTER)
    most_mm = pulled.body_length_mm(spring) + 2.2 * spring.inside_diameter_mm
    for coil in (BEFORE, AFTER):
        for saved in answers(coil, tension_n):
            for said in saved.said:
                for told in re.findall(
                    r"([\d.]+) mm between its hooks, [\d.]+ mm \w+, gives|hooks to ([\d.]+) mm", said
                ):
                    assert float(told[0] or told[1]) <= most_mm + 0.06, said
