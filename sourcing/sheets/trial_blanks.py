"""The blanks for each coil, and the command that takes them: one option of `springwright trial` a blank."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sourcing.quantities import typed_length
from sourcing.winding.model import WindingPlan


@dataclass(frozen=True, slots=True)
class Blank:
    """The words over a blank, the option that takes what is written there, and the unit that it wants in inches."""

    words: str
    option: str
    unit: str = ""


MANDREL, OUTSIDE = Blank("mandrel", "--mandrel", "in"), Blank("outside", "--outside", "in")
AT_AN_END = Blank("end, its mandrel", "--mandrel", "in")
ON, TURNS, HEATED = Blank("on steel or printed", "--on"), Blank("turns", "--turns"), Blank("heated", "--heated")
PULL = Blank("pull", "--pull", "lbf")

OF_KIND = {
    "compression": (Blank("pitch wound", "--pitch-wound", "in"), Blank("pitch", "--pitch", "in")),
    "conical": (),
    "extension": (Blank("force that parts the coils", "--tension", "lbf"),),
    "torsion": (Blank("crank stopped at, deg", "--stop-angle"), Blank("legs came out at, deg", "--leg-angle")),
}


def blanks(kind: str) -> tuple[Blank, ...]:
    """The blanks for a coil of a kind, in the order in which they are measured. A cone is measured at one end."""
    first = AT_AN_END if kind == "conical" else MANDREL
    return (first, ON, TURNS, OUTSIDE, *OF_KIND[kind], HEATED, PULL)


def as_trial(plan: WindingPlan) -> str:
    """The command that takes what is measured; a length without its unit is read in mm."""
    inch = plan.units == "inch"
    given = " ".join(_given(plan, inch))
    units = " Bare figures are read as mm and N." if inch else ""
    return f"Then, as far as measured: `springwright trial {plan.wire} {given}`.{units}"


def _given(plan: WindingPlan, inch: bool) -> Iterator[str]:
    known = {"--on": "printed" if plan.mandrel.kind == "printed" else "steel-rod", "--heated": "no"}
    if plan.mandrel.diameter_mm is not None:
        known["--mandrel"] = typed_length(plan.mandrel.diameter_mm, plan.units)
    for blank in blanks(plan.wanted.kind):
        open_words = f"'... {blank.unit}'" if inch and blank.unit else "..."
        yield f"{blank.option} {known.get(blank.option, open_words)}"
