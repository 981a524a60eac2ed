"""An extension spring whose diameter came out otherwise, alone or with the initial tension that it keeps."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from sourcing.quantities import show_diameter, show_length
from sourcing.springs import compression, pulled
from sourcing.springs.hooks import COILS_OF_HOOK
from sourcing.springs.model import ExtensionSpring
from sourcing.winding.extension.in_hand import as_it_came, hooked
from sourcing.winding.saving.coil import (
    AS_LONG_MM,
    TOLD_FROM,
    Coil,
    Saved,
    Way,
    best_way,
    came_out_at,
    clearances,
    joined_said,
    keep_it,
    refuse_senseless,
    surprise,
    write_down,
    wrong,
)
from sourcing.winding.saving.extension.bending import length_for_forces
from sourcing.winding.saving.extension.body import Tension, hooks_of, judged, wanted_of
from sourcing.winding.saving.extension.tension import (
    doubted,
    heat_leaves,
    lean_next,
    left_in_the_end,
    said_of_tension,
    tension_came,
    ways_of,
)
from sourcing.winding.saving.next_coil import NextCoil, next_coil, said_of_next
from sourcing.winding.turns import SPARE_TURNS


@dataclass(frozen=True, slots=True)
class _Came:
    """What was measured, the spring that it is with the coils that were meant, and with those that restore its rate.

    `tension_n` and `left` are None where the tension was not measured.
    """

    outside_mm: float
    tension_n: float | None
    left: Tension | None
    kept: ExtensionSpring
    cut: ExtensionSpring

    def is_cut(self, way: Way[ExtensionSpring]) -> bool:
        """Whether a way is one with other coils."""
        return way.spring.active_coils != self.kept.active_coils


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
    came = _came(coil, outside_mm, tension_n)
    rate_kept = pulled.rate_n_per_mm(came.kept) / pulled.rate_n_per_mm(wanted_of(coil))
    enough = came.cut.total_coils <= _coils_there(coil, mandrel_mm, came.kept.mean_diameter_mm)
    way = _way(coil, came, other_coils=enough and abs(rate_kept - 1.0) >= TOLD_FROM)
    trial = replace(coil.trial(mandrel_mm, outside_mm), initial_tension_n=tension_n)
    then = next_coil(coil, trial)
    said = joined_said(
        _said(coil, came, way, rate_kept),
        () if tension_n is None else doubted(coil, came.kept, tension_n),
        clearances(way.fit),
        wrong(way.fit, coil.bench),
        surprise(coil, trial),
        _said_next(coil, then, tension_n),
        write_down(coil, trial),
    )
    return Saved(way.answer, way.spring, way.fit, rate_kept, said, then and then.plan.mandrel)


def _came(coil: Coil, outside_mm: float, tension_n: float | None) -> _Came:
    wanted, mean_mm = wanted_of(coil), coil.final_mean_mm(outside_mm)
    left = None if tension_n is None else left_in_the_end(coil, tension_n)
    spring = wanted if left is None else replace(wanted, initial_tension_n=left.newtons)
    kept = as_it_came(spring, mean_mm)
    return _Came(outside_mm, tension_n, left, kept, _cut(wanted, kept))


def _way(coil: Coil, came: _Came, other_coils: bool) -> Way[ExtensionSpring]:
    """The best: as it is or its tension seen to, where either serves; else with other coils too."""
    as_it_is = _ways(coil, came, came.kept)
    way = best_way(coil, *as_it_is)
    if way.fit.fits == "yes" or not other_coils:
        return way
    return best_way(coil, *as_it_is, *(replace(each, answer="change") for each in _ways(coil, came, came.cut)))


def _ways(coil: Coil, came: _Came, spring: ExtensionSpring) -> tuple[Way[ExtensionSpring], ...]:
    if came.left is None:
        return (Way("keep", spring, judged(coil, spring)),)
    return ways_of(coil, spring, came.left)


def _cut(wanted: ExtensionSpring, kept: ExtensionSpring) -> ExtensionSpring:
    """The spring with the coils in its body that give the wanted rate, as long as was meant or can be."""
    active = compression.active_coils_for_rate(
        wanted.wire_diameter_mm, kept.mean_diameter_mm, pulled.rate_n_per_mm(wanted), wanted.shear_modulus_mpa
    )
    total = active + wanted.total_coils - wanted.active_coils
    return hooked(replace(kept, active_coils=active, total_coils=total), wanted.free_length_mm)


def _coils_there(coil: Coil, mandrel_mm: float, mean_mm: float) -> float:
    """The coils that are there for the body once those of the hooks are taken off, spare ones too."""
    wound = (coil.plan.turns_to_wind + SPARE_TURNS) * (mandrel_mm + coil.wire_mm) / mean_mm
    return wound - 2.0 * COILS_OF_HOOK[wanted_of(coil).hooks]


def _said(coil: Coil, came: _Came, way: Way[ExtensionSpring], rate_kept: float) -> Iterator[str]:
    wanted, at = wanted_of(coil), _came_at(coil, came)
    coils, meant_coils = (coil.shown(each.total_coils) for each in (came.cut, wanted))
    other = f"{coils} coils in the body give the rate that was meant{coil.counted}"
    if came.cut.free_length_mm < wanted.free_length_mm - AS_LONG_MM:
        other += f"; no longer than {show_length(came.cut.free_length_mm, coil.units)} between its hooks then"
    rate = f"With {meant_coils} coils in the body its rate is {rate_kept:.3f} of that meant"
    if way.answer == "wind again":
        saves = "other coils do not save it" if came.left is None else "neither other coils nor other hooks save it"
        yield f"{at}, and {saves}: wind it again."
        return
    if way.answer == "keep":
        yield f"{at}: {keep_it(coil, way)}. {rate}."
        if abs(rate_kept - 1.0) >= TOLD_FROM:
            yield f"Just so: {other}."
        elif came.left is not None:
            yield from length_for_forces(coil, came.kept, way)
    elif came.is_cut(way):
        yield f"{at}. Bend the hooks so that {other}. With {meant_coils} the rate would be {rate_kept:.3f} of it."
        loop = COILS_OF_HOOK[wanted.hooks]
        yield (
            "Where its hooks are bent already, cut one off and bend it anew out of the body: the loop takes "
            f"{f'{loop:g} of a coil' if loop < 1.0 else 'a coil'}, and the body is a wire shorter for each coil less."
        )
    else:
        yield f"{at}. {rate}: leave its coils so."
    if came.left is not None and way.answer == "change":
        yield from said_of_tension(coil, came.left, came.cut if came.is_cut(way) else came.kept, way)
    yield from hooks_of(coil, way)


def _said_next(coil: Coil, then: NextCoil | None, tension_n: float | None) -> Iterator[str]:
    """The next coil: its mandrel, and how the wire is leaned where the tension came out otherwise."""
    mandrel, *another = [*said_of_next(coil, then)] or ["The next one"]
    lean = "" if tension_n is None else lean_next(coil, tension_n)
    if lean:
        yield f"{mandrel.removesuffix('.')}{': ' if then is None else '; '}{lean}."
    elif then is not None:
        yield mandrel
    yield from another


def _came_at(coil: Coil, came: _Came) -> str:
    """How the sentences begin: what was measured, and what was meant."""
    meant = coil.meant
    assert isinstance(meant, ExtensionSpring)
    outside = came_out_at(*(show_diameter(mm, coil.units) for mm in (came.outside_mm, meant.outside_diameter_mm)))
    if came.tension_n is None or came.left is None:
        return outside
    heat = heat_leaves(coil, came.tension_n, came.left)
    return f"{outside}, with {tension_came(coil, came.tension_n)}{heat}"
