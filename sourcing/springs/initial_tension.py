"""The tension that holds the coils of an extension spring together at rest: what is usual by index, source by source.

The sources lie a factor of two to three apart, because it hangs on how the wire was coiled: all are shown.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import exp

from sourcing.figures import Holds, formula
from sourcing.materials.model import Group, Material
from sourcing.springs.compression import INDEX, index_is_covered
from sourcing.springs.extension import initial_tension_n
from sourcing.springs.model import ExtensionSpring

US_INDEX = Holds("spring index", "w", 4.0, 16.0)

COILED_TO_WOUND = "EN 13906-2, coiled by machine to wound on a mandrel"
PREFERRED = "Shigley, what US makers prefer"

STAINLESS_SHARE = 0.85
"""Initial tension in stainless wire over that in carbon steel (a spring maker)."""

SPREAD_STATED = 0.15
"""Initial tension of a bought spring may be so far from what is stated (JIS B 2704-2, grade 2)."""


@formula(
    "τ₀ = 0.45 R_m (0.135 − 0.00625 w)",
    holds=(INDEX,),
    source="EN 13906-2:2013 clause 9, a guide value",
    from_memory=True,
)
def initial_stress_wound_mpa(spring_index: float, tensile_strength_mpa: float) -> float:
    """Greatest initial stress of a spring wound on a mandrel, by hand or on a coiling bench.

    >>> round(initial_stress_wound_mpa(12.0, 1980.0), 2)
    53.46
    """
    return 0.45 * tensile_strength_mpa * (0.135 - 0.00625 * spring_index)


@formula(
    "τ₀ = 0.45 R_m (0.075 − 0.00375 w)",
    holds=(INDEX,),
    source="EN 13906-2:2013 clause 9, a guide value",
    from_memory=True,
)
def initial_stress_coiled_mpa(spring_index: float, tensile_strength_mpa: float) -> float:
    """Greatest initial stress of a spring coiled on an automatic machine.

    >>> round(initial_stress_coiled_mpa(12.0, 1980.0), 2)
    26.73
    """
    return 0.45 * tensile_strength_mpa * (0.075 - 0.00375 * spring_index)


@formula(
    "τ₀ = 231 / exp(0.105 w)",
    holds=(US_INDEX,),
    source="Shigley, Mechanical Engineering Design, eq. 10-41",
    from_memory=True,
)
def initial_stress_preferred_mpa(spring_index: float) -> float:
    """Middle of the range of initial stress that US makers prefer, in carbon steel.

    >>> round(initial_stress_preferred_mpa(12.0), 2)
    65.52
    """
    return 231.0 / exp(0.105 * spring_index)


@formula(
    "τ₀ = 6.9 (4 − (w − 3) / 6.5)",
    holds=(US_INDEX,),
    source="Shigley, Mechanical Engineering Design, eq. 10-41",
    from_memory=True,
)
def initial_stress_either_side_mpa(spring_index: float) -> float:
    """Half the width of the range that US makers prefer, up and down from `initial_stress_preferred_mpa`.

    >>> round(initial_stress_either_side_mpa(12.0), 2)
    18.05
    """
    return 6.9 * (4.0 - (spring_index - 3.0) / 6.5)


_PREFERRED = {"q": "share", "τ_p": "initial_stress_preferred_mpa", "τ_h": "initial_stress_either_side_mpa"}
_PREFERRED_SOURCE = "Shigley, Mechanical Engineering Design, eq. 10-41; the share of stainless wire a spring maker's"


@formula("τ₀ = q (τ_p − τ_h)", where=_PREFERRED, source=_PREFERRED_SOURCE, from_memory=True)
def least_initial_stress_preferred_mpa(
    share: float, initial_stress_preferred_mpa: float, initial_stress_either_side_mpa: float
) -> float:
    """Least initial stress that US makers prefer; `share` is that of the wire over carbon steel.

    >>> round(least_initial_stress_preferred_mpa(1.0, 65.52, 18.05), 2)
    47.47
    """
    return share * (initial_stress_preferred_mpa - initial_stress_either_side_mpa)


@formula("τ₀ = q (τ_p + τ_h)", where=_PREFERRED, source=_PREFERRED_SOURCE, from_memory=True)
def greatest_initial_stress_preferred_mpa(
    share: float, initial_stress_preferred_mpa: float, initial_stress_either_side_mpa: float
) -> float:
    """Greatest initial stress that US makers prefer; `share` is that of the wire over carbon steel.

    >>> round(greatest_initial_stress_preferred_mpa(1.0, 65.52, 18.05), 2)
    83.57
    """
    return share * (initial_stress_preferred_mpa + initial_stress_either_side_mpa)


_STATED_SOURCE = "JIS B 2704-2, grade 2"


@formula("F = 0.85 F₀", source=_STATED_SOURCE)
def least_of_stated_n(initial_tension_n: float) -> float:
    """The least that a stated initial tension may be, `SPREAD_STATED` below it.

    >>> least_of_stated_n(10.0)
    8.5
    """
    return initial_tension_n * (1.0 - SPREAD_STATED)


@formula("F = 1.15 F₀", source=_STATED_SOURCE)
def most_of_stated_n(initial_tension_n: float) -> float:
    """The most that a stated initial tension may be, `SPREAD_STATED` above it.

    >>> most_of_stated_n(10.0)
    11.5
    """
    return initial_tension_n * (1.0 + SPREAD_STATED)


@dataclass(frozen=True, slots=True)
class Range:
    """Between what a source has the initial tension of a spring, in newtons."""

    source: str
    low_n: float
    high_n: float


@dataclass(frozen=True, slots=True)
class Tension:
    """The initial tension to believe, with the bounds that hold 95 %; `stated` where somebody measured it.

    `ranges` is what each source has for such a spring; empty where no source covers its index or its strength.
    """

    likely_n: float
    low_n: float
    high_n: float
    stated: bool
    ranges: tuple[Range, ...]

    @property
    def most_n(self) -> float | None:
        """More than any source has for such a spring is more than its coils can hold; None where none covers it."""
        return max((each.high_n for each in self.ranges), default=None)


def ranges_of(spring: ExtensionSpring) -> tuple[Range, ...]:
    """What each source has for a spring of this wire and diameter."""
    return tuple(
        Range(source, *(_tension_n(spring, stress_mpa) for stress_mpa in (low_mpa, high_mpa)))
        for source, low_mpa, high_mpa in _stresses(spring)
    )


def tension_of(spring: ExtensionSpring) -> Tension:
    """The stated initial tension; else the middle of all that the sources have for such a spring."""
    ranges = ranges_of(spring)
    stated_n = spring.initial_tension_n
    if stated_n is not None:
        return Tension(stated_n, least_of_stated_n(stated_n), most_of_stated_n(stated_n), True, ranges)
    low_n = min((each.low_n for each in ranges), default=0.0)
    high_n = max((each.high_n for each in ranges), default=0.0)
    return Tension((low_n + high_n) / 2.0, low_n, high_n, False, ranges)


def _tension_n(spring: ExtensionSpring, stress_mpa: float) -> float:
    return initial_tension_n(max(0.0, stress_mpa), spring.wire_diameter_mm, spring.mean_diameter_mm)


def _stresses(spring: ExtensionSpring) -> Iterator[tuple[str, float, float]]:
    """Each source that covers the spring, with its least and its greatest stress."""
    index, tensile_mpa = spring.spring_index, spring.tensile_strength_mpa
    if tensile_mpa is not None and index_is_covered(index):
        coiled_mpa = initial_stress_coiled_mpa(index, tensile_mpa)
        wound_mpa = initial_stress_wound_mpa(index, tensile_mpa)
        yield COILED_TO_WOUND, coiled_mpa, wound_mpa
    share = share_of_carbon_steel(spring.material)
    if share is not None and US_INDEX.low is not None and US_INDEX.low <= index <= (US_INDEX.high or 0.0):
        middle_mpa, half_mpa = initial_stress_preferred_mpa(index), initial_stress_either_side_mpa(index)
        least_mpa = least_initial_stress_preferred_mpa(share, middle_mpa, half_mpa)
        yield PREFERRED, least_mpa, greatest_initial_stress_preferred_mpa(share, middle_mpa, half_mpa)


def share_of_carbon_steel(material: Material) -> float | None:
    """Initial tension in wire of a material over that in carbon steel; None where no source has it."""
    if material.group in (Group.DRAWN, Group.TEMPERED):
        return 1.0
    return STAINLESS_SHARE if material.group is Group.STAINLESS else None
