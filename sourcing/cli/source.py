"""`springwright source`: the main job, from needs to verdicts."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Annotated

import typer

from sourcing.cli import door
from sourcing.cli.words import WORKINGS_HELP, page_option

if TYPE_CHECKING:
    from sourcing.figures.working import Working
    from sourcing.stock.model import Catalogue
    from sourcing.verdict.verdict import Verdict


def source(needs: list[str], catalog: str | None) -> tuple[Verdict, ...]:
    """The verdict of each need file against the catalogue. Raises Mistakes with those of all files."""
    return tuple(verdict for verdict, _ in judged(needs, catalog))


def judged(needs: list[str], catalog: str | None) -> Iterator[tuple[Verdict, Catalogue]]:
    """Each verdict with the catalogue that it was made from. Raises Mistakes with those of all files."""
    from sourcing.cli.reading import read_all
    from sourcing.verdict.verdict import decide

    return ((decide(need, catalogue), catalogue) for need, catalogue in read_all(needs, catalog))


def shown(answers: Sequence[tuple[Verdict, Catalogue]]) -> list[tuple[Working, ...]]:
    """The workings of each verdict."""
    from sourcing.verdict.workings import workings

    return [workings(verdict, catalogue) for verdict, catalogue in answers]


def write_page(file: str, verdicts: Sequence[Verdict]) -> None:
    """Write the verdicts as one page. Raises Mistakes where it cannot be written."""
    from sourcing.files.writing import write_file
    from sourcing.sheets.verdict_page import verdict_page

    write_file(file, verdict_page(verdicts).encode())
    print(f"The sheet as a page: {file}", file=sys.stderr)


def command(
    needs: Annotated[list[str], typer.Argument(metavar="NEED...", help="one need.yaml, or several")],
    catalog: Annotated[
        str | None,
        typer.Option("--catalog", metavar="PATH", help="a catalogue folder, or one file of springs or spools"),
    ] = None,
    sheet: Annotated[
        str | None, typer.Option("--sheet", metavar="OUT.html", help="write it as a page to print")
    ] = None,
    with_workings: Annotated[bool, typer.Option("--workings", help=WORKINGS_HELP)] = False,
    as_json: Annotated[bool, typer.Option("--json", help="one JSON document instead of text")] = False,
) -> None:
    """Find the spring in the drawer, buy it, or wind it: options and a verdict.

    Example: springwright source examples/punch-return/need.yaml
    """
    if sheet is not None:
        page_option("--sheet", sheet)
    answers = tuple(judged(needs, catalog))
    verdicts = [verdict for verdict, _ in answers]
    if sheet is not None:
        write_page(sheet, verdicts)
    workings = shown(answers) if with_workings else [None] * len(verdicts)
    if as_json:
        from sourcing.sheets.data import source_document

        door.print_json(source_document(verdicts, workings))
    else:
        from sourcing.sheets.verdict_text import verdict_lines

        pairs = zip(verdicts, workings, strict=True)
        door.print_text(line for verdict, worked in pairs for line in verdict_lines(verdict, worked))
    door.finish(all(verdict.option != "none" for verdict in verdicts))
