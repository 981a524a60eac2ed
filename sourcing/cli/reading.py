"""The files that a command is given, read together, so that the mistakes of all of them are told at once."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from typing import TYPE_CHECKING

from sourcing.cli import door

if TYPE_CHECKING:
    from sourcing.files.findings import Finding
    from sourcing.need.model import Need
    from sourcing.stock.index.shelf import Shelf
    from sourcing.stock.model import Catalogue


def read_all(needs: Sequence[str], catalog: str | None) -> tuple[tuple[Need, Catalogue], ...]:
    """Each need, and the catalogue with the springs worth judging for it; warnings go to standard error.

    Raises Mistakes.

    The catalogue is read first, for a need may name a material of its keeper's own; its mistakes are told last.
    """
    from sourcing.fit.ranges import ranges_of
    from sourcing.stock.index.needs import known_need
    from sourcing.stock.model import Catalogue

    shelf, mistakes = _opened(catalog)
    catalogue = Catalogue() if shelf is None else shelf.catalogue
    collector = door.Collector()
    wanted = [collector.attempt(partial(known_need, need, catalogue.materials)) for need in needs]
    collector.note(mistakes)
    collector.close()
    door.tell_warnings(catalogue.warnings)
    assert shelf is not None
    return tuple((need, shelf.springs_for(ranges_of(need, catalogue.bench))) for need in wanted if need is not None)


def _opened(catalog: str | None) -> tuple[Shelf | None, tuple[Finding, ...]]:
    """What can be read of the catalogue, and every mistake in it; nothing of one that is not found."""
    from sourcing.files.findings import Mistakes
    from sourcing.stock.index.shelf import open_shelf
    from sourcing.stock.reading import find_catalogue

    try:
        return open_shelf(find_catalogue(catalog))
    except Mistakes as mistakes:
        return None, mistakes.findings
