"""A coil of a cylindrical compression spring whose pitch came out otherwise, and one that has set."""

from __future__ import annotations

from dataclasses import replace

from sourcing.springs.model import CompressionSpring
from sourcing.winding.doubts import opening_sd
from sourcing.winding.presetting import as_laid
from sourcing.winding.saving.coil import Coil, Saved, Way
from sourcing.winding.saving.compression.body import (
    at_pitch,
    pitch_in_the_end_mm,
    pitch_meant_mm,
    pitch_of,
    wanted_of,
)
from sourcing.winding.saving.lengths import of_set
from sourcing.winding.saving.pitch import Opened, of_pitch
from sourcing.winding.saving.pressed import judged


def came_out_pitch(coil: Coil, pitch_mm: float) -> Saved:
    """A coil whose pitch came out otherwise: its free length follows, and so does what it pushes."""
    came = at_pitch(wanted_of(coil), pitch_in_the_end_mm(coil, pitch_mm))
    return of_pitch(coil, Way("keep", came, judged(coil, came)), pitch_mm, pitch_meant_mm(coil), _opened(coil))


def _opened(coil: Coil) -> Opened:
    """How the coil opens by its plan, before heat."""
    before, mandrel_mm = coil.plan.finished.spring, coil.plan.mandrel.diameter_mm
    assert isinstance(before, CompressionSpring)
    assert mandrel_mm is not None
    known, mean_mm = coil.known_then(), before.mean_diameter_mm
    opening = mean_mm / (mandrel_mm + coil.wire_mm)
    return Opened(opening, opening_sd(known, mandrel_mm), pitch_of(as_laid(before, wanted_of(coil))))


def pressed_to(coil: Coil, free_length_mm: float) -> Saved:
    """A spring that was shorter after it was first pressed solid: it has set, and the next one is wound longer."""
    wanted = wanted_of(coil)
    spring = replace(wanted, free_length_mm=free_length_mm)

    def wider(length_mm: float) -> float:
        return pitch_of(replace(wanted, free_length_mm=length_mm)) / pitch_of(as_laid(wanted, wanted))

    return of_set(coil, Way("keep", spring, judged(coil, spring)), wider)
