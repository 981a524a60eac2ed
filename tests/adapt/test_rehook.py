"""A new loop bent out of an extension spring's last coil: fewer coils, stiffer, shorter, and as strong as it was."""

import pytest

from sourcing.adapt.rehook import rehook_steps, rehooked
from sourcing.springs.model import Hooks
from sourcing.springs.pulled import largest_safe_force_n
from sourcing.springs.rates import rate_of
from sourcing.stock.model import Bench, StockSpring
from sourcing.verdict.options import adapted_option, judge_stock
from tests.fit.cases import make_extension, make_extension_need, make_spring


def stock(**changes: object) -> StockSpring:
    return StockSpring("P-9", make_extension(**changes), on_hand=1)


def test_one_coil_pulled_for_a_new_loop_as_the_winding_model_has_it():
    """Case 5: rate 0.643, body 1.2 mm shorter."""
    mended = next(rehooked(stock(torn_hooks=1)))
    assert (mended.coils_taken, mended.loops) == (1.0, 1)
    assert round(rate_of(mended.spring), 3) == 0.643
    assert mended.spring.free_length_mm == pytest.approx(44.6 - 1.2)
    assert mended.spring.torn_hooks == 0


def test_two_torn_hooks_take_two_coils_and_half_loops_half_a_coil_each():
    assert next(rehooked(stock(torn_hooks=2))).coils_taken == 2.0
    assert next(rehooked(stock(torn_hooks=2, hooks=Hooks.HALF_LOOP, free_length_mm=38.0))).coils_taken == 1.0


def test_a_whole_spring_is_shortened_coil_by_coil_until_three_are_left():
    made = list(rehooked(stock()))
    assert [each.coils_taken for each in made] == [float(coils) for coils in range(2, 18)]
    assert {largest_safe_force_n(each.spring) for each in made} == {largest_safe_force_n(make_extension())}


def test_a_rate_that_was_measured_goes_with_the_coils_that_are_left():
    measured = StockSpring("P-9", make_extension(torn_hooks=1), stated_rate=0.6, on_hand=1)
    assert next(rehooked(measured)).stock.stated_rate == pytest.approx(0.6 * 20 / 19)


@pytest.mark.parametrize("hooks", [Hooks.THREADED_PLUG, Hooks.EXTENDED_HOOK])
def test_hooks_that_are_no_loops_of_its_coils_are_not_bent_anew(hooks: Hooks):
    assert list(rehooked(stock(hooks=hooks, free_length_mm=60.0))) == []
    assert list(rehooked(StockSpring("T-1", make_spring(), on_hand=1))) == []


def test_a_torn_spring_whose_mended_figures_fit_is_offered_with_its_minutes():
    torn, need, bench = stock(torn_hooks=1), make_extension_need(), Bench()
    option = adapted_option(torn, need, bench, judge_stock(torn, need, bench))
    assert option is not None
    assert (option.option, option.id, option.fits) == ("adapted", "P-9", "yes")
    assert option.cost is not None
    assert option.cost.amount == 0.0
    assert option.hours == pytest.approx(20 / 60)
    assert "1 coil pulled out and its torn hook bent anew: 0.643 N/mm, 43.4 mm inside the hooks" in option.how


def test_a_spring_that_fits_as_it_is_is_not_taken_apart():
    need, bench = make_extension_need(), Bench()
    assert adapted_option(stock(), need, bench, judge_stock(stock(), need, bench)) is None


def test_a_spring_too_long_is_cut_down_until_it_fits():
    long, need, bench = stock(total_coils=24.0, active_coils=24.0, free_length_mm=49.4), make_extension_need(), Bench()
    option = adapted_option(long, need, bench, judge_stock(long, need, bench))
    assert option is not None
    assert option.adapted is not None
    assert 19.0 <= option.adapted.spring.total_coils <= 21.0


def test_the_steps_say_how_wide_the_bend_is_and_what_to_check():
    steps = " ".join(rehook_steps(next(rehooked(stock(torn_hooks=1))), "mm"))
    assert "round a pin of 3.60 mm, no tighter" in steps
    assert "19 coils in the body, 43.4 mm between the insides of the hooks" in steps
    assert "1 coils" not in steps
