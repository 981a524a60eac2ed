"""What is said of a mandrel beside the steps: what it is, its seat, what it stands, and how it is printed."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_diameter, show_length
from sourcing.stock.model import Bench
from sourcing.winding.model import WindingPlan
from sourcing.winding.solid.printed_words import on_bed_said, stands
from sourcing.winding.solid.shape import MandrelSolid
from sourcing.winding.solid.sleeve import Bore


def solid_said(
    plan: WindingPlan, solid: MandrelSolid, bench: Bench, printed: bool, meshed: bool = True
) -> tuple[str, ...]:
    """The sentences of the sheet about the mandrel for a plan, beside its steps (in_steps.py).

    `meshed`: a file holds it to print; a drawing of a sleeve says what that stands, and nothing of a printer's bed.
    """
    return (
        *_what(plan, solid, bench.units),
        *_seat(plan, solid, bench.units),
        *((stands(plan, solid, bench),) if printed else ()),
        *((on_bed_said(solid, bench),) if printed and meshed else ()),
    )


def _what(plan: WindingPlan, solid: MandrelSolid, units: str) -> Iterator[str]:
    coil, held = solid.coil, solid.held
    ends = " to ".join(dict.fromkeys(show_diameter(2 * each, units) for each in (coil.seat_mm, coil.thinnest_mm)))
    size = f"{show_length(solid.length_mm, units)} long and {show_length(solid.width_mm, units)} across its collar"
    if isinstance(held, Bore):
        rod, wall = show_diameter(held.rod_mm, units), show_diameter(held.wall_mm, units)
        what, grip = f"a sleeve on a steel rod of {rod}, {size}", f"Its wall is {wall} at the thinnest"
    else:
        across = show_diameter(held.across_mm, units)
        what = size
        grip = {
            "hex": f"The shank is a hexagon of {across} across flats",
            "round": f"The shank is round, {across}",
            "drill": f"The shank is round, {across}, with three flats for the jaws of a chuck",
        }[held.kind]
    lines = " / ".join(solid.collar.lines)
    unnamed = "" if len(solid.collar.lines) > 1 else ", for the job's name is in signs that are not cut here"
    yield f"The mandrel is {what}. The wire lies on {ends}. {grip}. Cut into the collar stands “{lines}”{unnamed}."
    if plan.mandrel.kind == "rod":
        seat = ", but has no seat that keeps the pitch" if _has_hand(solid) else ""
        yield f"The rod of the same size serves too{seat}."


def _has_hand(solid: MandrelSolid) -> bool:
    return solid.coil.tapered or solid.release.groove_depth_mm > 0


def _seat(plan: WindingPlan, solid: MandrelSolid, units: str) -> Iterator[str]:
    pitch, depth_mm = show_diameter(plan.pitch_on_mandrel_mm, units), solid.release.groove_depth_mm
    if solid.release.way == "ledge":
        yield (
            f"The seat is a tread that climbs {pitch} a turn, with a wall towards the large end and none towards the "
            "small end."
        )
        if plan.pitch_on_mandrel_mm < plan.wire_diameter_mm / 2:
            yield (
                "The turns climb so little that the wall of one cuts into the tread of the next: lay the wire with "
                "care, each turn against the one before."
            )
        return
    if not depth_mm and not solid.coil.close:
        yield (
            "It has no groove, for the coil opens too little to slide over one, and it is too thin to be split: a "
            f"strip or a wire keeps the pitch of {pitch}, as the steps say."
        )
        return
    if not depth_mm:
        yield "It has no groove: the turns touch, and lie against each other."
        return
    yield (
        f"The seat is a groove {show_diameter(depth_mm, units)} deep that climbs {pitch} a turn; where turns touch, "
        "the mandrel is bare."
    )
