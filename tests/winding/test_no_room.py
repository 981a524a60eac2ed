"""A rod that leaves too little room in its bore for a coil of any wire is told as a slip, and only such a rod."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.need.model import Pocket, PocketEnd
from sourcing.winding.model import Refusal
from sourcing.winding.no_room import NO_ROOM_BETWEEN, no_room_between
from sourcing.winding.plan import plan_winding
from sourcing.winding.search import diameters_mm

from . import cases
from .cases import BENCH, wanted


def needed(rod_mm: float, bore_mm: float = 10.0):
    return cases.need(pocket=Pocket(wanted(bore_mm), wanted(rod_mm)))


def test_half_a_millimetre_across_leaves_a_hair_of_wire_and_both_are_measured_again():
    refusal = no_room_between(needed(9.5), BENCH)
    assert refusal is not None
    assert refusal.rule == NO_ROOM_BETWEEN
    assert refusal.why == (
        "a rod of 9.50 mm in a bore of 10.00 mm leaves 0.50 mm across, so that the thickest wire that goes between "
        "them with clearance is 0.05 mm, and a coil of it would be 195 wires across, where the standard goes to 20 "
        "(EN 13906-1). One of the two may be mistyped or measured wrongly: measure both again"
    )


def test_less_than_the_clearances_leaves_no_wire_and_an_inch_bench_reads_inches():
    refusal = no_room_between(needed(9.9), replace(BENCH, units="inch"))
    assert refusal is not None
    assert (
        "a rod of 0.390 in in a bore of 0.394 in leaves 0.004 in across, less than the clearances take" in refusal.why
    )


@pytest.mark.parametrize("rod_mm", [6.0, 7.0, 8.0, 8.5, 8.6, 8.8, 9.0, 9.5, 9.9])
def test_it_is_told_just_where_no_wire_whatever_has_a_diameter_between_them(rod_mm: float):
    need = needed(rod_mm)
    goes = any(not isinstance(diameters_mm(need, BENCH, size / 200.0), Refusal) for size in range(2, 600))
    assert (no_room_between(need, BENCH) is None) is goes


def test_it_is_told_of_a_wire_that_is_asked_for_too():
    refused = plan_winding(needed(9.5), cases.spool(0.8), BENCH)
    assert isinstance(refused, Refusal)
    assert refused.rule == NO_ROOM_BETWEEN


def test_an_end_of_a_cone_is_told_by_name():
    pocket = Pocket(large_end=PocketEnd(wanted(18.0)), small_end=PocketEnd(wanted(6.0), wanted(5.7)))
    refusal = no_room_between(replace(needed(9.5), kind="conical", pocket=pocket), BENCH)
    assert refusal is not None
    assert refusal.why.startswith("a rod of 5.70 mm in a bore of 6.00 mm at the small end leaves 0.30 mm across")
