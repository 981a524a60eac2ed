"""A cone whose ends came out otherwise, one of them measured or both."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from sourcing.quantities import show_diameter, show_length
from sourcing.springs import pressed
from sourcing.springs.conical_lengths import SURE_STEP, solid_length_of, step_of, telescopes
from sourcing.springs.model import ConicalSpring
from sourcing.winding.conical.in_hand import as_it_came
from sourcing.winding.conical.room import End
from sourcing.winding.in_hand import keeps
from sourcing.winding.model import Mandrel
from sourcing.winding.saving.coil import (
    Coil,
    Saved,
    SenselessError,
    joined_said,
    saved_by,
    surprise,
    write_down,
)
from sourcing.winding.saving.conical.cone import wanted_of
from sourcing.winding.saving.conical.ends import CameOut, ends_of, is_listed
from sourcing.winding.saving.conical.next_mandrel import next_mandrel, said_of_next
from sourcing.winding.saving.conical.ways import best
from sourcing.winding.saving.conical.words import deed, said_of_ends, said_of_nearer, said_of_other_end
from sourcing.winding.saving.next_coil import next_one
from sourcing.winding.saving.verdict_words import chance_said, clearances, wrong


def large_came_out(coil: Coil, outside_mm: float) -> Saved:
    """A cone whose large end came out otherwise; the small one follows by the same wire."""
    return _came_out(coil, {"large": outside_mm})


def small_came_out(coil: Coil, outside_mm: float) -> Saved:
    """A cone whose small end came out otherwise; the large one follows by the same wire."""
    return _came_out(coil, {"small": outside_mm})


def both_came_out(coil: Coil, large_mm: float, small_mm: float) -> Saved:
    """A cone of which both ends were measured."""
    if large_mm <= small_mm:
        large, small = (show_diameter(mm, coil.units) for mm in (large_mm, small_mm))
        raise SenselessError("outside", f"a large end of {large} beside a small one of {small}", "the larger one first")
    return _came_out(coil, {"large": large_mm, "small": small_mm})


def _came_out(coil: Coil, measured_mm: Mapping[End, float]) -> Saved:
    """What to do with a cone whose ends measure so; one that was not measured is taken to be as the wire puts it.

    What the list takes is kept, however its ends came to be so: forces and room know nothing of the mandrel. Where the
    wire alone does not put both ends off so, the mandrel is not as listed at one of them, the wire slid along it, or an
    end was read wrong: that teaches nothing of the wire, and ends that the list does not take are measured again before
    anything is done. One end alone that the list takes condemns no cone either: the other is measured first.
    """
    ends, wanted = ends_of(coil, measured_mm), wanted_of(coil)
    cone = as_it_came(wanted, ends.mean_mm["small"], ends.mean_mm["large"])
    way, rate_kept = best(coil, cone), pressed.rate_n_per_mm(cone) / pressed.rate_n_per_mm(wanted)
    kept = way.answer == "keep" and keeps(way.fit, coil.plan.fit)
    listed = all(is_listed(coil, end, outside_mm) for end, outside_mm in measured_mm.items())
    if listed and not kept and len(ends.told) == 1:
        return Saved("measure first", cone, None, rate_kept, tuple(said_of_other_end(coil, ends)))
    sure = ends.agree or (listed and kept)
    mandrel = next_mandrel(coil, ends.known) if ends.agree else None
    said = joined_said(
        said_of_ends(coil, ends, deed(coil, cone, way, rate_kept), sure),
        chance_said(coil, way) if sure else (),
        said_of_nearer(coil, cone, way, rate_kept) if sure else (),
        clearances(way.fit),
        _solid(coil, way.spring),
        wrong(way.fit, coil.bench),
        () if mandrel is None else _taught(coil, ends, mandrel),
    )
    if not sure:
        way = replace(way, answer="measure first")
    return saved_by(way, rate_kept, said, mandrel)


def _taught(coil: Coil, ends: CameOut, mandrel: Mandrel) -> Iterator[str]:
    """What the coil says of its wire, and of the next one."""
    yield from surprise(coil, ends.trial)
    yield from said_of_next(coil, mandrel, next_one(ends.known.unsettled))
    yield from write_down(coil, ends.trial)


def _solid(coil: Coil, cone: ConicalSpring) -> Iterator[str]:
    """How its turns lie when it is pressed solid."""
    step_mm, solid = step_of(cone), show_length(solid_length_of(cone), coil.units)
    step, sure = (show_diameter(mm, coil.units) for mm in (step_mm, SURE_STEP * coil.wire_mm))
    if not telescopes(coil.wire_mm, step_mm):
        yield f"Pressed solid its turns stand on each other, {solid} high."
    elif step_mm >= SURE_STEP * coil.wire_mm * (1.0 - 1e-9):
        yield f"Pressed solid its turns go inside each other, each {step} smaller in radius ({sure} wanted)."
