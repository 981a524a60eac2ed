"""Which solid is made for a plan at a bench: with a shank, or as a sleeve where that is asked or the bed wants it."""

from __future__ import annotations

from typing import Literal

from sourcing.quantities import show_diameter, show_length
from sourcing.stock.model import Bench
from sourcing.winding.model import Refusal, WindingPlan
from sourcing.winding.solid.bed import Bed, on_bed
from sourcing.winding.solid.coil import LaidCoil, coil_of
from sourcing.winding.solid.release import release_of
from sourcing.winding.solid.shape import MandrelSolid, ShankKind, shank_for, solid_of
from sourcing.winding.solid.sleeve import LEAST_WALL_MM, Bore, bore_for

Held = ShankKind | Literal["sleeve"]
"""By a shank of some kind, or as a sleeve by its rod."""


def solid_for(plan: WindingPlan, name: str, bench: Bench, held: Held | None, printed: bool) -> MandrelSolid | Refusal:
    """The mandrel for a plan, or why there is none. `held` None: by the shank that suits the bench.

    One that is `printed` and does not lie on the bed whole becomes a sleeve, which may be cut across.
    Raises ValueError as `coil_of` does.
    """
    coil, bed_mm = coil_of(plan), bench.printer_bed_mm if printed else None
    if held == "sleeve":
        sleeve = sleeve_of(coil, name, bench)
        return sleeve if isinstance(sleeve, Refusal) or _lies(sleeve, bed_mm) else _too_long(sleeve, bench.units, "")
    whole = solid_of(coil, release_of(coil), name, held or shank_for(bench, plan.crank.drill_serves), bench.units)
    if _lies(whole, bed_mm):
        return whole
    sleeve = sleeve_of(coil, name, bench)
    if isinstance(sleeve, Refusal):
        return _too_long(whole, bench.units, f" as a sleeve it could be printed in pieces, but {sleeve.why};")
    return sleeve if _lies(sleeve, bed_mm) else _too_long(sleeve, bench.units, "")


def became_a_sleeve(solid: MandrelSolid, held: Held | None) -> tuple[str, ...]:
    """That a mandrel is a sleeve though none was asked for."""
    if held == "sleeve" or not isinstance(solid.held, Bore):
        return ()
    return ("With a shank it would have no room in the printer: so it is made as a sleeve.",)


def _lies(solid: MandrelSolid, bed_mm: Bed | None) -> bool:
    return bed_mm is None or on_bed(solid, bed_mm) is not None


def sleeve_of(coil: LaidCoil, name: str, bench: Bench) -> MandrelSolid | Refusal:
    """The mandrel as a sleeve on the thickest rod on hand that serves, or why there is none."""
    release, thinnest_mm = release_of(coil, on_rod=True), 2 * coil.thinnest_mm
    bore = bore_for(thinnest_mm, bench.rods_mm, breaks=release.way == "break")
    if bore is not None:
        return solid_of(coil, release, name, bore, bench.units)
    sleeve, wall = (show_diameter(each, bench.units) for each in (thinnest_mm, LEAST_WALL_MM))
    return Refusal(
        "no-rod-for-sleeve", f"no rod on hand (`rods` in bench.yaml) leaves a sleeve of {sleeve} a wall of {wall}"
    )


def _too_long(solid: MandrelSolid, units: str, why: str) -> Refusal:
    size = f"{show_length(solid.length_mm, units)} long and {show_length(solid.width_mm, units)} across"
    return Refusal(
        "printer-bed-too-small",
        f"the mandrel, {size}, has no room in the printer (`printer_bed` in bench.yaml);{why} turn it by its "
        "drawing, --solid OUT.svg",
    )
