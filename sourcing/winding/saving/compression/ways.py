"""What a coil of a cylinder may become: as it is, of another length, with other coils, or both."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.springs.model import CompressionSpring
from sourcing.springs.pressed import rate_n_per_mm
from sourcing.winding.line import length_for_rate_mm
from sourcing.winding.saving.coil import Coil, Way
from sourcing.winding.saving.compression.body import at_pitch, with_coils
from sourcing.winding.saving.pressed import STEP_COILS, best_of


def best(coil: Coil, kept: CompressionSpring, cut: CompressionSpring, pitch_mm: float) -> Way[CompressionSpring]:
    """The best way; `kept` has the coils that were meant, `cut` those for its rate, and it stands at a pitch."""
    lengths, for_its_rate = (kept, _for_its_rate(coil, kept)), (kept, at_pitch(cut, pitch_mm), cut)
    return best_of(coil, at_pitch(kept, pitch_mm), lengths, for_its_rate, lambda: _between(coil, kept, cut))


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
