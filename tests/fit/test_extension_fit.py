"""An extension spring in its place: hooks, reach, initial tension, stress part by part, hooking it in, chance."""

from random import Random

import pytest

from sourcing.fit.judge import judge
from sourcing.fit.model import Fit, Limit, Spread
from sourcing.fit.score import deviation_over_tolerance
from sourcing.need.model import Need, WorkingPoint
from sourcing.quantities import Wanted
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.pulled import rate_n_per_mm
from sourcing.stock.model import Bench
from tests.fit.cases import make_extension, make_extension_need

SAMPLING_NOISE = 0.02
"""Three standard deviations of a share of 10 000 draws near one half, and the coarseness of ten strips."""


def judged(spring: ExtensionSpring | None = None, **changes: object) -> Fit:
    return judge(spring or make_extension(), make_extension_need(**changes), Bench(), Spread())


def limit(fit: Fit, name: str) -> Limit:
    return next(each for each in fit.limits if each.limit == name)


def at(length_mm: float, force_n: float | None = None) -> WorkingPoint:
    force = None if force_n is None else Wanted(nominal=force_n, minus=0.15 * force_n, plus=0.15 * force_n)
    return WorkingPoint(Wanted(nominal=length_mm), force)


def test_the_force_is_the_initial_tension_and_what_it_is_pulled_by():
    fit = judged()
    assert fit.fits == "yes"
    assert [round(row.got, 2) for row in fit.deviations] == [16.86, 8.3]


def test_a_torn_hook_is_a_refusal_and_leaves_no_chance():
    fit = judged(make_extension(torn_hooks=1))
    assert (fit.fits, fit.chance) == ("no", 0.0)
    assert limit(fit, "hooks whole").why == "one of its hooks is torn off"


def test_a_body_that_is_wider_than_the_bore_is_refused_and_pulling_makes_it_no_wider():
    fit = judged(make_extension(mean_diameter_mm=12.9))
    assert limit(fit, "bore clearance").why == "outside 14.10 mm + clearance 0.20 mm = 14.30 mm; the bore is 14.00 mm"


def test_a_spring_longer_than_its_longest_working_length_is_never_pulled():
    fit = judged(make_extension(free_length_mm=70.0))
    assert limit(fit, "reach").hard
    assert limit(fit, "reach").why == "free length 70 mm inside the hooks: never pulled, even at 64 mm"


def test_a_spring_longer_than_its_shortest_working_length_is_loose_there_and_near():
    fit = judged(make_extension(free_length_mm=52.0), working=(at(64.0, 13.0), at(50.0)))
    assert fit.fits == "near"
    assert limit(fit, "reach").why.endswith("shortest working length 50 mm: loose there")


def test_an_initial_tension_above_what_is_wanted_at_the_shortest_length_is_told():
    fit = judged(make_extension(initial_tension_n=7.0), working=(at(64.0, 18.0), at(46.0, 5.5)))
    told = limit(fit, "initial tension")
    assert not told.holds
    assert told.why == "it opens at 7.0 N; at 46 mm at most 6.3 N is wanted: it holds harder before it gives at all"


def test_an_initial_tension_more_than_its_coils_can_hold_is_near_at_best():
    told = limit(judged(make_extension(initial_tension_n=12.0)), "stated initial tension")
    assert (told.holds, told.hard) == (False, False)
    assert told.why.startswith("12.0 N stated; a spring of its index can hold ")


def test_an_unknown_initial_tension_is_near_where_one_end_of_what_is_usual_does_not_serve():
    spring = make_extension(initial_tension_n=None)
    assert not limit(judged(spring), "initial tension unknown").holds
    wide = (WorkingPoint(Wanted(nominal=64.0), Wanted(nominal=16.0, minus=6.0, plus=6.0)),)
    assert limit(judged(spring, working=wide), "initial tension unknown").holds


def test_the_hook_s_bend_comes_to_its_limit_before_the_body_and_the_sheet_says_so():
    fit = judged(working=(at(105.0),))
    assert not limit(fit, "stress at the hook's bend").holds
    assert limit(fit, "stress in the body").holds
    assert "; this is what breaks first" in limit(fit, "stress at the hook's bend").why
    assert fit.fits == "no"


def test_a_spring_that_must_be_pulled_past_its_largest_safe_length_to_go_in_cannot_be_fitted():
    assert limit(judged(pull_to_fit_mm=90.0), "hooking it in").holds
    refused = limit(judged(pull_to_fit_mm=110.0), "hooking it in")
    assert refused.hard
    assert not refused.holds
    assert refused.why.endswith("what gives is the hook, by torsion where it leaves the body")


def test_threaded_plugs_have_no_hook_to_break():
    fit = judged(make_extension(hooks=Hooks.THREADED_PLUG))
    assert "stress at the hook's bend" not in {each.limit for each in fit.limits}


def test_other_hooks_than_wanted_are_near():
    fit = judged(hooks=Hooks.HALF_LOOP)
    assert fit.fits == "near"
    assert limit(fit, "hooks").why == "full-loop hooks; half-loop wanted"


def test_a_threaded_plug_is_near_where_the_need_does_not_say_that_plugs_hold():
    plug = make_extension(hooks=Hooks.THREADED_PLUG)
    unsaid, said = judged(plug), judged(plug, hooks=Hooks.THREADED_PLUG)
    assert (unsaid.fits, said.fits) == ("near", "yes")
    assert [each.why for each in unsaid.broken] == [
        "a threaded plug at each end; the need does not say that plugs hold there (hooks: threaded-plug)"
    ]
    assert judged().fits == "yes"


def test_the_hook_that_is_worked_often_breaks_before_the_body():
    fit = judged(cycles=1e6, working=(at(80.0), at(50.0)))
    assert limit(fit, "life").hard or not limit(fit, "life").holds


def sampled(need: Need, spread: Spread, draws: int = 10_000) -> float:
    """The share of drawn springs that meet every wanted force within its tolerance."""
    random, spring = Random(20261125), make_extension()
    rate, works = rate_n_per_mm(spring), 0
    for _ in range(draws):
        free = random.gauss(spring.free_length_mm, spread.free_length_sd_mm)
        tension = random.gauss(5.0, spread.initial_tension_sd_n)
        k = rate * random.lognormvariate(0.0, spread.rate_sd)
        good = True
        for point in need.working:
            assert point.force_n is not None
            force = tension + k * (point.at_mm - free) if point.at_mm > free else 0.0
            good &= deviation_over_tolerance(point.force_n, force, 0.0)[0] <= 1.0
        works += good
    return works / draws


@pytest.mark.parametrize(
    "spread",
    [
        Spread(free_length_sd_mm=0.6, rate_sd=0.05, initial_tension_sd_n=0.5),
        Spread(free_length_sd_mm=1.2, rate_sd=0.10, initial_tension_sd_n=1.0),
        Spread(rate_sd=0.08, initial_tension_sd_n=1.5),
    ],
)
def test_the_chance_agrees_with_plain_sampling(spread: Spread):
    need = make_extension_need(pocket=make_extension_need().pocket.__class__())
    fit = judge(make_extension(), need, Bench(), spread)
    assert fit.chance == pytest.approx(sampled(need, spread), abs=SAMPLING_NOISE)
