"""What is said of a mandrel: how it is held and wound on, how the spring comes off, what a printed one stands."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_force, show_length
from sourcing.springs.model import Hand, TorsionSpring
from sourcing.stock.model import Bench
from sourcing.winding.model import WindingPlan
from sourcing.winding.solid.printed import SAFE, on_bed, safety_of
from sourcing.winding.solid.shape import MandrelSolid

_TURNS = {Hand.RIGHT: "anticlockwise (a drill runs backwards)", Hand.LEFT: "clockwise (a drill runs forwards)"}
_OTHER = {Hand.RIGHT: Hand.LEFT, Hand.LEFT: Hand.RIGHT}


def solid_said(plan: WindingPlan, solid: MandrelSolid, need: Need, bench: Bench) -> tuple[str, ...]:
    """The sentences of the sheet about the mandrel."""
    return (
        *_what(plan, solid, bench.units),
        *_wound_on(plan, solid, need, bench.units),
        *_seat(plan, solid, bench.units),
        comes_off(solid, bench.units),
        *_tight(solid),
        *(_printed(plan, solid, bench) if "printer" in bench.tools else ()),
        *_bed(solid, bench),
    )


def _what(plan: WindingPlan, solid: MandrelSolid, units: str) -> Iterator[str]:
    coil, shank = solid.coil, solid.shank
    across = show_diameter(shank.across_mm, units)
    grip = {
        "hex": f"a hexagon of {across} across flats, for a spanner or a crank",
        "round": f"round, {across}",
        "drill": f"round, {across}, with three flats for the jaws of a drill chuck",
    }[shank.kind]
    ends = " to ".join(dict.fromkeys(show_diameter(2 * each, units) for each in (coil.seat_mm, coil.thinnest_mm)))
    yield (
        f"The mandrel is {show_length(solid.length_mm, units)} long and {show_length(solid.width_mm, units)} across "
        f"its collar. The wire lies on {ends}. The shank is {grip}. Cut into the collar stands "
        f"“{' / '.join(solid.collar.lines)}”."
    )
    if plan.mandrel.kind == "rod":
        seat = ", but has no seat that keeps the pitch" if _has_hand(solid) else ""
        yield f"The rod of the same size serves too{seat}."


def _wound_on(plan: WindingPlan, solid: MandrelSolid, need: Need, units: str) -> Iterator[str]:
    hand = solid.coil.hand
    yield _started(plan, solid, units)
    yield (
        f"Seen from the shank, turn it {_TURNS[hand]}: that lays a {hand}-hand spring. The other way lays a "
        f"{_OTHER[hand]}-hand one" + (", across the seat." if _has_hand(solid) else ".")
    )
    if need.hand is None:
        yield "The need gives no hand, so right was taken; where the old spring was left, write `hand: left` into it."


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


def comes_off(solid: MandrelSolid, units: str) -> str:
    """How the spring comes off, and the room that it has."""
    release = solid.release
    room = (
        f"{show_diameter(release.clearance_mm, units)} of room all round, at least "
        f"{show_diameter(release.least_clearance_mm, units)} in 95 of 100"
    )
    if release.way == "slide":
        return f"Eased back, the coil slides off over the free end: {room}."
    if release.way == "ledge":
        return f"Eased back, the cone slides off over the small end: {room}. Over the large end it never comes."
    if release.way == "unscrew":
        return (
            "The coil opens too little to slide over any groove that would hold it: unscrew it over the free end, "
            f"against the way it was wound. Over the bottom of the groove there is {room}."
        )
    strip, width = (show_diameter(each, units) for each in (release.strip_mm, 2 * solid.coil.thinnest_mm))
    return (
        "The coil opens too little to slide over any groove that would hold it, and its end coils cannot be unscrewed "
        f"through one: so the mandrel is split in two along its length. Wind with a strip {strip} thick and no wider "
        f"than {width} between the halves, the shank gripped and the free end bound; when the coil is eased back, draw "
        f"the strip out and push the halves together: {room}. Or make one that is meant to be broken: whole, of "
        "plastic or wood, and split off the coil with a chisel."
    )


def _tight(solid: MandrelSolid) -> Iterator[str]:
    if solid.release.least_clearance_mm <= 0:
        yield "The coil that opens least may hold on it: then the mandrel must be broken or filed out."


def _printed(plan: WindingPlan, solid: MandrelSolid, bench: Bench) -> Iterator[str]:
    safety, units = safety_of(plan, solid), bench.units
    core = show_diameter(solid.core_mm, units)
    stands = (
        f"{safety:.1f} times the crank's torque with a pull of {show_force(plan.pull_n, units)} "
        f"(thinnest {core}; 20 MPa in shear for plastic like PLA, assumed; layers part first)"
    )
    if safety >= SAFE:
        split = " Split, it stands that only with a strip of steel." if solid.release.way == "split" else ""
        yield f"Printed solid, it stands {stands}.{split} Pull no harder, and nothing printed goes in the oven."
        return
    shank = "; its shank is the thinnest, and --shank hex makes that thicker" if _thin_shank(solid) else ""
    yield (
        f"Do not wind on it printed: it would stand only {stands}, and {SAFE:g} times is wanted{shank}. Turn it from "
        "steel, or print it as a sleeve over a steel rod. Nothing printed goes in the oven."
    )


def _thin_shank(solid: MandrelSolid) -> bool:
    return solid.shank.kind == "drill" and solid.shank.across_mm < 2 * solid.coil.thinnest_mm


def _bed(solid: MandrelSolid, bench: Bench) -> Iterable[str]:
    if bench.printer_bed_mm is None:
        return ("Whether a printer holds it was not checked: no `printer_bed` in bench.yaml.",)
    found = on_bed(solid, bench.printer_bed_mm)
    if found.lies != "nowhere":
        how = "standing on its shank" if found.lies == "standing" else "lying"
        return (f"It fits the printer's bed, {how}, as it is in the file.",)
    if not found.pieces:
        return ("The printer's bed is too small for it, even in pieces: turn it.",)
    return (
        f"It does not fit the printer's bed: cut it across into {found.pieces} pieces of "
        f"{show_length(found.piece_mm, bench.units)}, and join them on a steel rod through their middle.",
    )
