"""A coil wound on a mandrel that its need has no sheet for: why it is not judged, and what to do with it."""

from __future__ import annotations

from sourcing.quantities import show_diameter
from sourcing.stock.model import Trial
from sourcing.winding.model import Refusal
from sourcing.winding.saving.coil import Coil, refuse_senseless
from sourcing.winding.saving.typed import typed_trial

NO_SHEET_OF_ITS_MANDREL = "no-sheet-of-its-mandrel"
"""The rule by which such a coil is not judged."""


def not_judged(coil: Coil, mandrel_mm: float, outside_mm: float | None, why: Refusal, wire_named: bool) -> Refusal:
    """That a coil is not judged, for there is no sheet to judge it by; `why` there is none. No figure of another sheet
    is told, nor is its wire doubted: a trial coil does that.

    `coil.plan` is of a mandrel that serves; only its wire is asked here. Raises `SenselessError` for an outside that no
    coil on the mandrel can have.
    """
    if outside_mm is not None and wire_named:
        refuse_senseless(coil, "outside", outside_mm, mandrel_mm)
    size, cone = show_diameter(mandrel_mm, coil.units), coil.need.kind == "conical"
    reason = why.why if wire_named or cone else f"no wire serves on a mandrel of {size}"
    if cone:
        otherwise = "Leave --mandrel out where it was wound on a taper as the sheet's"
    else:
        otherwise = "Measure mandrel and coil again, and if it was another mandrel, say so with --mandrel"
    to_do = _to_do(coil, mandrel_mm, outside_mm) if wire_named else _WHICH_WIRE
    none = f"a coil is judged by the sheet of its mandrel, and none is made for this one: {reason}"
    sentences = filter(None, (none, otherwise, to_do))
    return Refusal(NO_SHEET_OF_ITS_MANDREL, ". ".join(sentences))


_WHICH_WIRE = "Say with --wire which wire it was wound from: then it is told why, and how to write it down as a trial"


def _to_do(coil: Coil, mandrel_mm: float, outside_mm: float | None) -> str:
    """How the coil is counted among the trials of its spool; nothing of wire that has none."""
    if coil.wire.spool is None:
        return ""
    if coil.written:
        return "It is written down as a trial already: make the sheet of its wire anew, which goes by it"
    command, measured = f"springwright trial {coil.spool.id}", "its mandrel, its outside diameter and"
    if outside_mm is not None:
        trial = Trial(mandrel_mm, outside_mm, heated=coil.heated, on=coil.wound_on)
        command, measured = f"{command} {typed_trial(trial, coil.units)}", "--turns and"
    return (
        f"If it was this one, it still teaches how the wire springs back. Write it down: {command}, with {measured} "
        "the turns laid. Then make the sheet anew"
    )
