"""How a mandrel lies in the printer, and that its pieces lie on the bed beside each other, in order, and make it up."""

from __future__ import annotations

from itertools import pairwise

import pytest

from sourcing.stock.model import Bench
from sourcing.winding.model import Refusal
from sourcing.winding.solid.bed import APART_MM, BED_EDGE_MM, OnBed, cuts_mm, meshes_of, on_bed
from sourcing.winding.solid.made import solid_for as made_for
from sourcing.winding.solid.shape import MandrelSolid
from sourcing.winding.solid.sleeve import Bore
from sourcing.winding.solid.words import solid_said
from tests.winding.cases import plan, spool

from .plans import random_plans, solid_for

WHOLE = [
    ((200.0, 200.0, 180.0), OnBed()),
    ((200.0, 180.0, 40.0), OnBed(standing=False)),
    ((40.0, 180.0, 40.0), OnBed(standing=False, turned=True)),
    ((60.0, 60.0, 60.0), None),
]


@pytest.mark.parametrize(("bed_mm", "lies"), WHOLE)
def test_one_with_a_shank_stands_or_lies_whole_or_not_at_all(
    bed_mm: tuple[float, float, float], lies: OnBed | None
) -> None:
    assert on_bed(solid_for(plan(spool(1.0))), bed_mm) == lies


PIECES = [
    ((60.0, 60.0, 60.0), OnBed()),
    ((48.0, 48.0, 40.0), OnBed(standing=True, pieces=2, in_a_row=2)),
    ((25.0, 48.0, 40.0), OnBed(standing=True, pieces=2, in_a_row=1)),
    ((40.0, 80.0, 25.0), OnBed(standing=False, turned=True)),
    ((40.0, 42.0, 22.0), OnBed(standing=False, pieces=2)),
    ((20.0, 20.0, 20.0), None),
]


@pytest.mark.parametrize(("bed_mm", "lies"), PIECES)
def test_a_sleeve_is_cut_into_as_few_pieces_as_the_bed_holds(
    bed_mm: tuple[float, float, float], lies: OnBed | None
) -> None:
    assert on_bed(solid_for(plan(spool(1.0)), shank="sleeve"), bed_mm) == lies


@pytest.mark.parametrize(("bed_mm", "lies"), [*WHOLE, *PIECES])
def test_all_parts_lie_within_the_bed_and_apart_from_each_other(
    bed_mm: tuple[float, float, float], lies: OnBed | None
) -> None:
    solid = solid_for(plan(spool(1.0)), shank="sleeve" if (bed_mm, lies) in PIECES else "hex")
    if lies is None:
        return
    boxes = [
        [(min(values), max(values)) for values in zip(*mesh.vertices, strict=True)] for mesh in meshes_of(solid, lies)
    ]
    assert len(boxes) == lies.pieces
    for box in boxes:
        for (low, high), room in zip(box, bed_mm, strict=True):
            assert low >= -1e-9
            assert high <= room - BED_EDGE_MM + 1e-9
    for one, other in pairwise(boxes):
        assert any(other[axis][0] - one[axis][1] >= APART_MM - 1e-6 for axis in (0, 1))


def test_the_halves_of_a_split_one_lie_side_by_side_or_not_at_all() -> None:
    solid = next(each for each in map(solid_for, random_plans()) if each.release.way == "split")
    wide_mm, long_mm = solid.width_mm, solid.length_mm
    beside_mm = 2 * wide_mm + APART_MM + 2 * BED_EDGE_MM
    assert on_bed(solid, (long_mm + 4, beside_mm + 0.01, wide_mm + 4.01)) == OnBed(standing=False)
    assert on_bed(solid, (beside_mm + 0.01, long_mm + 4, wide_mm + 4.01)) == OnBed(standing=False, turned=True)
    assert on_bed(solid, (long_mm + 4, beside_mm - 1, 300.0)) is None


def test_pieces_follow_each_other_without_a_gap_and_the_first_has_the_whole_collar() -> None:
    solid = solid_for(plan(spool(1.0)), shank="sleeve")
    for pieces in range(1, 6):
        marks = cuts_mm(solid, pieces)
        assert len(marks) == pieces + 1
        assert (marks[0], marks[-1]) == (solid.foot_mm, pytest.approx(solid.end_mm))
        assert all(low < high for low, high in pairwise(marks))
        assert marks[1] >= solid.face_mm + 5.0 - 1e-9


def made(bed_mm: tuple[float, float, float], held: str | None = None, printed: bool = True) -> MandrelSolid | Refusal:
    bench = Bench(tools=("printer", "vice"), printer_bed_mm=bed_mm)
    return made_for(plan(spool(1.0)), "a job", bench, held, printed)


def test_one_that_the_bed_does_not_hold_becomes_a_sleeve_and_one_to_turn_does_not() -> None:
    sleeve, turned = made((60.0, 60.0, 60.0)), made((60.0, 60.0, 60.0), printed=False)
    assert isinstance(sleeve, MandrelSolid)
    assert isinstance(sleeve.held, Bore)
    assert isinstance(turned, MandrelSolid)
    assert not isinstance(turned.held, Bore)


@pytest.mark.parametrize("held", [None, "hex", "sleeve"])
def test_where_not_even_its_pieces_have_room_there_is_none_and_it_is_said(held: str | None) -> None:
    refused = made((20.0, 20.0, 20.0), held)
    assert isinstance(refused, Refusal)
    assert "has no room in the printer" in refused.why


def test_one_too_slim_for_a_sleeve_and_too_long_for_the_bed_is_refused_with_both_reasons() -> None:
    bench = Bench(rods_mm=(8.0,), printer_bed_mm=(60.0, 60.0, 60.0))
    refused = made_for(plan(spool(1.0)), "a job", bench, None, True)
    assert isinstance(refused, Refusal)
    assert "has no room in the printer" in refused.why
    assert "no rod on hand" in refused.why


@pytest.mark.parametrize(
    ("bed_mm", "shank", "said"),
    [
        (None, "hex", "no `printer_bed` in bench.yaml"),
        ((48.0, 48.0, 40.0), "sleeve", "cut across into 2 pieces"),
        ((200.0, 200.0, 40.0), "hex", "fits the printer's bed, lying"),
    ],
)
def test_how_it_lies_is_told(bed_mm: tuple[float, float, float] | None, shank: str, said: str) -> None:
    sheet = plan(spool(1.0))
    sentences = solid_said(sheet, solid_for(sheet, shank=shank), Bench(printer_bed_mm=bed_mm), True)
    assert said in " ".join(sentences)
