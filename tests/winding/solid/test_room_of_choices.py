"""What is printed has its collar with the job's name in the table of mandrels too, as the solid that is written."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.need.model import Need
from sourcing.stock.model import Bench
from sourcing.winding.choices import mandrel_choices
from sourcing.winding.model import Refusal, WindingPlan, wire_of
from sourcing.winding.plan import plan_winding
from sourcing.winding.solid.bed import BED_EDGE_MM, meshes_of
from sourcing.winding.solid.coil import coil_of
from sourcing.winding.solid.made import became_a_sleeve, has_room, no_room_said, sleeve_of, solid_for, with_shank
from sourcing.winding.solid.shape import MandrelSolid
from tests.winding.cases import BENCH, planned, spool
from tests.winding.test_before_and_after import NEEDS

JOB = "lid-of-the-box"
"""Two lines of a narrow collar."""

PRINTER = replace(BENCH, tools=("vice", "hand-drill", "printer"), rods_mm=(2.0, *BENCH.rods_mm))

every_kind = pytest.mark.parametrize("kind", NEEDS)


def with_bed(across_mm: float, high_mm: float) -> Bench:
    return replace(PRINTER, printer_bed_mm=(across_mm, across_mm, high_mm))


def of_job(kind: str) -> Need:
    return replace(NEEDS[kind][0], job=JOB)


def printed_plan(kind: str) -> WindingPlan:
    wire = spool(NEEDS[kind][1])
    return planned(plan_winding(of_job(kind), wire, replace(PRINTER, rods_mm=()), printed=True))


def said_of(kind: str, made_as: str, bench: Bench) -> str:
    """What the table says of the printed mandrel, or of the sleeve."""
    wire = spool(NEEDS[kind][1])
    made = planned(plan_winding(of_job(kind), wire, bench))
    (one,) = [each for each in mandrel_choices(made, of_job(kind), wire_of(wire), bench) if each.kind == made_as]
    return one.said


def bed_for(solid: MandrelSolid) -> Bench:
    """One on which it just stands."""
    return with_bed(solid.width_mm + 2 * BED_EDGE_MM + 0.1, solid.length_mm + 2 * BED_EDGE_MM + 0.1)


@every_kind
def test_a_mandrel_with_no_room_for_its_name_is_told_as_long_as_it_would_be_written(kind: str) -> None:
    nameless, named = (with_shank(printed_plan(kind), name, PRINTER) for name in ("", JOB))
    assert named.length_mm > nameless.length_mm
    bench = bed_for(nameless)
    assert said_of(kind, "printed", bench) == f"no: {no_room_said(named, 'mm')}"
    assert sum(mesh.size_mm[2] for mesh in meshes_of(named)) == pytest.approx(named.length_mm)


@every_kind
def test_a_sleeve_with_no_room_for_its_name_is_told_as_long_as_it_would_be_written(kind: str) -> None:
    """A bed 19 high: a collar without a name stands on it with a piece of the body, and nothing lies on it."""
    bench = with_bed(80.0, 19.0)
    nameless, named = (sleeve_of(coil_of(printed_plan(kind)), name, bench) for name in ("", JOB))
    assert isinstance(nameless, MandrelSolid)
    assert isinstance(named, MandrelSolid)
    assert has_room(nameless, bench.printer_bed_mm)
    said = said_of(kind, "sleeve", bench)
    assert said == f"no: {no_room_said(named, 'mm')}"
    refusal = solid_for(printed_plan(kind), JOB, bench, "sleeve", True)
    assert isinstance(refusal, Refusal)
    assert said.removeprefix("no: ") in refusal.why


def test_a_mandrel_that_only_its_name_makes_too_long_became_a_sleeve_for_want_of_room() -> None:
    """Without a name it would have room, and then the wire would twist it off."""
    plan = printed_plan("compression")
    bench = bed_for(with_shank(plan, "", PRINTER))
    sleeve = solid_for(plan, JOB, bench, None, True)
    assert isinstance(sleeve, MandrelSolid)
    (why,) = became_a_sleeve(plan, sleeve, JOB, bench, None)
    assert "no room in the printer" in why
