"""What is said of a compression spring of any shape that is cut or brought to another length."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_length
from sourcing.springs.model import Ends
from sourcing.winding.saving.coil import AS_LONG_MM, Coil
from sourcing.winding.saving.lengths import to_length, wanted_mm


def new_end(coil: Coil, ends: Ends) -> Iterator[str]:
    """What an end wants that was cut after heat."""
    if coil.heated:
        ground = ends in (Ends.CLOSED_GROUND, Ends.OPEN_GROUND)
        grind = " and grind it" if ground else ""
        yield f"Close the new end{grind} as before, and heat it once more as the sheet has it: bent cold it sets."


def at_its_length(coil: Coil, stands_mm: float, target_mm: float, *, cut: bool, measured: bool) -> Iterator[str]:
    """How long it stands, and how it comes to the length that serves.

    `cut`: once it has other coils; `measured`: by a pitch that was measured, else by the one meant.
    """
    meant_mm, off_mm = wanted_mm(coil), abs(stands_mm - target_mm)
    if cut and max(abs(stands_mm - meant_mm), abs(target_mm - meant_mm)) < AS_LONG_MM:
        return
    then, assumed = " then" if cut else "", "" if measured else ", if its pitch is the one meant"
    length = f"It is {show_length(stands_mm, coil.units)} long{then}{assumed}."
    if cut and off_mm < AS_LONG_MM:
        yield f"{length} Leave it so."
        return
    meant = "" if abs(target_mm - meant_mm) < AS_LONG_MM else f" {show_length(meant_mm, coil.units)} was meant."
    yield f"{length} {to_length(coil, stands_mm, target_mm)}{meant}"
    if off_mm < AS_LONG_MM:
        yield "A steel rule tells no such difference: measure it with the caliper, and let the scale decide."
