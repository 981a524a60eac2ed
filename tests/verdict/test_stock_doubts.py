"""What nobody vouches for makes a spring near at best, and is said."""

from dataclasses import replace

from sourcing.fit.model import Limit
from sourcing.stock.model import Bench, StockSpring
from sourcing.verdict.options import judge_stock
from tests.fit.cases import make_need, make_spring

SALVAGED = StockSpring("B", make_spring(), on_hand=1)
"""885 MPa pressed solid; 0.56 of 2270 MPa (EN 10270-1 SH) is 1271, of 2010 (SM, the weakest at 0.9 mm) 1126."""


def doubt(stock: StockSpring, name: str) -> Limit | None:
    return next((each for each in judge_stock(stock, make_need(), Bench()).limits if each.limit == name), None)


def test_salvaged_wire_is_held_to_the_weakest_grade_too():
    limit = doubt(SALVAGED, "unknown grade")
    assert limit is not None
    assert limit.holds
    assert "were it EN 10270-1 SM, the weakest" in limit.why


def test_a_spring_that_only_the_stronger_grade_stands_is_near():
    """Free 38: 38.3 N pressed solid, 8 x 8.7 x 38.3/(pi 0.9^3) = 1163 MPa, between 1126 and 1271."""
    strained = replace(SALVAGED, spring=make_spring(free_length_mm=38.0))
    need = make_need(working=(), free_length_mm=None)
    fit = judge_stock(strained, need, Bench())
    assert fit.fits == "near"
    assert [each.limit for each in fit.broken] == ["unknown grade"]


def test_a_seller_or_a_named_grade_vouches_for_the_wire():
    assert doubt(replace(SALVAGED, seller="Alder Row stock list"), "unknown grade") is None
    assert doubt(replace(SALVAGED, spring=make_spring("EN 10270-1 SH")), "unknown grade") is None


def test_a_rate_that_is_stated_is_believed_within_fifteen_per_cent():
    stated = replace(SALVAGED, stated_rate=1.45)
    fit = judge_stock(stated, make_need(), Bench())
    assert fit.deviations[0].got == 1.45 * 7.0
    limit = doubt(stated, "stated rate")
    assert limit is not None
    assert limit.holds


def test_a_rate_that_the_dimensions_deny_makes_the_spring_near():
    """1.31 N/mm by the dimensions; 1.55 is 18 % more."""
    limit = doubt(replace(SALVAGED, stated_rate=1.55), "stated rate")
    assert limit is not None
    assert not limit.holds
    assert not limit.hard
    assert limit.why.startswith("1.55 N/mm stated; the dimensions give 1.31 N/mm")
