"""Which pages the handbook has: each with its topic, its title, and the lines that it prints."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from sourcing.handbook.printing import printed
from sourcing.sheets.text import strong

WRITTEN = (
    "needs", "measuring", "verdict", "strength", "tolerances", "drawer", "winding", "springback", "winding_model",
)  # fmt: skip
"""The topics of the pages that a person wrote, in the order of a job."""


@dataclass(frozen=True, slots=True)
class Page:
    """A page by its topic; its title says in one line what it is about."""

    topic: str
    title: str
    lines: Callable[[], Iterable[str]]


def pages() -> tuple[Page, ...]:
    """All pages, those that a person wrote first."""
    made = (
        Page("formulas", "Every formula, with its range and its source", _formulas),
        Page("materials", "Every wire: its figures, and where sources disagree", _wires),
        Page("checks", "Every published figure that the program is held against", _checks),
    )
    return (*map(_written, WRITTEN), *(Page(each.topic, each.title, partial(_titled, each)) for each in made))


def page_of(topic: str) -> Page | None:
    """The page of a topic, None where there is none. Capitals, and how words are joined, do not count.

    >>> page_of("Winding-model").topic
    'winding_model'
    """
    plain = topic.strip().casefold().replace("-", "_").replace(" ", "_")
    return next((page for page in pages() if page.topic == plain), None)


def _written(topic: str) -> Page:
    text = Path(__file__).with_name(f"{topic}.md").read_text("utf-8")
    title, _, body = text.partition("\n")
    page = Page(topic, title.removeprefix("# "), partial(printed, body))
    return Page(topic, page.title, partial(_titled, page))


def _titled(page: Page) -> Iterable[str]:
    return (strong(page.title), *page.lines())


def _formulas() -> Iterable[str]:
    from sourcing.handbook.formulas import formula_lines

    return formula_lines()


def _wires() -> Iterable[str]:
    from sourcing.handbook.wires import wire_lines

    return wire_lines()


def _checks() -> Iterable[str]:
    from sourcing.handbook.checks import check_lines

    return check_lines()
