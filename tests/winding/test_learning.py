"""A spool's coils one after the other: which coil a surprise leaves standing, and what is learnt then.

What is known is held against what is known without the coil that slipped, to the last figure.
"""

from __future__ import annotations

from dataclasses import replace
from math import log10

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.stock.model import Trial
from sourcing.winding.index_trend import AS_ONE_AT_INDEX, Trend
from sourcing.winding.learning import learn
from sourcing.winding.lesson_words import BORNE_OUT, NO_COIL, SET_ASIDE
from sourcing.winding.trials import Knowledge, untried

from .cases import material
from .test_leg_reading import a_trial

MUSIC = material("music-wire")
SH_AT_0_8_MPA = 2220 - 820 * log10(0.8)
LABEL = replace(untried(MUSIC, 0.8, SH_AT_0_8_MPA), pulled=True)


def after(*trials: Trial) -> Knowledge:
    return learn(MUSIC, 0.8, SH_AT_0_8_MPA, trials)


def each_counted(*trials: Trial) -> Knowledge:
    """What is known where no coil is set aside."""
    known = LABEL
    for trial in trials:
        known = known.after(trial, MUSIC)
    return known


def as_expected(mandrel_mm: float, times: float = 1.0) -> Trial:
    """A coil of the wire of the label, its mean diameter larger by so many times."""
    return Trial(mandrel_mm, LABEL.finished_mean_mm(mandrel_mm) * times + 0.8)


def what_is_known(known: Knowledge) -> Knowledge:
    return replace(known, lessons=())


GOOD, SLIPPED_LARGE, SLIPPED_SMALL = Trial(6.0, 8.95), Trial(6.0, 12.5), Trial(6.0, 7.8)
MISREAD = replace(a_trial(8.16, 6.0), leg_angle_deg=((a_trial(8.16, 6.0).leg_angle_deg or 0.0) + 90.0) % 360.0)
"""A coil as good, one of whose legs was read a quarter of a turn wrong."""


@pytest.mark.parametrize("slipped", [SLIPPED_LARGE, SLIPPED_SMALL])
@pytest.mark.parametrize("before", [(), (GOOD,), (GOOD, Trial(7.0, 10.5))])
@pytest.mark.parametrize("later", [(), (Trial(6.0, 8.97),)])
def test_a_surprise_that_the_next_coil_does_not_bear_out_is_set_aside(
    slipped: Trial, before: tuple[Trial, ...], later: tuple[Trial, ...]
) -> None:
    decides = Trial(6.0, 8.96)
    known = after(*before, slipped, decides, *later)
    assert what_is_known(known) == what_is_known(after(*before, decides, *later))
    assert [lesson.trial for lesson in known.lessons] == [*before, slipped, decides, *later]
    assert [lesson.trial for lesson in known.lessons if lesson.set_aside] == [slipped]
    assert known.lessons[len(before)].said == SET_ASIDE
    assert known.lessons[len(before) + 1].agrees_with_surprise is False
    assert not known.unsettled


def test_a_coil_that_slipped_takes_no_sureness_from_good_coils_before_it() -> None:
    assert after(GOOD, SLIPPED_LARGE, GOOD).flow_ratio_sd < 0.8 * after(GOOD).flow_ratio_sd


@given(st.floats(8.7, 9.2))
def test_a_hand_reckons_with_no_weaker_a_wire_than_the_label_says_though_the_surprise_is_set_aside(outside_mm: float):
    known = after(SLIPPED_SMALL, Trial(6.0, outside_mm))
    assert known.lessons[0].set_aside
    assert known.reckoned_with.flow_ratio == max(known.flow_ratio, MUSIC.flow_ratio)


@pytest.mark.parametrize(("surprise", "second"), [(SLIPPED_LARGE, 12.45), (SLIPPED_SMALL, 7.82)])
def test_a_second_coil_that_agrees_with_the_surprise_sets_nothing_aside(surprise: Trial, second: float) -> None:
    coils = (GOOD, surprise, Trial(6.0, second))
    known = after(*coils)
    assert what_is_known(known) == what_is_known(each_counted(*coils))
    assert known.lessons[2].agrees_with_surprise is True
    assert [lesson.borne_out for lesson in known.lessons] == [False, True, False]
    assert known.lessons[1].said == BORNE_OUT
    assert known.label_refuted
    assert not after(GOOD, surprise).label_refuted
    assert not after(GOOD, surprise, GOOD).label_refuted
    assert not any(lesson.set_aside for lesson in known.lessons)


@pytest.mark.parametrize("second", [9.8, 10.5, 11.5])
def test_a_second_coil_that_agrees_with_neither_is_the_next_surprise_and_leaves_it_to_a_third(second: float) -> None:
    known = after(GOOD, SLIPPED_LARGE, Trial(6.0, second))
    assert known.undecided == 2
    assert replace(known, undecided=1, lessons=()) == what_is_known(each_counted(GOOD, Trial(6.0, second)))
    assert known.lessons[2].agrees_with_surprise is False
    assert not any(lesson.set_aside for lesson in known.lessons)


@pytest.mark.parametrize(("third", "slipped"), [(10.48, 1), (12.45, 2)])
def test_the_third_coil_bears_out_whichever_of_two_surprises_it_agrees_with(third: float, slipped: int) -> None:
    coils = [GOOD, SLIPPED_LARGE, Trial(6.0, 10.5), Trial(6.0, third)]
    known = after(*coils)
    assert not known.unsettled
    assert [lesson.set_aside for lesson in known.lessons] == [at == slipped for at in range(4)]
    assert known.lessons[3].agrees_with_surprise is True
    counted = [coil for at, coil in enumerate(coils) if at != slipped]
    assert what_is_known(known) == what_is_known(after(*counted))
    assert known.finished_mean_mm(6.0) == pytest.approx(third - 0.8, abs=0.05)


def test_the_third_coil_sets_two_surprises_aside_that_agree_with_nothing() -> None:
    known = after(GOOD, SLIPPED_LARGE, Trial(6.0, 10.5), GOOD)
    assert what_is_known(known) == what_is_known(after(GOOD, GOOD))
    assert [lesson.set_aside for lesson in known.lessons] == [False, True, True, False]


def test_a_second_coil_of_so_small_an_index_that_it_cannot_tell_leaves_it_open() -> None:
    """On 1.5 mm a wire stronger by a quarter makes a coil larger by 0.06 mm: twice what a caliper is off."""
    coils = (as_expected(6.0), as_expected(6.0, 1.05), as_expected(1.5))
    known = after(*coils)
    assert known.lessons[1].surprising
    assert known.lessons[2].agrees_with_surprise is None
    assert known.undecided == 2
    assert replace(known, undecided=0, lessons=()) == what_is_known(each_counted(*coils))
    settled = after(*coils, as_expected(6.0))
    assert what_is_known(settled) == what_is_known(after(coils[0], coils[2], as_expected(6.0)))
    assert [lesson.set_aside for lesson in settled.lessons] == [False, True, False, False]


@pytest.mark.parametrize("surprise", [SLIPPED_LARGE, SLIPPED_SMALL, MISREAD], ids=["large", "small", "misread"])
def test_a_coil_that_opened_fully_teaches_nothing_and_does_not_decide(surprise: Trial) -> None:
    known = after(GOOD, surprise, Trial(200.0, 2000.0))
    assert known.lessons[2].agrees_with_surprise is None
    assert known.unsettled
    assert not known.lessons[1].set_aside


def test_surprises_in_a_row_are_set_aside_together() -> None:
    twice = after(GOOD, SLIPPED_LARGE, MISREAD)
    assert [lesson.surprising for lesson in twice.lessons] == [False, True, True]
    known = after(GOOD, SLIPPED_LARGE, MISREAD, GOOD)
    assert what_is_known(known) == what_is_known(after(GOOD, GOOD))
    assert [lesson.set_aside for lesson in known.lessons] == [False, True, True, False]


def test_a_coil_whose_diameter_and_legs_are_not_of_one_is_set_aside_though_its_diameter_is_as_expected() -> None:
    assert what_is_known(after(GOOD, MISREAD, GOOD)) == what_is_known(after(GOOD, GOOD))


def test_what_can_be_no_coil_keeps_saying_so_when_it_is_set_aside() -> None:
    known = after(Trial(6.0, 1.5), GOOD)
    assert known.lessons[0].set_aside
    assert known.lessons[0].said == NO_COIL
    assert what_is_known(known) == what_is_known(after(GOOD))


def test_a_wire_whose_flow_stress_goes_with_the_index_has_no_coil_set_aside_for_that() -> None:
    """One flow stress alone would take the coil on 20 mm for one that slipped, as the last is as the first two are."""
    truth = Trend(AS_ONE_AT_INDEX, 1.08, 0.06, slope=0.3)
    wire = replace(LABEL, trend=truth)
    coils = [Trial(mandrel_mm, wire.finished_mean_mm(mandrel_mm) + 0.8) for mandrel_mm in (4.0, 4.0, 20.0, 4.0)]
    assert each_counted(*coils).lessons[2].surprising
    known = after(*coils)
    assert known.trend is not None
    assert not any(lesson.set_aside for lesson in known.lessons)


@pytest.mark.parametrize("times", [0.85, 1.3])
def test_a_coil_that_slipped_on_a_larger_mandrel_makes_no_trend(times: float) -> None:
    known = after(as_expected(4.0), as_expected(12.0, times), as_expected(4.0))
    assert known.trend is None
    assert what_is_known(known) == what_is_known(after(as_expected(4.0), as_expected(4.0)))
