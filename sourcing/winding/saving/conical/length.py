"""A cone whose pitch came out otherwise, and one that has set."""

from __future__ import annotations

from dataclasses import replace

from sourcing.springs.conical_lengths import pitch_mm, pitch_of, step_of
from sourcing.springs.model import ConicalSpring
from sourcing.winding.doubts import opening_sd
from sourcing.winding.presetting import as_laid
from sourcing.winding.saving.coil import Coil, Saved, Way
from sourcing.winding.saving.conical.cone import wanted_of
from sourcing.winding.saving.lengths import of_set
from sourcing.winding.saving.pitch import Opened, of_pitch
from sourcing.winding.saving.pressed import judged


def came_out_pitch(coil: Coil, measured_mm: float) -> Saved:
    """A cone whose pitch came out otherwise, measured along the axis: its free length follows."""
    wanted, meant = wanted_of(coil), coil.meant
    assert isinstance(meant, ConicalSpring)
    meant_mm = pitch_of(as_laid(meant, wanted))
    final_mm = measured_mm * pitch_of(wanted) / meant_mm
    came = replace(wanted, free_length_mm=wanted.free_length_mm + _pitches(wanted) * (final_mm - pitch_of(wanted)))
    return of_pitch(coil, Way("keep", came, judged(coil, came)), measured_mm, meant_mm, _opened(coil))


def _opened(coil: Coil) -> Opened:
    """How it opens by its plan, before heat, halfway between both ends."""
    before, known = coil.plan.finished.spring, coil.known_then()
    assert isinstance(before, ConicalSpring)
    mandrel_mm = (coil.plan.mandrel.thinnest_mm + coil.plan.mandrel.thickest_mm) / 2.0
    mean_mm = (before.mean_diameter_small_mm + before.mean_diameter_large_mm) / 2.0
    opening = mean_mm / (mandrel_mm + coil.wire_mm)
    return Opened(opening, opening_sd(known, mandrel_mm), pitch_of(as_laid(before, wanted_of(coil))))


def _pitches(cone: ConicalSpring) -> float:
    """How many pitches its free length holds: by how much it grows as the pitch does by one."""
    longer_mm = pitch_mm(
        cone.wire_diameter_mm,
        step_of(cone),
        cone.free_length_mm + 1.0,
        cone.active_coils,
        cone.total_coils,
        cone.ends,
    )
    return 1.0 / (longer_mm - pitch_of(cone))


def pressed_to(coil: Coil, free_length_mm: float) -> Saved:
    """A cone that was shorter after it was first pressed solid: it has set, and the next one is wound longer."""
    wanted = wanted_of(coil)
    spring = replace(wanted, free_length_mm=free_length_mm)

    def wider(length_mm: float) -> float:
        return pitch_of(replace(wanted, free_length_mm=length_mm)) / pitch_of(as_laid(wanted, wanted))

    return of_set(coil, Way("keep", spring, judged(coil, spring)), wider)
