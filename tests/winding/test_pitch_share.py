"""How the pitch opens: assumed first, then as trial coils show; the next sheet lays by it, and its band narrows."""

from __future__ import annotations

from math import log10
from random import Random

import pytest

from sourcing.springs.model import CompressionSpring, ConicalSpring
from sourcing.springs.pressed import climb_mm
from sourcing.stock.model import Trial
from sourcing.winding.coil_reading import NORMAL_95
from sourcing.winding.learning import learn
from sourcing.winding.pitch_share import PITCH_SHARE, PITCH_SHARE_SD, PitchShare, pitch_reading
from sourcing.winding.plan import plan_winding
from sourcing.winding.pressed_task import brought_length_sd_mm
from sourcing.winding.saving.compression.diameter import came_out_with_pitch
from sourcing.winding.trials import Knowledge
from sourcing.winding.turns import pitch_ratio

from . import cases
from .cases import material
from .test_saving import a_coil
from .test_saving_a_cone import NEED as A_CONE

MUSIC = material("music-wire")
SH_AT_0_8_MPA = 2220 - 820 * log10(0.8)
RUNS = 2_000
ON_6 = Trial(6.0, 8.9)


def measured(wound_mm: float, came_mm: float, heated: bool = False, outside_mm: float = 8.9) -> Trial:
    return Trial(6.0, outside_mm, pitch_wound_mm=wound_mm, pitch_mm=came_mm, heated=heated)


def after(*trials: Trial) -> Knowledge:
    return learn(MUSIC, 0.8, SH_AT_0_8_MPA, trials)


def test_no_coil_leaves_three_tenths_and_a_coil_of_which_no_pitch_was_measured_too():
    for known in (after(), after(ON_6)):
        assert (known.pitch.share, known.pitch.sd) == (PITCH_SHARE, PITCH_SHARE_SD) == (0.3, 0.1)


def test_a_coil_moves_the_share_towards_what_it_shows_and_narrows_it():
    """8.1/6.8 opens by 0.191; 3.20 over 3.00 by 0.0667: a share of 0.349."""
    reading = pitch_reading(measured(3.0, 3.2), 0.8, MUSIC)
    assert reading is not None
    assert reading.share == pytest.approx(0.349, abs=0.001)
    known = after(measured(3.0, 3.2)).pitch
    assert 0.3 < known.share < 0.349
    assert known.sd == pytest.approx((PITCH_SHARE_SD**-2 + reading.sd**-2) ** -0.5)
    assert after(measured(3.0, 3.2), measured(3.0, 3.2)).pitch.sd < known.sd


@pytest.mark.parametrize(
    "coil",
    [
        measured(0.8, 0.81), measured(3.0, 2.8), measured(3.0, 4.5), measured(3.0, 3.2, outside_mm=7.6),
        measured(3.0, 3.2, outside_mm=7.7),
    ],
    ids=["closed", "less than nothing", "more than free wire", "not opened", "a surprise"],
)  # fmt: skip
def test_what_can_show_no_share_teaches_none(coil: Trial):
    assert after(coil).pitch == PitchShare()


def test_a_share_far_from_the_one_believed_is_a_surprise_and_its_doubt_reaches_back_to_it():
    pitch, shown = after(measured(3.0, 3.6)).pitch, 0.2 / (8.1 / 6.8 - 1.0)
    assert pitch.share == pytest.approx(shown)
    assert pitch.sd == pytest.approx((shown - PITCH_SHARE) / NORMAL_95)
    assert pitch.surprising
    assert not after(measured(3.0, 3.6), measured(3.0, 3.58)).pitch.surprising


def test_one_wrong_pitch_after_three_that_agree_is_told_and_the_next_good_one_brings_the_sheets_back():
    good, wrong = [measured(3.0, 3.2)] * 3, measured(3.0, 3.9)
    astray = after(*good, wrong).pitch
    assert astray.surprising
    assert astray.coils == 1
    assert abs(after(*good, wrong, measured(3.0, 3.2)).pitch.share - after(*good).pitch.share) < 0.05


@pytest.mark.parametrize(("came_mm", "can_be"), [(2.98, True), (2.8, False)])
def test_a_pitch_that_shrank_by_less_than_a_reading_may_be_off_is_let_pass(came_mm: float, can_be: bool):
    reading = pitch_reading(measured(3.0, came_mm), 0.8, MUSIC)
    assert reading is not None
    assert reading.can_be is can_be


def test_shares_read_off_coils_laid_by_a_hand_are_held_by_their_band():
    """Laid 2 % of the gap otherwise than was meant, measured to 0.02 mm; what is then believed holds what is true."""
    random, held = Random(4), 0
    for _ in range(RUNS):
        true = random.gauss(PITCH_SHARE, PITCH_SHARE_SD)
        laid_mm = 3.0 + random.gauss(0.0, 0.02 * 2.2)
        came_mm = laid_mm * pitch_ratio(8.1 / 6.8, true) + random.gauss(0.0, 0.02)
        believed = PitchShare().after(pitch_reading(measured(3.0, came_mm), 0.8, MUSIC))
        held += abs(true - believed.share) <= NORMAL_95 * believed.sd
    assert held / RUNS == pytest.approx(0.95, abs=0.03)


def test_a_coil_measured_after_heat_shows_the_share_that_it_had_before():
    """Heat leaves the free length: what it takes off the diameter it adds in coils, and takes off the pitch."""
    change = (MUSIC.heat_change_low + MUSIC.heat_change_high) / 2.0
    hot = measured(3.0, 3.2 * (1.0 + change), True, 8.1 * (1.0 + change) + 0.8)
    cold, warm = (pitch_reading(each, 0.8, MUSIC) for each in (measured(3.0, 3.2), hot))
    assert cold is not None
    assert warm is not None
    assert warm.share == pytest.approx(cold.share)


@pytest.mark.parametrize(("came_mm", "share"), [(3.05, 0.087), (3.3, 0.524)])
def test_the_next_sheet_lays_by_what_was_learnt_and_its_free_length_is_surer(came_mm: float, share: float):
    """p_m = p / (1 + a (D_f/D_m − 1)): a pitch that opens less is laid wider."""
    untaught = cases.plan(cases.spool(0.8, ON_6))
    taught = cases.plan(cases.spool(0.8, measured(3.0, came_mm)))
    assert taught.mandrel == untaught.mandrel
    assert (taught.pitch_on_mandrel_mm > untaught.pitch_on_mandrel_mm) == (share < PITCH_SHARE)
    assert isinstance(taught.finished.spring, CompressionSpring)
    assert taught.mandrel.diameter_mm is not None
    opening = taught.finished.spring.mean_diameter_mm / (taught.mandrel.diameter_mm + 0.8)
    known = after(measured(3.0, came_mm)).pitch
    ratio = pitch_ratio(opening, PITCH_SHARE) / pitch_ratio(opening, known.share)
    assert taught.pitch_on_mandrel_mm / untaught.pitch_on_mandrel_mm == pytest.approx(ratio, abs=1e-3)
    narrow, wide = (
        plan.finished.bands["free_length_mm"].high - plan.finished.bands["free_length_mm"].low
        for plan in (taught, untaught)
    )
    assert narrow < 0.95 * wide
    assert any("measured the pitch opens by" in note for note in taught.notes)


def test_a_cone_lays_by_it_too():
    plans = [
        cases.planned(plan_winding(A_CONE, cases.spool(0.9, coil), cases.BENCH))
        for coil in (Trial(8.0, 11.9), Trial(8.0, 11.9, pitch_wound_mm=3.0, pitch_mm=3.05))
    ]
    assert plans[1].pitch_on_mandrel_mm > plans[0].pitch_on_mandrel_mm
    assert isinstance(plans[0].wanted, ConicalSpring)


@pytest.mark.parametrize("trials", [(), (measured(3.0, 3.2),)], ids=["untried", "after a trial"])
def test_the_free_length_off_the_mandrel_lies_within_its_band_as_often_as_it_says(trials: tuple[Trial, ...]):
    """Shares drawn from what is known, and hands that lay to 2 % of the travel: 0.95 of 2 000 within three points."""
    plan = cases.plan(cases.spool(0.8, *(trials or (ON_6,))))
    spring, known, random = plan.finished.spring, after(*(trials or (ON_6,))).pitch, Random(17)
    assert isinstance(spring, CompressionSpring)
    assert plan.mandrel.diameter_mm is not None
    opening = spring.mean_diameter_mm / (plan.mandrel.diameter_mm + 0.8)
    band, laid_mm = plan.finished.bands["free_length_mm"], climb_mm(spring)
    held = 0
    for _ in range(RUNS):
        opens = pitch_ratio(opening, random.gauss(known.share, known.sd)) / pitch_ratio(opening, known.share)
        came_mm = spring.free_length_mm + laid_mm * (opens - 1.0) + random.gauss(0.0, brought_length_sd_mm(spring))
        held += band.low <= came_mm <= band.high
    assert held / RUNS == pytest.approx(0.95, abs=0.03)


def test_a_coil_that_came_out_with_its_pitch_tells_the_pitch_that_the_next_sheet_has():
    coil = a_coil()
    outside_mm = coil.plan.finished.spring.outside_diameter_mm
    came_mm = coil.plan.pitch_on_mandrel_mm * 1.12
    saved = came_out_with_pitch(coil, outside_mm, came_mm)
    mandrel_mm, laid_mm = coil.plan.mandrel.diameter_mm, coil.plan.pitch_on_mandrel_mm
    assert mandrel_mm is not None
    trial = Trial(mandrel_mm, outside_mm, pitch_wound_mm=laid_mm, pitch_mm=came_mm)
    then = cases.planned(plan_winding(coil.need, cases.spool(0.8, trial), coil.bench))
    assert any(f"a pitch of {then.pitch_on_mandrel_mm:.2f} mm on the mandrel" in each for each in saved.said)
