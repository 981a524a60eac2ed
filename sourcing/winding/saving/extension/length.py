"""An extension spring whose coils stand apart, or that was longer at rest once it had been pulled to its longest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import inf

from sourcing.quantities import show_length
from sourcing.springs import pulled
from sourcing.stock.trial_bounds import LEAST_PITCH
from sourcing.winding.saving.coil import AS_LONG_MM, Coil, Saved, SenselessError, best_way, joined_said, wrong
from sourcing.winding.saving.extension.bending import length_for_forces
from sourcing.winding.saving.extension.body import Tension, hooks_of, judged, wanted_of
from sourcing.winding.saving.extension.tension import verdict, ways_of

CLOSE = 1.02
"""A pitch of less than so many wires is that of coils that touch: a rule tells no better (assumed)."""

NO_TENSION = Tension(0.0, 0.0)


def came_out_pitch(coil: Coil, pitch_mm: float) -> Saved:
    """A body whose coils do not touch: it is longer, and nothing holds it closed."""
    wanted, gap_mm = wanted_of(coil), pitch_mm - coil.wire_mm
    if pitch_mm < LEAST_PITCH * coil.wire_mm:
        found = f"a pitch of {show_length(pitch_mm, coil.units)} is less than the wire"
        raise SenselessError("pitch", found, "from one turn to the next, the wire counted in")
    if pitch_mm <= CLOSE * coil.wire_mm:
        said = ("Its coils touch, as meant: keep it.",)
        return Saved("keep", wanted, judged(coil, wanted), 1.0, said)
    return _open(coil, wanted.total_coils * gap_mm, _said_of_gap(coil, gap_mm), _LAY_CLOSE)


_LAY_CLOSE = (
    "No heat closes it. The next one: lay it wire against wire, and lean the wire back over the last turn by a few "
    "degrees all the while."
)


def _said_of_gap(coil: Coil, gap_mm: float) -> Iterator[str]:
    gap, whole = (show_length(mm, coil.units) for mm in (gap_mm, wanted_of(coil).total_coils * gap_mm))
    yield f"Its coils stand {gap} apart: the body is {whole} longer, and it keeps no initial tension."


def _open(coil: Coil, longer_mm: float, first: Iterator[str], last: str) -> Saved:
    """A spring whose coils stand apart: its body so much longer, and without an initial tension."""
    wanted = wanted_of(coil)
    body_mm = pulled.body_length_mm(wanted) + longer_mm
    kept = replace(wanted, free_length_mm=wanted.free_length_mm + longer_mm, initial_tension_n=0.0)
    way = best_way(coil, *ways_of(coil, kept, NO_TENSION, body_mm))
    said = joined_said(
        first,
        verdict(coil, way),
        length_for_forces(coil, kept, way, body_mm),
        hooks_of(coil, way, body_mm),
        wrong(way.fit, coil.bench),
        [last],
    )
    return Saved(way.answer, way.spring, way.fit, 1.0, said)


def pulled_to(coil: Coil, free_length_mm: float) -> Saved:
    """A spring that was longer at rest after it was first pulled to its longest: it has set."""
    wanted = wanted_of(coil)
    body_mm, longer_mm = pulled.body_length_mm(wanted), free_length_mm - wanted.free_length_mm
    now, off = (show_length(mm, coil.units) for mm in (free_length_mm, abs(longer_mm)))
    if free_length_mm < body_mm:
        body = show_length(body_mm, coil.units)
        raise SenselessError("pulled_to", f"{now} is shorter than its body of {body}", "its length inside the hooks")
    works_mm = min((point.at_mm for point in coil.need.working), default=inf)
    if free_length_mm >= works_mm:
        found = f"{now} is as long as it works ({show_length(works_mm, coil.units)})"
        raise SenselessError("pulled_to", found, "its length inside the hooks at rest, after it was pulled")
    if longer_mm >= AS_LONG_MM:
        last = f"The next one: bend its hooks {off} nearer together, and pull it to its longest three times."
        return _open(coil, longer_mm, _said_of_stretch(coil, now, off), last)
    short = longer_mm <= -AS_LONG_MM
    said = f"{now} between its hooks, {off} less than wanted: bend them a little higher." if short else ""
    kept = replace(wanted, free_length_mm=free_length_mm)
    as_meant = f"Pulled, it is {now} between its hooks again, as it should be: leave it."
    return Saved("change" if short else "keep", kept, judged(coil, kept), 1.0, (said or as_meant,))


def _said_of_stretch(coil: Coil, now: str, off: str) -> Iterator[str]:
    wanted = wanted_of(coil)
    yield f"Pulled, it is {now} between its hooks, {off} longer: it has set."
    yield (
        "If a hook has opened, bend it back and measure again. If its coils stand apart, what held them closed is gone."
    )
    tension_n = wanted.initial_tension_n or 0.0
    safe_mm = pulled.largest_safe_length_mm(wanted, pulled.rate_n_per_mm(wanted), tension_n)
    if safe_mm is not None:
        yield f"By its plan it stands {show_length(safe_mm, coil.units)}: pull it no further when it is hooked in."
