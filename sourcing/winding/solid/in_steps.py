"""What the steps of a plan say of the mandrel that is made for it: how it is held, wound on, and left by the spring."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_length
from sourcing.springs.model import Hand, TorsionSpring
from sourcing.stock.model import Bench
from sourcing.winding.finishing import never
from sourcing.winding.model import Crank, Mandrel, WindingPlan
from sourcing.winding.setting_up import OnSolid, turned_by
from sourcing.winding.solid.printed import greatest_pull_n
from sourcing.winding.solid.release import Release
from sourcing.winding.solid.shape import SHANK_LENGTH_MM, MandrelSolid
from sourcing.winding.solid.sleeve import Bore, flat_depth_mm, sleeve_rod_mm
from sourcing.winding.solid.unwound import binds_by_mm, room_at_rest_mm, steepest_climb_mm

_WAYS = {Hand.RIGHT: ("anticlockwise", "backwards"), Hand.LEFT: ("clockwise", "forwards")}
"""Which way the mandrel is turned for a hand, seen from its held end, and a drill for that."""

_OTHER = {Hand.RIGHT: Hand.LEFT, Hand.LEFT: Hand.RIGHT}


def wound_on(plan: WindingPlan, solid: MandrelSolid, need: Need, bench: Bench, printed: bool) -> WindingPlan:
    """The plan with the steps, the pull and the mandrel of a solid that is made for it, printed or turned."""
    mandrel, on = _mandrel(plan.mandrel, solid, printed), on_solid(plan, solid, need, bench, printed)
    numbers = replace(plan.numbers, mandrel=mandrel, on_solid=on)
    heated = plan.heat.temperature_c is not None
    return replace(
        plan,
        mandrel=mandrel,
        numbers=numbers,
        steps=numbers.steps(need, bench),
        never=never(numbers.wire.material, mandrel, heated, bench),
        taken=() if on.hand_taken is None else (_taken(on.hand_taken),),
    )


def _mandrel(mandrel: Mandrel, solid: MandrelSolid, printed: bool) -> Mandrel:
    rod_mm = solid.held.rod_mm if isinstance(solid.held, Bore) else None
    return replace(mandrel, kind="printed" if printed else "turned", rod_mm=rod_mm)


def _taken(hand: Hand) -> str:
    return (
        f"The need gives no hand: the mandrel is made for a {hand}-hand spring. If the old one is "
        f"{_OTHER[hand]}-hand, write `hand: {_OTHER[hand]}` into the need and ask again."
    )


def on_solid(plan: WindingPlan, solid: MandrelSolid, need: Need, bench: Bench, printed: bool) -> OnSolid:
    """What the steps say of a mandrel."""
    double = bool(solid.coil.loop_mm)
    return OnSolid(
        prepared=tuple(_prepared(solid, bench.units)),
        gripped=_gripped(solid, bench.units, printed),
        anchored=_anchored(plan, solid, bench.units),
        turned=_turned(solid, plan.crank, bench),
        off=f"{'Draw the pin. ' if double else ''}{comes_off(solid, bench)}",
        greatest_pull_n=greatest_pull_n(plan, solid, bench) if printed else None,
        seated=solid.release.groove_depth_mm > 0,
        hand_taken=None if need.hand or double else solid.coil.hand,
    )


def _prepared(solid: MandrelSolid, units: str) -> Iterator[str]:
    """What is done to it before it is set up."""
    if isinstance(solid.held, Bore):
        yield _on_rod(solid, solid.held.rod_mm, units)
    if solid.release.way == "split":
        strip, width = (show_diameter(each, units) for each in (solid.release.strip_mm, 2 * solid.coil.thinnest_mm))
        yield (
            "The coil opens too little to slide over any groove that would hold it, and its end coils cannot be "
            "unscrewed through one: so the mandrel is split in two along its length. Lay a steel strip "
            f"{strip} thick and no wider than {width} between the halves, and bind the free end."
        )
    if solid.coil.loop_mm:
        yield (
            "Drill through the mandrel at the mark in its middle for a steel pin that the loop fits over; let the pin "
            f"stand out by two wires. The loop has {show_length(solid.coil.loop_mm, units)} between the bodies."
        )


def _on_rod(solid: MandrelSolid, rod_mm: float, units: str) -> str:
    """How a sleeve is fixed on its rod."""
    deep_mm = flat_depth_mm(rod_mm)
    deep, left = (show_diameter(each, units) for each in (deep_mm, rod_mm - deep_mm))
    along, whole = (show_length(each, units) for each in (solid.length_mm, solid.length_mm + SHANK_LENGTH_MM))
    return (
        f"Take a rod of {show_diameter(rod_mm, units)} at least {whole} long. File a flat {deep} deep along it, "
        f"{along} from its end, so that {left} are left across it; a drill shank is too hard to file, so grind it. "
        "Push that end into the sleeve at the collar, flat on flat, until the flat ends: the flat carries the torque."
    )


def _gripped(solid: MandrelSolid, units: str, printed: bool) -> str:
    """The mandrel, and by what it is held."""
    held = solid.held
    if isinstance(held, Bore):
        return "the sleeve, gripped by the rod that stands out of its collar"
    across = show_diameter(held.across_mm, units)
    shank = f"hexagon of {across} across flats" if held.kind == "hex" else f"round shank of {across}"
    flats = " with its three flats" if held.kind == "drill" else ""
    return f"the {'printed' if printed else 'turned'} mandrel, gripped by its {shank}{flats}"


def _anchored(plan: WindingPlan, solid: MandrelSolid, units: str) -> str:
    """How the wire's end is held."""
    if solid.coil.loop_mm:
        return "the pin, to wind both halves at once, each away from the loop"
    if isinstance(plan.wanted, TorsionSpring):
        return (
            "let it lie straight over the collar's face and clamp it there, its end pointing away from you; the first "
            "turn lies against the collar. The slot serves a leg that may have a bend where it leaves the coil."
        )
    return (
        f"bend {show_length(solid.collar.height_mm, units)} of its end square and lay it in the slot of the collar, "
        "which is cut down to where the wire lies; bind it there with a cable tie or a few turns of tape. The first "
        "turn lies against the collar."
    )


def _turned(solid: MandrelSolid, crank: Crank, bench: Bench) -> str:
    """Which way it is turned."""
    if solid.coil.loop_mm:
        return "Turned either way, one body comes out right-hand and the other left-hand."
    hand, tool = solid.coil.hand, turned_by(crank, bench)
    way, drill = _WAYS[hand]
    runs = f" (the drill runs {drill})" if tool.endswith("drill") else ""
    seat = ", across the seat" if solid.coil.tapered or solid.release.groove_depth_mm > 0 else ""
    return (
        f"Seen from the {'crank' if tool == 'vice' else 'chuck'}, turn it {way}{runs}: that lays a {hand}-hand spring; "
        f"the other way lays a {_OTHER[hand]}-hand one{seat}."
    )


def comes_off(solid: MandrelSolid, bench: Bench) -> str:
    """How the spring comes off, and the room that it has."""
    release, units = solid.release, bench.units
    room = (
        f"{show_diameter(release.clearance_mm, units)} of room all round, at least "
        f"{show_diameter(release.least_clearance_mm, units)} in 95 of 100"
    )
    if release.way == "slide":
        return f"Eased back, the coil slides off over the free end: {room}.{_tight(solid, bench)}"
    if release.way == "ledge":
        freed = _freed(solid, units) if room_at_rest_mm(solid.coil, release) < 0 else "Eased back,"
        return (
            f"{freed} the cone slides off over the small end: {room}. Over the large end it never comes."
            f"{_tight(solid, bench)}"
        )
    if release.way == "unscrew":
        return (
            "The coil opens too little to slide over any groove that would hold it: unscrew it over the free end, "
            f"against the way it was wound.{_pressed(solid, units)} Over the bottom of the groove there is {room}."
            f"{_tight(solid, bench)}"
        )
    return _broken(release) if release.way == "break" else _halves(solid, bench, room)


def _freed(solid: MandrelSolid, units: str) -> str:
    """What comes first with a cone whose turns stand against the walls of its treads."""
    climb = show_length(steepest_climb_mm(solid.coil), units)
    return (
        "Eased back, its turns stand against the walls of the treads: free its end at the slot first and push it "
        f"{climb} towards the small end; then"
    )


def _pressed(solid: MandrelSolid, units: str) -> str:
    """That a coil must be pressed together to turn in its groove, where its pitch has opened so far."""
    longer_mm = binds_by_mm(solid.coil, solid.release)
    if not longer_mm:
        return ""
    return (
        " Its pitch has opened too, and as it is it binds in the groove: press it together along the mandrel by about "
        f"{show_diameter(longer_mm, units)} while you turn it; less and less as its turns come free."
    )


def _broken(release: Release) -> str:
    why = "slide over any groove that would hold it" if release.groove_depth_mm else "be sure to slide off"
    return (
        f"The coil opens too little to {why}, so this sleeve is meant to be broken: eased back and its end free at "
        "the slot, draw the rod out, grip the shell at its free end with pointed pliers and tear it inwards "
        "along its three thin lines, with eye protection on. Never melt or burn it out."
    )


def _halves(solid: MandrelSolid, bench: Bench, room: str) -> str:
    """Of a split mandrel."""
    return f"Eased back, draw the strip out and push the halves together: {room}. {_sacrificed(solid, bench)}"


def _tight(solid: MandrelSolid, bench: Bench) -> str:
    """What is to be done where a coil may hold."""
    if solid.release.least_clearance_mm > 0:
        return ""
    return f" The coil that opens least may hold on it. {_sacrificed(solid, bench)}"


def _sacrificed(solid: MandrelSolid, bench: Bench) -> str:
    """A mandrel that is meant to be broken, where there is a solid of it and where there is none."""
    if not solid.coil.tapered and sleeve_rod_mm(2 * solid.coil.thinnest_mm, bench.rods_mm) is not None:
        return "Or print one that is meant to be broken, a sleeve with thin lines on a steel rod: --shank sleeve."
    return (
        "Or take a whole one of hard wood or plastic that is meant to be broken, where it stands the torque: split it "
        "out with pliers and a chisel, with eye protection on; never melt or burn it out."
    )
