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


@pytest.mark.parametrize(
    ("piece", "says"),
    [
        (
            EndPiece(EndShape.TANG_IN, 60.0, 90.0),
            "the coil has room for 8.25 mm, from wire to tip",
        ),
        (
            EndPiece(EndShape.TANG_IN, 8.3, 90.0),
            "the coil has room for 8.25 mm, from wire to tip",
        ),
        (EndPiece(EndShape.ACROSS, 7.7, 90.0), "it would not reach across the inside of the coil, 7.80 mm"),
        (EndPiece(EndShape.ACROSS, 9.7, 90.0), "the coil has room for 9.60 mm, from wire to tip"),
    ],
)
@pytest.mark.parametrize("has_it", [True, False])
def test_an_end_that_the_coil_has_no_room_for_is_near_even_where_a_spring_claims_it(
    piece: EndPiece, says: str, has_it: bool
) -> None:
    """Wire 0.9 and 7.8 mm inside: a tang in may be 7.8 + 0.45 long, a piece across 7.8 to 9.6."""
    fit = fit_of(make_spring(end_1=piece if has_it else None), end_1=wanted(piece))
    (limit,) = ends(fit)
    assert (fit.fits, limit.hard) == ("near", False)
    assert limit.why.endswith(says)


@pytest.mark.parametrize("length_mm", [7.8, 9.6])
def test_a_piece_across_from_inside_to_outside_has_room(length_mm: float) -> None:
    across = EndPiece(EndShape.ACROSS, length_mm, 90.0)
    assert ends(fit_of(make_spring(end_1=across), end_1=wanted(across)))[0].holds


@pytest.mark.parametrize(("key", "holds"), [("end_1", True), ("end_2", False)])
def test_each_end_of_a_cone_has_the_room_of_its_own_coil(key: str, holds: bool) -> None:
    """16.1 mm inside the large end, which is end 1, and 6.1 mm inside the small one."""
    tang = EndPiece(EndShape.TANG_IN, 10.0, 90.0)
    (limit,) = ends(fit_of(make_cone(**{key: tang}), kind="conical", **{key: wanted(tang)}))
    assert limit.holds is holds


def test_an_end_within_its_tolerance_or_the_houses_holds() -> None:
    near = EndPiece(EndShape.TANG_IN, 4.9, 86.0)
    assert ends(fit_of(make_spring(end_1=near), end_1=wanted(TANG)))[0].holds
    assert not ends(fit_of(make_spring(end_1=near), end_1=wanted(TANG, 0.5)))[0].holds


def test_a_tang_that_nobody_asked_for_is_cut_off_where_the_need_says_how_the_ends_should_be() -> None:
    fit = fit_of(make_spring(end_1=TANG), ends=Ends.CLOSED_GROUND)
    (limit,) = ends(fit)
    assert limit.why == "a tang in, 4 mm long, bent by 90 deg; closed-ground ends are wanted: cut it off"
    assert ends(fit_of(make_spring(end_1=TANG))) == []
