"""`springwright wind`: the winding sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from sourcing.cli import door
from sourcing.cli.words import length_option, spool_option

if TYPE_CHECKING:
    from sourcing.winding.plan import Refusal, WindingPlan


def command(
    need: Annotated[str, typer.Argument(metavar="NEED", help="a need.yaml")],
    wire: Annotated[
        str | None, typer.Option("--wire", metavar="SPOOL", help="solve for the wire of this spool alone")
    ] = None,
    mandrel: Annotated[
        str | None, typer.Option("--mandrel", metavar="DIAMETER", help="say what this mandrel gives, such as '8 mm'")
    ] = None,
    catalog: Annotated[
        str | None,
        typer.Option("--catalog", metavar="PATH", help="a catalogue folder, or one file of springs or spools"),
    ] = None,
    as_json: Annotated[bool, typer.Option("--json", help="one JSON document instead of text")] = False,
) -> None:
    """Make the winding sheet: wire, cut length, mandrel, turns, pitch, heat, checks.

    Example: springwright wind examples/punch-return/need.yaml --wire W08
    """
    from sourcing.cli.reading import read_all

    mandrel_mm = None if mandrel is None else length_option("--mandrel", mandrel)
    (wanted,), catalogue = read_all([need], catalog)
    spools = catalogue.spools if wire is None else (spool_option("--wire", wire, catalogue.spools),)
