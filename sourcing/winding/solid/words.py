"""What is said of a mandrel: how it is held and wound on, and how the spring comes off."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_length
from sourcing.springs.model import Hand, TorsionSpring
from sourcing.stock.model import Bench
from sourcing.winding.model import WindingPlan
from sourcing.winding.solid.printed_words import on_bed_said, stands
from sourcing.winding.solid.release import Release
from sourcing.winding.solid.shape import SHANK_LENGTH_MM, MandrelSolid
from sourcing.winding.solid.sleeve import Bore, flat_depth_mm, sleeve_rod_mm
from sourcing.winding.solid.unwound import room_at_rest_mm, steepest_climb_mm

_TURNS = {Hand.RIGHT: "anticlockwise (a drill runs backwards)", Hand.LEFT: "clockwise (a drill runs forwards)"}
_OTHER = {Hand.RIGHT: Hand.LEFT, Hand.LEFT: Hand.RIGHT}


def solid_said(plan: WindingPlan, solid: MandrelSolid, need: Need, bench: Bench) -> tuple[str, ...]:
    """The sentences of the sheet about the mandrel."""
    printed = "printer" in bench.tools or isinstance(solid.held, Bore)
    return (
        *_what(plan, solid, bench.units),
        *_on_rod(solid, bench.units),
        *_wound_on(plan, solid, need, bench.units),
        *_seat(plan, solid, bench.units),
        comes_off(solid, bench),
        *((stands(plan, solid, bench),) if printed else ()),
        on_bed_said(solid, bench),
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
            "hex": f"The shank is a hexagon of {across} across flats, for a spanner or a crank",
            "round": f"The shank is round, {across}",
            "drill": f"The shank is round, {across}, with three flats for the jaws of a drill chuck",
        }[held.kind]
    lines = " / ".join(solid.collar.lines)
    unnamed = "" if len(solid.collar.lines) > 1 else ", for the job's name is in signs that are not cut here"
    yield f"The mandrel is {what}. The wire lies on {ends}. {grip}. Cut into the collar stands “{lines}”{unnamed}."
    if plan.mandrel.kind == "rod":
        seat = ", but has no seat that keeps the pitch" if _has_hand(solid) else ""
        yield f"The rod of the same size serves too{seat}."


def _on_rod(solid: MandrelSolid, units: str) -> Iterator[str]:
    """How a sleeve is fixed on its rod."""
    if not isinstance(solid.held, Bore):
        return
    rod_mm, deep_mm = solid.held.rod_mm, flat_depth_mm(solid.held.rod_mm)
    deep, left = (show_diameter(each, units) for each in (deep_mm, rod_mm - deep_mm))
    along, whole = (show_length(each, units) for each in (solid.length_mm, solid.length_mm + SHANK_LENGTH_MM))
    yield (
        f"Take a rod at least {whole} long. File a flat {deep} deep along it, {along} from its end, so that {left} are "
        "left across it; a drill shank is too hard to file, so grind it. Push that end in at the collar, flat on flat, "
        "until the flat ends: the flat carries the torque, and what stands out of the collar goes into the chuck."
    )


def _wound_on(plan: WindingPlan, solid: MandrelSolid, need: Need, units: str) -> Iterator[str]:
    hand = solid.coil.hand
    if solid.coil.loop_mm:
        yield from _wound_from_the_loop(solid, units)
        return
    yield _started(plan, solid, units)
    yield (
        f"Seen from chuck or crank, turn it {_TURNS[hand]}: that lays a {hand}-hand spring. The other way lays a "
        f"{_OTHER[hand]}-hand one" + (", across the seat." if _has_hand(solid) else ".")
    )
    if need.hand is None:
        yield "The need gives no hand, so right was taken; where the old spring was left, write `hand: left` into it."


def _wound_from_the_loop(solid: MandrelSolid, units: str) -> Iterator[str]:
    """How the two bodies of a double torsion spring are wound."""
    yield (
        "Drill through it at the mark in the middle for a steel pin that the loop fits over; let the pin stand out by "
        f"two wires. The loop has {show_length(solid.coil.loop_mm, units)} between the bodies."
    )
    yield (
        "Hook the loop over the pin and wind both halves at once, each away from the loop: turned either way, one body "
        "comes out right-hand and the other left-hand. Draw the pin before the spring comes off."
    )


def _started(plan: WindingPlan, solid: MandrelSolid, units: str) -> str:
    """How the wire's end is held."""
    bound = (
        f"Bend {show_length(solid.collar.height_mm, units)} of the wire's end square and lay it in the slot of the "
        "collar, which is cut down to where the wire lies; bind it there with a cable tie or a few turns of tape. The "
        "first turn lies against the collar."
    )
    if not isinstance(plan.wanted, TorsionSpring) or plan.wanted.leg_1 is None:
        return bound
    return (
        "Let leg 1 lie straight over the collar's face and clamp it there, its end pointing away from you; the first "
        "turn lies against the collar. The slot serves a leg that may have a bend where it leaves the coil."
    )


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
            "It has no groove, for the coil opens too little to slide over one, and it is too thin to be split: keep "
            f"the pitch of {pitch} with a strip or a wire beside the last turn."
        )
        return
    if not depth_mm:
        yield "It has no groove: the turns touch, and lie against each other."
        return
    yield (
        f"The seat is a groove {show_diameter(depth_mm, units)} deep that climbs {pitch} a turn; where turns touch, "
        "the mandrel is bare."
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
            f"against the way it was wound. Over the bottom of the groove there is {room}.{_tight(solid, bench)}"
        )
    return _broken(release) if release.way == "break" else _halves(solid, bench, room)


def _freed(solid: MandrelSolid, units: str) -> str:
    """What comes first with a cone whose turns stand against the walls of its treads."""
    climb = show_length(steepest_climb_mm(solid.coil), units)
    return (
        "Eased back, its turns stand against the walls of the treads: free its end at the slot first and push it "
        f"{climb} towards the small end; then"
    )


def _broken(release: Release) -> str:
    why = "slide over any groove that would hold it" if release.groove_depth_mm else "be sure to slide off"
    return (
        f"The coil opens too little to {why}, so this sleeve is meant to be broken: when the coil is eased back and "
        "free at the slot, draw the rod out, grip the shell at its free end with pointed pliers and tear it inwards "
        "along its three thin lines, with eye protection on. Never melt or burn it out."
    )


def _halves(solid: MandrelSolid, bench: Bench, room: str) -> str:
    """Of a split mandrel."""
    strip, width = (show_diameter(each, bench.units) for each in (solid.release.strip_mm, 2 * solid.coil.thinnest_mm))
    return (
        "The coil opens too little to slide over any groove that would hold it, and its end coils cannot be unscrewed "
        f"through one: so the mandrel is split in two along its length. Wind with a strip {strip} thick and no wider "
        f"than {width} between the halves, the shank gripped and the free end bound; when the coil is eased back, draw "
        f"the strip out and push the halves together: {room}. {_sacrificed(solid, bench)}"
    )


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
