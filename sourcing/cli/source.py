"""`springwright source`: the main job, from needs to verdicts."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from sourcing.cli import door

if TYPE_CHECKING:
    from sourcing.verdict.verdict import Verdict


def source(needs: list[str], catalog: str | None) -> tuple[Verdict, ...]:
    """The verdict of each need file against the catalogue. Raises Mistakes with those of all files."""
    from sourcing.cli.reading import read_all
    from sourcing.verdict.verdict import decide

    return tuple(decide(need, catalogue) for need, catalogue in read_all(needs, catalog))


def command(
    needs: Annotated[list[str], typer.Argument(metavar="NEED...", help="one need.yaml, or several")],
    catalog: Annotated[
        str | None,
        typer.Option("--catalog", metavar="PATH", help="a catalogue folder, or one file of springs or spools"),
    ] = None,
    as_json: Annotated[bool, typer.Option("--json", help="one JSON document instead of text")] = False,
) -> None:
    """Find the spring in the drawer, buy it, or wind it: options and a verdict.

    Example: springwright source examples/punch-return/need.yaml
    """
    verdicts = source(needs, catalog)
    if as_json:
        from sourcing.sheets.data import source_document

        door.print_json(source_document(verdicts))
    else:
        from sourcing.sheets.verdict_text import verdict_lines

        door.print_text(line for verdict in verdicts for line in verdict_lines(verdict))
    door.finish(all(verdict.option != "none" for verdict in verdicts))
