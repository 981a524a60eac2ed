"""The line of force that a need asks for."""

from __future__ import annotations

import pytest

from sourcing.quantities import Wanted
from sourcing.winding.line import Line, OneForce, aim, wanted_line

from .cases import BENCH, need, point, refused, wanted


def line(**changes: object) -> Line:
    found = wanted_line(need(**changes), BENCH)
    assert isinstance(found, Line)
    return found


def test_two_forces_give_the_line_through_both() -> None:
    found = line()
    assert found.rate_n_per_mm == pytest.approx(1.30)
    assert found.free_length_mm == pytest.approx(24 + 9 / 1.30)


def test_one_force_and_a_free_length_give_the_line_through_both() -> None:
    found = line(working=(point(14, 22),), free_length_mm=wanted(31, 2))
    assert (found.rate_n_per_mm, found.free_length_mm) == pytest.approx((22 / 17, 31))


def test_a_free_length_that_disagrees_with_two_forces_is_met_halfway_by_its_tolerance() -> None:
    loose, tight = (line(free_length_mm=wanted(32, tolerance)) for tolerance in (5.0, 0.1))
    assert 30.92 < loose.free_length_mm < tight.free_length_mm < 32
    assert tight.free_length_mm == pytest.approx(32, abs=0.05)


def test_the_misses_over_their_tolerances_are_as_small_as_any_neighbour_has_them() -> None:
    working = (point(24, 9), point(19, 17), point(14, 22))
    best = line(working=working, free_length_mm=wanted(31, 2))

    def misses(rate: float, length: float) -> float:
        forces = [(24, 9, 1.35), (19, 17, 2.55), (14, 22, 3.3)]
        return sum(((rate * (length - at) - n) / t) ** 2 for at, n, t in forces) + ((length - 31) / 2) ** 2

    least = misses(best.rate_n_per_mm, best.free_length_mm)
    for rate_step, length_step in ((0.001, 0), (-0.001, 0), (0, 0.01), (0, -0.01), (0.001, -0.01)):
        assert misses(best.rate_n_per_mm + rate_step, best.free_length_mm + length_step) > least


def test_one_force_alone_leaves_the_free_length_to_the_search() -> None:
    assert wanted_line(need(working=(point(14, 22),)), BENCH) == OneForce(14, 22)


def test_a_force_range_is_aimed_at_in_its_middle_and_a_bound_half_a_tolerance_inside() -> None:
    assert aim(Wanted(low=8.0, high=12.0), 1.0).value == 10
    assert aim(Wanted(high=12.0), 1.0).value == 11.5
    assert aim(Wanted(nominal=9.0, minus=0.5, plus=2.0), 1.0).tolerance == 0.5


def test_without_any_force_one_is_asked_for_and_how_to_measure_it_is_said() -> None:
    refusal = refused(wanted_line(need(working=(point(24), point(14)), free_length_mm=wanted(31)), BENCH))
    assert refusal.rule == "no-force-wanted"
    assert "kitchen scale" in refusal.why


@pytest.mark.parametrize(
    "changes",
    [
        {"working": (point(24, 22), point(14, 22))},
        {"working": (point(24, 9),), "free_length_mm": wanted(24)},
    ],
)
def test_a_spring_that_need_not_push_harder_when_pressed_is_no_compression_spring(changes: dict[str, object]) -> None:
    assert refused(wanted_line(need(**changes), BENCH)).rule == "no-rising-force"
