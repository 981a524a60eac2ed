"""An extension spring whose diameter came out otherwise, alone or with the initial tension that it keeps."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.springs import compression, pulled
from sourcing.springs.hooks import COILS_OF_HOOK
from sourcing.springs.model import ExtensionSpring
from sourcing.winding.extension.in_hand import as_it_came
from sourcing.winding.saving.coil import (
    TOLD_FROM,
    Coil,
    Saved,
    joined_said,
    refuse_senseless,
    saved_by,
    surprise,
    write_down,
)
from sourcing.winding.saving.extension.body import wanted_of
from sourcing.winding.saving.extension.diameter_said import said_of
from sourcing.winding.saving.extension.diameter_ways import Came, best, with_coils
from sourcing.winding.saving.extension.rows_left import rows_left
from sourcing.winding.saving.extension.tension_said import doubted, lean_next
from sourcing.winding.saving.extension.tension_ways import left_in_the_end
from sourcing.winding.saving.extension.to_be_read import heat_decides, to_be_read
from sourcing.winding.saving.next_coil import NextCoil, next_coil, said_of_next
from sourcing.winding.saving.verdict_words import BY_THE_LIST, chance_said, clearances, wrong
from sourcing.winding.turns import SPARE_TURNS

BY_ITS_TENSION = (
    "its initial tension decides: measure it, the pull at which its first coils part, and ask again with "
    "--came-out-tension beside it"
)
"""What settles whether a coil serves of which the diameter alone was measured."""


def came_out(coil: Coil, outside_mm: float) -> Saved:
    """A coil whose diameter came out otherwise: the body gets the coils that restore the rate, n = G d⁴ / (8 D³ R)."""
    return _came_out(coil, outside_mm, None)


def came_out_with_tension(coil: Coil, outside_mm: float, tension_n: float) -> Saved:
    """A coil of which both were measured: one verdict on its coils, its tension and its hooks."""
    return _came_out(coil, outside_mm, tension_n)


def _came_out(coil: Coil, outside_mm: float, tension_n: float | None) -> Saved:
    mandrel_mm = coil.plan.mandrel.diameter_mm
    assert mandrel_mm is not None
    refuse_senseless(coil, "outside", outside_mm, mandrel_mm)
    came = _came(coil, mandrel_mm, outside_mm, tension_n)
    rate_kept = pulled.rate_n_per_mm(came.kept) / pulled.rate_n_per_mm(wanted_of(coil))
    way = best(coil, came, other_coils=abs(rate_kept - 1.0) >= TOLD_FROM)
    trial = replace(coil.trial(mandrel_mm, outside_mm), initial_tension_n=tension_n)
    then = next_coil(coil, trial)
    read_again = () if tension_n is None else tuple(doubted(coil, came.kept, tension_n))
    to_read = came.left is not None and to_be_read(coil, came.left, way)
    said = joined_said(
        said_of(coil, came, way, rate_kept, read_again),
        () if read_again or to_read else chance_said(coil, way, BY_ITS_TENSION if tension_n is None else BY_THE_LIST),
        rows_left(coil, way),
        clearances(way.fit),
        () if came.left is not None and heat_decides(coil, came.left, way) else wrong(way.fit, coil.bench),
        surprise(coil, trial),
        _said_next(coil, then, tension_n),
        write_down(coil, trial),
    )
    if to_read or (read_again and way.answer != "wind again"):
        way = replace(way, answer="measure first", spring=came.kept)
    return saved_by(way, rate_kept, said, then and then.plan.mandrel)


def _came(coil: Coil, mandrel_mm: float, outside_mm: float, tension_n: float | None) -> Came:
    wanted, mean_mm = wanted_of(coil), coil.final_mean_mm(outside_mm)
    left = None if tension_n is None else left_in_the_end(coil, tension_n)
    spring = wanted if left is None else replace(wanted, initial_tension_n=left.newtons)
    kept = as_it_came(spring, mean_mm)
    there, total = _coils_there(coil, mandrel_mm, mean_mm), _coils_for_rate(wanted, mean_mm)
    just, cut = (with_coils(wanted, kept, coils) for coils in (total, min(total, max(there, kept.total_coils))))
    return Came(outside_mm, tension_n, left, kept, just, cut, there)


def _coils_for_rate(wanted: ExtensionSpring, mean_mm: float) -> float:
    """The coils in its body that give the wanted rate at another diameter."""
    active = compression.active_coils_for_rate(
        wanted.wire_diameter_mm, mean_mm, pulled.rate_n_per_mm(wanted), wanted.shear_modulus_mpa
    )
    return active + wanted.total_coils - wanted.active_coils


def _coils_there(coil: Coil, mandrel_mm: float, mean_mm: float) -> float:
    """The coils that are there for the body once those of the hooks are taken off; before heat spare ones too."""
    if coil.heated:
        return wanted_of(coil).total_coils
    wound = (coil.plan.turns_to_wind + SPARE_TURNS) * (mandrel_mm + coil.wire_mm) / mean_mm
    return wound - 2.0 * COILS_OF_HOOK[wanted_of(coil).hooks]


def _said_next(coil: Coil, then: NextCoil | None, tension_n: float | None) -> Iterator[str]:
    """The next coil: its mandrel, and how the wire is leaned where the tension came out otherwise."""
    mandrel, *another = [*said_of_next(coil, then)] or ["The next one"]
    lean = "" if tension_n is None else lean_next(coil, tension_n)
    if lean:
        yield f"{mandrel.removesuffix('.')}{': ' if then is None else '; '}{lean}."
    elif then is not None:
        yield mandrel
    yield from another
