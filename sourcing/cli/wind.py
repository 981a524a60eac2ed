"""`springwright wind`: the winding sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from sourcing.cli import door
from sourcing.cli.words import length_option, spool_option

if TYPE_CHECKING:
    from sourcing.need.model import Need
    from sourcing.stock.model import Catalogue
    from sourcing.winding.model import Refusal, WindingPlan


def plan(need: Need, catalogue: Catalogue, wire: str | None, mandrel_mm: float | None) -> WindingPlan | Refusal:
    """The winding plan of a need, from one spool or from the wire that `source` would choose, or why there is none.

    Raises typer.BadParameter where there is no such spool.
    """
    from sourcing.verdict.verdict import decide, guard_of, guarded_refusal
    from sourcing.winding.best import best_plan
    from sourcing.winding.plan import plan_winding

    spool = None if wire is None else spool_option("--wire", wire, catalogue.spools)
    if (guard := guard_of(need)) is not None:
        return guarded_refusal(guard)
    if spool is not None:
        return plan_winding(need, spool, catalogue.bench, mandrel_mm)
    if mandrel_mm is not None:
        chosen, winding = None, best_plan(need, catalogue.spools, catalogue.bench, mandrel_mm)
    else:
        verdict = decide(need, catalogue)
        chosen, winding = verdict.plan, verdict.winding
    assert winding is not None
    answer = chosen or winding.best or winding.refusal
    assert answer is not None
    return answer


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
    from sourcing.winding.model import WindingPlan

    mandrel_mm = None if mandrel is None else length_option("--mandrel", mandrel)
    ((wanted, catalogue),) = read_all([need], catalog)
    answer = plan(wanted, catalogue, wire, mandrel_mm)
    if as_json:
        from sourcing.sheets.winding_data import answer_document

        door.print_json(answer_document(answer, wanted))
    else:
        from sourcing.sheets.winding_text import answer_lines

        door.print_text(answer_lines(answer, wanted))
    door.finish(isinstance(answer, WindingPlan))
