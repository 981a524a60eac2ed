"""An extension spring whose coils stand apart, or that was longer at rest once it had been pulled to its longest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import inf

from sourcing.quantities import show_length
from sourcing.springs import pulled
from sourcing.springs.hooks import measured_inside
from sourcing.springs.model import ExtensionSpring
from sourcing.stock.trial_bounds import LEAST_PITCH
from sourcing.winding.extension.ends import coils_on_plugs, end_words
from sourcing.winding.in_hand import keeps
from sourcing.winding.saving.coil import AS_LONG_MM, Coil, Saved, SenselessError, Way, best_way, joined_said, saved_by
from sourcing.winding.saving.extension.bending import hooks_of, length_for_forces
from sourcing.winding.saving.extension.body import Tension, judged, wanted_of
from sourcing.winding.saving.extension.rows_left import rows_left
from sourcing.winding.saving.extension.tension_said import verdict
from sourcing.winding.saving.extension.tension_ways import ways_of
from sourcing.winding.saving.verdict_words import chance_said, though_unsure, wrong

CLOSE = 1.02
"""A pitch of less than so many wires is that of coils that touch: a rule tells no better (assumed)."""

NO_TENSION = Tension(0.0, 0.0)


def came_out_pitch(coil: Coil, pitch_mm: float) -> Saved:
    """A body whose coils do not touch: it is longer, and nothing holds it closed.

    Coils on a plug lie at its thread's pitch, one wire, however they came out.
    """
    wanted, gap_mm = wanted_of(coil), pitch_mm - coil.wire_mm
    if pitch_mm < LEAST_PITCH * coil.wire_mm:
        found = f"a pitch of {show_length(pitch_mm, coil.units)} is less than the wire"
        raise SenselessError("pitch", found, "from one turn to the next, the wire counted in")
    if pitch_mm <= CLOSE * coil.wire_mm:
        closed = Way("keep", wanted, judged(coil, wanted))
        kept = f"Its coils touch, as meant: keep it as it is{though_unsure(coil, closed.fit)}."
        return _saved(closed, [kept, *chance_said(coil, closed)])
    longer_mm = (wanted.total_coils - coils_on_plugs(wanted.hooks)) * gap_mm
    gap, whole = (show_length(mm, coil.units) for mm in (gap_mm, longer_mm))
    way, said = _open(coil, longer_mm)
    first = f"Its coils stand {gap} apart: {verdict(coil, way)}."
    longer = f"Its body is {whole} longer so, and it keeps no initial tension."
    return _saved(way, [first, longer, *chance_said(coil, way), *said, _LAY_CLOSE])


_LAY_CLOSE = (
    "No heat closes it. The next one: lay it wire against wire, and lean the wire back over the last turn by a few "
    "degrees all the while."
)


def _open(coil: Coil, longer_mm: float) -> tuple[Way[ExtensionSpring], tuple[str, ...]]:
    """A spring whose coils stand apart, its body so much longer and without an initial tension: what is made of it."""
    wanted = wanted_of(coil)
    body_mm = pulled.body_length_mm(wanted) + longer_mm
    kept = replace(wanted, free_length_mm=wanted.free_length_mm + longer_mm, initial_tension_n=0.0)
    way = best_way(coil, *ways_of(coil, kept, NO_TENSION, body_mm))
    said = joined_said(
        length_for_forces(coil, kept, way, body_mm),
        hooks_of(coil, way, body_mm),
        rows_left(coil, way, body_mm),
        wrong(way.fit, coil.bench),
    )
    return way, said


def pulled_to(coil: Coil, free_length_mm: float) -> Saved:
    """A spring that measures so at rest after it was first pulled to its longest: kept as the sheet's list has it.

    Longer than meant, its coils tell what gave: where they touch a hook has opened, where they stand apart it has set.
    One that the list does not take is looked at first, where the one is answered otherwise than the other.
    """
    _refuse_no_length(coil, free_length_mm)
    wanted = wanted_of(coil)
    longer_mm = free_length_mm - wanted.free_length_mm
    now, off, meant = (show_length(mm, coil.units) for mm in (free_length_mm, abs(longer_mm), wanted.free_length_mm))
    kept = replace(wanted, free_length_mm=free_length_mm)
    as_it_is, bent = Way("keep", kept, judged(coil, kept)), Way("change", wanted, judged(coil, wanted))
    serves = keeps(as_it_is.fit, coil.plan.fit)
    words = end_words(wanted.hooks)
    measured = f"pulled, it is {now} {words.between}"
    unsure = though_unsure(coil, as_it_is.fit)
    keep = f"Keep it as it is{unsure}"
    if serves and abs(longer_mm) < AS_LONG_MM:
        return _saved(as_it_is, [f"{keep}: {measured}, as meant.", *chance_said(coil, as_it_is)])
    measured = f"{measured}, {off} {'longer' if longer_mm > 0.0 else 'shorter'} than meant"
    within = f"{measured}, and {'its forces are within what is wanted' if as_it_is.fit.fits == 'yes' else _AS_PLANNED}"
    if longer_mm < 0.0:
        if serves:
            return _saved(as_it_is, [f"{keep}: {within}.", *chance_said(coil, as_it_is)])
        bring = f"{words.bring.capitalize()} to {meant} {words.apart}{though_unsure(coil, bent.fit)}: {measured}."
        return _saved(bent, [bring, *chance_said(coil, bent)])
    way, said = _open(coil, longer_mm)
    if serves:
        closed, first = as_it_is, f"Keep it as it is if its coils still touch{unsure}: {within}."
    else:
        bring = f"{words.bring.capitalize()} back to {meant} {words.apart}"
        closed, first = bent, f"{bring} if its coils still touch{though_unsure(coil, bent.fit)}: {measured}."
    apart = f"If its coils stand apart it has set, and nothing holds them closed: {verdict(coil, way)}."
    answer = closed if serves or way.answer == closed.answer else replace(closed, answer="measure first")
    chances = (*chance_said(coil, closed), apart, *chance_said(coil, way))
    return _saved(answer, [first, *chances, *said, *_next_nearer(coil, off)])


_AS_PLANNED = "it serves as its plan does"


def _saved(way: Way[ExtensionSpring], said: list[str]) -> Saved:
    return saved_by(way, 1.0, joined_said(said))


def _refuse_no_length(coil: Coil, free_length_mm: float) -> None:
    """Raise `SenselessError` for a length that no spring of the plan has at rest."""
    now, body_mm = show_length(free_length_mm, coil.units), pulled.body_length_mm(wanted_of(coil))
    inside = f"its length {measured_inside(wanted_of(coil).hooks)}"
    if free_length_mm < body_mm - AS_LONG_MM:
        body = show_length(body_mm, coil.units)
        raise SenselessError("pulled_to", f"{now} is shorter than its body of {body}", inside)
    works_mm = min((point.at_mm for point in coil.need.working), default=inf)
    if free_length_mm >= works_mm:
        found = f"{now} is as long as it works ({show_length(works_mm, coil.units)})"
        raise SenselessError("pulled_to", found, f"{inside} at rest, after it was pulled")


def _next_nearer(coil: Coil, off: str) -> Iterator[str]:
    """How the next one is made for what it sets, and how far this one stands to be pulled."""
    wanted = wanted_of(coil)
    safe_mm = pulled.largest_safe_length_mm(wanted, pulled.rate_n_per_mm(wanted), wanted.initial_tension_n or 0.0)
    if safe_mm is not None:
        yield f"Never pull it past {show_length(safe_mm, coil.units)}, not even to hook it in: it stands no more."
    bring = end_words(wanted.hooks).bring
    yield f"The next one: {bring} {off} nearer together, and pull it to its longest three times."
