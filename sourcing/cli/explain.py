"""`springwright explain`: the handbook's pages."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Annotated

import typer

from sourcing.cli import door
from sourcing.cli.words import wrong_word


def explained(topic: str | None) -> Iterable[str]:
    """A page of the handbook, or the list of its topics. Raises WrongWords with the nearest topics."""
    from sourcing.handbook import page_of, pages

    if topic is None:
        from sourcing.sheets.text import table

        return table((), [(page.topic, page.title) for page in pages()])
    if (page := page_of(topic)) is not None:
        return page.lines()
    from sourcing.files.findings import quoted
    from sourcing.files.nearest import nearest

    topics = [each.topic for each in pages()]
    near = nearest(topic, topics)
    expected = "a page of the handbook" if near else f"one of {', '.join(topics)}"
    raise wrong_word("TOPIC", f"there is no page {quoted(topic)}", expected, near)


def command(
    topic: Annotated[str | None, typer.Argument(metavar="[TOPIC]", help="a page; none: the list of pages")] = None,
) -> None:
    """Read the handbook: how to measure and wind, what the words mean, and where every figure comes from.

    Example: springwright explain springback
    """
    door.print_text(explained(topic))
