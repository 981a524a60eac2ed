"""Words of the command line made into numbers and records; a wrong one is a wrong command line (status 2)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import typer

from sourcing.quantities import QuantityError, above_zero, length_mm

if TYPE_CHECKING:
    from sourcing.stock.model import Spool


WORKINGS_HELP = "each figure with its formula, the numbers put in, its source, and whether its range is kept"


def length_option(option: str, text: str) -> float:
    """The length that an option names, in mm. Raises typer.BadParameter."""
    try:
        return above_zero(length_mm(text), text, "a length")
    except QuantityError as error:
        raise typer.BadParameter(f"{error.found}; expected {error.expected}", param_hint=option) from error


def spool_option(option: str, spool_id: str, spools: Sequence[Spool]) -> Spool:
    """The spool of that id. Raises typer.BadParameter, with the nearest ids."""
    for spool in spools:
        if spool.id == spool_id:
            return spool
    from sourcing.files.findings import shown
    from sourcing.files.nearest import nearest

    ids = [spool.id for spool in spools]
    near = nearest(spool_id, ids, limit=2) or ids[:2]
    hint = f"; did you mean {' or '.join(map(shown, near))}?" if near else "; the catalogue holds no spools"
    raise typer.BadParameter(f"there is no spool {shown(spool_id)}{hint}", param_hint=option)
