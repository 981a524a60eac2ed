"""Coils that somebody wound and measured: six workshop cases found in print. A sanity check, too rough to fit.

What each shows is the flow stress over the tensile strength, by the springback law; it was worked out elsewhere with
the same law, so that the first test proves the root finding and not the law. The second test holds the measured coil
against what the program assumes of an untried wire, within the case's own error. Music wire: Rm of EN 10270-1 SH,
E 206 GPa; stainless: Rm of ASTM A313 302, E 185 GPa. None was measured to 0.01 mm.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from sourcing import materials
from sourcing.winding.springback import flow_strain_shown, released_index

from .checks import Check, Source, carried, check

MUSIC, STAINLESS = "music-wire", "stainless-1.4310"
E_MPA = {MUSIC: 206_000.0, STAINLESS: 185_000.0}


@dataclass(frozen=True)
class Case:
    """Wire, mandrel and finished inside diameter in mm; `low`, `high`: what the error of the reading leaves."""

    who: str
    read: str
    family: str
    wire_mm: float
    mandrel_mm: float
    inside_mm: float
    strength_mpa: float
    flow_ratio: str
    low: float
    high: float

    @property
    def on_mandrel(self) -> float:
        return self.mandrel_mm / self.wire_mm + 1

    def shown(self) -> float:
        """The flow stress over the tensile strength that ours makes of the coil."""
        strain = flow_strain_shown(self.on_mandrel, self.inside_mm / self.wire_mm + 1)
        return strain * E_MPA[self.family] / self.strength_mpa

    def inside_expected_mm(self, flow_ratio: float) -> float:
        strain = flow_ratio * self.strength_mpa / E_MPA[self.family]
        return (released_index(self.on_mandrel, strain) - 1) * self.wire_mm


CHAIN_MAIL = Case(
    "a chain-mail maker, 304 half hard, coil cut into rings",
    "measured to 0.001 inch",
    STAINLESS,
    1.2192,
    4.7625,
    5.258,
    1814,
    "0.938",
    0.915,
    0.960,
)
COWLING = Case(
    "an aircraft restorer, fastener spring",
    "rough, a lower bound: slides over a 19/64 inch drill",
    MUSIC,
    1.0414,
    6.35,
    7.541,
    2206,
    "1.079",
    1.079,
    9.0,
)
MOTORCYCLE = Case(
    "a motorcycle forum, torsion spring copied",
    "rough, whole mm",
    MUSIC,
    3.0,
    19.0,
    22.0,
    1829,
    "1.089",
    0.925,
    1.246,
)
GUITAR = Case(
    "a model engineering forum, guitar string for a balance spring",
    "rough: about, whole mm; suspect, turns probably not tight",
    MUSIC,
    0.2032,
    4.0,
    10.0,
    2788,
    "1.327",
    1.212,
    1.426,
)
HARDEST = Case(
    "a comparison of orthodontic wires, hardest brand",
    "measured; the finished diameter derived from an arc; barely past yield",
    STAINLESS,
    0.508,
    22.8,
    313.99,
    2061,
    "1.388",
    1.354,
    1.424,
)
SOFTEST = Case(
    "a comparison of orthodontic wires, softest brand",
    "measured; the finished diameter derived from an arc; barely past yield",
    STAINLESS,
    0.508,
    42.9,
    313.99,
    2061,
    "0.651",
    0.641,
    0.660,
)
CASES = (CHAIN_MAIL, COWLING, MOTORCYCLE, GUITAR, HARDEST, SOFTEST)

ROUNDED = "sizes are put in as printed, to 0.01 mm of the finished diameter"


def checked(case: Case) -> Check:
    source = Source("Workshop cases", case.who, case.read)
    return check("flow stress over Rm", carried(case.flow_ratio, 0.05, ROUNDED), source, case.shown)


CHECKS = [checked(case) for case in CASES]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_reads_the_same_flow_stress_off_the_coil(check: Check) -> None:
    check.must_agree()


def prior(case: Case) -> tuple[float, float]:
    material = materials.find(case.family)
    assert material is not None
    return material.flow_ratio, material.flow_ratio_sd


@pytest.mark.parametrize("case", [CHAIN_MAIL, COWLING, MOTORCYCLE], ids=lambda case: case.who)
def test_a_coil_of_an_index_that_springs_have_agrees_with_what_is_assumed_of_untried_wire(case: Case) -> None:
    middle, doubt = prior(case)
    assert case.low <= middle + doubt
    assert middle - doubt <= case.high


@pytest.mark.parametrize("case", [CHAIN_MAIL, COWLING, MOTORCYCLE], ids=lambda case: case.who)
def test_the_coil_comes_out_within_1_percent_of_what_the_prior_says(case: Case) -> None:
    middle, _ = prior(case)
    mean_expected, mean_measured = case.inside_expected_mm(middle) + case.wire_mm, case.inside_mm + case.wire_mm
    assert mean_measured == pytest.approx(mean_expected, rel=0.01)


def test_one_nominal_wire_of_two_brands_differs_by_a_factor_of_two_so_that_stainless_wants_a_trial_coil() -> None:
    assert HARDEST.shown() / SOFTEST.shown() == pytest.approx(2.1, abs=0.05)
    middle, doubt = prior(SOFTEST)
    assert middle - 3 * doubt < SOFTEST.shown() < HARDEST.shown() < middle + 3 * doubt


def test_the_suspect_guitar_string_is_beyond_what_the_prior_allows() -> None:
    middle, doubt = prior(GUITAR)
    assert GUITAR.shown() > middle + 3 * doubt
