"""`springwright trial`: a trial coil written down at its spool, and what it taught; or the last one taken back."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Annotated

import typer

from sourcing.cli import door
from sourcing.files.findings import Finding, Place, WrongWords

if TYPE_CHECKING:
    from sourcing.stock.trying import TakenBack, Tried
    from sourcing.winding.teaching import Taught


def trial(spool: str, given: Mapping[str, str], catalog: str | None, dry_run: bool) -> tuple[Tried, Taught | None]:
    """Write a trial, as keys and texts, at its spool. Returns where it stands, and what it taught.

    Raises WrongWords where there is no such spool, Mistakes where trial or file are wrong.
    """
    from datetime import date

    from sourcing.cli.stock import read
    from sourcing.cli.words import spool_option
    from sourcing.stock.trying import write_trial
    from sourcing.winding.teaching import taught

    catalogue = read(catalog)
    dated = {"date": date.today().isoformat(), **given}
    tried = write_trial(catalogue, spool_option("SPOOL", spool, catalogue.spools), dated, dry_run)
    return tried, taught(tried.spool, catalogue.bench)


def taken_back(spool: str, given: Mapping[str, str], catalog: str | None, dry_run: bool) -> TakenBack:
    """Take the last trial of a spool back; what is given of a trial beside that is wrong.

    Raises WrongWords where there is no such spool or more is given, Mistakes where it has no trial.
    """
    from sourcing.cli.stock import read
    from sourcing.cli.words import spool_option
    from sourcing.stock.trying import option_of, take_back_trial

    if given:
        found = f"--take-back beside {', '.join(map(option_of, given))}"
        raise WrongWords(
            (Finding(Place(None), found, "--take-back alone: it takes the last trial away, whichever it is"),)
        )
    catalogue = read(catalog)
    return take_back_trial(catalogue, spool_option("SPOOL", spool, catalogue.spools), dry_run)


def _print_taken_back(taken: TakenBack, dry_run: bool, as_json: bool) -> None:
    if as_json:
        from sourcing.sheets.trial_data import taken_back_document

        door.print_json(taken_back_document(taken))
    else:
        from sourcing.sheets.trial_text import taken_back_lines

        door.print_text(taken_back_lines(taken, dry_run))


def command(
    spool: Annotated[str, typer.Argument(metavar="SPOOL", help="the id of the spool that the coil was wound from")],
    mandrel: Annotated[str | None, typer.Option(metavar="DIAMETER", help="the mandrel, as measured")] = None,
    turns: Annotated[str | None, typer.Option(metavar="N", help="how many turns the coil has")] = None,
    outside: Annotated[
        str | None, typer.Option(metavar="DIAMETER", help="the coil's outside diameter, let go and measured")
    ] = None,
    inside: Annotated[str | None, typer.Option(metavar="DIAMETER", help="its inside diameter instead")] = None,
    stop_angle: Annotated[
        str | None, typer.Option(metavar="ANGLE", help="of a torsion spring: between the legs as the crank stopped")
    ] = None,
    leg_angle: Annotated[
        str | None, typer.Option(metavar="ANGLE", help="between the legs as it came out, from leg 1 on to leg 2")
    ] = None,
    tension: Annotated[
        str | None, typer.Option(metavar="FORCE", help="of a coil wound tight: the pull at which it begins to open")
    ] = None,
    pitch_wound: Annotated[str | None, typer.Option(metavar="LENGTH", help="the pitch on the mandrel")] = None,
    pitch: Annotated[str | None, typer.Option(metavar="LENGTH", help="the pitch that came out")] = None,
    heated: Annotated[
        str | None, typer.Option(metavar="yes|no", help="whether it was measured after stress relief; no if not said")
    ] = None,
    pull: Annotated[str | None, typer.Option(metavar="FORCE", help="the pull on the wire, such as '30 N'")] = None,
    on: Annotated[str | None, typer.Option(metavar="steel-rod|printed", help="what the coil was wound on")] = None,
    date: Annotated[str | None, typer.Option(metavar="DATE", help="the day it was wound; today if not said")] = None,
    take_back: Annotated[
        bool, typer.Option("--take-back", help="take the last trial of the spool out of its file, and write none")
    ] = False,
    dry_run: Annotated[bool, typer.Option("--dry-run", help="show what would change, and change nothing")] = False,
    catalog: Annotated[
        str | None,
        typer.Option("--catalog", metavar="PATH", help="a catalogue folder, or one file of springs or spools"),
    ] = None,
    as_json: Annotated[bool, typer.Option("--json", help="one JSON document instead of text")] = False,
) -> None:
    """Write a trial coil down at its spool, and say what it taught; or take the last one back.

    Example: springwright trial W08 --mandrel 6.0 --turns 4 --outside 8.9
    """
    keys = {
        "date": date,
        "mandrel": mandrel,
        "turns": turns,
        "outside_diameter": outside,
        "inside_diameter": inside,
        "stop_angle": stop_angle,
        "leg_angle": leg_angle,
        "initial_tension": tension,
        "pitch_wound": pitch_wound,
        "pitch": pitch,
        "heated": heated,
        "pull": pull,
        "on": on,
    }
    given = {key: text for key, text in keys.items() if text is not None}
    if take_back:
        _print_taken_back(taken_back(spool, given, catalog, dry_run), dry_run, as_json)
        return
    tried, taught = trial(spool, given, catalog, dry_run)
    if as_json:
        from sourcing.sheets.trial_data import trial_document

        door.print_json(trial_document(tried, taught))
    else:
        from sourcing.sheets.trial_text import trial_lines

        door.print_text(trial_lines(tried, taught, dry_run))
