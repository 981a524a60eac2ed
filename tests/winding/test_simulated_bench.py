"""A simulated bench: wires drawn from the prior, coils that repeat as assumed, calipers and rods with their errors,
rods in the steps in which they are on hand.

The bands that the program states must hold what comes out as often as they say, before any trial and after one. What is
drawn is what the winding model assumes; so this checks the arithmetic of the bands, not the assumptions.
"""

from __future__ import annotations

from dataclasses import replace
from math import exp
from random import Random
from statistics import NormalDist

import pytest

from sourcing.materials.strength import tensile_strength_mpa
from sourcing.stock.model import Trial
from sourcing.winding import springback
from sourcing.winding.learning import learn
from sourcing.winding.measuring import CALIPER_SD_MM, MANDREL_SD_MM, PRINTED_SD_MM, sd_of_mandrel_mm
from sourcing.winding.trials import REPEATABILITY, Knowledge, untried

from .cases import material

RUNS = 2_000
WITHIN_POINTS = 0.03
CASES = [
    ("music-wire", 0.5, 6.0),
    ("music-wire", 0.8, 9.6),
    ("music-wire", 1.0, 12.0),
    ("music-wire", 2.0, 16.0),
    ("stainless-1.4310", 1.0, 9.0),
    ("phosphor-bronze", 0.8, 8.0),
    ("hard-drawn", 1.5, 15.0),
    ("unknown-steel", 1.0, 8.0),
]
BANDS = {0.95: NormalDist().inv_cdf(0.975), 0.68: NormalDist().inv_cdf(0.84)}


def fresh(name: str, wire_mm: float) -> Knowledge:
    strength_mpa = tensile_strength_mpa(material(name), wire_mm)
    assert strength_mpa is not None
    return untried(material(name), wire_mm, strength_mpa)


def a_coil(
    random: Random, known: Knowledge, true_ratio: float, mandrel_mm: float, rod_sd_mm: float = MANDREL_SD_MM
) -> float:
    """The mean diameter of a coil of this very wire on a rod that measures `mandrel_mm`."""
    wire_mm = known.wire_diameter_mm
    strain = true_ratio * known.tensile_strength_mpa / known.elastic_modulus_mpa
    rod_mm = mandrel_mm + random.gauss(0.0, rod_sd_mm)
    return springback.released_index(rod_mm / wire_mm + 1, strain) * wire_mm * (1 + random.gauss(0.0, REPEATABILITY))


def a_wire(random: Random, known: Knowledge) -> float:
    return known.flow_ratio * exp(random.gauss(0.0, known.flow_ratio_sd))


def nearest_rod_mm(mandrel_mm: float, step_mm: float) -> float:
    """The rod on hand that is taken: those of a set in steps, or one turned to size where there is no step."""
    return round(mandrel_mm / step_mm) * step_mm if step_mm else mandrel_mm


@pytest.mark.parametrize("step_mm", [0.0, 0.5], ids=["turned", "rods in steps of 0.5 mm"])
@pytest.mark.parametrize(("name", "wire_mm", "mean_mm"), CASES)
def test_the_bands_hold_as_many_coils_as_they_say_untried_and_after_one_trial(
    name: str, wire_mm: float, mean_mm: float, step_mm: float
):
    random, known = Random(f"{name} {wire_mm} {step_mm}"), fresh(name, wire_mm)
    mandrel_mm = nearest_rod_mm(known.mandrel_mm(mean_mm), step_mm)
    held = {(share, tried): 0 for share in BANDS for tried in (False, True)}
    for _ in range(RUNS):
        true_ratio = a_wire(random, known)
        measured = a_coil(random, known, true_ratio, mandrel_mm) + random.gauss(0.0, CALIPER_SD_MM)
        taught = known.after(Trial(mandrel_mm, measured + wire_mm), material(name))
        for tried, knows in ((False, known), (True, taught)):
            rod_mm = nearest_rod_mm(knows.mandrel_mm(mean_mm), step_mm)
            off = a_coil(random, known, true_ratio, rod_mm) - knows.finished_mean_mm(rod_mm)
            for share, deviations in BANDS.items():
                held[share, tried] += abs(off) <= deviations * knows.finished_mean_sd_mm(rod_mm)
    for (share, tried), count in held.items():
        assert count / RUNS == pytest.approx(share, abs=WITHIN_POINTS), (share, tried)


@pytest.mark.parametrize("tried_on", ["printed", "steel-rod"])
@pytest.mark.parametrize(("name", "wire_mm", "mean_mm"), CASES)
def test_the_bands_hold_on_a_printed_mandrel_that_gives_way_untried_and_after_one_trial(
    name: str, wire_mm: float, mean_mm: float, tried_on: str
):
    """It is off by as much as is assumed of a printed one, each anew; so is that of the trial, or it was of steel."""
    random, known = Random(f"printed {name} {wire_mm} {tried_on}"), replace(fresh(name, wire_mm), wound_on="printed")
    mandrel_mm, held = known.mandrel_mm(mean_mm), {(share, tried): 0 for share in BANDS for tried in (False, True)}
    for _ in range(RUNS):
        true_ratio = a_wire(random, known)
        came_mm = a_coil(random, known, true_ratio, mandrel_mm, sd_of_mandrel_mm(tried_on))
        outside_mm = came_mm + random.gauss(0.0, CALIPER_SD_MM) + wire_mm
        taught = known.after(Trial(mandrel_mm, outside_mm, on=tried_on), material(name))
        for tried, knows in ((False, known), (True, taught)):
            rod_mm = knows.mandrel_mm(mean_mm)
            off = a_coil(random, known, true_ratio, rod_mm, PRINTED_SD_MM) - knows.finished_mean_mm(rod_mm)
            for share, deviations in BANDS.items():
                held[share, tried] += abs(off) <= deviations * knows.finished_mean_sd_mm(rod_mm)
    for (share, tried), count in held.items():
        assert count / RUNS == pytest.approx(share, abs=WITHIN_POINTS), (share, tried)


@pytest.mark.parametrize("slips", [0.8, 1.4], ids=["too small", "too large"])
@pytest.mark.parametrize(("name", "wire_mm", "mean_mm"), CASES)
def test_the_bands_hold_after_a_coil_that_slipped_between_two_that_did_not(
    name: str, wire_mm: float, mean_mm: float, slips: float
):
    """The middle coil of three is off by a fifth or two; as a surprise it is hardly ever kept."""
    random, known = Random(f"slipped {name} {wire_mm} {slips}"), fresh(name, wire_mm)
    mandrel_mm, held, surprises, kept = known.mandrel_mm(mean_mm), dict.fromkeys(BANDS, 0), 0, 0
    for _ in range(RUNS):
        true_ratio, trials = a_wire(random, known), list[Trial]()
        for times in (1.0, slips, 1.0):
            measured = times * a_coil(random, known, true_ratio, mandrel_mm) + random.gauss(0.0, CALIPER_SD_MM)
            trials.append(Trial(mandrel_mm, measured + wire_mm, pull_n=0.0))
        taught = replace(learn(material(name), wire_mm, known.tensile_strength_mpa, trials), pulled=False)
        surprises += taught.lessons[1].surprising
        kept += taught.lessons[1].surprising and not taught.lessons[1].set_aside
        rod_mm = taught.mandrel_mm(mean_mm)
        off = a_coil(random, known, true_ratio, rod_mm) - taught.finished_mean_mm(rod_mm)
        for share, deviations in BANDS.items():
            held[share] += abs(off) <= deviations * taught.finished_mean_sd_mm(rod_mm)
    assert surprises / RUNS > 0.95
    assert kept / surprises < 0.02
    for share, count in held.items():
        assert count / RUNS == pytest.approx(share, abs=WITHIN_POINTS), share


@pytest.mark.parametrize(("name", "wire_mm", "mean_mm"), CASES)
def test_one_trial_narrows_the_spread_of_what_comes_out_as_is_stated(name: str, wire_mm: float, mean_mm: float):
    random, known = Random(f"{name} {mean_mm}"), fresh(name, wire_mm)
    mandrel_mm = known.mandrel_mm(mean_mm)
    squared = {False: 0.0, True: 0.0}
    stated = {False: 0.0, True: 0.0}
    for _ in range(RUNS):
        true_ratio = a_wire(random, known)
        measured = a_coil(random, known, true_ratio, mandrel_mm) + random.gauss(0.0, CALIPER_SD_MM)
        taught = known.after(Trial(mandrel_mm, measured + wire_mm), material(name))
        for tried, knows in ((False, known), (True, taught)):
            rod_mm = knows.mandrel_mm(mean_mm)
            squared[tried] += (a_coil(random, known, true_ratio, rod_mm) / mean_mm - 1.0) ** 2
            stated[tried] += (knows.finished_mean_sd_mm(rod_mm) / mean_mm) ** 2
    assert (squared[True] / squared[False]) ** 0.5 == pytest.approx((stated[True] / stated[False]) ** 0.5, rel=0.12)
