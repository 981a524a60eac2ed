"""A coil of a cylindrical compression spring whose diameter came out otherwise, alone or with its pitch."""

from __future__ import annotations

from dataclasses import replace

from sourcing.springs.pressed import rate_n_per_mm
from sourcing.winding.pitch_lesson import cannot_be
from sourcing.winding.pitch_share import pitch_reading
from sourcing.winding.saving.coil import Coil, Saved, joined_said, refuse_senseless, saved_by, surprise, write_down
from sourcing.winding.saving.compression.body import (
    Came,
    at_pitch,
    coils_there,
    pitch_in_the_end_mm,
    pitch_meant_mm,
    wanted_of,
    with_coils,
    with_its_rate,
)
from sourcing.winding.saving.compression.ways import best
from sourcing.winding.saving.compression.words import said_next, said_of_nearer, said_of_verdict, too_few
from sourcing.winding.saving.next_coil import next_coil
from sourcing.winding.saving.pitch import doubted_opening, doubted_pitch, refuse_narrower
from sourcing.winding.saving.verdict_words import chance_said, clearances, wrong


def came_out(coil: Coil, outside_mm: float) -> Saved:
    """A coil whose diameter came out otherwise: cut to the coils that restore the rate, n = G d⁴ / (8 D³ R).

    Its pitch is taken to be the one meant, so that other coils make another length.

    >>> from sourcing.springs.compression import active_coils_for_rate as coils, rate_n_per_mm as rate
    >>> round(coils(0.8, 9.9, rate(0.8, 9.6, 6.0, 81500.0), 81500.0), 2)
    5.47

    Source: winding model, hand-checked case 3.
    """
    return _came_out(coil, outside_mm, None)


def came_out_with_pitch(coil: Coil, outside_mm: float, pitch_mm: float) -> Saved:
    """A coil of which both were measured: one verdict on its coils, by the diameter, and its length, by the pitch."""
    refuse_narrower(coil, pitch_mm)
    return _came_out(coil, outside_mm, pitch_mm)


def _came_out(coil: Coil, outside_mm: float, pitch_mm: float | None) -> Saved:
    """What serves best of all that it may become (ways.py), and what is said of it.

    A pitch that no coil of the sheet has is measured again before anything is done by it.
    """
    mandrel_mm = coil.plan.mandrel.diameter_mm
    assert mandrel_mm is not None
    refuse_senseless(coil, "outside", outside_mm, mandrel_mm)
    mean_mm, wanted = coil.final_mean_mm(outside_mm), wanted_of(coil)
    kept, just = replace(wanted, mean_diameter_mm=mean_mm), with_its_rate(wanted, mean_mm)
    there = coils_there(coil, mandrel_mm, mean_mm)
    cut = just if just.total_coils <= there else with_coils(kept, max(there, kept.total_coils))
    at_mm = pitch_meant_mm(coil) if pitch_mm is None else pitch_mm
    stands_at_mm = pitch_in_the_end_mm(coil, at_mm)
    way = best(coil, kept, cut, stands_at_mm)
    came = Came(outside_mm, pitch_mm, at_mm, at_pitch(kept, stands_at_mm), cut, there)
    trial, reading = coil.trial(mandrel_mm, outside_mm), None
    if pitch_mm is not None:
        with_pitch = replace(trial, pitch_wound_mm=coil.plan.pitch_on_mandrel_mm, pitch_mm=pitch_mm)
        reading = pitch_reading(with_pitch, coil.wire_mm, coil.wire.material)
        trial = trial if cannot_be(reading) else with_pitch
    read_again = cannot_be(reading) and way.answer != "wind again"
    then, rate_kept = next_coil(coil, trial), rate_n_per_mm(came.spring) / rate_n_per_mm(wanted)
    said = joined_said(
        doubted_pitch(coil, at_mm, pitch_meant_mm(coil)),
        doubted_opening(coil, at_mm, reading, coil.known_then(trial).pitch),
        said_of_verdict(coil, came, way, rate_kept, read_again=read_again),
        () if read_again else chance_said(coil, way),
        said_of_nearer(coil, came, way, rate_kept),
        too_few(coil, came, way, just),
        clearances(way.fit),
        wrong(way.fit, coil.bench),
        surprise(coil, trial),
        said_next(coil, then, cannot_be(reading)),
        write_down(coil, trial),
    )
    if read_again:
        way = replace(way, answer="measure first")
    return saved_by(way, rate_kept, said, then and then.plan.mandrel)
