"""Ends that are wanted to hook into a part: as wanted, or near with what to do about it."""

from __future__ import annotations

import pytest

from sourcing.fit.judge import judge
from sourcing.fit.model import Fit, Limit, Spread
from sourcing.need.model import WantedEnd
from sourcing.quantities import Wanted
from sourcing.springs.model import EndPiece, Ends, EndShape
from sourcing.stock.model import Bench

from .cases import make_cone, make_need, make_spring

TANG = EndPiece(EndShape.TANG_IN, 4.0, 90.0)
LEG = EndPiece(EndShape.LEG, 12.0, 0.0)


def wanted(piece: EndPiece, tolerance: float | None = None) -> WantedEnd:
    return WantedEnd(piece.shape, Wanted(piece.length_mm, tolerance, tolerance), piece.angle_deg)


def fit_of(spring: object, **need: object) -> Fit:
    return judge(spring, make_need(**need), Bench(), Spread())  # type: ignore[arg-type]


def ends(fit: Fit) -> list[Limit]:
    return [limit for limit in fit.limits if limit.limit in ("end 1", "end 2", "end pieces")]


def test_ends_as_wanted_hold() -> None:
    found = ends(fit_of(make_spring(end_1=TANG, end_2=LEG), end_1=wanted(TANG), end_2=wanted(LEG)))
    assert [limit.holds for limit in found] == [True, True]
    assert found[0].why == "a tang in, 4 mm long, bent by 90 deg, as wanted"


def test_a_cylinder_serves_either_way_round() -> None:
    found = ends(fit_of(make_spring(end_1=LEG, end_2=TANG), end_1=wanted(TANG), end_2=wanted(LEG)))
    assert all(limit.holds for limit in found)


def test_a_cone_does_not() -> None:
    found = ends(fit_of(make_cone(end_1=LEG, end_2=TANG), kind="conical", end_1=wanted(TANG), end_2=wanted(LEG)))
    assert [limit.holds for limit in found] == [False, False]


def test_a_plain_spring_is_near_and_says_what_an_end_takes_of_its_coil() -> None:
    plain = fit_of(make_spring(), end_1=wanted(LEG))
    assert plain.fits == "near"
    (limit,) = ends(plain)
    assert not limit.hard
    assert limit.why == (
        "plain, and cannot hook into its part; a straight leg, 12 mm long is wanted: bent out of the last coil it "
        "takes 0.4 of a turn, and the spring is that much shorter"
    )


@pytest.mark.parametrize(
    ("piece", "says"),
    [
        (LEG, "straighten it and bend it anew, or choose another"),
        (EndPiece(EndShape.TANG_IN, 2.9, 90.0), "it is too short"),
        (EndPiece(EndShape.TANG_IN, 5.1, 90.0), "cut it to length"),
        (EndPiece(EndShape.TANG_IN, 4.0, 80.0), "bend it further or less"),
    ],
)
def test_an_end_that_differs_is_near_with_what_to_do(piece: EndPiece, says: str) -> None:
    fit = fit_of(make_spring(end_1=piece), end_1=wanted(TANG))
    (limit,) = ends(fit)
    assert (limit.holds, limit.hard) == (False, False)
    assert limit.why.endswith(says)


def test_an_end_within_its_tolerance_or_the_houses_holds() -> None:
    near = EndPiece(EndShape.TANG_IN, 4.9, 86.0)
    assert ends(fit_of(make_spring(end_1=near), end_1=wanted(TANG)))[0].holds
    assert not ends(fit_of(make_spring(end_1=near), end_1=wanted(TANG, 0.5)))[0].holds


def test_a_tang_that_nobody_asked_for_is_cut_off_where_the_need_says_how_the_ends_should_be() -> None:
    fit = fit_of(make_spring(end_1=TANG), ends=Ends.CLOSED_GROUND)
    (limit,) = ends(fit)
    assert limit.why == "a tang in, 4 mm long, bent by 90 deg; closed-ground ends are wanted: cut it off"
    assert ends(fit_of(make_spring(end_1=TANG))) == []
