"""Fatigue and heat: a value of each formula that the program has, and Zimmerli's pair.

The values, to six digits, were worked out from the formulas as they were copied, by another hand than ours: they prove
that ours are typed right, not that the source is. Shigley's formulas are recalled; what the instructors' solutions make
of them is checked in test_shigley_10_26_and_27.py.
"""

from __future__ import annotations

import pytest

from sourcing.springs import fatigue
from sourcing.springs.compression import shear_stress_mpa
from sourcing.springs.warmth import modulus_at_mpa

from .checks import Check, Source, check, kpsi, one_percent


def shigley(where: str) -> Source:
    return Source("Shigley, Mechanical Engineering Design, ch. 10", where, "memory")


PAIR = "amplitude 241 and mean 379 MPa, ultimate 1327 MPa"
SAFETY = shigley("Goodman, amplitude 150, mean 450, endurance 337, ultimate 1327 MPa")
ZIMMERLI = shigley("eq. 10-28, Zimmerli 1957, unpeened")
RANGE = Source("EN 13906-1:2013", "clause 10, range of stress, d 1, D 12, k 1.11, 5 to 14 N", "memory")
HEAT = Source("EN 13906-1:2013", "clause 8, G 81 500 MPa, 0.00025 per degree, 120 degC", "memory")
HEAT_OF_E = Source("EN 13906-3:2014", "8.2, E 206 000 MPa, 0.00025 per degree, 120 degC", "memory")
SHEET = Source("A spring maker's formula sheet of 2015", "G at 120 degC, (3620 - t)/3600", "read")
LESS_FALL = "the sheet has 0.000278 per degree where EN has 0.00025"


def hot_mpa(modulus_mpa: float) -> float:
    return modulus_at_mpa(modulus_mpa, 0.00025, 120.0)


CHECKS = [
    check("ultimate shear, Rm 1980 MPa", "1326.60", shigley("eq. 10-30"), lambda: fatigue.ultimate_shear_mpa(1980.0)),
    check("endurance", "337.349", shigley(f"Goodman, {PAIR}"), lambda: fatigue.reversed_mpa(241.0, 379.0, 1327.0)),
    check(
        "endurance", "262.405", shigley(f"Gerber, {PAIR}"), lambda: fatigue.reversed_by_gerber_mpa(241.0, 379.0, 1327.0)
    ),
    check("safety", "1.27516", SAFETY, lambda: fatigue.safety(150.0, 450.0, 337.0, 1327.0)),
    check("amplitude", kpsi("35"), ZIMMERLI, lambda: fatigue.ZIMMERLI_AMPLITUDE_MPA),
    check("mean", kpsi("55"), ZIMMERLI, lambda: fatigue.ZIMMERLI_MEAN_MPA),
    check("range of stress", "305.272", RANGE, lambda: 1.11 * shear_stress_mpa(14.0 - 5.0, 1.0, 12.0)),
    check("shear modulus", "79462.5", HEAT, lambda: hot_mpa(81_500.0)),
    check("shear modulus", one_percent("79236.1", LESS_FALL), SHEET, lambda: hot_mpa(81_500.0)),
    check("elastic modulus", "200850", HEAT_OF_E, lambda: hot_mpa(206_000.0)),
]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_is_the_formulas_value(check: Check) -> None:
    check.must_agree()
