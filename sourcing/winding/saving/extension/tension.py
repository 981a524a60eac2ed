"""An extension spring that keeps another initial tension than was meant.

Of what is too much, heat and a pull take some away; else the hooks make up for it as near as they reach (bending.py).
What it may become is in tension_ways.py, what is said of it in tension_said.py.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.winding.saving.coil import Coil, Saved, best_way, joined_said, saved_by
from sourcing.winding.saving.extension.body import wanted_of
from sourcing.winding.saving.extension.rows_left import rows_left
from sourcing.winding.saving.extension.tension_said import (
    IF_AGAIN,
    doubted,
    heat_leaves,
    lean_next,
    said_of_tension,
    tension_came,
    verdict_on,
)
from sourcing.winding.saving.extension.tension_ways import left_in_the_end, ways_of
from sourcing.winding.saving.extension.to_be_read import heat_decides, to_be_read
from sourcing.winding.saving.verdict_words import chance_said, wrong


def came_out_tension(coil: Coil, tension_n: float) -> Saved:
    """A coil that keeps another initial tension than was meant: less can be made of it, else hooks make up for it."""
    left = left_in_the_end(coil, tension_n)
    kept = replace(wanted_of(coil), initial_tension_n=left.newtons)
    way = best_way(coil, *ways_of(coil, kept, left))
    heat, lean = heat_leaves(coil, tension_n, left), lean_next(coil, tension_n)
    judgement, read_again = verdict_on(coil, kept, left, way), tuple(doubted(coil, kept, tension_n))
    undecided = heat_decides(coil, left, way)
    again_first = bool(read_again) and (way.answer != "keep" or undecided)
    measure_first = again_first or to_be_read(coil, left, way)
    if again_first:
        judgement = f"{IF_AGAIN}{judgement}"
    said = joined_said(
        [f"It came out with {tension_came(coil, tension_n)}{heat}."],
        read_again,
        [f"{judgement[0].upper()}{judgement[1:]}."],
        said_of_tension(coil, left, kept, way),
        () if measure_first else chance_said(coil, way),
        rows_left(coil, way),
        () if undecided else wrong(way.fit, coil.bench),
        [f"The next one: {lean}."] if lean else [],
        _measure_too(coil),
    )
    if measure_first:
        way = replace(way, answer="measure first", spring=kept)
    return saved_by(way, 1.0, said)


def _measure_too(coil: Coil) -> Iterator[str]:
    if coil.wire.spool is not None:
        yield "Measure it outside too (--came-out), so that it can be written down as a trial."
