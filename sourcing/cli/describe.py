"""`springwright describe`: all that follows from springs' dimensions."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from sourcing.cli import door
from sourcing.cli.words import WORKINGS_HELP, LengthOrAngle, length_or_angle_option, wrong_word

if TYPE_CHECKING:
    from sourcing.files.findings import Finding
    from sourcing.springs.describe import AnyDescription
    from sourcing.stock.model import StockSpring


def described(
    file: str, at_mm: list[float], at_deg: list[float]
) -> tuple[list[tuple[StockSpring, AnyDescription]], tuple[Finding, ...]]:
    """Each spring of a file with its description at lengths, of a torsion spring at angles, and the doubts met.

    Raises Mistakes.
    """
    from sourcing.springs.describe import describe
    from sourcing.stock.reading import read_springs

    springs, warnings = read_springs(file)
    return [(stock, describe(stock.spring, at_mm, at_deg)) for stock in springs], warnings


def command(
    file: Annotated[str, typer.Argument(metavar="FILE", help="a file of springs")],
    at: Annotated[
        list[str] | None,
        typer.Option(
            "--at", metavar="LENGTH", help="a length such as '24 mm', an angle such as '60 deg'; may be repeated"
        ),
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

    A torsion spring is asked at angles, wound up from free; a figure without a unit is either.

    Example: springwright describe catalog/springs/drawer.yaml --at "24 mm" --at 14
    """
    asked = [length_or_angle_option("--at", text) for text in at or ()]
    at_mm = [each.length_mm for each in asked if each.length_mm is not None]
    at_deg = [each.angle_deg for each in asked if each.angle_deg is not None]
    entries, warnings = described(file, at_mm, at_deg)
    _answers_all(asked, {stock.spring.kind == "torsion" for stock, _ in entries})
    door.tell_warnings(warnings)
    if as_json:
        from sourcing.sheets.description import description_document

        door.print_json(description_document(entries, tolerances, with_workings))
    else:
        from sourcing.sheets.description import description_lines
        from sourcing.stock.reading import read_bench

        door.print_text(description_lines(entries, read_bench().units, tolerances, with_workings))


def _answers_all(asked: list[LengthOrAngle], turned: set[bool]) -> None:
    """Refuse an angle where no spring is turned, and a length where none is pressed or pulled."""
    for each in asked:
        if turned == {True} and each.angle_deg is None:
            found, expected = f"{each.text} is a length", "an angle, as in 60 deg: every spring here is turned"
        elif turned == {False} and each.length_mm is None:
            found, expected = f"{each.text} is an angle", "a length, as in 24 mm: no spring here is turned"
        else:
            continue
        raise wrong_word("--at", found, expected)
