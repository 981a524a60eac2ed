"""What would change it: money, days, tolerance, on options made up for the purpose."""

from dataclasses import replace

from sourcing.need.model import Need
from sourcing.quantities import Money
from sourcing.stock.model import Bench
from sourcing.verdict.options import Option
from sourcing.verdict.rules import Choices
from sourcing.verdict.would_change import days, money
from tests.verdict.test_rules import BOUGHT, DRAWER, ORDERED, WOUND


def choices(*options: Option, within: float | None = None, hour: float = 0.0) -> Choices:
    need = Need(job="x", kind="compression", needed_within_days=within)
    return Choices(need, Bench(hour_value=Money(hour, "EUR")), options)


def test_the_value_of_an_hour_that_would_turn_winding_to_buying_is_told():
    """7.80 EUR more for 1.4 hours less: 5.57 EUR an hour."""
    said = money(choices(WOUND, BOUGHT), WOUND)
    assert "buying B costs 8.00 EUR" in said
    assert "worth more than 5.57 EUR (hour_value is 0.00)" in said


def test_the_value_of_an_hour_that_would_turn_buying_to_winding_is_told():
    assert "worth less than 5.57 EUR" in money(choices(BOUGHT, WOUND, hour=9.0), BOUGHT)


NO_PRICE = (
    "Money: no price would change this; nothing else that is sure to fit and comes in time has a price to compare"
)


def test_another_wire_is_no_question_of_money():
    said = money(choices(WOUND, replace(WOUND, id="W2", cost=Money(0.01, "EUR"))), WOUND)
    assert said == f"{NO_PRICE}; other wire to wind it from is left aside."


def test_where_a_spring_is_bought_wire_would_be_weighed_and_is_not_left_aside():
    assert money(choices(BOUGHT), BOUGHT) == f"{NO_PRICE}."


def test_what_takes_too_many_hours_would_not_be_chosen_at_any_price():
    """3 hours more at 10.00 EUR are not made up by a price of 8.00 EUR."""
    slow = replace(BOUGHT, option="adapted", id="A", hours=4.5)
    assert money(choices(WOUND, slow, hour=10.0), WOUND) == (
        "Money: no price would change this; adapting A, the next cheapest, takes too many hours even if it "
        "cost nothing."
    )


def test_what_comes_late_is_no_question_of_money_but_of_days():
    late = choices(WOUND, BOUGHT, within=2.0)
    assert money(late, WOUND).startswith(NO_PRICE)
    assert days(late, WOUND) == "Days: waiting 4 days instead of 2 would bring in buying B."


def test_nothing_at_all_is_mended_by_a_spring_maker():
    assert "a spring maker with a price" in money(choices(), None)
    assert "45.00 EUR would have it made" in money(choices(WOUND, ORDERED), WOUND)


def test_the_drawer_costs_nothing():
    assert money(choices(DRAWER, BOUGHT), DRAWER) == (
        "Money: no price would change this; the spring from the drawer costs nothing."
    )


def test_more_time_than_enough_changes_nothing():
    assert days(choices(WOUND, BOUGHT, within=9.0), WOUND) == (
        "Days: more time would change nothing; no other option that fits takes longer than the 9 days allowed."
    )
