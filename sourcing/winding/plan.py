"""The winding plan of one wire for one need, or why there is none: what holds for all, then the kind's."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from sourcing.fit.limits.any_kind import stands_surroundings, stands_temperature
from sourcing.need.model import Need
from sourcing.quantities import show_diameter
from sourcing.stock.model import Bench, Spool
from sourcing.winding import compression_plan
from sourcing.winding.by_hand import refused_by_size
from sourcing.winding.conical import plan as conical
from sourcing.winding.extension import plan as extension
from sourcing.winding.extension import task as extension_task
from sourcing.winding.line import line_refusal
from sourcing.winding.model import Refusal, WindingPlan, Wire, wire_of
from sourcing.winding.no_room import no_room_between
from sourcing.winding.task import AnyDesign, Given
from sourcing.winding.torsion import plan as torsion
from sourcing.winding.torsion import task as torsion_task
from sourcing.winding.tries import heat_hours, only_try


@dataclass(frozen=True, slots=True)
class Planning:
    """How a kind of spring is wound.

    `plan` makes the whole plan, on the best mandrel or on the one given; `quick` is the best spring before its mandrel
    is thought of; `refusal` says why no wire whatever could serve.
    """

    plan: Callable[[Given, float | None], WindingPlan | Refusal]
    quick: Callable[[Given], AnyDesign | None]
    refusal: Callable[[Need, Bench], Refusal | None]


OF_KIND: Mapping[str, Planning] = {
    "compression": Planning(compression_plan.plan, compression_plan.quick, line_refusal),
    "conical": Planning(conical.plan, conical.quick, line_refusal),
    "torsion": Planning(torsion.plan, torsion.quick, torsion_task.no_wire_serves),
    "extension": Planning(extension.plan, extension.quick, extension_task.no_wire_serves),
}


def plan_winding(
    need: Need, wire: Wire | Spool, bench: Bench, mandrel_mm: float | None = None, *, printed: bool = False
) -> WindingPlan | Refusal:
    """How to wind the need's spring from one wire, on the best mandrel or on the one given; or why not.

    `printed`: on a mandrel that is printed, which is known less well than one of steel.
    """
    wire = wire_of(wire) if isinstance(wire, Spool) else wire
    given = refused_by_size(wire, bench) or given_wire(need, wire, bench)
    if isinstance(given, Refusal):
        return given
    made = OF_KIND[need.kind].plan(replace(given, wound_on="printed") if printed else given, mandrel_mm)
    if isinstance(made, Refusal) or made.holds_second_try:
        return made
    return replace(made, tries=only_try(made.tries, need.quantity, heat_hours(wire.material, bench)))


def quick_design(need: Need, wire: Wire, bench: Bench) -> AnyDesign | None:
    """The best spring of a wire before its mandrel is thought of; None where it makes none."""
    given = given_wire(need, wire, bench)
    return None if isinstance(given, Refusal) else OF_KIND[need.kind].quick(given)


def no_wire_serves(need: Need, bench: Bench) -> Refusal | None:
    """Why no wire whatever could serve a need: its forces, or its room."""
    return OF_KIND[need.kind].refusal(need, bench) or no_room_between(need, bench)


def refused_by_material(need: Need, wire: Wire, bench: Bench) -> Refusal | None:
    """The refusal of wire that stands the need's temperature or surroundings at no diameter whatever."""
    for limit in stands_temperature(wire.material, need, bench.units):
        if limit.hard and not limit.holds:
            too_hot = (need.temperature_c or 0.0) > (wire.material.service_high_c or 0.0)
            return Refusal("too-hot-for-wire" if too_hot else "too-cold-for-wire", limit.why)
    unsuitable = (limit for limit in stands_surroundings(wire.material, need) if limit.hard and not limit.holds)
    return next((Refusal("wrong-surroundings-for-wire", limit.why) for limit in unsuitable), None)


def given_wire(need: Need, wire: Wire, bench: Bench) -> Given | Refusal:
    """The wire with its strength, or why not: no wire serves, this one does not stand the place, no strength known."""
    if refusal := no_wire_serves(need, bench) or refused_by_material(need, wire, bench):
        return refusal
    strength_mpa = wire.tensile_strength_mpa
    if strength_mpa is not None:
        return Given(need, bench, wire, strength_mpa)
    why = (
        f"the strength of {wire.material.name} is not listed for wire of "
        f"{show_diameter(wire.wire_diameter_mm, bench.units)}, so neither its springback nor what it stands can be "
        "worked out"
    )
    return Refusal("strength-unknown", why)
