"""A conical spring in its place: room at both ends, the progressive force, the stress of the largest open coil."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from sourcing.fit.judge import judge
from sourcing.fit.model import Fit, Limit, Spread
from sourcing.fit.score import deviation_over_tolerance
from sourcing.fit.spread import spread_of
from sourcing.need.model import Need, Pocket, PocketEnd, WorkingPoint
from sourcing.quantities import Wanted
from sourcing.springs.conical import force_n
from sourcing.springs.conical_lengths import cone_of, growth_at_ends_mm
from sourcing.springs.describe import describe
from sourcing.springs.model import ConicalSpring, Ends
from sourcing.springs.pressed import rate_n_per_mm
from sourcing.stock.model import Bench, Catalogue, StockSpring
from sourcing.verdict.options import judge_stock, stock_options
from sourcing.verdict.verdict import decide
from tests.fit.cases import make_cone, make_conical_need, make_spring

SAMPLING_NOISE = 0.015
"""Three standard deviations of a share of 10 000 draws near one half."""


def judged(spring: ConicalSpring, need: Need, spread: Spread | None = None, rate: float | None = None) -> Fit:
    return judge(spring, need, Bench(), spread or Spread(), rate)


def limit(fit: Fit, name: str) -> Limit:
    return next(each for each in fit.limits if each.limit == name)


def named(fit: Fit) -> set[str]:
    return {each.limit for each in fit.limits}


def working(*lengths_mm: float) -> tuple[WorkingPoint, ...]:
    return tuple(WorkingPoint(Wanted(nominal=length)) for length in lengths_mm)


def pocket(large: PocketEnd | None = None, small: PocketEnd | None = None) -> Need:
    return make_conical_need(pocket=Pocket(large_end=large, small_end=small))


def test_the_cone_fits_its_switch():
    fit = judged(make_cone(), make_conical_need())
    assert fit.fits == "yes"
    assert not fit.broken


class TestRoom:
    def test_the_large_end_with_its_growth_must_go_into_its_bore(self):
        fit = judged(make_cone(), pocket(large=PocketEnd(bore_mm=Wanted(nominal=18.1))))
        assert fit.fits == "no"
        assert limit(fit, "bore clearance at the large end").why == (
            "outside 17.90 mm + growth 0.04 mm + clearance 0.20 mm = 18.14 mm; the bore is 18.10 mm"
        )
        wider = judged(make_cone(), pocket(large=PocketEnd(bore_mm=Wanted(nominal=18.15))))
        assert limit(wider, "bore clearance at the large end").holds

    def test_the_small_end_must_pass_over_its_rod(self):
        fit = judged(make_cone(), pocket(small=PocketEnd(rod_mm=Wanted(nominal=6.0))))
        assert fit.fits == "no"
        assert limit(fit, "rod clearance at the small end").why == (
            "inside 6.10 mm - clearance 0.20 mm = 5.90 mm; the rod is 6.00 mm"
        )

    def test_the_small_end_has_a_bore_too_and_the_large_end_a_rod(self):
        small = PocketEnd(bore_mm=Wanted(nominal=8.0))
        large = PocketEnd(rod_mm=Wanted(nominal=16.0))
        fit = judged(make_cone(), pocket(large=large, small=small))
        assert [each.limit for each in fit.broken] == [
            "bore clearance at the small end",
            "rod clearance at the large end",
        ]

    def test_a_straight_bore_takes_the_large_end_and_a_straight_rod_the_small_one(self):
        straight = Pocket(bore_mm=Wanted(nominal=18.0), rod_mm=Wanted(nominal=6.0))
        fit = judged(make_cone(), make_conical_need(pocket=straight))
        assert [each.limit for each in fit.broken] == ["bore clearance", "rod clearance"]

    def test_an_end_of_which_nothing_is_known_is_not_judged(self):
        assert named(judged(make_cone(), pocket())).isdisjoint(
            {"bore clearance", "rod clearance", "bore clearance at the large end", "rod clearance at the small end"}
        )

    def test_its_own_tolerance_is_counted_at_each_end(self):
        fit = judged(make_cone(), make_conical_need(), Spread(diameter_tolerance_mm=0.5))
        assert len(fit.broken) == 2


class TestForce:
    def test_it_is_that_of_the_progressive_curve_and_never_the_initial_rate(self):
        fit = judged(make_cone(), make_conical_need())
        longest, shortest = (row.got for row in fit.deviations)
        rate = rate_n_per_mm(make_cone())
        assert longest == pytest.approx(2.0 * rate)
        assert shortest == pytest.approx(force_n([cone_of(make_cone())], 9.5))
        assert shortest > 1.2 * 9.5 * rate

    def test_a_rate_that_was_measured_scales_the_whole_curve(self):
        by_dimensions = judged(make_cone(), make_conical_need())
        stiffer = judged(make_cone(), make_conical_need(), rate=1.1 * rate_n_per_mm(make_cone()))
        for one, other in zip(by_dimensions.deviations, stiffer.deviations, strict=True):
            assert other.got == pytest.approx(1.1 * one.got)

    def test_a_force_between_one_and_two_tolerances_off_is_near_and_beyond_two_is_no(self):
        for off, fits in ((0.5, "yes"), (1.5, "near"), (2.5, "no")):
            got = judged(make_cone(), make_conical_need()).deviations[1].got
            wanted = WorkingPoint(Wanted(nominal=4.5), Wanted(nominal=got + off, minus=1.0, plus=1.0))
            fit = judged(make_cone(), make_conical_need(working=(wanted,)))
            assert fit.fits == fits
            assert fit.deviations[0].deviation_over_tolerance == pytest.approx(off)


class TestPressed:
    def test_solid_before_the_shortest_length_is_refused(self):
        """Steps of 0.5 mm: solid at 6 x 0.75 + 2 x 0.9 = 6.3 mm with closed and ground ends."""
        stacked = make_cone(
            mean_diameter_large_mm=13.0, active_coils=6.0, total_coils=8.0, ends=Ends.CLOSED_GROUND, free_length_mm=20.0
        )
        fit = judged(stacked, make_conical_need(working=working(12.0, 6.2)))
        assert fit.fits == "no"
        assert limit(fit, "solid length").why == "solid at 6.29 mm; the shortest working length is 6.2 mm"

    def test_the_standards_least_gaps_are_not_asked_of_a_cone(self):
        assert "minimum gaps" not in named(judged(make_cone(), make_conical_need()))

    def test_the_stress_at_the_shortest_length_is_that_of_the_largest_open_coil(self):
        fit = judged(make_cone(), make_conical_need())
        stress = describe(make_cone(), [4.5]).at[0].shear_stress_mpa
        assert limit(fit, "stress at the shortest length").why.startswith(f"{stress:.0f} MPa at 4.5 mm")

    def test_pressed_flat_the_smallest_coil_may_take_a_set(self):
        """Free 16: 1439 MPa in the smallest coil, over 0.56 of 2270 MPa."""
        fit = judged(make_cone(free_length_mm=16.0), make_conical_need(working=working(4.5)))
        assert [each.limit for each in fit.broken] == ["stress at solid"]
        assert limit(fit, "stress at solid").why.startswith("1439 MPa pressed solid; 1271 MPa is the static limit")
        assert fit.fits == "no"
        assert fit.chance == 0.0

    def test_a_measured_rate_scales_the_stress(self):
        fit = judged(make_cone(), make_conical_need(), rate=1.1 * rate_n_per_mm(make_cone()))
        stress = 1.1 * describe(make_cone()).shear_stress_at_solid_mpa
        assert limit(fit, "stress at solid").why.startswith(f"{stress:.0f} MPa")

    def test_an_end_coil_that_stands_on_the_next_takes_a_wire_of_the_last_travel(self):
        need = make_conical_need(working=working(12.0, 1.7))
        assert [each.limit for each in judged(make_cone(), need).broken] == ["end coils"]
        assert judged(make_cone(), need).fits == "near"
        assert not judged(make_cone(ends=Ends.OPEN, total_coils=5.0), need).broken

    def test_turns_that_barely_go_inside_each_other_are_near(self):
        fit = judged(make_cone(wire_diameter_mm=0.95, free_length_mm=13.0), make_conical_need(working=working(12.0)))
        assert [each.limit for each in fit.broken] == ["nesting"]
        assert not fit.broken[0].hard

    def test_a_slender_cone_is_near_for_its_buckling_is_not_known(self):
        slender = make_cone(mean_diameter_large_mm=9.0, active_coils=20.0, total_coils=22.0, free_length_mm=60.0)
        bare = judged(slender, make_conical_need(pocket=Pocket(), working=working(50.0, 30.0)))
        assert [(each.limit, each.hard) for each in bare.broken] == [("buckling", False)]
        assert bare.broken[0].why.endswith("by how much is not known: try it")
        guided = judged(slender, replace(pocket(small=PocketEnd(rod_mm=Wanted(nominal=5.0))), working=working(30.0)))
        assert limit(guided, "buckling").why.endswith("the rod may have to guide it")

    def test_the_index_is_judged_at_both_ends(self):
        need = make_conical_need(pocket=Pocket(), working=())
        assert limit(judged(make_cone(), need), "spring index").why.startswith("index 7.8 to 18.9;")
        for ends in ({"mean_diameter_small_mm": 3.5}, {"mean_diameter_large_mm": 18.5}):
            assert [each.limit for each in judged(make_cone(free_length_mm=4.0, **ends), need).broken] == [
                "spring index"
            ]


def sampled(need: Need, spread: Spread, draws: int = 10_000) -> float:
    """The share of drawn cones that clear the pocket and meet every wanted force within its tolerance."""
    random, spring, bench = Random(20261125), make_cone(), Bench()
    _, growth = growth_at_ends_mm(spring)
    large, small = need.pocket.large_end, need.pocket.small_end
    assert large is not None
    assert small is not None
    works = 0
    for _ in range(draws):
        off = random.gauss(0.0, spread.diameter_sd_mm)
        free = random.gauss(spring.free_length_mm, spread.free_length_sd_mm)
        stiffer = random.lognormvariate(0.0, spread.rate_sd)
        bore = random.gauss((large.bore_mm and large.bore_mm.nominal) or 0.0, 0.03)
        rod = random.gauss((small.rod_mm and small.rod_mm.nominal) or 0.0, 0.03)
        good = spring.outside_diameter_large_mm + off + growth + bench.clearance.bore_mm <= bore
        good &= spring.inside_diameter_small_mm + off - bench.clearance.rod_mm >= rod
        for point in need.working:
            drawn = (cone_of(replace(spring, free_length_mm=free)),)
            force = stiffer * force_n(drawn, max(0.0, free - point.at_mm))
            assert point.force_n is not None
            good &= deviation_over_tolerance(point.force_n, force, 0.0)[0] <= 1.0
        works += good
    return works / draws


def sampled_wound(spring: ConicalSpring, need: Need, spread: Spread, draws: int = 10_000) -> float:
    """The share of cones wound by hand that meet the forces and do not set when they are pressed solid.

    Each is a cone of its own: both ends as far off as the large one, coils kept, its curve worked out anew.
    """
    random, works = Random(20261125), 0
    assert spring.tensile_strength_mpa is not None
    limit_mpa = 0.56 * spring.tensile_strength_mpa
    for _ in range(draws):
        off = random.gauss(0.0, spread.diameter_sd_mm)
        longer = random.gauss(0.0, spread.free_length_sd_mm)
        stiffer = random.lognormvariate(0.0, spread.rate_sd)
        drawn = replace(
            spring,
            mean_diameter_small_mm=spring.mean_diameter_small_mm + off,
            mean_diameter_large_mm=spring.mean_diameter_large_mm + off,
        )
        good = describe(drawn).shear_stress_at_solid_mpa <= limit_mpa
        cone = (cone_of(replace(drawn, free_length_mm=spring.free_length_mm + longer)),)
        for point in need.working:
            force = stiffer * force_n(cone, spring.free_length_mm + longer - point.at_mm)
            assert point.force_n is not None
            good &= deviation_over_tolerance(point.force_n, force, 0.0)[0] <= 1.0
        works += good
    return works / draws


class TestChance:
    @pytest.mark.parametrize(
        "spread",
        [
            Spread(diameter_sd_mm=0.10, free_length_sd_mm=0.1, rate_sd=0.08),
            Spread(diameter_sd_mm=0.20, free_length_sd_mm=0.4, rate_sd=0.05),
            Spread(diameter_sd_mm=0.0, free_length_sd_mm=0.3, rate_sd=0.15),
        ],
    )
    @pytest.mark.parametrize("bore_mm", [18.5, 18.2])
    def test_it_agrees_with_sampling(self, spread: Spread, bore_mm: float):
        need = pocket(large=PocketEnd(bore_mm=Wanted(nominal=bore_mm)), small=PocketEnd(rod_mm=Wanted(nominal=5.5)))
        assert judged(make_cone(), need, spread).chance == pytest.approx(sampled(need, spread), abs=SAMPLING_NOISE)

    @pytest.mark.parametrize("sd_mm", [0.1, 0.25, 0.5])
    @pytest.mark.parametrize(
        "cone",
        [
            make_cone(),
            make_cone(free_length_mm=12.5),
            make_cone(mean_diameter_small_mm=9.0, active_coils=6.0, total_coils=8.0, free_length_mm=29.0),
        ],
        ids=["telescoping, near its limit", "telescoping", "standing"],
    )
    def test_a_cone_wound_by_hand_sets_and_pushes_as_its_own_ends_make_it(self, cone: ConicalSpring, sd_mm: float):
        """The tightest coil decides whether it sets, and its curve is its own; its mean diameter is 0.13 off."""
        spread = Spread(diameter_sd_mm=sd_mm, free_length_sd_mm=0.15, rate_sd=0.04, rate_on_diameter=3.0)
        lengths = (cone.free_length_mm - 3.0, 0.5 * cone.free_length_mm)
        forces = [(length, force_n((cone_of(cone),), cone.free_length_mm - length)) for length in lengths]
        points = tuple(
            WorkingPoint(Wanted(nominal=length), Wanted(nominal=push, minus=0.15 * push, plus=0.15 * push))
            for length, push in forces
        )
        need = make_conical_need(pocket=Pocket(), working=points)
        fit = judged(cone, need, spread)
        assert fit.fits == "yes"
        assert fit.chance == pytest.approx(sampled_wound(cone, need, spread), abs=0.02)

    def test_no_spread_and_a_fit_is_certain(self):
        assert judged(make_cone(), make_conical_need()).chance == pytest.approx(1.0)

    def test_a_cone_that_was_bought_is_held_to_the_grade_of_its_large_end(self):
        """EN 15800 grade 2, index over 14: 0.5 mm over 16 mm; a cylinder of its mean diameter would have 0.35."""
        stock = StockSpring("K", make_cone(), seller="Alder Row stock list")
        assert spread_of(stock, rate_n_per_mm(make_cone())).diameter_tolerance_mm == 0.5


class TestOptions:
    DRAWER = StockSpring("K-1", make_cone(), on_hand=2, shelf="drawer C")

    def test_a_cone_in_the_drawer_is_an_option_for_a_cone_and_a_cylinder_is_not(self):
        catalogue = Catalogue(springs=(self.DRAWER, StockSpring("T-1", make_spring(), on_hand=1)))
        assert [option.id for option in stock_options(catalogue, make_conical_need())] == ["K-1"]

    def test_salvaged_wire_of_a_cone_is_held_to_the_weakest_grade_too(self):
        fit = judge_stock(self.DRAWER, make_conical_need(), Bench())
        assert "unknown grade" in named(fit)

    def test_a_near_fit_in_the_drawer_stands_beside_the_cone_that_could_be_wound(self):
        near = WorkingPoint(Wanted(nominal=4.5), Wanted(nominal=9.9, minus=1.0, plus=1.0))
        verdict = decide(make_conical_need(working=(near,)), Catalogue(springs=(self.DRAWER,)))
        assert ("drawer", "K-1", "near") in [(each.option, each.id, each.fits) for each in verdict.options]
        assert verdict.option == "wound"
        assert verdict.because[0].rule == "wire-to-buy"
