"""What is said of a printed mandrel: what it stands, and how it lies in the printer."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_diameter, show_force, show_length
from sourcing.stock.model import Bench
from sourcing.winding.model import Refusal, WindingPlan
from sourcing.winding.solid.bed import cuts_mm, longest_mm, on_bed
from sourcing.winding.solid.made import sleeve_of
from sourcing.winding.solid.printed import PRINTED_STRENGTH_MPA, SAFE, safety_of
from sourcing.winding.solid.shape import MandrelSolid, Shank
from sourcing.winding.solid.sleeve import CRUSHES_MPA, ROD_STRENGTH_MPA, Bore


def stands(plan: WindingPlan, solid: MandrelSolid, bench: Bench) -> Iterator[str]:
    """What it stands of the crank's torque, and what to do where that is too little."""
    yield _sleeve_stands(plan, solid, bench) if isinstance(solid.held, Bore) else _shank_stands(plan, solid, bench)


def _sleeve_stands(plan: WindingPlan, solid: MandrelSolid, bench: Bench) -> str:
    safety = safety_of(plan, solid, driven_mm(solid, bench))
    said = (
        f"{safety:.1f} times the crank's torque with a pull of {show_force(plan.pull_n, bench.units)} (rod of mild "
        f"steel, {ROD_STRENGTH_MPA:g} MPa in shear; plastic under its flat, {CRUSHES_MPA:g} MPa; both assumed)"
    )
    if safety >= SAFE:
        return f"On its rod it stands {said}. Pull no harder, and nothing printed goes in the oven."
    return f"Do not wind on it: it would stand only {said}, and {SAFE:g} times is wanted. {_steel(plan)}."


def driven_mm(solid: MandrelSolid, bench: Bench) -> float:
    """The length of the piece that has the collar."""
    lies = None if bench.printer_bed_mm is None else on_bed(solid, bench.printer_bed_mm)
    foot_mm, first_mm = cuts_mm(solid, 1 if lies is None else lies.pieces)[:2]
    return first_mm - foot_mm


def _shank_stands(plan: WindingPlan, solid: MandrelSolid, bench: Bench) -> str:
    safety, units = safety_of(plan, solid), bench.units
    said = (
        f"{safety:.1f} times the crank's torque with a pull of {show_force(plan.pull_n, units)} (thinnest "
        f"{show_diameter(solid.core_mm, units)}; {PRINTED_STRENGTH_MPA:g} MPa in shear for plastic like PLA, assumed; "
        "layers part first)"
    )
    if safety >= SAFE:
        split = " Split, it stands that only with a strip of steel." if solid.release.way == "split" else ""
        return f"Printed solid, it stands {said}.{split} Pull no harder, and nothing printed goes in the oven."
    shank = "; its shank is the thinnest, and --shank hex makes that thicker" if _thin_shank(solid) else ""
    return (
        f"Do not wind on it printed: it would stand only {said}, and {SAFE:g} times is wanted{shank}. "
        f"{_instead(plan, solid, bench)}"
    )


def _instead(plan: WindingPlan, solid: MandrelSolid, bench: Bench) -> str:
    """What to take for one that would twist off."""
    sleeve = sleeve_of(solid.coil, "", bench)
    if isinstance(sleeve, Refusal) or not isinstance(sleeve.held, Bore):
        return f"{_steel(plan)}; it is too thin for a sleeve on any rod on hand."
    safety, rod = safety_of(plan, sleeve, driven_mm(sleeve, bench)), show_diameter(sleeve.held.rod_mm, bench.units)
    if safety < SAFE:
        return f"{_steel(plan)}; a sleeve on a rod would not stand it either."
    return f"{_steel(plan)}, or print it as a sleeve on a steel rod of {rod} (--shank sleeve: {safety:.1f} times)."


def _steel(plan: WindingPlan) -> str:
    return "Wind on the rod of the same size" if plan.mandrel.kind == "rod" else "Turn it from steel"


def _thin_shank(solid: MandrelSolid) -> bool:
    shank = solid.held
    return isinstance(shank, Shank) and shank.kind == "drill" and shank.across_mm < 2 * solid.coil.thinnest_mm


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
