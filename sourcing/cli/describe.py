"""`springwright describe`: all that follows from springs' dimensions."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from sourcing.cli import door
from sourcing.cli.words import WORKINGS_HELP, length_option

if TYPE_CHECKING:
    from sourcing.files.findings import Finding
    from sourcing.springs.describe import AnyDescription
    from sourcing.stock.model import StockSpring


def described(file: str, at_mm: list[float]) -> tuple[list[tuple[StockSpring, AnyDescription]], tuple[Finding, ...]]:
    """Each spring of a file with its description, and the doubts met in reading. Raises Mistakes."""
    from sourcing.springs.describe import describe
    from sourcing.stock.reading import read_springs

    springs, warnings = read_springs(file)
    return [(stock, describe(stock.spring, at_mm)) for stock in springs], warnings


def command(
    file: Annotated[str, typer.Argument(metavar="FILE", help="a file of springs")],
    at: Annotated[
        list[str] | None, typer.Option("--at", metavar="LENGTH", help="a length such as '24 mm'; may be repeated")
    ] = None,
    tolerances: Annotated[
        int | None,
        typer.Option(
            "--tolerances", metavar="GRADE", min=1, max=3, help="what a grade of tolerance lets each figure be"
        ),
    ] = None,
    with_workings: Annotated[bool, typer.Option("--workings", help=WORKINGS_HELP)] = False,
    as_json: Annotated[bool, typer.Option("--json", help="one JSON document instead of text")] = False,
) -> None:
    """Work out rate, solid length, stresses, buckling, wire length and more from springs' dimensions.

    Example: springwright describe catalog/springs/drawer.yaml --at "24 mm" --at 14
    """
    at_mm = [length_option("--at", text) for text in at or ()]
    entries, warnings = described(file, at_mm)
    door.tell_warnings(warnings)
    if as_json:
        from sourcing.sheets.description import description_document

        door.print_json(description_document(entries, tolerances, with_workings))
    else:
        from sourcing.sheets.description import description_lines
        from sourcing.stock.reading import read_bench

        door.print_text(description_lines(entries, read_bench().units, tolerances, with_workings))
