"""The chance, held against plain sampling of the same spread (10 000 points, fixed seed)."""

from random import Random

import pytest

from sourcing.fit.judge import judge
from sourcing.fit.model import Spread
from sourcing.fit.pressed import PressedCase
from sourcing.fit.score import deviation_over_tolerance, force_house_tolerance_n
from sourcing.need.model import Need, Pocket
from sourcing.quantities import Wanted
from sourcing.springs.compression import rate_n_per_mm
from sourcing.stock.model import Bench
from tests.fit.cases import make_need, make_spring

SAMPLING_NOISE = 0.015
"""Three standard deviations of a share of 10 000 draws near one half."""


def sampled(need: Need, spread: Spread, draws: int = 10_000) -> float:
    """The share of drawn springs that clear the pocket and meet every wanted figure within its tolerance."""
    random, spring, bench = Random(20261125), make_spring(), Bench()
    rate = rate_n_per_mm(
        spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils, spring.shear_modulus_mpa
    )
    growth = PressedCase(spring, need, bench, spread, rate).seats[0].growth_mm
    works = 0
    for _ in range(draws):
        mean = random.gauss(spring.mean_diameter_mm, spread.diameter_sd_mm)
        free = random.gauss(spring.free_length_mm, spread.free_length_sd_mm)
        k = (
            rate
            * (mean / spring.mean_diameter_mm) ** -spread.rate_on_diameter
            * random.lognormvariate(0.0, spread.rate_sd)
        )
        good = need.free_length_mm is None or deviation_over_tolerance(need.free_length_mm, free, 1.0)[0] <= 1.0
        if need.pocket.bore_mm is not None:
            bore = random.gauss(need.pocket.bore_mm.nominal or 0.0, 0.03)
            good &= mean + spring.wire_diameter_mm + growth + bench.clearance.bore_mm <= bore
        if need.pocket.rod_mm is not None:
            rod = random.gauss(need.pocket.rod_mm.nominal or 0.0, 0.03)
            good &= mean - spring.wire_diameter_mm - bench.clearance.rod_mm >= rod
        for point in need.working:
            if point.force_n is not None:
                house = force_house_tolerance_n(point.force_n, bench.tolerances)
                force = k * max(0.0, free - point.at_mm)
                good &= deviation_over_tolerance(point.force_n, force, house)[0] <= 1.0
        works += good
    return works / draws


@pytest.mark.parametrize(
    "spread",
    [
        Spread(diameter_sd_mm=0.15, free_length_sd_mm=0.6, rate_sd=0.04),
        Spread(diameter_sd_mm=0.25, free_length_sd_mm=1.2, rate_sd=0.08),
        Spread(diameter_sd_mm=0.20, free_length_sd_mm=0.4, rate_sd=0.02, rate_on_diameter=3.0),
        Spread(diameter_sd_mm=0.50, free_length_sd_mm=0.0, rate_sd=0.05, rate_on_diameter=3.0),
        Spread(diameter_sd_mm=0.0, free_length_sd_mm=1.0, rate_sd=0.0),
    ],
)
@pytest.mark.parametrize("bore_mm", [11.0, 10.1, 9.9])
def test_the_chance_agrees_with_sampling(spread: Spread, bore_mm: float):
    need = make_need(pocket=Pocket(bore_mm=Wanted(nominal=bore_mm), rod_mm=Wanted(nominal=7.3)))
    assert judge(make_spring(), need, Bench(), spread).chance == pytest.approx(
        sampled(need, spread), abs=SAMPLING_NOISE
    )


def test_no_spread_and_a_fit_is_certain():
    need = make_need(pocket=Pocket(bore_mm=Wanted(nominal=11.0)))
    assert judge(make_spring(), need, Bench(), Spread()).chance == pytest.approx(1.0)


def test_a_broken_limit_that_spread_cannot_mend_leaves_no_chance():
    assert judge(make_spring(), make_need(temperature_c=200.0), Bench(), Spread()).chance == 0.0


def test_more_spread_never_raises_a_good_chance():
    chances = [
        judge(make_spring(), make_need(), Bench(), Spread(0.0, sd, 3 * sd, sd / 5)).chance
        for sd in (0.05, 0.1, 0.2, 0.4)
    ]
    assert chances == sorted(chances, reverse=True)


def test_a_wound_spring_that_would_set_if_it_came_out_small_has_that_in_its_chance():
    """Free 39.9: 1239 of 1271 MPa pressed solid; below a mean diameter of 8.59, half a sd under 8.7, it would set."""
    strained, need = make_spring(free_length_mm=39.9), make_need(working=(), free_length_mm=None, pocket=Pocket())
    edge = judge(strained, need, Bench(), Spread(diameter_sd_mm=0.2, rate_on_diameter=3.0))
    assert edge.fits == "yes"
    assert 0.4 < edge.chance < 0.75
    assert judge(make_spring(), need, Bench(), Spread(diameter_sd_mm=0.2, rate_on_diameter=3.0)).chance == (
        pytest.approx(1.0)
    )
