"""An extension spring whose diameter came out otherwise, alone or with the initial tension that it keeps."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.springs import compression, pulled
from sourcing.springs.hooks import COILS_OF_HOOK
from sourcing.springs.model import ExtensionSpring
from sourcing.winding.extension.in_hand import as_it_came, hooked
from sourcing.winding.saving.coil import (
    TOLD_FROM,
    Coil,
    Saved,
    Way,
    best_way,
    clearances,
    joined_said,
    refuse_senseless,
    surprise,
    write_down,
    wrong,
)
from sourcing.winding.saving.extension.body import judged, wanted_of
from sourcing.winding.saving.extension.diameter_said import Came, said_of
from sourcing.winding.saving.extension.tension import (
    doubted,
    lean_next,
    left_in_the_end,
    ways_of,
)
from sourcing.winding.saving.next_coil import NextCoil, next_coil, said_of_next
from sourcing.winding.turns import SPARE_TURNS


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
    way = _way(coil, came, other_coils=abs(rate_kept - 1.0) >= TOLD_FROM)
    trial = replace(coil.trial(mandrel_mm, outside_mm), initial_tension_n=tension_n)
    then = next_coil(coil, trial)
    said = joined_said(
        said_of(coil, came, way, rate_kept),
        () if tension_n is None else doubted(coil, came.kept, tension_n),
        clearances(way.fit),
        wrong(way.fit, coil.bench),
        surprise(coil, trial),
        _said_next(coil, then, tension_n),
        write_down(coil, trial),
    )
    return Saved(way.answer, way.spring, way.fit, rate_kept, said, then and then.plan.mandrel)


def _came(coil: Coil, mandrel_mm: float, outside_mm: float, tension_n: float | None) -> Came:
    wanted, mean_mm = wanted_of(coil), coil.final_mean_mm(outside_mm)
    left = None if tension_n is None else left_in_the_end(coil, tension_n)
    spring = wanted if left is None else replace(wanted, initial_tension_n=left.newtons)
    kept = as_it_came(spring, mean_mm)
    there, total = _coils_there(coil, mandrel_mm, mean_mm), _coils_for_rate(wanted, mean_mm)
    just, cut = (_with_coils(wanted, kept, coils) for coils in (total, min(total, max(there, kept.total_coils))))
    return Came(outside_mm, tension_n, left, kept, just, cut, there)


def _way(coil: Coil, came: Came, other_coils: bool) -> Way[ExtensionSpring]:
    """The best: as it is or its tension seen to, where either serves; else with other coils too."""
    as_it_is = _ways(coil, came, came.kept)
    way = best_way(coil, *as_it_is)
    if way.fit.fits == "yes" or not other_coils:
        return way
    return best_way(coil, *as_it_is, *(replace(each, answer="change") for each in _ways(coil, came, came.cut)))


def _ways(coil: Coil, came: Came, spring: ExtensionSpring) -> tuple[Way[ExtensionSpring], ...]:
    if came.left is None:
        return (Way("keep", spring, judged(coil, spring)),)
    return ways_of(coil, spring, came.left)


def _coils_for_rate(wanted: ExtensionSpring, mean_mm: float) -> float:
    """The coils in its body that give the wanted rate at another diameter."""
    active = compression.active_coils_for_rate(
        wanted.wire_diameter_mm, mean_mm, pulled.rate_n_per_mm(wanted), wanted.shear_modulus_mpa
    )
    return active + wanted.total_coils - wanted.active_coils


def _with_coils(wanted: ExtensionSpring, kept: ExtensionSpring, total_coils: float) -> ExtensionSpring:
    """The spring with so many coils in its body, as long as was meant or can be."""
    active = total_coils - (wanted.total_coils - wanted.active_coils)
    return hooked(replace(kept, active_coils=active, total_coils=total_coils), wanted.free_length_mm)


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
