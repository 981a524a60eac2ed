"""What a spool's trial coils teach, one after the other.

Where coils of different spring indices disagree, the flow stress is taken to go with the index (index_trend.py).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from sourcing.materials.model import Material
from sourcing.stock.model import Trial
from sourcing.winding import springback
from sourcing.winding.index_trend import AS_ONE_AT_INDEX, Trend
from sourcing.winding.trials import Knowledge, untried

DISAGREE = 2.0
"""From this many standard deviations on, coils of different indices are taken to disagree (assumed)."""

APART = 1.25
"""Indices of which one is so many times the other are different (assumed)."""


def learn(
    material: Material, wire_diameter_mm: float, tensile_strength_mpa: float, trials: Iterable[Trial]
) -> Knowledge:
    """What is known after a spool's trial coils, in the order in which they stand, of wire pulled as a sheet asks.

    One flow stress for every index, unless coils of different indices disagree about it and a trend explains them
    better.
    """
    coils = tuple(trials)
    untaught = replace(untried(material, wire_diameter_mm, tensile_strength_mpa), pulled=True)
    known = _after_all(untaught, coils, material)
    if known.greatest_deviation <= DISAGREE or not _of_different_indices(known, coils):
        return known
    prior = Trend(AS_ONE_AT_INDEX, untaught.flow_ratio, untaught.flow_ratio_sd)
    with_trend = _after_all(replace(untaught, trend=prior), coils, material)
    return with_trend if with_trend.greatest_deviation < known.greatest_deviation else known


def _after_all(known: Knowledge, coils: Iterable[Trial], material: Material) -> Knowledge:
    for coil in coils:
        known = known.after(coil, material)
    return known


def _of_different_indices(known: Knowledge, coils: Sequence[Trial]) -> bool:
    indices = [springback.index_on_mandrel(coil.mandrel_mm, known.wire_diameter_mm) for coil in coils]
    return max(indices) >= APART * min(indices)
