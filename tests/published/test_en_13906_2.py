"""EN 13906-2 and its neighbours: a value of each formula of extension springs that the program has.

The values, to six digits, were worked out from the formulas as they were copied, by another hand than ours: they
prove that ours are typed right, not that the source is, and EN 13906-2 is recalled. Spring: d 1, D 12, n 6 mm, G
81 500, E 206 000, Rm 1980 MPa, unless said.
"""

from __future__ import annotations

import pytest

from sourcing import materials
from sourcing.springs import extension, hooks, initial_tension
from sourcing.springs.model import Hooks

from .checks import Check, Source, check

D, MEAN, COILS, G_MPA, E_MPA, RM_MPA = 1.0, 12.0, 6.0, 81_500.0, 206_000.0, 1980.0


def en(where: str) -> Source:
    return Source("EN 13906-2:2013", where, "memory")


def shigley(where: str) -> Source:
    return Source("Shigley, Mechanical Engineering Design", where, "memory")


FORCE, RATE, TENSION = en("force, F0 3 N, R 0.98 N/mm, s 10 mm"), en("rate"), en("initial stress, F0 3 N")
GUIDE, LENGTHS = en("clause 9, guide values, index 12"), en("lengths, nt 8, greatest wire 1.02 mm, loops of 11 mm")
LIMIT = en("clause 10, Rm 1980 MPa")
HOOKS = shigley("eq. 10-34 to 10-37, F 14.7 N")
LIMITS = shigley("table 10-7")
HEIGHTS = Source("DIN 2097; EN 13906-2:2013", "loop height over inside diameter", "memory")
BEND = Source("DIN 2097", "text, bend of a loop, wire 1 mm", "a spring maker's page")
SPREAD = Source("JIS B 2704-2", "grade 2, initial tension of 3 N", "a spring maker's page")
STAINLESS = Source("A spring maker's page", "initial tension in stainless wire, 3 N in carbon steel", "read")


def steel(name: str) -> materials.Material:
    found = materials.find(name)
    assert found is not None
    return found


def height(kind: Hooks, bound: int) -> float:
    bounds = hooks.LOOP_HEIGHTS[kind]
    assert bounds is not None
    found = bounds[bound]
    assert found is not None
    return found


CHECKS = [
    check("force", "12.8000", FORCE, lambda: extension.force_n(3.0, 0.98, 10.0)),
    check("extension", "10.0000", FORCE, lambda: extension.extension_mm(12.8, 3.0, 0.98)),
    check("rate", "0.982591", RATE, lambda: extension.rate_n_per_mm(D, MEAN, COILS, G_MPA)),
    check(
        "active coils with two loops",
        "20.3956",
        shigley("eq. 10-40, 20 body coils"),
        lambda: extension.active_coils_with_hooks(20.0, G_MPA, E_MPA),
    ),
    check("initial stress", "91.6732", TENSION, lambda: extension.initial_stress_mpa(3.0, D, MEAN)),
    check("initial tension", "3.00000", TENSION, lambda: extension.initial_tension_n(91.6732, D, MEAN)),
    check("wound on a mandrel", "53.4600", GUIDE, lambda: initial_tension.initial_stress_wound_mpa(12.0, RM_MPA)),
    check("coiled by machine", "26.7300", GUIDE, lambda: initial_tension.initial_stress_coiled_mpa(12.0, RM_MPA)),
    check(
        "preferred initial stress",
        "65.5241",
        shigley("eq. 10-41, index 12"),
        lambda: initial_tension.initial_stress_preferred_mpa(12.0),
    ),
    check(
        "half its range",
        "18.0462",
        shigley("eq. 10-41, index 12"),
        lambda: initial_tension.initial_stress_either_side_mpa(12.0),
    ),
    check("spread of the tension", "0.450000", SPREAD, lambda: initial_tension.SPREAD_STATED * 3.0),
    check("tension", "2.55000", STAINLESS, lambda: initial_tension.STAINLESS_SHARE * 3.0),
    check("body", "9.18000", LENGTHS, lambda: extension.body_length_mm(8.0, 1.02)),
    check("free length", "31.1800", LENGTHS, lambda: extension.free_length_mm(9.18, 11.0)),
    check("loop", "11.0000", LENGTHS, lambda: extension.hook_length_mm(31.18, 9.18)),
    check("bending stress, factor 1.07", "980.002", HOOKS, lambda: hooks.bending_stress_mpa(14.7, D, MEAN, 1.07)),
    check("factor of a loop of index 12", "1.06629", HOOKS, lambda: hooks.loop_factor(12.0)),
    check("torsion, factor 1.15", "516.579", HOOKS, lambda: hooks.torsion_stress_mpa(14.7, D, MEAN, 1.15)),
    check("factor of a bend of index 5", "1.18750", HOOKS, lambda: hooks.bend_factor(5.0)),
    check("half loop, least", "0.55", HEIGHTS, lambda: height(Hooks.HALF_LOOP, 0)),
    check("half loop, greatest", "0.8", HEIGHTS, lambda: height(Hooks.HALF_LOOP, 1)),
    check("full loop, least", "0.8", HEIGHTS, lambda: height(Hooks.FULL_LOOP, 0)),
    check("full loop, greatest", "1.1", HEIGHTS, lambda: height(Hooks.FULL_LOOP, 1)),
    check("full loop at the side, least", "0.8", HEIGHTS, lambda: height(Hooks.SIDE_HOOK, 0)),
    check("full loop at the side, greatest", "1.1", HEIGHTS, lambda: height(Hooks.SIDE_HOOK, 1)),
    check("raised hook, least", "1.1", HEIGHTS, lambda: height(Hooks.EXTENDED_HOOK, 0)),
    check("least bend", "1.00000", BEND, lambda: hooks.LEAST_BEND_RADIUS_WIRES * D),
]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_is_the_formulas_value(check: Check) -> None:
    check.must_agree()
