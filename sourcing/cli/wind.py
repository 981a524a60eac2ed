"""`springwright wind`: the winding sheet."""

from __future__ import annotations

import sys
from collections.abc import Sequence
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
    WoundOn,
    asked,
)
from sourcing.cli.planned import on_printed, plan, with_mandrels
from sourcing.cli.solids import NOTHING_WRITTEN, ShankWord, SolidFiles, WrittenSolids, asked_solids, write_solids
from sourcing.cli.words import WORKINGS_HELP, length_option, page_option
from sourcing.files.findings import Finding, Place, WrongWords

if TYPE_CHECKING:
    from sourcing.figures.working import Working
    from sourcing.need.model import Need
    from sourcing.stock.model import Catalogue
    from sourcing.winding.model import Refusal, WindingPlan


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
    wound_on: WoundOn = None,
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
        wound_on,
    )
    files = [option for option, given in (("--solid", solids.files), ("--sheet", sheet)) if given]
    if coil.options and files:
        raise WrongWords((Finding(Place(None), " and ".join((*coil.options, *files)), "one of them"),))
    ((wanted, catalogue),) = read_all([need], catalog)
    if coil.options:
        from sourcing.cli.judged import judge

        judge(coil, wanted, catalogue, wire, mandrel_mm, as_json)
        return
    answer = plan(wanted, catalogue, wire, mandrel_mm)
    if solids.printed:
        answer = on_printed(answer, wanted, catalogue)
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
