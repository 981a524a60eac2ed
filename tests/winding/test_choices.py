"""Which mandrels a plan may be wound on: rods, turned, printed, a sleeve; each with its chance and its limits."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.materials.strength import tensile_strength_mpa
from sourcing.quantities import show_force
from sourcing.stock.model import Bench, Spool
from sourcing.winding import pull
from sourcing.winding.choices import mandrel_choices, with_choices
from sourcing.winding.model import MandrelChoice, Refusal, WindingPlan, wire_of
from sourcing.winding.plan import plan_winding
from sourcing.winding.solid.coil import coil_of
from sourcing.winding.solid.made import sleeve_of, solid_for, with_shank
from sourcing.winding.solid.printed import (
    PRINTED_STRENGTH_MPA,
    greatest_pull_fraction,
    greatest_pull_n,
    safety_against_twisting_off,
    safety_of,
)
from sourcing.winding.solid.shape import MandrelSolid
from sourcing.winding.trials import Knowledge, untried

from .cases import A_HANDLE, BENCH, material, need, plan, planned, spool
from .test_conical import cone_need

PRINTER = replace(BENCH, tools=("vice", "hand-drill", "printer"))


def choices(wire: Spool, bench: Bench = PRINTER, mandrel_mm: float | None = None) -> tuple[MandrelChoice, ...]:
    made = planned(plan_winding(need(), wire, bench, mandrel_mm))
    return mandrel_choices(made, need(), wire_of(wire), bench)


def knowledge_of(name: str) -> Knowledge:
    strength_mpa = tensile_strength_mpa(material(name), 1.0)
    assert strength_mpa is not None
    return untried(material(name), 1.0, strength_mpa)


def flow_stress(made: WindingPlan) -> float:
    """From the moment that bends the wire."""
    return 6 * made.crank_moment_n_mm / made.wire_diameter_mm**3


def the(kind: str, of: tuple[MandrelChoice, ...]) -> MandrelChoice:
    (one,) = [each for each in of if each.kind == kind and not each.chosen]
    return one


def test_the_mandrel_of_the_sheet_comes_first_and_is_the_only_one_chosen() -> None:
    for wire in (spool(0.8), spool(1.0)):
        first, *others = choices(wire)
        made = plan(wire, PRINTER)
        assert (first.kind, first.diameter_mm, first.chance) == (
            made.mandrel.kind,
            made.mandrel.diameter_mm,
            made.tries.first,
        )
        assert [each.chosen for each in (first, *others)] == [True] + [False] * len(others)


def test_those_that_serve_stand_before_those_that_do_not_the_surest_first() -> None:
    others = choices(spool(1.0))[1:]
    serving = [each.serves for each in others]
    assert serving == sorted(serving, reverse=True)
    chances = [round(each.chance or 0, 2) for each in others if each.serves]
    assert chances == sorted(chances, reverse=True)


def test_what_is_said_of_a_rod_or_a_turned_mandrel_is_what_its_own_sheet_says() -> None:
    wire = spool(1.0)
    for each in choices(wire):
        if each.kind in ("rod", "turned") and each.chance is not None:
            own = planned(plan_winding(need(), wire, PRINTER, each.diameter_mm))
            assert each.chance == pytest.approx(own.tries.first, abs=1e-9)
        elif each.kind == "rod":
            assert not isinstance(plan_winding(need(), wire, PRINTER, each.diameter_mm), WindingPlan)


@pytest.mark.parametrize(
    ("better_by", "said"),
    [(-0.01, "less sure ("), (0.0, "no surer,"), (0.01, "hardly surer ("), (0.09, "hardly surer ("), (0.10, "surer (")],
)
def test_what_is_said_of_how_sure_a_mandrel_is_goes_with_the_figures_beside_it(better_by: float, said: str) -> None:
    asked = planned(plan_winding(need(), spool(0.9), BENCH, 6.0))
    chance = round(the("turned", mandrel_choices(asked, need(), wire_of(spool(0.9)), BENCH)).chance or 0.0, 2)
    shown = replace(asked, tries=replace(asked.tries, first=chance - better_by))
    told = the("turned", mandrel_choices(shown, need(), wire_of(spool(0.9)), BENCH)).said
    assert told.startswith(f"to turn, file or buy; {said}")
    assert better_by == 0.0 or f" ({chance:.2f} against {chance - better_by:.2f}), for more work" in told


def test_without_a_printer_nothing_printed_is_offered() -> None:
    assert {each.kind for each in choices(spool(1.0), BENCH)} == {"rod", "turned"}
    assert {each.kind for each in choices(spool(1.0))} == {"rod", "turned", "printed", "sleeve"}


def test_a_bench_without_rods_has_a_mandrel_turned_and_no_sleeve() -> None:
    offered = choices(spool(1.0), replace(PRINTER, rods_mm=()))
    assert offered[0].kind == "turned"
    assert not the("sleeve", offered).serves
    assert "no rod on hand" in the("sleeve", offered).said


def test_printed_mandrels_are_given_to_a_twentieth_of_a_millimetre() -> None:
    printed = the("printed", choices(spool(0.8)))
    assert printed.diameter_mm is not None
    assert printed.diameter_mm * 20 == pytest.approx(round(printed.diameter_mm * 20))


def test_a_printed_one_serves_where_its_solid_stands_twice_the_torque() -> None:
    for wire_mm in (0.8, 1.0):
        wire, printed = spool(wire_mm), the("printed", choices(spool(wire_mm)))
        own = planned(plan_winding(need(), wire, replace(PRINTER, rods_mm=())))
        solid = with_shank(own, need().job, PRINTER)
        assert printed.safety == pytest.approx(safety_of(own, solid))
        assert printed.serves is (safety_of(own, solid) >= 2.0)
        assert printed.greatest_pull_n is not None
        at_most = safety_of(replace(own, pull_n=printed.greatest_pull_n), solid)
        most = pull.pull_fraction(printed.greatest_pull_n, pull.yield_force_n(flow_stress(own), wire_mm))
        assert most <= 0.1 + 1e-9
        assert most in (0.0, pytest.approx(0.1)) or at_most == pytest.approx(2.0)


@pytest.mark.parametrize(("slimness", "fraction"), [(5.9, 0.0), (6.5, 0.02), (7.4, 0.05), (8.8, 0.10)])
def test_the_greatest_pull_is_the_known_one_of_each_slimness(slimness: float, fraction: float) -> None:
    """winding_model.md, "The mandrel as a solid": music wire of 1 mm, safety 2, a/d without pull and with it."""
    alone = safety_against_twisting_off(PRINTED_STRENGTH_MPA, 1.08 * 2220, slimness, 1.0, 0.0, slimness + 1)
    assert greatest_pull_fraction(alone, 2.0, slimness + 1) == pytest.approx(fraction, abs=0.004)


@pytest.mark.parametrize(
    ("name", "slimness"), [("music-wire", 5.9), ("stainless-1.4310", 5.4), ("phosphor-bronze", 4.3)]
)
def test_music_wire_stainless_and_bronze_want_the_known_slimness(name: str, slimness: float) -> None:
    """The same place: 5.9, 5.4 and 4.3 without pull, wire of 1 mm."""
    flow_mpa = knowledge_of(name).flow_stress_mpa
    safety = safety_against_twisting_off(PRINTED_STRENGTH_MPA, flow_mpa, slimness, 1.0, 0.0, slimness + 1)
    assert safety == pytest.approx(2.0, rel=0.05)


def test_a_sleeve_has_its_rod_and_wall_and_serves_where_they_stand_the_torque() -> None:
    wire = spool(1.0)
    sleeve = the("sleeve", choices(wire))
    own = planned(plan_winding(need(), wire, replace(PRINTER, rods_mm=())))
    solid = sleeve_of(coil_of(own), need().job, PRINTER)
    assert isinstance(solid, MandrelSolid)
    assert sleeve.rod_mm in PRINTER.rods_mm
    assert sleeve.wall_mm is not None
    assert sleeve.wall_mm >= 0.8
    assert sleeve.diameter_mm == pytest.approx((sleeve.rod_mm or 0) + 0.2 + 2 * sleeve.wall_mm)
    assert "takes the torque" in sleeve.said
    assert sleeve.greatest_pull_n == pytest.approx(greatest_pull_n(own, solid, PRINTER))
    assert f"pull {show_force(sleeve.greatest_pull_n, 'mm')} at most" in sleeve.said


def test_a_cone_is_wound_on_its_own_profile_turned_or_printed() -> None:
    wire = spool(0.9)
    made = planned(plan_winding(cone_need(), wire, PRINTER))
    offered = mandrel_choices(made, cone_need(), wire_of(wire), PRINTER)
    assert {each.kind for each in offered} == {"turned", "printed", "sleeve"}
    assert all(each.diameter_mm is None for each in offered)
    assert the("printed", offered).safety is not None


def test_a_mandrel_that_is_printed_gives_way_and_has_a_smaller_chance_than_one_turned_to_its_size() -> None:
    offered = choices(spool(0.8))
    turned, printed, sleeve = (the(kind, offered).chance for kind in ("turned", "printed", "sleeve"))
    assert turned is not None
    assert printed is not None
    assert printed < turned - 0.005
    assert sleeve == printed


def test_the_plan_carries_its_choices() -> None:
    made = plan(spool(1.0), PRINTER)
    assert made.choices == ()
    shown = with_choices(made, need(), wire_of(spool(1.0)), PRINTER)
    assert shown.choices[0].chosen
    assert replace(shown, choices=()) == made


def test_a_mandrel_that_was_asked_for_stands_beside_better_ones() -> None:
    made = plan(spool(1.0), PRINTER)
    assert made.mandrel.diameter_mm is not None
    first, *others = choices(spool(1.0), mandrel_mm=made.mandrel.diameter_mm + 0.15)
    assert first.kind == "turned"
    assert made.mandrel.diameter_mm in [each.diameter_mm for each in others]
    assert [each.said for each in others if "surer" in each.said]


def test_a_rod_that_is_clearly_surer_is_taken_before_a_mandrel_nearer_to_what_is_wanted() -> None:

    def on(*rods_mm: float) -> WindingPlan:
        return planned(plan_winding(A_HANDLE, spool(1.2), replace(BENCH, rods_mm=rods_mm)))

    turned, rod = on(), on(9.0)
    assert (turned.mandrel.kind, rod.mandrel.kind) == ("turned", "rod")
    assert turned.fit.score is not None
    assert rod.fit.score is not None
    assert rod.fit.score < turned.fit.score
    assert rod.tries.first >= turned.tries.first + 0.1
    assert rod.fit.fits == turned.fit.fits == "yes"


@pytest.mark.parametrize("wire_mm", [0.8, 0.9, 1.0])
def test_a_rod_is_not_passed_over_for_what_its_wire_lacks_on_any_mandrel(wire_mm: float) -> None:
    dry, damp = plan(spool(wire_mm)), plan(spool(wire_mm), surroundings=("damp",))
    assert (dry.fit.fits, damp.fit.fits) == ("yes", "near")
    assert dry.mandrel.kind == "rod"
    assert damp.mandrel == dry.mandrel


@pytest.mark.parametrize("wire_mm", [0.8, 1.0])
def test_nothing_printed_serves_that_has_no_room_in_the_printer(wire_mm: float) -> None:
    """A bed of 20 x 20 x 15 mm: the table says no to what --solid refuses, for the reason that it gives."""
    small = replace(PRINTER, printer_bed_mm=(20.0, 20.0, 15.0))
    own = planned(plan_winding(need(), spool(wire_mm), replace(small, rods_mm=())))
    made = solid_for(own, "job", small, None, printed=True)
    assert isinstance(made, Refusal)
    assert made.rule == "printer-bed-too-small"
    for kind in ("printed", "sleeve"):
        offered = the(kind, choices(spool(wire_mm), small))
        assert not offered.serves, kind
        assert offered.said.startswith("no: the mandrel, ")
        assert offered.said.endswith("has no room in the printer (`printer_bed` in bench.yaml)")


def test_a_sleeve_that_the_bed_holds_serves_beside_one_with_a_shank_that_it_does_not_hold() -> None:
    low = replace(PRINTER, printer_bed_mm=(60.0, 60.0, 60.0))
    offered = choices(spool(0.8), low)
    assert "no room in the printer" in the("printed", offered).said
    assert the("sleeve", offered).serves is the("sleeve", choices(spool(0.8))).serves
    assert "no room" not in the("sleeve", offered).said


def test_what_a_printed_one_stands_is_told_in_the_units_of_the_bench() -> None:
    printed = the("printed", choices(spool(1.0), replace(PRINTER, units="inch")))
    assert "3 ksi in shear" in printed.said
    assert "MPa" not in printed.said
