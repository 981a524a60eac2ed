"""The rules that choose, one by one, on options made up for the purpose."""

from dataclasses import replace
from typing import Any

import pytest

from sourcing.need.model import Need
from sourcing.quantities import Money
from sourcing.stock.model import Bench
from sourcing.verdict.options import Option
from sourcing.verdict.rules import RULES, Choices

DRAWER = Option("drawer", "D", "yes", 0.95, None, Money(0.0, "EUR"), "EUR", 0.0, 0.1, "")
BOUGHT = Option("bought", "B", "yes", 0.95, None, Money(8.0, "EUR"), "EUR", 4.0, 0.1, "")
WOUND = Option("wound", "W", "yes", 0.95, None, Money(0.2, "EUR"), "EUR", 0.0, 1.5, "")
ORDERED = Option("ordered", None, "yes", 0.95, None, Money(45.0, "EUR"), "EUR", 15.0, 0.1, "")


def decided(*options: Option, days: float | None = None, **bench: Any) -> tuple[str, str | None]:
    """The rule that decides, and the id it chooses."""
    need = Need(job="x", kind="compression", needed_within_days=days)
    choices = Choices(need, Bench(**bench), options)
    for rule in RULES:
        if (option := rule.finds(choices)) is not None:
            return rule.name, option.id or option.option
    return "nothing-serves", None


def test_a_spring_in_the_drawer_that_fits_is_taken_before_all_others():
    assert decided(DRAWER, BOUGHT, WOUND, ORDERED) == ("drawer-fits", "D")


def test_an_option_below_the_least_chance_is_passed_over_for_one_that_reaches_it():
    assert decided(replace(DRAWER, chance=0.6), WOUND) == ("least-cost-in-time", "W")


def test_where_an_hour_costs_nothing_winding_is_cheaper():
    assert decided(BOUGHT, WOUND) == ("least-cost-in-time", "W")


def test_where_an_hour_costs_more_than_the_difference_buying_is_cheaper():
    assert decided(BOUGHT, WOUND, hour_value=Money(6.0, "EUR")) == ("least-cost-in-time", "B")


def test_what_comes_too_late_is_passed_over():
    assert decided(BOUGHT, WOUND, days=3.0, hour_value=Money(6.0, "EUR")) == ("least-cost-in-time", "W")


def test_what_takes_unknown_time_is_not_in_time():
    assert decided(replace(BOUGHT, days=None), days=3.0) == ("fits-but-late", "B")


def test_a_price_in_other_money_is_never_the_least():
    assert decided(replace(BOUGHT, cost=Money(0.01, "SEK")), WOUND) == ("least-cost-in-time", "W")


def test_a_near_fit_in_the_drawer_that_is_sure_comes_before_what_is_late():
    assert decided(replace(DRAWER, fits="near"), BOUGHT, days=1.0) == ("drawer-near", "D")


def test_what_fits_but_comes_late_is_better_than_a_doubt():
    assert decided(BOUGHT, replace(WOUND, chance=0.3), days=1.0) == ("fits-but-late", "B")


def test_a_spring_maker_who_is_in_time_is_better_than_what_comes_late():
    assert decided(BOUGHT, replace(ORDERED, days=1.0), days=2.0) == ("ordered-in-time", "ordered")


def test_a_spring_maker_is_not_asked_before_a_need_that_can_wait():
    assert decided(BOUGHT, replace(ORDERED, days=1.0)) == ("least-cost-in-time", "B")


def test_of_what_comes_late_the_soonest_is_taken():
    assert decided(BOUGHT, replace(BOUGHT, id="B2", days=2.0), days=1.0) == ("fits-but-late", "B2")


def test_a_soft_limit_alone_is_better_than_a_doubt():
    assert decided(replace(WOUND, fits="near"), replace(DRAWER, chance=0.3)) == ("near-but-sure", "W")


def test_a_doubt_is_better_than_ordering():
    assert decided(replace(DRAWER, chance=0.3), ORDERED) == ("fits-with-doubt", "D")


def test_ordering_is_better_than_a_near_fit_with_a_poor_chance():
    assert decided(replace(DRAWER, fits="near", chance=0.1), ORDERED) == ("ordered", "ordered")


def test_a_near_fit_is_better_than_nothing():
    assert decided(replace(DRAWER, fits="near", chance=0.1)) == ("nearest", "D")


@pytest.mark.parametrize("option", [DRAWER, BOUGHT, WOUND])
def test_what_does_not_fit_is_never_chosen(option: Option):
    assert decided(replace(option, fits="no")) == ("nothing-serves", None)


def test_every_rule_has_a_name_of_its_own_and_says_why_and_otherwise():
    assert len({rule.name for rule in RULES}) == len(RULES)
    assert all(rule.why and rule.otherwise for rule in RULES)
