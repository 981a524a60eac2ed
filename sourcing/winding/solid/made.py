"""Which solid is made for a plan at a bench: with a shank, or as a sleeve where that is asked or no shank does."""

from __future__ import annotations

from typing import Literal

from sourcing.quantities import show_diameter, show_length
from sourcing.stock.model import Bench
from sourcing.winding.model import Refusal, WindingPlan
from sourcing.winding.solid.bed import Bed, on_bed
from sourcing.winding.solid.coil import LaidCoil, coil_of
from sourcing.winding.solid.printed import SAFE, safety_at
from sourcing.winding.solid.printed_words import would_break
from sourcing.winding.solid.release import release_of
from sourcing.winding.solid.shape import MandrelSolid, ShankKind, shank_for, solid_of
from sourcing.winding.solid.sleeve import LEAST_WALL_MM, Bore, bore_for

Held = ShankKind | Literal["sleeve"]
"""By a shank of some kind, or as a sleeve by its rod."""


def solid_for(plan: WindingPlan, name: str, bench: Bench, held: Held | None, printed: bool) -> MandrelSolid | Refusal:
    """The mandrel for a plan, or why there is none. `held` None: by the shank that suits the bench.

    One that is `printed` must lie on the bed and stand what the wire does to it, as a sleeve must in any case. Where
    it does not lie there whole it becomes a sleeve, which may be cut across; where it would break, it does so only if
    no shank was asked for. Raises ValueError as `coil_of` does.
    """
    coil, bed_mm = coil_of(plan), bench.printer_bed_mm if printed else None
    sleeve = sleeve_of(coil, name, bench)
    if held == "sleeve":
        return sleeve if isinstance(sleeve, Refusal) else _printable(plan, sleeve, {}, name, bench, bed_mm)
    whole = with_shank(plan, name, bench, held)
    if not printed:
        return whole
    no_room = not has_room(whole, bed_mm)
    if isinstance(sleeve, Refusal) and no_room:
        return _too_long(whole, bench.units, f" as a sleeve it could be printed in pieces, but {sleeve.why};")
    others = {} if isinstance(sleeve, Refusal) else {"sleeve": sleeve}
    made = _printable(plan, whole, others, name, bench, bed_mm)
    if isinstance(made, MandrelSolid) or isinstance(sleeve, Refusal) or not (no_room or held is None):
        return made
    instead = _printable(plan, sleeve, {}, name, bench, bed_mm)
    return made if isinstance(instead, Refusal) and not no_room else instead


def with_shank(plan: WindingPlan, name: str, bench: Bench, kind: ShankKind | None = None) -> MandrelSolid:
    """The mandrel with a shank; None: the one that suits the bench. Raises ValueError as `coil_of` does."""
    coil = coil_of(plan)
    return solid_of(coil, release_of(coil), name, kind or shank_for(bench, plan.crank.drill_serves), bench.units)


def _printable(
    plan: WindingPlan,
    solid: MandrelSolid,
    others: dict[str, MandrelSolid],
    name: str,
    bench: Bench,
    bed_mm: Bed | None,
) -> MandrelSolid | Refusal:
    """A solid that lies on the bed and that the wire does not break, or why not; `others` may stand more."""
    if not has_room(solid, bed_mm):
        return _too_long(solid, bench.units, "")
    hexagon = with_shank(plan, name, bench, "hex")
    lying = {word: each for word, each in {"hex": hexagon, **others}.items() if has_room(each, bed_mm)}
    return would_break(plan, solid, lying, bench) or solid


def became_a_sleeve(
    plan: WindingPlan, solid: MandrelSolid, name: str, bench: Bench, held: Held | None
) -> tuple[str, ...]:
    """That a mandrel is a sleeve though none was asked for, and why."""
    if held == "sleeve" or not isinstance(solid.held, Bore):
        return ()
    whole = with_shank(plan, name, bench, held)
    breaks = has_room(whole, bench.printer_bed_mm) and safety_at(plan, whole, bench) < SAFE
    why = "the wire would twist it off" if breaks else "it would have no room in the printer"
    return (f"With a shank {why}: so it is made as a sleeve.",)


def has_room(solid: MandrelSolid, bed_mm: Bed | None) -> bool:
    """Whether a mandrel lies on a printer's bed, in pieces if need be; wherever no bed is known."""
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


def no_room_said(solid: MandrelSolid, units: str) -> str:
    """That a mandrel has no room on the bed, with its size."""
    size = f"{show_length(solid.length_mm, units)} long and {show_length(solid.width_mm, units)} across"
    return f"the mandrel, {size}, has no room in the printer (`printer_bed` in bench.yaml)"


def _too_long(solid: MandrelSolid, units: str, why: str) -> Refusal:
    return Refusal(
        "printer-bed-too-small", f"{no_room_said(solid, units)};{why} turn it by its drawing, --solid OUT.svg"
    )
