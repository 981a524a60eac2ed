"""`springwright wind`: the winding sheet."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Annotated

import typer

from sourcing.cli import door
from sourcing.cli.misses import (
    CameOut,
    CameOutAngle,
    CameOutPitch,
    CameOutSmallEnd,
    CameOutTension,
    Heated,
    PressedTo,
    PulledTo,
    asked,
    before_its_trial,
    saved,
    wire_of_plan,
)
from sourcing.cli.solids import NOTHING_WRITTEN, ShankWord, SolidFiles, WrittenSolids, asked_solids, write_solids
from sourcing.cli.words import WORKINGS_HELP, length_option, page_option, spool_option, wire_size_option
from sourcing.files.findings import Finding, Place, WrongWords

if TYPE_CHECKING:
    from sourcing.figures.working import Working
    from sourcing.need.model import Need
    from sourcing.stock.model import Catalogue, Spool
    from sourcing.winding.model import Refusal, WindingPlan, Wire
    from sourcing.winding.saving.coil import Saved


def plan(need: Need, catalogue: Catalogue, wire: str | None, mandrel_mm: float | None) -> WindingPlan | Refusal:
    """The winding plan of a need, or why there is none: from one spool, from wire of one size to buy, or from the wire
    that `source` would choose.

    Raises WrongWords where there is no such spool.
    """
    from sourcing.verdict.verdict import decide, guard_of, guarded_refusal
    from sourcing.winding.best import best_plan
    from sourcing.winding.plan import plan_winding

    named = None if wire is None else _named_wire(wire, need, catalogue)
    if (guard := guard_of(need)) is not None:
        return guarded_refusal(guard)
    if named is not None:
        return plan_winding(need, named, catalogue.bench, mandrel_mm)
    if mandrel_mm is not None:
        chosen, winding = None, best_plan(need, catalogue.spools, catalogue.bench, mandrel_mm)
    else:
        verdict = decide(need, catalogue)
        chosen, winding = verdict.plan, verdict.winding
    assert winding is not None
    answer = chosen or winding.best or winding.refusal
    assert answer is not None
    return answer


def wound_by(need: Need, catalogue: Catalogue, wire: str | None, mandrel_mm: float | None) -> WindingPlan | Refusal:
    """The plan by which a coil was wound; on a mandrel that does not serve, what was meant without it.

    Raises WrongWords where there is no such spool.
    """
    from sourcing.winding.mandrel import mandrel_of
    from sourcing.winding.model import WindingPlan

    answer = plan(need, catalogue, wire, mandrel_mm)
    if mandrel_mm is None or isinstance(answer, WindingPlan):
        return answer
    meant = plan(need, catalogue, wire, None)
    if not isinstance(meant, WindingPlan) or meant.mandrel.diameter_mm is None:
        return answer
    return replace(meant, mandrel=mandrel_of(mandrel_mm, catalogue.bench))


def _named_wire(text: str, need: Need, catalogue: Catalogue) -> Wire | Spool:
    """The spool of that id, or wire of that size to buy, of the need's material or the one that its place asks for."""
    from sourcing.winding.best import material_to_buy
    from sourcing.winding.model import Wire

    of_id = any(spool.id == text for spool in catalogue.spools)
    size_mm = None if of_id else wire_size_option(text)
    if size_mm is not None:
        return Wire(material_to_buy(need), size_mm)
    return spool_option(
        "--wire", text, catalogue.spools, or_else=", or a size with its unit, as in 1.4 mm, for wire to buy"
    )


def with_mandrels(made: WindingPlan, need: Need, catalogue: Catalogue) -> WindingPlan:
    """A plan with the mandrels to choose among."""
    from sourcing.winding.choices import with_choices

    return with_choices(made, need, wire_of_plan(made, catalogue), catalogue.bench)


def shown(answer: WindingPlan | Refusal, need: Need, catalogue: Catalogue) -> tuple[Working, ...]:
    """The workings of a plan; none of a refusal."""
    from sourcing.verdict.workings import plan_workings
    from sourcing.winding.model import WindingPlan

    return plan_workings(answer, catalogue, need.quantity) if isinstance(answer, WindingPlan) else ()


def write_page(file: str, plan: WindingPlan, need: Need, of_solid: Sequence[str]) -> None:
    """Write the sheet of a plan as a page, with what is said of its solid. Raises Mistakes where it cannot be."""
    from sourcing.files.writing import write_file
    from sourcing.sheets.winding_page import winding_page

    write_file(file, winding_page(plan, need, of_solid).encode())
    print(f"The sheet as a page: {file}", file=sys.stderr)


def command(
    need: Annotated[str, typer.Argument(metavar="NEED", help="a need.yaml")],
    wire: Annotated[
        str | None,
        typer.Option(
            "--wire", metavar="SPOOL|SIZE", help="this spool alone, or wire of a size to buy, such as '1.4 mm'"
        ),
    ] = None,
    mandrel: Annotated[
        str | None, typer.Option("--mandrel", metavar="DIAMETER", help="say what this mandrel gives, such as '8 mm'")
    ] = None,
    came_out: CameOut = None,
    came_out_small_end: CameOutSmallEnd = None,
    came_out_pitch: CameOutPitch = None,
    came_out_angle: CameOutAngle = None,
    came_out_tension: CameOutTension = None,
    pressed_to: PressedTo = None,
    pulled_to: PulledTo = None,
    heated: Heated = None,
    catalog: Annotated[
        str | None,
        typer.Option("--catalog", metavar="PATH", help="a catalogue folder, or one file of springs or spools"),
    ] = None,
    sheet: Annotated[
        str | None, typer.Option("--sheet", metavar="OUT.html", help="write the sheet as a page to print")
    ] = None,
    solid: SolidFiles = None,
    shank: ShankWord = None,
    with_workings: Annotated[bool, typer.Option("--workings", help=WORKINGS_HELP)] = False,
    as_json: Annotated[bool, typer.Option("--json", help="one JSON document instead of text")] = False,
) -> None:
    """Make the winding sheet: wire, cut length, mandrel, turns, pitch, heat, checks.

    Example: springwright wind examples/punch-return/need.yaml --wire W08
    """
    from sourcing.cli.reading import read_all
    from sourcing.winding.model import WindingPlan

    mandrel_mm = None if mandrel is None else length_option("--mandrel", mandrel)
    if sheet is not None:
        page_option("--sheet", sheet)
    solids = asked_solids(solid or (), shank)
    coil = asked(
        {
            "--came-out": came_out,
            "--came-out-small-end": came_out_small_end,
            "--came-out-pitch": came_out_pitch,
            "--came-out-angle": came_out_angle,
            "--came-out-tension": came_out_tension,
            "--pressed-to": pressed_to,
            "--pulled-to": pulled_to,
        },
        heated,
    )
    files = [option for option, given in (("--solid", solids.files), ("--sheet", sheet)) if given]
    if coil.options and files:
        raise WrongWords((Finding(Place(None), " and ".join((*coil.options, *files)), "one of them"),))
    ((wanted, catalogue),) = read_all([need], catalog)
    if coil.options:
        before = before_its_trial(catalogue, coil, mandrel_mm)
        answer = wound_by(wanted, before, wire, mandrel_mm)
    else:
        before, answer = catalogue, plan(wanted, catalogue, wire, mandrel_mm)
    if coil.options and isinstance(answer, WindingPlan):
        named = wire is not None and (mandrel_mm is not None or wanted.kind == "conical")
        written = wire_of_plan(answer, before) != wire_of_plan(answer, catalogue)
        _print_saved(saved(wanted, before, answer, coil, written), answer, named, as_json)
        return
    written = write_solids(solids, answer, wanted, catalogue.bench)
    answer = written.answer
    if isinstance(answer, WindingPlan):
        answer = with_mandrels(answer, wanted, catalogue)
    workings = shown(answer, wanted, catalogue) if with_workings else None
    if sheet is not None and isinstance(answer, WindingPlan):
        write_page(sheet, answer, wanted, written.said)
    elif sheet is not None:
        print(f"Nothing was written to {sheet}: what was asked for cannot be made, as told here", file=sys.stderr)
    _print_answer(answer, wanted, workings, written, as_json)
    door.finish(isinstance(answer, WindingPlan) and written.files == solids.files)


def _print_answer(
    answer: WindingPlan | Refusal,
    need: Need,
    workings: Sequence[Working] | None,
    written: WrittenSolids,
    as_json: bool,
) -> None:
    if as_json:
        from sourcing.sheets.winding_data import answer_document

        door.print_json({**answer_document(answer, need, workings), **written.key})
    else:
        from sourcing.sheets.winding_text import NO_SHEET, answer_lines

        why_not = NOTHING_WRITTEN if written.refused else NO_SHEET
        door.print_text(answer_lines(answer, need, workings, written.said, why_not))


def _print_saved(answer: Saved, wound: WindingPlan, named: bool, as_json: bool) -> None:
    if as_json:
        from sourcing.sheets.winding_data import saved_document

        door.print_json(saved_document(answer, wound))
    else:
        from sourcing.sheets.winding_text import saved_lines

        door.print_text(saved_lines(answer, wound, named))
