"""EN 13906-3 and its neighbours: a value of each formula of torsion springs that the program has.

The values, to six digits, were worked out from the formulas as they were copied, by another hand than ours: they
prove that ours are typed right, not that the source is, and EN 13906-3 is recalled. Spring: d 1.5, D 15, n 5 mm, E
206 000 MPa, unless said.
"""

from __future__ import annotations

from math import degrees, pi, sqrt

import pytest

from sourcing import materials
from sourcing.springs import torsion, turned
from sourcing.springs.model import TorsionSpring
from sourcing.springs.strength import Place, permissible_at_mpa

from .checks import Check, Source, carried, check
from .worked import solved

D, MEAN, COILS, E_MPA = 1.5, 15.0, 5.0, 206_000.0
CONSTANT = "EN rounds the constant 3666.93 to 3667"


def en(where: str) -> Source:
    return Source("EN 13906-3:2014", where, "memory")


RATE, STRESS, LIMIT, WOUND = en("rate"), en("stress"), en("clause 10, Rm 1900 MPa"), en("wound up by 90 deg")
LEG = en("tangential leg, 10 N at a radius of 30 mm")
OPEN = en("body of coils 0.3 mm apart")
KI = Source("Shigley, Mechanical Engineering Design", "eq. 10-43, index 10", "memory")
FRICTION = Source("Shigley, Mechanical Engineering Design", "eq. 10-51", "memory")
LEGS = Source("Shigley, Mechanical Engineering Design", "eq. 10-48, legs of 30 and 30 mm", "memory")
JIS = Source("JIS B 2704-1", "rate with legs of 30 and 30 mm", "memory")
HANDBOOK_BODY = Source("Machinery's Handbook, 31st ed.", "p. 336, body of 5 coils of 1.5 mm", "the page")
HANDBOOK_LEG = Source("Machinery's Handbook, 31st ed.", "p. 338, leg of 30 mm", "the page")
ROD = Source("Two spring stockists' guides", "about 10 % clearance at full angle, inside 12.8 mm", "read")
BEND = Source("DIN 2194", "text, bend of a leg, wire 1.5 mm", "a spring maker's page")


def rate(coils: float = COILS) -> float:
    return torsion.rate_n_mm_per_deg(D, MEAN, coils, E_MPA)


def leg_angle_deg() -> float:
    """A leg turns as so many coils would, under a force square to it at its end."""
    leg = sqrt(30.0**2 - (MEAN / 2) ** 2)
    return 10.0 * leg / rate(torsion.coils_of_legs(leg, 0.0, MEAN))


def bears_mpa(tensile_strength_mpa: float) -> float:
    """What cold drawn wire bears when it is wound up."""
    wire = materials.find("music-wire")
    assert wire is not None
    return permissible_at_mpa(Place.WOUND_UP, wire, tensile_strength_mpa)


def spring(body_length_mm: float | None = None) -> TorsionSpring:
    wire = materials.find("music-wire")
    assert wire is not None
    return TorsionSpring(D, MEAN, COILS, wire, E_MPA, None, body_length_mm=body_length_mm)


CHECKS = [
    check("rate per degree", "3.79193", RATE, rate),
    check("rate per radian", carried("217.266", 0.002, CONSTANT), RATE, lambda: degrees(rate())),
    check("angle under 200 N mm", "52.7436", RATE, lambda: 200.0 / rate()),
    check("coils", "5.00000", RATE, lambda: torsion.active_coils_for_rate(D, MEAN, rate(), E_MPA)),
    check(
        "rate per turn with friction",
        "1287.50",
        FRICTION,
        lambda: 360.0 * torsion.rate_with_friction_n_mm_per_deg(D, MEAN, COILS, E_MPA),
    ),
    check("stress under 200 N mm", "603.610", STRESS, lambda: torsion.bending_stress_mpa(200.0, D)),
    check("factor for curvature, index 10", "1.08865", STRESS, lambda: torsion.curvature_factor(10.0)),
    check("factor for curvature", "1.08056", KI, lambda: torsion.inner_curvature_factor(10.0)),
    check("limit of stress", "1330.00", LIMIT, lambda: bears_mpa(1900.0)),
    check(
        "inside diameter",
        "12.7857",
        WOUND,
        lambda: torsion.wound_mean_diameter_mm(MEAN, COILS, 90.0) - D,
    ),
    check("inside diameter by the spring", "12.7857", WOUND, lambda: turned.inside_diameter_mm(spring(), 90.0)),
    check("body", "10.5000", OPEN, lambda: solved(lambda body: turned.pitch_mm(spring(body)), D + 0.3, 9.0, 30.0)),
    check("angle", carried("3.14790", 0.01, "the source's constant, 97.27, is rounded"), LEG, leg_angle_deg),
    check("coils of the legs", "0.424413", LEGS, lambda: torsion.coils_of_legs(30.0, 30.0, MEAN)),
    check(
        "rate per radian",
        carried("200.266", 0.002, CONSTANT),
        JIS,
        lambda: degrees(rate(COILS + torsion.coils_of_legs(30.0, 30.0, MEAN))),
    ),
    check("body", "9.00000", HANDBOOK_BODY, lambda: torsion.wound_body_length_mm(D, COILS, 0.0)),
    check("wire that bends", "10.0000", HANDBOOK_LEG, lambda: pi * MEAN * torsion.coils_of_legs(30.0, 0.0, MEAN)),
    check("thickest rod", "11.5200", ROD, lambda: torsion.ROD_SHARE * 12.8),
    check("least inside radius", "1.50000", BEND, lambda: torsion.BEND_INSIDE_RADIUS * D),
]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_is_the_formulas_value(check: Check) -> None:
    check.must_agree()


def test_a_body_of_touching_coils_is_half_a_wire_shorter_than_ens() -> None:
    """EN 13906-3, recalled: (n + 1.5 + angle/360) of the thickest the wire may be, 1.52 mm here: 10.26 mm."""
    ours = torsion.wound_body_length_mm(1.52, COILS, 90.0)
    assert 10.26 - ours == pytest.approx(0.5 * 1.52)


def test_jis_reckons_the_closing_for_a_small_angle_and_takes_5_per_cent_more_off() -> None:
    """JIS B 2704-1, recalled: D loses angle D/(360 n), 0.75 mm for this spring; exact is less."""
    assert 0.75 / (MEAN - torsion.wound_mean_diameter_mm(MEAN, COILS, 90.0)) == pytest.approx(1.05)


def test_machinerys_constant_lets_a_spring_turn_9_per_cent_further_than_theory() -> None:
    """Machinery's Handbook, 31st ed., table 13: 4000 M D n/(E d⁴), 57.5333 deg under 200 N mm, friction included."""
    assert 57.5333 / (200.0 / rate()) == pytest.approx(4000 / 3667, rel=1e-5)
