"""The files that a command is given, read together, so that the mistakes of all of them are told at once."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from typing import TYPE_CHECKING

from sourcing.cli import door

if TYPE_CHECKING:
    from sourcing.files.findings import Finding
    from sourcing.need.model import Need
    from sourcing.stock.model import Catalogue


def read_all(needs: Sequence[str], catalog: str | None) -> tuple[tuple[Need, ...], Catalogue]:
    """The needs and the catalogue; warnings of the catalogue go to standard error. Raises Mistakes.

    The catalogue is read first, for a need may name a material of its keeper's own; its mistakes are told last.
    """
    from sourcing.need.reading import read_need

    catalogue, mistakes = _inspected(catalog)
    collector = door.Collector()
    wanted = [collector.attempt(partial(read_need, need, catalogue.materials)) for need in needs]
    collector.note(mistakes)
    collector.close()
    door.tell_warnings(catalogue.warnings)
    return tuple(need for need in wanted if need is not None), catalogue


def _inspected(catalog: str | None) -> tuple[Catalogue, tuple[Finding, ...]]:
    """What can be read of the catalogue, and every mistake in it; nothing of one that is not found."""
    from sourcing.files.findings import Mistakes
    from sourcing.stock.model import Catalogue
    from sourcing.stock.reading import find_catalogue, inspect_catalogue

    try:
        return inspect_catalogue(find_catalogue(catalog))
    except Mistakes as mistakes:
        return Catalogue(), mistakes.findings
