"""Published figures that no function of ours reaches, each with its reason; nothing else may be left unchecked."""

from __future__ import annotations

POWER_LAW = (
    "strength by the book's own power law of the wire, put in as data: what follows from it is checked; ours comes from"
    " the standards' tables (see test_wire_strength.py)"
)
SHARE = "0.40 of a strength by the book's own power law: the program has 0.45, as Shigley has"
RATIO = "the ratio of two figures given: the program has no function for it"
CHART = (
    "the source reads a factor off a chart (0.22 and 0.62 of the free length); ours is Haringx's column: 8 % more for"
    " hinged ends, and no buckling at all between fixed ones"
)
CIRCLE = "the free length that it follows from is not in the data: ours could only return what was put in"

NOT_YET: dict[tuple[str, str], str] = {
    ("sadhu singh 8.1", "slenderness"): RATIO,
    ("sadhu singh 8.1", "buckling_load_hinged_n"): CHART,
    ("sadhu singh 8.1", "buckling_load_fixed_n"): CHART,
    ("jindal 8-3", "sut_mpa"): POWER_LAW,
    ("jindal 8-6", "ssy_mpa"): SHARE,
    ("shigley 10-26, 0.105 in", "sut_mpa"): POWER_LAW,
    ("shigley 10-27, 0.105 in", "sut_mpa"): POWER_LAW,
    ("shigley 10-27, 0.112 in", "sut_mpa"): POWER_LAW,
    ("shigley 10-3", "sut_mpa"): POWER_LAW,
    ("shigley 10-7", "sut_mpa"): POWER_LAW,
    ("shigley 10-10", "sut_mpa"): POWER_LAW,
    ("shigley 10-13", "sut_mpa"): POWER_LAW,
    ("shigley 10-14", "sut_mpa"): POWER_LAW,
    ("shigley 11th 10-4", "solid_stress_mpa"): CIRCLE,
    ("shigley 11th 10-4", "ssy_over_solid_stress"): CIRCLE,
}

OTHERWISE = {
    "absent": "no wire of the program",
    "band": "the source has bands of diameter, of which one stands for every wire (sourcing/tables/materials.csv)",
    "strictest": "sources disagree: the strictest of them is taken",
    "spread": "sources disagree: another of them is taken, and the spread is told (sourcing/tables/materials.csv)",
}
"""Why a row of wire_figures.csv differs from ours."""
