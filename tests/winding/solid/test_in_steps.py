"""A plan that is wound on a solid: its steps, its pull, what turns it and its mandrel are those of what is made."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from sourcing.need.model import Need
from sourcing.springs.model import Hand
from sourcing.stock.model import Bench
from sourcing.winding.choices import with_choices
from sourcing.winding.model import WindingPlan, wire_of
from sourcing.winding.plan import plan_winding
from sourcing.winding.setting_up import pull_shown
from sourcing.winding.solid.in_steps import wound_on
from sourcing.winding.solid.made import Held, solid_for
from sourcing.winding.solid.printed import greatest_pull_n
from sourcing.winding.solid.shape import MandrelSolid
from tests.winding import test_extension, test_torsion
from tests.winding.cases import BENCH, need, planned, spool
from tests.winding.test_conical import cone_need

PRINTER = replace(BENCH, tools=("vice", "hand-drill", "printer"))
JOBS: dict[str, tuple[Callable[[], Need], float, float | None]] = {
    "compression": (need, 0.8, 6.0),
    "conical": (cone_need, 0.9, None),
    "torsion": (test_torsion.need, 1.2, None),
    "extension": (test_extension.a_need, 0.8, None),
}
"""A need of each kind, the wire that it is wound of, and the mandrel where it is not the best one."""


def on_solid(
    kind: str = "compression", bench: Bench = PRINTER, held: Held | None = None, printed: bool = True
) -> tuple[WindingPlan, WindingPlan, MandrelSolid, Need]:
    """The plan as it is, the plan on its solid, that solid, and the need."""
    need_of, wire_mm, mandrel_mm = JOBS[kind]
    wanted = need_of()
    bare = planned(plan_winding(wanted, spool(wire_mm), bench, mandrel_mm))
    solid = solid_for(bare, wanted.job, bench, held, printed)
    assert isinstance(solid, MandrelSolid), solid.why
    return bare, wound_on(bare, solid, wanted, bench, printed), solid, wanted


every_kind = pytest.mark.parametrize("kind", JOBS)


@every_kind
def test_the_steps_tell_one_mandrel_and_it_is_the_one_that_is_made(kind: str) -> None:
    _, made, _, _ = on_solid(kind, printed=False, bench=replace(BENCH, tools=("vice", "hand-drill")))
    steps = " ".join(made.steps)
    assert "Set up the turned mandrel, gripped by its" in steps
    for bare in (
        "Set up the rod",
        "turned or filed to",
        "cross hole",
        "jaw of the chuck",
        "screw clip",
        "Turn or file",
    ):
        assert bare not in steps
    assert made.mandrel.kind == "turned"


@every_kind
def test_every_step_that_asks_nothing_of_the_mandrel_is_as_it_was(kind: str) -> None:
    bare, made, _, _ = on_solid(kind, printed=False)
    kept = [step for step in made.steps if step in bare.steps]
    assert len(kept) >= len(bare.steps) - 8
    assert kept[-1] == bare.steps[-1]


@pytest.mark.parametrize("held", ["hex", "sleeve"])
def test_the_greatest_pull_is_told_once_and_is_what_the_printed_mandrel_stands(held: Held) -> None:
    bare, made, solid, _ = on_solid(held=held)
    most_n = greatest_pull_n(bare, solid, PRINTER)
    (step,) = [each for each in made.steps if "Never pull more than" in each]
    assert step.count("Never pull") == 1
    assert f"Never pull more than {pull_shown(most_n, 'mm')}" in step
    weaker = replace(made.numbers, on_solid=replace(made.numbers.on_solid, greatest_pull_n=51.0))
    assert any("Never pull more than 51.0 N" in each for each in weaker.steps(need(), PRINTER))


def test_one_turned_from_steel_is_held_to_the_pull_of_the_wire_alone() -> None:
    bare, made, _, _ = on_solid(printed=False)
    said = [[each.split("Never pull")[1][:60] for each in plan.steps if "Never pull" in each] for plan in (bare, made)]
    assert said[0] == said[1]


@pytest.mark.parametrize(
    ("tools", "turned"),
    [
        (("vice", "hand-drill", "printer"), "Seen from the chuck, turn it anticlockwise (the drill runs backwards)"),
        (("vice", "printer"), "Seen from the crank, turn it anticlockwise: that"),
        (("lathe", "printer"), "Seen from the chuck, turn it anticlockwise: that"),
    ],
)
def test_what_turns_it_is_the_same_wherever_it_is_spoken_of(tools: tuple[str, ...], turned: str) -> None:
    _, made, _, _ = on_solid(bench=replace(BENCH, tools=tools))
    steps = " ".join(made.steps)
    assert turned in steps
    assert ("drill" in steps) is ("hand-drill" in tools)


def test_where_the_moment_is_beyond_a_drill_none_turns_it() -> None:
    limits = replace(BENCH.hand_winding, vice_and_crank_n_mm=200.0)
    _, made, _, _ = on_solid(bench=replace(PRINTER, hand_winding=limits))
    steps = " ".join(made.steps)
    assert "No drill: it serves below 0.20 N·m" in steps
    assert "gripped by its hexagon" in steps
    assert "the drill runs" not in steps
    assert "in the hand drill" not in steps


def test_a_hand_that_the_need_leaves_open_is_told_at_the_head_and_at_the_old_spring() -> None:
    _, made, solid, _ = on_solid()
    assert solid.coil.hand is Hand.RIGHT
    (taken,) = made.taken
    assert "made for a right-hand spring" in taken
    assert "write `hand: left` into the need" in taken
    assert "the mandrel is made for right-hand" in made.steps[0]
    assert "wind the new one the same way" not in made.steps[0]


def test_a_hand_that_the_need_gives_is_taken_from_it_and_nothing_is_said() -> None:
    left = need(hand=Hand.LEFT)
    bare = planned(plan_winding(left, spool(0.8), PRINTER, 6.0))
    solid = solid_for(bare, "job", PRINTER, None, True)
    assert isinstance(solid, MandrelSolid)
    made = wound_on(bare, solid, left, PRINTER, True)
    assert made.taken == ()
    assert made.steps[0] == bare.steps[0]
    assert "turn it clockwise (the drill runs forwards): that lays a left-hand spring" in " ".join(made.steps)


def test_a_groove_keeps_the_pitch_so_neither_strip_nor_pulling_out_is_spoken_of() -> None:
    bare, made, solid, _ = on_solid()
    assert solid.release.groove_depth_mm > 0
    assert any("a strip of that thickness" in each for each in bare.steps)
    assert any("in the groove, which keeps the pitch of" in each for each in made.steps)
    assert not any("strip" in each or "Or lay all turns close" in each for each in made.steps)


def test_a_sleeve_is_put_on_its_rod_before_it_is_set_up_and_the_mandrel_names_the_rod() -> None:
    _, made, _, _ = on_solid(held="sleeve")
    filed = next(at for at, each in enumerate(made.steps) if "File a flat" in each)
    assert "Set up the sleeve, gripped by the rod" in made.steps[filed + 1]
    assert (made.mandrel.kind, made.mandrel.made_as) == ("printed", "sleeve")
    assert made.mandrel.rod_mm is not None


def test_the_mandrel_that_is_made_is_the_one_of_the_sheet_among_those_to_choose_from() -> None:
    for held in ("hex", "sleeve"):
        bare, made, _, wanted = on_solid(held=held)
        first, *others = with_choices(made, wanted, wire_of(spool(0.8)), PRINTER).choices
        assert first.chosen
        assert first.kind == ("sleeve" if held == "sleeve" else "printed")
        assert first.diameter_mm == bare.mandrel.diameter_mm
        assert bare.mandrel.made_as in [each.kind for each in others]
        assert not any((each.kind, each.diameter_mm) == (first.kind, first.diameter_mm) for each in others)
