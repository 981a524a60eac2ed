"""How many times a stress that comes and goes is borne: Goodman's line, and lines of stress over cycles.

Stresses are corrected for curvature. An amplitude and a mean are first made into the stress that, coming from nothing
every time, harms as much; sourcing/tables/fatigue.csv then says how many times that is borne.
"""

from __future__ import annotations

from functools import cache
from itertools import pairwise
from math import inf, log, sqrt

from sourcing.figures import Holds, formula
from sourcing.materials.model import Group, Material
from sourcing.springs.strength import Place
from sourcing.tables import rows

ZIMMERLI_AMPLITUDE_MPA, ZIMMERLI_MEAN_MPA = 241.0, 379.0
"""A shear stress that unpeened spring steel bears without end, whatever its strength and size (35 and 55 kpsi).

Zimmerli (1957), as Shigley, Mechanical Engineering Design, eq. 10-28 has it (from memory; the instructors' solutions
agree): spring steel up to 10 mm, from a million cycles on. Peened it would be 398 and 534 MPa: no spring is taken for
peened here.
"""

FEWEST_CYCLES, MOST_CYCLES = 1e3, 1e7
"""Where the lines of stress over cycles begin and end. Fewer cycles are steady duty (textbooks; EN 13906-1 has up to
10 000, from memory); of more nothing was measured."""

_AMPLITUDE_AND_MEAN = {"τ_a": "amplitude_mpa", "τ_m": "mean_mpa"}
_ENDURANCE = {"S_e": "endurance_mpa", "S_u": "ultimate_mpa"}
_SHIGLEY = "Shigley, Mechanical Engineering Design, ch. 10"
MEAN_BELOW_ULTIMATE = Holds("mean stress over ultimate", "τ_m / S_u", 0.0, 1.0)


@formula("S_su = 0.67 R_m", source=f"{_SHIGLEY}, eq. 10-30")
def ultimate_shear_mpa(tensile_strength_mpa: float) -> float:
    """The shear stress at which spring wire breaks.

    >>> round(ultimate_shear_mpa(1921.5), 1)
    1287.4
    """
    return 0.67 * tensile_strength_mpa


_LOW_AND_HIGH = {"τ_1": "low_mpa", "τ_2": "high_mpa"}


@formula("τ_a = (τ_2 − τ_1) / 2", where=_LOW_AND_HIGH, source=_SHIGLEY, from_memory=True)
def amplitude_mpa(low_mpa: float, high_mpa: float) -> float:
    """Half of what a stress goes up and down.

    >>> amplitude_mpa(100.0, 700.0)
    300.0
    """
    return (high_mpa - low_mpa) / 2.0


@formula("τ_m = (τ_1 + τ_2) / 2", where=_LOW_AND_HIGH, source=_SHIGLEY, from_memory=True)
def mean_mpa(low_mpa: float, high_mpa: float) -> float:
    """The stress halfway between the least and the greatest.

    >>> mean_mpa(100.0, 700.0)
    400.0
    """
    return (low_mpa + high_mpa) / 2.0


@formula(
    "S_e = τ_a / (1 − τ_m / S_u)",
    where={**_AMPLITUDE_AND_MEAN, "S_u": "ultimate_mpa"},
    holds=(MEAN_BELOW_ULTIMATE,),
    source=f"{_SHIGLEY} (Goodman)",
    from_memory=True,
)
def reversed_mpa(amplitude_mpa: float, mean_mpa: float, ultimate_mpa: float) -> float:
    """The amplitude that harms as much with no mean stress, by Goodman's line; infinite where the mean alone breaks it.

    The endurance for a wire, where amplitude and mean are a pair that is borne without end.

    >>> round(reversed_mpa(241.3, 379.2, 1287.4), 1)
    342.0
    """
    return inf if mean_mpa >= ultimate_mpa else amplitude_mpa / (1.0 - mean_mpa / ultimate_mpa)


@formula(
    "S_e = τ_a / (1 − (τ_m / S_u)²)",
    where={**_AMPLITUDE_AND_MEAN, "S_u": "ultimate_mpa"},
    holds=(MEAN_BELOW_ULTIMATE,),
    source=f"{_SHIGLEY} (Gerber)",
    from_memory=True,
)
def reversed_by_gerber_mpa(amplitude_mpa: float, mean_mpa: float, ultimate_mpa: float) -> float:
    """As `reversed_mpa`, by Gerber's parabola: nearer the middle of tests, where Goodman's line is on the safe side.

    It judges nothing here; books that use it are checked with it.

    >>> round(reversed_by_gerber_mpa(241.3, 379.2, 1287.4), 1)
    264.2
    """
    return inf if mean_mpa >= ultimate_mpa else amplitude_mpa / (1.0 - (mean_mpa / ultimate_mpa) ** 2)


@formula(
    "n_f = 1 / (τ_a / S_e + τ_m / S_u)",
    where={**_AMPLITUDE_AND_MEAN, **_ENDURANCE},
    source=f"{_SHIGLEY} (Goodman)",
    from_memory=True,
)
def safety(amplitude_mpa: float, mean_mpa: float, endurance_mpa: float, ultimate_mpa: float) -> float:
    """How many times larger amplitude and mean might both be before they reach the line between two strengths.

    With a yield stress in the place of the ultimate one it is Soderberg's line. 1 or more: borne without end. Infinite
    where there is no stress at all.

    >>> round(safety(150.0, 450.0, 337.0, 1327.0), 3)
    1.275
    """
    used = amplitude_mpa / endurance_mpa + mean_mpa / ultimate_mpa
    return 1.0 / used if used else inf


@formula(
    "S_a = r S_e S_u / (r S_u + S_e)",
    where={"r": "amplitude_over_mean", **_ENDURANCE},
    source=f"{_SHIGLEY} (Goodman)",
    from_memory=True,
)
def amplitude_borne_mpa(amplitude_over_mean: float, endurance_mpa: float, ultimate_mpa: float) -> float:
    """The greatest amplitude where amplitude and mean grow together, on Goodman's line.

    >>> round(amplitude_borne_mpa(0.6, 342.08, 1287.41), 1)
    237.1
    """
    together = amplitude_over_mean * ultimate_mpa + endurance_mpa
    return amplitude_over_mean * endurance_mpa * ultimate_mpa / together


@formula(
    "S_a = r² S_u² / (2 S_e) (√(1 + (2 S_e / (r S_u))²) − 1)",
    where={"r": "amplitude_over_mean", **_ENDURANCE},
    source=f"{_SHIGLEY} (Gerber)",
    from_memory=True,
)
def amplitude_borne_by_gerber_mpa(amplitude_over_mean: float, endurance_mpa: float, ultimate_mpa: float) -> float:
    """As `amplitude_borne_mpa`, on Gerber's parabola.

    >>> round(amplitude_borne_by_gerber_mpa(0.6, 264.24, 1287.41), 1)
    239.0
    """
    steep = amplitude_over_mean * ultimate_mpa
    return steep**2 / (2.0 * endurance_mpa) * (sqrt(1.0 + (2.0 * endurance_mpa / steep) ** 2) - 1.0)


@formula(
    "τ_D = 2 x / (1 + x / S_u)",
    where={"x": "reversed_mpa", "S_u": "ultimate_mpa"},
    source="Goodman's line, turned round: derived",
)
def pulsating_mpa(reversed_mpa: float, ultimate_mpa: float) -> float:
    """The stress that, coming from nothing every time, harms as much as an amplitude with no mean stress.

    Half of it is amplitude and half of it mean: x = (τ_D / 2) / (1 − τ_D / (2 S_u)).

    >>> round(pulsating_mpa(342.08, 1287.41), 1)
    540.5
    """
    return 2.0 * ultimate_mpa if reversed_mpa == inf else 2.0 * reversed_mpa / (1.0 + reversed_mpa / ultimate_mpa)


def ultimate_mpa(place: Place, tensile_strength_mpa: float) -> float:
    """What breaks the wire at a place: the tensile strength where it is bent, `ultimate_shear_mpa` where twisted."""
    return ultimate_shear_mpa(tensile_strength_mpa) if place.in_shear else tensile_strength_mpa


def borne_without_end(material: Material, tensile_strength_mpa: float, low_mpa: float, high_mpa: float) -> bool:
    """Whether a shear stress between two bounds lies inside Goodman's line through Zimmerli's pair.

    Of steel that is drawn or tempered alone: of stainless and copper wire no endless life is in print.

    >>> from sourcing.materials import find
    >>> [borne_without_end(find("music-wire"), 2270.0, 100.0, high) for high in (500.0, 700.0)]
    [True, False]
    """
    if material.group not in (Group.DRAWN, Group.TEMPERED):
        return False
    ultimate = ultimate_shear_mpa(tensile_strength_mpa)
    endurance = reversed_mpa(ZIMMERLI_AMPLITUDE_MPA, ZIMMERLI_MEAN_MPA, ultimate)
    return safety(amplitude_mpa(low_mpa, high_mpa), mean_mpa(low_mpa, high_mpa), endurance, ultimate) >= 1.0


@formula(
    "N = cycles at τ_D / R_m on the line of the place, straight on logarithms of stress and cycles",
    where={"R_m": "tensile_strength_mpa", **_LOW_AND_HIGH},
    closed=False,
    source="the rows of sourcing/tables/fatigue.csv: a spring institute's handbook, Shigley tables 10-8 and 10-10",
    from_memory=True,
)
def cycles_borne(
    place: Place, material: Material, tensile_strength_mpa: float, low_mpa: float, high_mpa: float
) -> float:
    """How many times a corrected stress may go from `low_mpa` to `high_mpa` and back, before it breaks the wire.

    The line of the place over the logarithms of stress and cycles. 0: fewer than `FEWEST_CYCLES`. `MOST_CYCLES`: so
    many or more, where the line ends. Infinite where Zimmerli's pair bears the stress too (`borne_without_end`).

    >>> from sourcing.materials import find
    >>> wire = find("music-wire")
    >>> [round(cycles_borne(Place.LENGTH, wire, 2000.0, 0.0, high)) for high in (1300.0, 720.0, 690.0, 590.0)]
    [0, 100000, 308409, 10000000]
    >>> cycles_borne(Place.LENGTH, wire, 2000.0, 0.0, 500.0)
    inf
    """
    ultimate = ultimate_mpa(place, tensile_strength_mpa)
    worst = reversed_mpa(amplitude_mpa(low_mpa, high_mpa), mean_mpa(low_mpa, high_mpa), ultimate)
    borne = _cycles_at(_line(place, material), pulsating_mpa(worst, ultimate) / tensile_strength_mpa)
    if borne < MOST_CYCLES or not place.in_shear:
        return borne
    return inf if borne_without_end(material, tensile_strength_mpa, low_mpa, high_mpa) else borne


Line = tuple[tuple[float, float], ...]
"""Cycles with the share of the tensile strength that is borne so often, the fewest first."""


def _cycles_at(line: Line, share: float) -> float:
    if share > line[0][1]:
        return 0.0
    for (fewer, more_stressed), (more, less_stressed) in pairwise(line):
        if share >= less_stressed:
            return fewer * (more / fewer) ** (log(share / more_stressed) / log(less_stressed / more_stressed))
    return line[-1][0]


def _line(place: Place, material: Material) -> Line:
    kind = "compression" if place in (Place.LENGTH, Place.SOLID) else place.value
    lines = _lines()
    return lines.get((kind, "valve"), lines[kind, "any"]) if material.valve_quality else lines[kind, "any"]


@cache
def _lines() -> dict[tuple[str, str], Line]:
    lines: dict[tuple[str, str], Line] = {}
    for row in rows("fatigue"):
        key = row["place"], row["group"]
        lines[key] = (*lines.get(key, ()), (float(row["cycles"]), float(row["share"])))
    return lines
