"""The files that a command is given, read together, so that the mistakes of all of them are told at once."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from typing import TYPE_CHECKING

from sourcing.cli import door

if TYPE_CHECKING:
    from sourcing.need.model import Need
    from sourcing.stock.model import Catalogue


def read_all(needs: Sequence[str], catalog: str | None) -> tuple[tuple[Need, ...], Catalogue]:
    """The needs and the catalogue; warnings of the catalogue go to standard error. Raises Mistakes."""
    from sourcing.need.reading import read_need
    from sourcing.stock.reading import find_catalogue, read_catalogue

    collector = door.Collector()
    wanted = [collector.attempt(partial(read_need, need)) for need in needs]
    catalogue = collector.attempt(lambda: read_catalogue(find_catalogue(catalog)))
    collector.close()
    assert catalogue is not None
    door.tell_warnings(catalogue.warnings)
    return tuple(need for need in wanted if need is not None), catalogue
