"""Tolerance scoring, against the numbers of design section 6 worked by hand."""

from hypothesis import given
from hypothesis import strategies as st

from sourcing.fit.model import Deviation
from sourcing.fit.score import LARGEST_SHOWN, allowed, desirability, deviation_over_tolerance, score
from sourcing.quantities import Wanted


def row(deviation: float) -> Deviation:
    return Deviation("force", 24.0, "mm", "N", Wanted(nominal=1.0), 1.0, 1.0, deviation)


def test_desirability_is_one_at_nothing_half_at_one_tolerance_and_nothing_at_two():
    assert [desirability(d) for d in (0.0, 1.0, 2.0, 7.0)] == [1.0, 0.5, 0.0, 0.0]


def test_the_score_is_the_geometric_mean_of_the_desirabilities():
    # sqrt(1.0 * 0.5) = 0.7071
    assert score([row(0.0), row(1.0)]) == 71


def test_one_figure_beyond_two_tolerances_leaves_no_score():
    assert score([row(0.0), row(0.0), row(2.5)]) == 0


def test_nothing_wanted_is_nothing_scored():
    assert score([]) is None


def test_each_side_of_a_nominal_has_its_own_tolerance():
    wanted = Wanted(nominal=10.0, minus=0.5, plus=1.0)
    assert deviation_over_tolerance(wanted, 11.0, 9.0) == (1.0, 1.0)
    assert deviation_over_tolerance(wanted, 9.0, 9.0) == (2.0, 0.5)


def test_a_nominal_without_a_tolerance_takes_that_of_the_house():
    assert deviation_over_tolerance(Wanted(nominal=10.0), 11.0, 2.0) == (0.5, 2.0)


def test_on_the_right_side_of_a_bound_nothing_deviates():
    assert deviation_over_tolerance(Wanted(low=5.0), 50.0, 1.0)[0] == 0.0
    assert deviation_over_tolerance(Wanted(high=12.0), 1.0, 1.0)[0] == 0.0


def test_outside_a_bound_the_deviation_counts_from_the_bound():
    assert deviation_over_tolerance(Wanted(high=12.0), 12.5, 1.0)[0] == 0.5


def test_a_tolerance_of_nothing_gives_a_number():
    assert deviation_over_tolerance(Wanted(nominal=1.0, minus=0.0, plus=0.0), 2.0, 1.0)[0] == LARGEST_SHOWN


wanteds = st.one_of(
    st.builds(Wanted, nominal=st.floats(1.0, 100.0), minus=st.floats(0.01, 10.0), plus=st.floats(0.01, 10.0)),
    st.builds(Wanted, low=st.floats(1.0, 50.0), high=st.floats(51.0, 100.0)),
    st.builds(Wanted, low=st.floats(1.0, 100.0)),
    st.builds(Wanted, high=st.floats(1.0, 100.0)),
)


@given(wanteds, st.floats(0.1, 200.0), st.floats(1.0, 3.0), st.floats(0.01, 10.0))
def test_a_score_never_rises_when_a_deviation_grows(wanted: Wanted, got: float, factor: float, house: float):
    """Moving a figure further from what is wanted, on the same side, never betters it."""
    ratio, _ = deviation_over_tolerance(wanted, got, house)
    anchor = wanted.nominal if wanted.nominal is not None else wanted.high if got > (wanted.high or 1e9) else wanted.low
    if anchor is None or ratio == 0.0:
        return
    further, _ = deviation_over_tolerance(wanted, anchor + (got - anchor) * factor, house)
    assert further >= ratio - 1e-9
    assert (score([row(further), row(0.3)]) or 0) <= (score([row(ratio), row(0.3)]) or 0)


@given(wanteds, st.floats(0.01, 10.0))
def test_what_is_allowed_deviates_by_at_most_one_tolerance(wanted: Wanted, house: float):
    for edge in allowed(wanted, house):
        if edge is not None:
            assert deviation_over_tolerance(wanted, edge, house)[0] <= 1.0 + 1e-9
