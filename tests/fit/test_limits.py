"""Each limit by its rule: what breaks it, whether that is hard, and the words."""

from dataclasses import replace

import pytest

from sourcing.fit.judge import judge
from sourcing.fit.model import Fit, Limit, Spread
from sourcing.need.model import Need, Pocket, WorkingPoint
from sourcing.quantities import Wanted
from sourcing.springs.model import CompressionSpring, Ends
from sourcing.stock.model import Bench
from tests.fit.cases import make_need, make_spring


def judged(spring: CompressionSpring, need: Need, spread: Spread | None = None) -> Fit:
    return judge(spring, need, Bench(), spread or Spread())


def limit(fit: Fit, name: str) -> Limit:
    return next(each for each in fit.limits if each.limit == name)


def working(*lengths_mm: float) -> tuple[WorkingPoint, ...]:
    return tuple(WorkingPoint(Wanted(nominal=length)) for length in lengths_mm)


def test_the_punch_spring_fits_its_punch():
    fit = judged(make_spring(), make_need())
    assert fit.fits == "yes"
    assert not fit.broken


def test_growth_tolerance_and_clearance_are_all_counted_in_the_bore():
    """Outside 9.6 + growth 0.13 + clearance 0.2 = 9.93: 9.95 clears, and a tolerance of 0.1 takes it away."""
    need = make_need(pocket=Pocket(bore_mm=Wanted(nominal=9.95)))
    assert limit(judged(make_spring(), need), "bore clearance").holds
    tight = judged(make_spring(), need, Spread(diameter_tolerance_mm=0.1))
    assert tight.fits == "no"
    assert limit(tight, "bore clearance").why == (
        "outside 9.60 mm + growth 0.13 mm + tolerance 0.10 mm + clearance 0.20 mm = 10.03 mm; the bore is 9.95 mm"
    )


def test_a_bore_measured_with_doubt_counts_at_its_smallest():
    need = make_need(pocket=Pocket(bore_mm=Wanted(nominal=10.0, minus=0.2, plus=0.2)))
    assert not limit(judged(make_spring(), need), "bore clearance").holds


def test_a_rod_that_is_too_thick_is_refused():
    fit = judged(make_spring(), make_need(pocket=Pocket(rod_mm=Wanted(nominal=7.7))))
    assert fit.fits == "no"
    assert limit(fit, "rod clearance").why == "inside 7.80 mm - clearance 0.20 mm = 7.60 mm; the rod is 7.70 mm"


def test_a_spring_solid_before_the_shortest_length_is_refused():
    fit = judged(make_spring(), make_need(working=working(24.0, 8.7), free_length_mm=None))
    assert fit.fits == "no"
    assert limit(fit, "solid length").why == "solid at 8.78 mm; the shortest working length is 8.7 mm"


def test_inside_the_minimum_gaps_is_near_not_refused():
    """Case 1: solid 8.775, Sa 1.675: at 10 mm only 1.225 mm are left."""
    fit = judged(make_spring(), make_need(working=working(24.0, 10.0), free_length_mm=None))
    assert fit.fits == "near"
    assert [each.limit for each in fit.broken] == ["minimum gaps"]
    assert "noise" in fit.broken[0].why


def test_a_spring_over_its_static_stress_is_refused():
    """Free 60: 46 mm of travel to 14 mm give 60 N and 1831 MPa, over half of 2270 MPa."""
    fit = judged(make_spring(free_length_mm=60.0), make_need(working=working(24.0, 14.0), free_length_mm=None))
    assert fit.fits == "no"
    assert not limit(fit, "stress at the shortest length").holds
    assert not limit(fit, "stress at solid").holds


def test_stress_at_solid_alone_refuses():
    """0.8 wire at mean 8.8: 963 MPa at the shortest length, but 1450 at solid against 0.56 of 2310."""
    spring = make_spring(wire_diameter_mm=0.8, mean_diameter_mm=8.8, active_coils=4.71, total_coils=6.71)
    fit = judged(spring, make_need(working=working(24.0, 14.0), free_length_mm=None))
    assert limit(fit, "stress at the shortest length").holds
    assert not limit(fit, "stress at solid").holds


def test_wire_outside_the_strength_table_is_near_and_says_so():
    spring = make_spring(wire_diameter_mm=0.2, mean_diameter_mm=2.0)
    fit = judged(spring, make_need(pocket=Pocket(), working=(), free_length_mm=None))
    assert fit.fits == "near"
    assert "does not reach 0.2 mm wire" in limit(fit, "stress at solid").why


@pytest.mark.parametrize(
    ("pocket", "fits"),
    [
        (Pocket(), "no"),
        (Pocket(bore_mm=Wanted(nominal=11.0)), "near"),
        (Pocket(bore_mm=Wanted(nominal=40.0)), "no"),
        (Pocket(rod_mm=Wanted(nominal=6.0)), "near"),
        (Pocket(rod_mm=Wanted(nominal=2.0)), "no"),
    ],
)
def test_buckling_is_refused_unguided_and_near_in_a_close_bore_or_on_a_close_rod(pocket: Pocket, fits: str):
    spring = make_spring(free_length_mm=90.0, active_coils=30.0, total_coils=32.0)
    fit = judged(spring, make_need(pocket=pocket, working=working(80.0, 50.0), free_length_mm=None))
    assert fit.fits == fits
    assert [each.limit for each in fit.broken] == ["buckling"]


@pytest.mark.parametrize(("at_c", "holds"), [(20.0, True), (100.0, True), (101.0, False), (-31.0, False)])
def test_temperature_is_held_against_the_material(at_c: float, holds: bool):
    fit = judged(make_spring(), make_need(temperature_c=at_c))
    assert limit(fit, "temperature").holds is holds
    assert (fit.fits == "yes") is holds


@pytest.mark.parametrize(
    ("material", "where", "fits"),
    [
        ("music-wire", "indoor-dry", "yes"),
        ("music-wire", "damp", "near"),
        ("music-wire", "salt", "no"),
        ("stainless-1.4310", "wet", "yes"),
        ("stainless-1.4310", "food", "yes"),
        ("stainless-1.4310", "salt", "near"),
    ],
)
def test_surroundings_are_held_against_the_material(material: str, where: str, fits: str):
    need = make_need(surroundings=(where,), working=working(24.0, 14.0), free_length_mm=None)
    assert judged(make_spring(material), need).fits == fits


def test_an_index_outside_the_standard_is_near():
    spring = make_spring(mean_diameter_mm=0.9 * 21, free_length_mm=20.0)
    fit = judged(spring, make_need(pocket=Pocket(), working=working(18.0, 15.0), free_length_mm=None))
    assert [each.limit for each in fit.broken] == ["spring index"]
    assert fit.fits == "near"


def test_a_spring_that_is_never_pressed_is_refused():
    fit = judged(make_spring(free_length_mm=14.0), make_need(working=working(24.0, 14.0), free_length_mm=None))
    assert fit.fits == "no"
    assert limit(fit, "reach").hard


def test_a_spring_loose_at_its_longest_working_length_is_near():
    fit = judged(make_spring(free_length_mm=23.0), make_need(working=working(24.0, 14.0), free_length_mm=None))
    assert fit.fits == "near"


def test_a_pocket_shallower_than_the_solid_spring_is_refused():
    fit = judged(make_spring(), make_need(pocket=Pocket(depth_mm=Wanted(nominal=8.0)), working=()))
    assert not limit(fit, "depth").holds
    assert fit.fits == "no"


def test_other_ends_than_wished_are_near():
    assert judged(make_spring(), make_need(ends=Ends.OPEN)).fits == "near"


def test_a_need_with_a_pocket_alone_is_judged_by_its_clearances_alone():
    fit = judged(make_spring(), Need(job="x", kind="compression", pocket=Pocket(bore_mm=Wanted(nominal=11.0))))
    assert fit.fits == "yes"
    assert fit.score is None
    named = {each.limit for each in fit.limits}
    assert "solid length" not in named
    assert "rod clearance" not in named


def test_a_deviation_between_one_and_two_tolerances_is_near_and_beyond_two_is_no():
    near = make_need(free_length_mm=Wanted(nominal=34.0, minus=2.0, plus=2.0))
    far = replace(near, free_length_mm=Wanted(nominal=36.0, minus=2.0, plus=2.0))
    assert judged(make_spring(), near).fits == "near"
    assert judged(make_spring(), far).fits == "no"


def test_a_bench_in_inches_is_told_in_inches():
    fit = judge(make_spring(), make_need(), Bench(units="inch"), Spread())
    assert limit(fit, "solid length").why == "solid at 0.345 in; the shortest working length is 0.551 in"
