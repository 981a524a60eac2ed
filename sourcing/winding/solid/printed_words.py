"""What is said of a printed mandrel: what it stands, why one that would break is not made, how it lies on the bed."""

from __future__ import annotations

from collections.abc import Mapping
from math import floor

from sourcing.quantities import show_diameter, show_force, show_length, show_stress
from sourcing.stock.model import Bench
from sourcing.winding.model import Refusal, WindingPlan
from sourcing.winding.solid.bed import longest_mm, on_bed
from sourcing.winding.solid.printed import PRINTED_STRENGTH_MPA, SAFE, safety_at
from sourcing.winding.solid.shape import MandrelSolid
from sourcing.winding.solid.sleeve import CRUSHES_MPA, ROD_STRENGTH_MPA, Bore

WOULD_BREAK = "mandrel-would-break"
"""The rule that refuses a printed mandrel that the wire would twist off."""


def stands(plan: WindingPlan, solid: MandrelSolid, bench: Bench) -> str:
    """What it stands of the torque; the greatest pull that follows stands in the steps."""
    on = "On its rod" if isinstance(solid.held, Bore) else "Printed solid,"
    split = " Split, it stands that only with a strip of steel." if solid.release.way == "split" else ""
    return f"{on} it stands {_stood(plan, solid, bench)}; {SAFE:g} times is wanted.{split}"


def times(safety: float) -> str:
    """A safety in words, cut off and not rounded up to what is wanted.

    >>> times(1.99)
    '1.9 times'
    """
    return f"{floor(10 * safety) / 10:.1f} times"


def _stood(plan: WindingPlan, solid: MandrelSolid, bench: Bench) -> str:
    """What it stands, with what that was worked out from."""
    if isinstance(solid.held, Bore):
        rod, plastic = (show_stress(each, bench.units) for each in (ROD_STRENGTH_MPA, CRUSHES_MPA))
        why = f"rod of mild steel, {rod} in shear; plastic under its flat, {plastic}; both assumed"
    else:
        thinnest = show_diameter(solid.core_mm, bench.units)
        strength = show_stress(PRINTED_STRENGTH_MPA, bench.units)
        why = f"thinnest {thinnest}; {strength} in shear for plastic like PLA, assumed; layers part first"
    pull = show_force(plan.pull_n, bench.units)
    return f"{times(safety_at(plan, solid, bench))} the crank's torque with a pull of {pull} ({why})"


def would_break(
    plan: WindingPlan, solid: MandrelSolid, others: Mapping[str, MandrelSolid], bench: Bench
) -> Refusal | None:
    """Why a printed mandrel is not made, where the wire would break it, and what to take instead.

    `others`: the same mandrel held otherwise, by the word that asks for it.
    """
    if safety_at(plan, solid, bench) >= SAFE:
        return None
    what = "the sleeve" if isinstance(solid.held, Bore) else "the printed mandrel"
    ways = [*_steel(plan), *_held_otherwise(plan, others, bench)]
    instead = f"{', '.join(ways[:-1])}, or {ways[-1]}" if len(ways) > 1 else ways[0]
    why = (
        f"the wire would break {what}: it stands only {_stood(plan, solid, bench)}, and {SAFE:g} times is wanted. "
        f"Instead {instead}. Without --solid the sheet lists the other mandrels that would do"
    )
    return Refusal(WOULD_BREAK, why)


def _steel(plan: WindingPlan) -> tuple[str, ...]:
    turned = "turn it from steel by its drawing (--solid OUT.svg alone)"
    return ("wind on the steel rod of the same size", turned) if plan.mandrel.kind == "rod" else (turned,)


def _held_otherwise(plan: WindingPlan, others: Mapping[str, MandrelSolid], bench: Bench) -> list[str]:
    """Those of the others that stand it."""
    safe = {word: safety_at(plan, other, bench) for word, other in others.items()}
    return [f"print it with --shank {word}, which stands {times(each)}" for word, each in safe.items() if each >= SAFE]


def on_bed_said(solid: MandrelSolid, bench: Bench) -> str:
    """How it lies in the printer, and how pieces are joined."""
    if bench.printer_bed_mm is None:
        return "Whether a printer holds it was not checked: no `printer_bed` in bench.yaml."
    lies = on_bed(solid, bench.printer_bed_mm)
    if lies is None:
        return "The printer's bed is too small for it: turn it."
    how = "standing" if lies.standing else "lying"
    if lies.pieces == 1:
        return f"It fits the printer's bed, {how}, as it is in the file."
    longest = show_length(longest_mm(solid, lies.pieces), bench.units)
    return (
        f"The printer's bed does not hold it whole: the file has it cut across into {lies.pieces} pieces, {longest} "
        f"the longest, {how} side by side, the one with the collar first. Number them as they come off the bed, with "
        "an arrow away from the collar, push them on in that order, and glue them end to end: the flat lines them up."
    )
