"""What a coil of a cylindrical compression spring may become: as it is, at another length, with other coils, or both.

The coils that restore its rate come first, and a length alone before them where heat has been. Where those give no
more than a near fit, lengths and coils between are tried.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.springs.model import CompressionSpring
from sourcing.springs.pressed import rate_n_per_mm
from sourcing.winding.line import length_for_rate_mm
from sourcing.winding.saving.coil import Coil, Way, best_way
from sourcing.winding.saving.compression.body import at_pitch, with_coils
from sourcing.winding.saving.pressed import judged

STEP_COILS = 0.25
"""Coils are counted off by quarters."""

CylinderWay = Way[CompressionSpring]


def best(coil: Coil, kept: CompressionSpring, cut: CompressionSpring, pitch_mm: float) -> CylinderWay:
    """The best way; `kept` has the coils that were meant, `cut` those for its rate, and it stands at a pitch."""
    as_it_is = at_pitch(kept, pitch_mm)
    keep = Way("keep", as_it_is, judged(coil, as_it_is))
    lengths = [keep, *_changed(coil, kept, _for_its_rate(coil, kept))]
    if coil.heated and (way := best_way(coil, *lengths)).fit.fits == "yes":
        return way
    plain = [keep, *_changed(coil, kept, at_pitch(cut, pitch_mm), cut)]
    if (way := best_way(coil, *plain)).fit.fits == "yes":
        return way
    return best_way(coil, *plain, *lengths[1:], *_changed(coil, *_between(coil, kept, cut)))


def _changed(coil: Coil, *springs: CompressionSpring) -> Iterator[CylinderWay]:
    return (Way("change", each, judged(coil, each)) for each in springs)


def _for_its_rate(coil: Coil, spring: CompressionSpring) -> CompressionSpring:
    """The spring at the length that brings its forces nearest to those that are wanted."""
    free_mm = length_for_rate_mm(rate_n_per_mm(spring), coil.need, coil.bench)
    return spring if free_mm is None else replace(spring, free_length_mm=free_mm)


def _between(coil: Coil, kept: CompressionSpring, cut: CompressionSpring) -> Iterator[CompressionSpring]:
    """With coils between those that were meant and those for its rate, each at its own best length."""
    steps = int(abs(cut.total_coils - kept.total_coils) / STEP_COILS)
    way = STEP_COILS if cut.total_coils > kept.total_coils else -STEP_COILS
    for step in range(1, steps + 1):
        yield _for_its_rate(coil, with_coils(kept, kept.total_coils + way * step))
    yield _for_its_rate(coil, cut)
