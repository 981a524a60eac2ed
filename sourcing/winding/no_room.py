"""Whether a rod and the bore round it leave room for a coil of any wire, or one of them is rather a slip."""

from __future__ import annotations

from sourcing.need.model import Need, Pocket, PocketEnd
from sourcing.quantities import show_diameter, show_wire
from sourcing.springs.compression import INDEX_RANGE
from sourcing.stock.model import Bench
from sourcing.winding.model import Refusal

NO_ROOM_BETWEEN = "no-room-between-rod-and-bore"
"""The rule by which no wire whatever serves."""

MEASURE_AGAIN = "One of the two may be mistyped or measured wrongly: measure both again"


def thickest_wire_mm(bore_mm: float, rod_mm: float, clearances_mm: float) -> float:
    """The thickest wire that goes between a rod and a bore, d = (B − R − c) / 2; below zero where none does.

    `clearances_mm`: those of bore and rod together, on the diameter. It holds by geometry, for any size.

    >>> round(thickest_wire_mm(10.0, 9.5, 0.4), 3), round(thickest_wire_mm(11.0, 6.0, 0.4), 3)
    (0.05, 2.3)
    """
    return (bore_mm - rod_mm - clearances_mm) / 2.0


def no_room_between(need: Need, bench: Bench) -> Refusal | None:
    """The refusal where the thickest wire that goes between a rod and its bore makes a coil of more than the greatest
    index, and thinner wire one of more still."""
    pocket = need.pocket
    for where, end in (("", pocket), (" at the large end", pocket.large_end), (" at the small end", pocket.small_end)):
        if end is not None and (why := _no_room(end, bench)):
            return Refusal(NO_ROOM_BETWEEN, f"{why[0]}{where}{why[1]}")
    return None


def _no_room(end: Pocket | PocketEnd, bench: Bench) -> tuple[str, str] | None:
    """Why no wire has room, before and after where that is."""
    bore_mm = None if end.bore_mm is None else end.bore_mm.smallest
    rod_mm = None if end.rod_mm is None else end.rod_mm.largest
    if bore_mm is None or rod_mm is None:
        return None
    clearance, greatest = bench.clearance, INDEX_RANGE[1]
    thickest_mm = thickest_wire_mm(bore_mm, rod_mm, clearance.bore_mm + clearance.rod_mm)
    mean_mm = rod_mm + clearance.rod_mm + thickest_mm
    if mean_mm <= greatest * thickest_mm:
        return None
    rod, bore, across = (show_diameter(mm, bench.units) for mm in (rod_mm, bore_mm, bore_mm - rod_mm))
    if thickest_mm <= 0.0:
        goes = "less than the clearances take, so that no wire goes between them"
    else:
        goes = (
            f"so that the thickest wire that goes between them with clearance is {show_wire(thickest_mm, bench.units)}"
            f", and a coil of it would be {mean_mm / thickest_mm:.0f} wires across, where the standard goes to "
            f"{greatest:g} (EN 13906-1)"
        )
    return f"a rod of {rod} in a bore of {bore}", f" leaves {across} across, {goes}. {MEASURE_AGAIN}"
