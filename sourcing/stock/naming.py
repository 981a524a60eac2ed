"""A spring or a spool by its id, as somebody types it."""

from __future__ import annotations

from sourcing.files.findings import Finding, Place, WrongWords, quoted
from sourcing.stock.model import Catalogue, Spool, StockSpring


def spring_or_spool(catalogue: Catalogue, name: str, spool_meant: bool) -> StockSpring | Spool:
    """What has that id; where a spring and a spool both have it, the one that is meant.

    Raises `WrongWords` with the nearest ids where nothing has it.
    """
    found = [item for item in (*catalogue.springs, *catalogue.spools) if item.id == name]
    if not found:
        raise WrongWords((_unknown(catalogue, name),))
    return next((item for item in found if isinstance(item, Spool) == spool_meant), found[0])


def _unknown(catalogue: Catalogue, name: str) -> Finding:
    from sourcing.files.nearest import nearest

    ids = [item.id for item in (*catalogue.springs, *catalogue.spools)]
    expected = "the id of one" if ids else "a catalogue with something in it"
    return Finding(Place(None), f"there is no spring or spool {quoted(name)}", expected, nearest(name, ids))
