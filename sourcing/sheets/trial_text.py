"""What a trial coil taught, as text."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.quantities import show_diameter, show_length
from sourcing.sheets.text import bullets, heading, line, strong, table, wrapped
from sourcing.stock.model import Spool
from sourcing.stock.trying import TakenBack, Tried
from sourcing.winding.advice import TRIAL_TURNS
from sourcing.winding.taught_words import said
from sourcing.winding.teaching import Taught


def trial_lines(tried: Tried, taught: Taught | None, dry_run: bool) -> Iterator[str]:
    """Where the trial was written, what it taught, and which mandrels are right now."""
    yield line(f"{tried.spool.id}: trial {'would be ' if dry_run else ''}written ({tried.file}:{tried.line})")
    if dry_run:
        yield from map(line, tried.changed)
    yield ""
    if taught is None:
        spool = tried.spool
        why = f"The strength of {spool.material.name} is not listed for wire of {show_diameter(spool.wire_diameter_mm)}"
        yield from wrapped(f"{why}: the trial is kept, and what it teaches cannot be worked out.")
        return
    first, *rest = said(taught)
    yield from map(strong, wrapped(first))
    yield from bullets(rest)
    if taught.told_sizes:
        yield from _sizes(taught)
    yield ""
    yield from wrapped(_counting(tried, taught))
    if _twice(tried.spool):
        again = "if it is the same coil, written down before, it counts twice now"
        yield from wrapped(
            f"The trial before it reads the same: {again}. springwright trial {tried.spool.id} --take-back"
        )


def _twice(spool: Spool) -> bool:
    """Whether the last two trials read the same, whatever their day."""
    *_, before, last = (None, *(replace(each, date=None) for each in spool.trials))
    return before == last


def taken_back_lines(taken: TakenBack, dry_run: bool) -> Iterator[str]:
    """The trial that was taken back, as it stood, and what is left."""
    yield line(f"{taken.spool.id}: trial {'would be ' if dry_run else ''}taken back ({taken.file}:{taken.line})")
    yield from map(line, taken.changed)
    yield ""
    left = len(taken.spool.trials)
    by = "No trial is left: its springback is taken by its label again"
    if left:
        by = f"Its springback is taken by {'the one trial' if left == 1 else f'the {left} trials'} left"
    yield from wrapped(f"{by}. The wire of that coil is used up all the same: length_left stays.")


def _sizes(taught: Taught) -> Iterator[str]:
    units = taught.bench.units
    yield from heading("Mandrels for this wire, coils as wound")
    rows = [
        (
            show_diameter(size.mean_diameter_mm + taught.spool.wire_diameter_mm, units),
            show_diameter(size.mean_diameter_mm, units),
            show_diameter(size.mandrel_before_mm, units),
            show_diameter(size.mandrel_mm, units),
            f"{100.0 * size.band:.1f} %",
        )
        for size in taught.told_sizes
        if size.mandrel_mm >= taught.spool.wire_diameter_mm
    ]
    yield from table(("outside", "mean", "mandrel before", "mandrel now", "within (95 of 100)"), rows)


def _counting(tried: Tried, taught: Taught) -> str:
    """How much wire the trial took, or would have taken with turns that are assumed, and how to count it."""
    spool, units = tried.spool, taught.bench.units
    to_take = (
        show_length(taught.used_wire_mm, units).replace(" ", "")
        if units == "inch"
        else f"{taught.used_wire_mm / 1000.0:.2f}m"
    )
    used = f"about {show_length(taught.used_wire_mm, units)} of wire, tails included"
    took = f"The coil took {used}"
    if taught.lesson.trial.turns is None:
        took = f"How many turns it has was not said: with {TRIAL_TURNS:.0f} (assumed) it took {used}"
    left_mm = spool.length_left_mm
    if left_mm is None:
        return f"{took}."
    if left_mm < taught.used_wire_mm:
        return f"{took}; {spool.id} had {show_length(left_mm, units)}: measure what is left."
    return f"{took}. None is taken off {spool.id} yet; count it: springwright stock take {spool.id} {to_take}"
