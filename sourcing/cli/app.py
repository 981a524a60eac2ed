"""The command line as a whole: which commands there are."""

from __future__ import annotations

import typer

from sourcing.cli import describe, explain, init, source, stock, trial, wind

app = typer.Typer(
    help="From a broken coil spring to a working thing: find it in the drawer, buy it, or wind it.",
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
)
app.command("source")(source.command)
app.command("wind")(wind.command)
app.command("trial")(trial.command)
app.command("describe")(describe.command)
app.add_typer(stock.app, name="stock")
app.command("explain")(explain.command)
app.command("init")(init.command)
